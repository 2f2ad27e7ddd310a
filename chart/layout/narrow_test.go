package layout

import (
	"math"
	"testing"
)

func TestDecreasingClothNarrows(t *testing.T) {
	tests := []struct {
		name, rows  string
		left, right float64 // how far the edges of the last row lie inside those of the first, u
	}{
		{"at both ends", `
Ch 15.
Row 1: Dc in 4th ch from hook (skipped 3 ch count as dc) and in each ch across, turn.
Row 2: Ch 3 (counts as dc), skip first st, dc2tog, dc in next 7 sts, dc2tog, dc in last st, turn.
Row 3: Ch 3 (counts as dc), skip first st, dc2tog, dc in next 5 sts, dc2tog, dc in last st, turn.`, 2, 2},
		{"at one end", `
Ch 15.
Row 1: Dc in 4th ch from hook (skipped 3 ch count as dc) and in each ch across, turn.
Row 2: Ch 3 (counts as dc), skip first st, dc in next 9 sts, dc2tog, dc in last st, turn.`, 0, 1},
		{"nowhere", `
Ch 15.
Row 1: Dc in 4th ch from hook (skipped 3 ch count as dc) and in each ch across, turn.
Row 2: Ch 4 (counts as dc and ch 1), skip first 2 sts, *dc in next st, ch 1, skip next st; rep from * to last st, dc in last st, turn.`, 0, 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := Arrange(swatchOf(t, tt.rows, 1), Measured())
			edges := func(r int) (left, right float64) {
				left, right = math.Inf(1), math.Inf(-1)
				for id := p.Fabric.Rows[r].First; id < p.Fabric.Rows[r].Last; id++ {
					if q := &p.Poses[id]; q.Placed {
						left, right = min(left, q.Top.X), max(right, q.Top.X)
					}
				}
				return left, right
			}
			a, b := edges(1)
			c, d := edges(len(p.Fabric.Rows) - 1)
			if math.Abs(c-a-tt.left) > .7 || math.Abs(b-d-tt.right) > .7 {
				t.Errorf("the last row lies %.2f inside the left edge and %.2f inside the right, want %.1f and %.1f", c-a, b-d, tt.left, tt.right)
			}
		})
	}
}

func TestAFoundationGivesWay(t *testing.T) {
	p := Arrange(swatchOf(t, `
Ch 25.
Row 1: Dc in 4th ch from hook (skipped 3 ch count as dc), 2 dc in same ch, *skip next 3 ch, sc in next ch, skip next 3 ch, 7 dc in next ch; rep from * to last 8 ch, skip next 3 ch, sc in next ch, skip next 3 ch, 4 dc in last ch, turn.
Row 2: Ch 1, sc in first st, *skip next 3 sts, 7 dc in next sc, skip next 3 sts, sc in next dc; rep from * across, turn.`, 1), Measured())
	for _, id := range []int32{p.Fabric.Rows[1].First, p.Fabric.Rows[1].Last - 1} {
		if d := math.Abs(p.Poses[id].Top.X - p.LegsOf(id)[0].Foot.X); d > .3 {
			t.Errorf("an edge stitch leans by %.2f u", d)
		}
	}
}
