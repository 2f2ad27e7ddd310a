package raster

import (
	"image"
	"image/color"
	"io"
	"math"
	"math/rand/v2"
	"testing"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/render/rendertest"
)

// symbols is a page of chains and trebles in rows or, turned, each at its own angle.
func symbols(width, height float64, n int, turned bool) *display.List {
	l := rendertest.Page()
	l.Width, l.Height, l.Items = width, height, nil
	random := rand.New(rand.NewPCG(1, 2))
	columns := int(math.Ceil(math.Sqrt(float64(n) * width / height)))
	rows := (n + columns - 1) / columns
	for i := range n {
		at := geom.Translate((float64(i%columns)+.5)*width/float64(columns), (float64(i/columns)+.5)*height/float64(rows))
		if turned {
			at = geom.Rotate(random.Float64() * 2 * math.Pi).Then(at)
		}
		l.Items = append(l.Items, display.Use{Symbol: i % 2, At: at, Ink: color.NRGBA{R: uint8(i / 50), A: 255}})
	}
	return l
}

// stems is a page of bent lines that occur once.
func stems(n int) *display.List {
	l := &display.List{Width: 300, Height: 200, Background: white}
	for i := range n {
		var p geom.Path
		p.MoveTo(geom.Point{Y: 5})
		p.CubicTo(geom.Point{X: 1, Y: 3}, geom.Point{X: 1, Y: 2}, geom.Point{})
		p = p.Transform(geom.Translate(float64(i%60)*5, float64(i/60)*6))
		l.Items = append(l.Items, display.Path{Path: p, Stroke: display.Solid(black), Width: .35})
	}
	return l
}

// cells is a grid of coloured squares.
func cells(n int) *display.List {
	l := &display.List{Width: 300, Height: 300, Background: white}
	columns := int(math.Sqrt(float64(n)))
	side := 300 / float64(columns)
	for i := range n {
		p := rendertest.Rectangle(float64(i%columns)*side, float64(i/columns)*side, side, side)
		l.Items = append(l.Items, display.Path{
			Path: p, Fill: display.Solid(color.NRGBA{R: uint8(i), G: uint8(i / columns), A: 255}), Stroke: display.Solid(black), Width: .1,
		})
	}
	return l
}

func BenchmarkPaintView(b *testing.B) {
	for _, c := range []struct {
		name string
		list *display.List
	}{
		{"2000-symbols", symbols(300, 200, 2000, false)},
		{"2000-turned", symbols(300, 200, 2000, true)},
		{"2000-stems", stems(2000)},
		{"10000-cells", cells(10000)},
	} {
		b.Run(c.name, func(b *testing.B) {
			dst := image.NewRGBA(image.Rect(0, 0, 1500, 1000))
			for b.Loop() {
				PaintView(dst, c.list, geom.Scale(5, 5))
			}
		})
	}
}

func BenchmarkWritePNG(b *testing.B) {
	l := symbols(420, 297, 5000, true)
	for b.Loop() {
		if err := WritePNG(io.Discard, l, Options{DPI: 300}); err != nil {
			b.Fatal(err)
		}
	}
}
