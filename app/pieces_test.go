package app

import (
	"testing"

	"fyne.io/fyne/v2"

	"strandway/app/session"
)

// A piece is added under a name of its own, renamed and taken out, each in one step.
func TestPiecesComeAndGo(t *testing.T) {
	w, settle := shown(t, "", 1024, 700)
	w.beginWith(session.Blank())
	w.s.Paste("With A, ch 5.")
	settle()
	answer := func(name string) {
		for _, r := range name {
			w.win.Canvas().Focused().TypedRune(r)
		}
		w.press(fyne.KeyReturn)
		settle()
	}
	w.askPiece()
	answer("Edging")
	if len(w.s.Pattern().Pieces) != 2 || w.s.Piece() != 1 || w.s.Rows() != "" {
		t.Fatalf("pieces are %v, in hand %d", w.s.Pattern().Pieces, w.s.Piece())
	}
	w.askPiece()
	answer("Body")
	if len(w.s.Pattern().Pieces) != 2 || w.said == "" {
		t.Error("two pieces have one name")
	}
	w.rename()
	answer("Border")
	if got := w.s.Pattern().Pieces[1].Name; got != "Border" {
		t.Errorf("renamed to %q", got)
	}
	w.deletePiece()
	settle()
	if len(w.s.Pattern().Pieces) != 1 || w.s.Rows() != "With A, ch 5." {
		t.Errorf("left are %v", w.s.Pattern().Pieces)
	}
	w.s.Undo()
	if len(w.s.Pattern().Pieces) != 2 || w.s.Piece() != 1 {
		t.Error("the piece does not come back by one undo")
	}
}
