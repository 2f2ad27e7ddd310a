package chart

import (
	"math"

	"strandway/chart/display"
	"strandway/chart/geom"
)

// inkMap tells how far a point of the page lies from what is drawn already.
type inkMap struct {
	cell   float64 // mm
	points map[[2]int32][]geom.Point
}

// mapInk samples all that is drawn so far.
func (e *engraver) mapInk() *inkMap {
	m := &inkMap{cell: .5 * e.unit, points: make(map[[2]int32][]geom.Point)}
	samples := make([][]geom.Point, len(e.list.Symbols))
	for i, s := range e.list.Symbols {
		for _, p := range s.Paths {
			for _, run := range p.Path.Flatten(.02 * e.unit) {
				samples[i] = append(samples[i], sampled(run.Points, .15*e.unit)...)
			}
		}
	}
	for _, item := range e.list.Items {
		switch t := item.(type) {
		case display.Use:
			for _, p := range samples[t.Symbol] {
				m.add(t.At.Apply(p))
			}
		case display.Text:
			m.addBox((&display.List{Items: []display.Item{t}}).Measure().Ink)
		case display.Path:
			if !t.Stroke.On { // a tint
				continue
			}
			for _, run := range t.Path.Flatten(.02 * e.unit) {
				for _, p := range sampled(run.Points, .15*e.unit) {
					m.add(p)
				}
			}
		}
	}
	return m
}

// sampled gives points on a run of lines no farther apart than step.
func sampled(run []geom.Point, step float64) []geom.Point {
	var out []geom.Point
	for i, p := range run {
		out = append(out, p)
		if i+1 == len(run) {
			break
		}
		n := int(run[i+1].Sub(p).Len() / step)
		for k := 1; k <= n; k++ {
			out = append(out, p.Lerp(run[i+1], float64(k)/float64(n+1)))
		}
	}
	return out
}

// addBox fills a box with points.
func (m *inkMap) addBox(b geom.Box) {
	if b.IsEmpty() {
		return
	}
	step := .3 * m.cell
	nx, ny := int(b.Width()/step)+1, int(b.Height()/step)+1
	for y := range ny + 1 {
		for x := range nx + 1 {
			m.add(geom.Point{X: b.Min.X + b.Width()*float64(x)/float64(nx), Y: b.Min.Y + b.Height()*float64(y)/float64(ny)})
		}
	}
}

func (m *inkMap) add(p geom.Point) {
	k := m.key(p)
	m.points[k] = append(m.points[k], p)
}

func (m *inkMap) key(p geom.Point) [2]int32 {
	return [2]int32{int32(math.Floor(p.X / m.cell)), int32(math.Floor(p.Y / m.cell))}
}

// clearance is the distance from p to the nearest ink, in mm, no more than enough.
func (m *inkMap) clearance(p geom.Point, enough float64) float64 {
	k, reach := m.key(p), int32(math.Ceil(enough/m.cell))
	best := enough
	for dy := -reach; dy <= reach; dy++ {
		for dx := -reach; dx <= reach; dx++ {
			for _, q := range m.points[[2]int32{k[0] + dx, k[1] + dy}] {
				best = min(best, q.Sub(p).Len())
			}
		}
	}
	return best
}
