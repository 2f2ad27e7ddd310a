// Package svg writes display lists as SVG: true to size in millimetres, every
// symbol defined once and used by reference, every group with the id and title
// of what it draws.
package svg

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image/color"
	"io"
	"math"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/render/png"
)

// Options say how a list is written.
type Options struct {
	TextAsText  bool // keep text as text, which can be searched and changed but looks different where the font is missing
	Transparent bool // leave the page's background out
}

// Write writes a list. The same list always gives the same bytes.
func Write(w io.Writer, l *display.List, o Options) error {
	s := &writer{list: l, options: o, symbols: symbolIDs(l.Symbols), colour: []color.NRGBA{{A: 255}}}
	s.open()
	s.definitions()
	s.items()
	s.raw("</g>\n</svg>\n")
	if s.err != nil {
		return s.err
	}
	_, err := w.Write(s.out)
	return err
}

// writer builds the document, kept whole in memory: a large chart is a megabyte.
type writer struct {
	list    *display.List
	options Options
	out     []byte
	symbols []string      // id of every symbol
	colour  []color.NRGBA // the colour that Uses inherit, of every open group
	err     error
}

func (s *writer) open() {
	l := s.list
	s.raw(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	s.raw(`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" version="1.1"`)
	s.raw(` width="`).number(l.Width).raw(`mm" height="`).number(l.Height).raw(`mm"`)
	s.raw(` viewBox="0 0 `).number(l.Width).raw(" ").number(l.Height).raw(`" role="img"`)
	if l.Title != "" {
		s.attribute("aria-label", l.Title)
	}
	s.raw(">\n")
	s.element("title", l.Title)
	s.element("desc", l.Desc)
}

// definitions defines the symbols and, for text as paths, the letters.
func (s *writer) definitions() {
	s.raw("<defs>\n")
	for i, symbol := range s.list.Symbols {
		s.raw(`<g id="` + s.symbols[i] + `">`)
		for _, p := range symbol.Paths {
			s.path(p, 3) // a thousandth: symbols may be placed enlarged
		}
		s.raw("</g>\n")
	}
	if !s.options.TextAsText {
		s.letters()
	}
	s.raw("</defs>\n")
	if bg := s.list.Background; bg.A > 0 && !s.options.Transparent {
		s.raw(`<rect width="`).number(s.list.Width).raw(`" height="`).number(s.list.Height).raw(`"`)
		s.paint("fill", bg)
		s.raw("/>\n")
	}
	s.raw(`<g fill="none" stroke-linecap="round" stroke-linejoin="round" color="#000000">` + "\n")
}

func (s *writer) items() {
	for i, item := range s.list.Items {
		switch item := item.(type) {
		case display.Begin:
			s.begin(i, item)
		case display.End:
			s.end()
		case display.Path:
			s.path(item, 2)
			s.raw("\n")
		case display.Use:
			s.use(item)
		case display.Text:
			if item.Text == "" {
				continue
			}
			if s.options.TextAsText {
				s.text(item)
			} else {
				s.textAsPaths(item)
			}
		case display.Picture:
			s.picture(item)
		}
	}
	for len(s.colour) > 1 {
		s.end()
	}
}

// begin opens a group, in the colour of the first symbol in it, so that those
// that follow need not name it.
func (s *writer) begin(i int, b display.Begin) {
	s.raw("<g")
	if b.ID != "" {
		s.attribute("id", b.ID)
	}
	if b.Class != "" {
		s.attribute("class", b.Class)
	}
	inherited := s.colour[len(s.colour)-1]
	colour := inherited
	for _, item := range s.list.Items[i+1:] {
		if _, end := item.(display.End); end {
			break
		}
		if u, ok := item.(display.Use); ok {
			colour = u.Ink
			break
		}
	}
	if colour != inherited {
		s.ink(colour)
	}
	s.colour = append(s.colour, colour)
	s.raw(">\n")
	s.element("title", b.Title)
}

func (s *writer) end() {
	if n := len(s.colour); n > 1 {
		s.colour = s.colour[:n-1]
		s.raw("</g>\n")
	}
}

func (s *writer) use(u display.Use) {
	if u.Symbol < 0 || u.Symbol >= len(s.symbols) {
		return
	}
	s.raw(`<use xlink:href="#` + s.symbols[u.Symbol] + `"`)
	if u.At.A == 1 && u.At.B == 0 && u.At.C == 0 && u.At.D == 1 {
		s.raw(` x="`).number(u.At.E).raw(`" y="`).number(u.At.F).raw(`"`)
	} else {
		s.raw(` transform="`).matrix(u.At).raw(`"`)
	}
	if u.Ink != s.colour[len(s.colour)-1] {
		s.ink(u.Ink)
	}
	s.raw("/>\n")
}

func (s *writer) path(p display.Path, decimals int) {
	s.raw(`<path d="`).outline(p.Path, decimals).raw(`"`)
	if p.Fill.On {
		s.paintOrInk("fill", p.Fill)
	}
	if p.Stroke.On {
		s.paintOrInk("stroke", p.Stroke)
		s.raw(` stroke-width="`).decimals(p.Width, 3).raw(`"`)
		for i, length := range p.Dash {
			s.raw([]string{` stroke-dasharray="`, " "}[min(i, 1)]).number(length)
		}
		if len(p.Dash) > 0 {
			s.raw(`"`)
		}
	}
	s.raw("/>")
}

func (s *writer) picture(p display.Picture) {
	if p.Image == nil {
		return
	}
	var data bytes.Buffer
	if err := png.Encode(&data, p.Image, png.Options{}); err != nil {
		s.err = fmt.Errorf("picture %q: %w", p.Alt, err)
		return
	}
	s.raw(`<image x="`).number(p.X).raw(`" y="`).number(p.Y)
	s.raw(`" width="`).number(p.Width).raw(`" height="`).number(p.Height).raw(`" preserveAspectRatio="none"`)
	if p.Alt != "" {
		s.raw(` role="img"`).attribute("aria-label", p.Alt)
	}
	s.raw(` xlink:href="data:image/png;base64,`)
	s.out = base64.StdEncoding.AppendEncode(s.out, data.Bytes())
	s.raw(`"/>` + "\n")
}

// matrix writes a placement as what it is: a shift and a turn where that is all.
func (s *writer) matrix(m geom.Matrix) *writer {
	const close = 1e-6
	if math.Abs(m.A-m.D) < close && math.Abs(m.B+m.C) < close && math.Abs(m.A*m.D-m.B*m.C-1) < close {
		s.raw("translate(").number(m.E).raw(" ").number(m.F)
		return s.raw(")rotate(").decimals(math.Atan2(m.B, m.A)*180/math.Pi, 2).raw(")")
	}
	s.raw("matrix(")
	for _, v := range []float64{m.A, m.B, m.C, m.D} {
		s.decimals(v, 5).raw(" ")
	}
	return s.number(m.E).raw(" ").number(m.F).raw(")")
}
