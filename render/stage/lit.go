package stage

import (
	"image/color"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/model/colour"
	"strandway/model/fabric"
	"strandway/model/steps"
)

// unit is the chart's millimetres to one stitch width.
const unit = 5

// group is what the chart draws of one stitch.
type group struct {
	stitch   int32
	from, to int // items [from, to)
}

// groups finds the stitches among a chart's items. What belongs to no stitch (numbers,
// repeats, marks of yarn) is left to the words of the stage.
func groups(l *display.List, f *fabric.Fabric) []group {
	var out []group
	depth := 0
	for i, item := range l.Items {
		switch t := item.(type) {
		case display.Begin:
			if depth > 0 {
				depth++
			} else if t.Stitch >= 0 && int(t.Stitch) < len(f.Stitches) || t.Class == "ring" {
				out = append(out, group{stitch: t.Stitch, from: i})
				depth = 1
			}
		case display.End:
			if depth > 0 {
				if depth--; depth == 0 {
					out[len(out)-1].to = i + 1
				}
			}
		}
	}
	return out
}

// onPaper gives the casings round a chart's lines the stage's paper for the chart's own.
func onPaper(l *display.List) {
	was := l.Background
	paint := func(p display.Paint) display.Paint {
		if p.On && !p.Inherit && p.Colour == was {
			p.Colour = paper
		}
		return p
	}
	for _, symbol := range l.Symbols {
		for i, p := range symbol.Paths {
			symbol.Paths[i].Stroke, symbol.Paths[i].Fill = paint(p.Stroke), paint(p.Fill)
		}
	}
	for i, item := range l.Items {
		switch t := item.(type) {
		case display.Use:
			if t.Ink == was {
				t.Ink = paper
			}
			l.Items[i] = t
		case display.Path:
			t.Stroke, t.Fill = paint(t.Stroke), paint(t.Fill)
			l.Items[i] = t
		}
	}
	l.Background = paper
}

// worked is the chart at a step: what is worked in its ink, the stitch in hand lit, the
// rest of the row pale, and nothing of the rows to come. In steps of a row, the rows
// before are paler than the row in hand.
func (s *Stage) worked(step steps.Step, seen geom.Box) *display.List {
	l := &display.List{Width: s.list.Width, Height: s.list.Height, Symbols: s.list.Symbols}
	var lit []group
	for _, g := range s.groups {
		if g.stitch < 0 {
			l.Items = append(l.Items, s.list.Items[g.from:g.to]...)
			continue
		}
		row := int(s.f.Stitches[g.stitch].Row)
		if row > step.Row || !seen.Contains(s.chart.plan.Poses[g.stitch].Top) {
			continue
		}
		switch byRow := s.Steps.By == steps.Row; {
		case byRow && row < step.Row:
			s.put(l, g, func(c color.NRGBA) color.NRGBA { return colour.Mix(c, paper, .5) })
		case byRow || g.stitch < step.First:
			l.Items = append(l.Items, s.list.Items[g.from:g.to]...)
		case g.stitch < step.Last:
			lit = append(lit, g)
		default:
			s.put(l, g, func(c color.NRGBA) color.NRGBA { return colour.Mix(c, paper, .78) })
		}
	}
	for _, g := range lit {
		s.put(l, g, func(color.NRGBA) color.NRGBA { return accent })
	}
	return l
}

// put adds a group in other inks. Casings stay what they are.
func (s *Stage) put(l *display.List, g group, ink func(color.NRGBA) color.NRGBA) {
	for _, item := range s.list.Items[g.from:g.to] {
		switch t := item.(type) {
		case display.Use:
			if t.Ink != paper {
				t.Ink = ink(t.Ink)
			}
			item = t
		case display.Path:
			t.Stroke, t.Fill = s.inked(t.Stroke, ink), s.inked(t.Fill, ink)
			item = t
		}
		l.Items = append(l.Items, item)
	}
}

func (s *Stage) inked(p display.Paint, ink func(color.NRGBA) color.NRGBA) display.Paint {
	if p.On && !p.Inherit && p.Colour != paper {
		p.Colour = ink(p.Colour)
	}
	return p
}

