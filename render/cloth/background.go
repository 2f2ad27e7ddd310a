package cloth

import (
	"image/color"
	"math"
	"sync"
)

// Background is what a cloth lies on and the light it lies in. The zero
// Background is paper in daylight.
type Background struct {
	Ground Ground
	Light  Light
}

// Ground is what a cloth lies on.
type Ground uint8

const (
	Paper Ground = iota
	White
	Wood
	Linen
	Transparent
)

// Light is the light on a cloth.
type Light uint8

const (
	Daylight Light = iota
	Warm           // a lamp in the evening
)

// tint is the factor of each channel, 1/256.
type tint struct{ r, g, b uint32 }

func (l Light) tint() tint {
	if l == Warm {
		return tint{256, 244, 219}
	}
	return tint{256, 256, 256}
}

func (t tint) on(c color.NRGBA) color.NRGBA {
	return color.NRGBA{R: uint8(uint32(c.R) * t.r >> 8), G: uint8(uint32(c.G) * t.g >> 8), B: uint8(uint32(c.B) * t.b >> 8), A: c.A}
}

// ground is a square of ground that is laid out over and over.
type ground [groundSize * groundSize]color.NRGBA

const groundSize = 512 // pixels

func (g *ground) at(x, y int) color.NRGBA {
	return g[y&(groundSize-1)<<9|x&(groundSize-1)]
}

// ground gives the ground in its light, nil when it is transparent.
func (b Background) ground() *ground {
	make := groundsByDay[min(int(b.Ground), len(groundsByDay)-1)]
	if make == nil {
		return nil
	}
	g := make()
	if b.Light == Daylight {
		return g
	}
	lit := *g
	for i, c := range lit {
		lit[i] = b.Light.tint().on(c)
	}
	return &lit
}

var groundsByDay = [...]func() *ground{
	Paper:       sync.OnceValue(func() *ground { return woven(paperAt) }),
	White:       sync.OnceValue(func() *ground { return woven(whiteAt) }),
	Wood:        sync.OnceValue(func() *ground { return woven(woodAt) }),
	Linen:       sync.OnceValue(func() *ground { return woven(linenAt) }),
	Transparent: nil,
}

// woven makes a ground from the colour at each of its pixels.
func woven(at func(x, y float64) color.NRGBA) *ground {
	g := new(ground)
	for i := range g {
		g[i] = at(float64(i%groundSize), float64(i/groundSize))
	}
	return g
}

func whiteAt(x, y float64) color.NRGBA { return color.NRGBA{255, 255, 255, 255} }

func paperAt(x, y float64) color.NRGBA {
	return grey(color.NRGBA{236, 230, 220, 255}, 1+.012*(noise(x/2, y/2, 3)-.5))
}

// woodAt is pale boards, 128 pixels wide, with their grain along y.
func woodAt(x, y float64) color.NRGBA {
	board := math.Floor(x / 128)
	in := x - 128*board
	seed := uint32(board)*371 + 11
	// Grain is stretched noise, folded into rings; it repeats over the ground's height.
	sway := 6 * math.Sin(2*math.Pi*(y/groundSize+board*.37))
	rings := noise((in+sway)/11, 8*math.Abs(y/groundSize-.5), seed)
	pores := noise(x/1.3, 40*math.Abs(y/groundSize-.5), seed+5)
	k := .93 + .10*rings + .05*pores + .04*(unevenness(hash(seed, 1)))
	if in < 1.5 {
		k *= .72
	}
	return grey(color.NRGBA{205, 178, 146, 255}, k)
}

// linenAt is plain weave, threads 4 pixels wide and of uneven thickness.
func linenAt(x, y float64) color.NRGBA {
	const thread = 4
	col, row := math.Floor(x/thread), math.Floor(y/thread)
	fx, fy := (x+.5)/thread-col-.5, (y+.5)/thread-row-.5
	across := fx
	seed := uint32(col) + 1
	if int(col+row)%2 == 1 { // the weft lies on top
		across = fy
		seed = uint32(row) + 1000
	}
	k := .86 + .12*math.Sqrt(max(0, 1-3.2*across*across)) + .05*unevenness(hash(seed, 7)) + .04*(noise(x/3, y/3, 9)-.5)
	return grey(color.NRGBA{222, 212, 194, 255}, k)
}

// grey lightens or darkens a colour by a factor.
func grey(c color.NRGBA, k float64) color.NRGBA {
	f := func(v uint8) uint8 { return uint8(max(0, min(255, float64(v)*k))) }
	return color.NRGBA{R: f(c.R), G: f(c.G), B: f(c.B), A: 255}
}
