package chart

import (
	"fmt"
	"image/color"

	"strandway/chart/display"
	"strandway/model/fabric"
)

// filet gives how many stitches make one mesh when the rows are filet: posts in
// even distances, and between them chains (an open mesh) or stitches (a filled
// one). It is 0 for any other fabric.
func filet(f *fabric.Fabric, rows []cellRow) int {
	for _, m := range [...]int{3, 2} {
		if isFilet(f, rows, m) {
			return m
		}
	}
	return 0
}

func isFilet(f *fabric.Fabric, rows []cellRow, m int) bool {
	open := 0
	for i := range rows {
		cells := rows[i].cells
		if len(cells) < m+1 || len(cells)%m != 1 {
			return false
		}
		for k, id := range cells {
			s := &f.Stitches[id]
			chain := isMeshChain(s)
			switch {
			case k%m == 0 && chain, !chain && f.Kind(id).Chains < 1.75:
				return false // no post there, or a stitch too low for filet
			case k%m > 1 && chain != isMeshChain(&f.Stitches[cells[k-1]]):
				return false
			case chain:
				open++
			}
		}
	}
	return open > 0
}

func isMeshChain(s *fabric.Stitch) bool { return s.Has(fabric.Chain) && !s.Has(fabric.TurningChain) }

// meshes draws filet as it is charted: one cell a mesh, filled or open.
func (g *grid) meshes(rows []cellRow, m int) *display.List {
	g.drawn.meshes = true
	for i := range rows {
		r := &rows[i]
		g.begin(fmt.Sprintf("r%d", r.row), "row", g.rowTitle(r.row), -1)
		n := (len(r.cells) - 1) / m
		for k := range n {
			id := r.cells[k*m+1]
			fill := g.look.paper
			if s := &g.f.Stitches[id]; !isMeshChain(s) {
				fill = g.meshInk(s)
			}
			g.begin(fmt.Sprintf("s%d", id), "stitch", g.title(id), id)
			g.list.Items = append(g.list.Items, display.Path{Path: rectangle(g.box(r.from/m+k, i)), Fill: display.Solid(fill)})
			g.end()
		}
		g.end()
	}
	width := 0
	for i := range rows {
		r := &rows[i]
		r.from, r.cells = r.from/m, r.cells[:(len(r.cells)-1)/m]
		width = max(width, r.from+len(r.cells))
	}
	g.begin("grid", "grid", "", -1)
	g.lines(rows, width)
	g.end()
	g.begin("numbers", "numbers", "", -1)
	g.numbers(rows, width)
	g.end()
	if g.o.Key {
		g.key()
	}
	return g.finish()
}

// meshInk is the colour of a filled mesh.
func (g *grid) meshInk(s *fabric.Stitch) color.NRGBA { return g.look.yarn(s.Yarn).line }
