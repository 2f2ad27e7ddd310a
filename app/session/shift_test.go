package session

import (
	"math/rand/v2"
	"testing"

	"strandway/model/diag"
)

func TestShift(t *testing.T) {
	old, now := "sc in next st, dc in last st", "sc in next 2 sts, dc in last st"
	h := ShiftOf(old, now)
	for _, c := range []struct {
		was, is string
	}{{"sc in", "sc in"}, {"dc in last st", "dc in last st"}} {
		at := index(old, c.was)
		s := h.Span(diag.Span{Start: at, End: at + len(c.was)})
		if got := now[s.Start:s.End]; got != c.is {
			t.Errorf("%q went to %q", c.was, got)
		}
	}
	if s := (diag.Span{Start: 6, End: 13}); !h.Touched(s) {
		t.Error("the edited words were not touched")
	}
	if same := ShiftOf(old, old); same.Touched(diag.Span{Start: 0, End: len(old)}) || same.At(7) != 7 {
		t.Error("nothing was edited")
	}
}

func index(s, sub string) int {
	for i := range s {
		if len(s)-i >= len(sub) && s[i:i+len(sub)] == sub {
			return i
		}
	}
	return -1
}

// Whatever is edited, places stay in order and within the text.
func TestShiftKeepsOrder(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	text := func() string {
		b := make([]byte, r.IntN(14))
		for i := range b {
			b[i] = "sc \n"[r.IntN(4)]
		}
		return string(b)
	}
	for range 2000 {
		head, tail := text(), text()
		old, now := head+text()+tail, head+text()+tail
		h := ShiftOf(old, now)
		last := 0
		for at := 0; at <= len(old); at++ {
			to := h.At(at)
			if to < last || to > len(now) {
				t.Fatalf("%q to %q: %d went to %d after %d", old, now, at, to, last)
			}
			last = to
		}
		if h.At(len(old)) != len(now) && h.from != len(old) { // what is written behind a place leaves it where it is
			t.Fatalf("%q to %q: the end went to %d", old, now, h.At(len(old)))
		}
	}
}
