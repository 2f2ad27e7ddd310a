package cloth

import (
	"strings"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/stitch"
)

// figure is what a kind of stitch shows beside its post, read from how the hook
// moves to make it.
type figure struct {
	links int  // loops drawn up in the stitch before, which lie across the post instead of wraps
	loop  bool // a long loop hangs on the side away from its maker
	chain bool // it makes its own foundation, a chain along its foot
	arms  int  // posts that branch off its stem
	fork  bool // its legs meet half-way up, and one stem goes on from there
	inVee bool // it stands between the legs of the stitch below
	scale int  // whole stitches that lie on the face like a scale
}

func figureOf(k *stitch.Kind) figure {
	var f figure
	legs, closing := 0, 0 // pull-throughs after the last leg
	for _, m := range k.Movements() {
		switch {
		case m.Do == "st":
			f.scale++
		case m.Do == "drop": // gathered, as in a popcorn
			f.scale = 0
		case m.Do == "loop round the finger":
			f.loop = true
		case m.Do == "off":
			closing += min(1, legs)
		case m.Do != "ins":
		case strings.HasPrefix(m.In, "bar of"):
			f.links++
		case m.In == "between the legs":
			f.inVee = true
		case strings.HasPrefix(m.In, "foot of"):
			f.chain = true
		case m.In == "middle of the stem" || m.In == "crossing":
			f.arms++
		default:
			legs++
			closing = 0
		}
	}
	closing -= 2 * f.arms
	f.fork = legs > 1 && closing > 3
	return f
}

// figureOf is the figure of the kind of a stitch.
func (m *maker) figureOf(id int32) *figure {
	k := int(m.fabric.Stitches[id].Kind)
	if k >= len(m.figures) {
		return &figure{}
	}
	return &m.figures[k]
}

// extras adds what a stitch shows beside its post.
func (m *maker) extras(f *figure, foot, top geom.Point, z float64, front bool) {
	up := top.Sub(foot).Unit()
	for i := range f.links {
		at := foot.Lerp(top, float64(i+1)/float64(f.links+1))
		m.add(part{form: freeLoop}, at, at.Add(up), z-.04)
	}
	if f.loop && !front {
		m.reaches(foot.Sub(up.Mul(1.9)))
		m.add(part{drawnLoop, uint8(hash(uint32(len(m.placed)), 3) % 3)}, foot, top, z+.1)
	}
	if f.chain {
		half := up.Perp().Mul(.5)
		m.add(part{form: chainLink}, foot.Sub(half), foot.Add(half), -.1)
	}
}

// post adds a tall stitch's post, with its wraps unless links lie in their place.
func (m *maker) post(k *stitch.Kind, f *figure, foot, top geom.Point, z float64, front bool) {
	p := part{tallBack, wrapsOf(k)}
	if front {
		p.form = tall
	}
	if f.links > 0 {
		p.n = 0
	}
	m.add(p, foot, top, z)
}

// drawnTogether adds the legs of a decrease, which meet at its top or where one
// stem goes on.
func (m *maker) drawnTogether(id int32, k *stitch.Kind, f *figure, legs []layout.Leg, z float64, front bool) {
	top := m.top(id)
	meet, wraps := top, wrapsOf(k)
	if f.fork {
		meet, wraps = m.foot(id, &legs[0]).Lerp(m.foot(id, &legs[len(legs)-1]), .5).Lerp(top, .48), 1
	}
	for i := range legs {
		a := m.foot(id, &legs[i])
		m.add(part{leg, wraps}, a, meet.Lerp(a, .04), z+.03*float64(i))
	}
	switch {
	case f.arms > 0:
		m.branch(id, k, f, meet, top, z, front)
	case f.fork:
		m.post(k, f, meet, top, z, front)
	}
}

// branch adds a stem and the posts that branch off it, side by side in working order.
func (m *maker) branch(id int32, k *stitch.Kind, f *figure, foot, top geom.Point, z float64, front bool) {
	way := m.along(id)
	tip := func(i int) geom.Point { return top.Add(way.Mul(.34 * (2*float64(i)/float64(f.arms) - 1))) }
	m.post(k, f, foot, tip(0), z, front)
	off := foot.Lerp(tip(0), .45)
	if f.fork { // they cross where its legs meet
		off = foot.Lerp(tip(0), .08)
	}
	for i := range f.arms {
		m.post(k.Plain, f, off, tip(i+1), z+.06, front)
	}
}

// along is the way to a stitch's neighbours: as long as its share of the row.
func (m *maker) along(id int32) geom.Point {
	row := &m.fabric.Rows[m.fabric.Stitches[id].Row]
	a, b, n := m.top(id), m.top(id), 0.
	if id > row.First && m.plan.Poses[id-1].Placed {
		a, n = m.top(id-1), n+1
	}
	if id+1 < row.Last && m.plan.Poses[id+1].Placed {
		b, n = m.top(id+1), n+1
	}
	return b.Sub(a).Mul(1 / max(n, 1))
}

// star adds the spokes of a star: loops drawn up in the eye, the side and the
// last place of the star before it and in its own places, all held by its eye.
func (m *maker) star(id int32, legs []layout.Leg, eye geom.Point, z float64) {
	var from []geom.Point
	for i := range legs {
		from = append(from, m.foot(id, &legs[i]))
	}
	way := m.along(id)
	if id == m.fabric.Rows[m.fabric.Stitches[id].Row].First || !m.plan.Poses[id-1].Placed { // no star before
		way = way.Mul(.3)
	}
	side := from[0].Sub(way.Mul(.5)) // the last place of the star before
	from = append(from, side, side.Lerp(eye.Sub(way), .5), eye.Sub(way.Mul(.9)))
	for i, a := range from {
		m.add(part{form: leg}, a.Lerp(eye, .08), eye.Lerp(a, .06), z+.02*float64(i))
	}
}

// spikes adds the loops of a spike cluster, drawn up in places fanned out below it.
func (m *maker) spikes(k *stitch.Kind, foot, top geom.Point, z float64) {
	const spread = .75 // radians to either side
	n := max(2, k.Legs)
	for i := range n {
		t := 2*float64(i)/float64(n-1) - 1
		to := top.Add(foot.Sub(top).Rotate(spread * t).Mul(1 - .2*t*t))
		m.add(part{form: longVee}, to, top, z+.1+.03*float64(i))
	}
}

// scale adds stitches worked down one post and up the next: fanned out below
// the top, on the side that faced their maker.
func (m *maker) scale(n int, foot, top geom.Point, z float64) {
	const spread, reach = 1.7, 1.4 // radians to either side, w
	middle := top.Lerp(foot, .2)
	down := foot.Sub(top).Unit().Mul(reach)
	rim := func(i float64) geom.Point { return middle.Add(down.Rotate(spread * (2*i/float64(n-1) - 1))) }
	for i := range n {
		at := rim(float64(i))
		m.add(part{leg, 1}, middle.Lerp(at, .15), at, z+.40)
		m.add(part{form: link}, rim(float64(i)-.5), rim(float64(i)+.5), z+.46)
	}
}
