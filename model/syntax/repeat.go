package syntax

import "strandway/model/diag"

// star reads "* ... ; rep from * across" and "* ... * 8 times".
func (r *reader) star() []Node {
	start := r.i
	sign := r.tok().text
	rep := &Repeat{Star: true}
	r.pass(1)
	if r.ended() && !r.starGoesOn() || r.is(lineToken) && start > 0 && r.wordBefore(start, ".", ")", "]") { // a mark to which another part refers
		return []Node{&Note{Span: r.span(start), Text: sign}}
	}
	stop := func() bool {
		return r.ended() && !r.starGoesOn() || r.word(sign) || r.word("**") || r.repClause() || r.headingAhead()
	}
	r.stars++
	defer func() { r.stars-- }()
	rep.Body = r.items(stop)
	if sign != "**" && r.eat("**") {
		rep.Break = max(len(rep.Body), 1)
		rep.Body = append(rep.Body, r.items(stop)...)
		if r.eat("**") { // ** ... ** used as the only mark
			rep.Break = 0
		}
		if rep.Break >= len(rep.Body) {
			rep.Break = 0
		}
	}
	switch {
	case r.eat(sign):
		r.fill(",", ";", ".")
		if ext, ok := r.times(); ok {
			ext.Soft = false
			rep.Ext = ext
		} else {
			rep.Ext = Extent{How: Across}
		}
	case r.repClause():
		r.pass(1)
		rep.Ext = r.repExtent()
	default:
		at := r.tokens[start]
		r.find(diag.Fault, "star", diag.Span{Start: at.start, End: at.end}, "say where it stops: \"; rep from * across\"", "%q opens a repeat that is never closed", sign)
		rep.Ext = Extent{How: Times, N: Plain(1)}
		rep.Span = r.span(start)
		return []Node{rep}
	}
	inTurn(rep.Body)
	r.endings(rep, r.stars > 1)
	rep.Span = r.span(start)
	return []Node{rep}
}

// inTurn makes the next place of "the second stitch" and "the third stitch" within a repeat, where they come in turn.
func inTurn(body []Node) {
	met := 0
	for _, n := range body {
		switch x := n.(type) {
		case *Make:
			p := x.Place
			if p == nil || p.What != InSt && p.What != InKind || p.Of != nil || p.N.A != 0 || p.N.Sizes != nil {
				return
			}
			switch p.Ord {
			case Nth:
				if p.N.B != met+1 {
					return
				}
				p.Ord, p.N = Next, Plain(1)
				met++
			case First:
				if met > 0 {
					return
				}
				met = p.N.B
			case Next:
				met += p.N.B
			default:
				return
			}
		case *Skip:
			met += x.N.B
		case *ChainN:
		default:
			return
		}
	}
}

// repExtent reads what follows "rep": the marks, and how often.
func (r *reader) repExtent() Extent {
	r.repMarks()
	r.fill(",")
	total := r.word("for", "a") && (r.wordAt(1, "total") || r.wordAt(2, "total"))
	if total {
		r.fill("for", "a", "total", "of")
	}
	ext, ok := r.times()
	if !ok {
		return Extent{How: Across}
	}
	if total {
		ext.Soft = false
	}
	if ext.How == Times && !total && !r.wordBefore(r.i, "all", "total") { // the first working is not among them
		ext.N = ext.N.plus(1)
	}
	return ext
}

// repMarks passes "from * to *", "between *s", "(*)".
func (r *reader) repMarks() {
	r.fill("from", "between")
	for r.word("*", "**", "†", "‡", "#", "s", "-", "+", "the", "'", "’", "\"", "(", ")", "first", "nth") ||
		r.word("to") && (r.wordAt(1, "*", "**", "†", "‡", "#") || r.wordAt(1, "first", "nth") && r.wordAt(2, "*")) {
		if r.word("(") && r.tok().match != r.i+2 || r.word(")") && !r.wordBefore(r.i, "*", "**") {
			return
		}
		r.pass(1)
	}
}

