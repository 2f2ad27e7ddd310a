package layout

import (
	"math"

	"strandway/chart/geom"
	"strandway/model/fabric"
)

// around is rows worked about a finished part: an edging about a swatch, a band
// along its side, rounds about both sides of a foundation. They lie on lines at
// one distance from the part's box, round its corners.
type around struct {
	box geom.Box
}

// spot is a place beside the box: the nearest point of the box and the way out.
type spot struct {
	at  geom.Point
	out geom.Point // unit
}

const nearCorner = .8 // a group in one place this near to a corner goes round it

// worksAround reports whether a fabric row goes about what was made before it,
// or stands on one that does.
func (p *piece) worksAround(source int) bool {
	switch {
	case source == 0:
		return false
	case p.manner == Oval:
		return true
	case p.manner != Rows:
		return false
	}
	for ; source > 0; source-- {
		if r := &p.f.Rows[source]; r.Shape != fabric.Flat || r.EndSide != fabric.NoSide {
			return true
		}
	}
	return false
}

// core is the part that others are worked about: the rows before the first of
// them. It shares the piece's nodes.
func (p *piece) core() *piece {
	for k, r := range p.rows {
		if k == 0 || !p.worksAround(r.source) {
			continue
		}
		c := *p
		c.rows = p.rows[:k]
		c.nodes = p.nodes[:r.first]
		c.at = p.at[:r.first]
		return &c
	}
	return p
}

// placeAround lays the rows from the first one on about those before them.
//
// After it, edgings run parallel to the edges they are worked on.
func (p *piece) placeAround(first int) {
	if first >= len(p.rows) {
		return
	}
	a := around{geom.Empty()}
	ground := p.rows[0]
	for i := range p.rows[first].first {
		a.box = a.box.Add(p.at[i])
	}
	for i := ground.first; i < ground.last; i++ {
		a.box = a.box.Add(p.at[i].Sub(geom.Point{Y: p.nodes[i].h}))
	}
	switch p.manner {
	case Oval:
		a.box.Min.X -= ovalEnd
		a.box.Max.X += ovalEnd
	case Rows:
		left, right := p.rowEnds(first)
		a.box.Min.X -= left
		a.box.Max.X += right
	}
	distance := make([]float64, len(p.rows))
	var s separator
	for k := first; k < len(p.rows); k++ {
		r := p.rows[k]
		sum, n := 0.0, 0.0
		for i := r.first; i < r.last; i++ {
			d := &p.nodes[i]
			if !p.below(i) || d.deep {
				continue
			}
			sum += distance[p.nodes[p.legs[d.leg].a].row] + d.h
			n++
		}
		distance[k] = distance[k-1] + 1
		if n > 0 {
			distance[k] = sum / n
		}
		p.placeAlong(&a, r, distance[k], &s)
	}
}

const (
	ovalEnd     = .25 // beyond the middle of a foundation's last chain, round which the end of an oval turns
	endBeside   = .3  // of the ends of rows, that lie beside the middle of their stitches
	chainBeside = .5  // more, where chains that do not count stand beside the first stitch
	chainUnder  = .1  // the same in cloth, where an edging draws them under
	endUsed     = .8  // of the height of a row's end, that the stitches in it take up
)

// rowEnds is how far beside the outer stitches the ends of the first rows lie, left and right.
func (p *piece) rowEnds(first int) (left, right float64) {
	left, right = endBeside, endBeside
	beside := chainBeside
	if p.h.measured {
		beside = chainUnder
	}
	for _, r := range p.rows[:first] {
		fr := &p.f.Rows[r.source]
		switch {
		case r.source == 0 || p.startChains(fr) == 0:
		case fr.FromLeft:
			left = endBeside + beside
		default:
			right = endBeside + beside
		}
	}
	return left, right
}

