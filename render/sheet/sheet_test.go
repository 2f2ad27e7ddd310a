package sheet

import (
	"math"
	"testing"

	"strandway/chart/display"
	"strandway/chart/geom"
)

func TestSheets(t *testing.T) {
	for _, c := range []struct {
		name          string
		width, height float64
		paper         Paper
		columns, rows int
		lying         bool
	}{
		{"small chart", 90, 60, A4, 1, 1, false},
		{"chart as large as the paper", 210, 297, A4, 1, 1, false},
		{"wide chart", 260, 100, A4, 1, 1, true},
		{"page drawn for letter", 215.9, 279.4, Letter, 1, 1, false},
		{"wider than the paper either way", 400, 150, A4, 2, 1, true},
		{"long strip", 1000, 100, A4, 4, 1, true},
		{"large square", 500, 500, Letter, 3, 2, false},
		{"as drawn", 3000, 3000, AsDrawn, 1, 1, false},
	} {
		all := Spread(&display.List{Width: c.width, Height: c.height}, c.paper)
		s := all[0]
		if s.Columns != c.columns || s.Rows != c.rows || len(all) != c.columns*c.rows || (s.Width > s.Height) != c.lying {
			t.Errorf("%s: %d by %d sheets of %v x %v, want %d by %d, lying %v", c.name, s.Columns, s.Rows, s.Width, s.Height, c.columns, c.rows, c.lying)
		}
	}
}

// Sheets show the whole chart, neighbours the same strip of it, none in the paper's margins.
func TestSheetsCoverTheChart(t *testing.T) {
	for _, size := range [][2]float64{{400, 150}, {1000, 100}, {500, 500}, {150, 900}} {
		l := &display.List{Width: size[0], Height: size[1]}
		for _, paper := range []Paper{A4, Letter} {
			all := Spread(l, paper)
			whole := geom.Empty()
			for i, s := range all {
				whole = whole.Union(s.Part)
				if s.At.X < Margin-1e-9 || s.At.Y < Margin-1e-9 || s.At.X+s.Part.Width() > s.Width-Margin+1e-9 {
					t.Errorf("%v: sheet %d goes into the margin", size, i+1)
				}
				if s.Column > 0 {
					if shared := all[i-1].Part.Max.X - s.Part.Min.X; math.Abs(shared-Overlap) > 1e-9 {
						t.Errorf("%v: sheets %d and %d share %.2f mm, want %v", size, i, i+1, shared, Overlap)
					}
				}
			}
			if math.Abs(whole.Max.X-l.Width) > 1e-9 || math.Abs(whole.Max.Y-l.Height) > 1e-9 || whole.Min != (geom.Point{}) {
				t.Errorf("%v: sheets show %v", size, whole)
			}
		}
	}
}
