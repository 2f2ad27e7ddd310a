package cloth

import (
	"math"
	"slices"
	"sync"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
	"strandway/model/stitch"
)

// maker puts the parts of stitches together.
type maker struct {
	plan    *layout.Plan
	fabric  *fabric.Fabric
	cloth   *Cloth
	mirror  float64   // -1 when the wrong side is seen
	stretch float64   // of the rows' height
	used    []float64 // yarn used so far, by yarn, w
	begun   []float64 // where each stitch begins on its yarn, w
	ground  float64   // depth of the rearmost stitch, w
	fans    map[int32][]int32
	figures []figure // by kind of the fabric
	placed  []place
	seed    uint32 // of the part added last
	present piecework
}

// place is a part not yet given its sprite.
type place struct {
	instance
	part   part
	dx, dy int16
}

// piecework is the stitch whose parts are being added.
type piecework struct {
	id           int32
	yarn         uint8
	depth        float64
	from, length float64
}

func newMaker(p *layout.Plan, yarns []Yarn, o Options) *maker {
	f := p.Fabric
	m := &maker{plan: p, fabric: f, mirror: 1, stretch: 1, used: make([]float64, max(len(f.Yarns), 1)), begun: make([]float64, len(f.Stitches)), fans: map[int32][]int32{}}
	if o.Face == WS {
		m.mirror = -1
	}
	if o.Stretch > 0 {
		m.stretch = o.Stretch
	}
	c := &Cloth{fabric: f, sprites: o.Sprites, box: p.Box, yarns: make([]Yarn, len(m.used))}
	copy(c.yarns, yarns)
	if c.sprites == nil {
		c.sprites = NewSprites(0)
	}
	if c.box.IsEmpty() {
		c.box = geom.Box{}
	}
	if o.Face == WS {
		c.box.Min.X, c.box.Max.X = -c.box.Max.X, -c.box.Min.X
	}
	c.box.Min.Y, c.box.Max.Y = c.box.Min.Y*m.stretch, c.box.Max.Y*m.stretch
	c.looks = looksOf(c.yarns, stitchMM(o.StitchMM))
	m.cloth = c
	m.figures = make([]figure, len(f.Kinds))
	for i, k := range f.Kinds {
		m.figures[i] = figureOf(k)
	}
	for i := range p.Poses {
		pose := &p.Poses[i]
		m.ground = min(m.ground, pose.Depth)
		if pose.Placed && pose.Fan >= 0 && pose.NLegs > 0 {
			m.fans[pose.Fan] = append(m.fans[pose.Fan], int32(i))
		}
	}
	return m
}

// at brings a point of the plan into the cloth.
func (m *maker) at(p geom.Point) geom.Point { return geom.Point{X: p.X * m.mirror, Y: p.Y * m.stretch} }

func (m *maker) top(id int32) geom.Point { return m.at(m.plan.Poses[id].Top) }

// begin turns to stitch id and takes up the yarn it needs.
func (m *maker) begin(id int32) {
	y := m.yarnOf(id)
	m.begun[id] = m.used[y]
	m.resume(id)
	m.used[y] += m.present.length
}

func (m *maker) yarnOf(id int32) uint8 {
	return min(m.fabric.Stitches[id].Yarn, uint8(len(m.used)-1))
}

// add puts a part of the present stitch on the axis from a to b.
func (m *maker) add(p part, a, b geom.Point, z float64) {
	w := &m.present
	m.seed++
	seed := m.seed
	if p.form != link && p.form != chainLink {
		a.X += .06 * unevenness(hash(seed, 1))
		a.Y += .04 * unevenness(hash(seed, 2))
	}
	m.placed = append(m.placed, place{
		instance: instance{
			x: float32(a.X), y: float32(a.Y), from: float32(w.from), length: float32(w.length),
			stitch: w.id, seed: seed, z: int16(max(-400, min(400, z+w.depth)) * depths), yarn: w.yarn,
		},
		part: p, dx: quantised(b.X - a.X), dy: quantised(b.Y - a.Y),
	})
}

