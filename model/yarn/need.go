package yarn

import (
	"math"

	"strandway/model/fabric"
)

// TailMM is the yarn left at each end to weave in.
const TailMM = 150

// Ask is what a requirement is reckoned from.
type Ask struct {
	Tools   map[string]Tools   // by yarn letter
	RowCM   []float64          // height of each row of the fabric
	FloatCM map[string]float64 // carried up the edges, by yarn letter
	Ends    map[string]int     // ends to weave in, by yarn letter
	Factors Factors
}

// Factors scale the reckoned lengths to one maker's hands; the zero value
// leaves them as they are.
type Factors struct {
	Loops, Legs float64
	Calibrated  bool // from a weighed swatch: what is left is a few per cent
}

func (k Factors) apply(l Length) float64 {
	if k.Loops == 0 || k.Legs == 0 {
		return l.mm()
	}
	return l.Loops*k.Loops + l.Legs*k.Legs
}

// Margin is how far a reckoned length may be off, as a share: about an eighth
// by yarn and hook alone, a twentieth with a weighed swatch.
func (k Factors) Margin() float64 {
	if k.Calibrated {
		return .05
	}
	return .125
}

// Need is the requirement of one yarn in metres.
type Need struct {
	Letter          string
	Metres          float64 // expected
	Low, High       float64
	StitchM, FloatM float64 // of the expected: in stitches, in floats
	TailM           float64 // in ends to weave in
}

// Of reckons what each yarn of the fabric takes, in the order of f.Yarns.
func Of(f *fabric.Fabric, a Ask) []Need {
	rowMM := make([]float64, len(a.RowCM))
	for r, cm := range a.RowCM {
		rowMM[r] = cm * 10
	}
	sums := make([]Length, len(f.Yarns))
	cache := map[plainKey]Length{}
	for id := range f.Stitches {
		s := &f.Stitches[id]
		t := a.Tools[f.Yarns[s.Yarn]]
		var length Length
		if key, plain := keyOf(f, int32(id)); plain {
			var known bool
			if length, known = cache[key]; !known {
				length = t.ofStitch(f, int32(id), rowMM)
				cache[key] = length
			}
		} else {
			length = t.ofStitch(f, int32(id), rowMM)
		}
		sums[s.Yarn] = sums[s.Yarn].add(length)
	}
	needs := make([]Need, len(f.Yarns))
	for y, letter := range f.Yarns {
		n := Need{Letter: letter, StitchM: a.Factors.apply(sums[y]) / 1000}
		n.FloatM = 1.1 * a.FloatCM[letter] / 100 // a float is a tenth longer than the height it climbs
		n.TailM = float64(a.Ends[letter]) * TailMM / 1000
		n.Metres = n.StitchM + n.FloatM + n.TailM
		off := n.StitchM * a.Factors.Margin()
		n.Low, n.High = n.Metres-off, n.Metres+off
		needs[y] = n
	}
	return needs
}

// plainKey stands for all stitches that take the same yarn: one kind, in one
// sort of place, in the row below.
type plainKey struct {
	kind  uint16
	yarn  uint8
	flags fabric.Flags
	chain uint8
	how   fabric.How
	nBase uint8
}

// keyOf gives the key of stitch id; ok is false for stitches that reach below
// the usual row or stand in places of several sorts.
func keyOf(f *fabric.Fabric, id int32) (plainKey, bool) {
	s := &f.Stitches[id]
	key := plainKey{kind: s.Kind, yarn: s.Yarn, flags: s.Flags &^ fabric.Corner, chain: s.Chains, nBase: s.NBase}
	for i, b := range f.Of(id) {
		if b.Down > 1 || i > 0 && b.How != key.how {
			return key, false
		}
		key.how = b.How
	}
	return key, true
}

// Balls is how many balls of a length in metres hold the need with a margin,
// both rounded up. margin is a share: .1 for a tenth more than expected.
func Balls(metres, margin, ballM float64) int {
	if ballM <= 0 {
		return 0
	}
	return int(math.Ceil(metres*(1+margin)/ballM - 1e-9))
}

// Calibrate finds the one factor by which a weighed swatch differs from what
// is reckoned for it. weighedM is the metres that its grams come to, tails
// subtracted.
func Calibrate(reckoned Length, weighedM float64) Factors {
	k := weighedM * 1000 / reckoned.mm()
	return Factors{Loops: k, Legs: k, Calibrated: true}
}

// Weighed is one weighed swatch: what was reckoned for it and what it took.
type Weighed struct {
	Reckoned Length
	Metres   float64
}

// CalibrateTwo finds the factors for loops and for legs that fit several
// weighed swatches best, by least squares. Each is held to .7 to 1.4: beyond
// that the swatches are too alike, or one was weighed wrongly.
func CalibrateTwo(swatches []Weighed) Factors {
	var aa, ab, bb, al, bl float64
	for _, s := range swatches {
		a, b, l := s.Reckoned.Loops, s.Reckoned.Legs, s.Metres*1000
		aa, ab, bb, al, bl = aa+a*a, ab+a*b, bb+b*b, al+a*l, bl+b*l
	}
	det := aa*bb - ab*ab
	if det < 1e-9*aa*bb {
		return Calibrate(swatches[0].Reckoned, swatches[0].Metres)
	}
	hold := func(k float64) float64 { return min(max(k, .7), 1.4) }
	return Factors{Loops: hold((al*bb - bl*ab) / det), Legs: hold((bl*aa - al*ab) / det), Calibrated: true}
}
