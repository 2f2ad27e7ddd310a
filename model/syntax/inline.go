package syntax

import "strings"

// inlineName is the name of a stitch that a row describes by its yarn-overs instead of naming it.
const inlineName = "stitch described"

// inline reads "(yo, pull up a loop) 4 times in same st, yo, draw through all loops": one stitch, made as
// described in the place that the description names.
func (r *reader) inline() []Node {
	start := r.i
	var p *Place
	last := r.i
	for !r.ended() && !r.headingAhead() {
		switch {
		case r.placeWord() && r.wordAt(1, "next", "same", "first", "last", "st", "sp", "ring") && !r.wordAt(1, "loop") && !r.wordAt(2, "loop"):
			q := r.place()
			if p == nil || q.Ord == Same && p.Ord == Next {
				p = q
			}
			last = r.i
			continue
		case r.word("draw", "pull") && (r.wordAt(1, "through") || r.wordAt(2, "through")):
			r.skipTo(",", ";", ".", ")", "]")
			last = r.i
			if !r.recipeGoesOn() {
				return r.described(start, p)
			}
			continue
		case r.word("(", "[", ")", "]") || r.number(0) || r.word("time"):
			last = r.i + 1
		}
		r.pass(1)
	}
	r.i = max(last, start+1)
	return r.described(start, p)
}

// recipeGoesOn reports whether more yarn-overs follow: to be read on past a bracket's end.
func (r *reader) recipeGoesOn() bool {
	k := 0
	for r.wordAt(k, ",", ";", ")", "]", "and") || r.number(k) || r.wordAt(k, "time", "in", "same", "next", "st", "sp", "twice", "more", "rep") {
		k++
	}
	return r.wordAt(k, "yo", "yrh", "yoh", "insert", "draw", "pull")
}

func (r *reader) described(start int, p *Place) []Node {
	text := strings.TrimRight(r.textFrom(start), " ,;.")
	if p == nil {
		p = &Place{Span: r.span(start), N: Plain(1)}
	}
	u := &Unit{Span: r.span(start), Name: inlineName, Recipe: text}
	return []Node{&Make{Span: r.span(start), N: Plain(1), Kind: inlineName, Unit: u, Place: p}}
}
