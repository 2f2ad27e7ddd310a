package work

import (
	"fmt"
	"strings"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/syntax"
)

const foundationLabel = "foundation"

// layFoundation lays the chain or the ring that the first row stands on, and
// gives the steps without what is worked of them so far.
func (w *worker) layFoundation(steps []step) []step {
	fr := fabric.Row{Label: foundationLabel, Source: -1, Shape: fabric.Flat}
	var chain *syntax.ChainN
	ringMade := false
	w.ring = startsInRing(steps)
	for i := range steps {
		s := &steps[i]
		if fr.Source < 0 {
			fr.Source = s.source
		}
		body := restFirst(s.row.Body)
		used := 0
	nodes:
		for k, n := range body {
			switch x := n.(type) {
			case *syntax.Yarn:
				if x.Place != nil {
					break nodes
				}
				w.startWith(x.Letter)
			case *syntax.Note:
				ringMade = ringMade || isRing(x)
			case *syntax.ChainN:
				joined := false
				if k+1 < len(body) {
					j, ok := body[k+1].(*syntax.Join)
					joined = ok && !j.Not
				}
				if chain != nil || ringMade || w.ring && s.work && !joined && !worksAtHook(s.row) {
					break nodes
				}
				chain, fr.Source = x, s.source
			case *syntax.Join:
				if chain == nil || x.Not {
					break nodes
				}
				fr.Shape = fabric.Joined
			case *syntax.Turn:
				if chain == nil {
					break nodes
				}
			default:
				break nodes
			}
			used++
		}
		rest := body[used:]
		s.head = body[:used]
		s.body, _ = splitEnd(rest)
		if s.work {
			steps = steps[i:]
			break
		}
		if i == len(steps)-1 {
			steps = nil
		}
	}
	if len(steps) > 0 {
		w.startWith(steps[0].row.Yarn)
		if chain == nil && !w.makesFoundation(steps[0].body) {
			w.ring = true // nothing else to work into
		}
	}
	w.startWith("")
	if !w.layChains(&fr, chain) {
		return nil
	}
	return steps
}

// layChains makes the foundation's row. It reports whether the piece can be worked on it.
func (w *worker) layChains(fr *fabric.Row, chain *syntax.ChainN) bool {
	n := 0
	if chain != nil {
		n = max(0, w.num(chain.N))
		if w.probe.base > 0 {
			n = w.probe.base
		}
	}
	fits := n <= w.opt.Limit
	if !fits {
		w.say(diag.Finding{Severity: diag.Fault, ID: "limit", Span: chain.Span, Row: foundationLabel,
			Message: fmt.Sprintf("a foundation of %d chains is more than the limit of %d stitches", n, w.opt.Limit), Hint: "ask for fewer repeats"})
		n = 0
	}
	fr.Chains, fr.Yarn = n, w.yarn
	fr.FromLeft = true // its first chain lies at the left edge: the first row comes back from the right
	if w.ring {
		fr.Shape = fabric.Joined
	}
	if fr.Shape == fabric.Joined && !w.ring {
		w.circle = float32(n)
	}
	if n > 0 {
		w.chainsOf(n, 0, int32(chain.Span.Start))
	}
	for i := range w.fab.Stitches {
		w.fab.Stitches[i].Col = float32(i)
		w.fab.Landings = append(w.fab.Landings, int32(i))
	}
	fr.Last, fr.Land1 = int32(n), int32(n)
	fr.Under = fr.Source
	w.fab.Rows = append(w.fab.Rows, *fr)
	return fits
}

// startsInRing reports whether the first row is worked into a ring: made of
// yarn, of a closed chain, or the one chain at the hook of a round.
func startsInRing(steps []step) bool {
	for i := range steps {
		s := &steps[i]
		if anyNode(s.row.Body, func(n syntax.Node) bool {
			switch x := n.(type) {
			case *syntax.Note:
				return isRing(x)
			case *syntax.Make:
				return x.Place != nil && x.Place.What == syntax.InRing
			case *syntax.Group:
				return x.Place != nil && x.Place.What == syntax.InRing
			}
			return false
		}) {
			return true
		}
		if s.work {
			said := s.turn.after == turned || i+1 < len(steps) && steps[i+1].turn.before == turned
			return worksAtHook(s.row) && (s.row.Round || !said)
		}
	}
	return false
}

func isRing(n *syntax.Note) bool { return strings.Contains(strings.ToLower(n.Text), "ring") }

