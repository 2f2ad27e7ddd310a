package picture

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"strandway/chart/geom"
)

// veilThick is how much of what lies under it a veil takes away, of 255.
const veilThick = 168

// veiled pales stitches that stand on a fault: they are as they were worked, but nobody knows yet whether they
// will be.
func veiled(picture *image.RGBA, s shot) *image.RGBA {
	if len(s.unsure.Stitches) == 0 {
		return picture
	}
	mask := image.NewAlpha(picture.Rect) // so that what two stitches share is paled once
	thick := image.NewUniform(color.Alpha{A: veilThick})
	for _, id := range s.unsure.Stitches {
		b := s.sight.bounds(id)
		if b.IsEmpty() {
			continue
		}
		a, z := s.at.Apply(geom.Point{X: b.Min.X, Y: b.Max.Y}), s.at.Apply(geom.Point{X: b.Max.X, Y: b.Min.Y})
		r := image.Rect(int(math.Floor(a.X)), int(math.Floor(a.Y)), int(math.Ceil(z.X)), int(math.Ceil(z.Y)))
		draw.Draw(mask, r, thick, image.Point{}, draw.Src)
	}
	out := image.NewRGBA(picture.Rect)
	copy(out.Pix, picture.Pix)
	draw.DrawMask(out, out.Rect, image.NewUniform(s.paper), image.Point{}, mask, image.Point{}, draw.Over)
	return out
}
