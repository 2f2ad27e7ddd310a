package rendertest

import (
	"image"
	"image/color"
	"math"

	"strandway/chart/display"
	"strandway/chart/geom"
)

// Page is a small page with everything a list can hold: two rows of stitches,
// one fanned out, numbers, words with a halo, a dashed bracket, a translucent
// wash, a picture.
func Page() *display.List {
	var (
		ink    = color.NRGBA{R: 30, G: 40, B: 60, A: 255}
		madder = color.NRGBA{R: 170, G: 40, B: 30, A: 255}
		paper  = color.NRGBA{R: 255, G: 255, B: 255, A: 255}
	)
	l := &display.List{
		Width: 90, Height: 60, Background: paper,
		Title: "Ripple & shell", Desc: "two rows, worked to and fro",
		Symbols: []display.Symbol{
			{Name: "ch", Paths: []display.Path{{Path: Oval(1.8, .9), Stroke: display.Ink, Width: .35}}},
			{Name: "dc", Paths: []display.Path{
				{Path: Line(0, 0, 0, -6), Stroke: display.Ink, Width: .35},
				{Path: Line(-1.3, -6, 1.3, -6), Stroke: display.Ink, Width: .35},
				{Path: Line(-.9, -2.6, .9, -3.4), Stroke: display.Ink, Width: .35},
			}},
			{Name: "sl st", Paths: []display.Path{{Path: Oval(.6, .6), Fill: display.Ink}}},
		},
	}
	add := func(items ...display.Item) { l.Items = append(l.Items, items...) }
	stitch := int32(0)
	use := func(title string, symbol int, at geom.Matrix, c color.NRGBA) {
		id := "s" + string(rune('0'+stitch/10)) + string(rune('0'+stitch%10))
		add(display.Begin{ID: id, Class: "stitch", Title: title, Stitch: stitch}, display.Use{Symbol: symbol, At: at, Ink: c}, display.End{})
		stitch++
	}

	add(display.Path{Path: Rectangle(5, 22, 70, 12), Fill: display.Solid(color.NRGBA{R: 240, G: 190, B: 60, A: 70})})
	add(display.Begin{ID: "r1", Class: "row", Title: "Row 1", Stitch: -1})
	for i := range 12 {
		use("ch", 0, geom.Translate(12+5*float64(i), 40), ink)
	}
	add(display.Text{X: 77, Y: 41.2, Size: 3.5, Text: "1", Fill: ink}, display.End{})
	add(display.Begin{ID: "r2", Class: "row", Title: "Row 2: 5 dc in 3rd ch", Stitch: -1})
	for i := range 5 {
		use("dc", 1, geom.Rotate(float64(i-2)*math.Pi/9).Then(geom.Translate(22, 38)), madder)
	}
	for i := range 6 {
		use("dc", 1, geom.Translate(37+5*float64(i), 38), madder)
	}
	use("sl st", 2, geom.Scale(1.5, 1.5).Then(geom.Translate(70, 36)), ink)
	add(display.Text{X: 4, Y: 34, Size: 3.5, Face: display.SansBold, Text: "2", Fill: madder}, display.End{})
	add(display.Path{
		Path: Line(35, 46, 35, 48, 64, 48, 64, 46), Stroke: display.Solid(ink), Width: .25, Dash: []float64{1.5, 1},
	})
	add(display.Text{
		X: 49.5, Y: 49, Size: 4, Anchor: display.Middle, Face: display.SerifItalic, Text: "repeat AVA", Fill: ink, Halo: paper,
	})
	add(display.Text{X: 85, Y: 20, Size: 4, Anchor: display.Finish, Face: display.Serif, Angle: -math.Pi / 12, Text: "½ Turn", Fill: ink})
	add(display.Picture{X: 5, Y: 48, Width: 16, Height: 8, Image: stripes(), Alt: "three stripes"})
	add(display.Text{X: 5, Y: 10, Size: 5, Text: "Ripple & shell", Fill: ink})
	return l
}

// stripes is a picture of three colours.
func stripes() image.Image {
	m := image.NewRGBA(image.Rect(0, 0, 160, 80))
	for y := range 80 {
		for x := range 160 {
			m.SetRGBA(x, y, [...]color.RGBA{{200, 60, 40, 255}, {250, 240, 220, 255}, {40, 80, 120, 255}}[x*3/160])
		}
	}
	return m
}

// Line is a run of straight lines through points given as x, y, x, y.
func Line(xy ...float64) geom.Path {
	var p geom.Path
	p.MoveTo(geom.Point{X: xy[0], Y: xy[1]})
	for i := 2; i+1 < len(xy); i += 2 {
		p.LineTo(geom.Point{X: xy[i], Y: xy[i+1]})
	}
	return p
}

// Rectangle is a rectangle by its upper left corner and size.
func Rectangle(x, y, width, height float64) geom.Path {
	p := Line(x, y, x+width, y, x+width, y+height, x, y+height)
	p.Close()
	return p
}

// Oval is an ellipse round the origin.
func Oval(rx, ry float64) geom.Path {
	const k = 0.5522847498 // of the radius, to the control points of a quarter
	var p geom.Path
	p.MoveTo(geom.Point{X: rx})
	for i := range 4 {
		turn := geom.Rotate(float64(i) * math.Pi / 2).Then(geom.Scale(rx, ry))
		p.CubicTo(turn.Apply(geom.Point{X: 1, Y: k}), turn.Apply(geom.Point{X: k, Y: 1}), turn.Apply(geom.Point{Y: 1}))
	}
	p.Close()
	return p
}
