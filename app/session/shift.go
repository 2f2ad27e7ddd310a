package session

import "strandway/model/diag"

// Shift carries places in one text over to another that was edited out of it:
// places before the edit stay, those after it move along.
type Shift struct {
	from, to int // the edit in the old text: [from, to)
	by       int // by how much what follows has moved
}

// ShiftOf compares two texts.
func ShiftOf(old, now string) Shift {
	from := commonPrefix(old, now)
	a, b := len(old), len(now)
	for a > from && b > from && old[a-1] == now[b-1] {
		a, b = a-1, b-1
	}
	return Shift{from: from, to: a, by: b - a}
}

func commonPrefix(a, b string) int {
	n := min(len(a), len(b))
	for i := range n {
		if a[i] != b[i] {
			return i
		}
	}
	return n
}

// At carries an offset over. One within the edit goes to its end.
func (h Shift) At(offset int) int {
	if offset <= h.from {
		return offset
	}
	return max(offset, h.to) + h.by
}

// Span carries a stretch of text over; what is written at its end belongs to it.
func (h Shift) Span(s diag.Span) diag.Span {
	end := h.At(s.End)
	if s.End == h.from && h.from == h.to {
		end = s.End + h.by
	}
	return diag.Span{Start: h.At(s.Start), End: max(end, h.At(s.Start))}
}

// Touched reports whether a stretch of the old text was edited.
func (h Shift) Touched(s diag.Span) bool {
	return (h.by != 0 || h.from != h.to) && s.Start <= h.to && s.End >= h.from
}
