package syntax

import "strings"

// makes reads "sc in next st", "3 dc in ring", "dc 7", "hdc across", "shell in next shell", "inc", and what is
// hung on by "and".
func (r *reader) makes() []Node {
	start := r.i
	m := &Make{N: Plain(1)}
	lead := false
	if q, ok := r.num(true); ok {
		m.N, lead = q, true
		if r.isYarn(0) && (r.tok().tight || r.peek(1).kind != wordToken && !r.wordAt(1, ":", "(") && !r.stitchWord(r.i)) { // 3A, 2 B
			y := &Yarn{Letter: r.raw(r.tok()), Span: r.spanTo(start)}
			r.pass(1)
			return []Node{y, &Make{Span: r.span(start), N: q, Kind: r.kindOr(plainStitch)}}
		}
		r.fill("more")
	}
	r.fill("a", "an", "work", "one")
	plain := r.word("plain") && r.stitchWord(min(r.i+1, len(r.tokens)-1))
	if plain {
		r.pass(1)
	}
	switch {
	case r.word("inc"), r.words("invisible", "inc"):
		r.eat("invisible")
		r.pass(1)
		m.Kind = r.kindOr(plainStitch)
		return r.changeOfCount(m, start, lead, true)
	case r.word("dec"), r.word("inv", "invisible") && r.wordAt(1, "dec"):
		r.fill("inv", "invisible")
		r.pass(1)
		m.Kind = r.together(r.kindOr(plainStitch), 2)
		return r.changeOfCount(m, start, lead, false)
	}
	kind, ok := r.stitch()
	if !ok {
		r.i = start
		return nil
	}
	m.Kind = kind
	if u := r.unit(kind); u != nil {
		m.Unit = u
	} else if r.basesOf(kind) == 1 {
		r.kind = r.bare(kind)
	}
	if r.word("tog") && lead && m.N.A == 0 && m.N.Sizes == nil && m.N.B > 1 { // "2 dc tog"
		r.pass(1)
		m.Kind, m.N = r.together(kind, m.N.B), Plain(1)
		lead = false
	}
	r.fill("loosely", "tightly", "carefully")
	if r.word("inc", "dec") {
		inc := r.word("inc")
		if !inc {
			m.Kind = r.together(kind, 2)
		}
		r.pass(1)
		return r.changeOfCount(m, start, lead, inc)
	}
	if r.everyNth() > 0 {
		return r.spacedOut(m, start)
	}
	if edge := r.alongEdge(); edge != nil { // "15 sc along the foundation chain"
		m.Span = r.span(start)
		m.Place = &Place{Ord: Each, N: Plain(1), Ext: Extent{How: Across}, Span: m.Span}
		if side := edge.(*Along).Edge; lead && (side == SideEdge || side == LeftEdge || side == RightEdge) { // "25 sc down the row ends"
			m.Place.What, m.Place.Ext, m.N = InEnd, Extent{How: Evenly, N: m.N}, Plain(1)
		} else if lead {
			m.Place, m.N = &Place{N: m.N, Span: m.Span}, Plain(1)
		} else if side == LowerEdge {
			m.Place.What = InUnder
		}
		return []Node{edge, m}
	}
	if plain && !lead && (r.word(".", ",", ";") || r.ended()) { // "Plain double crochet."
		m.Place = &Place{Span: r.span(start), Ord: Each, N: Plain(1), Ext: Extent{How: Across}}
		m.Span = m.Place.Span
		return []Node{m}
	}
	if !r.makePlace(m, start, lead) {
		r.i = start
		return nil
	}
	if p := m.Place; p != nil && p.What == InEnd {
		if edge := r.alongEdge(); edge != nil { // "in each row end along left side"
			m.Span = r.span(start)
			return []Node{edge, m}
		}
	}
	if p := m.Place; p != nil && r.throughBoth(start) { // each stitch takes one of both edges
		n := m.N
		if n.isOne() {
			n = p.N
		}
		if m.Kind, m.N = r.together(kind, 2), Plain(1); p.Ord != Each {
			m.Place = &Place{Span: p.Span, N: n.times(2)}
		}
	}
	if p := m.Place; p != nil {
		r.mode(p)
		r.eachOnce(m)
		r.joinedOver(m)
	}
	m.Span = r.span(start)
	if nodes := r.overSeveral(m); nodes != nil {
		return nodes
	}
	r.hookNote()
	if m.N.isOne() && (r.eat("to", "form") || r.words("to", "make", "a") && r.wordAt(3, "ring", "circle") && r.eat("to", "make") || r.eat("to", "join") || r.eat("to", "close") || m.Kind == slipStitch && (r.eat("to", "finish") || r.eat("to", "end"))) {
		r.fill("a", "ring", "rnd", "the", "circle")
		return []Node{&Join{Span: r.span(start), Place: m.Place, With: m.Kind}}
	}
	if rep := r.exceptCorners(m, start); rep != nil {
		return rep
	}
	out := r.often(append([]Node{m}, r.more(m)...), start)
	if len(out) == 1 && out[0] == Node(m) { // "in each dc and in each ch-1 sp around, working 3 sc in each corner"
		if rep := r.exceptCorners(m, start); rep != nil {
			return rep
		}
	}
	if y := r.inYarn(); y != nil { // "3 sc with B": the yarn first
		out = append([]Node{y}, out...)
	}
	return out
}

