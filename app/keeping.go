package app

import (
	"fmt"
	"path/filepath"
	"slices"
	"sync/atomic"
	"time"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/journal"
	"strandway/app/session"
	"strandway/app/theme"
	"strandway/model/pattern"
)

// What notices are about.
const (
	aboutLeft    = "left"
	aboutOutside = "outside"
	aboutOthers  = "others"
)

// looking is how often the window looks whether its file was changed by others.
const looking = 3 * time.Second

// keeper journals the document of a window and watches its file.
type keeper struct {
	journal *journal.Journal
	doc     atomic.Pointer[journal.Document] // looked at from elsewhere too
	others  string                           // the other windows that were told of last
}

// keep begins to journal the window's work, and offers what windows before it left behind.
func (w *window) keep(j *journal.Journal) {
	w.keeper.journal = j
	w.newJournal()
	w.s.Watch(w.keepUp)
	w.offerLeft()
}

// newJournal begins the journal of the present document in place of the one before.
func (w *window) newJournal() {
	k := &w.keeper
	if old := k.doc.Load(); old != nil {
		k.complain(old.Close())
	}
	doc, err := k.journal.Document(w.s.Path(), w.s.Pattern().Title)
	k.complain(err)
	k.doc.Store(doc)
	k.others = ""
	w.dismiss(aboutOutside)
	w.dismiss(aboutOthers)
}

func (k *keeper) complain(err error) {
	if err != nil {
		fyne.LogError("journal", err) // it keeps no one from working
	}
}

// keepUp has the journal follow the document.
func (w *window) keepUp(c session.Change) {
	k := &w.keeper
	if c&session.File != 0 && c&session.Pictures != 0 {
		w.newJournal()
	}
	switch {
	case c&(session.Text|session.File) == 0:
	case w.s.Changed():
		k.doc.Load().Keep(w.s.Pattern())
	case c&session.Text == 0:
		k.complain(k.doc.Load().Saved(w.s.Path()))
	default:
		k.complain(k.doc.Load().Settled())
	}
}

// stopKeeping ends the journal as the window closes.
func (w *window) stopKeeping() {
	k := &w.keeper
	if k.journal == nil {
		return
	}
	k.complain(k.doc.Load().Close())
	k.complain(k.journal.Close())
}

// lookOut looks again and again what others did, until the window ends. It looks away from the
// window's goroutine and wakes that only when there is something new.
func (w *window) lookOut(end <-chan struct{}) {
	tick := time.NewTicker(looking)
	defer tick.Stop()
	told := sighted{}
	for {
		select {
		case <-end:
			return
		case <-tick.C:
			s := w.keeper.look()
			if s.outside != journal.Untouched || s.doc != told.doc || !slices.Equal(s.others, told.others) {
				w.post(func() { w.tellOf(s) })
			}
			told = s
		}
	}
}

// sighted is what others did to the file of a document.
type sighted struct {
	doc     *journal.Document
	outside journal.Outside
	others  []journal.Other
}

func (k *keeper) look() sighted {
	s := sighted{doc: k.doc.Load()}
	s.outside = s.doc.Outside()
	var err error
	s.others, err = s.doc.Others()
	k.complain(err)
	return s
}

