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

// String gives the word the program shows.
func (v Vision) String() string {
	return [...]string{"full colour vision", "protanopia", "deuteranopia", "tritanopia", "greyscale"}[v]
}

// Matrices over linear RGB for full deficiency, after Machado, Oliveira and
// Fernandes, "A Physiologically-based Model for Simulation of Color Vision
// Deficiency" (2009), severity 1.0.
var deficiency = map[Vision][3][3]float64{
	Protanopia:   {{.152286, 1.052583, -.204868}, {.114503, .786281, .099216}, {-.003882, -.048116, 1.051998}},
	Deuteranopia: {{.367322, .860646, -.227968}, {.280085, .672501, .047413}, {-.011820, .042940, .968881}},
	Tritanopia:   {{1.255528, -.076749, -.178779}, {-.078411, .930809, .147602}, {.004733, .691367, .303900}},
}

// Seen is how c looks to eyes of the given vision.
func (v Vision) Seen(c color.NRGBA) color.NRGBA {
	if v == Greyscale {
		return Grey(c)
	}
	m, ok := deficiency[v]
	if !ok {
		return c
	}
	r, g, b := of(c).LinearRgb()
	row := func(k [3]float64) float64 { return max(0, min(1, k[0]*r+k[1]*g+k[2]*b)) }
	return opaque(colorful.LinearRgb(row(m[0]), row(m[1]), row(m[2])))
}
