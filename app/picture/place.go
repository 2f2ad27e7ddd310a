package picture

import (
	"fyne.io/fyne/v2"

	"strandway/chart/geom"
)

// PlaceOf is where a stitch stands in the window, below its middle.
func (p *Pane) PlaceOf(id int32) (at fyne.Position, ok bool) {
	if p.sight == nil {
		return at, false
	}
	b := p.sight.bounds(id)
	if b.IsEmpty() {
		return at, false
	}
	q := p.matrix(1).Apply(geom.Point{X: b.Centre().X, Y: b.Min.Y})
	return fyne.CurrentApp().Driver().AbsolutePositionForObject(p).AddXY(float32(q.X), float32(q.Y)+4), true
}

// Holds reports whether a place of the window lies in the pane.
func (p *Pane) Holds(at fyne.Position) bool {
	in := at.Subtract(fyne.CurrentApp().Driver().AbsolutePositionForObject(p))
	return p.sight != nil && p.Visible() && in.X >= 0 && in.Y >= 0 && in.X <= p.Size().Width && in.Y <= p.Size().Height
}
