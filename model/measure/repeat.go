package measure

import "strandway/model/fabric"

// Repetition is where a piece works rows again to its length: rows First to
// Last of the fabric stand under one written row, so many of them to a repeat.
type Repetition struct {
	Under       int // index of the written row in the piece's tree
	First, Last int // rows of the fabric
	Each        int // rows to a repeat
}

// RepeatedRows finds the longest repetition of a piece; ok is false where every
// row is written by itself.
func RepeatedRows(f *fabric.Fabric) (rep Repetition, ok bool) {
	for r := 1; r < len(f.Rows); {
		last := r
		for last+1 < len(f.Rows) && f.Rows[last+1].Under == f.Rows[r].Under {
			last++
		}
		again := last > r || f.Rows[r].Source != f.Rows[r].Under
		if again && f.Rows[r].Under >= 0 && (!ok || last-r > rep.Last-rep.First) {
			rep, ok = Repetition{f.Rows[r].Under, r, last, period(f, r, last)}, true
		}
		r = last + 1
	}
	return rep, ok
}

// period is after how many rows the written rows that they are worked from come again.
func period(f *fabric.Fabric, first, last int) int {
	for n := 1; n <= last-first; n++ {
		same := true
		for r := first; same && r+n <= last; r++ {
			same = f.Rows[r].Source == f.Rows[r+n].Source
		}
		if same {
			return n
		}
	}
	return last - first + 1
}

// FitRows finds how often the repetition of a piece is to be worked, at least
// once, for it to come nearest to a wished length. rowCM is the height of each
// row; edgings are left out of the rows.
func FitRows(f *fabric.Fabric, rep Repetition, rowCM []float64, wishCM float64) Length {
	var before, again, after []float64
	border := 0.0
	for r := 1; r < len(f.Rows); r++ {
		switch on := edgesOf(f, r); {
		case on.any():
			border += rowCM[r] * float64(on.lower+on.upper)
		case r < rep.First:
			before = append(before, rowCM[r])
		case r > rep.Last:
			after = append(after, rowCM[r])
		case len(again) < rep.Each:
			again = append(again, rowCM[r])
		}
	}
	fit := FitLength(wishCM-border, before, again, after)
	fit.CM += border
	return fit
}
