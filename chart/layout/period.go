package layout

// period is how a flat piece repeats across: so many nodes of each row make one
// repeat, between the edges of the row.
type period struct {
	nodes  []int32 // by row
	lo, hi []int32 // by row: the places [lo, hi) between which it holds
}

const (
	leastEdge  = 2 // nodes at each end of a row that are left out of account
	mostEdge   = 12
	farthest   = 6 // rows below within which places are compared
	longestOne = 400
)

// findPeriod looks for the smallest repeat across that all rows share.
//
// After it, period is set, or nil where rows do not repeat three times.
func (p *piece) findPeriod() {
	if len(p.rows) < 2 || p.hasRing {
		return
	}
	q := &period{nodes: make([]int32, len(p.rows)), lo: make([]int32, len(p.rows)), hi: make([]int32, len(p.rows))}
	q.nodes[0], q.lo[0], q.hi[0] = 1, 0, int32(p.rows[0].len())
	var tokens []uint64
	var border []int32
	for k := 1; k < len(p.rows); k++ {
		r := p.rows[k]
		tokens = p.tokens(r, tokens[:0])
		edge := min(max(r.len()/6, leastEdge), mostEdge)
		if r.len() < 2*edge+3 {
			return
		}
		q.lo[k], q.hi[k] = int32(edge), int32(r.len()-edge)
		from := edge
		for from < r.len()-edge && p.nodes[r.first+int32(from)].nlegs == 0 {
			from++ // the first stitch is described by one that lies outside
		}
		own := smallestPeriod(tokens[min(from+1, r.len()-edge):r.len()-edge], &border)
		if own == 0 || int(own)*3 > r.len() {
			return
		}
		below := p.shiftBelow(r, q.lo[k], q.hi[k], own)
		if below <= 0 {
			return
		}
		if rest := q.nodes[k-1] % below; rest != 0 {
			times := below / gcd(q.nodes[k-1], below)
			for j := range k {
				q.nodes[j] *= times
			}
		}
		q.nodes[k] = q.nodes[k-1] / below * own
		if q.nodes[0] > longestOne {
			return
		}
	}
	for k := range q.nodes {
		if k > 0 && q.nodes[k]*3 > int32(p.rows[k].len()) {
			return
		}
	}
	p.period = q
}

// tokens describes each node of a row by itself and by how far its places lie
// from those of the stitch before it.
func (p *piece) tokens(r row, out []uint64) []uint64 {
	var last [farthest + 1]int32
	me := p.nodes[r.first].row
	for i := r.first; i < r.last; i++ {
		n := &p.nodes[i]
		h := n.hash()
		for _, l := range p.of(i) {
			if l.a < 0 {
				continue
			}
			down := min(me-p.nodes[l.a].row, farthest)
			h = mix(mix(mix(h, uint64(down)), uint64(l.a-last[down])), uint64(l.b-l.a))
			h = mix(h, uint64(l.post))
			last[down] = l.a
		}
		out = append(out, h)
	}
	return out
}

// hash describes a node without its places.
func (n *node) hash() uint64 {
	h := uint64(n.nlegs) + uint64(n.h*1e4)<<8
	for k, is := range [...]bool{n.chain, n.level, n.slip, n.deep} {
		if is {
			h |= 1 << (60 + k)
		}
	}
	return mix(14695981039346656037, h)
}

func mix(h, v uint64) uint64 {
	h = (h ^ v) * 1099511628211
	return h ^ h>>29
}

// shiftBelow is how many nodes of the row below own nodes of this row stand on.
func (p *piece) shiftBelow(r row, lo, hi, own int32) int32 {
	for i := r.first + lo; i+own < r.first+hi; i++ {
		a, b := &p.nodes[i], &p.nodes[i+own]
		if a.nlegs == 0 || b.nlegs == 0 {
			continue
		}
		la, lb := p.legs[a.leg], p.legs[b.leg]
		if la.a < 0 || lb.a < 0 || p.nodes[la.a].row != a.row-1 || p.nodes[lb.a].row != a.row-1 {
			continue
		}
		return (lb.a + lb.b - la.a - la.b) / 2
	}
	return 0
}

// smallestPeriod is the least shift that maps the tokens onto themselves; 0 for
// none.
func smallestPeriod(t []uint64, border *[]int32) int32 {
	b := append((*border)[:0], 0)
	for i, k := 1, int32(0); i < len(t); i++ {
		for k > 0 && t[i] != t[k] {
			k = b[k-1]
		}
		if t[i] == t[k] {
			k++
		}
		b = append(b, k)
	}
	*border = b
	if n := int32(len(t)); n > 0 {
		if s := n - b[n-1]; s < n {
			return s
		}
	}
	return 0
}

func gcd(a, b int32) int32 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// upward is how the rows of a piece repeat: row k and row k + rows are alike for
// k in [from, to).
type upward struct{ rows, from, to int }

// findUpward looks for the smallest repeat of the rows from first on that holds
// over most of them, else the one that holds longest; rows is 0 for none.
func findUpward(alike []uint64, first int) upward {
	var best upward
	n := len(alike) - first
	for q := 1; q*2 <= n; q++ {
		from := first
		for k := first; k+q < len(alike); k++ {
			if alike[k] != alike[k+q] {
				from = k + 1
				continue
			}
			if like := k + 1 - from; like >= q && like > best.to-best.from {
				best = upward{q, from, k + 1}
			}
		}
		if best.rows > 0 && best.to-best.from+best.rows >= n*2/3 {
			break
		}
	}
	return best
}

// rowHashes describes each row with the places of its stitches in the rows below.
func (p *piece) rowHashes() []uint64 {
	out := make([]uint64, len(p.rows))
	for k, r := range p.rows {
		h := mix(uint64(r.len()), 1)
		for i := r.first; i < r.last; i++ {
			n := &p.nodes[i]
			h = mix(h, n.hash())
			for _, l := range p.of(i) {
				if l.a < 0 {
					continue
				}
				below := p.nodes[l.a].row
				h = mix(mix(h, uint64(n.row-below)), uint64(l.a-p.rows[below].first))
				h = mix(mix(h, uint64(l.b-l.a)), uint64(l.post))
			}
		}
		out[k] = h
	}
	return out
}
