package symbol

import (
	"testing"

	"strandway/chart/geom"
)

func TestStrokesAreWrittenAndReadAgain(t *testing.T) {
	zigzag := []geom.Point{{}, {X: .5, Y: 1}, {X: -.5, Y: 1.5}}
	for name, tt := range map[string]struct {
		strokes []Stroke
		want    string
	}{
		"nothing":            {nil, ""},
		"one point":          {[]Stroke{{Points: zigzag[:1]}}, ""},
		"straight":           {[]Stroke{{Points: zigzag}}, "M 0 0 L 0.5 1 L -0.5 1.5"},
		"straight and shut":  {[]Stroke{{Points: zigzag, Closed: true}}, "M 0 0 L 0.5 1 L -0.5 1.5 Z"},
		"two":                {[]Stroke{{Points: zigzag[:2]}, {Points: zigzag[1:]}}, "M 0 0 L 0.5 1 M 0.5 1 L -0.5 1.5"},
		"a curve":            {[]Stroke{{Points: zigzag, Curved: true}}, "M 0 0 C 0.08 0.17 0.58 0.75 0.5 1 C 0.42 1.25 -0.33 1.42 -0.5 1.5"},
		"a curve of two":     {[]Stroke{{Points: zigzag[:2], Curved: true}}, "M 0 0 C 0.08 0.17 0.42 0.83 0.5 1"},
		"a curve that shuts": {[]Stroke{{Points: zigzag, Curved: true, Closed: true}}, "M 0 0 C 0.17 -0.08 0.58 0.75 0.5 1 C 0.42 1.25 -0.42 1.67 -0.5 1.5 C -0.58 1.33 -0.17 0.08 0 0 Z"},
	} {
		got := Path(tt.strokes)
		if got != tt.want {
			t.Errorf("%s: %s, want %s", name, got, tt.want)
		}
		if got == "" {
			continue
		}
		again, err := Strokes(got)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if len(again) != len(tt.strokes) || Path(again) != got {
			t.Errorf("%s: read again it is %+v, %s", name, again, Path(again))
		}
		for i, s := range again {
			if s.Curved != tt.strokes[i].Curved || s.Closed != tt.strokes[i].Closed || s.Handles != nil || len(s.Points) != len(tt.strokes[i].Points) {
				t.Errorf("%s: stroke %d became %+v", name, i, s)
			}
		}
	}
}

// A path from elsewhere keeps its curves.
func TestCurvesFromElsewhereStayAsTheyAre(t *testing.T) {
	for _, path := range []string{
		"M 0 0 C 1 0 1 1 0 1",
		"M 0 0 L 0 1 C 0.5 1 0.5 2 0 2 L -1 2",
		"M 0 0 C 1 0 1 1 0 1 C -1 1 -1 0 0 0 Z",
	} {
		s, err := Strokes(path)
		if err != nil || len(s) != 1 || s[0].Handles == nil {
			t.Fatalf("%s: %+v, %v", path, s, err)
		}
		a, _ := ParsePath(path)
		b, err := ParsePath(Path(s))
		if err != nil {
			t.Fatal(err)
		}
		if d := a.Bounds().Centre().Sub(b.Bounds().Centre()).Len(); d > .01 || a.Bounds().Height()-b.Bounds().Height() > .01 {
			t.Errorf("%s became %s", path, Path(s))
		}
	}
	if _, err := Strokes("L 1 1"); err == nil {
		t.Error("a path without a beginning was read")
	}
}

func FuzzStrokes(f *testing.F) {
	f.Add("M 0 0 L 0 1 C 0.5 1 0.5 2 0 2 Z M 1 1 L 2 2")
	f.Fuzz(func(t *testing.T, path string) {
		s, err := Strokes(path)
		if err != nil {
			return
		}
		if written := Path(s); written != "" {
			if _, err := Strokes(written); err != nil {
				t.Errorf("%q was written as %q: %v", path, written, err)
			}
		}
	})
}

func TestNamesAreThoseOfTheSet(t *testing.T) {
	names := Standard().Names()
	for _, name := range names {
		if _, ok := Standard().Symbol(name); !ok {
			t.Errorf("there is no %s", name)
		}
	}
	if len(names) < 30 {
		t.Errorf("there are %d names", len(names))
	}
}
