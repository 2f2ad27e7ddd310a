// Package size makes the table of sizes: for every size of a pattern and every
// piece the repeats, the foundation, the rows, what they come to in cm, what of
// the wish cannot be met and what comes nearest, and the stitches to pick up
// along the sides.
//
// All lengths are in cm.
package size

import (
	"fmt"
	"math"
	"slices"

	"strandway/model"
	"strandway/model/fabric"
	"strandway/model/measure"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/trade"
	"strandway/model/work"
)

// Entry is one piece in one size.
type Entry struct {
	Size, Piece string
	N           int // repeats across; 0 where the rows are not written in repeats
	Foundation  int // chains, 0 where the piece begins otherwise
	Stitches    int // of the widest row, chains among them
	Rows        int // worked, the foundation not counted
	Finished    measure.Size
	Width       *measure.Width  // the wished width and what comes nearest; nil without a wish
	Length      *measure.Length // the wished length and what comes nearest; nil without a wish
	Side        measure.PickUp  // along either side; of flat pieces
	Across      int             // stitches of an edging along the last row, and along the foundation; of flat pieces
	Rounds      []Round         // of round pieces
	Faults      int             // in this size
}

// Round is what one round of a disc should grow by to lie flat.
type Round struct {
	Label    string
	Stitches int
	Grows    float64 // stitches to lie flat, over the round before
}

// Edging is the multiple of stitches that an edging takes: Multiple × n + Plus.
type Edging struct{ Multiple, Plus int }

// EdgingOf is the multiple stated of the piece that is worked along the edges
// of another; plain stitches where there is none.
func EdgingOf(p *pattern.Pattern) Edging {
	for _, piece := range p.Pieces {
		if piece.Worked == alongEdge && piece.Multiple != "" {
			if multiple, plus, err := pattern.ParseMultiple(piece.Multiple); err == nil {
				return Edging{multiple, plus}
			}
		}
	}
	return Edging{1, 0}
}

const alongEdge = "along an edge of another piece"

// Table works the pattern for each of its sizes.
func Table(lib *stitch.Library, p *pattern.Pattern, edging Edging) []Entry {
	var out []Entry
	for i := range max(1, len(p.Sizes)) {
		w := model.Work(lib, p, i)
		out = append(out, Entries(w, w.Figures(), edging)...)
	}
	return out
}

// Entries are the pieces of a pattern that is worked for one size.
func Entries(w *model.Worked, figures *model.Figures, edging Edging) []Entry {
	var out []Entry
	for k := range w.Pieces {
		out = append(out, entry(w, figures, k, edging))
	}
	return out
}

func entry(w *model.Worked, figures *model.Figures, k int, edging Edging) Entry {
	piece, f := &w.Pieces[k], w.Pieces[k].Fabric
	e := Entry{Piece: piece.Piece.Name, N: piece.N, Rows: max(0, len(f.Rows)-1), Finished: figures.Pieces[k].Size, Faults: piece.Findings.Faults()}
	var wish pattern.Size
	if w.Size < len(w.Pattern.Sizes) {
		wish = w.Pattern.Sizes[w.Size]
		e.Size = wish.Name
	}
	if len(f.Rows) > 0 {
		e.Foundation = f.Rows[0].Chains
	}
	e.Stitches = e.Finished.Stitches
	if !inRepeats(piece) {
		e.N = 0
	}
	if e.Finished.Form == measure.Sheet && piece.Piece.Worked != alongEdge {
		e.Side = measure.AlongRows(f, edging.Multiple, edging.Plus)
		e.Across = measure.Fit(float64(e.Stitches), edging.Multiple, edging.Plus)
	}
	if !figures.Known() || k > 0 { // a pattern's wish is for its main piece
		return e
	}
	if wish.WidthCM > 0 && e.Finished.Form != measure.Disc {
		e.Width = width(wish.WidthCM, piece, figures.Scale.ColumnCM, &e.Finished)
	}
	if wish.LengthCM > 0 && e.Finished.Form != measure.Disc {
		e.Length = length(wish.LengthCM, f, &e.Finished)
	}
	if e.Finished.Form == measure.Disc || e.Finished.Form == measure.Hollow {
		for r := 1; r < len(f.Rows); r++ {
			e.Rounds = append(e.Rounds, Round{f.Rows[r].Label, f.Rows[r].Count + f.Rows[r].Chains,
				measure.Increases(figures.Scale.ColumnCM, e.Finished.RowCM[r])})
		}
	}
	return e
}

