package syntax

import (
	"fmt"
	"strings"
)

// num reads 7 | 4n | 4n + 2 | 51 (57, 63), the last where sizes may stand.
func (r *reader) num(sizes bool) (Num, bool) {
	if r.word("(") && r.wordAt(1, "n") && r.wordAt(2, "+", "-", dash) && r.number(3) && r.wordAt(4, ")") { // (n - 1) times
		q := Num{A: 1, B: r.peek(3).n}
		if !r.wordAt(2, "+") {
			q.B = -q.B
		}
		r.pass(5)
		return q, true
	}
	letter := r.is(wordToken) && r.word("n") && r.raw(r.tok()) == "n"
	if !r.is(numberToken) && !letter {
		return Num{}, false
	}
	q := Plain(1)
	if !letter {
		q = Plain(r.tok().n)
		r.pass(1)
		letter = r.word("n") && r.tok().tight
	}
	if letter {
		q = Num{A: q.B}
		r.pass(1)
		if r.word("+", "-", dash) && r.number(1) {
			if q.B = r.peek(1).n; !r.word("+") {
				q.B = -q.B
			}
			r.pass(2)
		}
		return q, true
	}
	if sizes {
		r.sizeNumbers(&q, r.i > 1 && r.tokens[r.i-2].text == "ch")
	}
	return q, true
}

// sizeNumbers reads the "(57, 63)" after a number: one number for each further size, 0 or a dash where
// the size leaves the step out.
// In a row, one number alone in brackets is a count unless more of the row follows.
func (r *reader) sizeNumbers(q *Num, chain bool) {
	k := 0
	if r.wordAt(0, ",") && r.wordAt(1, "(", "[") && r.number(2) && r.wordAt(3, ",", ":") {
		k = 1 // "9, (10, 11)"
	}
	if !r.wordAt(k, "(", "[") {
		return
	}
	list := []int{q.B}
	for r.wordAt(k, "(", "[") {
		for k++; ; k += 2 {
			switch {
			case r.number(k):
				list = append(list, r.peek(k).n)
			case r.wordAt(k, "-", dash) && len(list) > 1:
				list = append(list, -1)
			default:
				return
			}
			if r.wordAt(k+1, ")", "]") {
				break
			}
			if !r.wordAt(k+1, ",", ":", "-", dash) {
				return
			}
		}
		k += 2
	}
	if n := len(r.o.Sizes); n != len(list) && len(list) == 2 && !chain && (r.peek(k).kind != wordToken || r.wordAt(k, "turn", "join")) {
		return
	}
	q.B, q.Sizes = list[0], list
	r.pass(k)
}

// String is the number as a heading writes it: "4 (6, 8)".
func (q Num) String() string {
	if q.Sizes == nil {
		return fmt.Sprint(q.B)
	}
	return fmt.Sprintf("%d (%s)", q.Sizes[0], strings.Trim(strings.Join(strings.Fields(fmt.Sprint(q.Sizes[1:])), ", "), "[]"))
}

// isOne reports whether the number is a plain 1.
func (q Num) isOne() bool { return q.A == 0 && q.B == 1 && q.Sizes == nil }

// times multiplies a number.
func (q Num) times(k int) Num {
	out := Num{A: q.A * k, B: q.B * k}
	for _, n := range q.Sizes {
		out.Sizes = append(out.Sizes, n*k)
	}
	return out
}

// plus adds to a number; a size that leaves the step out still does.
func (q Num) plus(k int) Num {
	out := Num{A: q.A, B: q.B + k}
	for _, n := range q.Sizes {
		if n >= 0 {
			n += k
		}
		out.Sizes = append(out.Sizes, n)
	}
	return out
}

// same reports whether two numbers are equal for all sizes.
func (q Num) same(p Num) bool {
	if q.A != p.A || q.B != p.B || len(q.Sizes) != len(p.Sizes) {
		return false
	}
	for i, n := range q.Sizes {
		if n != p.Sizes[i] {
			return false
		}
	}
	return true
}

// countWord sees "you should now have 45 tr".
func (r *reader) countWord() bool {
	for k := 1; k < 6; k++ {
		if r.number(k) {
			return true
		}
	}
	return false
}

// countAhead looks whether a stated count stands k tokens on and the row says nothing more but its ending.
func (r *reader) countAhead(k int) bool {
	m := r.mark()
	defer r.back(m)
	r.pass(k)
	if r.tallies() == nil {
		return false
	}
	for r.word(")", "]", "}", ".", ";", ",", "|", "turn", "join", "made", "total") {
		r.pass(1)
	}
	return r.ended() || r.word("ch", glued, "fasten", "do", "with", "change", "(", "cut", "break", "drop", slipStitch, "sl", "leave", "weave") || r.headingAt(r.i)
}

