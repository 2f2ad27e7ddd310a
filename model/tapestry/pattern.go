package tapestry

import (
	"image/color"
	"strings"

	"strandway/model/colour"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

// UsualGauge is that of sc in worsted yarn with a 4 mm hook, for where no swatch has been worked yet.
var UsualGauge = pattern.Gauge{Stitches: 16, Rows: 18, OverCM: 10}

// Aspect is the height of a row over the width of a stitch.
func Aspect(g pattern.Gauge) float64 { return g.Stitches / g.Rows }

// Pattern is a pattern of one piece that works the grid in yarns of these colours, its rows in US or UK terms.
func (g Grid) Pattern(lib *stitch.Library, title, terms string, gauge pattern.Gauge, colours []color.NRGBA) *pattern.Pattern {
	p := &pattern.Pattern{Title: title, Terms: terms, Units: "cm", Gauge: gauge,
		Note:   "Carry the yarns not in use along the row below and work over them; change yarn in the last pull-through of the stitch before.\n",
		Pieces: []pattern.Piece{{Name: "Body", Worked: "flat", Rows: g.Rows(lib, strings.ToLower(terms))}}}
	for i, c := range colours {
		p.Yarns = append(p.Yarns, pattern.Yarn{Letter: g.Yarns[i], Colour: colour.Hex(c), Weight: -1})
	}
	return p
}
