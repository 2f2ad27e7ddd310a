package syntax

import (
	"fmt"
	"strings"

	"strandway/model/diag"
)

// Label names the row as the trade writes it: "Row 4", "Rnds 5-9", "Foundation row"; "" for a line
// between rows.
func (r *Row) Label() string {
	word := "Row"
	if r.Round {
		word = "Rnd"
	}
	switch {
	case r.Named == "Foundation":
		return "Foundation"
	case r.Named == "Base":
		return "Foundation " + strings.ToLower(word)
	case r.Named != "" && r.From > 0:
		return fmt.Sprintf("%s %s %d", r.Named, strings.ToLower(word), r.From)
	case r.Named == "Edging":
		return r.Named
	case !r.Many.IsZero():
		return fmt.Sprintf("%s %s %ss", r.Named, r.Many, strings.ToLower(word))
	case r.Named != "":
		return r.Named + " " + strings.ToLower(word)
	case r.Every:
		s := fmt.Sprintf("%s %d and every other %s", word, r.From, strings.ToLower(word))
		if r.To > r.From {
			s += fmt.Sprintf(" to %s %d", word, r.To)
		}
		return s
	case len(r.List) > 0:
		return word + "s " + list(r.List)
	case r.Open:
		return fmt.Sprintf("%ss %d and up", word, r.From)
	case r.To > r.From:
		return fmt.Sprintf("%ss %d-%d", word, r.From, r.To) + r.numbersBySize()
	case r.From > 0:
		return fmt.Sprintf("%s %d", word, r.From) + r.numbersBySize()
	}
	return ""
}

// headingWords begin a row without a number, before "row" or "rnd".
var headingWords = map[string]string{"foundation": "Base", "base": "Base", "fd": "Base", "set-up": "Set-up", "setup": "Set-up",
	"next": "Next", "join": "Joining", "edging": "Edging", "last": "Last", "final": "Final", "border": "Border", "edge": "Edging", "trim": "Edging", "beg": "Beginning"}

// heading reads "Row 7:", "2nd rnd:", "Rows 4-9 (RS):", "R3", "5." and the like. It opens no row; without
// a heading the cursor stays.
func (r *reader) heading() (*Row, bool) {
	start := r.i
	row := &Row{}
	atLine := r.i == 0 || r.tokens[r.i-1].kind == lineToken || r.tokens[r.i-1].text == "|" || r.tokens[r.i-1].text == "•"
	if atLine && r.number(0) && r.wordAt(1, ".", ")") && (r.wordAt(2, "row", "rnd", "r") || r.peek(2).kind == ordinalToken && r.wordAt(3, "row", "rnd")) {
		r.pass(2) // the list number before the heading
	}
	if atLine && r.word("with", "using") && r.isYarn(1) && r.wordAt(2, ",") && (r.wordAt(3, "row", "rnd", "r") || r.peek(3).kind == ordinalToken) { // "With C, rnd 1: ..."
		row.Yarn = r.raw(r.peek(1))
		r.pass(3)
	}
	worded := true // a word says that this is a heading
	switch t := r.tok(); {
	case atLine && r.everyRow(row):
	case r.word("row", "rnd", "r") && (r.number(1) || r.peek(1).kind == ordinalToken || r.wordAt(1, "#", "no", "nos") && (r.number(2) || r.wordAt(2, ".") && r.number(3))):
		if t.text == "r" && r.src[t.start] != 'R' && !atLine {
			return r.noHeading(start)
		}
		row.Round = r.word("rnd")
		r.pass(1)
		r.fill("#", "no", "nos", ".")
		r.rowNumbers(row)
	case t.kind == ordinalToken && (r.wordAt(1, "row", "rnd") || r.wordAt(1, "(", "[") && r.peek(1).match > 0 && r.tokens[r.peek(1).match+1].text == "row" || r.wordAt(1, "(", "[") && r.peek(1).match > 0 && r.tokens[r.peek(1).match+1].text == "rnd" || r.wordAt(1, "to", "and", dash, "-", ",") && r.peek(2).kind == ordinalToken),
		r.word("first") && r.wordAt(1, "row", "rnd"):
		r.rowNumbers(row)
		if !r.word("row", "rnd") {
			return r.noHeading(start)
		}
		row.Round = r.word("rnd")
		r.pass(1)
	case atLine && r.number(0) && (r.wordAt(1, "row", "rnd") || r.wordAt(1, "-", dash, "to", "and", ",") && r.number(2) && r.wordAt(3, "row", "rnd")):
		r.rowNumbers(row)
		row.Round = r.word("rnd")
		r.pass(1)
	case atLine && r.number(0) && r.wordAt(1, ".", ")", ":") && r.peek(2).kind != lineToken && r.peek(2).kind != endToken:
		row.From, row.To = t.n, t.n
		r.pass(1)
		if r.word(")") && r.wordAt(1, "-", dash, "to") && r.number(2) && r.wordAt(3, ")") { // "9) - 13)"
			row.To = r.peek(2).n
			r.pass(4)
		}
		worded = false
	case atLine && r.number(0) && r.wordAt(1, "-", dash) && r.number(2) && r.wordAt(3, ".", ")", ":"):
		r.rowNumbers(row)
	case r.word("next", "last") && r.number(1) && r.manyRows(row):
	case headingWords[t.text] != "" && (r.wordAt(1, "row", "rnd") || t.text == "set-up" && r.wordAt(1, ":")):
		row.Named = headingWords[t.text]
		row.Round = r.wordAt(1, "rnd")
		r.pass(1)
		r.fill("row", "rnd")
		if r.number(0) && row.Named != "Next" && row.Named != "Base" {
			row.From, row.To = r.tok().n, r.tok().n
		}
		if r.number(0) {
			r.pass(1)
		}
	case atLine && r.word("edging", "border", "edge", "trim") && (r.wordAt(1, ":", dash, "-") || r.wordAt(1, "(") && r.peek(1).match > 0 && r.tokens[r.peek(1).match+1].text == ":"):
		row.Named, row.Round = headingWords[t.text], true
		r.pass(1)
	case atLine && r.namedHeading(row):
	default:
		return r.noHeading(start)
	}
	if !r.headingEnd(row, worded) {
		return r.noHeading(start)
	}
	row.Head = r.span(start)
	if r.is(lineToken) && !r.blankLineAt(r.i) && !r.headingAt(r.i+1) {
		r.pass(1)
	}
	return row, true
}

