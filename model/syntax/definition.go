package syntax

import (
	"slices"
	"strings"

	"strandway/model/diag"
)

// definitions reads the lines that define stitches, wherever they stand, so that the rows can use them.
func (r *reader) definitions() {
	r.defined = map[int]int{}
	for i := range r.tokens {
		if i > 0 && r.tokens[i-1].kind != lineToken || r.tokens[i].kind != wordToken && r.tokens[i].kind != numberToken {
			continue
		}
		if r.i = i; r.headingAt(i) {
			continue
		}
		if r.definition() {
			r.defined[i] = r.i
		}
	}
	r.i, r.allDefined = 0, true
}

// definition reads "Fan: (2 hdc, ch 2, 2 hdc) in one st." before or after the rows.
func (r *reader) definition() bool {
	start := r.i
	if r.words("special", "st", ":") || r.words("special", "st", dash) {
		r.pass(3)
	}
	name, body, ok := r.definedName()
	if !ok {
		r.i = start
		return false
	}
	m := r.mark()
	m.i = start
	r.i, r.row = body, nil
	u := &Unit{Name: r.inUS(name)}
	if recipe, ok := r.recipe(); ok {
		u.Recipe = recipe
		r.skipTo()
	} else {
		r.depth++ // a name defined by itself ends here
		u.Body = withoutNotes(r.items(func() bool { return r.ended() }))
		r.depth--
		bad := len(u.Body) == 0
		for _, f := range r.finds[m.finds:] {
			bad = bad || f.Severity == diag.Fault
		}
		if bad {
			r.back(m)
			return false
		}
		r.finds = r.finds[:m.finds]
		r.settle(u)
	}
	if u.Macro && r.rowsBefore(start) && !r.usedLater(name) { // "Handle: Sc in next 12 sts, ch 40, ..." between two rounds
		r.back(m)
		return false
	}
	u.Span = r.span(start)
	r.row = m.row
	r.define(name, u)
	return true
}

// rowsBefore reports whether a numbered row is written before token i.
func (r *reader) rowsBefore(i int) bool {
	for k := i - 1; k > 0; k-- {
		if t := &r.tokens[k-1]; (k == 1 || r.tokens[k-2].kind == lineToken) && (t.text == "row" || t.text == "rnd" || t.text == "r") && r.tokens[k].kind == numberToken {
			return true
		}
	}
	return false
}

// usedLater reports whether a name is written more than once: as a definition, and where it is used.
func (r *reader) usedLater(name string) bool {
	return strings.Count(strings.ToLower(r.src), name) > 1
}

// definedName reads "V-stitch (V-st):" and "Fan =" and says where the definition begins.
func (r *reader) definedName() (name string, body int, ok bool) {
	k := 0
	for k < 4 && (r.peek(k).kind == wordToken || k > 0 && r.number(k)) {
		k++
	}
	if k == 0 {
		return "", 0, false
	}
	switch {
	case r.wordAt(k, "(") && r.wordAt(k+2, ")") && r.wordAt(k+3, ":", "=", dash, "-"):
		name = r.lower(r.peek(k + 1))
		k += 3
	case r.wordAt(k, ":", "="):
		var words []string
		for j := range k {
			words = append(words, r.lower(r.peek(j)))
		}
		name = strings.Join(words, " ")
	default:
		return "", 0, false
	}
	for _, lead := range []string{"for ", "to make ", "to work ", "the ", "a ", "an "} {
		name = strings.TrimPrefix(name, lead)
	}
	first, _, _ := strings.Cut(name, " ")
	if fold[first] != "" && fold[first] != "group" && fold[first] != "loop" || grammar[first] || strings.Contains(name, "row") || strings.Contains(name, "rnd") ||
		name == "note" || first == "base" || name == "gauge" || name == "tension" || name == "multiple" || name == "sizes" {
		return "", 0, false
	}
	if kind, plain := r.o.Library.Read(name, r.terms()); plain && kind.Plain == kind && !r.isLump(kind.Name) {
		return "", 0, false
	}
	return name, r.i + k + 1, true
}

// recipe takes a definition by yarn-overs and loops for the recipe of one stitch. It is kept as written.
func (r *reader) recipe() (string, bool) {
	from := r.i
	if r.word("ch") && r.number(1) && r.wordAt(2, ",") && r.wordAt(3, "(", "[", "*", "yo", "yrh", "insert", "pull", "draw") { // "Ch 2, [yo, insert hook ...] twice"
		r.pass(3)
	}
	defer func() { r.i = from }()
	words := r.dropsLoop()
	if !r.word("yo", "yrh", "yoh", "insert", "draw", "pull", "(", "[", "*") && !words {
		return "", false
	}
	k := 0
	for ; r.peek(k).kind != lineToken && r.peek(k).kind != endToken; k++ {
		words = words || r.wordAt(k, "yo", "yrh", "yoh", "insert", "draw", "pull")
	}
	if !words {
		return "", false
	}
	return strings.TrimRight(strings.TrimSpace(r.src[r.tokens[from].start:r.peek(k-1).end]), "."), true
}

