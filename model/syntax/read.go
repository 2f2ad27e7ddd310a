package syntax

import (
	"fmt"
	"strings"

	"strandway/model/diag"
	"strandway/model/stitch"
)

// ReadOptions say how rows are to be read.
type ReadOptions struct {
	Library *stitch.Library
	UK      bool              // the rows, and Units, are in UK terms
	Units   map[string]string // the designer's own stitches: name to written definition
	Yarns   map[string]string // the names and shades of the yarns, to their letters
	Sizes   []string          // the names of the sizes, so that "for L only" can be read
}

// Read reads the rows of one piece. It always gives a tree: rows that hold a fault keep what could be
// read of them and are marked Bad.
func Read(text string, o ReadOptions) (*Tree, diag.List) {
	r := &reader{
		src:    text,
		tokens: lex(text),
		o:      o,
		tree:   &Tree{Text: text, UK: o.UK, Units: map[string]*Unit{}, TchCounts: map[string]Counting{}},
		kinds:  map[string]string{},
		own:    map[string][]ownName{},
	}
	r.ownUnits()
	r.definitions()
	for !r.is(endToken) {
		r.line()
	}
	r.finish()
	return r.tree, r.finds
}

// maxDepth bounds how deep brackets may nest.
const maxDepth = 40

// reader is a recursive-descent reader over the tokens of one piece.
type reader struct {
	src    string
	tokens []token
	i      int // the token at hand
	o      ReadOptions
	tree   *Tree
	finds  diag.List
	row    *Row // the row that is open; nil outside rows

	kind       string               // the stitch last named: what "inc" and "dec" mean
	loop       Loop                 // "working in back loops only", for the rest of this row
	loopFrom   int                  // where that was said
	lie        Lie                  // "working behind it", for the next stitch
	depth      int                  // of brackets
	inCorner   bool                 // the corners among the sides are being read
	allDefined bool                 // all definitions are read
	headed     bool                 // a numbered row has been met
	stars      int                  // how many starred repeats are open
	outside    bool                 // the text is not the piece's own: nodes have no span
	kinds      map[string]string    // abbreviations looked up so far; "" for words that are none
	own        map[string][]ownName // the pattern's own stitch names, by their first word
	yarns      map[string][]string  // names of yarns by their first word
	slips      map[string]string    // words read as what they must have been meant for; "" for none
	nearests   map[string]string    // near words looked up so far
	standard   map[string]string    // the library's groups, by name
	defined    map[int]int          // the lines that are definitions: first token, and token after the last
}

func (r *reader) tok() *token         { return &r.tokens[r.i] }
func (r *reader) peek(k int) *token   { return &r.tokens[min(r.i+k, len(r.tokens)-1)] }
func (r *reader) is(k tokenKind) bool { return r.tokens[r.i].kind == k }

// number reports whether a number stands k tokens on.
func (r *reader) number(k int) bool { return r.peek(k).kind == numberToken }

// word reports whether one of the words stands at hand.
func (r *reader) word(words ...string) bool { return r.wordAt(0, words...) }

func (r *reader) wordAt(k int, words ...string) bool {
	text := r.peek(k).text
	for _, w := range words {
		if text == w {
			return true
		}
	}
	return false
}

// words reports whether the words stand at hand one after the other.
func (r *reader) words(words ...string) bool {
	for k, w := range words {
		if r.peek(k).text != w {
			return false
		}
	}
	return true
}

// eat passes the words if they stand at hand.
func (r *reader) eat(words ...string) bool {
	if r.words(words...) {
		r.pass(len(words))
		return true
	}
	return false
}

// fill passes any of the filling words.
func (r *reader) fill(words ...string) {
	for r.word(words...) {
		r.pass(1)
	}
}

// pass goes on by n tokens, but not past the end.
func (r *reader) pass(n int) { r.i = min(r.i+n, len(r.tokens)-1) }

func (r *reader) ended() bool { return r.is(lineToken) || r.is(endToken) }

// skipTo passes tokens up to one of the words, or to the end of the line.
func (r *reader) skipTo(words ...string) {
	for !r.ended() && !r.word(words...) {
		r.i++
	}
}

// toSeparator passes the rest of a phrase.
func (r *reader) toSeparator() { r.skipTo(",", ";", ".", ":", dash, ")", "]", "}", "*", "**", "†") }

// raw is the token as written.
func (r *reader) raw(t *token) string { return r.src[t.start:t.end] }

// lower is the token as written, in lower case.
func (r *reader) lower(t *token) string {
	if raw := r.raw(t); t.kind != wordToken || t.text != raw {
		return strings.ToLower(raw)
	}
	return t.text
}

// span reaches from token from to the token before the one at hand.
func (r *reader) span(from int) diag.Span {
	if r.outside || from >= len(r.tokens) {
		return diag.Span{}
	}
	last := max(from, r.i-1)
	return diag.Span{Start: r.tokens[from].start, End: r.tokens[last].end}
}

// spanTo is span with the token at hand.
func (r *reader) spanTo(from int) diag.Span {
	if r.outside {
		return diag.Span{}
	}
	return diag.Span{Start: r.tokens[from].start, End: r.tok().end}
}

// textFrom is the text from token from to the one before the token at hand.
func (r *reader) textFrom(from int) string {
	if from >= r.i {
		return ""
	}
	return strings.TrimSpace(r.src[r.tokens[from].start:r.tokens[r.i-1].end])
}

