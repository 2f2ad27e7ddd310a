package layout

// fitGround draws the foundation of cloth together where the row on it is
// narrower: chains give way to what they carry, and the edges stand upright.
func (p *piece) fitGround() {
	if !p.h.measured || p.hasRing || p.manner != Rows || len(p.rows) < 2 {
		return
	}
	const most = .2 // of its width that a foundation gives way
	ground, r := p.rows[0], p.rows[1]
	first, last := ground.first, ground.last-1
	if first == last || !p.standsOn(r.first, first) || !p.standsOn(r.last-1, last) {
		return
	}
	left, right := p.at[first].X, p.at[last].X
	from, to := p.at[r.first].X, p.at[r.last-1].X
	give := most / 2 * (right - left)
	from, to = min(left+give, max(left, from)), max(right-give, min(right, to))
	for i := first; i <= last; i++ {
		p.at[i].X = from + (p.at[i].X-left)/(right-left)*(to-from)
	}
}

// standsOn reports whether node i stands in node at alone.
func (p *piece) standsOn(i, at int32) bool {
	n := &p.nodes[i]
	return n.nlegs == 1 && p.legs[n.leg].a == at && p.legs[n.leg].b == at
}
