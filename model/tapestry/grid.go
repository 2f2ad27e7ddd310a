// Package tapestry is colourwork in single crochet: a grid of colours, one cell a
// stitch, and the written rows that work it.
//
//	picture → [Import] → Grid ⇄ written rows
//
// Rows change yarn within the row and carry the other yarns along. Reading them
// back from the worked fabric gives the same grid, so that painting a cell is an
// edit of the row it stands in.
package tapestry

import (
	"fmt"
	"slices"

	"strandway/model/fabric"
)

// Grid is the colours of a piece as seen from the right side.
type Grid struct {
	Width, Height int
	Yarns         []string // letters, by the index that cells hold
	Cells         []uint8  // row by row from the first worked, each from the left
}

// Cell is a place in a grid: the column from the left and the row from the first worked, both from 0.
type Cell struct{ Column, Row int }

// New is a grid all of whose cells are in the first yarn.
func New(width, height int, yarns []string) Grid {
	return Grid{Width: width, Height: height, Yarns: yarns, Cells: make([]uint8, width*height)}
}

// At is the yarn of a cell, an index in g.Yarns.
func (g Grid) At(c Cell) uint8 { return g.Cells[c.Row*g.Width+c.Column] }

// Has reports whether a cell lies in the grid.
func (g Grid) Has(c Cell) bool {
	return c.Column >= 0 && c.Column < g.Width && c.Row >= 0 && c.Row < g.Height
}

// Yarn is g with a yarn of that letter, and the yarn's index: cells can be painted in it.
func (g Grid) Yarn(letter string) (Grid, uint8) {
	i := slices.Index(g.Yarns, letter)
	if i < 0 {
		i = len(g.Yarns)
		g.Yarns = append(slices.Clone(g.Yarns), letter)
	}
	return g, uint8(i)
}

// row is one row of cells, from the left.
func (g Grid) row(i int) []uint8 { return g.Cells[i*g.Width : (i+1)*g.Width] }

// Pencil is g with cells in another yarn; cells outside the grid are passed over.
func (g Grid) Pencil(yarn uint8, cells ...Cell) Grid {
	g.Cells = slices.Clone(g.Cells)
	for _, c := range cells {
		if g.Has(c) {
			g.Cells[c.Row*g.Width+c.Column] = yarn
		}
	}
	return g
}

// Fill is g with the patch of one colour round a cell in another yarn. A patch
// hangs together by the sides of its cells.
func (g Grid) Fill(yarn uint8, from Cell) Grid {
	if !g.Has(from) || g.At(from) == yarn {
		return g
	}
	old := g.At(from)
	g.Cells = slices.Clone(g.Cells)
	for next := []Cell{from}; len(next) > 0; {
		c := next[len(next)-1]
		next = next[:len(next)-1]
		if !g.Has(c) || g.At(c) != old {
			continue
		}
		g.Cells[c.Row*g.Width+c.Column] = yarn
		next = append(next, Cell{c.Column - 1, c.Row}, Cell{c.Column + 1, c.Row}, Cell{c.Column, c.Row - 1}, Cell{c.Column, c.Row + 1})
	}
	return g
}

// FromFabric reads the grid of a worked piece. An error names the first row that is no
// row of single crochet, one in each stitch.
func FromFabric(f *fabric.Fabric) (Grid, error) {
	g := Grid{Yarns: slices.Clone(f.Yarns)}
	for i := 1; i < len(f.Rows); i++ {
		row, ok := rowOf(f, i)
		switch {
		case !ok:
			return Grid{}, fmt.Errorf("%s is not worked in sc in each stitch, so it is no row of a colour grid", f.Rows[i].Label)
		case g.Height == 0:
			g.Width = len(row)
		case len(row) != g.Width:
			return Grid{}, fmt.Errorf("%s has %d stitches where the rows below have %d, so it is no row of a colour grid", f.Rows[i].Label, len(row), g.Width)
		}
		g.Cells = append(g.Cells, row...)
		g.Height++
	}
	if len(g.Cells) == 0 {
		return Grid{}, fmt.Errorf("there are no rows yet to colour")
	}
	return g, nil
}

// rowOf is the yarns of a worked row from the left; ok is false when it is anything but plain single crochet.
func rowOf(f *fabric.Fabric, i int) (yarns []uint8, ok bool) {
	r := &f.Rows[i]
	if r.Shape != fabric.Flat || r.Backward {
		return nil, false
	}
	for id := r.First; id < r.Last; id++ {
		s := &f.Stitches[id]
		if s.Has(fabric.NoLanding) {
			continue // the chain at the turn
		}
		if f.Kind(id).Name != single || s.NBase != 1 || s.Has(fabric.Long) || s.Unit >= 0 {
			return nil, false
		}
		yarns = append(yarns, s.Yarn)
	}
	if r.Unworked > 0 || len(yarns) == 0 {
		return nil, false
	}
	if !r.FromLeft {
		slices.Reverse(yarns)
	}
	return yarns, true
}

// single is the stitch of tapestry rows, by its canonical name.
const single = "sc"

// CellOf is the cell that a stitch is; ok is false for one that is no cell of a grid.
func CellOf(f *fabric.Fabric, id int32) (c Cell, ok bool) {
	if id < 0 || int(id) >= len(f.Stitches) {
		return Cell{}, false
	}
	i := int(f.Stitches[id].Row)
	row, ok := rowOf(f, i)
	if i == 0 || !ok || f.Stitches[id].Has(fabric.NoLanding) {
		return Cell{}, false
	}
	c.Row = i - 1
	for before := f.Rows[i].First; before < id; before++ {
		if !f.Stitches[before].Has(fabric.NoLanding) {
			c.Column++
		}
	}
	if !f.Rows[i].FromLeft {
		c.Column = len(row) - 1 - c.Column
	}
	return c, true
}
