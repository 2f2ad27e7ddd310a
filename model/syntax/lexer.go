package syntax

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

type tokenKind uint8

const (
	wordToken    tokenKind = iota // letters, digits inside, hyphens inside: sc, dc2tog, ch-2, V-st, 3-dc
	numberToken                   // 12, six
	ordinalToken                  // 2nd, third
	signToken                     // one sign
	lineToken                     // the end of a line
	endToken                      // the end of the text
)

// Words that carry a number are folded into one word and the number.
const (
	glued   = "ch#"  // ch3: an instruction
	made    = "ch-"  // ch-3: a chain or space that is there
	madeOf  = "#-ch" // 3-ch: the same, number first
	counted = "#-"   // 3-dc: the number and a stitch
	dash    = "—"
)

// token is one word or sign of the text. Its text is in lower case with the trade's spellings folded
// into one, so that the grammar knows only one; n is its number.
type token struct {
	text       string
	start, end int
	n          int
	match      int // of an opening bracket: the token that closes it, 0 if none does
	kind       tokenKind
	tight      bool // no blank before it
	misprint   bool // folded from a known misprint
}

// lexer cuts text into tokens. It remembers each word it has met.
type lexer struct {
	src    string
	tokens []token
	known  map[string]token
}

// lex cuts the whole text; it never fails. The last token is an endToken.
func lex(src string) []token {
	x := &lexer{src: src, tokens: make([]token, 0, len(src)/4+2), known: map[string]token{}}
	for i := 0; i < len(src); {
		i = x.next(i)
	}
	x.tokens = append(x.tokens, token{kind: endToken, start: len(src), end: len(src)})
	x.matchBrackets()
	return x.tokens
}

// next adds the token at i, if one begins there, and returns where it ends.
func (x *lexer) next(i int) int {
	c, size := utf8.DecodeRuneInString(x.src[i:])
	switch {
	case c == '\n':
		x.add(token{kind: lineToken, text: "\n"}, i, i+1)
		return i + 1
	case unicode.IsSpace(c), c == '\u00ad', c == '\ufeff': // soft hyphen, byte order mark
		return i + size
	case c >= '0' && c <= '9':
		return x.number(i)
	case unicode.IsLetter(c):
		return x.word(i)
	}
	return x.sign(i, c, size)
}

func (x *lexer) add(t token, start, end int) {
	t.start, t.end = start, end
	t.tight = start > 0 && !blank(x.src[start-1])
	if n := len(x.tokens); n > 0 && t.kind == wordToken && doubled[t.text] && x.tokens[n-1].text == t.text && x.tokens[n-1].kind == wordToken {
		x.tokens[n-1].end, x.tokens[n-1].misprint = end, true // "in in next st"
		return
	}
	x.tokens = append(x.tokens, t)
}

// number reads 12, 12th, 3-dc and 5-ch; "12dc" is two tokens.
func (x *lexer) number(i int) int {
	j, n := i, 0
	for j < len(x.src) && x.src[j] >= '0' && x.src[j] <= '9' {
		if n < 1<<24 {
			n = n*10 + int(x.src[j]-'0')
		}
		j++
	}
	rest := x.src[j:]
	if k := letters(rest); k > 0 {
		switch suffix := strings.ToLower(rest[:k]); {
		case suffix == "st" && n%10 == 1, suffix == "nd", suffix == "rd", suffix == "th", suffix == "d" && (n%10 == 2 || n%10 == 3):
			x.add(token{kind: ordinalToken, text: "nth", n: n}, i, j+k)
			return j + k
		case suffix == "t" && n == 1 && !strings.HasPrefix(rest[k:], "r"): // "1t st", a lost letter
			x.add(token{kind: ordinalToken, text: "nth", n: n, misprint: true}, i, j+k)
			return j + k
		}
		if n == 1 && strings.HasPrefix(rest, "st") {
			return x.emit(token{kind: numberToken, n: n}, i, j)
		}
	}
	if len(rest) > 1 && rest[0] == '-' {
		if k := letters(rest[1:]); k > 0 {
			w := strings.ToLower(rest[1 : 1+k])
			if f := fold[w]; f != "rnd" && f != "row" && w != "r" && w != "rw" {
				end := j + 1 + wordLength(rest[1:])
				t := token{kind: wordToken, text: counted, n: n}
				if fold[w] == "ch" || w == "ch" {
					t.text = madeOf
				}
				return x.emit(t, i, end)
			}
		}
	}
	return x.emit(token{kind: numberToken, n: n}, i, j)
}

