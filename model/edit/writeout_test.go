package edit

import (
	"testing"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

func TestWriteOut(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		rows string
		at   int
		want string
		ok   bool
	}{
		{"Ch 5.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2 (WS): Ch 1, sc in each st across, turn.\nRow 3 (RS): Ch 1, hdc in each st across, turn.\nRows 4-7: Rep Rows 2-3 twice.\nRow 8: Ch 1, sc in each st across.", 4,
			"Ch 5.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2 (WS): Ch 1, sc in each st across, turn.\nRow 3 (RS): Ch 1, hdc in each st across, turn.\nRow 4 (WS): Ch 1, sc in each st across, turn.\nRow 5 (RS): Ch 1, hdc in each st across, turn.\nRow 6 (WS): Ch 1, sc in each st across, turn.\nRow 7 (RS): Ch 1, hdc in each st across, turn.\nRow 8: Ch 1, sc in each st across.", true},
		{"Ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRows 2-3: Ch 1, sc in each st across, turn.", 2,
			"Ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc in each st across, turn.", true},
		{"Ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across.", 1, "Ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across.", false},
	} {
		p := &pattern.Pattern{Terms: "US", Pieces: []pattern.Piece{{Name: "Body", Rows: c.rows}}}
		before := model.Work(lib, p, 0).Pieces[0]
		got, ok := WriteOut(before.Tree, before.Fabric, c.at)
		if got != c.want || ok != c.ok {
			t.Errorf("written out %t:\n%s\nwant:\n%s", ok, got, c.want)
		}
		after := model.Work(lib, Rows(p, 0, got), 0).Pieces[0]
		if a, b := len(before.Fabric.Stitches), len(after.Fabric.Stitches); a != b || after.Findings.Faults() > 0 {
			t.Errorf("%d stitches before and %d after; %v", a, b, after.Findings)
		}
	}
}
