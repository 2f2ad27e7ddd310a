package syntax

import (
	"regexp"
	"strconv"
	"strings"

	"strandway/model/diag"
)

// line reads one line: a headed row, a foundation, a definition, a repetition of rows, or a remark.
func (r *reader) line() {
	for r.is(lineToken) || r.is(signToken) && r.word(dash, "-", "•", "|") {
		if r.is(lineToken) && r.blankLineAt(r.i) {
			r.closeRow() // a blank line closes the row
		}
		r.pass(1)
	}
	if r.is(endToken) {
		return
	}
	start := r.i
	if row, ok := r.heading(); ok {
		r.open(r.headingAgain(row), start)
		r.body(start)
		return
	}
	if !r.headed && r.word("foundation", "base", "ring") { // "Base ring: 4 ch, ss to join."
		for k := range 3 {
			if r.wordAt(k, ":") {
				r.pass(k + 1)
				break
			}
		}
	}
	if end := r.defined[r.i]; end > 0 {
		r.i = end
		return
	}
	if r.chainNote() {
		return
	}
	if r.growing() || r.plainRows() {
		r.body(start)
		return
	}
	switch {
	case r.isFoundation():
		r.open(&Row{Named: "Foundation"}, start)
		r.eat("foundation")
		r.fill(":", "ch:")
		r.body(start)
	case r.isRowLine():
		if r.row == nil || r.row.Named != "" || !r.words("fasten", "off") {
			r.open(&Row{}, start)
		}
		r.body(start)
	case r.row != nil && r.beginsItem():
		r.body(start)
	default:
		r.i = start
		r.remark()
	}
}

func (r *reader) closeRow() { r.row = nil }

// isRowLine sees a line that is worked though it has no heading: "Rep Rows 2 and 3", "Fasten off",
// "With RS facing, join B".
func (r *reader) isRowLine() bool {
	switch {
	case r.word("rep"):
		return r.headed && r.wordAt(1, "until") || r.wordAt(1, "row", "rnd", "r", "last", "these", "prev") || r.peek(1).kind == ordinalToken || r.words("rep", "the", "last")
	case r.headed && r.word("keep", "go", "continue") && r.goesOnAs() > 0:
		return true
	case r.headed && r.word("skip", "rejoin", "join", "attach") && r.joinsBelow():
		return true
	case r.word("work") && r.wordAt(1, "row", "rnd") && r.number(2):
		return true
	case r.headed && r.word("change") && r.changesAlone():
		return true
	case r.words("[", "rep"), r.words("fasten", "off"), r.words("break", "off"), r.words("finish", "off"), r.words("end", "off"):
		return true
	case r.word("with", "rotate") || r.words("do", "not", "turn") || r.words("do", "not", "fasten"):
		return r.headed && r.beginsItem()
	}
	return false
}

// changesAlone sees a line that does nothing but change to another yarn: "Change to B."
func (r *reader) changesAlone() bool {
	k := 1
	for r.wordAt(k, "back", "to", "colour", "yarn") {
		k++
	}
	return r.isYarn(k) && (r.peek(k+1).kind == lineToken || r.wordAt(k+1, ".") && r.peek(k+2).kind == lineToken)
}

// joinsBelow sees a line that says where the next row begins: "Skip the centre 20 sts of Row 54 and rejoin yarn in next st."
func (r *reader) joinsBelow() bool {
	joins := false
	for k := 0; r.peek(k).kind != lineToken && r.peek(k).kind != endToken; k++ {
		joins = joins || r.wordAt(k, "rejoin", "join", "attach") && (r.wordAt(k+1, "yarn", "the", "colour") || r.peek(k+1).kind == wordToken && r.wordAt(k+2, "in"))
		if r.stitchWord(r.i+k) && !r.wordBefore(r.i+k, "next", "same", "first", "last", "each") && !r.number(k-1) {
			return false
		}
	}
	return joins
}

// remark keeps a line that is no instruction. A line that names stitches is doubted aloud.
func (r *reader) remark() {
	if r.words("note", ":") && r.peek(2).kind != lineToken && r.peek(2).kind != endToken {
		r.pass(2)
		r.keepLine()
		return
	}
	start, stitches := r.i, 0
	rows := false // "Even rows: sc across"
	for !r.ended() {
		rows = rows || r.word(":") && r.wordBefore(r.i, "row", "rnd")
		if r.i > start && r.word("skip", "rep", "*") || r.i > start && r.stitchWord(r.i) && !r.wordAt(1, "(") {
			stitches++
		}
		r.pass(1)
	}
	r.i = start
	text := r.keepLine()
	if stitches > 1 || stitches > 0 && rows {
		r.find(diag.Doubt, "remark", r.span(start), "give it a row heading if it is worked",
			"line taken as a remark, though it names stitches: %q", clip(text))
	}
}

