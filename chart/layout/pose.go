package layout

import (
	"math"

	"strandway/chart/geom"
	"strandway/model/fabric"
)

// LegsOf gives the legs of stitch id.
func (p *Plan) LegsOf(id int32) []Leg {
	q := &p.Poses[id]
	return p.Legs[q.FirstLeg : q.FirstLeg+int32(q.NLegs)]
}

// pose turns nodes into poses.
//
// After it, every stitch with a place of its own has its top, its direction and
// the feet of its legs.
func (p *piece) pose(plan *Plan) {
	plan.Manner, plan.Corners = p.manner, p.corners
	if p.hasRing {
		plan.RingR = p.feetR
	}
	plan.Legs = make([]Leg, 0, len(p.legs))
	for id := range plan.Poses {
		q := &plan.Poses[id]
		q.Fan, q.Host, q.Up = -1, -1, geom.Point{Y: 1}
		q.FirstLeg = int32(len(plan.Legs))
		i := p.nodeOf[id]
		if i < 0 {
			continue
		}
		n := &p.nodes[i]
		q.Placed, q.Top, q.Fan = true, p.at[i], n.fan
		if base := p.f.Of(int32(id)); tallJoin(p.f, int32(id)) > 0 && len(base) > 0 && base[0].At >= 0 && p.nodeOf[base[0].At] >= 0 {
			foot := p.at[p.nodeOf[base[0].At]]
			q.Up, q.NLegs = q.Top.Sub(foot).Unit(), 1
			plan.Legs = append(plan.Legs, Leg{Foot: foot, At: base[0].At})
			continue
		}
		if n.chain {
			q.Up = p.acrossRun(i)
			continue
		}
		p.addPoseLegs(plan, q, i)
	}
	for _, l := range p.laid {
		q := &plan.Poses[l.id]
		q.Placed, q.Top, q.Up = true, l.at, l.up
	}
}

// addPoseLegs adds the feet of node i and turns its pose away from their middle.
func (p *piece) addPoseLegs(plan *Plan, q *Pose, i int32) {
	n := &p.nodes[i]
	var foot geom.Point
	for _, l := range p.of(i) {
		at := p.footInSpace(i, l)
		foot = foot.Add(at.Mul(1 / float64(n.nlegs)))
		plan.Legs = append(plan.Legs, Leg{Foot: at, Space: l.space, Post: l.post, Deep: n.deep, At: l.at})
	}
	if n.nlegs == 0 { // stands in nothing the fabric knows: it stands where it is
		up := geom.Point{Y: 1}
		if p.hasRing {
			up = p.at[i].Unit()
		}
		foot = q.Top.Sub(up.Mul(n.h))
		plan.Legs = append(plan.Legs, Leg{Foot: foot, At: -1})
	}
	q.NLegs = int16(int32(len(plan.Legs)) - q.FirstLeg)
	q.Up = q.Top.Sub(foot).Unit()
	if n.crossing && !p.hasRing { // however far it leans, the next row stands upright on it
		q.Up = geom.Point{Y: 1}
	}
}

// acrossRun is the normal of the run a chain lies in.
func (p *piece) acrossRun(i int32) geom.Point {
	a, b := p.prev(i), p.next(i)
	if a < 0 {
		a = i
	}
	if b < 0 {
		b = i
	}
	d := p.at[b].Sub(p.at[a])
	if d.Len() < 1e-9 {
		d = geom.Point{X: 1}
	}
	up := d.Perp().Unit()
	if p.hasRing { // counter-clockwise rows have the outside on their right
		return up.Mul(-1)
	}
	return up
}

// hang gives the stitches without a place of their own the stitch they hang on,
// and a place beside it.
//
// After it, joins close their rounds, chains that do not count stand beside the
// first stitch, picots sit on theirs, and every pose has a top.
func (p *piece) hang(plan *Plan) {
	p.ringChains(plan)
	for ri := range p.f.Rows {
		r := &p.f.Rows[ri]
		count := p.startChains(r)
		before := float64(0)
		for id := r.First; id < r.Last; id++ {
			q, s := &plan.Poses[id], &p.f.Stitches[id]
			if q.Placed {
				continue
			}
			if ri == 0 {
				q.Dropped = s.Has(fabric.Chain)
				continue
			}
			q.Host = p.hostOf(id)
			if q.Host < 0 {
				continue
			}
			switch host := &plan.Poses[q.Host]; {
			case s.Has(fabric.Surface):
				q.Placed, q.Host = true, -1
				q.Up = host.Up
				q.Top = p.stemMiddle(plan, host)
			case s.Has(fabric.Join):
				p.hangJoin(plan, id, r)
			case s.Has(fabric.Picot):
				q.Up, q.Top = host.Up, host.Top.Add(host.Up.Mul(.5))
			case s.Has(fabric.Chain):
				p.hangChain(plan, id, r, before-(count-1)/2)
				before++
			default:
				q.Up, q.Top = host.Up, host.Top.Add(host.Up.Mul(.28))
			}
		}
	}
}

