package colour

import (
	"image/color"

	"github.com/lucasb-eyer/go-colorful"
)

// Vision is a way of seeing colours.
type Vision uint8

const (
	Full         Vision = iota
	Protanopia          // no red cones
	Deuteranopia        // no green cones
	Tritanopia          // no blue cones
	Greyscale           // lightness alone, as in a black-and-white print
)

// Visions are the ways of seeing, full colour vision first.
func Visions() []Vision { return []Vision{Full, Protanopia, Deuteranopia, Tritanopia, Greyscale} }

// String gives the word the program shows.
func (v Vision) String() string {
	return [...]string{"full colour vision", "protanopia", "deuteranopia", "tritanopia", "greyscale"}[v]
}

// matrix takes linear RGB to linear RGB.
type matrix [3][3]float64

// Red and green deficiency: full strength after Machado, Oliveira and Fernandes,
// "A Physiologically-based Model for Simulation of Color Vision Deficiency" (2009).
var (
	withoutRed   = matrix{{.152286, 1.052583, -.204868}, {.114503, .786281, .099216}, {-.003882, -.048116, 1.051998}}
	withoutGreen = matrix{{.367322, .860646, -.227968}, {.280085, .672501, .047413}, {-.011820, .042940, .968881}}
)

// Blue deficiency, of which that model is unsure: after Brettel, Vienot and
// Mollon, "Computerized simulation of color appearance for dichromats" (1997).
// Colours on the two sides of a plane through the greys are projected on two
// half-planes.
var (
	withoutBlueAbove = matrix{{1.01277, .13548, -.14826}, {-.01243, .86812, .14431}, {.07589, .80500, .11911}}
	withoutBlueBelow = matrix{{.93678, .18979, -.12657}, {.06154, .81526, .12320}, {-.37562, 1.12767, .24796}}
	greyPlane        = [3]float64{.03901, -.02788, -.01113}
)

// Seen is how c looks to eyes of the given vision.
func (v Vision) Seen(c color.NRGBA) color.NRGBA {
	r, g, b := of(c).LinearRgb()
	switch v {
	case Greyscale:
		return Grey(c)
	case Protanopia:
		return withoutRed.on(r, g, b)
	case Deuteranopia:
		return withoutGreen.on(r, g, b)
	case Tritanopia:
		if greyPlane[0]*r+greyPlane[1]*g+greyPlane[2]*b >= 0 {
			return withoutBlueAbove.on(r, g, b)
		}
		return withoutBlueBelow.on(r, g, b)
	}
	return c
}

func (m *matrix) on(r, g, b float64) color.NRGBA {
	row := func(k [3]float64) float64 { return max(0, min(1, k[0]*r+k[1]*g+k[2]*b)) }
	return opaque(colorful.LinearRgb(row(m[0]), row(m[1]), row(m[2])))
}
