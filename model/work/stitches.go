package work

import (
	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

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
	if w.fab.Kinds[w.kind(x.Kind)].Family == surfaceFamily && t.at >= 0 {
		t.how = fabric.OnFace
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
	w.spur, w.spurEnd = int32(at), int32(at)
	for w.spurEnd > w.rowFirst() && w.fab.Stitches[w.spurEnd-1].Has(fabric.Chain) {
		w.spurEnd--
	}
	if n > 1 && x.Kind != slipStitch || w.spur > w.spurEnd {
		w.hideSpur(at, len(w.fab.Stitches)-per)
	}
	return nil
}

// alongSpur takes the next chain of a spur: chains that stand out from the row and are worked back over.
func (w *worker) alongSpur() target {
	w.spur--
	w.hideSpur(int(w.spur), int(w.spur)+1)
	return target{at: w.spur, a: -1, b: -1}
}

// hideSpur marks chains that are covered by the stitches of their spur.
func (w *worker) hideSpur(from, to int) {
	for i := from; i < to; i++ {
		w.fab.Stitches[i].Flags |= fabric.NoLanding
	}
}

// rowFirst is the first stitch of the row in work.
func (w *worker) rowFirst() int32 {
	if int(w.row) < len(w.fab.Rows) { // the row is closed already
		return w.fab.Rows[w.row].First
	}
	return w.fab.Rows[len(w.fab.Rows)-1].Last
}

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
	switch {
	case at < 0:
		t = inRing
	case at < w.rowFirst():
		t.down = 1
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
