package size_test

import (
	"math"
	"testing"

	"strandway/model/pattern"
	"strandway/model/size"
	"strandway/model/stitch"
)

const shells = `Foundation: Ch 6n + 2.
Row 1: Sc in 2nd ch from hook, *skip next 2 ch, 5 dc in next ch, skip next 2 ch, sc in next ch; rep from * across, turn.
Row 2: Ch 3 (counts as dc), 2 dc in first sc, *skip next 2 dc, sc in next dc, skip next 2 dc, 5 dc in next sc; rep from * to last shell, skip next 2 dc, sc in next dc, skip next 2 dc, 3 dc in last sc, turn.
`

func TestTable(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	p := &pattern.Pattern{Terms: "US", Gauge: pattern.Gauge{Stitches: 15, Rows: 9, OverCM: 10},
		Sizes:  []pattern.Size{{Name: "Runner", WidthCM: 40}, {Name: "Throw", WidthCM: 125, LengthCM: 150}, {Name: "Own", Repeats: 7}},
		Pieces: []pattern.Piece{{Name: "Cloth", Rows: shells}}}
	table := size.Table(lib, p, size.EdgingOf(p))
	if len(table) != 3 {
		t.Fatalf("%d entries, want 3", len(table))
	}
	for i, c := range []struct {
		n, chains int
		unmet     bool
	}{{10, 62, true}, {31, 188, true}, {7, 44, false}} {
		e := table[i]
		if e.N != c.n || e.Foundation != c.chains || (e.Unmet() != "") != c.unmet {
			t.Errorf("%s: n = %d, ch %d, %q; want n = %d, ch %d", e.Size, e.N, e.Foundation, e.Unmet(), c.n, c.chains)
		}
		if w := e.Width; w != nil && math.Abs(w.OffCM) > 6./15*10/2+1e-9 {
			t.Errorf("%s: %.1f cm off, more than half a repeat", e.Size, w.OffCM)
		}
	}
}

func TestLengthEndsOnTheRepeat(t *testing.T) {
	lib, _ := stitch.Standard()
	p := &pattern.Pattern{Terms: "US", Gauge: pattern.Gauge{Stitches: 14, Rows: 16, OverCM: 10}, Sizes: []pattern.Size{{Name: "One", LengthCM: 20}},
		Pieces: []pattern.Piece{{Name: "Mat", Rows: `Ch 15.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in each st across, turn.
Row 3: Ch 1, sc in each st across, turn.
Row 4: Ch 1, sc in each st across, turn.
Rep Rows 2-4 until piece measures 20 cm.
`}}}
	e := size.Table(lib, p, size.EdgingOf(p))[0]
	if e.Length == nil || (e.Length.Rows-1)%3 != 0 || math.Abs(e.Length.OffCM) > 3*10./16/2+1e-9 {
		t.Errorf("%+v: want 1 row and a multiple of 3 that come nearest to 20 cm", e.Length)
	}
}

func TestBodyAndHousehold(t *testing.T) {
	heads := size.Body("head", "head circumference", -2)
	if len(heads) < 8 || heads[0].WidthCM != 24.25-2 {
		t.Errorf("%d heads, the first with %+v", len(heads), heads[:min(1, len(heads))])
	}
	if got := size.Household("cushion"); len(got) < 3 || got[0].WidthCM != 30 || got[0].LengthCM != 30 {
		t.Errorf("cushions: %+v", got)
	}
	if size.Body("woman", "wingspan", 0) != nil {
		t.Error("there is no such measure")
	}
}
