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
	"strandway/model/measure"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/syntax"
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
	Side        measure.PickUp  // in plain sc, along either side; of flat pieces
	Rounds      []Round         // of round pieces
	Faults      int             // in this size
}

// Round is what one round of a disc should grow by to lie flat.
type Round struct {
	Label    string
	Stitches int
	Grows    float64 // stitches to lie flat, over the round before
}

// Table works the pattern for each of its sizes.
func Table(lib *stitch.Library, p *pattern.Pattern) []Entry {
	var out []Entry
	for i := range max(1, len(p.Sizes)) {
		w := model.Work(lib, p, i)
		figures := w.Figures()
		for k := range w.Pieces {
			out = append(out, entry(w, figures, k))
		}
	}
	return out
}

func entry(w *model.Worked, figures *model.Figures, k int) Entry {
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
	if e.Finished.Form == measure.Sheet {
		e.Side = measure.AlongRows(f, 1, 0)
	}
	if !figures.Known() || k > 0 { // a pattern's wish is for its main piece
		return e
	}
	if wish.WidthCM > 0 && e.Finished.Form == measure.Sheet {
		e.Width = width(wish.WidthCM, piece, figures.Scale.ColumnCM, e.Stitches)
	}
	if wish.LengthCM > 0 {
		e.Length = length(wish.LengthCM, piece, e.Finished)
	}
	if e.Finished.Form == measure.Disc {
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

// width is the number of repeats that comes nearest to a wish.
func width(wish float64, piece *model.PieceWork, columnCM float64, stitches int) *measure.Width {
	multiple, plus := 0, 0
	for _, row := range piece.Proof.Rows {
		if a := row.A + row.ChainsA; row.Known && a > multiple {
			multiple, plus = a, row.B+row.ChainsB
		}
	}
	if multiple == 0 { // a foundation of a fixed number of chains
		cm := float64(stitches) * columnCM
		return &measure.Width{Stitches: stitches, CM: cm, OffCM: cm - wish}
	}
	fit := measure.FitWidth(wish, columnCM, multiple, plus)
	return &fit
}

// length is how often the rows that the piece repeats are worked to come nearest
// to a wish, ending with their last.
func length(wish float64, piece *model.PieceWork, finished measure.Size) *measure.Length {
	first, last, ok := repeated(piece.Tree)
	rows := piece.Fabric.Rows
	at := slices.IndexFunc(finished.RowCM, func(h float64) bool { return h > 0 })
	if !ok || at < 0 {
		cm := finished.LengthCM
		return &measure.Length{Times: 1, Rows: max(0, len(rows)-1), CM: cm, OffCM: cm - wish}
	}
	var before, again []float64
	for r := 1; r < len(rows); r++ {
		switch no := rows[r].No; {
		case no > last:
		case no >= first:
			again = append(again, finished.RowCM[r])
		default:
			before = append(before, finished.RowCM[r])
		}
	}
	fit := measure.FitLength(wish, before, again, nil)
	return &fit
}

// repeated gives the numbers of the rows that a piece works again to its length.
func repeated(tree *syntax.Tree) (first, last int, ok bool) {
	for _, row := range tree.Rows {
		for _, n := range row.Body {
			if ref, is := n.(*syntax.RowRef); is && len(ref.Rows) > 0 && (ref.Until != "" || row.Open || len(ref.Rows) > 1) {
				first, last, ok = slices.Min(ref.Rows), slices.Max(ref.Rows), true
			}
		}
	}
	return first, last, ok
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
