// Package text measures and outlines lines of text in the embedded faces, once
// for all painters: a line is as long on the screen as in a PNG, an SVG or a PDF.
package text

import (
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"strandway/chart/geom"
)

// Glyph is one letter of a line set by [Set].
type Glyph struct {
	Rune  rune
	Index uint16  // in the face's font file; 0 where the face lacks the rune
	X     float64 // em: from the start of the line
	Kern  float64 // em: how much the letter was moved towards or from the one before it
}

// Set is a line of text set in a face, kerned, and its length in em.
func Set(face Face, s string) (glyphs []Glyph, length float64) {
	f := face.load()
	var b sfnt.Buffer
	em := fixed.Int26_6(f.UnitsPerEm()) // at this size a font unit is 1/64 pixel: nothing is rounded
	unit := 1 / float64(em)
	glyphs = make([]Glyph, 0, len(s))
	for i, r := range s {
		index, _ := f.GlyphIndex(&b, r)
		g := Glyph{Rune: r, Index: uint16(index)}
		if i > 0 {
			before := sfnt.GlyphIndex(glyphs[len(glyphs)-1].Index)
			if kern, err := f.Kern(&b, before, index, em, font.HintingNone); err == nil {
				g.Kern = float64(kern) * unit
			}
		}
		g.X = length + g.Kern
		glyphs = append(glyphs, g)
		advance, _ := f.GlyphAdvance(&b, index, em, font.HintingNone)
		length = g.X + float64(advance)*unit
	}
	return glyphs, length
}

// Width is the length of a line of text in the unit of size, the em.
func Width(face Face, s string, size float64) float64 {
	_, length := Set(face, s)
	return length * size
}

// Outline is the outline of a line of text that starts at the origin and stands
// on the x axis, y downward, in the unit of size, the em.
func Outline(face Face, s string, size float64) geom.Path {
	var line geom.Path
	glyphs, _ := Set(face, s)
	for _, g := range glyphs {
		letter := Letter(face, g.Index).Transform(geom.Matrix{A: size, D: size, E: g.X * size})
		line.Verbs = append(line.Verbs, letter.Verbs...)
		line.Points = append(line.Points, letter.Points...)
	}
	return line
}

// Letter is the outline of one glyph of a face, in em, y downward. It is shared, and must not be changed.
func Letter(face Face, index uint16) geom.Path {
	if p, ok := face.letters().Load(index); ok {
		return p.(geom.Path)
	}
	p := letter(face, index)
	face.letters().Store(index, p)
	return p
}

func letter(face Face, index uint16) geom.Path {
	var p geom.Path
	f := face.load()
	var b sfnt.Buffer
	em := fixed.Int26_6(f.UnitsPerEm())
	segments, err := f.LoadGlyph(&b, sfnt.GlyphIndex(index), em, nil)
	if err != nil {
		return p
	}
	point := func(a fixed.Point26_6) geom.Point {
		return geom.Point{X: float64(a.X), Y: float64(a.Y)}.Mul(1 / float64(em))
	}
	var at geom.Point
	for _, s := range segments {
		end := point(s.Args[0])
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if len(p.Verbs) > 0 {
				p.Close()
			}
			p.MoveTo(end)
		case sfnt.SegmentOpLineTo:
			p.LineTo(end)
		case sfnt.SegmentOpQuadTo:
			middle := end
			end = point(s.Args[1])
			p.CubicTo(at.Lerp(middle, 2./3), end.Lerp(middle, 2./3), end)
		case sfnt.SegmentOpCubeTo:
			middle := point(s.Args[1])
			p.CubicTo(end, middle, point(s.Args[2]))
			end = point(s.Args[2])
		}
		at = end
	}
	if len(p.Verbs) > 0 {
		p.Close()
	}
	return p
}
