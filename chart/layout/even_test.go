package layout

import "testing"

// tops gives the least and greatest height of the stitches of the last row.
func tops(p *Plan) (low, high float64) {
	r := p.Fabric.Rows[len(p.Fabric.Rows)-1]
	low, high = 1e9, -1e9
	for id := r.First; id < r.Last; id++ {
		if q := &p.Poses[id]; q.Placed && q.NLegs > 0 {
			low, high = min(low, q.Top.Y), max(high, q.Top.Y)
		}
	}
	return low, high
}

func TestLoopsHangAtTheHeightOfTheirEdges(t *testing.T) {
	p := Arrange(swatchOf(t, `
Ch 6n + 2.
Row 1: Sc in 2nd ch from hook, *ch 5, skip next 5 ch, sc in next ch; rep from * across, turn.
Row 2: Ch 5 (counts as dc, ch 2), sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * to last sc, ch 2, dc in last sc, turn.`, 4), Measured())
	if _, high := tops(p); high < 1.9 {
		t.Errorf("the second row stands %.2f high: its loops are pressed down", high)
	}
}

func TestTallAmongShort(t *testing.T) {
	tests := []struct {
		name, rows  string
		least, most float64 // between the lowest and the highest top of the last row, u
	}{
		{"tr between sc lie level, however many rows", `
Ch 13.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, *sc in next st, tr in next st; rep from * across, turn.
Row 3: Ch 1, sc in each st across, turn.
Rows 4-13: Rep Rows 2 and 3.`, 0, .05},
		{"edges go with a row of puffs", `
Ch 16.
Row 1: Puff in 5th ch from hook (skipped 4 ch count as dc), *ch 1, skip next ch, puff in next ch; rep from * to last ch, dc in last ch, turn.`, 0, .35},
		{"a wave keeps its slope", `
Ch 17.
Row 1: Sc in 2nd ch from hook, sc in next 3 ch, hdc in next 2 ch, dc in next 2 ch, tr in next 4 ch, dc in next 2 ch, hdc in next 2 ch, turn.`, .9, 2},
		{"edges of a rib stand no higher than its posts", `
Ch 16.
Row 1: Dc in 4th ch from hook (skipped 3 ch count as dc) and in each ch across, turn.
Row 2: Ch 2 (counts as hdc), skip first st, *fpdc around next st, bpdc around next st; rep from * to last st, hdc in last st, turn.
Rows 3-12: Rep Row 2.`, 0, .1},
		{"blocks of filet lie level with its spaces", `
Ch 24.
Row 1: Dc in 9th ch from hook (skipped 8 ch count as dc, ch 2), *ch 2, skip next 2 ch, dc in next ch; rep from * across, turn.
Row 2: Ch 3 (counts as dc), skip first dc, *2 dc in next ch-2 sp, dc in next dc, ch 2, skip next ch-2 sp, dc in next st; rep from * across, turn.`, 0, .15},
		{"shells keep their fans", `
Ch 14.
Row 1: Sc in 2nd ch from hook, *skip next 2 ch, 5 dc in next ch, skip next 2 ch, sc in next ch; rep from * across, turn.`, .3, 2},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			low, high := tops(Arrange(swatchOf(t, tt.rows, 1), Measured()))
			if d := high - low; d < tt.least || d > tt.most {
				t.Errorf("the last row lies from %.2f to %.2f, %.2f apart; want %.2f to %.2f", low, high, d, tt.least, tt.most)
			}
		})
	}
}

func TestTowers(t *testing.T) {
	tests := []struct {
		name, rows  string
		least, most float64 // between the lowest and the highest top of the last row of the chart, u
	}{
		{"dc in one column of a cloth of sc", `
Ch 22.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in each st across, turn.
Row 3: Ch 1, *sc in next 3 sts, dc in next st; rep from * across, sc in last st, turn.
Rows 4-41: Rep Rows 2 and 3.
Row 42: Ch 1, sc in each st across, turn.`, 0, .05},
		{"a wave that the next rows fill", `
Ch 21.
Row 1: Sc in 2nd ch from hook, hdc in next ch, dc in next ch, tr in next 4 ch, dc in next ch, hdc in next ch, sc in next 2 ch, hdc in next ch, dc in next ch, tr in next 4 ch, dc in next ch, hdc in next ch, sc in last ch, turn.
Row 2: Ch 4 (counts as tr), skip first st, dc in next st, hdc in next st, sc in next 4 sts, hdc in next st, dc in next st, tr in next 2 sts, dc in next st, hdc in next st, sc in next 4 sts, hdc in next st, dc in next st, tr in last st, turn.
Row 3: Ch 1, sc in first st, hdc in next st, dc in next st, tr in next 4 sts, dc in next st, hdc in next st, sc in next 2 sts, hdc in next st, dc in next st, tr in next 4 sts, dc in next st, hdc in next st, sc in last st, turn.
Rows 4-13: Rep Rows 2 and 3.`, 1, 3},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			low, high := tops(Arrange(swatchOf(t, tt.rows, 1), Drawn()))
			if d := high - low; d < tt.least || d > tt.most {
				t.Errorf("the last row lies from %.2f to %.2f, %.2f apart; want %.2f to %.2f", low, high, d, tt.least, tt.most)
			}
		})
	}
}
