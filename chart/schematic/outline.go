package schematic

import (
	"math"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
)

// Outline is the outer edge of a fabric laid out at its measured heights, in u:
// shaping, points and edgings included, holes not. It is empty for a plan
// without stitches.
//
// Every stitch covers a band one stitch wide along its legs; gaps that
// chain-spaces leave are closed; what is then traced is the edge of the cover.
func Outline(p *layout.Plan) geom.Path {
	gap, fine := openings(p.Fabric), .2
	const uneven = .45 // u: more than an uneven edge, less than the rise of a ripple
	round := p.Manner == layout.Point || p.Manner == layout.Circle || p.Manner == layout.Oval
	if p.Manner >= layout.Point {
		fine, gap = .1, max(gap, 3)
	}
	m := newCover(p.Box, gap, fine)
	if m == nil {
		return geom.Path{}
	}
	for id := range p.Poses {
		pose := &p.Poses[id]
		if !pose.Placed || pose.Dropped {
			continue
		}
		m.mark(pose.Top, round)
		for k := int32(0); k < int32(pose.NLegs); k++ {
			leg := p.Legs[pose.FirstLeg+k]
			way := pose.Top.Sub(leg.Foot)
			steps := int(math.Ceil(way.Len()/(m.cell*1.5))) + 1
			for i := 0; i < steps; i++ {
				m.mark(leg.Foot.Add(way.Mul(float64(i)/float64(steps))), round)
			}
		}
	}
	ring := m.closed(gap / 2 / m.cell).largest()
	for i := range ring {
		ring[i] = m.origin.Add(ring[i].Mul(m.cell))
	}
	switch {
	case round:
		return curved(straighten(ring, .12))
	case p.Manner == layout.Rows:
		ring = slants(straighten(ring, uneven))
	default:
		ring = straighten(ring, uneven)
	}
	return polygon(squared(sharpened(ring)))
}

// sharpened takes off the small cuts where a cover has no stitch in the very corner.
func sharpened(ring []geom.Point) []geom.Point {
	const short, long = 1.8, 4 // u
	n := len(ring)
	if n < 5 {
		return ring
	}
	at := func(i int) geom.Point { return ring[(i+n)%n] }
	edge := func(i int) geom.Point { return at(i + 1).Sub(at(i)) }
	var out []geom.Point
	for i := range n {
		before, after := edge(i-1), edge(i+1)
		cut := func(i int) bool {
			return edge(i).Len() < short && edge(i-1).Len() > long && edge(i+1).Len() > long
		}
		switch cross := before.Cross(after); {
		case cut(i) && math.Abs(cross) > .3*before.Len()*after.Len():
			t := at(i+1).Sub(at(i)).Cross(after) / cross // along the edge before, to where that after crosses it
			out = append(out, at(i).Add(before.Mul(t)))
		case cut(i-1) && math.Abs(edge(i-2).Cross(edge(i))) > .3*edge(i-2).Len()*edge(i).Len(): // taken off with the point before
		default:
			out = append(out, at(i))
		}
	}
	return out
}

// squared makes long edges level or upright that are nearly so.
func squared(ring []geom.Point) []geom.Point {
	const long, off = 6, .9 // u
	n := len(ring)
	for i := range ring {
		a, b := &ring[i], &ring[(i+1)%n]
		switch d := b.Sub(*a); {
		case math.Abs(d.X) > long && math.Abs(d.Y) < off:
			a.Y, b.Y = (a.Y+b.Y)/2, (a.Y+b.Y)/2
		case math.Abs(d.Y) > long && math.Abs(d.X) < off:
			a.X, b.X = (a.X+b.X)/2, (a.X+b.X)/2
		}
	}
	return ring
}

