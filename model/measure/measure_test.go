package measure_test

import (
	"fmt"
	"math"
	"testing"

	"strandway/model/fabric"
	"strandway/model/measure"
	"strandway/model/stitch"
	"strandway/model/syntax"
	"strandway/model/work"
)

// worked works rows that must have no fault.
func worked(t *testing.T, rows string) *fabric.Fabric {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	tree, _ := syntax.Read(rows, syntax.ReadOptions{Library: lib})
	f, findings := work.Work(lib, tree, work.Options{N: 3, Limit: 100000})
	if findings.Faults() > 0 {
		t.Fatalf("%s: %v", rows, findings)
	}
	return f
}

const scarf = `Ch 21.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Rows 2-10: Ch 1, sc in each st across, turn.
`

func disc(increases ...int) string {
	rows := fmt.Sprintf("Rnd 1: %d sc in ring.\n", increases[0])
	n := increases[0]
	for i, more := range increases[1:] {
		if more == n {
			rows += fmt.Sprintf("Rnd %d: 2 sc in each st around. (%d sc)\n", i+2, n+more)
		} else {
			rows += fmt.Sprintf("Rnd %d: *2 sc in next st, sc in next %d sts; rep from * around. (%d sc)\n", i+2, n/more-1, n+more)
		}
		n += more
	}
	return "Ch 4, join with sl st to form a ring.\n" + rows
}

func TestOf(t *testing.T) {
	gauge := measure.Scale{ColumnCM: .7, SCCM: .6}
	for _, c := range []struct {
		name, rows    string
		form          measure.Form
		width, length float64 // cm
		lies          string
	}{
		{"a flat piece of sc", scarf, measure.Sheet, 20 * .7, 10 * .6, ""},
		{"with an edging on three sides", scarf + "Row 11: Ch 1, sc in each st across, do not turn.\nEdging: Rotate to work along left edge, ch 1, sc in each row end across, " +
			"rotate to work along foundation, sc in each ch across, rotate to work along right edge, sc in each row end across.\n", measure.Sheet, 20*.7 + 1.2, 11*.6 + .6, ""},
		{"rows that grow", "Ch 2.\nRow 1: Sc in 2nd ch from hook, turn.\nRow 2: Ch 1, 3 sc in st, turn.\nRow 3: Ch 1, 2 sc in first st, sc in next st, 2 sc in last st, turn.\n", measure.Sheet, 5 * .7, 3 * .6, ""},
		{"a tube", "Ch 20, join with sl st to first ch.\nRnd 1: Ch 1, sc in each ch around, join with sl st to first sc.\nRnd 2: Ch 1, sc in each st around, join with sl st to first sc.\n",
			measure.Tube, 7, 1.2, ""},
		{"a hat", disc(6, 6, 6, 6, 6) + "Rnds 6-14: Sc in each st around.\n", measure.Hollow, 30 * .7 / 2, .25 + 14*.6, "cups"},
		{"too many increases", disc(9, 9, 9, 9, 9), measure.Disc, 6.5, 6.5, "ruffles"},
		{"six increases a round lie flat", disc(6, 6, 6, 6, 6, 6), measure.Disc, 7.7, 7.7, "flat"},
	} {
		got := measure.Of(worked(t, c.rows), gauge)
		if got.Form != c.form || math.Abs(got.WidthCM-c.width) > .06 || math.Abs(got.LengthCM-c.length) > .06 || got.Lies() != c.lies {
			t.Errorf("%s: form %d, %.2f by %.2f cm, lies %q with %.2f, want form %d, %.2f by %.2f cm, %q", c.name, got.Form, got.WidthCM, got.LengthCM, got.Lies(), got.Fullness,
				c.form, c.width, c.length, c.lies)
		}
	}
}

func TestGaugeScalesSize(t *testing.T) {
	f := worked(t, scarf)
	one := measure.Of(f, measure.FromGauge(f, 14, 16, 10))
	for _, k := range []float64{.5, 1.25, 3} {
		got := measure.Of(f, measure.FromGauge(f, 14/k, 16/k, 10))
		if math.Abs(got.WidthCM-k*one.WidthCM) > 1e-9 || math.Abs(got.LengthCM-k*one.LengthCM) > 1e-9 {
			t.Errorf("a gauge of 1/%g: %g by %g cm, want %g by %g", k, got.WidthCM, got.LengthCM, k*one.WidthCM, k*one.LengthCM)
		}
	}
}

