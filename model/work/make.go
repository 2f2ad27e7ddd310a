package work

import (
	"strandway/model/fabric"
	"strandway/model/stitch"
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
	if w.travels(x) && w.pos == 0 && w.joinedBelow() && p != nil && p.Ord == syntax.Next {
		w.pos = 1 // the loop hangs in the first stitch already, where the round below was joined
	}
	for k := range places {
		t, err := w.find(w.placeNo(p, k, places))
		if err != nil {
			return err
		}
		if err := w.manyIn(x, t, per); err != nil {
			return err
		}
	}
	return nil
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
	if p == nil || leg == 0 || p.Ord != syntax.First && p.Ord != syntax.Same {
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
	return x.Kind == slipStitch && w.start && !w.chained && w.step.travels
}

// joinedBelow reports whether the round below was closed by a slip stitch.
func (w *worker) joinedBelow() bool {
	below := &w.fab.Rows[w.row-1]
	return w.round && below.First < below.Last && w.fab.Stitches[below.Last-1].Has(fabric.Join) && !w.hasSame
}

// one makes a single stitch in a found place.
func (w *worker) one(x *syntax.Make, t target) {
	flags := fabric.Flags(0)
	if w.travels(x) {
		flags, w.travelled = fabric.NoLanding|fabric.Travel, true
	}
	if t.down > 1 {
		flags |= fabric.Long
	}
	if x.Place != nil && x.Place.What == syntax.InSkipped {
		flags |= fabric.Crossed
	}
	lie := t.lie
	if x.Place != nil && x.Place.Lie != syntax.LieUnsaid {
		lie = x.Place.Lie
	}
	if lie == syntax.BehindIt {
		flags |= fabric.Behind
	}
	if t.how == fabric.OnFace {
		flags |= fabric.Surface | fabric.NoLanding
	}
	w.add(x.Kind, w.inLoop(x, t), flags)
}

// inLoop settles under which loops, or round which side of the post, a stitch goes.
func (w *worker) inLoop(x *syntax.Make, t target) target {
	if t.how != fabric.Top {
		return t
	}
	k := w.fab.Kinds[w.kind(x.Kind)]
	loop := k.Loop
	if x.Place != nil && x.Place.Loop != syntax.BothLoops {
		loop = [...]stitch.Loop{stitch.BothLoops, stitch.FrontLoop, stitch.BackLoop, stitch.ThirdLoop}[x.Place.Loop]
	}
	switch {
	case k.Post == stitch.FrontPost:
		t.how = fabric.FrontPost
	case k.Post == stitch.BackPost:
		t.how = fabric.BackPost
	case loop == stitch.FrontLoop:
		t.how = fabric.FrontLoop
	case loop == stitch.BackLoop:
		t.how = fabric.BackLoop
	case loop == stitch.ThirdLoop:
		t.how = fabric.Third
	}
	return t
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
	w.start, w.travelled = false, false
	outer := w.place
	w.place = &t
	err := w.sequence(body, false)
	w.place = outer
	w.same, w.hasSame = t, true
	w.record(name, first, t.a >= 0 && w.lands[t.a].corner)
	return err
}

// record makes a group of the stitches from first on; one stitch is none.
func (w *worker) record(name string, first int32, corner bool) {
	last := int32(len(w.fab.Stitches))
	if last <= first+1 {
		return
	}
	unit := int32(len(w.fab.Units))
	w.fab.Units = append(w.fab.Units, fabric.Unit{Name: name, First: first, Last: last, Corner: corner})
	for i := first; i < last; i++ {
		w.fab.Stitches[i].Unit = unit
	}
}

// atHook works into a chain made just now: "sl st in 3rd ch from hook".
func (w *worker) atHook(x *syntax.Make, per int) error {
	n := w.num(x.Place.N)
	at := len(w.fab.Stitches) - n
	if n < 1 || at < int(w.rowFirst()) || !w.fab.Stitches[at].Has(fabric.Chain) || !w.fab.Stitches[len(w.fab.Stitches)-1].Has(fabric.Chain) {
		return &misfit{span: x.Span, text: "no chain stands at the hook here: a row that begins in the " + ordinal(n) + " ch from hook is worked into a foundation"}
	}
	for range per {
		w.one(x, target{at: int32(at), a: -1, b: -1})
	}
	return nil
}

// rowFirst is the first stitch of the row in work.
func (w *worker) rowFirst() int32 { return w.fab.Rows[len(w.fab.Rows)-1].Last }

// picotAhead: chains closed by a slip stitch into one of themselves are a picot.
func (w *worker) picotAhead(c *syntax.ChainN, next syntax.Node) bool {
	m, ok := next.(*syntax.Make)
	return ok && m.Kind == slipStitch && m.Place != nil && m.Place.What == syntax.InHook && w.num(m.Place.N) == w.num(c.N) && len(w.fab.Stitches) > int(w.rowFirst())
}

// picotChains is how many chains a picot by name has: as it is defined, else three.
func (w *worker) picotChains(x *syntax.Make) int {
	if x.Unit != nil {
		for _, n := range x.Unit.Body {
			if c, ok := n.(*syntax.ChainN); ok {
				return w.num(c.N)
			}
		}
	}
	return 3
}

// picot makes a picot on the stitch made last.
func (w *worker) picot(name string, chains int) {
	at := int32(len(w.fab.Stitches)) - 1
	for at > w.rowFirst() && w.fab.Stitches[at].Flags&(fabric.NoLanding|fabric.Picot) != 0 {
		at--
	}
	t := target{at: at, a: -1, b: -1}
	if at < 0 {
		t = inRing
	}
	id := w.add(name, t, fabric.NoLanding|fabric.Picot)
	w.setChains(id, chains)
}

func (w *worker) setChains(id int32, n int) { w.fab.Stitches[id].Chains = uint8(min(max(n, 0), 255)) }

// add makes one stitch on one base.
func (w *worker) add(name string, t target, flags fabric.Flags) int32 {
	id := w.addStitch(name, flags, 1)
	w.fab.Bases = append(w.fab.Bases, fabric.Base{At: t.at, How: t.how, Down: t.down})
	return id
}

// addMany makes one stitch on several bases.
func (w *worker) addMany(name string, ts []target) {
	flags := fabric.Flags(0)
	for _, t := range ts {
		if t.down > 1 {
			flags |= fabric.Long
		}
	}
	w.addStitch(name, flags, len(ts))
	for _, t := range ts {
		w.fab.Bases = append(w.fab.Bases, fabric.Base{At: t.at, How: t.how, Down: t.down})
	}
}

// addStitch makes one stitch whose bases are still to come.
func (w *worker) addStitch(name string, flags fabric.Flags, bases int) int32 {
	id := int32(len(w.fab.Stitches))
	w.fab.Stitches = append(w.fab.Stitches, fabric.Stitch{
		Base: uint32(len(w.fab.Bases)), Unit: -1, Row: int32(len(w.fab.Rows)), Word: w.word,
		Kind: w.kind(name), Flags: flags, NBase: uint8(bases), Yarn: w.yarn,
	})
	return id
}

// chainsOf makes n chains.
func (w *worker) chainsOf(n int, flags fabric.Flags, word int32) {
	kind := w.kind(chainStitch)
	for range n {
		w.fab.Stitches = append(w.fab.Stitches, fabric.Stitch{
			Base: uint32(len(w.fab.Bases)), Unit: -1, Row: int32(len(w.fab.Rows)), Word: word,
			Kind: kind, Flags: fabric.Chain | flags, Yarn: w.yarn,
		})
	}
}

// join closes a round. A taller stitch than a slip stitch stands for the last chains of its last space.
func (w *worker) join(x *syntax.Join) {
	name := x.With
	if name == "" {
		name = slipStitch
	}
	first := w.firstOfRound()
	if int(first) >= len(w.fab.Stitches) {
		return // nothing was made that could be joined
	}
	w.word = int32(x.Span.Start)
	w.add(name, target{at: first, a: -1, b: -1}, fabric.NoLanding|fabric.Join)
}

// firstOfRound is the stitch a round is joined to.
func (w *worker) firstOfRound() int32 {
	if w.tch >= 0 {
		return w.tch
	}
	for id := w.rowFirst(); id < int32(len(w.fab.Stitches)); id++ {
		if w.fab.Stitches[id].Flags&(fabric.NoLanding|fabric.Chain) == 0 {
			return id
		}
	}
	return w.rowFirst()
}
