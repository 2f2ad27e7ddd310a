package syntax

import (
	"strings"

	"strandway/model/diag"
)

// yarnWords say what is done to a yarn.
var yarnWords = map[string]YarnDo{"with": With, "using": With, "continue": With, "join": JoinIn, "rejoin": JoinIn, "attach": JoinIn, "change": ChangeTo,
	"drop": DropIt, "fasten": CutIt, "break": CutIt, "cut": CutIt, "finish": CutIt, "end": CutIt, "tie": CutIt, "fo": CutIt, "pick": PickUpIt,
	"carry": CarryIt, "carrying": CarryIt, "hold": HoldLoop, "place": HoldLoop, "remove": HoldLoop, "secure": HoldLoop,
	"slide": HoldLoop, "slip": HoldLoop, "put": HoldLoop}

// yarn reads "with B", "join B in any corner", "change to B in last st", "drop A", "fasten off A", "pick up A
// at the right edge", "carry A up the side", "place loop on marker".
func (r *reader) yarn() []Node {
	start := r.i
	y := &Yarn{Do: yarnWords[r.tok().text]}
	r.pass(1)
	need := true // a yarn must be named
	switch y.Do {
	case With:
		if r.tokens[start].text == "continue" && !r.eat("with") {
			r.i = start
			return nil
		}
		if r.hookSize() {
			if !r.eat("and") && !r.isYarn(0) {
				return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
			}
			r.fill("with", "using", "yarn")
		}
		if r.words("rs", "facing") || r.words("ws", "facing") || r.words("right", "side") || r.words("wrong", "side") {
			return r.facing(start)
		}
	case JoinIn:
		if r.word("in") && r.isYarn(1) {
			r.pass(1)
		}
		need = false
	case ChangeTo:
		r.fill("back", "to", "in", "with")
		if r.word("colour") && !r.isYarn(1) {
			need = false
		}
	case CutIt:
		need = false
		if !r.cutting(start) {
			r.i = start
			return nil
		}
		if r.tokens[start].text == "finish" && r.tokens[r.i-1].text != "off" {
			return r.finishing(start)
		}
	case PickUpIt:
		if !r.eat("up") {
			r.i = start
			return nil
		}
	case HoldLoop:
		return r.holding(start)
	}
	from := r.i
	if r.wordAt(1, "colour", "yarn") {
		r.fill("next", "another", "contrast", "contrasting", "second", "different", "main", "nth", "each")
	}
	r.fill("colour", "yarn", "the", "unused", "new", "strand", "not", "of")
	if y.Do == CarryIt {
		r.eat("in", "use")
		need = r.i == from
	}
	if y.Do == ChangeTo && (r.word("after", "each", "as", "at") || r.word("in") && r.wordAt(1, "the")) { // "changing colour after each odd row in the order A, B, C"
		r.skipTo(".", ";", ")")
		return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
	}
	if !r.yarnName(y) && need {
		r.i = start
		return nil
	}
	if y.Do == JoinIn && y.Letter == "" && !r.wordBefore(r.i, "yarn", "colour", "new") {
		r.i = start
		return nil
	}
	r.fill("only", "alone")
	if y.Do == With && r.joinsAnywhere() {
		y.Do = JoinIn
	}
	r.yarnPlace(y)
	y.Span = r.span(start)
	nodes := []Node{y}
	for (y.Do == CutIt || y.Do == DropIt) && y.Letter != "" && (r.word("and") && r.isYarn(1) || r.word(",") && r.isYarn(1) && r.wordAt(2, ",", "and")) { // "fasten off A, B and C"
		r.pass(1)
		nodes = append(nodes, &Yarn{Span: diag.Span{Start: r.tok().start, End: r.tok().end}, Do: y.Do, Letter: r.raw(r.tok())})
		r.pass(1)
	}
	return nodes
}

// joinsAnywhere passes the join of "with B, join with sl st in any ch-2 sp": no
// round is closed in any place, so it is the yarn that is joined there.
func (r *reader) joinsAnywhere() bool {
	start := r.i
	r.eat(",")
	if !r.eat("join") {
		r.i = start
		return false
	}
	at := r.i
	r.fill("with", "a", "slst", "sl", "slip", "st")
	if !r.word("in", "to") || !r.wordAt(1, "any") {
		r.i = start
		return false
	}
	r.i = at
	return true
}

// hookSize passes "5 mm hook", "size H hook", "larger hook".
func (r *reader) hookSize() bool {
	for k := range 7 {
		switch {
		case r.wordAt(k, "hook", "hooks"):
			r.pass(k + 1)
			return true
		case r.wordAt(k, ",", ";", "ch") || r.peek(k).kind == lineToken:
			return false
		}
	}
	return false
}

// yarnName reads the letter or the name of a yarn: "B", "Wet Slate".
func (r *reader) yarnName(y *Yarn) bool {
	if r.isYarn(0) {
		y.Letter = r.raw(r.tok())
		r.pass(1)
		return true
	}
	if r.ownYarn(&y.Letter) {
		return true
	}
	for r.isYarnName(0) {
		y.Letter = strings.TrimSpace(y.Letter + " " + r.raw(r.tok()))
		r.pass(1)
	}
	return y.Letter != ""
}

// yarnHere sees the name of a yarn k tokens on.
func (r *reader) yarnHere(k int) bool {
	start, letter := r.i, ""
	r.pass(k)
	ok := r.ownYarn(&letter)
	r.i = start
	return ok
}

