package chart

import (
	"fmt"
	"strings"

	"strandway/model/fabric"
)

// RowColours is the colours of a row in the order of working.
type RowColours struct {
	Label  string
	Runs   []ColourRun
	Totals []int // stitches by yarn index
}

// ColourRun is stitches of one yarn that follow each other.
type ColourRun struct {
	Yarn  string // its letter
	Count int
}

// String is the runs as one would follow them: "3 A, 2 B, 3 A".
func (r RowColours) String() string {
	parts := make([]string, len(r.Runs))
	for i, run := range r.Runs {
		parts[i] = fmt.Sprintf("%d %s", run.Count, run.Yarn)
	}
	return strings.Join(parts, ", ")
}

// ColourCounts counts the colours of every row, stitch by stitch as the cells of
// its grid chart show them, in the order in which they are worked.
func ColourCounts(f *fabric.Fabric) []RowColours {
	rows, _ := cellRows(f)
	out := make([]RowColours, 0, len(rows))
	for i := range rows {
		cells := rows[i].cells
		row := &f.Rows[rows[i].row]
		c := RowColours{Label: row.Label, Totals: make([]int, len(f.Yarns))}
		for k := range cells {
			id := cells[k]
			if !row.FromLeft { // cells lie from left to right
				id = cells[len(cells)-1-k]
			}
			yarn := f.Stitches[id].Yarn
			c.Totals[yarn]++
			if n := len(c.Runs); n > 0 && c.Runs[n-1].Yarn == f.Yarns[yarn] {
				c.Runs[n-1].Count++
			} else {
				c.Runs = append(c.Runs, ColourRun{f.Yarns[yarn], 1})
			}
		}
		out = append(out, c)
	}
	return out
}
