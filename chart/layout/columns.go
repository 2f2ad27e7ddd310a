package layout

import (
	"math"

	"strandway/chart/geom"
)

const (
	chainPull   = .15 // weight of a chain's wish against a stitch's
	turnPull    = 2.0
	deepPull    = .4
	steepStep   = .6 // neighbours with more height between them may stand closer
	steepGap    = .7
	tightBridge = .73 // of their gaps, that chains keep at least
	widestPitch = 1.35
	endShare    = 1.2 // of its gap, at most, between a decrease that ends a row and its neighbour
	loopGap     = .75 // share of their gap that the chains of a loop of three or more need
	loopShare   = .62 // share of its length by which such a loop widens the row
)

// placeColumns gives every node of flat rows its direct place: above its places,
// no nearer to its neighbours than its gap.
//
// After it, rows of plain stitches, ribs and meshes lie as they stay.
func (p *piece) placeColumns() {
	if len(p.rows) == 0 {
		return
	}
	pitch := p.pitch()
	r := p.rows[0]
	for i := r.first; i < r.last; i++ {
		p.at[i] = geom.Point{X: float64(i-r.first) * pitch, Y: p.nodes[i].h}
	}
	var s separator
	for _, r := range p.rows[1:] {
		p.placeRow(r, &s)
	}
}

// pitch is the distance of foundation stitches: the widest row decides, within
// what a foundation can give.
func (p *piece) pitch() float64 {
	if len(p.rows) == 1 {
		return 2 * stitchHalf
	}
	below := p.rows[0].len()
	most := 0.0
	for k, r := range p.rows[1:] {
		if q := p.period; q != nil { // one repeat from the middle, free of the edges
			n := q.nodes[k+1]
			spare := int32(r.len()) - n
			left, right := r.first+spare/2, r.first+(spare+1)/2
			w := max(p.widthOf(r, left, left+n), p.widthOf(r, right, right+n))
			most = max(most, w/float64(q.nodes[0]))
		} else if below > 1 {
			most = max(most, p.widthOf(r, r.first, r.last-1)/float64(below-1))
		}
	}
	return min(max(most, .88), widestPitch)
}

// widthOf is how much width the nodes from a to b need; loops bow and need less
// than their length.
func (p *piece) widthOf(r row, a, b int32) float64 {
	w := 0.0
	for i := a; i < b && i+1 < r.last; i++ {
		w += p.gap(i, i+1)
	}
	p.runs(r, func(first, last int32) {
		if n := last - first; n >= 3 {
			within := float64(max(0, min(last, b)-max(first, a)))
			w -= chainGap * (1 - loopShare) * within * float64(n-2) / float64(n)
		}
	})
	p.runs(r, func(first, last int32) {
		if share := p.bridgeShare(first, last); share < 1 {
			for i := max(first-1, a); i < min(last, b); i++ {
				w -= (1 - share) * p.gap(i, i+1)
			}
		}
	})
	return w
}

// bridgeShare is the share of their gaps that the chains from a to b keep where
// they bridge fewer stitches than they are, as mosaic rows do: the columns beside
// them stay where they are. It is 1 for other runs.
func (p *piece) bridgeShare(a, b int32) float64 {
	left, right := p.prev(a), p.next(b-1)
	if b-a > 2 || left < 0 || right < 0 || p.nodes[left].nlegs != 1 || p.nodes[right].nlegs != 1 || p.nodes[left].deep || p.nodes[right].deep {
		return 1
	}
	l, m := p.legs[p.nodes[left].leg], p.legs[p.nodes[right].leg]
	if l.a != l.b || m.a != m.b || l.a < 0 || m.a < 0 || p.nodes[l.a].row != p.nodes[m.a].row || m.a-l.a < 2 {
		return 1
	}
	below := 0.0
	for i := l.a; i < m.a; i++ {
		below += p.gap(i, i+1)
	}
	r := p.rows[p.nodes[l.a].row]
	p.runs(r, func(c, d int32) { // which may be drawn together itself
		if c >= l.a && d <= m.a {
			share := p.bridgeShare(c, d)
			for i := c - 1; share < 1 && i < d; i++ {
				below -= (1 - share) * p.gap(i, i+1)
			}
		}
	})
	own := 0.0
	for i := left; i < right; i++ {
		own += p.gap(i, i+1)
	}
	return min(1, max(tightBridge, below/own))
}

