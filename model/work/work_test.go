package work_test

import (
	"fmt"
	"runtime"
	"strings"
	"testing"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/syntax"
	"strandway/model/work"
)

// worked reads and works rows, and fails on anything but notes.
func worked(t testing.TB, src string, o work.Options) *fabric.Fabric {
	t.Helper()
	f, findings := workRows(t, src, o)
	for _, x := range findings {
		if x.Severity != diag.Note {
			t.Errorf("%s [%s]", x, x.ID)
		}
	}
	return f
}

func workRows(t testing.TB, src string, o work.Options) (*fabric.Fabric, diag.List) {
	t.Helper()
	lib := library(t)
	tree, findings := syntax.Read(src, syntax.ReadOptions{Library: lib})
	f, more := work.Work(lib, tree, o)
	return f, append(findings, more...)
}

const blanket = `Ch 4n + 1.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Rows 2-250: Ch 1, sc in each st across, turn.
`

const shellBlanket = `Ch 6n + 2.
Row 1: Sc in 2nd ch from hook, *skip next 2 ch, 5 dc in next ch, skip next 2 ch, sc in next ch; rep from * across, turn.
Row 2: Ch 3 (counts as dc), 2 dc in first st, *skip next 2 dc, sc in next dc, skip next 2 dc, 5 dc in next sc; rep from * across, ending with 3 dc in last sc, turn.
Row 3: Ch 1, sc in first st, *skip next 2 dc, 5 dc in next sc, skip next 2 dc, sc in next dc; rep from * across, turn.
Rows 4-251: Rep Rows 2 and 3.
`

const longBlanket = `Ch 4n + 4.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in each st across, turn.
Row 3: Ch 1, sc in next 3 sts, *spike in next st 2 rows below, sc in next 3 sts; rep from * across, turn.
Row 4: Ch 1, sc in each st across, turn.
Rows 5-250: Rep Rows 3 and 4.
`

const roundBlanket = `Ch 4n, join with sl st in first ch.
Rnd 1: Ch 1, sc in each ch around, join with sl st in first sc.
Rnds 2-250: Ch 1, *sc in next 3 sts, dc in next st 2 rnds below; rep from * around, join with sl st in first sc.
`

func BenchmarkWork(b *testing.B) {
	lib := library(b)
	for _, c := range []struct {
		name, src string
		n         int
	}{
		{"plain", blanket, 100},
		{"shells", shellBlanket, 67},
		{"long", longBlanket, 100},
		{"rounds", roundBlanket, 100},
	} {
		b.Run(c.name, func(b *testing.B) {
			tree, _ := syntax.Read(c.src, syntax.ReadOptions{Library: lib})
			b.ReportAllocs()
			var f *fabric.Fabric
			for b.Loop() {
				f, _ = work.Work(lib, tree, work.Options{N: c.n})
			}
			b.ReportMetric(float64(len(f.Stitches)), "sts")
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(f.Stitches)), "ns/st")
		})
	}
}

// TestLargePiece holds the worker to its memory: 100,000 stitches each within 400 bytes, garbage included.
func TestLargePiece(t *testing.T) {
	lib := library(t)
	for _, src := range []string{blanket, shellBlanket, longBlanket, roundBlanket} {
		tree, _ := syntax.Read(src, syntax.ReadOptions{Library: lib})
		var before, after runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&before)
		f, findings := work.Work(lib, tree, work.Options{N: 100})
		runtime.ReadMemStats(&after)
		perStitch := float64(after.TotalAlloc-before.TotalAlloc) / float64(len(f.Stitches))
		if len(f.Stitches) < 100_000 || findings.Faults() > 0 {
			t.Errorf("%d stitches, findings %v", len(f.Stitches), findings)
		}
		if perStitch > 400 {
			t.Errorf("%.0f bytes a stitch are taken up while working", perStitch)
		}
	}
}

func TestAskedTooMuch(t *testing.T) {
	for _, c := range []struct {
		name string
		n    int
		want string
	}{
		{"nothing", 0, "with n = 0 there is nothing to work"},
		{"less than nothing", -5, "with n = -5 there is nothing to work"},
		{"ten million", 10_000_000, "a foundation of 40000001 chains is more than the limit of 2000000 stitches"},
		{"too many rows", 20_000, "more than the limit of 2000000 stitches, so it is not worked further"},
	} {
		f, findings := workRows(t, blanket, work.Options{N: c.n})
		if len(findings) != 1 || findings[0].Message != c.want || findings[0].Severity != diag.Fault {
			t.Errorf("%s: findings %v, want %q", c.name, findings, c.want)
		}
		if len(f.Stitches) > 2_100_000 || len(f.Rows) == 0 {
			t.Errorf("%s: %d stitches in %d rows", c.name, len(f.Stitches), len(f.Rows))
		}
	}
	_, findings := workRows(t, "Ch 12.\nRow 1: 900000000 sc in 2nd ch from hook, *sc in next 2000000000 ch; rep from * 1000000000 times, turn.\n", work.Options{N: 1})
	if findings.Faults() == 0 || len(findings) > 2 {
		t.Errorf("a row of huge numbers: %v", findings)
	}
}

// describe writes a fabric down so that two can be compared.
func describe(f *fabric.Fabric) string {
	var b strings.Builder
	for i := range f.Rows {
		r := &f.Rows[i]
		fmt.Fprintf(&b, "row %d shape %d turned %v ws %v left %v:", i, r.Shape, r.Turned, r.WS, r.FromLeft)
		for id := r.First; id < r.Last; id++ {
			s := &f.Stitches[id]
			fmt.Fprintf(&b, " %s/%d", f.Kind(id).Name, s.Flags)
			for _, base := range f.Of(id) {
				fmt.Fprintf(&b, "@%d,%d,%d", base.At, base.How, base.Down)
			}
		}
		b.WriteByte('\n')
	}
	return b.String()
}
