package syntax

import "strandway/model/diag"

// slipStitch is the canonical name of the slip stitch, with which rounds are joined.
const slipStitch = "slst"

// plainStitch is what "inc" and "dec" mean where no stitch was named.
const plainStitch = "sc"

// MagicRing is the text of the note that stands for making a ring of yarn.
const MagicRing = "make a magic ring"

// body reads the instructions of the open row up to the end of its line, or to a heading inside the line.
func (r *reader) body(start int) {
	row := r.row
	stop := func() bool { return r.ended() || r.headingAhead() }
	for {
		nodes := r.items(stop)
		r.placed(nodes)
		row.Body = append(row.Body, nodes...)
		// a line that ends inside a listed row goes on in the next one
		if r.is(lineToken) && !r.blankLineAt(r.i) && r.goesOn() {
			r.pass(1)
			r.fill(dash, "-", "•")
			continue
		}
		break
	}
	if span := r.span(start); r.i > start {
		row.Span.End = span.End
	}
}

func (r *reader) goesOn() bool {
	last := r.tokens[r.i-1].text
	return (last == "," || last == ";" || r.wordAt(1, "*", "•") || r.wordAt(1, "(", "[") && last != ".") && !r.headingAt(r.i+1)
}

// headingAhead sees a heading after a full stop.
func (r *reader) headingAhead() bool {
	if r.i == 0 || r.tokens[r.i-1].text != "." && r.tokens[r.i-1].text != ")" && r.tokens[r.i-1].text != "]" {
		return false
	}
	if t := r.tok(); t.kind == signToken || t.kind == wordToken && !r.word("row", "rnd", "r", "first") && !(headingWords[t.text] != "" && r.wordAt(1, "row", "rnd")) || t.kind == numberToken {
		return false
	}
	return r.headingAt(r.i)
}

func (r *reader) headingAt(i int) bool {
	keep := r.i
	r.i = i
	_, ok := r.heading()
	r.i = keep
	return ok
}

// items reads instructions until stop. What cannot be read is reported, or kept as a remark, up to the next separator.
func (r *reader) items(stop func() bool) []Node {
	var out []Node
	last, made := r.mark(), 0 // where the latest instruction began, and how many nodes stood before it
	if r.depth++; r.depth > maxDepth {
		r.find(diag.Fault, "depth", r.span(r.i), "take some of the brackets out", "brackets are nested too deep")
		r.skipTo()
	}
	defer func() { r.depth-- }()
	for !stop() && !r.is(endToken) {
		if r.is(lineToken) {
			r.pass(1)
			continue
		}
		if r.is(signToken) && r.word(",", ";", ".", ":", dash, "-", "•", "/", "|") || r.word("then", "and", "now", "also") {
			if r.word(dash, "-", ":", "|") && r.row != nil && len(out) > 0 && r.countAhead(1) {
				r.pass(1)
				r.row.Count = r.tallies()
				continue
			}
			r.pass(1)
			continue
		}
		before := r.i
		begin, had := r.mark(), len(out)
		if rep := r.fromStart(out); rep != nil {
			out = rep
			continue
		}
		if nodes := r.item(); nodes != nil {
			out = append(out, nodes...)
			last, made = begin, had
			continue
		}
		if r.i > before { // read, and kept elsewhere: a count, a mark
			continue
		}
		if r.mended(before) {
			r.back(last)
			out = out[:made]
			continue
		}
		if n := r.unread(stop); n != nil {
			out = append(out, n)
		}
	}
	return out
}

// beginsItem reports whether an instruction begins at hand.
func (r *reader) beginsItem() bool {
	t := r.tok()
	if t.kind == numberToken && (r.peek(1).kind == wordToken && r.peek(1).tight || r.wordAt(1, "ch")) {
		return true
	}
	k := r.i
	if t.kind == numberToken {
		k++
	}
	switch r.tokens[k].text {
	case "*", "(", "[", "ch", glued, "skip", "join", "turn", "with", "inc", "dec", "rep", "work", "working", "beg", "slst", "sl",
		"change", "drop", "break", "fasten", "do", "as", "same", "cut", "attach", "pick", "rotate":
		return true
	}
	return r.stitchWord(k)
}

