package syntax

// plainRows reads rows that are told by their number and stitch alone: "Work 2 more rows in sc", "Work even for 6 rows",
// "Continue in hdc for 3 rows", "Sc 4 rows". They stand for "Next 2 rows: sc in each st across".
func (r *reader) plainRows() bool {
	start := r.i
	if !r.headed || !r.word("work", "cont", "continue", "continuing", "knit", "then", "now") && !r.stitchWord(r.i) {
		return false
	}
	r.fill("then", "now")
	r.fill("work", "cont", "continue", "continuing", "working")
	kind, even := r.evenIn()
	r.fill("for", "another", "a", "further")
	q, ok := r.num(true)
	r.fill("more", "further", "plain", "even", "additional")
	if !ok || !r.word("row", "rnd") {
		until := (even || kind != "") && r.word("until")
		r.i = start
		return until && r.plainUntil()
	}
	round := r.word("rnd")
	r.pass(1)
	k, e := r.evenIn()
	if kind == "" {
		kind = k
	}
	r.fill("more")
	if kind == "" && !even && !e || !r.word(".", ",", ";", "(", ":", dash) && !r.ended() || r.word(":") {
		r.i = start
		return false
	}
	r.openPlain(start, q, kind, round)
	return true
}

// plainUntil reads "work even until it measures 20 cm": one row, and that row again.
func (r *reader) plainUntil() bool {
	start := r.i
	r.fill("then", "now", "work", "cont", "continue", "continuing", "working")
	kind, _ := r.evenIn()
	r.openPlain(start, Plain(1), kind, false)
	from := r.i
	r.open(&Row{}, from)
	ref := &RowRef{Last: 1}
	if !r.rowsAsked(ref) {
		ref.Until = r.untilWords()
	}
	ref.Span = r.span(from)
	r.row.Body = []Node{ref}
	r.row.Span = ref.Span
	return true
}

// evenIn reads "in sc", "of hdc", "even", "straight in dc".
func (r *reader) evenIn() (kind string, even bool) {
	for {
		switch {
		case r.word("even", "straight", "evenly"):
			even = true
			r.pass(1)
			continue
		case r.word("in", "of") && r.stitchWord(min(r.i+1, len(r.tokens)-1)), kind == "" && r.stitchWord(r.i):
			if r.word("in", "of") {
				r.pass(1)
			}
			kind, _ = r.stitch()
			continue
		}
		return kind, even
	}
}

// openPlain opens the rows, worked as the row above was: turned or joined.
func (r *reader) openPlain(start int, many Num, kind string, round bool) {
	row := &Row{Named: "Next", Many: many, Round: round}
	if many.isOne() {
		row.Many = Num{}
	}
	var ending []Node
	if n := len(r.tree.Rows); n > 0 {
		above := r.tree.Rows[n-1]
		row.Round = row.Round || above.Round
		if kind == "" {
			kind = r.plainOf(above)
		}
		for _, node := range above.Body {
			switch x := node.(type) {
			case *Turn:
				ending = []Node{&Turn{Not: x.Not}}
			case *Join:
				ending = []Node{&Join{Not: x.Not, With: slipStitch}}
			}
		}
	}
	if kind == "" {
		kind = plainStitch
	}
	span := r.span(start)
	r.open(row, start)
	row.Span = span
	row.Body = append([]Node{&Make{Span: span, N: Plain(1), Kind: kind, Unit: r.unit(kind),
		Place: &Place{Span: span, Ord: Each, N: Plain(1), Ext: Extent{How: Across}}}}, ending...)
}

// plainOf is the plain stitch that a row is worked in last.
func (r *reader) plainOf(row *Row) string {
	kind := ""
	Walk(row.Body, func(n Node) bool {
		if m, ok := n.(*Make); ok && m.Unit == nil && m.Kind != slipStitch {
			kind = r.bare(m.Kind)
		}
		return true
	})
	return kind
}
