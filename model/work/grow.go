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
