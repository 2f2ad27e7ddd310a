package layout

import (
	"fmt"

	"strandway/chart/geom"
	"strandway/model/fabric"
)

// crossings lists pairs of legs whose drawn stems cross. Deep legs are meant to.
func crossings(p *Plan) []string {
	type stem struct {
		id   int32
		a, b geom.Point
	}
	var stems []stem
	for id := range p.Poses {
		q := &p.Poses[id]
		if !q.Placed || q.Depth != 0 {
			continue
		}
		for _, l := range p.LegsOf(int32(id)) {
			if l.Deep {
				continue
			}
			gap := .25
			if l.At < 0 {
				gap = p.RingR
			}
			d := q.Top.Sub(l.Foot)
			stems = append(stems, stem{int32(id), l.Foot.Add(d.Unit().Mul(min(gap, d.Len()/2))), q.Top})
		}
	}
	var out []string
	for i, s := range stems {
		for _, t := range stems[i+1:] {
			if s.id != t.id && cross(s.a, s.b, t.a, t.b) {
				out = append(out, fmt.Sprintf("%d x %d", s.id, t.id))
			}
		}
	}
	return out
}

func cross(a, b, c, d geom.Point) bool {
	side := func(p, q, r geom.Point) float64 { return q.Sub(p).Cross(r.Sub(p)) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// tooNear counts pairs of tops or chains whose ink would touch.
func tooNear(p *Plan) int {
	const least = .45
	grid := map[[2]int][]geom.Point{}
	n := 0
	for id := range p.Poses {
		q := &p.Poses[id]
		if !q.Placed || q.Depth != 0 || p.Fabric.Stitches[id].Has(fabric.Surface) {
			continue
		}
		x, y := int(q.Top.X+1e4), int(q.Top.Y+1e4)
		for i := x - 1; i <= x+1; i++ {
			for j := y - 1; j <= y+1; j++ {
				for _, o := range grid[[2]int{i, j}] {
					if o.Sub(q.Top).Len() < least {
						n++
					}
				}
			}
		}
		grid[[2]int{x, y}] = append(grid[[2]int{x, y}], q.Top)
	}
	return n
}
