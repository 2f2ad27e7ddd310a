package raster

import (
	"image"
	"image/color"

	"github.com/golang/freetype/raster"
)

// pen lays a colour over the pixels that the rasteriser names. Nearly all of
// them lie on the edge of a thin line, one or two side by side, so that the
// blending of single pixels is most of the work of a chart: eight bits are
// enough for it, and what is covered whole is not blended at all.
type pen struct {
	dst     *image.RGBA
	r, g, b uint32 // premultiplied by a
	a       uint32 // 0 to 255
}

// dip takes up a colour.
func (p *pen) dip(c color.NRGBA) {
	p.a = uint32(c.A)
	p.r, p.g, p.b = over255(uint32(c.R)*p.a), over255(uint32(c.G)*p.a), over255(uint32(c.B)*p.a)
}

// Paint implements the rasteriser's Painter.
func (p *pen) Paint(spans []raster.Span, _ bool) {
	rect := p.dst.Rect
	for _, s := range spans {
		x0, x1 := max(s.X0, rect.Min.X), min(s.X1, rect.Max.X)
		if x0 >= x1 || s.Y < rect.Min.Y || s.Y >= rect.Max.Y {
			continue
		}
		row := p.dst.Pix[p.dst.PixOffset(x0, s.Y):][:4*(x1-x0)]
		cover := s.Alpha >> 8
		r, g, b, a := over255(p.r*cover), over255(p.g*cover), over255(p.b*cover), over255(p.a*cover)
		if a == 255 {
			for i := 0; i+3 < len(row); i += 4 {
				row[i], row[i+1], row[i+2], row[i+3] = uint8(r), uint8(g), uint8(b), 255
			}
			continue
		}
		keep := 255 - a
		for i := 0; i+3 < len(row); i += 4 {
			d := row[i : i+4 : i+4]
			d[0] = uint8(r + over255(uint32(d[0])*keep))
			d[1] = uint8(g + over255(uint32(d[1])*keep))
			d[2] = uint8(b + over255(uint32(d[2])*keep))
			d[3] = uint8(a + over255(uint32(d[3])*keep))
		}
	}
}

// over255 is v divided by 255, rounded, for v up to 255 times 255.
func over255(v uint32) uint32 { return (v + 128) * 257 >> 16 }
