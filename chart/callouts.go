package chart

import (
	"math"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/text"
	"strandway/model/pattern"
)

const (
	calloutSize = .7  // the em of notes, u
	calloutDot  = .09 // at the stitch's end of the line
)

// CalloutsOf gives the notes that a pattern has on one of its pieces.
func CalloutsOf(p *pattern.Pattern, piece int) []Callout {
	var out []Callout
	for _, c := range p.Callouts {
		if c.Piece == p.Pieces[piece].Name || c.Piece == "" && piece == 0 {
			out = append(out, Callout{c.Row, c.Stitch, c.Text, geom.Point{X: c.X, Y: c.Y}})
		}
	}
	return out
}

// callouts writes the designer's notes, each with a line to its stitch.
func (e *engraver) callouts() {
	if len(e.o.Callouts) == 0 {
		return
	}
	e.begin("callouts", "callouts", "", -1)
	ink := e.mapInk()
	for _, c := range e.o.Callouts {
		if id := e.stitchOf(c); id >= 0 {
			e.callout(id, c, ink)
		}
	}
	e.end()
}

// stitchOf is the stitch that a note speaks of; -1 when the chart has none such.
func (e *engraver) stitchOf(c Callout) int32 {
	for r := range e.f.Rows {
		row := &e.f.Rows[r]
		if row.No != c.Row || r == 0 {
			continue
		}
		n := 0
		for id := row.First; id < row.Last; id++ {
			if e.p.Poses[id].Placed && !e.p.Poses[id].Dropped {
				if n++; n == c.Stitch {
					return id
				}
			}
		}
	}
	return -1
}

func (e *engraver) callout(id int32, c Callout, ink *inkMap) {
	p := &e.p.Poses[id]
	head := e.page(p.Top)
	size := calloutSize * e.unit
	half := text.Width(display.Sans, c.Text, size)/2 + .15*e.unit
	at := head.Add(e.page(c.Away))
	if c.Away == (geom.Point{}) {
		at = e.roomForNote(head, half, size, ink)
	}
	box := geom.Box{Min: geom.Point{X: at.X - half, Y: at.Y - .7*size}, Max: geom.Point{X: at.X + half, Y: at.Y + .7*size}}
	end := geom.Point{X: min(max(head.X, box.Min.X), box.Max.X), Y: min(max(head.Y, box.Min.Y), box.Max.Y)}
	var line geom.Path
	line.MoveTo(head)
	line.LineTo(end)
	colour := display.Solid(e.look.faint)
	e.list.Items = append(e.list.Items,
		display.Path{Path: line, Stroke: colour, Width: .04 * e.unit},
		display.Path{Path: disc(head, calloutDot*e.unit), Fill: colour})
	e.text(display.Text{X: at.X, Y: at.Y + .28*size, Size: size, Anchor: display.Middle, Face: display.Sans, Fill: e.look.text, Halo: e.look.paper, Text: c.Text})
	ink.addBox(box)
}

// roomForNote finds the nearest place for a note that keeps off all ink.
func (e *engraver) roomForNote(head geom.Point, half, size float64, ink *inkMap) geom.Point {
	best, most := head, -1.0
	for far := 1.2; far < 14; far += .6 {
		for k := range 16 {
			turn := math.Pi/2 + float64((k+1)/2)*math.Pi/8*float64(1-2*(k%2))
			at := head.Add(geom.Point{X: math.Cos(turn), Y: -math.Sin(turn)}.Mul(far * e.unit))
			room := size
			for d := -half; d <= half; d += .3 * e.unit {
				room = min(room, ink.clearance(at.Add(geom.Point{X: d}), size))
			}
			if room > most {
				best, most = at, room
			}
			if most >= size {
				return best
			}
		}
	}
	return best
}

// disc is a filled circle.
func disc(c geom.Point, r float64) geom.Path {
	const k = .5523 // of the radius, to the handles of a quarter
	var p geom.Path
	at := func(x, y float64) geom.Point { return c.Add(geom.Point{X: x * r, Y: y * r}) }
	p.MoveTo(at(1, 0))
	p.CubicTo(at(1, k), at(k, 1), at(0, 1))
	p.CubicTo(at(-k, 1), at(-1, k), at(-1, 0))
	p.CubicTo(at(-1, -k), at(-k, -1), at(0, -1))
	p.CubicTo(at(k, -1), at(1, -k), at(1, 0))
	p.Close()
	return p
}