// item reads one instruction, possibly one that becomes several nodes. nil with the cursor unmoved: not an instruction.
func (r *reader) item() []Node {
	start, t := r.i, r.tok()
	switch t.text {
	case "*", "†", "‡", "#", "+":
		if t.text != "#" || !r.number(1) {
			return r.star()
		}
	case "(", "[", "{":
		if r.wordAt(1, "yo", "yrh", "yoh") && t.match > 0 {
			return r.inline()
		}
		return r.bracket()
	case "skip":
		return r.skips()
	case "end":
		if r.lower(t) == "ending" && r.wordAt(1, "with") { // ", ending with 1 dc in top of ch-3", after no repeat
			r.pass(2)
			return r.item()
		}
		if n := r.yarn(); n != nil {
			return n
		}
	case "leave", "leaving":
		return r.leave()
	case "make", "magic", "cast", "mr", "adjustable", "sliding":
		if n := r.making(); n != nil {
			return n
		}
	case "turn":
		if !r.wordAt(1, "ch") {
			r.pass(1)
			if r.eat("the", "work") || r.eat("work") || r.eat("the", "piece") {
				if r.word("upside", "around", "to", "so", "90", "180", "clockwise") { // to go on along the other side
					r.skipTo(",", ";", ".", ":", "and")
					return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
				}
				r.fill(".")
			}
			return []Node{&Turn{Span: r.span(start)}}
		}
	case "do", "without", "not":
		if n := r.negation(); n != nil {
			return n
		}
		if t.text == "without" && r.wordAt(1, "inc", "dec", "shaping", "increasing", "decreasing", "any") {
			return r.keep()
		}
	case "increasing", "decreasing":
		return r.keep()
	case "join", "close", "unite", "connect":
		if n := r.joinOther(); n != nil {
			return n
		}
		return r.join()
	case "with", "using", "attach", "change", "drop", "fasten", "break", "cut", "finish", "pick", "carry", "carrying", "hold", "place",
		"tie", "fo", "rejoin", "remove", "secure", "slide", "put":
		if n := r.yarn(); n != nil {
			return n
		}
	case "beg":
		if r.wordAt(1, "ch", glued) {
			r.pass(1)
		} else if n := r.starting(); n != nil {
			return n
		}
	case "being", "taking", "careful", "carefully", "ensuring":
		if !r.stitchWord(start+1) && !r.number(1) { // "being careful not to twist"
			for !r.ended() && !r.word(",", ";", ".", ")", "join") {
				r.pass(1)
			}
			return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
		}
	case "no":
		if r.wordAt(1, "inc", "dec", "shaping") { // "no increases"
			for r.is(wordToken) {
				r.pass(1)
			}
			return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
		}
	case "last":
		if r.stitchWord(start+1) && !r.number(1) { // ", last dc in top of tch": where it falls in any case
			return r.keep()
		}
	case "total":
		if r.row != nil && (r.number(1) || r.wordAt(1, ":", "of") && r.number(2)) {
			for !r.number(0) {
				r.pass(1)
			}
			r.row.Count = r.tallies()
			return nil
		}
	case "weave", "marker", "mark", "move", "pull", "thread", "gather", "sew", "stuff", "knot", "embroider", "block", "steam", "press", "fold", "cinch", "tighten":
		if !r.stitchWord(start) {
			return r.keep()
		}
	case "in":
		if n := r.onOtherSide(); n != nil {
			return n
		}
		if n := r.placeFirst(); n != nil {
			return n
		}
	case "at":
		if r.wordAt(1, "end", "the") {
			return r.atEnd()
		}
	case "starting", "start":
		if n := r.starting(); n != nil {
			return n
		}
	case "blo", "flo", "back", "front":
		if n := r.loopFirst(); n != nil {
			return n
		}
	case "yo", "yrh", "yoh":
		return r.inline()
	case "**":
		return r.star()
	case "rep":
		if r.wordAt(1, "[", "(") && !r.wordAt(2, "*", "**") {
			r.pass(1)
			return r.bracket()
		}
		if r.wordAt(1, "until") && (start == 0 || r.tokens[start-1].kind == lineToken) { // "Repeat until it is as long as you like"
			return r.repUntil()
		}
		if r.number(1) && r.bareHead() && !r.wordAt(2, "time", "more") {
			if n := r.rowRef(); n != nil {
				return n
			}
		}
		if r.repClause() {
			return r.lostStar()
		}
		return r.rowRef()
	case "keep":
		if k := r.goesOnAs(); k > 0 { // "Keep going like Row 2 until you have 36 rows"
			r.pass(k)
			return r.rowRef()
		}
	case "as", "same":
		return r.rowRef()
	case "continue", "continuing", "cont":
		if n := r.growsHere(); n != nil {
			return n
		}
		if r.wordAt(1, "in", "along", "around", "across") && r.wordAt(2, "other", "opposite", "the") {
			r.pass(1)
			r.fill("along", "across", "in", "the")
			if edge, ok := r.edge(); ok {
				for r.word("of", "the", "foundation", "ch") {
					r.pass(1)
				}
				return []Node{&Along{Span: r.span(start), Edge: edge}}
			}
			r.i = start
		}
		if n := r.yarn(); n != nil {
			return n
		}
	case "making":
		if r.wordAt(1, "last") {
			return r.working()
		}
		if r.wordAt(1, "sure", "certain") { // "making sure that the chain is not twisted"
			r.skipTo(".", ";", ")")
			return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
		}
	case "go", "going", "across":
		if n := r.along(); n != nil {
			return n
		}
	case "work", "working", "rotate", "along":
		if n := r.working(); n != nil {
			return n
		}
		if t.text == "rotate" {
			for r.is(wordToken) && !r.word("and") || r.is(numberToken) {
				r.pass(1)
			}
			return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
		}
	case "each":
		if r.wordAt(1, "row", "rnd") && r.wordBefore(start, ".", ")") { // "Each row gains one group": talk
			r.skipTo(".", "—", "(")
			return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
		}
	case "=", "you", "there":
		if t.text == "you" && !r.wordAt(1, "should", "now", "will", "have", "'ll", "must") {
			r.skipTo(".", "—", "(", ")")
			return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
		}
		if t.text == "=" || r.countWord() {
			for !r.number(0) && !r.ended() {
				r.pass(1)
			}
			if r.row != nil {
				r.row.Count = r.tallies()
			}
			return nil
		}
	}
	if r.chainAhead() {
		return r.chain()
	}
	if t.kind == numberToken && r.countSentence() {
		r.row.Count = r.tallies()
		return nil
	}
	return r.makes()
}

