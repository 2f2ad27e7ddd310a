package work

import (
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// nextStitch is the place of a stitch that names none.
var nextStitch = &syntax.Place{N: syntax.Plain(1)}

// find looks a place up and moves the cursor past it. What "next dc" or "next
// ch-2 sp" passes on the way is passed freely: the name is the permission.
func (w *worker) find(p *syntax.Place) (target, error) {
	if p == nil {
		p = nextStitch
	}
	plain := p.Ord == syntax.Next && p.What == syntax.InSt && p.Of == nil
	switch {
	case w.place != nil && plain && p.Below == 0 && p.Row == 0:
		return *w.place, nil
	case p.What == syntax.InUnworked, p.Row > 0 && p.What == syntax.InSt && p.Lie == syntax.LieUnsaid && w.leftBy(p.Row) >= 0:
		return w.findUnworked(p)
	case p.Below > 1 || p.Row > 0:
		return w.findBelow(p)
	case w.isBase && w.met == 0 && (plain || p.What == syntax.InCorner || p.What == syntax.InSp && w.ring): // nothing but the ring to work into
		return inRing, nil
	}
	if p.What == syntax.InCh && w.spur > w.spurEnd {
		return w.alongSpur(), nil
	}
	if p.What == syntax.InCorner && w.start && w.hasSame && p.Ord == syntax.Next && w.same.how == fabric.Space &&
		(w.hasOrigin && w.same.a < 0 || w.same.a >= 0 && int(w.same.b)+1 == w.pos && w.isCorner(int(w.same.a), 0)) {
		return w.same, nil // "sl st to corner sp, ch 3, 2 dc in corner sp": the one that the round begins in
	}
	if p.What == syntax.InCentre && w.round && w.seek(syntax.InCorner, "", 0) >= 0 && w.seek(syntax.InCentre, "", 0) < 0 {
		return w.findNext(syntax.InCorner, "", 0) // "3 sc in middle sc" of the last corner
	}
	switch p.What {
	case syntax.InRing:
		return inRing, nil
	case syntax.InTch:
		return w.findTurningChain()
	case syntax.InGap:
		return w.findGap(p)
	case syntax.InOther:
		w.free = true // the row goes on elsewhere
		return inRing, nil
	case syntax.InOpening:
		return w.findOpening(p)
	case syntax.InSkipped:
		if w.skipA < 0 && (w.start || w.ledgeFrom > 0) {
			return w.findOpening(p)
		}
		if w.skipA < 0 || w.skipA >= w.skipB {
			return target{}, fail("no skipped stitch is left to go back to")
		}
		t := w.take(w.skipA, w.skipA)
		t.lie = p.Lie
		w.skipA++
		return t, nil
	case syntax.InFace:
		t, err := w.findNext(syntax.InSt, "", 0)
		t.how = fabric.OnFace
		return t, err
	}
	if p.Of != nil {
		return w.findOf(p)
	}
	switch p.Ord {
	case syntax.Same:
		return w.findSame(p)
	case syntax.First:
		switch {
		case w.start && w.hasSame && (w.same.inGap() || p.What != syntax.InSp):
			return w.same, nil // the place at the foot of the turning chain
		case w.nested > 0 && w.place == nil && !w.start: // "first" of every repeat: its next
			return w.findNext(p.What, p.Name, p.Chains)
		case !w.start && w.round && w.hasOrigin && w.origin.inGap():
			return w.origin, nil
		case p.What == syntax.InUnder:
		case !w.start && w.round && w.pos > w.edgeStart: // "2 tr in first sp" at the round's end: where it began
			pos, q := w.pos, *p
			w.pos, q.Ord = w.edgeStart, syntax.Next
			t, err := w.find(&q)
			w.pos = pos
			return t, err
		}
	case syntax.Last:
		return w.findLast(p)
	case syntax.Nth:
		return w.findNth(p)
	}
	if p.What == syntax.InSp && !w.hasSp && p.Chains == 0 {
		return w.findGap(p)
	}
	return w.findNext(p.What, p.Name, p.Chains)
}

// findNext goes to the next landing of a sort.
func (w *worker) findNext(what syntax.What, name string, chains int) (target, error) {
	i := w.seek(what, name, chains)
	switch {
	case i < 0 && what == syntax.InEnd:
		if err := w.toSide(); err != nil {
			return target{}, err
		}
		i = w.seek(what, name, chains)
	case i < 0 && what == syntax.InUnder && w.bridge > 0:
		return w.alongBridge(true)
	case i < 0 && what == syntax.InUnder:
		if err := w.toUnderside(); err != nil {
			return target{}, err
		}
		i = w.seek(what, name, chains)
	case i < 0 && what == syntax.InCh && w.bridge > 0: // "ch 3, ... sc in each of the 3 ch"
		return w.alongBridge(false)
	case i < 0 && what == syntax.InCh: // the top of the turning chain is a chain as well
		i = w.seek(syntax.InTch, "", 0)
	}
	if i < 0 {
		return target{}, none(what, name, chains)
	}
	switch {
	case what == syntax.InUnit:
		a, b := w.unitSpan(i)
		t := w.centre(a, b)
		w.pos = b + 1
		if w.reading.inside {
			w.pos = int(t.b) + 1
		}
		return t, nil
	case w.lands[i].chain && (what == syntax.InSp || what == syntax.InStSp || what == syntax.InCorner):
		e := w.runEnd(i)
		w.pos = e + 1
		return w.takeSpace(i, e), nil
	}
	w.pos = i + 1
	t := w.take(i, i)
	if what == syntax.InSp {
		t.how = fabric.Space // under the turning chain, not in its top
	}
	return t, nil
}

// toSide turns the corner to row ends that are worked without a word of it.
func (w *worker) toSide() error {
	if w.edge != fabric.Upper && w.edge != fabric.Bottom {
		return nil
	}
	return w.along(&syntax.Along{Edge: syntax.SideEdge})
}

// toUnderside turns the corner to the foundation's other side.
func (w *worker) toUnderside() error {
	if w.edge == fabric.Bottom {
		return nil
	}
	return w.along(&syntax.Along{Edge: syntax.LowerEdge})
}

// toEdge turns the corner for "sc in each row end" and "sc in each ch of foundation".
func (w *worker) toEdge(body []syntax.Node) error {
	if len(body) == 0 {
		return nil
	}
	m, ok := body[0].(*syntax.Make)
	if !ok || m.Place == nil || w.seek(m.Place.What, "", 0) >= 0 {
		return nil
	}
	switch m.Place.What {
	case syntax.InEnd:
		return w.toSide()
	case syntax.InUnder:
		if w.bridge > 0 {
			return nil
		}
		return w.toUnderside()
	case syntax.InUnworked:
		return w.toLedge(m.Place.Row)
	}
	return nil
}

func (w *worker) findSame(p *syntax.Place) (target, error) {
	switch {
	case w.hasSame && p.What == syntax.InSp && w.same.a >= 0 && w.same.how == fabric.Top && w.lands[w.same.a].chain: // the loop of that chain
		a := int(w.same.a)
		for a > 0 && w.lands[a-1].chain && w.unitAt(a-1) == w.unitAt(a) {
			a--
		}
		e := w.runEnd(a)
		w.pos = max(w.pos, e+1)
		return w.takeSpace(a, e), nil
	case w.hasSame:
		return w.same, nil
	case w.met == 0:
		return inRing, nil
	}
	i := min(w.pos, w.met-1)
	w.pos = i + 1
	return w.take(i, i), nil
}

func (w *worker) findNth(p *syntax.Place) (target, error) {
	n := w.num(p.N)
	what, name, chains := p.What, p.Name, p.Chains
	if what == syntax.InHook {
		n, what, name, chains = 1, syntax.InCh, "", 0
	}
	if n < 1 || n > w.met {
		return target{}, fail("there is no %s place here", ordinal(n))
	}
	i := -1
	for range n {
		if i = w.seek(what, name, chains); i < 0 {
			return target{}, none(what, name, chains)
		}
		w.pos = i + 1
	}
	return w.take(i, i), nil
}

// findOf reads "centre dc of next shell", "ch-1 sp of next V-st", "3rd dc of next group". The cursor stays inside the group.
func (w *worker) findOf(p *syntax.Place) (target, error) {
	q := p.Of
	if q.What != syntax.InUnit {
		return w.findOfPlain(p, q)
	}
	i := -1
	if q.Ord == syntax.Same && w.aside >= 0 { // "6th dc of same fan"
		for i = min(w.pos, w.met) - 1; i > 0 && w.unitAt(i-1) == w.aside; i-- {
		}
		if i >= 0 && w.unitAt(i) != w.aside {
			i = -1
		}
	} else if q.Ord == syntax.Last {
		for i = w.met - 1; i >= 0 && !w.matches(i, syntax.InUnit, q.Name, q.Chains); i-- {
		}
	} else {
		i = w.seek(syntax.InUnit, q.Name, q.Chains)
	}
	if i < 0 || w.beganIn(i) {
		return target{}, none(syntax.InUnit, q.Name, 0)
	}
	a, b := w.unitSpan(i)
	w.aside = w.unitAt(a)
	if p.Centre {
		t := w.centre(a, b)
		w.pos = int(t.b) + 1
		return t, nil
	}
	k, n := 0, max(1, w.num(p.N))
	found, end := -1, -1
	for j := a; j <= b; j++ {
		if p.What == syntax.InSt && w.lands[j].chain || p.What != syntax.InSt && !w.matches(j, p.What, p.Name, p.Chains) {
			continue
		}
		e := j
		if p.What == syntax.InSp {
			e = w.runEnd(j)
		}
		k++
		found, end = j, e
		if p.Ord == syntax.Nth && k == n || p.Ord != syntax.Nth && p.Ord != syntax.Last {
			break
		}
		j = e
	}
	if found < 0 || p.Ord == syntax.Nth && k < n {
		return target{}, fail("the next %s has no such stitch", unitWord(q.Name))
	}
	w.pos = end + 1
	if p.What == syntax.InSp {
		return w.takeSpace(found, end), nil
	}
	return w.take(found, end), nil
}

// beganIn reports whether landing i is the rest of the group in which the round's first stitch stands, met again at its end.
func (w *worker) beganIn(i int) bool {
	u := w.unitAt(i)
	if !w.round || u < 0 || u != w.unitAt(0) {
		return false
	}
	if _, b := w.unitSpan(0); i <= b {
		return false
	}
	for id := w.rowFirst(); int(id) < len(w.fab.Stitches); id++ {
		if s := &w.fab.Stitches[id]; s.NBase > 0 && !s.Has(fabric.Travel) {
			at := w.fab.Of(id)[0].At
			return at >= 0 && w.fab.Stitches[at].Unit == u
		}
	}
	return false
}

// findOfPlain reads "3rd ch of next ch-5 sp" and "centre ch of next loop".
func (w *worker) findOfPlain(p, q *syntax.Place) (target, error) {
	if p.Centre && (q.What == syntax.InSp || q.What == syntax.InCh) {
		return w.find(q)
	}
	if p.Ord == syntax.Nth && p.What == syntax.InCh { // one chain of a loop
		i := w.seek(syntax.InSp, "", q.Chains)
		if i < 0 {
			return target{}, none(syntax.InSp, "", q.Chains)
		}
		e := w.runEnd(i)
		k := min(i+max(1, w.num(p.N))-1, e)
		w.pos = e + 1
		return w.take(k, k), nil
	}
	c := *p
	c.Of = nil
	return w.find(&c)
}

// findLast goes to the last landing of a sort, or the last but N. Tops passed on the way are counted: the row left
// them out without a word.
func (w *worker) findLast(p *syntax.Place) (target, error) {
	n := w.times(p.N)
	end := w.met
	if w.allRound && p.What != syntax.InEnd && p.What != syntax.InUnder { // the last of the edge at hand
		for end = w.pos; end < w.met && w.lands[end].how == w.lands[w.pos].how; end++ {
		}
	}
	for i := end - 1; i >= w.pos; i-- {
		if loop := !w.lands[i].chain && p.What == syntax.InSp && w.matches(i, p.What, "", p.Chains); loop { // of a turning chain
			if n--; n > 0 {
				continue
			}
			w.pos = i + 1
			t := w.take(i, i)
			t.how = fabric.Space
			return t, nil
		}
		if !w.matches(i, p.What, p.Name, 0) {
			continue
		}
		switch p.What {
		case syntax.InSp:
			for i > w.pos && w.lands[i-1].chain {
				i--
			}
			if p.Chains > 0 && w.runEnd(i)-i+1 != p.Chains {
				continue
			}
		case syntax.InUnit:
			for i > w.pos && w.unitAt(i-1) == w.unitAt(i) {
				i--
			}
		}
		if n--; n > 0 {
			continue
		}
		switch {
		case p.What == syntax.InUnit:
			a, b := w.unitSpan(i)
			w.pos = b + 1
			return w.centre(a, b), nil
		case p.What == syntax.InSp, p.What == syntax.InCorner && w.lands[i].chain:
			for p.What == syntax.InCorner && i > w.pos && w.lands[i-1].chain {
				i--
			}
			e := w.runEnd(i)
			w.pos = e + 1
			return w.takeSpace(i, e), nil
		case p.What == syntax.InSt || p.What == syntax.InKind || w.lands[i].base:
			w.pass(i)
		}
		w.pos = i + 1
		return w.take(i, i), nil
	}
	if p.What == syntax.InCh && w.seek(syntax.InTch, "", 0) >= 0 { // "in the end chain": the top of the turning chain
		return w.findTurningChain()
	}
	return target{}, none(p.What, p.Name, p.Chains)
}

// findTurningChain goes to the top of the turning chain of the row below.
func (w *worker) findTurningChain() (target, error) {
	if i := w.seek(syntax.InTch, "", 0); i >= 0 {
		w.pass(i)
		w.pos = i + 1
		return w.take(i, i), nil
	}
	return target{}, &misfit{what: syntax.InTch, text: "the turning chain of the row below does not count, or is worked already"}
}

// edgeGap is the name of a gap that may lie beside an edge stitch: "sp between tch and next group".
const edgeGap = "edge"

// findGap goes to the next place between two groups, or two stitches where there are no groups.
func (w *worker) findGap(p *syntax.Place) (target, error) {
	groups := w.groups > 1 // a ring is one group, with no other to stand beside
	for i := max(w.pos-1, 0); i+1 < w.met; i++ {
		if w.pos > 0 && i+1 == w.pos && w.hasSame && w.same.how == fabric.Gap && int(w.same.b) == i+1 {
			continue // worked just now
		}
		u, v := w.unitAt(i), w.unitAt(i+1)
		if groups && (u == v || p.Name != edgeGap && (u < 0 || v < 0)) {
			continue
		}
		if !groups && i+1 <= w.pos-1 {
			continue
		}
		w.pos = i + 1
		return w.takeGap(i), nil
	}
	if last := w.met - 1; !groups && w.round && last > 0 && w.pos >= w.met && !(w.hasSame && w.same.how == fabric.Gap && w.same.a == int32(last)) { // where the round closes
		t := w.take(last, last)
		t.how = fabric.Gap
		return t, nil
	}
	return target{}, none(syntax.InGap, "", 0)
}
