package model_test

import (
	"slices"
	"strings"
	"testing"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

const (
	oneRowStripes = `Foundation (A): Ch 14.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, do not turn.
Row 2 (RS, B): Ch 1, sc in each st across, turn.
Row 3 (WS, A): Ch 1, sc in each st across, turn.
`
	wideStripes = `Foundation (A): Ch 14.
Row 1 (A): Dc in 4th ch from hook (skipped 3 ch count as dc) and in each ch across, turn.
Row 2 (A): Ch 3 (counts as dc), dc in next st and in each st across, turn.
Row 3 (B): Ch 3 (counts as dc), dc in next st and in each st across, turn.
Row 4 (B): Ch 3 (counts as dc), dc in next st and in each st across, turn.
Row 5 (A): Ch 3 (counts as dc), dc in next st and in each st across, turn.
`
	edged = wideStripes + `Row 6 (A): Ch 3 (counts as dc), dc in next st and in each st across, do not turn.
Edging: Rotate to work along left edge, ch 1, 2 sc in each row end across, rotate to work along foundation, sc in each ch across, rotate to work along right edge, 2 sc in each row end across.
`
	arches = `Ch 14.
Row 1: Sc in 2nd ch from hook, *ch 5, skip next 3 ch, sc in next ch; rep from * across, turn.
`
)

func TestStrandFindings(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	gauge := pattern.Gauge{Stitches: 14, Rows: 8, OverCM: 10}
	for _, c := range []struct {
		name    string
		pattern pattern.Pattern
		rows    string
		want    []string // ids
	}{
		{"a loop that must be held", pattern.Pattern{Gauge: gauge}, oneRowStripes, []string{"held-loop", "open-float"}},
		{"said in the notes", pattern.Pattern{Gauge: gauge, Note: "Put the loop on a marker and carry yarns up."}, oneRowStripes, nil},
		{"two rows of dc are within the limit", pattern.Pattern{Gauge: gauge}, wideStripes, []string{"open-float"}},
		{"not for a baby", pattern.Pattern{Gauge: gauge, Baby: true}, wideStripes, []string{"baby", "long-float", "open-float"}},
		{"the pattern's own limit", pattern.Pattern{Gauge: gauge, FloatLimitCM: 2}, wideStripes, []string{"long-float", "open-float"}},
		{"an edging covers them", pattern.Pattern{Gauge: gauge}, edged, nil},
		{"an edging with two different sides", pattern.Pattern{Gauge: gauge}, strings.Replace(edged, "right edge, 2 sc in", "right edge, sc in", 1), []string{"edging-sides"}},
		{"no looser limit for a baby", pattern.Pattern{Gauge: gauge, Baby: true, FloatLimitCM: 4}, wideStripes, []string{"baby", "long-float", "open-float"}},
		{"a blanket for a baby", pattern.Pattern{Gauge: gauge, Baby: true, Title: "Cradle Blanket"}, "Ch 4.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n", []string{"baby", "cot"}},
		{"a bonnet with ties", pattern.Pattern{Gauge: gauge, Baby: true, Title: "Bonnet", Note: "Sew the ties on."}, "Ch 4.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n", []string{"baby", "cord", "hat"}},
		{"holes in a baby blanket", pattern.Pattern{Gauge: gauge, Baby: true}, arches, []string{"baby", "hole"}},
		{"buttons on a baby cardigan", pattern.Pattern{Gauge: gauge, Baby: true, Note: "Sew on 3 buttons."}, "Ch 4.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n", []string{"baby", "small-part"}},
	} {
		p := c.pattern
		p.Terms, p.Pieces = "US", []pattern.Piece{{Name: "Mat", Rows: c.rows}}
		var got []string
		for _, f := range model.Work(lib, &p, 0).Findings {
			if slices.Contains([]string{"baby", "held-loop", "open-float", "long-float", "hole", "small-part", "cord", "cot", "hat", "toy", "edging-sides"}, f.ID) {
				got = append(got, f.ID)
			}
			if slices.Contains([]string{"baby", "hole", "small-part", "cord", "cot", "hat", "toy"}, f.ID) && !strings.Contains(f.Hint, "local product-safety rules") {
				t.Errorf("%s: %q does not name the local rules", c.name, f.Hint)
			}
		}
		slices.Sort(got)
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// A yarn waits where its row ended; the float to its next row is as long as the rows between.
func TestFigures(t *testing.T) {
	lib, _ := stitch.Standard()
	p := &pattern.Pattern{Terms: "US", Gauge: pattern.Gauge{Stitches: 14, Rows: 8, OverCM: 10}, Pieces: []pattern.Piece{{Name: "Mat", Rows: wideStripes}}}
	f := model.Work(lib, p, 0).Figures()
	s := f.Pieces[0].Strands
	if s.Ends != 4 || s.Cut() != 0 || len(s.ByYarn[0].Floats) != 1 || s.Longest.CM != 2.5 {
		t.Errorf("%+v", s)
	}
	if got := f.Pieces[0].Size; got.WidthCM != 12./14*10 || got.LengthCM != 5./8*10 {
		t.Errorf("%.2f by %.2f cm, want 12 stitches and 5 rows at the gauge", got.WidthCM, got.LengthCM)
	}
	if f.Yarns != nil {
		t.Error("yarn reckoned without a hook or a yarn")
	}
}

func BenchmarkFigures(b *testing.B) {
	lib, _ := stitch.Standard()
	rows := "Foundation (A): Ch 101.\nRow 1 (A): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2 (A): Ch 1, sc in each st across, turn.\n" +
		"Row 3 (B): Ch 1, sc in each st across, turn.\nRow 4 (B): Ch 1, sc in each st across, turn.\nRep Rows 1-4 12 times.\n"
	rows = strings.Replace(rows, "Rows 1-4", "Rows 3-4", 1)
	p := &pattern.Pattern{Terms: "US", Hook: pattern.Hook{MM: 5}, Yarns: []pattern.Yarn{{Letter: "A", Weight: 4, Grams: 100, Metres: 200}}, Gauge: pattern.Gauge{Stitches: 14, Rows: 16, OverCM: 10},
		Pieces: []pattern.Piece{{Name: "Mat", Rows: strings.Replace(rows, "12 times", "24 times", 1)}}}
	w := model.Work(lib, p, 0)
	b.ReportMetric(float64(len(w.Pieces[0].Fabric.Stitches)), "stitches")
	for b.Loop() {
		w.Figures()
	}
}
