package app

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"strandway/app/session"
)

func (w *window) write(s string) {
	for _, r := range s {
		w.page.TypedRune(r)
	}
}

func (w *window) press(names ...fyne.KeyName) {
	for _, name := range names {
		w.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
	}
}

// The list of words comes of itself, never takes Enter unless a word was chosen, and goes at Esc.
func TestTheListOfWords(t *testing.T) {
	const begun = "With A, ch 21.\nRow 1: Sc in 2nd ch from hook and in ne"
	for _, c := range []struct {
		typed string
		keys  []fyne.KeyName
		want  string // the end of the rows
		open  bool
	}{
		{begun, nil, "in ne", true},
		{begun, []fyne.KeyName{fyne.KeyTab}, "in next", false},
		{begun, []fyne.KeyName{fyne.KeyDown, fyne.KeyReturn}, "in next", false},
		{begun, []fyne.KeyName{fyne.KeyReturn}, "in ne\nRow 2: ", false},
		{begun, []fyne.KeyName{fyne.KeyEscape}, "in ne", false},
		{begun + "x", nil, "in nex", true},
		{begun + "xt", nil, "in next", false}, // whole as it stands
		{"With A, ch 21.\nRow 1: Hd", []fyne.KeyName{fyne.KeyDown, fyne.KeyReturn}, "Row 1: Hdc", false},
		{"With A, ch 21.\nRow 1: S", nil, "Row 1: S", false}, // one letter alone
	} {
		w, _ := shown(t, "", 1024, 700)
		w.beginWith(session.Blank())
		w.write(c.typed)
		w.press(c.keys...)
		if got := w.s.Rows(); !strings.HasSuffix(got, c.want) || w.words.Visible() != c.open {
			t.Errorf("%q and %v give %q, list %t", c.typed, c.keys, got, w.words.Visible())
		}
	}
}

// Esc holds for the word: the list does not come again at its next letter.
func TestEscKeepsTheListAway(t *testing.T) {
	w, _ := shown(t, "", 1024, 700)
	w.beginWith(session.Blank())
	w.write("With A, ch 21.\nRow 1: Sc in ne")
	w.press(fyne.KeyEscape)
	w.write("x")
	if w.words.Visible() {
		t.Error("the list is there again")
	}
	w.write("t st, ac")
	if !w.words.Visible() {
		t.Error("the list does not come for another word")
	}
	w.win.Canvas().Focus(w.pair.Chart)
	if w.words.Visible() {
		t.Error("the list stays when the keys go elsewhere")
	}
}

// The list speaks the pattern's terms.
func TestTheListSpeaksTheTerms(t *testing.T) {
	w, _ := shown(t, "", 1024, 700)
	p := session.Blank()
	p.Terms = "UK"
	w.beginWith(p)
	w.write("With A, ch 21.\nRow 1: Ht")
	if words := w.completing.words; len(words) == 0 || words[0].Text != "htr" || words[0].Means != "half treble" {
		t.Errorf("the list is %v", words)
	}
}

// A whole row typed or pasted into one that has its number already brings its own heading.
func TestARowWithItsOwnHeading(t *testing.T) {
	const row = "Row 2 (RS, B): Ch 1, sc in each st across."
	for name, put := range map[string]func(w *window){
		"typed":  func(w *window) { w.write(row) },
		"pasted": func(w *window) { w.app.Clipboard().SetContent(row); w.paste() },
	} {
		w, settle := shown(t, "", 1024, 700)
		w.beginWith(session.Blank())
		w.write("With A, ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across.")
		settle()
		w.press(fyne.KeyReturn)
		put(w)
		settle()
		if got := w.s.Rows(); !strings.HasSuffix(got, "across.\n"+row) || w.s.Findings().Faults() > 0 {
			t.Errorf("%s: %q, %v", name, got, w.s.Findings())
		}
	}
}

// A yarn given to a row leaves the caret where the words go on.
func TestTheCaretStaysWhenARowGetsItsYarn(t *testing.T) {
	for before, want := range map[string]string{
		"With A, ch 21.\nRow 1: Sc in each ch, turn.\nRow 2: ":               "Row 2 (B): |",
		"With A, ch 21.\nRow 1 (RS): Sc in each ch, turn.\nRow 2 (WS): Ch 1": "Row 2 (WS, B): Ch 1|",
		"With A, ch 21.": "With B, ch 21.|",
	} {
		w, settle := shown(t, "", 1024, 700)
		w.beginWith(session.Blank())
		w.addYarn()
		w.s.Paste(before)
		settle()
		w.rowYarn("B")
		settle()
		at := w.s.Caret().At
		got := w.s.Rows()[:at] + "|" + w.s.Rows()[at:]
		if !strings.HasSuffix(got, want) {
			t.Errorf("%q became %q", before, got)
		}
	}
}

// The key of the next yarn adds it and works the row in it; one further on is not there yet.
func TestTheKeyOfTheNextYarnAddsIt(t *testing.T) {
	w, settle := shown(t, "", 1024, 700)
	w.beginWith(session.Blank())
	w.s.Paste("With A, ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across.")
	settle()
	do := func(id string) {
		for _, a := range w.table {
			if a.ID == id {
				w.run(a)
			}
		}
		settle()
	}
	do("yarn-C")
	if len(w.s.Pattern().Yarns) != 1 || !strings.Contains(w.said, "yarn C") {
		t.Errorf("said %q", w.said)
	}
	do("yarn-B")
	if len(w.s.Pattern().Yarns) != 2 || !strings.Contains(w.s.Rows(), "Row 1 (B):") {
		t.Errorf("%d yarns, rows %q", len(w.s.Pattern().Yarns), w.s.Rows())
	}
}

// A row put between two begins empty.
func TestANewRowBetweenTwo(t *testing.T) {
	w, settle := shown(t, "", 1024, 700)
	w.beginWith(session.Blank())
	w.s.Paste("With A, ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc in each st across.")
	settle()
	w.s.PutCaret(strings.Index(w.s.Rows(), ", turn"), false)
	w.newRow()
	settle()
	if want := "across, turn.\nRow 2: \nRow 3: Ch 1, sc in each st across, turn.\nRow 4: Ch 1,"; !strings.Contains(w.s.Rows(), want) {
		t.Errorf("the rows are %q", w.s.Rows())
	}
	if w.s.Findings().Faults() > 0 {
		t.Errorf("said: %v", w.s.Findings())
	}
	w.write("Ch 1, hdc in each st across, turn.")
	settle()
	if !strings.Contains(w.s.Rows(), "\nRow 2: Ch 1, hdc in each st across, turn.\nRow 3: Ch 1, sc") {
		t.Errorf("the rows are %q", w.s.Rows())
	}
}
