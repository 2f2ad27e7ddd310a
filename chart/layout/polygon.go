package layout

import (
	"math"
	"slices"

	"strandway/chart/geom"
	"strandway/model/fabric"
)

const (
	cornerReach = .9  // how far from a corner its rounding begins
	cornerCut   = .35 // how much it takes off the tip
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
	last := int32(-1)
	for i := r.first; i < r.last; i++ {
		q := p.nodes[i].fan
		if q < 0 || q == last {
			continue
		}
		last = q
		f := &p.fans[q]
		if atEnd := f.first == r.first || f.last == r.last-1; atEnd && !r.closed { // it widens the row
			continue
		}
		if f.chains || f.members >= 3 && p.nodes[f.first].low {
			shaped = append(shaped, p.fanCorner(f, r))
		}
	}
	if c, ok := p.seamCorner(r); ok {
		shaped = append(shaped, c)
		if c.below < 0 && len(marked) > 0 {
			marked = append(marked, c)
		}
	}
	n := len(marked)
	begins := len(shaped) == n+1 // in a corner, whose group is written in two parts and bears no mark
	if n >= 3 && n <= 8 && (wanted == 0 && !begins || n == wanted) {
		return marked
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
	q, _ := slices.BinarySearchFunc(p.fans, i, func(f fan, i int32) int { return int(f.last - i) })
	if q < len(p.fans) && p.fans[q].first <= i {
		return p.fanCorner(&p.fans[q], r)
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
	if rounds[most] > 0 && rounds[most]*2 >= len(p.rows) {
		return most
	}
	if last := len(p.cornersOf(len(p.rows)-1, 0)); last == 3 || last == 4 { // a circle brought into a triangle or a square
		return last
	}
	return 0
}

// countSpines is the number of corners that most rows from a point have between
// their edges, as a shawl with a spine has one; 0 for rows that lie round.
func (p *piece) countSpines() int {
	var rows [4]int
	for k, r := range p.rows {
		n := 0
		for _, c := range p.cornersOf(k, 0) {
			if i := r.first + int32(c.at); c.at > 0 && int(c.at) < r.len()-1 && (p.nodes[i].chain || p.nodes[i+1].chain) {
				n++
			}
		}
		if n > 0 && n < len(rows) {
			rows[n]++
		}
	}
	for n, count := range rows {
		if count*2 >= len(p.rows) {
			return n
		}
	}
	return 0
}

// sides is how many straight sides a row of a piece with corners has, and the
// angle that each of them takes.
func (p *piece) sides() (n int, step float64) {
	if p.manner == Point {
		return p.corners + 1, p.open / float64(p.corners+1)
	}
	return p.corners, 2 * math.Pi / float64(p.corners)
}

// apothem keeps a side wide enough for its stitches.
func (p *piece) apothem(k int, radius []float64) float64 {
	n, step := p.sides()
	side := math.Tan(step/2) * 2 * float64(n)
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
// side at the top. Rows from a point have their ends for outer corners.
func (p *piece) placePolygon(radius []float64) {
	corners := p.cornerPlaces()
	defer p.turnInside(corners)
	sides, step := p.sides()
	open := p.manner == Point
	start := math.Pi/2 - step/2
	if open {
		start = (math.Pi - p.open) / 2
	}
	for k, r := range p.rows {
		if corners[k] == nil {
			continue
		}
		n := r.len()
		sum, soft := make([]float64, n+1), make([]float64, n+1)
		for i := range n {
			a, b := r.first+int32(i), r.first+int32((i+1)%n)
			sum[i+1] = sum[i] + p.gap(a, b)
			soft[i+1] = soft[i]
			if p.h.measured || p.corners == 3 || !p.withinFan(a, b) { // in cloth, and about a sharp corner, the stitches of a fan share the room
				soft[i+1]++
			}
		}
		ends := slices.Clone(corners[k]) // of the sides, as places in the row
		if open {
			ends = append(append([]float64{0}, ends...), float64(n-1))
		} else {
			ends = append(ends, ends[0]+float64(n))
		}
		tip := radius[k] / math.Cos(step/2)
		for c := range sides {
			a, b := ends[c], ends[c+1]
			if b <= a {
				b += float64(n)
			}
			t := start + float64(c)*step
			s := side{from: polar(t, tip), to: polar(t+step, tip), sharpFrom: open && c == 0, sharpTo: open && c == sides-1}
			width, slack := along(sum, b)-along(sum, a), along(soft, b)-along(soft, a)
			more := 0.0 // for each gap outside the fans, so that these keep together on a long side
			if spare := s.to.Sub(s.from).Len() - width; spare > 0 && slack > 0 {
				more = spare / slack
			}
			for i := range n {
				at := float64(i)
				if at < a {
					at += float64(n)
				}
				if at <= b {
					x := along(sum, at) - along(sum, a) + more*(along(soft, at)-along(soft, a))
					p.at[r.first+int32(i)] = s.point(x / (width + more*slack))
				}
			}
		}
	}
}

// turnInside turns the rounds within the first one with corners, which lie round
// the centre, to where its stitches stand upright on them.
func (p *piece) turnInside(corners [][]float64) {
	k := 0
	for k < len(corners) && corners[k] == nil {
		k++
	}
	if k == 0 || k == len(corners) || p.manner == Point {
		return
	}
	sin, cos := 0.0, 0.0
	for i := p.rows[k].first; i < p.rows[k].last; i++ {
		if l := p.of(i); len(l) > 0 && l[0].a >= 0 {
			s, c := math.Sincos(angleOf(p.at[i]) - angleOf(p.foot(l[0])))
			sin, cos = sin+s, cos+c
		}
	}
	turn := math.Atan2(sin, cos)
	for i := range p.rows[k].first {
		p.at[i] = p.at[i].Rotate(turn)
	}
}

// along is a running sum at a place that may lie between two, or beyond the row's end.
func along(sum []float64, at float64) float64 {
	n := len(sum) - 1
	turns := math.Floor(at / float64(n))
	at -= turns * float64(n)
	i := int(at)
	return turns*sum[n] + sum[i] + (at-float64(i))*(sum[i+1]-sum[i])
}

// withinFan reports whether neighbours a and b, or the chains they are, belong to one fan.
func (p *piece) withinFan(a, b int32) bool {
	for _, i := range [2]int32{a, b} {
		if k := p.nodes[i].fan; k >= 0 {
			f := &p.fans[k]
			return a >= f.first && a < f.last && b > f.first && b <= f.last
		}
	}
	return p.nodes[a].chain && p.nodes[b].chain
}

// side is a straight side whose ends are rounded, except where sharp.
type side struct {
	from, to           geom.Point
	sharpFrom, sharpTo bool
}

// point is the point at share t of the side.
func (s side) point(t float64) geom.Point {
	q := s.from.Lerp(s.to, t)
	end := math.Inf(1)
	if !s.sharpFrom {
		end = t
	}
	if !s.sharpTo {
		end = min(end, 1-t)
	}
	if end *= s.to.Sub(s.from).Len(); end < cornerReach {
		in := (cornerReach - end) / cornerReach
		q = q.Sub(q.Unit().Mul(cornerCut * in * in))
	}
	return q
}
