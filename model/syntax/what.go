package syntax

// what reads the sort of thing worked into: st, ch-2 sp, dc, shell, "st and ch", "dc and ch-1 sp".
func (r *reader) what() (what What, name string, chains int, ok bool) {
	if held[r.tok().text] && (r.wordAt(1, "st") || r.stitchWord(min(r.i+1, len(r.tokens)-1))) {
		r.pass(1)
	}
	start := r.i
	whole := r.word("whole", "full", "complete") && r.peek(1).kind == wordToken
	if whole {
		r.pass(1)
	}
	what, name, chains, ok = r.oneWhat()
	if whole && what == InUnit && chains == 0 {
		chains = r.sizeOfUnit(name)
	}
	if what != InSt && what != InKind && what != InCh || !ok || !r.word("and") {
		return what, name, chains, ok
	}
	k := 1
	if r.wordAt(k, "in") {
		k++
	}
	if r.wordAt(k, "each") {
		k++
	}
	switch {
	case what == InCh && (r.wordAt(k, "st") || k == 1 && r.stitchWord(r.i+k)), what != InCh && r.wordAt(k, "ch") && !r.number(k+1) && !r.wordAt(k+1, "sp", "loop"):
		if what == InKind && k > 1 {
			break // "in each dc and in each ch": two places
		}
		r.pass(k)
		r.oneWhat()
		return InStCh, "", 0, true
	case what != InCh && r.wordAt(k, "ch", "ch-sp", "ch-sps", "sp", made) && (what == InSt || k == 1):
		r.pass(k)
		r.oneWhat()
		return InStSp, "", 0, true
	case what == InKind && r.wordBefore(start, "each") && r.stitchWord(r.i+k) && r.wordAt(k+1, "across", "around", "to"): // "each sc and each bobble across"
		r.pass(k)
		r.oneWhat()
		return InSt, "", 0, true
	}
	return what, name, chains, ok
}

// sizeOfUnit is how many stitches a named group has; 0 where that is not plain.
func (r *reader) sizeOfUnit(name string) (n int) {
	u := r.unit(name)
	if u == nil || u.Macro {
		return 0
	}
	for _, node := range u.Body {
		m, ok := node.(*Make)
		if !ok || m.N.A != 0 || m.N.Sizes != nil {
			return 0
		}
		n += m.N.B
	}
	return n
}

// ofChains reads the "of 5 ch" of "each loop of 5 ch"; 0 for none.
func (r *reader) ofChains() int {
	switch {
	case r.word("of") && r.number(1) && r.wordAt(2, "ch"):
		n := r.peek(1).n
		r.pass(3)
		return n
	case r.word("of") && r.wordAt(1, glued, made):
		n := r.peek(1).n
		r.pass(2)
		return n
	}
	return 0
}

// oneWhat reads one sort of thing worked into.
func (r *reader) oneWhat() (what What, name string, chains int, ok bool) {
	t := r.tok()
	switch t.text {
	case made, madeOf, glued:
		r.pass(1)
		if r.word("(", "[") && r.sizesHere() > 0 && r.tok().match > 0 && (r.tokens[r.tok().match+1].text == "sp" || r.tokens[r.tok().match+1].text == "loop") { // "ch-6 (6, 8) sps"
			r.i = r.tok().match + 2
			return InSp, "", 0, true
		}
		if r.eat("corner") {
			r.fill("sp", "loop")
			return InCorner, "", t.n, true
		}
		r.fill("sp", "loop", "mesh")
		return InSp, "", t.n, true
	case "ch":
		switch {
		case r.number(1) && r.wordAt(2, "sp", "loop"):
			n := r.peek(1).n
			r.pass(3)
			return InSp, "", n, true
		case r.wordAt(1, "sp", "loop", "mesh"):
			r.pass(2)
			return InSp, "", 0, true
		}
		r.pass(1)
		return InCh, "", 0, true
	case "ch-sp", "ch-loop", "ch-sps", "ch-lp", "ch-lps", "ch-loops", "ch-space", "ch-spaces":
		r.pass(1)
		return InSp, "", 0, true
	case "st", "post":
		r.pass(1)
		return InSt, "", 0, true
	case "sp", "mesh":
		r.pass(1)
		return InSp, "", r.ofChains(), true
	case "loop":
		if !r.wordAt(1, "only") {
			r.pass(1)
			return InSp, "", r.ofChains(), true
		}
	case "gap", "gaps":
		r.pass(1)
		return InGap, "", 0, true
	case "corner", "point", "tip":
		r.pass(1)
		_, _, n, _ := r.what()
		return InCorner, "", n, true
	case "block", "blocks": // of a piece worked from corner to corner: its chain-space
		if r.tree.Units["block"] == nil && !r.stitchWord(r.i) {
			r.pass(1)
			return InSp, "", 3, true
		}
	case "group":
		r.pass(1)
		return InUnit, "group", 0, true
	case "tch":
		r.pass(1)
		if r.eat("sp") || r.eat("loop") {
			return InSp, "", 0, true
		}
		return InTch, "", 0, true
	case "turn":
		if r.wordAt(1, "ch") && r.wordAt(2, "sp", "loop") {
			r.pass(3)
			return InSp, "", 0, true
		}
		if r.wordAt(1, "ch") {
			r.pass(2)
			return InTch, "", 0, true
		}
	case "row":
		if r.wordAt(1, "end") {
			r.pass(2)
			return InEnd, "", 0, true
		}
	case counted:
		if r.wordAt(1, "group") {
			r.pass(2)
			return InUnit, "group", t.n, true
		}
	}
	if t.kind == numberToken && r.wordAt(1, "ch-sp", "ch-sps", "ch-loop", "ch-lp", "ch-space") { // 1ch-sp
		r.pass(2)
		return InSp, "", t.n, true
	}
	if t.kind == numberToken && r.wordAt(1, "ch") && r.wordAt(2, "corner") {
		r.pass(3)
		r.fill("sp", "loop")
		return InCorner, "", t.n, true
	}
	if t.kind == numberToken && r.wordAt(1, "ch") && r.wordAt(2, "sp", "loop") {
		r.pass(3)
		return InSp, "", t.n, true
	}
	k, found := r.stitch()
	if !found {
		return InSt, "", 0, false
	}
	if r.eat("group") {
		return InUnit, "group", 0, true
	}
	if u := r.unit(k); u != nil && u.Recipe == "" {
		return InUnit, k, 0, true
	}
	return InKind, k, 0, true
}