// keepLine keeps the rest of the line as a remark between the rows.
func (r *reader) keepLine() string {
	start := r.i
	r.skipTo()
	text := r.textFrom(start)
	r.tree.Notes = append(r.tree.Notes, &Note{Span: r.span(start), Text: text})
	low := strings.ToLower(text)
	if m := lastRow.FindStringSubmatch(low); m != nil { // ends the rows that are worked every second time
		for i := len(r.tree.Rows) - 1; i >= 0; i-- {
			if row := r.tree.Rows[i]; row.Every && row.To == row.From {
				row.To, _ = strconv.Atoi(m[1])
				break
			}
		}
	}
	if noTurn.MatchString(low) && everyRow.MatchString(low) || oneSide.MatchString(low) {
		r.tree.NoTurn = true
	}
	return text
}

var (
	noTurn = regexp.MustCompile(`(?:not|n't|n’t|never|without) turn`)
	// oneSide says of a mosaic that it is worked from one side alone.
	oneSide = regexp.MustCompile(`\b(?:every|each|all) (?:rows?|rnds?|rounds?)\b.{0,24}\b(?:right side|rs)\b(?: of the work)?(?: is)?(?: always)?(?: facing|$|[,;.])|\b(?:always|only) (?:with|on|from) the (?:right side|rs)\b`)
)

// lastRow names the last row of a piece.
var lastRow = regexp.MustCompile(`^(?:row|rnd|round) (\d{1,3}) (?:is|will be) the last`)

// everyRow are words that say a thing for the whole piece.
var everyRow = regexp.MustCompile(`throughout|\b(?:each|every|all) (?:the )?(?:rows?|rnds?|rounds?)|never`)

// isFoundation sees "ch 20", "with A, ch 20", "chain 20", "20 ch", "make 20 chain", "magic ring", before the
// first row.
func (r *reader) isFoundation() bool {
	if r.row != nil && r.headed {
		return false
	}
	if r.word("foundation") {
		return true
	}
	k := 0
	if r.word("with") || r.lower(r.tok()) == "using" {
		for k < 8 && !r.wordAt(k, ",", "ch", "make", glued) && r.peek(k).kind != lineToken {
			k++
		}
		if r.wordAt(k, ",") {
			k++
		}
	}
	switch t := r.peek(k); {
	case r.ringAhead(k):
		return true
	case t.text == glued, t.text == "make", t.text == "magic", t.text == "cast":
		return true
	case t.text == "ch":
		next := r.peek(k + 1)
		return next.kind == numberToken || next.text == "n" || next.text == "x" || next.text == "a" || next.text == "("
	case k == 0 && t.kind == numberToken && r.chainAhead(): // with sizes as well
		return true
	case t.kind == numberToken:
		return r.wordAt(k+1, "ch") || r.wordAt(k+1, "n") && r.wordAt(k+4, "ch") || r.wordAt(k+1, "foundation")
	case t.text == "foundation":
		return true
	}
	return false
}

// ringAhead sees "6 sc in magic ring" k tokens on.
func (r *reader) ringAhead(k int) bool {
	if r.headed || !r.number(0) && !r.number(k) || !r.stitchWord(min(r.i+k+1, len(r.tokens)-1)) {
		return false
	}
	for j := k; j < k+9 && r.peek(j).kind != lineToken; j++ {
		if r.wordAt(j, "magic", "mr", "ring", "circle") && r.wordAt(j-1, "in", "a", "the", "magic") {
			return true
		}
	}
	return false
}

// chainNote reads "ch 3 counts as dc throughout" and "turning ch does not count as a st".
func (r *reader) chainNote() bool {
	start := r.i
	r.eat("note")
	r.fill(":", "s", "the")
	if !r.word("ch", made, madeOf, "turn", "tch", "beg") {
		r.i = start
		return false
	}
	n, kind, count, through := 0, "", Unsaid, false
	for !r.ended() && !r.word(".") {
		t := r.tok()
		switch {
		case n == 0 && (t.kind == numberToken || t.text == made || t.text == madeOf):
			n = t.n
		case t.text == "counts" || t.text == "count" || t.text == "counted":
			count = Counts
			if p := r.tokens[r.i-1].text; p == "not" || p == "never" || strings.HasSuffix(p, "n't") || strings.HasSuffix(p, "n’t") {
				count = CountsNot
			}
		case t.text == "through" || t.text == "throughout":
			through = true
		case kind == "":
			if k, ok := r.plainKind(r.i); ok {
				kind = k
			}
		}
		r.pass(1)
	}
	if count == Unsaid || r.row != nil && r.row.From > 0 && !through {
		r.i = start
		return false
	}
	for _, k := range r.o.Library.Kinds() {
		if kind == k.Name || kind == "" && k.Plain == k && (n == 0 || n == k.TurningChain) && k.TurningChain > 0 {
			r.tree.TchCounts[k.Name] = count
		}
	}
	r.fill(".")
	return true
}
