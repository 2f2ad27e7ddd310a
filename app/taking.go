package app

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"strandway/app/control"
	"strandway/app/picture"
	"strandway/app/session"
	"strandway/app/translation"
	"strandway/model/edit"
	"strandway/model/stitch"
)

// takeStitch works a kind in place of the chosen stitches. With none chosen it is worked behind the last stitch of the
// row in hand where the caret stands at its end, and written at the caret elsewhere.
func (w *window) takeStitch(k *stitch.Kind, word string) {
	w.took(k)
	one := session.Typed{N: 1, Kind: k}
	rows, at := w.s.Rows(), w.s.Caret().Span().Start
	line := edit.Line(rows, at)
	switch {
	case w.hasChoice():
		w.tell(w.s.Put(one))
	case strings.TrimSpace(rows) == "" || w.atRowEnd():
		w.tell(w.s.Append(one))
	default:
		before := rows[line.Start:at]
		switch {
		case before == "" || strings.HasSuffix(before, " ") || strings.HasSuffix(before, "("):
		case strings.HasSuffix(before, ",") || strings.HasSuffix(before, ":") || strings.HasSuffix(before, "*"):
			word = " " + word
		default:
			word = ", " + word
		}
		w.s.Type(word)
		w.win.Canvas().Focus(w.page)
	}
}

// atRowEnd reports whether the caret stands behind the last stitch of a row: what follows it turns the work at most.
func (w *window) atRowEnd() bool {
	rows, caret := w.s.Rows(), w.s.Caret()
	behind := strings.Trim(rows[caret.At:edit.Line(rows, caret.At).End], " .,")
	_, ok := w.writtenRow()
	before := strings.TrimRight(rows[edit.Line(rows, caret.At).Start:caret.At], " .")
	return ok && caret.Span().Len() == 0 && (behind == "" || behind == "turn") && (before == "" || !strings.Contains(")*([", before[len(before)-1:]))
}

// dropStitch works a kind in place of the stitch that it was dropped on; dropped beside the stitches of a picture it
// is worked next in the row in hand.
func (w *window) dropStitch(k *stitch.Kind, at fyne.Position) {
	w.putDown()
	one := session.Typed{N: 1, Kind: k}
	for _, pane := range []*picture.Pane{w.pair.Chart, w.pair.Cloth} {
		if id, ok := pane.StitchAt(at); ok {
			w.took(k)
			w.s.Choose([]int32{id}, id)
			w.tell(w.s.Put(one))
			return
		}
		if pane.Holds(at) {
			w.took(k)
			w.s.ChooseNone()
			w.tell(w.s.Append(one))
			return
		}
	}
	w.say(translation.Say("Drop a stitch on the one that it is to be worked in place of."))
}

// carryStitch shows a stitch under the pointer on its way from the tray, and lights the one that it would be
// worked in place of.
func (w *window) carryStitch(k *stitch.Kind, at fyne.Position) {
	const side = 40
	place := at.Subtract(w.app.Driver().AbsolutePositionForObject(w.desk))
	if w.carried == nil {
		d := &control.Canvas{}
		tokens := w.th.Tokens()
		d.Frame(0, 0, side, side, 6, tokens.Paper, tokens.Accent, 1.5)
		d.Add(w.symbol(k, tokens, side, side-4), 0, 2, side, side-4)
		w.carried = container.NewWithoutLayout(d.Objects...)
		w.desk.Add(w.carried)
	}
	put(w.carried, place.X+8, place.Y+8, side, side)
	w.pair.Lit = nil
	for _, pane := range []*picture.Pane{w.pair.Chart, w.pair.Cloth} {
		if id, ok := pane.StitchAt(at); ok {
			w.pair.Lit = []int32{id}
			w.showHint(translation.Say("let go to work it in place of this stitch"))
		} else if pane.Holds(at) {
			w.showHint(translation.Say("let go to work it next in the row in hand"))
		}
	}
	w.pair.Chart.Mark()
	w.pair.Cloth.Mark()
}

// putDown takes the carried stitch away.
func (w *window) putDown() {
	if w.carried != nil {
		w.desk.Remove(w.carried)
		w.carried = nil
		w.showHint("")
		w.light()
	}
}

// stitchMenu shows what can be done with a stitch of the tray.
func (w *window) stitchMenu(k *stitch.Kind, at fyne.Position) {
	one := session.Typed{N: 1, Kind: k}
	item := func(label string, can bool, do func() error) *fyne.MenuItem {
		i := fyne.NewMenuItem(translation.Say(label), func() {
			w.took(k)
			w.tell(do())
		})
		i.Disabled = !can
		return i
	}
	begun := strings.TrimSpace(w.s.Rows()) != ""
	widget.ShowPopUpMenuAtPosition(fyne.NewMenu("",
		item("Next in the row", true, func() error { return w.s.Append(one) }),
		item("In each stitch to the row's end", begun, func() error { return w.s.Across(one) }),
		item("In place of the chosen stitches", w.hasChoice(), func() error { return w.s.Put(one) }),
		item("Behind the chosen stitch, into the same place", w.hasChoice(), func() error { return w.s.Insert(one) }),
	), w.win.Canvas(), at)
}
