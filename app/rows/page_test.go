package rows

import (
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"strandway/app/session"
	"strandway/app/theme"
	"strandway/chart/display"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/strand"
)

// opened is a page of rows of a width, worked to the end.
func opened(t *testing.T, width float32, p *pattern.Pattern) (*Page, *session.Session) {
	t.Helper()
	test.NewTempApp(t)
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	posted := make(chan func(), 64)
	s := session.New(lib, func(f func()) { posted <- f })
	t.Cleanup(s.Close)
	s.Begin(p)
	page := New(s, theme.New(theme.Light))
	page.Keys = func(*fyne.KeyEvent) bool { return false }
	page.NewRow = func() { s.Type("\nnew: ") }
	page.Modifiers = func() fyne.KeyModifier { return 0 }
	page.Shortcut, page.Hint = func(fyne.Shortcut) {}, func(string) {}
	page.MoveRow = func(int, int) {}
	page.First = func(*fyne.KeyEvent) bool { return false }
	page.Typed, page.Left = func() {}, func() {}
	page.Resize(fyne.NewSize(width, 600))
	patience := time.After(20 * time.Second)
	for !s.Current() {
		select {
		case f := <-posted:
			f()
		case <-patience:
			t.Fatal("the background never came to an end")
		}
	}
	return page, s
}

func sample(t *testing.T, name string) *pattern.Pattern {
	t.Helper()
	p, err := pattern.Load("../../samples/" + name + ".strand")
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestTheCaretIsWhereItIsPut(t *testing.T) {
	for _, width := range []float32{384, 536} {
		page, s := opened(t, width, sample(t, "groyne-runner"))
		for i := range page.boxes {
			for l, ln := range page.boxes[i].lines {
				for at := ln.start; at < ln.end; at++ {
					p := page.caretPoint(at)
					if p.X > width-textMargin+2 && strings.TrimSpace(s.Rows()[at:ln.end]) != "" {
						t.Fatalf("at %g px the words of box %d, line %d leave the page: %g", width, i, l, p.X)
					}
					if got := page.offsetAt(p.X, p.Y+lineHeight/2); got != at {
						t.Fatalf("box %d, line %d: a click where %d stands gives %d", i, l, at, got)
					}
				}
			}
		}
	}
}

func TestTyping(t *testing.T) {
	page, s := opened(t, 536, &pattern.Pattern{Terms: "US", Pieces: []pattern.Piece{{Rows: "With A, ch 11.\n"}}})
	for _, r := range "Row" {
		page.TypedRune(r)
	}
	page.TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
	if want := "With A, ch 11.Ro\n"; s.Rows() != want {
		t.Errorf("rows are %q, want %q", s.Rows(), want)
	}
	page.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	page.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	page.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	if want := "Wth A, ch 11.Ro\n"; s.Rows() != want {
		t.Errorf("rows are %q, want %q", s.Rows(), want)
	}
}

func TestUpAndDownGoFromRowToRow(t *testing.T) {
	page, s := opened(t, 384, sample(t, "groyne-runner"))
	s.PutCaret(0, false)
	last, steps := -1, 0
	for at := s.Caret().At; at != last; at = s.Caret().At {
		if at < last {
			t.Fatalf("down went from %d up to %d", last, at)
		}
		last = at
		page.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
		steps++
	}
	if steps < 20 || last < len(strings.TrimSpace(s.Rows()))-40 {
		t.Errorf("%d steps down end at %d of %d", steps, last, len(s.Rows()))
	}
}

func TestARangeOfRowsIsRuledByItsOwnCords(t *testing.T) {
	page, _ := opened(t, 536, sample(t, "groyne-runner"))
	for _, b := range page.boxes {
		switch b.number {
		case "8–23":
			if len(b.works) != 16 || len(b.cords) != cordsShown {
				t.Errorf("rows 8-23 stand for %d rows and show %d cords", len(b.works), len(b.cords))
			}
		case "4":
			if len(b.works) != 1 || len(b.cords) != 1 {
				t.Errorf("row 4 stands for %d rows and shows %d cords", len(b.works), len(b.cords))
			}
		}
	}
}

// Every join is marked once, and every yarn's colour is on the page.
func TestCords(t *testing.T) {
	page, s := opened(t, 536, sample(t, "quayside-cushion"))
	m := s.Made()
	strands := strand.Follow(m.Fabric(), nil)
	joins := 0
	for _, st := range strands.ByYarn {
		joins += len(st.Joins) // that of the ring, which has no loop, is seen at the first round
	}
	open := 0
	var inked []any
	for _, item := range page.ruling.Items {
		p := item.(display.Path)
		if p.Fill.On && p.Fill.Colour == page.th.Tokens().Paper {
			open++
		}
		inked = append(inked, p.Stroke.Colour)
	}
	if open != joins {
		t.Errorf("%d joins are marked, the strands have %d", open, joins)
	}
	for i, c := range m.Colours() {
		if !slices.Contains(inked, any(c)) {
			t.Errorf("yarn %s is nowhere", m.Fabric().Yarns[i])
		}
	}
}

func TestTwoHundredRowsAreRuledInTime(t *testing.T) {
	rows := "With A, ch 21.\nRow 1 (A): Sc in 2nd ch from hook and in each ch across, turn.\n"
	for i := 2; i <= 200; i++ {
		rows += "Row " + strconv.Itoa(i) + " (" + string(rune('A'+i/2%6)) + "): Ch 1, sc in each st across, turn.\n"
	}
	page, s := opened(t, 536, &pattern.Pattern{Terms: "US", Pieces: []pattern.Piece{{Rows: rows}}})
	best := time.Hour
	for range 5 {
		start := time.Now()
		cords(page.boxes, s.Made().Fabric(), s.Made().Colours(), page.th.Tokens(), 536, page.height)
		best = min(best, time.Since(start))
	}
	if best > 40*time.Millisecond { // ten times what it takes
		t.Errorf("the cords took %v", best)
	}
}
