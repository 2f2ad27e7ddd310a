package edit

import (
	"slices"

	"strandway/model/pattern"
)

// AddSpecial is p with one more stitch of the designer's own.
func AddSpecial(p *pattern.Pattern, s pattern.Special) *pattern.Pattern {
	q := *p
	q.Stitches = append(slices.Clone(p.Stitches), s)
	return &q
}

// Symbol is p with another symbol for a stitch of the designer's own, "" for its parts.
func Symbol(p *pattern.Pattern, abbreviation, symbol string) *pattern.Pattern {
	q := *p
	q.Stitches = slices.Clone(p.Stitches)
	for i := range q.Stitches {
		if q.Stitches[i].Abbreviation == abbreviation {
			q.Stitches[i].Symbol = symbol
		}
	}
	return &q
}
