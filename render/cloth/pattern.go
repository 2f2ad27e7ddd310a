package cloth

import (
	"image/color"
	"slices"

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
	switch size.Form {
	case measure.Disc:
		o.StitchMM = 10 * size.WidthCM / plan.Box.Width()
	case measure.Sheet:
		o.StitchMM = 10 * size.WidthCM / plan.Box.Width()
		if tall := rise(plan); tall > 0 {
			// A gauge so far from what its stitches are made of is not one of theirs.
			o.Stretch = max(.6, min(1.7, 10*size.LengthCM/o.StitchMM/tall))
		}
	}
	return o
}

// rise is how far the tops of the last row stand above the foundation, w.
func rise(p *layout.Plan) float64 {
	level := func(r *fabric.Row) float64 {
		sum, n := 0., 0.
		for id := r.First; id < r.Last; id++ {
			if pose := &p.Poses[id]; pose.Placed && !pose.Dropped {
				sum, n = sum+pose.Top.Y, n+1
			}
		}
		return sum / max(n, 1)
	}
	rows := p.Fabric.Rows
	return level(&rows[len(rows)-1]) - level(&rows[0])
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
