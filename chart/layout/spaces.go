package layout

import (
	"math"

	"strandway/chart/geom"
)

const (
	wideSpace = 3   // chains from which on the stitches in a space stand apart
	footGap   = .55 // between their feet at most, u
	spaceUsed = .5  // of the way across the space, that the feet of tall stitches take up
	runUsed   = .8  // of the run of chains, that low ones take up
)

// spaceRun is the run of chains [a, b) round the middle of a space.
func (p *piece) spaceRun(l leg) (a, b int32) {
	if !l.space || l.a < 0 || !p.nodes[l.a].chain {
		return 0, 0
	}
	r := p.rows[p.nodes[l.a].row]
	a, b = min(l.a, l.b), max(l.a, l.b)+1
	if b-a > 2 { // over the seam of a round
		return 0, 0
	}
	for a > r.first && p.nodes[a-1].chain {
		a--
	}
	for b < r.last && p.nodes[b].chain {
		b++
	}
	return a, b
}

// fills reports whether the stitches of a fan fill a mesh: they stand in a space
// side by side between stitches on either end of it.
func (p *piece) fills(f *fan, place leg) bool {
	a, b := p.spaceRun(place)
	n := b - a
	if f.chains || n < 2 || f.members > n {
		return false
	}
	standsOn := func(i, at int32) bool {
		if i < 0 || p.nodes[i].nlegs != 1 {
			return false
		}
		l := p.legs[p.nodes[i].leg]
		return l.a == at && l.b == at
	}
	return a > 0 && standsOn(p.prev(f.first), p.prev(a)) && standsOn(p.next(f.last), p.next(b-1))
}

// fill stands the members of a fan over the chains of their space, from one end to the other.
func (p *piece) fill(f *fan, place leg) {
	a, b := p.spaceRun(place)
	for k := range f.members {
		at := (float64(k)+.5)*float64(b-a)/float64(f.members) - .5
		at = math.Round(2*at) / 2
		l := &p.legs[p.nodes[f.first+k].leg]
		l.a, l.b = a+int32(math.Floor(at)), a+int32(math.Ceil(at))
	}
}

// footInSpace is the foot of node i, moved across a wide space so that the members
// of its fan stand side by side.
func (p *piece) footInSpace(i int32, l leg) geom.Point {
	at := p.foot(l)
	if p.nodes[i].fan < 0 {
		return at
	}
	a, b := p.spaceRun(l)
	f := &p.fans[p.nodes[i].fan]
	if b-a < wideSpace || f.members < 2 {
		return at
	}
	k := int32(0)
	for j := f.first; j < i; j++ {
		if !p.nodes[j].chain {
			k++
		}
	}
	share := float64(k)/float64(f.members-1) - .5
	width := float64(f.members-1) * footGap
	if !p.nodes[i].low {
		chord := p.at[b-1].Sub(p.at[a])
		return at.Add(chord.Unit().Mul(share * min(width, chord.Len()*spaceUsed)))
	}
	width = min(width, float64(b-a-1)*chainGap*runUsed)
	return p.alongRun(at, min(l.a, l.b), max(l.a, l.b), a, b, share*width)
}

// alongRun is the point that lies so far along the run of chains [a, b) from a
// point between its chains left and right.
func (p *piece) alongRun(at geom.Point, left, right, a, b int32, way float64) geom.Point {
	j, step := right, int32(1)
	if way < 0 {
		j, step, way = left, -1, -way
	}
	for ; j >= a && j < b; j += step {
		d := p.at[j].Sub(at)
		if way <= d.Len() {
			return at.Add(d.Unit().Mul(way))
		}
		way -= d.Len()
		at = p.at[j]
	}
	return at
}
