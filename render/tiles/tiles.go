// Package tiles finds out which parts of a picture must be drawn anew.
//
// A drawing is a sequence of things, each with a box that it may touch. A [Grid]
// deals them out to the tiles of a picture; when the drawing has changed, the
// grids before and after tell what of each tile is stale. Pixels are counted
// from the drawing's own origin, not from the picture's corner, so that a
// picture that was shifted by whole pixels keeps its tiles.
package tiles

import "image"

// Grid is a picture in tiles.
type Grid struct {
	View    image.Rectangle // what the picture shows
	side    int
	tiles   image.Rectangle // columns and rows of tiles, counted from the origin
	things  [][]int32       // by tile
	columns int
}

// New makes a grid with tiles of so many pixels a side.
func New(view image.Rectangle, side int) *Grid {
	g := &Grid{View: view, side: side}
	if view.Empty() {
		return g
	}
	g.tiles = image.Rect(floorDiv(view.Min.X, side), floorDiv(view.Min.Y, side), floorDiv(view.Max.X-1, side)+1, floorDiv(view.Max.Y-1, side)+1)
	g.columns = g.tiles.Dx()
	g.things = make([][]int32, g.columns*g.tiles.Dy())
	return g
}

// Bounds are the whole tiles, of which those at the edges reach beyond the view.
func (g *Grid) Bounds() image.Rectangle {
	return image.Rectangle{Min: g.tiles.Min.Mul(g.side), Max: g.tiles.Max.Mul(g.side)}
}

// Len is the number of tiles.
func (g *Grid) Len() int { return len(g.things) }

// Tile is what the view shows of tile t.
func (g *Grid) Tile(t int) image.Rectangle {
	at := g.tiles.Min.Add(image.Pt(t%g.columns, t/g.columns)).Mul(g.side)
	return image.Rectangle{Min: at, Max: at.Add(image.Pt(g.side, g.side))}.Intersect(g.View)
}

// Things are the things that touch tile t, in the order of drawing.
func (g *Grid) Things(t int) []int32 { return g.things[t] }

// Deal puts a thing on the lists of the tiles that its box touches. Things are dealt in the order of drawing.
func (g *Grid) Deal(thing int32, box image.Rectangle) {
	if !box.Overlaps(g.Bounds()) {
		return
	}
	x0, x1 := max(g.tiles.Min.X, floorDiv(box.Min.X, g.side)), min(g.tiles.Max.X-1, floorDiv(box.Max.X-1, g.side))
	y0, y1 := max(g.tiles.Min.Y, floorDiv(box.Min.Y, g.side)), min(g.tiles.Max.Y-1, floorDiv(box.Max.Y-1, g.side))
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			t := &g.things[(y-g.tiles.Min.Y)*g.columns+x-g.tiles.Min.X]
			*t = append(*t, thing)
		}
	}
}

// Same is the tile of an earlier grid that lies where tile t does; ok is false where there is none.
func (g *Grid) Same(t int, was *Grid) (same int, ok bool) {
	at := g.tiles.Min.Add(image.Pt(t%g.columns, t/g.columns))
	if g.side != was.side || !at.In(was.tiles) {
		return 0, false
	}
	return (at.Y-was.tiles.Min.Y)*was.columns + at.X - was.tiles.Min.X, true
}

// Before says how the things of an earlier grid compare with those of the present one.
type Before struct {
	*Grid
	Same     func(was, now int32) bool         // whether two things are drawn alike
	Was, Now func(thing int32) image.Rectangle // their boxes
}

// Stale is the part of tile t that must be drawn anew, because the picture before
// did not show it or because other things touch it now.
func (g *Grid) Stale(t int, before Before) image.Rectangle {
	shown := g.Tile(t)
	old, ok := g.Same(t, before.Grid)
	if !ok {
		return shown
	}
	var changed image.Rectangle
	from, to := differ(before.things[old], g.things[t], before.Same)
	for _, thing := range from {
		changed = changed.Union(before.Was(thing))
	}
	for _, thing := range to {
		changed = changed.Union(before.Now(thing))
	}
	return beyond(shown, before.Tile(old)).Union(changed.Intersect(shown))
}

// differ leaves out what two sequences of things have in common at their beginnings and at their ends.
func differ(was, now []int32, same func(was, now int32) bool) (from, to []int32) {
	for len(was) > 0 && len(now) > 0 && same(was[0], now[0]) {
		was, now = was[1:], now[1:]
	}
	for len(was) > 0 && len(now) > 0 && same(was[len(was)-1], now[len(now)-1]) {
		was, now = was[:len(was)-1], now[:len(now)-1]
	}
	return was, now
}

// beyond is the least rectangle that holds what a has beyond b.
func beyond(a, b image.Rectangle) image.Rectangle {
	b = a.Intersect(b)
	switch {
	case b.Empty():
		return a
	case b.Min.X == a.Min.X && b.Max.X == a.Max.X && b.Min.Y == a.Min.Y:
		a.Min.Y = b.Max.Y
	case b.Min.X == a.Min.X && b.Max.X == a.Max.X && b.Max.Y == a.Max.Y:
		a.Max.Y = b.Min.Y
	case b.Min.Y == a.Min.Y && b.Max.Y == a.Max.Y && b.Min.X == a.Min.X:
		a.Min.X = b.Max.X
	case b.Min.Y == a.Min.Y && b.Max.Y == a.Max.Y && b.Max.X == a.Max.X:
		a.Max.X = b.Min.X
	}
	if a.Empty() {
		return image.Rectangle{}
	}
	return a
}

func floorDiv(a, b int) int {
	if a < 0 {
		return -((b - 1 - a) / b)
	}
	return a / b
}
