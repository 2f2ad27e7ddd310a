package layout

import "strandway/chart/geom"

// alike is the nodes of a piece that repeats across, row by row. Like places of
// all its repeats stay alike while it is relaxed: what the edges do to the first
// and the last repeat is shared by all, as it is when a book draws one of them
// and places it often.
type alike struct {
	rows []stretch
	wide float64 // of one repeat, u; 0 where it may change
}

// stretch is the nodes [first, last) of a row, of which each is as the one period before it.
type stretch struct{ first, last, period int32 }

// findAlike gives the stretches of a piece; nil where nothing repeats, and for
// cloth, which the edges are free to pull.
func (p *piece) findAlike() *alike {
	if p.period == nil || p.h.measured {
		return nil
	}
	a := &alike{}
	for k, r := range p.rows {
		if k == 0 && p.manner != Ripple {
			continue // it lies fixed
		}
		n := p.period.nodes[k]
		looks := p.looks(r)
		best := stretch{period: n}
		for i := int32(0); i+n < int32(len(looks)); {
			j := i
			for j+n < int32(len(looks)) && looks[j] == looks[j+n] {
				j++
			}
			if j-i > best.last-best.first-n {
				best.first, best.last = r.first+i, r.first+j+n
			}
			i = j + 1
		}
		if best.last > best.first {
			p.wholeFans(r, looks, &best)
			a.rows = append(a.rows, best)
		}
	}
	if ground := p.rows[0]; p.manner != Ripple && ground.len() > 1 {
		pitch := (p.at[ground.last-1].X - p.at[ground.first].X) / float64(ground.len()-1)
		a.wide = pitch * float64(p.period.nodes[0])
	}
	return a
}

// wholeFans lets a stretch begin and end with whole fans.
func (p *piece) wholeFans(r row, looks []look, s *stretch) {
	like := func(i, j int32) bool { return looks[i-r.first].own == looks[j-r.first].own }
	in := func(i int32, k int32) bool { return k >= 0 && i >= p.fans[k].first && i <= p.fans[k].last }
	for s.first > r.first && in(s.first-1, p.nodes[s.first].fan) && like(s.first-1, s.first-1+s.period) {
		s.first--
	}
	for s.last < r.last && in(s.last, p.nodes[s.last-1].fan) && like(s.last, s.last-s.period) {
		s.last++
	}
}

// look is a node, and how far its places lie from those of its neighbours.
type look struct{ own, before, after uint64 }

// looks gives the looks of a row: the same from the left as from the right.
func (p *piece) looks(r row) []look {
	out := make([]look, r.len())
	tokens := p.tokens(r, nil)
	after := uint64(0)
	for k := r.len() - 1; k >= 0; k-- {
		n := &p.nodes[r.first+int32(k)]
		out[k] = look{own: n.hash(), after: after}
		if n.nlegs > 0 {
			out[k].before, after = tokens[k], tokens[k]
		}
	}
	return out
}

// even moves the nodes of every stretch to the mean of their like places.
func (a *alike) even(x *relaxer) {
	if a == nil {
		return
	}
	wide := a.wide
	if wide == 0 {
		sum, n := 0.0, 0.0
		for _, s := range a.rows {
			for i := s.first; i+s.period < s.last; i++ {
				sum += x.at[i+s.period].X - x.at[i].X
				n++
			}
		}
		wide = sum / max(n, 1)
	}
	for _, s := range a.rows {
		for i := s.first; i < s.first+s.period; i++ {
			var at, speed geom.Point
			n := 0.0
			for j := i; j < s.last; j += s.period {
				at = at.Add(x.at[j]).Sub(geom.Point{X: n * wide})
				speed = speed.Add(x.speed[j])
				n++
			}
			at, speed = at.Mul(1/n), speed.Mul(1/n)
			for j := i; j < s.last; j += s.period {
				x.at[j], x.speed[j] = at, speed
				at.X += wide
			}
		}
	}
}
