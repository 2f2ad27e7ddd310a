package chart

import (
	"image/color"

	"strandway/model/colour"
)

// palette is the colours of a chart.
type palette struct {
	paper, text, faint color.NRGBA
	tint, strong       color.NRGBA // under every second row, and under rows to be seen
	inks               []yarnInk   // by yarn index
}

// yarnInk is how one yarn is drawn: the colour of its lines and, for a yarn
// too pale for its paper, the true colour that its ovals are filled with.
type yarnInk struct {
	line color.NRGBA
	fill color.NRGBA
}

var (
	white    = color.NRGBA{0xff, 0xff, 0xff, 0xff}
	darkness = color.NRGBA{0x17, 0x1b, 0x1f, 0xff}
)

func newPalette(o Options, yarns int) palette {
	p := palette{paper: white, text: color.NRGBA{0x22, 0x26, 0x2a, 0xff}, faint: color.NRGBA{0x5a, 0x5a, 0x5a, 0xff},
		tint: color.NRGBA{0xf0, 0xf2, 0xf3, 0xff}, strong: color.NRGBA{0xff, 0xef, 0xb8, 0xff}}
	legible := colour.Ink
	if o.Dark {
		p = palette{paper: darkness, text: color.NRGBA{0xe6, 0xe4, 0xdf, 0xff}, faint: color.NRGBA{0xa4, 0xa4, 0xa0, 0xff},
			tint: color.NRGBA{0x20, 0x26, 0x2b, 0xff}, strong: color.NRGBA{0x4a, 0x43, 0x1f, 0xff}}
		legible = colour.InkOnDark
	}
	if o.Monochrome && !o.Dark {
		p.strong = color.NRGBA{0xd9, 0xd9, 0xd9, 0xff}
	}
	p.inks = make([]yarnInk, max(yarns, 1))
	for i := range p.inks {
		ink := yarnInk{line: p.text, fill: p.paper}
		if !o.Monochrome && i < len(o.Inks) {
			var moved bool
			if ink.line, moved = legible(o.Inks[i]); moved {
				ink.fill = o.Inks[i]
			}
		}
		p.inks[i] = ink
	}
	return p
}

// yarn is the ink of a yarn index.
func (p *palette) yarn(i uint8) yarnInk { return p.inks[min(int(i), len(p.inks)-1)] }
