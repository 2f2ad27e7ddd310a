// Package geom is plane geometry: points, boxes, matrices and paths.
// It carries no unit; callers say whether they work in millimetres or in stitch widths.
package geom

import "math"

// Point is a point or a vector.
type Point struct{ X, Y float64 }

func (a Point) Add(b Point) Point             { return Point{a.X + b.X, a.Y + b.Y} }
func (a Point) Sub(b Point) Point             { return Point{a.X - b.X, a.Y - b.Y} }
func (a Point) Mul(k float64) Point           { return Point{a.X * k, a.Y * k} }
func (a Point) Dot(b Point) float64           { return a.X*b.X + a.Y*b.Y }
func (a Point) Cross(b Point) float64         { return a.X*b.Y - a.Y*b.X }
func (a Point) Len() float64                  { return math.Hypot(a.X, a.Y) }
func (a Point) Perp() Point                   { return Point{-a.Y, a.X} }
func (a Point) Lerp(b Point, t float64) Point { return Point{a.X + (b.X-a.X)*t, a.Y + (b.Y-a.Y)*t} }

// Unit is the vector of length 1 in a's direction; (0, 1) for the zero vector.
func (a Point) Unit() Point {
	l := a.Len()
	if l < 1e-9 {
		return Point{0, 1}
	}
	return a.Mul(1 / l)
}

// Rotate turns a by t radians from x towards y.
func (a Point) Rotate(t float64) Point {
	s, c := math.Sincos(t)
	return Point{c*a.X - s*a.Y, s*a.X + c*a.Y}
}

// Box is a rectangle from Min to Max; the zero Box is a point at the origin, [Empty] holds nothing.
type Box struct{ Min, Max Point }

// Empty is the box that holds nothing; adding a point to it gives the point's box.
func Empty() Box {
	return Box{Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}}
}

func (b Box) IsEmpty() bool   { return b.Min.X > b.Max.X || b.Min.Y > b.Max.Y }
func (b Box) Width() float64  { return b.Max.X - b.Min.X }
func (b Box) Height() float64 { return b.Max.Y - b.Min.Y }
func (b Box) Centre() Point   { return b.Min.Lerp(b.Max, .5) }

// Add is the smallest box that holds b and p.
func (b Box) Add(p Point) Box {
	return Box{Point{min(b.Min.X, p.X), min(b.Min.Y, p.Y)}, Point{max(b.Max.X, p.X), max(b.Max.Y, p.Y)}}
}

// Union is the smallest box that holds both.
func (b Box) Union(c Box) Box {
	return Box{Point{min(b.Min.X, c.Min.X), min(b.Min.Y, c.Min.Y)}, Point{max(b.Max.X, c.Max.X), max(b.Max.Y, c.Max.Y)}}
}

// Grow moves every edge outward by d.
func (b Box) Grow(d float64) Box {
	return Box{Point{b.Min.X - d, b.Min.Y - d}, Point{b.Max.X + d, b.Max.Y + d}}
}

// Contains reports whether p lies in b or on its edge.
func (b Box) Contains(p Point) bool {
	return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y
}

// Overlaps reports whether b and c share a point.
func (b Box) Overlaps(c Box) bool {
	return b.Min.X <= c.Max.X && c.Min.X <= b.Max.X && b.Min.Y <= c.Max.Y && c.Min.Y <= b.Max.Y
}

// Matrix is an affine map: (x, y) goes to (A x + C y + E, B x + D y + F).
type Matrix struct{ A, B, C, D, E, F float64 }

// Identity maps every point to itself.
var Identity = Matrix{A: 1, D: 1}

func Translate(x, y float64) Matrix { return Matrix{1, 0, 0, 1, x, y} }
func Scale(x, y float64) Matrix     { return Matrix{x, 0, 0, y, 0, 0} }
func Rotate(t float64) Matrix {
	s, c := math.Sincos(t)
	return Matrix{c, s, -s, c, 0, 0}
}

// Then is the map that does m first and n after it.
func (m Matrix) Then(n Matrix) Matrix {
	return Matrix{
		n.A*m.A + n.C*m.B, n.B*m.A + n.D*m.B,
		n.A*m.C + n.C*m.D, n.B*m.C + n.D*m.D,
		n.A*m.E + n.C*m.F + n.E, n.B*m.E + n.D*m.F + n.F,
	}
}

// Apply maps a point.
func (m Matrix) Apply(p Point) Point {
	return Point{m.A*p.X + m.C*p.Y + m.E, m.B*p.X + m.D*p.Y + m.F}
}

// ApplyBox is the box round b after m.
func (m Matrix) ApplyBox(b Box) Box {
	if b.IsEmpty() {
		return b
	}
	return Empty().
		Add(m.Apply(b.Min)).Add(m.Apply(Point{b.Max.X, b.Min.Y})).
		Add(m.Apply(b.Max)).Add(m.Apply(Point{b.Min.X, b.Max.Y}))
}

// Verb is a step of a path.
type Verb uint8

const (
	Move  Verb = iota // 1 point
	Line              // 1 point
	Cubic             // 3 points
	Close             // none
)

// Path is a run of steps; Points holds the points of all verbs one after another.
type Path struct {
	Verbs  []Verb
	Points []Point
}

func (p *Path) MoveTo(a Point) { p.Verbs = append(p.Verbs, Move); p.Points = append(p.Points, a) }
func (p *Path) LineTo(a Point) { p.Verbs = append(p.Verbs, Line); p.Points = append(p.Points, a) }
func (p *Path) CubicTo(a, b, c Point) {
	p.Verbs = append(p.Verbs, Cubic)
	p.Points = append(p.Points, a, b, c)
}
func (p *Path) Close() { p.Verbs = append(p.Verbs, Close) }

// Walk calls step for every verb with the points it goes to, and stops at the first that lacks them.
func (p Path) Walk(step func(v Verb, to []Point)) {
	rest := p.Points
	for _, v := range p.Verbs {
		n := 1
		switch v {
		case Cubic:
			n = 3
		case Close:
			n = 0
		}
		if len(rest) < n {
			return
		}
		step(v, rest[:n])
		rest = rest[n:]
	}
}

// Transform is the path mapped by m; p stays as it is.
func (p Path) Transform(m Matrix) Path {
	q := Path{Verbs: p.Verbs, Points: make([]Point, len(p.Points))}
	for i, a := range p.Points {
		q.Points[i] = m.Apply(a)
	}
	return q
}

// Box is the box of the path's points, control points included.
func (p Path) Box() Box {
	b := Empty()
	for _, a := range p.Points {
		b = b.Add(a)
	}
	return b
}
