package edit_test

import (
	"strings"
	"testing"

	"strandway/model"
	"strandway/model/edit"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

func TestFit(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, rows    string
		sizes         []pattern.Size
		width, length float64
		want          []string // lines of the rows
		n             int
	}{
		// 20 stitches and 22 rows to 10 cm
		{"a fixed foundation and a range of rows", "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRows 2-10: Ch 1, sc in each st across, turn. (20 sc)\nRow 11: Ch 1, sc in each st across.\n",
			nil, 30, 20, []string{"Ch 61.", "(60 sc)", "Rows 2-43: Ch 1", "Row 44: Ch 1"}, 0},
		{"repeats that come out no nearer", "Ch 13.\nRow 1: Sc in 2nd ch from hook and in next ch, *ch 3, skip next 3 ch, sc in next 2 ch; rep from * across, turn.\nRow 2: Ch 1, sc in first 2 sc, *3 dc in next ch-3 sp, sc in next 2 sc; rep from * across, turn.\n" +
			"Row 3: Ch 1, sc in first 2 sts, *ch 3, skip next 3 sts, sc in next 2 sts; rep from * across, turn.\nRows 4-9: Rep Rows 2 and 3 three times.\nRow 10: Ch 1, sc in each st across.\n",
			nil, 40, 9, []string{"Ch 83.", "Rows 4-19: Rep Rows 2 and 3 8 times.", "Row 20: Ch 1"}, 0},
		{"rows in n, a size", "Foundation: Ch 4n + 2.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc in each st across, turn.\nRep Rows 2 and 3 until piece measures 10 cm.\n",
			[]pattern.Size{{Name: "Mat", Repeats: 4}}, 42, 30, []string{"Ch 4n + 2.", "until piece measures 30 cm"}, 21},
		{"rows worked again twice more", "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc in each st across, turn.\nRep Rows 2 and 3 twice more.\n",
			nil, 0, 10, []string{"Ch 21.", "Rep Rows 2 and 3 10 more times."}, 0},
	} {
		p := &pattern.Pattern{Terms: "US", Gauge: pattern.Gauge{Stitches: 20, Rows: 22, OverCM: 10}, Sizes: c.sizes, Pieces: []pattern.Piece{{Name: "Mat", Rows: c.rows}}}
		got, err := edit.Fit(lib, model.Work(lib, p, 0), 0, c.width, c.length)
		if err != nil {
			t.Errorf("%s: %v %v", c.name, err, model.Work(lib, p, 0).Findings)
			continue
		}
		rows := got.Pieces[0].Rows
		for _, want := range c.want {
			if !strings.Contains(rows, want) {
				t.Errorf("%s: no %q in\n%s", c.name, want, rows)
			}
		}
		if c.n > 0 && got.Sizes[0].Repeats != c.n {
			t.Errorf("%s: n = %d, want %d", c.name, got.Sizes[0].Repeats, c.n)
		}
		w := model.Work(lib, got, 0)
		if w.Findings.Faults() > 0 {
			t.Errorf("%s: %v\n%s", c.name, w.Findings, rows)
		}
		size := w.Figures().Pieces[0].Size
		if off := size.LengthCM - c.length; off > 1 || off < -1 {
			t.Errorf("%s: %.1f cm long, want about %g\n%s", c.name, size.LengthCM, c.length, rows)
		}
		if off := size.WidthCM - c.width; c.width > 0 && (off > 1.25 || off < -1.25) {
			t.Errorf("%s: %.1f cm wide, want about %g", c.name, size.WidthCM, c.width)
		}
	}
}

func TestFitSaysWhatCannotBeMet(t *testing.T) {
	lib, _ := stitch.Standard()
	p := &pattern.Pattern{Terms: "US", Gauge: pattern.Gauge{Stitches: 20, Rows: 22, OverCM: 10},
		Pieces: []pattern.Piece{{Name: "Mat", Rows: "Ch 9.\nRow 1: Sc in 2nd ch from hook and in next 7 ch, turn.\nRow 2: Ch 1, sc in next 8 sts.\n"}}}
	w := model.Work(lib, p, 0)
	if _, err := edit.Fit(lib, w, 0, 30, 0); err == nil || !strings.Contains(err.Error(), "no stitch repeat") {
		t.Errorf("width: %v", err)
	}
	if _, err := edit.Fit(lib, w, 0, 0, 30); err == nil || !strings.Contains(err.Error(), "written by itself") {
		t.Errorf("length: %v", err)
	}
}
