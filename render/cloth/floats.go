package cloth

import (
	"math"

	"strandway/chart/geom"
	"strandway/model/fabric"
)

// floats adds the yarn that is carried from where it was left to where it is
// taken up again: up an edge between rows, or across the back of a row.
func (m *maker) floats() {
	f := m.fabric
	waiting := make(map[uint8]int32) // the last stitch made before the yarn was left
	ends := m.rowEnds()
	m.seed = 0
	for _, e := range f.Events {
		switch e.Do {
		case fabric.Drop:
			waiting[e.Yarn] = m.lastOf(e.Yarn, e.Before)
		case fabric.Cut:
			delete(waiting, e.Yarn)
		case fabric.PickUp:
			from, left := waiting[e.Yarn]
			to := m.firstOf(e.Yarn, e.Before)
			delete(waiting, e.Yarn)
			if left && from >= 0 && to >= 0 {
				m.float(from, to, ends)
			}
		}
	}
}

// lastOf is the last stitch with a place that was made in a yarn before a stitch; -1 for none.
func (m *maker) lastOf(yarn uint8, before int32) int32 {
	for id := min(before, int32(len(m.fabric.Stitches))) - 1; id >= 0; id-- {
		if m.fabric.Stitches[id].Yarn == yarn && m.plan.Poses[id].Placed {
			return id
		}
	}
	return -1
}

// firstOf is the first such stitch from a stitch on.
func (m *maker) firstOf(yarn uint8, from int32) int32 {
	for id := max(0, from); int(id) < len(m.fabric.Stitches); id++ {
		if m.fabric.Stitches[id].Yarn == yarn && m.plan.Poses[id].Placed {
			return id
		}
	}
	return -1
}

// float carries yarn from the end of one stitch to the foot of another.
func (m *maker) float(from, to int32, ends []geom.Point) {
	rows := m.fabric.Stitches[to].Row - m.fabric.Stitches[from].Row
	a, b := m.top(from), m.top(to)
	if l := m.plan.Poses[to]; l.NLegs > 0 {
		b = m.at(m.plan.Legs[l.FirstLeg].Foot)
	}
	m.resume(from)
	m.present.length = 1.1 * b.Sub(a).Len()
	switch {
	case rows < 2 && rows > 0:
		// The next row starts where this one ended: nothing is carried.
	case math.Abs(b.X-a.X) < 2.5 && rows > 0:
		m.climb(a, b, ends)
	case rows == 0:
		m.across(m.waist(from), m.waist(to))
	}
}

// rowEnds is where stitches of an edging stand in the ends of rows.
func (m *maker) rowEnds() []geom.Point {
	var out []geom.Point
	for id := range m.plan.Poses {
		for i, b := range m.fabric.Of(int32(id)) {
			if pose := &m.plan.Poses[id]; b.How == fabric.RowEnd && i < int(pose.NLegs) {
				out = append(out, m.at(m.plan.Legs[pose.FirstLeg+int32(i)].Foot))
			}
		}
	}
	return out
}

// climb carries yarn up the edge, outside the ends of the rows it passes; an
// edging is worked over it.
func (m *maker) climb(a, b geom.Point, ends []geom.Point) {
	p, out := part{form: float}, 1.
	if a.X < m.cloth.box.Centre().X {
		p.n, out = leftward, -1
	}
	x := max(a.X*out, b.X*out)*out + .30*out
	z := .06
	for _, e := range ends {
		if math.Abs(e.X-x) < 1.2 && (e.Y > a.Y) != (e.Y > b.Y) {
			z = -.75
		}
	}
	m.add(p, geom.Point{X: x, Y: a.Y - .1}, geom.Point{X: x, Y: b.Y + .1}, z)
}

// waist is the middle of a stitch, where yarn is carried past it.
func (m *maker) waist(id int32) geom.Point {
	if l := m.plan.Poses[id]; l.NLegs > 0 {
		return m.at(m.plan.Legs[l.FirstLeg].Foot).Lerp(m.top(id), .5)
	}
	return m.top(id)
}

// across carries yarn along the back of a row: in sight from the wrong side,
// hidden from the right.
func (m *maker) across(a, b geom.Point) {
	z := -.45
	if m.mirror < 0 {
		z = .30
	}
	m.add(part{form: float}, a, b, z)
}

// tails adds the ends that hang where yarns begin and end.
func (m *maker) tails() {
	const length = 2.6 // w that is shown
	for _, e := range m.fabric.Events {
		var id int32
		lean := .5
		switch e.Do {
		case fabric.JoinYarn:
			id = m.firstOf(e.Yarn, e.Before)
		case fabric.Cut:
			id, lean = m.lastOf(e.Yarn, e.Before), .9
		default:
			continue
		}
		if id < 0 {
			continue
		}
		at := m.top(id)
		if at.X < m.cloth.box.Centre().X {
			lean = -lean
		}
		m.resume(id)
		end := at.Add(geom.Point{X: lean, Y: -1}.Unit().Mul(length))
		m.add(part{form: tail}, at, end, .15)
		m.reaches(end)
	}
}
