package page

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"strandway/model/pattern"
	"strandway/model/syntax"
)

// sort goes through the lines and puts each where it belongs.
func (r *reader) sort() {
	gap := true // a blank line stands before
	for i, l := range r.lines {
		if l.blank() {
			gap = true
			r.endSpecial()
			continue
		}
		if pageNumber.FindString(l.text) == l.text { // at the foot of a printed page
			r.prose = append(r.prose, l.text)
			continue
		}
		r.line(i, l, gap)
		gap = false
	}
	r.endSpecial()
	r.close()
	if r.heading != nil { // nothing came of it
		r.keep(*r.heading)
	}
	if len(r.waiting) > 0 {
		r.flush(r.piece())
	}
	r.finish()
}

// line sorts one line.
func (r *reader) line(i int, l line, gap bool) {
	if r.open != nil && !r.open.remark && r.hangs(l, gap) {
		r.open.add(l)
		return
	}
	if m := headAndRow.FindStringSubmatchIndex(l.text); m != nil && r.headsRow(l.text[:m[3]], l.text[m[4]:]) {
		r.section = instructions
		r.head(line{l.at, l.text[:m[3]]})
		l = line{l.at + m[4], l.text[m[4]:]}
		gap = true
	}
	switch {
	case r.p.Title == "" && r.isTitle(l):
		if r.p.Title = titleOf(l.text); r.p.Title != l.text {
			r.prose = append(r.prose, l.text)
		}
		r.told = true
	case len(r.pieces) == 0 && strings.Count(l.text, " = ") > 1 && !rowHead.MatchString(l.text): // abbreviations on one line
		r.close()
		r.fact(l, gap)
	case r.isStripe(l):
		r.stripe(l)
	case r.beginsRow(i, l):
		r.row(l)
	case r.foundation(l, gap):
	case r.isSection(i, l):
	case r.section == instructions && r.isPieceHead(i, l):
		r.head(l)
	case r.section == instructions:
		r.among(l, gap)
	case r.isPieceHead(i, l) && r.rowsFollow(i):
		r.section = instructions
		r.head(l)
	default:
		r.fact(l, gap)
	}
}

// headAndRow is the heading of a piece with its first row or foundation on the same line: "Wing (make 6): ch 7."
var headAndRow = regexp.MustCompile(`^(\p{Lu}[^:.]{1,40}):\s+((?i:(?:with \S{1,12}, )?(?:ch|chain|rnd|round|row|make|magic)\b).*)$`)

// headsRow reports whether words before a colon head a piece that begins behind it.
func (r *reader) headsRow(head, rest string) bool {
	if r.p.Title == "" || rowHead.MatchString(head) || !pieceWords.MatchString(head) {
		return false
	}
	return foundationAt(rest) >= 0 || rowHead.MatchString(rest) && rowNumber(rest) == 1
}

// endsSentence reports whether a text ends where a sentence or a row can.
func endsSentence(text string) bool {
	text = strings.TrimRight(text, `"”'’ *`)
	return text == "" || strings.ContainsRune(".!?)]}:", rune(text[len(text)-1]))
}

// hangs reports whether a line must be the rest of the row above it: the row has not come to a stop, or the
// line begins as no sentence does.
func (r *reader) hangs(l line, gap bool) bool {
	above := strings.TrimRight(r.open.text(), " ")
	if rowHead.MatchString(l.text) && !strings.HasSuffix(above, "rep") && !endsWithJoiner(above) {
		return false
	}
	c := l.text[0]
	switch {
	case strings.HasSuffix(above, ",") || strings.HasSuffix(above, ";") || strings.HasSuffix(above, "-") || endsWithJoiner(above):
		return true
	case gap || ownHead.MatchString(l.text) || ownLine.MatchString(l.text):
		return false
	case !endsSentence(above):
		return !r.startsAnew(l)
	}
	return c >= 'a' && c <= 'z' && !bareHead.MatchString(l.text) && r.readable(l.text) > .3
}

