// Package picture shows chart and cloth as a linked pair: the same columns one
// above the other, or the same rows side by side, with one zoom, one pan and one
// choice of stitches.
package picture

import (
	"math"

	"strandway/chart/geom"
	"strandway/chart/layout"
)

// View is what both pictures show: how large a stitch is and what stands in the middle.
type View struct {
	Pixels float64    // of one stitch width, in px before the screen's own scale
	Centre geom.Point // of the pane, as shares of the piece's box: 0, 0 is its lower left
	Whole  bool       // the view follows the panes so that the whole piece is seen
}

// Zoom limits, px of one stitch width.
const (
	smallest = .25
	largest  = 120
	usual    = 34 // the whole of a small piece is not drawn larger than this
)

// Zoom multiplies the size of a stitch and keeps the point at share of the piece where it is on the pane.
func (v View) Zoom(by float64, at geom.Point) View {
	now := max(smallest, min(largest, v.Pixels*by))
	k := v.Pixels / now
	v.Centre = at.Add(v.Centre.Sub(at).Mul(k))
	v.Pixels, v.Whole = now, false
	return v
}

// stepped is the largest size of a stitch, by steps of an eighth of twice the size, that is no larger than
// pixels: a piece that grows row by row keeps its size for some rows, and most of its picture with it.
func stepped(pixels float64) float64 {
	const perDouble = 8
	return usual * math.Exp2(math.Floor(math.Log2(pixels/usual)*perDouble)/perDouble)
}

// Clamp keeps some of the piece in sight.
func (v View) Clamp() View {
	v.Centre.X = max(0, min(1, v.Centre.X))
	v.Centre.Y = max(0, min(1, v.Centre.Y))
	return v
}

// size is the extent of a pane in px.
type size struct{ w, h float64 }

// fit is the stitch size at which a box of stitch widths fills a pane.
func fit(box geom.Box, pane size) float64 {
	if box.IsEmpty() || box.Width() <= 0 || box.Height() <= 0 {
		return usual
	}
	return min(pane.w/box.Width(), pane.h/box.Height())
}

// stacked decides how the pair stands: one above the other or side by side, whichever draws
// the stitches larger. The present arrangement stays unless the other gains a tenth, so
// that a dragged divider does not make it flicker.
func stacked(chart, cloth geom.Box, whole size, head float64, now bool) bool {
	above := size{whole.w, whole.h/2 - head}
	beside := size{whole.w / 2, whole.h - head}
	a := min(fit(chart, above), fit(cloth, above))
	b := min(fit(chart, beside), fit(cloth, beside))
	if now {
		return b < a*1.1
	}
	return a > b*1.1
}

// straight reports whether the columns of a plan stand at the same x in chart and cloth.
func straight(m layout.Manner) bool {
	return m != layout.Circle && m != layout.Polygon
}
