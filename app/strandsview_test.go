package app

import (
	"testing"
	"time"

	"strandway/app/session"
)

// Another way to turn the rows is found in the background, shown without being written, and
// written in one step of undo.
func TestAnotherWayIsShownAndUsed(t *testing.T) {
	w, settle := shown(t, "", 1440, 900)
	late := make(chan func(), 16)
	w.post = func(f func()) { late <- f }
	p := session.Blank()
	p.Yarns = append(p.Yarns, p.Yarns[0])
	p.Yarns[1].Letter = "B"
	p.Pieces[0].Rows = "With A, ch 21.\nRow 1 (A): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2 (B): Ch 1, sc in each st across, turn.\n" +
		"Row 3 (A): Ch 1, sc in each st across, turn.\nRow 4 (B): Ch 1, sc in each st across."
	w.beginWith(p)
	settle()
	w.show(strandsView)
	for patience := time.After(20 * time.Second); w.reckoning == nil; {
		select {
		case f := <-late:
			f()
		case <-patience:
			t.Fatal("the strands were never reckoned")
		}
	}
	if !w.canReplan() {
		t.Fatalf("no other way was found: %s", w.reckoning.why)
	}
	before := w.s.Rows()
	w.showOtherWay()
	if !w.strandsSeen.other || w.s.Rows() != before {
		t.Error("showing the other way is not what it did")
	}
	w.useOtherWay()
	settle()
	if cuts := w.figures().Pieces[0].Strands.Cut(); cuts != 0 || w.s.Rows() == before {
		t.Errorf("the rows written the other way have %d cuts", cuts)
	}
	w.s.Undo()
	if w.s.Rows() != before {
		t.Error("it takes more than one undo")
	}
}
