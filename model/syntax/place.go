package syntax

// placeWord reports whether a word stands at hand that begins a place.
func (r *reader) placeWord() bool {
	if r.word("to") {
		return !r.wordAt(1, "end", "last", "the", "form", "join", "centre", "corner", "within", "close", "make") || r.words("to", "the") && r.wordAt(2, "top", "first", "next")
	}
	return r.word("in", "over", "under", "around", "between", "at", "through", "from", "inside", "behind") && !r.words("in", "rep") && !r.words("from", "hook")
}

// what reads the sort of thing worked into: st, ch-2 sp, dc, shell, "st and ch", "dc and ch-1 sp".
func (r *reader) what() (what What, name string, chains int, ok bool) {
	what, name, chains, ok = r.oneWhat()
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
	case what == InCh && r.wordAt(k, "st"), what != InCh && r.wordAt(k, "ch") && !r.number(k+1) && !r.wordAt(k+1, "sp", "loop"):
		if what == InKind && k > 1 {
			break // "in each dc and in each ch": two places
		}
		r.pass(k + 1)
		return InStCh, "", 0, true
	case what != InCh && r.wordAt(k, "ch", "ch-sp", "ch-sps", "sp", made) && (what == InSt || k == 1):
		r.pass(k)
		r.oneWhat()
		return InStSp, "", 0, true
	}
	return what, name, chains, ok
}

// oneWhat reads one sort of thing worked into.
func (r *reader) oneWhat() (what What, name string, chains int, ok bool) {
	t := r.tok()
	switch t.text {
	case made, madeOf, glued:
		r.pass(1)
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
	case "st":
		r.pass(1)
		return InSt, "", 0, true
	case "sp", "mesh":
		r.pass(1)
		return InSp, "", 0, true
	case "loop":
		if !r.wordAt(1, "only") {
			r.pass(1)
			return InSp, "", 0, true
		}
	case "gap", "gaps":
		r.pass(1)
		return InGap, "", 0, true
	case "corner":
		r.pass(1)
		_, _, n, _ := r.what()
		return InCorner, "", n, true
	case "group":
		r.pass(1)
		return InUnit, "group", 0, true
	case "tch":
		r.pass(1)
		return InTch, "", 0, true
	case "turn":
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
			return InUnit, "group", 0, true
		}
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
	case r.tok().kind == ordinalToken && r.tok().n == 3:
		loop = ThirdLoop
	default:
		return BothLoops
	}
	short := r.word("blo", "flo", "tbl")
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

// place reads where a stitch goes, from the placing word on.
func (r *reader) place() *Place {
	start := r.i
	p := &Place{N: Plain(1)}
	r.placeBody(p)
	p.Span = r.span(start)
	return p
}

func (r *reader) placeBody(p *Place) {
	between := r.word("between")
	if r.word("behind") {
		p.Lie = BehindIt
	}
	if r.placeWord() {
		r.pass(1)
	}
	r.fill("the", "a", "an", "any", "both", "post", "posts", "all", "base")
	if r.wordBefore(r.i, "both") {
		r.eat("loop")
	}
	if r.words("st", "of") && !r.wordAt(2, "row", "rnd", "prev", "last", "r") || r.words("st", "around") {
		r.pass(1)
	}
	r.fill("of", "around", "the")
	into := InSt
	switch {
	case r.words("other", "side", "of"), r.words("opposite", "side", "of"):
		r.pass(3)
		into = InUnder
	case r.words("face", "of"), r.words("surface", "of"):
		r.pass(2)
		into = InFace
	}
	if into != InSt {
		r.fill("the")
		r.commonPlace(p)
		p.What, p.Name, p.Chains = into, "", 0
		return
	}
	if loop := r.loopWord(); loop != BothLoops {
		p.Loop = loop
		if !r.eat("of") && !r.placeWord() && !r.word("next", "each") {
			r.below(p)
			if r.word("across", "around") {
				p.Ord = Each
				p.Ext, _ = r.times()
			}
			return
		}
		r.fill("in", "the")
	}
	if between || r.words("sp", "between") || r.word("next", "each") && (r.wordAt(1, "gap", "gaps") || r.wordAt(1, "sp") && r.wordAt(2, "between")) {
		r.gap(p)
		return
	}
	if r.word("top") {
		r.pass(1)
		r.eat("of")
		r.fill("the", "first", "skipped")
		if r.tchWord() {
			p.What = InTch
			return
		}
		r.fill("of")
	}
	switch {
	case r.eat("same"):
		p.Ord = Same
		p.What, p.Name, p.Chains, _ = r.what()
		r.fill("place")
		if r.eat("as") {
			for r.is(wordToken) && !r.word("turn") || r.is(numberToken) {
				r.pass(1)
			}
		}
		r.below(p)
		return
	case r.word("ring", "circle", "mr"), r.word("magic", "adjustable", "adj") && r.wordAt(1, "ring", "circle", "loop"):
		r.fill("magic", "adjustable", "adj")
		r.pass(1)
		p.What = InRing
		return
	case r.tchWord():
		p.What = InTch
		return
	case r.is(ordinalToken), r.word("first") && r.wordAt(1, "ch") && r.wordAt(2, "from"):
		r.ordinalPlace(p)
		return
	case r.eat("centre"):
		p.Centre, p.Ord = true, Same
		p.What, p.Name, p.Chains, _ = r.what()
		if !r.eat("of") {
			p.Centre, p.Ord, p.What, p.Name, p.Chains = false, Next, InCentre, "", 0
			return
		}
		r.of(p)
		return
	case r.words("end", "of"), r.words("row", "end"), r.words("each", "row", "end"), r.words("end", "of", "each", "row"):
		r.rowEnds(p)
		return
	}
	r.commonPlace(p)
}