func TestIncreases(t *testing.T) {
	for _, c := range []struct {
		column, row float64
		want        float64
	}{{.7, .62, 6}, {.7, .9, 8}, {.7, 1.3, 12}} {
		if got := measure.Increases(c.column, c.row); math.Abs(got-c.want) > .7 {
			t.Errorf("stitches %g wide in rounds %g high: %.1f increases, want about %g", c.column, c.row, got, c.want)
		}
	}
}

func TestAlongRows(t *testing.T) {
	for _, c := range []struct {
		name, rows     string
		multiple, plus int
		want           int
		rule           string
	}{
		{"sc rows", scarf, 1, 0, 10, "1 in each row end"},
		{"sc rows, shells of 6 + 1", scarf, 6, 1, 13, "1 in each row end and 1 more in 3 of the 10, evenly spread"},
		{"dc rows", "Ch 22.\nRow 1: Dc in 4th ch from hook (skipped 3 ch count as dc) and in each ch across, turn.\nRows 2-6: Ch 3 (counts as dc), dc in next st and in each st across, turn.\n",
			1, 0, 12, "2 in each row end"},
		{"rows of tr", "Ch 23.\nRow 1: Tr in 5th ch from hook (skipped 4 ch count as tr) and in each ch across, turn.\nRows 2-4: Ch 4 (counts as tr), tr in next st and in each st across, turn.\n",
			1, 0, 12, "3 in each row end"},
		{"griddle, an sc at one end and a dc at the other", "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRows 2-9: Ch 1, *sc in next st, dc in next st; rep from * across, turn.\n",
			1, 0, 13, "1 in each row end and 1 more in 4 of the 9, evenly spread"},
		{"two rows of sc and two of dc, shells of 4 + 1", "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 3 (counts as dc), dc in next st and in each st across, turn.\nRow 4: Ch 3 (counts as dc), dc in next st and in each st across, turn.\nRows 5-6: Ch 1, sc in each st across, turn.\nRows 7-8: Rep Rows 3 and 4.\nRows 9-12: Rep Rows 5-8.\n",
			4, 1, 17, "1 in each row end and 1 more in 5 of the 12, evenly spread"},
		{"hdc rows", "Ch 21.\nRow 1: Hdc in 2nd ch from hook and in each ch across, turn.\nRows 2-4: Ch 1, hdc in each st across, turn.\n", 1, 0, 6, "1 in each row end and 1 more in 2 of the 4, evenly spread"},
	} {
		got := measure.AlongRows(worked(t, c.rows), c.multiple, c.plus)
		if got.Stitches != c.want || got.Rule != c.rule {
			t.Errorf("%s: %d, %q, want %d, %q", c.name, got.Stitches, got.Rule, c.want, c.rule)
		}
		if (got.Stitches-c.plus)%c.multiple != 0 {
			t.Errorf("%s: %d is no multiple of %d + %d", c.name, got.Stitches, c.multiple, c.plus)
		}
	}
}

func TestFitWidth(t *testing.T) {
	got := measure.FitWidth(50, .7, 4, 1)
	if got.N != 18 || got.Stitches != 73 || math.Abs(got.OffCM-1.1) > 1e-9 {
		t.Errorf("50 cm in a multiple of 4 + 1: %+v", got)
	}
	if none := measure.FitWidth(0, .7, 4, 1); none.N != 1 {
		t.Errorf("no width at all: %+v, want one repeat", none)
	}
}

func TestFitLengthEndsOnTheRepeat(t *testing.T) {
	got := measure.FitLength(10, []float64{1}, []float64{.5, .5, .8}, []float64{1})
	if got.Times != 4 || got.Rows != 14 || math.Abs(got.CM-9.2) > 1e-9 {
		t.Errorf("%+v, want 4 times, 14 rows, 9.2 cm", got)
	}
}
