package syntax

// everyRow reads a heading for every second row that names no number: "Even rows:", "All WS rows:",
// "All odd-numbered rounds from Rnd 3:".
func (r *reader) everyRow(row *Row) bool {
	start := r.i
	r.fill("all", "each", "the")
	from, ok := r.parity()
	if !ok || !r.word("row", "rnd") {
		r.i = start
		return false
	}
	row.Round = r.word("rnd")
	r.pass(1)
	row.Every, row.From = true, from
	if r.word("from") && r.wordAt(1, "row", "rnd", "r") && r.number(2) {
		row.From = r.peek(2).n
		r.pass(3)
		r.fill("on")
	}
	row.To = row.From
	r.everyTo(row)
	if !r.word(":", ".", dash, "-", "(") {
		r.i = start
		*row = Row{Yarn: row.Yarn}
		return false
	}
	return true
}

// parity reads which half of the rows is meant, and gives the first row of it.
func (r *reader) parity() (from int, ok bool) {
	switch {
	case r.word("even", "even-numbered"):
		from = 2
	case r.word("odd", "odd-numbered"):
		from = 1
	case r.word("ws", "rs"), r.word("wrong", "right") && r.wordAt(1, "side"), r.word("wrong-side", "right-side"):
		from = r.firstFacing(r.word("ws", "wrong", "wrong-side"))
	default:
		return 0, false
	}
	r.pass(1)
	r.fill("numbered", "side")
	return from, true
}

// firstFacing is the first row with the wrong side, or the right side, facing, as the rows so far are marked.
func (r *reader) firstFacing(ws bool) int {
	first := 1 // the first right-side row
	for _, row := range r.tree.Rows {
		if row.Side != 0 && row.From > 0 && row.List == nil {
			first = 1 + (row.From+1)%2
			if row.Side == 'W' {
				first = 3 - first
			}
			break
		}
	}
	if ws {
		return 3 - first
	}
	return first
}

// everyTo reads the " to Row 20" behind a heading for every second row.
func (r *reader) everyTo(row *Row) {
	k := 0
	if r.word("to", "through", "until") {
		k = 1
	}
	if k > 0 && r.wordAt(k, "row", "rnd", "r") && r.number(k+1) {
		row.To = r.peek(k + 1).n
		r.pass(k + 2)
	}
}

// andEvery reads the "and all WS rows", "(and every other row)", "and every following row" behind a row's number.
func (r *reader) andEvery(row *Row) bool {
	start := r.i
	bracketed := r.eat("(")
	r.fill(",")
	if !r.eat("and") || !r.word("each", "all") {
		r.i = start
		return false
	}
	r.fill("each", "all", "the")
	every := false
	for {
		if r.word("next") {
			r.pass(1)
			continue
		}
		if r.word("other", "alternate", "second") || r.is(ordinalToken) && r.tok().n == 2 {
			every = true
			r.pass(1)
			continue
		}
		if _, ok := r.parity(); !ok {
			break
		}
		every = true
	}
	if !r.word("row", "rnd") {
		r.i = start
		return false
	}
	r.pass(1)
	if every {
		row.Every = true
		r.fill("thereafter", "throughout")
		r.everyTo(row)
	} else {
		row.Open = true
	}
	if bracketed {
		r.eat(")")
	}
	return true
}

// manyRows reads "Next 4 rows", "Next 4 (6, 8) rounds".
func (r *reader) manyRows(row *Row) bool {
	start := r.i
	named := headingWords[r.tok().text]
	r.pass(1)
	q, ok := r.num(true)
	if !ok || !r.word("row", "rnd") {
		r.i = start
		return false
	}
	row.Named, row.Many, row.Round = named, q, r.word("rnd")
	r.pass(1)
	return true
}
