package syntax

// spread makes a place one of n places evenly spread, and reads along what.
func (r *reader) spread(p *Place, n Num) {
	r.fill("spaced")
	p.Ord, p.N, p.Ext = Each, Plain(1), Extent{How: Evenly, N: n}
	if r.words("to", "next", "corner") || r.words("to", "corner") {
		r.fill("to", "next", "corner")
		p.Ext.What = InCorner
		return
	}
	rows := r.word("down", "up")
	r.fill("across", "around", "in", "down", "up")
	r.fill("the", "each")
	if !r.words("row", "end") {
		r.fill("row", "rnd")
	}
	if edge, ok := r.edge(); ok && (rows || edge == SideEdge || edge == LeftEdge || edge == RightEdge) {
		p.What = InEnd
	}
}

// evenly reads "sc evenly along side edge", "37 sc evenly across".
func (r *reader) evenly(m *Make, start int, after Num) bool {
	if !r.word("evenly") && !r.words("spaced", "evenly") {
		return false
	}
	q := m.N
	if !after.IsZero() {
		q = after
	} else if q.isOne() {
		q = Num{}
	}
	r.fill("spaced", "evenly")
	m.N = Plain(1)
	m.Place = &Place{}
	r.spread(m.Place, q)
	m.Place.Span = r.span(start)
	return true
}

// byTimes reads "x 6".
func (r *reader) byTimes() (Num, bool) {
	if r.number(1) && (r.word("x") || r.word("*") && r.stars == 0) {
		r.pass(1)
		return r.num(false)
	}
	if (r.number(0) && r.wordAt(1, "time") || often[r.tok().text] > 0) && !r.wordAt(1, "more") && !r.wordAt(2, "more") { // "sc2tog 6 times"
		q, _, ok := r.howOften()
		return q, ok
	}
	return Num{}, false
}

func (r *reader) kindOr(kind string) string {
	if r.kind == "" {
		return kind
	}
	return r.kind
}

// changeOfCount reads what follows "inc" and "dec".
func (r *reader) changeOfCount(m *Make, start int, lead, inc bool) []Node {
	n := m.N
	if x, ok := r.byTimes(); ok {
		n = x
	} else if q, _, ok := r.howOften(); !lead && ok { // inc 6 times
		n = q
	} else if !lead && r.number(0) {
		n, _ = r.num(false)
	}
	m.N = Plain(1)
	if inc {
		m.N = Plain(2)
	}
	m.Place = nil
	switch {
	case r.everyNth() > 0:
		return r.spacedOut(m, start)
	case r.wholeRow():
		from := r.i
		ext, _ := r.times()
		m.Place = &Place{Ord: Each, N: Plain(1), Ext: ext, Span: r.span(from)}
	case r.eat("evenly"):
		m.Place = &Place{}
		r.spread(m.Place, n)
		m.Place.Span = r.span(start)
	case r.placeWord():
		m.Place = r.place()
	}
	if m.Place == nil {
		m.Place = &Place{N: n, Span: r.span(start)}
		if !inc {
			m.Place.N = n.times(r.basesOf(m.Kind))
		}
	}
	r.mode(m.Place)
	if m.Place.Ord != Each {
		m.Place.Ext = Extent{}
	}
	m.Span = r.span(start)
	return append([]Node{m}, r.more(m)...)
}

// everyNth sees "in every 4th st" and gives the 4; "in every other st" is the 2nd.
func (r *reader) everyNth() int {
	switch {
	case !r.words("in", "each") || !r.wordAt(3, "st", "ch"):
		return 0
	case r.wordAt(2, "other", "alternate"):
		return 2
	case r.peek(2).kind == ordinalToken:
		return r.peek(2).n
	}
	return 0
}

// spacedOut writes "inc in every 4th st" out as a repeat: three plain stitches and the increase. A stitch
// that changes no count has skipped ones between instead: "dc in every other st".
func (r *reader) spacedOut(m *Make, start int) []Node {
	n := r.everyNth()
	what := InSt
	if r.wordAt(3, "ch") {
		what = InCh
	}
	r.pass(4)
	ext, ok := r.times()
	if !ok || ext.How == Times {
		ext = Extent{How: Across}
	}
	span := r.span(start)
	bases := r.basesOf(m.Kind)
	m.Span, m.Place = span, &Place{Span: span, N: Plain(bases), What: what}
	body := []Node{m}
	switch rest := Plain(n - bases); {
	case rest.B <= 0:
	case bases > 1 || !m.N.isOne():
		body = []Node{&Make{Span: span, N: Plain(1), Kind: r.bare(m.Kind), Place: &Place{Span: span, N: rest, What: what}}, m}
	default:
		body = []Node{m, &Skip{Span: span, N: rest, What: what}}
	}
	return []Node{&Repeat{Span: span, Body: body, Ext: ext}}
}
