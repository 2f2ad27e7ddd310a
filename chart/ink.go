package chart

import (
	"math"

	"strandway/chart/display"
	"strandway/chart/geom"
)

// inkMap tells how far a point of the page lies from what is drawn already. It
// samples only what lies near the points it is asked about: a few marks on a
// large chart cost no more than on a small one.
type inkMap struct {
	list    *display.List
	samples [][]geom.Point // by symbol, once one of it was met
	step    float64        // mm between samples
	boxes   []geom.Box     // by item
	bounds  geom.Box       // of all of them
	columns int            // of tiles
	tiles   []tile
	met     []bool // by item

	cell   float64 // mm
	points map[[2]int32][]geom.Point
}

// tile is a square of the page, with the items that reach into it.
type tile struct {
	items  []int32
	opened bool // its items have been sampled
}

const tileSize = 8 // cells of an ink map

// mapInk makes ready to look at all that is drawn so far.
func (e *engraver) mapInk() *inkMap {
	x := e.measured()
	m := &inkMap{list: e.list, samples: make([][]geom.Point, len(e.list.Symbols)), step: .15 * e.unit, boxes: x.Items,
		bounds: x.Ink, met: make([]bool, len(x.Items)), cell: .5 * e.unit, points: make(map[[2]int32][]geom.Point)}
	if m.bounds.IsEmpty() {
		return m
	}
	m.columns = int(m.bounds.Width()/(tileSize*m.cell)) + 1
	m.tiles = make([]tile, m.columns*(int(m.bounds.Height()/(tileSize*m.cell))+1))
	for i, item := range e.list.Items {
		switch t := item.(type) {
		case display.Use, display.Text:
		case display.Path:
			if !t.Stroke.On { // a tint
				continue
			}
		default:
			continue
		}
		for t := range m.under(m.boxes[i]) {
			t.items = append(t.items, int32(i))
		}
	}
	return m
}

// under gives the tiles that a box of the page lies on.
func (m *inkMap) under(b geom.Box) func(yield func(*tile) bool) {
	return func(yield func(*tile) bool) {
		if b.IsEmpty() || !b.Overlaps(m.bounds) {
			return
		}
		size := tileSize * m.cell
		last := len(m.tiles)/m.columns - 1
		y0, y1 := int((b.Min.Y-m.bounds.Min.Y)/size), int((b.Max.Y-m.bounds.Min.Y)/size)
		x0, x1 := int((b.Min.X-m.bounds.Min.X)/size), int((b.Max.X-m.bounds.Min.X)/size)
		for y := max(y0, 0); y <= min(y1, last); y++ {
			for x := max(x0, 0); x <= min(x1, m.columns-1); x++ {
				if !yield(&m.tiles[y*m.columns+x]) {
					return
				}
			}
		}
	}
}

// look samples what lies within reach of a point.
func (m *inkMap) look(p geom.Point, reach float64) {
	for t := range m.under(geom.Box{Min: p, Max: p}.Grow(reach)) {
		if t.opened {
			continue
		}
		t.opened = true
		for _, i := range t.items {
			if !m.met[i] {
				m.met[i] = true
				m.sample(i)
			}
		}
	}
}

func (m *inkMap) sample(i int32) {
	switch t := m.list.Items[i].(type) {
	case display.Use:
		if m.samples[t.Symbol] == nil {
			for _, p := range m.list.Symbols[t.Symbol].Paths {
				m.samples[t.Symbol] = append(m.samples[t.Symbol], sampled(p.Path, m.step)...)
			}
		}
		for _, p := range m.samples[t.Symbol] {
			m.add(t.At.Apply(p))
		}
	case display.Text:
		m.addBox(m.boxes[i])
	case display.Path:
		for _, p := range sampled(t.Path, m.step) {
			m.add(p)
		}
	}
}

// sampled gives points on a path no farther apart than step.
func sampled(path geom.Path, step float64) []geom.Point {
	var points []geom.Point
	for _, run := range path.Flatten(.02 / .15 * step) {
		for i, p := range run.Points {
			points = append(points, p)
			if i+1 == len(run.Points) {
				break
			}
			n := int(run.Points[i+1].Sub(p).Len() / step)
			for k := 1; k <= n; k++ {
				points = append(points, p.Lerp(run.Points[i+1], float64(k)/float64(n+1)))
			}
		}
	}
	return points
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
	m.look(p, enough)
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
