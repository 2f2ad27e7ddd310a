package cloth

import "math"

// strands gives the yarn of a part whose axis is the vector (dx, dy), w. The
// variants of a part differ as one hand's stitches do.
func (p part) strands(dx, dy float64, variant uint8, thickness float64) []strand {
	length := math.Hypot(dx, dy)
	ex, ey := 0., 1.
	if length > 1e-6 {
		ex, ey = dx/length, dy/length
	}
	curves := p.curves(length, ex)
	out := make([]strand, len(curves))
	for i, c := range curves {
		s := strand{points: make([]point, len(c.path)), radius: radius * c.thick * thickness, from: c.from, to: c.to}
		seed := uint32(variant)*131 + uint32(i)*7 + uint32(p.form)*1000 + uint32(p.n)*29
		for j, q := range c.path {
			along := q.a + q.l*length
			h := hash(seed, uint32(j)*17+3)
			const jitter = .035
			s.points[j] = point{
				ey*q.c + ex*along + jitter*unevenness(h),
				-ex*q.c + ey*along + jitter*unevenness(h>>8),
				q.z + jitter/2*unevenness(h>>16),
			}
		}
		out[i] = s
	}
	return out
}

// curves gives the curves of a part on an axis of the given length, whose unit
// vector has the x component lean.
func (p part) curves(length, lean float64) []curve {
	switch p.form {
	case vee:
		return veeShape
	case bump:
		return bumpShape
	case tall:
		return append(p.wraps(wrapFront, 0), tallLegs...)
	case longTall:
		return append(p.wraps(wrapFront, .18), longLegs...)
	case longVee:
		return longVeeShape
	case tallBack:
		out := append([]curve(nil), tallBackLegs...)
		if p.n == halfWrap {
			return append(out, thirdLoop)
		}
		out = append(out, p.wraps(wrapBack, 0)...)
		// On a post that leans much the bar lies edge-on.
		if math.Abs(lean) < .3 {
			out = append(out, backBar)
		}
		return out
	case link:
		return []curve{{.75, .88, .86, linkHalf}, {.88, 1, .86, mirror(linkHalf, -.03)}}
	case chainLink:
		return []curve{{0, .5, .86, chainHalf}, {.5, 1, .86, mirror(chainHalf, -.03)}}
	case standing:
		wide := widen(chainHalf, 1.25)
		return []curve{{0, .5, 1.02, wide}, {.5, 1, 1.02, mirror(wide, -.03)}}
	case surfaceLink:
		return []curve{{0, .5, .86, shift(chainHalf, 0, 0, .1)}, {.5, 1, .86, mirror(chainHalf, .07)}}
	case raised:
		return append(p.wraps(wrapRaised, 0), raisedLegs...)
	case recessed:
		return recessedShape
	case leg:
		return append(p.wraps(wrapLeg, 0), legShape...)
	case coil:
		return append(p.wraps(wrapCoil, 0), coilLegs...)
	case drawnLoop:
		return p.hung()
	case freeLoop:
		return freeLoopShape
	case float:
		if p.n == leftward {
			return []curve{{floatShape[0].from, floatShape[0].to, floatShape[0].thick, mirror(floatShape[0].path, 0)}}
		}
		return floatShape
	case tail:
		return tailShape
	case wound:
		return woundShape
	}
	return p.gathered()
}

// halfWrap is the number of wraps that stands for a half double's: one, held
// higher up because nothing is pulled through after it.
const halfWrap = 255

// leftward is the n of a float that bows to the left of its axis.
const leftward = 1

// wraps repeats a wrap along the post.
func (p part) wraps(path []control, z float64) []curve {
	var out []curve
	for _, at := range wrapHeights(p.n) {
		out = append(out, curve{0, .15, .98, shift(path, 0, at, z)})
	}
	return out
}

// hung gives a loop left hanging, no two of three alike.
func (p part) hung() []curve {
	longer := [...]float64{1, .84, 1.13}[p.n%3]
	aside := [...]float64{-.05, .07, 0}[p.n%3]
	c := drawnLoopShape
	c.path = append([]control(nil), c.path...)
	for i := range c.path {
		if q := &c.path[i]; q.a < 0 {
			q.a, q.c = q.a*longer, q.c+aside*q.a
		}
	}
	return []curve{c}
}

// wrapHeights says where along a post its wraps lie: the first hoop is pinched
// just below the middle, two or more share the middle of the post.
func wrapHeights(n uint8) []float64 {
	switch n {
	case 0:
		return nil
	case 1:
		return []float64{.47}
	case halfWrap:
		return []float64{.60}
	}
	at := make([]float64, n)
	spread := min(.60, .24*float64(n-1))
	for i := range at {
		at[i] = .48 + spread*(float64(i)/float64(n-1)-.5)
	}
	return at
}

// gathered gives p.n legs, bowed apart and drawn together at the top.
func (p part) gathered() []curve {
	g := gatherings[p.form]
	n := min(int(max(2, p.n)), g.seen)
	out := make([]curve, 0, n+1)
	for i := range n {
		t := 2*float64(i)/float64(n-1) - 1
		full := math.Sqrt(1 - .75*t*t) // the outer legs lie further back
		path := make([]control, len(g.profile))
		for j, q := range g.profile {
			path[j] = control{t * (g.width*q.c + .03), q.a, q.l, g.bulge * full * q.z}
		}
		share := .7 / float64(n)
		out = append(out, curve{.1 + share*float64(i), .1 + share*float64(i+1), 1.15, path})
		if g.wrapped {
			at := .46 + .05*float64(i%2)
			wrap := shift(wrapGathered, 0, at, g.bulge*full)
			for j := range wrap {
				wrap[j].c += t * g.width
			}
			out = append(out, curve{.1 + share*float64(i), .1 + share*float64(i+1), .95, wrap})
		}
	}
	return append(out, curve{.8, .95, 1, neck})
}
