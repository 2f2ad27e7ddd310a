package picture

import (
	"math"
	"testing"

	"strandway/chart/geom"
)

func box(w, h float64) geom.Box { return geom.Box{Max: geom.Point{X: w, Y: h}} }

func TestAWidePieceStandsAboveATallOneBeside(t *testing.T) {
	pane := size{900, 700}
	if !stacked(box(60, 12), box(60, 10), pane, 38, false) {
		t.Error("a runner's chart and cloth share columns, one above the other")
	}
	if stacked(box(20, 40), box(20, 36), pane, 38, true) {
		t.Error("a scarf's chart and cloth share rows, side by side")
	}
}

// A window that grows by single pixels changes the arrangement once at most.
func TestTheArrangementDoesNotFlicker(t *testing.T) {
	now, changes := true, 0
	for w := 500.0; w < 1600; w++ {
		next := stacked(box(30, 24), box(30, 22), size{w, 700}, 38, now)
		if next != now {
			changes++
		}
		now = next
	}
	for w := 1600.0; w > 500; w-- {
		next := stacked(box(30, 24), box(30, 22), size{w, 700}, 38, now)
		if next != now {
			changes++
		}
		now = next
	}
	if changes > 2 {
		t.Errorf("it changed %d times", changes)
	}
}

func TestZoomKeepsThePointUnderThePointer(t *testing.T) {
	v := View{Pixels: 30, Centre: geom.Point{X: .5, Y: .5}}
	at := geom.Point{X: .8, Y: .1}
	for _, by := range []float64{1.2, 1 / 1.2, 3, .01, 1000} {
		z := v.Zoom(by, at)
		before, after := at.Sub(v.Centre).Mul(v.Pixels), at.Sub(z.Centre).Mul(z.Pixels)
		if before.Sub(after).Len() > 1e-9 {
			t.Errorf("by %g the point went from %v to %v", by, before, after)
		}
		if z.Pixels < smallest || z.Pixels > largest || math.IsNaN(z.Centre.X) {
			t.Errorf("by %g a stitch is %g px", by, z.Pixels)
		}
	}
}

func TestAGrowingPieceKeepsItsSizeForSomeRows(t *testing.T) {
	sizes := 0
	for rows, was := 20, 0.0; rows < 160; rows++ {
		fits := 330 / float64(rows)
		now := stepped(fits)
		if now > fits || now < .91*fits {
			t.Errorf("%d rows are drawn at %g px a stitch where %g fit", rows, now, fits)
		}
		if now != was {
			sizes++
		}
		was = now
	}
	if sizes > 26 {
		t.Errorf("140 rows were drawn at %d sizes", sizes)
	}
	if stepped(usual) != usual {
		t.Error("a small piece is not drawn at its usual size")
	}
}