// fromStart reads "1 sc, dec; rep around": without a mark the row repeats from its first stitch.
func (r *reader) fromStart(out []Node) []Node {
	if r.depth != 1 || r.stars > 0 || !r.word("rep") || !r.repClause() || r.wordAt(1, "from", "between", "*", "**", "†", "‡", "#", "+", "until", ".", ",", ";") {
		return nil
	}
	at := 0
loop:
	for at < len(out) {
		switch out[at].(type) {
		case *ChainN, *Yarn, *Note, *Turn, *Along:
			at++
		default:
			break loop
		}
	}
	if at == len(out) {
		return nil
	}
	r.pass(1)
	ext := r.repExtent()
	body := append([]Node{}, out[at:]...)
	r.placed(body)
	inTurn(body)
	rep := &Repeat{Body: body, Ext: ext}
	rep.Ext.Soft = false
	r.endings(rep, false)
	if last := r.i - 1; !r.outside {
		rep.Span = diag.Span{Start: body[0].At().Start, End: r.tokens[last].end}
	}
	return append(out[:at:at], rep)
}

// lostStar reports a "rep from *" that no star opens.
func (r *reader) lostStar() []Node {
	start := r.i
	r.pass(1)
	r.repExtent()
	r.find(diag.Fault, "star", r.span(start), "put a * where the repeat begins", "%q stands after no *", clip(r.textFrom(start)))
	return []Node{}
}

func (r *reader) starGoesOn() bool {
	return r.is(lineToken) && !r.blankLineAt(r.i) && !r.headingAt(r.i+1)
}

// repClause: "rep from *", "rep *", "rep across", "rep between *s".
func (r *reader) repClause() bool {
	if r.repFromRow() > 0 {
		return false
	}
	return r.word("rep") && (r.wordAt(1, "from", "between", "*", "**", "across", "around", "to", "†", "‡", "#", "+", "until", "all", ".", "once", "twice", ",", ";") || r.number(1) || r.peek(1).kind == lineToken || r.peek(1).kind == endToken)
}

// times reads the clause that ends a repeat.
func (r *reader) times() (Extent, bool) {
	start := r.i
	rep := r.eat("rep")
	if rep && r.word("from", "between", "*", "**", "†", "(") && !(r.word("(") && r.tok().match != r.i+2) {
		r.repMarks()
	}
	marks := r.i
	r.fill("all")
	if r.word("up") && r.wordAt(1, "to") {
		r.pass(1)
	}
	switch {
	case r.word("across", "around"), r.word("rnd") && r.wordBefore(r.i, "all"):
		r.pass(1)
		r.fill("row", "rnd", "the", "rest", "of", "top")
		if ext, ok := r.toLast(); ok {
			return ext, true
		}
		return Extent{How: Across}, true
	case r.words("to", "corner"), r.words("to", "centre"), r.words("to", "next", "corner"), r.words("to", "next", "shell"), r.words("to", "next"):
		r.fill("to", "next")
		if r.eat("centre") {
			r.what()
			if r.word("of") && (r.wordAt(1, "corner") || r.wordAt(2, "corner")) { // "to middle sc of next corner"
				r.fill("of", "next", "each", "the", "corner")
				return Extent{How: ToNext, What: InCorner}, true
			}
			return Extent{How: ToNext, What: InCentre}, true
		}
		if what, name, chains, ok := r.what(); ok {
			return Extent{How: ToNext, What: what, Name: name, Chains: chains}, true
		}
	case r.number(0) && r.wordAt(1, "x") && !r.number(2): // 8x
		q, _ := r.num(false)
		r.pass(1)
		return Extent{How: Times, N: q}, true
	case r.word("to") && (r.wordAt(1, "tch") || r.wordAt(1, "turn") && r.wordAt(2, "ch")):
		r.pass(1)
		what, _, _, _ := r.what()
		return Extent{How: ToNext, What: what}, true
	case r.word("to") && r.wordAt(1, "half") && func() bool { n, _ := r.ownStitch(min(r.i+2, len(r.tokens)-1)); return n > 0 }():
		r.pass(1)
		what, name, _, _ := r.what()
		return Extent{How: ToLast, N: Plain(1), What: what, Name: name}, true
	case r.word("to") && r.toSpace(1):
		r.pass(1)
		r.fill("next", "the", "first")
		what, name, chains, _ := r.what()
		return Extent{How: ToNext, What: what, Name: name, Chains: chains}, true
	case r.word("to") && r.before():
		return r.stopsBefore(), true
	case r.word("x", "*") && r.number(1):
		r.pass(1)
		q, _ := r.num(false)
		r.eat("time")
		return Extent{How: Times, N: q}, true
	}
	if ext, ok := r.toLast(); ok {
		return ext, true
	}
	if ext, ok := r.untilThere(); ok {
		return ext, true
	}
	r.fill("for")
	if q, more, ok := r.howOften(); ok {
		soft := !more
		if r.word("in") && r.wordAt(1, "all", "total") {
			r.pass(2)
			soft = false
		}
		if r.eat("evenly") {
			r.fill("spaced")
			r.fill("across", "around")
			return Extent{How: Evenly, N: q}, true
		}
		return Extent{How: Times, N: q, Soft: soft}, true
	}
	if rep {
		r.i = marks
		return Extent{How: Across}, true
	}
	r.i = start
	return Extent{}, false
}