// joiners are words on which no row ends.
var joiners = regexp.MustCompile(`(?i)(?:^|[ ,;(*])(?:in|into|each|next|of|the|from|to|and|with|skip|sk|miss|rep|repeat|first|last|top|around|working|rows?|rnds?|rounds?|(?-i:a)|at|over|then|for)$`)

func endsWithJoiner(text string) bool { return joiners.MatchString(text) }

// startsAnew reports whether a line below a row without a stop is something of its own all the same.
func (r *reader) startsAnew(l line) bool {
	if c := l.text[0]; c >= 'a' && c <= 'z' {
		return false
	}
	if _, _, ok := sectionHead(l.text); ok {
		return true
	}
	return bareHead.MatchString(l.text) || r.readable(l.text) < .4
}

// readable is the share of a text that reads as instructions.
func (r *reader) readable(text string) float64 {
	const lead = "Next row: "
	tree, _ := syntax.Read(lead+text, syntax.ReadOptions{Library: r.lib, UK: r.terms == "UK"})
	covered := 0
	for _, row := range tree.Rows {
		for _, n := range row.Body {
			if _, note := n.(*syntax.Note); !note {
				covered += n.At().Len()
			}
		}
		for _, c := range row.Count {
			covered += c.Span.Len() + 6 // with the word of its unit
		}
	}
	return float64(covered) / float64(max(1, len(strings.TrimSpace(text))))
}

// beginsRow sees the heading of a row.
func (r *reader) beginsRow(i int, l line) bool {
	if m := rowHead.FindString(l.text); m != "" {
		rest := strings.TrimLeft(l.text[len(m):], " :.–—-)")
		if rest == "" && strings.Count(l.text, " ") < 3 {
			return r.rowBelow(i)
		}
		return r.section != gauge || r.readable(rest) > .4
	}
	m := bareHead.FindStringSubmatch(l.text)
	return m != nil && (r.readable(m[2]) > .5 || repBare.MatchString(m[2])) && r.section != materials
}

// repBare repeats rows that have numbers alone: "Rep 2 and 3."
var repBare = regexp.MustCompile(`(?i)^rep(?:eat)? \d{1,3}(?:\s*(?:and|&|,|-|–|to)\s*\d{1,3})*\.?$`)

// rowBelow reports whether the line below a bare heading holds its instructions.
func (r *reader) rowBelow(i int) bool {
	for _, l := range r.lines[i+1:] {
		if !l.blank() {
			return r.readable(strings.TrimLeft(l.text, "-•*– ")) > .3
		}
	}
	return false
}

// rowNumber is the first number in a row's heading, 0 without one.
func rowNumber(text string) int {
	head := rowHead.FindString(text)
	if head == "" {
		head = text
	}
	if unnumbered.MatchString(head) {
		return 0
	}
	if n := firstNum.FindString(head); n != "" {
		k, _ := strconv.Atoi(n)
		return k
	}
	word, _, _ := strings.Cut(strings.ToLower(head), " ")
	return ordinalNumbers[word]
}

// unnumbered begins a heading in which a number is not that of a row: "Next 4 rows".
var unnumbered = regexp.MustCompile(`(?i)^(?:next|following|last|final|all|every|each|even|odd)\b`)

// row opens a row.
func (r *reader) row(l line) {
	r.close()
	r.section = instructions
	r.open = &passage{}
	r.open.add(l)
}

// head keeps a piece heading until its rows come.
func (r *reader) head(l line) {
	r.close()
	if r.heading != nil {
		r.keep(*r.heading)
		if len(r.waiting) > 0 {
			r.flush(r.piece())
		}
	}
	r.heading, r.only = &l, ""
}

