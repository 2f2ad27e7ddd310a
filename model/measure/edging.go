package measure

import (
	"fmt"
	"math"

	"strandway/model/fabric"
	"strandway/model/trade"
)

// PickUp is how an edging goes along row ends.
type PickUp struct {
	RowEnds  int
	Natural  float64 // stitches that lie flat
	Stitches int     // the nearest that fits the edging's multiple; the same on both sides
	Rule     string  // how to spread them, in words
}

// AlongRows reckons the stitches to pick up along one side of a piece, rounded
// to multiple × n + plus. The other side takes the same number.
func AlongRows(f *fabric.Fabric, multiple, plus int) PickUp {
	p := PickUp{}
	for r := 1; r < len(f.Rows); r++ {
		if f.Rows[r].Shape != fabric.Flat || edgesOf(f, r).any() {
			continue
		}
		if ends, ok := rowEnd(f, &f.Rows[r]); ok {
			p.RowEnds++
			p.Natural += ends
		}
	}
	p.Stitches = Fit(p.Natural, multiple, plus)
	p.Rule = spread(p.Stitches, p.RowEnds)
	return p
}

// Fit is the number of stitches nearest to natural that is multiple × n + plus.
func Fit(natural float64, multiple, plus int) int {
	multiple = max(multiple, 1)
	n := max(0, int(math.Round((natural-float64(plus))/float64(multiple)+1e-9)))
	return multiple*n + plus
}

// AlongSides counts the stitches of row r that stand in the row ends of each side.
func AlongSides(f *fabric.Fabric, r int) (left, right int) {
	row := &f.Rows[r]
	for id := row.First; id < row.Last; id++ {
		if bases := f.Of(id); len(bases) > 0 && bases[0].How == fabric.RowEnd && bases[0].At >= 0 {
			if AtLeft(f, bases[0].At) {
				left++
			} else {
				right++
			}
		}
	}
	return left, right
}

// rowEnd is what one row end takes: by the height of the stitches at the row's
// two ends that stand in the usual row below, so that both sides take the same.
func rowEnd(f *fabric.Fabric, row *fabric.Row) (stitches float64, ok bool) {
	const near = 2 // a turning chain may stand before the stitch at the edge
	sum, n := 0.0, 0.
	at := func(first, step int32) {
		for k := int32(0); k < near; k++ {
			id := first + k*step
			if id < row.First || id >= row.Last {
				return
			}
			if s := &f.Stitches[id]; s.Flags&(fabric.NoLanding|fabric.Chain|fabric.Long) == 0 && s.NBase > 0 {
				sum += trade.Standard().SCInEnd(f.Kinds[s.Kind].Chains)
				n++
				return
			}
		}
	}
	at(row.First, 1)
	at(row.Last-1, -1)
	if n == 0 {
		return 0, false
	}
	return sum / n, true
}

// spread says how so many stitches go into so many row ends: "2 in each of 9
// row ends, 1 in the tenth" as a rule that keeps an even edge.
func spread(stitches, rowEnds int) string {
	if rowEnds == 0 || stitches == 0 {
		return ""
	}
	each, more := stitches/rowEnds, stitches%rowEnds
	switch {
	case more == 0:
		return fmt.Sprintf("%d in each row end", each)
	case each == 0:
		return fmt.Sprintf("1 in %d of the %d row ends, evenly spread", more, rowEnds)
	}
	return fmt.Sprintf("%d in each row end and 1 more in %d of the %d, evenly spread", each, more, rowEnds)
}
