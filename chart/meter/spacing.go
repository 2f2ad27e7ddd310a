package meter

import (
	"strandway/chart/geom"
	"strandway/model/fabric"
)

// page brings a point of the plan to the page.
func (m *measure) page(p geom.Point) geom.Point {
	if m.mirror {
		p.X = -p.X
	}
	return geom.Point{X: m.origin.X + p.X*m.unit, Y: m.origin.Y - p.Y*m.unit}
}

// labels finds lines of text that stand on ink or on each other.
func (m *measure) labels() {
	least := leastGap * m.unit
	for i := range m.texts {
		t := &m.texts[i]
		box := t.place.ApplyBox(t.box)
		for j := range m.strips {
			s := &m.strips[j]
			reach := s.half + least
			if !geom.Empty().Add(s.a).Add(s.b).Grow(reach).Overlaps(box) || !t.near(s, reach) {
				continue
			}
			m.fault(Fault{Kind: OnInk, A: s.stitch, B: -1, At: box.Centre(), Text: t.text})
			break
		}
		for j := range m.texts[:i] {
			o := &m.texts[j]
			if box.Overlaps(o.place.ApplyBox(o.box)) {
				m.fault(Fault{Kind: OnInk, A: -1, B: -1, At: box.Centre(), Text: t.text})
			}
		}
	}
}

// near reports whether a strip comes nearer to the letters' box than reach.
func (t *label) near(s *strip, reach float64) bool {
	box := t.box.Grow(reach)
	a, b := t.back(s.a), t.back(s.b)
	if box.Contains(a) || box.Contains(b) {
		return true
	}
	corners := [4]geom.Point{box.Min, {X: box.Max.X, Y: box.Min.Y}, box.Max, {X: box.Min.X, Y: box.Max.Y}}
	for i := range corners {
		if _, _, crossing := between(a, b, corners[i], corners[(i+1)%4]); crossing {
			return true
		}
	}
	return false
}

// back brings a point of the page into the label's own frame, which is a turn and a shift away.
func (t *label) back(p geom.Point) geom.Point {
	d := p.Sub(geom.Point{X: t.place.E, Y: t.place.F})
	return geom.Point{X: d.X*t.place.A + d.Y*t.place.B, Y: d.X*t.place.C + d.Y*t.place.D}
}

// spacing finds neighbours alike that stand at unlike distances.
func (m *measure) spacing() {
	f := m.plan.Fabric
	for r := range f.Rows {
		row := &f.Rows[r]
		for id := row.First; id+2 < row.Last; id++ {
			if !m.alike(id, id+1) || !m.alike(id+1, id+2) {
				continue
			}
			a, b, c := m.plan.Poses[id].Top, m.plan.Poses[id+1].Top, m.plan.Poses[id+2].Top
			one, two := b.Sub(a).Len(), c.Sub(b).Len()
			if ratio := max(one, two) / max(min(one, two), 1e-6); ratio > mostUneven {
				m.fault(Fault{Kind: Uneven, A: id, B: id + 1, At: m.page(b), Size: ratio})
			}
		}
	}
}

// alike reports whether a stitch and the next one are of a kind and stand in
// like places, so that the eye expects them evenly spaced: members of one fan,
// chains of one run, or plain stitches on neighbouring ones.
func (m *measure) alike(a, b int32) bool {
	f := m.plan.Fabric
	x, y := &f.Stitches[a], &f.Stitches[b]
	p, q := &m.plan.Poses[a], &m.plan.Poses[b]
	const apart = fabric.TurningChain | fabric.Crossed | fabric.Long | fabric.Picot | fabric.Join | fabric.Travel | fabric.Surface
	if !p.Placed || !q.Placed || p.Dropped || q.Dropped || x.Kind != y.Kind || (x.Flags|y.Flags)&apart != 0 || p.Fan != q.Fan {
		return false
	}
	if x.Has(fabric.Chain) || p.Fan >= 0 {
		return true
	}
	l, k := m.legs(a), m.legs(b)
	if len(l) != 1 || len(k) != 1 || l[0].Space || k[0].Space || l[0].At < 0 || k[0].At < 0 {
		return false
	}
	on, next := &f.Stitches[l[0].At], &f.Stitches[k[0].At]
	return (l[0].At-k[0].At == 1 || k[0].At-l[0].At == 1) && (on.Flags|next.Flags)&fabric.TurningChain == 0
}
