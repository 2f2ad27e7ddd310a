package syntax

import (
	"fmt"
	"strings"
)

// seq writes instructions one after the other.
func (p *printer) seq(nodes []Node) string {
	var b strings.Builder
	for i, n := range nodes {
		if i > 0 {
			if rep, ok := nodes[i-1].(*Repeat); ok && rep.Ending != nil && !closes(n) {
				b.WriteString(". " + upper(p.node(n))) // or it would be read as part of the ending
				continue
			}
			b.WriteString(", ")
		}
		b.WriteString(p.node(n))
	}
	return b.String()
}

// closes reports whether a node ends the words "ending with ...".
func closes(n Node) bool {
	switch x := n.(type) {
	case *Turn:
		return !x.Not
	case *Join:
		return !x.Not
	}
	return false
}

// inGroup writes what is worked in one place.
func (p *printer) inGroup(nodes []Node) string {
	was := p.group
	p.group = true
	s := p.seq(nodes)
	p.group = was
	return s
}

func (p *printer) node(n Node) string {
	switch x := n.(type) {
	case *Make:
		return p.make(x)
	case *Skip:
		return p.skip(x)
	case *ChainN:
		return p.chain(x)
	case *Group:
		q := x.Place
		if q == nil {
			q = &Place{N: Plain(1)}
		}
		return lie(q) + "(" + p.inGroup(x.Body) + ") in " + p.place(q)
	case *Repeat:
		return p.repeat(x)
	case *Turn:
		if x.Not {
			return "do not turn"
		}
		return "turn"
	case *Join:
		return p.join(x)
	case *Yarn:
		return p.yarn(x)
	case *Note:
		if p.o.LeftHanded {
			return swapHands(p.note(x))
		}
		return p.note(x)
	case *RowRef:
		return p.rowRef(x)
	case *Along:
		edge := x.Edge
		if p.o.LeftHanded {
			edge = mirrored(edge)
		}
		s := "working along " + edgeNames[edge]
		if x.Face != 0 {
			s += " with " + string(x.Face) + "S facing"
		}
		return s
	}
	return ""
}

var edgeNames = [...]string{NextEdge: "next edge", LeftEdge: "left edge", RightEdge: "right edge", SideEdge: "side edge",
	LowerEdge: "opposite side of foundation ch", UpperEdge: "upper edge", AllRound: "entire edge"}

func (p *printer) make(x *Make) string {
	kind := p.kind(x.Kind)
	if x.Unit != nil {
		kind = p.unitName(x.Kind)
	}
	if x.Unit != nil && x.Kind == inlineName {
		return x.Unit.Recipe
	}
	n := ""
	if !x.N.isOne() {
		n = p.num(x.N) + " "
	}
	q := x.Place
	if q == nil {
		if p.group || x.N.isOne() {
			return n + kind
		}
		q = &Place{N: x.N}
		n = ""
	}
	if q.Ext.How == Evenly {
		if !x.N.isOne() { // 2 sc in each of 3 sts evenly
			return n + kind + " in each of " + p.num(q.Ext.N) + " " + p.words.sts + " evenly " + p.evenlyAlong(q)
		}
		if !q.Ext.N.IsZero() {
			n = p.num(q.Ext.N) + " "
		}
		return n + kind + " evenly " + p.evenlyAlong(q)
	}
	if x.Alike {
		n = p.num(q.N) + " "
	} else if p.bare(x, q) {
		if q.N.isOne() {
			return n + kind
		}
		return p.num(q.N) + " " + kind
	}
	prep := "in "
	if k, ok := p.o.Library.Kind(x.Kind); ok && x.Unit == nil {
		switch {
		case k.Post != 0:
			prep = "around "
		case k.Legs > 1 && !k.SamePlace && q.Ord == Next:
			prep = "over "
		}
	}
	// "3 dc in next 3 sts" would be one each
	each := q.Ord == Next && q.N.same(x.N) && !x.N.isOne() && q.What != InSp
	return lie(q) + n + kind + " " + prep + p.placeEach(q, each)
}

// bare reports whether a stitch is written without its place: what stands on no stitch of the row below, and
// groups that find their own places.
func (p *printer) bare(x *Make, q *Place) bool {
	if q.Ord != Next || q.What != InSt || q.Loop != BothLoops || q.Below+q.Row > 0 || q.Of != nil || !x.N.isOne() {
		return false
	}
	if x.Unit != nil {
		return x.Unit.Macro || ownPlace(x.Unit.Body)
	}
	k, ok := p.o.Library.Kind(x.Kind)
	return ok && k.Bases == 0
}