// making reads "make a magic ring", "make 20 chain", "cast on 20 chains".
func (r *reader) making() []Node {
	start := r.i
	k := 0
	for r.wordAt(k, "make", "a", "an", "the", "work", "beg", "with") {
		k++
	}
	if r.wordAt(k, "magic", "adjustable", "adj", "sliding", "slip") && r.wordAt(k+1, "ring", "circle", "loop") || r.wordAt(k, "mr") {
		r.pass(k + 1)
		r.fill("ring", "circle", "loop")
		if r.wordBefore(r.i, "mr") && r.number(0) && !r.stitchWord(min(r.i+1, len(r.tokens)-1)) { // "MR 8"
			q, _ := r.num(false)
			span := r.span(start)
			return []Node{&Make{Span: span, N: q, Kind: r.kindOr(plainStitch), Place: &Place{Span: span, N: Plain(1), What: InRing}}}
		}
		return []Node{&Note{Span: r.span(start), Text: MagicRing}}
	}
	if r.words("cast", "in") || r.word("make") && (r.number(1) || r.wordAt(1, "ch") || r.wordAt(1, "a") && r.wordAt(2, "ch", "foundation")) {
		r.pass(1)
		r.fill("in", "a", "foundation")
		return r.item()
	}
	return nil
}

// negation reads "do not turn", "without turning", "do not join", "do not fasten off".
func (r *reader) negation() []Node {
	start := r.i
	switch {
	case r.eat("do", "not", "turn"), r.eat("without", "turn"), r.eat("not", "turn"):
		r.eat("the", "work")
		return []Node{&Turn{Span: r.span(start), Not: true}}
	case r.eat("do", "not", "join"), r.eat("without", "join"):
		if r.eat("rnd") || r.eat("the", "rnd") {
			r.fill("")
		}
		return []Node{&Join{Span: r.span(start), Not: true, With: slipStitch}}
	case r.words("do", "not", "fasten"), r.words("do", "not", "break"), r.words("do", "not", "cut"):
		r.pass(2)
		for r.word("fasten", "break", "cut", "off", "yarn", "or") || r.isYarn(0) {
			r.pass(1)
		}
		return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
	}
	return nil
}