func (x *lexer) emit(t token, start, end int) int {
	if t.kind == numberToken {
		t.text = x.src[start:end]
	}
	x.add(t, start, end)
	return end
}

// word reads a run of letters; Row4 and x8 are two tokens.
func (x *lexer) word(i int) int {
	end := i + wordLength(x.src[i:])
	raw := x.src[i:end]
	t, ok := x.known[raw]
	if !ok {
		t = lexeme(raw)
		x.known[raw] = t
	}
	if t.kind == endToken { // a heading word or "x" with its number hung on
		end = i + t.n
		t = lexeme(x.src[i:end])
	}
	if t.text == "w" && strings.HasPrefix(x.src[end:], "/") {
		t.text = "with"
		end++
	}
	if joined, to := x.brokenWord(raw, end); to > 0 {
		t, end = joined, to
	} else if to := dotted(x.src, i); to > end {
		t, end = lexeme(strings.ReplaceAll(x.src[i:to], ".", "")), to
	}
	x.add(t, i, end)
	return end
}

// dotted is the end of an abbreviation set with full stops, "d.c.", "h.d.c.", that begins at i; i if none does.
func dotted(s string, i int) int {
	end := i
	for k := i; k+1 < len(s) && (s[k] >= 'a' && s[k] <= 'z' || k == i && s[k] >= 'A' && s[k] <= 'Z') && s[k+1] == '.'; k += 2 {
		end = k + 2
	}
	if end == i+2 && (strings.HasPrefix(s[end:], "tr.") || strings.HasPrefix(s[end:], "tr ")) { // h.tr.
		return min(end+3, len(s))
	}
	if end < i+4 {
		return i
	}
	return end
}

// shortened reports whether the full stop to come belongs to an abbreviation: "ch. 2", "sk. 2 ch.".
func (x *lexer) shortened(end int) bool {
	n := len(x.tokens)
	if n == 0 || x.tokens[n-1].end != end-1 || end >= len(x.src)-1 {
		return false
	}
	if x.tokens[n-1].kind == wordToken && goesOn(x.src[end:]) {
		return true
	}
	if x.src[end] != ' ' && x.src[end] != ',' {
		return false
	}
	switch x.tokens[n-1].text {
	case "skip", "sl":
		return true
	case "ch":
		c := x.src[end+1]
		if x.src[end] == ',' {
			return true
		}
		if n > 1 && x.tokens[n-2].text == "turn" { // "in top of turning ch. 12 dc"
			return c >= 'a' && c <= 'z'
		}
		if n > 1 && (x.tokens[n-2].kind != signToken || c >= 'a' && c <= 'z') && (x.tokens[n-2].kind == wordToken || x.tokens[n-2].kind == numberToken || x.tokens[n-2].kind == ordinalToken) {
			return c >= 'a' && c <= 'z' && !x.headingAt(n-1)
		}
		return c >= '0' && c <= '9'
	}
	return false
}

// goesOn reports whether the sentence goes on behind a full stop: "1 tr. into next ch.; rep. from *".
func goesOn(rest string) bool {
	switch rest[0] {
	case ',', ';', ')', ']':
		return true
	case ' ':
		rest = rest[1:]
		return afterStop[rest[:letters(rest)]]
	}
	return false
}

// brokenWord joins a word that a line break has cut: "chang- ing". The halves must make a known word.
func (x *lexer) brokenWord(raw string, end int) (token, int) {
	if !strings.HasPrefix(x.src[end:], "-") {
		return token{}, 0
	}
	j := end + 1
	for j < len(x.src) && (x.src[j] == ' ' || x.src[j] == '\n') && j < end+3 {
		j++
	}
	k := letters(x.src[j:])
	if j == end+1 || k == 0 {
		return token{}, 0
	}
	t := lexeme(raw + x.src[j:j+k])
	if _, known := fold[strings.ToLower(raw+x.src[j:j+k])]; !known {
		return token{}, 0
	}
	t.misprint = true
	return t, j + k
}

