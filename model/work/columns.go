package work

import "strandway/model/fabric"

// widest is the most columns a group is spread over.
const widest = 2

// columns gives every stitch of a row its place along the foundation: a single
// stitch stands over the mean of its places, a group is spread about its own, and
// chains lie evenly between their neighbours. Rounds count their columns round
// and round; a row along an edge counts its own stitches.
func (w *worker) columns(row *fabric.Row) {
	made := w.fab.Stitches[row.First:]
	if cap(w.cols) < len(made) {
		w.cols, w.known = make([]float32, len(made)), make([]bool, len(made))
	}
	col, known := w.cols[:len(made)], w.known[:len(made)]
	clear(known)
	sign := float32(-1)
	if w.rising {
		sign = 1
	}
	if !w.isEdge() {
		for i := range made {
			col[i], known[i] = w.over(&made[i])
			if i < w.own {
				col[i], known[i] = made[i].Col, true
			}
		}
		w.spread(made, col, known, sign)
	}
	w.between(col, known, sign)
	round := w.around()
	if w.isEdge() {
		round = 0
	}
	for i := range made {
		made[i].Col = wrap(col[i], round)
	}
	w.measureRound(len(made))
}

// measureRound fixes how many columns a round has: as many as the closed
// foundation has chains, or the first round over a ring or round an edge has stitches.
func (w *worker) measureRound(made int) {
	if !w.round {
		w.circle = 0
		return
	}
	prev := &w.fab.Rows[w.row-1]
	switch {
	case w.isEdge(), w.isBase && w.met == 0, w.isBase && w.ring:
		w.circle = float32(made)
	case prev.Shape == fabric.Flat:
		w.circle = float32(prev.Land1 - prev.Land0)
	}
}

// wrap brings a column into the first round; a round of 0 columns has no end.
func wrap(col, round float32) float32 {
	if round <= 0 {
		return col
	}
	for col < 0 {
		col += round
	}
	for col >= round {
		col -= round
	}
	return col
}

// over is the mean column of a stitch's places.
func (w *worker) over(s *fabric.Stitch) (float32, bool) {
	var sum, first float32
	n := 0
	for _, b := range w.fab.Bases[s.Base : s.Base+uint32(s.NBase)] {
		if b.At < 0 || b.Down == 0 && b.How == fabric.Top && s.Flags&(fabric.Join|fabric.Picot) != 0 {
			continue
		}
		c := w.fab.Stitches[b.At].Col
		switch b.How {
		case fabric.Space:
			c = w.nearTo(c, (c+w.nearTo(w.fab.Stitches[w.lastOfSpace(b.At)].Col, c))/2)
		case fabric.Gap:
			c = (c + w.nearTo(w.fab.Stitches[b.At+1].Col, c)) / 2
		}
		if n == 0 {
			first = c
		}
		sum += w.nearTo(c, first)
		n++
	}
	if n == 0 {
		return 0, false
	}
	return sum / float32(n), true
}

// nearTo takes a column of a round so many times round that it lies nearest to another.
func (w *worker) nearTo(c, other float32) float32 {
	round := w.around()
	if round <= 0 {
		return c
	}
	for c-other > round/2 {
		c -= round
	}
	for other-c > round/2 {
		c += round
	}
	return c
}

// lastOfSpace is the last chain of the space that begins with a chain.
func (w *worker) lastOfSpace(id int32) int32 {
	s := &w.fab.Stitches[id]
	for int(id)+1 < len(w.fab.Stitches) {
		n := &w.fab.Stitches[id+1]
		if !n.Has(fabric.Chain) || n.Row != s.Row || n.Unit != s.Unit {
			break
		}
		id++
	}
	return id
}

// spread lays the stitches of a group side by side about their common place, within the room to their neighbour.
func (w *worker) spread(made []fabric.Stitch, col []float32, known []bool, sign float32) {
	for i := 0; i < len(made); {
		u, j := made[i].Unit, i+1
		for u >= 0 && j < len(made) && made[j].Unit == u {
			j++
		}
		first := -1
		for k := i; k < j && first < 0; k++ {
			if known[k] {
				first = k
			}
		}
		if n := j - i; n > 1 && first >= 0 {
			mid, room := col[first], float32(widest)
			if i > 0 && known[i-1] {
				mid = w.nearTo(mid, col[i-1])
				room = min(room, 2*max(mid-col[i-1], col[i-1]-mid))
			}
			step := sign * room / float32(n+1)
			for k := i; k < j; k++ {
				col[k], known[k] = mid+step*(float32(k-i)-float32(n-1)/2), true
			}
		}
		i = j
	}
}

// between lays what has no place of its own evenly between its neighbours; a row without any counts from nought.
func (w *worker) between(col []float32, known []bool, sign float32) {
	for i := 0; i < len(col); {
		if known[i] {
			i++
			continue
		}
		j := i
		for j < len(col) && !known[j] {
			j++
		}
		switch {
		case i > 0 && j < len(col):
			to := w.nearTo(col[j], col[i-1])
			for k := i; k < j; k++ {
				col[k] = col[i-1] + (to-col[i-1])*float32(k-i+1)/float32(j-i+1)
			}
		case i > 0:
			for k := i; k < j; k++ {
				col[k] = col[i-1] + sign*float32(k-i+1)/float32(j-i+1)
			}
		case j < len(col):
			for k := i; k < j; k++ {
				col[k] = col[j] - sign*float32(j-k)/float32(j-i+1)
			}
		default:
			for k := range col {
				col[k] = float32(k)
				if sign < 0 {
					col[k] = float32(len(col) - 1 - k)
				}
			}
		}
		i = j
	}
}
