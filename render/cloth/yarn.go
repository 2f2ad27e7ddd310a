package cloth

import (
	"image/color"
	"math"

	"strandway/model/colour"
)

// Yarn is what a yarn looks like.
type Yarn struct {
	Look    Look
	Colour  color.NRGBA
	Colours []color.NRGBA // heather: the fibres mixed in; tweed: the neps; variegated: the colours in turn
	RepeatM float64       // length of one turn of a variegated yarn's colours, metres
	Held    color.NRGBA   // of the second strand, when Shape.Strands is 2
	Shape   Shape
}

// Look is the manner in which a yarn carries its colours.
type Look uint8

const (
	Solid Look = iota
	Heather
	Tweed
	Variegated // and self-striping: colours follow one another along the yarn
)

// tableRows is how many rows of the colour table a yarn of each look takes.
var tableRows = [...]int{Solid: 1, Heather: 12, Tweed: 4, Variegated: 64}

func (l Look) rows() int { return tableRows[min(int(l), len(tableRows)-1)] }

// How much of a fibre's colour shows in the 12 shades of a heather.
var heatherShares = [12]float64{0, .15, .45, .10, .70, .05, .30, 0, .55, .20, 0, .35}

// shades gives the colours of the yarn's rows in the table of a cloth made with the look l.
func (y Yarn) shades(l Look) []color.NRGBA {
	out := make([]color.NRGBA, l.rows())
	for i := range out {
		out[i] = y.Colour
	}
	if y.Look != l || len(y.Colours) == 0 {
		return out
	}
	n := len(y.Colours)
	switch l {
	case Heather:
		for i := range out {
			out[i] = colour.Mix(y.Colour, y.Colours[i%n], heatherShares[i])
		}
	case Tweed:
		for i := 1; i < len(out); i++ {
			out[i] = y.Colours[(i-1)%n]
		}
	case Variegated:
		for i := range out {
			turn, part := math.Modf(float64(i) / float64(len(out)) * float64(n))
			// A dyer's colours are long, the passage between them short.
			out[i] = colour.Mix(y.Colours[int(turn)], y.Colours[(int(turn)+1)%n], max(0, (part-.7)/.3))
		}
	}
	return out
}

// look is what composing needs to know of a yarn.
type look struct {
	look   Look
	first  uint16  // its first row in the colour table
	held   uint16  // the row of a second strand, 0 for none
	repeat float64 // w
}

// looksOf gives the looks of yarns, whose rows follow one another in the colour
// table; mm is the width of one single crochet.
func looksOf(yarns []Yarn, mm float64) []look {
	next := uint16(groundRow + 1)
	out := make([]look, len(yarns))
	for i, y := range yarns {
		out[i] = look{look: y.Look, first: next, repeat: max(1, y.RepeatM*1000/mm)}
		next += uint16(y.Look.rows())
		if y.Shape.Strands > 1 {
			out[i].held = next
			next++
		}
	}
	return out
}

// rowsOf gives the colours of the yarn's rows in the table of a cloth made with the look l.
func (y Yarn) rowsOf(l look) []color.NRGBA {
	shades := y.shades(l.look)
	if l.held == 0 {
		return shades
	}
	if y.Shape.Strands < 2 {
		return append(shades, y.Colour)
	}
	return append(shades, y.Held)
}

// painter chooses the rows of the colour table for the samples of one instance.
type painter struct {
	look    look
	plain   bool    // one colour all along
	dim     uint16  // light as a factor in 1/256: no two stitches catch it alike
	chance  uint32  // which neps show
	from    float64 // place in the colour repeat, in table rows
	advance float64 // table rows per step of texel.along
}

func (l look) painter(in *instance) painter {
	h := hash(in.seed, 99)
	p := painter{look: l, plain: l.look == Solid && l.held == 0, dim: uint16(241 + h>>12&15), chance: h}
	if l.look == Variegated {
		rows := float64(l.look.rows())
		p.from = math.Mod(float64(in.from)/l.repeat, 1) * rows
		p.advance = float64(in.length) / l.repeat * rows / 255
	}
	return p
}

// row is the row of the colour table for a texel.
func (p *painter) row(t texel) uint16 {
	if p.plain {
		return p.look.first
	}
	return p.mixed(t)
}

func (p *painter) mixed(t texel) uint16 {
	if p.look.held != 0 && t.fibre&1 == 1 {
		return p.look.held
	}
	switch p.look.look {
	case Heather:
		return p.look.first + uint16(t.fibre>>4)*12>>4
	case Tweed:
		// An eighth of a sprite's neps show in one stitch, others in the next.
		if n := uint32(t.fibre & 15); n != 0 && p.chance*(2*n+1)>>29 == 0 {
			return p.look.first + 1 + (uint16(n)+uint16(p.chance))%3
		}
	case Variegated:
		return p.look.first + uint16(p.from+p.advance*float64(t.along))%64
	}
	return p.look.first
}
