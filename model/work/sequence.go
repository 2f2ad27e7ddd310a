package work

import (
	"fmt"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// sequence works nodes in order. An open repeat takes over the rest, since how
// often it fits depends on what follows; at the top it has to come out at the row's end.
func (w *worker) sequence(nodes []syntax.Node, top bool) error {
	for i := 0; i < len(nodes); i++ {
		n := nodes[i]
		if n = w.eachOfSpur(n); n == nil {
			continue
		}
		if o, ok := w.open(n); ok {
			return w.fit(o, nodes[i+1:], top)
		}
		if c, ok := n.(*syntax.ChainN); ok && i+1 < len(nodes) && w.picotAhead(c, nodes[i+1]) {
			w.word = int32(c.Span.Start)
			w.picot(picotStitch, w.num(c.N))
			w.trace(c)
			w.trace(nodes[i+1])
			i++
			continue
		}
		if err := w.node(n, nodes[i+1:]); err != nil {
			m := asMisfit(err)
			if m.span == (diag.Span{}) {
				m.span = n.At()
			}
			return m
		}
	}
	return nil
}

// eachOfSpur writes "sc in each ch" along a spur as so many chains; nil when none are left.
func (w *worker) eachOfSpur(n syntax.Node) syntax.Node {
	m, ok := n.(*syntax.Make)
	if !ok || w.spur == 0 || m.Place == nil || m.Place.Ord != syntax.Each || m.Place.What != syntax.InCh {
		return n
	}
	if w.spur <= w.spurEnd {
		return n
	}
	y, q := *m, *m.Place
	q.Ord, q.N, q.Ext = syntax.Next, syntax.Plain(int(w.spur-w.spurEnd)), syntax.Extent{}
	y.Place = &q
	return &y
}

// opened is the body of an instruction that repeats until the row says stop.
type opened struct {
	body   []syntax.Node
	ext    syntax.Extent
	repeat *syntax.Repeat // nil for "in each st across"
	ok     bool
}

// open sees an instruction that repeats until the row says stop.
func (w *worker) open(n syntax.Node) (opened, bool) {
	var place *syntax.Place
	switch x := n.(type) {
	case *syntax.Repeat:
		switch x.Ext.How {
		case syntax.Times:
			return opened{}, false
		case syntax.Evenly:
			return opened{}, false
		}
		return opened{x.Body, x.Ext, x, true}, true
	case *syntax.Make:
		place = x.Place
	case *syntax.Group:
		place = x.Place
	}
	if place == nil || place.Ord != syntax.Each || place.Ext.How == syntax.Evenly || place.Ext.How == syntax.Times && !place.Ext.N.IsZero() {
		return opened{}, false
	}
	if o, seen := w.opened[n]; seen {
		return o, o.ok
	}
	// "in each st across" is "in next st" as often as it goes
	q := *place
	q.Ord, q.N, q.Ext = syntax.Next, syntax.Plain(1), syntax.Extent{}
	o := opened{ext: place.Ext, ok: true}
	if o.ext.How == syntax.Times {
		o.ext.How = syntax.Across
	}
	switch x := n.(type) {
	case *syntax.Make:
		y := *x
		y.Place = &q
		o.body = []syntax.Node{&y}
	case *syntax.Group:
		y := *x
		y.Place = &q
		o.body = []syntax.Node{&y}
	}
	w.opened[n] = o
	return o, true
}

// node works one instruction that is no open repeat.
func (w *worker) node(n syntax.Node, rest []syntax.Node) error {
	if len(w.fab.Stitches) > w.opt.Limit {
		return w.overLimit()
	}
	switch x := n.(type) {
	case *syntax.Make:
		w.word = int32(x.Span.Start)
		w.trace(n)
		return w.makes(x)
	case *syntax.Group:
		w.word = int32(x.Span.Start)
		w.trace(n)
		return w.group(x)
	case *syntax.Skip:
		w.trace(n)
		return w.skip(x, rest)
	case *syntax.ChainN:
		w.word = int32(x.Span.Start)
		w.trace(n)
		bridges := w.place == nil && len(rest) > 0 && placeOf(rest[0]) != nil && placeOf(rest[0]).What == syntax.InOther
		if w.start && w.place == nil && w.tch < 0 && !bridges && !w.standsOut(x, rest) && (!w.isBase || w.round || w.ring) {
			return w.turningChain(x, rest)
		}
		w.start = false
		c := w.num(x.N)
		if c > w.opt.Limit {
			return w.overLimit()
		}
		if c > 0 && bridges {
			w.bridge, w.bridgeAt, w.bridged = int32(c), int32(len(w.fab.Stitches)), 0
		}
		w.chainsOf(c, 0, w.word)
	case *syntax.Repeat:
		return w.repeatTimes(x)
	case *syntax.Join:
		w.trace(n)
		if !x.Not {
			w.join(x)
		}
	case *syntax.Yarn:
		w.trace(n)
		w.takeYarn(x)
	case *syntax.Along:
		w.trace(n)
		return w.along(x)
	case *syntax.Note, *syntax.Turn:
		w.trace(n)
	}
	return nil
}

// standsOut reports whether a row's first chain is no turning chain: a spur that is worked back over, or in a spiral
// the bridge over skipped stitches.
func (w *worker) standsOut(x *syntax.ChainN, rest []syntax.Node) bool {
	if len(rest) == 0 || x.Counts != syntax.Unsaid {
		return false
	}
	switch n := rest[0].(type) {
	case *syntax.Make:
		if n.Place != nil && n.Place.What == syntax.InSp && w.step.shape == fabric.Spiral {
			return w.num(x.N) > w.height(w.plain(n.Kind))+1
		}
		return n.Place != nil && n.Place.What == syntax.InHook && !w.isBase
	case *syntax.Skip:
		return w.step.shape == fabric.Spiral
	}
	return false
}

func (w *worker) overLimit() error {
	return &misfit{id: "limit", text: fmt.Sprintf("more than the limit of %d stitches, so it is not worked further", w.opt.Limit), fatal: true}
}

// repeatTimes works a repeat of a given number. A star's bare number is that many more, unless it is read as all.
func (w *worker) repeatTimes(x *syntax.Repeat) error {
	n := w.num(x.Ext.N)
	if x.Ext.How == syntax.Evenly {
		return w.evenly(x.Body, x.Ext)
	}
	if x.Star && x.Ext.Soft && w.reading.inAll {
		n--
	}
	if n > w.opt.Limit {
		return w.overLimit()
	}
	if n > 1 {
		w.backToSpace(x.Body)
	}
	for k := range n {
		body := x.Body
		if k == n-1 && x.Break > 0 {
			body = body[:x.Break]
		}
		if err := w.once(body, x); err != nil {
			return err
		}
	}
	return w.sequence(x.Ending, false)
}

// once works a repeat's body one time and marks it, unless it lies within another.
func (w *worker) once(body []syntax.Node, x *syntax.Repeat) error {
	first := int32(len(w.fab.Stitches))
	w.nested++
	err := w.sequence(body, false)
	w.nested--
	if last := int32(len(w.fab.Stitches)); err == nil && w.nested == 0 && x != nil && last > first && w.place == nil {
		w.fab.Repeats = append(w.fab.Repeats, fabric.Repeat{Row: w.row, Written: x.Span, First: first, Last: last})
	}
	return err
}

// skip passes landings, and remembers them for "in the skipped st".
func (w *worker) skip(x *syntax.Skip, rest []syntax.Node) error {
	if x.Rest {
		w.free, w.start = true, false
		return nil
	}
	n := w.num(x.N)
	if w.isBase && w.start && x.First { // "skip first 3 ch (count as dc)"
		return w.startAtHook(n, w.firstKind(rest))
	}
	if (x.First || w.reading.under && w.tch >= 0) && w.start {
		if w.pos >= n {
			w.start = w.start && x.First
			return nil // the turning chain stands over it already
		}
		n -= w.pos
	}
	if w.behind >= n && (x.Behind || (x.What == syntax.InSt || x.What == syntax.InKind) && w.behind > 0) {
		w.behind -= n // it names what the long stitch has passed
		return nil
	}
	if x.What == syntax.InUnworked || x.Row > 0 && w.leftBy(x.Row) >= 0 {
		if err := w.toLedge(x.Row); err != nil {
			return err
		}
		y := *x
		y.What, y.Row = syntax.InSt, 0
		return w.skip(&y, rest)
	}
	if w.start && w.pos == 0 && w.tch < 0 {
		w.leftFirst = n
	}
	w.skipA = -1
	for range n {
		i := w.seek(x.What, x.Name, x.Chains)
		if i < 0 {
			return none(x.What, x.Name, x.Chains)
		}
		end := i
		switch x.What {
		case syntax.InSp:
			end = w.runEnd(i)
		case syntax.InUnit:
			_, end = w.unitSpan(i)
		}
		if w.skipA < 0 {
			w.skipA = i
		}
		w.skipB, w.pos = end+1, end+1
	}
	w.start = false
	return nil
}
