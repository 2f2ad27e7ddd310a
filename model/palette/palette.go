// Package palette is about the colours of yarns that lie side by side: whether
// they can be told apart, which colours would go together, and which colours a
// photograph holds.
//
// It works on colours alone and on which yarns touch in a fabric; it names no
// yarns, knows no pattern file and draws nothing.
package palette

import (
	"image/color"
	"math"
	"slices"

	"strandway/model/colour"
	"strandway/model/fabric"
)

// Pair is two yarns by their index in the fabric, the lesser first.
type Pair struct{ A, B uint8 }

// Touching gives the pairs of yarns that touch in a fabric, in order: a stitch
// with what it stands in, and neighbours in a row.
func Touching(f *fabric.Fabric) []Pair {
	var met [256][256]bool
	var out []Pair
	meet := func(a, b uint8) {
		a, b = min(a, b), max(a, b)
		if a != b && !met[a][b] {
			met[a][b] = true
			out = append(out, Pair{a, b})
		}
	}
	for i := range f.Stitches {
		s := &f.Stitches[i]
		for _, b := range f.Of(int32(i)) {
			if b.At >= 0 {
				meet(s.Yarn, f.Stitches[b.At].Yarn)
			}
		}
		if i > 0 && f.Stitches[i-1].Row == s.Row {
			meet(s.Yarn, f.Stitches[i-1].Yarn)
		}
	}
	slices.SortFunc(out, func(p, q Pair) int { return (int(p.A)-int(q.A))<<8 + int(p.B) - int(q.B) })
	return out
}

// Apart is how far two colours are from one another to an eye.
type Apart struct {
	Lightness  float64 // difference of CIELAB L*
	Difference float64 // CIEDE2000
}

// Below these, stitches of two yarns side by side cannot be told apart. In
// greyscale lightness has to do alone.
const (
	MergingDifference = 10 // CIEDE2000
	MergingLightness  = 7  // CIELAB L*
)

// Compare compares two colours as an eye of the given vision sees them.
func Compare(a, b color.NRGBA, v colour.Vision) Apart {
	a, b = v.Seen(a), v.Seen(b)
	return Apart{
		Lightness:  math.Abs(colour.Lightness(a) - colour.Lightness(b)),
		Difference: colour.Difference(a, b),
	}
}

// Merging gives the visions in which stitches of two yarns run into one
// another, full colour vision first.
func Merging(a, b color.NRGBA) []colour.Vision {
	var out []colour.Vision
	for _, v := range colour.Visions() {
		if apart := Compare(a, b, v); v == colour.Greyscale && apart.Lightness < MergingLightness ||
			v != colour.Greyscale && apart.Difference < MergingDifference {
			out = append(out, v)
		}
	}
	return out
}
