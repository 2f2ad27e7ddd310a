package app

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"strandway/chart/geom"
)

// A note is put beside the chosen stitch, dragged with the mouse, moved with the arrows, worded anew
// and taken out; each is one step of undo.
func TestNotesOnTheChart(t *testing.T) {
	w, settle := shown(t, "groyne-runner", 1440, 900)
	w.show(makeView)
	row := &w.s.Made().Fabric().Rows[3]
	id := row.First + 4
	w.s.Choose([]int32{id}, id)
	if err := w.s.AddNote(id, "work loosely"); err != nil {
		t.Fatal(err)
	}
	settle()
	notes := w.pair.Notes()
	if len(notes) != 1 || w.s.Notes()[0].Text != "work loosely" {
		t.Fatalf("the chart has the notes %+v", notes)
	}
	n := notes[0]
	pane := w.pair.Chart
	from := pane.At(n.Box.Centre())
	press := fyne.NewPos(float32(from.X), float32(from.Y))
	pane.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: press}, Button: desktop.MouseButtonPrimary})
	if got, ok := w.pair.Note(); !ok || got.Index != 0 || len(w.s.Chosen().Stitches) != 0 {
		t.Fatal("the press did not choose the note alone")
	}
	to := press.AddXY(60, -40)
	pane.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: press.AddXY(20, -20)}})
	pane.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: to}})
	if w.s.UndoLabel() != "Note on the chart" {
		t.Error("the note was moved before it was let go")
	}
	pane.MouseUp(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: to}, Button: desktop.MouseButtonPrimary})
	settle()
	moved := w.pair.Notes()[0]
	if at := pane.At(moved.Box.Centre()); at.Sub(geom.Point{X: float64(to.X), Y: float64(to.Y)}).Len() > 2 {
		t.Errorf("it was let go at %v and stands at %v", to, at)
	}
	if w.s.UndoLabel() != "Move the note" {
		t.Errorf("the last step is %q", w.s.UndoLabel())
	}

	dragged := w.s.Notes()[0]
	for range 3 {
		w.noteKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	}
	settle()
	if got := w.s.Notes()[0]; got.X < dragged.X+.74 || got.X > dragged.X+.76 || got.Y != dragged.Y {
		t.Errorf("three arrows moved it from %v, %v to %v, %v", dragged.X, dragged.Y, got.X, got.Y)
	}
	w.s.WordNote(0, "hold the float here")
	w.s.TakeOutNote(0)
	settle()
	if len(w.pair.Notes()) != 0 {
		t.Error("it was taken out and is still there")
	}
	for range 5 {
		w.s.Undo()
	}
	settle()
	if len(w.s.Notes()) != 0 || w.s.UndoLabel() != "" {
		t.Errorf("after five undos there are %d notes, and %q to undo", len(w.s.Notes()), w.s.UndoLabel())
	}
}

func TestNotesAreReachedByKeys(t *testing.T) {
	w, settle := shown(t, "groyne-runner", 1440, 900)
	w.show(makeView)
	row := &w.s.Made().Fabric().Rows[2]
	for i := range int32(2) {
		if err := w.s.AddNote(row.First+3+5*i, "here"); err != nil {
			t.Fatal(err)
		}
		settle()
	}
	for _, want := range []int{0, 1, 0} {
		w.nextNote()
		if n, ok := w.pair.Note(); !ok || n.Index != want || w.win.Canvas().Focused() != w.pair.Chart {
			t.Errorf("the note in hand is %d, want %d", n.Index, want)
		}
	}
	w.noteKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if w.noteKey(&fyne.KeyEvent{Name: fyne.KeyRight}) {
		t.Error("no note was in hand, and an arrow moved one")
	}
	w.nextNote()
	w.s.Choose([]int32{row.First + 3}, row.First+3)
	if _, ok := w.pair.Note(); ok {
		t.Error("a stitch was chosen and the note still is")
	}
	if err := w.s.AddNote(0, "at the foundation"); err == nil {
		t.Error("a chain of the foundation took a note")
	}
}
