package svg

import (
	"fmt"
	"math"
	"slices"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/text"
)

// lettersPerEm is the scale of the letters' definitions, so that whole numbers are fine enough.
const lettersPerEm = 1000

// letters defines every letter that the list's texts use, once.
func (s *writer) letters() {
	type letter struct {
		face  display.Face
		index uint16
	}
	used := map[letter]bool{}
	for _, item := range s.list.Items {
		if t, ok := item.(display.Text); ok {
			glyphs, _ := text.Set(t.Face, t.Text)
			for _, g := range glyphs {
				if g.Rune != ' ' {
					used[letter{t.Face, g.Index}] = true
				}
			}
		}
	}
	var sorted []letter
	for l := range used {
		sorted = append(sorted, l)
	}
	slices.SortFunc(sorted, func(a, b letter) int {
		if a.face != b.face {
			return int(a.face) - int(b.face)
		}
		return int(a.index) - int(b.index)
	})
	for _, l := range sorted {
		outline := text.Letter(l.face, l.index).Transform(geom.Scale(lettersPerEm, lettersPerEm))
		s.raw(`<path id="`+letterID(l.face, l.index)+`" d="`).outline(outline, 0).raw(`"/>` + "\n")
	}
}

func letterID(face display.Face, index uint16) string {
	return fmt.Sprintf("letter-%d-%d", face, index)
}

// textAsPaths writes a line as its letters, and the words for those who cannot see it.
func (s *writer) textAsPaths(t display.Text) {
	place := geom.Scale(t.Size/lettersPerEm, t.Size/lettersPerEm).Then(t.Place())
	s.raw(`<g role="img"`).attribute("aria-label", t.Text)
	s.raw(` transform="`).matrix(place).raw(`"`)
	s.paint("fill", t.Fill)
	s.raw(">")
	glyphs, _ := text.Set(t.Face, t.Text)
	if t.Halo.A > 0 {
		s.raw("<g")
		s.paint("fill", t.Halo)
		s.paint("stroke", t.Halo)
		s.raw(` stroke-width="`).number(t.HaloWidth() / t.Size * lettersPerEm).raw(`">`)
		s.placed(t.Face, glyphs)
		s.raw("</g>")
	}
	s.placed(t.Face, glyphs)
	s.raw("</g>\n")
}

func (s *writer) placed(face display.Face, glyphs []text.Glyph) {
	for _, g := range glyphs {
		if g.Rune == ' ' {
			continue
		}
		s.raw(`<use xlink:href="#`+letterID(face, g.Index)+`" x="`).decimals(g.X*lettersPerEm, 0).raw(`"/>`)
	}
}

// text writes a line as text.
func (s *writer) text(t display.Text) {
	s.raw(`<text x="`).number(t.X).raw(`" y="`).number(t.Y).raw(`" font-size="`).number(t.Size).raw(`"`)
	generic := "sans-serif"
	if t.Face == display.Serif || t.Face == display.SerifItalic {
		generic = "serif"
	}
	s.attribute("font-family", "'"+t.Face.Family()+"', "+generic)
	if t.Face.Bold() {
		s.raw(` font-weight="bold"`)
	}
	if t.Face.Italic() {
		s.raw(` font-style="italic"`)
	}
	switch t.Anchor {
	case display.Middle:
		s.raw(` text-anchor="middle"`)
	case display.Finish:
		s.raw(` text-anchor="end"`)
	}
	if t.Angle != 0 {
		s.raw(` transform="rotate(`).decimals(t.Angle*180/math.Pi, 2)
		s.raw(" ").number(t.X).raw(" ").number(t.Y).raw(`)"`)
	}
	s.paint("fill", t.Fill)
	if t.Halo.A > 0 {
		s.paint("stroke", t.Halo)
		s.raw(` stroke-width="`).number(t.HaloWidth()).raw(`" paint-order="stroke"`)
	}
	s.raw(">").escaped(t.Text).raw("</text>\n")
}
