package cloth

import "math"

// Shape is how a yarn is built. The zero Shape is a smooth four-ply yarn of the
// thickness that the gauge is worked in.
type Shape struct {
	Plies     int     // 0 means 4
	Twist     Twist   // which way the plies are twisted together
	Thickness float64 // as a factor of the gauge's yarn; 0 means 1
	Fuzz      float64 // stray fibres as a factor of a smooth wool's; 0 means 1
	Strands   int     // 2 when two strands are held together; 0 means 1
}

// Twist is the direction of a yarn's ply.
type Twist uint8

const (
	ZTwist Twist = iota
	STwist
)

// thickness is the yarn's, as a factor of the gauge's.
func (s Shape) thickness() float64 {
	if s.Thickness <= 0 {
		return 1
	}
	return max(.4, min(1.8, s.Thickness))
}

// hair is how long stray fibres stand off, as a factor of a smooth wool's.
func (s Shape) hair() float64 { return max(1, min(3, math.Sqrt(s.Fuzz))) }

// surface is what is worked out once for all samples of a yarn.
type surface struct {
	plies    float64
	turn     float64 // turns of the ply per w of a yarn of radius 1
	hand     float64 // +1 Z, -1 S
	fuzz     float64
	strands  int
	soft     float64       // depth of the grooves between plies, 0 to 1
	cos, sin float64       // of the angle at which plies lie
	groove   [257]float64  // light by place across a ply, 0 middle to 1 edge
	rim      [257]float64  // light by place across the strand
	angle    [1025]float64 // asin from -1 to 1
}

// Groove depth and pitch (length of one turn in yarn diameters) of usual yarns by plies.
func (s Shape) surface() surface {
	u := surface{plies: 4, hand: 1, fuzz: 1, soft: .45}
	pitch := 3.6
	switch {
	case s.Plies == 1:
		u.plies, pitch, u.soft = 1, 6, .12
	case s.Plies == 2:
		u.plies, pitch, u.soft = 2, 2.6, .75
	case s.Plies == 3:
		u.plies, pitch, u.soft = 3, 3, .6
	case s.Plies > 4:
		u.plies, pitch, u.soft = float64(min(s.Plies, 12)), 4, .35
	}
	if s.Strands > 1 { // they wind loosely round one another
		u.strands, u.plies, pitch, u.soft = 2, 2, 3, 1
	}
	if s.Twist == STwist {
		u.hand = -1
	}
	if s.Fuzz > 0 {
		u.fuzz = s.Fuzz
	}
	u.turn = 1 / (2 * pitch)
	u.sin, u.cos = math.Sincos(math.Atan(math.Pi / pitch))
	for i := range u.groove {
		e := float64(i) / 256
		u.groove[i] = 1 - .34*u.soft + .34*u.soft*math.Pow(1-e*e, .35)
		u.rim[i] = .62 + .38*math.Pow(1-e*e, .3)
	}
	for i := range u.angle {
		u.angle[i] = math.Asin(float64(i)/512 - 1)
	}
	return u
}

// ply gives the place across the ply that shows at angle th round the strand,
// -1 to 1, and the running number of the ply.
func (u *surface) ply(th, s, radius float64, seed uint32) (e, q float64) {
	q = u.plies*(th/(2*math.Pi)+u.hand*s*u.turn/radius) + float64(hash(seed, 5)&1023)/1024
	return 2*(q-math.Floor(q)) - 1, q
}

// frayed reports whether the outline has a gap at v: plies scallop it, fibres roughen it.
func (u *surface) frayed(v, s, radius float64, seed uint32) bool {
	e, _ := u.ply(u.angle[int((v+1)*512)], s, radius, seed)
	return math.Abs(v) > 1-.05*e*e-.10*noise(s*16, v*3, seed+5)
}

// texel is the look of the yarn where a sample touches it.
func (u *surface) texel(t *touch, g *segment, st *strand, length float64, seed uint32) texel {
	v, s := float64(t.v), float64(t.s)
	round := math.Sqrt(1 - v*v)
	th := u.angle[int((v+1)*512)]
	e, q := u.ply(th, s, st.radius, seed)

	// Direction of the strand here, and the normal of its round surface, tilted
	// by its rise and by the roundness of the ply.
	part := (s - g.s) / g.ds
	tx, ty := g.tax+(g.tbx-g.tax)*part, g.tay+(g.tby-g.tay)*part
	ax, ay := -ty, tx
	steep := 1 / math.Sqrt(1+g.slope*g.slope)
	nx := ax*v - tx*g.slope*steep*round
	ny := ay*v - ty*g.slope*steep*round
	nz := round * steep
	k := e * .55 * u.soft
	nx += k * (ax*u.cos - tx*u.sin*u.hand)
	ny += k * (ay*u.cos - ty*u.sin*u.hand)
	l := 1 / math.Sqrt(nx*nx+ny*ny+nz*nz)
	nx, ny, nz = nx*l, ny*l, nz*l

	facing := max(0, .85*(nx*light[0]+ny*light[1]+nz*light[2])+.15)
	// Fibres run along the ply.
	fibre := q*3.1 + th*2
	coarse := noise(fibre*2.2, s*5, seed) - .5
	fine := noise(fibre*4.7, s*14, seed+9) - .5
	lum := (.32 + .68*facing) * u.groove[int(math.Abs(e)*256)] * u.rim[int(math.Abs(v)*256)] * (1 + .24*coarse + .18*fine)
	if gloss := .5*(nx*light[0]+ny*light[1]) + .93*nz; gloss > .7 {
		g2 := gloss * gloss
		g4 := g2 * g2
		lum += .05 * g4 * g4 * g4 * g2
	}
	fleck := uint8(int(math.Floor(q)) & 1)
	if u.strands < 2 {
		fleck = nep(s, th, st.radius, seed)
	}
	return texel{
		z:     depth8(t.z),
		light: uint8(max(1, min(255, lum*230))),
		along: uint8(255 * (st.from + (st.to-st.from)*min(1, s/max(length, 1e-6)))),
		fibre: uint8(255*noise(fibre*1.6+40, s*2.6, seed+77))&0xf0 | fleck,
	}
}

// nep gives the number of the tweed nep at a place on the strand, 0 for none:
// sparse flecks that lie in the cells of a grid round the yarn.
func nep(s, th, radius float64, seed uint32) uint8 {
	const cell = .22
	a, r := s/cell, (th+2)*radius/cell
	ai, ri := math.Floor(a), math.Floor(r)
	h := hash(uint32(int32(ai))*31+seed, uint32(int32(ri))+7)
	if h&3 == 0 {
		return 0
	}
	x := a - ai - .3 - .4*float64(h>>8&255)/255
	y := r - ri - .3 - .4*float64(h>>16&255)/255
	const ragged = .035
	least := .012 + .045*float64(h>>4&15)/15 // some are specks, some tufts
	long := .35 + .6*float64(h>>2&3)/3
	if far := long*x*x + y*y; far > least+ragged || far > least+ragged*(1.6*noise(a*9, r*9, seed)-.3) {
		return 0
	}
	return uint8(1 + (h>>24)%15)
}
