package steps

import (
	"slices"
	"strings"
	"testing"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/syntax"
	"strandway/model/work"
	"strandway/samples"
)

func library(t testing.TB) *stitch.Library {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

// told works rows and finds their steps.
func told(t testing.TB, rows, terms string, by By) *Steps {
	t.Helper()
	lib := library(t)
	tree, wrong := syntax.Read(rows, syntax.ReadOptions{Library: lib, UK: terms == "uk"})
	f, more := work.Work(lib, tree, work.Options{N: 3})
	if wrong.Faults()+more.Faults() > 0 {
		t.Fatalf("the rows have faults: %v %v", wrong, more)
	}
	return Of(lib, tree, f, terms, by)
}

const mat = `Foundation (A): Ch 9.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, do not turn.
Row 2 (RS, B): Ch 1, sc in first 3 sts, ch 2, skip next 2 sts, sc in last 3 sts, turn.
Row 3 (WS, B): Ch 3 (counts as dc), dc in next 2 sts, 2 dc in ch-2 sp, dc in each of next 2 sts, FPdc around last st, turn.
Row 4 (RS, A): Ch 1, sc in first 2 sts, dc2tog over next 2 sts, sc in back loop of next st, sc in next 3 sts.`

func TestRowsAreToldStitchByStitch(t *testing.T) {
	for _, c := range []struct {
		name, rows, terms, where string
		number                   int // of the step within its row, from 1
		says, how, next          string
	}{
		{"a foundation", mat, "us", "Foundation", 1,
			"Ch 9.", "", "That is the foundation. Then begin Row 1."},
		{"the first stitch is counted from the hook", mat, "us", "Row 1 (RS)", 1,
			"Sc in the 2nd chain from the hook.", "Insert the hook in the 2nd chain from the hook, yarn over and pull up a loop, yarn over and pull through both loops on the hook.", "Then: sc in the next 7 chains."},
		{"a row that is not turned", mat, "us", "Row 2 (RS)", 1,
			"Do not turn. Yarn A waits at the left edge. Join yarn B at the right edge. Ch 1, which does not count as a stitch.", "", "Then: sc in the first sc."},
		{"skipped stitches", mat, "us", "Row 2 (RS)", 6,
			"Skip 2 sc. Sc in the next sc.", "Insert the hook in the next sc, yarn over and pull up a loop, yarn over and pull through both loops on the hook.", "Then: sc in the next 2 sc."},
		{"a turning chain that counts", mat, "us", "Row 3 (WS)", 1,
			"Turn. Ch 3, which counts as the first dc.", "", "Then: dc in the next 2 sc."},
		{"a chain-space", mat, "us", "Row 3 (WS)", 4,
			"Dc in the next ch-2 space.", "Yarn over, insert the hook in the next ch-2 space, yarn over and pull up a loop, yarn over and pull through 2 loops, yarn over and pull through both loops on the hook.", "Then: dc in the same ch-2 space."},
		{"a post", mat, "us", "Row 3 (WS)", 8,
			"Fpdc round the post, from the front, of the next sc.", "Yarn over, insert the hook round the post, from the front, of the next sc, yarn over and pull up a loop, yarn over and pull through 2 loops, yarn over and pull through both loops on the hook.", "That ends the row. Then begin Row 4."},
		{"a waiting yarn and a decrease", mat, "us", "Row 4 (RS)", 4,
			"Dc2tog over the next 2 dc.", "(Yarn over, insert the hook in the next dc, yarn over and pull up a loop, yarn over and pull through 2 loops) twice, yarn over and pull through all 3 loops on the hook.", "Then: sc in the back loop of the next dc."},
		{"UK terms", "Foundation: Ch 8.\nRow 1 (RS): Tr in 4th ch from hook (skipped 3 ch count as tr), miss next 2 ch, tr in last 2 ch.", "uk", "Row 1 (RS)", 3,
			"Miss 2 chains. Tr in the next chain.", "Yarn round hook, insert the hook in the next chain, yarn round hook and draw up a loop, yarn round hook and draw through 2 loops, yarn round hook and draw through both loops on the hook.", "Then: tr in the next chain."},
		{"a ring", "Foundation: Ch 4, join with sl st to form a ring.\nRnd 1 (RS): Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st to top of beg ch-3. Fasten off.", "us", "Foundation", 1,
			"Ch 4. Join with a sl st to form a ring.", "", "That is the foundation. Then begin Rnd 1."},
		{"a join", "Foundation: Ch 4, join with sl st to form a ring.\nRnd 1 (RS): Ch 3 (counts as dc), 11 dc in ring, join with sl st to top of beg ch-3. Fasten off.", "us", "Rnd 1 (RS)", 13,
			"Join with a sl st in the top of the beginning ch-3. Fasten off.", "Insert the hook in the top of the beginning ch-3, yarn over and pull through the work and the loop on the hook.", "That is the last stitch."},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := told(t, c.rows, c.terms, Stitch)
			number := 0
			for i := range s.Len() {
				step := s.At(i)
				if step.Where != c.where {
					continue
				}
				if number++; number < c.number {
					continue
				}
				if step.Says != c.says {
					t.Errorf("it says\n%q, want\n%q", step.Says, c.says)
				}
				if step.How != c.how {
					t.Errorf("the hook moves\n%q, want\n%q", step.How, c.how)
				}
				if step.Next != c.next {
					t.Errorf("then\n%q, want\n%q", step.Next, c.next)
				}
				return
			}
			t.Fatalf("%s has only %d steps", c.where, number)
		})
	}
}

