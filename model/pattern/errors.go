package pattern

import (
	"fmt"
	"strings"
)

// Error is one thing that bars a file from being read.
type Error struct {
	File         string
	Line, Column int    // from 1, columns in runes; 0 when the whole file is meant
	Message      string // what is so: lower case, no full stop
	Hint         string // what to do; may be empty
}

// Error gives place, message and hint in one line.
func (e *Error) Error() string {
	if e.Line == 0 {
		return e.File + ": " + e.Sentence()
	}
	return fmt.Sprintf("%s:%d:%d: %s", e.File, e.Line, e.Column, e.Sentence())
}

// Sentence gives message and hint without the place.
func (e *Error) Sentence() string {
	if e.Hint == "" {
		return e.Message
	}
	return e.Message + " (" + e.Hint + ")"
}

// Errors is everything that bars a file from being read, in the order of the file.
type Errors []*Error

// Error gives one line for each.
func (e Errors) Error() string {
	lines := make([]string, len(e))
	for i := range e {
		lines[i] = e[i].Error()
	}
	return strings.Join(lines, "\n")
}
