package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Field is a field for one line. Enter and Esc end it, up and down go through what it
// chooses from, and keys that it has no use for are handed on.
type Field struct {
	widget.Entry

	Enter  func(text string)
	Escape func()
	Walk   func(step int) // up and down; nil: they do nothing
	Keys   func(*fyne.KeyEvent) bool
	Tab    func() // takes the Tab key; nil: it leaves the field
}

// NewField makes a field with a text, all of it chosen.
func NewField(text string) *Field {
	f := &Field{}
	f.ExtendBaseWidget(f)
	f.SetText(text)
	return f
}

// FocusGained chooses the whole text.
func (f *Field) FocusGained() {
	f.Entry.FocusGained()
	f.TypedShortcut(&fyne.ShortcutSelectAll{})
}

// AcceptsTab implements fyne.Tabbable.
func (f *Field) AcceptsTab() bool { return f.Tab != nil }

// TypedKey implements fyne.Focusable.
func (f *Field) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		f.Enter(f.Text)
	case fyne.KeyTab:
		if f.Tab != nil {
			f.Tab()
		}
	case fyne.KeyEscape:
		f.Escape()
	case fyne.KeyUp, fyne.KeyDown:
		if f.Walk != nil {
			step := 1
			if e.Name == fyne.KeyUp {
				step = -1
			}
			f.Walk(step)
		}
	case fyne.KeyF1, fyne.KeyF2, fyne.KeyF3, fyne.KeyF6, fyne.KeyF8, fyne.KeyF9, fyne.KeyF11:
		if f.Keys != nil {
			f.Keys(e)
		}
	default:
		f.Entry.TypedKey(e)
	}
}