// headingAgain reads a heading that is written once more behind itself, as where a whole row was typed
// into one that had its number: the second counts.
func (r *reader) headingAgain(row *Row) *Row {
	start := r.i
	if row.From == 0 || !r.headingAt(start) {
		return row
	}
	again, ok := r.heading()
	if !ok || again.From != row.From || again.To != row.To {
		r.i = start
		return row
	}
	again.Head.Start = row.Head.Start
	return again
}

// namedHeading reads a heading of the writer's own among the rows: "Thumb hole round:", "Loop:". An instruction must follow.
func (r *reader) namedHeading(row *Row) bool {
	if !r.headed || !r.allDefined || r.defined[r.i] > 0 || !r.is(wordToken) || r.word("note", "special", "multiple") {
		return false
	}
	start := r.i
	k := 0
	for r.peek(k).kind == wordToken && k < 4 && !r.stitchWord(r.i+k) {
		k++
	}
	if k == 0 || !r.wordAt(k, ":", ")") {
		return false
	}
	r.pass(k + 1)
	ok := r.beginsItem() && !r.word("*")
	r.i = start
	if !ok || r.isYarn(0) {
		return false
	}
	last := k
	if r.wordAt(k-1, "row", "rnd") && k > 1 {
		last--
		row.Round = r.wordAt(k-1, "rnd")
	}
	row.Named = r.src[r.tok().start:r.peek(last-1).end]
	r.pass(k)
	return true
}

func (r *reader) noHeading(start int) (*Row, bool) {
	r.i = start
	return nil, false
}

// headingEnd reads the marks and the separator after a heading. Without a separator a stitch must follow.
func (r *reader) headingEnd(row *Row, worded bool) bool {
	separated := !worded
	for {
		switch {
		case r.marks(row):
			if r.tokens[r.i-1].text != ")" && r.tokens[r.i-1].text != "]" {
				separated = true
			}
			continue
		case r.is(signToken) && r.word(":", ".", dash, "-", ")", ";", "|", "~"), r.word("=") && worded:
			separated = true
			r.pass(1)
			continue
		case r.word("(") && r.tok().match > 0 && !r.number(1) && r.tokens[r.tok().match+1].text == ":": // "Row 6 (eyelets):"
			r.i = r.tok().match
			r.pass(1)
			continue
		case r.words("(", "cont", "d", ")"), r.words("(", "cont'd", ")"), r.words("(", "cont", ")"):
			r.skipTo(")")
			r.pass(1)
			separated = true
			continue
		}
		break
	}
	return separated || r.ended() || r.beginsItem()
}

func (r *reader) blankLineAt(i int) bool {
	return r.tokens[min(i+1, len(r.tokens)-1)].kind == lineToken || r.tokens[min(i+1, len(r.tokens)-1)].kind == endToken
}