// dropsLoop sees the definition of a stitch that is closed by drawing the loop through its first: a popcorn.
func (r *reader) dropsLoop() bool {
	k := 0
	for r.wordAt(k, "work", "make", "ch", ",") || r.number(k) {
		k++
	}
	if k == 0 || !r.stitchWord(min(r.i+k, len(r.tokens)-1)) {
		return false
	}
	for ; r.peek(k).kind != lineToken && r.peek(k).kind != endToken; k++ {
		if r.wordAt(k, "finish", "complete", "close") && r.wordAt(k+1, "as", "like") {
			return true
		}
		if (r.wordAt(k, "draw", "pull", "drop", "remove") || r.wordAt(k, "take") && r.wordAt(k+1, "hook")) && (r.wordAt(k+1, "the", "loop", "hook", "dropped", "this", "through") || r.wordAt(k+2, "loop", "hook")) {
			return true
		}
	}
	return false
}

// define adds a named group, and its words to those that are looked for first.
func (r *reader) define(written string, u *Unit) {
	if !slices.Contains(r.tree.Order, u.Name) {
		r.tree.Order = append(r.tree.Order, u.Name)
		r.ownWords(written, u.Name)
	}
	r.tree.Units[u.Name] = u
}

// ownName is a name that the pattern itself has defined.
type ownName struct {
	words []string // as written, in lower case
	name  string   // of the Unit
}

func (r *reader) ownWords(written, name string) {
	if words := strings.Fields(written); len(words) > 0 {
		r.own[words[0]] = append(r.own[words[0]], ownName{words, name})
	}
}

// inUS puts the stitch within a name such as "3-tr cluster" into US terms.
func (r *reader) inUS(written string) string {
	n := digits(written)
	if n == 0 || n == len(written) || written[n] != '-' {
		return written
	}
	kind, rest, more := strings.Cut(written[n+1:], " ")
	if k, ok := r.lookUp(kind); ok && more {
		return written[:n+1] + k + " " + rest
	}
	return written
}

// ownUnits reads the designer's own stitches given by the options; their nodes have no place in the rows.
func (r *reader) ownUnits() {
	names := make([]string, 0, len(r.o.Units))
	for name := range r.o.Units {
		names = append(names, name)
	}
	slices.Sort(names)
	for _, name := range names {
		low := strings.ToLower(strings.TrimSpace(name))
		if u := r.aside(r.o.Units[name], low, r.o.UK); u != nil {
			u.Name = r.inUS(low)
			r.tree.Units[u.Name] = u
			r.ownWords(low, u.Name)
		}
	}
}

// aside reads the definition of a group that stands outside the rows; nil if it cannot be read.
func (r *reader) aside(text, name string, uk bool) *Unit {
	o := r.o
	o.UK, o.Units = uk, nil
	in := &reader{src: text, tokens: lex(text), o: o, outside: true, kinds: map[string]string{}, own: r.own,
		tree: &Tree{UK: uk, Units: r.tree.Units, TchCounts: map[string]Counting{}}}
	if r.outside && r.depth > 4 {
		return nil
	}
	in.depth = r.depth + 1
	if u := r.filet(name, text); u != nil {
		return u
	}
	u := &Unit{Name: name}
	if recipe, ok := in.recipe(); ok {
		u.Recipe = recipe
		return u
	}
	u.Body = withoutNotes(in.items(func() bool { return in.is(endToken) }))
	if len(u.Body) == 0 || in.finds.Faults() > 0 {
		return nil
	}
	in.settle(u)
	return u
}

// unit finds a named group: the pattern's own, or one of the trade's standard ones.
func (r *reader) unit(name string) *Unit {
	if u := r.tree.Units[name]; u != nil {
		return u
	}
	return nil
}

// standardUnit makes the trade's standard group of that name known.
func (r *reader) standardUnit(name string) bool {
	if r.tree.Units[name] != nil {
		return true
	}
	if r.standard == nil {
		r.standard = r.o.Library.Units("us")
	}
	def, ok := r.standard[name]
	if !ok {
		return false
	}
	u := r.aside(def, name, false)
	if u == nil {
		return false
	}
	r.tree.Units[name] = u
	return true
}

// settle turns "(2 dc, ch 1, 2 dc) in st" or "5 dc in same st" into a body without its place; what
// finds its own places is a macro.
func (r *reader) settle(u *Unit) {
	if len(u.Body) == 1 {
		switch x := u.Body[0].(type) {
		case *Group:
			u.Body = x.Body
			return
		case *Make:
			if x.Place != nil {
				y := *x
				y.Place = nil
				u.Body = []Node{&y}
			}
			return
		}
	}
	for _, n := range u.Body {
		switch x := n.(type) {
		case *Skip:
			u.Macro = true
		case *Make:
			u.Macro = u.Macro || x.Place != nil && x.Place.Ord == Next && x.Place.What != InRing
		case *Group:
			u.Macro = u.Macro || x.Place.Ord == Next
		}
	}
	if u.Macro {
		r.placed(u.Body)
	}
}

func withoutNotes(nodes []Node) []Node {
	return slices.DeleteFunc(nodes, func(n Node) bool { _, note := n.(*Note); return note })
}
