package syntax

// edges name the edges of a piece.
var edges = []struct {
	words []string
	edge  Edge
}{
	{[]string{"opposite", "side"}, LowerEdge},
	{[]string{"other", "side"}, LowerEdge},
	{[]string{"second", "side"}, LowerEdge},
	{[]string{"opposite", "edge"}, LowerEdge},
	{[]string{"underside"}, LowerEdge},
	{[]string{"free", "loop"}, LowerEdge},
	{[]string{"unused", "loop"}, LowerEdge},
	{[]string{"rem", "loop"}, LowerEdge},
	{[]string{"foundation"}, LowerEdge},
	{[]string{"foundation", "edge"}, LowerEdge},
	{[]string{"foundation", "ch"}, LowerEdge},
	{[]string{"beg", "ch"}, LowerEdge},
	{[]string{"starting", "ch"}, LowerEdge},
	{[]string{"base", "ch"}, LowerEdge},
	{[]string{"lower", "edge"}, LowerEdge},
	{[]string{"bottom", "edge"}, LowerEdge},
	{[]string{"bottom"}, LowerEdge},
	{[]string{"cast-on", "edge"}, LowerEdge},
	{[]string{"upper", "edge"}, UpperEdge},
	{[]string{"top", "edge"}, UpperEdge},
	{[]string{"last", "row"}, UpperEdge},
	{[]string{"left", "edge"}, LeftEdge},
	{[]string{"left", "side"}, LeftEdge},
	{[]string{"left", "side", "edge"}, LeftEdge},
	{[]string{"right", "edge"}, RightEdge},
	{[]string{"right", "side", "edge"}, RightEdge},
	{[]string{"short", "side"}, SideEdge},
	{[]string{"long", "side"}, SideEdge},
	{[]string{"long", "edge"}, SideEdge},
	{[]string{"short", "edge"}, SideEdge},
	{[]string{"slanted", "edge"}, SideEdge},
	{[]string{"both", "side"}, SideEdge},
	{[]string{"side", "edge"}, SideEdge},
	{[]string{"row", "end"}, SideEdge},
	{[]string{"end", "of", "row"}, SideEdge},
	{[]string{"side", "of", "row"}, SideEdge},
	{[]string{"side"}, SideEdge},
	{[]string{"next", "edge"}, NextEdge},
	{[]string{"next", "side"}, NextEdge},
	{[]string{"edge"}, NextEdge},
	{[]string{"outer", "edge"}, AllRound},
	{[]string{"entire", "edge"}, AllRound},
	{[]string{"whole", "edge"}, AllRound},
	{[]string{"all", "around"}, AllRound},
}

// edge reads the name of an edge: "the opposite side of the foundation chain".
func (r *reader) edge() (Edge, bool) {
	start := r.i
	r.fill("the")
	best, edge := 0, NextEdge
	for _, e := range edges {
		if len(e.words) > best && r.words(e.words...) {
			best, edge = len(e.words), e.edge
		}
	}
	if best == 0 {
		r.i = start
		return edge, false
	}
	r.pass(best)
	if edge == LowerEdge {
		r.ofChain()
	}
	return edge, true
}

// edgeAhead sees the name of an edge behind the word at hand.
func (r *reader) edgeAhead() bool {
	start := r.i
	r.pass(1)
	_, ok := r.edge()
	r.i = start
	return ok
}

// ofChain passes the "of the foundation chain" that says whose other side is meant.
func (r *reader) ofChain() {
	start := r.i
	r.fill("of", "across", "the", "in")
	if r.number(0) && r.wordAt(1, "ch") { // "the other side of the 3 ch"
		r.pass(2)
		return
	}
	if r.word("foundation", "beg", "starting", "base", "ch", "cast-on") && !r.wordAt(1, "row", "rnd", "sp") {
		for r.word("foundation", "beg", "starting", "base", "ch", "edge", "cast-on") {
			r.pass(1)
		}
		return
	}
	r.i = start
}