// placeAlong places one row at a distance from the box.
func (p *piece) placeAlong(a *around, r row, distance float64, s *separator) {
	n := r.len()
	s.size(n)
	whole := a.length(distance)
	any, before := false, math.NaN()
	for k := range n {
		i := r.first + int32(k)
		s.gap[k] = p.gap(i, r.first+int32((k+1)%n))
		d := &p.nodes[i]
		if !p.below(i) {
			continue
		}
		l := p.legs[d.leg]
		q := a.spotOf(p, l)
		if l.how == fabric.RowEnd { // from here on its place is beside the edge
			room := endUsed / 2 * p.nodes[l.a].h
			p.legs[d.leg].a = p.ghost(a.point(a.along(q, 0)+max(-room, min(room, p.along(i))), 0))
			p.legs[d.leg].b = p.legs[d.leg].a
		}
		if r.closed && d.fan >= 0 && p.fans[d.fan].members >= 2 {
			q = a.roundCorner(q)
		}
		x := a.along(q, distance) + p.along(i)
		if !math.IsNaN(before) {
			x += whole * math.Round((before-x)/whole)
		}
		before = x
		s.x[k], s.weight[k], s.known[k] = x, 1, true
		any = true
	}
	if !any {
		return
	}
	if r.closed {
		s.fillRound(whole)
		if natural := p.natural(r); natural > whole {
			s.scaleGaps(.999 * whole / natural)
		}
		s.settleRound(whole)
		inEnds := func(k int) bool {
			n := &p.nodes[r.first+int32(k)]
			return n.nlegs == 1 && p.legs[n.leg].how == fabric.RowEnd
		}
		a.evenCorners(s, distance, whole, inEnds)
		for k := range n { // alone in the end of a row, a stitch stands square to the side
			if d := &p.nodes[r.first+int32(k)]; inEnds(k) && d.fan < 0 {
				p.at[p.legs[d.leg].a] = a.nearest(a.point(s.x[k], distance))
			}
		}
	} else {
		s.fillOpen(chainGap)
		s.settle()
	}
	for k := range n {
		p.at[r.first+int32(k)] = a.point(s.x[k], distance)
	}
}

// evenCorners spaces the points of a closed row evenly where it goes round a
// corner, and those that are free to be moved.
func (a *around) evenCorners(s *separator, distance, whole float64, free func(k int) bool) {
	const passes = 60
	n := len(s.x)
	if n < 3 {
		return
	}
	w, h := a.box.Width(), a.box.Height()
	corner := math.Pi / 2 * distance
	inCorner := func(x float64) bool {
		x -= whole * math.Floor(x/whole)
		for _, side := range [...]float64{h, w, h, w} {
			if x < side {
				return false
			}
			if x -= side; x < corner {
				return true
			}
			x -= corner
		}
		return false
	}
	for range passes {
		for k := range n {
			if !inCorner(s.x[k]) && !free(k) {
				continue
			}
			before, after := s.x[(k+n-1)%n], s.x[(k+1)%n]
			if k == 0 {
				before -= whole
			}
			if k == n-1 {
				after += whole
			}
			to, from := s.gap[k], s.gap[(k+n-1)%n]
			s.x[k] = (before*to + after*from) / (to + from)
		}
	}
}

// ghost is a node that holds a place no stitch's top is at.
func (p *piece) ghost(at geom.Point) int32 {
	p.nodes = append(p.nodes, node{id: -1, fan: -1})
	p.at = append(p.at, at)
	return int32(len(p.nodes) - 1)
}

