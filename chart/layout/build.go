package layout

import (
	"slices"

	"strandway/chart/geom"
	"strandway/model/fabric"
	"strandway/model/stitch"
)

// build turns a fabric into a piece.
//
// After it, every stitch that takes a place of its own is a node with its legs
// and its height, and every row lies in the order in which it is drawn.
func build(f *fabric.Fabric, h Heights) *piece {
	p := &piece{f: f, h: h, nodeOf: make([]int32, len(f.Stitches))}
	for i := range p.nodeOf {
		p.nodeOf[i] = -1
	}
	p.nodes = make([]node, 0, len(f.Stitches))
	p.legs = make([]leg, 0, len(f.Bases))
	p.manner = start(f)
	centre := ringChain(f)
	p.hasRing = p.manner == Point || p.manner == Circle
	if p.hasRing {
		n := 0
		if len(f.Rows) > 0 && centre < 0 {
			n = len(ringOf(f))
		}
		p.ringR, p.feetR = h.ring(n)
	}
	for r := range f.Rows {
		if r == 0 && p.hasRing {
			continue
		}
		p.addRow(r)
	}
	for i := range p.nodes {
		p.addLegs(int32(i), centre)
	}
	p.markPicots()
	for r := range p.rows {
		p.markCrossings(p.rows[r])
		p.settleHeights(p.rows[r])
	}
	p.levelRows()
	p.at = make([]geom.Point, len(p.nodes))
	return p
}

// addRow appends the nodes of a fabric row in drawn order.
func (p *piece) addRow(source int) {
	fr := &p.f.Rows[source]
	first, last := fr.First, fr.Last
	if source == 0 {
		last = p.lastWorked()
	}
	nr := row{first: int32(len(p.nodes)), source: source, dir: p.direction(source)}
	nr.closed = fr.Shape != fabric.Flat && (p.manner == Circle || p.worksAround(source))
	for id := first; id < last; id++ {
		s := &p.f.Stitches[id]
		if tallJoin(p.f, id) > 0 {
			p.addJoin(id, int32(len(p.rows)))
			continue
		}
		if s.Flags&(fabric.NoLanding|fabric.Picot|fabric.Surface|fabric.Join|fabric.Travel) != 0 {
			continue
		}
		p.nodes = append(p.nodes, p.newNode(id, int32(len(p.rows))))
	}
	nr.last = int32(len(p.nodes))
	if nr.first == nr.last {
		return
	}
	if nr.dir < 0 {
		slices.Reverse(p.nodes[nr.first:nr.last])
	}
	for i := nr.first; i < nr.last; i++ {
		if id := p.nodes[i].id; p.nodeOf[id] < 0 || nr.dir < 0 { // of a tall join the first in the order of working
			p.nodeOf[id] = i
		}
	}
	p.rows = append(p.rows, nr)
}

func (p *piece) newNode(id, row int32) node {
	s, k := &p.f.Stitches[id], p.f.Kind(id)
	n := node{id: id, row: row, fan: -1, half: stitchHalf}
	n.turn = s.Has(fabric.TurningChain)
	n.chain = s.Has(fabric.Chain) && !n.turn
	chains := k.Chains
	switch {
	case n.chain:
		n.half = chainHalf
		return n
	case n.turn && k.Family == "chain":
		n.h, chains = p.h.chains(float64(s.Chains)), float64(s.Chains)
	default:
		n.h = p.h.of(k)
	}
	if chains < .5 && !n.turn {
		n.half, n.slip = slipHalf, true
	}
	n.low = chains < 1.75
	n.lump = k.SamePlace && k.Legs > 1 && !n.turn
	return n
}

// direction says whether the nodes of a fabric row lie in working order (+1).
// Rounds about a centre run counter-clockwise and rounds cut open from right to
// left while the right side faces, as the hook goes.
func (p *piece) direction(source int) int8 {
	fr := &p.f.Rows[source]
	along := func(forward bool) int8 {
		if forward {
			return 1
		}
		return -1
	}
	switch {
	case source == 0:
		return p.foundationDirection()
	case p.manner == Circle || p.manner == Point || p.worksAround(source):
		return along(fr.WS == fr.Backward)
	case fr.Shape != fabric.Flat:
		return along(fr.WS != fr.Backward)
	}
	return along(fr.FromLeft)
}

// foundationDirection follows from the first row: its places lie in its own order.
func (p *piece) foundationDirection() int8 {
	if len(p.f.Rows) < 2 {
		return 1
	}
	r := &p.f.Rows[1]
	rising := 0
	last := int32(-1)
	for id := r.First; id < r.Last; id++ {
		for _, b := range p.f.Of(id) {
			if b.At < 0 || p.f.Stitches[b.At].Row != 0 || b.How == fabric.Underside {
				continue
			}
			if last >= 0 && b.At > last {
				rising++
			} else if last >= 0 && b.At < last {
				rising--
			}
			last = b.At
		}
	}
	d := p.direction(1)
	if p.worksAround(1) { // round 1 runs leftward along the top
		d = -d
	}
	if rising < 0 {
		d = -d
	}
	return d
}

