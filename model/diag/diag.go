// Package diag holds what the program has to say about a pattern: findings,
// each with its place in the text, its reason and, where there is one, a mend.
//
// It knows nothing of crochet. Every stage that reads or works a pattern
// returns a [List] beside its result and never stops at the first finding.
package diag

import (
	"cmp"
	"fmt"
	"slices"
)

// Span is a stretch of a piece's row text, in bytes from its beginning.
// End is exclusive. The zero Span means no particular place.
type Span struct {
	Start, End int
}

// Len is the number of bytes in the span.
func (s Span) Len() int { return s.End - s.Start }

// Severity grades a finding.
type Severity uint8

const (
	Note  Severity = iota // something was taken one way and is told
	Doubt                 // to think about: the pattern can be worked all the same
	Fault                 // the pattern cannot be worked as written
)

// String gives the grade in the words the program shows.
func (s Severity) String() string {
	return [...]string{"note", "to think about", "fault"}[s]
}

// Finding is one thing to say about a pattern.
type Finding struct {
	Severity Severity
	ID       string // stable name of the check: "unknown-word", "fit", "count"
	Piece    string // name of the piece, "" for the whole pattern
	Row      string // label of the row as written: "Row 4"; "" outside rows
	Span     Span   // the word, in the piece's row text
	Message  string // what is so: lower case, with numbers, no full stop
	Hint     string // what to do: lower case, no full stop; may be empty
	Mend     *Mend  // a change of the text that would settle it; may be nil
}

// Mend is a change of a piece's row text that the editor can make in one step.
type Mend struct {
	Label string // the word it will write: `write "dc"`
	Span  Span   // what is taken out
	Text  string // what is put in
	Yarn  string // letter of a yarn to add to the pattern, in place of a change of the text; "" for none
}

// List is a list of findings.
type List []Finding

// Worst is the gravest severity in the list; ok is false when it is empty.
func (l List) Worst() (worst Severity, ok bool) {
	for _, f := range l {
		worst = max(worst, f.Severity)
	}
	return worst, len(l) > 0
}

// Faults counts the findings of severity [Fault].
func (l List) Faults() int {
	n := 0
	for _, f := range l {
		if f.Severity == Fault {
			n++
		}
	}
	return n
}

// Sort orders the list by piece as first met, then by place in the text,
// the gravest first where places are equal.
func (l List) Sort() {
	order := map[string]int{}
	for _, f := range l {
		if _, seen := order[f.Piece]; !seen {
			order[f.Piece] = len(order)
		}
	}
	slices.SortStableFunc(l, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(order[a.Piece], order[b.Piece]),
			cmp.Compare(a.Span.Start, b.Span.Start),
			cmp.Compare(b.Severity, a.Severity),
		)
	})
}

// Place turns an offset in text into a line and column, both from 1. Columns
// count runes, tabs as one.
func Place(text string, offset int) (line, column int) {
	line, column = 1, 1
	for i, r := range text {
		if i >= offset {
			break
		}
		if r == '\n' {
			line, column = line+1, 1
		} else {
			column++
		}
	}
	return line, column
}

// String gives the finding as one line without its place: grade, row, message and hint.
func (f Finding) String() string {
	s := f.Severity.String() + ": "
	if f.Row != "" {
		s += f.Row + ": "
	}
	s += f.Message
	if f.Hint != "" {
		s += fmt.Sprintf(" (%s)", f.Hint)
	}
	return s
}
