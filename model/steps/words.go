package steps

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// words are the terms in which US and UK patterns differ, apart from the stitches' names.
type words struct {
	terms  string
	over   string // the yarn-over
	skip   string
	off    string // "pull through"
	pullUp string
}

func wordsIn(terms string) words {
	if strings.EqualFold(terms, "uk") {
		return words{terms: "uk", over: "yarn round hook", skip: "miss", off: "draw through", pullUp: "draw up a loop"}
	}
	return words{terms: "us", over: "yarn over", skip: "skip", off: "pull through", pullUp: "pull up a loop"}
}

// sentence begins with a capital and ends with a full stop.
func sentence(s string) string {
	if s == "" {
		return ""
	}
	open := ""
	if s[0] == '(' {
		open, s = "(", s[1:]
	}
	r, n := utf8.DecodeRuneInString(s)
	return open + string(unicode.ToUpper(r)) + s[n:] + "."
}

// join puts sentences one after another, leaving out those that are empty.
func join(parts ...string) string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, " ")
}

func times(n int) string {
	if n == 2 {
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

// nth is a number as an ordinal: 1st, 22nd.
func nth(n int) string {
	end := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			end = "st"
		case 2:
			end = "nd"
		case 3:
			end = "rd"
		}
	}
	return fmt.Sprintf("%d%s", n, end)
}

// many is a number of things: "1 stitch", "3 stitches".
func many(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %s", n, plural(noun))
}

// plural leaves abbreviations of stitches as they are, as the trade does: 3 dc.
func plural(noun string) string {
	switch noun {
	case "stitch":
		return "stitches"
	case "chain", "row", "round", "gap", "row end":
		return noun + "s"
	}
	if strings.HasSuffix(noun, "space") {
		return noun + "s"
	}
	return noun
}

// list is "A", "A and B", "A, B and C".
func list(parts []string) string {
	if n := len(parts); n > 1 {
		return strings.Join(parts[:n-1], ", ") + " and " + parts[n-1]
	}
	return strings.Join(parts, "")
}
