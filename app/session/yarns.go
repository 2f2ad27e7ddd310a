package session

import (
	"image/color"

	"strandway/model/colour"
	"strandway/model/pattern"
	"strandway/render/cloth"
)

// ClothYarns are the yarns of the piece as cloth is made of them, in a colourway.
func (m *Made) ClothYarns(colourway string) []cloth.Yarn {
	colours := m.Work.YarnColours(m.piece, colourway)
	yarns := make([]cloth.Yarn, len(colours))
	for i, c := range colours {
		yarns[i].Colour = c
		if y, ok := m.Work.YarnOf(m.piece, i); ok {
			yarns[i].Look, yarns[i].RepeatM = looks[y.Look], y.RepeatM
			yarns[i].Colours = moreColours(y)
		}
	}
	return yarns
}

var looks = map[string]cloth.Look{
	"heather":    cloth.Heather,
	"tweed":      cloth.Tweed,
	"variegated": cloth.Variegated,
}

func moreColours(y *pattern.Yarn) []color.NRGBA {
	var out []color.NRGBA
	for _, s := range y.Colours {
		if c, err := colour.Parse(s); err == nil {
			out = append(out, c)
		}
	}
	return out
}
