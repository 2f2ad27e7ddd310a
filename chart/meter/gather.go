package meter

import (
	"strings"

	"strandway/chart/display"
	"strandway/chart/geom"
)

// strip is a straight piece of drawn line, in mm.
type strip struct {
	a, b   geom.Point
	half   float64 // of the line's width
	stitch int32   // -1 for what is no stitch
	part   int32   // which drawing of the stitch: each oval of a chain is one, all else together is 0
	mark   int32   // of what is no stitch: the item it belongs to
}

// label is a line of text: its box in its own frame, and the way to the page.
type label struct {
	text  string
	box   geom.Box
	place geom.Matrix
	item  int32
}

// gather takes the strips and labels out of a list. What stands in the key is
// no part of the chart, and the lines of notes lead over it on purpose.
func (m *measure) gather(l *display.List) {
	type group struct {
		stitch int32
		key    bool
	}
	open := []group{{stitch: -1}}
	for i, item := range l.Items {
		in := open[len(open)-1]
		switch item := item.(type) {
		case display.Begin:
			if item.Stitch >= 0 {
				in.stitch = item.Stitch
			}
			in.key = in.key || item.Class == "key" || item.Class == "callouts"
			open = append(open, in)
		case display.End:
			open = open[:len(open)-1]
		case display.Text:
			plain := item
			plain.X, plain.Y, plain.Angle, plain.Anchor, plain.Halo.A = 0, 0, 0, display.Start, 0
			box := (&display.List{Items: []display.Item{plain}}).Measure().Ink
			m.texts = append(m.texts, label{item.Text, box, item.Place(), int32(i)})
		case display.Path:
			if !in.key && item.Stroke.On {
				m.path(item, geom.Identity, strip{stitch: in.stitch, mark: int32(i)})
			}
		case display.Use:
			if !in.key {
				m.use(l.Symbols[item.Symbol], item.At, strip{stitch: in.stitch, mark: int32(i)})
			}
		}
	}
}

func (m *measure) use(s display.Symbol, at geom.Matrix, like strip) {
	if name, _, _ := strings.Cut(s.Name, "-"); name == "chain" && like.stitch >= 0 {
		like.part = like.mark + 1
		m.oval(s, at, like)
	}
	for _, p := range s.Paths {
		if p.Stroke.On && p.Stroke.Inherit { // any other line in a symbol is the white of a casing
			m.path(p, at, like)
		}
	}
}

// oval checks that a chain's oval is long enough.
func (m *measure) oval(s display.Symbol, at geom.Matrix, like strip) {
	box := geom.Empty()
	for _, p := range s.Paths {
		if p.Stroke.Inherit {
			box = box.Union(p.Path.Bounds().Grow(p.Width / 2))
		}
	}
	long, short := max(box.Width(), box.Height()), min(box.Width(), box.Height())
	if long < leastLength*m.unit || long < leastShape*short {
		m.fault(Fault{Kind: Squeezed, A: like.stitch, B: -1, At: at.Apply(box.Centre()), Size: long / m.unit})
	}
}

func (m *measure) path(p display.Path, at geom.Matrix, like strip) {
	like.half = p.Width / 2
	for _, run := range p.Path.Transform(at).Flatten(.01 * m.unit) {
		n := len(run.Points)
		for i := range n {
			if i == n-1 && !run.Closed && n > 1 {
				break
			}
			like.a, like.b = run.Points[i], run.Points[(i+1)%n]
			m.strips = append(m.strips, like)
		}
	}
}
