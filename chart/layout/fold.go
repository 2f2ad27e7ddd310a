package layout

import "strandway/chart/geom"

// fold is a piece with repeats left out, across and upward, so that it can be
// solved at a cost that does not grow with the width or the length of the whole.
type fold struct {
	whole, small *piece
	cuts         []cut  // by small row
	times        int32  // repeats left out across
	rowsOut      int    // rows left out
	sample       int    // first small row of the repeat that stands for those left out
	up           upward // of the whole
}

// cut leaves out nodes [at, at+gone) of a row of the whole; from is the first node
// of the repeat that stands for them, period its nodes.
type cut struct {
	row                    int
	at, gone, from, period int32
}

const (
	keepRepeats = 3   // repeats that stay across at first
	moreRepeats = 4   // that stay besides, when the edges reach so far that the middle ones differ
	seamError   = .08 // u by which they may differ
	keepAcross  = 18  // foundation stitches that stay at least
	keepRows    = 5   // rows that stay at least below and above those left out
	foldFrom    = 150 // nodes below which a piece is solved whole
)

// folded leaves out what repeats, but for so many repeats across; nil where
// nothing does or nothing would be won.
func (p *piece) folded(keep int) *fold {
	if len(p.nodes) < foldFrom || p.hasRing || len(p.rows) < 2 {
		return nil
	}
	f := &fold{whole: p}
	f.findTimes(int32(keep))
	f.findRows()
	if f.times == 0 && f.rowsOut == 0 {
		return nil
	}
	f.cutRows()
	f.small = f.build()
	return f
}

// findTimes settles how many repeats can be left out across.
func (f *fold) findTimes(repeats int32) {
	p, q := f.whole, f.whole.period
	if q == nil {
		return
	}
	keep := max(repeats, (keepAcross+q.nodes[0]-1)/q.nodes[0])
	times := int32(p.rows[0].len())/q.nodes[0] - keep
	for k, r := range p.rows {
		for times > 0 && (f.middle(k, times)-q.nodes[k] < q.lo[k] || f.middle(k, times)+(times+1)*q.nodes[k] > q.hi[k]) {
			times--
		}
		if times > 0 && !f.lines(k, r, times) {
			times = 0
		}
	}
	f.times = max(times, 0)
}

// middle is where the cut of row k begins.
func (f *fold) middle(k int, times int32) int32 {
	return (int32(f.whole.rows[k].len()) - times*f.whole.period.nodes[k]) / 2
}

// lines reports whether the cut of row k stands over those of the rows below.
func (f *fold) lines(k int, r row, times int32) bool {
	p := f.whole
	for i := r.first + f.middle(k, times); i < r.last; i++ {
		n := &p.nodes[i]
		if n.nlegs == 0 || p.legs[n.leg].a < 0 {
			continue
		}
		l := p.legs[n.leg]
		below := int(p.nodes[l.a].row)
		d := l.a - p.rows[below].first - f.middle(below, times)
		return d <= p.period.nodes[below] && -d <= p.period.nodes[below]
	}
	return true
}

// findRows settles which rows can be left out.
func (f *fold) findRows() {
	f.up = findUpward(f.whole.rowHashes(), 1)
	if f.up.rows == 0 {
		return
	}
	keep := (keepRows + f.up.rows - 1) / f.up.rows * f.up.rows
	f.rowsOut = max(0, (f.up.to+f.up.rows-f.up.from-2*keep)/f.up.rows*f.up.rows)
	f.sample = f.up.from + keep - f.up.rows
}

func (f *fold) cutRows() {
	for k := range f.whole.rows {
		if f.rowsOut > 0 && k >= f.sample+f.up.rows && k < f.sample+f.up.rows+f.rowsOut {
			continue
		}
		c := cut{row: k, at: int32(f.whole.rows[k].len())}
		if f.times > 0 {
			c.period = f.whole.period.nodes[k]
			c.at, c.gone = f.middle(k, f.times), f.times*c.period
			c.from = c.at - c.period/2
		}
		f.cuts = append(f.cuts, c)
	}
}

