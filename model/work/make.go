package work

import (
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// makes works one make: N stitches in each of its places.
func (w *worker) makes(x *syntax.Make) error {
	per := w.times(x.N)
	p := x.Place
	places := 1
	if p != nil && (p.Ord == syntax.Next || p.Ord == syntax.First || p.Ord == syntax.Last) && p.What != syntax.InRing {
		places = w.times(p.N)
	}
	if x.Alike && w.reading.inEach {
		per = places
	}
	if per > w.opt.Limit || places > w.opt.Limit || per*places > w.opt.Limit {
		return w.overLimit()
	}
	kind := w.fab.Kinds[w.kind(x.Kind)]
	tog := spans(kind)
	switch {
	case p != nil && (p.Ext.How == syntax.Evenly):
		y, q := *x, *p
		q.Ord, q.N, q.Ext = syntax.Next, syntax.Plain(1), syntax.Extent{}
		if q.What == syntax.InSt {
			q.What = syntax.InStSp // spaces along an edge are worked into as they come
		}
		y.Place = &q
		return w.evenly([]syntax.Node{&y}, p.Ext)
	case w.place != nil && inThePlace(p):
		if p != nil && p.Ord != syntax.Same {
			per *= max(1, w.times(p.N)/tog)
		}
		return w.inside(x, per)
	case x.Unit != nil && x.Unit.Macro:
		return w.macro(x, per*places)
	case w.isPicot(x.Kind) && (p == nil || p.Ord == syntax.Next):
		for range per * places {
			w.picot(x.Kind, w.picotChains(x))
		}
		return nil
	case kind.Family == foundationFamily:
		w.start = false
		for range per * places {
			w.addStitch(x.Kind, 0, 0)
		}
		return nil
	case p != nil && p.What == syntax.InHook && !w.isBase:
		return w.atHook(x, per)
	case p != nil && p.What == syntax.InHook:
		if err := w.startAtHook(w.num(p.N)-1, x.Kind); err != nil {
			return err
		}
		if w.ring { // the one chain at the hook is the ring
			return w.manyIn(x, inRing, per)
		}
		y, q := *x, *p
		q.Ord, q.What, q.N = syntax.Next, syntax.InCh, syntax.Plain(1)
		y.Place = &q
		return w.makes(&y)
	case tog > 1:
		return w.together(x, tog, per, places)
	}
	if w.closes(x) {
		w.join(&syntax.Join{Span: x.Span, With: x.Kind})
		return nil
	}
	if w.travels(x) && w.pos == 0 && w.joinedBelow() && p != nil && p.Ord == syntax.Next {
		w.pos = 1 // the loop hangs in the first stitch already, where the round below was joined
	}
	if w.travels(x) && p != nil && p.Of != nil && p.What == syntax.InCh && p.Of.What == syntax.InSp { // "sl st in next 2 ch of first loop"
		t, err := w.findNext(syntax.InSp, "", p.Of.Chains)
		if err != nil {
			return err
		}
		return w.manyIn(x, t, places)
	}
	for k := range places {
		t, err := w.find(w.sunk(kind, w.placeNo(p, k, places)))
		if err != nil {
			return err
		}
		if err := w.manyIn(x, t, per); err != nil {
			return err
		}
	}
	return nil
}

// closes reports whether a stitch at the end of a round goes into the one with which the round began.
func (w *worker) closes(x *syntax.Make) bool {
	p := x.Place
	if p != nil && p.What == syntax.InTch && w.round && w.tch >= 0 && !w.start && w.place == nil && w.seek(syntax.InTch, "", 0) < 0 {
		return true // "ch 2, dc in 3rd ch of beg ch-5": a half-join
	}
	if x.Kind == slipStitch && w.round && !w.start && w.place == nil && w.nested == 0 && p != nil && (p.What == syntax.InKind || p.What == syntax.InUnit) &&
		p.Ord == syntax.Next && w.pos >= w.met {
		return true // "sl st to top of beg puff"
	}
	return x.Kind == slipStitch && w.round && !w.start && w.place == nil && w.pos >= w.met && w.nested == 0 &&
		p != nil && p.Ord == syntax.Next && p.What == syntax.InSt && w.times(p.N) == 1
}

// inThePlace reports whether a make inside a group goes into the group's own place.
func inThePlace(p *syntax.Place) bool {
	return p == nil || p.Ord == syntax.Same || p.Ord == syntax.Next && p.What == syntax.InSt && p.Of == nil && p.Below == 0 && p.Row == 0
}

// placeNo is the k-th of several places: "first 3 sts" is the first and the next two, "last 3 sts" the last but two and so on.
func (w *worker) placeNo(p *syntax.Place, k, places int) *syntax.Place {
	if p == nil || places == 1 {
		return p
	}
	q := *p
	switch {
	case p.Ord == syntax.First && k > 0:
		q.Ord = syntax.Next
	case p.Ord == syntax.Last:
		q.N = syntax.Plain(places - k)
	default:
		return p
	}
	return &q
}

// inside works stitches in the place of the group they stand in.
func (w *worker) inside(x *syntax.Make, per int) error {
	if x.Unit != nil && x.Unit.Recipe == "" && len(x.Unit.Body) > 0 {
		for range per {
			if err := w.sequence(x.Unit.Body, false); err != nil {
				return err
			}
		}
		return nil
	}
	if w.isPicot(x.Kind) {
		for range per {
			w.picot(x.Kind, w.picotChains(x))
		}
		return nil
	}
	for range per {
		w.one(x, *w.place)
	}
	return nil
}

// macro works a named group that finds its own places, as crossed stitches do.
func (w *worker) macro(x *syntax.Make, times int) error {
	was := w.inUnit
	w.inUnit = true
	for range times {
		if err := w.sequence(x.Unit.Body, false); err != nil {
			return err
		}
	}
	w.inUnit = was
	return nil
}

// together works decreases: each draws several places together.
func (w *worker) together(x *syntax.Make, tog, per, places int) error {
	if places%tog != 0 {
		if places > 1 {
			return fail("%s joins %s, but the row gives it %d", w.abbreviation(x.Kind), count(tog, "stitch"), places)
		}
		places = tog // "sc2tog in next st" means one decrease
	}
	var room [8]target
	for k := 0; k < places; k += tog {
		ts := room[:0]
		for range tog {
			t, err := w.find(w.nextLeg(x.Place, len(ts)))
			if err != nil {
				return err
			}
			ts = append(ts, w.inLoop(x, t))
		}
		w.begun(x)
		for range per {
			w.addMany(x.Kind, ts)
		}
		w.same, w.hasSame = ts[len(ts)-1], true
	}
	return nil
}

// nextLeg is the place of a decrease's further legs: "over first 2 sts" goes on with the next.
func (w *worker) nextLeg(p *syntax.Place, leg int) *syntax.Place {
	if p == nil || leg == 0 || p.Ord != syntax.First && p.Ord != syntax.Same && p.Ord != syntax.Last {
		return p
	}
	q := *p
	q.Ord = syntax.Next
	return &q
}

// manyIn works so many stitches, or groups, in one place.
func (w *worker) manyIn(x *syntax.Make, t target, per int) error {
	first := w.unitStart(t)
	w.begun(x)
	if x.Unit != nil && x.Unit.Recipe == "" {
		for range per {
			if err := w.inPlace(t, x.Unit.Body, x.Kind, first); err != nil {
				return err
			}
			first = int32(len(w.fab.Stitches))
		}
		return nil
	}
	for range per {
		w.one(x, t)
	}
	w.same, w.hasSame = t, true
	if w.shared && w.tch >= 0 {
		first, w.shared = w.tch, false
	}
	if per > 1 || first == w.tch && w.tch >= 0 {
		w.record(x.Kind, first, false)
	}
	return nil
}

// unitStart is the first stitch of a group made at t: the turning chain, where it stands in the same place.
func (w *worker) unitStart(t target) int32 {
	if w.tch >= 0 && w.start && w.hasSame && t.at == w.same.at && t.how == w.same.how && t.how != fabric.InRing {
		return w.tch
	}
	return int32(len(w.fab.Stitches))
}

// begun notes that the row's first stitch is made; travelling along leaves the beginning open.
func (w *worker) begun(x *syntax.Make) {
	if w.travels(x) {
		return
	}
	if w.travelled {
		w.wrapRound()
	}
	w.start, w.travelled = false, false
}

// travels reports whether a slip stitch only moves along to where the round begins.
func (w *worker) travels(x *syntax.Make) bool {
	return x.Kind == slipStitch && w.start && (!w.chained || w.step.climbs && w.tch < 0) && w.step.travels
}

// group works several instructions in one place, or in each of several.
func (w *worker) group(x *syntax.Group) error {
	p := x.Place
	if p == nil {
		return w.sequence(x.Body, false)
	}
	places := 1
	if p.What != syntax.InRing && p.Ord != syntax.Nth && p.What != syntax.InHook {
		places = w.times(p.N)
	}
	if p.What == syntax.InHook && w.isBase {
		if err := w.startAtHook(w.num(p.N)-1, w.firstKind(x.Body)); err != nil {
			return err
		}
		if w.ring {
			return w.inPlace(inRing, x.Body, x.Name, int32(len(w.fab.Stitches)))
		}
		p = &syntax.Place{Span: p.Span, N: syntax.Plain(1), What: syntax.InCh}
	}
	for k := range places {
		t, err := w.find(w.placeNo(p, k, places))
		if err != nil {
			return err
		}
		first := w.unitStart(t)
		if w.shared && w.tch >= 0 {
			first, w.shared = w.tch, false
		}
		if err := w.inPlace(t, x.Body, x.Name, first); err != nil {
			return err
		}
		if p.What == syntax.InCorner {
			w.fab.Units[len(w.fab.Units)-1].Corner = true
		}
	}
	return nil
}

// inPlace works a body into one place and records it as a group that begins at stitch first.
func (w *worker) inPlace(t target, body []syntax.Node, name string, first int32) error {
	if w.travelled {
		w.wrapRound()
	}
	if c := w.standsInPlace(body); c != nil {
		w.same, w.hasSame = t, true
		if err := w.turningChain(c, body[1:]); err != nil {
			return err
		}
		body = body[1:]
	}
	w.start, w.travelled = false, false
	outer := w.place
	w.place = &t
	err := w.sequence(body, false)
	w.place = outer
	w.same, w.hasSame = t, true
	w.record(name, first, t.a >= 0 && w.lands[t.a].corner)
	return err
}

// standsInPlace gives the starting chain that is written within the row's first group: "(ch 3, 2 dc, ch 2, 3 dc) in same sp".
func (w *worker) standsInPlace(body []syntax.Node) *syntax.ChainN {
	if !w.start || w.chained || w.tch >= 0 || w.isBase && !w.ring || len(body) < 2 {
		return nil
	}
	if c, ok := body[0].(*syntax.ChainN); ok && w.num(c.N) > 1 {
		return c
	}
	return nil
}

// record makes a group of the stitches from first on; one stitch is none, unless the pattern has a name for it.
func (w *worker) record(name string, first int32, corner bool) {
	last := int32(len(w.fab.Stitches))
	if _, named := w.tree.Units[name]; last <= first || last == first+1 && !named {
		return
	}
	unit := int32(len(w.fab.Units))
	w.fab.Units = append(w.fab.Units, fabric.Unit{Name: name, First: first, Last: last, Corner: corner})
	for i := first; i < last; i++ {
		w.fab.Stitches[i].Unit = unit
	}
}
