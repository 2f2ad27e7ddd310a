package layout

import (
	"math"

	"strandway/chart/geom"
)

// stem is one leg's wish for its height and direction.
type stem struct {
	top, a, b int32
	h         float64
	short     float64 // weight when too short, too long
	long      float64
	dir       geom.Point // unit; where the top wants to stand from the foot
	turn      float64    // weight of the direction, 0 for none
	free      bool       // the direction says nothing of the height
	lean      float64    // from the row's own normal, where rows bend
}

// joined is a decrease's wish to sit over the middle of its places.
type joined struct{ top, first, n int32 }

// pair is two neighbours in a row.
type pair struct {
	a, b  int32
	gap   float64
	loose float64 // weight when further apart
	run   int32   // the run of chains between, -1 for none

	ordered bool // a stands to the left of b
}

// bend is three neighbours that want to lie in a line.
type bend struct {
	a, b, c int32
	w       float64
}

// chainRun is a run of chains and the nodes it hangs between.
type chainRun struct {
	row         int32
	from, to    int32 // the nodes at either end
	first, last int32 // chains [first, last), counted on beyond the row's end
	length      float64
	slack       bool
	loop        bool // long enough to bow
}

// chords is the mean share of their length that the loops of a row span.
type chords struct{ share, loops float64 }

const (
	tautShare  = .93 // of its length, beyond which a run is taut
	loopLength = 3.2
	widestLoop = .82 // of its length, that a loop likes to span at most
	edgeYields = 2
	outward    = .25 // how far a slack chain would drift, u
)

// gather compiles the terms of a piece.
func (x *relaxer) gather() {
	for ri, r := range x.p.rows {
		ground := ri == 0 && !x.p.hasRing
		x.gatherPairs(r, ground)
		x.gatherBends(r, ground)
		for i := r.first; i < r.last; i++ {
			x.gatherStems(i, r)
		}
	}
}

func (x *relaxer) gatherStems(i int32, r row) {
	p, n := x.p, &x.p.nodes[i]
	if n.nlegs > 1 {
		x.joined = append(x.joined, joined{i, n.leg, n.nlegs})
	}
	if n.level {
		return
	}
	for _, l := range p.of(i) {
		s := stem{top: i, a: l.a, b: l.b, h: n.h, short: x.w.height, long: x.w.height}
		if l.a < 0 {
			s.h += p.feetR
		}
		if !n.low {
			s.short *= x.w.shortTall
		}
		if x.atEdge(i, r) {
			s.short *= x.w.edge
			s.long *= x.w.edge
			s.free = x.w.edge < 1
		}
		if n.nlegs > 1 {
			s.short *= x.w.legShort
			s.long *= x.w.legLong
		} else if l.a >= 0 {
			s.turn, s.lean = x.w.upright, p.leanOf(i)
			switch {
			case n.fan >= 0:
				s.turn = x.w.fan
			case l.a == l.b && p.nodes[l.a].fan >= 0 && p.besideChain(i): // it goes on in the fan's direction
				s.turn, s.lean = x.w.fan, p.leanOf(l.a)
			case x.atEdge(i, r):
				s.turn = x.w.edgeUp
			}
			s.dir = geom.Point{X: -math.Sin(s.lean), Y: math.Cos(s.lean)}
			if p.hasRing {
				s.dir = p.outwardOf(i, l)
			}
		}
		x.stems = append(x.stems, s)
	}
}

func (x *relaxer) gatherPairs(r row, ground bool) {
	p := x.p
	inRun := map[int32]int32{}
	if !ground {
		p.runs(r, func(a, b int32) {
			if !r.closed && (a == r.first || b == r.last) {
				return
			}
			q := chainRun{row: p.nodes[r.first].row, first: a, last: b, length: float64(b-a+1) * chainGap}
			q.from, q.to = p.prev(a), p.wrap(r, b)
			q.loop = q.length > loopLength
			for i := a; i < b; i++ {
				inRun[p.wrap(r, i)] = int32(len(x.runs))
			}
			x.runs = append(x.runs, q)
		})
	}
	for i := r.first; i < r.last; i++ {
		j := p.next(i)
		if j < 0 {
			continue
		}
		q := pair{a: i, b: j, gap: p.gap(i, j), loose: x.w.together, run: -1}
		q.ordered = !p.hasRing && !p.nodes[i].chain && !p.nodes[j].chain
		if p.nodes[i].chain || p.nodes[j].chain {
			q.loose = x.w.chains
			if k, ok := inRun[i]; ok {
				q.run = k
			} else if k, ok := inRun[j]; ok {
				q.run = k
			}
		}
		x.pairs = append(x.pairs, q)
	}
}

