package cloth

import (
	"image/color"
	"slices"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model"
	"strandway/model/colour"
	"strandway/model/fabric"
	"strandway/model/measure"
	"strandway/model/pattern"
)

// YarnsOf gives the yarns of a piece of a worked pattern as its cloth shows
// them, in a colourway; "" is the yarns' own colours.
func YarnsOf(w *model.Worked, piece int, colourway string) []Yarn {
	return YarnsIn(w, piece, model.Shades(w.Pattern, colourway))
}

// YarnsIn gives them as they are when the pattern's yarns have other shades.
func YarnsIn(w *model.Worked, piece int, shades []pattern.Shade) []Yarn {
	colours := w.ColoursIn(piece, shades)
	out := make([]Yarn, len(colours))
	for i, c := range colours {
		out[i].Colour = c
		y, ok := w.YarnOf(piece, i)
		if !ok {
			continue
		}
		out[i].Shape = Shape{Plies: y.Plies, Thickness: y.Thickness, Fuzz: y.Fuzz}
		if y.Twist == "S" {
			out[i].Shape.Twist = STwist
		}
		if held := slices.IndexFunc(w.Pattern.Yarns, func(h pattern.Yarn) bool { return h.Letter == y.HeldWith }); held >= 0 {
			if c, err := colour.Parse(shades[held].Colour); err == nil {
				out[i].Shape.Strands, out[i].Held = 2, c
			}
		}
		if changed := colour.Hex(c) != y.Colour; changed && y.Look == "variegated" {
			continue // a colourway names one colour a yarn
		}
		out[i].Look, out[i].RepeatM = looks[y.Look], y.RepeatM
		out[i].Colours = moreColours(y)
	}
	return out
}

// OptionsOf gives the options with which a piece's cloth, laid out by plan, has
// the width and the row height of the pattern's gauge.
func OptionsOf(w *model.Worked, piece int, plan *layout.Plan) Options {
	g := w.Pattern.Gauge
	if g.Stitches <= 0 || g.OverCM <= 0 {
		return Options{}
	}
	o := Options{StitchMM: 10 * g.OverCM / g.Stitches}
	if g.Rows <= 0 || plan.Box.IsEmpty() || plan.Box.Width() == 0 || len(plan.Fabric.Rows) < 2 {
		return o
	}
	size := measure.Of(plan.Fabric, measure.FromGauge(plan.Fabric, g.Stitches, g.Rows, g.OverCM))
	wide, tall := extent(plan)
	long := 10 * size.LengthCM
	switch {
	case wide <= 0 || tall <= 0:
		return o
	case size.Form == measure.Disc:
		o.StitchMM = 10 * size.WidthCM / wide
	case size.Form == measure.Sheet && (plan.Manner == layout.Rows || plan.Manner == layout.Ripple):
		o.StitchMM = 10 * size.WidthCM / wide
		o.Stretch = stretch(long / o.StitchMM / tall)
	case size.Form == measure.Tube && plan.Manner == layout.Tube: // cut open
		o.StitchMM = 20 * size.WidthCM / wide
		o.Stretch = stretch(long / o.StitchMM / tall)
	}
	return o
}

// stretch is a stretch within reason: a gauge so far from what its stitches are
// made of is not one of theirs.
func stretch(by float64) float64 { return max(.6, min(1.7, by)) }

// extent is how wide and how high a plan lies, w, as a finished piece is measured:
// rows from the foundation to the mean level of the last, since what rises and
// falls fits into the next; rounds and edgings to their outermost tops.
func extent(p *layout.Plan) (wide, tall float64) {
	tops := geom.Empty()
	round := p.Manner == layout.Circle || p.Manner == layout.Polygon
	for i := range p.Poses {
		if pose := &p.Poses[i]; pose.Placed && !pose.Dropped {
			tops = tops.Add(pose.Top)
		}
	}
	rows := p.Fabric.Rows
	for r := 1; r < len(rows); r++ { // an edging
		round = round || rows[r].EndSide != fabric.NoSide || rows[r].Shape != fabric.Flat && p.Manner != layout.Tube
	}
	if round {
		return tops.Width(), tops.Height()
	}
	return p.Box.Width(), meanHeight(p, &rows[len(rows)-1]) - meanHeight(p, &rows[0])
}

// meanHeight is the mean height of the tops of a row, w.
func meanHeight(p *layout.Plan, r *fabric.Row) float64 {
	sum, n := 0., 0.
	for id := r.First; id < r.Last; id++ {
		if pose := &p.Poses[id]; pose.Placed && !pose.Dropped {
			sum, n = sum+pose.Top.Y, n+1
		}
	}
	return sum / max(n, 1)
}

// looks are the looks of yarns by the names that pattern files give them.
var looks = map[string]Look{"solid": Solid, "heather": Heather, "tweed": Tweed, "variegated": Variegated}

func moreColours(y *pattern.Yarn) []color.NRGBA {
	var out []color.NRGBA
	for _, s := range y.Colours {
		if c, err := colour.Parse(s); err == nil {
			out = append(out, c)
		}
	}
	return out
}

// Seen gives yarns as eyes of a vision see them.
func Seen(yarns []Yarn, v colour.Vision) []Yarn {
	out := slices.Clone(yarns)
	for i := range out {
		y := &out[i]
		y.Colour, y.Held = v.Seen(y.Colour), v.Seen(y.Held)
		y.Colours = slices.Clone(y.Colours)
		for j, c := range y.Colours {
			y.Colours[j] = v.Seen(c)
		}
	}
	return out
}