// alongEdge reads "along the foundation chain" behind a number of stitches.
func (r *reader) alongEdge() Node {
	start := r.i
	if !r.word("across", "down", "up") || r.lower(r.tok()) == "across" && !r.wordAt(1, "row", "end", "side") && !(r.wordAt(1, "the") && r.wordAt(2, "other", "opposite")) {
		return nil
	}
	sideways := r.lower(r.tok()) == "up" || r.lower(r.tok()) == "down"
	r.pass(1)
	from := r.i
	edge, ok := r.edge()
	if !ok {
		r.i = start
		return nil
	}
	if edge == LowerEdge && sideways && r.i-from <= 3 && !r.wordBefore(r.i, "ch", "foundation") { // "up the other side"
		edge = SideEdge
	}
	if r.word("of") && (r.wordAt(1, "the", "this") || r.peek(1).kind == wordToken) { // "of the welt"
		r.pass(1)
		for r.is(wordToken) && !r.word("and", "with", "work", "turn", "join") {
			r.pass(1)
		}
	}
	a := &Along{Span: r.span(start), Edge: edge}
	r.soManyEach()
	return a
}

// soManyEach passes what explains a number along an edge: ", 1 sc in the end of each row", "(3 sc for every 2 rows)".
func (r *reader) soManyEach() {
	start := r.i
	open := r.eat("(")
	if !open {
		r.eat(",")
	}
	if r.i == start || !r.number(0) {
		r.i = start
		return
	}
	end := start
	for k := r.i; k < r.i+12; k++ {
		switch t := r.tokens[min(k, len(r.tokens)-1)]; {
		case t.kind == lineToken || t.kind == endToken || t.text == "." || t.text == "," || t.text == ";":
			k = r.i + 12
		case t.text == "row" && (r.wordBefore(k, "each") || k > 1 && r.tokens[k-2].text == "each" || r.wordBefore(k-1, "each")):
			end = k + 1
		}
	}
	if r.i = end; open && end > start {
		r.eat(")")
	}
}

// onOtherSide reads "on the other side 2 sc".
func (r *reader) onOtherSide() []Node {
	start := r.i
	r.pass(1)
	edge, ok := r.edge()
	if r.fill(",", ":"); !ok || edge != LowerEdge || !r.number(0) && !r.stitchWord(r.i) && !r.word("inc", "dec", "work") {
		r.i = start
		return nil
	}
	return []Node{&Along{Span: r.span(start), Edge: edge}}
}

// along reads "working along left edge", "rotate to work along side edge", "working around entire edge".
func (r *reader) along() []Node {
	start := r.i
	r.eat("rotate")
	r.fill("work", "piece", "to", "now", "the", "and", "begin", "turn", "90", "clockwise", "degrees", "go", "going", "cont", "continue", "continuing")
	r.fill("working")
	if r.word("back") && r.wordAt(1, "across") { // "working back along other side"
		r.pass(1)
	}
	if !r.word("across", "around", "in", "down", "up", "evenly") || r.i == start && !r.word("across", "around") {
		r.i = start
		return nil
	}
	around := r.word("around")
	r.fill("across", "around", "in", "down", "up", "evenly")
	r.fill("the", "each")
	edge, ok := r.edge()
	if !ok || r.word("st", "loop") {
		r.i = start
		return nil
	}
	if around && edge == NextEdge {
		edge = AllRound
	}
	r.fill("of")
	for r.word("the", "piece", "blanket", "work", "square", "foundation", "ch", "beg", "edge", "panel", "body") {
		r.pass(1)
	}
	a := &Along{Edge: edge}
	if r.word("with") && (r.wordAt(1, "rs", "ws") && r.wordAt(2, "facing") || r.wordAt(1, "right", "wrong") && r.wordAt(2, "side")) {
		a.Face = 'R'
		if r.wordAt(1, "ws", "wrong") {
			a.Face = 'W'
		}
		r.pass(2)
		r.fill("side", "facing")
	}
	a.Span = r.span(start)
	return []Node{a}
}
