package geom

import (
	"math"
	"testing"
)

// circle is a circle of radius r round the origin, as four curves.
func circle(r float64) Path {
	const k = 0.5522847498
	var p Path
	p.MoveTo(Point{r, 0})
	for i := range 4 {
		t := float64(i) * math.Pi / 2
		p.CubicTo(Point{r, k * r}.Rotate(t), Point{k * r, r}.Rotate(t), Point{0, r}.Rotate(t))
	}
	p.Close()
	return p
}

func TestFlattenStaysWithinTolerance(t *testing.T) {
	for _, tolerance := range []float64{1, .1, .01, .001} {
		runs := circle(10).Flatten(tolerance)
		if len(runs) != 1 || !runs[0].Closed {
			t.Fatalf("tolerance %v: %d runs, want one closed run", tolerance, len(runs))
		}
		points := runs[0].Points
		for i, a := range points {
			middle := a.Lerp(points[(i+1)%len(points)], .5)
			// the four curves themselves are off a circle by 0.003
			if off := math.Abs(middle.Len() - 10); off > tolerance+.003 {
				t.Errorf("tolerance %v: a chord lies %.4f off the circle", tolerance, off)
			}
		}
	}
	if few, many := len(circle(10).Flatten(1)[0].Points), len(circle(10).Flatten(.001)[0].Points); few*4 > many {
		t.Errorf("%d points for a coarse circle, %d for a fine one", few, many)
	}
}

func TestFlattenKeepsRunsApart(t *testing.T) {
	var p Path
	p.MoveTo(Point{0, 0})
	p.LineTo(Point{1, 0})
	p.MoveTo(Point{5, 5})
	p.LineTo(Point{6, 5})
	p.LineTo(Point{6, 6})
	p.Close()
	p.LineTo(Point{5, 9}) // goes on from where the closed run began
	runs := p.Flatten(.1)
	if len(runs) != 3 {
		t.Fatalf("%d runs, want 3", len(runs))
	}
	if runs[0].Closed || !runs[1].Closed || runs[2].Closed {
		t.Errorf("closed: %v %v %v, want only the second", runs[0].Closed, runs[1].Closed, runs[2].Closed)
	}
	if got := runs[2].Points[0]; got != (Point{5, 5}) {
		t.Errorf("the run after a close begins at %v, want 5, 5", got)
	}
}

func TestFlattenOfBrokenPath(t *testing.T) {
	p := Path{Verbs: []Verb{Move, Cubic, Line}, Points: []Point{{1, 1}, {2, 2}}}
	if runs := p.Flatten(.1); len(runs) != 0 {
		t.Errorf("a path without its points gave %d runs", len(runs))
	}
}

func TestBoundsFollowTheCurve(t *testing.T) {
	var arch Path
	arch.MoveTo(Point{0, 0})
	arch.CubicTo(Point{0, -4}, Point{10, -4}, Point{10, 0})
	b := arch.Bounds()
	if math.Abs(b.Min.Y+3) > 1e-9 || b.Max.Y != 0 || b.Width() != 10 {
		t.Errorf("bounds %v, want 0,-3 to 10,0", b)
	}
	if box := arch.Box(); box.Min.Y != -4 {
		t.Errorf("box %v, want control points taken in", box)
	}
	var moved Path
	moved.MoveTo(Point{3, 3})
	if !moved.Bounds().IsEmpty() {
		t.Error("a path that only moves has bounds")
	}
}