// lexeme folds one word. A token of kind endToken says that the word must be cut after n bytes.
func lexeme(raw string) token {
	low := strings.ToLower(raw)
	t := token{kind: wordToken, text: low}
	if plain := plainLetters(low); plain != low {
		if known(plain) {
			low, t.text, t.misprint = plain, plain, plain != strings.ReplaceAll(low, "’", "'")
		}
	}
	if head := letters(low); head < len(low) {
		if f := fold[low[:head]]; f == "rnd" || f == "row" || low[:head] == "row" || low[:head] == "rnd" || low[:head] == "r" || low[:head] == "rw" || low[:head] == "x" {
			if digits(low[head:]) > 0 {
				return token{kind: endToken, n: head}
			}
		}
		if tail := strings.TrimPrefix(low[head:], "-"); fold[low[:head]] == "ch" || low[:head] == "ch" {
			if k := digits(tail); k > 0 && (k == len(tail) || tail[k] == '-') {
				t.text = glued
				if tail != low[head:] {
					t.text = made
				}
				for _, c := range tail[:min(k, 6)] {
					t.n = t.n*10 + int(c-'0')
				}
				return t
			}
		}
	}
	if n, ordinal, ok := spelled(low); ok && ordinal {
		t.kind, t.text, t.n = ordinalToken, "nth", n
		return t
	} else if ok {
		t.kind, t.n = numberToken, n
		return t
	}
	if to, ok := misprints[low]; ok {
		low, t.text, t.misprint = to, to, true
	}
	if to, ok := fold[low]; ok {
		t.text = to
	}
	return t
}

func (x *lexer) sign(i int, c rune, size int) int {
	end := i + size
	t := token{kind: signToken}
	switch {
	case c == '–' || c == '—' || c == '−' || c == '‒':
		t.text = dash
	case c == '-' && strings.HasPrefix(x.src[end:], "-"):
		t.text, end = dash, end+1
	case c == '*' && strings.HasPrefix(x.src[end:], "*"):
		t.text, end = "**", end+1
	case c == '.' && x.shortened(end):
		return end
	case c == '∗' || c == '＊' || c == '⁎':
		t.text = "*"
	case c == '“' || c == '”' || c == '″':
		t.text = `"`
	case c == '×':
		t.kind, t.text = wordToken, "x"
	case c == '&':
		t.kind, t.text = wordToken, "and"
	default:
		t.text = x.src[i:end]
	}
	x.add(t, i, end)
	return end
}

// matchBrackets finds the partner of every opening bracket. None reaches over a blank line or into the
// next headed row, so that a forgotten bracket spoils one row only.
func (x *lexer) matchBrackets() {
	var open []int
	for i, t := range x.tokens {
		switch t.text {
		case "(", "[", "{":
			open = append(open, i)
		case ")", "]", "}":
			if n := len(open); n > 0 {
				x.tokens[open[n-1]].match = i
				open = open[:n-1]
			}
		case "\n":
			if next := x.tokens[i+1]; next.kind == lineToken || next.kind == endToken || x.headingAt(i+1) {
				open = open[:0]
			}
		}
	}
}

// headingAt sees "Row 4" and "2nd rnd" at token i.
func (x *lexer) headingAt(i int) bool {
	a, b := x.tokens[i], x.tokens[min(i+1, len(x.tokens)-1)]
	switch a.text {
	case "row", "rnd", "r":
		return b.kind == numberToken
	}
	return a.kind == ordinalToken && (b.text == "row" || b.text == "rnd")
}

func blank(b byte) bool { return b == ' ' || b == '\n' || b == '\t' || b == '\r' }

// letters counts the bytes of the letters that s begins with.
func letters(s string) int {
	for i, c := range s {
		if !unicode.IsLetter(c) {
			return i
		}
	}
	return len(s)
}

func digits(s string) int {
	i := 0
	for i < len(s) && s[i] >= '0' && s[i] <= '9' {
		i++
	}
	return i
}

// wordLength takes letters and digits, with hyphens and apostrophes between them: V-st, ch-2, dc2tog, ch's.
func wordLength(s string) int {
	i := 0
	for i < len(s) {
		if c := s[i]; c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' && i > 0 {
			i++
			continue
		}
		c, size := utf8.DecodeRuneInString(s[i:])
		if unicode.IsLetter(c) || unicode.IsDigit(c) && i > 0 {
			i += size
			continue
		}
		if (c == '-' || c == '\'' || c == '’') && i > 0 && i+size < len(s) {
			d, _ := utf8.DecodeRuneInString(s[i+size:])
			if unicode.IsLetter(d) || c == '-' && d >= '0' && d <= '9' && strings.EqualFold(s[:i], "ch") {
				i += size
				continue
			}
		}
		break
	}
	return i
}
