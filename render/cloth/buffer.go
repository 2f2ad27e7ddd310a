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
	n             int // samples per pixel side
	looks         []look
	tiles         []tile
}

// tile is a rectangle of a buffer, finished but for its colours.
type tile struct {
	x, y, w, h int // pixels
	light      []uint8
	row        []uint16
	stride     int // samples
	at         int // index of its first sample
}

// Draw composes the part of the cloth in view. It returns ctx's error when ctx
// is done first. A picture at half the scale takes about a quarter of the time,
// for something to show while the full one is drawn.
func (c *Cloth) Draw(ctx context.Context, v View) (*Buffer, error) {
	m, err := c.compose(ctx, v)
	if err != nil {
		return nil, err
	}
	b := &Buffer{Width: m.w, Height: m.h, n: m.n, looks: c.looks, tiles: make([]tile, len(m.tiles))}
	err = inParallel(ctx, len(m.tiles), func() func(int) {
		f := &field{}
		return func(t int) {
			x, y, w, h := m.fill(f, t)
			b.tiles[t] = f.keep(x, y, w, h, m)
		}
	})
	if err != nil {
		return nil, err
	}
	return b, nil
}

// keep copies what a tile needs for colouring out of a field.
func (f *field) keep(x, y, w, h int, m *composition) tile {
	t := tile{x: x, y: y, w: w, h: h, stride: w * m.n}
	t.light, t.row = make([]uint8, w*h*m.n*m.n), make([]uint16, w*h*m.n*m.n)
	for i := range h * m.n {
		from := (m.margin+i)*f.w + m.margin
		copy(t.light[i*t.stride:(i+1)*t.stride], f.light[from:])
		copy(t.row[i*t.stride:(i+1)*t.stride], f.row[from:])
	}
	return t
}

// Colour colours the buffer. The yarns are those of the cloth in the same
// order; where their look is not the one the cloth was made with, they are
// shown solid (see [Cloth.Matches]).
func (b *Buffer) Colour(yarns []Yarn, back Background) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, b.Width, b.Height))
	table := colours(b.looks, yarns, back.Light)
	ground := back.ground()
	inParallel(context.Background(), len(b.tiles), func() func(int) {
		return func(t int) { b.tiles[t].resolve(img, b.n, table, ground) }
	})
	return img
}

// Paint draws and colours in one go and keeps nothing: for large pictures.
func (c *Cloth) Paint(ctx context.Context, v View, yarns []Yarn, back Background) (*image.RGBA, error) {
	m, err := c.compose(ctx, v)
	if err != nil {
		return nil, err
	}
	img := image.NewRGBA(image.Rect(0, 0, m.w, m.h))
	table := colours(c.looks, yarns, back.Light)
	ground := back.ground()
	err = inParallel(ctx, len(m.tiles), func() func(int) {
		f := &field{}
		return func(i int) {
			x, y, w, h := m.fill(f, i)
			t := tile{x: x, y: y, w: w, h: h, light: f.light, row: f.row, stride: f.w, at: m.margin*f.w + m.margin}
			t.resolve(img, m.n, table, ground)
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

// resolve averages the samples of each pixel and puts the ground behind them.
func (t *tile) resolve(img *image.RGBA, n int, table [][256]uint64, g *ground) {
	inverse := uint32(1<<16) / uint32(n*n)
	for y := range t.h {
		out := img.Pix[img.PixOffset(t.x, t.y+y):]
		out = out[: 4*t.w : 4*t.w]
		for x := range t.w {
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
					c := g.at(t.x+x, t.y+y)
					red += uint32(c.R) * through / 255
					green += uint32(c.G) * through / 255
					blue += uint32(c.B) * through / 255
				}
			}
			out[4*x], out[4*x+1], out[4*x+2], out[4*x+3] = uint8(red), uint8(green), uint8(blue), uint8(alpha)
		}
	}
}
