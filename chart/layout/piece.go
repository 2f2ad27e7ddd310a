package layout

import (
	"math"

	"strandway/chart/geom"
	"strandway/model/fabric"
)

// A piece is a fabric made ready to be laid out: one node for every stitch that
// takes a place of its own, row by row in the order in which they lie, from left
// to right or counter-clockwise.
type piece struct {
	f      *fabric.Fabric
	h      Heights
	nodes  []node
	legs   []leg
	rows   []row
	fans   []fan
	at     []geom.Point // the top of each node
	nodeOf []int32      // by stitch id; -1 where the stitch takes no place

	manner  Manner
	corners int
	hasRing bool
	ringR   float64 // radius of the ring's chain
	feetR   float64 // radius at which feet stand in the ring
	open    float64 // angle that rows from a point open to, radians
	laid    []laid  // of blocks
	period  *period // of flat rows; nil where none was found
}

// node is the top of a stitch, or the centre of one chain.
type node struct {
	id    int32 // stitch
	row   int32
	leg   int32 // first leg
	nlegs int32
	fan   int32 // -1 for none
	h     float64
	half  float64 // half of its width
	chain bool
	turn  bool // a turning chain that counts
	deep  bool // stands below the usual row: takes the height it gets
	level bool // lies level with its neighbours, whatever it stands on
	low   bool // no taller than a sc
	slip  bool

	crossing bool    // crosses others or is crossed
	picot    bool    // carries a picot
	grown    float64 // by how much its fan has made it taller, 0 for not at all
	lump     bool    // several legs in one place, bowed apart
}

// leg is a leg's place: the middle between the nodes a and b, which are mostly
// the same; ring where a is -1.
type leg struct {
	a, b  int32
	at    int32 // the stitch it stands in, -1 for the ring
	post  int8
	space bool
	how   fabric.How
}

// row is a range of nodes.
type row struct {
	first, last int32
	dir         int8 // +1 worked in the order of the nodes, -1 against it
	source      int  // index in Fabric.Rows
	closed      bool
}

func (r row) len() int { return int(r.last - r.first) }

const (
	chainHalf  = .42
	slipHalf   = .36
	stitchHalf = .5
	fanGap     = .92
	unlikeGap  = 1.28
	lumpGap    = 1.4 // their legs bow out
	chainGap   = 2 * chainHalf
)

// of gives the legs of node i.
func (p *piece) of(i int32) []leg {
	n := &p.nodes[i]
	return p.legs[n.leg : n.leg+n.nlegs]
}

// inRing reports whether node i stands in the ring.
func (p *piece) inRing(i int32) bool {
	n := &p.nodes[i]
	return n.nlegs > 0 && p.legs[n.leg].a < 0
}

// below reports whether node i stands in something made before its own row, so
// that its place is known when the row is laid.
func (p *piece) below(i int32) bool {
	n := &p.nodes[i]
	if n.nlegs == 0 {
		return false
	}
	for _, l := range p.of(i) {
		if l.a >= 0 && (p.nodes[l.a].row >= n.row || p.nodes[l.b].row >= n.row) {
			return false
		}
	}
	return true
}

// foot is the point of a leg's place; the origin for the ring.
func (p *piece) foot(l leg) geom.Point {
	if l.a < 0 {
		return geom.Point{}
	}
	if l.a == l.b {
		return p.at[l.a]
	}
	return p.at[l.a].Lerp(p.at[l.b], .5)
}

// next is the node after i in its row, going round in closed rows; -1 at the end.
func (p *piece) next(i int32) int32 {
	r := p.rows[p.nodes[i].row]
	if i+1 < r.last {
		return i + 1
	}
	if r.closed && r.len() > 1 {
		return r.first
	}
	return -1
}

// prev is the node before i in its row, going round in closed rows; -1 at the start.
func (p *piece) prev(i int32) int32 {
	r := p.rows[p.nodes[i].row]
	if i > r.first {
		return i - 1
	}
	if r.closed && r.len() > 1 {
		return r.last - 1
	}
	return -1
}

// gap is the distance at which neighbours a and b like to stand.
func (p *piece) gap(a, b int32) float64 {
	na, nb := &p.nodes[a], &p.nodes[b]
	switch {
	case na.fan >= 0 && na.fan == nb.fan && unlike(na.h, nb.h):
		return unlikeGap
	case na.fan >= 0 && na.fan == nb.fan:
		return p.abreast(a, b)
	case na.chain != nb.chain && (na.fan >= 0 || nb.fan >= 0):
		return chainGap
	}
	gap := na.half + nb.half
	if b < a && p.seamed(p.rows[na.row]) {
		gap += p.h.seam
	}
	return gap
}

// unlike reports whether two heights differ so much that the lower head stands beside the other's stem.
func unlike(a, b float64) bool { return min(a, b) < .9*max(a, b) }

// seamed reports whether a closed row begins with chains that take no place of
// their own, so that they need room beside its first stitch.
func (p *piece) seamed(r row) bool {
	first := p.f.Rows[r.source].First
	return p.nodeOf[first] < 0 && p.f.Stitches[first].Has(fabric.Chain)
}

// natural is the width of a row when every neighbour stands at its gap.
func (p *piece) natural(r row) float64 {
	w := 0.0
	for i := r.first; i+1 < r.last; i++ {
		w += p.gap(i, i+1)
	}
	if r.closed && r.len() > 1 {
		w += p.gap(r.last-1, r.first)
	}
	return w
}

// rowHeight is the mean height of the stitches of a row that stand in the usual place.
func (p *piece) rowHeight(r row) float64 {
	h, n := 0.0, 0.0
	for i := r.first; i < r.last; i++ {
		if d := &p.nodes[i]; d.nlegs > 0 && !d.deep {
			h += d.h
			n++
		}
	}
	if n == 0 {
		return 0
	}
	return h / n
}

// runs calls do for every run of chains [a, b) of the row. In closed rows a run
// over the row's end is given in one, with b beyond the row's last node.
func (p *piece) runs(r row, do func(a, b int32)) {
	n := int32(r.len())
	start := r.first
	if r.closed {
		for start < r.last && p.nodes[start].chain {
			start++
		}
		if start == r.last {
			return // nothing but chains
		}
	}
	for i := start; i < start+n; {
		if !p.nodes[p.wrap(r, i)].chain {
			i++
			continue
		}
		j := i
		for j < start+n && p.nodes[p.wrap(r, j)].chain {
			j++
		}
		a := p.wrap(r, i)
		do(a, a+j-i)
		i = j
	}
}

// loops reports whether a row has runs of chains long enough to bow.
func (p *piece) loops(r row) bool {
	loops := false
	p.runs(r, func(a, b int32) { loops = loops || b-a >= 3 })
	return loops
}

// wrap brings an index beyond the row's end back to its start.
func (p *piece) wrap(r row, i int32) int32 {
	if i >= r.last {
		return i - int32(r.len())
	}
	return i
}

// angleOf is the direction of a point from the centre.
func angleOf(a geom.Point) float64 { return math.Atan2(a.Y, a.X) }

// polar is the point at angle t and distance r from the centre.
func polar(t, r float64) geom.Point {
	s, c := math.Sincos(t)
	return geom.Point{X: r * c, Y: r * s}
}
