package edit

import (
	"testing"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

func TestInTerms(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ us, uk string }{
		{"Ch 21.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 3 (counts as dc), skip first st, dc in next 5 sts, (dc, ch 1, dc) in next st, hdc in next st, tr in each st across.",
			"Ch 21.\nRow 1 (RS): Dc in 2nd ch from hook and in each ch across, turn. (20 dc)\nRow 2: Ch 3 (counts as tr), miss first st, tr in next 5 sts, (tr, ch 1, tr) in next st, htr in next st, dtr in each st across."},
		{"Ch 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc2tog, sc in next 2 sts, sc2tog.", "Ch 7.\nRow 1: Dc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, dc2tog, dc in next 2 sts, dc2tog."},
		{"Make a magic ring.\nRnd 1: 6 sc in ring, join with sl st in first sc.", "Make a magic ring.\nRnd 1: 6 dc in ring, join with ss in first dc."},
	} {
		p := &pattern.Pattern{Terms: "US", Pieces: []pattern.Piece{{Name: "Body", Rows: c.us}}}
		uk := InTerms(lib, p, "UK")
		if got := uk.Pieces[0].Rows; got != c.uk || uk.Terms != "UK" {
			t.Errorf("in UK terms:\n%s\nwant:\n%s", got, c.uk)
		}
		if p.Pieces[0].Rows != c.us {
			t.Error("the pattern itself was changed")
		}
		a, b := model.Work(lib, p, 0).Pieces[0], model.Work(lib, uk, 0).Pieces[0]
		if len(a.Fabric.Stitches) != len(b.Fabric.Stitches) {
			t.Errorf("%d stitches in US terms, %d in UK", len(a.Fabric.Stitches), len(b.Fabric.Stitches))
		}
		for i := range a.Fabric.Stitches {
			if a.Fabric.Kind(int32(i)).Name != b.Fabric.Kind(int32(i)).Name {
				t.Fatalf("stitch %d is a %s in US terms and a %s in UK", i, a.Fabric.Kind(int32(i)).Name, b.Fabric.Kind(int32(i)).Name)
			}
		}
		if back := InTerms(lib, uk, "US").Pieces[0].Rows; back != c.us {
			t.Errorf("and back:\n%s\nwant:\n%s", back, c.us)
		}
	}
}
