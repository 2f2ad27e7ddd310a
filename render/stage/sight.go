package stage

import (
	"math"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/steps"
)

// sight chooses what of a plan is seen. It moves in jumps, so that the picture stands
// still while the hook goes on and only the hook has to be followed.
type sight struct {
	plan *layout.Plan
	rows []rowSight
}

// rowSight is where a row lies, in the plan's units.
type rowSight struct {
	mid  geom.Point // of its tops
	made geom.Box   // of the tops of this row and all before it
}

func newSight(p *layout.Plan) sight {
	g := sight{plan: p, rows: make([]rowSight, len(p.Fabric.Rows))}
	made := geom.Empty()
	for r := range g.rows {
		row := &p.Fabric.Rows[r]
		var sum geom.Point
		n := 0.
		for id := row.First; id < row.Last; id++ {
			if pose := &p.Poses[id]; pose.Placed {
				sum = sum.Add(pose.Top)
				made = made.Add(pose.Top)
				n++
			}
		}
		g.rows[r] = rowSight{mid: sum.Mul(1 / max(n, 1)), made: made}
	}
	return g
}

// round reports whether the piece is worked about a centre.
func (g *sight) round() bool { return g.plan.Manner >= layout.Point }

// Pixels of the stage to one stitch width.
const (
	least, most = 30, 46
)

// scale is as large as shows the whole width, within bounds.
func (g *sight) scale(pane geom.Box) float64 {
	return max(least, min(most, pane.Width()/(g.plan.Box.Width()+2)))
}

// camera is the middle of the view in a pane: near the hook, but no farther from what is
// made than it has to be.
func (g *sight) camera(step steps.Step, whole bool, pane geom.Box) geom.Point {
	row := &g.rows[step.Row]
	at := g.plan.Poses[step.Last-1].Top
	if whole {
		at = row.mid
	}
	scale := g.scale(pane)
	wide, high := pane.Width()/scale, pane.Height()/scale
	if g.round() {
		return geom.Point{
			X: within(snap(at.X, 3), wide, row.made.Min.X-1, row.made.Max.X+1),
			Y: within(snap(at.Y, 3), high, row.made.Min.Y-1, row.made.Max.Y+1),
		}
	}
	box := g.plan.Box
	return geom.Point{X: within(snap(at.X, 5), wide, box.Min.X-1, box.Max.X+1), Y: row.mid.Y - .2*high}
}

func snap(x, by float64) float64 { return math.Round(x/by) * by }

// within moves the middle of a view so that it shows as little as can be of what lies
// beyond two bounds.
func within(mid, view, low, high float64) float64 {
	if high-low <= view {
		return (low + high) / 2
	}
	return max(low+view/2, min(high-view/2, mid))
}

// body is the box round a stitch from its feet to its top, in the plan's units.
func (g *sight) body(id int32) geom.Box {
	pose := &g.plan.Poses[id]
	b := geom.Empty().Add(pose.Top)
	for _, leg := range g.plan.LegsOf(id) {
		b = b.Add(leg.Foot)
	}
	return b
}
