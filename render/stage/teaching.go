package stage

import (
	"image/color"
	"strings"

	"strandway/model"
	"strandway/model/colour"
)

// Teaching is the colourway a piece is best taught in: the one named Teaching, else the
// one whose yarns are farthest apart in lightness. "" is the yarns' own colours.
func Teaching(w *model.Worked, piece int) string {
	best, apart := "", leastApart(w.YarnColours(piece, ""))
	for _, way := range w.Pattern.Colourways {
		if strings.EqualFold(way.Name, "teaching") {
			return way.Name
		}
		if d := leastApart(w.YarnColours(piece, way.Name)); d > apart+1 {
			best, apart = way.Name, d
		}
	}
	return best
}

// leastApart is how far the two yarns that are most alike are apart in lightness; one
// yarn is measured against the darkness in which its stitches would be lost.
func leastApart(yarns []color.NRGBA) float64 {
	if len(yarns) == 1 {
		return colour.Lightness(yarns[0])
	}
	least := 100.
	for i, a := range yarns {
		for _, b := range yarns[i+1:] {
			d := colour.Lightness(a) - colour.Lightness(b)
			least = min(least, max(d, -d))
		}
	}
	return least
}
