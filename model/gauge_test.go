package model_test

import (
	"math"
	"testing"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

func TestGaugeFindings(t *testing.T) {
	lib, _ := stitch.Standard()
	worsted := []pattern.Yarn{{Letter: "A", Weight: 4, Grams: 100, Metres: 200}}
	for _, c := range []struct {
		name    string
		pattern pattern.Pattern
		want    string
	}{
		{"worsted on 5 mm", pattern.Pattern{Hook: pattern.Hook{MM: 5}, Yarns: worsted}, ""},
		{"worsted on 3 mm", pattern.Pattern{Hook: pattern.Hook{MM: 3}, Yarns: worsted}, "hook-yarn"},
		{"worsted as fine as lace", pattern.Pattern{Yarns: []pattern.Yarn{{Letter: "A", Weight: 4, Grams: 50, Metres: 400}}}, "yarn-weight"},
		{"a swatch that says otherwise", pattern.Pattern{Gauge: pattern.Gauge{Stitches: 14, Rows: 16, OverCM: 10,
			Swatch: &pattern.Swatch{Stitches: 24, Rows: 24, WidthCM: 15, HeightCM: 15}}}, "swatch-gauge"},
	} {
		p := c.pattern
		p.Terms = "US"
		got := ""
		for _, f := range model.Work(lib, &p, 0).Findings {
			if f.ID == "hook-yarn" || f.ID == "yarn-weight" || f.ID == "swatch-gauge" {
				got += f.ID
			}
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// A swatch alone, over any number of stitches, gives the gauge.
func TestGaugeFromSwatch(t *testing.T) {
	lib, _ := stitch.Standard()
	p := &pattern.Pattern{Terms: "US", Gauge: pattern.Gauge{Swatch: &pattern.Swatch{Stitches: 21, Rows: 20, WidthCM: 15, HeightCM: 12.5, UnblockedWidthCM: 14}},
		Pieces: []pattern.Piece{{Name: "Mat", Rows: "Ch 15.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across.\n"}}}
	got := model.Work(lib, p, 0).Figures().Pieces[0].Size
	if math.Abs(got.WidthCM-10) > 1e-9 || math.Abs(got.LengthCM-1.25) > 1e-9 {
		t.Errorf("14 stitches and 2 rows: %g by %g cm, want 10 by 1.25", got.WidthCM, got.LengthCM)
	}
	if b := model.BlockingOf(p.Gauge.Swatch); math.Abs(b.Width-15./14) > 1e-9 || b.Length != 1 {
		t.Errorf("blocking %+v", b)
	}
}
