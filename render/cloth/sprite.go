package cloth

import "math"

// texel is one sample of a sprite. It has no colour: the same sprite serves
// every yarn of its shape.
type texel struct {
	z     int8  // toward the viewer, 1/64 w; hole where there is no yarn
	light uint8 // see colour.Ramp
	along uint8 // place along the stitch's yarn
	fibre uint8 // high nibble: shade of heather; low nibble: number of a tweed nep, 0 none, or which of two strands
}

const (
	hole   = -128
	depths = 64 // steps of z in one w
)

// sprite is a part of a stitch, drawn once.
type sprite struct {
	w, h   int
	ox, oy int // where the part's base lies in it
	texels []texel
	spans  []span // of each line
}

// span is where a line of a sprite begins and ends.
type span struct{ from, to int16 }

// light falls from the upper left, toward the viewer; y is downward here.
var light = func() [3]float64 {
	x, y, z := -.42, -.58, .70
	l := math.Sqrt(x*x + y*y + z*z)
	return [3]float64{x / l, y / l, z / l}
}()

// segment is a short straight piece of a strand, in samples with y downward. It
// ends at the lines that halve its bends, so that neighbours meet without gap
// or overlap.
type segment struct {
	ax, ay, az float64
	bx, by, bz float64
	tax, tay   float64 // direction at its beginning
	tbx, tby   float64 // and at its end
	nx, ny     float64 // across
	slope      float64 // rise toward the viewer over its length in the plane
	s, ds      float64 // place along the strand and length, w
	strand     int32
}

// touch is where a sample meets a strand.
type touch struct {
	z       float32
	v, s    float32 // across, -1 to 1; along, w
	segment int32   // -1 for none
}

// artist draws sprites; it keeps its scratch from one to the next.
type artist struct {
	scale    float64 // samples per w
	shape    Shape
	surface  surface
	segments []segment
	touches  []touch
	w, h     int
	ox, oy   int
}

func newArtist(scale float64, shape Shape) *artist {
	return &artist{scale: scale, shape: shape, surface: shape.surface()}
}

// draw draws the strands of a part.
func (a *artist) draw(strands []strand, seed uint32) *sprite {
	a.frame(strands)
	a.segments = a.segments[:0]
	lengths := make([]float64, len(strands))
	for i := range strands {
		lengths[i] = a.cut(&strands[i], int32(i))
	}
	for i := range a.segments {
		g := &a.segments[i]
		a.trace(int32(i), g, &strands[g.strand], lengths[g.strand], seed*31+uint32(g.strand)*977)
	}
	s := &sprite{w: a.w, h: a.h, ox: a.ox, oy: a.oy, texels: make([]texel, a.w*a.h)}
	for k := range a.touches {
		t := &a.touches[k]
		if t.segment < 0 {
			s.texels[k].z = hole
			continue
		}
		g := &a.segments[t.segment]
		s.texels[k] = a.surface.texel(t, g, &strands[g.strand], lengths[g.strand], seed*31+uint32(g.strand)*977)
	}
	for i := range strands {
		a.hairs(s, &strands[i], int32(i), lengths[i], seed*31+uint32(i)*977)
	}
	s.span()
	return s
}

// frame finds the sprite's size and clears the scratch.
func (a *artist) frame(strands []strand) {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, s := range strands {
		r := 1.6*s.radius + .14*(a.shape.hair()-1)
		for _, p := range s.points {
			x0, x1 = min(x0, p.x-r), max(x1, p.x+r)
			y0, y1 = min(y0, -p.y-r), max(y1, -p.y+r)
		}
	}
	a.ox, a.oy = int(math.Ceil(-x0*a.scale))+1, int(math.Ceil(-y0*a.scale))+1
	a.w, a.h = a.ox+int(math.Ceil(x1*a.scale))+2, a.oy+int(math.Ceil(y1*a.scale))+2
	if n := a.w * a.h; cap(a.touches) < n {
		a.touches = make([]touch, n)
	}
	a.touches = a.touches[:a.w*a.h]
	for i := range a.touches {
		a.touches[i] = touch{z: -9, segment: -1}
	}
}

// cut turns a strand into segments and returns its length.
func (a *artist) cut(s *strand, id int32) float64 {
	// Bends must stay smooth at large scales, and cheap at small ones.
	pts := s.sample(max(.03, min(.07, 2.5/a.scale)))
	first := len(a.segments)
	along := 0.
	for i := range len(pts) - 1 {
		p, q := pts[i], pts[i+1]
		flat := math.Hypot(q.x-p.x, q.y-p.y)
		if flat < 1e-6 {
			continue
		}
		g := segment{
			ax: p.x*a.scale + float64(a.ox), ay: -p.y*a.scale + float64(a.oy), az: p.z,
			bx: q.x*a.scale + float64(a.ox), by: -q.y*a.scale + float64(a.oy), bz: q.z,
			s: along, slope: (q.z - p.z) / flat, strand: id,
		}
		tx, ty := (q.x-p.x)/flat, -(q.y-p.y)/flat
		g.nx, g.ny = -ty, tx
		g.tax, g.tay, g.tbx, g.tby = tx, ty, tx, ty
		g.ds = flat * math.Sqrt(1+g.slope*g.slope)
		along += g.ds
		a.segments = append(a.segments, g)
	}
	for i := first + 1; i < len(a.segments); i++ {
		p, q := &a.segments[i-1], &a.segments[i]
		tx, ty := p.tbx+q.tax, p.tby+q.tay
		if l := math.Hypot(tx, ty); l > .2 {
			tx, ty = tx/l, ty/l
			p.tbx, p.tby, q.tax, q.tay = tx, ty, tx, ty
		}
	}
	return along
}

