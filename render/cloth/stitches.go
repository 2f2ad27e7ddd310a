package cloth

import (
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
	"strandway/model/stitch"
)

// stitch adds the body of a stitch, by how it is made and where it stands. It
// reports whether the stitch is a V standing over a V, which bares the loops
// between them.
func (m *maker) stitch(id int32, front bool) (lifted bool) {
	s, k, pose := &m.fabric.Stitches[id], m.kindOf(id), &m.plan.Poses[id]
	top := m.top(id)
	legs := m.plan.Legs[pose.FirstLeg : pose.FirstLeg+int32(pose.NLegs)]
	first := &legs[0]
	foot := m.foot(id, first)
	z := m.stagger(id)
	if s.Has(fabric.Crossed) {
		z += m.passing(s, front, .30, -.45)
	}

	fig := m.figureOf(id)
	switch {
	case s.Has(fabric.TurningChain):
		n := max(1, int(s.Chains))
		in := m.inward(id)
		for i := range n {
			t := float64(i) / float64(n)
			m.add(part{form: standing}, foot.Lerp(top, t).Add(in), foot.Lerp(top, t+1/float64(n)).Add(in), .04)
		}
	case k.Lump == stitch.Star:
		m.star(id, legs, top, z)
	case len(legs) > 1:
		m.drawnTogether(id, k, fig, legs, z, front)
	case fig.arms > 0:
		m.branch(id, k, fig, foot, top, z, front)
	case fig.scale > 1:
		m.post(k.Plain, fig, foot, top, z, front)
		if front {
			m.scale(fig.scale, foot, top, z)
		}
	case k.Lump == stitch.SpikeCluster:
		m.spikes(k, foot, top, z)
	case k.Lump == stitch.Bullion:
		m.add(part{coil, 8}, foot, top, z+.05)
	case k.Lump != stitch.NoLump || k.SamePlace && k.Legs > 1:
		form := m.gatheredForm(k)
		if form != cluster && form != lumpBack {
			foot, top = swollen(foot, top)
		}
		m.add(part{form, uint8(min(12, max(3, k.Legs)))}, foot, top, z+.02)
	case first.Post != 0:
		if (first.Post > 0) == (m.mirror > 0) {
			m.add(part{raised, wrapsOf(k)}, foot, top, z)
		} else {
			m.add(part{form: recessed}, foot, top, z)
		}
	case first.Deep:
		m.long(s, k, foot, top, z, front)
	case k.Chains < .5:
		// A slip stitch lies flat: its loops are all that shows.
	case wrapsOf(k) == 0:
		if !front {
			m.add(part{form: bump}, foot, top, z)
			break
		}
		up := top.Sub(foot).Unit()
		switch over := m.overVee(first); {
		case over && (fig.inVee || m.fabric.Of(id)[0].How == fabric.Legs):
			foot = foot.Sub(up.Mul(.2)) // V in V, as if knitted
		case over:
			foot, lifted = foot.Add(up.Mul(.19)), true
		}
		m.add(part{form: vee}, foot, top, z)
	default:
		m.post(k, fig, foot, top, z, front)
	}
	m.extras(fig, foot, top, z, front)
	m.freed(id, first, foot, top, front)
	return lifted
}

// inward is how far a turning chain, narrower than a stitch, is drawn to the
// next stitch of its row; in a round it has neighbours on both sides.
func (m *maker) inward(id int32) geom.Point {
	const drawn = .14
	next := id + 1
	if m.closed(int(m.fabric.Stitches[id].Row)) || int(next) >= len(m.plan.Poses) || !m.plan.Poses[next].Placed || m.fabric.Stitches[next].Row != m.fabric.Stitches[id].Row {
		return geom.Point{}
	}
	way := m.top(next).Sub(m.top(id))
	if l := way.Len(); l < .3 || l > 1.5 {
		return geom.Point{}
	}
	return way.Unit().Mul(drawn)
}

// swollen gives the axis on which a lump shows: in a row lower than its legs it
// bulges over the rows above and below.
func swollen(foot, top geom.Point) (from, to geom.Point) {
	const full = 1.3
	axis := top.Sub(foot)
	over := max(0, full-axis.Len())
	up := axis.Unit()
	return foot.Sub(up.Mul(.55 * over)), top.Add(up.Mul(.45 * over))
}

// long adds a stitch worked below its row. From the side where it lies behind
// what it passes, only what it shows in its own row is seen.
func (m *maker) long(s *fabric.Stitch, k *stitch.Kind, foot, top geom.Point, z float64, front bool) {
	body := part{longTall, wrapsOf(k)}
	if body.n == 0 {
		body.form = longVee
	}
	m.add(body, foot, top, z+m.passing(s, front, .06, -.80))
	if s.Has(fabric.Behind) != front {
		return
	}
	const row = .84
	face := bump
	if front {
		face = vee
	}
	m.add(part{form: face}, top.Sub(top.Sub(foot).Unit().Mul(row)), top, z-.04)
}

