package app

import (
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"strandway/app/session"
)

// The actions of the menus of things, a rule for "".
var (
	rowsMenu    = []string{"cut", "copy", "paste", "", "row", "row-again", "row-up", "row-down", "row-delete", "", "yarn-A", "yarn-B", "yarn-C", "yarn-D", "yarn-E", "yarn-F", "", "turn", "write-out", "mend"}
	pictureMenu = []string{"cut", "copy", "paste", "take-out", "", "yarn-A", "yarn-B", "yarn-C", "yarn-D", "yarn-E", "yarn-F", "fill", "pencil", "", "repeat", "mirror", "place", "note", "lone", "", "row", "row-again", "turn", "write-out", "", "whole", "cells"}
)

// popUp shows the menu of a thing.
func (w *window) popUp(ids []string, at fyne.Position) {
	m := fyne.NewMenu("")
	for _, id := range ids {
		if id == "" {
			m.Items = append(m.Items, fyne.NewMenuItemSeparator())
		}
		for _, a := range w.table {
			if a.ID == id && a.Shown() {
				m.Items = append(m.Items, w.item(a))
			}
		}
	}
	widget.ShowPopUpMenuAtPosition(m, w.win.Canvas(), at)
}

// popUpHere shows the menu of what has the keys.
func (w *window) popUpHere() {
	place := func(o fyne.CanvasObject) fyne.Position { return w.app.Driver().AbsolutePositionForObject(o) }
	switch w.win.Canvas().Focused() {
	case w.pair.Chart:
		w.popUp(pictureMenu, place(w.pair.Chart).AddXY(40, 40))
	case w.pair.Cloth:
		w.popUp(pictureMenu, place(w.pair.Cloth).AddXY(40, 40))
	default:
		w.popUp(rowsMenu, place(w.page).Add(w.page.CaretPlace()))
	}
}

// writeOut writes the rows out that the one in hand stands for.
func (w *window) writeOut() {
	if row, ok := w.rowInHand(); ok {
		w.tell(w.s.WriteOut(row))
	}
}

// inRange reports whether the row in hand stands for several.
func (w *window) inRange() bool {
	row, ok := w.rowInHand()
	return ok && len(w.s.Made().Works(w.s.Made().WrittenRow(row))) > 1
}

// tell says why something was not done. Where rows written as one are in the way, it offers to
// write them out.
func (w *window) tell(err error) {
	var several *session.SeveralRows
	switch {
	case err == nil:
	case errors.As(err, &several):
		w.choose("Write the rows out one by one first?", upperFirst(several.Label)+" is one of several rows written as one.",
			choice{label: "Write them out", first: true, do: func() {
				if err := w.s.WriteOut(several.Row); err != nil {
					w.say(spoken(err.Error()))
					return
				}
				w.say("The rows are written out; change the stitch now. Ctrl+Z takes it back.")
			}},
			choice{label: "Leave them", do: func() {}})
	default:
		w.say(spoken(err.Error()))
	}
}
