package app

import (
	"path/filepath"
	"strings"
	"testing"

	"strandway/app/session"
)

// F7 writes the rows in the other terms in one step, and the caret stays in its line.
func TestUSAndUKAtWill(t *testing.T) {
	w, settle := shown(t, "", 1024, 700)
	w.beginWith(session.Blank())
	const us = "With A, ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, skip first st, hdc in each st across."
	w.s.Paste(us)
	settle()
	w.s.PutCaret(strings.Index(us, ", turn"), false)
	w.changeTerms()
	settle()
	if got, want := w.s.Rows(), "With A, ch 21.\nRow 1: Dc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, miss first st, htr in each st across."; got != want || w.s.Pattern().Terms != "UK" {
		t.Errorf("in %s terms: %q", w.s.Pattern().Terms, got)
	}
	if at := w.s.Caret().At; strings.Count(w.s.Rows()[:at], "\n") != 1 {
		t.Error("the caret left its line")
	}
	w.s.Undo()
	if w.s.Rows() != us || w.s.Pattern().Terms != "US" {
		t.Error("it is not one step")
	}
}

// What was saved can be taken again, and one's own given back.
func TestOpenAgainAsSaved(t *testing.T) {
	w, settle := shown(t, "groyne-runner", 1024, 700)
	saved := w.s.Rows()
	w.saveTo(filepath.Join(t.TempDir(), "runner.strand"), nil)
	if w.canRevert() {
		t.Error("there is something to take back right after saving")
	}
	w.s.Type("x")
	settle()
	w.revert()
	settle()
	if w.s.Rows() != saved || w.s.Changed() {
		t.Errorf("the rows are not those of the file; changed %t", w.s.Changed())
	}
	w.s.Undo()
	if w.s.Rows() == saved {
		t.Error("one's own is gone")
	}
}
