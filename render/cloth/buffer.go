package cloth

import (
	"context"
	"image"
	"slices"

	"strandway/model/colour"
	"strandway/render/tiles"
)

// Buffer is a drawn cloth without its colours. It is made by [Cloth.Draw] and
// coloured, as often as one likes, by [Buffer.Colour].
type Buffer struct {
	Width, Height int // pixels
	of            *composition
	tiles         []tile
	fresh         []image.Rectangle // by tile: the pixels that do not stand in the buffer it was redrawn from
}

// tile is a rectangle of a buffer, finished but for its colours.
type tile struct {
	image.Rectangle // pixels, counted from the cloth's origin
	light           []uint8
	row             []uint16
	stride          int // samples
	at              int // index of its first sample
}

// Draw composes the part of the cloth in view. It returns ctx's error when ctx
// is done first. A picture at half the scale takes about a quarter of the time,
// for something to show while the full one is drawn.
func (c *Cloth) Draw(ctx context.Context, v View) (*Buffer, error) { return c.redraw(ctx, v, nil) }

// redraw draws as [Cloth.Draw] does, but takes over what stands in a buffer before,
// of this cloth or of one like it, at the same scale. Both give the same picture.
func (c *Cloth) redraw(ctx context.Context, v View, before *Buffer) (*Buffer, error) {
	m, err := c.compose(ctx, v)
	if err != nil {
		return nil, err
	}
	if before != nil && !m.continues(before.of) {
		before = nil
	}
	n := m.grid.Len()
	b := &Buffer{Width: m.view.Dx(), Height: m.view.Dy(), of: m, tiles: make([]tile, n), fresh: make([]image.Rectangle, n)}
	err = inParallel(ctx, n, func() func(int) {
		f := &field{}
		return func(t int) { b.draw(t, f, before) }
	})
	if err != nil {
		return nil, err
	}
	return b, nil
}

// continues reports whether what was drawn before can stand beside what is drawn now.
func (m *composition) continues(before *composition) bool {
	return m.scale == before.scale && m.n == before.n && m.cloth.table == before.cloth.table && slices.Equal(m.cloth.looks, before.cloth.looks)
}

// draw draws what of tile t does not stand in the buffer before.
func (b *Buffer) draw(t int, f *field, before *Buffer) {
	m := b.of
	shown := m.grid.Tile(t)
	stale, old := shown, tile{}
	if before != nil {
		if same, ok := m.grid.Same(t, before.of.grid); ok {
			old = before.tiles[same]
		}
		stale = m.grid.Stale(t, tiles.Before{
			Grid: before.of.grid,
			Same: func(was, now int32) bool { return m.alike(now, before.of, was) },
			Was:  before.of.reach,
			Now:  m.reach,
		})
	}
	b.fresh[t] = m.pixels(stale)
	if r := m.pixels(shown); r != old.Rectangle || !stale.Empty() {
		b.tiles[t] = newTile(r, m.n)
		b.tiles[t].copy(&old, m.n)
	} else {
		b.tiles[t] = old
	}
	if r := b.fresh[t]; !r.Empty() {
		m.fill(f, t, image.Rectangle{Min: r.Min.Mul(m.n), Max: r.Max.Mul(m.n)})
		drawn := f.tile(r, m)
		b.tiles[t].copy(&drawn, m.n)
	}
}

// pixels are the view's pixels of which samples r are part.
func (m *composition) pixels(r image.Rectangle) image.Rectangle {
	if r.Empty() {
		return image.Rectangle{}
	}
	r = r.Sub(m.view.Min.Mul(m.n)) // so that dividing rounds down
	r.Max = r.Max.Add(image.Pt(m.n-1, m.n-1))
	return image.Rectangle{Min: r.Min.Div(m.n), Max: r.Max.Div(m.n)}.Add(m.view.Min)
}

// newTile makes a tile of pixels r.
func newTile(r image.Rectangle, n int) tile {
	size := r.Dx() * r.Dy() * n * n
	return tile{Rectangle: r, stride: r.Dx() * n, light: make([]uint8, size), row: make([]uint16, size)}
}

// tile is pixels r of a field in which they lie margin inside.
func (f *field) tile(r image.Rectangle, m *composition) tile {
	return tile{Rectangle: r, light: f.light, row: f.row, stride: f.w, at: m.margin*f.w + m.margin}
}

// part is pixels r of a tile.
func (t *tile) part(r image.Rectangle, n int) tile {
	part := *t
	part.Rectangle = r
	part.at += (r.Min.Y-t.Min.Y)*n*t.stride + (r.Min.X-t.Min.X)*n
	return part
}

