package layout

import (
	"math"
	"testing"
)

func TestAHatBendsWhereItsSidesBegin(t *testing.T) {
	// A flat crown of four rounds, then three straight down.
	q := &profile{radius: []float64{2, 4, 6, 8, 8, 8, 8}, up: []float64{0, 0, 0, 0, -2, -4, -6}, sides: 4}
	r := q.rounded()
	fold, radius, up := 0.0, 0.0, 0.0
	for i := range r.radius {
		dx, dy := r.radius[i]-radius, up-r.up[i]
		if h := math.Hypot(dx, dy); math.Abs(h-2) > .25 {
			t.Errorf("round %d is %.2f high, want about 2 as worked", i+1, h)
		}
		slope := math.Atan2(dy, dx)
		if i > 0 && slope-fold > 40*math.Pi/180 {
			t.Errorf("between rounds %d and %d it folds by %.0f degrees", i, i+1, (slope-fold)*180/math.Pi)
		}
		fold, radius, up = slope, r.radius[i], r.up[i]
	}
	if math.Abs(radius-8) > 1e-9 {
		t.Errorf("its brim has a radius of %.1f, want 8 as its stitches give", radius)
	}
}
