package meter

import (
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
)

const (
	footReach = .62 // u from a place, within which stitches that share it may meet
	crossRun  = 8   // stitches of a row, within which crossed ones cross
)

// meant reports whether two strips, the first of the earlier stitch, may meet where they do.
func (m *measure) meant(s, t *strip, at geom.Point) bool {
	if s.stitch < 0 || s.stitch == t.stitch {
		return false
	}
	a, b := s.stitch, t.stitch
	return m.passes(t, a) || m.passes(s, b) || m.crossed(a, b) || m.onOwnPlace(b, a, at) || m.onOwnPlace(a, b, at) || m.shared(a, b, at)
}

// passes: the stem of a long stitch lies over what stands in the rows it passes.
func (m *measure) passes(long *strip, over int32) bool {
	f, id := m.plan.Fabric, long.stitch
	for _, l := range m.legs(id) {
		if !l.Deep && !f.Stitches[id].Has(fabric.Long) || f.Stitches[over].Row >= f.Stitches[id].Row {
			continue
		}
		foot, top := m.page(l.Foot), m.page(m.plan.Poses[id].Top)
		if onLine(foot, top, long.a).Sub(long.a).Len() < .06*m.unit && onLine(foot, top, long.b).Sub(long.b).Len() < .06*m.unit {
			return true
		}
	}
	return false
}

// crossed: two stitches of one row of which one crosses back.
func (m *measure) crossed(a, b int32) bool {
	x, y := &m.plan.Fabric.Stitches[a], &m.plan.Fabric.Stitches[b]
	return x.Row == y.Row && b-a <= crossRun && (x.Has(fabric.Crossed) || y.Has(fabric.Crossed))
}

// onOwnPlace: stitch id is worked round or on what it stands in.
func (m *measure) onOwnPlace(id, in int32, at geom.Point) bool {
	f := m.plan.Fabric
	if s := &f.Stitches[id]; s.Has(fabric.Picot) || s.Has(fabric.Surface) {
		return m.plan.Poses[id].Host == in
	}
	for i, base := range f.Of(id) {
		if base.At != in {
			continue
		}
		switch base.How {
		case fabric.FrontPost, fabric.BackPost, fabric.OnFace, fabric.RowEnd, fabric.Legs:
			return true
		}
		if legs := m.legs(id); i < len(legs) && legs[i].Post != 0 {
			return true
		}
	}
	return false
}

// shared: two stitches of one place meet at their common foot.
func (m *measure) shared(a, b int32, at geom.Point) bool {
	for _, x := range m.legs(a) {
		for _, y := range m.legs(b) {
			if x.At == y.At && x.Foot.Sub(y.Foot).Len() < .3 && m.page(x.Foot).Sub(at).Len() < (footReach+m.ring(x))*m.unit {
				return true
			}
		}
	}
	return false
}

// ring is how much farther out the common foot of stitches in a ring may lie: never, they stand apart.
func (m *measure) ring(l layout.Leg) float64 {
	if l.At < 0 && m.plan.RingR > 0 {
		return -footReach
	}
	return 0
}

func (m *measure) legs(id int32) []layout.Leg {
	p := &m.plan.Poses[id]
	return m.plan.Legs[p.FirstLeg : p.FirstLeg+int32(p.NLegs)]
}