// startChains is how many chains that do not count begin a row.
func (p *piece) startChains(r *fabric.Row) float64 {
	n := 0.0
	for id := r.First; id < r.Last && p.nodeOf[id] < 0; id++ {
		if p.f.Stitches[id].Has(fabric.Chain | fabric.NoLanding) {
			n++
		}
	}
	return n
}

// hostOf is the stitch that one without a place hangs on: what it is worked into,
// or for chains the stitch after them.
func (p *piece) hostOf(id int32) int32 {
	if !p.f.Stitches[id].Has(fabric.Chain) || p.f.Stitches[id].Has(fabric.Picot) {
		for _, b := range p.f.Of(id) {
			if b.At < 0 {
				continue
			}
			if i := p.host(b.At); i >= 0 {
				return p.nodes[i].id
			}
		}
	} else {
		r := &p.f.Rows[p.f.Stitches[id].Row]
		for e := id + 1; e < r.Last; e++ {
			if p.nodeOf[e] >= 0 {
				return e
			}
		}
	}
	if i := p.host(id); i >= 0 {
		return p.nodes[i].id
	}
	return -1
}

// hangJoin puts the slip stitch that closes a round between its last stitch and
// the one it joins to.
func (p *piece) hangJoin(plan *Plan, id int32, r *fabric.Row) {
	q := &plan.Poses[id]
	host := &plan.Poses[q.Host]
	q.Up, q.Top = host.Up, host.Top.Add(host.Up.Mul(.28))
	for e := id - 1; e >= r.First; e-- {
		last := &plan.Poses[e]
		if !last.Placed {
			continue
		}
		if last.Top.Sub(host.Top).Len() < 2.5 {
			q.Top = host.Top.Lerp(last.Top, .5)
		}
		return
	}
}

// hangChain stands the k-th chain, counted from the middle of its column, beside
// the stem of its host, on the side where the row begins.
func (p *piece) hangChain(plan *Plan, id int32, r *fabric.Row, k float64) {
	q := &plan.Poses[id]
	host := &plan.Poses[q.Host]
	side := host.Up.Perp().Mul(.62)
	if i := p.nodeOf[q.Host]; i >= 0 {
		forward := p.rows[p.nodes[i].row].dir > 0
		if forward == p.hasRing { // in rounds the order runs to the left
			side = side.Mul(-1)
		}
	}
	q.Up = side.Unit()
	q.Top = p.stemMiddle(plan, host).Add(side).Add(host.Up.Mul(-.08 + k*.6))
}

func (p *piece) stemMiddle(plan *Plan, q *Pose) geom.Point {
	if q.NLegs == 0 {
		return q.Top
	}
	return q.Top.Lerp(plan.Legs[q.FirstLeg].Foot, .5)
}

// ringOf gives the chains of the ring; those that have become the turning chain of the first row are none.
func ringOf(f *fabric.Fabric) []int32 {
	var chains []int32
	for id := f.Rows[0].First; id < f.Rows[0].Last; id++ {
		if s := &f.Stitches[id]; s.Has(fabric.Chain) && !s.Has(fabric.NoLanding) {
			chains = append(chains, id)
		}
	}
	return chains
}

const leastRing = 3 // chains

// ringChains lays the chains of a ring about the centre; fewer are no ring but the chain that all stand in.
func (p *piece) ringChains(plan *Plan) {
	if !p.hasRing {
		return
	}
	chains := ringOf(p.f)
	if n := len(chains); n > 0 && n < leastRing { // all stand in one chain
		plan.Poses[chains[n-1]].Placed = true
		return
	}
	for k, id := range chains {
		q := &plan.Poses[id]
		q.Placed = true
		q.Top = polar(2*math.Pi*(float64(k)+.5)/float64(len(chains)), p.ringR)
		q.Up = q.Top.Unit()
	}
}
