package syntax

import (
	"strings"

	"strandway/model/diag"
)

// maxRows bounds how many rows a reference may name.
const maxRows = 10000

// rowRef reads "rep Row 2", "rep Rows 2 and 3 six times", "as 4th row", "rep last 2 rows until it measures 20 cm".
func (r *reader) rowRef() []Node {
	start := r.i
	x := &RowRef{}
	if r.eat("same") && !r.word("as") {
		r.i = start
		return nil
	}
	if k := r.repFromRow(); k > 0 && r.fromRow(x, k) {
		x.Until = r.untilWords()
		x.Span = r.span(start)
		return []Node{x}
	}
	r.pass(1)
	r.fill("as", "in", "the", "for", "these", "given", "from")
	switch {
	case r.word("last", "prev"):
		r.pass(1)
		x.Last = 1
		if r.number(0) {
			x.Last = r.tok().n
			r.pass(1)
		}
		if !r.word("row", "rnd") {
			r.i = start
			return nil
		}
		x.Round = r.word("rnd")
		r.pass(1)
	case r.number(0) && r.wordAt(1, "row", "rnd") && r.tokens[r.i-1].text == "these":
		x.Last, x.Round = r.tok().n, r.wordAt(1, "rnd")
		r.pass(2)
	default:
		if !r.rowsNamed(x) {
			r.i = start
			return nil
		}
	}
	if len(x.Rows) == 0 && x.Last == 0 {
		r.find(diag.Fault, "rows", r.span(start), "name the rows: \"rep Rows 2 and 3\"", "cannot read which rows are repeated")
		return []Node{}
	}
	if len(x.Rows) == 2 && x.Rows[1] < x.Rows[0] {
		r.find(diag.Fault, "rows", r.span(start), "", "rows %d and %d run backwards", x.Rows[0], x.Rows[1])
	}
	r.fill("alternately")
	if r.words("for", "colour") || r.words("for", "the", "colour") || r.words("for", "yarn") { // "Rows 1-12 for colours, and Row 2 for the stitches"
		r.skipTo(",", "and", ";", ".")
		r.fill(",", "and", "rep")
		if y := (&RowRef{}); r.rowsNamed(y) {
			x.Rows, x.Round = y.Rows, y.Round
			r.eat("for")
			r.fill("the", "st", "pattern")
		}
		r.fill(",")
		r.howOften() // of the colours, which may take more rows
	}
	if r.word("for") && (r.wordAt(1, "pattern", "patt", "pat") || r.wordAt(1, "the") && r.wordAt(2, "pattern", "patt")) {
		r.pass(1)
		r.fill("the", "pattern", "patt", "pat")
	}
	if !r.rowsAsked(x) && !r.stsAsked(x) {
		r.fill("for")
		if q, more, ok := r.howOften(); ok {
			x.Times, x.More = q, more
		}
		if r.wordAt(0, ",") && r.wordAt(1, "end") {
			r.pass(1)
		}
		if r.word("until", "to", "end") && !r.rowsAsked(x) || r.word("for") && r.number(1) {
			x.Until = r.untilWords()
		}
	}
	r.swaps(x)
	x.Span = r.span(start)
	if r.word(",") && r.wordAt(1, "omitting", "omit", "working", "keeping") { // ", omitting the 3 ch at end of last repeat"
		r.pass(1)
		return []Node{x, r.remarkTo(".", "(", ";")}
	}
	if r.word("in") && r.wordAt(1, "this", "the", "colour") { // "in this colour order: A, B"
		return []Node{x, r.remarkTo(".")}
	}
	return []Node{x}
}

// remarkTo keeps what stands before one of some words as a remark, and tells of it. Yarns that it names are not worked.
func (r *reader) remarkTo(ends ...string) *Note {
	from, yarns := r.i, false
	r.skipTo(ends...)
	for k := from - r.i; k < 0; k++ {
		yarns = yarns || r.isYarn(k)
	}
	text := r.textFrom(from)
	if yarns {
		r.find(diag.Doubt, "yarns-named", r.span(from), "say the rows of each yarn under a heading of their own, as Rows 5 and 6 (A)",
			"taken as a remark, though it names yarns: %q", clip(text))
	} else {
		r.find(diag.Note, "remark", r.span(from), "", "taken as a remark: %q", clip(text))
	}
	return &Note{Span: r.span(from), Text: text}
}

