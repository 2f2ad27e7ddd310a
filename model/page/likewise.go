package page

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"strandway/model/syntax"
)

// likeForm sees words that send the reader to another piece: "Work as Front to Row 12", "Rep Rnds 1-6 of Head", "As for Head".
var likeForm = regexp.MustCompile(`(?i)^(?:(?:with|using) \S+,? )?(?:(?:work|make|made|begin|start|rep(?:eat)?|crochet|follow)\b.{0,24}?)?\b(?:(?:exactly |the )?same as|as|like|of|for|on)\b`)

// likeRows are the rows of the other piece that are meant.
var (
	likeRows = regexp.MustCompile(`(?i)\b(?:rows?|rnds?|rounds?|r)\s*(\d{1,3})(?:\s*(?:[-–—]|to|through|thru)\s*(?:(?:row|rnd|round|r)\s*)?(\d{1,3}))?|\b(\d{1,3})(?:st|nd|rd|th)(?:\s+(?:and|to)\s+(\d{1,3})(?:st|nd|rd|th))?\s+(?:row|rnd|round)s?`)
	likeTo   = regexp.MustCompile(`(?i)\b(?:to|until|through|thru|up to|till|including|ending with|ending after)\s+(?:and including\s+)?(?:the\s+)?(?:end of\s+)?(?:(?:row|rnd|round|r)\s*(\d{1,3})|(\d{1,3})(?:st|nd|rd|th)\s+(?:row|rnd|round))`)
)

// subHead are headings within a piece that belong to it.
var subHead = regexp.MustCompile(`(?i)\b(?:armholes?|neck|shoulders?|shap(?:e|ing)|edging|border|ribbing|rib|divide|increases?|decreases?|side|flap|hem|buttonholes?|strap)\b`)

// likeFor counts the rows that are alike.
var likeFor = regexp.MustCompile(`(?i)\bfor (?:the )?(?:first )?(\d{1,3}) (?:rows|rnds|rounds)`)

// likeStar stops at the mark that the other piece bears.
var likeStar = regexp.MustCompile(`(?i)\b(?:to|until|till)\s+(?:the\s+)?(?:\*+|†|star|asterisk)`)

// mostLikeWords bounds a sentence that does nothing but point to another piece.
const mostLikeWords = 22

// bareName is a piece's name as it is spoken of: "TENTACLES (make 8)" is "tentacles".
func bareName(name string) string {
	name, _, _ = strings.Cut(strings.ToLower(name), "(")
	return strings.TrimSpace(strings.TrimRight(strings.TrimSpace(name), ":-–— 0123456789"))
}

// another gives what of a piece a text speaks of, nil for none, and where its name ends.
func (r *reader) another(text string, but *piece) (found *stretch, end int) {
	low := strings.ToLower(text)
	longest := 0
	for _, p := range r.pieces {
		all := p.stretches()
		for i, part := range all {
			to := len(p.written)
			for _, next := range all[i+1:] {
				if !subHead.MatchString(next.name) {
					to = next.from
					break
				}
			}
			name := bareName(part.name)
			if p == but && i == len(all)-1 || part.from >= to || len(name) < 3 || len(name) <= longest {
				continue
			}
			for _, n := range []string{name, strings.TrimSuffix(name, "s"), strings.TrimPrefix(name, "first ")} {
				if at := wordAt(low, n); at >= 0 && len(n) >= 3 {
					found, end, longest = &stretch{p, part.from, to}, at+len(n), len(name)
				}
			}
		}
	}
	return found, end
}

// wordAt is where a word stands in a text, -1 if it does not.
func wordAt(text, word string) int {
	letter := func(i int) bool { return i >= 0 && i < len(text) && text[i] >= 'a' && text[i] <= 'z' }
	for from := 0; ; {
		i := strings.Index(text[from:], word)
		if i < 0 {
			return -1
		}
		if i += from; !letter(i-1) && !letter(i+len(word)) {
			return i
		}
		from = i + 1
	}
}

