package layout

import (
	"math"

	"strandway/chart/geom"
)

// mirror pairs every node with its image. A piece that is its own mirror image
// stays so while it is relaxed.
type mirror struct {
	image []int32
	round bool
	axis  float64 // x of the axis, or its angle about the centre
}

// findMirror looks for reversals of all rows that map stitches and their places
// onto each other; nil when there are none.
func (p *piece) findMirror() *mirror {
	image := make([]int32, len(p.nodes))
	first := p.rows[0]
	if !first.closed {
		if !p.mirrorFrom(0, first.first+first.last-1, image) {
			return nil
		}
		return p.newMirror(image)
	}
	for c := range int32(min(first.len(), 24)) {
		if p.mirrorFrom(0, 2*first.first+c, image) {
			return p.newMirror(image)
		}
	}
	return nil
}

// mirrorFrom reverses row k so that i goes to sum - i, and the rows above it as
// that demands.
func (p *piece) mirrorFrom(k int, sum int32, image []int32) bool {
	if !p.reverse(p.rows[k], sum, image) {
		return false
	}
	for _, r := range p.rows[k+1:] {
		if !r.closed {
			if !p.reverse(r, r.first+r.last-1, image) {
				return false
			}
			continue
		}
		found := false
		for c := range int32(r.len()) {
			if found = p.reverse(r, 2*r.first+c, image); found {
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

func (p *piece) reverse(r row, sum int32, image []int32) bool {
	n := int32(r.len())
	for i := r.first; i < r.last; i++ {
		j := sum - i
		switch {
		case j < r.first:
			j += n
		case j >= r.last:
			j -= n
		}
		image[i] = j
		a, b := &p.nodes[i], &p.nodes[j]
		if a.chain != b.chain || a.h != b.h || a.nlegs != b.nlegs || a.level != b.level {
			return false
		}
		la, lb := p.of(i), p.of(j)
		for k := range la {
			if !mirrored(la[k], lb[len(lb)-1-k], image) && !mirrored(la[k], lb[k], image) {
				return false
			}
		}
	}
	return true
}

func mirrored(l, m leg, image []int32) bool {
	if l.a < 0 || m.a < 0 {
		return l.a == m.a
	}
	a, b := image[l.a], image[l.b]
	return a == m.a && b == m.b || a == m.b && b == m.a
}

func (p *piece) newMirror(image []int32) *mirror {
	m := &mirror{image: image, round: p.hasRing}
	r := p.rows[len(p.rows)-1]
	if !m.round {
		r = p.rows[0]
	}
	var s geom.Point
	for i := r.first; i < r.last; i++ {
		a, b := p.at[i], p.at[image[i]]
		if m.round {
			s = s.Add(polar(angleOf(a)+angleOf(b), 1))
		} else {
			m.axis += (a.X + b.X) / (2 * float64(r.len()))
		}
	}
	if m.round {
		m.axis = math.Atan2(s.Y, s.X)
	}
	return m
}

// even moves every node to the mean of its place and its image's.
func (m *mirror) even(at []geom.Point) {
	if m == nil {
		return
	}
	sin, cos := math.Sincos(m.axis)
	over := func(q geom.Point) geom.Point {
		if m.round {
			return geom.Point{X: cos*q.X + sin*q.Y, Y: sin*q.X - cos*q.Y}
		}
		return geom.Point{X: 2*m.axis - q.X, Y: q.Y}
	}
	for i, j := range m.image {
		if int32(i) > j {
			continue
		}
		q := at[i].Lerp(over(at[j]), .5)
		at[i], at[j] = q, over(q)
	}
}
