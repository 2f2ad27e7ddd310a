package raster

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"github.com/fogleman/gg"
	"github.com/golang/freetype/raster"
	"golang.org/x/image/math/fixed"

	"strandway/chart/display"
	"strandway/chart/geom"
)

// band is some rows of a picture while one goroutine paints them. It paints on
// a sheet of its own with one more row above and one more column at the left:
// the rasteriser takes what lies less than a pixel outside for the first pixel
// inside, which would leave a seam where two bands meet.
type band struct {
	dst   *image.RGBA
	sheet *image.RGBA
	gg    *gg.Context // the sheet with its corner at the origin, as gg wants it
	core  raster.Rasterizer
	pen   pen
	line  []fixed.Point26_6
}

func newBand(dst *image.RGBA) *band {
	sheet := image.NewRGBA(image.Rectangle{Min: dst.Rect.Min.Sub(image.Pt(1, 1)), Max: dst.Rect.Max})
	draw.Draw(sheet, dst.Rect, dst, dst.Rect.Min, draw.Src)
	b := &band{
		dst: dst, sheet: sheet, pen: pen{dst: sheet},
		gg: gg.NewContextForRGBA(&image.RGBA{Pix: sheet.Pix, Stride: sheet.Stride, Rect: image.Rectangle{Max: sheet.Rect.Size()}}),
	}
	b.core.UseNonZeroWinding = true
	return b
}

// finish brings what has been painted back.
func (b *band) finish() {
	draw.Draw(b.dst, b.dst.Rect, b.sheet, b.dst.Rect.Min, draw.Src)
}

// path paints lines that occur once.
func (b *band) path(p *display.Path, toPixels geom.Matrix) {
	toPixels = toPixels.Then(geom.Translate(-float64(b.sheet.Rect.Min.X), -float64(b.sheet.Rect.Min.Y)))
	for _, run := range p.Path.Transform(toPixels).Flatten(flatness) {
		points := thin(run.Points)
		b.gg.MoveTo(points[0].X, points[0].Y)
		for _, a := range points[1:] {
			b.gg.LineTo(a.X, a.Y)
		}
		if run.Closed {
			b.gg.ClosePath()
		}
	}
	if p.Fill.On {
		b.gg.SetColor(p.Fill.Colour)
		b.gg.FillPreserve()
	}
	if p.Stroke.On {
		scale := scaleOf(toPixels)
		b.gg.SetColor(p.Stroke.Colour)
		b.gg.SetLineWidth(p.Width * scale)
		dash := make([]float64, len(p.Dash))
		for i := range dash {
			dash[i] = p.Dash[i] * scale
		}
		b.gg.SetDash(dash...)
		b.gg.StrokePreserve()
	}
	b.gg.ClearPath()
}

// thin leaves out points less than a quarter of a pixel from the last: gg passes
// over steps shorter than an eighth, and would lose a line made of nothing else.
func thin(points []geom.Point) []geom.Point {
	const step = .25
	kept := points[:1:1]
	for _, a := range points[1:] {
		if a.Sub(kept[len(kept)-1]).Len() >= step {
			kept = append(kept, a)
		}
	}
	if len(kept) == 1 { // a dot, as a line just long enough
		dot := geom.Point{X: step / 2}
		return []geom.Point{kept[0].Sub(dot), kept[0].Add(dot)}
	}
	kept[len(kept)-1] = points[len(points)-1]
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
	r := pixels(box).Intersect(b.sheet.Rect)
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
	b.pen.dip(c)
	b.core.Rasterize(&b.pen)
}
