package edit

import (
	"strandway/model/diag"
	"strandway/model/pattern"
)

// State is a pattern as it stood after a step, and where the caret was.
type State struct {
	Pattern *pattern.Pattern
	Piece   int   // index of the piece in hand
	Caret   Caret // in that piece's rows
}

// Caret is the place of writing in a piece's rows, in bytes, and where the choice of text
// that ends at it began.
type Caret struct {
	Anchor, At int
}

// At is a caret at an offset with no text chosen.
func At(offset int) Caret { return Caret{offset, offset} }

// Span is the chosen text.
func (c Caret) Span() diag.Span {
	return diag.Span{Start: min(c.Anchor, c.At), End: max(c.Anchor, c.At)}
}

// History is the line of states an author went through. Patterns are never
// changed, so that a state costs no more than what is new in it.
type History struct {
	states []State
	labels []string // labels[i] names the step that led to states[i]
	at     int
	saved  int  // index of the state on disk, -1 for none
	open   bool // the last step may still grow
}

// NewHistory begins with a pattern as it was opened; saved tells whether that is what stands in a file.
func NewHistory(first State, saved bool) *History {
	h := &History{states: []State{first}, labels: []string{""}, saved: -1}
	if saved {
		h.saved = 0
	}
	return h
}

// Now is the present state.
func (h *History) Now() State { return h.states[h.at] }

// Do adds a step; what was undone is forgotten.
func (h *History) Do(label string, s State) {
	if h.saved > h.at {
		h.saved = -1
	}
	h.states = append(h.states[:h.at+1], s)
	h.labels = append(h.labels[:h.at+1], label)
	h.at++
	h.open = true
}

// Grow makes s the outcome of the last step when that step has the same label and
// nothing was sealed, undone or saved since; otherwise it adds a step. So a word typed
// letter by letter is one step.
func (h *History) Grow(label string, s State) {
	if h.open && h.at > 0 && h.labels[h.at] == label && h.saved != h.at {
		h.states[h.at] = s
		return
	}
	h.Do(label, s)
}

// Seal ends the growing of the last step.
func (h *History) Seal() { h.open = false }

// Undo goes one step back.
func (h *History) Undo() (State, bool) {
	if h.at == 0 {
		return State{}, false
	}
	h.at--
	h.open = false
	return h.states[h.at], true
}

// Redo goes one step forward again.
func (h *History) Redo() (State, bool) {
	if h.at+1 == len(h.states) {
		return State{}, false
	}
	h.at++
	h.open = false
	return h.states[h.at], true
}

// UndoLabel names the step that [History.Undo] takes back, "" when there is none.
func (h *History) UndoLabel() string { return h.labels[h.at] }

// RedoLabel names the step that [History.Redo] takes again, "" when there is none.
func (h *History) RedoLabel() string {
	if h.at+1 == len(h.states) {
		return ""
	}
	return h.labels[h.at+1]
}

// Saved marks the present state as what stands in the file.
func (h *History) Saved() { h.saved, h.open = h.at, false }

// Lost says that none of the states stands in the file any more: it was changed elsewhere.
func (h *History) Lost() { h.saved = -1 }

// Changed reports whether the present state differs from what stands in the file.
func (h *History) Changed() bool { return h.saved != h.at }
