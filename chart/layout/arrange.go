package layout

import (
	"math"

	"strandway/chart/geom"
	"strandway/model/fabric"
)

// Arrange lays out a fabric at the given heights. The same fabric always gives
// the same plan.
//
// It goes by passes, each in a file of its own that says what holds after it:
// nodes, fans, the manner, direct places, relaxing (of what repeats, once), the
// foundation of cloth, rows worked around the rest, posts drawn together, long
// stitches bunched, hollow bodies, poses, what hangs on them, brackets.
func Arrange(f *fabric.Fabric, h Heights) *Plan {
	plan := &Plan{Fabric: f, Poses: make([]Pose, len(f.Stitches))}
	if len(f.Rows) == 0 || len(f.Stitches) == 0 {
		return plan
	}
	p := build(f, h)
	p.findFans()
	core := p.core()
	plan.Iterations = core.solve()
	p.manner, p.corners, p.period = core.manner, core.corners, core.period
	p.fitGround()
	p.placeAround(len(core.rows))
	p.narrowPosts()
	p.bunch()
	p.layBody(plan)
	p.pose(plan)
	p.hang(plan)
	p.bracket(plan)
	p.measure(plan)
	return plan
}

// solve gives every node its place and tells how many steps that took.
func (p *piece) solve() int {
	relax := p.choose()
	p.findPeriod()
	if !relax {
		p.place()
		return 0
	}
	steps := 0
	for keep := keepRepeats; ; keep += moreRepeats {
		f := p.folded(keep)
		if f == nil {
			p.place()
			return steps + p.relax()
		}
		steps += f.small.settle()
		if f.fits() {
			f.unfold()
			return steps
		}
	}
}

// settle places and relaxes a folded piece. Where rows repeat in more than one stretch, as below
// and above a row unlike the others, each stretch is folded in its turn.
func (p *piece) settle() int {
	f := &fold{whole: p}
	f.findRows()
	if f.rowsOut == 0 || len(p.nodes) < foldFrom {
		p.place()
		return p.relax()
	}
	f.cutRows()
	f.small = f.build()
	steps := f.small.settle()
	f.unfold()
	return steps
}

// place gives every node its direct place in the manner chosen.
func (p *piece) place() {
	switch {
	case len(p.nodes) == 0:
	case p.hasRing:
		p.placeRounds()
	case p.manner == Ripple:
		p.placeRipple()
	case p.manner == Blocks:
		p.placeBlocks()
	default:
		p.placeColumns()
	}
}

// measure sums up: the box of all that is placed and how far heights were missed.
func (p *piece) measure(plan *Plan) {
	box := geom.Empty()
	missed, n := 0.0, 0.0
	for id := range plan.Poses {
		q := &plan.Poses[id]
		if !q.Placed {
			continue
		}
		box = box.Add(q.Top)
		for _, l := range plan.LegsOf(int32(id)) {
			box = box.Add(l.Foot)
		}
		i := p.nodeOf[id]
		if i < 0 {
			continue
		}
		if d := &p.nodes[i]; d.nlegs == 1 && !d.level {
			h := d.h
			if p.inRing(i) {
				h += p.feetR
			}
			missed += math.Abs(p.at[i].Sub(p.foot(p.legs[d.leg])).Len() - h)
			n++
		}
	}
	if !box.IsEmpty() {
		plan.Box = box.Grow(stitchHalf)
	}
	if n > 0 {
		plan.HeightError = missed / n
	}
}
