package chart

import (
	"math"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/text"
)

// repeats brackets what repeats: across below the foundation, up beside the rows.
func (e *engraver) repeats() {
	if !e.p.Repeat.On && !e.p.Upward.On {
		return
	}
	e.begin("repeats", "repeats", "", -1)
	if e.p.Repeat.On {
		e.across(e.p.Repeat.From+.06, e.p.Repeat.To-.06, e.label(e.p.Repeat.Label))
	}
	if e.p.Upward.On {
		e.upward(int(e.p.Upward.From), int(e.p.Upward.To), e.label(e.p.Upward.Label))
	}
	e.end()
}

// across brackets a stretch of stitches.
func (e *engraver) across(from, to float64, label string) {
	low := math.Inf(1)
	for id := range e.p.Poses {
		if q := &e.p.Poses[id]; q.Placed && q.Top.X > from-1 && q.Top.X < to+1 {
			low = min(low, q.Top.Y)
		}
	}
	if math.IsInf(low, 1) {
		return
	}
	y := low - .78
	e.line(e.look.faint, thinStroke, geom.Point{X: from, Y: y + .3}, geom.Point{X: from, Y: y}, geom.Point{X: to, Y: y}, geom.Point{X: to, Y: y + .3})
	at := e.page(geom.Point{X: (from + to) / 2, Y: y - .78})
	e.text(display.Text{X: at.X, Y: at.Y, Size: labelSize * e.unit, Anchor: display.Middle, Fill: e.look.faint, Text: label})
}

// upward brackets rows, at the edge away from most numbers' ends.
func (e *engraver) upward(from, to int, label string) {
	all, rows := e.rowBoxes()
	if from < 1 || to >= len(rows) || from > to {
		return
	}
	box := rows[from]
	for r := from; r <= to; r++ {
		box = box.Union(rows[r])
	}
	u := e.unit
	x, y0, y1 := all.Max.X+.5*u, box.Max.Y-.12*u, box.Min.Y+.12*u
	var p geom.Path
	p.MoveTo(geom.Point{X: x - .3*u, Y: y0})
	p.LineTo(geom.Point{X: x, Y: y0})
	p.LineTo(geom.Point{X: x, Y: y1})
	p.LineTo(geom.Point{X: x - .3*u, Y: y1})
	e.list.Items = append(e.list.Items, display.Path{Path: p, Stroke: display.Solid(e.look.faint), Width: thinStroke * u})
	size := labelSize * u
	t := display.Text{X: x + .3*u, Y: (y0+y1)/2 + .28*size, Size: size, Anchor: display.Start, Fill: e.look.faint, Text: label}
	if text.Width(text.Sans, label, size) < y0-y1 { // turned along the bracket where there is room
		t.X, t.Y, t.Anchor, t.Angle = x+.95*u, (y0+y1)/2, display.Middle, -math.Pi/2
	}
	e.text(t)
}