// rowEnds reads "in each row end across", "in the end of each row", "in next row end".
func (r *reader) rowEnds(p *Place) {
	p.What, p.Ord, p.Ext = InEnd, Each, Extent{How: Across}
	for r.word("end", "of", "each", "row", "the", "edge", "side") {
		r.pass(1)
	}
	if ext, ok := r.times(); ok {
		p.Ext = ext
	}
}

// gap reads "between next 2 dc", "in sp between last group and tch", "in each sp between groups across".
func (r *reader) gap(p *Place) {
	p.What = InGap
	if r.eat("each") {
		p.Ord = Each
	}
	for r.is(wordToken) && !r.word("across", "around", "to", "and", "turn", "ch", "join") ||
		r.word("and") && r.wordAt(1, "next", "last", "first", "tch", "group", "st", "beg", "foll") ||
		r.is(numberToken) && (r.wordAt(1, "st", "group", counted) || r.stitchWord(r.i+1)) {
		if n, name := r.stitchAt(r.i); r.word("group", counted) || n > 0 && r.unit(name) != nil {
			if p.Name == "" {
				p.Name = "group"
			}
		}
		if r.word("tch", "st", "edge") {
			p.Name = "edge"
		}
		r.pass(1)
	}
	if p.Ord == Each {
		if p.Ext, _ = r.times(); p.Ext.How == Times {
			p.Ext = Extent{How: Across}
		}
	}
}

// ordinalPlace reads "2nd ch from hook", "3rd dc of next shell", "3rd ch of tch".
func (r *reader) ordinalPlace(p *Place) {
	n := max(r.tok().n, 1)
	r.pass(1)
	p.Ord, p.N = Nth, Plain(n)
	r.eat("next")
	if r.words("ch", "from") || r.words("st", "from") && r.wordAt(2, "hook", "the") {
		r.pass(2)
		r.fill("the", "hook")
		p.What = InHook
		return
	}
	p.What, p.Name, p.Chains, _ = r.what()
	if r.eat("of") {
		r.fill("the", "first", "skipped")
		if r.tchWord() {
			p.Ord, p.What, p.Name, p.Chains, p.N = Next, InTch, "", 0, Plain(1)
			return
		}
		r.of(p)
		return
	}
	if n == 1 {
		p.Ord = First
	}
}

// commonPlace reads "next 3 dc", "each ch-2 sp across", "each of next 4 sts", "last st", "skipped st".
func (r *reader) commonPlace(p *Place) {
	switch {
	case r.eat("each"):
		p.Ord, p.Ext = Each, Extent{How: Across}
		if r.words("of", "next") || r.words("of", "the", "next") || r.words("of", "first") || r.words("of", "last") || r.words("of", "the", "last") ||
			r.words("of", "the", "first") || r.word("of") && (r.number(1) || r.wordAt(1, "rem") || r.wordAt(1, "skipped") || r.wordAt(1, "the") && r.number(2)) {
			r.eachOf(p)
			return
		}
		r.fill("rem", "of", "the")
		if r.number(0) || r.word("n") { // "each 5 sts": the next 5
			if q, ok := r.num(true); ok {
				p.Ord, p.N, p.Ext = Next, q, Extent{How: OverN}
			}
		}
	case r.eat("next"):
	case r.eat("first"):
		p.Ord = First
	case r.eat("last"):
		p.Ord = Last
	}
	skipped := r.eat("skipped")
	r.fill("foll", "unworked", "unused", "free")
	if r.word("rem") && p.Ord == Next { // "in remaining sts"
		r.pass(1)
		if t := r.tok(); r.word("st", "ch") && r.lower(t) != "st" && r.lower(t) != "ch" {
			p.Ord, p.Ext = Each, Extent{How: Across}
		}
	}
	if !(r.number(0) && r.wordAt(1, "ch") && r.wordAt(2, "sp", "loop")) {
		if q, ok := r.num(true); ok {
			p.N = q
		}
	}
	skipped = r.eat("skipped") || skipped
	p.What, p.Name, p.Chains, _ = r.what()
	if p.What == InCh && r.word("from") { // "first ch from hook"
		r.pass(1)
		r.fill("the", "hook")
		p.Ord, p.What = Nth, InHook
	}
	if skipped {
		p.What, p.Name = InSkipped, ""
	}
	if p.Ord == Each {
		r.below(p)
		m := r.mark()
		r.fill("of", "the", "row", "rnd")
		if ext, ok := r.times(); ok && ext.How != Times {
			p.Ext = ext
		} else {
			r.back(m)
		}
	}
	if r.word("of") && !r.wordAt(1, "row", "rnd", "prev") {
		r.pass(1)
		r.fill("the")
		if r.tchWord() {
			p.What, p.Name, p.Chains = InTch, "", 0
			return
		}
		r.ofPlace(p)
	}
	r.fill("place", "indicated")
	if r.word("where") { // "in st where last sc was made"
		r.toSeparator()
		p.Ord, p.What, p.Name, p.N = Same, InSt, "", Plain(1)
		return
	}
	if r.words("at", "base", "of") || r.words("at", "the", "base", "of") { // "in st at base of ch-3"
		r.fill("at", "the", "base", "of")
		r.tchWord()
		p.Ord, p.What, p.Name = Same, InSt, ""
	}
	if p.What == InSp && r.word("between") { // "in ch-3 sp between next 2 dc": the space is named already
		for r.is(wordToken) || r.is(numberToken) {
			r.pass(1)
		}
	}
	r.below(p)
	if p.Below > 0 && p.What == InSkipped {
		p.What = InSt
	}
}

