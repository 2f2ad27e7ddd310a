package session

import (
	"slices"

	"strandway/model/diag"
	"strandway/model/edit"
	"strandway/model/syntax"
)

// Chosen are the stitches chosen in chart, cells or cloth.
type Chosen struct {
	Stitches []int32 // ids, in order
	Lead     int32   // the one chosen last
}

// Has reports whether a stitch is chosen.
func (c Chosen) Has(id int32) bool {
	_, found := slices.BinarySearch(c.Stitches, id)
	return found
}

// Chosen are the chosen stitches.
func (s *Session) Chosen() Chosen { return s.chosen }

// Choose chooses stitches and puts the caret into the word that made the lead.
func (s *Session) Choose(ids []int32, lead int32) {
	ids = slices.Clone(ids)
	slices.Sort(ids)
	s.chosen = Chosen{slices.Compact(ids), lead}
	changed := Choice
	if at, ok := s.WordOf(lead); ok && len(ids) > 0 {
		s.history.Seal()
		s.caret, s.typing = edit.At(at.Start), false
		changed |= Caret
	}
	s.tell(changed)
}

// ChooseNone lets go of the chosen stitches.
func (s *Session) ChooseNone() {
	if len(s.chosen.Stitches) > 0 {
		s.chosen = Chosen{}
		s.tell(Choice)
	}
}

// WordOf is the instruction that made a stitch, in the present rows.
func (s *Session) WordOf(id int32) (diag.Span, bool) {
	m := s.Made()
	if m == nil || id < 0 || int(id) >= len(m.Fabric().Stitches) {
		return diag.Span{}, false
	}
	start := int(m.Fabric().Stitches[id].Word)
	if start < 0 {
		return diag.Span{}, false
	}
	word := diag.Span{Start: start, End: start + 1}
	for _, row := range m.Tree().Rows {
		if start < row.Span.Start || start >= row.Span.End {
			continue
		}
		syntax.Walk(row.Body, func(n syntax.Node) bool {
			if at := n.At(); at.Start == start && at.End > word.End {
				word = at
			}
			return true
		})
	}
	return s.Since().Span(word), true
}

// MadeBy are the stitches that the instruction at an offset of the present rows made.
func (s *Session) MadeBy(offset int) []int32 {
	m := s.Made()
	if m == nil {
		return nil
	}
	since := s.Since()
	best, ids := -1, []int32(nil)
	line := edit.Line(s.Rows(), offset)
	for i := range m.Fabric().Stitches {
		word := m.Fabric().Stitches[i].Word
		if word < 0 {
			continue
		}
		switch at := since.At(int(word)); {
		case at < line.Start || at > offset || at < best:
		case at > best:
			best, ids = at, []int32{int32(i)}
		default:
			ids = append(ids, int32(i))
		}
	}
	return ids
}
