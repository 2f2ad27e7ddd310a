package display

import (
	"math"
	"slices"

	"strandway/chart/geom"
	"strandway/chart/text"
)

// Extents are the boxes of a list's ink in millimetres, line widths included.
type Extents struct {
	Items []geom.Box // one for each item; a Begin has the box of its group, an End none
	Ink   geom.Box   // around all of it, on the page or beyond

	open    []int    // the Begins whose groups are open
	symbols []placed // as each was placed last
}

// placed is the box of a symbol's ink under a map without its shift, and that map.
type placed struct {
	as    geom.Matrix
	box   geom.Box
	known bool
}

// Measure finds how far the ink of every item goes.
func (l *List) Measure() Extents {
	var e Extents
	e.Extend(l)
	return e
}

// Extend measures what was added to a list since it was measured last.
func (e *Extents) Extend(l *List) {
	if len(e.Items) == 0 {
		e.Ink = geom.Empty()
	}
	e.Items = slices.Grow(e.Items, cap(l.Items)-len(e.Items)) // it is measured again when more was drawn
	for i := len(e.Items); i < len(l.Items); i++ {
		box := geom.Empty()
		e.Items = append(e.Items, box)
		switch item := l.Items[i].(type) {
		case Begin:
			e.open = append(e.open, i)
			continue
		case End:
			n := len(e.open)
			if n == 0 {
				continue
			}
			box = e.Items[e.open[n-1]]
			e.open = e.open[:n-1]
		case Use:
			box = e.use(l, item)
			e.Items[i] = box
		default:
			box = l.inkBox(item)
			e.Items[i] = box
		}
		if n := len(e.open); n > 0 {
			e.Items[e.open[n-1]] = e.Items[e.open[n-1]].Union(box)
		}
		e.Ink = e.Ink.Union(box)
	}
}

// use is the box of a symbol's ink. Most of a chart's symbols stand as the ones
// before them, only elsewhere, and are not measured anew.
func (e *Extents) use(l *List, u Use) geom.Box {
	if u.Symbol < 0 || u.Symbol >= len(l.Symbols) {
		return geom.Empty()
	}
	for u.Symbol >= len(e.symbols) {
		e.symbols = append(e.symbols, placed{})
	}
	as := u.At
	as.E, as.F = 0, 0
	s := &e.symbols[u.Symbol]
	if !s.known || s.as != as {
		*s = placed{as, l.inkBox(Use{Symbol: u.Symbol, At: as}), true}
	}
	shift := geom.Point{X: u.At.E, Y: u.At.F}
	return geom.Box{Min: s.box.Min.Add(shift), Max: s.box.Max.Add(shift)}
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
func (path Path) box(m geom.Matrix) geom.Box {
	b := path.Path.Transform(m).Bounds()
	if !path.Stroke.On || b.IsEmpty() {
		return b
	}
	// a round pen becomes an ellipse, and this is half its width and height
	pen := geom.Point{X: math.Hypot(m.A, m.C), Y: math.Hypot(m.B, m.D)}.Mul(path.Width / 2)
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
