package app

import (
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"strandway/model/edit"
)

// pressed sends a key to what has the focus.
func pressed(w *window, key fyne.KeyName) {
	w.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key})
}

func TestTeachTakesTheKeysAndTheScreen(t *testing.T) {
	w, settle := shown(t, "groyne-runner", 1280, 800)
	w.show(teachView)
	patience := time.Now().Add(20 * time.Second)
	for w.teach.Stage() == nil {
		if time.Now().After(patience) {
			t.Fatal("the stage was never made")
		}
		time.Sleep(300 * time.Millisecond)
		w.editRow("Same row again", edit.RepeatRow) // while that settles, the stage is handed over
		settle()
	}
	w.show(teachView) // the rows took the keys
	pressed(w, fyne.KeyHome)
	pressed(w, fyne.KeyPageDown)
	if step, _ := w.teach.Step(); step.First != 25 || w.said == "" {
		t.Errorf("Page Down leads to stitch %d, want the first of Row 1; the status says %q", step.First, w.said)
	}
	pressed(w, fyne.KeyF11)
	if !w.alone || w.teach.Size().Width != w.desk.Size().Width {
		t.Error("F11 does not give the stage the screen")
	}
	pressed(w, fyne.KeyEscape)
	if w.alone || w.teach.Size().Width == w.desk.Size().Width {
		t.Error("Esc does not give the screen back")
	}
	pressed(w, fyne.KeyF11)
	w.show(makeView)
	if w.alone || w.teach.Visible() || !w.strip.Visible() {
		t.Error("another view leaves the stage on the screen")
	}
}