// headOf is the heading of a row with the remark in brackets behind it: "Row 1 (RS)"; "" without one.
func headOf(text string) string {
	n := len(strings.TrimRight(rowHead.FindString(text), " :.–—-(["))
	if n == 0 {
		return ""
	}
	return text[:n+len(headMark.FindString(text[n:]))]
}

var headMark = regexp.MustCompile(`^\s*[(\[][^)\]]{1,24}[)\]]`)

// sendsToAnother reports whether a line sends the reader to a piece that is written already.
func (r *reader) sendsToAnother(text string) bool {
	text = strings.TrimLeft(text[len(headOf(text)):], " :.–—-")
	if !likeForm.MatchString(text) || len(strings.Fields(text)) > mostLikeWords {
		return false
	}
	p, _ := r.another(text, nil)
	return p != nil && (asAnother.MatchString(text) || likeRows.MatchString(text) && !stitched.MatchString(text) || r.readable(text) < .5)
}

var (
	asAnother = regexp.MustCompile(`(?i)^(?:(?:with|using) \S+,? )?(?:(?:work|make|made|worked)\s+)?(?:exactly |the )?(?:same as|as|like)\b`)
	stitched  = regexp.MustCompile(`(?i)\b(?:in|into|each|next|across|skip|miss)\b`)
)

// likewise writes the rows of another piece where a sentence sends the reader there. The sentence stays as a remark.
func (r *reader) likewise(x *passage) bool {
	text := x.text()
	if at := strings.Index(text, ", then "); at > 0 && r.sendsToAnother(text[:at]) { // what follows is worked after those rows
		if !r.likewise(x.to(at + len(", then"))) {
			return false
		}
		rest := x.from(at + len(", then "))
		rest.remark = false
		r.open = rest
		r.close()
		return true
	}
	head := headOf(text)
	if !r.sendsToAnother(text) {
		return false
	}
	target := r.piece()
	anew := r.heading != nil && (target.begun || target.rows.Len() > 0)
	if from, _ := r.another(text, nil); anew && from != nil && !from.founds() { // it goes on with what stands there
		target.write(&passage{parts: []part{{r.heading.at, r.heading.text}}}, "Note: ")
		target.parts = append(target.parts, named{strings.TrimRight(r.heading.text, " :.-–—"), len(target.written)})
		r.heading, anew = nil, false
		return r.copyRows(target, from, x, head)
	}
	if anew {
		target = nil // the heading begins a new piece
	}
	from, end := r.another(text, target)
	if from == nil || head == "" && !anew && target.begun && target.last > 0 {
		return false
	}
	if anew {
		target = r.begin()
	} else if r.heading != nil {
		r.rename(target)
		target = r.piece()
	}
	if head != "" && likeRows.MatchString(text[len(head):]) {
		if first, last := likeRange(text[len(head):], head); first == last {
			target.begun = true
			target.write(&passage{parts: x.parts}, "Note: ")
			r.oneRowAs(target, from, x, head, first, text[end:])
			return true
		}
	}
	return r.copyRows(target, from, x, head)
}

// founds reports whether a stretch begins with a foundation of its own.
func (s *stretch) founds() bool {
	for _, w := range s.p.written[s.from:s.to] {
		text := w.text()
		if rest := text[len(headOf(text)):]; foundationAt(text) >= 0 || ringStart.MatchString(rest) || fromHook.MatchString(rest) && foundationAt(rest) >= 0 {
			return true
		}
		if rowHead.MatchString(text) {
			return false
		}
	}
	return false
}

