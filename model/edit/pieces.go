package edit

import (
	"slices"

	"strandway/model/pattern"
)

// AddPiece is p with one more piece behind the others, in which nothing is written yet.
func AddPiece(p *pattern.Pattern, name string) *pattern.Pattern {
	q := *p
	q.Pieces = append(slices.Clone(p.Pieces), pattern.Piece{Name: name})
	return &q
}

// RenamePiece is p with another name for a piece, in the notes beside its chart too.
func RenamePiece(p *pattern.Pattern, piece int, name string) *pattern.Pattern {
	q := *p
	old := p.Pieces[piece].Name
	q.Pieces = slices.Clone(p.Pieces)
	q.Pieces[piece].Name = name
	q.Callouts = slices.Clone(p.Callouts)
	for i := range q.Callouts {
		if q.Callouts[i].Piece == old && old != "" {
			q.Callouts[i].Piece = name
		}
	}
	return &q
}

// DeletePiece is p without a piece and the notes beside its chart. The last piece stays.
func DeletePiece(p *pattern.Pattern, piece int) *pattern.Pattern {
	if len(p.Pieces) < 2 {
		return p
	}
	q := *p
	name := p.Pieces[piece].Name
	q.Pieces = slices.Delete(slices.Clone(p.Pieces), piece, piece+1)
	q.Callouts = slices.DeleteFunc(slices.Clone(p.Callouts), func(c pattern.Callout) bool { return c.Piece == name || c.Piece == "" && piece == 0 })
	return &q
}

// PieceNamed reports whether a piece of p has a name.
func PieceNamed(p *pattern.Pattern, name string) bool {
	return slices.ContainsFunc(p.Pieces, func(x pattern.Piece) bool { return x.Name == name })
}
