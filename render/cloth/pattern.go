package cloth

import (
	"image/color"
	"slices"

	"strandway/model"
	"strandway/model/colour"
	"strandway/model/pattern"
)

// YarnsOf gives the yarns of a piece of a worked pattern as its cloth shows
// them, in a colourway; "" is the yarns' own colours.
func YarnsOf(w *model.Worked, piece int, colourway string) []Yarn {
	colours := w.YarnColours(piece, colourway)
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
		if held, ok := w.ColourOf(y.HeldWith, colourway); ok {
			out[i].Shape.Strands, out[i].Held = 2, held
		}
		if changed := colour.Hex(c) != y.Colour; changed && y.Look == "variegated" {
			continue // a colourway names one colour a yarn
		}
		out[i].Look, out[i].RepeatM = looks[y.Look], y.RepeatM
		out[i].Colours = moreColours(y)
	}
	return out
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
