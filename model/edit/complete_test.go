package edit

import (
	"strings"
	"testing"
)

func TestCompletions(t *testing.T) {
	stitches := []string{"sc", "dc", "dc2tog", "dtr", "sl st"}
	for _, c := range []struct{ rows, want string }{
		{"Row 1: Dc in n", "next"},
		{"Row 1: Dc in next st, d", "dc dc2tog dtr"}, // what is written already comes first
		{"Row 1: Sk 2, sk", "skip skipped"},
		{"Row 1: Dc in each st acr", "across"},
		{"Row 1: Dc, ", ""},
		{"Row 1: xyz", ""},
	} {
		at, words, _ := Completions(c.rows, len(c.rows), stitches)
		if got := strings.Join(words, " "); got != c.want {
			t.Errorf("%q: completed by %q, want %q", c.rows, got, c.want)
		}
		if at.End != len(c.rows) {
			t.Errorf("%q: the letters end at %d", c.rows, at.End)
		}
	}
}

func TestAWholeWordIsKnown(t *testing.T) {
	for rows, want := range map[string]bool{"Dc in each st": true, "Dc in each s": false, "Sc": true, "frobble, frobble": true, "frob": false} {
		if _, _, whole := Completions(rows, len(rows), []string{"sc", "dc"}); whole != want {
			t.Errorf("%q ends in a whole word: %t", rows, whole)
		}
	}
}