// among sorts a line that stands among the rows and begins none.
func (r *reader) among(l line, gap bool) {
	if r.open == nil {
		if r.defines(l) || !gap && r.special != nil {
			r.addSpecial(l)
			return
		}
	}
	if handwork.MatchString(l.text) {
		if r.open == nil || !r.open.remark || gap {
			r.close()
			r.open = &passage{remark: true}
		}
		r.open.add(l)
		return
	}
	if names, ok := r.sizesOnly(l.text); ok {
		r.close()
		r.only = names
		r.write(&passage{remark: true, parts: []part{part(l)}})
		return
	}
	if ownLine.MatchString(l.text) || ownHead.MatchString(l.text) && r.readable(l.text[len(ownHead.FindString(l.text)):]) > .6 {
		r.close()
		r.open = &passage{}
		r.open.add(l)
		return
	}
	share := r.readable(l.text)
	switch {
	case isProse(l.text) && share < .7:
		if r.open == nil || !r.open.remark || gap {
			r.close()
			r.open = &passage{remark: true}
		}
		r.open.add(l)
	case r.open != nil && !r.open.remark && (share > .6 || !gap && share > .45):
		r.open.add(l)
	case r.open != nil && r.open.remark && !gap:
		r.open.add(l)
	case share > .6 && len(r.pieces) > 0 && r.piece().begun:
		r.close()
		r.open = &passage{}
		r.open.add(l)
	default:
		r.close()
		r.open = &passage{remark: true}
		r.open.add(l)
	}
}

// ownLine begins an instruction between the rows.
var ownLine = regexp.MustCompile(`(?i)^(?:rep(?:eat)? (?:rows?|rnds?|rounds?|the last|last|these|\d+(?:st|nd|rd|th))|\[?rep(?:eat)?\s|(?:now )?fasten off|finish off|break off|end off|cut (?:the )?(?:yarn|thread)|continue (?:in|working|as|to rep|rep)|work (?:rows?|rnds?|rounds?) \d|(?:now |then )?(?:cont(?:inue)?|keep|go on) .{0,90}\buntil\b|(?:now |then )?(?:work|cont(?:inue)?) (?:even|straight|(?:another )?(?:\d+|two|three|four|five|six|seven|eight|nine|ten) (?:more )?(?:rows|rnds|rounds)|in \S+ (?:for|until))\b|with (?:rs|ws|right side|wrong side)|(?:skip|miss) .{0,60}\b(?:re)?(?:join|attach) |(?:re)?(?:join|attach) (?:the )?yarn\b.{0,60}\b(?:next|unworked|same|first|last)\b)`)

// ownHead is a heading of the writer's own with its instructions: "Loop: ch 12".
var ownHead = regexp.MustCompile(`^(?:\p{Lu}[\pL-]*(?: [\pL-]+){0,2})(?::| [-–—])\s|^[\pL]+\)\s`)

// handwork begins what is done with the finished piece.
var handwork = regexp.MustCompile(`(?i)^(?:seam|sew|stuff|weave|block|assemble|press|wash|pin|steam|fold|insert|embroider|darn|stitch the|hold the pieces|place marker|repeat for)\b`)

// onlySizes is a line for which sizes the rows below it are: "Sizes L and XL only:", "All sizes:".
var onlySizes = regexp.MustCompile(`(?i)^(?:for )?(?:sizes? )?(all|[\pL\d/-]+(?: [SML])?(?:(?:, | and |, and | & )[\pL\d/-]+(?: [SML])?)*)(?: sizes?)?(?: only)?\s*(?::|only\.?)$`)

// sizesOnly gives the sizes that a line names as those for which the rows below are; "" for all of them.
func (r *reader) sizesOnly(text string) (names string, ok bool) {
	m := onlySizes.FindStringSubmatch(text)
	if m == nil || len(r.p.Sizes) < 2 {
		return "", false
	}
	if strings.EqualFold(m[1], "all") {
		return "", true
	}
	for _, name := range sizeBetween.Split(m[1], -1) {
		if !slices.ContainsFunc(r.p.Sizes, func(s pattern.Size) bool { return strings.EqualFold(s.Name, name) }) {
			return "", false
		}
	}
	return m[1], true
}

var sizeBetween = regexp.MustCompile(`, and |, | and | & `)

// cutsYarn is an instruction after which nothing hangs on the hook.
var cutsYarn = regexp.MustCompile(`(?i)\b(?:fasten off|finish off|break off|end off|cut (?:the )?(?:yarn|thread))`)

