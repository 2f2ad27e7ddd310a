package edit

import (
	"testing"

	"strandway/model/pattern"
)

func TestPieces(t *testing.T) {
	p := &pattern.Pattern{Pieces: []pattern.Piece{{Name: "Body", Rows: "Ch 5."}}, Callouts: []pattern.Callout{{Piece: "Body", Text: "here"}, {Text: "and here"}}}
	q := AddPiece(p, "Edging")
	if len(p.Pieces) != 1 || len(q.Pieces) != 2 || q.Pieces[1].Name != "Edging" || q.Pieces[0].Rows != "Ch 5." {
		t.Errorf("pieces are %v", q.Pieces)
	}
	r := RenamePiece(q, 0, "Mat")
	if r.Pieces[0].Name != "Mat" || r.Callouts[0].Piece != "Mat" || q.Callouts[0].Piece != "Body" {
		t.Errorf("renamed: %v, %v", r.Pieces, r.Callouts)
	}
	if !PieceNamed(r, "Mat") || PieceNamed(r, "Body") {
		t.Error("the old name is there still")
	}
	d := DeletePiece(r, 0)
	if len(d.Pieces) != 1 || d.Pieces[0].Name != "Edging" || len(d.Callouts) != 0 {
		t.Errorf("taken out: %v, %v", d.Pieces, d.Callouts)
	}
	if last := DeletePiece(d, 0); len(last.Pieces) != 1 {
		t.Error("the last piece was taken out")
	}
}
