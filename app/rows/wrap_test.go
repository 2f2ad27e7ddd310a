package rows

import (
	"strings"
	"testing"
	"testing/quick"
)

// typewriter measures ten px a byte.
func typewriter(s string) float32 { return 10 * float32(len(s)) }

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		text  string
		width float32
		lines string
	}{
		{"sc in next 3 sts", 200, "sc in next 3 sts"},
		{"sc in next 3 sts", 100, "sc in next |3 sts"},
		{"sc in next 3 sts", 70, "sc in |next 3 |sts"},
		{"", 100, ""},
		{"foundation", 40, "foun|dati|on"},
		{"sc, turn.\nand on", 200, "sc, turn.|and on"},
		{"sc  ", 100, "sc  "},
	} {
		var got []string
		for _, l := range wrap(c.text, 0, len(c.text), c.width, typewriter, typewriter) {
			got = append(got, c.text[l.start:l.end])
		}
		if s := strings.Join(got, "|"); s != c.lines {
			t.Errorf("%q in %g: %q, want %q", c.text, c.width, s, c.lines)
		}
	}
}

// Nothing of the text is lost, and no line is wider than the page but for the spaces at its end.
func TestWrapLosesNothing(t *testing.T) {
	whole := func(words []string, narrow uint8) bool {
		text := strings.ReplaceAll(strings.Join(words, " "), "\n", " ")
		width := float32(narrow%40)*10 + 40
		at := 0
		for _, l := range wrap(text, 0, len(text), width, typewriter, typewriter) {
			if l.start != at || typewriter(strings.TrimRight(text[l.start:l.end], " ")) > width+30 {
				return false // a letter of up to four bytes may stand over
			}
			at = l.end
		}
		return at == len(text)
	}
	if err := quick.Check(whole, nil); err != nil {
		t.Error(err)
	}
}
