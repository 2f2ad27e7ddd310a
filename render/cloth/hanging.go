package cloth

import (
	"strandway/chart/geom"
	"strandway/model/fabric"
)

// hanging adds what takes no place of its own: picots and chains that do not count.
func (m *maker) hanging(id int32) {
	s, pose := &m.fabric.Stitches[id], &m.plan.Poses[id]
	if pose.Host < 0 || pose.Host == id {
		return
	}
	host := &m.plan.Poses[pose.Host]
	at, up := m.at(host.Top), m.at(host.Up)
	across := up.Perp().Mul(-1)
	switch {
	case s.Has(fabric.Picot):
		m.reaches(at.Add(up.Mul(1.2)))
		loop := [...]geom.Point{{X: -.14, Y: .05}, {X: -.46, Y: .52}, {X: 0, Y: 1.02}, {X: .46, Y: .52}, {X: .14, Y: .05}}
		for i := range loop[1:] {
			a, b := loop[i], loop[i+1]
			m.add(part{form: chainLink}, at.Add(across.Mul(a.X)).Add(up.Mul(a.Y)), at.Add(across.Mul(b.X)).Add(up.Mul(b.Y)), .1)
		}
	case s.Has(fabric.Travel): // along the top, over the loops it is worked through
		m.add(part{form: surfaceLink}, at.Sub(across.Mul(.5)), at.Add(across.Mul(.5)), .10)
	case s.Has(fabric.Join) && !s.Has(fabric.Chain):
		m.join(id, at)
	case s.Has(fabric.Chain) && !s.Has(fabric.Join) && !s.Has(fabric.Travel):
		m.uncounted(id, pose.Host)
	}
}

// reaches widens the cloth's box by what hangs out of the plan's.
func (m *maker) reaches(p geom.Point) { m.cloth.box = m.cloth.box.Add(p) }

// join adds the slip stitch that closes a round: a loop from the round's last
// top over its first.
func (m *maker) join(id int32, first geom.Point) {
	last := id - 1
	for last >= 0 && !m.plan.Poses[last].Placed {
		last--
	}
	if last < 0 || m.fabric.Stitches[last].Row != m.fabric.Stitches[id].Row {
		return
	}
	if a := m.top(last); m.closed(int(m.fabric.Stitches[id].Row)) {
		m.add(part{form: surfaceLink}, a.Lerp(first, .3), first.Add(first.Sub(a).Mul(.25)), .06)
	}
}

// uncounted adds a chain that lifts the yarn to a row's height without being a
// stitch: it stands behind the row's first stitch, on its outer side.
func (m *maker) uncounted(id, host int32) {
	row := &m.fabric.Rows[m.fabric.Stitches[id].Row]
	pose := &m.plan.Poses[host]
	if pose.NLegs == 0 || row.Shape != fabric.Flat {
		return
	}
	foot, top := m.foot(host, &m.plan.Legs[pose.FirstLeg]), m.top(host)
	out := top.Sub(foot).Unit().Perp().Mul(.34 * m.mirror) // the left edge lies to the left of up
	if !row.FromLeft {
		out = out.Mul(-1)
	}
	m.add(part{form: chainLink}, foot.Add(out), foot.Lerp(top, .8).Add(out), -.08)
}

// surface adds slip stitches worked on the face: a line of chain on the side
// where they were made, bars on the other.
func (m *maker) surface(line []int32, front bool) {
	const farthest = 2.5 // w from one stitch of a line to the next
	for i, id := range line {
		p := m.surfaced(id)
		prev, next := p, p
		if i > 0 {
			prev = m.surfaced(line[i-1])
		}
		if i+1 < len(line) {
			next = m.surfaced(line[i+1])
		}
		if p.Sub(prev).Len() > farthest {
			prev = p
		}
		if p.Sub(next).Len() > farthest {
			next = p
		}
		a, b := halfWays(prev, p, next, m.mirror)
		m.resume(id)
		if front {
			m.add(part{form: surfaceLink}, a, b, .42)
		} else {
			m.add(part{form: freeLoop}, p, p.Add(b.Sub(a).Unit().Perp()), .06)
		}
	}
}

// surfaced is where a stitch lies on the face.
func (m *maker) surfaced(id int32) geom.Point {
	pose := &m.plan.Poses[id]
	if !pose.Placed && pose.Host >= 0 {
		return m.top(pose.Host)
	}
	return m.at(pose.Top)
}
