package tiles

import (
	"image"
	"slices"
	"testing"
)

func TestAThingIsDealtToTheTilesItTouches(t *testing.T) {
	g := New(image.Rect(-10, 5, 150, 90), 64)
	tests := []struct {
		box  image.Rectangle
		want []int // tiles, of 4 columns and 2 rows
	}{
		{image.Rect(-5, 6, -1, 9), []int{0}},
		{image.Rect(-1, 6, 1, 9), []int{0, 1}},
		{image.Rect(63, 63, 65, 65), []int{1, 2, 5, 6}},
		{image.Rect(0, 0, 64, 64), []int{1}},
		{image.Rect(-64, -9, 300, 300), []int{0, 1, 2, 3, 4, 5, 6, 7}},
		{image.Rect(0, -9, 60, 0), nil},
		{image.Rect(10, 10, 10, 20), nil},
	}
	for i, tt := range tests {
		g.Deal(int32(i), tt.box)
		var got []int
		for n := range g.Len() {
			if slices.Contains(g.Things(n), int32(i)) {
				got = append(got, n)
			}
		}
		if !slices.Equal(got, tt.want) {
			t.Errorf("%v touches tiles %v, want %v", tt.box, got, tt.want)
		}
	}
}

// The tiles of a view make up the view, and a shifted view has the same ones.
func TestTilesCoverTheView(t *testing.T) {
	was := New(image.Rect(-100, -7, 200, 140), 64)
	for _, by := range []image.Point{{}, {X: 3}, {Y: -90}, {X: -64, Y: 64}} {
		g := New(was.View.Add(by), 64)
		area, common := 0, 0
		for n := range g.Len() {
			r := g.Tile(n)
			area += r.Dx() * r.Dy()
			if old, ok := g.Same(n, was); ok {
				both := r.Intersect(was.Tile(old))
				common += both.Dx() * both.Dy()
			}
		}
		if want := g.View.Dx() * g.View.Dy(); area != want {
			t.Errorf("shifted by %v, tiles cover %d pixels of %d", by, area, want)
		}
		if both := g.View.Intersect(was.View); common != both.Dx()*both.Dy() {
			t.Errorf("shifted by %v, %d pixels have the same tile, want %d", by, common, both.Dx()*both.Dy())
		}
	}
}

func TestWhatTwoSequencesDoNotShare(t *testing.T) {
	tests := []struct{ was, now, from, to []int32 }{
		{[]int32{1, 2, 3, 4}, []int32{1, 2, 3, 4}, nil, nil},
		{[]int32{1, 2, 3, 4}, []int32{1, 9, 8, 3, 4}, []int32{2}, []int32{9, 8}},
		{[]int32{1, 2, 2, 3}, []int32{1, 2, 3}, []int32{2}, nil},
		{nil, []int32{1}, nil, []int32{1}},
		{[]int32{1, 2, 3}, []int32{4, 2, 5}, []int32{1, 2, 3}, []int32{4, 2, 5}},
	}
	for _, tt := range tests {
		from, to := differ(tt.was, tt.now, func(a, b int32) bool { return a == b })
		if !slices.Equal(from, tt.from) || !slices.Equal(to, tt.to) {
			t.Errorf("%v and %v differ by %v and %v, want %v and %v", tt.was, tt.now, from, to, tt.from, tt.to)
		}
	}
}

func TestBeyond(t *testing.T) {
	a := image.Rect(0, 0, 10, 10)
	tests := []struct{ b, want image.Rectangle }{
		{image.Rect(0, 0, 10, 10), image.Rectangle{}},
		{image.Rect(-5, -5, 20, 7), image.Rect(0, 7, 10, 10)},
		{image.Rect(0, 4, 10, 10), image.Rect(0, 0, 10, 4)},
		{image.Rect(0, 0, 3, 10), image.Rect(3, 0, 10, 10)},
		{image.Rect(3, 0, 30, 10), image.Rect(0, 0, 3, 10)},
		{image.Rect(0, 0, 9, 9), a}, // an L
		{image.Rect(20, 20, 30, 30), a},
	}
	for _, tt := range tests {
		if got := beyond(a, tt.b); got != tt.want {
			t.Errorf("beyond %v is %v, want %v", tt.b, got, tt.want)
		}
	}
}

// What was drawn before and what is drawn now leave no pixel out: a pixel that is not stale is touched by the same things.
func TestWhatIsNotStaleIsTheSame(t *testing.T) {
	type thing struct {
		name byte
		box  image.Rectangle
	}
	before := []thing{{'a', image.Rect(0, 0, 30, 8)}, {'b', image.Rect(10, 4, 90, 12)}, {'c', image.Rect(60, 60, 70, 70)}}
	after := []thing{{'a', image.Rect(0, 0, 30, 8)}, {'x', image.Rect(20, 20, 40, 40)}, {'b', image.Rect(10, 4, 90, 12)}}
	was, now := New(image.Rect(0, 0, 100, 100), 32), New(image.Rect(5, -5, 105, 95), 32)
	for i, a := range before {
		was.Deal(int32(i), a.box)
	}
	for i, a := range after {
		now.Deal(int32(i), a.box)
	}
	touching := func(things []thing, p image.Point) string {
		names := ""
		for _, a := range things {
			if p.In(a.box) {
				names += string(a.name)
			}
		}
		return names
	}
	stale := 0
	for n := range now.Len() {
		r := now.Stale(n, Before{Grid: was,
			Same: func(a, b int32) bool { return before[a] == after[b] },
			Was:  func(a int32) image.Rectangle { return before[a].box },
			Now:  func(a int32) image.Rectangle { return after[a].box },
		})
		stale += r.Dx() * r.Dy()
		tile := now.Tile(n)
		for y := tile.Min.Y; y < tile.Max.Y; y++ {
			for x := tile.Min.X; x < tile.Max.X; x++ {
				p := image.Pt(x, y)
				if a, b := touching(before, p), touching(after, p); !p.In(r) && (a != b || !p.In(was.View)) {
					t.Fatalf("pixel %v was touched by %q and is touched by %q, but it is not stale", p, a, b)
				}
			}
		}
	}
	if whole := 100 * 100; stale > whole/4 {
		t.Errorf("%d pixels of %d are stale", stale, whole)
	}
}
