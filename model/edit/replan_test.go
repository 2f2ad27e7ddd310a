package edit_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"strandway/model"
	"strandway/model/edit"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

func TestStrandsRewritesTheRows(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, rows, want string
		before, after    int // cuts
	}{
		{"two yarns, a row each", `Foundation (A): Ch 14.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, turn.
Row 2 (WS, B): Ch 1, sc in each st across, turn.
Row 3 (RS, A): Ch 1, sc in each st across, turn.
Row 4 (WS, B): Ch 1, sc in each st across, turn.
Row 5 (RS, A): Ch 1, sc in each st across.
`, `Foundation (A): Ch 14.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, do not turn, place loop on a marker.
Row 2 (RS, B): Ch 1, sc in each st across, turn.
Row 3 (WS, A): Ch 1, sc in each st across, do not turn, place loop on a marker.
Row 4 (WS, B): Ch 1, sc in each st across, turn.
Row 5 (RS, A): Ch 1, sc in each st across.
`, 3, 0},
		{"cut without need", `Foundation (A): Ch 14.
Row 1 (A): Sc in 2nd ch from hook and in each ch across, turn.
Row 2 (A): Ch 1, sc in each st across, turn. Fasten off A.
Row 3 (B): Ch 1, sc in each st across, turn.
Row 4 (B): Ch 1, sc in each st across, turn. Fasten off B.
Row 5 (A): Ch 1, sc in each st across, turn.
Row 6 (A): Ch 1, sc in each st across. Fasten off.
`, `Foundation (A): Ch 14.
Row 1 (A): Sc in 2nd ch from hook and in each ch across, turn.
Row 2 (A): Ch 1, sc in each st across, turn.
Row 3 (B): Ch 1, sc in each st across, turn.
Row 4 (B): Ch 1, sc in each st across, turn. Fasten off B.
Row 5 (A): Ch 1, sc in each st across, turn.
Row 6 (A): Ch 1, sc in each st across. Fasten off.
`, 1, 0},
		{"rows worked again", `Foundation (A): Ch 14.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, turn.
Row 2 (WS, B): Ch 1, sc in each st across, turn.
Row 3 (RS, A): Ch 1, sc in each st across, turn.
Rep Rows 2-3 twice more.
`, `Foundation (A): Ch 14.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, turn.
Row 2 (B): Ch 1, sc in each st across, do not turn, place loop on a marker.
Row 3 (A): Ch 1, sc in each st across, turn.
Rep Rows 2-3 twice more.
`, 5, 0},
		{"a repeat that does not suit", `Foundation (A): Ch 14.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, turn.
Row 2 (WS, A): Ch 1, sc in each st across, turn.
Row 3 (RS, B): Rep Row 2.
Row 4 (WS, A): Rep Row 2.
Row 5 (RS, B): Rep Row 2.
`, `Foundation (A): Ch 14.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, turn.
Row 2 (A): Ch 1, sc in each st across, turn.
Row 3 (RS, B): Rep Row 2, do not turn.
Row 4 (RS, A): Rep Row 2, turn.
Row 5 (WS, B): Rep Row 2.
`, 2, 0},
		{"up to an edging", `Foundation (A): Ch 14.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, turn.
Row 2 (WS, B): Ch 1, sc in each st across, turn.
Row 3 (RS, A): Ch 1, sc in each st across, turn.
Row 4 (WS, B): Ch 1, sc in each st across, turn.
Row 5 (RS, A): Ch 1, sc in each st across, turn.
Row 6 (WS, A): Ch 1, sc in each st across, turn.
Row 7 (RS, A): Ch 1, sc in each st across, do not turn.
Edging: With B, rotate to work along left edge, ch 1, sc in each row end across.
`, `Foundation (A): Ch 14.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, do not turn, place loop on a marker.
Row 2 (RS, B): Ch 1, sc in each st across, turn.
Row 3 (WS, A): Ch 1, sc in each st across, do not turn, place loop on a marker.
Row 4 (WS, B): Ch 1, sc in each st across, turn.
Row 5 (RS, A): Ch 1, sc in each st across, turn.
Row 6 (WS, A): Ch 1, sc in each st across, turn.
Row 7 (RS, A): Ch 1, sc in each st across, do not turn.
Edging: With B, rotate to work along left edge, ch 1, sc in each row end across.
`, 3, 0},
		{"round a row in two yarns", `Foundation (A): Ch 9.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, turn.
Row 2 (WS, B): Ch 1, sc in each st across, turn.
Row 3 (RS): With A, ch 1, sc in next 4 sts, with B, sc in next 4 sts, turn.
Row 4 (WS, C): Ch 1, sc in each st across, turn.
Row 5 (RS, B): Ch 1, sc in each st across, turn.
`, `Foundation (A): Ch 9.
Row 1 (WS, A): Sc in 2nd ch from hook and in each ch across, do not turn, place loop on a marker.
Row 2 (WS, B): Ch 1, sc in each st across, turn.
Row 3 (RS): With A, ch 1, sc in next 4 sts, with B, sc in next 4 sts, turn.
Row 4 (WS, C): Ch 1, sc in each st across, do not turn.
Row 5 (WS, B): Ch 1, sc in each st across, turn.
`, 2, 0},
	} {
		p := &pattern.Pattern{Terms: "US", Gauge: pattern.Gauge{Stitches: 14, Rows: 16, OverCM: 10}, Pieces: []pattern.Piece{{Name: "Mat", Rows: c.rows}}}
		w := model.Work(lib, p, 0)
		got, err := edit.Strands(lib, w, 0)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got.Present.Cuts != c.before || got.Best.Cuts != c.after {
			t.Errorf("%s: %d cuts before and %d after, want %d and %d", c.name, got.Present.Cuts, got.Best.Cuts, c.before, c.after)
		}
		if got.Rows != c.want {
			t.Errorf("%s:\n%s", c.name, got.Rows)
		}
	}
}

