package display

import (
	"image"
	"image/color"
	"math"
	"slices"
	"testing"

	"strandway/chart/geom"
)

var (
	ink    = color.NRGBA{R: 20, G: 30, B: 40, A: 255}
	madder = color.NRGBA{R: 170, G: 40, B: 30, A: 255}
)

func line(xy ...float64) geom.Path {
	var p geom.Path
	p.MoveTo(geom.Point{X: xy[0], Y: xy[1]})
	for i := 2; i < len(xy); i += 2 {
		p.LineTo(geom.Point{X: xy[i], Y: xy[i+1]})
	}
	return p
}

func square(x, y, side float64) geom.Path {
	p := line(x, y, x+side, y, x+side, y+side, x, y+side)
	p.Close()
	return p
}

// row is a row of three posts 10 mm apart, the last one turned to lie, and its number.
func row() *List {
	l := &List{
		Width: 60, Height: 20, Background: color.NRGBA{R: 255, G: 255, B: 255, A: 255}, Title: "Row", Desc: "three dc",
		Symbols: []Symbol{{Name: "dc", Paths: []Path{
			{Path: line(0, 0, 0, -6), Stroke: Ink, Width: .4},
			{Path: line(-1, -6, 1, -6), Stroke: Ink, Width: .4},
		}}},
	}
	l.Items = []Item{
		Path{Path: square(0, 0, 60), Fill: Solid(color.NRGBA{R: 250, G: 240, B: 200, A: 128})},
		Begin{ID: "r1", Class: "row", Title: "Row 1", Stitch: -1},
		Begin{ID: "s0", Class: "stitch", Title: "dc", Stitch: 0},
		Use{Symbol: 0, At: geom.Translate(10, 15), Ink: ink}, End{},
		Begin{ID: "s1", Class: "stitch", Title: "dc", Stitch: 1},
		Use{Symbol: 0, At: geom.Translate(20, 15), Ink: madder}, End{},
		Begin{ID: "s2", Class: "stitch", Title: "dc", Stitch: 2},
		Use{Symbol: 0, At: geom.Scale(1.5, 1.5).Then(geom.Rotate(math.Pi / 2)).Then(geom.Translate(30, 15)), Ink: ink}, End{},
		Text{X: 55, Y: 15, Size: 4, Anchor: Finish, Text: "1", Fill: ink, Halo: color.NRGBA{R: 255, G: 255, B: 255, A: 255}},
		End{},
		Path{Path: line(5, 18, 35, 18), Stroke: Solid(madder), Width: .3, Dash: []float64{1, .5}},
		Picture{X: 40, Y: 2, Width: 6, Height: 4, Image: image.NewGray(image.Rect(0, 0, 12, 8)), Alt: "swatch"},
	}
	return l
}

func TestMeasure(t *testing.T) {
	l := row()
	e := l.Measure()
	near := func(what string, got geom.Box, x0, y0, x1, y1 float64) {
		t.Helper()
		for _, d := range []float64{got.Min.X - x0, got.Min.Y - y0, got.Max.X - x1, got.Max.Y - y1} {
			if math.Abs(d) > 1e-9 {
				t.Errorf("%s: %v, want %v %v to %v %v", what, got, x0, y0, x1, y1)
				return
			}
		}
	}
	near("an upright post", e.Items[3], 8.8, 8.8, 11.2, 15.2)
	near("its group", e.Items[2], 8.8, 8.8, 11.2, 15.2)
	near("a post enlarged and laid down", e.Items[9], 29.7, 13.2, 39.3, 16.8)
	near("the dashed line", e.Items[13], 4.85, 17.85, 35.15, 18.15)
	near("the picture", e.Items[14], 40, 2, 46, 6)
	if !e.Items[4].IsEmpty() {
		t.Errorf("the end of a group has the box %v", e.Items[4])
	}
	number := e.Items[11]
	if number.Max.X > 55.4 || number.Max.X < 54 || number.Min.X < 52 || number.Max.Y > 15.5 || number.Min.Y > 12.5 {
		t.Errorf("the number's box is %v, want it to end at 55 and stand on 15", number)
	}
	if all := e.Items[1]; all.Min != e.Items[2].Min || all.Max.X != number.Max.X {
		t.Errorf("the row's box is %v, want it from the first stitch to the number", all)
	}
	near("all", e.Ink, 0, 0, 60, 60)
}

