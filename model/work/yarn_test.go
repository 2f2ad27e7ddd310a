package work_test

import (
	"strings"
	"testing"

	"strandway/model/work"
)

// A row that repeats others is worked in the yarn it names, whatever they were worked in.
func TestYarnOfRepeatedRows(t *testing.T) {
	const start = "Foundation (A): Ch 14.\nRow 1 (A): Sc in 2nd ch from hook and in each ch across, turn.\n"
	for _, c := range []struct{ rows, want string }{
		{"Row 2 (B): Ch 1, sc in each st across, turn.\nRow 3 (C): Rep Row 2.\n", "AABC"},
		{"Row 2: With B, ch 1, sc in each st across, turn.\nRows 3-4: With C, rep Row 2.\nRow 5 (A): Rep Row 2.\n", "AABCCA"},
		{"Row 2 (B): Ch 1, sc in each st across, turn.\nRow 3: With A, rep Row 2.\nRows 4-5: Rep Rows 2 and 3.\n", "AABABA"},
		{"Row 2 (B): With C, ch 1, sc in each st across, turn.\nRow 3 (A): With B, rep Row 2.\nRow 4: Rep Row 3.\n", "AACBB"},
		{"Row 2: Join B in first st, ch 1, sc in each st across, turn.\nRow 3: Join C, rep Row 2.\n", "AABC"},
		{"Row 2: Ch 1, sc in each st across, turn.\nChange to B.\nRow 3: Ch 1, sc in each st across, turn.\nChange to A.\nRows 4-5: Rep Row 2.\n", "AAABAA"},
		{"Row 2: With B, ch 1, sc in next 6 sts, with A, sc in next 7 sts, turn.\nRow 3: Rep Row 2.\n", "AABB"},
	} {
		f, findings := workRows(t, start+c.rows, work.Options{Limit: 1000})
		got := ""
		for r := range f.Rows {
			got += f.Yarns[f.Stitches[f.Rows[r].First].Yarn]
		}
		if got != c.want || findings.Faults() > 0 {
			t.Errorf("%s: rows begun in %s, want %s; %v", strings.TrimSpace(c.rows), got, c.want, findings)
		}
	}
}
