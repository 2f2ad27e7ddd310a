package work_test

import (
	"strings"
	"testing"

	"strandway/model/diag"
	"strandway/model/work"
)

const plainStart = "Ch 14.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n"

// TestFindings: what is said of a row that does not come out, in whole, and what the mend makes of the text.
func TestFindings(t *testing.T) {
	for _, c := range []struct {
		src, at    string // the text, and the words that the finding points at
		row, say   string
		hint, mend string // mend: the text at which the mend was made, as it is after it
	}{
		{
			"Ch 16.\nRow 1: Sc in 2nd ch from hook, *ch 2, skip 2 ch, sc in next ch; rep from * across, turn.\n", "",
			"Row 1", "the repeat does not come out: 2 chains over",
			"a foundation of 14 or 17 chains would come out, not 16", "Ch 17.",
		},
		{
			plainStart + "Row 2: Ch 1, sc in each st across, turn. (14 sc)\n", "14",
			"Row 2", "14 sc stated, 13 worked", "write 13, or look for 1 too few", "(13 sc)",
		},
		{
			plainStart + "Row 2: Ch 1, sc in next 6 sts, fpdc around next st, sc in each st across, turn. (13 sc)\nRow 3: Ch 1, sc in each st across, turn. (13 sc)\n", "13",
			"Row 2", "13 sc stated, 12 worked", "write 12, or look for 1 too few", "(1 fpdc, 12 sc)\nRow 3",
		},
		{
			"With A, ch 14.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2 (WS, B): With A, ch 1, sc in each st across, turn.\n", "With A",
			"Row 2", "the heading says yarn B, but the row begins with yarn A, and is worked so", "write A in its heading, or begin the row with B", "Row 2 (WS, A): With A",
		},
		{
			plainStart + "Row 2: With B, ch 1, sc in each st across, turn.\nRow 3 (A): With C, rep Row 2.\n", "With C",
			"Row 3", "the heading says yarn A, but the row begins with yarn C, and is worked so", "write C in its heading, or begin the row with A", "Row 3 (C): With C",
		},
		{
			plainStart + "Row 2: With B, ch 1, sc in each st across, turn.\nRow 3 (A): Rep Row 2.\n", "Row 3 (A):",
			"Row 3", "Row 2 begins with yarn B; repeated here it is worked in yarn A, as this heading says", "", "",
		},
		{
			"Ch 14.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (14 sc)\n", "14",
			"Row 1", "14 sc stated, 13 worked", "write 13, or begin with 15 chains", "(13 sc)",
		},
		{
			plainStart + "Row 2: Ch 1, sc in first st, *dc in next st, sc in next st; rep from * across, turn. (7 dc)\n", "7",
			"Row 2", "7 dc stated, 6 worked", "write 6, or see whether the repeat, which makes 1, is to be worked 7 times instead of 6", "(6 dc)",
		},
		{
			plainStart + "Row 2: Ch 1, 2 sc in first st, sc in each st across, turn. (13 sts)\n", "13",
			"Row 2", "13 sts stated, 14 worked", "write 14, or see whether the row is to keep the 13 of Row 1", "(14 sts)",
		},
		{
			plainStart + "Row 2: Ch 1, sc in each st across, turn. (31 sc)\n", "31",
			"Row 2", "31 sc stated, 13 worked", "write 13: its figures may have changed places", "(13 sc)",
		},
		{
			plainStart + "Row 2: Ch 1, 2 sc in first st, sc in each st across, turn. (16 sc)\nRow 3: Ch 1, sc in each st across, turn. (16 sc)\n", "",
			"Row 3", "16 sc stated, 14 worked", "it may follow from Row 2", "(14 sc)",
		},
		{
			"Rnd 1: 6 sc in ring.\nRnd 2: 2 sc in each st around.\nRnd 3: (Sc in next st, 2 sc in next st) 5 times.\n", "",
			"Rnd 3", "the row does not come out: 2 stitches over", "it comes out if the repeat is worked 6 times instead of 5", "",
		},
		{
			plainStart + "Row 2: Ch 1, sc in first st, *2 sc in next ch-2 sp, sc in next sc; rep from * across, turn.\n", "2 sc in next ch-2 sp",
			"Row 2", "there is no ch-2 space in the row below", "", "",
		},
		{
			plainStart + "Row 2: Ch 1, sc in first st, *ch 1, skip next st, sc in next st; rep from * across, turn.\nRow 3: Ch 1, sc in first st, 2 sc in next ch-2 sp, sc in each st across, turn.\n", "2 sc in next ch-2 sp",
			"Row 3", "no ch-2 space is left in the row below; the next one is of 1 chain", "", "",
		},
		{
			plainStart + "Row 2: Ch 2, hdc in each st across, turn.\nRow 3: Ch 1, sc in next 3 sts, sc in top of tch, turn.\n", "",
			"", "", "", "",
		},
		{
			plainStart + "Row 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc in first 3 sts, dc in next sc 5 rows below, sc in each st across, turn.\n", "dc in next sc 5 rows below",
			"Row 3", "there are not 5 rows below", "", "",
		},
		{
			plainStart + "Rows 2-5: Ch 1, sc in each st across, turn.\nRow 6: Ch 1, sc in first 3 sts, dc in next dc 2 rows below, sc in each st across, turn.\n", "dc in next dc 2 rows below",
			"Row 6", "no dc 2 rows below at this column", "", "",
		},
		{
			plainStart + "Row 2: Ch 3, dc in next st and in each st across, turn.\nRows 3-13: Rep Rows 1 and 2 six times.\n", "",
			"Rows 3-13", "rows 3-13 are 11 rows, but 2 rows 6 times make 12", "rows 3-14, or 5 times", "",
		},
		{
			plainStart + "Row 2 (RS): Ch 1, sc in each st across, turn.\nRow 3 (RS): Ch 1, sc in each st across, turn.\n", "",
			"Row 3", "row 3 is marked RS, but by its turns it is a WS row", `mark it WS, or say "do not turn" after row 2`, "Row 3 (WS)",
		},
		{
			"With A, ch 14.\nRow 1 (RS): With A, sc in 2nd ch from hook and in each ch across, turn.\nRow 2: With B, ch 1, sc in each st across, turn.\nRow 3: With A, ch 1, sc in each st across, turn.\n", "With A",
			"Row 3", "yarn A waits at the left edge, but this row begins at the right", "do not turn before this row, or cut and rejoin", "sc in each st across, do not turn.\nRow 3",
		},
		{
			"With A, ch 14.\nRow 1 (RS): With A, sc in 2nd ch from hook and in each ch across, do not turn.\nRow 2: Ch 1, sc in each st across, turn.\n", "",
			"Row 2", "yarn A waits at the left edge, but this row begins at the right", "turn before this row, or cut and rejoin", "",
		},
		{
			plainStart + "Row 2: Ch 1, sc in next 11 sts, turn.\n", "",
			"Row 2", "the row does not come out: 2 stitches over", `say "leave remaining sts unworked" if the row ends here on purpose`, "",
		},
		{
			plainStart + "Row 2: Ch 1, sc in next 11 sts, turn.\nRow 3: Ch 1, sc in first 3 sts, 5 dc in next ch-3 sp, turn.\n", "5 dc in next ch-3 sp",
			"Row 3", "there is no ch-3 space in the row below", "it may follow from Row 2", "",
		},
		{
			plainStart + "Row 2: Ch 1, *ch 1; rep from * across, turn.\nRow 3: Ch 1, *skip next st; rep from * to last st, dc in last st, turn.\n", "",
			"", "", "", "",
		},
	} {
		_, findings := workRows(t, c.src, work.Options{N: 1})
		if c.say == "" {
			continue // it only has to end
		}
		var f *diag.Finding
		for i := range findings {
			if findings[i].Message == c.say {
				f = &findings[i]
			}
		}
		if f == nil {
			t.Errorf("%q is not said; there is %v", c.say, findings)
			continue
		}
		if f.Row != c.row || f.Hint != c.hint {
			t.Errorf("%q: row %q, hint %q; want %q, %q", c.say, f.Row, f.Hint, c.row, c.hint)
		}
		if got := c.src[f.Span.Start:f.Span.End]; c.at != "" && got != c.at {
			t.Errorf("%q points at %q, want %q", c.say, got, c.at)
		}
		if f.Span.Len() == 0 {
			t.Errorf("%q points nowhere", c.say)
		}
		if (f.Mend != nil) != (c.mend != "") {
			t.Errorf("%q: mend %v, want %q", c.say, f.Mend, c.mend)
			continue
		}
		if f.Mend != nil {
			checkMend(t, c.src, *f, c.mend)
		}
	}
}

// checkMend makes a mend, and looks whether the finding is gone.
func checkMend(t *testing.T, src string, f diag.Finding, want string) {
	t.Helper()
	mended := src[:f.Mend.Span.Start] + f.Mend.Text + src[f.Mend.Span.End:]
	if !strings.Contains(mended, want) {
		t.Errorf("%q is mended to\n%s, want %q", f.Message, mended, want)
	}
	_, after := workRows(t, mended, work.Options{N: 1})
	for _, g := range after {
		if g.ID == f.ID && g.Row == f.Row {
			t.Errorf("%q is mended, but then: %s", f.Message, g)
		}
	}
}
