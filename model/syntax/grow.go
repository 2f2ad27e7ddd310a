package syntax

// growing sees "Continue thus, working 1 dc more between the increases in every round, until the 11th round is finished"
// and "Continue increasing in this manner until there are 60 sts": rows that differ from one another as the last two do.
func (r *reader) growing() bool {
	if !r.headed || !r.word("cont", "continue", "continuing", "inc", "work", "keep") {
		return false
	}
	manner := false
	for k := 1; k < 40; k++ {
		t := r.peek(k)
		if t.kind == lineToken || t.kind == endToken || t.text == "." && k > 1 {
			return false
		}
		switch {
		case r.wordAt(k, "thus", "established", "manner", "way", "inc", "fashion", "set", "increasing", "pattern"):
			manner = true
		case r.wordAt(k, "until", "to", "for") && manner:
			return r.growUntil(k)
		}
	}
	return false
}

// growsHere reads "Rnds 5 to 12: Continue increasing 6 sts evenly in each round in this way."
func (r *reader) growsHere() []Node {
	start := r.i
	if r.row == nil || r.row.From == 0 || len(r.tree.Rows) < 3 {
		return nil
	}
	manner := false
	for !r.ended() && !r.word(".", "(", ";", dash) {
		manner = manner || r.word("thus", "established", "manner", "way", "inc", "increasing", "fashion", "set", "less", "fewer", "more")
		r.pass(1)
	}
	if !manner {
		r.i = start
		return nil
	}
	return []Node{&RowRef{Span: r.span(start), Last: 1, Grow: true, For: Plain(max(1, r.row.To-r.row.From+1))}}
}

// growUntil reads how far such rows go on, from token k on, and opens them.
func (r *reader) growUntil(k int) bool {
	start := r.i
	r.pass(k)
	x := &RowRef{Last: 1, Grow: true}
	rowEnd := func() {
		r.fill("is", "are", "has", "have", "been", "worked", "completed", "complete", "finished", "done", "made", "in", "all", "total")
	}
	switch {
	case r.rowsAsked(x):
		rowEnd()
	default:
		r.fill("until", "to", "for", "the", "you", "have", "there", "are", "end", "of", "a", "total", "rnd", "has")
		round := r.wordBefore(r.i, "rnd")
		switch {
		case (r.tok().kind == ordinalToken) && r.wordAt(1, "row", "rnd"):
			x.For, x.InAll, x.Round = Plain(r.tok().n), true, r.wordAt(1, "rnd")
			r.pass(2)
			rowEnd()
		case r.number(0):
			q, _ := r.num(true)
			if _, _, _, ok := r.what(); !ok && !round {
				r.i = start
				return false
			}
			x.Sts = q
			rowEnd()
		default:
			r.i = start
			return false
		}
	}
	r.open(&Row{}, start)
	x.Span = r.span(start)
	r.row.Body, r.row.Span = []Node{x}, x.Span
	return true
}