func (x *relaxer) gatherBends(r row, ground bool) {
	p := x.p
	for i := r.first; i < r.last; i++ {
		a, c := p.prev(i), p.next(i)
		if a < 0 || c < 0 {
			continue
		}
		na, n, nc := &p.nodes[a], &p.nodes[i], &p.nodes[c]
		w := 0.0
		switch {
		case ground:
			w = x.w.smooth
		case na.chain && n.chain && nc.chain:
			w = x.w.arc
		case n.chain && !na.chain && !nc.chain:
			w = x.w.lone
		case n.chain:
			w = x.w.arc / 2
		case n.level && n.nlegs > 0:
			w = x.w.lone / 2
		case na.chain || nc.chain || n.nlegs > 1 || n.fan >= 0:
		case na.h == n.h && nc.h == n.h:
			w = x.w.smooth
		default:
			w = x.w.smooth * .3
		}
		if w > 0 {
			x.bends = append(x.bends, bend{a, i, c, w})
		}
	}
}

func (x *relaxer) pullStems() {
	bent := x.p.manner == Ripple
	for k := range x.stems {
		s := &x.stems[k]
		var b geom.Point
		if s.a >= 0 {
			b = x.at[s.a]
			if s.b != s.a {
				b = b.Lerp(x.at[s.b], .5)
			}
		}
		t := x.at[s.top]
		d := t.Sub(b)
		l := math.Sqrt(d.X*d.X + d.Y*d.Y)
		w, e := s.short, s.h-l
		if e < 0 {
			w = s.long
		}
		u := geom.Point{Y: 1}
		if l > 1e-9 {
			u = d.Mul(1 / l)
		}
		u = u.Mul(e / 2)
		x.pull(s.top, u, w)
		x.pullPlace(s.a, s.b, u.Mul(-1), w)
		if s.turn == 0 {
			continue
		}
		dir := s.dir
		if bent {
			dir = x.normal(s.a, s.b).Rotate(s.lean)
		}
		h := max(s.h, .3)
		if s.free {
			h = l
		}
		want := b.Add(dir.Mul(h)).Sub(t).Mul(.5)
		x.pull(s.top, want, s.turn)
		x.pullPlace(s.a, s.b, want.Mul(-1), s.turn)
	}
}

// besideChain reports whether a chain lies on either side of a node.
func (p *piece) besideChain(i int32) bool {
	a, b := p.prev(i), p.next(i)
	return a >= 0 && p.nodes[a].chain || b >= 0 && p.nodes[b].chain
}

// outwardOf is where a stitch of a round stands from its place l: a member of a fan
// about the way to the fan's middle, so that the fan opens as wide as its height asks.
func (p *piece) outwardOf(i int32, l leg) geom.Point {
	foot, k := p.foot(l), p.nodes[i].fan
	if k < 0 || p.corners > 0 {
		return p.at[i].Sub(foot).Unit()
	}
	f := &p.fans[k]
	// lean is to the left of what goes from left to right, and rounds go to the left
	return p.at[f.first].Lerp(p.at[f.last], .5).Sub(foot).Unit().Rotate(-p.leanOf(i))
}

// atEdge reports whether a node is one of the two that end a row.
func (x *relaxer) atEdge(i int32, r row) bool {
	return !r.closed && (x.p.nodes[i].turn || i == r.first || i == r.last-1)
}

// normal is upward from the row at the place between a and b.
func (x *relaxer) normal(a, b int32) geom.Point {
	if b < a {
		a, b = b, a
	}
	if q := x.p.prev(a); q >= 0 {
		a = q
	}
	if q := x.p.next(b); q >= 0 {
		b = q
	}
	d := x.at[b].Sub(x.at[a])
	if d.X <= 0 {
		return geom.Point{Y: 1}
	}
	return d.Perp().Unit()
}

