package cloth

import "math"

// radius is half the thickness of the yarn that the gauge is worked in, w.
const radius = .195

// point is a point in w: x to the right, y up, z toward the viewer.
type point struct{ x, y, z float64 }

// strand is a visible length of yarn: a smooth curve through its points.
type strand struct {
	points   []point
	radius   float64 // w
	from, to float64 // which part of the stitch's yarn it is, 0 to 1
}

// sample follows the curve in steps of about step w.
func (s *strand) sample(step float64) []point {
	p := s.points
	last := len(p) - 1
	var out []point
	for i := range last {
		b, c := p[i], p[i+1]
		a, d := b.mirroredAt(c), c.mirroredAt(b)
		if i > 0 {
			a = p[i-1]
		}
		if i+2 <= last {
			d = p[i+2]
		}
		n := max(3, int(math.Hypot(c.x-b.x, c.y-b.y)/step))
		for j := range n {
			t := float64(j) / float64(n)
			out = append(out, point{
				spline(a.x, b.x, c.x, d.x, t),
				spline(a.y, b.y, c.y, d.y, t),
				spline(a.z, b.z, c.z, d.z, t),
			})
		}
	}
	return append(out, p[last])
}

// mirroredAt carries q beyond p, as far on the other side: the curve runs out straight.
func (p point) mirroredAt(q point) point {
	return point{2*p.x - q.x, 2*p.y - q.y, 2*p.z - q.z}
}

// spline is the Catmull-Rom curve from b to c.
func spline(a, b, c, d, t float64) float64 {
	return .5 * (2*b + (c-a)*t + (2*a-5*b+4*c-d)*t*t + (3*b-a-3*c+d)*t*t*t)
}

// hash scatters two numbers; the same two always give the same.
func hash(a, b uint32) uint32 {
	h := a*0x9E3779B1 ^ b*0x85EBCA77
	h ^= h >> 15
	h *= 0x2C1B3C6D
	h ^= h >> 12
	h *= 0x297A2D39
	return h ^ h>>15
}

// unevenness is a hand's deviation, from -1/2 to 1/2, out of eight bits of a hash.
func unevenness(h uint32) float64 { return float64(h&255)/255 - .5 }

// lattice holds random numbers from 0 to 1 for noise.
var lattice = func() (t [256 * 256]float32) {
	for i := range t {
		t[i] = float32(hash(uint32(i), 0x51A7)&0xffff) / 0xffff
	}
	return t
}()

// noise is smooth noise from 0 to 1 that changes over a distance of about 1.
func noise(x, y float64, seed uint32) float64 {
	x += float64(seed & 255)
	y += float64(seed >> 8 & 255)
	xf, yf := math.Floor(x), math.Floor(y)
	fx, fy := float32(x-xf), float32(y-yf)
	fx, fy = fx*fx*(3-2*fx), fy*fy*(3-2*fy)
	x0, y0 := uint8(int(xf)), uint8(int(yf))
	x1, y1 := x0+1, y0+1
	at := func(x, y uint8) float32 { return lattice[int(y)<<8|int(x)] }
	a := at(x0, y0) + (at(x1, y0)-at(x0, y0))*fx
	b := at(x0, y1) + (at(x1, y1)-at(x0, y1))*fx
	return float64(a + (b-a)*fy)
}
