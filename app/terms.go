package app

import (
	"strings"

	"strandway/app/translation"
	"strandway/model/edit"
)

// otherTerms are the terms that the rows are not written in.
func (w *window) otherTerms() string {
	if w.s.Pattern().Terms == "UK" {
		return "US"
	}
	return "UK"
}

// changeTerms writes the rows in the other terms, US or UK. The caret stays in its line.
func (w *window) changeTerms() {
	to := w.otherTerms()
	line := strings.Count(w.s.Rows()[:w.s.Caret().At], "\n")
	w.s.Do("Terms", func(now edit.State) edit.State {
		now.Pattern = edit.InTerms(w.lib, now.Pattern, to)
		rows, at := now.Pattern.Pieces[now.Piece].Rows, 0
		for range line {
			at += strings.IndexByte(rows[at:], '\n') + 1
		}
		now.Caret = edit.At(edit.Line(rows, at).End)
		return now
	})
	w.say(translation.Fill("The rows are written in {{.Terms}} terms now.", "Terms", to))
}

// revert takes the document as it stands in its file, as a step that can be undone.
func (w *window) revert() {
	if err := w.s.TakeFile(); err != nil {
		w.say(spoken(err.Error()))
		return
	}
	w.say(translation.Say("As it was saved; Ctrl+Z gives yours back."))
}

// canRevert reports whether the document differs from what stands in its file.
func (w *window) canRevert() bool { return w.s.Path() != "" && w.s.Changed() }
