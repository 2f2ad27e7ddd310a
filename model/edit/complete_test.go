package edit

import (
	"strings"
	"testing"
)

func TestCompletions(t *testing.T) {
	stitches := []Word{{"sc", "single crochet"}, {"dc", "double crochet"}, {"dc2tog", ""}, {"dtr", ""}, {"sl st", ""}, {"V-st", "dc, ch 1, dc"}}
	for _, c := range []struct{ rows, want string }{
		{"Row 1: Dc in n", "next"},
		{"Row 1: Dc in next st, d", "dc dc2tog dtr"}, // what is written already comes first
		{"Row 1: Sk 2, sk", "skip skipped"},
		{"Row 1: Dc in each st acr", "across"},
		{"Row 1: Dc, ", ""},
		{"Row 1: xyz", ""},
		{"Row 1: 1", ""},
		{"Row 1: V", "V-st"},
	} {
		at, words, _ := Completions(c.rows, len(c.rows), stitches)
		var texts []string
		for _, w := range words {
			texts = append(texts, w.Text)
		}
		if got := strings.Join(texts, " "); got != c.want {
			t.Errorf("%q: completed by %q, want %q", c.rows, got, c.want)
		}
		if at.End != len(c.rows) {
			t.Errorf("%q: the letters end at %d", c.rows, at.End)
		}
	}
}

// What a word is short for is told also where the rows hold the word already.
func TestCompletionsSayWhatTheyMean(t *testing.T) {
	for _, rows := range []string{"Row 1: v", "Row 1: V-st in next st, v"} {
		_, words, _ := Completions(rows, len(rows), []Word{{"V-st", "dc, ch 1, dc"}})
		if len(words) != 1 || words[0].Means != "dc, ch 1, dc" {
			t.Errorf("%q: %v", rows, words)
		}
	}
}

func TestAWholeWordIsKnown(t *testing.T) {
	for rows, want := range map[string]bool{"Dc in each st": true, "Dc in each s": false, "Sc": true, "frobble, frobble": true, "frob": false} {
		if _, _, whole := Completions(rows, len(rows), []Word{{Text: "sc"}, {Text: "dc"}}); whole != want {
			t.Errorf("%q ends in a whole word: %t", rows, whole)
		}
	}
}
