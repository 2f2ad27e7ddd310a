package layout

import (
	"strandway/chart/geom"
	"strandway/model/fabric"
)

// block is one square of a piece worked from corner to corner: a few chains and
// as many stitches beside them, on the chains of a block of the row before. A row
// is a diagonal of the grid; the next one joins on to the side where its chains lie.
type block struct {
	row    int
	base   int // the block it stands on; -1 for one on chains of its own
	chains []int32
	stems  []int32 // nodes, in working order, the turning chain among them
	slips  []int32
	x, y   int // in the grid
}

const (
	blockPitch  = .84 // between the stitches of a block, u
	clothPitch  = .65 // the same in cloth
	blockFoot   = .1  // of a stitch from the side it stands on
	blockHead   = .2  // of its top from the side opposite
	slipUp      = .24 // of a slip stitch over the side it joins
	chainsUp    = .34 // of the chains after it
	leastBlocks = 2   // rows
)

// findBlocks parts the rows into blocks; nil where they are no such fabric.
func (p *piece) findBlocks() []block {
	if len(p.rows) < leastBlocks+1 {
		return nil
	}
	var blocks []block
	of := make([]int, len(p.nodes)) // block by node
	joined := 0
	for k, r := range p.rows {
		if k == 0 {
			continue
		}
		before := len(blocks)
		for j := range int32(r.len()) {
			i := r.first + j
			if r.dir < 0 {
				i = r.last - 1 - j
			}
			n := &p.nodes[i]
			switch {
			case n.slip && (len(blocks) == before || len(blocks[len(blocks)-1].stems) > 0):
				if k == 1 || n.nlegs == 0 || p.nodes[p.legs[n.leg].a].row != int32(k-1) {
					return nil
				}
				blocks = append(blocks, block{row: k, base: of[p.legs[n.leg].a]})
				joined++
			case len(blocks) > before && (!n.turn || len(blocks[len(blocks)-1].stems) == 0):
			case n.turn && len(blocks) == before && (k == 1 || n.nlegs == 0): // the first one of a row, on chains of its own
				blocks = append(blocks, block{row: k, base: -1})
			case n.turn && len(blocks) == before && p.nodes[p.legs[n.leg].a].row == int32(k-1) && p.f.Stitches[n.id-1].Has(fabric.Travel):
				blocks = append(blocks, block{row: k, base: of[p.legs[n.leg].a]})
			default:
				return nil
			}
			b := &blocks[len(blocks)-1]
			of[i] = len(blocks) - 1
			switch {
			case n.slip:
				b.slips = append(b.slips, i)
			case n.chain:
				b.chains = append(b.chains, i)
			case n.low || n.nlegs > 1 || n.deep:
				return nil
			default:
				b.stems = append(b.stems, i)
			}
		}
		for _, b := range blocks[before:] {
			if side := len(b.chains) + len(p.turning(b)); len(b.stems)-len(p.turning(b)) < 2 || side == 0 || len(b.chains) == 1 {
				return nil
			}
		}
	}
	if joined < leastBlocks {
		return nil
	}
	placeInGrid(blocks)
	return blocks
}

// turning is the turning chain that begins a block, if one does.
func (p *piece) turning(b block) []int32 {
	if len(b.stems) > 0 && p.nodes[b.stems[0]].turn {
		return b.stems[:1]
	}
	return nil
}

// placeInGrid gives every block its square: rows go by turns to the right of
// those they stand on and above them, and begin beyond the end of the row before.
func placeInGrid(blocks []block) {
	for k := 1; k < len(blocks); k++ {
		b := &blocks[k]
		from, right := b.base, b.row%2 == 0
		if from < 0 {
			from, right = k-1, !right
		}
		b.x, b.y = blocks[from].x, blocks[from].y
		if right {
			b.x++
		} else {
			b.y++
		}
	}
}

// placeBlocks gives the stitches of every block their places.
//
// After it, every block is a square whose chains lie on the side that the next row joins.
func (p *piece) placeBlocks() {
	blocks := p.findBlocks()
	pitch, most := blockPitch, 0
	if p.h.measured {
		pitch = clothPitch
	}
	for _, b := range blocks {
		most = max(most, len(b.stems)+1-len(p.turning(b)))
	}
	size := pitch * float64(most)
	for _, b := range blocks {
		corner := geom.Point{X: float64(b.x) * size, Y: float64(b.y) * size}
		along, up := geom.Point{X: -1}, geom.Point{Y: 1} // to the left, upward
		corner.X += size
		if b.row%2 == 0 { // downward, to the right
			along, up = geom.Point{Y: -1}, geom.Point{X: 1}
			corner.X -= size
			corner.Y += size
		}
		at := func(column, height float64) geom.Point {
			return corner.Add(along.Mul((column + .5) * pitch)).Add(up.Mul(height))
		}
		for _, i := range b.slips {
			p.at[i] = at(0, slipUp)
			p.plant(i, at(0, 0))
		}
		for k, i := range b.chains {
			p.at[i] = at(0, chainsUp+(float64(k)+.5)*(size-chainsUp)/float64(len(b.chains)))
			p.laid = append(p.laid, laid{p.nodes[i].id, p.at[i], along.Mul(-1)})
		}
		first := 1 - len(p.turning(b))
		for k, i := range b.stems {
			c := float64(first + k)
			p.at[i] = at(c, size-blockHead)
			if l := p.of(i); b.row == 1 && len(l) > 0 && l[0].a >= 0 {
				p.at[l[0].a] = at(c, -blockHead/2)
			}
			p.plant(i, at(c, blockFoot))
		}
		if b.row > 1 && b.base < 0 { // the chains it stands on were made from its far end
			r := &p.f.Rows[p.rows[b.row].source]
			c := float64(len(b.stems) - 1)
			for id := r.First; id < r.Last && p.f.Stitches[id].Has(fabric.Chain|fabric.NoLanding); id++ {
				p.laid = append(p.laid, laid{id, at(c, -blockHead/2), up})
				c--
			}
		}
	}
}

// laid is a stitch whose place does not follow from its neighbours.
type laid struct {
	id     int32
	at, up geom.Point
}

// plant gives a node one leg, at a point of its own.
func (p *piece) plant(i int32, foot geom.Point) {
	at := int32(-1)
	if l := p.of(i); len(l) > 0 {
		at = l[0].at
	}
	g := p.ghost(foot)
	p.nodes[i].leg, p.nodes[i].nlegs, p.nodes[i].fan = int32(len(p.legs)), 1, -1
	p.legs = append(p.legs, leg{a: g, b: g, at: at})
}