// tellOf tells of a change of the file by others, and of other windows on it.
func (w *window) tellOf(s sighted) {
	if s.doc != w.keeper.doc.Load() {
		return // another document is open by now
	}
	switch s.outside {
	case journal.Rewritten:
		w.s.NoLongerSaved()
		w.notify(notice{about: aboutOutside, says: filepath.Base(w.s.Path()) + " was changed by another program.", answers: []choice{
			{label: "Keep mine", first: true, do: func() {}},
			{label: "Take the other file", do: w.takeOther},
			{label: "See both", do: w.seeBoth},
		}})
	case journal.Gone:
		w.s.NoLongerSaved()
		w.notify(notice{about: aboutOutside, says: filepath.Base(w.s.Path()) + " is not in its folder any more.", answers: []choice{
			{label: "Save it there again", first: true, do: func() { w.save(nil) }},
			{label: "Go on", do: func() {}},
		}})
	}
	said := ""
	if len(s.others) > 0 {
		said = fmt.Sprintf("%s is open in another window too, since %s.", w.s.Name(), s.others[0].Since.Local().Format("15:04"))
		if s.others[0].Edits {
			said = fmt.Sprintf("%s has changes in another window that are not saved there.", w.s.Name())
		}
	}
	switch {
	case said == w.keeper.others:
	case said == "":
		w.dismiss(aboutOthers)
	default:
		w.notify(notice{about: aboutOthers, says: said, answers: []choice{{label: "Go on", first: true, do: func() {}}}})
	}
	w.keeper.others = said
}

// takeOther takes what stands in the file now; undo gives back what was here.
func (w *window) takeOther() {
	if err := w.s.TakeFile(); err != nil {
		w.say(upperFirst(err.Error()) + ".")
		return
	}
	w.say("Taken from the file; Ctrl+Z gives yours back")
}

// offerLeft offers the newest work that a window left behind when it fell over.
func (w *window) offerLeft() {
	left, err := w.keeper.journal.Left()
	w.keeper.complain(err)
	if len(left) == 0 {
		return
	}
	l := left[0]
	w.notify(notice{about: aboutLeft, says: l.Says(), answers: []choice{
		{label: "Open with them", first: true, do: func() { w.ifSettled(func() { w.restore(l) }) }},
		{label: "Let them go", do: func() {
			w.keeper.complain(w.keeper.journal.LetGo(l))
			w.say("They are kept for 30 days in " + w.keeper.journal.Dir())
			w.offerLeft()
		}},
	}})
}

// restore opens left work. It goes from the old journal only when it stands in the new one.
func (w *window) restore(l journal.Left) {
	w.s.Restore(l.Pattern, l.Path)
	if w.keeper.doc.Load().Flush() == nil {
		w.keeper.complain(w.keeper.journal.Taken(l))
	}
	w.show(makeView)
	w.win.Canvas().Focus(w.page)
	w.offerLeft()
}

// seeBoth lists the rows in which the file and the window differ.
func (w *window) seeBoth() {
	other, err := pattern.Load(w.s.Path())
	if err != nil {
		w.say(upperFirst(err.Error()) + ".")
		return
	}
	differ := journal.Differences(other, w.s.Pattern())
	const line = 46
	top := float32(0)
	s := &sheet{title: "Both, row by row", size: fyne.NewSize(760, 460)}
	s.scroll = func(by float32) { top = max(0, min(top-by*2, float32(len(differ))*line-300)) }
	s.draw = func(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
		if len(differ) == 0 {
			d.Words("The rows are the same; yarns, sizes or words beside them differ.", 24, sheetTop+20, theme.Body, false, k.Ink2)
		}
		y := float32(sheetTop+10) - top
		for _, r := range differ {
			if y > sheetTop-4 && y < size.Height-100 {
				w.differing(d, k, "file", r.There, y, size.Width)
				w.differing(d, k, "here", r.Here, y+20, size.Width)
			}
			y += line
		}
		keep := d.Button(k, "Keep mine", size.Width-24, size.Height-48, true, true, w.closeSheet)
		take := d.Button(k, "Take the other file", keep.X-10, size.Height-48, false, true, func() {
			w.closeSheet()
			w.takeOther()
		})
		return []control.Spot{take, keep}
	}
	w.openSheet(s)
}

// differing draws a row as it is in one place; one that is not there as a dash.
func (w *window) differing(d *control.Canvas, k theme.Tokens, where, row string, y, width float32) {
	d.Words(where, 24, y, theme.Second, false, k.Ink2)
	if row == "" {
		row = "–"
	}
	d.Words(control.Fitted(row, theme.Body, false, width-100), 70, y, theme.Body, false, k.Ink)
}