// spotOf is where a leg stands on the box or beyond it.
func (a *around) spotOf(p *piece, l leg) spot {
	at := p.foot(l)
	switch l.how {
	case fabric.Underside:
		return spot{geom.Point{X: at.X, Y: a.box.Min.Y}, geom.Point{Y: -1}}
	case fabric.RowEnd:
		if i := l.a; p.nodes[i].nlegs > 0 {
			at = at.Lerp(p.foot(p.legs[p.nodes[i].leg]), .5)
		}
		if at.X < a.box.Centre().X {
			return spot{geom.Point{X: a.box.Min.X, Y: at.Y}, geom.Point{X: -1}}
		}
		return spot{geom.Point{X: a.box.Max.X, Y: at.Y}, geom.Point{X: 1}}
	}
	c := a.nearest(at)
	if d := at.Sub(c); d.Len() > 1e-6 {
		return spot{c, d.Unit()}
	}
	return spot{geom.Point{X: c.X, Y: a.box.Max.Y}, geom.Point{Y: 1}}
}

// nearest is the point of the box nearest to one.
func (a *around) nearest(p geom.Point) geom.Point {
	return geom.Point{
		X: min(max(p.X, a.box.Min.X), a.box.Max.X),
		Y: min(max(p.Y, a.box.Min.Y), a.box.Max.Y),
	}
}

// roundCorner turns a spot near a corner to the corner's middle.
func (a *around) roundCorner(q spot) spot {
	b := a.box
	for _, c := range [...]geom.Point{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}} {
		if q.at.Sub(c).Len() > nearCorner+stitchHalf || q.out.X != 0 && q.out.Y != 0 {
			continue
		}
		if b.Height() < 1e-6 { // the end of a foundation: half a turn
			return spot{c, geom.Point{X: math.Copysign(1, c.X-b.Centre().X)}}
		}
		out := c.Sub(b.Centre())
		return spot{c, geom.Point{X: math.Copysign(1, out.X), Y: math.Copysign(1, out.Y)}.Unit()}
	}
	return q
}

// length is the way once round at a distance.
func (a *around) length(d float64) float64 {
	return 2*(a.box.Width()+a.box.Height()) + 2*math.Pi*d
}

// along is how far along the line at distance d a spot lies, counter-clockwise
// from the foot of the right side.
func (a *around) along(q spot, d float64) float64 {
	w, h := a.box.Width(), a.box.Height()
	corner := math.Pi / 2 * d
	t := math.Atan2(q.out.Y, q.out.X)
	if t < 0 {
		t += 2 * math.Pi
	}
	side := math.Floor(t / (math.Pi / 2))
	into := (t - side*math.Pi/2) * d
	before := [...]float64{0, h + corner, h + w + 2*corner, 2*h + w + 3*corner}[min(int(side), 3)]
	if into > 1e-9 { // on the corner that ends the side
		return before + [...]float64{h, w, h, w}[min(int(side), 3)] + into
	}
	switch int(side) {
	case 0:
		return before + q.at.Y - a.box.Min.Y
	case 1:
		return before + a.box.Max.X - q.at.X
	case 2:
		return before + a.box.Max.Y - q.at.Y
	}
	return before + q.at.X - a.box.Min.X
}

// point is the point that lies x along the line at distance d.
func (a *around) point(x, d float64) geom.Point {
	whole := a.length(d)
	x -= whole * math.Floor(x/whole)
	w, h := a.box.Width(), a.box.Height()
	b := a.box
	sides := [...]struct {
		from, way geom.Point
		length    float64
	}{
		{geom.Point{X: b.Max.X, Y: b.Min.Y}, geom.Point{Y: 1}, h},
		{b.Max, geom.Point{X: -1}, w},
		{geom.Point{X: b.Min.X, Y: b.Max.Y}, geom.Point{Y: -1}, h},
		{b.Min, geom.Point{X: 1}, w},
	}
	for k, s := range sides {
		out := geom.Point{X: s.way.Y, Y: -s.way.X}
		if x <= s.length {
			return s.from.Add(s.way.Mul(x)).Add(out.Mul(d))
		}
		x -= s.length
		if corner := math.Pi / 2 * d; x > corner && k < 3 {
			x -= corner
			continue
		}
		return s.from.Add(s.way.Mul(s.length)).Add(out.Rotate(x / d).Mul(d))
	}
	return b.Max
}
