package model

import (
	"fmt"
	"image/color"

	"strandway/model/colour"
	"strandway/model/palette"
	"strandway/model/pattern"
)

// Shades are the shades of a pattern's yarns in a colourway, in the order of its
// yarns; with "" they are the yarns' own.
func Shades(p *pattern.Pattern, colourway string) []pattern.Shade {
	way, _ := p.Colourway(colourway)
	out := make([]pattern.Shade, len(p.Yarns))
	for i, y := range p.Yarns {
		out[i] = pattern.Shade{Shade: y.Shade, Colour: y.Colour}
		if way == nil {
			continue
		}
		if s := way.Shades[y.Letter]; s.Colour != "" {
			out[i] = s
		} else if s.Shade != "" {
			out[i].Shade = s.Shade
		}
	}
	return out
}

// ByLetter gives shades in the order of a pattern's yarns as a colourway has them.
func ByLetter(p *pattern.Pattern, shades []pattern.Shade) map[string]pattern.Shade {
	out := make(map[string]pattern.Shade, len(shades))
	for i, s := range shades {
		out[p.Yarns[i].Letter] = s
	}
	return out
}

// Suggest suggests shades for the pattern's yarns, in their order, beginning with
// those of a colourway. What touches in the piece comes farthest apart.
func (w *Worked) Suggest(piece int, colourway string, wish palette.Wish) ([]pattern.Shade, error) {
	shades := Shades(w.Pattern, colourway)
	was := make([]color.NRGBA, len(shades))
	for i, s := range shades {
		c, err := colour.Parse(s.Colour)
		if err != nil {
			return nil, fmt.Errorf(`yarn %s has no colour to begin with: write colour = "#rrggbb" for it`, w.Pattern.Yarns[i].Letter)
		}
		was[i] = c
	}
	wish.Pairs = w.Touching(piece)
	found, err := palette.Suggest(was, wish)
	if err != nil {
		return nil, err
	}
	for i, f := range found {
		if f.Colour != was[i] || f.Name != "" {
			shades[i] = pattern.Shade{Shade: f.Name, Colour: colour.Hex(f.Colour)}
		}
	}
	return shades, nil
}

// ColoursIn gives the colours of a piece's yarns, by the index the fabric gives
// them, when the pattern's yarns have these shades.
func (w *Worked) ColoursIn(piece int, shades []pattern.Shade) []color.NRGBA {
	out := w.YarnColours(piece, "")
	for i := range out {
		if at := w.indexOf(piece, i); at >= 0 && at < len(shades) {
			if c, err := colour.Parse(shades[at].Colour); err == nil {
				out[i] = c
			}
		}
	}
	return out
}
