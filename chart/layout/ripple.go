package layout

import "math"

// turn is a place in a rippling row where it turns up or down.
type turn struct {
	at   float64 // place in the row
	gain float64 // stitches won (a peak) or lost (a valley) on either side
}

const (
	leastTurnGap = 2.9 // turns closer than this are a V-stitch or a shell
	skipGap      = 2.5 // places passed between neighbours that make a valley
	steepest     = .8
)

// turns lists the increases and decreases of row k in their order.
func (p *piece) turns(k int) []turn {
	r := p.rows[k]
	var out []turn
	lastFan, lastBase, lastPos := int32(-1), math.Inf(1), 0.0
	for i := r.first; i < r.last; i++ {
		n := &p.nodes[i]
		if n.nlegs == 0 || n.deep {
			continue
		}
		pos := float64(i - r.first)
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, l := range p.of(i) {
			b := p.placeInRow(l)
			lo, hi = min(lo, b), max(hi, b)
		}
		if lo-lastBase > skipGap && !p.legs[n.leg].space {
			out = append(out, turn{(pos + lastPos) / 2, -(lo - lastBase - 1) / 2})
		}
		if n.nlegs > 1 {
			out = append(out, turn{pos, -(hi - lo) / 2})
		}
		if n.fan >= 0 && n.fan != lastFan {
			lastFan = n.fan
			out = append(out, p.peak(&p.fans[n.fan], r))
		}
		lastBase, lastPos = hi, pos
	}
	return out
}

// peak is the turn that a fan makes.
func (p *piece) peak(f *fan, r row) turn {
	a, b := float64(f.first-r.first), float64(f.last-r.first)
	below := 1.0
	if l := p.legs[p.nodes[f.first].leg]; l.a != l.b {
		below = 2
	}
	switch f.side {
	case 1:
		return turn{0, b - a}
	case -1:
		return turn{float64(r.len() - 1), b - a}
	}
	return turn{(a + b) / 2, (b - a + 1 - below) / 2}
}

// rises gives the turns of each row above the foundation of a ripple, nil for a
// row without; nil when the rows do not rise and fall in the same columns.
func (p *piece) rises() [][]turn {
	if len(p.rows) < 3 {
		return nil
	}
	out := make([][]turn, 0, len(p.rows)-1)
	for k := range p.rows[1:] {
		ts := p.turns(k + 1)
		for i := 1; i < len(ts); i++ {
			if ts[i].at-ts[i-1].at < leastTurnGap {
				return nil
			}
		}
		if !bothWays(ts) || p.loops(p.rows[k+1]) {
			ts = nil
		}
		out = append(out, ts)
	}
	same := keepCommon(out)
	if same < 2 || same*10 < 6*(len(p.rows)-1) {
		return nil
	}
	return out
}

// keepCommon keeps the rows that turn as most do, tells how many they are, and
// sets the others to nil: a first row often begins without the increase at its edge.
func keepCommon(rows [][]turn) int {
	var shape []turn
	most := 0
	for _, ts := range rows {
		n := 0
		for _, other := range rows {
			if ts != nil && other != nil && sameWays(ts, other) {
				n++
			}
		}
		if n > most {
			shape, most = ts, n
		}
	}
	for k, ts := range rows {
		if ts != nil && !sameWays(ts, shape) {
			rows[k] = nil
		}
	}
	return most
}

func bothWays(ts []turn) bool {
	up, down := false, false
	for _, t := range ts {
		up, down = up || t.gain > 0, down || t.gain < 0
	}
	return up && down
}

func sameWays(a, b []turn) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].gain > 0 != (b[i].gain > 0) {
			return false
		}
	}
	return true
}

// placeRipple starts a ripple on the slope that its increases drive it to: with g
// stitches won on each side of a turn in rows of height h, tan slope = g/h. Turns
// stand straight above one another.
//
// After it, the rows zigzag without touching; relaxing only smooths them.
func (p *piece) placeRipple() {
	all := p.rises()
	var ref []turn
	refRow := 0
	for k, ts := range all {
		if ts != nil {
			ref, refRow = ts, k+1
			break
		}
	}
	slope := p.slope(ref)
	sin, cos := math.Sincos(slope)
	x, z := zigzag(all, ref, sin, cos)
	y := 0.0
	for k, r := range p.rows {
		var ts []turn
		if k > 0 {
			ts = all[k-1]
			y += p.rowHeight(r) / cos
		}
		if ts == nil { // turns lie in proportion where the row makes none
			share := float64(r.len()-1) / float64(p.rows[refRow].len()-1)
			for _, t := range ref {
				ts = append(ts, turn{t.at * share, t.gain})
			}
		}
		last := len(ts) - 1
		for i := r.first; i < r.last; i++ {
			pos := float64(i - r.first)
			q := &p.at[i]
			switch {
			case pos <= ts[0].at:
				d := ts[0].at - pos
				q.X, q.Y = x[0]-d*cos, z[0]-math.Copysign(d*sin, ref[0].gain)
			case pos >= ts[last].at:
				d := pos - ts[last].at
				q.X, q.Y = x[last]+d*cos, z[last]-math.Copysign(d*sin, ref[last].gain)
			default:
				e := 1
				for ts[e].at <= pos {
					e++
				}
				t := (pos - ts[e-1].at) / (ts[e].at - ts[e-1].at)
				q.X, q.Y = x[e-1]+(x[e]-x[e-1])*t, z[e-1]+(z[e]-z[e-1])*t
			}
			q.Y += y
		}
	}
}

func (p *piece) slope(ref []turn) float64 {
	h, rows := 0.0, 0.0
	for _, r := range p.rows[1:] {
		if rh := p.rowHeight(r); rh > 0 {
			h += rh
			rows++
		}
	}
	g := 0.0
	for _, t := range ref {
		g += math.Abs(t.gain)
	}
	return math.Atan(min(steepest, g/float64(len(ref))*rows/h))
}

// zigzag gives the column and the height of each turn within a row.
func zigzag(all [][]turn, ref []turn, sin, cos float64) (x, z []float64) {
	x, z = make([]float64, len(ref)), make([]float64, len(ref))
	for e := range ref {
		sum, n := 0.0, 0.0
		for _, ts := range all {
			if ts == nil {
				continue
			}
			d := ts[e].at
			if e > 0 {
				d -= ts[e-1].at
			}
			sum += d
			n++
		}
		x[e] = sum / n * cos
		if e > 0 {
			z[e] = z[e-1] + math.Copysign(sum/n*sin, ref[e].gain)
			x[e] += x[e-1]
		}
	}
	return x, z
}
