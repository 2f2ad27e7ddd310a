package syntax

import "strings"

// filet gives the meshes of filet crochet, "sp" and "bl", what their definitions say of them in alternatives: a space
// passes what a block or a space below has there, a block fills it.
func (r *reader) filet(name, text string) *Unit {
	space := false
	switch name {
	case "sp", "space", "open mesh", "om", "o":
		space = true
	case "bl", "block", "blk", "solid mesh", "sm", "cm", "closed mesh", "x":
	default:
		return nil
	}
	low := strings.ToLower(text)
	if !space && !strings.Contains(low, "over") && !strings.Contains(low, " or ") || space && !strings.Contains(low, "ch") {
		return nil
	}
	in := &reader{src: text, tokens: lex(text), o: r.o, outside: true, kinds: map[string]string{}, own: r.own, tree: &Tree{}}
	n, kind := 0, ""
	for !in.is(endToken) {
		switch {
		case kind == "" && in.stitchWord(in.i) && !in.word("ch", "sp"):
			kind, _ = in.stitch()
			continue
		case in.word(glued, made, madeOf) && n == 0:
			n = in.tok().n
		case in.word("ch") && n == 0 && in.number(1):
			n = in.peek(1).n
		case in.number(0) && in.wordAt(1, "ch") && n == 0:
			n = in.tok().n
		}
		in.pass(1)
	}
	if n == 0 || kind == "" {
		return nil
	}
	u := &Unit{Name: name, Macro: true}
	next := func(n int, what What) *Place { return &Place{N: Plain(n), What: what} }
	if space {
		u.Body = []Node{&ChainN{N: Plain(n)}, &Skip{N: Plain(n), What: InStCh}, &Make{N: Plain(1), Kind: kind, Place: next(1, InSt)}}
	} else {
		u.Body = []Node{&Make{N: Plain(1), Kind: kind, Place: next(n, InStCh)}, &Make{N: Plain(1), Kind: kind, Place: next(1, InSt)}}
	}
	return u
}