// slants draws the steps that increases and decreases make along an edge as one
// line, from corner to corner: where two longer edges meet.
func slants(ring []geom.Point) []geom.Point {
	const step, long = 1.1, 4 // u
	n := len(ring)
	var corners []int
	for i := range ring {
		before, after := ring[(i+n-1)%n].Sub(ring[i]).Len(), ring[(i+1)%n].Sub(ring[i]).Len()
		if before > long && after > long {
			corners = append(corners, i)
		}
	}
	if len(corners) < 2 {
		return straighten(ring, step)
	}
	var out []geom.Point
	for k, from := range corners {
		to := corners[(k+1)%len(corners)]
		if to <= from {
			to += n
		}
		var run []geom.Point
		for i := from; i <= to; i++ {
			run = append(run, ring[i%n])
		}
		run = simpler(run, step)
		out = append(out, run[:len(run)-1]...)
	}
	return out
}

func polygon(ring []geom.Point) (path geom.Path) {
	for i, p := range ring {
		if i == 0 {
			path.MoveTo(p)
		} else {
			path.LineTo(p)
		}
	}
	if len(ring) > 0 {
		path.Close()
	}
	return path
}

// curved goes through the points of a ring in one curve, save where it turns so
// sharply that there is a corner.
func curved(ring []geom.Point) (path geom.Path) {
	n := len(ring)
	if n < 4 {
		return polygon(ring)
	}
	const corner = .7 // of a radian
	at := func(i int) geom.Point { return ring[(i+n)%n] }
	// The curve leaves each point along the line between its neighbours, and a corner straight for the next point.
	tangent := func(i int, toward geom.Point) geom.Point {
		in, out := at(i).Sub(at(i-1)), at(i+1).Sub(at(i))
		if math.Abs(math.Atan2(in.Cross(out), in.Dot(out))) > corner {
			return toward.Sub(at(i)).Mul(1. / 3)
		}
		way := at(i + 1).Sub(at(i - 1)).Unit()
		length := toward.Sub(at(i)).Len() / 3
		if way.Dot(toward.Sub(at(i))) < 0 {
			length = -length
		}
		return way.Mul(length)
	}
	path.MoveTo(at(0))
	for i := range n {
		a, b := at(i), at(i+1)
		path.CubicTo(a.Add(tangent(i, b)), b.Add(tangent(i+1, a)), b)
	}
	path.Close()
	return path
}

// openings is the widest opening, in u, that does not break an edge: as wide as
// the longest run of chains, a big arch at most.
func openings(f *fabric.Fabric) float64 {
	const least, most = 1, 6
	run, longest := 0, 0
	for id := range f.Stitches {
		if s := &f.Stitches[id]; s.Row > 0 && s.Has(fabric.Chain) {
			run++
			longest = max(longest, run)
		} else {
			run = 0
		}
	}
	return float64(min(max(longest, least), most))
}

func area(ring []geom.Point) float64 {
	sum := 0.0
	for i, p := range ring {
		sum += p.Cross(ring[(i+1)%len(ring)])
	}
	return sum / 2
}

// straighten leaves out points of a ring that lie within a distance of the line between their neighbours.
func straighten(ring []geom.Point, within float64) []geom.Point {
	if len(ring) < 4 {
		return ring
	}
	far, at := 0.0, 0
	for i, p := range ring {
		if d := p.Sub(ring[0]).Len(); d > far {
			far, at = d, i
		}
	}
	half := append(ring[at:len(ring):len(ring)], ring[0])
	out := simpler(ring[:at+1], within)
	back := simpler(half, within)
	return append(out[:len(out)-1:len(out)-1], back[:len(back)-1]...)
}

// simpler keeps the ends of a run, and between them only the points farther from the line than allowed.
func simpler(run []geom.Point, within float64) []geom.Point {
	if len(run) < 3 {
		return run
	}
	a, b := run[0], run[len(run)-1]
	way := b.Sub(a)
	far, at := 0.0, 0
	for i := 1; i < len(run)-1; i++ {
		d := run[i].Sub(a).Len()
		if way.Len() > 0 {
			d = math.Abs(way.Cross(run[i].Sub(a))) / way.Len()
		}
		if d > far {
			far, at = d, i
		}
	}
	if far <= within {
		return []geom.Point{a, b}
	}
	out := simpler(run[:at+1], within)
	return append(out[:len(out)-1:len(out)-1], simpler(run[at:], within)...)
}
