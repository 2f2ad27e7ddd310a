package cloth

import (
	"context"
	"image"
	"slices"

	"strandway/render/tiles"
)

// Screen keeps the picture of a cloth that is shown. After an edit of its rows, or when the
// view is shifted by whole pixels, only what differs is drawn and coloured anew. The zero
// Screen is ready to use, by one goroutine at a time.
type Screen struct {
	of      *composition
	picture *image.RGBA
	tiles   []tile // samples, for other colours; nil where they are too many to be kept
	table   [][256]uint64
	back    Background
}

// mostKept is how many samples a screen keeps, 3 bytes each. Small stitches have many of them for
// each pixel; other colours are then drawn from nothing.
const mostKept = 6 << 20

// Show gives the picture of a cloth, the same as drawing and colouring it gives. It is not
// changed later. When ctx is done first, the screen stays as it was.
func (s *Screen) Show(ctx context.Context, c *Cloth, v View, yarns []Yarn, back Background) (*image.RGBA, error) {
	m, err := c.compose(ctx, v)
	if err != nil {
		return nil, err
	}
	next := Screen{of: m, picture: image.NewRGBA(image.Rectangle{Max: m.view.Size()}), table: colours(c.looks, yarns, back.Light), back: back}
	if m.view.Dx()*m.view.Dy()*m.n*m.n <= mostKept {
		next.tiles = make([]tile, m.grid.Len())
	}
	before := s
	if s.of == nil || !m.continues(s.of) || len(next.tiles) > 0 && s.tiles == nil {
		before = &Screen{}
	}
	coloured := before.of != nil && s.back == back && slices.Equal(s.table, next.table)
	switch {
	case coloured:
		copyShifted(next.picture, s.picture, s.of.view.Min.Sub(m.view.Min))
	case before.tiles == nil:
		before = &Screen{}
	}
	ground := back.ground()
	err = inParallel(ctx, m.grid.Len(), func() func(int) {
		f := &field{}
		return func(t int) {
			fresh := next.draw(t, f, before, coloured)
			fresh.resolve(next.picture, m.view.Min, m.n, next.table, ground)
		}
	})
	if err != nil {
		return nil, err
	}
	*s = next
	return s.picture, nil
}

// continues reports whether what was drawn before can stand beside what is drawn now.
func (m *composition) continues(before *composition) bool {
	return m.scale == before.scale && m.n == before.n && m.cloth.table == before.cloth.table && slices.Equal(m.cloth.looks, before.cloth.looks)
}

// draw draws what of tile t does not stand on the screen before, keeps its samples if any are kept,
// and gives what of it is to be coloured.
func (s *Screen) draw(t int, f *field, before *Screen, coloured bool) tile {
	m := s.of
	stale, old := m.grid.Tile(t), tile{}
	if before.of != nil {
		if same, ok := m.grid.Same(t, before.of.grid); ok && before.tiles != nil {
			old = before.tiles[same]
		}
		stale = m.grid.Stale(t, tiles.Before{
			Grid: before.of.grid,
			Same: func(was, now int32) bool { return m.alike(now, before.of, was) },
			Was:  before.of.reach,
			Now:  m.reach,
		})
	}
	var drawn tile
	if r := m.pixels(stale); !r.Empty() {
		drawn = m.fill(f, t, image.Rectangle{Min: r.Min.Mul(m.n), Max: r.Max.Mul(m.n)})
	}
	if s.tiles == nil {
		return drawn
	}
	s.tiles[t] = old
	if r := m.pixels(m.grid.Tile(t)); r != old.Rectangle || !drawn.Empty() {
		s.tiles[t] = newTile(r, m.n)
		s.tiles[t].copy(&old, m.n)
		s.tiles[t].copy(&drawn, m.n)
	}
	if coloured {
		return drawn
	}
	return s.tiles[t]
}

// copyShifted copies what of src falls on dst when its corner is put at a point.
func copyShifted(dst, src *image.RGBA, at image.Point) {
	r := dst.Rect.Intersect(src.Rect.Add(at))
	for y := r.Min.Y; y < r.Max.Y; y++ {
		from := src.PixOffset(r.Min.X-at.X, y-at.Y)
		to := dst.PixOffset(r.Min.X, y)
		copy(dst.Pix[to:to+4*r.Dx()], src.Pix[from:])
	}
}
