package layout

import (
	"fmt"
	"strings"
	"testing"
)

const shellRows = `
Ch 6n + 2.
Row 1: Sc in 2nd ch from hook, *skip 2 ch, 5 dc in next ch, skip 2 ch, sc in next ch; rep from * across, turn.
Row 2: Ch 3 (counts as dc), 2 dc in first sc, *skip 2 dc, sc in next dc, skip 2 dc, 5 dc in next sc; rep from * across, ending last rep with 3 dc in last sc, turn.
Row 3: Ch 1, sc in first dc, *skip 2 dc, 5 dc in next sc, skip 2 dc, sc in next dc; rep from * across, turn.
Rows 4-%d: Rep Rows 2-3.`

// BenchmarkShells lays out the same rows at growing widths and lengths.
func BenchmarkShells(b *testing.B) {
	for _, c := range []struct{ n, rows int }{{9, 35}, {37, 87}, {75, 431}} {
		f := swatchOf(b, fmt.Sprintf(shellRows, c.rows), c.n)
		b.Run(fmt.Sprintf("%d stitches", len(f.Stitches)), func(b *testing.B) {
			for b.Loop() {
				Arrange(f, Drawn())
			}
		})
	}
}

func BenchmarkSwatches(b *testing.B) {
	for _, s := range swatches {
		f := swatchOf(b, s.rows, 30)
		b.Run(strings.ReplaceAll(s.name, " ", "-")+fmt.Sprintf("-%d", len(f.Stitches)), func(b *testing.B) {
			for b.Loop() {
				Arrange(f, Drawn())
			}
		})
	}
}

func BenchmarkGranny(b *testing.B) {
	var s strings.Builder
	s.WriteString("Ch 4, join with sl st to form ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of beg ch-3.\n")
	s.WriteString("Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, ch 1, join.\n")
	for r := 3; r <= 24; r++ {
		between := fmt.Sprintf("(ch 1, 3 dc in next ch-1 sp) %d times, ch 1", r-2)
		fmt.Fprintf(&s, "Rnd %d: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *%s, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, %s, join.\n", r, between, between)
	}
	f := swatchOf(b, s.String(), 1)
	b.Logf("%d stitches", len(f.Stitches))
	for b.Loop() {
		Arrange(f, Drawn())
	}
}
