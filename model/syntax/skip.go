package syntax

// skips reads "skip first dc and ch-2 sp" as two skips.
func (r *reader) skips() []Node {
	out := []Node{r.skip()}
	for r.word("and") || r.word(",") && r.wordAt(1, "next") {
		start := r.i
		r.pass(1)
		from := r.i
		r.fill("next", "the")
		s := &Skip{N: Plain(1)}
		if q, ok := r.num(true); ok {
			s.N = q
		}
		what, name, chains, ok := r.oneWhat()
		if !ok || r.placeWord() || r.is(numberToken) || r.tokens[start].text == "," && !r.word(",", ";", ".", "(", "and") {
			r.i = start
			break
		}
		s.What, s.Name, s.Chains, s.Span = what, name, chains, r.span(from)
		out = append(out, s)
	}
	return out
}

func (r *reader) skip() Node {
	start := r.i
	s := &Skip{N: Plain(1)}
	r.pass(1)
	if r.words("same", "number") {
		s.Span = r.span(start)
		return s
	}
	r.fill("the", "next", "foll", "centre")
	unworked := r.unworked()
	if r.word("rem") && r.wordAt(1, "st", "ch") {
		r.pass(2)
		s.N, s.Rest, s.Span = Num{}, true, r.span(start)
		return s
	}
	if r.word("last") {
		r.pass(1)
	}
	if s.First = r.eat("first"); !s.First && r.tok().kind == ordinalToken && r.tok().n == 1 { // "miss 1st dc"
		s.First = true
		r.pass(1)
	}
	if q, ok := r.num(true); ok {
		s.N = q
	}
	r.fill("next", "of", "centre")
	unworked = r.unworked() || unworked
	if what, name, chains, ok := r.oneWhat(); ok {
		s.What, s.Name, s.Chains = what, name, chains
	}
	if r.word("or") && r.number(1) && r.peek(1).n == s.N.B && r.wordAt(2, "st", "ch") { // "miss 2 sts or 2 ch"
		r.pass(3)
		s.What, s.Name, s.Chains = InStCh, "", 0
	}
	if at := (Place{}); r.word("of", "in", "on") && r.wordAt(1, "row", "rnd", "r", "the") {
		start := r.i
		if r.wordAt(1, "the") {
			r.i = start
		} else if r.below(&at); at.Row > 0 {
			s.Row = at.Row
			if unworked {
				s.What, s.Name = InUnworked, ""
			}
		}
	}
	if r.words("at", "base") || r.words("at", "the", "base") { // "miss st at base of ch": the first one
		s.First = true
		r.toSeparator()
	}
	if r.word("for") && r.peek(1).kind == wordToken && !r.stitchWord(r.i+1) { // "skip first 5 sts for thumb"
		r.toSeparator()
	}
	if s.What == InCh && r.words("of", "turn", "ch") || s.What == InCh && r.words("of", "tch") {
		r.pass(1)
		r.tchWord()
	}
	if r.word("behind") || r.word("in") && r.wordAt(1, "back") {
		s.Behind = true
		for r.is(wordToken) && !r.word("and", "turn") {
			r.pass(1)
		}
	}
	s.Span = r.span(start)
	if s.First {
		r.hookNote()
	}
	return s
}

// leave reads "leave remaining sts unworked".
func (r *reader) leave() []Node {
	start := r.i
	r.pass(1)
	s := &Skip{Rest: true}
	one := r.word("last", "next")
	r.fill("the", "rem", "rest", "of", "last", "next", "all")
	if q, ok := r.num(true); ok {
		s.N = q
	} else if one && r.lower(r.tok()) != "sts" {
		s.N = Plain(1)
	}
	s.What, s.Name, s.Chains, _ = r.what()
	if s.N.IsZero() {
		s.What, s.Name, s.Chains = InSt, "", 0
	}
	if r.fill("behind"); !r.eat("unworked") && !(r.wordBefore(r.i, "st", "sp", "ch", "loop", "rest") && (r.ended() || r.word(".", ",", ";", "turn", "(", "for"))) { // "leaving a long tail"
		r.i = start
		return r.keep()
	}
	if r.word("for") { // "leaving 8 sts for neck"
		for r.is(wordToken) {
			r.pass(1)
		}
	}
	s.Span = r.span(start)
	return []Node{s}
}
