package raster

import (
	"image"
	"image/color"
	"image/png"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"strandway/chart/display"
	"strandway/chart/geom"
)

var black = color.NRGBA{A: 255}

// marks is a page of symbols as a chart has them: ovals, crosses and posts with bars.
func marks(width, height float64, n int, turned bool) *display.List {
	pen := func(p geom.Path) display.Path { return display.Path{Path: p, Stroke: display.Ink, Width: .35} }
	line := func(points ...float64) geom.Path {
		var p geom.Path
		p.MoveTo(geom.Point{X: points[0], Y: points[1]})
		for i := 2; i < len(points); i += 2 {
			p.LineTo(geom.Point{X: points[i], Y: points[i+1]})
		}
		return p
	}
	var oval geom.Path
	oval.MoveTo(geom.Point{X: 1.8})
	oval.CubicTo(geom.Point{X: 1.8, Y: .5}, geom.Point{X: 1, Y: .9}, geom.Point{X: 0, Y: .9})
	oval.CubicTo(geom.Point{X: -1, Y: .9}, geom.Point{X: -1.8, Y: .5}, geom.Point{X: -1.8})
	oval.CubicTo(geom.Point{X: -1.8, Y: -.5}, geom.Point{X: -1, Y: -.9}, geom.Point{Y: -.9})
	oval.CubicTo(geom.Point{X: 1, Y: -.9}, geom.Point{X: 1.8, Y: -.5}, geom.Point{X: 1.8})
	oval.Close()
	l := &display.List{
		Width: width, Height: height, Background: color.NRGBA{255, 255, 255, 255},
		Symbols: []display.Symbol{
			{Name: "chain", Paths: []display.Path{pen(oval)}},
			{Name: "sc", Paths: []display.Path{pen(line(-1, -1, 1, 1)), pen(line(-1, 1, 1, -1))}},
			{Name: "hdc", Paths: []display.Path{pen(line(0, 2, 0, -2)), pen(line(-1.2, -2, 1.2, -2))}},
			{Name: "dc", Paths: []display.Path{pen(line(0, 2.5, 0, -2.5)), pen(line(-1.2, -2.5, 1.2, -2.5)), pen(line(-.9, .3, .9, -.3))}},
		},
	}
	random := rand.New(rand.NewPCG(1, 2))
	columns := int(math.Ceil(math.Sqrt(float64(n) * width / height)))
	rows := (n + columns - 1) / columns
	for i := range n {
		at := geom.Translate((float64(i%columns)+.5)*width/float64(columns), (float64(i/columns)+.5)*height/float64(rows))
		if turned {
			at = geom.Rotate(random.Float64() * 6).Then(at)
		}
		ink := color.NRGBA{uint8(i * 7), 0, uint8(i * 3), 255}
		l.Items = append(l.Items, display.Use{Symbol: i % 4, At: at, Ink: ink})
	}
	return l
}

func TestLook(t *testing.T) {
	l := marks(120, 80, 100, true)
	l.Items = append(l.Items,
		display.Text{X: 60, Y: 40, Size: 8, Anchor: display.Middle, Text: "AVATAR Row 12 (½)", Fill: black, Halo: color.NRGBA{255, 255, 255, 255}},
		display.Text{X: 60, Y: 60, Size: 8, Anchor: display.Middle, Face: display.SerifItalic, Angle: .3, Text: "AVATAR Row 12", Fill: black},
	)
	var p geom.Path
	p.MoveTo(geom.Point{X: 5, Y: 5})
	p.CubicTo(geom.Point{X: 40, Y: 0}, geom.Point{X: 70, Y: 60}, geom.Point{X: 115, Y: 75})
	l.Items = append(l.Items, display.Path{Path: p, Stroke: display.Solid(color.NRGBA{200, 0, 0, 255}), Width: .5, Dash: []float64{2, 1}})
	f, _ := os.Create("/tmp/look.png")
	png.Encode(f, Paint(l, Options{DPI: 200}))
	f.Close()
}

func BenchmarkPaintView(b *testing.B) {
	for _, turned := range []bool{false, true} {
		name := "flat"
		if turned {
			name = "turned"
		}
		b.Run(name, func(b *testing.B) {
			l := marks(300, 200, 2000, turned)
			dst := image.NewRGBA(image.Rect(0, 0, 1500, 1000))
			b.ReportAllocs()
			for b.Loop() {
				PaintView(dst, l, geom.Scale(5, 5))
			}
		})
	}
}
