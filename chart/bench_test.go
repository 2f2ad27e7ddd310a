package chart_test

import (
	"fmt"
	"strings"
	"testing"

	"strandway/chart"
	"strandway/chart/layout"
	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

// BenchmarkDraw draws squares in stripes of two yarns, whose rows were written one by one.
func BenchmarkDraw(b *testing.B) {
	lib, err := stitch.Standard()
	if err != nil {
		b.Fatal(err)
	}
	for _, side := range []int{45, 142, 447} {
		var rows strings.Builder
		fmt.Fprintf(&rows, "With A, ch %d.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\n", side+1)
		for r := 2; r <= side; r++ {
			fmt.Fprintf(&rows, "Row %d (%c): Ch 1, sc in each st across, turn.\n", r, "AB"[r/2%2])
		}
		p := &pattern.Pattern{
			Title:  "Harbour square",
			Yarns:  []pattern.Yarn{{Letter: "A", Colour: "#1f2d4d"}, {Letter: "B", Colour: "#e6dcc6"}},
			Pieces: []pattern.Piece{{Name: "Square", Rows: rows.String()}},
		}
		w := model.Work(lib, p, 0)
		plan := layout.Arrange(w.Pieces[0].Fabric, layout.Drawn())
		o := chart.Options{Library: lib, Inks: w.YarnColours(0, ""), Key: true}
		b.Run(fmt.Sprint(side*side), func(b *testing.B) {
			for b.Loop() {
				chart.Draw(plan, o)
			}
		})
	}
}