// worksAtHook reports whether a row is nothing but a handful of stitches in one chain from the hook, which is then the ring.
func worksAtHook(row *syntax.Row) bool {
	hook, others, many := false, 0, false
	for _, n := range row.Body {
		switch x := n.(type) {
		case *syntax.Make:
			if x.Place != nil && x.Place.What == syntax.InHook {
				hook, many = true, x.N.B >= 5
				continue
			}
			others++
		case *syntax.Group:
			if x.Place != nil && x.Place.What == syntax.InHook {
				hook, many = true, len(x.Body) > 1
				continue
			}
			others++
		case *syntax.Repeat, *syntax.Skip:
			others++
		}
	}
	return hook && others == 0 && (many || row.Round)
}

// makesFoundation reports whether a row begins with foundation stitches, which need nothing below them.
func (w *worker) makesFoundation(body []syntax.Node) bool {
	k := w.plain(w.firstKind(body))
	return k != nil && k.Family == foundationFamily
}

// mirrorFoundation lets columns rise to the right as seen from the right side where the first row is a wrong-side row.
func (w *worker) mirrorFoundation() {
	n := len(w.fab.Stitches)
	for i := range w.fab.Stitches {
		w.fab.Stitches[i].Col = float32(n - 1 - i)
	}
	w.fab.Rows[0].FromLeft = false
}

// startAtHook passes the s chains before the "(s+1)th ch from hook" and decides
// what they are: s = the height of a stitch + the chains of a space + bases skipped.
func (w *worker) startAtHook(s int, name string) error {
	if s < 0 || s >= w.met {
		return fail("the foundation has %s, so there is no %s chain from the hook", count(w.met, "chain"), ordinal(s+1))
	}
	kind := w.plain(name)
	h, loop := w.height(kind), false
	counts := w.step.row.Hook
	if counts == syntax.Unsaid {
		if said := w.tree.TchCounts[kindName(kind)]; said != syntax.Unsaid {
			counts = said
		} else {
			counts = syntax.CountsNot
			if s >= h && (kind != nil && kind.Counts || w.step.usesTch && h > 1) {
				counts = syntax.Counts
			}
			if h == 1 && s > 3 { // sc in 8th ch: the chains before it are the first loop
				counts, loop = syntax.Counts, true
				kind = w.plain(tallStitch)
				h = w.height(kind)
			}
			if w.reading.flip {
				counts = syntax.Counts + syntax.CountsNot - counts
			}
		}
	}
	w.start, w.chained = false, true
	w.pos, w.skipped, w.hooked = s, s, s
	if counts == syntax.CountsNot {
		if w.step.row.Hook == syntax.Unsaid && w.loopAtEdge(s-1, kind) { // one chain is the sc's neighbour below
			w.chainsOf(s-1, 0, w.word)
		}
		return nil
	}
	space, spare := 0, s-h
	switch as := w.step.row.HookAs; {
	case len(as) > 0:
		if m, ok := as[0].(*syntax.Make); ok {
			kind = w.plain(m.Kind)
			h = w.height(kind)
			spare = s - h
		}
		if len(as) > 1 {
			if c, ok := as[1].(*syntax.ChainN); ok {
				space = w.num(c.N)
				spare -= space
			}
		}
	case loop:
		space, spare = spare, 0
	case spare >= 2: // ch 2, skip 2 of a mesh
		if c := w.chainsInside(w.step.body); c > 0 && c < spare {
			space, spare = c, spare-c
		}
	}
	at := max(0, s-max(spare, 0)-1)
	if w.ring {
		w.tch = w.add(kindName(kind), inRing, fabric.TurningChain)
		w.setChains(w.tch, min(s, h))
		return nil
	}
	if spare < 0 { // fewer chains than the stitch is tall: it shares the first stitch's place
		at = s
		w.shared = true
	}
	t := w.take(at, at)
	w.tch = w.add(kindName(kind), t, fabric.TurningChain)
	w.setChains(w.tch, h)
	w.chainsOf(space, 0, w.word)
	w.skipped = max(0, at)
	return nil
}

// chainsInside gives the length of the first chain-space within a row.
func (w *worker) chainsInside(nodes []syntax.Node) int {
	for _, n := range nodes {
		switch x := n.(type) {
		case *syntax.ChainN:
			if c := w.num(x.N); c < 10 {
				return c
			}
		case *syntax.Repeat:
			if c := w.chainsInside(x.Body); c > 0 {
				return c
			}
		}
	}
	return 0
}

// hideSkipped marks the foundation chains that are the first row's turning chain: nothing else is worked into them.
func (w *worker) hideSkipped(n int) {
	last := int(w.fab.Rows[0].Last)
	for i := max(0, last-n); i < last; i++ {
		w.fab.Stitches[i].Flags |= fabric.NoLanding
	}
}
