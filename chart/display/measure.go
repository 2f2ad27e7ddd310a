package display

import (
	"math"

	"strandway/chart/geom"
	"strandway/chart/text"
)

// Extents are the boxes of a list's ink in millimetres, line widths included.
type Extents struct {
	Items []geom.Box // one for each item; a Begin has the box of its group, an End none
	Ink   geom.Box   // around all of it, on the page or beyond
}

// Measure finds how far the ink of every item goes.
func (l *List) Measure() Extents {
	e := Extents{Items: make([]geom.Box, len(l.Items)), Ink: geom.Empty()}
	var open []int // the Begins whose groups are open
	for i, item := range l.Items {
		box := geom.Empty()
		switch item := item.(type) {
		case Begin:
			open = append(open, i)
		case End:
			if n := len(open); n > 0 {
				box = e.Items[open[n-1]]
				open = open[:n-1]
			}
		default:
			box = l.inkBox(item)
		}
		if n := len(open); n > 0 {
			e.Items[open[n-1]] = e.Items[open[n-1]].Union(box)
		}
		e.Ink = e.Ink.Union(box)
		if _, end := item.(End); end {
			box = geom.Empty()
		}
		e.Items[i] = box
	}
	return e
}

// inkBox is the box of one item's ink, as tight as the ink.
func (l *List) inkBox(item Item) geom.Box {
	switch item := item.(type) {
	case Path:
		return item.box(geom.Identity)
	case Use:
		box := geom.Empty()
		for _, p := range l.symbol(item).Paths {
			box = box.Union(p.box(item.At))
		}
		return box
	case Text:
		return item.Place().ApplyBox(item.box())
	case Picture:
		return geom.Box{Min: geom.Point{X: item.X, Y: item.Y}, Max: geom.Point{X: item.X + item.Width, Y: item.Y + item.Height}}
	}
	return geom.Empty()
}

// symbol is the symbol that a Use places; one without paths if there is none of that number.
func (l *List) symbol(u Use) Symbol {
	if u.Symbol < 0 || u.Symbol >= len(l.Symbols) {
		return Symbol{}
	}
	return l.Symbols[u.Symbol]
}

// box is the box of the path's ink after m, which also maps its line width.
func (p Path) box(m geom.Matrix) geom.Box {
	b := p.Path.Transform(m).Bounds()
	if !p.Stroke.On || b.IsEmpty() {
		return b
	}
	// a round pen becomes an ellipse, and this is half its width and height
	pen := geom.Point{X: math.Hypot(m.A, m.C), Y: math.Hypot(m.B, m.D)}.Mul(p.Width / 2)
	return geom.Box{Min: b.Min.Sub(pen), Max: b.Max.Add(pen)}
}

// HaloWidth is the width of the line round the letters that makes the halo, in mm.
func (t Text) HaloWidth() float64 {
	if t.Halo.A == 0 {
		return 0
	}
	return t.Size / 5
}

// Place maps a line that starts at the origin and runs along the x axis to where the text stands.
func (t Text) Place() geom.Matrix {
	start := 0.0
	switch t.Anchor {
	case Middle:
		start = -text.Width(t.Face, t.Text, t.Size) / 2
	case Finish:
		start = -text.Width(t.Face, t.Text, t.Size)
	}
	return geom.Translate(start, 0).Then(geom.Rotate(t.Angle)).Then(geom.Translate(t.X, t.Y))
}

// box is the box of the letters' ink and halo in a line that starts at the origin.
func (t Text) box() geom.Box {
	b := text.Outline(t.Face, t.Text, t.Size).Bounds()
	if b.IsEmpty() {
		return b
	}
	return b.Grow(t.HaloWidth() / 2)
}