// copyRows writes the rows of a stretch that a sentence means.
func (r *reader) copyRows(target *piece, from *stretch, x *passage, head string) bool {
	founded := target.begun
	target.begun = true
	target.write(&passage{parts: x.parts}, "Note: ")
	rest := x.text()[len(head):]
	first, last := likeRange(rest, head)
	star := likeStar.MatchString(rest)
	all := slices.Clone(from.p.written[from.from:from.to])
	for i, w := range all {
		if star && i > 0 && strings.HasSuffix(strings.TrimRight(all[i-1].text(), " ."), "*") {
			return true
		}
		n := 0
		if rowHead.MatchString(w.text()) || bareHead.MatchString(w.text()) {
			n = rowNumber(w.text())
		}
		switch k := lastNumber(w.text()); {
		case n == 0 && (first > 1 || founded), n > 0 && n < first && k < first:
			continue
		case n > last:
			if n > 0 {
				return true
			}
		case k > last:
			w = upTo(w, last)
		}
		if n > 0 {
			target.last = max(target.last, n)
		}
		if founded { // on a foundation of its own the counts are others
			own := len(headOf(w.text()))
			w = w.to(own + r.countAt(w.text()[own:]))
		}
		target.add(w)
	}
	return true
}

// likeRange is which rows a sentence means: from the first on, or those that it names.
func likeRange(text, head string) (first, last int) {
	first, last = 1, 1<<20
	if m := likeFor.FindStringSubmatch(text); m != nil && head == "" {
		last, _ = strconv.Atoi(m[1])
		return first, last
	}
	if m := likeTo.FindStringSubmatch(text); m != nil {
		last, _ = strconv.Atoi(m[1] + m[2])
		return first, last
	}
	if m := likeRows.FindStringSubmatch(text); m != nil {
		first, _ = strconv.Atoi(m[1] + m[3])
		if last = first; m[2]+m[4] != "" {
			last, _ = strconv.Atoi(m[2] + m[4])
		}
		return first, last
	}
	if head != "" {
		return rowNumber(head), lastNumber(head)
	}
	return first, last
}

// lastNumber is the last row number of a heading.
func lastNumber(text string) int {
	head := rowHead.FindString(text)
	if head == "" || unnumbered.MatchString(head) {
		return 0
	}
	all := firstNum.FindAllString(head, -1)
	if len(all) == 0 {
		return rowNumber(text)
	}
	n, _ := strconv.Atoi(all[len(all)-1])
	return n
}

// upTo is a row's passage with a range that ends earlier.
func upTo(x *passage, last int) *passage {
	text := x.text()
	head := rowHead.FindString(text)
	all := firstNum.FindAllStringIndex(head, -1)
	if len(all) < 2 {
		return x
	}
	at := all[len(all)-1]
	cut := x.to(at[0])
	cut.parts = append(cut.parts, part{x.parts[0].at, strconv.Itoa(last)})
	cut.parts = append(cut.parts, x.from(at[1]).parts...)
	return cut
}

// oneRowAs writes "Rows 2-40: As Row 2 of Back": the one row's words under the other heading, with the count said here.
func (r *reader) oneRowAs(target *piece, from *stretch, x *passage, head string, no int, count string) {
	for _, w := range from.p.written[from.from:from.to] {
		text := w.text()
		old := rowHead.FindString(text)
		if old == "" || no < rowNumber(text) || no > lastNumber(text) {
			continue
		}
		body := w.from(len(old))
		body = body.to(r.countAt(body.text()))
		out := x.to(len(head))
		out.parts = append(out.parts, part{x.parts[0].at, ": "})
		out.parts = append(out.parts, body.from(len(body.text())-len(strings.TrimLeft(body.text(), " :.–—-)"))).parts...)
		if count = strings.Trim(count, " .;,"); count != "" {
			out.parts = append(out.parts, part{x.parts[0].at, " (" + strings.Trim(count, "()") + ")"})
		}
		target.last = max(target.last, lastNumber(head))
		target.add(out)
		return
	}
}

// countAt is where the stated count begins in a row's words; their length if none is stated.
func (r *reader) countAt(body string) int {
	const lead = "Next row: "
	body = strings.TrimRight(body, " ")
	tree, _ := syntax.Read(lead+body, syntax.ReadOptions{Library: r.lib, UK: r.terms == "UK"})
	if len(tree.Rows) != 1 || len(tree.Rows[0].Count) == 0 {
		return len(body)
	}
	return len(strings.TrimRight(body[:max(0, tree.Rows[0].Count[0].Span.Start-len(lead))], " ([{–—-=:"))
}
