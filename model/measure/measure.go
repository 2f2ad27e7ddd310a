// Package measure gives the true size of worked fabric: the height of each row
// and the width of each row in cm, from the gauge.
//
// It reads a worked fabric and never changes it.
package measure

import (
	"math"

	"strandway/model/fabric"
	"strandway/model/stitch"
)

// Scale says how large stitches come out.
type Scale struct {
	ColumnCM float64 // the width of one stitch
	SCCM     float64 // the height of a row of single crochet; other heights follow by the library's measured ratios
	Guess    bool    // from yarn and hook, not from a swatch: take it as ±15 %
}

// FromGauge gives the scale at which the rows of f come out at the gauge:
// stitches and rows to overCM, counted in f's own pattern stitch, edgings not.
// The gauge's stitches are counted as the rows offer them, chains included.
func FromGauge(f *fabric.Fabric, stitches, rows, overCM float64) Scale {
	sum, n := 0.0, 0.0
	for r, h := range Heights(f) {
		if r > 0 && h > 0 && !edgesOf(f, r).any() {
			sum += h
			n++
		}
	}
	if n == 0 {
		sum, n = 1, 1
	}
	return Scale{ColumnCM: overCM / stitches, SCCM: overCM / rows / (sum / n)}
}

// FromHook guesses the scale from the diameters of hook and yarn in mm: a
// single crochet is .99 of their sum wide and .88 of that high, the ratios that
// published gauges of plain sc come to.
func FromHook(hookMM, yarnMM float64) Scale {
	return Scale{ColumnCM: .99 * (hookMM + yarnMM) / 10, SCCM: SCHeight(hookMM, yarnMM), Guess: true}
}

// SCHeight is the height in cm of a row of single crochet that hook and yarn
// give, from their diameters in mm.
func SCHeight(hookMM, yarnMM float64) float64 { return .88 * .99 * (hookMM + yarnMM) / 10 }

// Heights gives the height of each row, one row of sc = 1. A row is as high as
// its stitches are on average; stitches worked over earlier rows add nothing
// of their own, and chains only where a row has nothing else. The foundation
// has none.
func Heights(f *fabric.Fabric) []float64 {
	heights := make([]float64, len(f.Rows))
	for r := 1; r < len(f.Rows); r++ {
		heights[r] = rowHeight(f, &f.Rows[r])
	}
	return heights
}

func rowHeight(f *fabric.Fabric, row *fabric.Row) float64 {
	sum, n, long := 0.0, 0, 0.0
	for id := row.First; id < row.Last; id++ {
		s := &f.Stitches[id]
		if s.Flags&(fabric.NoLanding|fabric.Chain|fabric.Surface) != 0 || s.NBase == 0 {
			continue
		}
		h := height(f.Kinds[s.Kind])
		if s.Has(fabric.Long) {
			long = max(long, h-math.Max(0, float64(f.Of(id)[0].Down-1)))
			continue
		}
		switch f.Of(id)[0].How {
		case fabric.Space, fabric.Gap:
			h -= spaceSinks * min(1, h)
		case fabric.FrontLoop, fabric.BackLoop:
			h += loopRises
		}
		sum += h
		n++
	}
	switch {
	case n > 0:
		return sum / float64(n)
	case long > 0:
		return long
	case row.Last > row.First:
		return chainHeight
	}
	return 0
}

// A stitch worked in a chain-space pulls the chain up, and so adds less height
// than one worked in a top; one in a single loop stands on the loop that is
// left, and adds more. In units of a row of sc.
const (
	spaceSinks  = .25
	loopRises   = .1
	chainHeight = .5
)

// height is a kind's measured height, held to what a row can show of it: a
// cluster or bobble bulges and does not raise the row above its plain stitch.
func height(k *stitch.Kind) float64 {
	if k.Plain != nil && k.Lump != stitch.NoLump && k.Plain.Height > 0 {
		return k.Plain.Height
	}
	return k.Height
}