// overSeveral makes one stitch of a described one "over next 2 sts", and passes the rest of what it stands over.
func (r *reader) overSeveral(m *Make) []Node {
	p := m.Place
	if m.Unit == nil || m.Unit.Recipe == "" || p == nil || p.N.A != 0 || p.N.Sizes != nil || p.N.B < 2 || !r.over(p) {
		return nil
	}
	rest := &Skip{Span: p.Span, N: Plain(p.N.B - 1), What: InSt}
	last := p.Ord == Last
	if p.N = Plain(1); last {
		p.Ord = Next
		return []Node{rest, m}
	}
	return []Node{m, rest}
}

// throughBoth reports whether a place just read was "through both layers".
func (r *reader) throughBoth(start int) bool {
	return r.wordBefore(r.i, "layers", "thicknesses", "layer") || r.word("layers", "thicknesses", "layer") && r.wordBefore(r.i, "both") && r.eat(r.tok().text)
}

// often reads the "twice" behind "2 sc in next st".
func (r *reader) often(nodes []Node, start int) []Node {
	p := placeOf(nodes[0])
	if len(nodes) != 1 || p == nil || p.Ord == Each || p.Ext.How == Evenly || often[r.tok().text] == 0 && !(r.number(0) && r.wordAt(1, "time")) || r.wordAt(1, "more") || r.wordAt(2, "more") {
		return nodes
	}
	n, _, _ := r.howOften()
	r.placed(nodes)
	return []Node{&Repeat{Span: r.span(start), Body: nodes, Ext: Extent{How: Times, N: n}}}
}

// exceptCorners reads the ", working 3 sc in each corner" behind "sc in each st around": up to every corner,
// then the corner, as often as there are any, then on to the end.
func (r *reader) exceptCorners(m *Make, start int) []Node {
	p := m.Place
	if p == nil || r.inCorner || !(p.Ord == Each && p.Ext.How == Across) && !(p.Ext.How == Evenly && p.Ext.N.IsZero()) {
		return nil
	}
	evenly := p.Ext.How == Evenly
	whole := r.wordBefore(r.i, "across", "around", "end")
	back := r.mark()
	r.eat(",")
	r.eat("and")
	said := r.word("working", "making", "placing", "with", "work")
	if said {
		r.pass(1)
	}
	if !r.number(0) && !(said && r.word("(", "[")) {
		r.back(back)
		return nil
	}
	r.inCorner = true
	corner := r.item()
	r.inCorner = false
	if whole && !said && r.wordBefore(r.i, "across", "around", "end") { // each says for itself how far it goes
		r.back(back)
		return nil
	}
	var at *Place
	if len(corner) == 1 {
		at = placeOf(corner[0])
	}
	if at != nil && said && at.Centre && at.What == InSp { // "working 3 sc in the centre ch-2 sp"
		side, way := *m, *p
		way.Ext = Extent{How: ToNext, What: InSp, Chains: at.Chains}
		at.Centre, side.Place = false, &way
		return append(append([]Node{&side}, corner...), m)
	}
	if at == nil || at.Ord != Each && at.What != InCorner || at.What != InCorner && (at.What != InSp || evenly) {
		r.back(back)
		return nil
	}
	if x, ok := corner[0].(*Make); ok && !said && (at.Ord != Each || at.Ext.How != Across) {
		r.back(back)
		return nil
	} else if ok && x.Kind == m.Kind && x.N.same(m.N) && joinPlaces(p, at) { // "1 dc in each tr and 1 dc in each sp"
		m.Span = r.span(start)
		if more := r.exceptCorners(m, start); more != nil {
			return more
		}
		return []Node{m}
	}
	at.Ord, at.Ext = Next, Extent{}
	side, way := *m, *p
	way.Ext = Extent{How: ToNext, What: at.What, Name: at.Name, Chains: at.Chains}
	if evenly {
		way.Ext.How = Evenly
	}
	side.Place, side.Span = &way, m.Span
	rep := &Repeat{Span: r.span(start), Body: append([]Node{&side}, corner...), Ext: Extent{How: Across}}
	return []Node{rep, m}
}

