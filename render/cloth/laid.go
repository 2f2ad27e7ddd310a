package cloth

import (
	"context"
	"image"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model"
	"strandway/model/measure"
)

// Laid paints a piece as it lies, for laying it on a drawing of its outline:
// within the outline's box, in the units of the plan, on nothing. Of a tube the
// half that lies above is seen. The longer side is so many pixels at most.
func Laid(ctx context.Context, w *model.Worked, piece int, colourway string, plan *layout.Plan, outline geom.Box, pixels float64) (image.Image, error) {
	yarns := YarnsOf(w, piece, colourway)
	o := OptionsOf(w, piece, plan)
	made := Make(plan, yarns, o)
	if outline.IsEmpty() || plan.Box.Width() == 0 || plan.Box.Height() == 0 {
		outline = plan.Box
	}
	if measure.Of(plan.Fabric, measure.Scale{ColumnCM: 1, SCCM: 1}).Form == measure.Tube && plan.Manner == layout.Tube {
		outline.Max.X = outline.Min.X + outline.Width()/2
	}
	whole := made.Box() // the plan's box, stretched to the gauge
	onto := func(p geom.Point) geom.Point {
		return geom.Point{
			X: whole.Min.X + (p.X-plan.Box.Min.X)*whole.Width()/plan.Box.Width(),
			Y: whole.Min.Y + (p.Y-plan.Box.Min.Y)*whole.Height()/plan.Box.Height(),
		}
	}
	box := geom.Box{Min: onto(outline.Min), Max: onto(outline.Max)}
	const most = 24 // pixels to a stitch
	view := View{Box: box, PixelsPerW: min(most, pixels/max(box.Width(), box.Height(), 1))}
	return made.Paint(ctx, view, yarns, Background{Ground: Transparent})
}