// ring draws the ring in the middle of rounds.
func (m *maker) ring() {
	if m.plan.RingR <= 0 || len(m.fabric.Stitches) == 0 {
		return
	}
	first := m.fabric.Rows[min(1, len(m.fabric.Rows)-1)].First
	m.resume(min(first, int32(len(m.fabric.Stitches)-1)))
	const links = 6
	r := max(.36, .62*m.plan.RingR)
	for i := range links {
		a := geom.Point{X: r}.Rotate(2 * math.Pi * float64(i) / links)
		m.add(part{form: chainLink}, a, a.Rotate(2*math.Pi/links), -.1)
	}
}

// row adds the parts of a row in working order: first its stitches, then the
// loops along their tops.
func (m *maker) row(r int) {
	row := &m.fabric.Rows[r]
	m.seed = hash(uint32(r), 5) // so that a row looks the same whatever was made before it
	front := m.facing(r)
	var line, onFace []int32 // the stitches that stand in the row, as worked; those on the face
	lifted := 0
	for id := row.First; id < row.Last; id++ {
		pose := &m.plan.Poses[id]
		if pose.Dropped {
			continue
		}
		m.begin(id)
		if m.fabric.Stitches[id].Has(fabric.Surface) {
			onFace = append(onFace, id)
			continue
		}
		if !pose.Placed {
			m.hanging(id)
			continue
		}
		line = append(line, id)
		if pose.NLegs > 0 && m.stitch(id, front) {
			lifted++
		}
	}
	m.braid(r, line, 2*lifted > len(line))
	m.surface(onFace, front)
}

// facing reports whether the viewer sees the side of row r that faced its maker.
func (m *maker) facing(r int) bool { return m.fabric.Rows[r].WS == (m.mirror < 0) }

// braid lays the loops along the tops of a row: one link a stitch, from the
// middle between it and the stitch before to the middle between it and the next.
// Where V stands over V, the links show below the V's, raised.
func (m *maker) braid(r int, line []int32, raised bool) {
	n := len(line)
	if n == 0 {
		return
	}
	closed := m.closed(r) && n > 2
	for i, id := range line {
		p := m.top(id)
		prev, next := p, p
		if i > 0 || closed {
			prev = m.top(line[(i+n-1)%n])
		}
		if i+1 < n || closed {
			next = m.top(line[(i+1)%n])
		}
		a, b := halfWays(prev, p, next, m.mirror)
		kind, z := part{form: link}, -.03
		up := m.at(m.plan.Poses[id].Up)
		switch {
		case m.fabric.Stitches[id].Has(fabric.Chain):
			kind.form = chainLink
			if r == 0 {
				z = -.1
			}
		case m.fabric.Rows[r].Backward: // twisted over the edge like a cord
			m.resume(id)
			m.loops(kind, a.Sub(b.Sub(a).Mul(.2)).Sub(up.Mul(.34)), b.Add(b.Sub(a).Mul(.1)).Sub(up.Mul(.06)), .24)
			continue
		case raised:
			z = .19
			a, b = a.Sub(up.Mul(.10)), b.Sub(up.Mul(.10))
		}
		m.resume(id)
		// In a tight arc and at a peak the loops still pass through their own place.
		switch off := p.Sub(a.Lerp(b, .5)); {
		case off.Len() > .3:
			m.loops(kind, a, p, z)
			m.loops(kind, p, b, z)
		case off.Len() > .12 && kind.form == chainLink:
			m.loops(kind, a.Add(off.Mul(.6)), b.Add(off.Mul(.6)), z)
		default:
			m.loops(kind, a, b, z)
		}
	}
}

// halfWays gives where the loop of a stitch at p begins and ends: half-way to
// its neighbours. A neighbour at p stands for none.
func halfWays(prev, p, next geom.Point, mirror float64) (a, b geom.Point) {
	switch {
	case prev == p && next == p:
		prev, next = p.Sub(geom.Point{X: .5 * mirror}), p.Add(geom.Point{X: .5 * mirror})
	case prev == p:
		prev = p.Sub(next.Sub(p).Mul(.6))
	case next == p: // at the end of a row the yarn goes on upward
		next = p.Add(p.Sub(prev).Mul(.24))
	}
	return prev.Lerp(p, .5), p.Lerp(next, .5)
}

