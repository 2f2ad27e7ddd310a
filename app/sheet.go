package app

import (
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
)

// sheet is a question laid over the window. Esc and a click beside it close it.
type sheet struct {
	title  string
	size   fyne.Size
	draw   func(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot // below the title
	scroll func(by float32)                                                       // the wheel; may be nil
	fields []placed

	card *control.Panel
}

// placed is a field at its place on a sheet.
type placed struct {
	field      *control.Field
	x, y, w, h float32
}

// sheetTop is where a sheet's own things begin, below its title.
const sheetTop = 54

// openSheet lays a sheet over the window.
func (w *window) openSheet(s *sheet) {
	k := w.th.Tokens()
	scrim := control.NewPanel(w.th, fyne.NewSize(1, 1), func(d *control.Canvas, _ theme.Tokens, size fyne.Size) []control.Spot {
		d.Rect(0, 0, size.Width, size.Height, 0, color.NRGBA{k.Ink.R / 4, k.Ink.G / 4, k.Ink.B / 4, 90})
		return []control.Spot{{W: size.Width, H: size.Height, Do: w.closeSheet}}
	})
	s.card = control.NewPanel(w.th, s.size, func(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
		d.Frame(0, 0, size.Width, size.Height, 8, k.Paper, k.Edge, 1)
		d.Words(translation.Sentence(translation.Say(s.title)), 24, 30, theme.Name, true, k.Ink)
		if s.draw == nil {
			return nil
		}
		return s.draw(d, k, size)
	})
	s.card.Keys = func(e *fyne.KeyEvent) bool {
		if e.Name == fyne.KeyEscape {
			w.closeSheet()
		}
		return true
	}
	s.card.Wheel, s.card.Tab = s.scroll, func() { w.tabOn(s) }
	objects := []fyne.CanvasObject{s.card}
	for _, f := range s.fields {
		f.field.Escape, f.field.Tab = w.closeSheet, s.card.Tab
		objects = append(objects, f.field)
	}
	w.over.Objects = []fyne.CanvasObject{scrim, container.New(&sheetLayout{s}, objects...)}
	w.over.Refresh()
	if len(s.fields) > 0 {
		w.win.Canvas().Focus(s.fields[0].field)
	} else {
		w.win.Canvas().Focus(s.card)
		s.card.ToFirst()
	}
}

// tabOn takes the keys to the next field or button of a sheet, with Shift to the last one, and
// never off it.
func (w *window) tabOn(s *sheet) {
	step := 1
	if w.modifiers()&fyne.KeyModifierShift != 0 {
		step = -1
	}
	at := -1 // on the card
	for i, f := range s.fields {
		if w.win.Canvas().Focused() == f.field {
			at = i
		}
	}
	if at < 0 {
		if s.card.ToButton(step, false) {
			return
		}
		at = len(s.fields)
		if step > 0 {
			at = -1
		}
	}
	if next := at + step; next >= 0 && next < len(s.fields) {
		w.win.Canvas().Focus(s.fields[next].field)
		return
	}
	w.win.Canvas().Focus(s.card)
	s.card.ToButton(step, true)
}

// closeSheet takes the sheet away and gives the keys back to the rows.
func (w *window) closeSheet() {
	if len(w.over.Objects) == 0 {
		return
	}
	w.over.Objects = nil
	w.over.Refresh()
	w.win.Canvas().Focus(w.page)
}

// sheetOpen reports whether a question waits to be answered.
func (w *window) sheetOpen() bool { return len(w.over.Objects) > 0 }

// sheetLayout puts a sheet into the middle of the window, somewhat high.
type sheetLayout struct{ s *sheet }

func (l *sheetLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(100, 100) }

func (l *sheetLayout) Layout(_ []fyne.CanvasObject, whole fyne.Size) {
	size := fyne.NewSize(min(l.s.size.Width, whole.Width-20), min(l.s.size.Height, whole.Height-20))
	x, y := (whole.Width-size.Width)/2, (whole.Height-size.Height)*.4
	put(l.s.card, x, y, size.Width, size.Height)
	for _, f := range l.s.fields {
		put(f.field, x+f.x, y+f.y, f.w, f.h)
	}
}

// ask asks for one line.
func (w *window) ask(title, value, answer string, done func(string)) {
	field := control.NewField(value)
	finish := func(text string) {
		w.closeSheet()
		done(text)
	}
	field.Enter = finish
	w.openSheet(&sheet{
		title: title, size: fyne.NewSize(440, 156),
		fields: []placed{{field, 24, sheetTop, 392, 36}},
		draw: func(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
			yes := d.Button(k, answer, size.Width-24, 106, true, true, func() { finish(field.Text) })
			no := d.Button(k, "Cancel", yes.X-10, 106, false, true, w.closeSheet)
			return []control.Spot{yes, no}
		},
	})
}

// choice is one way to answer a question.
type choice struct {
	label string
	first bool
	do    func()
}

// choose asks a question that has a few answers.
func (w *window) choose(title, about string, choices ...choice) {
	w.openSheet(&sheet{
		title: title, size: fyne.NewSize(560, 148),
		draw: func(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
			d.Words(control.Fitted(translation.Sentence(about), theme.Body, false, size.Width-48), 24, 62, theme.Body, false, k.Ink2)
			x := size.Width - 24
			var spots []control.Spot
			for _, c := range choices {
				s := d.Button(k, c.label, x, 94, c.first, true, func() {
					w.closeSheet()
					c.do()
				})
				spots = append(spots, s)
				x = s.X - 10
			}
			slices.Reverse(spots) // as they stand, from the left
			return spots
		},
	})
}
