package measure

import "math"

// Width is how a wished width can be met.
type Width struct {
	N        int     // repeats across
	Stitches int     // multiple × N + edge stitches
	CM       float64 // what that comes to
	OffCM    float64 // CM less the wish
}

// FitWidth finds the number of repeats, at least 1, that comes nearest to a
// wished width: stitches = multiple × n + plus, each columnCM wide.
func FitWidth(wishCM, columnCM float64, multiple, plus int) Width {
	n := max(1, int(math.Round((wishCM/columnCM-float64(plus))/float64(max(multiple, 1)))))
	stitches := multiple*n + plus
	cm := float64(stitches) * columnCM
	return Width{N: n, Stitches: stitches, CM: cm, OffCM: cm - wishCM}
}

// Length is how a wished length can be met.
type Length struct {
	Times int     // how often the repeated rows are worked
	Rows  int     // in all
	CM    float64 // what that comes to
	OffCM float64 // CM less the wish
}

// FitLength finds how often the repeated rows, at least once, are to be worked
// so that the piece comes nearest to a wished length, with the rows before and
// after them worked once. All heights are in cm, a row each.
func FitLength(wishCM float64, before, repeated, after []float64) Length {
	fixed, one := sum(before)+sum(after), sum(repeated)
	times := 1
	if one > 0 {
		times = max(1, int(math.Round((wishCM-fixed)/one+1e-9))) // half way goes up
	}
	cm := fixed + float64(times)*one
	return Length{Times: times, Rows: len(before) + times*len(repeated) + len(after), CM: cm, OffCM: cm - wishCM}
}

func sum(heights []float64) float64 {
	total := 0.0
	for _, h := range heights {
		total += h
	}
	return total
}
