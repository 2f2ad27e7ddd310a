package yarn

import "strandway/model/fabric"

// Ask is what a requirement is reckoned from.
type Ask struct {
	Tools   map[string]Tools   // by yarn letter
	RowCM   []float64          // height of each row of the fabric
	FloatCM map[string]float64 // carried up the edges and behind stitches, by yarn letter
	Ends    map[string]int     // ends to weave in, by yarn letter
	TailCM  float64            // left at each end
	Slack   float64            // length of a carried strand over the height it climbs
	Factors map[string]Factors // by yarn letter; none where nothing was weighed
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
	needs := make([]Need, len(f.Yarns))
	for y, length := range Lengths(f, a) {
		letter := f.Yarns[y]
		n := Need{Letter: letter, StitchM: a.Factors[letter].apply(length) / 1000}
		n.FloatM = a.Slack * a.FloatCM[letter] / 100
		n.TailM = float64(a.Ends[letter]) * a.TailCM / 100
		n.Metres = n.StitchM + n.FloatM + n.TailM
		off := n.StitchM * a.Factors[letter].Margin()
		n.Low, n.High = n.Metres-off, n.Metres+off
		needs[y] = n
	}
	return needs
}

// Lengths reckons the yarn in the stitches alone, uncalibrated, for each yarn of the fabric.
func Lengths(f *fabric.Fabric, a Ask) []Length {
	sums := make([]Length, len(f.Yarns))
	each(f, a, func(_, yarn int, l Length) { sums[yarn] = sums[yarn].Add(l) })
	return sums
}

// InRows reckons the metres that each row takes of one yarn, by its index in f.Yarns.
func InRows(f *fabric.Fabric, a Ask, of int) []float64 {
	rows := make([]float64, len(f.Rows))
	factors := a.Factors[f.Yarns[of]]
	each(f, a, func(row, yarn int, l Length) {
		if yarn == of {
			rows[row] += factors.apply(l) / 1000
		}
	})
	return rows
}

// Enough says for how many whole rows, beginning with row from, the metres that
// remain of a yarn are enough. rows are those of [InRows].
func Enough(rows []float64, from int, metres float64) int {
	n := 0
	for r := from; r < len(rows) && rows[r] <= metres; r++ {
		metres -= rows[r]
		n++
	}
	return n
}

// each gives the length of every stitch with its row and yarn.
func each(f *fabric.Fabric, a Ask, take func(row, yarn int, l Length)) {
	rowMM := make([]float64, len(a.RowCM))
	for r, cm := range a.RowCM {
		rowMM[r] = cm * 10
	}
	cache := map[plainKey]Length{}
	for id := range f.Stitches {
		s := &f.Stitches[id]
		key, plain := keyOf(f, int32(id))
		length, known := cache[key]
		if !plain || !known {
			length = a.Tools[f.Yarns[s.Yarn]].ofStitch(f, int32(id), rowMM)
		}
		if plain {
			cache[key] = length
		}
		take(int(s.Row), int(s.Yarn), length)
	}
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
