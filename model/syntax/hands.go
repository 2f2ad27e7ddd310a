package syntax

import (
	"regexp"
	"strings"
)

// mirrored is the edge that a left-hander meets in place of another.
func mirrored(e Edge) Edge {
	switch e {
	case LeftEdge:
		return RightEdge
	case RightEdge:
		return LeftEdge
	}
	return e
}

// hands are left and right where they name a hand or an edge; the right side of the work stays what it is.
var hands = regexp.MustCompile(`(?i)\b(left|right)( (?:hand|edge|end|corner|to)\b|-hand)`)

// swapHands lets left and right change places in a remark.
func swapHands(text string) string {
	return hands.ReplaceAllStringFunc(text, func(s string) string {
		if rest, ok := strings.CutPrefix(s, "left"); ok {
			return "right" + rest
		}
		if rest, ok := strings.CutPrefix(s, "right"); ok {
			return "left" + rest
		}
		return s
	})
}
