package syntax

import (
	"fmt"

	"strandway/model/diag"
)

// checkNumbers tells of rows that hold nothing, and of numbers given twice, left out or out of order. A remark or
// a heading between two rows may begin the numbers anew.
func (r *reader) checkNumbers() {
	defer func() { r.row = nil }()
	rows := r.tree.Rows
	for i, row := range rows {
		word := "row"
		if row.Round {
			word = "rnd"
		}
		r.row = row
		if row.From > 0 && len(row.Body) == 0 && row.Count == nil && !row.Bad {
			r.find(diag.Doubt, "empty", row.Head, "write what is worked in it, or take its heading out", "%s %d is empty", word, row.From)
			continue
		}
		if i == 0 || row.From <= 1 || !plainNumber(row) || !plainNumber(rows[i-1]) || r.noteBetween(rows[i-1], row) {
			continue
		}
		switch last := max(rows[i-1].From, rows[i-1].To); {
		case row.From == last:
			r.find(diag.Doubt, "number", row.Head, fmt.Sprintf("number it %d if both are worked, or take one out", last+1), "%s %d is given twice", word, row.From)
		case row.From < last:
			r.find(diag.Doubt, "number", row.Head, "put the rows in the order in which they are worked, or number them anew",
				"%s %d comes after %s %d", word, row.From, word, last)
		case row.From > last+1:
			r.find(diag.Doubt, "number", row.Head, fmt.Sprintf("write %s %d, or number the rows anew", word, last+1),
				"%s %d follows %s %d: what lies between is missing", word, row.From, word, last)
		}
	}
}

// plainNumber reports whether a row has one number, or one range of them, for all sizes.
func plainNumber(row *Row) bool {
	return row.From > 0 && row.Named == "" && row.List == nil && !row.Every && !row.Open && row.BySize == nil && row.Sizes == nil
}

// noteBetween reports whether a remark stands between two rows.
func (r *reader) noteBetween(a, b *Row) bool {
	for _, n := range r.tree.Notes {
		if n.Start >= a.Span.End && n.Start < b.Span.Start {
			return true
		}
	}
	return false
}
