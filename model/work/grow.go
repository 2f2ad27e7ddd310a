package work

import "strandway/model/syntax"

// mostGrown bounds rows that go on as they began.
const mostGrown = 400

// grown adds rows that differ from one another as the last two rows do: "continue in this way until there are 60 sts".
func (u *unfolding) grown(row *syntax.Row, ref *syntax.RowRef, source int) {
	two := u.lastOnes(2)
	if len(two) < 2 {
		return
	}
	a, b := two[0], two[1]
	n := 0
	switch {
	case row.From > 0:
		n = len(u.numbers(row))
	case !ref.For.IsZero():
		if n = u.w.num(ref.For); ref.InAll {
			n -= u.last
		}
	default:
		have, more := u.w.stated(b.count), u.w.stated(b.count)-u.w.stated(a.count)
		if more > 0 && have > 0 {
			n = (u.w.num(ref.Sts) - have) / more
		}
	}
	for k := 1; k <= min(n, mostGrown); k++ {
		s := b
		again := *b.written
		again.body = further(a.written.body, b.written.body, k)
		s.written, s.body, s.under, s.count = &again, again.body, source, nil
		if k == n {
			s.count = u.w.step.row.Count
		}
		u.add(s, u.last+1)
	}
}

// rowsTo is how many rows a reference needs to come to its number of stitches, reckoned from the last stated count and
// from what each of the rows takes in or adds.
func (u *unfolding) rowsTo(ref *syntax.RowRef, rows []int) int {
	var from []step
	for _, no := range rows {
		if s, ok := u.at(no); ok {
			from = append(from, s)
		}
	}
	if ref.Last > 0 {
		from = u.lastOnes(ref.Last)
	}
	have, more := 0, 0
	for i := len(u.out) - 1; i >= 0 && have == 0; i-- {
		if have = u.w.stated(u.out[i].count); have == 0 {
			more += u.w.gain(u.out[i].written.body)
		}
	}
	have += more
	each := 0
	for _, s := range from {
		each += u.w.gain(s.written.body)
	}
	left := u.w.num(ref.Sts) - have
	if each == 0 || left/each < 0 {
		return u.w.opt.RowsUntil * max(len(from), 1)
	}
	return min(left/each, mostGrown) * len(from)
}

// gain is how many stitches more than the row below a row has by its increases and decreases alone.
func (w *worker) gain(body []syntax.Node) (n int) {
	for _, node := range body {
		m, ok := node.(*syntax.Make)
		if !ok || m.Place == nil || m.Place.Ord == syntax.Each || m.Kind == slipStitch {
			continue
		}
		if tog := spans(w.fab.Kinds[w.kind(m.Kind)]); tog > 1 {
			n -= (tog - 1) * max(1, w.times(m.Place.N)/tog)
		} else if per := w.times(m.N); per > 1 && !m.Alike {
			n += (per - 1) * max(1, w.times(m.Place.N))
		}
	}
	return n
}

// stated is the number of stitches that a count states, 0 where it does not.
func (w *worker) stated(count []syntax.Tally) int {
	if len(count) == 0 {
		return 0
	}
	return w.num(count[0].N)
}

// further is row b, changed k times more as it differs from row a.
func further(a, b []syntax.Node, k int) []syntax.Node {
	if len(a) != len(b) {
		return b
	}
	num := func(p, q syntax.Num) syntax.Num {
		if p.Sizes != nil || q.Sizes != nil {
			return q
		}
		q.B += k * (q.B - p.B)
		return q
	}
	out := make([]syntax.Node, len(b))
	for i, n := range b {
		out[i] = n
		switch y := n.(type) {
		case *syntax.Make:
			x, ok := a[i].(*syntax.Make)
			if !ok || x.Place == nil || y.Place == nil {
				continue
			}
			z, q := *y, *y.Place
			z.N, q.N = num(x.N, y.N), num(x.Place.N, q.N)
			z.Place, out[i] = &q, &z
		case *syntax.ChainN:
			if x, ok := a[i].(*syntax.ChainN); ok {
				z := *y
				z.N, out[i] = num(x.N, y.N), &z
			}
		case *syntax.Repeat:
			if x, ok := a[i].(*syntax.Repeat); ok {
				z := *y
				z.Body, z.Ext.N = further(x.Body, y.Body, k), num(x.Ext.N, y.Ext.N)
				out[i] = &z
			}
		}
	}
	return out
}
