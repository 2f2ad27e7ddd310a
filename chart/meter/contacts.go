package meter

import (
	"cmp"
	"math"
	"slices"

	"strandway/chart/geom"
)

// pair is two drawings, the lesser first.
type pair struct {
	a, b         int32 // stitches, -1 for marks
	partA, partB int32 // see strip; of a mark its item
}

// contact is where two drawings come nearest.
type contact struct {
	gap      float64 // u
	at       geom.Point
	crossing bool
}

// contacts finds the drawings that touch or cross and are not meant to.
func (m *measure) contacts() {
	cells := m.cells()
	nearest := map[pair]contact{}
	for _, here := range cells {
		for i, x := range here {
			s := &m.strips[x]
			for _, y := range here[i+1:] {
				m.meet(s, &m.strips[y], nearest)
			}
		}
	}
	pairs := make([]pair, 0, len(nearest))
	for p := range nearest {
		pairs = append(pairs, p)
	}
	slices.SortFunc(pairs, func(p, q pair) int {
		return cmp.Or(cmp.Compare(p.a, q.a), cmp.Compare(p.b, q.b), cmp.Compare(p.partA, q.partA), cmp.Compare(p.partB, q.partB))
	})
	for _, p := range pairs {
		c := nearest[p]
		f := Fault{Kind: Touching, A: p.a, B: p.b, At: c.at, Size: c.gap}
		switch {
		case p.a < 0:
			f.Kind, f.Text = OnInk, "mark"
		case c.crossing:
			f.Kind = Crossing
		}
		m.fault(f)
	}
}

// cells sorts the strips into squares of half a stitch width, so that only near ones are compared.
func (m *measure) cells() map[[2]int][]int32 {
	cells := map[[2]int][]int32{}
	size := .5 * m.unit
	for i := range m.strips {
		s := &m.strips[i]
		box := geom.Empty().Add(s.a).Add(s.b).Grow(s.half + leastGap*m.unit)
		for y := int(math.Floor(box.Min.Y / size)); y <= int(math.Floor(box.Max.Y/size)); y++ {
			for x := int(math.Floor(box.Min.X / size)); x <= int(math.Floor(box.Max.X/size)); x++ {
				cells[[2]int{x, y}] = append(cells[[2]int{x, y}], int32(i))
			}
		}
	}
	return cells
}

// meet compares two strips of different drawings.
func (m *measure) meet(s, t *strip, nearest map[pair]contact) {
	if s.stitch == t.stitch && (s.stitch < 0 && s.mark == t.mark || s.stitch >= 0 && (s.part == t.part || s.part == 0 || t.part == 0)) {
		return
	}
	if s.stitch > t.stitch || s.stitch == t.stitch && s.part > t.part {
		s, t = t, s
	}
	d, at, crossing := between(s.a, s.b, t.a, t.b)
	gap := (d - s.half - t.half) / m.unit
	if gap >= leastGap || m.meant(s, t, at) {
		return
	}
	p := pair{s.stitch, t.stitch, 0, 0}
	switch {
	case s.stitch < 0:
		p.partA, p.partB = s.mark, t.mark
	case s.stitch == t.stitch:
		p.partA, p.partB = s.part, t.part
	}
	if c, known := nearest[p]; !known || gap < c.gap {
		nearest[p] = contact{gap, at, crossing || known && c.crossing}
	} else if crossing && !c.crossing {
		c.crossing = true
		nearest[p] = c
	}
}

// between is the distance of two lines, the point midway where it is least, and whether they cross.
func between(a, b, c, d geom.Point) (distance float64, at geom.Point, crossing bool) {
	ab, cd := b.Sub(a), d.Sub(c)
	if den := ab.Cross(cd); math.Abs(den) > 1e-12 {
		t, u := c.Sub(a).Cross(cd)/den, c.Sub(a).Cross(ab)/den
		if t >= 0 && t <= 1 && u >= 0 && u <= 1 {
			return 0, a.Lerp(b, t), true
		}
	}
	distance = math.Inf(1)
	try := func(p, q, r geom.Point) {
		on := onLine(q, r, p)
		if l := on.Sub(p).Len(); l < distance {
			distance, at = l, on.Lerp(p, .5)
		}
	}
	try(a, c, d)
	try(b, c, d)
	try(c, a, b)
	try(d, a, b)
	return distance, at, false
}

// onLine is the point of the line from a to b that is nearest to p.
func onLine(a, b, p geom.Point) geom.Point {
	ab := b.Sub(a)
	t := 0.0
	if l := ab.Dot(ab); l > 0 {
		t = min(max(p.Sub(a).Dot(ab)/l, 0), 1)
	}
	return a.Lerp(b, t)
}
