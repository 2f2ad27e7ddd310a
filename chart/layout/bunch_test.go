package layout

import "testing"

func TestLongStitchesBunch(t *testing.T) {
	const rows = `
Ch 14.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in each st across, turn.
Row 3: Ch 1, sc in first 6 sts, spike2 in next st, sc in next 6 sts, turn.`
	f := swatchOf(t, rows, 1)
	for _, h := range []Heights{Drawn(), Measured()} {
		p := Arrange(f, h)
		// The seventh stitch of each row stands in the spike's column, the first far from it.
		column := func(row, n int32) *Pose {
			id := f.Rows[row].First
			for ; !p.Poses[id].Placed || n > 0; id++ {
				if p.Poses[id].Placed {
					n--
				}
			}
			return &p.Poses[id]
		}
		top := column(3, 0).Top.Y - column(3, 6).Top.Y
		beside := column(2, 4).Top.X - column(2, 5).Top.X
		if beside < 0 {
			beside = -beside
		}
		switch {
		case !h.measured && (top != 0 || beside < 1-1e-9):
			t.Errorf("the chart is bunched: its top is %.2f lower, its neighbours %.2f apart", top, beside)
		case h.measured && (top < .05 || top > .25):
			t.Errorf("in cloth the spike draws its row down by %.2f, want .05 to .25", top)
		}
	}
}
