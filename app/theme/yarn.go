package theme

import (
	"image/color"

	"github.com/lucasb-eyer/go-colorful"

	"strandway/model/colour"
)

// Reading contrasts, after the web's accessibility guidelines.
const (
	textContrast = 4.5
	lineContrast = 3.0
)

// YarnInk is a yarn's colour as strokes and letters on the paper take it: the yarn's own
// hue, made darker (on dark paper lighter) until it reads as text does.
func (t Tokens) YarnInk(yarn color.NRGBA) color.NRGBA { return t.against(yarn, textContrast) }

// Casing is the thin outline of a cord in a yarn's colour: as the yarn where it stands out
// from the paper, else its hue made to.
func (t Tokens) Casing(yarn color.NRGBA) color.NRGBA { return t.against(yarn, lineContrast) }

// against moves c's lightness away from the paper until the contrast is reached.
func (t Tokens) against(c color.NRGBA, want float64) color.NRGBA {
	if colour.Contrast(c, t.Paper) >= want {
		return c
	}
	l, a, b := solid(c).OkLab()
	step := -.01
	if t.Dark {
		step = .01
	}
	for l > 0 && l < 1 {
		l += step
		// The hue fades as the lightness nears black or white, where no screen can show it.
		next := colorful.OkLab(l, a, b)
		for k := .95; !next.IsValid() && k > 0; k -= .05 {
			next = colorful.OkLab(l, a*k, b*k)
		}
		moved := nrgba(next.Clamped())
		if colour.Contrast(moved, t.Paper) >= want {
			return moved
		}
	}
	return t.Ink
}

func solid(c color.NRGBA) colorful.Color {
	return colorful.Color{R: float64(c.R) / 255, G: float64(c.G) / 255, B: float64(c.B) / 255}
}

func nrgba(c colorful.Color) color.NRGBA {
	r, g, b := c.RGB255()
	return color.NRGBA{r, g, b, 255}
}
