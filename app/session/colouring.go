package session

import (
	"errors"

	"strandway/model/tapestry"
)

// Pencil works the chosen stitches in a yarn. Their rows are rewritten so, and stay chosen.
func (s *Session) Pencil(letter string) error {
	return s.colour("Stitches in yarn ", letter, func(g tapestry.Grid, yarn uint8) (tapestry.Grid, bool) {
		var cells []tapestry.Cell
		for _, id := range s.chosen.Stitches {
			if c, ok := tapestry.CellOf(s.Made().Fabric(), id); ok {
				cells = append(cells, c)
			}
		}
		return g.Pencil(yarn, cells...), len(cells) > 0
	})
}

// FillPatch works the patch of one colour about the chosen stitch in a yarn.
func (s *Session) FillPatch(letter string) error {
	return s.colour("Patch in yarn ", letter, func(g tapestry.Grid, yarn uint8) (tapestry.Grid, bool) {
		c, ok := tapestry.CellOf(s.Made().Fabric(), s.chosen.Lead)
		return g.Fill(yarn, c), ok
	})
}

func (s *Session) colour(label, letter string, change func(tapestry.Grid, uint8) (tapestry.Grid, bool)) error {
	m := s.Made()
	switch {
	case m == nil || m.pattern != s.Pattern():
		return errors.New("the rows are still being worked; try again in a moment")
	case len(s.chosen.Stitches) == 0:
		return errors.New("choose a stitch first")
	}
	grid, err := tapestry.FromFabric(m.Fabric())
	if err != nil {
		return err
	}
	grid, yarn := grid.Yarn(letter)
	grid, ok := change(grid, yarn)
	if !ok {
		return errors.New("a chain at the edge has no colour of its own; choose a stitch")
	}
	rows, err := tapestry.Paint(s.lib, s.Pattern(), s.piece, s.size, grid)
	if err != nil {
		return err
	}
	chosen := s.chosen
	s.Rewrite(label+letter, rows, min(s.caret.At, len(rows)))
	s.chosen = chosen // the same stitches, in another yarn
	s.tell(Choice)
	return nil
}
