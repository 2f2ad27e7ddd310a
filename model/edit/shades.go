package edit

import (
	"maps"
	"slices"

	"strandway/model"
	"strandway/model/palette"
	"strandway/model/pattern"
)

// Reorder is p with its yarns' shades in another order, in a colourway or, with an
// empty one, as the yarns' own; with these go their look and their sequence of colours.
func Reorder(p *pattern.Pattern, colourway string, order palette.Order) *pattern.Pattern {
	shades := palette.InOrder(model.Shades(p, colourway), order)
	q := *p
	if colourway == "" {
		q.Yarns = slices.Clone(p.Yarns)
		for i, from := range palette.InOrder(p.Yarns, order) {
			y := &q.Yarns[i]
			y.Shade, y.Colour = shades[i].Shade, shades[i].Colour
			y.Look, y.Colours, y.RepeatM = from.Look, from.Colours, from.RepeatM
		}
		return &q
	}
	q.Colourways = slices.Clone(p.Colourways)
	for i := range q.Colourways {
		if q.Colourways[i].Name == colourway {
			q.Colourways[i].Shades = model.ByLetter(p, shades)
		}
	}
	return &q
}

// skeinM is the length round a skein, m, after which the colours of a yarn that
// was dyed in one come again.
const skeinM = 1.5

// Sequence is p with a yarn that changes its colour along its length, as its own
// and as it is seen in a colourway.
func Sequence(p *pattern.Pattern, colourway, letter string, colours []string) *pattern.Pattern {
	q := *p
	q.Yarns = slices.Clone(p.Yarns)
	for i := range q.Yarns {
		if y := &q.Yarns[i]; y.Letter == letter && len(colours) > 0 {
			y.Look, y.Colours, y.Colour = "variegated", slices.Clone(colours), colours[0]
			if y.RepeatM == 0 {
				y.RepeatM = skeinM
			}
		}
	}
	q.Colourways = slices.Clone(p.Colourways)
	for i := range q.Colourways {
		if c := &q.Colourways[i]; c.Name == colourway && len(colours) > 0 {
			// A colourway that names another colour covers the sequence.
			c.Shades = maps.Clone(c.Shades)
			if s, ok := c.Shades[letter]; ok {
				s.Colour = colours[0]
				c.Shades[letter] = s
			}
		}
	}
	return &q
}
