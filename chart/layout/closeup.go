package layout

import (
	"slices"

	"strandway/model/stitch"
)

// closeUp draws the stitches of a row of cloth to the decreases beside them: rows
// of fewer stitches are narrower. Most of the row stays where it is, and a
// foundation holds the first.
func (p *piece) closeUp(r row) {
	const widest = 1.15 // of the gap between neighbours
	n := r.len()
	if !p.h.measured || n < 3 || p.nodes[r.first].row < 2 {
		return
	}
	x := make([]float64, n) // drawn together
	x[0] = p.at[r.first].X
	apart := false
	for k := 1; k < n; k++ {
		i := r.first + int32(k)
		d := p.at[i].X - p.at[i-1].X
		if most := widest * p.gap(i-1, i); d > most && p.closes(i-1) && p.closes(i) && (p.nodes[i-1].nlegs > 1 || p.nodes[i].nlegs > 1) {
			d, apart = most, true
		}
		x[k] = x[k-1] + d
	}
	if !apart {
		return
	}
	shift := make([]float64, n)
	for k := range x {
		shift[k] = p.at[r.first+int32(k)].X - x[k]
	}
	slices.Sort(shift)
	middle := shift[n/2]
	for k := range x {
		p.at[r.first+int32(k)].X = x[k] + middle
	}
}

// closes reports whether a node closes up to its neighbours. Stitches that end
// with a chain of their own, or stand for several, keep their room.
func (p *piece) closes(i int32) bool {
	n := &p.nodes[i]
	if n.chain || n.fan >= 0 || n.slip {
		return false
	}
	k := p.f.Kind(n.id)
	return k.Offers <= 1 && !slices.ContainsFunc(k.Movements(), func(m stitch.Movement) bool { return m.Do == "ch" })
}
