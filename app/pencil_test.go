package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"strandway/app/session"
)

// The pencil is dragged over cells and works them in its yarn, in one step; the fill works a patch.
func TestThePencilOnTheCells(t *testing.T) {
	w, settle := shown(t, "", 1440, 900)
	p := session.Blank()
	p.Pieces[0].Rows = "With A, ch 9.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2 (WS): Ch 1, sc in each st across, turn.\nRow 3 (RS): Ch 1, sc in each st across."
	w.beginWith(p)
	w.addYarn()
	settle()
	before := w.s.Rows()
	w.brush = "B"
	w.togglePencil()
	settle()
	pane := w.pair.Chart
	f := w.s.Made().Fabric()
	cell := func(row, nth int) fyne.Position {
		at, ok := pane.PlaceOf(f.Rows[row].First + int32(nth))
		if !ok {
			t.Fatalf("stitch %d of row %d is not in the grid", nth, row)
		}
		return at.Subtract(w.app.Driver().AbsolutePositionForObject(pane)).SubtractXY(0, 8)
	}
	press := func(at fyne.Position) {
		pane.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary})
	}
	release := func(at fyne.Position) {
		pane.MouseUp(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary})
	}
	from, to := cell(3, 3), cell(3, 6)
	press(from)
	pane.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: to}})
	release(to)
	settle()
	if got := w.s.Rows(); !strings.Contains(got, "with B, sc in next 4 sts") {
		t.Errorf("the rows are %q; said %q", got, w.said)
	}
	w.s.Undo()
	settle()
	if w.s.Rows() != before {
		t.Error("a stroke is not one step")
	}
	w.pair.TakePencil("B", true)
	press(cell(2, 2))
	settle()
	if got := w.s.Rows(); !strings.Contains(got, "With B, ") || strings.Contains(got, "sc in next") {
		t.Errorf("filled, the rows are %q; said %q", got, w.said)
	}
	w.win.Canvas().Focus(pane)
	w.press(fyne.KeyEscape)
	if letter, _ := w.pair.Pencil(); letter != "" {
		t.Error("Esc does not put the pencil down")
	}
}

// With stitches chosen in a picture a yarn is for them alone, from the menus too; the fill fills them and no others.
func TestChosenStitchesTakeAYarn(t *testing.T) {
	w, settle := shown(t, "", 1440, 900)
	p := session.Blank()
	p.Pieces[0].Rows = "With A, ch 9.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2 (WS): Ch 1, sc in each st across."
	w.beginWith(p)
	w.addYarn()
	settle()
	first := w.s.Made().Fabric().Rows[2].First
	w.s.Choose([]int32{first + 3, first + 4}, first+3)
	w.win.Canvas().Focus(nil) // as while a menu is open
	if got := w.sayFill(); got != "Fill the chosen stitches in yarn A" {
		t.Errorf("the fill says %q", got)
	}
	w.rowYarn("B")
	settle()
	if got := w.s.Rows(); !strings.Contains(got, "with B, sc in next 2 sts") {
		t.Errorf("the rows are %q; said %q", got, w.said)
	}
	w.brush = "A"
	w.fillPatch()
	settle()
	if got := w.s.Rows(); strings.Contains(got, "with B") {
		t.Errorf("filled, the rows are %q; said %q", got, w.said)
	}
}

// A yarn that the rows name and the pattern lacks is added by the mend of its finding.
func TestMendAddsTheYarn(t *testing.T) {
	w, settle := shown(t, "", 1440, 900)
	p := session.Blank()
	p.Pieces[0].Rows = "With A, ch 9.\nRow 1 (C): Sc in 2nd ch from hook and in each ch across."
	w.beginWith(p)
	settle()
	w.mend()
	settle()
	if !w.hasYarn("C") {
		t.Errorf("there is no yarn C; findings %v", w.s.Findings())
	}
}
