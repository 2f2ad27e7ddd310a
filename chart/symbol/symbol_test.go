package symbol

import (
	"math"
	"testing"

	"strandway/chart/geom"
	"strandway/model/stitch"
)

func TestEveryKindHasASymbolWithAnchorsAndNames(t *testing.T) {
	set := Standard()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range lib.Kinds() {
		s, ok := set.Symbol(k.Symbol)
		if !ok {
			t.Errorf("%s: no symbol %q", k.Name, k.Symbol)
			continue
		}
		if s.Height() <= 0 || s.Left.X >= s.Right.X || s.Foot.Y != 0 {
			t.Errorf("%s: symbol %s has foot %v, head %v, left %v, right %v", k.Name, s.Name, s.Foot, s.Head, s.Left, s.Right)
		}
		if s.Box.IsEmpty() || s.Box.Width() > 2 || s.Box.Max.Y > s.Height()+.5 {
			t.Errorf("%s: symbol %s fills %v", k.Name, s.Name, s.Box)
		}
		for _, terms := range []string{"us", "uk"} {
			if word, sure := lib.Word(k, terms); word == "" || !sure || k.Terms[terms].Name == "" {
				t.Errorf("%s: no %s name", k.Name, terms)
			}
		}
	}
}

func TestMarksHaveSymbols(t *testing.T) {
	set := Standard()
	for _, name := range []string{"front-post", "back-post", "front-loop", "back-loop", "third-loop", "popcorn-cap", "ring", "join", "cut", "arrow", "sc-plus"} {
		if _, ok := set.Symbol(name); !ok {
			t.Errorf("no symbol %q", name)
		}
	}
}

// A dc drawn taller keeps the length and slope of its slash and the width of its bar.
func TestStretchingKeepsMarksAndHeads(t *testing.T) {
	set := Standard()
	dc, _ := set.Symbol("dc")
	for _, h := range []float64{1.2, dc.Height(), 4} {
		for i, p := range dc.Parts {
			box, was := dc.Stretched(i, h).Box(), p.Path.Box()
			switch p.Role {
			case Stem:
				if box.Min.Y != 0 || math.Abs(box.Max.Y-h) > 1e-9 {
					t.Errorf("height %g: stem from %g to %g", h, box.Min.Y, box.Max.Y)
				}
			case Head:
				if math.Abs(box.Max.Y-h) > 1e-9 || box.Width() != was.Width() {
					t.Errorf("height %g: bar at %g, %g wide", h, box.Max.Y, box.Width())
				}
			case Mark:
				if math.Abs(box.Height()-was.Height()) > 1e-9 || math.Abs(box.Centre().Y/h-.56) > 1e-3 {
					t.Errorf("height %g: slash %g tall at %g of the stem", h, box.Height(), box.Centre().Y/h)
				}
			}
		}
	}
}

func TestFrontAndBackPostMirrorEachOther(t *testing.T) {
	set := Standard()
	front, _ := set.Symbol("front-post")
	back, _ := set.Symbol("back-post")
	for i, p := range front.Parts[0].Path.Points {
		if q := back.Parts[0].Path.Points[i]; q != (geom.Point{X: -p.X, Y: p.Y}) && p.X != 0 {
			t.Errorf("point %d: front %v, back %v", i, p, q)
		}
	}
}

func TestParsePathTellsWhatIsWrong(t *testing.T) {
	for _, bad := range []string{"", "L 0 0", "M 0", "M 0 0 Q 1 1 2 2", "M a b", "M 0 0 C 1 1 2 2"} {
		if _, err := ParsePath(bad); err == nil {
			t.Errorf("%q: read without an error", bad)
		}
	}
	if _, err := ellipse([]float64{1, 2}); err == nil {
		t.Error("an ellipse of two numbers: read without an error")
	}
}