// repFromRow sees "rep from the third row", "rep from Row 3", and gives the token after "from".
func (r *reader) repFromRow() int {
	if !r.word("rep") || !r.wordAt(1, "from") {
		return 0
	}
	k := 2
	if r.wordAt(k, "the") {
		k++
	}
	if r.peek(k).kind == ordinalToken && r.wordAt(k+1, "to") && (r.peek(k+2).kind == ordinalToken || r.wordAt(k+2, "the") && r.peek(k+3).kind == ordinalToken) { // "from the 2nd to the 6th row"
		return k
	}
	if r.wordAt(k, "row", "rnd", "r") && r.number(k+1) || (r.peek(k).kind == ordinalToken || r.wordAt(k, "first")) && r.wordAt(k+1, "row", "rnd") {
		return k
	}
	return 0
}

// fromRow reads "from the third row to the sixth", or to the last row above.
func (r *reader) fromRow(x *RowRef, k int) bool {
	r.pass(k)
	if from := r.tok().n; r.is(ordinalToken) && r.wordAt(1, "to") && !r.wordAt(1, "row") {
		r.pass(2)
		r.fill("the")
		for no := from; no <= r.tok().n && len(x.Rows) < maxRows; no++ {
			x.Rows = append(x.Rows, no)
		}
		r.pass(1)
		x.Round = r.word("rnd")
		r.fill("row", "rnd")
		return len(x.Rows) > 0
	}
	if !r.rowsNamed(x) {
		return false
	}
	if len(x.Rows) == 1 {
		last := x.Rows[0]
		for _, row := range r.tree.Rows {
			last = max(last, row.From, row.To)
		}
		for k := x.Rows[0] + 1; k <= last && len(x.Rows) < maxRows; k++ {
			x.Rows = append(x.Rows, k)
		}
	}
	return true
}

// stsAsked reads "until 25 tr remain", "until you have 40 sts": how many stitches the last row has.
func (r *reader) stsAsked(x *RowRef) bool {
	start := r.i
	r.fill(",")
	if !r.eat("until") {
		r.i = start
		return false
	}
	r.fill("there", "are", "you", "have", "only", "a", "total", "of", "but")
	q, ok := r.num(true)
	what, _, _, named := r.what()
	if !ok || !named || what != InSt && what != InKind || !r.word("rem", "are", "left", "on", "in", "have") && !r.word(".", ",", ";") && !r.ended() {
		r.i = start
		return false
	}
	r.fill("rem", "are", "left", "on", "in", "all", "total", "have", "been", "made", "worked")
	x.Sts = q
	return true
}

// goesOnAs sees "keep going like Row 2", "go on as Row 2", and gives the token before the row; 0 for none.
func (r *reader) goesOnAs() int {
	k := 1
	for r.wordAt(k, "going", "on", "repeating", "working", "like", "as", "with", "in") {
		k++
	}
	if k == 1 || !r.wordAt(k, "row", "rnd") || !r.number(k+1) {
		return 0
	}
	return k - 1
}

// bareHead reports whether the open row has a number alone for its heading: "4-19."
func (r *reader) bareHead() bool {
	return r.row != nil && r.row.Head.Len() > 0 && strings.Trim(r.src[r.row.Head.Start:r.row.Head.End], "0123456789 .):-–—&,") == ""
}

// rowsAsked reads how many rows come of a repetition: "for 6 rows", "until 30 rows have been worked", "to Row 20".
func (r *reader) rowsAsked(x *RowRef) bool {
	start := r.i
	r.fill(",")
	r.fill("for", "until", "to", "through", "a", "another", "total", "of", "you", "have", "there", "are", "worked", "completed", "done", "piece", "work", "measures", "has", "is", "and", "including", "up")
	if r.i == start || r.wordBefore(r.i, "work", "is") && !r.number(0) {
		r.i = start
		return false
	}
	said := map[string]bool{}
	for _, t := range r.tokens[start:r.i] {
		said[t.text] = true
	}
	if r.word("row", "rnd", "r") && r.number(1) && !said["for"] { // "to Row 20"
		x.For, x.InAll = Plain(r.peek(1).n), true
		r.pass(2)
	} else {
		q, ok := r.num(true)
		more := r.eat("more") || said["another"]
		if !ok || !r.word("row", "rnd") {
			r.i = start
			return false
		}
		r.pass(1)
		x.For, x.InAll = q, (said["until"] || said["to"] || said["total"]) && !more
		r.fill("more")
	}
	r.fill("are", "have", "has", "been", "is", "worked", "completed", "complete", "done", "made", "in", "all", "total", "long", "there")
	return true
}

