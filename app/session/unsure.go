package session

import (
	"slices"

	"strandway/model/diag"
	"strandway/model/fabric"
)

// Unsure are the rows that stand on a fault: they are worked and drawn, but what they come to is not known
// before the fault is mended.
type Unsure struct {
	On       string  // label of the first row with a fault: "Row 4"
	Rows     []bool  // by fabric row
	Stitches []int32 // of those rows
}

// Unsure are the rows of what was made last that stand on a fault.
func (s *Session) Unsure() *Unsure {
	m := s.Made()
	if m == nil {
		return &Unsure{}
	}
	faulty, on := s.faultyRows(m)
	if s.unsure.of != m || !slices.Equal(s.unsure.faulty, faulty) {
		s.unsure = standing{m, faulty, unsureOn(m, faulty, on)}
	}
	return s.unsure.Unsure
}

// standing is the last answer of [Session.Unsure] and what it was given for.
type standing struct {
	of     *Made
	faulty []int
	*Unsure
}

// faultyRows are the written rows that hold a fault, as indices in the tree, and the label of the first of them.
func (s *Session) faultyRows(m *Made) (rows []int, label string) {
	since, name := s.Since(), m.pattern.Pieces[m.piece].Name
	for _, f := range m.Work.Findings {
		if f.Severity != diag.Fault || f.Piece != name || f.Span.Len() == 0 || s.beingTyped(since.Span(f.Span)) {
			continue
		}
		for i, r := range m.Tree().Rows {
			if f.Span.Start >= r.Span.Start && f.Span.Start < r.Span.End {
				rows = append(rows, i)
			}
		}
	}
	slices.Sort(rows)
	if rows = slices.Compact(rows); len(rows) > 0 {
		label = m.Tree().Rows[rows[0]].Label()
	}
	return rows, label
}

// unsureOn follows the fabric upward from the faulty rows: a row with a stitch that stands in one of them, or in
// a row that is unsure already, is unsure. A row that could not be worked at all leaves all that come after it so.
func unsureOn(m *Made, faulty []int, on string) *Unsure {
	f := m.Fabric()
	u := &Unsure{On: on, Rows: make([]bool, len(f.Rows))}
	if len(faulty) == 0 {
		return u
	}
	shaky := make([]bool, len(f.Rows)) // faulty or unsure
	lost := len(m.Tree().Rows)         // the first written row that made nothing
	for _, written := range faulty {
		works := m.Works(written)
		for _, row := range works {
			shaky[row] = true
		}
		if len(works) == 0 {
			lost = min(lost, written)
		}
	}
	for i := range f.Rows {
		r := &f.Rows[i]
		if !shaky[i] && (r.Under > lost || stands(f, r, shaky)) {
			shaky[i], u.Rows[i] = true, true
			for id := r.First; id < r.Last; id++ {
				u.Stitches = append(u.Stitches, id)
			}
		}
	}
	return u
}

func stands(f *fabric.Fabric, r *fabric.Row, shaky []bool) bool {
	for id := r.First; id < r.Last; id++ {
		for _, b := range f.Of(id) {
			if b.At >= 0 && b.At < r.First && shaky[f.Stitches[b.At].Row] {
				return true
			}
		}
	}
	return false
}
