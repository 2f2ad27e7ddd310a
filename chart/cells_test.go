package chart

import (
	"image/color"
	"math"
	"strings"
	"testing"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/model/fabric"
	"strandway/model/pattern"
)

func TestCellsShowEveryStitchInItsColour(t *testing.T) {
	s := newSwatch(t, 4)
	s.row("Row 1", 1)
	for x := 3; x >= 0; x-- {
		id := s.put("sc", float64(x), 0, int32(x))
		s.f.Stitches[id].Yarn = uint8(x % 2)
	}
	s.row("Row 2", 1)
	s.put("sc", 0, 0, 7)
	s.put("dc", 1, fabric.Long, 6)
	s.put("ch", 2, fabric.Chain)
	s.put("sc", 3, 0, 4)
	l := Cells(s.f, Options{Library: s.lib, Inks: harbour}, .8)
	x := l.Measure()
	fills := map[int32]color.NRGBA{}
	at := map[int32]geom.Box{}
	for i, item := range l.Items {
		if b, ok := item.(display.Begin); ok && b.Stitch >= 0 {
			fills[b.Stitch] = l.Items[i+1].(display.Path).Fill.Colour
			at[b.Stitch] = x.Items[i+1]
		}
	}
	if len(fills) != 8 {
		t.Errorf("%d cells, want 8", len(fills))
	}
	if fills[4] != harbour[1] || fills[5] != harbour[0] {
		t.Errorf("cells of row 1 from the right are %v, %v; want yarns B, A", fills[4], fills[5])
	}
	if at[4].Min.X != at[11].Min.X || at[4].Min.Y <= at[11].Min.Y {
		t.Error("the last stitch of row 2 does not stand over the first of row 1")
	}
	if h := at[4].Height() / at[4].Width(); math.Abs(h-.8) > 1e-6 {
		t.Errorf("cells are %g times as high as wide, want .8", h)
	}
	if got := strings.Join(texts(l, "numbers"), " "); got != "1 2" {
		t.Errorf("numbers %q, want 1 2", got)
	}
}

// Cells stand in the proportion of the gauge: 18 stitches and 24 rows make them lower than wide.
func TestCellsHaveTheGaugesProportion(t *testing.T) {
	s := newSwatch(t, 2)
	s.row("Row 1", 1)
	s.put("sc", 1, 0, 1)
	s.put("sc", 0, 0, 0)
	o := Options{Library: s.lib, Grid: Grid{Aspect: Aspect(pattern.Gauge{Stitches: 18, Rows: 24, OverCM: 10})}}
	l := Cells(s.f, o, 0)
	x := l.Measure()
	for i, item := range l.Items {
		if b, ok := item.(display.Begin); ok && b.Stitch == 2 {
			if h := x.Items[i+1].Height() / x.Items[i+1].Width(); math.Abs(h-.75) > 1e-6 {
				t.Errorf("cells are %g times as high as wide, want .75", h)
			}
		}
	}
	if Aspect(pattern.Gauge{Stitches: 18}) != 0 {
		t.Error("a gauge without rows has a proportion")
	}
}
