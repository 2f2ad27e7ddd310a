package app

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/session"
	"strandway/app/settings"
	"strandway/model/pattern"
)

// reckonedWindow opens the Sizes view on a mat in one yarn with a weighed swatch.
func reckonedWindow(t *testing.T) (w *window, settle func()) {
	t.Helper()
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	w, settle = shown(t, "", 1440, 900)
	late := make(chan func(), 64)
	w.post = func(f func()) { late <- f }
	p := session.Blank()
	p.Hook.MM, p.Gauge = 4, pattern.Gauge{Stitches: 20, Rows: 22, OverCM: 10, Swatch: &pattern.Swatch{WidthCM: 10, HeightCM: 10, Grams: map[string]float64{"A": 9}}}
	p.Pieces[0].Rows = "With A, ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRows 2-10: Ch 1, sc in each st across, turn. (20 sc)"
	w.beginWith(p)
	settle()
	w.show(sizesView)
	for patience := time.After(20 * time.Second); w.reckoning == nil; {
		select {
		case f := <-late:
			f()
		case <-patience:
			t.Fatal("the sizes were never reckoned")
		}
	}
	return w, settle
}

// The rows are written to a wished width and length in one step of undo.
func TestWantedIsWritten(t *testing.T) {
	w, settle := reckonedWindow(t)
	before := w.s.Rows()
	w.askWanted()
	if !w.sheetOpen() {
		t.Fatal("nothing is asked")
	}
	var fields []*control.Field
	for _, o := range w.over.Objects[1].(*fyne.Container).Objects {
		if f, ok := o.(*control.Field); ok {
			fields = append(fields, f)
		}
	}
	fields[0].SetText("30")
	fields[1].SetText("20")
	fields[1].Enter("20")
	settle()
	for _, want := range []string{"ch 61.", "(60 sc)", "Rows 2-44:"} {
		if !strings.Contains(w.s.Rows(), want) {
			t.Errorf("no %q in %s", want, w.s.Rows())
		}
	}
	w.s.Undo()
	if w.s.Rows() != before {
		t.Error("it takes more than one undo")
	}
}

// What the swatch tells is remembered for every pattern in the same yarn and hook, and forgotten again.
func TestHandsAreRememberedAndForgotten(t *testing.T) {
	w, settle := reckonedWindow(t)
	if !w.canKeepHands() {
		t.Fatal("there is nothing to remember")
	}
	w.keepOrForget()
	settle()
	kept, err := settings.LoadHands()
	if err != nil || len(kept) != 1 || kept[0].Yarn != "Harbour Worsted" {
		t.Fatalf("kept %v, %v", kept, err)
	}
	other := *w.s.Pattern()
	other.Gauge.Swatch = nil
	w.beginWith(&other)
	settle()
	if from := w.figures().Factors("A").From; from == "" {
		t.Error("the yarn of a pattern without a swatch is not reckoned by what is remembered")
	}
	w.keepOrForget()
	w.setUnits("in") // whatever has been made before has come when this has
	settle()
	if kept, _ := settings.LoadHands(); len(kept) != 0 || w.figures().Factors("A").Calibrated {
		t.Errorf("still remembered: %v", kept)
	}
}
