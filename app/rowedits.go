package app

import (
	"strandway/model/edit"
	"strandway/model/syntax"
)

// writtenRow is the written row that holds the caret, as an index in the tree of the present rows.
func (w *window) writtenRow() (row int, ok bool) {
	for i, r := range w.s.Tree().Rows {
		if at := w.s.Caret().At; at >= r.Span.Start && at <= r.Span.End {
			row, ok = i, true // of two rows that meet at the caret the later one
		}
	}
	return row, ok
}

// editRow edits the row in hand. Where there is none yet, a line is begun.
func (w *window) editRow(label string, change func(t *syntax.Tree, i int) (string, int)) {
	i, ok := w.writtenRow()
	if !ok {
		w.s.Type("\n")
		return
	}
	rows, caret := change(w.s.Tree(), i)
	w.s.Rewrite(label, rows, caret)
	w.win.Canvas().Focus(w.page)
}

func (w *window) moveRow(down bool) {
	i, ok := w.writtenRow()
	if !ok {
		return
	}
	rows, caret, ok := edit.MoveRow(w.s.Tree(), i, down)
	if !ok {
		w.say("There is no row to change places with.")
		return
	}
	w.s.Rewrite("Move row", rows, caret)
}

func (w *window) toggleTurn() {
	if i, ok := w.writtenRow(); ok {
		w.s.Rewrite("Turn", edit.ToggleTurn(w.s.Tree(), i), w.s.Caret().At)
	}
}

func (w *window) rowYarn(letter string) {
	if i, ok := w.writtenRow(); ok {
		w.s.Rewrite("Row in yarn "+letter, edit.RowYarn(w.s.Tree(), i, letter), w.s.Caret().At)
	}
}

func (w *window) nextPiece() { w.s.ShowPiece((w.s.Piece() + 1) % len(w.s.Pattern().Pieces)) }

func (w *window) nextSize() { w.s.ShowSize((w.s.Size() + 1) % max(1, len(w.s.Pattern().Sizes))) }