// countSentence sees a count that is a sentence of its own, "61 hdc.", after the row's instructions, or
// one that says so: "; 20 sc total".
func (r *reader) countSentence() bool {
	if r.row == nil || r.i == 0 || r.tokens[r.i-1].end <= r.row.Head.End {
		return false
	}
	switch r.tokens[r.i-1].text {
	case ".":
		return r.countAhead(0)
	case ";", ",":
		if r.tokens[r.i-1].text == ";" && r.countAhead(0) { // "; twenty stitches."
			return true
		}
		for k := 1; k < 5 && !r.wordAt(k, ",", ";", "."); k++ {
			if r.wordAt(k, "total", "made") || r.wordAt(k, "in") && r.wordAt(k+1, "all") {
				return true
			}
		}
	}
	return false
}

// tallyYarn reads the yarn of "12 A, 4 B" and "12 white, 4 blue".
func (r *reader) tallyYarn(t *Tally) bool {
	if r.isYarn(0) && !r.stitchWord(r.i) {
		t.Yarn = r.raw(r.tok())
		r.pass(1)
		return true
	}
	return r.is(wordToken) && r.ownYarn(&t.Yarn)
}

// ownHalf sees "half CL", where CL is a stitch of the pattern's own.
func (r *reader) ownHalf() bool {
	n, _ := r.ownStitch(min(r.i+1, len(r.tokens)-1))
	return n > 0
}

// bySize reads a count that gives one number for each size: "60, 72", "60/72 sts".
func (r *reader) bySize() (Num, bool) {
	n := len(r.o.Sizes)
	if n < 2 || !r.number(0) {
		return Num{}, false
	}
	list := []int{r.tok().n}
	k := 1
	for ; len(list) < n && r.wordAt(k, ",", "/", ":", ";") && r.number(k+1); k += 2 {
		list = append(list, r.peek(k+1).n)
	}
	if len(list) < n || r.wordAt(k, ",", "/", ":") {
		return Num{}, false
	}
	r.pass(k)
	return Num{B: list[0], Sizes: list}, true
}

// tallies reads "46 sc", "54 sts", "40 dc and 20 ch-1 sps", "16 hdc, 4 ch-2 sps", "9 sts per side".
func (r *reader) tallies() []Tally {
	var out []Tally
	for {
		start := r.i
		q, ok := r.bySize()
		if !ok {
			q, ok = r.num(true)
		}
		if !ok {
			r.i = start
			break
		}
		t := Tally{N: q, Span: r.span(start)}
		if !r.outside {
			t.Span.End = r.tokens[start].end
		}
		if r.word("block", "blocks") && r.tree.Units["block"] == nil { // of a piece from corner to corner
			r.pass(1)
			t.Each = true
		} else if r.word("half", "full", "part", "partial") && !(r.stitchWord(r.i) && !r.ownHalf()) && r.peek(1).kind == wordToken { // "2 half shells"
			r.pass(1)
			t.What, t.Name, t.Chains, _ = r.what()
			t.Each = true
		} else if r.tallyYarn(&t) {
			r.fill("st")
		} else if what, name, chains, ok := r.what(); ok {
			t.What, t.Name, t.Chains = what, name, chains
			r.fill("st") // "24 sc sts"
		} else if len(out) > 0 && r.is(wordToken) && (!grammar[r.tok().text] || r.word("row", "rnd")) && (r.wordAt(1, ",", ")", "]", ".", "and") || r.peek(1).kind == lineToken) { // "2 handles"
			r.pass(1)
			t.Each = true
		} else if r.is(wordToken) && !r.word("turn", "join", "ch", "and", "do", "fasten", "per", "in", "on", "total", "made") {
			r.i = start
			break
		}
		if t.What == InSp && r.is(wordToken) && !grammar[r.tok().text] && r.wordAt(1, ")", "]", ".") { // "two ch-60 handles"
			r.pass(1)
			t.Each = true
		}
		r.fill("total", "in", "all", "made", "worked", "around", "across", "rem")
		if r.word("after", "at", "by") && !r.wordAt(1, "each", "both") && (r.wordAt(1, "row", "rnd", "r", "end", "last", "the") || r.number(1)) { // "97 dc after Row 24"
			for r.is(wordToken) && !r.word("turn", "join", "and") || r.number(0) {
				r.pass(1)
			}
		}
		if r.word("and") && r.wordAt(1, "a", "one") && r.wordAt(2, "half") { // "19 groups and a half group at each end"
			t.Each = true
			for r.is(wordToken) && !r.word("turn", "join") {
				r.pass(1)
			}
		}
		if r.word("per", "on") || r.words("between") || r.words("at", "each") || r.words("at", "both") {
			t.Each = true
			for r.is(wordToken) {
				r.pass(1)
			}
		}
		out = append(out, t)
		if c := 0; r.word(",", "counting", "including") { // "24 tr, counting the 3 ch as 1 tr"
			if r.word(",") {
				c = 1
			}
			if r.wordAt(c, "not") {
				c++
			}
			if r.wordAt(c, "counting", "including", "include", "incl") {
				for !r.ended() && !r.word(")", "]", ".", ";") {
					r.pass(1)
				}
				break
			}
		}
		k := 0
		for r.wordAt(k, ",", "and", "+", "plus") {
			k++
		}
		if k == 0 || !r.number(k) && !r.wordAt(k, "n") {
			break
		}
		r.pass(k)
	}
	return out
}