// inYarn reads the "with B" or "in B" straight after a stitch.
func (r *reader) inYarn() Node {
	bracketed := r.word("(") && r.wordAt(2, ")")
	if !r.word("with", "in") && !bracketed || !r.isYarn(1) {
		return nil
	}
	start := r.i
	y := &Yarn{Letter: r.raw(r.peek(1))}
	r.pass(2)
	if bracketed {
		r.pass(1)
	}
	y.Span = r.span(start)
	return y
}

// makePlace reads how many and where, after the stitch's name.
func (r *reader) makePlace(m *Make, start int, lead bool) bool {
	after := Num{} // dc 7
	if !lead && r.number(0) && !r.wordAt(1, "row", "rnd", "time") {
		after, _ = r.num(true)
		lead = true
		r.fill("st")
	}
	switch {
	case r.word("across") && r.wordAt(1, "first", "next", "last") && r.number(2): // "sl st across first 5 sts"
		r.pass(1)
		m.Place = &Place{N: Plain(1)}
		from := r.i
		r.commonPlace(m.Place)
		m.Place.Span = r.span(from)
	case r.evenly(m, start, after):
		return true
	case r.wholeRow() && !(m.Kind == slipStitch && (r.toSpace(1) || r.wordAt(1, "centre", "corner"))): // "sl st to next ch-2 sp" travels into it
		from := r.i
		ext, _ := r.times()
		if lead && !m.N.isOne() && ext.How == Across { // "24 sc around": so many in all
			m.Place, m.N = &Place{N: m.N.times(r.basesOf(m.Kind)), Loop: r.loop, Span: r.span(start)}, Plain(1)
			return true
		}
		m.Place = &Place{Ord: Each, N: Plain(1), Ext: ext, Loop: r.loop, Span: r.span(from)}
	case m.Kind == slipStitch && r.word("to") && r.wordAt(1, "centre", "corner"), r.placeWord() || r.word("next", "each", "first", "last", "same", "top", "back", "front", "rem"):
		from := r.i
		if !r.placeWord() {
			r.eat("to")
		}
		m.Place = r.place()
		if p := m.Place; lead && p.What == InEnd && p.Ord == Each && p.Ext.How == Across && !m.N.isOne() && !r.saidEach(from) { // "8 sc in ends of rows"
			p.Ext, m.N = Extent{How: Evenly, N: m.N}, Plain(1)
		}
	default:
		q := m.N
		if !after.IsZero() {
			q = after
		}
		if x, ok := r.byTimes(); ok {
			q = x
		}
		m.N = q // of the next stitches one each, or all in the group's one place: what encloses it tells
		if r.lie != LieUnsaid {
			m.Span = r.span(start)
			r.placeNext(m)
		}
		return true
	}
	if !after.IsZero() {
		m.N = after
	}
	if m.Place != nil && m.Place.Ord != Each && r.eat("evenly") {
		r.spread(m.Place, m.Place.N)
	}
	return m.Place != nil
}

// placed gives the stitches that were written without a place the next stitches, one each.
func (r *reader) placed(nodes []Node) {
	for _, n := range nodes {
		switch x := n.(type) {
		case *Make:
			if x.Place == nil {
				r.placeNext(x)
			}
		case *Repeat:
			r.placed(x.Body)
			r.placed(x.Ending)
		}
	}
}

func (r *reader) placeNext(m *Make) {
	m.Place = &Place{Span: m.Span, N: m.N.times(r.basesOf(m.Kind)), Lie: r.lie}
	m.N, r.lie = Plain(1), LieUnsaid
	if m.Span.Start >= r.loopFrom {
		m.Place.Loop = r.loop
	}
}

// wholeRow sees "across", "around", "to end", "to last 2 sts", straight after a stitch's name.
func (r *reader) wholeRow() bool {
	switch {
	case r.word("across"), r.words("all", "rnd"), r.words("all", "around"):
		return true
	case r.word("around"):
		return !r.aroundPost()
	case r.word("up") && r.wordAt(1, "to"):
		return true
	case r.word("to"):
		return r.wordAt(1, "end", "last", "the", "corner", "centre", "within") || r.words("to", "next", "corner") || r.toSpace(1) || r.before()
	}
	return r.word("until")
}

// joinedOver: "sc next 2 sts together" and "4-tr cluster over next 4 sts" are decreases by another name.
func (r *reader) joinedOver(m *Make) {
	p := m.Place
	if p.Ord != Next || p.N.A != 0 || p.N.Sizes != nil || p.N.B < 2 {
		return
	}
	if r.eat("tog") {
		m.Kind = r.together(m.Kind, p.N.B)
		return
	}
	if k, ok := r.o.Library.Kind(m.Kind); ok && m.Unit == nil && k.SamePlace && k.Legs == p.N.B && k.Plain != nil && r.over(p) {
		m.Kind = r.together(k.Plain.Name, k.Legs)
	}
}