// toSpace sees "ch-2 sp", "the next ch-sp", k tokens on.
func (r *reader) toSpace(k int) bool {
	for r.wordAt(k, "next", "the", "first") {
		k++
	}
	return r.wordAt(k, made, madeOf, "ch-sp") || r.wordAt(k, "ch") && (r.wordAt(k+1, "sp", "loop") || r.number(k+1) && r.wordAt(k+2, "sp", "loop"))
}

// before sees "to 2 dc before next ch-2 sp" and "to within 1 st of corner".
func (r *reader) before() bool {
	k := 1
	if r.wordAt(k, "within") {
		k++
	}
	if !r.number(k) {
		return false
	}
	for k++; k < 8; k++ {
		if r.wordAt(k, "before", "of", "from") {
			for k++; r.wordAt(k, "next", "the"); k++ {
			}
			return r.toSpace(k) || r.wordAt(k, "corner", "centre", "sp")
		}
		if r.peek(k).kind != wordToken {
			return false
		}
	}
	return false
}

func (r *reader) stopsBefore() Extent {
	r.pass(1)
	r.eat("within")
	q, _ := r.num(true)
	r.what()
	r.fill("before", "of", "from", "next", "the")
	ext := Extent{How: ToNext, N: q, What: InCentre}
	if r.eat("centre") {
		r.what()
		return ext
	}
	ext.What, ext.Name, ext.Chains, _ = r.what()
	return ext
}

// toLast reads "to end", "to last 2 sts", "to within 3 sts of end", "until 2 sts remain".
func (r *reader) toLast() (Extent, bool) {
	start := r.i
	if !r.word("to", "until") {
		return Extent{}, false
	}
	until := r.word("until")
	r.pass(1)
	within := r.eat("within")
	r.fill("the", "very")
	switch {
	case r.eat("end"):
		if r.word("of") && r.wordAt(1, "row", "rnd", "the", "ch") {
			r.pass(1)
			r.fill("the", "foundation", "row", "rnd", "ch")
		}
		return Extent{How: Across}, true
	case r.eat("last"), within, until && r.number(0):
		bare := r.tokens[r.i-1].text == "until"
		q, ok := r.num(true)
		if !ok {
			q = Plain(1)
		}
		what, name, chains, _ := r.what()
		if bare && !r.word("rem", "are", "left", "from", "before") {
			break
		}
		r.fill("rem", "are", "left")
		if r.word("of", "from", "before") && r.wordAt(1, "end", "the") {
			r.fill("of", "from", "before", "the", "end")
		}
		return Extent{How: ToLast, N: q, What: what, Name: name, Chains: chains}, true
	}
	r.i = start
	return Extent{}, false
}

