package layout

import (
	"math"

	"strandway/chart/geom"
)

const (
	squeeze   = .85 // share of its natural width below which a round may not be pressed
	stretched = 1.35
)

// placeRounds gives rounds about a centre, and rows that grow from a point, their
// direct places on circles.
//
// After it, rounds of increases lie as they stay; rounds of fans and chains wait
// to be relaxed.
func (p *piece) placeRounds() {
	turn := 2 * math.Pi
	if p.manner == Point {
		p.open = p.opening()
		turn = p.open
	}
	radius := make([]float64, len(p.rows))
	var s separator
	for i, r := range p.rows {
		radius[i] = p.radius(i, radius, turn)
		if p.corners > 0 {
			radius[i] = p.apothem(i, radius)
		}
		p.placeRound(r, radius[i], turn, &s)
	}
	if p.corners > 0 {
		p.placePolygon(radius)
	}
}

// radius is how far out the tops of row k lie: on what they stand, and far enough
// for their width.
func (p *piece) radius(k int, radius []float64, turn float64) float64 {
	r := p.rows[k]
	sum, n := 0.0, 0.0
	for i := r.first; i < r.last; i++ {
		d := &p.nodes[i]
		if !p.below(i) || d.deep {
			continue
		}
		below := p.feetR
		if l := p.legs[d.leg]; l.a >= 0 {
			below = radius[p.nodes[l.a].row]
		}
		sum += below + d.h
		n++
	}
	out := p.feetR + 1
	if k > 0 {
		out = radius[k-1] + 1
	}
	if n > 0 {
		out = sum / n
	}
	return max(out, min(p.natural(r)*squeeze/turn, out*stretched))
}

// opening is the angle that rows from a point open to: what they widen by, over
// what they rise, and room for the first.
func (p *piece) opening() float64 {
	last := len(p.rows) - 1
	rise := 0.0
	for _, r := range p.rows[1:] {
		most := 0.0
		for i := r.first; i < r.last; i++ {
			most = max(most, p.nodes[i].h)
		}
		rise += most
	}
	first := p.natural(p.rows[0])
	open := (p.natural(p.rows[last]) - first) / max(1, rise)
	if n := 2 * float64(p.corners+1); p.corners > 0 { // straight sides grow faster than arcs
		open = n * math.Atan(open/n)
	}
	fits := first * squeeze / (p.feetR + p.rowHeight(p.rows[0]))
	return min(max(open, fits, .6), 1.9*math.Pi)
}

// placeRound places one round at radius out.
func (p *piece) placeRound(r row, out, turn float64, s *separator) {
	n := r.len()
	s.size(n)
	natural, chains, any := 0.0, false, false
	before := math.NaN()
	for k := range n {
		i := r.first + int32(k)
		s.gap[k] = p.gap(i, r.first+int32((k+1)%n))
		natural += s.gap[k]
		chains = chains || p.nodes[i].chain
		if !p.below(i) || p.inRing(i) {
			continue
		}
		var c geom.Point
		for _, l := range p.of(i) {
			c = c.Add(p.foot(l).Unit())
		}
		// fans about a centre open to the right, as angles run to the left
		t := near(angleOf(c)+p.along(i)/out, before)
		before = t
		s.x[k], s.weight[k], s.known[k] = t, 1, true
		any = true
	}
	if p.manner == Point && n > 1 {
		natural -= s.gap[n-1]
	}
	switch {
	case !any:
		from := 0.0
		if p.manner == Point {
			from = (math.Pi - turn) / 2
		}
		s.spread(from, turn/natural)
	case !chains:
		s.spreadNear(turn/natural, p.manner == Point, turn)
	case p.manner == Point:
		s.fillOpen(chainGap / out)
		s.scaleGaps(1 / out)
		s.settle()
	default:
		s.fillRound(2 * math.Pi)
		s.scaleGaps(min(1, turn*out/natural*.999) / out)
		s.settleRound(2 * math.Pi)
	}
	for k := range n {
		p.at[r.first+int32(k)] = polar(s.x[k], out)
	}
}

// along is how far node i stands from the middle of its fan, u, to the left.
func (p *piece) along(i int32) float64 {
	k := p.nodes[i].fan
	if k < 0 {
		return 0
	}
	f := &p.fans[k]
	before, whole := 0.0, 0.0
	for j := f.first; j < f.last; j++ {
		if j == i {
			before = whole
		}
		whole += p.gap(j, j+1)
	}
	if i == f.last {
		before = whole
	}
	return before - whole/2
}

// near is the angle t plus whole turns nearest to u; t itself when u is unknown.
func near(t, u float64) float64 {
	if math.IsNaN(u) {
		return t
	}
	return t + 2*math.Pi*math.Round((u-t)/(2*math.Pi))
}

// spread puts the points one gap after another from a start.
func (s *separator) spread(from, scale float64) {
	for k := range s.x {
		s.x[k] = from
		from += s.gap[k] * scale
	}
}

// spreadNear spreads the points evenly and turns them as near to their wishes as
// they come; rows from a point are centred instead.
func (s *separator) spreadNear(scale float64, open bool, turn float64) {
	sin, cos, t := 0.0, 0.0, 0.0
	for k := range s.x {
		if s.known[k] {
			ds, dc := math.Sincos(s.x[k] - t)
			sin, cos = sin+ds, cos+dc
		}
		t += s.gap[k] * scale
	}
	from := math.Atan2(sin, cos)
	if open {
		from = (math.Pi - turn) / 2
	}
	s.spread(from, scale)
}

// fillRound spreads unknown points evenly between known ones, going round a line of
// length turn.
func (s *separator) fillRound(turn float64) {
	n := len(s.x)
	first := 0
	for !s.known[first] {
		first++
	}
	last := first
	for step := 1; step <= n; step++ {
		k := first + step
		if !s.known[k%n] {
			continue
		}
		a, b := s.x[last%n], s.x[k%n]
		for b <= a && k >= n {
			b += turn
		}
		for j := last + 1; j < k; j++ {
			x := a + (b-a)*float64(j-last)/float64(k-last)
			if j >= n {
				x -= turn
			}
			s.x[j%n], s.weight[j%n] = x, chainPull
		}
		last = k
	}
}

// fillOpen does so in a row with two ends, beyond which points follow by step.
func (s *separator) fillOpen(step float64) {
	n := len(s.x)
	for k := 0; k < n; {
		if s.known[k] {
			k++
			continue
		}
		e := k
		for e < n && !s.known[e] {
			e++
		}
		var a, b float64
		switch {
		case k > 0 && e < n:
			a, b = s.x[k-1], s.x[e]
		case k > 0:
			a = s.x[k-1]
			b = a + float64(e-k+1)*step
		default:
			b = s.x[e]
			a = b - float64(e-k+1)*step
		}
		for j := k; j < e; j++ {
			s.x[j], s.weight[j] = a+(b-a)*float64(j-k+1)/float64(e-k+1), chainPull
		}
		k = e
	}
}

func (s *separator) scaleGaps(by float64) {
	for k := range s.gap {
		s.gap[k] *= by
	}
}