// ownPlace reports whether a group hangs on what was made before it, as a picot does.
func ownPlace(body []Node) bool {
	if len(body) == 0 {
		return false
	}
	_, chain := body[0].(*ChainN)
	return chain && worksChain(body)
}

func (p *printer) evenlyAlong(q *Place) string {
	switch {
	case q.What == InEnd:
		return "along side edge"
	case q.Ext.What == InCorner:
		return "to next corner"
	case p.round:
		return "around"
	}
	return "across"
}

func (p *printer) skip(x *Skip) string {
	if x.Row > 0 {
		return p.words.skip + " " + p.what(Next, x.N, x.What, x.Name, x.Chains) + p.deep(&Place{Row: x.Row})
	}
	switch {
	case x.Rest && x.N.IsZero():
		return "leave remaining " + p.words.sts + " unworked"
	case x.Rest:
		return "leave " + p.what(Last, x.N, x.What, x.Name, x.Chains) + " unworked"
	case x.Behind:
		return p.words.skip + " " + p.what(Next, x.N, x.What, x.Name, x.Chains) + " behind"
	case x.First:
		return p.words.skip + " " + p.what(First, x.N, x.What, x.Name, x.Chains)
	}
	return p.words.skip + " " + p.what(Next, x.N, x.What, x.Name, x.Chains)
}

func (p *printer) chain(x *ChainN) string {
	s := p.words.ch + " " + p.num(x.N)
	switch x.Counts {
	case Counts:
		as := "a " + p.words.st
		if len(x.As) > 0 {
			as = p.inGroup(x.As)
		}
		return s + " (counts as " + as + ")"
	case CountsNot:
		return s + " (does not count as a " + p.words.st + ")"
	}
	return s
}

func (p *printer) repeat(x *Repeat) string {
	if x.Star {
		p.stars++
		defer func() { p.stars-- }()
	}
	body := p.seq(x.Body)
	if x.Break > 0 && x.Break < len(x.Body) {
		body = p.seq(x.Body[:x.Break]) + " **, " + p.seq(x.Body[x.Break:])
	}
	end := ""
	if x.AtBreak {
		end = ", ending last " + p.words.rep + " at **"
	} else if x.Ending != nil {
		end = ", ending with " + p.seq(x.Ending)
	}
	if !x.Star {
		if x.Ext.How == Times {
			return "[" + body + "] " + p.times(x.Ext.N, false) + end
		}
		return "[" + body + "]" + p.extent(x.Ext) + end
	}
	mark := starMarks[min(p.stars, len(starMarks))-1]
	s := mark + body + "; " + p.words.rep + " from " + mark
	switch {
	case x.Ext.How == Times && x.Ext.Soft:
		s += " " + p.times(x.Ext.N.plus(-1), false)
	case x.Ext.How == Times:
		s += " " + p.times(x.Ext.N.plus(-1), true)
	default:
		s += p.extent(x.Ext)
	}
	return s + end
}

// starMarks open repeats within repeats, the outermost first.
var starMarks = [...]string{"*", "†", "‡"}

// times writes "twice", "3 times", "3 more times".
func (p *printer) times(q Num, more bool) string {
	if q.A == 0 && q.Sizes == nil && (q.B == 1 || q.B == 2) {
		s := [...]string{1: "once", 2: "twice"}[q.B]
		if more {
			s += " more"
		}
		return s
	}
	if more {
		return p.num(q) + " more times"
	}
	return p.num(q) + " times"
}

func (p *printer) extent(e Extent) string {
	switch e.How {
	case Across:
		if p.round {
			return " around"
		}
		return " across"
	case ToNext:
		if e.What == InCentre {
			return " to centre " + p.words.st
		}
		next := p.what(Next, Plain(1), e.What, e.Name, e.Chains)
		if !e.N.IsZero() {
			return " to " + strings.TrimPrefix(p.what(Next, e.N, InSt, "", 0), "next ") + " before " + next
		}
		return " to " + next
	case ToLast:
		return " to " + p.what(Last, e.N, e.What, e.Name, e.Chains)
	case UntilN:
		return " until there are " + strings.TrimPrefix(p.what(Next, e.N, e.What, e.Name, 0), "next ")
	case Evenly:
		return " " + p.num(e.N) + " times evenly"
	}
	return ""
}

