package size_test

import (
	"fmt"
	"testing"

	"strandway/model"
	"strandway/model/edit"
	"strandway/model/pattern"
	"strandway/model/size"
	"strandway/model/stitch"
)

// blanket is a piece of one-row stripes in n, 5,000 stitches in its one size.
func blanket() *pattern.Pattern {
	rows := "Foundation (A): Ch 8n + 4.\nRow 1 (A): Sc in 2nd ch from hook and in each ch across, turn.\n"
	for r, yarn := range "BCABACBBCA" {
		rows += fmt.Sprintf("Row %d (%c): Ch 1, sc in first 3 sts, *dc in next 5 sts, sc in next 3 sts; rep from * across, turn.\n", r+2, yarn)
	}
	rows += "Rows 12-41: Rep Rows 2-11.\n"
	return &pattern.Pattern{Terms: "US", Hook: pattern.Hook{MM: 5}, Gauge: pattern.Gauge{Stitches: 15, Rows: 12, OverCM: 10},
		Yarns: []pattern.Yarn{{Letter: "A", Weight: 4, Grams: 100, Metres: 200}, {Letter: "B", Weight: 4, Grams: 100, Metres: 200}, {Letter: "C", Weight: 4, Grams: 100, Metres: 200}},
		Sizes: []pattern.Size{{Name: "Lap", Repeats: 15}}, Pieces: []pattern.Piece{{Name: "Blanket", Rows: rows}}}
}

// BenchmarkReckoning is what follows from a worked piece of 5,000 stitches: sizes, strands, yarn,
// the table of sizes, and another way to turn.
func BenchmarkReckoning(b *testing.B) {
	lib, err := stitch.Standard()
	if err != nil {
		b.Fatal(err)
	}
	p := blanket()
	w := model.Work(lib, p, 0)
	if w.Findings.Faults() > 0 {
		b.Fatal(w.Findings)
	}
	figures := w.Figures()
	b.Logf("%d stitches", len(w.Pieces[0].Fabric.Stitches))
	b.Run("figures", func(b *testing.B) {
		for b.Loop() {
			w.Figures()
		}
	})
	b.Run("sizes", func(b *testing.B) {
		for b.Loop() {
			size.Entries(w, figures, size.EdgingOf(p))
		}
	})
	b.Run("plan", func(b *testing.B) {
		for b.Loop() {
			if _, err := edit.Strands(lib, w, 0); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("key", func(b *testing.B) {
		for b.Loop() {
			w := model.Work(lib, p, 0)
			size.Entries(w, w.Figures(), size.EdgingOf(p))
		}
	})
}
