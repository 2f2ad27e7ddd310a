package app

import (
	"strings"

	"fyne.io/fyne/v2"

	"strandway/app/action"
	"strandway/app/translation"
	"strandway/chart/geom"
)

// noteActions is what the menus can do with the notes beside the chart.
func (w *window) noteActions() action.Table {
	chosen := func() bool { return w.view == makeView && len(w.s.Chosen().Stitches) > 0 && !w.pair.Cells() }
	there := func() bool { return w.view == makeView && len(w.pair.Notes()) > 0 }
	return action.Table{
		{ID: "note", Menu: "Stitch", Label: "Note beside the stitch…", Keys: []action.Chord{action.Key("Ctrl+Shift+N")}, Can: chosen, Rule: true,
			Why: func() string { return translation.Say("Choose the stitch in the chart that the note is for.") }, Do: w.askNote},
		{ID: "note-next", Menu: "Stitch", Label: "Next note on the chart", Keys: []action.Chord{action.Key("Ctrl+Alt+N")}, Can: there, Do: w.nextNote},
	}
}

// askNote asks for the words of a note beside the chosen stitch.
func (w *window) askNote() {
	id := w.s.Chosen().Lead
	w.ask(translation.Say("Note on the chart"), "", "Add", func(text string) {
		if text = strings.TrimSpace(text); text != "" {
			w.tell(w.s.AddNote(id, text))
		}
		w.win.Canvas().Focus(w.pair.Chart)
	})
}

// nextNote chooses the next note and takes the keys to it.
func (w *window) nextNote() {
	all := w.pair.Notes()
	if len(all) == 0 {
		return
	}
	next := all[0]
	for i, n := range all {
		if now, ok := w.pair.Note(); ok && n.Index == now.Index {
			next = all[(i+1)%len(all)]
		}
	}
	w.win.Canvas().Focus(w.pair.Chart)
	w.pair.ChooseNote(next.Index)
}

// sayNote says what can be done with the chosen note.
func (w *window) sayNote() {
	n, ok := w.pair.Note()
	if notes := w.s.Notes(); ok && n.Index < len(notes) {
		w.say("“" + notes[n.Index].Text + "”: " + translation.Say("arrows move it, with Shift farther; Enter changes its words, Delete takes it out"))
		return
	}
	w.say("")
}

// How far an arrow moves a note, in stitch widths.
const (
	noteStep = .25
	noteFar  = 2.
)

// noteKey does with the chosen note what a key says, and reports whether it did.
func (w *window) noteKey(e *fyne.KeyEvent) bool {
	n, ok := w.pair.Note()
	notes := w.s.Notes()
	if !ok || n.Index >= len(notes) {
		return false
	}
	note := notes[n.Index]
	step := noteStep
	if w.modifiers()&fyne.KeyModifierShift != 0 {
		step = noteFar
	}
	by := map[fyne.KeyName]geom.Point{fyne.KeyLeft: {X: -step}, fyne.KeyRight: {X: step}, fyne.KeyUp: {Y: step}, fyne.KeyDown: {Y: -step}}
	switch move, arrow := by[e.Name]; {
	case arrow:
		away := n.Box.Centre().Sub(n.Head)
		if note.X != 0 || note.Y != 0 {
			away = geom.Point{X: note.X, Y: note.Y} // the chart may be behind the keys
		}
		w.s.MoveNote(n.Index, away.Add(move), true)
		w.sayNote()
	case e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter:
		w.ask(translation.Say("Words of the note"), note.Text, "Change", func(text string) {
			if text = strings.TrimSpace(text); text != "" {
				w.s.WordNote(n.Index, text)
			}
			w.win.Canvas().Focus(w.pair.Chart)
		})
	case e.Name == fyne.KeyDelete || e.Name == fyne.KeyBackspace:
		w.pair.ChooseNote(-1)
		w.s.TakeOutNote(n.Index)
	case e.Name == fyne.KeyEscape:
		w.pair.ChooseNote(-1)
	default:
		return false
	}
	return true
}
