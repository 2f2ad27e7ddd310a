package pdf

import (
	"strings"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/text"
)

// text writes a line as text that can be searched and copied. It is cut where
// letters are kerned, for the file's own letter widths know no kerning.
func (d *document) text(c *content, t display.Text) {
	glyphs, _ := text.Set(t.Face, t.Text)
	if len(glyphs) == 0 || t.Fill.A == 0 && t.Halo.A == 0 {
		return
	}
	// letters stand upright where y grows upward
	c.op("q").matrix(geom.Scale(1/pointsPerMM, -1/pointsPerMM).Then(t.Place())).op("cm")
	d.flush(c)
	family, style := d.font(t.Face)
	d.pdf.SetFont(family, style, t.Size*pointsPerMM)
	if t.Halo.A > 0 {
		d.paint(c, t.Halo, "RG", func() {
			c.number(t.HaloWidth() * pointsPerMM).op("w 1 Tr")
			d.run(c, glyphs, t.Size)
			c.op("0 Tr")
		})
	}
	d.paint(c, t.Fill, "rg", func() { d.run(c, glyphs, t.Size) })
	c.op("Q")
}

// run writes glyphs from the origin on.
func (d *document) run(c *content, glyphs []text.Glyph, size float64) {
	d.flush(c)
	for len(glyphs) > 0 {
		n := 1
		for n < len(glyphs) && glyphs[n].Kern == 0 {
			n++
		}
		var letters strings.Builder
		for _, g := range glyphs[:n] {
			if g.Rune > 0xFFFF { // fpdf gives up at runes beyond the basic plane
				g.Rune = '\uFFFD'
			}
			letters.WriteRune(g.Rune)
		}
		// fpdf counts down from the sheet's upper edge, which puts this on our line
		d.pdf.Text(glyphs[0].X*size, d.height, letters.String())
		glyphs = glyphs[n:]
	}
}

// font puts a face into the file when it is first used.
func (d *document) font(face display.Face) (family, style string) {
	family = face.Family()
	if face.Bold() {
		style += "B"
	}
	if face.Italic() {
		style += "I"
	}
	if !d.faces[face] {
		d.faces[face] = true
		d.pdf.AddUTF8FontFromBytes(family, style, face.File())
	}
	return family, style
}