// foot is where a leg of a stitch comes out of its place.
func (m *maker) foot(id int32, l *layout.Leg) geom.Point {
	top, foot := m.top(id), m.at(l.Foot)
	up := top.Sub(foot).Unit()
	if l.At < 0 && m.plan.RingR > 0 && m.plan.Poses[id].Depth == 0 {
		return up.Mul(max(.42, .7*m.plan.RingR, foot.Dot(up)))
	}
	if l.Space { // the legs close round the chain
		foot = foot.Sub(up.Mul(.14))
	}
	return foot.Add(m.beside(id, up, l.Space))
}

// beside is how far a member of a fan stands from the middle of their common
// place. Round a chain stitches stand side by side; in one loop they crowd.
func (m *maker) beside(id int32, up geom.Point, space bool) geom.Point {
	fan := m.fans[m.plan.Poses[id].Fan]
	n := len(fan)
	if n < 2 {
		return geom.Point{}
	}
	across := up.Perp()
	if m.top(fan[n-1]).Sub(m.top(fan[0])).Dot(across) < 0 {
		across = across.Mul(-1)
	}
	for i, member := range fan {
		if member == id {
			step := min(.20, .5/float64(n))
			if space {
				step = min(.46, 1.5/float64(n))
			}
			return across.Mul((float64(i) - float64(n-1)/2) * step)
		}
	}
	return geom.Point{}
}

// stagger lets stitches that touch lie clearly one over the other.
func (m *maker) stagger(id int32) float64 {
	if m.plan.Poses[id].Fan >= 0 {
		return .015 * float64(id%5)
	}
	return .01 * float64(id%3)
}

// passing is the depth of a stitch that passes others: before or behind them,
// as it was worked and as it is seen.
func (m *maker) passing(s *fabric.Stitch, front bool, before, behind float64) float64 {
	if s.Has(fabric.Behind) == front {
		return behind
	}
	return before
}

// overVee reports whether a leg stands on a single crochet that shows its V.
func (m *maker) overVee(l *layout.Leg) bool {
	if l.At < 0 {
		return false
	}
	below := &m.fabric.Stitches[l.At]
	return below.Row > 0 && !below.Has(fabric.Chain) && m.facing(int(below.Row)) && isSingle(m.kindOf(l.At))
}

func isSingle(k *stitch.Kind) bool {
	return wrapsOf(k) == 0 && k.Chains >= .5 && k.Lump == stitch.NoLump
}

// wrapsOf is the n of a post's part: the yarn-overs that lie round it.
func wrapsOf(k *stitch.Kind) uint8 {
	if k.Plain != nil {
		k = k.Plain
	}
	if k.Wraps == 1 && k.Pulls == 0 {
		return halfWrap
	}
	return uint8(min(6, max(0, k.Wraps)))
}

// gatheredForm is the form of several legs in one place, on the face that is seen.
func (m *maker) gatheredForm(k *stitch.Kind) form {
	f := cluster
	switch k.Lump {
	case stitch.Puff:
		return puff
	case stitch.Bobble:
		f = bobble
	case stitch.Popcorn:
		f = popcorn
	}
	// Bobbles and popcorns are pushed out to the right side.
	if f != cluster && m.mirror < 0 {
		return lumpBack
	}
	return f
}

// freed adds what a stitch worked into one loop only leaves in sight below it,
// in the yarn of the stitch below: the other loop on the side where that lies, or
// both when it stands in the third, which pushes them out to the face it is not on.
func (m *maker) freed(id int32, l *layout.Leg, foot, top geom.Point, front bool) {
	if l.At < 0 || l.Post != 0 || m.fabric.Stitches[l.At].Row == 0 {
		return
	}
	present := m.present
	m.present.yarn = m.yarnOf(l.At)
	switch m.loopOf(id) {
	case stitch.BackLoop:
		if front {
			m.add(part{form: freeLoop}, foot, top, 0)
		}
	case stitch.FrontLoop:
		if !front {
			m.add(part{form: freeLoop}, foot, top, 0)
		}
	case stitch.ThirdLoop:
		if m.facing(int(m.fabric.Stitches[l.At].Row)) {
			half := top.Sub(foot).Unit().Perp().Mul(.5)
			m.add(part{form: link}, foot.Add(half), foot.Sub(half), .40)
		}
	}
	m.present = present
}

// loopOf is the one loop that a stitch is worked into, by its place or its kind.
func (m *maker) loopOf(id int32) stitch.Loop {
	for _, b := range m.fabric.Of(id) {
		switch b.How {
		case fabric.FrontLoop:
			return stitch.FrontLoop
		case fabric.BackLoop:
			return stitch.BackLoop
		case fabric.Third:
			return stitch.ThirdLoop
		}
	}
	return m.kindOf(id).Loop
}
