package session

import (
	"errors"

	"strandway/model"
	"strandway/model/edit"
)

// SeveralRows says that a row cannot be edited by itself, since it is written as one with others.
type SeveralRows struct {
	Label string
	Row   int // in the fabric
}

// Error implements error.
func (e *SeveralRows) Error() string {
	return e.Label + " is one of several rows written as one; write it on a line of its own first"
}

// WriteOut gives each of the rows that are written as one with a fabric row a line of its own, and
// leaves the caret and the choice where they were in that row.
func (s *Session) WriteOut(row int) error {
	m := s.Made()
	if m == nil || m.pattern != s.Pattern() || row >= len(m.Fabric().Rows) {
		return errors.New("the rows are still being worked; try again in a moment")
	}
	rows, ok := edit.WriteOut(m.Tree(), m.Fabric(), m.WrittenRow(row))
	if !ok {
		return errors.New("the row stands for no others that could be written out")
	}
	again := model.Work(s.lib, edit.Rows(m.pattern, m.piece, rows), m.size).Pieces[m.piece]
	if len(again.Fabric.Stitches) != len(m.Fabric().Stitches) || again.Findings.Faults() > m.Piece().Findings.Faults() {
		return errors.New("the rows would not come out when written one by one; write them out by hand")
	}
	index := max(0, s.chosen.Lead-m.Fabric().Rows[row].First)
	chosen := len(s.chosen.Stitches) > 0
	caret := again.Tree.Rows[again.Fabric.Rows[row].Under].Head.End
	s.Rewrite("Write the rows out", rows, min(caret, len(rows)))
	if chosen {
		s.wish = wish{pattern: s.Pattern(), row: row, index: index}
	}
	return nil
}
