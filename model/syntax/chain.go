package syntax

// chainAhead sees "ch 3", "ch3", "3 ch", "4n + 2 ch"; not "2 ch sp".
func (r *reader) chainAhead() bool {
	if r.word(glued) {
		return true
	}
	if r.word("ch") {
		return !r.wordAt(1, "sp", "loop")
	}
	if !r.number(0) && !r.word("n") {
		return r.words("c", "h") && r.number(2)
	}
	start := r.i
	_, ok := r.num(true)
	r.eat("foundation")
	ok = ok && r.word("ch") && !r.wordAt(1, "sp", "loop")
	r.i = start
	return ok
}

// chain reads "ch 3", "3 ch", "ch3", with "(counts as dc, ch 2)".
func (r *reader) chain() []Node {
	start := r.i
	c := &ChainN{N: Plain(1)}
	switch {
	case r.word(glued):
		c.N = Plain(r.tok().n)
		r.pass(1)
		r.sizeNumbers(&c.N, true)
	case r.word("ch", "c"):
		r.eat("c")
		r.pass(1)
		r.fill("x", "a", "of")
		if q, ok := r.num(true); ok {
			c.N = q
		}
	default:
		c.N, _ = r.num(true)
		r.eat("foundation")
		r.pass(1)
	}
	r.fill("st")
	if c.N.isOne() && r.word("multiple") || r.wordAt(1, "multiple") && r.word("a", "any") {
		r.sampleOf(&c.N)
	}
	r.moreChains(&c.N)
	k := 0
	if r.word(",") && r.wordAt(1, "to") && r.wordAt(2, "stand", "count") {
		r.pass(2)
		r.counting(c)
	}
	if r.word(".") && r.wordAt(1, "(") && r.countingAt(2) {
		k = 1
	}
	if r.wordAt(0, ",") || r.word("-", dash) && r.wordAt(1, "counts", "count") {
		k = 1
	}
	switch {
	case r.wordAt(k, "(", "[") && r.countingAt(k+1):
		r.pass(k + 1)
		r.counting(c)
	case r.word("-", dash) && k == 1:
		r.pass(1)
		r.counting(c)
	case r.word("counts", "count"), r.word("for") && r.forStitch(1):
		r.counting(c)
	}
	c.Span = r.span(start)
	return []Node{c}
}

// sampleOf reads the "multiple of 14 + 1 for the width you want (sample: 71)" of a foundation: the number that its
// writer took, else the multiple itself.
func (r *reader) sampleOf(q *Num) {
	for k := 0; !r.headingAtLine(k); k++ {
		t := r.peek(k)
		if t.kind == lineToken || t.kind == endToken || t.text == "." && r.peek(k+1).kind != numberToken {
			break
		}
		if t.kind == numberToken && r.wordAt(k+1, "for", "in") && (sampleWords[r.lower(r.peek(k+2))] || r.wordAt(k+2, "the") && sampleWords[r.lower(r.peek(k+3))]) { // "38 for the sample"
			*q = Plain(t.n)
			r.pass(k + 2)
			for r.is(wordToken) {
				r.pass(1)
			}
			r.fill(")", "]")
			return
		}
		if !sampleWords[r.lower(t)] {
			continue
		}
		for j := k + 1; j < k+6; j++ {
			if r.number(j) {
				*q = Plain(r.peek(j).n)
				r.pass(j + 1)
				r.fill(")", "]")
				return
			}
			if r.peek(j).kind == lineToken || r.wordAt(j, ".", "multiple") {
				break
			}
		}
	}
}

// headingAtLine reports whether a heading begins k tokens on, at the start of a line.
func (r *reader) headingAtLine(k int) bool {
	i := min(r.i+k, len(r.tokens)-1)
	return i > 0 && r.tokens[i-1].kind == lineToken && r.headingAt(i)
}

// sampleWords stand before the number of chains that a writer took herself.
var sampleWords = set("mine sample shown pictured example here made used chained started model i e.g eg have ours = :")

// moreChains adds the "+ 1 for turning" of "37 ch, + 1 for turning".
func (r *reader) moreChains(q *Num) {
	k := 0
	if r.wordAt(0, ",") {
		k = 1
	}
	if !r.wordAt(k, "+", "plus") || !r.number(k+1) {
		return
	}
	n := r.peek(k + 1).n
	k += 2
	turning := r.wordAt(k, "turn", "tch")
	for r.wordAt(k, "more", "ch", "extra", "turn") {
		k++
	}
	if !turning && (!r.wordAt(k, "for", "to", "as") || !r.wordAt(k+1, "turn", "tch", "the", "a")) {
		return
	}
	*q = q.plus(n)
	for r.pass(k); r.is(wordToken) && !r.word("and", "with", "join"); {
		r.pass(1)
	}
}

