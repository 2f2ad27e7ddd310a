package layout

// evenHeights lets the neighbours of a row come level: tall stitches among short
// ones bunch, and the edges go with the row. A slope over several stitches, as
// in a wave, stays.
//
// After it, the tall stitches of one row no longer stand out of it.
func (p *piece) evenHeights(r row) {
	if !p.h.measured || p.loops(r) { // loops hang as they are pulled
		return
	}
	p.eachLine(r, func(line []int32) { p.even(r, line) })
}

// eachLine calls do for every run of stitches of a row that stand side by side, each in a place of its own.
func (p *piece) eachLine(r row, do func(line []int32)) {
	sinks := p.sinks(r)
	var line []int32
	for i := r.first; i < r.last; i++ {
		n := &p.nodes[i]
		switch {
		case n.chain:
			continue
		case n.deep || n.level || sinks && p.endsRow(i, r):
			continue
		case n.nlegs == 0 || n.slip || p.sharesPlace(i):
			do(line)
			line = line[:0]
		default:
			line = append(line, i)
		}
	}
	do(line)
}

// sharesPlace reports whether a neighbour stands in the same place as node i:
// fans settle their own heights.
func (p *piece) sharesPlace(i int32) bool {
	r, n := p.rows[p.nodes[i].row], &p.nodes[i]
	if n.nlegs != 1 {
		return false
	}
	for _, step := range [...]int32{-1, 1} {
		j := i + step
		for j >= r.first && j < r.last && p.nodes[j].chain {
			j += step
		}
		if j < r.first || j >= r.last || p.nodes[j].nlegs != 1 {
			continue
		}
		if a, b := &p.legs[n.leg], &p.legs[p.nodes[j].leg]; a.a == b.a && a.b == b.b {
			return true
		}
	}
	return false
}

// even takes harmonic means over neighbours, so that the short ones decide.
func (p *piece) even(r row, line []int32) {
	const passes = 2
	last := len(line) - 1
	alike := true
	for _, i := range line {
		alike = alike && p.nodes[i].h == p.nodes[line[0]].h
	}
	if alike {
		return
	}
	slack := make([]float64, len(line))
	for range passes {
		for k, i := range line {
			own := 1 / p.nodes[i].h
			before, after := own, own
			if k > 0 {
				before = 1 / p.nodes[line[k-1]].h
			}
			if k < last {
				after = 1 / p.nodes[line[k+1]].h
			}
			switch { // nothing draws an edge up from outside
			case r.closed:
			case i == r.first:
				before = after
			case i == r.last-1:
				after = before
			}
			slack[k] = (before + 2*own + after) / 4
		}
		for k, i := range line {
			p.nodes[i].h = 1 / slack[k]
		}
	}
}