// untilThere reads "until you have 14 groups", "until there are 7 shells", "until 25 sts are made".
func (r *reader) untilThere() (Extent, bool) {
	start := r.i
	if !r.eat("until") {
		return Extent{}, false
	}
	r.fill("you", "have", "there", "are", "a", "total", "of", "made")
	q, ok := r.num(true)
	if !ok {
		r.i = start
		return Extent{}, false
	}
	what, name, _, _ := r.what()
	r.fill("are", "have", "been", "made", "worked", "in", "all", "total")
	return Extent{How: UntilN, N: q, What: what, Name: name}, true
}

// endings reads ", ending with ...", ", ending last rep at **", ", omitting last ch 1". Within
// a starred repeat the ending stops where that one does.
func (r *reader) endings(rep *Repeat, starred bool) {
	k := 0
	for r.wordAt(k, ",", ";", ".") {
		k++
	}
	if r.wordAt(k, "omitting", "omit") {
		r.pass(k + 1)
		r.omitted(rep)
		return
	}
	if r.wordAt(k, "working") && r.wordAt(k+1, "only") { // ", working only 3 dc in the last sc"
		r.pass(k + 2)
		rep.Ending = r.items(func() bool { return r.ended() || r.word(".", ",", "turn", "join", ")", "]", dash) })
		return
	}
	if r.wordAt(k, "last") && r.wordAt(k+1, "rep") && r.wordAt(k+2, "with", "at", "in") {
		k--
	} else if !r.wordAt(k, "end", "finish", "finishing") || r.wordAt(k+1, "off") {
		return
	}
	r.pass(k + 1)
	r.fill("the", "last", "rep")
	if r.eat("at", "**") || r.eat("in", "**") || r.eat("at", "*") {
		rep.AtBreak = true
		return
	}
	r.fill("with", "in", "by")
	rep.Ending = r.items(func() bool {
		return r.ended() || r.word(".", "turn", "join", ")", "]", dash) || starred && (r.repClause() || r.word("*", "**", "†", "‡"))
	})
}

// omitted reads "omitting last ch 1": the last repeat ends before it.
func (r *reader) omitted(rep *Repeat) {
	start := r.i
	r.fill("the", "last", "final", "on", "in", "rep")
	out := r.items(func() bool { return r.ended() || r.word(".", ",", ";", "turn", "join", ")", "]", "on", "in", "at") })
	r.fill("on", "in", "at", "the", "last", "rep", "end", "of")
	if r.omitSome(rep, out) {
		return
	}
	if n := len(rep.Body) - len(out); len(out) > 0 && n > 0 {
		rep.Break, rep.AtBreak = n, true
		return
	}
	r.find(diag.Fault, "omit", r.span(start), "", "cannot read what the last repeat leaves out")
}

// omitSome reads "omitting 1 sc" behind a body that ends with "sc in each of next 3 dc": one of the three is left out.
func (r *reader) omitSome(rep *Repeat, out []Node) bool {
	if len(out) != 1 || len(rep.Body) == 0 {
		return false
	}
	less, ok := out[0].(*Make)
	last, ok2 := rep.Body[len(rep.Body)-1].(*Make)
	if !ok || !ok2 || less.Kind != last.Kind || less.Place != nil || last.Place == nil || !last.N.isOne() ||
		last.Place.Ord != Next || last.Place.N.A != 0 || last.Place.N.Sizes != nil || less.N.B >= last.Place.N.B {
		return false
	}
	cut := func(n int) *Make {
		x, p := *last, *last.Place
		p.N, x.Place = Plain(n), &p
		return &x
	}
	body := append(rep.Body[:len(rep.Body)-1:len(rep.Body)-1], cut(last.Place.N.B-less.N.B), cut(less.N.B))
	rep.Body, rep.Break, rep.AtBreak = body, len(body)-1, true
	return true
}
