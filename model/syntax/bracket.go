package syntax

import (
	"strings"

	"strandway/model/diag"
)

// closers are the signs that close a bracket.
var closers = map[string]string{"(": ")", "[": "]", "{": "}"}

// bracket decides among the four jobs of a bracket: a count, a remark, a group in one place, a repeat. What
// stands inside and the words after it tell which.
func (r *reader) bracket() []Node {
	start, open := r.i, r.tok()
	close := open.match
	if close == 0 {
		r.pass(1)
		r.find(diag.Fault, "bracket", r.span(start), "close it where the repeat or the group ends", "%q is not closed in this row", open.text)
		return nil
	}
	if want, have := closers[open.text], r.tokens[close]; have.text != want {
		span := diag.Span{Start: have.start, End: have.end}
		r.find(diag.Doubt, "bracket", span, "", "%q is closed by %q", open.text, have.text).Mend =
			&diag.Mend{Label: "write " + want, Span: span, Text: want}
	}
	if r.row != nil {
		switch {
		case (r.number(1) || r.wordAt(1, "n") || r.wordAt(1, "=") && r.number(2)) && r.bracketCount(close):
			r.i = start + 1
			r.eat("=")
			r.row.Count = r.tallies()
			r.i = close + 1
			return nil
		case r.isYarn(1) && close == start+2 && start > 0 && r.tokens[start-1].end > r.row.Head.End: // "(B) 3 sc" in mid-row
			y := &Yarn{Letter: r.raw(r.peek(1))}
			r.i = close + 1
			y.Span = r.span(start)
			return []Node{y}
		case open.text == "(" && r.marks(r.row):
			return nil
		}
		if k := r.countsWord(start+1, close); k > 0 { // "(skipped 3 ch count as dc)", after a place
			c := &ChainN{}
			r.i = k
			r.counting(c)
			r.i = close + 1
			r.row.Hook, r.row.HookAs = c.Counts, c.As
			return nil
		}
	}
	if r.explains(start, close) {
		return r.bracketNote(start, close)
	}
	if r.number(1) && r.wordAt(2, "more", "less", "fewer") && r.eachRow(start, close) { // "[6 more dc in every row; 120 dc in Row 20]"
		return r.bracketNote(start, close)
	}
	if r.tokens[close-1].text == "made" || r.words("(", "note", ":") { // "(shell made)" names what stands before it
		return r.bracketNote(start, close)
	}
	return r.bracketBody(start, close)
}

// explains sees a bracket that tells how a number was reckoned: "(3 sc for every 2 rows)".
func (r *reader) explains(start, close int) bool {
	for k := start + 1; k+1 < close; k++ {
		if r.tokens[k].text == "for" && r.tokens[k+1].text == "each" || r.tokens[k].text == "per" && r.tokens[k+1].text == "row" {
			return true
		}
	}
	return false
}

// eachRow reports whether "each row" or "every round" stands between two tokens.
func (r *reader) eachRow(from, to int) bool {
	for k := from + 1; k < to; k++ {
		if t := r.tokens[k].text; (t == "row" || t == "rnd") && r.wordBefore(k, "each") {
			return true
		}
	}
	return false
}

// bracketNote keeps the inside of a bracket as a remark.
func (r *reader) bracketNote(start, close int) []Node {
	from := start + 1
	if r.tokens[from].text == "note" && r.tokens[from+1].text == ":" {
		from += 2
	}
	text := strings.TrimSpace(r.src[r.tokens[from].start:r.tokens[close].start])
	r.i = close + 1
	return []Node{&Note{Span: r.span(start), Text: text}}
}

// bracketBody reads instructions in brackets, told apart by what follows.
func (r *reader) bracketBody(start, close int) []Node {
	m := r.mark()
	lie := r.lie
	r.i, r.lie = start+1, LieUnsaid
	body := r.items(func() bool { return r.i >= close || r.ended() })
	real := false
	for _, n := range body {
		_, note := n.(*Note)
		real = real || !note
	}
	if !real && (!r.near(m) || r.tokens[start+1].kind == numberToken) {
		r.back(m)
		if start+1 == close {
			r.i = close + 1
			return []Node{}
		}
		nodes := r.bracketNote(start, close)
		r.find(diag.Note, "remark", r.span(start), "", "taken as a remark: %q", clip(r.textFrom(start)))
		return nodes
	}
	r.i = close + 1
	if len(body) == 0 {
		return []Node{}
	}
	if ref, ok := body[0].(*RowRef); ok && len(body) == 1 { // [Rep Rows 4 and 5] three times
		if ext, ok := r.times(); ok && ext.How == Times {
			ref.Times = ext.N
			ref.Span = r.span(start)
		}
		return body
	}
	if r.word("-", dash) && r.number(1) && r.wordAt(2, "time") || r.stars == 0 && r.word(",") && r.wordAt(1, "rep") && (r.wordAt(2, "to", "across", "around") || r.number(2)) {
		r.pass(1)
	}
	if ext, ok := r.times(); ok {
		rep := &Repeat{Body: body, Ext: ext}
		rep.Ext.Soft = false
		if r.eat("all"); ext.How == Times && r.placeWord() && placeless(body) { // [dc, ch 1] 4 times in next sp
			rep.Span = r.span(start)
			p := r.place()
			r.lie = lie
			r.mode(p)
			return []Node{&Group{Body: []Node{rep}, Place: p, Span: r.span(start)}}
		}
		r.endings(rep, r.stars > 0)
		rep.Span = r.span(start)
		return []Node{rep}
	}
	if r.word("all") && r.wordAt(1, "in") {
		r.pass(1)
	}
	if r.placeWord() || r.word("next", "same") {
		if p := r.place(); p != nil {
			r.lie = lie
			r.mode(p)
			if p.Ord != Each && p.Ext.How == OverN {
				p.Ext = Extent{}
			}
			g := &Group{Body: body, Place: p, Span: r.span(start)}
			r.hookNote()
			return r.often(append([]Node{g}, r.more(g)...), start)
		}
	}
	return body // worked once, in the places they name
}

// placeless reports whether stitches stand there without a place of their own.
func placeless(nodes []Node) bool {
	for _, n := range nodes {
		if m, ok := n.(*Make); ok && m.Place == nil {
			return true
		}
	}
	return false
}

// countsWord finds the words that make a bracket one about chains that count, and says where they begin.
func (r *reader) countsWord(from, close int) int {
	for k := from; k < close && k < from+8; k++ {
		switch r.tokens[k].text {
		case "=":
			if k > from {
				return max(k-2, from)
			}
		case "counts", "count", "counted", "stands", "stand":
			if next := r.tokens[k+1].text; next == "as" || next == "for" || k > from && r.wordBefore(k, "not", "don't", "don’t", "doesn't", "doesn’t") {
				return max(k-2, from)
			}
		}
	}
	return 0
}

// near reports whether a fault found since m has a likely mend: then the words were meant for instructions.
func (r *reader) near(m mark) bool {
	for _, f := range r.finds[m.finds:] {
		if f.Severity == diag.Fault && (f.Mend != nil || f.ID != "unread") {
			return true
		}
	}
	return false
}

// bracketCount: the bracket holds only numbers with units, and nothing but the row's ending follows.
func (r *reader) bracketCount(close int) bool {
	m := r.mark()
	defer r.back(m)
	r.pass(1)
	r.eat("=")
	if r.tallies() == nil {
		return false
	}
	r.fill(".", "now", "on", "needle", "total", "made")
	if r.i != close {
		return false
	}
	r.i = close + 1
	if r.placeWord() {
		return false
	}
	_, ok := r.times()
	return !ok
}
