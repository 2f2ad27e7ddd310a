package syntax

import (
	"fmt"
	"slices"
	"unicode"

	"strandway/model/diag"
)

// unread passes what no rule takes: a remark when it names no stitch, else a fault with the nearest known word.
func (r *reader) unread(stop func() bool) Node {
	start, first := r.i, *r.tok()
	if r.word(")", "]", "}") {
		r.pass(1)
		r.find(diag.Fault, "bracket", r.span(start), "put the opening bracket in, or take this one out", "%q closes a bracket that was not opened", r.src[first.start:first.end])
		return nil
	}
	stitchy := false
	words := 0
	sentence := start == 0 || r.wordBefore(start, ".", "(", ":", "\n", ")")
	for !r.ended() && (r.i == start || !r.word(",", ";", ".", ")", "]", "}", "*", "**") && !(!sentence && stop())) {
		stitchy = stitchy || r.word("skip", "ch", "rep", "next", "each", "st") || r.stitchWord(r.i)
		words++
		r.pass(1)
	}
	text := r.textFrom(start)
	if first.kind == numberToken && start+1 < r.i {
		first = r.tokens[start+1]
	}
	near := r.nearest(first.text)
	if !stitchy && (near == "" || words > 2 || sentence && len(first.text) > 4 && first.text != near) {
		r.find(diag.Note, "remark", r.span(start), "", "taken as a remark: %q", clip(text))
		return &Note{Span: r.span(start), Text: text}
	}
	if r.row == nil {
		return &Note{Span: r.span(start), Text: text}
	}
	hint := ""
	var mend *diag.Mend
	if near != "" && near != first.text && !r.outside {
		hint = fmt.Sprintf("did you mean %q?", near)
		mend = &diag.Mend{Label: fmt.Sprintf("write %q", near), Span: diag.Span{Start: first.start, End: first.end}, Text: near}
	}
	if k, ok := r.o.Library.Read(first.text, r.otherTerms()); ok && first.kind == wordToken && first.n == 0 && !grammar[first.text] {
		if here, ok := r.o.Library.Word(k, r.terms()); ok && here != first.text {
			was, is := "UK", "US"
			if r.o.UK {
				was, is = "US", "UK"
			}
			hint = fmt.Sprintf("%s is a %s word; the pattern is in %s terms, where it is %s", first.text, was, is, here)
			mend = &diag.Mend{Label: fmt.Sprintf("write %q", here), Span: diag.Span{Start: first.start, End: first.end}, Text: here}
		}
	}
	r.find(diag.Fault, "unread", r.span(start), hint, "cannot read %q", clip(text)).Mend = mend
	return nil
}

// mended reads an unknown word at token i as the word of the grammar that it is but one letter from, once.
func (r *reader) mended(i int) bool {
	t := &r.tokens[i]
	if r.outside || soundWords[t.text] || t.kind != wordToken || t.misprint || len(t.text) < 4 || grammar[t.text] || fold[t.text] != "" || r.row == nil || r.stitchWord(i) || unicode.IsUpper(rune(r.src[t.start])) {
		return false
	}
	if n, _ := r.ownStitch(i); n > 0 {
		return false
	}
	near, ok := r.slips[t.text]
	if !ok {
		if r.slips == nil {
			r.slips = map[string]string{}
		}
		if len(r.slips) < maxNearests {
			for _, w := range slipWords {
				if diag.Distance(t.text, w) == 1 {
					near = w
					break
				}
			}
		}
		r.slips[t.text] = near
	}
	if near == "" {
		return false
	}
	t.text, t.misprint = near, true
	return true
}

// slipWords are the words of the rows that a slip of the pen is looked for in.
var slipWords = []string{"next", "each", "across", "around", "turn", "join", "skip", "first", "last"}

// soundWords are English words that are but one letter from those, and mean themselves.
var soundWords = set("text nest fast list lost cast past mast blast least beach reach teach peach fist thirst burn torn turned joint coin ship slip skin skim strip ground round")

// wordBefore reports whether one of the words stands before token i.
func (r *reader) wordBefore(i int, words ...string) bool {
	return i > 0 && slices.Contains(words, r.tokens[i-1].text)
}

// maxNearests bounds the search for near words in a text that is no pattern at all.
const maxNearests = 200

// nearest gives the known word that an unknown one may have been meant for; "" for none.
func (r *reader) nearest(word string) string {
	near, ok := r.nearests[word]
	if ok || len(r.nearests) >= maxNearests || len(word) > 24 {
		return near
	}
	if r.nearests == nil {
		r.nearests = map[string]string{}
	}
	near = r.o.Library.Nearest(word, r.terms())
	best := 3
	if near != "" {
		best = diag.Distance(word, near)
	}
	for _, name := range r.tree.Order {
		if d := diag.Distance(word, name); d < best && d < len(name) {
			near, best = name, d
		}
	}
	for _, name := range grammarWords {
		if len(name) > 3 && best > 1 && diag.Distance(word, name) < 2 {
			near, best = name, 1
		}
	}
	r.nearests[word] = near
	return near
}

func (r *reader) terms() string {
	if r.o.UK {
		return "uk"
	}
	return "us"
}

func (r *reader) otherTerms() string {
	if r.o.UK {
		return "us"
	}
	return "uk"
}

// keep keeps the words up to the next separator as a remark.
func (r *reader) keep() []Node {
	start := r.i
	r.pass(1)
	r.toSeparator()
	return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
}
