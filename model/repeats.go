package model

import (
	"math"
	"regexp"
	"strconv"

	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/syntax"
	"strandway/model/work"
)

// fewest is the least number of repeats to show a pattern with when nothing
// says how wide it is to be: with three, one repeat has a neighbour on either side.
const fewest = 3

// repeats is the number of repeats to work: the size's own, else as many as its
// width takes, else the smallest that comes out.
func repeats(lib *stitch.Library, p *pattern.Pattern, tree *syntax.Tree, proof work.Proof, o work.Options) int {
	size := sizeOf(p, o.Size)
	if size.Repeats > 0 {
		return size.Repeats
	}
	if size.WidthCM > 0 && p.Gauge.Stitches > 0 && proof.Multiple > 0 {
		stitches := size.WidthCM * p.Gauge.Stitches / p.Gauge.OverCM
		return max(1, int(math.Round((stitches-float64(proof.Plus))/float64(proof.Multiple))))
	}
	const tries = 6
	for o.N = fewest; o.N < fewest+tries; o.N++ {
		if _, findings := work.Work(lib, tree, o); findings.Faults() == 0 {
			return o.N
		}
	}
	return fewest
}

var lengthForm = regexp.MustCompile(`(\d+(?:\.\d+)?)\s*(cm|mm|in\b|ins\b|inch|inches|")`)

// rowsForLength tells how many rows a length takes ("20 cm", "8 in"): by the
// row gauge; a length without a figure ("desired length") is the size's own.
// It gives 0 where it cannot tell.
func rowsForLength(g pattern.Gauge, size pattern.Size) func(string) int {
	return func(text string) int {
		cm := size.LengthCM
		if m := lengthForm.FindStringSubmatch(text); m != nil {
			cm, _ = strconv.ParseFloat(m[1], 64)
			switch m[2] {
			case "cm":
			case "mm":
				cm /= 10
			default:
				cm *= 2.54
			}
		}
		if g.Rows == 0 {
			return 0
		}
		return int(math.Round(cm * g.Rows / g.OverCM))
	}
}
