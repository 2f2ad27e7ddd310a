// Package colour is the colour science of the program: the shades of a lit
// strand of yarn, the ink that stands for a yarn on paper, contrast between
// yarns, and how colours look to eyes with a colour-vision deficiency.
//
// Colours go in and out as color.NRGBA; alpha is kept where it has a meaning
// and is opaque otherwise.
package colour

import (
	"fmt"
	"image/color"
	"strconv"
	"strings"

	"github.com/lucasb-eyer/go-colorful"
)

// Parse reads "#rrggbb".
func Parse(s string) (color.NRGBA, error) {
	v, err := strconv.ParseUint(strings.TrimPrefix(s, "#"), 16, 32)
	if err != nil || len(s) != 7 || s[0] != '#' {
		return color.NRGBA{}, fmt.Errorf("%q is not a colour: write it as #rrggbb", s)
	}
	return color.NRGBA{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), A: 255}, nil
}

// Hex writes a colour as "#rrggbb".
func Hex(c color.NRGBA) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

// Mix is the colour part of the way from a to b, t from 0 to 1, evenly to the eye.
func Mix(a, b color.NRGBA, t float64) color.NRGBA {
	return opaque(of(a).BlendOkLab(of(b), t))
}

// Lab gives CIELAB in daylight: L* from 0 to 100, a* and b* about -128 to 128.
func Lab(c color.NRGBA) (l, a, b float64) {
	l, a, b = of(c).Lab()
	return 100 * l, 100 * a, 100 * b
}

// Lightness is CIELAB L*, 0 black to 100 white.
func Lightness(c color.NRGBA) float64 {
	l, _, _ := Lab(c)
	return l
}

// Grey is the grey of the same lightness: what a colour leaves in a greyscale print.
func Grey(c color.NRGBA) color.NRGBA {
	return opaque(colorful.Lab(Lightness(c)/100, 0, 0))
}

// Contrast is the contrast ratio of two colours by their luminance, from 1 to 21.
func Contrast(a, b color.NRGBA) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + .05) / (min(la, lb) + .05)
}

func luminance(c color.NRGBA) float64 {
	r, g, b := of(c).LinearRgb()
	return .2126*r + .7152*g + .0722*b
}

// Difference is the CIEDE2000 difference: about 1 is just visible, below 10
// two yarns are hard to tell apart in a row of stitches.
func Difference(a, b color.NRGBA) float64 {
	return 100 * of(a).DistanceCIEDE2000(of(b))
}

func of(c color.NRGBA) colorful.Color {
	return colorful.Color{R: float64(c.R) / 255, G: float64(c.G) / 255, B: float64(c.B) / 255}
}

func opaque(c colorful.Color) color.NRGBA {
	r, g, b := c.Clamped().RGB255()
	return color.NRGBA{R: r, G: g, B: b, A: 255}
}
