package app

import (
	"strings"

	"strandway/app/translation"
	"strandway/model/edit"
)

// askPiece asks for the name of one more piece and takes it in hand.
func (w *window) askPiece() {
	w.askPieceName("New piece", "", func(name string) {
		w.s.Do("New piece", func(now edit.State) edit.State {
			now.Pattern = edit.AddPiece(now.Pattern, name)
			now.Piece, now.Caret = len(now.Pattern.Pieces)-1, edit.At(0)
			return now
		})
		w.win.Canvas().Focus(w.page)
	})
}

// askPieceRename asks for another name for the piece in hand.
func (w *window) askPieceRename() {
	at := w.s.Piece()
	w.askPieceName("Rename the piece", w.s.Pattern().Pieces[at].Name, func(name string) {
		w.s.Do("Rename the piece", func(now edit.State) edit.State {
			now.Pattern = edit.RenamePiece(now.Pattern, at, name)
			return now
		})
	})
}

// askPieceName asks for a name that no other piece has.
func (w *window) askPieceName(title, now string, done func(name string)) {
	w.ask(title, now, "Use it", func(name string) {
		name = strings.TrimSpace(name)
		switch {
		case name == "" || name == now:
		case edit.PieceNamed(w.s.Pattern(), name):
			w.say(translation.Fill("There is a piece called {{.Name}} already.", "Name", name))
		default:
			done(name)
		}
	})
}

// deletePiece takes the piece in hand out of the pattern.
func (w *window) deletePiece() {
	at := w.s.Piece()
	w.s.Do("Take the piece out", func(now edit.State) edit.State {
		now.Pattern = edit.DeletePiece(now.Pattern, at)
		now.Piece = min(at, len(now.Pattern.Pieces)-1)
		now.Caret = edit.At(len(strings.TrimRight(now.Pattern.Pieces[now.Piece].Rows, " \n")))
		return now
	})
}

// sayRename says what is renamed by the key for it.
func (w *window) sayRename() string {
	if w.s.Colourway() != "" {
		return translation.Say("Rename the colourway…")
	}
	return translation.Say("Rename the piece…")
}

// rename gives the colourway shown another name, or the piece where the yarns have their own shades.
func (w *window) rename() {
	if w.s.Colourway() != "" {
		w.askWayName()
		return
	}
	w.askPieceRename()
}
