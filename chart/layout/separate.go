package layout

// separator places points on a line as near to their wishes as minimum distances
// allow: least squares by pooling adjacent violators. Its slices are reused from
// row to row.
type separator struct {
	x      []float64 // wishes, then places
	weight []float64
	gap    []float64 // least distance to the next point
	known  []bool    // whether the wish comes from a place below
	pools  []pool
}

type pool struct {
	sum, weight float64 // weighted sum of x less the gaps before it
	n           int
}

// size makes room for n points, all unknown.
func (s *separator) size(n int) {
	if cap(s.x) < n {
		s.x, s.weight, s.gap = make([]float64, n), make([]float64, n), make([]float64, n)
		s.known = make([]bool, n)
	}
	s.x, s.weight, s.gap, s.known = s.x[:n], s.weight[:n], s.gap[:n], s.known[:n]
	clear(s.known)
}

// settle moves x to the nearest places that keep the gaps.
func (s *separator) settle() {
	s.pools = s.pools[:0]
	off := 0.0
	for i, x := range s.x {
		if i > 0 {
			off += s.gap[i-1]
		}
		q := pool{(x - off) * s.weight[i], s.weight[i], 1}
		for k := len(s.pools) - 1; k >= 0 && s.pools[k].sum*q.weight > q.sum*s.pools[k].weight; k-- {
			q.sum += s.pools[k].sum
			q.weight += s.pools[k].weight
			q.n += s.pools[k].n
			s.pools = s.pools[:k]
		}
		s.pools = append(s.pools, q)
	}
	i, off := 0, 0.0
	for _, q := range s.pools {
		for range q.n {
			s.x[i] = q.sum/q.weight + off
			off += s.gap[i]
			i++
		}
	}
}

// settleRound does the same on a closed line of length turn: three times round,
// of which the middle one counts, so that no cut pulls it aside.
func (s *separator) settleRound(turn float64) {
	n := len(s.x)
	var t separator
	t.size(3 * n)
	for k := range 3 {
		for i := range n {
			t.x[k*n+i] = s.x[i] + float64(k-1)*turn
		}
		copy(t.weight[k*n:], s.weight)
		copy(t.gap[k*n:], s.gap)
	}
	t.settle()
	copy(s.x, t.x[n:2*n])
}
