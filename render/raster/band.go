package raster

import (
	"image"
	"image/color"
	"image/draw"

	"github.com/fogleman/gg"
	"github.com/golang/freetype/raster"

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
}

// begin takes up what dst holds. A band may begin anew once it is finished.
func (b *band) begin(dst *image.RGBA) {
	r := image.Rectangle{Min: dst.Rect.Min.Sub(image.Pt(1, 1)), Max: dst.Rect.Max}
	if need := 4 * r.Dx() * r.Dy(); b.sheet == nil || cap(b.sheet.Pix) < need {
		b.sheet = image.NewRGBA(r)
	} else {
		b.sheet = &image.RGBA{Pix: b.sheet.Pix[:need], Stride: 4 * r.Dx(), Rect: r}
	}
	draw.Draw(b.sheet, dst.Rect, dst, dst.Rect.Min, draw.Src)
	b.dst, b.pen.dst = dst, b.sheet
	b.gg = gg.NewContextForRGBA(&image.RGBA{Pix: b.sheet.Pix, Stride: b.sheet.Stride, Rect: image.Rectangle{Max: r.Size()}})
	b.core.SetBounds(r.Dx(), r.Dy())
	b.core.Dx, b.core.Dy = r.Min.X, r.Min.Y
	b.core.UseNonZeroWinding = true
}

// finish brings what has been painted back.
func (b *band) finish() {
	draw.Draw(b.dst, b.dst.Rect, b.sheet, b.dst.Rect.Min, draw.Src)
}

// lines paints lines that occur once.
func (b *band) lines(l *lines) {
	corner := geom.Point{X: float64(b.sheet.Rect.Min.X), Y: float64(b.sheet.Rect.Min.Y)}
	for _, run := range l.runs {
		for i, a := range run.Points {
			if a = a.Sub(corner); i == 0 {
				b.gg.MoveTo(a.X, a.Y)
			} else {
				b.gg.LineTo(a.X, a.Y)
			}
		}
		if run.Closed {
			b.gg.ClosePath()
		}
	}
	if l.fill.On {
		b.gg.SetColor(l.fill.Colour)
		b.gg.FillPreserve()
	}
	if l.stroke.On {
		b.gg.SetColor(l.stroke.Colour)
		b.gg.SetLineWidth(l.width)
		b.gg.SetDash(l.dash...)
		b.gg.StrokePreserve()
	}
	b.gg.ClearPath()
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

// loops fills the points that loops wind about.
func (b *band) loops(loops [][]geom.Point, at geom.Matrix, c color.NRGBA) {
	if c.A == 0 {
		return
	}
	at = at.Then(geom.Translate(-float64(b.sheet.Rect.Min.X), -float64(b.sheet.Rect.Min.Y)))
	b.core.Clear()
	for _, loop := range loops {
		start := toFixed(at.Apply(loop[0]), 1)
		b.core.Start(start)
		for _, a := range loop[1:] {
			b.core.Add1(toFixed(at.Apply(a), 1))
		}
		b.core.Add1(start)
	}
	b.pen.dip(c)
	b.core.Rasterize(&b.pen)
}
