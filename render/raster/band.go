package raster

import (
	"image"
	"image/color"
	"math"

	"github.com/fogleman/gg"
	"github.com/golang/freetype/raster"
	"golang.org/x/image/math/fixed"

	"strandway/chart/display"
	"strandway/chart/geom"
)

// band is some rows of a picture while one goroutine paints them.
type band struct {
	dst   *image.RGBA
	sheet *gg.Context // dst with its corner at the origin, as gg wants it
	core  raster.Rasterizer
	line  []fixed.Point26_6
}

func newBand(dst *image.RGBA) *band {
	sheet := &image.RGBA{Pix: dst.Pix, Stride: dst.Stride, Rect: image.Rectangle{Max: dst.Rect.Size()}}
	b := &band{dst: dst, sheet: gg.NewContextForRGBA(sheet)}
	b.core.UseNonZeroWinding = true
	return b
}

// path paints lines that occur once.
func (b *band) path(p *display.Path, toPixels geom.Matrix) {
	toPixels = toPixels.Then(geom.Translate(-float64(b.dst.Rect.Min.X), -float64(b.dst.Rect.Min.Y)))
	for _, run := range p.Path.Transform(toPixels).Flatten(flatness) {
		points := thin(run.Points)
		b.sheet.MoveTo(points[0].X, points[0].Y)
		if len(points) == 1 {
			b.sheet.LineTo(points[0].X+.25, points[0].Y)
		}
		for _, a := range points[1:] {
			b.sheet.LineTo(a.X, a.Y)
		}
		if run.Closed {
			b.sheet.ClosePath()
		}
	}
	if p.Fill.On {
		b.sheet.SetColor(p.Fill.Colour)
		b.sheet.FillPreserve()
	}
	if p.Stroke.On {
		scale := scaleOf(toPixels)
		b.sheet.SetColor(p.Stroke.Colour)
		b.sheet.SetLineWidth(p.Width * scale)
		dash := make([]float64, len(p.Dash))
		for i := range dash {
			dash[i] = p.Dash[i] * scale
		}
		b.sheet.SetDash(dash...)
		b.sheet.StrokePreserve()
	}
	b.sheet.ClearPath()
}

// thin leaves out points less than a quarter of a pixel from the last: gg passes
// over steps shorter than an eighth, and would lose a line made of nothing else.
func thin(points []geom.Point) []geom.Point {
	kept := points[:1:1]
	for i, a := range points[1:] {
		if a.Sub(kept[len(kept)-1]).Len() >= .25 || i == len(points)-2 {
			kept = append(kept, a)
		}
	}
	return kept
}

// fill paints a shape.
func (b *band) fill(s *shape, at geom.Matrix, ink color.NRGBA) {
	for _, l := range s.layers {
		c := l.paint.Colour
		if l.paint.Inherit {
			c = ink
		}
		b.loops(l.loops, at, c)
	}
}

// loops fills the points that loops wind about, looking only at the box they lie in.
func (b *band) loops(loops [][]geom.Point, at geom.Matrix, c color.NRGBA) {
	line := b.line[:0]
	box := geom.Empty()
	for _, loop := range loops {
		for _, a := range loop {
			a = at.Apply(a)
			box = box.Add(a)
			line = append(line, fixed.Point26_6{X: fixed.Int26_6(math.Round(a.X * 64)), Y: fixed.Int26_6(math.Round(a.Y * 64))})
		}
	}
	b.line = line
	r := pixels(box).Intersect(b.dst.Rect)
	if r.Empty() || c.A == 0 {
		return
	}
	b.core.SetBounds(r.Dx(), r.Dy())
	b.core.Dx, b.core.Dy = r.Min.X, r.Min.Y
	corner := fixed.P(r.Min.X, r.Min.Y)
	for _, loop := range loops {
		part := line[:len(loop)]
		line = line[len(loop):]
		b.core.Start(part[0].Sub(corner))
		for _, a := range part[1:] {
			b.core.Add1(a.Sub(corner))
		}
		b.core.Add1(part[0].Sub(corner))
	}
	painter := raster.NewRGBAPainter(b.dst)
	painter.SetColor(c)
	b.core.Rasterize(painter)
}
