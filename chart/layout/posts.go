package layout

import "math"

// narrowPosts draws columns of post stitches together: those that fall back take
// up little of the fabric's width, and those that cross pull it in. Every column is
// as wide as the mean of its rows, seen from the right side.
//
// After it, ribs close up and basketweave keeps its blocks.
func (p *piece) narrowPosts() {
	if p.h.raised == 0 || p.hasRing || p.manner == Ripple || p.manner == Blocks || len(p.rows) < 2 {
		return
	}
	ground := p.rows[0]
	n := ground.len()
	if n < 2 {
		return
	}
	left := p.at[ground.first].X
	pitch := (p.at[ground.last-1].X - left) / float64(n-1)
	column := func(x float64) int { return min(max(int(math.Round((x-left)/pitch)), 0), n-1) }

	wide, rows, posts := make([]float64, n), make([]float64, n), 0
	all := 0
	for _, r := range p.rows[1:] {
		for i := r.first; i < r.last; i++ {
			d := &p.nodes[i]
			if d.nlegs == 0 {
				continue
			}
			all++
			c, w := column(p.at[i].X), 1.0
			switch post := p.legs[d.leg].post; {
			case post != 0 && d.crossing:
				w = p.h.cabled
				posts++
			case post > 0:
				w = p.h.raised
				posts++
			case post < 0:
				w = p.h.sunk
				posts++
			}
			wide[c] += w
			rows[c]++
		}
	}
	if posts*3 < all {
		return
	}
	edge := make([]float64, n+1) // where each column begins, once drawn together
	for c := range wide {
		w := 1.0
		if rows[c] > 0 {
			w = wide[c] / rows[c]
		}
		edge[c+1] = edge[c] + w*pitch
	}
	for i := range p.at {
		t := (p.at[i].X-left)/pitch + .5
		c := min(max(int(math.Floor(t)), 0), n-1)
		p.at[i].X = left + edge[c] + (t-float64(c))*(edge[c+1]-edge[c]) - .5*pitch
	}
}
