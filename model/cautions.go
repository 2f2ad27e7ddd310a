package model

import (
	"fmt"
	"regexp"
	"slices"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/measure"
	"strandway/model/pattern"
	"strandway/model/trade"
)

// rules is said with every caution.
const rules = "local product-safety rules decide"

// caution is told where its words are met in a pattern's title, rows or notes.
type caution struct {
	words     *regexp.Regexp
	severity  diag.Severity
	id        string
	say, hint string
}

// babyCautions are for what a small child could swallow, pull off, be caught by
// or be covered with.
var babyCautions = []caution{
	{regexp.MustCompile(`(?i)\b(buttons?|beads?|bells?|safety eyes|plastic eyes|toggles?|pins?|magnets?)\b`), diag.Doubt, "small-part",
		"small parts can come off and be swallowed by a child under 3", "embroider instead, or leave them away"},
	{regexp.MustCompile(`(?i)\b(cords?|drawstrings?|ties|ribbons?|laces)\b`), diag.Doubt, "cord",
		"cords at the neck or hood of clothes for small children can catch", "leave them away, or keep them very short and sewn down"},
	{regexp.MustCompile(`(?i)\b(fringes?|tassels?|pompoms?|pom-poms?)\b`), diag.Doubt, "loose-strand",
		"loose strands can be pulled out or wind round small fingers", "leave the fringe away, or sew every strand down"},
	{regexp.MustCompile(`(?i)\b(mohair|eyelash)\b`), diag.Doubt, "shedding", "hairy yarn sheds, and babies put everything in their mouths", "choose a smooth, washable yarn"},
	{regexp.MustCompile(`(?i)\b(blankets?|covers?|pillows?|cushions?)\b`), diag.Note, "cot",
		"nothing loose belongs in a cot in the first year: no blanket, pillow or toy", "say that it is for use while someone looks on"},
	{regexp.MustCompile(`(?i)\b(hats?|bonnets?|beanies?|headbands?)\b`), diag.Note, "hat",
		"hats and headbands come off for sleep and in the car seat", "say so on the page, and leave ties under the chin away"},
	{regexp.MustCompile(`(?i)\b(toys?|rattles?|stuffing|stuffed|amigurumi)\b`), diag.Note, "toy",
		"stuffing must not come through: a dense fabric, a hook one or two sizes down, and double seams", "say for which age it is meant, and to look for damage often"},
}

// cautions are the trade's usual ones for things made for babies.
func cautions(w *Worked) diag.List {
	list := diag.List{{Severity: diag.Note, ID: "baby", Message: "for a baby or small child: weave in every end and test it by pulling, and say for which age it is meant",
		Hint: rules}}
	for i := range w.Pieces {
		piece := &w.Pieces[i]
		for _, part := range babyCautions {
			at := part.words.FindStringIndex(piece.Piece.Rows)
			elsewhere := part.words.MatchString(piece.Piece.Note) || part.words.MatchString(piece.Piece.Name) ||
				i == 0 && (part.words.MatchString(w.Pattern.Note) || part.words.MatchString(w.Pattern.Title) || ofYarn(w, part.words))
			if at == nil && !elsewhere {
				continue
			}
			f := diag.Finding{Severity: part.severity, ID: part.id, Piece: piece.Piece.Name, Message: part.say, Hint: part.hint + "; " + rules}
			if at != nil {
				f.Span = diag.Span{Start: at[0], End: at[1]}
			}
			list = append(list, f)
		}
		list = append(list, hole(w, piece)...)
	}
	return list
}

// ofYarn reports whether a yarn's name has one of the words.
func ofYarn(w *Worked, words *regexp.Regexp) bool {
	return slices.ContainsFunc(w.Pattern.Yarns, func(y pattern.Yarn) bool { return words.MatchString(y.Name) })
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
