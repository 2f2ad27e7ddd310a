package edit

import (
	"strings"
	"testing"

	"strandway/model/diag"
	"strandway/model/syntax"
)

// written makes the tree of rows that each stand on one line, headings read by hand.
func written(lines ...string) *syntax.Tree {
	t := &syntax.Tree{Text: strings.Join(lines, "\n") + "\n"}
	at := 0
	for i, line := range lines {
		colon := strings.IndexByte(line, ':')
		r := &syntax.Row{
			Span: diag.Span{Start: at, End: at + len(line)},
			Head: diag.Span{Start: at, End: at + colon + 1},
			From: i + 1,
		}
		if strings.Contains(line[:colon], "RS") {
			r.Side = 'R'
		}
		if strings.Contains(line[:colon], "WS") {
			r.Side = 'W'
		}
		if k := strings.Index(line, "S, "); k >= 0 && k < colon {
			r.Yarn = line[k+3 : k+4]
		}
		if k := strings.LastIndex(line, "turn"); k >= 0 {
			not := strings.HasSuffix(line[:k], "do not ")
			if not {
				k -= len("do not ")
			}
			r.Body = []syntax.Node{&syntax.Turn{Span: diag.Span{Start: at + k, End: at + strings.LastIndex(line, "turn") + 4}, Not: not}}
		}
		t.Rows = append(t.Rows, r)
		at += len(line) + 1
	}
	return t
}

var stripes = []string{
	"Row 1 (RS, A): sc in each st, turn.",
	"Row 2 (WS, A): dc in each st, turn.",
	"Row 3 (RS, B): rep Rows 1 and 2 12 times, turn.",
}

func TestInsertRow(t *testing.T) {
	got, caret := InsertRow(written(stripes...), 0)
	want := "Row 1 (RS, A): sc in each st, turn.\nRow 2 (WS, A): \nRow 3 (RS, A): dc in each st, turn.\nRow 4 (WS, B): rep Rows 1 and 3 12 times, turn.\n"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if !strings.HasSuffix(got[:caret], "\nRow 2 (WS, A): ") {
		t.Errorf("the caret stands behind %q", got[:caret])
	}
}

func TestRepeatRowAtTheEnd(t *testing.T) {
	got, caret := RepeatRow(written(stripes[:2]...), 1)
	if want := stripes[0] + "\n" + stripes[1] + "\nRow 3 (RS, A): dc in each st, turn.\n"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if !strings.HasSuffix(got[:caret], "turn.") || caret != len(got)-1 {
		t.Errorf("the caret stands behind %q", got[:caret])
	}
}

func TestDeleteRow(t *testing.T) {
	got, _ := DeleteRow(written(stripes...), 1)
	if want := "Row 1 (RS, A): sc in each st, turn.\nRow 2 (WS, B): rep Rows 1 and 2 12 times, turn.\n"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestMoveRow(t *testing.T) {
	got, caret, ok := MoveRow(written(stripes[:2]...), 0, true)
	if want := "Row 1 (RS, A): dc in each st, turn.\nRow 2 (WS, A): sc in each st, turn.\n"; !ok || got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if !strings.HasPrefix(got[caret:], "sc in each st") {
		t.Errorf("the caret stands before %q", got[caret:])
	}
	if _, _, ok := MoveRow(written(stripes...), 0, false); ok {
		t.Error("the first row went up")
	}
}

// Behind a row that is not turned the same side faces still.
func TestInsertRowBehindOneThatIsNotTurned(t *testing.T) {
	for line, want := range map[string]string{
		"Row 1 (RS): sc across, do not turn.": "Row 2 (RS): ",
		"Row 1 (RS): sc across, turn.":        "Row 2 (WS): ",
		"Row 1 (WS): sc across, do not turn.": "Row 2 (WS): ",
		"Row 1: sc across, do not turn.":      "Row 2: ",
	} {
		tree := written(line)
		if strings.Contains(line, "(WS)") {
			tree.Rows[0].Side = 'W'
		}
		if got, caret := InsertRow(tree, 0); !strings.HasSuffix(got[:caret], "\n"+want) {
			t.Errorf("behind %q: %q, want %q", line, got[:caret], want)
		}
	}
}

func TestCarryRow(t *testing.T) {
	lines := []string{"Row 1 (A): one.", "Row 2 (A): second.", "Row 3 (B): the third.", "Row 4 (B): four."}
	for _, c := range []struct {
		from, to int
		want     string
		ok       bool
	}{
		{0, 2, "Row 1 (A): second.\nRow 2 (A): the third.\nRow 3 (B): one.\nRow 4 (B): four.\n", true},
		{3, 1, "Row 1 (A): one.\nRow 2 (A): four.\nRow 3 (B): second.\nRow 4 (B): the third.\n", true},
		{1, 1, strings.Join(lines, "\n") + "\n", false},
	} {
		got, caret, ok := CarryRow(written(lines...), c.from, c.to)
		if got != c.want || ok != c.ok {
			t.Errorf("%d to %d: %t\n%s\nwant\n%s", c.from, c.to, ok, got, c.want)
		}
		moved := strings.TrimPrefix(lines[c.from][strings.Index(lines[c.from], ": ")+1:], " ")
		if ok && !strings.HasPrefix(got[caret:], moved) {
			t.Errorf("%d to %d: the caret stands before %q", c.from, c.to, got[caret:])
		}
	}
}

func TestInstead(t *testing.T) {
	for _, c := range []struct {
		written, pasted string
		want            bool
	}{
		{"Row 2: ", "Row 2 (RS, B): Ch 1, sc in each st across.", true},
		{"Row 2 (WS): ", "Row 3: Sc.\nRow 4: Sc.", true},
		{"Row 2: ", "sc in each st across", false},
		{"Row 2: Ch 1, ", "Row 3: Sc.", false},
		{"", "Row 3: Sc.", false},
	} {
		if got := Instead(c.written, c.pasted); got != c.want {
			t.Errorf("%q behind %q: %t", c.pasted, c.written, got)
		}
	}
}

func TestToggleTurn(t *testing.T) {
	for line, want := range map[string]string{
		"Row 1: sc across, turn.":        "Row 1: sc across, do not turn.\n",
		"Row 1: sc across, do not turn.": "Row 1: sc across, turn.\n",
		"Row 1: sc across.":              "Row 1: sc across, do not turn.\n",
	} {
		if got := ToggleTurn(written(line), 0); got != want {
			t.Errorf("%q became %q, want %q", line, got, want)
		}
	}
}

func TestOwnHeading(t *testing.T) {
	for written, want := range map[string]string{
		"Row 2: Row 2 (WS, B):": "Row 2 (WS, B):",
		"Rnd 3 (A): Round 3:":   "Round 3:",
		"Row 2: 2nd row (WS):":  "2nd row (WS):",
		"Row 2: R2:":            "R2:",
		"Row 2: Next row (RS):": "Next row (RS):",
		"Row 2: sc in each st:": "",
		"Row 2 (RS):":           "",
		"Row 2: rep Row 1:":     "",
	} {
		own, ok := OwnHeading(written)
		if ok != (want != "") || ok && own != want {
			t.Errorf("%q became %q, %v", written, own, ok)
		}
	}
}