// Rows rewritten for a plan are worked with as few cuts as it promises, and never more than before.
func TestPlannedRowsAreWorkedAsPlanned(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(11, 12))
	better := 0
	for range 120 {
		rows := "Foundation (A): Ch 9.\nRow 1 (A): Sc in 2nd ch from hook and in each ch across, turn.\n"
		for r := 2; r < 4+rng.IntN(8); r++ {
			yarn := string(rune('A' + rng.IntN(3)))
			words := []string{"ch 1, sc in each st across", "ch 1, sc in each st across", "ch 1, sc in back loop of each st across",
				"ch 1, sc in next 3 sts, with B, sc in next 5 sts"}[rng.IntN(4)]
			end := []string{"turn", "turn", "do not turn", "turn. Fasten off " + yarn}[rng.IntN(4)]
			rows += fmt.Sprintf("Row %d: With %s, %s, %s.\n", r, yarn, words, end)
		}
		rows = strings.TrimSuffix(rows, ", do not turn.\n")
		if rng.IntN(3) == 0 {
			rows += "Edging: With C, rotate to work along left edge, ch 1, sc in each row end across.\n"
		}
		p := &pattern.Pattern{Terms: "US", Gauge: pattern.Gauge{Stitches: 14, Rows: 16, OverCM: 10}, Pieces: []pattern.Piece{{Name: "Mat", Rows: rows}}}
		w := model.Work(lib, p, 0)
		before := w.Figures().Pieces[0].Strands.Cut()
		got, err := edit.Strands(lib, w, 0)
		if err != nil {
			t.Errorf("%v\n%s", err, rows)
			continue
		}
		after := model.Work(lib, edit.Rows(p, 0, got.Rows), 0).Figures().Pieces[0].Strands.Cut()
		if after > before || after > got.Best.Cuts {
			t.Errorf("%d cuts before, %d planned, %d worked\n%s\n%s", before, got.Best.Cuts, after, rows, got.Rows)
		}
		if got.Better() {
			better++
		}
	}
	if better < 20 {
		t.Errorf("only %d of the pieces had a better way", better)
	}
}