// working reads "working in back loops only", "working along opposite side of foundation ch" and
// "work 3 dc in next st".
func (r *reader) working() []Node {
	start := r.i
	if r.word("work") && r.wordAt(1, "row", "rnd") && r.number(2) {
		return r.rowRef()
	}
	if r.word("work") && r.wordAt(1, "next", "first", "last") && r.number(2) && r.stitchWord(min(r.i+3, len(r.tokens)-1)) { // "work next 2 tr tog"
		r.pass(1)
		p := &Place{}
		r.commonPlace(p)
		if p.What == InKind && r.eat("tog") {
			p.Span = r.span(start)
			return []Node{&Make{Span: p.Span, N: Plain(1), Kind: r.together(r.bare(p.Name), p.N.B), Place: p}}
		}
		r.i = start
	}
	if n := r.along(); n != nil {
		return n
	}
	switch {
	case r.words("making", "last"), r.words("working", "last"), r.words("working", "the", "last"), r.words("making", "the", "last"), // "working last dc in top of tch": where the last stitch falls in any case
		r.word("work", "working") && (r.words(r.tok().text, "in", "a", "spiral") || r.words(r.tok().text, "in", "rnd") || r.words(r.tok().text, "in", "spiral")):
		if y := r.finishing(start); y != nil {
			return y
		}
		return r.keep()
	case r.words("working", "behind"), r.words("working", "in", "front") && !r.wordAt(3, "loop"), r.words("working", "in", "back", "of"), r.words("working", "over"):
		if r.words("working", "over") && (r.isYarn(2) || r.wordAt(2, "unused", "colour", "yarn", "the")) {
			return r.carried(start)
		}
		r.lie = BehindIt
		if r.wordAt(2, "front") {
			r.lie = InFront
		}
		for r.pass(2); !r.ended() && !r.word(",", ";", ".", ":", ")") && !r.beginsItem(); {
			r.pass(1)
		}
		return []Node{}
	case r.word("working", "work") && r.wordAt(1, "in") && (r.wordAt(2, "ring", "magic") || r.wordAt(3, "ring", "magic")):
		r.pass(2)
		r.fill("a", "the", "magic")
		r.pass(1)
		return []Node{&Note{Span: r.span(start), Text: MagicRing}}
	}
	r.pass(1)
	r.eat("in")
	r.fill("the")
	if loop := r.loopWord(); loop != BothLoops {
		r.loop, r.loopFrom = loop, r.tokens[start].start
		r.fill("throughout", "only", "through")
		return []Node{}
	}
	r.i = start
	if r.word("work", "working") && (r.number(1) || r.wordAt(1, "*", "(", "[", "each", "a", "one")) {
		r.pass(1)
		return r.item()
	}
	if r.word("work", "working") {
		r.pass(1)
		if r.beginsItem() {
			return r.item()
		}
	}
	r.i = start
	return nil
}

func firstNode(nodes []Node) Node {
	if len(nodes) == 0 {
		return nil
	}
	return nodes[0]
}