// build makes the small piece. A leg of a stitch beyond the cut is moved along
// with it, so it stands in the like place of the small piece.
func (f *fold) build() *piece {
	p := f.whole
	s := *p
	s.nodes, s.legs, s.rows, s.fans, s.at = nil, nil, nil, nil, nil
	s.period = nil
	for k, c := range f.cuts {
		r := p.rows[c.row]
		nr := r
		nr.first = int32(len(s.nodes))
		nr.last = nr.first + int32(r.len()) - c.gone
		for o := range int32(r.len()) {
			if o >= c.at && o < c.at+c.gone {
				continue
			}
			n := p.nodes[r.first+o]
			legs := p.of(r.first + o)
			n.row, n.leg, n.fan = int32(k), int32(len(s.legs)), -1
			for _, l := range legs {
				if l.a >= 0 {
					below := int32(k) - (int32(c.row) - p.nodes[l.a].row)
					if below < 0 {
						continue
					}
					at := nr
					if below < int32(k) {
						at = s.rows[below]
					}
					back := at.first - p.rows[p.nodes[l.a].row].first
					if o >= c.at {
						back -= f.cuts[below].gone
					}
					l.a = min(max(l.a+back, at.first), at.last-1)
					l.b = min(max(l.b+back, at.first), at.last-1)
				}
				s.legs = append(s.legs, l)
			}
			n.nlegs = int32(len(s.legs)) - n.leg
			s.nodes = append(s.nodes, n)
		}
		s.rows = append(s.rows, nr)
	}
	s.at = make([]geom.Point, len(s.nodes))
	if q := p.period; q != nil {
		s.period = &period{nodes: make([]int32, len(s.rows))}
		for k, c := range f.cuts {
			s.period.nodes[k] = q.nodes[c.row]
		}
	}
	s.findFans()
	return &s
}

// fits reports whether the repeat that stands for those left out joins on to
// itself, in every row.
func (f *fold) fits() bool {
	if f.times == 0 {
		return true
	}
	wide, _ := f.steps()
	for k, c := range f.cuts {
		i := f.small.rows[k].first + c.from
		d := f.small.at[i+c.period].Sub(f.small.at[i])
		if d.Sub(geom.Point{X: wide}).Len() > seamError {
			return false
		}
	}
	return true
}

// unfold puts the solved small piece back as often as it was left out.
func (f *fold) unfold() {
	wide, high := f.steps()
	for k, r := range f.whole.rows {
		small, ups := k, 0
		if f.rowsOut > 0 && k >= f.sample {
			ups = min((k-f.sample)/f.up.rows, f.rowsOut/f.up.rows)
			small = k - ups*f.up.rows
		}
		c := f.cuts[small]
		first := f.small.rows[small].first
		lift := geom.Point{Y: high * float64(ups)}
		for o := range int32(r.len()) {
			times := int32(0)
			if f.times > 0 && o >= c.from {
				times = min((o-c.from)/c.period, f.times)
			}
			q := f.small.at[first+o-times*c.period].Add(lift)
			q.X += wide * float64(times)
			f.whole.at[r.first+o] = q
		}
	}
}

// steps is the width of one repeat across and the height of one upward.
func (f *fold) steps() (wide, high float64) {
	s := f.small
	if c := f.cuts[0]; f.times > 0 {
		i := s.rows[0].first + c.from
		wide = s.at[i+c.period].X - s.at[i].X
	}
	if f.rowsOut > 0 {
		a, b := s.rows[f.sample], s.rows[f.sample+f.up.rows]
		for i := range int32(a.len()) {
			high += (s.at[b.first+i].Y - s.at[a.first+i].Y) / float64(a.len())
		}
	}
	return wide, high
}
