package pattern

import (
	"fmt"
	"regexp"
	"strconv"
)

var multipleForm = regexp.MustCompile(`^\s*(?:multiple of\s+)?(\d{1,6})\s*n?\s*(?:(\+|-|plus|minus)\s*(\d{1,6}))?\s*(?:sts)?\s*$`)

// ParseMultiple reads a multiple of stitches as the trade writes it: "4 + 1", "6n + 2", "multiple of 8 plus 3", "12".
func ParseMultiple(s string) (multiple, plus int, err error) {
	m := multipleForm.FindStringSubmatch(s)
	if m == nil {
		return 0, 0, fmt.Errorf("%q is not a multiple of stitches", s)
	}
	multiple, _ = strconv.Atoi(m[1])
	if m[3] != "" {
		plus, _ = strconv.Atoi(m[3])
	}
	if m[2] == "-" || m[2] == "minus" {
		plus = -plus
	}
	if multiple == 0 {
		return 0, 0, fmt.Errorf("%q is a multiple of no stitches", s)
	}
	return multiple, plus, nil
}
