package app

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"strandway/model/diag"
	"strandway/model/edit"
)

// inField is the field that has the keys, nil where none has.
func (w *window) inField() fyne.Shortcutable {
	if focused := w.win.Canvas().Focused(); focused != nil && w.sheetOpen() {
		if s, ok := focused.(fyne.Shortcutable); ok {
			return s
		}
	}
	return nil
}

// unlessField hands a shortcut to the field that has the keys; without one the rows take it.
func (w *window) unlessField(s fyne.Shortcut, do func()) {
	if f := w.inField(); f != nil {
		f.TypedShortcut(s)
		return
	}
	if !w.sheetOpen() {
		do()
	}
}

func (w *window) cut() {
	w.unlessField(&fyne.ShortcutCut{Clipboard: w.app.Clipboard()}, func() {
		if w.pencilling() {
			if w.copyStitches() {
				w.tell(w.s.TakeOut())
			}
			return
		}
		if text := w.s.Cut(); text != "" {
			w.app.Clipboard().SetContent(text)
		}
	})
}

func (w *window) copyText() {
	w.unlessField(&fyne.ShortcutCopy{Clipboard: w.app.Clipboard()}, func() {
		if w.pencilling() {
			w.copyStitches()
			return
		}
		if text := w.s.ChosenText(); text != "" {
			w.app.Clipboard().SetContent(text)
		}
	})
}

func (w *window) paste() {
	w.unlessField(&fyne.ShortcutPaste{Clipboard: w.app.Clipboard()}, func() {
		text := w.app.Clipboard().Content()
		if w.pencilling() {
			w.tell(w.s.PasteWords(text))
			return
		}
		if w.pastePage(text, "") {
			return
		}
		span := w.s.Caret().Span()
		if line := edit.Line(w.s.Rows(), span.Start); edit.Instead(w.s.Rows()[line.Start:span.Start], text) {
			w.s.ChooseText(diag.Span{Start: line.Start, End: span.End})
		}
		w.s.Paste(text)
	})
}

func (w *window) chooseAll() {
	w.unlessField(&fyne.ShortcutSelectAll{}, func() {
		w.s.ChooseText(diag.Span{End: len(w.s.Rows())})
	})
}

func (w *window) askFind() {
	w.ask("Find in the rows", w.sought, "Find", func(text string) {
		w.sought = text
		w.findNext()
	})
}

// findNext chooses the next place where what is sought stands.
func (w *window) findNext() {
	if w.sought == "" {
		return
	}
	rows, sought := strings.ToLower(w.s.Rows()), strings.ToLower(w.sought)
	from := min(w.s.Caret().Span().End, len(rows))
	at := strings.Index(rows[from:], sought)
	if at >= 0 {
		at += from
	} else {
		at = strings.Index(rows, sought)
	}
	if at < 0 {
		w.say("“" + w.sought + "” stands nowhere in the rows.")
		return
	}
	w.s.ChooseText(diag.Span{Start: at, End: min(at+len(sought), len(w.s.Rows()))})
}

func (w *window) askRow() {
	w.ask("Go to row", "", "Go", func(text string) {
		no, err := strconv.Atoi(strings.TrimSpace(text))
		tree := w.s.Tree()
		for _, r := range tree.Rows {
			if err == nil && r.From > 0 && no >= r.From && no <= max(r.From, r.To) {
				at := r.Head.End
				for at < r.Span.End && w.s.Rows()[at] == ' ' {
					at++
				}
				w.s.PutCaret(at, false)
				return
			}
		}
		w.say("There is no row " + text + ".")
	})
}
