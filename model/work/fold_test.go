package work_test

import (
	"slices"
	"testing"

	"strandway/model/syntax"
	"strandway/model/work"
)

// refolded writes every row of a worked piece anew from its steps, one plain row a row.
func refolded(t *syntax.Tree, traces []work.Trace, rowOf func(work.Trace) (row *syntax.Row, no int)) *syntax.Tree {
	out := *t
	out.Rows = nil
	if len(traces) > 0 {
		first, _ := rowOf(traces[0])
		for _, row := range t.Rows { // the foundation line, if it stands alone
			if row == first {
				break
			}
			out.Rows = append(out.Rows, row)
		}
	}
	for _, trace := range traces {
		row, no := rowOf(trace)
		out.Rows = append(out.Rows, &syntax.Row{
			From: no, To: no, Round: row.Round, Named: row.Named, Yarn: row.Yarn, Side: row.Side,
			Hook: row.Hook, HookAs: row.HookAs, Count: row.Count, Body: trace.Body(),
		})
	}
	return &out
}

// TestFold: a row worked, taken apart, folded, printed, read and worked again is the same fabric.
func TestFold(t *testing.T) {
	lib := library(t)
	for _, c := range examples(t) {
		if len(c.faults) > 0 {
			continue
		}
		t.Run(c.name, func(t *testing.T) {
			tree, _ := syntax.Read(c.src, syntax.ReadOptions{Library: lib, UK: c.uk})
			f, traces, _ := work.Steps(lib, tree, c.options())
			again := refolded(tree, traces, func(trace work.Trace) (*syntax.Row, int) {
				r := f.Rows[trace.Row]
				return tree.Rows[r.Source], r.No
			})
			terms := "us"
			if c.uk {
				terms = "uk"
			}
			text := syntax.Print(again, syntax.PrintOptions{Library: lib, Terms: terms, Size: c.size})
			read, _ := syntax.Read(text, syntax.ReadOptions{Library: lib, UK: c.uk})
			g, findings := work.Work(lib, read, work.Options{N: c.n, RowsUntil: c.reps})
			if a, b := describe(f), describe(g); a != b {
				t.Errorf("folded rows\n%s\nare worked to another fabric: %v\nwant\n%s\ngot\n%s", text, findings, a, b)
			}
		})
	}
}

func TestFoldFindsTheRepeat(t *testing.T) {
	lib := library(t)
	for _, c := range []struct{ row, want string }{
		{"sc in next 12 sts", "sc in next 12 sts"},
		{"sc in first st, [ch 1, skip next st, sc in next st] 6 times", "sc in first st, *ch 1, skip next st, sc in next st; rep from * across"},
		{"sc in next 2 sts, [dc in next 2 sts, ch 1, skip next st] 3 times, sc in next 2 sts", "sc in next 2 sts, *dc in next 2 sts, ch 1, skip next st; rep from * to last 2 sts, sc in next 2 sts"},
		{"sc in next st, hdc in next st, dc in next st, tr in next 10 sts", "sc in next st, hdc in next st, dc in next st, tr in next 10 sts"},
	} {
		src := "Ch 14.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, " + c.row + ", turn.\n"
		tree, _ := syntax.Read(src, syntax.ReadOptions{Library: lib})
		_, traces, _ := work.Steps(lib, tree, work.Options{N: 1})
		body := traces[1].Body()
		i := slices.IndexFunc(body, func(n syntax.Node) bool { _, chain := n.(*syntax.ChainN); return !chain })
		got := syntax.PrintNodes(body[i:len(body)-1], syntax.PrintOptions{Library: lib, Terms: "us"})
		if got != c.want {
			t.Errorf("%s is folded to\n%s, want\n%s", c.row, got, c.want)
		}
	}
}

// TestStepsCoverTheRow: every stitch of a row belongs to one step, save the ending's.
func TestStepsCoverTheRow(t *testing.T) {
	lib := library(t)
	for _, c := range examples(t) {
		tree, _ := syntax.Read(c.src, syntax.ReadOptions{Library: lib, UK: c.uk})
		f, traces, _ := work.Steps(lib, tree, c.options())
		for _, trace := range traces {
			at := f.Rows[trace.Row].First
			for i, s := range trace.Steps {
				if i > 0 && s.First != at || s.Last < s.First {
					t.Errorf("%s, %s: step %d makes stitches %d to %d, after %d", c.name, f.Rows[trace.Row].Label, i, s.First, s.Last, at)
				}
				at = s.Last
			}
		}
	}
}
