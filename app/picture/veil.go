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

// veil pales stitches that stand on a fault: they are as they were worked, but nobody knows yet whether they
// will be. m maps places to pixels.
func veil(dst *image.RGBA, s sight, stitches []int32, m geom.Matrix, paper color.NRGBA) {
	if len(stitches) == 0 {
		return
	}
	mask := image.NewAlpha(dst.Rect) // so that what two stitches share is paled once
	thick := image.NewUniform(color.Alpha{A: veilThick})
	for _, id := range stitches {
		b := s.bounds(id)
		if b.IsEmpty() {
			continue
		}
		a, z := m.Apply(geom.Point{X: b.Min.X, Y: b.Max.Y}), m.Apply(geom.Point{X: b.Max.X, Y: b.Min.Y})
		r := image.Rect(int(math.Floor(a.X)), int(math.Floor(a.Y)), int(math.Ceil(z.X)), int(math.Ceil(z.Y)))
		draw.Draw(mask, r, thick, image.Point{}, draw.Src)
	}
	draw.DrawMask(dst, dst.Rect, image.NewUniform(paper), image.Point{}, mask, dst.Rect.Min, draw.Over)
}
