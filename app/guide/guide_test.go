package guide

import (
	"strings"
	"testing"
)

const rows = `With A, ch 15.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in each st across, turn.
Row 3 (B): Ch 1, sc in each st across, turn.
Row 4 (B): Ch 1, sc in each st across, turn.
Row 5 (A): Ch 1, sc in each st across, turn.
Row 6 (A): Ch 1, sc in each st across, turn.
Row 7 (B): Ch 1, sc in each st across, turn.
Row 8 (B): Ch 1, sc in each st across, turn.
`

func begin(t *testing.T) *Guide {
	t.Helper()
	g, err := Mat()
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func press(g *Guide) string {
	if g.Done() {
		return ""
	}
	s, _, _ := g.Step()
	return s.Press
}

func TestTheMatIsFinishedByDoingWhatItSays(t *testing.T) {
	g := begin(t)
	now := State{Yarns: 1}
	said := map[string]int{}
	for range 200 {
		if g.Done() {
			break
		}
		p := press(g)
		said[p]++
		now.Did = ""
		switch { // as the window does it
		case p == "Ctrl+Return" && strings.Contains(now.Rows, "Row 1"):
			now.Rows += "\nRow 2: "
		case p == "Ctrl+Return":
			now.Rows += "\nRow 1: "
		case p == "Ctrl+D" && !strings.Contains(now.Rows, "Row 3"):
			now.Rows += "\nRow 3: Ch 1, sc in each st across, turn."
		case p == "Alt+2":
			now.Rows = strings.Replace(now.Rows, "Row 3:", "Row 3 (B):", 1)
		case p == "Ctrl+D":
			now.Rows = rows
		case p == "+":
			now.Yarns++
		case p == "Ctrl+Z":
			now.Did = "undo"
		case p == "Ctrl+Shift+Z":
			now.Did = "redo"
		case p == "Yarn, New colourway":
			now.Colourways++
		case p == "Ctrl+S":
			now.Saved = true
		default:
			now.Rows += p
		}
		if !g.See(now) {
			t.Fatalf("doing %q is not seen; rows:\n%s", p, now.Rows)
		}
	}
	if !g.Done() {
		_, n, of := g.Step()
		t.Errorf("stuck at step %d of %d", n, of)
	}
	if len(said) < 8 {
		t.Errorf("only %d different things were asked for", len(said))
	}
}

func TestWhoKnowsMoreSkipsSteps(t *testing.T) {
	g := begin(t)
	g.See(State{Rows: rows, Yarns: 2})
	if press(g) != "Ctrl+Z" {
		t.Errorf("with all rows pasted the guide says %q", press(g))
	}
	g.See(State{Rows: rows, Yarns: 2, Did: "undo"})
	if press(g) != "Ctrl+Shift+Z" {
		t.Errorf("after undo it says %q", press(g))
	}
}

func TestNothingIsDoneByNothing(t *testing.T) {
	g := begin(t)
	if g.See(State{Yarns: 1}) {
		t.Error("the empty page finishes a step")
	}
	for i, s := range g.steps {
		if s.Say == "" || s.Press == "" {
			t.Errorf("step %d does not say what to do", i+1)
		}
		if s.done(State{Yarns: 1}) {
			t.Errorf("step %d, %q, is done by an empty page", i+1, s.Press)
		}
	}
}
