package geom

import "math"

// Run is a run of straight lines.
type Run struct {
	Points []Point
	Closed bool // the last point is joined to the first
}

// Flatten is the path as straight lines that stray from it by tolerance at most.
func (p Path) Flatten(tolerance float64) []Run {
	var runs []Run
	var run Run
	finish := func() {
		if len(run.Points) > 0 {
			runs = append(runs, run)
		}
		run = Run{}
	}
	var at, start Point
	begin := func() {
		if len(run.Points) == 0 {
			run.Points = append(run.Points, at)
			start = at
		}
	}
	p.Walk(func(v Verb, to []Point) {
		switch v {
		case Move:
			finish()
			at, start = to[0], to[0]
		case Line:
			begin()
			run.Points = append(run.Points, to[0])
			at = to[0]
		case Cubic:
			begin()
			run.Points = appendCubic(run.Points, at, to[0], to[1], to[2], tolerance)
			at = to[2]
		case Close:
			run.Closed = true
			finish()
			at = start
		}
	})
	finish()
	return runs
}

// Bounds is the box of the path itself: where [Path.Box] takes in the control
// points of curves, Bounds goes no farther than the curves do.
func (p Path) Bounds() Box {
	box := Empty()
	var at, start Point
	drawn := false // whether a step has left the point that the last Move went to
	p.Walk(func(v Verb, to []Point) {
		if v == Move {
			at, start, drawn = to[0], to[0], false
			return
		}
		if !drawn {
			box, drawn = box.Add(at), true
		}
		switch v {
		case Line:
			box, at = box.Add(to[0]), to[0]
		case Cubic:
			a, b, c := to[0], to[1], to[2]
			box = box.Add(c)
			for _, t := range append(turns(at.X, a.X, b.X, c.X), turns(at.Y, a.Y, b.Y, c.Y)...) {
				box = box.Add(cubicAt(at, a, b, c, t))
			}
			at = c
		case Close:
			at = start
		}
	})
	return box
}

// appendCubic adds the points of a curve after its first. The number of pieces
// follows from the second differences of the control points, which bound how
// far a chord can lie from its arc.
func appendCubic(points []Point, a, b, c, d Point, tolerance float64) []Point {
	bend := max(a.Sub(b.Mul(2)).Add(c).Len(), b.Sub(c.Mul(2)).Add(d).Len())
	n := max(1, min(int(math.Ceil(math.Sqrt(.75*bend/tolerance))), 500))
	for i := 1; i < n; i++ {
		points = append(points, cubicAt(a, b, c, d, float64(i)/float64(n)))
	}
	return append(points, d)
}

func cubicAt(a, b, c, d Point, t float64) Point {
	u := 1 - t
	return a.Mul(u * u * u).Add(b.Mul(3 * u * u * t)).Add(c.Mul(3 * u * t * t)).Add(d.Mul(t * t * t))
}

// turns are the places between 0 and 1 where a coordinate of a curve turns back.
func turns(a, b, c, d float64) []float64 {
	// the derivative's coefficients, divided by 3
	q2, q1, q0 := d-3*c+3*b-a, 2*(c-2*b+a), b-a
	var roots []float64
	if math.Abs(q2) < 1e-12 {
		if q1 != 0 {
			roots = append(roots, -q0/q1)
		}
	} else if disc := q1*q1 - 4*q2*q0; disc >= 0 {
		s := math.Sqrt(disc)
		roots = append(roots, (-q1-s)/(2*q2), (-q1+s)/(2*q2))
	}
	inside := roots[:0]
	for _, t := range roots {
		if t > 0 && t < 1 {
			inside = append(inside, t)
		}
	}
	return inside
}
