package raster

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"math/rand/v2"
	"testing"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/render/rendertest"
)

// page is a list of marks of all sorts, some of which change from one page to the next.
func page(random *rand.Rand, changing []int) *display.List {
	l := rendertest.Page()
	l.Items = nil
	l.Origin = geom.Point{X: random.Float64() * 9, Y: 30 + random.Float64()*20}
	for i, variant := range changing {
		at := geom.Point{X: float64(i % 12 * 7), Y: -float64(i / 12 * 6)}.Add(l.Origin)
		turn := geom.Rotate(float64(variant) * .7).Then(geom.Translate(at.X, at.Y))
		switch {
		case i%17 == 5:
			l.Items = append(l.Items, display.Text{X: at.X, Y: at.Y, Size: 3, Text: "Row 4"[:4+variant%2], Fill: black, Halo: white})
		case i%11 == 3:
			var p geom.Path
			p.MoveTo(at)
			p.CubicTo(at.Add(geom.Point{X: 30}), at.Add(geom.Point{X: 3, Y: 9 + float64(variant)}), at.Add(geom.Point{Y: 12}))
			l.Items = append(l.Items, display.Path{Path: p, Stroke: display.Solid(color.NRGBA{R: 200, A: 255}), Width: .4, Dash: []float64{1, .7}})
		case i%13 == 2:
			p := rendertest.Rectangle(at.X, at.Y, 50, 4)
			l.Items = append(l.Items, display.Path{Path: p, Fill: display.Solid(color.NRGBA{G: uint8(40 * variant), A: 90})})
		default:
			l.Items = append(l.Items, display.Use{Symbol: (i + variant) % len(l.Symbols), At: turn, Ink: black})
		}
	}
	return l
}

// Whatever changes on a page, and however the view goes about, a screen shows what painting from nothing gives.
func TestAScreenShowsWhatPaintingAnewDoes(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	changing := make([]int, 140)
	var screen Screen
	scale, shift, paper := 4.3, image.Pt(20, 260), white
	for step := range 80 {
		switch random.IntN(8) {
		case 0:
			scale = []float64{1.7, 4.3, 11}[random.IntN(3)]
		case 1, 2:
			shift = shift.Add(image.Pt(random.IntN(81)-40, random.IntN(81)-40))
		case 3:
			paper = []color.NRGBA{white, {R: 30, G: 32, B: 36, A: 255}}[random.IntN(2)]
		case 4:
			at := random.IntN(len(changing))
			changing = append(changing[:at:at], append([]int{1}, changing[at:]...)...)
		default:
			changing[random.IntN(len(changing))] = random.IntN(5)
		}
		l := page(random, changing)
		toPixels := geom.Translate(-l.Origin.X, -l.Origin.Y).Then(geom.Scale(scale, scale)).Then(geom.Translate(float64(shift.X), float64(shift.Y)))
		got, err := screen.Show(context.Background(), l, toPixels, image.Pt(420, 310), paper)
		if err != nil {
			t.Fatal(err)
		}
		var fresh Screen
		want, err := fresh.Show(context.Background(), l, toPixels, image.Pt(420, 310), paper)
		if err != nil {
			t.Fatal(err)
		}
		if got.Rect != want.Rect || !bytes.Equal(got.Pix, want.Pix) {
			t.Fatalf("step %d: the screen shows another picture than painting anew gives", step)
		}
	}
}

// A screen and a painted view are the same picture, but for the last bit of places.
func TestAScreenShowsThePage(t *testing.T) {
	l := rendertest.Page()
	size := image.Pt(400, 300)
	toPixels := geom.Scale(4, 4)
	want := image.NewRGBA(image.Rectangle{Max: size})
	for i := range want.Pix {
		want.Pix[i] = 255
	}
	bare := *l
	bare.Background = color.NRGBA{}
	PaintView(want, &bare, toPixels)
	var s Screen
	got, err := s.Show(context.Background(), l, toPixels, size, white)
	if err != nil {
		t.Fatal(err)
	}
	rendertest.Compare(t, "screen", got, want, .002)
}

func BenchmarkScreen(b *testing.B) {
	was, now := symbols(300, 200, 20000, true), symbols(300, 200, 20000, true)
	u := now.Items[10000].(display.Use)
	u.At.E += .5
	now.Items[10000] = u
	var s Screen
	for b.Loop() {
		for _, l := range []*display.List{was, now} {
			if _, err := s.Show(context.Background(), l, geom.Scale(2, 2), image.Pt(903, 330), white); err != nil {
				b.Fatal(err)
			}
		}
	}
}
