package schematic

import (
	"math"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
)

// Outline is the outer edge of a fabric laid out at its measured heights, in u:
// shaping, points and edgings included, holes not. It is empty for a plan
// without stitches.
//
// Every stitch covers a band one stitch wide along its legs; gaps that
// chain-spaces leave are closed; what is then traced is the edge of the cover.
func Outline(p *layout.Plan) geom.Path {
	gap := openings(p.Fabric)
	fine, within := .25, .45 // u: within is less than the rise of a ripple, more than an uneven edge
	round := p.Manner >= layout.Circle
	if round {
		fine, within, gap = .1, .2, max(gap, 2)
	}
	m := newCover(p.Box, gap, fine)
	if m == nil {
		return geom.Path{}
	}
	for id := range p.Poses {
		pose := &p.Poses[id]
		if !pose.Placed || pose.Dropped {
			continue
		}
		m.mark(pose.Top, round)
		for k := int32(0); k < int32(pose.NLegs); k++ {
			leg := p.Legs[pose.FirstLeg+k]
			way := pose.Top.Sub(leg.Foot)
			steps := int(math.Ceil(way.Len()/(m.cell*1.5))) + 1
			for i := 0; i < steps; i++ {
				m.mark(leg.Foot.Add(way.Mul(float64(i)/float64(steps))), round)
			}
		}
	}
	m.close(int(math.Ceil(gap / 2 / m.cell)))
	return m.trace(within)
}

// openings is the widest opening, in u, that does not break an edge: as wide as
// the longest run of chains, a big arch at most.
func openings(f *fabric.Fabric) float64 {
	const least, most = 1, 6
	run, longest := 0, 0
	for id := range f.Stitches {
		if s := &f.Stitches[id]; s.Row > 0 && s.Has(fabric.Chain) {
			run++
			longest = max(longest, run)
		} else {
			run = 0
		}
	}
	return float64(min(max(longest, least), most))
}

// cover is a grid of cells over the fabric that are covered or not.
type cover struct {
	origin        geom.Point // of cell 0, 0
	cell          float64    // u
	width, height int
	on            []bool
}

// newCover is an empty grid with room about the box; nil where the box is empty.
func newCover(b geom.Box, gap, fine float64) *cover {
	if b.IsEmpty() {
		return nil
	}
	const across = 500
	m := &cover{cell: max(fine, max(b.Width(), b.Height())/across)}
	room := gap + 2*m.cell
	b = b.Grow(room)
	m.origin = b.Min
	m.width, m.height = int(b.Width()/m.cell)+1, int(b.Height()/m.cell)+1
	m.on = make([]bool, m.width*m.height)
	return m
}

// mark covers half a stitch to every side of a point: a square, or a disc where edges are round.
func (m *cover) mark(at geom.Point, round bool) {
	q := at.Sub(m.origin).Mul(1 / m.cell)
	half := .5 / m.cell
	for y := max(0, int(math.Round(q.Y-half))); y < min(m.height, int(math.Round(q.Y+half))); y++ {
		for x := max(0, int(math.Round(q.X-half))); x < min(m.width, int(math.Round(q.X+half))); x++ {
			if !round || math.Hypot(float64(x)+.5-q.X, float64(y)+.5-q.Y) <= half {
				m.on[y*m.width+x] = true
			}
		}
	}
}

// close covers openings no wider than twice n cells: it grows the cover by n and
// takes as much away again.
func (m *cover) close(n int) {
	m.spread(n, true)
	m.spread(n, false)
}

// spread makes every cell within n, across or up, of one that is on (or off) like it.
func (m *cover) spread(n int, to bool) {
	line := func(start, step, count int) {
		run := make([]bool, count)
		last := -n - 1
		for i := range count {
			if m.on[start+i*step] == to {
				last = i
			}
			run[i] = i-last <= n
		}
		last = count + n + 1
		for i := count - 1; i >= 0; i-- {
			if m.on[start+i*step] == to {
				last = i
			}
			run[i] = run[i] || last-i <= n
		}
		for i := range count {
			m.on[start+i*step] = run[i] == to
		}
	}
	for y := range m.height {
		line(y*m.width, 1, m.width)
	}
	for x := range m.width {
		line(x, m.width, m.height)
	}
}

// trace walks round the largest covered part, keeping it on the left, and
// straightens what it finds to within so many u.
func (m *cover) trace(within float64) geom.Path {
	at := func(x, y int) bool { return x >= 0 && y >= 0 && x < m.width && y < m.height && m.on[y*m.width+x] }
	var best []geom.Point
	seen := map[[2]int]bool{}
	for y := range m.height {
		for x := range m.width {
			if !at(x, y) || at(x, y-1) || seen[[2]int{x, y}] {
				continue
			}
			// along the lower edge of this cell, to the right
			var ring []geom.Point
			px, py, dx, dy := x, y, 1, 0
			for {
				if dx == 1 {
					seen[[2]int{px, py}] = true
				}
				ring = append(ring, geom.Point{X: float64(px), Y: float64(py)})
				px, py = px+dx, py+dy
				// the cells ahead: to the left of the way, and to the right of it
				left, right := at(px+(dx-dy-1)/2, py+(dx+dy-1)/2), at(px+(dx+dy-1)/2, py+(dy-dx-1)/2)
				switch {
				case right:
					dx, dy = dy, -dx
				case !left:
					dx, dy = -dy, dx
				}
				if px == x && py == y && dx == 1 && dy == 0 {
					break
				}
			}
			if math.Abs(area(ring)) > math.Abs(area(best)) {
				best = ring
			}
		}
	}
	var path geom.Path
	for i, p := range straighten(best, max(1.2, within/m.cell)) {
		p = m.origin.Add(p.Mul(m.cell))
		if i == 0 {
			path.MoveTo(p)
		} else {
			path.LineTo(p)
		}
	}
	if len(path.Verbs) > 0 {
		path.Close()
	}
	return path
}

func area(ring []geom.Point) float64 {
	sum := 0.0
	for i, p := range ring {
		sum += p.Cross(ring[(i+1)%len(ring)])
	}
	return sum / 2
}

// straighten leaves out points of a ring that lie within a distance of the line between their neighbours.
func straighten(ring []geom.Point, within float64) []geom.Point {
	if len(ring) < 4 {
		return ring
	}
	far, at := 0.0, 0
	for i, p := range ring {
		if d := p.Sub(ring[0]).Len(); d > far {
			far, at = d, i
		}
	}
	half := append(ring[at:len(ring):len(ring)], ring[0])
	out := simpler(ring[:at+1], within)
	back := simpler(half, within)
	return append(out[:len(out)-1:len(out)-1], back[:len(back)-1]...)
}

// simpler keeps the ends of a run, and between them only the points farther from the line than allowed.
func simpler(run []geom.Point, within float64) []geom.Point {
	if len(run) < 3 {
		return run
	}
	a, b := run[0], run[len(run)-1]
	way := b.Sub(a)
	far, at := 0.0, 0
	for i := 1; i < len(run)-1; i++ {
		d := run[i].Sub(a).Len()
		if way.Len() > 0 {
			d = math.Abs(way.Cross(run[i].Sub(a))) / way.Len()
		}
		if d > far {
			far, at = d, i
		}
	}
	if far <= within {
		return []geom.Point{a, b}
	}
	out := simpler(run[:at+1], within)
	return append(out[:len(out)-1:len(out)-1], simpler(run[at:], within)...)
}
