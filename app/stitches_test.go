package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/session"
)

// A stitch is found by its name or abbreviation in the pattern's terms, written at the caret, and remembered.
func TestFindAStitch(t *testing.T) {
	for _, c := range []struct{ terms, sought, want string }{
		{"US", "popc", "popcorn"},
		{"US", "dc2t", "dc2tog"},
		{"UK", "half treble 2", "htr2tog"},
	} {
		w, _ := shown(t, "", 1024, 700)
		p := session.Blank()
		p.Terms = c.terms
		w.beginWith(p)
		w.write("With A, ch 21.\nRow 1: *")
		w.findStitch()
		for _, r := range c.sought {
			w.win.Canvas().Focused().TypedRune(r)
		}
		w.press(fyne.KeyReturn)
		if got := w.s.Rows(); !strings.HasSuffix(got, "Row 1: * "+c.want) || w.sheetOpen() {
			t.Errorf("%s %q: the rows are %q", c.terms, c.sought, got)
		}
		if lately := w.lately(); len(lately) != 1 || w.trayWord(lately[0]) != c.want {
			t.Errorf("taken lately are %v", w.set.Stitches)
		}
	}
}

// The tray offers the way to all stitches at any width, and no label of it is a riddle.
func TestTheTrayLeadsToAllStitches(t *testing.T) {
	for _, width := range []float32{800, 1024, 1440} {
		w, _ := shown(t, "groyne-runner", width, 700)
		k := w.th.Tokens()
		spots := w.drawTray(&control.Canvas{}, k, fyne.NewSize(width-385, trayHeight))
		last := spots[len(spots)-1]
		if !strings.Contains(last.Hint, "Ctrl+Shift+F") || last.X+last.W > width-385 {
			t.Errorf("at %g px the last thing in the tray is %q at %g", width, last.Hint, last.X)
		}
	}
	w, _ := shown(t, "groyne-runner", 1024, 700)
	for _, group := range trayKinds {
		for _, name := range group {
			kind, ok := w.lib.Read(name, "us")
			if !ok {
				t.Errorf("there is no %q", name)
				continue
			}
			if word := w.trayWord(kind); len(word) < 3 && kind.Family != "basic" && kind.Family != "chain" {
				t.Errorf("%s is called %q", name, word)
			}
		}
	}
}
