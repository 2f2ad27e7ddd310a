package layout

import (
	"math"

	"strandway/model/fabric"
)

const onePlace = 1.5 // places of the row below, within which a round's two ends stand in one corner

// tallJoin reports whether a stitch closes its round in place of chains, as "ch 2,
// dc in first sc to join" does for a loop of five: so many chains tall it is, 0
// for any other. The next round begins at its head, in the middle of the loop.
func tallJoin(f *fabric.Fabric, id int32) int {
	s := &f.Stitches[id]
	if k := f.Kind(id); s.Has(fabric.Join) && !s.Has(fabric.Chain) && k.Chains > 1.25 {
		return int(math.Round(k.Chains))
	}
	return 0
}

// addJoin appends the nodes of a tall join: one for each chain that it stands for.
// The first is its head.
func (p *piece) addJoin(id, row int32) {
	for range tallJoin(p.f, id) {
		p.nodes = append(p.nodes, node{id: id, row: row, fan: -1, half: chainHalf, chain: true})
	}
}

// loopWithJoin is the middle of a loop that begins with the chain at and is closed
// by a tall join: the nodes on either side of it.
func (p *piece) loopWithJoin(at int32) (a, b int32, ok bool) {
	join := at
	for last := p.f.Rows[p.f.Stitches[at].Row].Last; join < last && p.f.Stitches[join].Has(fabric.Chain); {
		join++
	}
	if join >= int32(len(p.f.Stitches)) || p.nodeOf[at] < 0 || tallJoin(p.f, join) == 0 || p.nodeOf[join] < 0 {
		return 0, 0, false
	}
	first, head := p.nodeOf[at], p.nodeOf[join]
	last := head + int32(tallJoin(p.f, join)) - 1
	if head < first { // the row is worked against the order of its nodes
		last = head - int32(tallJoin(p.f, join)) + 1
	}
	a, b = (first+last)/2, (first+last+1)/2
	return a, b, true
}

// seamCorner is the corner in which a round begins and ends, when its first and
// last stitches stand in one place with chains or a tall join between them.
func (p *piece) seamCorner(r row) (corner, bool) {
	n := int32(r.len())
	first, last := r.first, r.last-1
	for last > first && p.nodes[last].chain {
		last--
	}
	if !r.closed || first == last || last == r.last-1 || p.nodes[first].nlegs != 1 || p.nodes[last].nlegs != 1 {
		return corner{}, false
	}
	l, m := p.legs[p.nodes[first].leg], p.legs[p.nodes[last].leg]
	at := math.Mod(float64(last-r.first+n)/2, float64(n))
	if l.a < 0 && m.a < 0 && p.f.Stitches[p.nodes[r.last-1].id].Has(fabric.Join) {
		return corner{at: at, below: -1}, true
	}
	if l.a < 0 || m.a < 0 || p.nodes[l.a].row != p.nodes[m.a].row {
		return corner{}, false
	}
	below := float64(p.rows[p.nodes[l.a].row].len())
	if d := math.Abs(p.placeInRow(l) - p.placeInRow(m)); min(d, below-d) > onePlace {
		return corner{}, false
	}
	return corner{at: at, below: p.placeInRow(l)}, true
}