func (x *relaxer) pullJoined() {
	for _, j := range x.joined {
		var m geom.Point
		legs := x.p.legs[j.first : j.first+j.n]
		for _, l := range legs {
			m = m.Add(x.p.foot(l))
		}
		m = m.Mul(1 / float64(j.n))
		axis := x.p.foot(legs[j.n-1]).Sub(x.p.foot(legs[0])).Unit()
		if legs[0].a == legs[j.n-1].a {
			continue
		}
		x.pull(j.top, axis.Mul(-x.at[j.top].Sub(m).Dot(axis)), x.w.fan)
	}
}

func (x *relaxer) pullPairs() {
	for k := range x.runs {
		q := &x.runs[k]
		q.slack = x.at[q.to].Sub(x.at[q.from]).Len() <= tautShare*q.length
	}
	for k := range x.pairs {
		q := &x.pairs[k]
		d := x.at[q.b].Sub(x.at[q.a])
		l := math.Sqrt(d.X*d.X + d.Y*d.Y)
		e := q.gap - l
		if q.ordered && d.X < 0 || l < 1e-9 { // past each other: back the way they came
			d, l, e = geom.Point{X: 1}, 1, q.gap+max(-d.X, 0)
		}
		w := x.w.apart
		if e < 0 {
			w = q.loose
			if q.run >= 0 && !x.runs[q.run].slack {
				w = x.w.taut
			}
		}
		d = d.Mul(e / (2 * l))
		a, b := w, w
		if x.alike != nil && e > 0 { // the repeats stand together: it is the edge that gives way
			r := x.p.rows[x.p.nodes[q.a].row]
			if x.atEdge(q.a, r) {
				a *= edgeYields
			}
			if x.atEdge(q.b, r) {
				b *= edgeYields
			}
		}
		x.pull(q.b, d.Mul(b/w), b)
		x.pull(q.a, d.Mul(-a/w), a)
	}
}

func (x *relaxer) pullBends() {
	for k := range x.bends {
		q := &x.bends[k]
		a, b, c := x.at[q.a], x.at[q.b], x.at[q.c]
		d := geom.Point{X: (a.X+c.X)/2 - b.X, Y: (a.Y+c.Y)/2 - b.Y}
		x.pull(q.b, d.Mul(.66), q.w)
		x.pull(q.a, d.Mul(-.33), q.w)
		x.pull(q.c, d.Mul(-.33), q.w)
	}
}

// pullRuns lets slack chains bow outward, and the loops of a row share its width.
func (x *relaxer) pullRuns() {
	clear(x.chords)
	for k := range x.runs {
		if q := &x.runs[k]; q.loop && q.slack {
			c := &x.chords[q.row]
			c.share += x.at[q.to].Sub(x.at[q.from]).Len() / q.length
			c.loops++
		}
	}
	for k := range x.runs {
		q := &x.runs[k]
		if !q.slack {
			continue
		}
		d := x.at[q.to].Sub(x.at[q.from])
		if q.loop {
			c := x.chords[q.row]
			e := d.Unit().Mul((q.length*min(c.share/c.loops, widestLoop) - d.Len()) / 2)
			x.pull(q.from, e.Mul(-1), x.w.chord)
			x.pull(q.to, e, x.w.chord)
		}
		r := x.p.rows[q.row]
		for i := q.first; i < q.last; i++ {
			j := x.p.wrap(r, i)
			up := geom.Point{Y: outward}
			if x.p.hasRing {
				up = x.at[j].Unit().Mul(outward)
			}
			x.pull(j, up, x.w.bow)
		}
	}
}

// pullLevel draws the stitches of a row to their mean height. In a chart the tall
// ones at its edges rise with it, but are not pressed down.
func (x *relaxer) pullLevel() {
	for _, r := range x.p.rows[1:] {
		y, n := 0.0, 0.0
		for i := r.first; i < r.last; i++ {
			if !x.p.nodes[i].chain {
				y += x.at[i].Y
				n++
			}
		}
		if n == 0 {
			continue
		}
		y /= n
		for i := r.first; i < r.last; i++ {
			if n := &x.p.nodes[i]; !n.chain && (x.p.h.measured || y > x.at[i].Y || !x.atEdge(i, r) || n.low) {
				x.pull(i, geom.Point{Y: y - x.at[i].Y}, x.w.level)
			}
		}
	}
}