func (p *printer) join(x *Join) string {
	switch {
	case x.Not:
		return "do not join"
	case x.Place != nil && x.Place.What == InRing:
		return "join to form a ring"
	case x.Place == nil && (x.With == slipStitch || x.With == ""):
		return "join"
	}
	with := x.With
	if with == "" {
		with = slipStitch
	}
	s := "join with " + p.kind(with)
	if x.Place != nil {
		s += " in " + p.place(x.Place)
	}
	return s
}

func (p *printer) yarn(x *Yarn) string {
	letter := x.Letter
	if letter == "" {
		letter = "yarn"
	}
	switch x.Do {
	case With:
		return "with " + letter
	case JoinIn:
		if x.Place != nil {
			return "join " + letter + " in " + p.place(x.Place)
		}
		return "join " + letter
	case ChangeTo:
		if x.Letter == "" {
			return "change colour"
		}
		return "change to " + x.Letter
	case DropIt:
		return "drop " + letter
	case PickUpIt:
		return "pick up " + letter
	case CarryIt:
		if x.Letter == "" {
			return "carry yarn not in use"
		}
		return "carry " + x.Letter
	case HoldLoop:
		return "place loop on marker"
	}
	return strings.TrimSpace("fasten off " + x.Letter)
}

// note writes a remark in brackets, marked as one where its words might be taken for instructions.
func (p *printer) note(x *Note) string {
	if x.Text == MagicRing {
		return MagicRing
	}
	t, finds := Read("Row 1: ("+x.Text+")", ReadOptions{Library: p.o.Library, UK: p.o.Terms == "uk"})
	if len(t.Rows) == 1 && len(t.Rows[0].Body) == 1 && len(t.Rows[0].Count) == 0 && finds.Faults() == 0 {
		if n, ok := t.Rows[0].Body[0].(*Note); ok && n.Text == x.Text && t.Rows[0].Hook == Unsaid {
			return "(" + x.Text + ")"
		}
	}
	return "(note: " + x.Text + ")"
}

func (p *printer) rowRef(x *RowRef) string {
	if x.Grow {
		s := "continue in this way until "
		if !x.Sts.IsZero() {
			return s + "there are " + p.num(x.Sts) + " " + p.words.sts
		}
		return s + p.num(x.For) + " rows have been worked"
	}
	word := "Row"
	if x.Round {
		word = p.words.rnd
	}
	s := p.words.rep + " "
	switch n := len(x.Rows); {
	case x.Last > 1:
		s += fmt.Sprintf("last %d %ss", x.Last, strings.ToLower(word))
	case x.Last == 1:
		s += "last " + strings.ToLower(word)
	case n > 2 && consecutive(x.Rows):
		s += fmt.Sprintf("%ss %d-%d", word, x.Rows[0], x.Rows[n-1])
	case n > 1:
		s += word + "s " + list(x.Rows)
	case n == 1:
		s += fmt.Sprintf("%s %d", word, x.Rows[0])
	}
	if q := x.Times; !q.IsZero() {
		times := p.times(q, x.More)
		if digits(times) > 0 && q.A == 0 && q.Sizes == nil && q.B < len(small) { // no two figures side by side
			times = strings.Replace(times, fmt.Sprint(q.B), small[q.B], 1)
		}
		s += " " + times
	}
	if x.Until != "" {
		s += " " + x.Until
	}
	if q := x.For; !q.IsZero() && x.InAll {
		s += " until " + p.num(q) + " rows have been worked"
	} else if !q.IsZero() {
		s += " for " + p.num(q) + " rows"
	}
	if !x.Sts.IsZero() {
		s += " until there are " + p.num(x.Sts) + " " + p.words.sts
	}
	for i, b := range x.But {
		s += [...]string{" but ", " and "}[min(i, 1)] + p.node(b.New) + " for " + p.node(b.Old)
	}
	return s
}

// small are the numbers that are written in words after a figure.
var small = [...]string{"0", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}

func consecutive(rows []int) bool {
	for i := 1; i < len(rows); i++ {
		if rows[i] != rows[i-1]+1 {
			return false
		}
	}
	return true
}
