package cloth

import (
	"context"
	"image"

	"strandway/model/colour"
)

// Buffer is a drawn cloth without its colours. It is made by [Cloth.Draw] and
// coloured, as often as one likes, by [Buffer.Colour].
type Buffer struct {
	Width, Height int // pixels
	of            *composition
	tiles         []tile
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
func (c *Cloth) Draw(ctx context.Context, v View) (*Buffer, error) {
	m, err := c.compose(ctx, v)
	if err != nil {
		return nil, err
	}
	b := &Buffer{Width: m.view.Dx(), Height: m.view.Dy(), of: m, tiles: make([]tile, m.grid.Len())}
	err = inParallel(ctx, len(b.tiles), func() func(int) {
		f := &field{}
		return func(t int) {
			drawn := m.fill(f, t, m.grid.Tile(t))
			b.tiles[t] = newTile(drawn.Rectangle, m.n)
			b.tiles[t].copy(&drawn, m.n)
		}
	})
	if err != nil {
		return nil, err
	}
	return b, nil
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
	table := colours(b.of.cloth.looks, yarns, back.Light)
	ground := back.ground()
	inParallel(context.Background(), len(b.tiles), func() func(int) {
		return func(t int) { b.tiles[t].resolve(img, b.of.view.Min, b.of.n, table, ground) }
	})
	return img
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
			t := m.fill(f, i, m.grid.Tile(i))
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