// over reports whether a place was written with "over".
func (r *reader) over(p *Place) bool {
	return !r.outside && strings.HasPrefix(strings.ToLower(r.src[p.Span.Start:p.Span.End]), "over")
}

// mode puts what was said for the whole row, or for the next stitch, into a place.
func (r *reader) mode(p *Place) {
	if p.Loop == BothLoops && hasLoops(p.What) {
		p.Loop = r.loop
	}
	if p.Lie == LieUnsaid {
		p.Lie, r.lie = r.lie, LieUnsaid
	}
}

// hasLoops reports whether a single loop of such a place can be meant.
func hasLoops(w What) bool {
	switch w {
	case InSt, InKind, InCh, InStCh, InStSp, InCentre, InSkipped, InTch:
		return true
	}
	return false
}

// eachOnce: "3 dc in next 3 sts" is one each; "2 dc in next 3 sts" is two in each.
func (r *reader) eachOnce(m *Make) {
	p := m.Place
	if p.Ord == Next && p.What != InSp && !m.N.isOne() && p.N.same(m.N) && p.Ext.How != OverN {
		m.N, m.Alike = Plain(1), true
	}
	if p.Ord != Each && p.Ext.How == OverN {
		p.Ext = Extent{}
	}
}

// aroundPost tells "fpdc around next st" from "sc around".
func (r *reader) aroundPost() bool {
	next := r.peek(1)
	return next.kind != signToken && next.kind != lineToken && next.kind != endToken &&
		!r.wordAt(1, "to", "until", "turn", "join", "and", "then", "rep", "with", "working", "ending", "do", "fasten", "across", "around")
}

// hookNote reads "(skipped 3 ch count as dc)" straight after the place, so that "and in each ch" can still follow.
func (r *reader) hookNote() {
	if !r.word("(", "[") || r.row == nil {
		return
	}
	close := r.tok().match
	if close == 0 {
		return
	}
	k := r.countsWord(r.i+1, close)
	if k == 0 {
		skipped, counts := false, Counts
		for k := r.i + 1; k < close; k++ {
			skipped = skipped || r.tokens[k].text == "skipped" && k < r.i+5
			if t := r.tokens[k].text; t == "not" || t == "loop" {
				counts = CountsNot
			}
		}
		if skipped { // "(the skipped chains are a loop, not a st)", "(the 3 skipped chs are the first dc)"
			r.i = close + 1
			r.row.Hook = counts
		}
		return
	}
	c := &ChainN{}
	r.i = k
	r.counting(c)
	r.i = close + 1
	r.row.Hook, r.row.HookAs = c.Counts, c.As
}

// more reads "... and in each ch across", "and in next st": the same stitch goes on.
func (r *reader) more(prev Node) []Node {
	var out []Node
	for {
		start := r.i
		r.eat(",")
		if !r.eat("and") {
			r.i = start
			return out
		}
		from := r.i
		if x, ok := prev.(*Make); ok && r.word("across", "around") { // "in 2nd ch from hook and across"
			ext, _ := r.times()
			y := *x
			y.Span = r.span(from)
			y.Place = &Place{Span: y.Span, Ord: Each, N: Plain(1), Ext: ext, Loop: r.loop}
			out = append(out, &y)
			continue
		}
		if !(r.placeWord() || r.word("each", "next", "last")) || r.words("in", "rep") {
			r.i = start
			return out
		}
		p := r.place()
		if p == nil {
			r.i = start
			return out
		}
		switch x := prev.(type) {
		case *Make:
			if joinPlaces(x.Place, p) { // "in each sc and in each ch-1 sp"
				x.Span.End = p.Span.End
				continue
			}
			y := *x
			y.Span, y.Place = r.span(from), p
			r.mode(p)
			r.eachOnce(&y)
			out = append(out, &y)
		case *Group:
			y := *x
			y.Span, y.Place = r.span(from), p
			out = append(out, &y)
		}
	}
}

// joinPlaces makes one place of "each sc" and "each ch-1 sp".
func joinPlaces(q, p *Place) bool {
	if q == nil || q.Ord != Each || p.Ord != Each || q.Ext.How != Across {
		return false
	}
	st, sp := q.What, p.What
	if st == InSp || st == InCh { // "in each ch-1 sp and in each dc"
		st, sp = sp, st
	}
	if sp != InSp && sp != InCh || st != InKind && st != InSt {
		return false
	}
	q.What, q.Name, q.Chains, q.Ext = InStSp, "", 0, p.Ext
	if sp == InCh {
		q.What = InStCh
	}
	q.Span.End = max(q.Span.End, p.Span.End)
	return true
}
