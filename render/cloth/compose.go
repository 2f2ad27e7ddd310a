package cloth

import (
	"context"
	"math"

	"strandway/chart/geom"
)

// View says what of a cloth is drawn and how large.
type View struct {
	Box        geom.Box // w
	PixelsPerW float64
}

// WholeView is the view of the whole cloth on a picture so many pixels wide.
func (c *Cloth) WholeView(width int) View {
	box := c.box.Grow(Margin)
	return View{Box: box, PixelsPerW: float64(width) / box.Width()}
}

// PixelsPerMM is the scale of the picture, for its size in print, where one
// single crochet is so many mm wide; 0 stands for the usual width.
func (v View) PixelsPerMM(stitch float64) float64 { return v.PixelsPerW / stitchMM(stitch) }

// size is the picture's size in pixels.
func (v View) size() (w, h int) {
	return max(1, int(math.Round(v.Box.Width()*v.PixelsPerW))), max(1, int(math.Round(v.Box.Height()*v.PixelsPerW)))
}

// samples is how many samples make one pixel, across and down: two, and more
// when stitches are so small that their rows would beat with the pixels.
func (v View) samples() int {
	const finest = 8 // pixels per w below which a stitch is drawn larger and boxed down
	if v.PixelsPerW >= finest {
		return 2
	}
	return min(16, 2*int(math.Ceil(finest/max(v.PixelsPerW, .01))))
}

const (
	tileSize = 384 // samples a side
	zEmpty   = math.MinInt16
)

// field is a rectangle of samples being composed.
type field struct {
	x0, y0, w, h int // in samples of the whole picture
	z            []int16
	light        []uint8
	row          []uint16 // row of the colour table; groundRow where there is no yarn
	shader       shader
}

// groundRow is the row of the colour table that stands for the ground.
const groundRow = 0

// reset makes the field empty at a new place.
func (f *field) reset(x0, y0, w, h int) {
	f.x0, f.y0, f.w, f.h = x0, y0, w, h
	n := w * h
	if cap(f.z) < n {
		f.z, f.light, f.row = make([]int16, n), make([]uint8, n), make([]uint16, n)
	}
	f.z, f.light, f.row = f.z[:n], f.light[:n], f.row[:n]
	for i := range f.z {
		f.z[i] = zEmpty
	}
	for i := range f.light {
		f.light[i] = fullLight
	}
	clear(f.row)
}

// composition is one drawing of a cloth: its sprites and which tiles they touch.
type composition struct {
	cloth   *Cloth
	sprites []*sprite // by key index; nil for those out of view
	scale   float64   // samples per w
	n       int       // samples per pixel side
	w, h    int       // pixels
	margin  int       // samples round a tile that its shading looks at
	tile    int       // pixels a side
	columns int
	tiles   [][]int32 // instances by tile
	left    float64   // w
	top     float64   // w
}

// compose gathers the sprites in view and deals them out to tiles.
func (c *Cloth) compose(ctx context.Context, v View) (*composition, error) {
	m := &composition{cloth: c, n: v.samples(), left: v.Box.Min.X, top: v.Box.Max.Y}
	m.scale = v.PixelsPerW * float64(m.n)
	m.w, m.h = v.size()
	m.margin = (int(shadeReach*m.scale) + 2) &^ 1
	m.tile = max(16, tileSize/m.n)
	m.columns = (m.w + m.tile - 1) / m.tile
	m.tiles = make([][]int32, m.columns*((m.h+m.tile-1)/m.tile))

	seen := make([]bool, len(c.keys))
	near := v.Box.Grow(.5)
	for i := range c.instances {
		if in := &c.instances[i]; !seen[in.key] && near.Overlaps(c.reach(in)) {
			seen[in.key] = true
		}
	}
	var wanted []key
	for k, ok := range seen {
		if ok {
			wanted = append(wanted, c.keys[k])
		}
	}
	drawn, err := c.sprites.get(ctx, wanted, m.scale)
	if err != nil {
		return nil, err
	}
	m.sprites = make([]*sprite, len(c.keys))
	for k, ok := range seen {
		if ok {
			m.sprites[k], drawn = drawn[0], drawn[1:]
		}
	}
	for i := range c.instances {
		m.deal(int32(i))
	}
	return m, nil
}

// deal puts an instance on the lists of the tiles it touches.
func (m *composition) deal(id int32) {
	in := &m.cloth.instances[id]
	s := m.sprites[in.key]
	if s == nil {
		return
	}
	x, y := m.place(in, s)
	side := m.tile * m.n
	rows := len(m.tiles) / m.columns
	for ty := max(0, floorDiv(y-m.margin, side)); ty <= min(rows-1, floorDiv(y+s.h+m.margin, side)); ty++ {
		for tx := max(0, floorDiv(x-m.margin, side)); tx <= min(m.columns-1, floorDiv(x+s.w+m.margin, side)); tx++ {
			t := &m.tiles[ty*m.columns+tx]
			*t = append(*t, id)
		}
	}
}

// place is where the upper left sample of an instance's sprite falls.
func (m *composition) place(in *instance, s *sprite) (x, y int) {
	return int(math.Floor((float64(in.x)-m.left)*m.scale)) - s.ox, int(math.Floor((m.top-float64(in.y))*m.scale)) - s.oy
}

func floorDiv(a, b int) int {
	if a < 0 {
		return -((b - 1 - a) / b)
	}
	return a / b
}

// fill composes and shades tile t in f. The tile's own samples lie margin
// inside the field; it is w by h pixels at pixel (x, y) of the picture.
func (m *composition) fill(f *field, t int) (x, y, w, h int) {
	x, y = t%m.columns*m.tile, t/m.columns*m.tile
	w, h = min(m.tile, m.w-x), min(m.tile, m.h-y)
	f.reset(x*m.n-m.margin, y*m.n-m.margin, w*m.n+2*m.margin, h*m.n+2*m.margin)
	for _, id := range m.tiles[t] {
		in := &m.cloth.instances[id]
		s := m.sprites[in.key]
		px, py := m.place(in, s)
		f.lay(s, px-f.x0, py-f.y0, in, m.cloth.looks[in.yarn])
	}
	f.shader.shade(f, m.scale, m.cloth.table)
	return x, y, w, h
}

// lay puts a sprite into the field where it lies above what is there.
func (f *field) lay(s *sprite, px, py int, in *instance, look look) {
	paint := look.painter(in)
	for y := max(0, -py); y < s.h && y+py < f.h; y++ {
		from := max(int(s.spans[y].from), -px)
		to := min(int(s.spans[y].to), f.w-px)
		if from >= to {
			continue
		}
		texels := s.texels[y*s.w+from : y*s.w+to]
		at := (y+py)*f.w + px + from
		z := f.z[at : at+len(texels)]
		lights := f.light[at:][:len(z)]
		rows := f.row[at:][:len(z)]
		for i, t := range texels {
			d := int16(t.z) + in.z
			if t.z == hole || d <= z[i] {
				continue
			}
			z[i] = d
			lights[i] = uint8(uint16(t.light) * paint.dim >> 8)
			rows[i] = paint.row(t)
		}
	}
}
