package edit_test

import (
	"testing"

	"strandway/model/edit"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// A row is worked in another yarn by what decides its yarn: the words it begins with, or its heading.
func TestRowYarn(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	for row, want := range map[string]string{
		"Row 1 (RS, A): Ch 1, sc in each st across, turn.": "Row 1 (RS, C): Ch 1, sc in each st across, turn.",
		"Row 1 (A, WS): Ch 1, sc in each st across, turn.": "Row 1 (C, WS): Ch 1, sc in each st across, turn.",
		"Row 1 (RS): Ch 1, sc in each st across, turn.":    "Row 1 (RS, C): Ch 1, sc in each st across, turn.",
		"Row 1: Ch 1, sc in each st across, turn.":         "Row 1 (C): Ch 1, sc in each st across, turn.",
		"Row 1 (RS): ": "Row 1 (RS, C): ",
		"Row 1 (RS): With A, ch 1, sc in each st across, turn.":                                            "Row 1 (RS): With C, ch 1, sc in each st across, turn.",
		"Row 1 (RS, B): With A, ch 1, sc in each st across, turn.":                                         "Row 1 (RS, C): With C, ch 1, sc in each st across, turn.",
		"Row 1: Join A in first st, ch 1, sc in each st across. Fasten off.":                               "Row 1: Join C in first st, ch 1, sc in each st across. Fasten off.",
		"Row 1: With A, ch 1, sc in next 3 sts, with B, sc in next 2 sts, with A, sc in next 3 sts, turn.": "Row 1: With C, ch 1, sc in next 3 sts, sc in next 2 sts, sc in next 3 sts, turn.",
		"Row 1: With A, ch 1, sc in next 8 sts, change to B, turn.":                                        "Row 1: With C, ch 1, sc in next 8 sts, change to B, turn.",
		"With A, ch 21.": "With C, ch 21.",
	} {
		tree, _ := syntax.Read(row, syntax.ReadOptions{Library: lib})
		if got := edit.RowYarn(tree, 0, "C"); got != want {
			t.Errorf("%q becomes\n%q, want\n%q", row, got, want)
		}
	}
}
