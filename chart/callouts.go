package chart

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/chart/text"
	"strandway/model/pattern"
)

const (
	calloutSize = .7  // the em of notes, u
	calloutDot  = .09 // at the stitch's end of the line
	noteDrop    = .28 // of a note's size, from its middle to its baseline
)

// CalloutsOf gives the notes that a pattern has on one of its pieces.
func CalloutsOf(p *pattern.Pattern, piece int) []Callout {
	var out []Callout
	for _, c := range p.Callouts {
		if c.On(p, piece) {
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
	for i, c := range e.o.Callouts {
		if id := calledOut(e.p, c); id >= 0 {
			e.begin(fmt.Sprintf("%s%d", noteID, i), "callout", "", -1)
			e.callout(id, c, ink)
			e.end()
		}
	}
	e.end()
}

// noteID begins the ids of notes in a chart; their index among the callouts follows.
const noteID = "callout-"

// Note is a callout as a chart has it.
type Note struct {
	Index int        // among [Options.Callouts]
	Head  geom.Point // of its stitch, mm on the page
	Box   geom.Box   // of its words, mm on the page
}

// Notes finds the callouts in a chart; one whose stitch the chart has not is not there.
func Notes(l *display.List) []Note {
	var out []Note
	in := -1 // the callout whose group is open
	for _, item := range l.Items {
		switch item := item.(type) {
		case display.Begin:
			if item.Class != "callout" {
				continue
			}
			if n, err := strconv.Atoi(strings.TrimPrefix(item.ID, noteID)); err == nil {
				in = n
				out = append(out, Note{Index: n})
			}
		case display.End:
			in = -1
		case display.Path:
			if in >= 0 && len(item.Path.Points) > 0 && out[len(out)-1].Head == (geom.Point{}) {
				out[len(out)-1].Head = item.Path.Points[0] // the line begins at the stitch
			}
		case display.Text:
			if in >= 0 {
				out[len(out)-1].Box = noteBox(item)
			}
		}
	}
	return out
}

// noteBox is the box of a note's words.
func noteBox(t display.Text) geom.Box {
	half := text.Width(t.Face, t.Text, t.Size) / 2
	middle := t.Y - noteDrop*t.Size
	return geom.Box{Min: geom.Point{X: t.X - half, Y: middle - .7*t.Size}, Max: geom.Point{X: t.X + half, Y: middle + .7*t.Size}}
}

// CalloutAt is a callout to a stitch of a plan, without words yet; false where
// none can name it: the foundation has no row's number.
func CalloutAt(p *layout.Plan, id int32) (c Callout, ok bool) {
	if id < 0 || int(id) >= len(p.Poses) || !p.Poses[id].Placed || p.Poses[id].Dropped {
		return c, false
	}
	row := &p.Fabric.Rows[p.Fabric.Stitches[id].Row]
	c.Row = row.No
	for n := row.First; n <= id; n++ {
		if p.Poses[n].Placed && !p.Poses[n].Dropped {
			c.Stitch++
		}
	}
	return c, calledOut(p, c) == id
}

// calledOut is the stitch that a note speaks of; -1 when the chart has none such.
func calledOut(p *layout.Plan, c Callout) int32 {
	for r := range p.Fabric.Rows {
		row := &p.Fabric.Rows[r]
		if row.No != c.Row || r == 0 {
			continue
		}
		n := 0
		for id := row.First; id < row.Last; id++ {
			if p.Poses[id].Placed && !p.Poses[id].Dropped {
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
	e.text(display.Text{X: at.X, Y: at.Y + noteDrop*size, Size: size, Anchor: display.Middle, Face: display.Sans, Fill: e.look.text, Halo: e.look.paper, Text: c.Text})
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