// copy takes over the pixels that another tile has in common with it.
func (t *tile) copy(from *tile, n int) {
	r := t.Intersect(from.Rectangle)
	src, dst := from.part(r, n), t.part(r, n)
	for i := range r.Dy() * n {
		a, b := dst.at+i*dst.stride, src.at+i*src.stride
		copy(dst.light[a:a+r.Dx()*n], src.light[b:])
		copy(dst.row[a:a+r.Dx()*n], src.row[b:])
	}
}

// Colour colours the buffer. The yarns are those of the cloth in the same
// order; where their look is not the one the cloth was made with, they are
// shown solid (see [Cloth.Matches]).
func (b *Buffer) Colour(yarns []Yarn, back Background) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, b.Width, b.Height))
	b.resolve(img, colours(b.of.cloth.looks, yarns, back.Light), back.ground(), false)
	return img
}

// resolve colours the buffer's tiles, or only what in them is fresh.
func (b *Buffer) resolve(img *image.RGBA, table [][256]uint64, g *ground, fresh bool) {
	n, origin := b.of.n, b.of.view.Min
	inParallel(context.Background(), len(b.tiles), func() func(int) {
		return func(t int) {
			part := b.tiles[t]
			if fresh {
				part = part.part(b.fresh[t], n)
			}
			part.resolve(img, origin, n, table, g)
		}
	})
}

// Paint draws and colours in one go and keeps nothing: for large pictures.
func (c *Cloth) Paint(ctx context.Context, v View, yarns []Yarn, back Background) (*image.RGBA, error) {
	m, err := c.compose(ctx, v)
	if err != nil {
		return nil, err
	}
	img := image.NewRGBA(image.Rectangle{Max: m.view.Size()})
	table := colours(c.looks, yarns, back.Light)
	ground := back.ground()
	err = inParallel(ctx, m.grid.Len(), func() func(int) {
		f := &field{}
		return func(i int) {
			r := m.grid.Tile(i)
			m.fill(f, i, r)
			t := f.tile(m.pixels(r), m)
			t.resolve(img, m.view.Min, m.n, table, ground)
		}
	})
	if err != nil {
		return nil, err
	}
	return img, nil
}

// colours is the colour table: for each row and light, red, green and blue in
// fields of 16 bits, so that samples are averaged by adding them up, and in the
// fourth field the light that the ground shows through.
func colours(looks []look, yarns []Yarn, light Light) [][256]uint64 {
	table := make([][256]uint64, 1, 8)
	for i := range table[groundRow] {
		table[groundRow][i] = uint64(i) << 48
	}
	tint := light.tint()
	for i, l := range looks {
		var y Yarn
		if i < len(yarns) {
			y = yarns[i]
		}
		shades := y.rowsOf(l)
		for n, c := range shades {
			if n > 0 && c == shades[n-1] {
				table = append(table, table[len(table)-1])
				continue
			}
			var row [256]uint64
			for k, s := range colour.Ramp(c) {
				s = tint.on(s)
				row[k] = uint64(s.R) | uint64(s.G)<<16 | uint64(s.B)<<32
			}
			table = append(table, row)
		}
	}
	return table
}

// resolve averages the samples of each pixel and puts the ground behind them; origin is the
// picture's upper left pixel.
func (t *tile) resolve(img *image.RGBA, origin image.Point, n int, table [][256]uint64, g *ground) {
	inverse := uint32(1<<16) / uint32(n*n)
	width := t.Dx()
	for y := range t.Dy() {
		out := img.Pix[img.PixOffset(t.Min.X-origin.X, t.Min.Y-origin.Y+y):]
		out = out[: 4*width : 4*width]
		for x := range width {
			var sum uint64
			at := t.at + y*n*t.stride + x*n
			if n == 2 {
				l, r := t.light[at:at+2], t.row[at:at+2]
				l2, r2 := t.light[at+t.stride:at+t.stride+2], t.row[at+t.stride:at+t.stride+2]
				sum = table[r[0]][l[0]] + table[r[1]][l[1]] + table[r2[0]][l2[0]] + table[r2[1]][l2[1]]
			} else {
				for j := range n {
					for i := range n {
						k := at + j*t.stride + i
						sum += table[t.row[k]][t.light[k]]
					}
				}
			}
			part := func(shift uint) uint32 { return uint32(sum>>shift&0xffff) * inverse >> 16 }
			red, green, blue, alpha := part(0), part(16), part(32), uint32(255)
			if through := part(48); through > 0 {
				if g == nil { // nothing behind: the shadow is black that lets light through
					alpha -= through
				} else {
					c := g.at(t.Min.X+x, t.Min.Y+y)
					red += uint32(c.R) * through / 255
					green += uint32(c.G) * through / 255
					blue += uint32(c.B) * through / 255
				}
			}
			out[4*x], out[4*x+1], out[4*x+2], out[4*x+3] = uint8(red), uint8(green), uint8(blue), uint8(alpha)
		}
	}
}
