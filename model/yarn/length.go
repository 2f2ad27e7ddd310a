// Package yarn reckons how much yarn a worked fabric takes: metres for each
// yarn, as an expected value with a low and a high, and balls.
//
// The length of a stitch follows from how it is made: every yarn-over is a loop
// round the hook, every insertion pulls a loop up through the fabric. Lengths
// are in mm here, metres in results.
package yarn

import (
	"math"

	"strandway/model/fabric"
	"strandway/model/measure"
	"strandway/model/stitch"
)

// Thickness is the diameter in mm of a yarn of so many grams and metres to the
// ball, taken as a round strand of wool or acrylic at 0.12 g/cm³.
func Thickness(grams, metres float64) float64 {
	const gramsPerCubicMM = .12e-3
	gramsPerMM := grams / metres / 1000
	return math.Sqrt(4 * gramsPerMM / (math.Pi * gramsPerCubicMM))
}

// Tools are the hook and the yarn: diameters in mm.
type Tools struct {
	HookMM, YarnMM float64
	SCRowMM        float64 // height of a row of sc as the gauge has it; 0 where no gauge is known
}

// loop is the yarn in one loop round the hook: c.
func (t Tools) loop() float64 { return math.Pi * (t.HookMM + t.YarnMM) }

// pull is the yarn in one leg pulled up through the fabric: p.
func (t Tools) pull() float64 { return t.HookMM/2 + 2.5*t.YarnMM }

// stretch is how much higher the gauge has a row of sc than hook and yarn alone give, in mm.
func (t Tools) stretch() float64 {
	if t.SCRowMM == 0 {
		return 0
	}
	return t.SCRowMM - measure.SCHeight(t.HookMM, t.YarnMM)*10
}

// Length is yarn in mm split by what scales it: loops round the hook and legs
// through the fabric. A swatch calibrates the two apart.
type Length struct {
	Loops, Legs float64
}

func (l Length) mm() float64 { return l.Loops + l.Legs }

// Add is the yarn of both.
func (l Length) Add(m Length) Length { return Length{l.Loops + m.Loops, l.Legs + m.Legs} }

// Times is the yarn of k such.
func (l Length) Times(k float64) Length { return Length{l.Loops * k, l.Legs * k} }

// chain is the yarn in one chain: three strands as long as its pitch, and the
// bend from one to the next.
func (t Tools) chain() Length { return Length{Loops: 1.3 * t.loop()} }

// OfKind is the yarn in one stitch of a kind worked in the row below: for each
// leg a loop and two lengths through the fabric, a loop for every yarn-over and
// every middle pull-through, and a loop and a tenth for the top. The legs of a
// row that the gauge has higher or lower are longer or shorter by as much.
func (t Tools) OfKind(k *stitch.Kind) Length {
	c, p := t.loop(), t.pull()
	switch plain := plainOf(k); {
	case plain.Name == "ch":
		return t.chain()
	case plain.Name == "slst":
		return Length{Loops: 1.1 * c, Legs: .6 * p}
	}
	legs := float64(max(k.Legs, 1))
	leg := Length{Loops: c * float64(1+k.Wraps+k.Pulls), Legs: 2 * p}
	if k.Lump == stitch.Popcorn { // whole stitches, then one chain to close them
		leg.Loops += 1.1 * c
		return leg.Times(legs).Add(t.chain())
	}
	leg.Legs += 2 * t.stretch() * k.Height / legs
	return leg.Times(legs).Add(Length{Loops: 1.1 * c})
}

func plainOf(k *stitch.Kind) *stitch.Kind {
	if k.Plain != nil {
		return k.Plain
	}
	return k
}

// ofStitch is the yarn in stitch id as it stands in its fabric. rowMM gives the
// height of each row, for stitches that reach below the usual one.
func (t Tools) ofStitch(f *fabric.Fabric, id int32, rowMM []float64) Length {
	s := &f.Stitches[id]
	kind := f.Kinds[s.Kind]
	switch {
	case s.Has(fabric.TurningChain), s.Has(fabric.Picot):
		length := t.chain().Times(float64(max(s.Chains, 1)))
		if s.Has(fabric.Picot) {
			length = length.Add(Length{Loops: 1.1 * t.loop(), Legs: .6 * t.pull()}) // closed by a slip stitch
		}
		return length
	case s.Has(fabric.NoLanding) && s.Chains > 0:
		return t.chain().Times(float64(s.Chains))
	}
	length := t.OfKind(kind)
	for _, b := range f.Of(id) {
		switch b.How {
		case fabric.Space, fabric.Gap, fabric.InRing:
			length.Legs -= 2 * t.YarnMM // round the chain rather than through a stitch
		case fabric.FrontPost, fabric.BackPost:
			length.Legs += 2 * math.Pi * t.YarnMM // both strands go half way round a post twice as thick as the yarn
		}
		length.Legs += 2 * t.short(kind, s.Row, int32(b.Down), rowMM)
	}
	return length
}

// short is by how many mm a stitch of its usual height falls short of the rows
// that it reaches over: a dc worked 2 rows of sc below spans them as it is.
func (t Tools) short(kind *stitch.Kind, row, down int32, rowMM []float64) float64 {
	if down < 2 || int(row) >= len(rowMM) {
		return 0
	}
	reach := 0.0
	for r := max(row-down+1, 1); r <= row; r++ {
		reach += rowMM[r]
	}
	return max(0, reach-kind.Height*(measure.SCHeight(t.HookMM, t.YarnMM)*10+t.stretch()))
}
