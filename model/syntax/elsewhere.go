package syntax

// openings are words for a hole that a row has left, to be worked round later.
var openings = set("opening hole armhole underarm thumbhole gap slit")

// pieces are words for other pieces, whose stitches a row goes on with.
var pieces = set("leg legs arm arms ear ears sleeve sleeves front back motif motifs hexagon square squares strip strips panel panels flag flags wing wings foot feet body head piece pieces claw claws")

// held are words before the stitches of an opening: "the 32 sleeve sts".
var held = set("sleeve thumb heel armhole held underarm finger hand afterthought")

// opening reads "corner of the thumb opening", "3rd ch of underarm ch-4", behind the placing word.
func (r *reader) opening(p *Place) bool {
	start := r.i
	r.fill("the", "a", "one", "any", "first", "same")
	nth := 0
	if r.tok().kind == ordinalToken && r.wordAt(1, "ch", "st") {
		nth = r.tok().n
		r.pass(2)
		r.fill("of", "the")
	}
	for k := 0; k < 6 && r.peek(k).kind == wordToken; k++ {
		switch {
		case openings[r.peek(k).text]:
			r.pass(k + 1)
			if !r.tchWord() {
				r.fill("ch", "st")
			}
			p.What, p.Ord, p.N = InOpening, Next, Plain(1)
			if nth > 0 {
				p.Ord, p.N = Nth, Plain(nth)
			}
			return true
		case r.wordAt(k, "ch", "st", "in", "and", "join", "work", "with", "turn", "next", "sp", "loop"):
			k = 6
		}
	}
	r.i = start
	return false
}

// otherPiece reads the "of first leg", "along top of next flag" behind a place: stitches of another piece.
func (r *reader) otherPiece() bool {
	start := r.i
	r.fill("of", "across", "in", "to", "with", "the", "top", "edge", "last", "rnd", "row", "upper")
	r.fill("of", "the")
	said := false
	for r.word("first", "next", "other", "each", "same", "left", "right", "second", "this") || r.is(ordinalToken) {
		said = true
		r.pass(1)
	}
	if !said && !r.number(1) || !pieces[r.tok().text] || r.wordAt(1, "loop", "post", "side", "only") {
		r.i = start
		return false
	}
	r.pass(1)
	if r.number(0) && (r.peek(1).kind == signToken || r.peek(1).kind == lineToken) {
		r.pass(1) // "of leg 2"
	}
	return true
}

// joinOther reads "join to the first leg with a sc": a stitch into another piece.
func (r *reader) joinOther() []Node {
	start := r.i
	r.pass(1)
	if !r.word("to", "in", "with") || !r.otherPiece() {
		r.i = start
		return nil
	}
	p := &Place{Span: r.span(start), N: Plain(1), What: InOther}
	kind := plainStitch
	r.fill("with", "by", "a", "an", "one", "work", "working")
	if k, ok := r.stitch(); ok {
		kind = k
	}
	if kind == slipStitch {
		return []Node{&Join{Span: r.span(start), Place: p, With: slipStitch}}
	}
	return []Node{&Make{Span: r.span(start), N: Plain(1), Kind: kind, Place: p}}
}
