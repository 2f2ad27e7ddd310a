package syntax

import "slices"

// placeWord reports whether a word stands at hand that begins a place.
func (r *reader) placeWord() bool {
	if r.word("to") {
		return !r.wordAt(1, "end", "last", "the", "form", "join", "centre", "corner", "within", "close", "make") || r.words("to", "the") && (r.wordAt(2, "top", "first", "next") || r.peek(2).kind == ordinalToken)
	}
	if r.word("rnd") && r.lower(r.tok()) == "round" && (r.wordAt(1, "post", "the", "stem", "next", "each", "same", "last", "first") || r.stitchWord(min(r.i+1, len(r.tokens)-1))) {
		return true // "1dc round stem of next tr"
	}
	if r.word("of") {
		return r.wordAt(1, "each", "next", "first", "last")
	}
	if r.words("at", "end") || r.words("at", "the", "end") {
		return false
	}
	return r.word("in", "over", "under", "around", "between", "at", "through", "from", "inside", "behind") && !r.words("in", "rep") && !r.words("from", "hook")
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
	base := r.word("base") || r.words("the", "base") || r.word("foot")
	if r.opening(p) {
		return
	}
	r.fill("the", "a", "an", "any", "both", "post", "posts", "stem", "all", "base", "foot")
	if r.word("eye", "eyes", "head") && r.wordAt(1, "of") {
		r.pass(2)
		r.fill("the")
	}
	if base {
		r.fill("of", "the")
		if r.tchWord() { // "in base of 3ch"
			p.Ord = Same
			return
		}
	}
	if r.wordBefore(r.i, "both") {
		r.eat("loop")
	}
	if r.words("st", "of") && !r.wordAt(2, "row", "rnd", "prev", "last", "r") || r.words("st", "around") {
		r.pass(1)
	}
	r.fill("of", "around", "the", "any")
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
		rowLong := r.word("across") || r.word("around") && !r.aroundPost()
		if rowLong || !r.eat("of") && !r.placeWord() && !r.word("next", "each") {
			r.below(p)
			if r.word("across", "around") {
				p.Ord = Each
				p.Ext, _ = r.times()
			}
			return
		}
		r.fill("in", "the")
	}
	if between || r.words("sp", "between") || r.words("sp", "before") || r.words("sp", "after") || r.word("next", "each") && (r.wordAt(1, "gap", "gaps") || r.wordAt(1, "sp") && r.wordAt(2, "between")) {
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
			for r.is(wordToken) && !r.word("turn", "and") || r.is(numberToken) {
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
	case r.word("centre") && r.wordAt(1, "back", "front") && r.wordAt(2, "of"): // "at center back of foundation ch"
		r.pass(2)
		p.What = InCh
		r.underside(p)
		return
	case r.eat("centre"):
		p.Centre, p.Ord = true, Same
		p.What, p.Name, p.Chains, _ = r.what()
		if !r.eat("of") {
			if p.Ord = Next; p.What != InSp {
				p.Centre, p.What, p.Name, p.Chains = false, InCentre, "", 0
			}
			return
		}
		r.of(p)
		return
	case r.words("end", "of"), r.words("row", "end"), r.words("each", "row", "end"), r.words("end", "of", "each", "row"),
		r.words("side", "of") && (r.wordAt(2, "row") || r.wordAt(2, "each") && r.wordAt(3, "row")):
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
	if r.word("across", "down", "up") && r.edgeAhead() { // "along left side": said apart
		return
	}
	if ext, ok := r.times(); ok {
		p.Ext = ext
	}
}

// saidEach reports whether the word stands among the tokens from token from on.
func (r *reader) saidEach(from int) bool {
	return slices.ContainsFunc(r.tokens[from:r.i], func(t token) bool { return t.text == "each" })
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
	r.eat("skipped")
	p.What, p.Name, p.Chains, _ = r.what()
	if r.eat("of") {
		r.fill("the", "first", "skipped")
		if r.word("row", "rnd") && r.number(1) && r.wordAt(2, "'", "’", "s") { // "of Row 1's beginning chain"
			r.pass(2)
			r.fill("'", "’", "s")
		}
		if r.tchWord() {
			p.Ord, p.What, p.Name, p.Chains, p.N = Next, InTch, "", 0, Plain(1)
			return
		}
		r.of(p)
		return
	}
	if r.word("made") && (r.wordAt(1, ".", ",", ";", ")") || r.peek(1).kind == lineToken) { // "in 1st sc made"
		r.pass(1)
	}
	if n == 1 {
		p.Ord = First
	} else if p.What == InCh && r.atFoundation() { // "1 treble in the fourth chain": from the hook
		p.What = InHook
	}
}

// atFoundation reports whether the first row is being read, and nothing of it has been read yet.
func (r *reader) atFoundation() bool {
	return r.row != nil && r.row.From <= 1 && len(r.row.Body) == 0 && r.depth == 1 && len(r.tree.Rows) > 1 && r.tree.Rows[len(r.tree.Rows)-2].Named == "Foundation" &&
		!slices.ContainsFunc(r.tokens[max(0, r.headEnd()):r.i], func(t token) bool { return t.text == "," || t.text == ";" })
}

// headEnd is the first token after the heading of the open row.
func (r *reader) headEnd() int {
	i := r.i
	for i > 0 && r.tokens[i-1].start >= r.row.Head.End {
		i--
	}
	return i
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
		r.fill("rem", "of", "the", "next")
		if r.number(0) && (r.wordAt(1, "ch-sp", "ch-sps", "ch-loop", "ch-lp", "ch-space") || r.wordAt(1, "ch") && r.wordAt(2, "sp", "loop", "corner")) {
			break
		}
		if r.number(0) || r.word("n") { // "each 5 sts": the next 5
			if q, ok := r.num(true); ok {
				p.Ord, p.N, p.Ext = Next, q, Extent{How: OverN}
			}
		}
	case r.eat("next"):
	case r.eat("first"):
		p.Ord = First
	case r.eat("last"), r.endPlace():
		p.Ord = Last
	}
	skipped := r.eat("skipped")
	unworked, rem := r.unworked(), false
	if r.word("half") && p.Ord == Next && r.ownHalf() { // "3 dc in top of half CL", with which the row begins
		p.Ord = First
	}
	if r.word("rem") && (p.Ord == Next || p.Ord == Each) { // "in remaining sts"
		r.pass(1)
		rem = r.number(0)
		if t := r.tok(); p.Ord == Next && r.word("st", "ch") && r.lower(t) != "st" && r.lower(t) != "ch" {
			p.Ord, p.Ext = Each, Extent{How: Across}
		}
	}
	if !(r.number(0) && (r.wordAt(1, "ch") && r.wordAt(2, "sp", "loop", "corner") || r.wordAt(1, "ch-sp", "ch-sps", "ch-loop", "ch-lp", "ch-space"))) {
		if q, ok := r.num(true); ok {
			p.N = q
		}
	}
	skipped = r.eat("skipped") || skipped
	r.fill("raised")
	unworked = r.unworked() || unworked
	if r.word("row", "rnd") && r.number(1) && (r.wordAt(2, "st") || r.stitchWord(min(r.i+2, len(r.tokens)-1))) { // "next Rnd 1 sc"
		p.Row = r.peek(1).n
		r.pass(2)
	}
	p.What, p.Name, p.Chains, _ = r.what()
	if r.word("from") && r.wordAt(1, "behind", "front", "back") {
		r.pass(2)
	}
	if p.What == InCh && r.word("from") { // "first ch from hook"
		r.pass(1)
		r.fill("the", "hook")
		p.Ord, p.What = Nth, InHook
	}
	if skipped {
		p.What, p.Name = InSkipped, ""
	}
	if r.underside(p) {
		return
	}
	if r.word("of", "across") && r.otherPiece() {
		p.What, p.Name, p.Chains = InOther, "", 0
		return
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
	if r.word("made") && (r.wordAt(1, ".", ",", ";", ")") || r.peek(1).kind == lineToken) { // "in 1st sc made"
		r.pass(1)
	}
	if r.words("just", "made") || r.words("just", "worked") {
		r.pass(2)
		p.Ord, p.What, p.Name = Same, InSt, ""
		return
	}
	if r.word("of") && !r.wordAt(1, "row", "rnd", "r", "prev") && !(r.wordAt(1, "last") && r.wordAt(2, "row", "rnd")) {
		r.pass(1)
		r.fill("the")
		if r.tchWord() {
			p.What, p.Name, p.Chains = InTch, "", 0
			return
		}
		r.ofPlace(p)
	}
	r.fill("place", "indicated")
	if r.word("formed") || r.word("made") && r.wordAt(1, "by", "with") { // "in sp formed by turning ch"
		r.toSeparator()
		return
	}
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
	if unworked || rem && p.Row > 0 {
		p.What, p.Name = InUnworked, ""
	}
}

// endPlace reads the "end" of "in the end chain".
func (r *reader) endPlace() bool {
	if r.lower(r.tok()) != "end" || !r.wordAt(1, "ch", "st", "sp") && !r.stitchWord(r.i+1) {
		return false
	}
	r.pass(1)
	return true
}

// unworked passes the words for stitches that nothing has been worked into.
func (r *reader) unworked() bool {
	start := r.i
	r.fill("unworked", "unused")
	if r.i > start {
		return true
	}
	r.fill("foll", "free")
	return false
}

// underside reads the "of foundation" of "in each ch of foundation along opposite side": the chain's other side.
func (r *reader) underside(p *Place) bool {
	if p.What != InCh && p.What != InSt && p.What != InSp {
		return false
	}
	start := r.i
	r.fill("of", "on", "across", "around", "in")
	if r.i == start {
		return false
	}
	if edge, ok := r.edge(); !ok || edge != LowerEdge {
		r.i = start
		return false
	}
	if r.word("across", "on", "in") && !r.wordAt(1, "next") { // "of foundation along the other side"
		end := r.i
		r.pass(1)
		if edge, ok := r.edge(); !ok || edge != LowerEdge {
			r.i = end
		}
	}
	p.What, p.Name, p.Chains = InUnder, "", 0
	if ext, ok := r.times(); ok && p.Ord == Each && ext.How != Times {
		p.Ext = ext
	}
	return true
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
	r.fill("rem", "the")
	p.Ext = Extent{How: OverN}
	unworked := r.unworked()
	if q, ok := r.num(true); ok {
		p.N = q
	}
	skipped := r.eat("skipped")
	r.fill("raised")
	unworked = r.unworked() || unworked
	p.What, p.Name, p.Chains, _ = r.what()
	if unworked {
		p.What, p.Name = InUnworked, ""
	}
	if r.word("of", "across") && r.otherPiece() {
		p.What, p.Name, p.Chains = InOther, "", 0
		return
	}
	if r.underside(p) {
		return
	}
	r.fill("around")                                       // "in each of the 64 ch around"
	if r.word("between") && r.wordAt(1, "the", "corner") { // "each of the 25 sts between the corners"
		r.toSeparator()
		return
	}
	if r.below(p); skipped && p.Below == 0 {
		p.What, p.Name = InSkipped, ""
	}
}

// ofPlace hangs the place after "of" on the place before it.
func (r *reader) ofPlace(p *Place) {
	q := r.unitPlace()
	if r.wordBefore(r.i, "block", "blocks") && p.What == InSp { // "ch-3 sp of next block": each has but one
		p.Ord = q.Ord
		return
	}
	r.ofEach(p, q)
	if p.What == InSp || p.What == InCh && q.What == InSp || p.Ord == First || p.Ord == Last || p.What == InKind {
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
