package raster

import (
	"bytes"
	"flag"
	"image"
	"image/color"
	stdpng "image/png"
	"math"
	"testing"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/render/rendertest"
)

var update = flag.Bool("update", false, "write the pictures in testdata anew")

var (
	black = color.NRGBA{A: 255}
	white = color.NRGBA{R: 255, G: 255, B: 255, A: 255}
)

func TestPage(t *testing.T) {
	got := Paint(rendertest.Page(), Options{DPI: 120})
	if *update {
		var b bytes.Buffer
		if err := stdpng.Encode(&b, got); err != nil {
			t.Fatal(err)
		}
		rendertest.Golden(t, "page.png", b.Bytes())
	}
	rendertest.Compare(t, "page", got, rendertest.Load(t, "testdata/page.png"), .002)
}

// A line's ink is its length times its width, however it is painted: by itself,
// within a symbol, enlarged, turned, or across the seam between two bands.
func TestInkOfLines(t *testing.T) {
	const length, width = 20, .5 // mm
	line := display.Path{Path: rendertest.Line(0, 0, length, 0), Stroke: display.Ink, Width: width}
	solid := line
	solid.Stroke = display.Solid(black)
	at := func(m geom.Matrix) display.Item { return display.Use{At: m, Ink: black} }
	want := length*width + math.Pi*width*width/4 // with the two halves of the round ends
	for name, item := range map[string]display.Item{
		"path":           display.Path{Path: solid.Path.Transform(geom.Translate(5, 15)), Stroke: solid.Stroke, Width: width},
		"symbol":         at(geom.Translate(5, 15)),
		"symbol turned":  at(geom.Rotate(.4).Then(geom.Translate(5, 10))),
		"symbol upright": at(geom.Rotate(math.Pi / 2).Then(geom.Translate(15, 5))),
		"symbol halved and enlarged": display.Use{Symbol: 1, Ink: black,
			At: geom.Scale(2, 2).Then(geom.Translate(5, 15))},
	} {
		l := &display.List{Width: 30, Height: 30, Background: white, Items: []display.Item{item}, Symbols: []display.Symbol{
			{Paths: []display.Path{line}},
			{Paths: []display.Path{{Path: line.Path.Transform(geom.Scale(.5, .5)), Stroke: display.Ink, Width: width / 2}}},
		}}
		for _, dpi := range []float64{50, 100, 300, 600} {
			got := inkOf(Paint(l, Options{DPI: dpi})) * math.Pow(25.4/dpi, 2)
			if math.Abs(got-want) > .02*want {
				t.Errorf("%s at %v dpi: %.3f mm² of ink, want %.3f", name, dpi, got, want)
			}
		}
	}
}

// inkOf is how many pixels the ink would cover if all of it were black.
func inkOf(m *image.RGBA) float64 {
	sum := 0.0
	for i := 0; i < len(m.Pix); i += 4 {
		sum += 255 - float64(m.Pix[i])
	}
	return sum / 255
}

func TestDotsStaySeen(t *testing.T) {
	dot := rendertest.Oval(.3, .3)
	for name, item := range map[string]display.Item{
		"path":  display.Path{Path: dot.Transform(geom.Translate(5, 5)), Fill: display.Solid(black)},
		"use":   display.Use{At: geom.Translate(5, 5), Ink: black},
		"point": display.Path{Path: rendertest.Line(5, 5, 5, 5), Stroke: display.Solid(black), Width: .6},
	} {
		l := &display.List{Width: 10, Height: 10, Background: white, Items: []display.Item{item},
			Symbols: []display.Symbol{{Paths: []display.Path{{Path: dot, Fill: display.Ink}}}}}
		for _, k := range []float64{1, 2, 4, 20} {
			dst := image.NewRGBA(image.Rect(0, 0, int(10*k), int(10*k)))
			PaintView(dst, l, geom.Scale(k, k))
			want := math.Pi * .09 * k * k
			if got := inkOf(dst); math.Abs(got-want) > .2*want+.15 {
				t.Errorf("%s at %v pixels per mm: ink of %.2f pixels, want %.2f", name, k, got, want)
			}
		}
	}
}

// A line given by points much closer than a pixel is as dark as one given by its ends.
func TestFinePolyline(t *testing.T) {
	var xy []float64
	for x := 2.0; x < 28; x += .01 {
		xy = append(xy, x, 10)
	}
	l := func(p geom.Path) *display.List {
		return &display.List{Width: 30, Height: 20, Background: white,
			Items: []display.Item{display.Path{Path: p, Stroke: display.Solid(black), Width: .5}}}
	}
	fine := inkOf(Paint(l(rendertest.Line(xy...)), Options{DPI: 100}))
	coarse := inkOf(Paint(l(rendertest.Line(2, 10, 28, 10)), Options{DPI: 100}))
	if math.Abs(fine-coarse) > .01*coarse {
		t.Errorf("fine points give ink of %.1f pixels, two ends %.1f", fine, coarse)
	}
}

