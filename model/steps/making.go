package steps

import (
	"fmt"
	"slices"
	"strings"

	"strandway/model/stitch"
)

// usual are the insertions whose place is the stitch's own.
var usual = []string{"top", "front loop", "back loop", "third loop", "front post", "back post", "below", "through the fabric", "between the legs"}

// making tells the movements of the hook that make a stitch.
func (s *Steps) making(k *stitch.Kind, p place) string {
	moves := k.Movements()
	if len(moves) < 2 {
		return ""
	}
	var told []string
	loops := 1
	for i, m := range moves {
		told = append(told, s.movement(m, i > 0 && moves[i-1].Do == "ins", loops, p))
		switch m.Do {
		case "yo":
			loops += m.N
		case "up", "catch":
			loops++
		case "drop":
			loops--
		case "off":
			loops -= m.N - 1
		}
	}
	return strings.Join(folded(told), ", ")
}

// movement tells one movement. fresh: the hook has just been put into the work.
func (s *Steps) movement(m stitch.Movement, fresh bool, loops int, p place) string {
	switch m.Do {
	case "yo":
		if m.N == 1 {
			return s.w.over
		}
		return s.w.over + " " + times(m.N)
	case "ins":
		switch {
		case m.In == "same":
			return "insert the hook in that place"
		case slices.Contains(usual, m.In):
			return "insert the hook " + p.String()
		}
		return "insert the hook in the " + m.In
	case "up":
		return s.w.over + " and " + s.w.pullUp
	case "off":
		if fresh {
			return s.w.over + " and " + s.w.off + " the work and " + loopsOnHook(m.N, loops)
		}
		return s.w.over + " and " + s.w.off + " " + loopsOnHook(m.N, loops)
	case "ch":
		return fmt.Sprintf("ch %d to close it", m.N)
	case "st":
		k, ok := s.lib.Kind(m.In)
		if !ok {
			return "work a " + m.In
		}
		w, _ := s.lib.Word(k, s.w.terms)
		return "work a " + w + " in that place"
	case "drop":
		return "take the hook out of the loop"
	case "catch":
		return "take the loop up again"
	case "bead":
		return "slide a bead up to the hook"
	case "twist":
		return "twist the hook once round"
	}
	return m.Do
}

func loopsOnHook(n, loops int) string {
	switch {
	case n == loops && n == 1:
		return "the loop on the hook"
	case n == loops && n == 2:
		return "both loops on the hook"
	case n == loops:
		return fmt.Sprintf("all %d loops on the hook", n)
	case n == 1:
		return "1 loop"
	}
	return fmt.Sprintf("%d loops", n)
}

// folded puts what is done again and again into brackets: "(yarn over and pull through
// 2 loops) twice".
func folded(told []string) []string {
	var out []string
	for i := 0; i < len(told); {
		span, n := 0, 0
		for width := 1; width <= (len(told)-i)/2; width++ {
			if again := repeats(told[i:], width); (again-1)*width > (n-1)*span {
				span, n = width, again
			}
		}
		if n < 2 {
			out = append(out, told[i])
			i++
			continue
		}
		part := strings.Join(folded(told[i:i+span]), ", ")
		out = append(out, "("+part+") "+times(n))
		i += span * n
	}
	return out
}

// repeats is how often the first movements of a row are made one time after another.
func repeats(told []string, width int) int {
	n := 1
	for (n+1)*width <= len(told) && slices.Equal(told[:width], told[n*width:(n+1)*width]) {
		n++
	}
	return n
}
