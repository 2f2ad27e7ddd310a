package symbol

import (
	"slices"
	"strconv"
	"strings"

	"strandway/chart/geom"
)

// Stroke is one line of a symbol that is drawn by hand, in stitch widths with the
// foot at 0 0 and y upward.
type Stroke struct {
	Points []geom.Point // that the pen goes through
	Curved bool         // in a smooth line through them
	Closed bool         // back to the first

	// Handles are those of a curve that was not drawn by hand, two from each
	// point to the next; nil for the smooth line.
	Handles []geom.Point
}

// Strokes takes a path as [ParsePath] reads it apart.
func Strokes(path string) ([]Stroke, error) {
	p, err := ParsePath(path)
	if err != nil {
		return nil, err
	}
	var out []Stroke
	at := 0 // among the points
	for i := 0; i < len(p.Verbs); {
		from := i
		for i++; i < len(p.Verbs) && p.Verbs[i] != geom.Move; i++ {
		}
		s := strokeOf(p.Verbs[from:i], p.Points[at:])
		for _, v := range p.Verbs[from:i] {
			at += pointsOf[v]
		}
		out = append(out, s)
	}
	return out, nil
}

var pointsOf = map[geom.Verb]int{geom.Move: 1, geom.Line: 1, geom.Cubic: 3}

// strokeOf makes a stroke of the verbs from one Move to the next.
func strokeOf(verbs []geom.Verb, points []geom.Point) Stroke {
	var s Stroke
	for _, v := range verbs {
		switch v {
		case geom.Move:
			s.Points = append(s.Points, points[0])
		case geom.Line: // as a curve that is straight, in case others are not
			last := s.Points[len(s.Points)-1]
			s.Handles = append(s.Handles, last.Add(points[0].Sub(last).Mul(1./3)), last.Add(points[0].Sub(last).Mul(2./3)))
			s.Points = append(s.Points, points[0])
		case geom.Cubic:
			s.Curved = true
			s.Handles = append(s.Handles, points[0], points[1])
			s.Points = append(s.Points, points[2])
		case geom.Close:
			s.Closed = true
		}
		points = points[pointsOf[v]:]
	}
	if n := len(s.Points) - 1; s.Closed && n > 0 && s.Points[n] == s.Points[0] {
		s.Points = s.Points[:n] // the way back is drawn in full
	}
	if !s.Curved || s.byHand() {
		s.Handles = nil
	}
	return s
}

// byHand reports whether a curve is the smooth line through its points.
func (s *Stroke) byHand() bool {
	const near = .02 // paths are written in hundredths
	return slices.EqualFunc(s.smooth(), s.Handles, func(a, b geom.Point) bool { return a.Sub(b).Len() < near })
}

// smooth gives the handles of the smooth line through the points.
func (s *Stroke) smooth() []geom.Point {
	n := len(s.Points)
	if n < 2 {
		return nil
	}
	at := func(i int) geom.Point {
		if s.Closed {
			return s.Points[(i+n)%n]
		}
		return s.Points[max(0, min(i, n-1))]
	}
	last := n - 1
	if s.Closed {
		last = n
	}
	var out []geom.Point
	for i := range last {
		a, b := at(i), at(i+1)
		out = append(out, a.Add(b.Sub(at(i-1)).Mul(1./6)), b.Sub(at(i+2).Sub(a).Mul(1./6)))
	}
	return out
}

// Path writes strokes as [ParsePath] reads them, in hundredths. A stroke of one
// point draws nothing and is left out.
func Path(strokes []Stroke) string {
	var words []string
	put := func(verb string, points ...geom.Point) {
		words = append(words, verb)
		for _, p := range points {
			words = append(words, hundredths(p.X), hundredths(p.Y))
		}
	}
	for _, s := range strokes {
		n := len(s.Points)
		if n < 2 {
			continue
		}
		handles := s.Handles
		if s.Curved && handles == nil {
			handles = s.smooth()
		}
		put("M", s.Points[0])
		for i := 1; i < n; i++ {
			if !s.Curved {
				put("L", s.Points[i])
				continue
			}
			put("C", handles[2*i-2], handles[2*i-1], s.Points[i])
		}
		if s.Closed && s.Curved && len(handles) == 2*n {
			put("C", handles[2*n-2], handles[2*n-1], s.Points[0])
		}
		if s.Closed {
			put("Z")
		}
	}
	return strings.Join(words, " ")
}

func hundredths(v float64) string {
	s := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(v, 'f', 2, 64), "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}
