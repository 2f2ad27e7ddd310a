package layout

import (
	"math"
	"sort"

	"strandway/chart/geom"
)

// bunch lets stitches worked below their row pull together what they pass: the
// rows between draw toward the middle of the long stitch, and its neighbours
// toward its line.
//
// After it, cloth gathers about long stitches, the more the longer they are.
func (p *piece) bunch() {
	if !p.h.measured || p.hasRing {
		return
	}
	const (
		reach  = 1.5 // to either side, u
		along  = .13 // share of the way to the middle
		across = .22 // share of the way to the line
	)
	var move []geom.Point
	for i := range p.nodes {
		n := &p.nodes[i]
		if !n.deep {
			continue
		}
		for _, l := range p.of(int32(i)) {
			if l.a < 0 || p.nodes[l.a].row >= n.row {
				continue
			}
			if move == nil {
				move = make([]geom.Point, len(p.at))
			}
			foot, top := p.foot(l), p.at[i]
			line := top.Sub(foot)
			for r := p.nodes[l.a].row; r <= n.row && line.Y > 0; r++ {
				row := p.rows[r]
				nodes := p.at[row.first:row.last]
				k := sort.Search(len(nodes), func(k int) bool { return nodes[k].X > min(foot.X, top.X)-reach })
				for ; k < len(nodes) && nodes[k].X < max(foot.X, top.X)+reach; k++ {
					t := (nodes[k].Y - foot.Y) / line.Y
					aside := nodes[k].X - foot.X - t*line.X
					if math.Abs(aside) >= reach {
						continue
					}
					near := math.Cos(.5 * math.Pi * aside / reach)
					near *= near
					d := geom.Point{Y: along * (.5 - t) * line.Y * near}
					if r < n.row {
						d.X = -across * aside * near
					}
					at := &move[int(row.first)+k]
					*at = at.Add(d)
				}
			}
		}
	}
	const most = .25 // u that a stitch gives way
	for i, d := range move {
		p.at[i] = p.at[i].Add(geom.Point{X: max(-most, min(most, d.X)), Y: max(-most, min(most, d.Y))})
	}
}
