package layout

import (
	"math"
	"slices"

	"strandway/chart/geom"
)

const (
	hollowShare = .78 // of the radius of flat rounds, under which a piece is hollow
	leastRounds = 4
	leastSides  = 2   // rounds without growth that make a side
	growthShare = .5  // of the growth that lies flat, under which rounds are sides
	widerSides  = 1.6 // how much wider than the crown the sides may grow and still lie as a strip
	stripMargin = 3   // between a crown and the strip of its sides, u
	sightFrom   = 24 * math.Pi / 180
)

// profile is the shape of rounds as a body of revolution.
type profile struct {
	radius, up []float64 // by row
	sides      int       // the first row of the sides; 0 for none that would lie as a strip
}

// hollow gives the profile of a piece whose rounds grow too slowly to lie flat, as
// those of a hat or a ball do; nil for a flat one.
func (p *piece) hollow() *profile {
	if p.manner != Circle || len(p.rows) < leastRounds {
		return nil
	}
	q := &profile{sides: len(p.rows)}
	flat, last, up, before, straight := p.feetR/2, 0.0, 0.0, 0.0, 0
	for k, r := range p.rows {
		if !r.closed {
			return nil
		}
		h, natural := p.rowHeight(r), p.natural(r)
		flat += h
		switch {
		case natural-before < growthShare*2*math.Pi*h:
			straight++
		case straight < leastSides: // a brim that grows below the sides is part of them
			q.sides, straight = k+1, 0
		}
		before = natural
		d := max(-.95*h, min(h, natural/(2*math.Pi)-last))
		last += d
		up -= math.Sqrt(max(0, h*h-d*d))
		q.radius, q.up = append(q.radius, last), append(q.up, up)
	}
	if last >= hollowShare*flat {
		return nil
	}
	lace := 0 // rounds of the sides with chains, which a strip would pull askew
	for _, r := range p.rows[min(q.sides, len(p.rows)):] {
		if q.sides > 0 && p.natural(r) > widerSides*p.natural(p.rows[q.sides-1]) {
			q.sides = 0
		}
		chains := 0
		p.runs(r, func(a, b int32) { chains++ })
		lace += min(chains, 1)
	}
	if 2*lace >= len(p.rows)-q.sides {
		q.sides = 0
	}
	return q
}

// layBody shows a hollow body. Cloth is seen as a body, from a little above, with
// depth. A chart shows the crown as a circle and beneath it the sides as a strip,
// cut open where the rounds begin.
func (p *piece) layBody(plan *Plan) {
	q := p.hollow()
	switch {
	case q == nil:
	case p.h.measured:
		p.turnBody(q, plan)
	case q.sides > 0 && q.sides+1 < len(p.rows):
		p.layStrip(q.sides)
		plan.Strip = p.rows[q.sides].source
	}
}

// rounded is the profile of rows whose stitches give radius and rise: fabric does
// not fold at an edge, it bends over a few rows.
func (q *profile) rounded() *profile {
	n := len(q.radius)
	out, in := make([]float64, n), make([]float64, n) // growth and drop of each row
	for i := range n {
		out[i], in[i] = q.radius[i], -q.up[i]
		if i > 0 {
			out[i], in[i] = q.radius[i]-q.radius[i-1], q.up[i-1]-q.up[i]
		}
	}
	slope := make([]float64, n)
	for i := range n {
		slope[i] = math.Atan2(in[i], out[i])
	}
	const bends = 2
	for range bends {
		was := slices.Clone(slope)
		for i := range n {
			slope[i] = (was[max(i-1, 0)] + 2*was[i] + was[min(i+1, n-1)]) / 4
		}
	}
	r := &profile{sides: q.sides}
	radius, up := 0.0, 0.0
	for i := range n {
		h := math.Hypot(out[i], in[i])
		sin, cos := math.Sincos(slope[i])
		radius, up = max(.2, radius+h*cos), up-h*sin
		r.radius, r.up = append(r.radius, radius), append(r.up, up)
	}
	girth := slices.Max(q.radius) / slices.Max(r.radius) // the widest round is as wide as its stitches
	for i := range r.radius {
		r.radius[i] *= girth
	}
	return r
}

// turnBody puts every node on the body's surface as it is seen. What faces away
// is drawn inward, so that its yarn does not show beyond the outline.
func (p *piece) turnBody(q *profile, plan *Plan) {
	const inward = .8 // u
	q = q.rounded()
	sin, cos := math.Sincos(sightFrom)
	radius, up := 0.0, 0.0
	for k, r := range p.rows {
		rise, out := math.Sincos(math.Atan2(up-q.up[k], q.radius[k]-radius)) // of the surface, outward and upward
		radius, up = q.radius[k], q.up[k]
		for i := r.first; i < r.last; i++ {
			s, c := math.Sincos(angleOf(p.at[i]))
			x, front := radius*s, radius*c
			at := geom.Point{X: x, Y: up*cos - front*sin}
			if away := -(rise*c*cos + out*sin); away > 0 {
				at = at.Sub(geom.Point{X: rise * s, Y: out*cos - rise*c*sin}.Mul(inward * min(1, 4*away)))
			}
			p.at[i] = at
			plan.Poses[p.nodes[i].id].Depth = front*cos + up*sin
		}
	}
}

// layStrip lays the rows from k on beneath the rounds before them. The round they
// stand on is not drawn again: only its places are there.
func (p *piece) layStrip(k int) {
	bottom := 0.0
	for i := range p.rows[k].first {
		bottom = min(bottom, p.at[i].Y)
	}
	ground := p.rows[k-1]
	n := int32(ground.len())
	shift := int32(len(p.nodes)) - ground.first
	pitch := 1.0 // a brim that widens the sides spreads their columns
	for _, r := range p.rows[k:] {
		pitch = max(pitch, p.natural(r)/p.natural(ground))
	}
	for i := range n {
		p.ghost(geom.Point{X: float64(i) * pitch})
		p.nodes[len(p.nodes)-1].row = int32(k - 1)
	}
	for j := p.nodes[p.rows[k].first].leg; j < int32(len(p.legs)); j++ {
		if l := &p.legs[j]; l.a >= ground.first && l.a < ground.last && l.b >= ground.first && l.b < ground.last {
			l.a, l.b = l.a+shift, l.b+shift
		}
	}
	high, wide := 0.0, float64(n-1)*pitch
	var s separator
	for j := k; j < len(p.rows); j++ {
		r := &p.rows[j]
		r.closed = false
		p.placeRow(*r, &s)
		for i := r.first; i < r.last; i++ {
			high = max(high, p.at[i].Y)
		}
	}
	lay := func(first, last int32) { // rounds run from right to left
		for i := first; i < last; i++ {
			p.at[i].X = wide/2 - p.at[i].X
			p.at[i].Y += bottom - stripMargin - high
		}
	}
	lay(p.rows[k].first, p.rows[len(p.rows)-1].last)
	lay(ground.first+shift, ground.last+shift)
}