func TestViewIsPartOfTheWhole(t *testing.T) {
	l := rendertest.Page()
	const k = 6
	whole := image.NewRGBA(image.Rect(0, 0, 90*k, 60*k))
	PaintView(whole, l, geom.Scale(k, k))
	view := image.NewRGBA(image.Rect(0, 0, 200, 150))
	PaintView(view, l, geom.Scale(k, k).Then(geom.Translate(-120, -140)))
	rendertest.Compare(t, "view", view, rendertest.Part(whole, 120, 140, 200, 150), .001)
}

func TestViewLeavesTheDeskAlone(t *testing.T) {
	desk := color.RGBA{R: 10, G: 200, B: 10, A: 255}
	dst := image.NewRGBA(image.Rect(0, 0, 100, 100))
	for i := range 100 * 100 {
		dst.SetRGBA(i%100, i/100, desk)
	}
	PaintView(dst, &display.List{Width: 30, Height: 30, Background: white}, geom.Scale(2, 2).Then(geom.Translate(20, 20)))
	for _, c := range []struct {
		x, y int
		want color.RGBA
	}{{19, 50, desk}, {20, 50, color.RGBA{255, 255, 255, 255}}, {79, 79, color.RGBA{255, 255, 255, 255}}, {80, 79, desk}} {
		if got := dst.RGBAAt(c.x, c.y); got != c.want {
			t.Errorf("pixel %d,%d is %v, want %v", c.x, c.y, got, c.want)
		}
	}
}

func TestPNGIsThePicture(t *testing.T) {
	l := rendertest.Page()
	for name, o := range map[string]Options{
		"colour": {DPI: 200}, "grey": {DPI: 200, Grey: true},
		"clear": {DPI: 200, Transparent: true}, "clear grey": {DPI: 200, Transparent: true, Grey: true},
	} {
		var b bytes.Buffer
		if err := WritePNG(&b, l, o); err != nil {
			t.Fatal(err)
		}
		m, err := stdpng.Decode(&b)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		rendertest.Compare(t, name, m, Paint(l, o), .003)
		if _, _, _, a := m.At(0, 0).RGBA(); (a == 0) != o.Transparent {
			t.Errorf("%s: the corner's alpha is %d", name, a)
		}
		if r, g, _, _ := m.At(175, 270).RGBA(); o.Grey && r != g {
			t.Errorf("%s: a pixel is not grey", name)
		}
	}
}

func TestSizeInPixels(t *testing.T) {
	for _, c := range []struct {
		width, height, dpi float64
		want               image.Point
	}{
		{420, 297, 300, image.Pt(4961, 3508)},
		{25.4, 50.8, 0, image.Pt(300, 600)},
		{0, 0, 300, image.Pt(1, 1)},
	} {
		if got := Size(&display.List{Width: c.width, Height: c.height}, Options{DPI: c.dpi}); got != c.want {
			t.Errorf("%v x %v mm at %v dpi: %v pixels, want %v", c.width, c.height, c.dpi, got, c.want)
		}
	}
}

func TestNonsenseIsPassedOver(t *testing.T) {
	nan, far := math.NaN(), 1e12
	l := &display.List{
		Width: 10, Height: 10, Background: white,
		Symbols: []display.Symbol{{Paths: []display.Path{{Path: rendertest.Line(0, 0, 1, 1), Stroke: display.Ink, Width: 1}}}},
		Items: []display.Item{
			display.Use{Symbol: 7}, display.Use{Symbol: -1}, display.Use{At: geom.Scale(nan, 1)}, display.Use{},
			display.Path{Path: rendertest.Line(nan, 1, 2, 3), Stroke: display.Solid(black), Width: 1},
			display.Path{Path: rendertest.Line(0, 0, far, far), Stroke: display.Solid(black), Width: 1},
			display.Path{Path: geom.Path{Verbs: []geom.Verb{geom.Cubic}}, Fill: display.Solid(black)},
			display.Text{X: nan, Text: "1", Size: 3, Fill: black}, display.Picture{}, display.End{}, display.Begin{},
		},
	}
	if got := inkOf(Paint(l, Options{DPI: 100})); got != 0 {
		t.Errorf("nonsense gave ink of %.1f pixels", got)
	}
}

func TestSmallPicturesAreMeans(t *testing.T) {
	checks := image.NewGray(image.Rect(0, 0, 256, 256))
	for i := range checks.Pix {
		checks.Pix[i] = uint8(255 * ((i + i/256) % 2))
	}
	l := &display.List{Width: 10, Height: 10, Items: []display.Item{display.Picture{Width: 10, Height: 10, Image: checks}}}
	m := Paint(l, Options{DPI: 50})
	for i := 0; i < len(m.Pix); i += 4 {
		if v := m.Pix[i]; v < 120 || v > 135 {
			t.Fatalf("a pixel of fine black and white checks is %d, want the grey between", v)
		}
	}
}
