// Package corpus holds patterns written for testing, with what is to come of
// them: stitches of every row, sides, faults. The wording is invented.
package corpus

import (
	"embed"
	"fmt"
	"strconv"
	"strings"
)

//go:embed testdata/*.txt
var files embed.FS

// Example is one page with what is to come of it.
type Example struct {
	Name, Page string
	Terms      string   // "US" or "UK"
	Title      string   // "" for not looked at
	Sizes      []string // nil for not looked at
	Pieces     []Piece
	Faults     []string // parts of the findings that must come; without any there may be no fault
	Unread     []string // words at which rows lose the thread
}

// Unsaid is a count that is not looked at.
const Unsaid = -1

// Piece is what one piece comes to. Name is "*" where the name is not looked at.
type Piece struct {
	Name   string
	Counts []int
	More   bool // "...": rows follow that are not looked at
	Sides  string
}

// Read gives the examples of a file of testdata.
//
//	=== name
//	the page
//	--- expect
//	terms US
//	title Kelp Dishcloth
//	sizes S, M, L
//	* 25 25 25 / RWR
//	Front: 12x4 ? 18 ...
//	fault 24 sc stated
//	unread fooc
func Read(file string) ([]Example, error) {
	src, err := files.ReadFile("testdata/" + file)
	if err != nil {
		return nil, err
	}
	var out []Example
	for _, part := range strings.Split("\n"+string(src), "\n=== ")[1:] {
		e, err := parse(part)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		out = append(out, e)
	}
	return out, nil
}

// Files are the names of the files of testdata.
func Files() []string {
	list, _ := files.ReadDir("testdata")
	out := make([]string, len(list))
	for i, f := range list {
		out[i] = f.Name()
	}
	return out
}

func parse(part string) (Example, error) {
	name, rest, _ := strings.Cut(part, "\n")
	page, expected, ok := strings.Cut(rest, "\n--- expect\n")
	e := Example{Name: strings.TrimSpace(name), Page: page + "\n"}
	if !ok {
		return e, fmt.Errorf("%s expects nothing", e.Name)
	}
	for line := range strings.Lines(expected) {
		line = strings.TrimSpace(line)
		key, value, _ := strings.Cut(line, " ")
		switch key {
		case "":
		case "terms":
			e.Terms = value
		case "title":
			e.Title = value
		case "sizes":
			e.Sizes = strings.Split(value, ", ")
		case "fault":
			e.Faults = append(e.Faults, value)
		case "unread":
			e.Unread = append(e.Unread, value)
		default:
			p, err := parsePiece(line)
			if err != nil {
				return e, fmt.Errorf("%s: %w", e.Name, err)
			}
			e.Pieces = append(e.Pieces, p)
		}
	}
	return e, nil
}

// parsePiece reads "BODY: 10 12 14 / RWR", "* 10 10 8x6": six rows of 8. "?" is a
// row whose count is open, "..." says that more rows follow.
func parsePiece(line string) (Piece, error) {
	p := Piece{Name: "*"}
	rest := strings.TrimPrefix(line, "* ")
	if rest == line {
		p.Name, rest, _ = strings.Cut(line, ":")
	}
	counts, sides, _ := strings.Cut(rest, "/")
	p.Sides = strings.TrimSpace(sides)
	for _, word := range strings.Fields(counts) {
		if word == "..." {
			p.More = true
			break
		}
		number, times, many := strings.Cut(word, "x")
		n, err := strconv.Atoi(number)
		if number == "?" {
			n, err = Unsaid, nil
		}
		if err != nil {
			return p, fmt.Errorf("%q is no count", word)
		}
		k := 1
		if many {
			if k, err = strconv.Atoi(times); err != nil {
				return p, fmt.Errorf("%q is no count", word)
			}
		}
		for range k {
			p.Counts = append(p.Counts, n)
		}
	}
	return p, nil
}