// isYarnName sees a capitalised word that is no word of the rows.
func (r *reader) isYarnName(k int) bool {
	t := r.peek(k)
	if t.kind != wordToken {
		return false
	}
	raw := r.raw(t)
	return len(raw) > 1 && raw[0] >= 'A' && raw[0] <= 'Z' && raw != strings.ToUpper(raw) && !grammar[t.text]
}

// yarnPlace reads where a yarn is joined or what else is said of it.
func (r *reader) yarnPlace(y *Yarn) {
	switch {
	case y.Do == JoinIn:
		r.fill("with", "a", "slst", "by")
		if r.words("sl", "st") || r.words("slip", "st") {
			r.pass(2)
		}
		if r.placeWord() {
			y.Place = r.place()
			if r.word("with") && (r.wordAt(1, "slst") || r.wordAt(2, "slst", "st") || r.wordAt(3, "st")) {
				r.fill("with", "a", "slst", "sl", "slip", "st")
			}
		}
	case y.Do == ChangeTo:
		if r.placeWord() {
			r.place()
		}
	case y.Do == PickUpIt:
		r.fill("from")
		if r.word("at", "in", "from") {
			r.edgeWords()
		}
	case y.Do == CarryIt:
		r.fill("loosely", "up", "across", "inside", "in", "the", "side", "edge", "work", "under", "st", "back", "of", "behind", "over")
	case r.word("at") && (r.wordAt(1, "beg", "start", "right", "left") || r.wordAt(1, "the") && r.wordAt(2, "beg", "start", "right", "left")):
		r.edgeWords()
	case y.Do == DropIt && r.word("at", "to"):
		r.edgeWords()
	case y.Do == CutIt && r.placeWord():
		r.place()
	}
}

// edgeWords passes "at the right edge", "at beg of row": where a yarn waits is worked out, not written.
func (r *reader) edgeWords() {
	for r.word("at", "to", "in", "the", "beg", "of", "row", "rnd", "right", "left", "edge", "side", "end", "other", "start", "that", "hand", "back", "wrong", "ws", "where", "it", "was", "left", "just", "worked") {
		r.pass(1)
	}
}

// cutting passes the words after "fasten", "cut" and their like.
func (r *reader) cutting(start int) bool {
	switch r.tokens[start].text {
	case "fasten", "tie", "end":
		if !r.eat("off") {
			return false
		}
	case "finish":
		if !r.eat("off") {
			return r.word("last", "the", "with", "off") || r.stitchWord(r.i)
		}
	default:
		r.eat("off")
	}
	if r.word("and") && r.wordAt(1, "block", "sew", "darn", "hide", "trim", "starch", "leave", "close", "secure", "press", "steam", "thread") {
		r.toSeparator()
		return true
	}
	r.eat("and")
	r.fill("cut", "break", "weave")
	r.fill("off", "the", "all", "both", "yarn", "yarns", "colour", "colours")
	if r.number(0) || r.word(counted) { // "cut 12-inch lengths and knot fringe in each row end"
		r.skipTo(".")
		return true
	}
	if r.word("in") && r.wordAt(1, "end", "all") {
		r.pass(2)
	}
	r.otherPiece() // "fasten off the first leg"
	return true
}

// carried reads "working over A": the stitches close round the yarn.
func (r *reader) carried(start int) []Node {
	y := &Yarn{Do: CarryIt}
	r.pass(2)
	r.fill("the", "unused", "yarn", "colour")
	r.yarnName(y)
	r.toSeparator()
	y.Span = r.span(start)
	return []Node{y}
}

// finishing reads "finish last sc with B" as a change to B.
func (r *reader) finishing(start int) []Node {
	for k := range 10 {
		if r.wordAt(k, ",", ";", ".") {
			break
		}
		if r.wordAt(k, "with") && (r.isYarn(k+1) || r.isYarnName(k+1)) {
			y := &Yarn{Do: ChangeTo}
			r.pass(k + 1)
			r.yarnName(y)
			y.Span = r.span(start)
			return []Node{y}
		}
	}
	r.i = start
	return nil
}

// holding reads "place loop on marker", "remove hook, secure loop with marker", "hold loop on a marker".
func (r *reader) holding(start int) []Node {
	for k := range 12 {
		if r.wordAt(k, "marker", "pin", "pm") && r.tokens[start].text != "place" || r.wordAt(k, "loop") {
			r.toSeparator()
			if r.tokens[start].text == "remove" && r.wordAt(1, "secure", "place", "hold") {
				r.pass(1)
				r.toSeparator()
			}
			return []Node{&Yarn{Span: r.span(start), Do: HoldLoop}}
		}
		if r.wordAt(k, ".", ";") || r.peek(k).kind == lineToken {
			break
		}
	}
	r.i = start
	if r.word("place", "remove") && r.wordAt(1, "marker", "a") {
		r.toSeparator()
		return []Node{&Note{Span: r.span(start), Text: r.textFrom(start)}}
	}
	return nil
}

// facing reads "with RS facing," which marks the row's side.
func (r *reader) facing(start int) []Node {
	side := byte('R')
	if r.word("ws", "wrong") {
		side = 'W'
	}
	r.pass(1)
	r.fill("side", "facing", "you")
	if r.row != nil && r.row.Side == 0 {
		r.row.Side = side
		return []Node{}
	}
	if r.row != nil && r.row.Side == side {
		return []Node{}
	}
	return []Node{&Along{Span: r.span(start), Edge: NextEdge, Face: side}}
}
