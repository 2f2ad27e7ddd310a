package layout

import "testing"

func TestBandAlongASide(t *testing.T) {
	const rows = `
Ch 6.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.
Rows 2-4: Ch 1, sc in each st across, turn.
Row 5: Working along side edge, ch 1, sc in the end of each row, turn.
Row 6: Ch 1, sc in each st across, turn.
Row 7: Ch 1, sc in each st across, turn.`
	for _, h := range []Heights{Drawn(), Measured()} {
		p := Arrange(swatchOf(t, rows, 1), h)
		for id := p.Fabric.Rows[5].First; int(id) < len(p.Poses); id++ {
			for _, l := range p.LegsOf(id) {
				if d := p.Poses[id].Top.Sub(l.Foot).Len(); d > 1.3 {
					t.Errorf("stitch %d stands %.2f u from its place", id, d)
				}
			}
		}
	}
}

func TestStitchesShareARowsEnd(t *testing.T) {
	const rows = `
Ch 8.
Row 1 (RS): Dc in 4th ch from hook and in each ch across, turn.
Row 2: Working along side edge, ch 1, 2 sc in the end of row.`
	p := Arrange(swatchOf(t, rows, 1), Measured())
	last := int32(len(p.Poses) - 1)
	a, b := p.LegsOf(last - 1)[0].Foot, p.LegsOf(last)[0].Foot
	if d := a.Sub(b).Len(); d < .5 || a.X != b.X {
		t.Errorf("two stitches in the end of a row of dc stand at %v and %v, want one above the other", a, b)
	}
}
