package app

import (
	"strings"

	"strandway/app/session"
	"strandway/app/translation"
	"strandway/model/edit"
	"strandway/model/syntax"
)

// writtenRow is the written row that holds the caret, as an index in the tree of the present rows.
func (w *window) writtenRow() (row int, ok bool) {
	rows, at := w.s.Rows(), w.s.Caret().At
	line := edit.Line(rows, at)
	if strings.TrimSpace(rows[at:line.End]) == "" {
		at = max(line.Start, len(strings.TrimRight(rows[:at], " \t\n"))) // spaces behind the last word are the row's own
	}
	for i, r := range w.s.Tree().Rows {
		if at >= r.Span.Start && at <= r.Span.End {
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
	if !w.inPicture() {
		w.win.Canvas().Focus(w.page)
	}
}

// inPicture reports whether chart, cells or cloth have the keys.
func (w *window) inPicture() bool {
	focused := w.win.Canvas().Focused()
	return focused == w.pair.Chart || focused == w.pair.Cloth
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

// carryRow puts a row that was dragged by its number in the place of another.
func (w *window) carryRow(from, to int) {
	if !w.s.Worked() {
		return
	}
	rows, caret, ok := edit.CarryRow(w.s.Tree(), from, to)
	if !ok {
		w.say("There is no row to change places with.")
		return
	}
	w.s.Rewrite("Move row", rows, caret)
}

func (w *window) toggleTurn() {
	if i, ok := w.writtenRow(); ok {
		w.rewriteRow("Turn", edit.ToggleTurn(w.s.Tree(), i))
	}
}

// rewriteRow gives the piece rows in which something of the row in hand is written otherwise. The caret stays at
// the words where it was, and behind the last of them where it was there.
func (w *window) rewriteRow(label, rows string) {
	old, at := w.s.Rows(), w.s.Caret().At
	behind := strings.TrimSpace(old[at:edit.Line(old, at).End]) == ""
	at = session.ShiftOf(old, rows).At(at)
	if behind {
		at = edit.Line(rows, at).End
	}
	w.s.Rewrite(label, rows, at)
}

// pencilling reports whether stitches are chosen and the rows do not have the keys: a yarn is then for the stitches
// alone. A menu that is open has the keys of the picture that it was opened from.
func (w *window) pencilling() bool { return w.hasChoice() && w.win.Canvas().Focused() != w.page }

// sayYarn says what a yarn's key does now.
func (w *window) sayYarn(letter string) func() string {
	return func() string {
		if w.pencilling() {
			return translation.Fill("Stitches in yarn {{.Letter}}", "Letter", letter)
		}
		return translation.Fill("Row in yarn {{.Letter}}", "Letter", letter)
	}
}

// sayFill says what filling does now.
func (w *window) sayFill() string {
	if len(w.s.Chosen().Stitches) > 1 {
		return translation.Fill("Fill the chosen stitches in yarn {{.Letter}}", "Letter", w.brush)
	}
	return translation.Fill("Fill the patch in yarn {{.Letter}}", "Letter", w.brush)
}

// fillPatch works the chosen stitches in the yarn that was taken last; one alone stands for the patch of one colour
// about it.
func (w *window) fillPatch() {
	if len(w.s.Chosen().Stitches) > 1 {
		w.tell(w.s.Pencil(w.brush))
		return
	}
	w.tell(w.s.FillPatch(w.brush))
}

func (w *window) hasYarn(letter string) bool {
	_, has := w.s.Pattern().Yarn(letter)
	return has
}

// nextYarn is the letter that the next yarn of the pattern gets.
func (w *window) nextYarn() string { return edit.NextYarn(w.s.Pattern()) }

// rowYarn works the row in hand in a yarn, or the stitches chosen in a picture. The next yarn of the pattern is
// added by it.
func (w *window) rowYarn(letter string) {
	if !w.hasYarn(letter) {
		w.addYarn()
	}
	w.brush = letter
	if w.pencilling() {
		if err := w.s.Pencil(letter); err != nil {
			w.say(upperFirst(err.Error()) + ".")
		}
		return
	}
	i, ok := w.writtenRow()
	if !ok {
		w.say(translation.Say("Begin a row first; then it can be given its yarn."))
		return
	}
	w.rewriteRow("Row in yarn "+letter, edit.RowYarn(w.s.Tree(), i, letter))
	w.say(translation.Fill("The row is worked in yarn {{.Letter}} now.", "Letter", letter))
}

// noYarn says why a row cannot be worked in a yarn.
func (w *window) noYarn(letter string) string {
	yarns := w.s.Pattern().Yarns
	switch _, has := w.s.Pattern().Yarn(letter); {
	case has:
		return "There is no row yet to work in yarn " + letter + "."
	case len(yarns) < int(letter[0]-'A'):
		return "There is no yarn " + letter + " yet; “One more yarn” in the Yarn menu adds the next one."
	}
	return "There is no yarn " + letter + " yet; add it with the + under the pictures, or “One more yarn” in the Yarn menu."
}

func (w *window) nextPiece() { w.s.ShowPiece((w.s.Piece() + 1) % len(w.s.Pattern().Pieces)) }

func (w *window) nextSize() { w.s.ShowSize((w.s.Size() + 1) % max(1, len(w.s.Pattern().Sizes))) }
