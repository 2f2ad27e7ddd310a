package journal

import (
	"strings"

	"strandway/model/pattern"
)

// Difference is a written row that two states of a pattern do not have in common.
type Difference struct {
	Piece       string
	There, Here string // the row in the one and in the other; "" where it is not there
}

// Differences are the rows in which two states of a pattern differ, piece by
// piece and in order. there may be nil: all rows are new then.
func Differences(there, here *pattern.Pattern) []Difference {
	var out []Difference
	rows := map[string]string{}
	var names []string
	if there != nil {
		for _, p := range there.Pieces {
			rows[p.Name] = p.Rows
			names = append(names, p.Name)
		}
	}
	for _, p := range here.Pieces {
		out = append(out, differentLines(p.Name, lines(rows[p.Name]), lines(p.Rows))...)
		delete(rows, p.Name)
	}
	for _, name := range names {
		if gone, left := rows[name]; left {
			out = append(out, differentLines(name, lines(gone), nil)...)
		}
	}
	return out
}

func lines(rows string) []string {
	var out []string
	for line := range strings.Lines(rows) {
		if line = strings.TrimSpace(line); line != "" {
			out = append(out, line)
		}
	}
	return out
}

// mostCompared bounds the table of a comparison; past it, rows are compared one by one.
const mostCompared = 4_000_000

// differentLines compares line by line along the longest common sequence. Lines
// that take each other's place are one difference.
func differentLines(piece string, there, here []string) []Difference {
	for len(there) > 0 && len(here) > 0 && there[0] == here[0] {
		there, here = there[1:], here[1:]
	}
	for len(there) > 0 && len(here) > 0 && there[len(there)-1] == here[len(here)-1] {
		there, here = there[:len(there)-1], here[:len(here)-1]
	}
	if len(there)*len(here) > mostCompared {
		return paired(piece, there, here)
	}
	common := make([][]int, len(there)+1) // longest common sequence of the tails
	for i := range common {
		common[i] = make([]int, len(here)+1)
	}
	for i := len(there) - 1; i >= 0; i-- {
		for k := len(here) - 1; k >= 0; k-- {
			if there[i] == here[k] {
				common[i][k] = common[i+1][k+1] + 1
			} else {
				common[i][k] = max(common[i+1][k], common[i][k+1])
			}
		}
	}
	var out []Difference
	var gone, come []string
	flush := func() {
		out = append(out, paired(piece, gone, come)...)
		gone, come = nil, nil
	}
	i, k := 0, 0
	for i < len(there) || k < len(here) {
		switch {
		case i < len(there) && k < len(here) && there[i] == here[k]:
			flush()
			i, k = i+1, k+1
		case k == len(here) || i < len(there) && common[i+1][k] >= common[i][k+1]:
			gone = append(gone, there[i])
			i++
		default:
			come = append(come, here[k])
			k++
		}
	}
	flush()
	return out
}

// paired sets rows beside the ones they took the place of.
func paired(piece string, there, here []string) []Difference {
	out := make([]Difference, max(len(there), len(here)))
	for i := range out {
		out[i].Piece = piece
		if i < len(there) {
			out[i].There = there[i]
		}
		if i < len(here) {
			out[i].Here = here[i]
		}
	}
	return out
}
