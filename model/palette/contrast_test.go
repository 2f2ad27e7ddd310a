package palette

import (
	"image/color"
	"slices"
	"testing"

	"strandway/model/colour"
)

func every(n int) []Pair {
	var out []Pair
	for a := range n {
		for b := a + 1; b < n; b++ {
			out = append(out, Pair{uint8(a), uint8(b)})
		}
	}
	return out
}

func TestContrastsAreThoseOfEachVision(t *testing.T) {
	yarns := []color.NRGBA{hex(t, "#c0504d"), hex(t, "#4f7f3f"), hex(t, "#efe6d2")}
	got := Contrasts(yarns, []Pair{{0, 1}, {1, 2}, {1, 7}})
	if len(got) != 2 {
		t.Fatalf("%d pairs of yarns there are, want 2: the eighth yarn is not among the colours", len(got))
	}
	for _, c := range got {
		for i, v := range colour.Visions() {
			if want := Compare(yarns[c.A], yarns[c.B], v); c.Seen[i] != want {
				t.Errorf("%v in %s: %v, want %v", c.Pair, v, c.Seen[i], want)
			}
		}
	}
	if want := []colour.Vision{colour.Deuteranopia, colour.Greyscale}; !slices.Equal(got[0].Merging, want) {
		t.Errorf("red and green merge in %v, want %v", got[0].Merging, want)
	}
}

// Two or three yarns that all touch can be filmed; of four the nearest are too near,
// and so is any with a dark one that is locked.
func TestTeachingShadesAndTheCamera(t *testing.T) {
	yarns := append(harbour(t), hex(t, "#4a5734"))
	for _, tt := range []struct {
		n      int
		locked []bool
		near   bool
		dark   []int
	}{
		{n: 2}, {n: 3},
		{n: 4, near: true}, {n: 5, near: true},
		{n: 2, locked: []bool{true, false}, dark: []int{0}},
	} {
		got, err := Suggest(yarns[:tt.n], Wish{Rule: Teaching, Keep: -1, Locked: tt.locked, Pairs: every(tt.n)})
		if err != nil {
			t.Fatal(err)
		}
		var colours []color.NRGBA
		for _, s := range got {
			colours = append(colours, s.Colour)
		}
		f := OnCamera(colours, every(tt.n))
		if (len(f.Near) > 0) != tt.near || !slices.Equal(f.Dark, tt.dark) || f.Reads() != (!tt.near && tt.dark == nil) {
			t.Errorf("%d yarns, locked %v: near %v, dark %v", tt.n, tt.locked, f.Near, f.Dark)
		}
		if !slices.IsSortedFunc(f.Near, func(a, b Contrast) int {
			return int(100 * (a.Seen[0].Lightness - b.Seen[0].Lightness))
		}) {
			t.Errorf("%d yarns: the nearest pair is not told first: %v", tt.n, f.Near)
		}
	}
}