// eachOf reads "each of next 4 sts".
func (r *reader) eachOf(p *Place) {
	r.eat("of")
	r.fill("the")
	p.Ord = Next
	switch {
	case r.eat("next"), r.eat("foll"):
	case r.eat("first"):
		p.Ord = First
	case r.eat("last"):
		p.Ord = Last
	}
	r.fill("rem")
	p.Ext = Extent{How: OverN}
	if q, ok := r.num(true); ok {
		p.N = q
	}
	skipped := r.eat("skipped")
	p.What, p.Name, p.Chains, _ = r.what()
	if r.below(p); skipped && p.Below == 0 {
		p.What, p.Name = InSkipped, ""
	}
}

// ofPlace hangs the place after "of" on the place before it.
func (r *reader) ofPlace(p *Place) {
	q := r.unitPlace()
	r.ofEach(p, q)
	if p.What == InSp || p.Ord == First || p.Ord == Last || p.What == InKind {
		p.Of = q
	}
	if q.Below > 0 {
		p.Below = q.Below
	}
	if q.Row > 0 {
		p.Row = q.Row
	}
}

// of hangs "next shell" on a place; "of each shell across" makes the place itself repeat.
func (r *reader) of(p *Place) {
	p.Of = r.unitPlace()
	r.ofEach(p, p.Of)
}

// ofEach: "last dc of each shell" repeats the first and the last; of others the place itself repeats.
func (r *reader) ofEach(p, q *Place) {
	if q.Ord != Each {
		return
	}
	if p.Ord != First && p.Ord != Last {
		q.Ord, p.Ord = Next, Each
	}
	p.Ext = r.across()
}

func (r *reader) across() Extent {
	if ext, ok := r.times(); ok && ext.How != Times {
		return ext
	}
	return Extent{How: Across}
}

// unitPlace reads the "next shell" of "centre dc of next shell".
func (r *reader) unitPlace() *Place {
	start := r.i
	q := &Place{N: Plain(1)}
	r.fill("the")
	switch {
	case r.eat("next"):
	case r.eat("each"):
		q.Ord = Each
	case r.eat("same"):
		q.Ord = Same
	case r.eat("last"):
		q.Ord = Last
	case r.eat("first"):
		q.Ord = First
	}
	q.What, q.Name, q.Chains, _ = r.what()
	r.below(q)
	q.Span = r.span(start)
	return q
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
	case r.eat("tch"), r.eat("st-ch"):
		return true
	case r.word(made, madeOf) && !space(1), r.word(glued) && !space(1):
		r.pass(1)
		return true
	case r.word("ch") && r.number(1) && !space(2), r.number(0) && r.wordAt(1, "ch") && !space(2):
		r.pass(2)
		return true
	case beg && r.word("ch"):
		r.pass(1)
		if r.number(0) {
			r.pass(1)
		}
		return true
	}
	r.i = start
	return false
}

// skips reads "skip first dc and ch-2 sp" as two skips.
func (r *reader) skips() []Node {
	out := []Node{r.skip()}
	for r.word("and") {
		start := r.i
		r.pass(1)
		from := r.i
		r.fill("next", "the")
		s := &Skip{N: Plain(1)}
		if q, ok := r.num(true); ok {
			s.N = q
		}
		what, name, chains, ok := r.oneWhat()
		if !ok || r.placeWord() || r.is(numberToken) {
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
	r.fill("the", "next", "foll")
	if r.word("rem") && r.wordAt(1, "st", "ch") {
		r.pass(2)
		s.N, s.Rest, s.Span = Num{}, true, r.span(start)
		return s
	}
	if r.word("last") {
		r.pass(1)
	}
	s.First = r.eat("first")
	if q, ok := r.num(true); ok {
		s.N = q
	}
	r.fill("next", "of")
	if what, name, chains, ok := r.oneWhat(); ok {
		s.What, s.Name, s.Chains = what, name, chains
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
