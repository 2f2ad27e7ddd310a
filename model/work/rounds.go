package work

import (
	"slices"
	"strings"

	"strandway/model/fabric"
	"strandway/model/syntax"
)

// shapeOf decides whether a row goes from edge to edge, is a joined round, or
// runs on in a spiral. A piece that starts in a ring is in rounds until it is
// first said to turn, whatever its rows are called.
func (w *worker) shapeOf(s *step, before []step, anyTurn bool) fabric.Shape {
	for _, n := range s.tail {
		if j, ok := n.(*syntax.Join); ok {
			if j.Not {
				return fabric.Spiral
			}
			return fabric.Joined
		}
	}
	if anyNode(s.body, func(n syntax.Node) bool { j, ok := n.(*syntax.Join); return ok && !j.Not }) {
		return fabric.Joined
	}
	tube := len(before) > 0 && before[len(before)-1].shape == fabric.Joined && before[len(before)-1].turn.after != turned &&
		s.turn.before != turned && firstChain(s.body) != nil
	round := s.row.Round || tube || w.ring && !anyTurn && (len(before) == 0 || before[len(before)-1].shape != fabric.Flat)
	switch {
	case !round:
		return fabric.Flat
	case len(before) > 0 && before[len(before)-1].shape == fabric.Joined && (firstChain(s.body) != nil || s.pend != nil):
		return fabric.Joined // a spiral has no starting chains: the join goes without saying
	}
	return fabric.Spiral
}

// worksBackward reports whether a row is worked against the hook's usual way, as crab stitch is.
func (w *worker) worksBackward(body []syntax.Node) bool {
	return anyNode(body, func(n syntax.Node) bool {
		m, ok := n.(*syntax.Make)
		return ok && strings.Contains(w.fab.Kinds[w.kind(m.Kind)].Composition, backwards)
	})
}

// wrapRound lays out again what a round has still to meet when its beginning is
// moved along by slip stitches: what lies before the new beginning comes last.
func (w *worker) wrapRound() {
	if !w.round || w.isEdge() || w.same.a <= 0 || w.pos == 0 {
		return
	}
	k := int(w.same.a)
	if w.lands[k].chain { // the loop that the round begins in is not met again
		w.pos = max(w.pos, w.runEnd(k)+1)
		for k > 0 && w.lands[k-1].chain && w.unitAt(k-1) == w.unitAt(k) {
			k--
		}
	}
	for u := w.unitAt(k); u >= 0 && (u == w.aside || w.same.how == fabric.Space) && k > 0 && w.unitAt(k-1) == u; { // the group that the round begins in is not met again
		k--
	}
	w.lands = append(w.lands[:w.met], w.lands[:k]...)
	w.met += k
}

// beginRound lays out the landings of a round: round a flat piece they have
// corners, and after a half-join the hook stands in the middle of the last space.
func (w *worker) beginRound() {
	prev := &w.fab.Rows[w.row-1]
	if !w.round {
		return
	}
	if prev.Shape == fabric.Flat && !w.isBase {
		if w.corners(0); goesRound(w.step.body) {
			w.allEdges()
		} else if edges, atEnd := edgesNamed(w.step.body); edges > 1 {
			w.allEdges()
			if atEnd {
				w.fromLastCorner()
			}
		}
		return
	}
	if prev.Last == prev.First || w.isBase {
		return
	}
	last := &w.fab.Stitches[prev.Last-1]
	if !last.Has(fabric.Join) || w.fab.Kinds[last.Kind].Name == slipStitch || w.met < 2 || !w.lands[w.met-1].chain {
		return
	}
	a := w.met - 1
	for a > 0 && w.lands[a-1].chain {
		a--
	}
	w.origin = w.takeSpace(a, w.met-1)
	w.origin.a, w.origin.b = -1, -1
	w.same, w.hasSame, w.hasOrigin = w.origin, true, true
	w.met = a // the rest of the space is where the round ends
}

// joinAt works what stands before a row's first stitch: yarn joined in a named
// place, and the edge to work along. It gives the number of nodes worked.
func (w *worker) joinAt(body []syntax.Node) (int, error) {
	for i, n := range body {
		switch x := n.(type) {
		case *syntax.Yarn:
			w.takeYarn(x)
			if x.Place == nil {
				continue
			}
			if err := w.beginAt(x.Place); err != nil {
				m := asMisfit(err)
				m.span = x.Span
				return i, m
			}
		case *syntax.Along:
			if err := w.along(x); err != nil {
				m := asMisfit(err)
				m.span = x.Span
				return i, m
			}
		case *syntax.Turn, *syntax.Note:
		case *syntax.Skip: // "skip next 6 sts of Row 2, join B in next st"
			if i+1 == len(body) || !joinsIn(body[i+1]) {
				return i, nil
			}
			if err := w.skip(x, body[i+1:]); err != nil {
				m := asMisfit(err)
				m.span = x.Span
				return i, m
			}
			w.start = true
		default:
			return i, nil
		}
	}
	return len(body), nil
}

// joinsIn reports whether a node joins yarn in a named place.
func joinsIn(n syntax.Node) bool {
	y, ok := n.(*syntax.Yarn)
	return ok && y.Do == syntax.JoinIn && y.Place != nil
}

// beginAt lets the row begin where the yarn is joined. A round ends beside it.
func (w *worker) beginAt(p *syntax.Place) error {
	t, err := w.find(p)
	if err != nil || t.a < 0 {
		return err
	}
	if p.What == syntax.InOpening && p.Ord != syntax.Nth { // at its corner
		w.same, w.hasSame = t, true
		return nil
	}
	k := w.pos
	if !t.inGap() {
		k = int(t.a)
	}
	if w.round && w.ledgeFrom > 0 {
		turned := slices.Concat(w.lands[:w.ledgeFrom], w.lands[k:w.met], w.lands[w.ledgeFrom:k])
		w.lands, k = append(w.lands[:0], turned...), w.ledgeFrom
	} else if w.round && w.edge != fabric.Upper && !w.allRound {
		turned := slices.Concat(w.lands[:w.edgeStart], w.lands[k:w.met], w.lands[w.edgeStart:k])
		w.lands, k = append(w.lands[:0], turned...), w.edgeStart
	} else if w.round {
		turned := append(append(make([]landing, 0, w.met), w.lands[k:w.met]...), w.lands[:k]...)
		w.lands, k = append(w.lands[:0], turned...), 0
		if t.how == fabric.Space {
			w.met -= int(t.b-t.a) + 1 // the round ends beside the space it began in
		}
	}
	w.pos = k
	if t.inGap() {
		if w.round {
			t.a, t.b = -1, -1
		}
		w.same, w.hasSame = t, true
		w.origin, w.hasOrigin = t, true
	}
	return nil
}

// unsaidSkip: "*ch 2, skip 1 st, dc in next st; rep from * around" ends, in a
// round, with a skip that nobody writes.
func (w *worker) unsaidSkip(body []syntax.Node) int {
	for _, n := range body {
		if x, ok := n.(*syntax.Repeat); ok {
			passed := 0
			for _, inner := range x.Body {
				switch s := inner.(type) {
				case *syntax.Skip:
					if s.What != syntax.InSp {
						passed += w.num(s.N)
					}
					continue
				case *syntax.Make, *syntax.Group, *syntax.Repeat:
					return passed
				}
			}
		}
	}
	return 0
}
