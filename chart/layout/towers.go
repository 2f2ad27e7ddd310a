package layout

import "math"

const (
	// towerReach is how many stitches to either side a column is compared with: within it no wave of the trade has its
	// next crest.
	towerReach = 4
	// crest is by how much, u, the crest of a wave stands above its sides: trebles among sc, and a little.
	crest = 2.6
	// towerShare is the share of its height by which a column outgrows its sides where nothing makes up for its tall
	// stitches. Waves that the next rows fill come to half of it, since a treble and a sc are taller than a dc and a hdc.
	towerShare = .1
)

// levelRows lays rows level where tall stitches come to stand over tall ones again and again, with nothing that makes up
// for it: a cloth bunches there. A wave, which its next rows fill, stays a wave.
//
// After it, the last row of a piece is about as level as its first.
func (p *piece) levelRows() {
	if !p.hasRing && p.hasTowers() {
		for _, r := range p.rows {
			p.eachLine(r, p.level)
		}
		return
	}
	for _, r := range p.rows {
		p.evenHeights(r)
	}
}

// hasTowers adds up the heights of all columns, row by row.
func (p *piece) hasTowers() bool {
	top := make([]float64, len(p.nodes))
	for _, r := range p.rows {
		var line []int32
		for i := r.first; i < r.last; i++ {
			n := &p.nodes[i]
			if n.nlegs == 0 || n.deep || n.slip {
				continue
			}
			for _, l := range p.of(i) {
				if l.a >= 0 {
					top[i] += (top[l.a] + top[l.b]) / 2 / float64(n.nlegs)
				}
			}
			top[i] += n.h
			line = append(line, i)
		}
		for k, i := range line {
			left, right := math.Inf(1), math.Inf(1)
			for step := 1; step <= towerReach; step++ {
				if k-step >= 0 {
					left = min(left, top[line[k-step]])
				}
				if k+step < len(line) {
					right = min(right, top[line[k+step]])
				}
			}
			if above := top[i] - max(left, right); !r.closed && above > crest+towerShare*top[i] {
				return true
			}
		}
		p.spread(r, line, top)
	}
	return false
}

// spread gives what has no height of its own, as chains, the height of the stitch before it.
func (p *piece) spread(r row, line []int32, top []float64) {
	if len(line) == 0 {
		return
	}
	last := top[line[0]]
	for i, k := r.first, 0; i < r.last; i++ {
		if k < len(line) && line[k] == i {
			last, k = top[i], k+1
		} else {
			top[i] = last
		}
	}
}

// level gives the stitches of a line one height: in a chart that of the tallest, in cloth their harmonic mean, by which
// the short ones decide.
func (p *piece) level(line []int32) {
	tallest, slack := 0., 0.
	for _, i := range line {
		tallest = max(tallest, p.nodes[i].h)
		slack += 1 / p.nodes[i].h
	}
	for _, i := range line {
		p.nodes[i].h = tallest
		if p.h.measured {
			p.nodes[i].h = float64(len(line)) / slack
		}
	}
}
