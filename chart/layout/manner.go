package layout

import "strandway/model/fabric"

// start is the manner in which a fabric begins: from a ring in rounds (Circle)
// or in rows (Point), in rounds on a foundation (Tube), or in rows (Rows).
func start(f *fabric.Fabric) Manner {
	if len(f.Rows) < 2 {
		return Rows
	}
	rounds := 0
	for r := 1; r < len(f.Rows); r++ {
		if f.Rows[r].Shape != fabric.Flat {
			rounds++
		}
	}
	ring := standsInRing(f) || ringChain(f) >= 0
	switch {
	case ring && rounds > 0:
		return Circle
	case ring || growsFromPoint(f):
		return Point
	case rounds > 0 && f.Rows[1].Shape != fabric.Flat:
		if worksUnderside(f) {
			return Oval
		}
		return Tube
	}
	return Rows
}

// standsInRing reports whether the first row stands in a ring.
func standsInRing(f *fabric.Fabric) bool {
	for id := f.Rows[1].First; id < f.Rows[1].Last; id++ {
		for _, b := range f.Of(id) {
			if b.How == fabric.InRing {
				return true
			}
		}
	}
	return false
}

// worksUnderside reports whether the first row goes along both sides of the
// foundation.
func worksUnderside(f *fabric.Fabric) bool {
	for id := f.Rows[1].First; id < f.Rows[1].Last; id++ {
		for _, b := range f.Of(id) {
			if b.How == fabric.Underside {
				return true
			}
		}
	}
	return false
}

// ringChain is the chain that holds the whole first round, as in "6 sc in 2nd ch
// from hook"; -1 without one.
func ringChain(f *fabric.Fabric) int32 {
	if len(f.Rows) < 2 || f.Rows[1].Shape == fabric.Flat {
		return -1
	}
	at, n := int32(-1), 0
	for id := f.Rows[1].First; id < f.Rows[1].Last; id++ {
		if s := &f.Stitches[id]; s.Flags&(fabric.Chain|fabric.NoLanding|fabric.TurningChain) != 0 {
			continue
		}
		for _, b := range f.Of(id) {
			if at >= 0 && b.At != at || b.How == fabric.Underside {
				return -1
			}
			at = b.At
			n++
		}
	}
	if n < 4 {
		return -1
	}
	return at
}

// growsFromPoint reports whether flat rows on a few chains widen so fast that
// they lie about a point, as in a shawl begun at the neck.
func growsFromPoint(f *fabric.Fabric) bool {
	last := len(f.Rows) - 1
	if last < 3 || f.Rows[last].Count < 3*f.Rows[1].Count-2 {
		return false
	}
	used := map[int32]bool{}
	n := 0
	for id := f.Rows[1].First; id < f.Rows[1].Last; id++ {
		for _, b := range f.Of(id) {
			used[b.At] = true
			n++
		}
	}
	return len(used) <= 3 && n <= 6 || len(used) <= 2
}

// choose settles the manner once the rows stand beside one another.
//
// After it, manner and corners are final, and the piece knows whether direct
// places are enough or need relaxing.
func (p *piece) choose() (relax bool) {
	fans := len(p.fans) > 0 && int(p.fans[0].row) < len(p.rows)
	loops, chains, together, wide := false, false, false, false
	for i := range p.fans {
		wide = wide || int(p.fans[i].row) < len(p.rows) && !p.widens(&p.fans[i])
	}
	for _, r := range p.rows[min(1, len(p.rows)):] {
		p.runs(r, func(a, b int32) { chains = true })
		loops = loops || p.loops(r)
		for i := r.first; i < r.last; i++ {
			together = together || p.nodes[i].nlegs > 1
		}
	}
	switch p.manner {
	case Circle:
		if p.corners = p.countCorners(); p.corners > 0 {
			p.manner = Polygon
			return true
		}
		return fans && chains
	case Point:
		p.corners = p.countSpines()
		return fans && chains
	case Rows, Tube:
		if p.manner == Rows && p.findBlocks() != nil {
			p.manner = Blocks
			return false
		}
		if p.rises() != nil {
			p.manner = Ripple
			return true
		}
	}
	return wide || loops || chains && (fans || together)
}
