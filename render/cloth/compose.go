package cloth

import (
	"context"
	"image"
	"math"

	"strandway/chart/geom"
	"strandway/render/tiles"
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

// pixels are those of the view, counted from the cloth's origin to the right and downward.
func (v View) pixels() image.Rectangle {
	w, h := v.size()
	at := image.Pt(int(math.Round(v.Box.Min.X*v.PixelsPerW)), int(math.Round(-v.Box.Max.Y*v.PixelsPerW)))
	return image.Rectangle{Min: at, Max: at.Add(image.Pt(w, h))}
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
	x0, y0, w, h int // samples
	z            []int16
	light        []uint8
	row          []uint16 // row of the colour table; groundRow where there is no yarn
	shader       shader
}

// groundRow is the row of the colour table that stands for the ground.
const groundRow = 0

// reset makes the field empty at a new place.
func (f *field) reset(r image.Rectangle) {
	f.x0, f.y0, f.w, f.h = r.Min.X, r.Min.Y, r.Dx(), r.Dy()
	n := f.w * f.h
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

// composition is one drawing of a cloth: its sprites and which tiles they touch. Samples are
// counted from the cloth's origin, to the right and downward.
type composition struct {
	cloth   *Cloth
	sprites []*sprite       // by key index; nil for those out of view
	scale   float64         // samples per w
	n       int             // samples per pixel side
	margin  int             // samples round a tile that its shading looks at
	view    image.Rectangle // pixels
	grid    *tiles.Grid     // of samples
}

// compose gathers the sprites in view and deals them out to tiles.
func (c *Cloth) compose(ctx context.Context, v View) (*composition, error) {
	m := &composition{cloth: c, n: v.samples(), view: v.pixels()}
	m.scale = v.PixelsPerW * float64(m.n)
	m.margin = (int(shadeReach*m.scale) + 2) &^ 1
	m.grid = tiles.New(image.Rectangle{Min: m.view.Min.Mul(m.n), Max: m.view.Max.Mul(m.n)}, max(16, tileSize/m.n)*m.n)

	seen := make([]bool, len(c.keys))
	near := m.box(m.grid.Bounds()).Grow(.5)
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
		if m.sprites[c.instances[i].key] != nil {
			m.grid.Deal(int32(i), m.reach(int32(i)))
		}
	}
	return m, nil
}

// box is where a rectangle of samples lies on the cloth, w.
func (m *composition) box(r image.Rectangle) geom.Box {
	return geom.Box{
		Min: geom.Point{X: float64(r.Min.X) / m.scale, Y: -float64(r.Max.Y) / m.scale},
		Max: geom.Point{X: float64(r.Max.X) / m.scale, Y: -float64(r.Min.Y) / m.scale},
	}
}

// place is where the upper left sample of an instance's sprite falls.
func (m *composition) place(in *instance, s *sprite) (x, y int) {
	return int(math.Floor(float64(in.x)*m.scale)) - s.ox, int(math.Floor(-float64(in.y)*m.scale)) - s.oy
}

// reach are the samples that an instance covers or shades.
func (m *composition) reach(id int32) image.Rectangle {
	in := &m.cloth.instances[id]
	s := m.sprites[in.key]
	x, y := m.place(in, s)
	return image.Rect(x-m.margin, y-m.margin, x+s.w+m.margin, y+s.h+m.margin)
}

// alike reports whether an instance looks in its place as one of another composition does.
func (m *composition) alike(id int32, other *composition, otherID int32) bool {
	a, b := &m.cloth.instances[id], &other.cloth.instances[otherID]
	return a.x == b.x && a.y == b.y && a.z == b.z && a.seed == b.seed && a.yarn == b.yarn &&
		m.sprites[a.key] == other.sprites[b.key] &&
		(m.cloth.looks[a.yarn].look != Variegated || a.from == b.from && a.length == b.length)
}

// fill composes and shades samples r, which lie in tile t, in f, and gives them as a tile that lasts
// until f is filled again.
func (m *composition) fill(f *field, t int, r image.Rectangle) tile {
	f.reset(r.Inset(-m.margin))
	for _, id := range m.grid.Things(t) {
		in := &m.cloth.instances[id]
		s := m.sprites[in.key]
		px, py := m.place(in, s)
		f.lay(s, px-f.x0, py-f.y0, in, m.cloth.looks[in.yarn])
	}
	f.shader.shade(f, m.scale, m.cloth.table)
	return tile{Rectangle: m.pixels(r), light: f.light, row: f.row, stride: f.w, at: m.margin*f.w + m.margin}
}

// lay puts a sprite into the field where it lies above what is there.
func (f *field) lay(s *sprite, px, py int, in *instance, look look) {
	if px >= f.w || py >= f.h || px+s.w <= 0 || py+s.h <= 0 {
		return
	}
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
