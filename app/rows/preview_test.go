package rows

import (
	"slices"
	"strings"
	"testing"

	"strandway/model/diag"
)

// What would go and what would come are told line by line.
func TestCompareRows(t *testing.T) {
	for _, c := range []struct {
		name, now, then string
		want            []string // "-" for a line that goes, and what comes behind it
	}{
		{"nothing else", "a\nb", "a\nb", []string{"", ""}},
		{"one line for another", "a\nb\nc", "a\nx\nc", []string{"", "- x", ""}},
		{"two lines, each for its own", "a\nb\nc\nd", "a\nx\ny\nd", []string{"", "- x", "- y", ""}},
		{"one line for several", "a\nb\nc", "a\nx\ny\nz\nc", []string{"", "- x y z", ""}},
		{"two lines for three", "a\nb\nc", "a\nx\ny\nz", []string{"", "-", "- x y z"}},
		{"a line more at the end", "a\nb", "a\nb\nc", []string{"", " c"}},
		{"a line less", "a\nb\nc", "a\nc", []string{"", "-", ""}},
	} {
		var list []paragraph
		at := 0
		for _, line := range strings.Split(c.now, "\n") {
			list = append(list, paragraph{span: diag.Span{Start: at, End: at + len(line)}})
			at += len(line) + 1
		}
		compareRows(list, c.now, c.then)
		var got []string
		for _, p := range list {
			s := ""
			if p.gone {
				s = "-"
			}
			if p.come != nil {
				s += " " + strings.Join(p.come, " ")
			}
			got = append(got, s)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
