package model

import (
	"fmt"
	"regexp"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/measure"
	"strandway/model/trade"
)

// rules is said with every caution.
const rules = "local product-safety rules decide"

// smallParts are words for what a small child could pull off or be caught by,
// met in a pattern's rows and notes.
var smallParts = []struct {
	words *regexp.Regexp
	id    string
	say   string
	hint  string
}{
	{regexp.MustCompile(`(?i)\b(buttons?|beads?|bells?|safety eyes|plastic eyes|toggles?)\b`), "small-part",
		"small parts can come off and be swallowed by a child under 3", "embroider instead, or leave them away"},
	{regexp.MustCompile(`(?i)\b(cords?|drawstrings?|ties|ribbons?)\b`), "cord",
		"cords at the neck or hood of clothes for small children can catch", "leave them away, or keep them very short and sewn down"},
	{regexp.MustCompile(`(?i)\b(fringes?|tassels?|pompoms?|pom-poms?)\b`), "loose-strand",
		"loose strands can be pulled out or wind round small fingers", "leave the fringe away, or sew every strand down"},
	{regexp.MustCompile(`(?i)\b(mohair|eyelash)\b`), "shedding", "hairy yarn sheds, and babies put everything in their mouths", "choose a smooth, washable yarn"},
}

// cautions are the trade's usual ones for things made for babies.
func cautions(w *Worked) diag.List {
	list := diag.List{{Severity: diag.Note, ID: "baby", Message: "for a baby or small child: weave in every end and test it by pulling, and say for which age it is meant",
		Hint: rules}}
	for i := range w.Pieces {
		piece := &w.Pieces[i]
		for _, part := range smallParts {
			at := part.words.FindStringIndex(piece.Piece.Rows)
			if at == nil && !part.words.MatchString(piece.Piece.Note) && (i > 0 || !part.words.MatchString(w.Pattern.Note)) {
				continue
			}
			f := diag.Finding{Severity: diag.Doubt, ID: part.id, Piece: piece.Piece.Name, Message: part.say, Hint: part.hint + "; " + rules}
			if at != nil {
				f.Span = diag.Span{Start: at[0], End: at[1]}
			}
			list = append(list, f)
		}
		list = append(list, hole(w, piece)...)
	}
	return list
}

// hole tells of the widest chain-space if a finger goes into it.
func hole(w *Worked, piece *PieceWork) diag.List {
	scale := w.scale()
	widest, row := 0, int32(0)
	run := 0
	for id := range piece.Fabric.Stitches {
		s := &piece.Fabric.Stitches[id]
		if s.Row == 0 || !s.Has(fabric.Chain) || id > 0 && piece.Fabric.Stitches[id-1].Row != s.Row {
			run = 0
		}
		if s.Row > 0 && s.Has(fabric.Chain) {
			if run++; run > widest {
				widest, row = run, s.Row
			}
		}
	}
	most := trade.Standard().Carry.BabyHoleMM
	if mm := float64(widest) * scale.ColumnCM * 10; mm > most {
		r := &piece.Fabric.Rows[row]
		return diag.List{{Severity: diag.Doubt, ID: "hole", Piece: piece.Piece.Name, Row: r.Label, Span: yarnRow{source: r.Source}.span(piece.Tree),
			Message: fmt.Sprintf("a space of %d chains is about %.0f mm wide, and small fingers catch in holes over %g mm", widest, mm, most),
			Hint:    "take fewer chains or a smaller hook; " + rules}}
	}
	return nil
}

// rowCM is the height of each row in cm; nil where it is not known.
func rowCM(f *fabric.Fabric, scale measure.Scale) []float64 {
	if scale.SCCM == 0 {
		return nil
	}
	heights := measure.Heights(f)
	for r := range heights {
		heights[r] *= scale.SCCM
	}
	return heights
}