// rowNumbers reads 7 | 4-9 | 4 to 9 | 8, 12, 16 | 3 and 5 | 3 and up | 4+.
func (r *reader) rowNumbers(row *Row) {
	isNumber := func(k int) bool {
		return r.number(k) || r.peek(k).kind == ordinalToken || r.wordAt(k, "first")
	}
	take := func() int {
		n := max(r.tok().n, 1) // "first" has no number of its own
		r.pass(1)
		return n
	}
	n := take()
	row.From, row.To = n, n
	wordThen := func(k int) int { // "Row 4 to Row 9"
		if r.wordAt(k, "r", "row", "rnd") && isNumber(k+1) {
			return k + 1
		}
		return k
	}
	switch {
	case r.word("-", dash) && r.number(1) && !r.tok().tight && !r.peek(1).tight && (r.stitchWord(r.i+2) || r.wordAt(2, "st") || r.wordAt(2, "ch", "inc", "dec")): // "Rd 1 - 8 sc"
	case r.word("-", dash, "to", "through", "thru") && isNumber(wordThen(1)):
		r.pass(wordThen(1))
		row.To = take()
		if r.word("(", "[") && r.rangesBySize(row) { // "10th to 18th (11th to 20th: 11th to 22nd)"
		} else if r.word("(", "[") && r.sizesHere() > 0 { // "Rows 2-20 (24, 28)": the last row by size
			r.rowsBySize(row, true)
		}
	case r.word("(") && len(r.o.Sizes) > 1 && (r.number(1) || r.peek(1).kind == ordinalToken) && r.wordAt(2, ",", ":", ")") && r.sizesHere() == len(r.o.Sizes)-1: // "Row 11 (13, 15)"
		r.rowsBySize(row, false)
	case r.andEvery(row):
	case r.word("+"), r.words("and", "up"), r.words("and", "over"), r.words("and", "above"), r.words("-", "end"), r.words(dash, "end"), r.words("to", "end") && r.wordAt(2, ":"):
		row.Open = true
		r.eat("and")
		r.eat("-")
		r.eat(dash)
		r.eat("to")
		r.pass(1)
	case r.word(",", "and") && isNumber(wordThen(1)) && !(r.number(1) && r.peek(2).tight && r.peek(2).kind == wordToken):
		row.List = []int{n}
		for r.word(",", "and") {
			k := 1
			if r.wordAt(k, "and") {
				k++
			}
			if k = wordThen(k); !isNumber(k) {
				break
			}
			r.pass(k)
			row.List = append(row.List, take())
		}
		row.To = row.List[len(row.List)-1]
		if r.andEvery(row) {
			row.To, row.List = row.From, nil
		}
	}
}

// marks reads (RS), (WS, B), (colour B), right side, (L only).
func (r *reader) marks(row *Row) bool {
	start := r.i
	bracketed := r.eat("(") || r.eat("[")
	side, yarn, got := byte(0), "", false
	var sizes []int
	for {
		r.fill("colour", "yarn", "with", "this", "is", "the")
		switch {
		case r.word("rs"), r.words("right", "side"), r.words("right-side"):
			side, got = 'R', true
		case r.word("ws"), r.words("wrong", "side"), r.words("wrong-side"):
			side, got = 'W', true
		case bracketed && r.sizeNames(&sizes):
			got = true
			r.i-- // the loop passes one
		case bracketed && r.isYarn(0):
			yarn, got = r.raw(r.tok()), true
		case bracketed && r.ownYarn(&yarn):
			got = true
			r.i-- // the loop passes one
		default:
			r.i = start
			return false
		}
		if r.word("right", "wrong") {
			r.pass(1)
		}
		r.pass(1)
		r.fill("facing", "row", "rnd")
		if !bracketed || !r.eat(",") {
			break
		}
	}
	if bracketed && !r.eat(")") && !r.eat("]") || !got {
		r.i = start
		return false
	}
	if !bracketed && !r.word(":", ".", ")", ";", dash, "-") && !r.ended() {
		r.i = start
		return false
	}
	if side != 0 {
		row.Side = side
	}
	if yarn != "" {
		row.Yarn = yarn
	}
	if sizes != nil {
		row.Sizes = sizes
	}
	return true
}

// isYarn sees the letter of a yarn k tokens on: A, B, MC, CC, CC2.
func (r *reader) isYarn(k int) bool {
	t := r.peek(k)
	if t.kind != wordToken {
		return false
	}
	switch raw := r.raw(t); len(raw) {
	case 1:
		return raw[0] >= 'A' && raw[0] <= 'Z'
	case 2:
		return raw == "MC" || raw == "CC" || raw[0] >= 'A' && raw[0] <= 'Z' && raw[0] != 'R' && raw[1] >= '1' && raw[1] <= '9'
	case 3:
		return raw[:2] == "CC" && raw[2] >= '1' && raw[2] <= '9'
	}
	return false
}

func (r *reader) open(row *Row, start int) {
	row.Span = diag.Span{Start: r.tokens[start].start, End: r.tokens[start].end}
	r.row, r.kind, r.loop, r.lie = row, "", BothLoops, LieUnsaid
	r.headed = r.headed || row.From > 0
	r.tree.Rows = append(r.tree.Rows, row)
}

func list(numbers []int) string {
	var b strings.Builder
	for i, n := range numbers {
		switch {
		case i == 0:
		case len(numbers) == 2:
			b.WriteString(" and ")
		default:
			b.WriteString(", ")
		}
		fmt.Fprint(&b, n)
	}
	return b.String()
}
