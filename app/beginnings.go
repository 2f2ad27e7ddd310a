package app

import (
	"image"
	"math"

	"fyne.io/fyne/v2/canvas"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/render/raster"
)

// sketch draws a small picture of a beginning, in the first two yarns' inks, in units of
// one stitch, y upward.
func sketch(d *control.Canvas, x, y, w, h float32, list *display.List, box geom.Box) {
	const sharp = 2
	s := min(float64(w)/box.Width(), float64(h)/box.Height()) * sharp
	mid := box.Centre()
	to := geom.Translate(-mid.X, -mid.Y).Then(geom.Scale(s, -s)).Then(geom.Translate(float64(w)*sharp/2, float64(h)*sharp/2))
	img := image.NewRGBA(image.Rect(0, 0, int(w*sharp), int(h*sharp)))
	scaled := &display.List{}
	for _, item := range list.Items {
		p := item.(display.Path)
		p.Path = p.Path.Transform(to)
		p.Width *= s
		scaled.Items = append(scaled.Items, p)
	}
	raster.PaintView(img, scaled, geom.Identity)
	d.Add(canvas.NewImageFromImage(img), x, y, w, h)
}

// strokes gathers the lines of a sketch.
type strokes struct {
	list display.List
	ink  display.Paint
}

func (s *strokes) line(points ...geom.Point) {
	var p geom.Path
	p.MoveTo(points[0])
	for _, q := range points[1:] {
		p.LineTo(q)
	}
	s.list.Items = append(s.list.Items, display.Path{Path: p, Stroke: s.ink, Width: .09})
}

// tall draws a double crochet from a foot towards a direction.
func (s *strokes) tall(foot, up geom.Point, height float64) {
	side := geom.Point{X: up.Y, Y: -up.X}
	head := foot.Add(up.Mul(height))
	s.line(foot, head)
	s.line(head.Sub(side.Mul(.32)), head.Add(side.Mul(.32)))
	mid := foot.Add(up.Mul(height * .55))
	s.line(mid.Sub(side.Mul(.22)).Sub(up.Mul(.14)), mid.Add(side.Mul(.22)).Add(up.Mul(.14)))
}

// cross draws a single crochet.
func (s *strokes) cross(at geom.Point) {
	s.line(at.Add(geom.Point{X: -.28, Y: -.28}), at.Add(geom.Point{X: .28, Y: .28}))
	s.line(at.Add(geom.Point{X: -.28, Y: .28}), at.Add(geom.Point{X: .28, Y: -.28}))
}

func inks(k theme.Tokens) (first, second display.Paint) {
	return display.Solid(k.YarnInk(theme.Harbour)), display.Solid(k.YarnInk(theme.Ember))
}

func flatPicture(d *control.Canvas, k theme.Tokens, x, y, w, h float32) {
	s := strokes{}
	first, second := inks(k)
	for row := range 3 {
		s.ink = first
		if row == 1 {
			s.ink = second
		}
		for col := range 5 {
			s.tall(geom.Point{X: float64(col), Y: float64(row) * 1.9}, geom.Point{Y: 1}, 1.75)
		}
	}
	sketch(d, x, y, w, h, &s.list, geom.Box{Min: geom.Point{X: -1, Y: -.4}, Max: geom.Point{X: 5, Y: 6}})
}

func roundPicture(d *control.Canvas, k theme.Tokens, x, y, w, h float32) {
	s := strokes{}
	first, second := inks(k)
	s.ink = first
	var ring []geom.Point
	for i := range 33 {
		ring = append(ring, direction(float64(i)/32).Mul(.5))
	}
	s.line(ring...)
	for i := range 12 {
		up := direction(float64(i) / 12)
		s.tall(up.Mul(.75), up, 1.6)
	}
	s.ink = second
	for i := range 12 {
		s.cross(direction((float64(i) + .5) / 12).Mul(2.95))
	}
	sketch(d, x, y, w, h, &s.list, geom.Box{Min: geom.Point{X: -3.4, Y: -3.4}, Max: geom.Point{X: 3.4, Y: 3.4}})
}

// direction is a unit vector at a share of a full turn.
func direction(turn float64) geom.Point {
	return geom.Point{Y: 1}.Rotate(turn * 2 * math.Pi)
}

func shellPicture(d *control.Canvas, k theme.Tokens, x, y, w, h float32) {
	s := strokes{}
	first, second := inks(k)
	s.ink = first
	for i := range 13 {
		s.cross(geom.Point{X: float64(i)*.9 - 1.8})
	}
	s.ink = second
	for shell := range 3 {
		foot := geom.Point{X: float64(shell) * 3.6, Y: .5}
		for i := range 5 {
			s.tall(foot, geom.Point{Y: 1}.Rotate(float64(2-i)*.42), 2)
		}
	}
	sketch(d, x, y, w, h, &s.list, geom.Box{Min: geom.Point{X: -2.6, Y: -1}, Max: geom.Point{X: 9.8, Y: 3}})
}

func blankPicture(d *control.Canvas, k theme.Tokens, x, y, w, h float32) {
	s := strokes{ink: display.Solid(k.Ink2)}
	for i := range 12 {
		t := float64(i)/12*4 - 2
		for _, side := range []float64{-2, 2} {
			s.line(geom.Point{X: t, Y: side}, geom.Point{X: t + .18, Y: side})
			s.line(geom.Point{X: side, Y: t}, geom.Point{X: side, Y: t + .18})
		}
	}
	s.ink = display.Solid(k.Accent)
	var hook geom.Path
	hook.MoveTo(geom.Point{X: .15, Y: 1.3})
	hook.LineTo(geom.Point{X: .15, Y: -.5})
	hook.CubicTo(geom.Point{X: .15, Y: -1.2}, geom.Point{X: -.75, Y: -1.2}, geom.Point{X: -.65, Y: -.4})
	s.list.Items = append(s.list.Items, display.Path{Path: hook, Stroke: s.ink, Width: .14})
	sketch(d, x, y, w, h, &s.list, geom.Box{Min: geom.Point{X: -2.6, Y: -2.6}, Max: geom.Point{X: 2.6, Y: 2.6}})
}
