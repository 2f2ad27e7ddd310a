package colour

import (
	"image/color"

	"github.com/lucasb-eyer/go-colorful"
)

// Lightest CIELAB lightness that still reads as a line on white paper, and the
// darkest that reads on a dark screen.
const (
	lightestInk = .58
	darkestGlow = .62
)

// Ink is the colour in which a yarn's stitches are drawn on white paper: its
// hue, dark enough to read. Capped says that the yarn was too light and had to
// be darkened.
func Ink(yarn color.NRGBA) (ink color.NRGBA, capped bool) {
	h, c, l := of(yarn).Hcl()
	if l <= lightestInk {
		return yarn, false
	}
	return inGamut(h, min(c*1.15, .75), lightestInk), true
}

// InkOnDark is the colour in which a yarn's stitches are drawn on a dark screen.
func InkOnDark(yarn color.NRGBA) (ink color.NRGBA, lifted bool) {
	h, c, l := of(yarn).Hcl()
	if l >= darkestGlow {
		return yarn, false
	}
	return inGamut(h, c, darkestGlow), true
}

// inGamut lowers the chroma until the screen can show the colour; hue and
// lightness stay.
func inGamut(h, c, l float64) color.NRGBA {
	o := colorful.Hcl(h, c, l)
	for !o.IsValid() && c > .005 {
		c *= .97
		o = colorful.Hcl(h, c, l)
	}
	return opaque(o)
}
