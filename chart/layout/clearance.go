package layout

import (
	"math"

	"strandway/chart/geom"
)

const (
	stemClear  = .42 // of a node from the stem of another stitch
	crossClear = .62 // of a chain from a low stitch, whose cross is wider than a stem, and from a turning chain
	chainClear = .72 // of a chain from a node of another row
	loopClear  = .66 // of chains of neighbouring loops
	barClear   = .62 // of the bars of leaning stitches of neighbouring rows
	skin       = .4  // how much further candidates are looked for than needed
	cell       = 1.5
)

// clearance keeps ink from ink. Its candidates are found on a grid every few steps.
type clearance struct {
	stems []stemNear
	discs []keepOff // chains and bars, and what they keep off

	head, link []int32
	lo         geom.Point
	wide, high int
}

// keepOff is two nodes that want a distance.
type keepOff struct {
	a, b int32
	want float64
}

type stemNear struct{ leg, top, near int32 }

// gather looks for what could come too near soon.
func (c *clearance) gather(p *piece) {
	c.stems, c.discs = c.stems[:0], c.discs[:0]
	c.fill(p.at)
	for i := range p.nodes {
		n := &p.nodes[i]
		if n.chain {
			if n.row > 0 || p.hasRing {
				c.nearNode(p, int32(i))
			}
			continue
		}
		if n.fan >= 0 && !n.low && !p.h.measured {
			c.nearNode(p, int32(i))
		}
		if n.deep {
			continue
		}
		for k := n.leg; k < n.leg+n.nlegs; k++ {
			c.nearStem(p, int32(i), k)
		}
	}
}

// fill sorts the points into cells.
func (c *clearance) fill(at []geom.Point) {
	box := geom.Empty()
	for _, q := range at {
		box = box.Add(q)
	}
	c.lo = box.Min
	c.wide, c.high = int(box.Width()/cell)+1, int(box.Height()/cell)+1
	if cap(c.head) < c.wide*c.high {
		c.head = make([]int32, c.wide*c.high)
	}
	c.head = c.head[:c.wide*c.high]
	for i := range c.head {
		c.head[i] = -1
	}
	if cap(c.link) < len(at) {
		c.link = make([]int32, len(at))
	}
	c.link = c.link[:len(at)]
	for i, q := range at {
		k := int((q.Y-c.lo.Y)/cell)*c.wide + int((q.X-c.lo.X)/cell)
		c.link[i], c.head[k] = c.head[k], int32(i)
	}
}

// within gives the cells that the box of a and b, grown by r, touches.
func (c *clearance) within(a, b geom.Point, r float64) (i0, j0, i1, j1 int) {
	i0 = max(0, int((min(a.X, b.X)-r-c.lo.X)/cell))
	j0 = max(0, int((min(a.Y, b.Y)-r-c.lo.Y)/cell))
	i1 = min(c.wide-1, int((max(a.X, b.X)+r-c.lo.X)/cell))
	j1 = min(c.high-1, int((max(a.Y, b.Y)+r-c.lo.Y)/cell))
	return
}

// nearNode finds what a chain or the bar of a leaning stitch could come too near to.
func (c *clearance) nearNode(p *piece, i int32) {
	at, reach := p.at[i], chainClear+skin
	i0, j0, i1, j1 := c.within(at, at, reach)
	for y := j0; y <= j1; y++ {
		for x := i0; x <= i1; x++ {
			for k := c.head[y*c.wide+x]; k >= 0; k = c.link[k] {
				d := p.at[k].Sub(at)
				if want := p.keeps(i, k); want > 0 && d.Dot(d) <= reach*reach {
					c.discs = append(c.discs, keepOff{i, k, want})
				}
			}
		}
	}
}

// keeps is the distance that a chain or bar i keeps from node k; 0 for none.
func (p *piece) keeps(i, k int32) float64 {
	n, m := &p.nodes[i], &p.nodes[k]
	switch {
	case n.chain && n.row != m.row:
		return chainClear
	case n.chain && m.chain && k > i+1 && p.loopsApart(i, k):
		return loopClear
	case !n.chain && n.row < m.row && !m.chain && !m.low && !m.deep:
		return barClear
	}
	return 0
}

// loopsApart reports whether a stitch stands between two chains of a row.
func (p *piece) loopsApart(i, k int32) bool {
	for j := i + 1; j < k; j++ {
		if !p.nodes[j].chain {
			return true
		}
	}
	return false
}

func (c *clearance) nearStem(p *piece, i, leg int32) {
	l := p.legs[leg]
	foot, top := p.foot(l), p.at[i]
	reach, f := crossClear+skin, p.nodes[i].fan
	i0, j0, i1, j1 := c.within(foot, top, reach)
	for y := j0; y <= j1; y++ {
		for x := i0; x <= i1; x++ {
			for k := c.head[y*c.wide+x]; k >= 0; k = c.link[k] {
				if k == i || k == l.a || k == l.b || f >= 0 && p.nodes[k].fan == f {
					continue
				}
				if d, _ := away(foot, top, p.at[k]); d.Dot(d) < reach*reach {
					c.stems = append(c.stems, stemNear{leg, i, k})
				}
			}
		}
	}
}

// away is the way from the nearest point of the line a-b to q, and where on the
// line that is, 0 at a.
func away(a, b, q geom.Point) (geom.Point, float64) {
	d := b.Sub(a)
	t := 0.0
	if dd := d.Dot(d); dd > 1e-12 {
		t = min(1, max(0, q.Sub(a).Dot(d)/dd))
	}
	return q.Sub(a.Add(d.Mul(t))), t
}

func (x *relaxer) pullClear() {
	p, w := x.p, x.w.clear
	for _, c := range x.clear.discs {
		d := x.at[c.b].Sub(x.at[c.a])
		l2 := d.Dot(d)
		if l2 >= c.want*c.want || l2 < 1e-18 {
			continue
		}
		l := math.Sqrt(l2)
		u := d.Mul(1 / l)
		if p.nodes[c.a].chain && !p.hasRing && p.nodes[c.a].row != p.nodes[c.b].row { // rows keep their order
			up := 1.5
			if p.nodes[c.b].row < p.nodes[c.a].row {
				up = -up
			}
			u = u.Add(geom.Point{Y: up}).Unit()
		}
		u = u.Mul((c.want - l) / 2)
		x.pull(c.b, u, w)
		x.pull(c.a, u.Mul(-1), w)
	}
	for _, c := range x.clear.stems {
		l := p.legs[c.leg]
		foot, at := p.foot(l), x.at[c.top]
		u, t := away(foot, at, x.at[c.near])
		d2, want := u.Dot(u), stemClear
		if top := &p.nodes[c.top]; (top.low || top.turn) && p.nodes[c.near].chain && !p.h.measured {
			want = crossClear
		}
		if d2 >= want*want || t < .02 {
			continue
		}
		d := math.Sqrt(d2)
		if d < 1e-6 {
			u = at.Sub(foot).Perp()
		}
		u = u.Unit().Mul((want - d) / 2)
		x.pull(c.near, u, w)
		x.pull(c.top, u.Mul(-t), w)
	}
}