// close writes the passage that is open, parted at the headings within it.
func (r *reader) close() {
	x := r.open
	r.open = nil
	if x == nil {
		return
	}
	for !x.remark {
		text := x.text()
		m := midHead.FindStringSubmatchIndex(text)
		if m == nil {
			break
		}
		r.rowAndTalk(x.to(m[2]))
		x = x.from(m[2])
	}
	r.rowAndTalk(x)
}

// sentenceEnd is where a sentence of a row ends and another begins.
var sentenceEnd = regexp.MustCompile(`[.!?)\]]["”]?\s+(\p{Lu})`)

// rowAndTalk writes one row, and the talk behind it as a remark.
func (r *reader) rowAndTalk(x *passage) {
	text := x.text()
	for _, m := range sentenceEnd.FindAllStringSubmatchIndex(text, -1) {
		if rest := text[m[2]:]; !x.remark && isProse(rest) && r.readable(rest) < .4 {
			r.write(x.to(m[2]))
			x = x.from(m[2])
			x.remark = true
			break
		}
	}
	r.write(x)
}

// talk are words of speech, which no row needs.
var talk = regexp.MustCompile(`(?i)\b(?:you|your|you'll|you're|you’ll|you’re|i|i'm|i'd|we|my|our|if|just|it|it's|it’s|is|are|be|will|should|can|don't|don’t|like|this|that|looks?|have|has|was|but|because|so|may|might|very|too|easy|lovely|nice|remember|count|see|keep|makes?|here|oops|hmm|yay|hooray|please|need|want|know|by now|when)\b`)

// isProse reports whether a text talks to the reader.
func isProse(text string) bool {
	words := len(strings.Fields(text))
	return words > 2 && len(talk.FindAllStringIndex(text, -1))*6 > words
}

var noteWord = regexp.MustCompile(`(?i)^note: *\S`)

// write puts a passage into the piece it belongs to.
func (r *reader) write(x *passage) {
	text := x.text()
	if r.likewise(x) {
		return
	}
	if x.remark {
		if r.rule(text); r.heading != nil && (len(r.pieces) == 0 || r.piece().begun) || len(r.pieces) == 0 {
			r.prose = append(r.prose, text)
			return
		}
		lead := "Note: "
		if noteWord.MatchString(text) {
			lead = ""
		}
		r.piece().write(x, lead)
		return
	}
	n := rowNumber(text)
	isRow := rowHead.MatchString(text) || bareHead.MatchString(text)
	p := r.piece()
	if isRow {
		rest := text[len(rowHead.FindString(text)):]
		founds := ringStart.MatchString(rest) || fromHook.MatchString(rest) && foundationAt(rest) >= 0 || foundationAt(strings.TrimLeft(rest, " :.–—-")) == 0
		if n > 0 && n <= p.last && n <= 1 && founds {
			p = r.begin()
		}
		if n > 0 {
			p.last = n
		}
	}
	if !isRow && r.heading != nil && p.begun && foundationAt(text) < 0 { // "HEAD" and "With A." before its first row
		r.waiting = append(r.waiting, x)
		return
	}
	if r.heading != nil {
		if p.begun {
			p.write(&passage{parts: []part{{r.heading.at, r.heading.text}}}, "Note: ")
			p.parts = append(p.parts, named{strings.TrimRight(r.heading.text, " :.-–—"), len(p.written)})
			r.heading = nil
		} else {
			r.rename(p)
		}
	}
	r.flush(p)
	if r.only != "" && isRow {
		x = r.forSizes(x)
	}
	p.begun = p.begun || isRow || foundationAt(text) >= 0
	p.ended = cutsYarn.MatchString(text)
	p.add(x)
}

// flush writes what has waited for the first row below a heading.
func (r *reader) flush(p *piece) {
	for _, x := range r.waiting {
		p.add(x)
	}
	r.waiting = nil
}

// forSizes writes into a row's heading for which sizes it is.
func (r *reader) forSizes(x *passage) *passage {
	head := strings.TrimRight(rowHead.FindString(x.text()), " :.–—-")
	if head == "" {
		return x
	}
	before, after := x.to(len(head)), x.from(len(head))
	before.parts = append(before.parts, part{after.parts[0].at, " (" + r.only + " only)"})
	before.parts = append(before.parts, after.parts...)
	return before
}
