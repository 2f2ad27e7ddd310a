package syntax

import "strandway/model/diag"

// loopFirst reads "BLO sc in all 12 st", the loop named before the stitch.
func (r *reader) loopFirst() []Node {
	start := r.i
	loop := r.loopWord()
	r.fill(":", ",")
	if loop == BothLoops || !r.number(0) && !r.stitchWord(r.i) {
		r.i = start
		return nil
	}
	outer, from := r.loop, r.loopFrom
	r.loop, r.loopFrom = loop, r.tokens[start].start
	nodes := r.item()
	r.placed(nodes)
	r.loop, r.loopFrom = outer, from
	return nodes
}

// atEnd reads "at end of row," which says nothing new, and "at end of last rnd, sl st in next sc. Fasten off.", which in a
// range of rows is not for all of them and stays a remark.
func (r *reader) atEnd() []Node {
	start := r.i
	r.pass(1)
	r.fill("the", "end", "of")
	last := r.word("last", "final") || r.word("row", "rnd", "r") && r.number(1)
	for r.word("last", "final", "each", "every", "row", "rnd", "this", "the", "r") || r.is(numberToken) && r.wordBefore(r.i, "row", "rnd", "r") {
		r.pass(1)
	}
	if !last || r.row == nil || r.row.To <= r.row.From {
		return []Node{}
	}
	for !r.ended() && !r.headingAhead() {
		r.pass(1)
	}
	return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
}

// starting reads "starting in 2nd ch from hook": the chains before it are passed.
func (r *reader) starting() []Node {
	m, start := r.mark(), r.i
	r.pass(1)
	if r.number(0) && r.stitchWord(min(r.i+1, len(r.tokens)-1)) {
		return r.item()
	}
	if !r.word("in", "with", "at", "from") {
		r.back(m)
		return nil
	}
	if !r.word("in") {
		r.pass(1)
	}
	if r.number(0) && r.stitchWord(min(r.i+1, len(r.tokens)-1)) { // "start with 6 sc in ring"
		return r.item()
	}
	p := r.place()
	if p.What != InHook || p.N.B < 2 {
		r.back(m)
		return nil
	}
	return []Node{&Skip{Span: r.span(start), N: Plain(p.N.B - 1), What: InCh, First: true}}
}

// placeFirst reads "in next st work (dc, ch 1, dc)". It never reads the stitches twice.
func (r *reader) placeFirst() []Node {
	m := r.mark()
	start := r.i
	p := r.place()
	var also *Place // "in same lp and in each lp around work ..."
	if r.word("and") && r.wordAt(1, "in") {
		r.pass(1)
		also = r.place()
	}
	if colon := r.eat(":"); !colon {
		r.eat(",")
		if !r.eat("work") && !r.eat("make") {
			r.back(m)
			return nil
		}
	}
	if !r.word("(", "[") && !r.number(0) && !r.stitchWord(r.i) {
		r.back(m)
		return nil
	}
	nodes := r.item()
	placed := len(nodes) == 0
	for _, n := range nodes {
		placed = placed || placeOf(n) != nil
	}
	if !placed {
		nodes = append(nodes, r.inTheSame()...)
	}
	switch x, one := firstNode(nodes).(*Make); {
	case placed:
		r.find(diag.Fault, "unread", p.Span, "say the place once, before or after the stitches", "cannot read where %q belongs", clip(r.textFrom(start)))
		return append([]Node{}, nodes...)
	case one && len(nodes) == 1:
		x.Place, x.Span = p, r.span(start)
		r.mode(p)
		if also != nil {
			y := *x
			y.Place = also
			r.eachOnce(&y)
			nodes = append(nodes, &y)
		}
		r.eachOnce(x)
		return nodes
	}
	out := []Node{&Group{Span: r.span(start), Body: nodes, Place: p}}
	if also != nil {
		out = append(out, &Group{Span: r.span(start), Body: nodes, Place: also})
	}
	return out
}

// inTheSame reads what else goes into the place named first: "in next loop work sc, 2 dc, ch 3, 2 dc, sc". It ends
// before an instruction that has a place of its own.
func (r *reader) inTheSame() (out []Node) {
	for r.word(",") || r.word("and") {
		m := r.mark()
		r.pass(1)
		r.eat("and")
		if r.ended() || r.word("rep", "*", "**", "skip", "turn", "join", "(", "[", "in", "ending", "end") {
			r.back(m)
			return out
		}
		nodes := r.item()
		if len(nodes) != 1 {
			r.back(m)
			return out
		}
		switch x := nodes[0].(type) {
		case *ChainN:
		case *Make:
			if x.Place != nil || !r.word(",", ";", ".", "and", "*", "rep") && !r.ended() {
				r.back(m)
				return out
			}
		default:
			r.back(m)
			return out
		}
		out = append(out, nodes...)
	}
	return out
}