// countingAt sees the words that say what a chain counts as.
func (r *reader) countingAt(k int) bool {
	return r.wordAt(k, "counts", "count", "does", "do", "=", "stands", "stand", "not", "don't", "don’t", "doesn't", "doesn’t", "to", "counted", "regard", "equals", "replaces", "counting", "first") &&
		!r.wordAt(k, "first") || r.wordAt(k, "for") && r.forStitch(k+1) || (r.wordAt(k, "first") || r.peek(k).kind == ordinalToken && r.peek(k).n == 1) && r.stitchWord(min(r.i+k+1, len(r.tokens)-1)) && r.wordAt(k+2, "+", ")", made)
}

// forStitch sees the "a treble" of "chain 5 (for a treble and 2 chain)".
func (r *reader) forStitch(k int) bool {
	for r.wordAt(k, "a", "the", "first", "1st", "one") || r.number(k) || r.peek(k).kind == ordinalToken {
		k++
	}
	return r.stitchWord(min(r.i+k, len(r.tokens)-1))
}

// counting reads "counts as dc, ch 2)" and the like, the closing bracket included.
func (r *reader) counting(c *ChainN) {
	c.Counts = Counts
	bracketed := r.i > 0 && r.wordBefore(r.i, "(", "[", ",") || r.i > 1 && r.tokens[r.i-1].text != "st" && r.tokens[r.i-2].text == "("
	for !r.word(")", "]") && !r.ended() && (bracketed || !r.word(".", ",", ";")) {
		start := r.i
		switch {
		case r.word("not", "don't", "don’t", "doesn't", "doesn’t"):
			c.Counts = CountsNot
		case r.word("ch") && r.number(1) && len(c.As) > 0:
			r.pass(1)
			c.As = append(c.As, &ChainN{N: Plain(r.tok().n), Span: r.spanTo(start)})
		case r.word(made, glued, madeOf) && len(c.As) > 0:
			c.As = append(c.As, &ChainN{N: Plain(r.tok().n), Span: r.spanTo(start)})
		case r.number(0) && r.wordAt(1, "ch") && len(c.As) > 0:
			c.As = append(c.As, &ChainN{N: Plain(r.tok().n), Span: r.spanTo(start)})
			r.pass(1)
		case r.number(0) && len(c.As) == 0 && !r.wordAt(1, "ch"):
			n := r.tok().n
			r.pass(1)
			if k, ok := r.stitch(); ok {
				c.AsKind = k
				c.As = append(c.As, &Make{N: Plain(n), Kind: k, Span: r.span(start)})
			}
			continue
		default:
			if k, ok := r.stitch(); ok {
				c.AsKind = k
				c.As = append(c.As, &Make{N: Plain(1), Kind: k, Span: r.span(start)})
				continue
			}
		}
		r.pass(1)
	}
	if r.word(")", "]") {
		r.pass(1)
	}
	if c.Counts == CountsNot {
		c.As, c.AsKind = nil, ""
	}
}

// join reads "join with sl st to first sc", "join.", "join to form a ring", and "join B in any corner".
func (r *reader) join() []Node {
	start := r.i
	if r.isYarn(1) || r.isYarnName(1) || r.wordAt(1, "in") && r.isYarn(2) || r.wordAt(1, "yarn", "colour") || r.yarnHere(1) || r.wordAt(2, "yarn", "colour") {
		if n := r.yarn(); n != nil {
			return n
		}
	}
	j := &Join{With: slipStitch}
	r.pass(1)
	if r.words("in", "ring") || r.words("in", "a", "ring") {
		j.Place = &Place{Span: r.span(start), What: InRing, N: Plain(1)}
		r.fill("in", "a", "ring")
	}
	r.fill("rnd", "it", "with", "a", "an", "by", "work", "the")
	if k, ok := r.stitch(); ok {
		j.With = k
	}
	if r.placeWord() && j.Place == nil {
		j.Place = r.place()
	}
	if r.eat("to", "form") || r.eat("in", "a") || r.eat("form") || r.eat("to", "make") {
		r.fill("a", "the", "ring", "circle")
		j.Place = &Place{Span: r.span(start), What: InRing, N: Plain(1)}
	}
	j.Span = r.span(start)
	return []Node{j}
}
