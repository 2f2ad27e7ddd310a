package diag

import "testing"

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"dc", "dc", 0},
		{"dcc", "dc", 1},
		{"hcd", "hdc", 1},
		{"colur", "colour", 1},
		{"trbl", "treble", 2},
		{"", "sc", 2},
	} {
		if got := Distance(c.a, c.b); got != c.want {
			t.Errorf("%q to %q: %d, want %d", c.a, c.b, got, c.want)
		}
	}
}