// lastWorked is the end of the foundation's chains that carry something; those
// after it have become the turning chain of the first row.
func (p *piece) lastWorked() int32 {
	f := p.f
	end := f.Rows[0].First
	for r := 1; r < len(f.Rows); r++ {
		for id := f.Rows[r].First; id < f.Rows[r].Last; id++ {
			for _, b := range f.Of(id) {
				if b.At >= 0 && f.Stitches[b.At].Row == 0 && !p.startsInEnd(id) {
					end = max(end, b.At+1)
				}
			}
		}
		if r == 1 && f.Rows[r].Shape == fabric.Flat && f.Rows[r].EndSide == fabric.NoSide {
			break
		}
	}
	if end == f.Rows[0].First { // nothing stands on it
		return f.Rows[0].Last
	}
	return end
}

// addLegs resolves the places of node i; its legs lie in the order of the row.
func (p *piece) addLegs(i, centre int32) {
	n := &p.nodes[i]
	n.leg = int32(len(p.legs))
	if n.chain {
		return
	}
	k := p.f.Kind(n.id)
	bases := p.f.Of(n.id)
	if next := n.id + 1; p.startsInEnd(n.id) {
		bases = p.f.Of(next)
	}
	ws := p.f.Rows[p.rows[n.row].source].WS
	for _, b := range bases {
		l, ok := p.resolve(b, centre)
		if !ok || l.a == i || l.b == i {
			continue
		}
		l.post = postOf(k, b.How)
		if ws {
			l.post = -l.post
		}
		if b.Down > 1 && b.How != fabric.RowEnd && b.How != fabric.Underside {
			n.deep = true
		}
		p.legs = append(p.legs, l)
	}
	n.nlegs = int32(len(p.legs)) - n.leg
	slices.SortStableFunc(p.legs[n.leg:], func(a, b leg) int { return int(a.a + a.b - b.a - b.b) })
	if p.f.Stitches[n.id].Has(fabric.Long) {
		n.deep = true
	}
}

// startsInEnd reports whether a turning chain begins the first round about a
// foundation: it rises from the chain in which the stitch after it stands.
func (p *piece) startsInEnd(id int32) bool {
	return p.manner == Oval && p.f.Stitches[id].Row == 1 && p.f.Stitches[id].Has(fabric.TurningChain) && id+1 < p.f.Rows[1].Last
}

// resolve finds the nodes of a base.
func (p *piece) resolve(b fabric.Base, centre int32) (leg, bool) {
	l := leg{a: -1, b: -1, at: b.At, how: b.How}
	f := p.f
	if p.hasRing && (b.At < 0 || b.At == centre || b.How == fabric.InRing || f.Stitches[b.At].Row == 0) {
		l.at = -1
		return l, true
	}
	if b.At < 0 {
		return l, false
	}
	l.space = b.How == fabric.Space || b.How == fabric.Gap
	rowEnd := f.Rows[f.Stitches[b.At].Row].Last
	switch b.How {
	case fabric.Space:
		if a, b, ok := p.loopWithJoin(b.At); ok {
			l.a, l.b = a, b
			return l, true
		}
		e := b.At
		for e < rowEnd && f.Stitches[e].Has(fabric.Chain) && p.nodeOf[e] >= 0 {
			e++
		}
		if n := e - b.At; n > 0 {
			l.a, l.b = p.nodeOf[b.At+(n-1)/2], p.nodeOf[b.At+n/2]
			return l, true
		}
	case fabric.Gap:
		if p.nodeOf[b.At] < 0 {
			break
		}
		for e := b.At + 1; e < rowEnd; e++ {
			if p.nodeOf[e] >= 0 {
				l.a, l.b = p.nodeOf[b.At], p.nodeOf[e]
				return l, true
			}
		}
	}
	l.a = p.host(b.At)
	l.b = l.a
	return l, l.a >= 0
}

// host is the node of a stitch, or for one without a place that of its nearest
// neighbour in the row, the one before it first.
func (p *piece) host(id int32) int32 {
	if p.nodeOf[id] >= 0 {
		return p.nodeOf[id]
	}
	r := &p.f.Rows[p.f.Stitches[id].Row]
	for e := id - 1; e >= r.First; e-- {
		if p.nodeOf[e] >= 0 {
			return p.nodeOf[e]
		}
	}
	for e := id + 1; e < r.Last; e++ {
		if p.nodeOf[e] >= 0 {
			return p.nodeOf[e]
		}
	}
	return -1
}

func postOf(k *stitch.Kind, how fabric.How) int8 {
	switch {
	case how == fabric.FrontPost:
		return 1
	case how == fabric.BackPost:
		return -1
	}
	return int8(k.Post)
}

// hemmed reports whether a node stands right beside another stitch, not between chains.
func (p *piece) hemmed(i int32, r row) bool {
	return i > r.first && !p.nodes[i-1].chain || i+1 < r.last && !p.nodes[i+1].chain
}

// heldUp reports whether a node in a space stands between stitches in tops, as
// in a filled mesh; they keep it level with them.
func (p *piece) heldUp(i int32, r row) bool {
	place := p.legs[p.nodes[i].leg]
	held := func(step int32) bool {
		for j := i + step; j >= r.first && j < r.last && p.nodes[j].nlegs == 1; j += step {
			if l := p.legs[p.nodes[j].leg]; l.a != place.a || l.b != place.b {
				return !l.space && p.nodes[j].low == p.nodes[i].low
			}
		}
		return false
	}
	return held(-1) && held(1)
}