// placeRow gives a row its direct places over the rows below it.
func (p *piece) placeRow(r row, s *separator) {
	n := r.len()
	s.size(n)
	for k := range n {
		i := r.first + int32(k)
		if k+1 < n {
			s.gap[k] = p.gap(i, i+1)
		} else {
			s.gap[k] = 0
		}
		d := &p.nodes[i]
		if !p.below(i) {
			continue
		}
		x, y := 0.0, math.Inf(-1)
		for _, l := range p.of(i) {
			b := p.foot(l)
			x += b.X / float64(d.nlegs)
			y = max(y, b.Y)
		}
		if a := p.leanOf(i); a != 0 {
			x -= math.Sin(a) * d.h
			if !p.widens(&p.fans[d.fan]) { // rows of increases stay straight
				y -= (1 - math.Cos(a)) * d.h * .6
			}
		}
		s.x[k], s.weight[k], s.known[k] = x, 1, true
		if d.turn {
			s.weight[k] = turnPull
		}
		if d.deep {
			s.weight[k] = deepPull
		}
		p.at[i].Y = y + d.h
	}
	p.levelRow(r)
	p.fillUnknown(r, s)
	p.runs(r, func(a, b int32) {
		share := p.bridgeShare(a, b)
		for i := max(a-1, r.first); share < 1 && i < b; i++ {
			s.gap[i-r.first] *= share
		}
	})
	for k := 0; k+1 < n; k++ {
		if i := r.first + int32(k); math.Abs(p.at[i].Y-p.at[i+1].Y) > steepStep {
			s.gap[k] *= steepGap
		}
	}
	s.settle()
	if n > 1 {
		if d := &p.nodes[r.first]; d.nlegs > 1 {
			s.x[0] = max(s.x[0], s.x[1]-endShare*s.gap[0])
		}
		if d := &p.nodes[r.last-1]; d.nlegs > 1 {
			s.x[n-1] = min(s.x[n-1], s.x[n-2]+endShare*s.gap[n-2])
		}
	}
	for k := range n {
		p.at[r.first+int32(k)].X = s.x[k]
	}
	p.closeUp(r)
}

// levelRow puts long stitches and posts among others level with the ordinary
// stitches on either side. In cloth the edges of rows that close round spaces or
// posts sink with them.
func (p *piece) levelRow(r row) {
	sinks := p.h.measured && p.sinks(r)
	levels := func(i int32) bool { return p.nodes[i].level || sinks && p.endsRow(i, r) }
	ordinary := func(i int32) bool { return p.below(i) && !levels(i) }
	prev := int32(-1)
	for i := r.first; i < r.last; i++ {
		if ordinary(i) {
			prev = i
			continue
		}
		if p.nodes[i].nlegs == 0 || !levels(i) {
			continue
		}
		next := i + 1
		for next < r.last && !ordinary(next) {
			next++
		}
		switch {
		case prev >= 0 && next < r.last:
			p.at[i].Y = (p.at[prev].Y + p.at[next].Y) / 2
		case prev >= 0:
			p.at[i].Y = p.at[prev].Y
		case next < r.last:
			p.at[i].Y = p.at[next].Y
		}
	}
}

// sinks reports whether a row closes round spaces or posts, which swallow height.
func (p *piece) sinks(r row) bool {
	for i := r.first; i < r.last; i++ {
		if n := &p.nodes[i]; n.nlegs > 0 && (p.legs[n.leg].space || p.legs[n.leg].post != 0) {
			return true
		}
	}
	return false
}

// endsRow reports whether a node stands at an edge, or for an edge stitch.
func (p *piece) endsRow(i int32, r row) bool {
	return p.nodes[i].turn || i == r.first || i == r.last-1
}

// fillUnknown spreads nodes without places, mostly chains, evenly between those
// that have them, a run of chains bowing up or sagging down.
func (p *piece) fillUnknown(r row, s *separator) {
	n := r.len()
	at := func(k int) geom.Point { return geom.Point{X: s.x[k], Y: p.at[r.first+int32(k)].Y} }
	for k := 0; k < n; {
		if s.known[k] {
			k++
			continue
		}
		e := k
		for e < n && !s.known[e] {
			e++
		}
		var a, b geom.Point
		span := float64(e-k+1) * chainGap
		switch {
		case k > 0 && e < n:
			a, b = at(k-1), at(e)
		case k > 0:
			a = at(k - 1)
			b = geom.Point{X: a.X + span, Y: a.Y}
		case e < n:
			b = at(e)
			a = geom.Point{X: b.X - span, Y: b.Y}
		default:
			b.X = span
		}
		bow := p.h.arch
		if !p.h.measured {
			bow *= [...]float64{0, 0, .5, 1}[min(3, e-k)]
		}
		for j := k; j < e; j++ {
			t := float64(j-k+1) / float64(e-k+1)
			q := a.Lerp(b, t)
			s.x[j], s.weight[j] = q.X, chainPull
			p.at[r.first+int32(j)].Y = q.Y + bow*math.Sin(math.Pi*t)
			if e-k >= 3 {
				s.gap[j] *= loopGap
				if j == k && k > 0 {
					s.gap[k-1] *= loopGap
				}
			}
		}
		k = e
	}
}
