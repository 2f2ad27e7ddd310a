package model_test

import (
	"fmt"
	"testing"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

// BenchmarkWork works pieces of double crochet over a fixed foundation and over one in n.
func BenchmarkWork(b *testing.B) {
	lib, err := stitch.Standard()
	if err != nil {
		b.Fatal(err)
	}
	for _, rows := range []int{40, 400, 2000} {
		for name, chain := range map[string]string{"fixed": "52", "n": "4n + 4"} {
			p := &pattern.Pattern{Sizes: []pattern.Size{{Name: "M", Repeats: 12}}, Pieces: []pattern.Piece{{Name: "Body", Rows: fmt.Sprintf(
				"Ch %s.\nRow 1: Dc in 4th ch from hook and in each ch across, turn.\nRow 2: Ch 3, dc in next st and in each st across, turn.\nRows 3-%d: Rep Row 2.\n", chain, rows)}}}
			b.Run(fmt.Sprintf("%s/stitches=%d", name, 50*rows), func(b *testing.B) {
				for b.Loop() {
					if w := model.Work(lib, p, 0); w.Findings.Faults() > 0 {
						b.Fatal(w.Findings)
					}
				}
			})
		}
	}
}
