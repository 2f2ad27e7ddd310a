package layout

import "testing"

func TestGroupsAtTheEdgesAreNoSpines(t *testing.T) {
	p := Arrange(swatchOf(t, `
Row 1 (RS): Ch 4 (counts as dc and ch 1), (3 dc, ch 2, 3 dc, ch 1, dc) in magic ring, turn.
Row 2: Ch 4 (counts as dc and ch 1), 3 dc in first ch-1 sp, (3 dc, ch 2, 3 dc) in ch-2 sp, (3 dc, ch 1, dc) in last sp, turn.
Row 3: Ch 4 (counts as dc and ch 1), 3 dc in first ch-1 sp, 3 dc in next gap, (3 dc, ch 2, 3 dc) in ch-2 sp, 3 dc in next gap, (3 dc, ch 1, dc) in last sp, turn.`, 1), Measured())
	if p.Manner != Point || p.Corners != 1 {
		t.Errorf("a shawl with a spine is laid out in manner %d with %d corners, want %d with 1", p.Manner, p.Corners, Point)
	}
}