// loopWord reads "back loop only", "front loops", "blo", "third loop".
func (r *reader) loopWord() Loop {
	start := r.i
	loop := BothLoops
	switch {
	case r.word("back", "blo", "tbl"):
		loop = BackLoop
	case r.word("front", "flo"):
		loop = FrontLoop
	case r.tok().kind == ordinalToken && r.tok().n == 3, r.word("hbl", "lbl"):
		loop = ThirdLoop
	default:
		return BothLoops
	}
	short := r.word("blo", "flo", "tbl", "hbl", "lbl")
	r.pass(1)
	if !short && !r.eat("loop") && (loop == FrontLoop || !r.eat("bump") && !r.eat("hump") && !r.eat("bumps")) {
		r.i = start
		return BothLoops
	}
	r.fill("only")
	if r.wordBefore(r.i, "bump", "hump", "bumps") {
		loop = ThirdLoop // the bump at the back of a chain
	}
	return loop
}

// below reads "2 rows below", "in row below", "of Row 3".
func (r *reader) below(p *Place) {
	switch {
	case r.number(0) && r.wordAt(1, "row", "rnd") && r.wordAt(2, "below", "down"):
		p.Below = r.tok().n
		r.pass(3)
		if p.Below == 1 {
			p.Below = 2 // "one row below" the usual place
		}
	case r.words("in", "row", "below"), r.words("of", "row", "below"):
		r.pass(3)
		p.Below = 2
	case r.words("in", "the", "row", "below"):
		r.pass(4)
		p.Below = 2
	case r.word("in", "of") && r.wordAt(1, "row", "rnd", "r") && r.number(2):
		p.Row = r.peek(2).n
		r.pass(3)
	case r.words("of", "prev", "row"), r.words("in", "prev", "row"), r.words("of", "prev", "rnd"), r.words("in", "prev", "rnd"),
		r.words("of", "last", "row"), r.words("of", "last", "rnd"):
		r.pass(3)
	}
}

// tchWord reads turning ch, tch, beg ch-3, ch-3, beg ch.
func (r *reader) tchWord() bool {
	start := r.i
	beg := false
	for r.word("beg", "turning", "turn", "starting", "start") {
		r.pass(1)
		beg = true
	}
	space := func(k int) bool { return r.wordAt(k, "sp", "loop") }
	switch {
	case r.word("tch", "st-ch") && !space(1):
		r.pass(1)
		return true
	case r.word(made, madeOf) && !space(1), r.word(glued) && !space(1):
		r.pass(1)
		return true
	case r.word("ch") && r.number(1) && !space(2), r.number(0) && r.tok().n < 9 && r.wordAt(1, "ch") && !space(2):
		r.pass(2)
		return true
	case beg && r.word("ch") && !space(1):
		r.pass(1)
		if r.number(0) {
			r.pass(1)
		}
		return true
	}
	r.i = start
	return false
}
