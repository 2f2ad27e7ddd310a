// Package pdf writes display lists as PDF: lines as lines and text as text, in
// the embedded faces, true to size. A chart wider than the paper is spread over
// several sheets to be joined.
package pdf

import (
	"bytes"
	"fmt"
	"image/color"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/render/png"
	"strandway/render/sheet"
)

// pointsPerMM is the PDF's unit of length.
const pointsPerMM = 72 / 25.4

// written is the date that every file bears, so that the same chart always gives the same bytes.
var written = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// Options say on what paper lists are written.
type Options struct {
	Paper       sheet.Paper
	Transparent bool // leave the page's background out
}

// Write writes each list on a page of its own, or on as many sheets as it takes.
func Write(w io.Writer, lists []*display.List, o Options) error {
	d := &document{
		pdf:     fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: 210, Ht: 297}}),
		options: o,
		faces:   map[display.Face]bool{},
	}
	d.pdf.SetMargins(0, 0, 0)
	d.pdf.SetAutoPageBreak(false, 0)
	d.pdf.SetProducer("Strandway", true)
	d.pdf.SetCreationDate(written)
	d.pdf.SetModificationDate(written)
	d.pdf.SetCatalogSort(true)
	if len(lists) > 0 {
		d.pdf.SetTitle(lists[0].Title, true)
		d.pdf.SetSubject(lists[0].Desc, true)
	}
	for _, l := range lists {
		for _, s := range sheet.Spread(l, o.Paper) {
			d.sheet(l, s)
		}
	}
	if err := d.pdf.Error(); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return d.pdf.Output(w)
}

// document is a PDF while it is written.
type document struct {
	pdf      *fpdf.Fpdf
	options  Options
	faces    map[display.Face]bool // faces the file has
	pictures int
	height   float64 // of the sheet, mm
}

// sheet writes the part of a list that falls on one sheet.
func (d *document) sheet(l *display.List, s sheet.Sheet) {
	d.pdf.AddPageFormat("P", fpdf.SizeType{Wd: s.Width, Ht: s.Height})
	d.height = s.Height
	var c content
	c.op("q").matrix(place(s)).op("cm 1 J 1 j")
	if s.Tiled() {
		c.rectangle(s.Part).op("W n")
	}
	if !d.options.Transparent {
		d.paint(&c, l.Background, "rg", func() {
			c.rectangle(geom.Box{Max: geom.Point{X: l.Width, Y: l.Height}}).op("f")
		})
	}
	for _, item := range l.Items {
		switch item := item.(type) {
		case display.Path:
			d.path(&c, item)
		case display.Use:
			d.use(&c, l, item)
		case display.Text:
			d.text(&c, item)
		case display.Picture:
			d.picture(&c, item)
		}
	}
	c.op("Q")
	if s.Tiled() {
		d.marks(&c, s)
	}
	d.flush(&c)
}

// flush hands over what has been written, before fpdf itself writes something.
func (d *document) flush(c *content) {
	if len(c.out) > 0 {
		d.pdf.RawWriteStr(string(c.out))
		c.out = c.out[:0]
	}
}

// paint sets a colour for filling ("rg") or stroking ("RG"), draws, and leaves
// what follows opaque.
func (d *document) paint(c *content, ink color.NRGBA, operator string, draw func()) {
	if ink.A == 0 {
		return
	}
	if ink.A < 255 {
		d.flush(c)
		d.pdf.SetAlpha(float64(ink.A)/255, "Normal")
	}
	c.colour(ink).op(operator)
	draw()
	if ink.A < 255 {
		d.flush(c)
		d.pdf.SetAlpha(1, "Normal")
	}
}

func (d *document) path(c *content, p display.Path) {
	if p.Fill.On {
		d.paint(c, p.Fill.Colour, "rg", func() { c.outline(p.Path).op("f") })
	}
	if p.Stroke.On {
		d.paint(c, p.Stroke.Colour, "RG", func() {
			c.number(p.Width).op("w").dash(p.Dash).outline(p.Path).op("S")
		})
	}
}

func (d *document) use(c *content, l *display.List, u display.Use) {
	if u.Symbol < 0 || u.Symbol >= len(l.Symbols) {
		return
	}
	c.op("q").matrix(u.At).op("cm")
	for _, p := range l.Symbols[u.Symbol].Paths {
		if p.Fill.Inherit {
			p.Fill.Colour = u.Ink
		}
		if p.Stroke.Inherit {
			p.Stroke.Colour = u.Ink
		}
		d.path(c, p)
	}
	c.op("Q")
}

func (d *document) picture(c *content, p display.Picture) {
	if p.Image == nil {
		return
	}
	d.pictures++
	name := fmt.Sprint("picture ", d.pictures)
	var data bytes.Buffer
	if err := png.Encode(&data, p.Image, png.Options{}); err != nil {
		d.pdf.SetError(fmt.Errorf("picture %q: %w", p.Alt, err))
		return
	}
	kind := fpdf.ImageOptions{ImageType: "png"}
	d.pdf.RegisterImageOptionsReader(name, kind, &data)
	// placed by fpdf as one point square at the sheet's lower left corner, stretched by our own matrix
	const side = 1 / pointsPerMM
	c.op("q").matrix(geom.Matrix{A: p.Width, D: -p.Height, E: p.X, F: p.Y + p.Height}).op("cm")
	d.flush(c)
	d.pdf.ImageOptions(name, 0, d.height-side, side, side, false, kind, 0, "")
	c.op("Q")
}
