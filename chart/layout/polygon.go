package layout

import (
	"math"

	"strandway/chart/geom"
	"strandway/model/fabric"
)

const (
	cornerReach = .9  // how far from a corner its rounding begins
	cornerCut   = .45 // how much it takes off the tip
	sidePress   = .92 // share of its natural width that a side needs
)

// corner is where a round turns.
type corner struct {
	at    float64 // place in the row
	below float64 // place in the row below that it stands in, -1 for none
}

// cornersOf lists the corners of row k in their order: where the fabric marks
// them, else fans with chains inside, or of three low stitches or more. Marks that
// do not come to the number wanted, if any, give way to fans that do.
func (p *piece) cornersOf(k, wanted int) []corner {
	var marked, shaped []corner
	r := p.rows[k]
	for i := r.first; i < r.last; i++ {
		if p.f.Stitches[p.nodes[i].id].Has(fabric.Corner) {
			marked = append(marked, p.markedCorner(i, r))
		}
	}
	if n := len(marked); n >= 3 && n <= 8 && (wanted == 0 || n == wanted) {
		return marked
	}
	last := int32(-1)
	for i := r.first; i < r.last; i++ {
		q := p.nodes[i].fan
		if q < 0 || q == last {
			continue
		}
		last = q
		if f := &p.fans[q]; f.chains || f.members >= 3 && p.nodes[f.first].low {
			shaped = append(shaped, p.fanCorner(f, r))
		}
	}
	return shaped
}

func (p *piece) fanCorner(f *fan, r row) corner {
	return corner{
		at:    float64(f.first+f.last)/2 - float64(r.first),
		below: p.placeInRow(p.legs[p.nodes[f.first].leg]),
	}
}

// markedCorner is the corner at node i: the middle of its fan, or of its chains.
func (p *piece) markedCorner(i int32, r row) corner {
	for q := range p.fans {
		if f := &p.fans[q]; f.first <= i && i <= f.last {
			return p.fanCorner(f, r)
		}
	}
	a, b := i, i
	for p.nodes[i].chain && a > r.first && p.nodes[a-1].chain {
		a--
	}
	for p.nodes[i].chain && b+1 < r.last && p.nodes[b+1].chain {
		b++
	}
	c := corner{at: float64(a+b)/2 - float64(r.first), below: -1}
	if n := &p.nodes[i]; n.nlegs > 0 {
		c.below = p.placeInRow(p.legs[n.leg])
	}
	return c
}

// countCorners is the number of corners that most rounds have; 0 when they do not
// lie as a polygon.
func (p *piece) countCorners() int {
	var rounds [9]int
	for k := range p.rows {
		if c := len(p.cornersOf(k, 0)); c >= 3 && c <= 8 && c != 7 {
			rounds[c]++
		}
	}
	most := 3
	for c, n := range rounds {
		if n > rounds[most] {
			most = c
		}
	}
	if rounds[most] == 0 || rounds[most]*2 < len(p.rows) {
		return 0
	}
	return most
}

// apothem keeps a side of a polygon wide enough for its stitches.
func (p *piece) apothem(k int, radius []float64) float64 {
	side := math.Tan(math.Pi/float64(p.corners)) * 2 * float64(p.corners)
	return max(radius[k], min(p.natural(p.rows[k])*sidePress/side, radius[k]*1.3))
}

// cornerPlaces gives the corners of each round as places in its row, nil where
// they are unknown. They are linked from the last round down: below a corner lies
// the place its fan stands in, so the first round gets its corners too.
func (p *piece) cornerPlaces() [][]float64 {
	out := make([][]float64, len(p.rows))
	var above []float64
	for k := len(p.rows) - 1; k >= 0; k-- {
		r := p.rows[k]
		here := p.cornersOf(k, p.corners)
		if len(here) != p.corners {
			out[k] = above
			above = p.standOn(r, above)
			continue
		}
		at, below := make([]float64, 0, len(here)), make([]float64, 0, len(here))
		for _, c := range here {
			at, below = append(at, c.at), append(below, c.below)
		}
		if above != nil { // begin with the same corner as the round above
			from := nearestRound(at, above[0], float64(r.len()))
			at = append(at[from:], at[:from]...)
			below = append(below[from:], below[:from]...)
		}
		out[k], above = at, below
		for _, b := range below {
			if b < 0 {
				above = nil
			}
		}
	}
	return out
}

// placeInRow is where a leg's place lies in its row; -1 for the ring.
func (p *piece) placeInRow(l leg) float64 {
	if l.a < 0 {
		return -1
	}
	return float64(l.a+l.b)/2 - float64(p.rows[p.nodes[l.a].row].first)
}

// standOn carries corners one round down; nil when one stands on nothing.
func (p *piece) standOn(r row, corners []float64) []float64 {
	var out []float64
	for _, c := range corners {
		i := r.first + int32(c)%int32(r.len())
		if p.nodes[i].nlegs == 0 || p.inRing(i) {
			return nil
		}
		out = append(out, p.placeInRow(p.legs[p.nodes[i].leg]))
	}
	return out
}

func nearestRound(at []float64, c, n float64) int {
	best, least := 0, math.Inf(1)
	for k, a := range at {
		d := math.Abs(a - c)
		if d = min(d, n-d); d < least {
			best, least = k, d
		}
	}
	return best
}

// placePolygon lays the rounds on straight sides between their corners, with a
// side at the top.
func (p *piece) placePolygon(radius []float64) {
	corners := p.cornerPlaces()
	step := 2 * math.Pi / float64(p.corners)
	for k, r := range p.rows {
		if corners[k] == nil {
			continue
		}
		n := r.len()
		sum := make([]float64, n+1)
		for i := range n {
			sum[i+1] = sum[i] + p.gap(r.first+int32(i), r.first+int32((i+1)%n))
		}
		whole := sum[n]
		at := func(c float64) float64 {
			i := min(int(c), n-1)
			return sum[i] + (c-float64(i))*(sum[i+1]-sum[i])
		}
		tip := radius[k] / math.Cos(step/2)
		for c := range p.corners {
			a, b := at(corners[k][c]), at(corners[k][(c+1)%p.corners])
			if b <= a {
				b += whole
			}
			t := math.Pi/2 - step/2 + float64(c)*step
			from, to := polar(t, tip), polar(t+step, tip)
			for i := range n {
				x := sum[i]
				if x < a {
					x += whole
				}
				if x <= b {
					p.at[r.first+int32(i)] = onSide(from, to, (x-a)/(b-a))
				}
			}
		}
	}
}

// onSide is the point at share t of a side whose ends are rounded.
func onSide(from, to geom.Point, t float64) geom.Point {
	q := from.Lerp(to, t)
	if end := min(t, 1-t) * to.Sub(from).Len(); end < cornerReach {
		in := (cornerReach - end) / cornerReach
		q = q.Sub(q.Unit().Mul(cornerCut * in * in))
	}
	return q
}
