package layout

import (
	"strandway/model/fabric"
	"strandway/model/stitch"
)

// markPicots finds the stitches that carry picots, and gives the rows above them room.
func (p *piece) markPicots() {
	if p.h.picot == 0 {
		return
	}
	rows := make([]bool, len(p.rows))
	for id := range p.f.Stitches {
		if !p.f.Stitches[id].Has(fabric.Picot) {
			continue
		}
		if i := p.host(int32(id)); i >= 0 {
			p.nodes[i].picot, rows[p.nodes[i].row] = true, true
		}
	}
	for i := range p.nodes {
		n := &p.nodes[i]
		if l := p.of(int32(i)); len(l) > 0 && l[0].a >= 0 && !n.deep && rows[p.nodes[l[0].a].row] {
			n.h += p.h.picot
		}
	}
}

// markCrossings finds the stitches that cross others, and as many before them that they cross.
func (p *piece) markCrossings(r row) {
	fr := &p.f.Rows[r.source]
	var passed []int32 // nodes in working order
	for id := fr.First; id < fr.Last; {
		n := int32(0)
		for id+n < fr.Last && p.f.Stitches[id+n].Has(fabric.Crossed) {
			if i := p.nodeOf[id+n]; i >= 0 {
				p.nodes[i].crossing = true
			}
			n++
		}
		for k := max(0, len(passed)-int(n)); k < len(passed); k++ {
			p.nodes[passed[k]].crossing = true
		}
		if n > 0 {
			passed, id = passed[:0], id+n
			continue
		}
		if i := p.nodeOf[id]; i >= 0 {
			passed = append(passed, i)
		}
		id++
	}
}

// settleHeights gives way where a stitch closes round a space or a post, and
// keeps posts and lumps from standing above the stitches beside them.
func (p *piece) settleHeights(r row) {
	var posts, others, low, lumps int
	cables := false
	for i := r.first; i < r.last; i++ {
		n := &p.nodes[i]
		if n.nlegs == 0 {
			continue
		}
		l := p.legs[n.leg]
		if k := p.f.Kind(n.id); k.Lump != stitch.NoLump && !n.turn {
			if p.hemmed(i, r) {
				lumps++
			}
		} else if n.low {
			low++
		}
		cables = cables || l.post != 0 && p.f.Stitches[n.id].Has(fabric.Crossed)
		if i > r.first && i+1 < r.last && !n.turn {
			if l.post != 0 {
				posts++
			} else {
				others++
			}
		}
		if n.nlegs > 1 || n.turn || n.deep {
			continue
		}
		switch {
		case l.post != 0:
			n.h *= p.h.post
		case l.space && p.heldUp(i, r):
		case l.space && n.low:
			n.h -= p.h.spaceLow
		case l.space:
			n.h -= p.h.space
		}
	}
	p.evenEdges(r)
	mixed := posts > 0 && others*10 >= 3*(posts+others)
	lumped := lumps > 0 && low > lumps
	for i := r.first; i < r.last; i++ {
		n := &p.nodes[i]
		if n.nlegs == 0 {
			continue
		}
		n.level = n.deep || n.crossing && !n.low || mixed && p.legs[n.leg].post != 0
		switch {
		case n.deep:
		case lumped && (n.low || p.hemmed(i, r)):
			n.h = p.h.lumpRow
		case cables && n.low:
			n.h = max(n.h, p.h.cableRow)
		}
	}
}

// evenEdges lets stitches at the ends of a row that are a little lower than all
// between them stand as high, as a ch 2 that counts as hdc does beside posts.
func (p *piece) evenEdges(r row) {
	if r.closed || r.len() < 5 || p.h.measured {
		return
	}
	h := p.nodes[r.first+1].h
	for i := r.first + 1; i < r.last-1; i++ {
		if n := &p.nodes[i]; n.chain || n.nlegs != 1 || n.deep || n.h != h && !n.crossing {
			return
		}
	}
	for _, i := range [2]int32{r.first, r.last - 1} {
		if n := &p.nodes[i]; n.nlegs == 1 && !n.deep && !n.low && n.h < h {
			n.h = h
		}
	}
}
