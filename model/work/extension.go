package work

import (
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// extension sees a row that begins with a foundation of its own: "ch 6, dc in
// 4th ch from hook, dc in next 2 ch". It widens the piece, or begins a block. It
// gives the number of the chain from the hook that is worked first, 0 for none.
func (w *worker) extension(body []syntax.Node) int {
	if w.isBase || w.round || len(body) < 2 {
		return 0
	}
	c, ok := body[0].(*syntax.ChainN)
	if !ok {
		return 0
	}
	var p *syntax.Place
	switch x := body[1].(type) {
	case *syntax.Make:
		p = x.Place
	case *syntax.Group:
		p = x.Place
	}
	if p == nil || p.What != syntax.InHook {
		return 0
	}
	if n := w.num(p.N); n > 1 && n <= w.num(c.N) && w.num(c.N) < w.opt.Limit {
		return n
	}
	return 0
}

// extend lays the chain, lets the hook meet it before the row below, and stands
// the chains passed at the hook beside it. It gives what is left of the body.
func (w *worker) extend(body []syntax.Node, hook int) []syntax.Node {
	c := body[0].(*syntax.ChainN)
	w.word = int32(c.Span.Start)
	w.trace(c)
	first, n := int32(len(w.fab.Stitches)), w.num(c.N)-hook+1
	w.chainsOf(n, fabric.NoLanding, w.word)
	w.layBeyond(first, n)
	lands := make([]landing, 0, n+w.met)
	for k := range int32(n) {
		lands = append(lands, landing{at: first + int32(n) - 1 - k, base: true})
	}
	w.lands = append(lands, w.lands[:w.met]...)
	w.met = len(w.lands)
	w.chained = true
	kind := w.plain(w.firstKind(body[1:]))
	counts := w.step.row.Hook
	if counts == syntax.Unsaid && kind != nil && kind.Counts && hook-1 >= w.height(kind) {
		counts = syntax.Counts
	}
	if counts == syntax.Counts {
		w.tch = w.add(kindName(kind), w.take(0, 0), fabric.TurningChain)
		w.setChains(w.tch, hook-1)
	} else {
		w.chainsOf(hook-1, fabric.NoLanding, w.word)
	}
	w.start = false
	return append([]syntax.Node{inNextChain(body[1])}, body[2:]...)
}

// layBeyond gives the chains their columns, beyond the edge at which the row begins.
func (w *worker) layBeyond(first int32, n int) {
	edge, step := float32(0), float32(1)
	if w.met > 0 {
		edge = w.stitchAt(0).Col
	}
	if w.rising {
		step = -1
	}
	for k := range n {
		w.fab.Stitches[int(first)+k].Col = edge + step*float32(k+1)
	}
	w.own, w.extended = n, w.row
}

// inNextChain is a node that goes into the nth chain from the hook, as it goes into the first chain met.
func inNextChain(n syntax.Node) syntax.Node {
	next := func(p *syntax.Place) *syntax.Place {
		q := *p
		q.Ord, q.What, q.N = syntax.Next, syntax.InCh, syntax.Plain(1)
		return &q
	}
	switch x := n.(type) {
	case *syntax.Make:
		y := *x
		y.Place = next(x.Place)
		return &y
	case *syntax.Group:
		y := *x
		y.Place = next(x.Place)
		return &y
	}
	return n
}
