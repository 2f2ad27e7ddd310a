package colour

import (
	"image/color"
	"math"

	"github.com/lucasb-eyer/go-colorful"
)

// Lit is the light at which a [Ramp] shows the yarn's own colour: the lit
// middle of a strand.
const Lit = 179

// Ramp gives the colours of a yarn from deep shadow to highlight, by light 0
// to 255. Hue is kept; black yarn is lifted and white yarn lowered a little, so
// that both still show their stitches.
func Ramp(yarn color.NRGBA) [256]color.NRGBA {
	// Every fourth colour is worked out, the rest lie between: no eye sees it,
	// and a variegated yarn has 64 ramps.
	const step = 4
	l, a, b := of(yarn).OkLab()
	base := roomForShade(l)
	var ramp [256]color.NRGBA
	prev := shade(base, a, b, 0)
	for i := 0; i < 256; i += step {
		next := shade(base, a, b, float64(i+step)/Lit)
		for j := range step {
			ramp[i+j] = between(prev, next, float64(j)/step)
		}
		prev = next
	}
	return ramp
}

// roomForShade moves the lightness of very dark and very light yarns inward.
func roomForShade(l float64) float64 {
	const dark, light, kept = .27, .90, .35
	switch {
	case l < dark:
		return dark - kept*(dark-l)
	case l > light:
		return light + kept*(l-light)
	}
	return l
}

// shade is the colour of a yarn of OkLab lightness base at k times its normal light.
func shade(base, a, b, k float64) colorful.Color {
	var l, chroma float64
	if k < 1 {
		floor := .22 * base
		if base > .8 {
			floor = .30 * base
		}
		l = floor + (base-floor)*math.Pow(k, .85)
		chroma = .60 + .40*k
	} else {
		top := base + .28*(1-base)
		if base < .35 {
			top = base + .20
		}
		t := min(1, (k-1)/.28)
		l = base + (top-base)*t
		chroma = 1 - .22*t
	}
	return colorful.OkLab(l, a*chroma, b*chroma).Clamped()
}

func between(a, b colorful.Color, t float64) color.NRGBA {
	mix := func(x, y float64) uint8 { return uint8(255*(x+(y-x)*t) + .5) }
	return color.NRGBA{R: mix(a.R, b.R), G: mix(a.G, b.G), B: mix(a.B, b.B), A: 255}
}