// under is what lies below the chart's ink: the place the stitch goes into.
func (s *Stage) under(step steps.Step, toStage geom.Matrix, scale float64) *display.List {
	l := &display.List{Width: Width, Height: Height}
	if s.Steps.By == steps.Row {
		return l
	}
	for _, b := range step.Places {
		around := s.around(b)
		if around.IsEmpty() {
			continue
		}
		l.Items = append(l.Items, frame(toStage.ApplyBox(around).Grow(.46*scale), .22*scale, wash, accent, 2.2))
	}
	return l
}

// around is the box round the middles of a place's stitches on the chart.
func (s *Stage) around(b fabric.Base) geom.Box {
	if b.At < 0 {
		return geom.Box{} // the ring is the middle of the chart
	}
	out := geom.Empty()
	for _, id := range s.placed(b) {
		out = out.Add(s.chart.plan.Poses[id].Top)
	}
	return out
}

// placed are the stitches that make up a place: the chains of a space, else one.
func (s *Stage) placed(b fabric.Base) []int32 {
	if b.How != fabric.Space {
		return []int32{b.At}
	}
	var ids []int32
	for id := b.At; int(id) < len(s.f.Stitches) && s.f.Stitches[id].Has(fabric.Chain) && s.f.Stitches[id].Row == s.f.Stitches[b.At].Row; id++ {
		ids = append(ids, id)
	}
	if len(ids) == 0 {
		ids = append(ids, b.At)
	}
	return ids
}

// over is what lies on the cloth: the place dashed, the stitch in hand in a line.
func (s *Stage) over(step steps.Step, toStage geom.Matrix, scale float64) *display.List {
	l := &display.List{Width: Width, Height: Height}
	ring := func(b geom.Box, width float64, dash []float64) {
		if b.IsEmpty() {
			return
		}
		b = toStage.ApplyBox(b)
		back := frame(b, .25*scale, color.NRGBA{}, paper, width+3)
		line := frame(b, .25*scale, color.NRGBA{}, accent, width)
		line.Dash = dash
		l.Items = append(l.Items, back, line)
	}
	hand := geom.Empty()
	for id := step.First; id < step.Last; id++ {
		hand = hand.Union(s.cloth.body(id))
	}
	ring(hand.Grow(.42), 3, nil)
	for _, b := range step.Places {
		if b.At < 0 {
			continue
		}
		place := geom.Empty()
		for _, id := range s.placed(b) {
			if onPost(b) {
				place = place.Union(s.cloth.body(id))
			} else {
				place = place.Add(s.cloth.plan.Poses[id].Top)
			}
		}
		ring(place.Grow(.34), 2, []float64{5, 4})
	}
	return l
}

func onPost(b fabric.Base) bool { return b.How == fabric.FrontPost || b.How == fabric.BackPost }

// frame is a rectangle with round corners.
func frame(b geom.Box, radius float64, fill, line color.NRGBA, width float64) display.Path {
	const k = .5523 // of a quarter circle
	r := min(radius, b.Width()/2, b.Height()/2)
	var p geom.Path
	at := func(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }
	x0, y0, x1, y1, c := b.Min.X, b.Min.Y, b.Max.X, b.Max.Y, r*(1-k)
	p.MoveTo(at(x0+r, y0))
	p.LineTo(at(x1-r, y0))
	p.CubicTo(at(x1-c, y0), at(x1, y0+c), at(x1, y0+r))
	p.LineTo(at(x1, y1-r))
	p.CubicTo(at(x1, y1-c), at(x1-c, y1), at(x1-r, y1))
	p.LineTo(at(x0+r, y1))
	p.CubicTo(at(x0+c, y1), at(x0, y1-c), at(x0, y1-r))
	p.LineTo(at(x0, y0+r))
	p.CubicTo(at(x0, y0+c), at(x0+c, y0), at(x0+r, y0))
	p.Close()
	out := display.Path{Path: p, Width: width}
	if fill.A > 0 {
		out.Fill = display.Solid(fill)
	}
	if width > 0 {
		out.Stroke = display.Solid(line)
	}
	return out
}