// loops lays top loops from a to b. Where stitches stand wide apart the yarn
// between them is drawn out to several links; no loop spans more than a few stitches.
func (m *maker) loops(p part, a, b geom.Point, z float64) {
	const widest, farthest = 1.7, 4.5
	length := b.Sub(a).Len()
	if length > farthest {
		return
	}
	n := 1
	if length > widest {
		n = int(math.Round(length / 1.2))
	}
	for i := range n {
		m.add(p, a.Lerp(b, float64(i)/float64(n)), a.Lerp(b, float64(i+1)/float64(n)), z)
	}
}

// closed reports whether the last stitch of a row meets its first: in rounds,
// unless they lie cut open.
func (m *maker) closed(r int) bool {
	const widest = 2.5 // between the ends of a round that lies closed
	row := &m.fabric.Rows[r]
	if r == 0 || row.Shape == fabric.Flat {
		return false
	}
	first, last := row.First, row.Last-1
	for first < last && !m.plan.Poses[first].Placed {
		first++
	}
	for last > first && !m.plan.Poses[last].Placed {
		last--
	}
	return m.top(last).Sub(m.top(first)).Len() < widest
}

// resume turns back to a stitch of the row just worked, for its top loops.
func (m *maker) resume(id int32) {
	m.present = piecework{id: id, yarn: m.yarnOf(id), depth: m.plan.Poses[id].Depth - m.ground, from: m.begun[id], length: yarnLength(m.fabric, id)}
}

// yarnLength is the yarn in stitch id, w: in a fabric at its natural gauge one
// loop round the hook takes 3.17 w and pulling up a loop 1.15 w a leg.
func yarnLength(f *fabric.Fabric, id int32) float64 {
	const loop, pullUp = 3.17, 1.15
	s := &f.Stitches[id]
	k := f.Kind(id)
	if s.Has(fabric.Chain) || s.Has(fabric.TurningChain) || s.Has(fabric.Picot) {
		return 1.1 * loop * float64(max(1, s.Chains))
	}
	if k == nil || k.Chains < .5 {
		return 1.1*loop + .6*pullUp
	}
	legs := float64(max(1, k.Legs))
	return legs*(loop+2*pullUp+float64(k.Wraps+k.Pulls)*loop) + 1.1*loop
}

// beneath is how far below the cloth the table lies, 1/64 w.
const beneath = 84

// finish gives every part its sprite. Parts that occur once or twice need no variants.
func (m *maker) finish() *Cloth {
	const most = 3 // variants
	c := m.cloth
	shapes := make([]uint8, len(c.yarns)) // by yarn: the first that is built like it
	for i := range c.yarns {
		shapes[i] = uint8(slices.IndexFunc(c.yarns, func(y Yarn) bool { return y.Shape == c.yarns[i].Shape }))
	}
	type use struct {
		parts int32
		keys  [most]int32 // by variant, counted from 1; 0 for none
	}
	var uses []use
	index := map[uint64]int32{} // in uses; packed, since it is asked for every part
	for i := range m.placed {
		p := &m.placed[i]
		axis := uint64(p.part.form)<<48 | uint64(p.part.n)<<40 | uint64(shapes[p.yarn])<<32 | uint64(uint16(p.dx))<<16 | uint64(uint16(p.dy))
		n, ok := index[axis]
		if !ok {
			n = int32(len(uses))
			index[axis] = n
			uses = append(uses, use{})
		}
		uses[n].parts++
		p.key = n
	}
	c.instances = make([]instance, len(m.placed))
	for i := range m.placed {
		p := &m.placed[i]
		u := &uses[p.key]
		variant := hash(p.seed, 4711) % uint32(min(most, 1+u.parts/6))
		if u.keys[variant] == 0 {
			c.keys = append(c.keys, key{part: p.part, dx: p.dx, dy: p.dy, variant: uint8(variant), shape: c.yarns[p.yarn].Shape})
			u.keys[variant] = int32(len(c.keys))
		}
		p.key = u.keys[variant] - 1
		c.instances[i] = p.instance
	}
	c.table = -beneath
	c.bounds = sync.OnceValue(c.boxes)
	return c
}

// kindOf is the kind of a stitch; a plain kind where the fabric has none.
func (m *maker) kindOf(id int32) *stitch.Kind {
	if k := m.fabric.Kind(id); k != nil {
		return k
	}
	return &stitch.Kind{}
}
