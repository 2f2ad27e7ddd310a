package cloth

import (
	"fmt"
	"math"
	"testing"

	"strandway/chart/layout"
	"strandway/model/measure"
)

// The cloth must measure what the gauge says, on the picture itself.
func TestClothMeasuresWhatTheGaugeSays(t *testing.T) {
	const sheet = "Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (30 sc)\nRow 2: Ch 1, sc in each st across, turn. (30 sc)\nRows 3-20: Rep Row 2.\n"
	tests := []struct {
		name           string
		stitches, rows float64 // to 10 cm
		pattern        string
		manner         layout.Manner
		form           measure.Form
	}{
		{"sc", 15, 17, "Foundation: Ch 31.\n" + sheet, layout.Rows, measure.Sheet},
		{"tight sc", 20, 26, "Foundation: Ch 31.\n" + sheet, layout.Rows, measure.Sheet},
		{"with an edging all round", 15, 17, "Foundation: Ch 31.\n" + sheet + "Edging: Ch 1, sc evenly around, working 3 sc in each corner, join with sl st in first sc.", layout.Rows, measure.Sheet},
		{"mesh", 15, 8, "Foundation: Ch 36.\nRow 1 (RS): Dc in 6th ch from hook (skipped 5 ch count as dc and ch 1), *ch 1, skip next ch, dc in next ch; rep from * across, turn.\n" +
			"Row 2: Ch 4 (counts as dc and ch 1), skip first dc and ch, *dc in next dc, ch 1, skip next ch; rep from * to last st, dc in last st, turn.\nRows 3-8: Rep Row 2.", layout.Rows, measure.Sheet},
		{"ripple", 14, 8, "Foundation: Ch 45.\nRow 1 (RS): Dc in 3rd ch from hook (skipped 2 ch count as dc), dc in next 5 ch, dc3tog over next 3 ch, dc in next 5 ch, *3 dc in next ch, dc in next 5 ch, dc3tog over next 3 ch, dc in next 5 ch; rep from * to last ch, 2 dc in last ch, turn.\n" +
			"Row 2: Ch 3 (counts as dc), dc in first st, dc in next 5 sts, dc3tog over next 3 sts, dc in next 5 sts, *3 dc in next st, dc in next 5 sts, dc3tog over next 3 sts, dc in next 5 sts; rep from * to last st, 2 dc in top of tch, turn.\nRows 3-5: Rep Row 2.", layout.Ripple, measure.Sheet},
		{"circle", 15, 17, "Rnd 1 (RS): 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\nRnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18 sc)\n" +
			"Rnd 4: *Sc in next 2 sts, 2 sc in next st; rep from * around. (24 sc)\nRnd 5: *Sc in next 3 sts, 2 sc in next st; rep from * around. (30 sc)", layout.Circle, measure.Disc},
		{"square", 14, 8, "Rnd 1 (RS): Ch 3 (counts as dc), 2 dc in magic ring, ch 2, (3 dc, ch 2) 3 times in ring, join with sl st in top of ch-3. (12 dc)\n" +
			"Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, ch 1, join with sl st in top of ch-3. (24 dc)", layout.Polygon, measure.Disc},
		{"tube", 15, 17, "Foundation: Ch 30, join with sl st in first ch.\nRnd 1 (RS): Ch 1, sc in each ch around, join with sl st in first sc. (30 sc)\nRnds 2-10: Ch 1, sc in each st around, join with sl st in first sc. (30 sc)", layout.Tube, measure.Tube},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			w := workedFile(t, fmt.Sprintf("strandway = 1\n[gauge]\nstitches = %g\nrows = %g\n[[piece]]\nname = \"S\"\nrows = \"\"\"\n%s\n\"\"\"\n", tt.stitches, tt.rows, tt.pattern))
			f := w.Pieces[0].Fabric
			g := w.Pattern.Gauge
			size := measure.Of(f, measure.FromGauge(f, g.Stitches, g.Rows, g.OverCM))
			plan := layout.Arrange(f, layout.Measured())
			if plan.Manner != tt.manner || size.Form != tt.form {
				t.Fatalf("laid out in manner %d as form %d, want %d and %d", plan.Manner, size.Form, tt.manner, tt.form)
			}
			o := OptionsOf(w, 0, plan)
			wide, tall := yarnAcross(t, Make(plan, nil, o))
			wantWide, wantTall := 10*size.WidthCM, 10*size.LengthCM
			if tt.form == measure.Tube { // cut open
				wantWide *= 2
			}
			// Half of the outermost loops, a third of a stitch, lies beyond their middles on either side.
			const loops = .7
			if wide *= o.StitchMM; math.Abs(wide-wantWide) > .01*wantWide+loops*o.StitchMM {
				t.Errorf("the cloth is %.1f mm wide, want %.1f", wide, wantWide)
			}
			if tall *= o.StitchMM; math.Abs(tall-wantTall) > .01*wantTall+loops*o.StitchMM {
				t.Errorf("the cloth is %.1f mm high, want %.1f", tall, wantTall)
			}
		})
	}
}

// yarnAcross is how far yarn reaches along the middle lines of the picture, w.
func yarnAcross(t *testing.T, c *Cloth) (wide, tall float64) {
	const scale = 10
	picture := drawn(t, c, scale).Colour(nil, Background{Ground: Transparent})
	b := picture.Bounds()
	reach := func(n int, yarn func(i int) bool) float64 {
		first, last := n, 0
		for i := range n {
			if yarn(i) {
				first, last = min(first, i), i+1
			}
		}
		return float64(last-first) / scale
	}
	const opaque = 250
	wide = reach(b.Dx(), func(x int) bool { return picture.RGBAAt(x, b.Dy()/2).A > opaque })
	tall = reach(b.Dy(), func(y int) bool { return picture.RGBAAt(b.Dx()/2, y).A > opaque })
	return wide, tall
}