// inRepeats reports whether a piece's rows are written for any number of repeats.
func inRepeats(piece *model.PieceWork) bool {
	return slices.ContainsFunc(piece.Proof.Rows, func(f work.Formula) bool { return f.Known && f.A > 0 })
}

// width is the number of repeats that comes nearest to a wish; of a tube, once
// round is twice as wide as it lies.
func width(wish float64, piece *model.PieceWork, columnCM float64, finished *measure.Size) *measure.Width {
	if finished.Form != measure.Sheet {
		columnCM /= 2
	}
	multiple, plus, ok := piece.Widest()
	if !ok && finished.Form == measure.Hollow {
		multiple, plus, ok = grown(piece.Fabric)
	}
	if !ok { // a foundation of a fixed number of chains
		return &measure.Width{Stitches: finished.Stitches, CM: finished.WidthCM, OffCM: finished.WidthCM - wish}
	}
	fit := measure.FitWidth(wish, columnCM, multiple, plus)
	return &fit
}

// grown is the multiple of stitches that a piece grown from its middle comes to,
// with more or fewer increase rounds.
func grown(f *fabric.Fabric) (multiple, plus int, ok bool) {
	for r := len(f.Rows) - 1; r > 1; r-- {
		if more := f.Rows[r].Count - f.Rows[r-1].Count; more > 0 {
			return more, f.Rows[r].Count % more, true
		}
	}
	return 0, 0, false
}

// length is how often the rows that the piece repeats are worked to come nearest
// to a wish, ending with their last and what follows them.
func length(wish float64, f *fabric.Fabric, finished *measure.Size) *measure.Length {
	rep, ok := measure.RepeatedRows(f)
	if !ok {
		cm := finished.LengthCM
		return &measure.Length{Times: 1, Rows: max(0, len(f.Rows)-1), CM: cm, OffCM: cm - wish}
	}
	fit := measure.FitRows(f, rep, finished.RowCM, wish)
	const met = .5 // cm: as good as the nearest
	if off := finished.LengthCM - wish; math.Abs(off) < math.Abs(fit.OffCM)+met {
		fit = measure.Length{Times: fit.Times, Rows: len(f.Rows) - 1, CM: finished.LengthCM, OffCM: off}
	}
	return &fit
}

// Unmet says what of a wish is not met and what comes nearest, "" where all is.
// Half a stitch or half a cm is met.
func (e *Entry) Unmet() string {
	const met = .5
	say := ""
	if w := e.Width; w != nil && math.Abs(w.OffCM) > met {
		say = fmt.Sprintf("width %+.1f cm: the nearest is %d stitches, %.1f cm", w.OffCM, w.Stitches, w.CM)
	}
	if l := e.Length; l != nil && math.Abs(l.OffCM) > met {
		if say != "" {
			say += "; "
		}
		say += fmt.Sprintf("length %+.1f cm: the nearest is %d rows, %.1f cm", l.OffCM, l.Rows, l.CM)
	}
	return say
}

// Body gives sizes for the bodies of a group ("woman", "head") by one measure
// ("bust", "head circumference"), with so much ease in cm.
func Body(group, by string, easeCM float64) []pattern.Size {
	var out []pattern.Size
	for _, b := range trade.Standard().Body {
		if b.Group == group && b.Measure == by {
			out = append(out, pattern.Size{Name: b.Size, WidthCM: b.CM.Middle() + easeCM})
		}
	}
	return out
}

// Household gives the usual sizes of a thing for the house ("blanket", "cushion").
func Household(name string) []pattern.Size {
	var out []pattern.Size
	for _, i := range trade.Standard().Items {
		if i.Name == name {
			out = append(out, pattern.Size{Name: i.Variant, WidthCM: i.AcrossCM.Middle(), LengthCM: i.OtherCM.Middle()})
		}
	}
	return out
}
