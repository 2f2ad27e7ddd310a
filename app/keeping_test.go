package app

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"strandway/app/action"
	"strandway/app/journal"
	"strandway/model/pattern"
	"strandway/samples"
)

// at is a clock that stands still; what is to be done later is done when told.
type at struct{ later []func() }

func (a *at) clock() journal.Clock {
	return journal.Clock{Now: func() time.Time { return time.Date(2026, 3, 1, 14, 0, 0, 0, time.UTC) },
		After: func(_ time.Duration, do func()) { a.later = append(a.later, do) }}
}

func (a *at) pass() {
	later := a.later
	a.later = nil
	for _, do := range later {
		do()
	}
}

// kept is a window that journals in a folder, with a file of its own open.
func kept(t *testing.T, folder string) (*window, *at, func()) {
	t.Helper()
	w, settle := shown(t, "", 1440, 900)
	clock := &at{}
	j, err := journal.Open(folder, clock.clock())
	if err != nil {
		t.Fatal(err)
	}
	w.keep(j)
	return w, clock, settle
}

// mine is a sample as a file of one's own.
func mine(t *testing.T) string {
	t.Helper()
	src, err := samples.Read("groyne-runner")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "runner.strand")
	if err := os.WriteFile(path, src, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// answer gives an answer to the notice that is shown.
func answer(t *testing.T, w *window, label string) {
	t.Helper()
	for _, a := range w.notices[0].answers {
		if a.label == label {
			about := w.notices[0].about
			w.dismiss(about)
			a.do()
			return
		}
	}
	t.Fatalf("%q cannot be answered with %q", w.notices[0].says, label)
}

func TestUnsavedWorkIsOfferedByTheNextWindow(t *testing.T) {
	folder, path := t.TempDir(), mine(t)
	first, clock, _ := kept(t, folder)
	first.open(path)
	first.s.PutCaret(len(first.s.Rows()), false)
	first.s.Type("Row 25: Ch 1.\n")
	clock.pass()
	written := first.s.Rows()
	first.keeper.journal.Abandon()

	next, _, _ := kept(t, folder)
	if len(next.notices) != 1 || next.notices[0].says != "Groyne Runner has 1 row that was never saved." {
		t.Fatalf("the next window says %+v", next.notices)
	}
	if !next.notice.Visible() {
		t.Error("the strip is not shown")
	}
	answer(t, next, "Open with them")
	if next.s.Rows() != written || next.s.Path() != path || !next.s.Changed() {
		t.Errorf("opened %s, changed %v, with rows ending in %q", next.s.Path(), next.s.Changed(), next.s.Rows()[len(next.s.Rows())-30:])
	}
	if len(next.notices) != 0 || next.notice.Visible() {
		t.Error("the strip stays")
	}
	next.keeper.journal.Abandon()
	if third, _, _ := kept(t, folder); len(third.notices) != 1 {
		t.Error("restored work that was not saved again is not offered after a second crash")
	}
}

func TestAFileChangedByOthersIsTaken(t *testing.T) {
	path := mine(t)
	w, _, _ := kept(t, t.TempDir())
	w.open(path)
	w.tellOf(w.keeper.look())
	if len(w.notices) > 0 {
		t.Fatalf("it says %q of a file nobody touched", w.notices[0].says)
	}
	p := w.s.Pattern()
	other := *p
	other.Title = "Groyne Runner, longer"
	if err := pattern.Save(path, &other); err != nil {
		t.Fatal(err)
	}
	w.tellOf(w.keeper.look())
	if len(w.notices) != 1 || !strings.Contains(w.notices[0].says, "was changed by another program") {
		t.Fatalf("it says %+v", w.notices)
	}
	if !w.s.Changed() {
		t.Error("the window counts as saved although the file holds something else")
	}
	answer(t, w, "Take the other file")
	if w.s.Pattern().Title != other.Title || w.s.Changed() {
		t.Errorf("took %q, changed %v", w.s.Pattern().Title, w.s.Changed())
	}
	w.s.Undo()
	if w.s.Pattern() != p {
		t.Error("undo does not give back what was here")
	}
	w.tellOf(w.keeper.look())
	if len(w.notices) > 0 {
		t.Errorf("what was taken is told of again: %q", w.notices[0].says)
	}
}

func TestTwoWindowsOnOneFileTellOfEachOther(t *testing.T) {
	folder, path := t.TempDir(), mine(t)
	first, _, _ := kept(t, folder)
	first.open(path)
	second, _, _ := kept(t, folder)
	second.open(path)
	for _, w := range []*window{first, second} {
		w.tellOf(w.keeper.look())
		if len(w.notices) != 1 || !strings.Contains(w.notices[0].says, "open in another window too") {
			t.Errorf("a window says %+v", w.notices)
		}
	}
	first.stopKeeping()
	second.tellOf(second.keeper.look())
	if len(second.notices) != 0 {
		t.Error("the other window is closed, but the strip stays")
	}
}

func TestTheFirstMatIsLedStepByStep(t *testing.T) {
	w, _, _ := kept(t, t.TempDir())
	w.beginMat()
	if len(w.notices) != 1 || w.notices[0].press != "With A, ch 15." {
		t.Fatalf("it begins with %+v", w.notices)
	}
	for _, r := range "With A, ch 15." {
		w.page.TypedRune(r)
	}
	if got := w.notices[0].press; got != "Ctrl+Return" {
		t.Errorf("after the foundation it names %q", got)
	}
	w.run(w.table.For(action.Key("Ctrl+Return")))
	if got := w.notices[0].press; !strings.HasPrefix(got, "Sc in 2nd ch") {
		t.Errorf("on the new row it names %q; rows are %q", got, w.s.Rows())
	}
	answer(t, w, "Leave")
	w.s.Type("x")
	if len(w.notices) != 0 {
		t.Error("it goes on after it was left")
	}
}
