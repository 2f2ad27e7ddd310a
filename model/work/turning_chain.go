package work

import (
	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// standing is a turning chain of so many chains beside stitches of a kind.
type standing struct {
	chains int
	kind   string
}

// turningChain works the chain at the row's start, and decides whether it is a stitch.
func (w *worker) turningChain(c *syntax.ChainN, rest []syntax.Node) error {
	n := w.num(c.N)
	if n > w.opt.Limit {
		return w.overLimit()
	}
	w.word = int32(c.Span.Start)
	w.chained = true
	if w.travelled {
		if !w.round { // of a block worked from corner to corner
			w.extended = w.row
		}
		w.wrapRound()
		w.travelled = false
	}
	kind := w.plain(c.AsKind)
	if kind == nil {
		kind = w.plain(w.firstKind(rest))
		tall := w.plain(tallStitch)
		if h := w.height(kind); n >= w.height(tall) && (kind == nil || h < w.height(tall) || h > n) {
			kind = tall
		}
	}
	if c.Counts == syntax.Unsaid && w.loopAtEdge(n, kind) {
		w.chainsOf(n, 0, w.word)
		return nil
	}
	counts := c.Counts
	key := standing{n, kindName(kind)}
	if counts == syntax.Unsaid && w.beginsCluster(n, rest) {
		counts = syntax.CountsNot
	} else if counts != syntax.Unsaid {
		w.learned[key] = counts // what a row says holds for the rows after it, beside other stitches too
		w.learned[standing{chains: n}] = counts
	} else {
		counts = w.customOf(key)
	}
	if counts != syntax.Counts {
		w.chainsOf(n, fabric.NoLanding, w.word)
		return nil
	}
	if len(c.As) > 0 && c.AsKind == "" || kind == nil {
		kind = w.plain(tallStitch)
	}
	t := w.same
	if !w.hasSame {
		if w.met == 0 || w.isBase && w.ring {
			t = inRing
		} else {
			i := min(w.pos, w.met-1)
			t = w.take(i, i)
			w.pos = i + 1
		}
	}
	space := n - w.height(kind)
	if len(c.As) > 1 {
		if s, ok := c.As[1].(*syntax.ChainN); ok {
			space = w.num(s.N)
		}
	}
	w.tch = w.add(kind.Name, t, fabric.TurningChain)
	w.setChains(w.tch, n-max(space, 0))
	w.same, w.hasSame = t, true
	w.chainsOf(max(space, 0), 0, w.word)
	return nil
}

// loopAtEdge reports whether chains beside a single crochet are a loop of their own, which the next row ends in: the "ch
// 2" of linen stitch.
func (w *worker) loopAtEdge(n int, kind *stitch.Kind) bool {
	return n > w.height(kind) && w.height(kind) == 1 && !w.round && (w.step.edgeLoop == n || w.step.edgeLoop == 0 && !w.step.usesTch)
}

// beginsCluster: "ch 3, dc2tog in same sp" at a row's start is one cluster, of which the chain is a leg.
func (w *worker) beginsCluster(chains int, rest []syntax.Node) bool {
	if len(rest) == 0 {
		return false
	}
	m, ok := rest[0].(*syntax.Make)
	if ok && m.Place != nil && m.Place.Ord == syntax.Next && chains > 1 && w.reading.flip && w.legOf(m, rest[1:]) {
		w.pos++ // the chain is the first leg, over the first stitch
		return true
	}
	if !ok || m.Place != nil && m.Place.Ord != syntax.Same {
		return false
	}
	k := w.fab.Kinds[w.kind(m.Kind)]
	return k.Legs > 1 && (m.Place != nil || k.SamePlace)
}

// legOf: "ch 2, dc2tog over next 2 dc" is a cluster of three where the others are dc3tog.
func (w *worker) legOf(m *syntax.Make, rest []syntax.Node) bool {
	k := w.fab.Kinds[w.kind(m.Kind)]
	return spans(k) > 1 && anyNode(rest, func(n syntax.Node) bool {
		x, ok := n.(*syntax.Make)
		if !ok || x.Kind == m.Kind {
			return false
		}
		o := w.fab.Kinds[w.kind(x.Kind)]
		return o.Plain == k.Plain && spans(o) == spans(k)+1
	})
}

// customOf decides whether a turning chain of which the row says nothing is a
// stitch: by a note for all rows, by the next row that works into its top, by
// what an earlier row said, else three chains and more are one. A chain of one never is.
func (w *worker) customOf(key standing) syntax.Counting {
	if said := w.tree.TchCounts[key.kind]; said != syntax.Unsaid && key.chains > 1 {
		return said
	}
	counts := w.learned[key]
	if counts == syntax.Unsaid && key.chains > 1 {
		counts = w.learned[standing{chains: key.chains}]
	}
	switch {
	case w.step.usesTch && key.chains > 1:
		counts = syntax.Counts
	case counts != syntax.Unsaid:
	case key.chains >= w.height(w.plain(tallStitch)):
		counts = syntax.Counts
	default:
		counts = syntax.CountsNot
	}
	if w.reading.flip {
		counts = syntax.Counts + syntax.CountsNot - counts
	}
	return counts
}