// swaps reads the "but ch 9 for ch 8" behind a row to be repeated.
func (r *reader) swaps(x *RowRef) {
	start, finds := r.i, len(r.finds)
	r.fill(",")
	if !r.word("but", "except", "replacing", "substituting") {
		r.i = start
		return
	}
	turned := r.word("replacing")
	for r.word("but", "except", "replacing", "substituting", "with", "work", "working", "and", ",", "make", "making", "that", "having") {
		turned = turned || r.word("replacing")
		r.pass(1)
		old := r.swapped()
		if old == nil {
			continue
		}
		if !r.word("for", "with", "by", "instead", "in") {
			r.finds = r.finds[:finds]
			r.i = start
			return
		}
		r.fill("for", "with", "by", "instead", "in", "of", "place", "the", "each")
		other := r.swapped()
		if other == nil {
			r.finds = r.finds[:finds]
			r.i = start
			return
		}
		if turned {
			old, other = other, old
		}
		x.But = append(x.But, Swap{Old: other, New: old})
	}
}

// swapped reads one side of "ch 9 for ch 8": a chain or so many stitches.
func (r *reader) swapped() Node {
	start := r.i
	r.fill("the")
	q, ok := Plain(1), false
	switch {
	case r.word(glued, made):
		q = Plain(r.tok().n)
		r.pass(1)
		return &ChainN{Span: r.span(start), N: q}
	case r.chainAhead():
		if c, is := r.chain()[0].(*ChainN); is {
			return c
		}
		return nil
	}
	if q, ok = r.num(false); !ok {
		q = Plain(1)
	}
	kind, ok := r.stitch()
	if !ok {
		r.i = start
		return nil
	}
	return &Make{Span: r.span(start), N: q, Kind: kind, Unit: r.unit(kind)}
}

// repUntil reads "repeat until it measures 20 cm": the row above is meant.
func (r *reader) repUntil() []Node {
	start := r.i
	r.pass(1)
	x := &RowRef{Last: 1, Until: r.untilWords()}
	x.Span = r.span(start)
	return []Node{x}
}

// untilWords passes the words that say how long rows are repeated.
func (r *reader) untilWords() string {
	from := r.i
	for !r.ended() && !r.word(";", ")", "]") && (!r.word(".") || r.inches()) {
		if t := r.tok(); t.match > 0 {
			r.i = t.match // "until 30 (33, 36) rows have been worked"
		}
		r.pass(1)
	}
	return r.textFrom(from)
}

// inches sees the full stop of "38 in. from start".
func (r *reader) inches() bool {
	return r.wordBefore(r.i, "in", "cm") && r.is(signToken) && r.peek(1).kind == wordToken && !r.headingAt(r.i+1) || r.peek(1).tight && r.number(1)
}

func (r *reader) rowsNamed(x *RowRef) bool {
	worded := r.word("row", "rnd", "r")
	if worded {
		x.Round = r.word("rnd")
		r.pass(1)
	}
	if !r.number(0) && r.tok().kind != ordinalToken && !(r.word("first") && r.wordAt(1, "row", "rnd")) {
		return false
	}
	row, bare := &Row{}, r.number(0) // "4-19. Rep 2 and 3."
	r.rowNumbers(row)
	if !worded {
		if bare && (r.word(".", ";", ")") || r.ended()) {
			if !r.bareHead() {
				return false
			}
			x.Rows = row.List
			for k := row.From; row.List == nil && k <= row.To && len(x.Rows) < maxRows; k++ {
				x.Rows = append(x.Rows, k)
			}
			return true
		}
		if !r.word("row", "rnd") {
			return false
		}
		x.Round = r.word("rnd")
		r.pass(1)
	}
	if x.Rows = row.List; x.Rows == nil {
		for k := row.From; k <= row.To && len(x.Rows) < maxRows; k++ {
			x.Rows = append(x.Rows, k)
		}
	}
	return true
}

// howOften reads "six times", "3 more times", "twice more", "once".
func (r *reader) howOften() (q Num, more, ok bool) {
	start := r.i
	r.fill("a", "another", "further")
	if n := often[r.tok().text]; n > 0 {
		r.pass(1)
		return Plain(n), r.eat("more"), true
	}
	q, ok = r.num(true)
	if !ok {
		r.i = start
		return q, false, false
	}
	another := r.tokens[start].text == "another"
	switch {
	case r.eat("more", "time"), r.eat("time", "more"), r.eat("further", "time"), r.eat("more"):
		return q, true, true
	case r.eat("time"):
		return q, another, true
	}
	r.i = start
	return Num{}, false, false
}