func TestHit(t *testing.T) {
	for _, c := range []struct {
		at     string
		x, y   float64
		stitch int32
		ok     bool
	}{
		{"on the first post", 10, 12, 0, true},
		{"a little beside it", 11, 12, 0, true},
		{"on the bar of the second", 20.9, 9, 1, true},
		{"along the third, which lies", 36, 15, 2, true},
		{"between two posts", 15, 12, 0, false},
		{"on the row's number", 54, 14, 0, false},
		{"on the page's wash", 50, 50, 0, false},
		{"off the page", -20, -20, 0, false},
	} {
		stitch, ok := row().Hit(c.x, c.y)
		if ok != c.ok || stitch != c.stitch {
			t.Errorf("%s: stitch %d, %v; want %d, %v", c.at, stitch, ok, c.stitch, c.ok)
		}
	}
}

func TestHitOfCells(t *testing.T) {
	l := &List{}
	for i := range 4 {
		l.Items = append(l.Items, Begin{Stitch: int32(i)},
			Path{Path: square(float64(i)*5, 0, 5), Fill: Solid(madder), Stroke: Solid(ink), Width: .2}, End{})
	}
	// a later mark lies over the cells
	l.Items = append(l.Items, Begin{Stitch: 9}, Path{Path: square(7, 2, 1), Fill: Solid(ink)}, End{})
	for _, c := range []struct {
		x, y   float64
		stitch int32
	}{{2.5, 2.5, 0}, {9.5, 4, 1}, {7.5, 2.5, 9}, {19.5, .5, 3}, {20.5, 1, 3}} {
		if stitch, ok := l.Hit(c.x, c.y); !ok || stitch != c.stitch {
			t.Errorf("%v,%v: stitch %d, %v; want %d", c.x, c.y, stitch, ok, c.stitch)
		}
	}
	if stitch, ok := l.Nearest(30, 2, 20); !ok || stitch != 3 {
		t.Errorf("with a long reach: stitch %d, %v; want 3", stitch, ok)
	}
}

func TestHitTakesTheInnermostStitch(t *testing.T) {
	l := &List{Items: []Item{
		Begin{Stitch: 4}, Begin{Stitch: -1}, Path{Path: square(0, 0, 2), Fill: Solid(ink)}, End{},
		Begin{Stitch: 5}, Path{Path: square(10, 0, 2), Fill: Solid(ink)}, End{}, End{}, End{}, End{},
	}}
	for x, want := range map[float64]int32{1: 4, 11: 5} {
		if stitch, ok := l.Hit(x, 1); !ok || stitch != want {
			t.Errorf("at %v: stitch %d, %v; want %d", x, stitch, ok, want)
		}
	}
}

func TestDump(t *testing.T) {
	const want = `page 60 x 20 mm on #ffffff
title "Row"
desc "three dc"
symbol dc
  path stroke ink 0.4: M 0,0 L 0,-6
  path stroke ink 0.4: M -1,-6 L 1,-6
path fill #faf0c880: M 0,0 L 60,0 L 60,60 L 0,60 Z
group r1 row "Row 1"
  group s0 stitch stitch 0 "dc"
    use dc at 10,15 ink #141e28
  group s1 stitch stitch 1 "dc"
    use dc at 20,15 ink #aa281e
  group s2 stitch stitch 2 "dc"
    use dc at 30,15 turn 90 scale 1.5 ink #141e28
  text "1" finish at 55,15 size 4 Noto Sans #141e28 halo #ffffff
path stroke #aa281e 0.3 dash 1 0.5: M 5,18 L 35,18
picture "swatch" at 40,2 6 x 4 mm, 12 x 8 px
`
	if got := row().Dump(); got != want {
		t.Errorf("got:\n%s\nwant:\n%s", got, want)
	}
}

func TestDumpOfPlacements(t *testing.T) {
	for want, m := range map[string]geom.Matrix{
		"at 0,0":                            geom.Translate(-.001, .004),
		"at 1,2 turn -45":                   geom.Rotate(-math.Pi / 4).Then(geom.Translate(1, 2)),
		"at 0,0 scale 2,3":                  geom.Scale(2, 3),
		"at 0,0 mirrored":                   geom.Scale(1, -1),
		"at 0,0 by 1.000 0.000 0.500 1.000": {A: 1, C: .5, D: 1},
	} {
		if got := placement(m); got != want {
			t.Errorf("%v: %q, want %q", m, got, want)
		}
	}
}

// A list measured while it grows measures as it does in the end.
func TestExtendMeasuresOnlyWhatWasAdded(t *testing.T) {
	whole := row()
	want := whole.Measure()
	part := row()
	part.Items = nil
	var got Extents
	for _, item := range whole.Items {
		part.Items = append(part.Items, item)
		got.Extend(part)
	}
	if got.Ink != want.Ink || !slices.Equal(got.Items, want.Items) {
		t.Errorf("measured bit by bit %v, at once %v", got.Ink, want.Ink)
	}
}