// find adds a finding about the tokens from from to the one at hand.
func (r *reader) find(severity diag.Severity, id string, span diag.Span, hint, format string, args ...any) *diag.Finding {
	f := diag.Finding{Severity: severity, ID: id, Span: span, Hint: hint, Message: fmt.Sprintf(format, args...)}
	if r.row != nil {
		f.Row = r.row.Label()
		if severity == diag.Fault && !r.row.Bad {
			r.row.Bad = true
			r.row.Lost = r.src[span.Start:span.End]
			if i := strings.IndexAny(r.row.Lost, " \t\n"); i > 0 {
				r.row.Lost = r.row.Lost[:i]
			}
		}
	}
	r.finds = append(r.finds, f)
	return &r.finds[len(r.finds)-1]
}

// mark is a way back to an earlier state of reading.
type mark struct {
	i, finds, rows int
	row            *Row
	bad            bool
	kind           string
	loop           Loop
}

func (r *reader) mark() mark {
	m := mark{i: r.i, finds: len(r.finds), rows: len(r.tree.Rows), row: r.row, kind: r.kind, loop: r.loop}
	if r.row != nil {
		m.bad = r.row.Bad
	}
	return m
}

func (r *reader) back(m mark) {
	r.i, r.finds, r.tree.Rows, r.row, r.kind, r.loop = m.i, r.finds[:m.finds], r.tree.Rows[:m.rows], m.row, m.kind, m.loop
	if r.row != nil && r.row.Bad && !m.bad {
		r.row.Bad, r.row.Lost = false, ""
	}
}

// clip shortens a text for a message.
func clip(s string) string {
	if r := []rune(s); len(r) > 48 {
		return string(r[:45]) + "..."
	}
	return s
}

// finish settles what only the whole piece tells.
func (r *reader) finish() {
	rows := r.tree.Rows
	for i, row := range rows {
		// "Ch 26, sc in 2nd ch ..." before Row 2 is Row 1 itself
		if row.Named == "Foundation" && row.From == 0 && i+1 < len(rows) && rows[i+1].From == 2 && worksChain(row.Body) {
			row.Named, row.From, row.To = "", 1, 1
		}
		row.Body = outOfEnding(row.Body)
		closeRound(row.Body, row.Round)
		markStart(row.Body)
	}
	r.checkNumbers()
	r.tellMisprints()
	r.finds.Sort()
}

// worksChain reports whether a stitch is worked into the foundation or the ring.
func worksChain(body []Node) bool {
	for _, n := range body {
		if p := placeOf(n); p != nil && (p.What == InHook || p.What == InRing) {
			return true
		}
	}
	return false
}

// outOfEnding takes the slip stitch that closes a round out of the words "ending with ch 7, sl st in first sc".
func outOfEnding(body []Node) []Node {
	last := len(body) - 1
	for last >= 0 {
		if _, ok := body[last].(*Yarn); !ok {
			break
		}
		last--
	}
	if last < 0 {
		return body
	}
	rep, ok := body[last].(*Repeat)
	if !ok || len(rep.Ending) < 2 {
		return body
	}
	n := len(rep.Ending) - 1
	m, ok := rep.Ending[n].(*Make)
	if !ok || m.Kind != slipStitch || m.Place == nil || m.Place.Ord != First {
		return body
	}
	y := *rep
	y.Ending = rep.Ending[:n:n]
	out := append(body[:last:last], &y, m)
	return append(out, body[last+1:]...)
}

// closeRound takes a slip stitch into the round's first stitch, at its end, for its join.
func closeRound(body []Node, round bool) {
	for i := len(body) - 1; i > 0; i-- {
		switch x := body[i].(type) {
		case *Note, *Turn, *Yarn:
			continue
		case *Make:
			closes := x.Kind == slipStitch
			if !closes && round { // "ch 2, tr in first dc": a half-join
				_, closes = body[i-1].(*ChainN)
				closes = closes && x.N.isOne() && x.Place != nil && x.Place.Ord == First
			}
			if closes && x.Place != nil && (x.Place.Ord == First || x.Place.What == InTch || x.Kind == slipStitch && topOfStart(body, x.Place)) {
				body[i] = &Join{Span: x.Span, Place: x.Place, With: x.Kind}
			}
		}
		return
	}
}

// topOfStart reports whether "3rd ch" at a round's end is that of the chain with which it began.
func topOfStart(body []Node, p *Place) bool {
	i := 0
	for ; i < len(body); i++ {
		if m, ok := body[i].(*Make); !ok || m.Kind != slipStitch { // on the way to where the round begins
			break
		}
	}
	if i == len(body) {
		return false
	}
	c, ok := body[i].(*ChainN)
	return ok && p.Ord == Nth && p.What == InCh && p.Of == nil && p.N.B > 1 && p.N.B <= c.N.B && c.N.Sizes == nil
}

// markStart marks the chain that stands at the row's start.
func markStart(body []Node) {
	for i, n := range body {
		switch x := n.(type) {
		case *Note, *Turn, *Yarn, *Along:
			continue
		case *ChainN:
			y := *x
			y.Start = true
			body[i] = &y
		}
		return
	}
}

// tellMisprints names the words that were read as what they must have been meant for.
func (r *reader) tellMisprints() {
	row := 0
	for i := range r.tokens {
		t := &r.tokens[i]
		if !t.misprint {
			continue
		}
		for row < len(r.tree.Rows) && r.tree.Rows[row].Span.End <= t.start {
			row++
		}
		if row == len(r.tree.Rows) || r.tree.Rows[row].Span.Start > t.start {
			continue
		}
		r.row = r.tree.Rows[row]
		span := diag.Span{Start: t.start, End: t.end}
		text := t.text
		if t.kind == ordinalToken {
			text = ordinal(t.n)
		}
		f := r.find(diag.Doubt, "misprint", span, "", "%q is read as %q", r.raw(t), text)
		f.Mend = &diag.Mend{Label: fmt.Sprintf("write %q", text), Span: span, Text: text}
	}
	r.row = nil
}
