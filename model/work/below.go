package work

import (
	"sort"

	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// reach is how far to the side, in columns, a long stitch finds its place.
const reach = 1.6

// findBelow looks n rows down for what lies under the cursor: of the sort that
// is asked, nearest in column, and not the one taken there last. The long stitch
// takes the place of one landing of the row below: one chain of a space, or one top.
func (w *worker) findBelow(p *syntax.Place) (target, error) {
	down := p.Below
	if p.Row > 0 {
		at, ok := w.rowsOfNo[p.Row]
		if !ok {
			return target{}, fail("there is no row %d above to work into", p.Row)
		}
		if down = int(w.row - at); at == w.into && w.into > 0 {
			down = 1
		}
	}
	switch {
	case down == 1:
		q := *p
		q.Below, q.Row = 0, 0
		return w.find(&q)
	case down > int(w.row) || down > 255:
		return target{}, fail("there are not %d rows below", down)
	case w.pos >= w.met:
		return target{}, fail("no stitch is left for the long stitch to stand over")
	}
	col := w.stitchAt(w.pos).Col
	id, ok := w.nearest(w.row-int32(down), col, p, down)
	if !ok {
		word := w.placeWord(p.What, p.Name, p.Chains)
		for d := 2; d <= maxDepth && d <= int(w.row); d++ {
			if _, has := w.nearest(w.row-int32(d), col, p, d); has && d != down {
				return target{}, fail("no %s %d rows below at this column; there is one %d rows below", word, down, d)
			}
		}
		return target{}, fail("no %s %d rows below at this column", word, down)
	}
	i := w.pos
	if !w.lands[i].chain {
		w.behind++
		w.covered++
	}
	w.pos = i + 1
	if down < maxDepth {
		w.below[down] = id + 1
	}
	t := target{at: id, a: int32(i), b: int32(i), down: uint8(down)}
	if w.fab.Stitches[id].Has(fabric.Chain) && int32(down) < w.row {
		t.how = fabric.Space
		t.at = w.firstOfSpace(id)
	}
	return t, nil
}

// sunk is the place of a kind that stands below by its nature: a spike in the
// next stitch goes under it, as far down as there are rows.
func (w *worker) sunk(k *stitch.Kind, p *syntax.Place) *syntax.Place {
	if k.Below == 0 || p != nil && (p.Below > 0 || p.Row > 0) {
		return p
	}
	if p == nil {
		p = nextStitch
	}
	q := *p
	q.Below = min(1+k.Below, int(w.row))
	return &q
}

// rowNamed gives the row that every stitch of a round goes into by its number, where that is not the row below: the petals
// of a rose are worked behind those of the round before.
func (w *worker) rowNamed(body []syntax.Node) int32 {
	no, other := 0, false
	anyNode(body, func(n syntax.Node) bool {
		p := placeOf(n)
		switch {
		case p == nil:
		case p.Row == 0 || no > 0 && p.Row != no:
			other = true
		default:
			no = p.Row
		}
		return other
	})
	at, ok := w.rowsOfNo[no]
	if no == 0 || other || !ok || at == w.row-1 || !w.round {
		return 0
	}
	return at
}

// nearest finds the landing of a row that lies nearest under a column.
func (w *worker) nearest(row int32, col float32, p *syntax.Place, down int) (int32, bool) {
	ids := w.fab.LandingsOf(int(row))
	from, to := 0, len(ids)
	if len(ids) > 0 && !w.round { // columns run one way from edge to edge
		up := w.fab.Stitches[ids[len(ids)-1]].Col >= w.fab.Stitches[ids[0]].Col
		at := sort.Search(len(ids), func(i int) bool {
			c := w.fab.Stitches[ids[i]].Col
			return up && c >= col || !up && c <= col
		})
		from, to = max(0, at-6), min(len(ids), at+7)
	}
	last := int32(-1)
	if down < maxDepth && p.Ord == syntax.Next && len(ids) > 1 {
		last = w.below[down] - 1
	}
	best, least := int32(-1), float32(reach)
	for _, id := range ids[from:to] {
		s := &w.fab.Stitches[id]
		if id == last {
			continue
		}
		chain := s.Has(fabric.Chain)
		ok := !chain || row == 0
		switch p.What {
		case syntax.InKind:
			ok = !chain && w.isKind(s, p.Name)
		case syntax.InSp, syntax.InCh:
			ok = chain
		}
		if d := w.apart(s.Col, col); ok && d < least-0.001 {
			best, least = id, d
		}
	}
	return best, best >= 0
}

// apart is the distance of two columns; in rounds, the shorter way round.
func (w *worker) apart(a, b float32) float32 {
	d := max(a-b, b-a)
	if round := w.around(); round > 0 && d > round/2 {
		return max(0, round-d)
	}
	return d
}

// around is how many columns the present rounds have; 0 in rows.
func (w *worker) around() float32 {
	if !w.round {
		return 0
	}
	return w.circle
}

// firstOfSpace is the first chain, in the order of making, of the space that a chain is part of.
func (w *worker) firstOfSpace(id int32) int32 {
	s := &w.fab.Stitches[id]
	for id > 0 {
		p := &w.fab.Stitches[id-1]
		if !p.Has(fabric.Chain) || p.Flags&fabric.NoLanding != 0 || p.Row != s.Row || p.Unit != s.Unit {
			break
		}
		id--
	}
	return id
}