// trace marks the samples that a segment covers and that lie nearest to the viewer.
func (a *artist) trace(id int32, g *segment, s *strand, length float64, seed uint32) {
	r := s.radius * a.scale
	y0, y1 := max(0, int(min(g.ay, g.by)-r)), min(a.h-1, int(max(g.ay, g.by)+r)+1)
	for y := y0; y <= y1; y++ {
		line := a.touches[y*a.w : (y+1)*a.w]
		x0, x1 := g.extent(float64(y)+.5, r, a.w)
		for x := x0; x <= x1; x++ {
			px, py := float64(x)+.5, float64(y)+.5
			da := (px-g.ax)*g.tax + (py-g.ay)*g.tay
			if da < 0 {
				continue
			}
			db := (px-g.bx)*g.tbx + (py-g.by)*g.tby
			if db >= 0 {
				continue
			}
			t := da / (da - db)
			along := g.s + g.ds*t
			v := ((px-g.ax-(g.bx-g.ax)*t)*g.nx + (py-g.ay-(g.by-g.ay)*t)*g.ny) / r
			if e := min(along, length-along); e < s.radius { // round ends
				q := 1 - max(e, .02)/s.radius
				v /= math.Sqrt(1 - q*q)
			}
			if v <= -1 || v >= 1 {
				continue
			}
			z := float32(g.az + (g.bz-g.az)*t + s.radius*math.Sqrt(1-v*v))
			hit := &line[x]
			if z <= hit.z {
				continue
			}
			if math.Abs(v) > .88 && a.surface.frayed(v, along, s.radius, seed) {
				continue
			}
			*hit = touch{z, float32(v), float32(along), id}
		}
	}
}

// extent is where line y, in samples, may meet a segment of radius r.
func (g *segment) extent(y, r float64, width int) (x0, x1 int) {
	lo, hi := min(g.ax, g.bx)-r, max(g.ax, g.bx)+r
	// Keep the x where k*x + c >= 0.
	keep := func(k, c float64) {
		switch {
		case k > 1e-9:
			lo = max(lo, -c/k)
		case k < -1e-9:
			hi = min(hi, -c/k)
		case c < 0:
			hi = lo - 2
		}
	}
	keep(g.tax, (y-g.ay)*g.tay-g.ax*g.tax)
	keep(-g.tbx, g.bx*g.tbx-(y-g.by)*g.tby)
	across := (y-g.ay)*g.ny - g.ax*g.nx
	const bend = 1.3 // on the outside of a bend the strand is that much wider
	keep(-g.nx, bend*r-across)
	keep(g.nx, bend*r+across)
	return max(0, int(lo)-1), min(width-1, int(hi)+1)
}

// hairs adds the stray fibres that stand off a strand's outline.
func (a *artist) hairs(s *sprite, st *strand, id int32, length float64, seed uint32) {
	// A hair is one sample wide; fewer of them at small scales keep the halo as thin.
	count := int(length * 16 * a.surface.fuzz * min(1, a.scale/100))
	first, last := -1, -1
	for i := range a.segments {
		if a.segments[i].strand == id {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if last-first < 3 {
		return
	}
	for n := range count {
		h := hash(seed, uint32(n)*3+100)
		g := &a.segments[first+1+int(h%uint32(last-first-1))]
		// A hair on a tight bend or on yarn that dives looks like a thorn.
		if bend := g.tax*g.tbx + g.tay*g.tby; bend < .985 || g.az < .06 || math.Abs(g.slope) > 1 {
			continue
		}
		side := 1.
		if h>>10&1 == 1 {
			side = -1
		}
		sin, cos := math.Sincos(side * (.12 + .55*float64(h>>11&255)/255))
		dx, dy := g.tax, g.tay
		if h>>20&1 == 1 {
			dx, dy, sin = -dx, -dy, -sin
		}
		dx, dy = dx*cos-dy*sin, dx*sin+dy*cos
		x, y := g.ax+side*g.nx*st.radius*.9*a.scale, g.ay+side*g.ny*st.radius*.9*a.scale
		curl := unevenness(hash(seed, h)) * 9 / a.scale
		cs, cc := math.Sincos(curl)
		z := float32(g.az + .16*(a.shape.hair()-1)) // long fibres lie over the neighbours
		steps := int((.07+.16*float64(h>>21&255)/255)*a.shape.hair()*a.scale) + 1
		for range steps {
			k := int(y)*s.w + int(x)
			if x < 0 || y < 0 || int(x) >= s.w || int(y) >= s.h {
				break
			}
			if s.texels[k].z == hole {
				s.texels[k] = texel{
					z:     depth8(z),
					light: uint8(140 + h%50),
					along: uint8(255 * (st.from + (st.to-st.from)*.5)),
					fibre: uint8(h) & 0xf0,
				}
			}
			x, y = x+dx, y+dy
			dx, dy = dx*cc-dy*cs, dx*cs+dy*cc
		}
	}
}

// span finds where the lines begin and end.
func (s *sprite) span() {
	s.spans = make([]span, s.h)
	for y := range s.spans {
		line := s.texels[y*s.w : (y+1)*s.w]
		from, to := 0, len(line)
		for from < to && line[from].z == hole {
			from++
		}
		for to > from && line[to-1].z == hole {
			to--
		}
		s.spans[y] = span{int16(from), int16(to)}
	}
}

// size is the memory the sprite takes, bytes.
func (s *sprite) size() int { return 4*len(s.texels) + 4*len(s.spans) }

func depth8(z float32) int8 { return int8(max(-127, min(127, z*depths))) }