func TestWholeRowsAreTold(t *testing.T) {
	s := told(t, mat, "us", Row)
	if s.Len() != 5 {
		t.Fatalf("%d steps, want the foundation and 4 rows", s.Len())
	}
	got := s.At(2)
	if want := "Do not turn. Yarn A waits at the left edge. Join yarn B at the right edge. Work Row 2 in yarn B, the right side facing; on the chart from the right edge to the left."; got.Says != want {
		t.Errorf("Row 2 says\n%q, want\n%q", got.Says, want)
	}
	if want := "It has 6 sc and 2 chains."; got.How != want {
		t.Errorf("Row 2: %q, want %q", got.How, want)
	}
	if want := "Then: Row 3 in yarn B, turned."; got.Next != want {
		t.Errorf("Row 2: %q, want %q", got.Next, want)
	}
}

func TestTheWordThatMadeAStitchIsFound(t *testing.T) {
	s := told(t, mat, "us", Stitch)
	for where, want := range map[string][]string{
		"Foundation": {"Ch 9"},
		"Row 2 (RS)": {"Ch 1", "sc in first 3 sts", "ch 2", "sc in last 3 sts"},
		"Row 3 (WS)": {"Ch 3 (counts as dc)", "dc in next 2 sts", "2 dc in ch-2 sp", "dc in each of next 2 sts", "FPdc around last st"},
	} {
		var got []string
		for i := range s.Len() {
			if step := s.At(i); step.Where == where {
				got = append(got, s.tree.Text[step.Word.Start:step.Word.End])
			}
		}
		if got = slices.Compact(got); !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", where, got, want)
		}
	}
}

// TestEveryStitchIsToldOnce goes through the samples: each stitch belongs to one step,
// each step has its words, and the last count of a row is the row's own.
func TestEveryStitchIsToldOnce(t *testing.T) {
	lib := library(t)
	for _, name := range samples.Names() {
		src, err := samples.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		p, err := pattern.Decode(src, name)
		if err != nil {
			t.Fatal(err)
		}
		for _, piece := range model.Work(lib, p, 0).Pieces {
			for _, by := range []By{Stitch, Row} {
				s := Of(lib, piece.Tree, piece.Fabric, "us", by)
				next := int32(0)
				for i := range s.Len() {
					step := s.At(i)
					if step.First != next || step.Last <= step.First || s.Find(step.First) != i || s.Find(step.Last-1) != i {
						t.Fatalf("%s, step %d: stitches %d to %d after %d", name, i, step.First, step.Last, next)
					}
					next = step.Last
					if step.Says == "" || step.Where == "" || step.Count == "" || step.Next == "" || step.Word.Len() == 0 {
						t.Fatalf("%s, step %d says too little: %+v", name, i, step)
					}
					if strings.Contains(step.Says+step.How+step.Next, "  ") || strings.Contains(step.Says+step.How, " .") {
						t.Fatalf("%s, step %d has a hole: %+v", name, i, step)
					}
				}
				if int(next) != len(piece.Fabric.Stitches) {
					t.Errorf("%s: %d of %d stitches told", name, next, len(piece.Fabric.Stitches))
				}
			}
			s := Of(lib, piece.Tree, piece.Fabric, "us", Stitch)
			for r, row := range piece.Fabric.Rows {
				n := 0
				for id := row.First; id < row.Last; id++ {
					if s.counts(id) {
						n++
					}
				}
				if n != row.Count {
					t.Errorf("%s, row %d: %d stitches are counted, the row has %d", name, r, n, row.Count)
				}
			}
		}
	}
}

func TestStepsOfSomeRows(t *testing.T) {
	s := told(t, mat, "us", Row)
	if from, to, ok := s.Rows(2, 3); !ok || from != 2 || to != 4 {
		t.Errorf("Rows 2-3 are steps %d to %d (%v), want 2 to 4", from, to, ok)
	}
	if _, _, ok := s.Rows(9, 12); ok {
		t.Error("rows that are not there were found")
	}
}
