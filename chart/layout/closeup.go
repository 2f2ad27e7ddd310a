package layout

import "slices"

// closeUp draws together the stitches of a row of cloth that decreases or skips
// have left apart: rows of fewer stitches are narrower. What stands apart by
// chains, and fans, stay as they are, and most of the row stays where it is.
func (p *piece) closeUp(r row) {
	const widest = 1.15 // of the gap between neighbours
	n := r.len()
	if !p.h.measured || n < 3 {
		return
	}
	x := make([]float64, n) // drawn together
	x[0] = p.at[r.first].X
	apart := false
	for k := 1; k < n; k++ {
		i := r.first + int32(k)
		a, b := &p.nodes[i-1], &p.nodes[i]
		d := p.at[i].X - p.at[i-1].X
		if most := widest * p.gap(i-1, i); d > most && !a.chain && !b.chain && a.fan < 0 && b.fan < 0 && !a.slip && !b.slip {
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
