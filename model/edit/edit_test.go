package edit

import (
	"testing"

	"strandway/model/diag"
	"strandway/model/pattern"
)

func mat() *pattern.Pattern {
	return &pattern.Pattern{
		Title:      "Quay Mat",
		Yarns:      []pattern.Yarn{{Letter: "A", Shade: "Deep Water", Colour: "#27405c"}, {Letter: "B", Shade: "Shell", Colour: "#e6dcc6"}},
		Colourways: []pattern.Colourway{{Name: "Low tide", Shades: map[string]pattern.Shade{"A": {Shade: "Deep Water", Colour: "#27405c"}}}},
		Pieces:     []pattern.Piece{{Name: "Body", Rows: "Row 1: sc in each st.\nRow 2: dc in each st.\n"}},
	}
}

func TestAnEditLeavesTheOldPatternAlone(t *testing.T) {
	p := mat()
	before := string(p.Encode())
	edits := map[string]*pattern.Pattern{
		"rows":      Replace(p, 0, diag.Span{Start: 7, End: 9}, "hdc"),
		"yarn":      Shade(p, "", "B", pattern.Shade{Shade: "Foam", Colour: "#ffffff"}),
		"shade":     Shade(p, "Low tide", "A", pattern.Shade{Shade: "Moss", Colour: "#445533"}),
		"colourway": AddColourway(p, "Marram", nil),
		"rename":    RenameColourway(p, "Low tide", "Ebb"),
	}
	if letter := NextYarn(p); letter != "C" {
		t.Errorf("the third yarn gets letter %q", letter)
	}
	edits["new yarn"] = AddYarn(p, "C")
	if got := string(p.Encode()); got != before {
		t.Errorf("the old pattern became\n%s", got)
	}
	for name, q := range edits {
		if string(q.Encode()) == before {
			t.Errorf("%s: nothing changed", name)
		}
	}
	if got := edits["rows"].Pieces[0].Rows; got != "Row 1: hdc in each st.\nRow 2: dc in each st.\n" {
		t.Errorf("rows became %q", got)
	}
}

func TestHistory(t *testing.T) {
	p := mat()
	h := NewHistory(State{Pattern: p}, true)
	write := func(s string) State { return State{Pattern: Rows(p, 0, s)} }
	now := func(want string) {
		t.Helper()
		if got := h.Now().Pattern.Pieces[0].Rows; got != want {
			t.Errorf("rows are %q, want %q", got, want)
		}
	}
	h.Grow("Typing", write("s"))
	h.Grow("Typing", write("sc"))
	if !h.Changed() || h.UndoLabel() != "Typing" {
		t.Error("typing is a change that can be undone")
	}
	h.Seal()
	h.Grow("Typing", write("sc i"))
	h.Grow("Typing", write("sc in"))
	h.Undo()
	now("sc")
	h.Undo()
	now(p.Pieces[0].Rows)
	if h.Changed() {
		t.Error("undone to what is in the file, yet changed")
	}
	h.Redo()
	now("sc")
	h.Saved()
	h.Grow("Typing", write("sc,"))
	h.Undo()
	now("sc")
	if h.Changed() {
		t.Error("a step after saving grew into the saved one")
	}
	h.Undo()
	h.Do("Turn", write("x"))
	if _, ok := h.Redo(); ok {
		t.Error("what was undone before a new step came back")
	}
	if !h.Changed() {
		t.Error("the saved state is gone, so there are changes")
	}
}

func TestLine(t *testing.T) {
	text := "one\n\nthree"
	for at, want := range map[int]string{0: "one", 3: "one", 4: "", 5: "three", 10: "three"} {
		if s := Line(text, at); text[s.Start:s.End] != want {
			t.Errorf("line at %d is %q, want %q", at, text[s.Start:s.End], want)
		}
	}
}
