package work

import (
	"fmt"
	"regexp"
	"slices"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// step is one row to be worked: a written row under the number it has now.
type step struct {
	row    *syntax.Row
	source int            // index of the written row in the tree
	count  []syntax.Tally // the stated count, which a row worked again under another number need not have
	under  int            // index of the row under whose heading it is worked: its own, or one that repeats it
	no     int
	*written
	head     []syntax.Node  // what of the row was the foundation
	body     []syntax.Node  // what is worked, the row's ending left out
	letter   string         // the yarn its heading names
	lead     []*syntax.Yarn // yarn words said before the row: on a line of its own, or where the row is referred to
	pend     *syntax.ChainN // "ch 3, turn" at the end of the row before
	shape    fabric.Shape
	turned   bool
	ws       bool
	backward bool
	usesTch  bool // the next row works into the top of this row's turning chain
	edgeLoop int  // the next row ends in a space of so many chains; 0 where it does not say of how many, -1 where it ends in none
}

// written is what is computed once for a written row, however often it is repeated.
type written struct {
	body    []syntax.Node // without its ending
	tail    []syntax.Node // turn, join, "ch 3" before a turn, fasten off
	ref     *syntax.RowRef
	work    bool // it makes stitches
	tch     bool // it works into the top of the turning chain below
	endsIn  int  // its last stitch goes into a space of so many chains, see step.edgeLoop
	travels bool // slip stitches at its start only move along
	lastTop bool // its last stitch goes into the top of the turning chain, as a remark says
	climbs  bool // they do so after a first chain, up to another: "ch 1, sl st in next 3 dc, ch 3"
	turn    turnWord
	face    byte // the side its words say is facing, 0 if none
}

// maxRows is the most rows a piece is unfolded to.
const maxRows = 100_000

func (w *worker) look(row *syntax.Row) *written {
	if r, ok := w.written[row]; ok {
		return r
	}
	r := &written{ref: refOf(row), work: hasWork(row.Body), turn: turnsOf(row.Body), face: row.Side}
	r.body, r.tail = splitEnd(restFirst(row.Body))
	r.endsIn = spaceAtEnd(r.body)
	r.tch = anyNode(row.Body, func(n syntax.Node) bool {
		m, ok := n.(*syntax.Make)
		return ok && m.Place != nil && m.Place.What == syntax.InTch
	})
	r.travels = anyNode(row.Body, func(n syntax.Node) bool {
		m, ok := n.(*syntax.Make)
		return ok && m.Kind != slipStitch
	})
	r.climbs = climbsAgain(r.body)
	r.lastTop = anyNode(row.Body, func(n syntax.Node) bool {
		note, ok := n.(*syntax.Note)
		return ok && lastInTop.MatchString(note.Text)
	})
	for _, n := range row.Body {
		if a, ok := n.(*syntax.Along); ok && a.Face != 0 && r.face == 0 {
			r.face = a.Face
		}
	}
	w.written[row] = r
	return r
}

// checkRange compares "Rows 4-15: rep Rows 2 and 3 six times" with itself.
func (w *worker) checkRange(row *syntax.Row, ref *syntax.RowRef, have, rows int) {
	if times := w.num(ref.Times); times > 0 && times*rows != have && !(ref.More && (times+1)*rows == have) {
		w.say(diag.Finding{Severity: diag.Fault, ID: "range", Row: rangeLabel(row), Span: row.Span,
			Message: fmt.Sprintf("rows %d-%d are %d rows, but %d rows %d times make %d", row.From, row.To, have, rows, times, times*rows),
			Hint:    fmt.Sprintf("rows %d-%d, or %d times", row.From, row.From+times*rows-1, have/rows)})
	} else if have > rows && have%rows != 0 && ref.Until == "" && !row.Open {
		w.say(diag.Finding{Severity: diag.Doubt, ID: "range", Row: rangeLabel(row), Span: row.Span,
			Message: fmt.Sprintf("rows %d-%d end in the middle of the %d-row repeat", row.From, row.To, rows),
			Hint:    fmt.Sprintf("end at row %d, or say which row it ends with", row.To-have%rows)})
	}
}

func rangeLabel(row *syntax.Row) string {
	if row.To > row.From {
		return fmt.Sprintf("%ss %d-%d", rowLabel(row, 0), row.From, row.To)
	}
	return rowLabel(row, row.From)
}

// lastInTop is a remark about where the last stitch falls.
var lastInTop = regexp.MustCompile(`(?i)\blast\b.{0,24}\b(?:top|turning|tch|t-ch|ch-?\d|\d ?ch)\b`)

// climbsAgain sees a chain of one, slip stitches, and the chain that stands for a stitch where they lead.
func climbsAgain(body []syntax.Node) bool {
	if len(body) < 3 {
		return false
	}
	c, ok := body[0].(*syntax.ChainN)
	if !ok || c.N.B != 1 {
		return false
	}
	i := 1
	for ; i < len(body); i++ {
		if m, ok := body[i].(*syntax.Make); !ok || m.Kind != slipStitch || m.Place == nil || m.Place.Ord == syntax.Each {
			break
		}
	}
	if i == 1 || i == len(body) {
		return false
	}
	c, ok = body[i].(*syntax.ChainN)
	return ok && c.N.B > 1
}

// refOf gives the reference of a row that is nothing but "rep Rows 2 and 3".
func refOf(row *syntax.Row) *syntax.RowRef {
	var ref *syntax.RowRef
	for _, n := range row.Body {
		switch x := n.(type) {
		case *syntax.RowRef:
			if ref == nil {
				ref = x
			}
		case *syntax.Yarn, *syntax.Note, *syntax.Turn:
		default:
			return nil
		}
	}
	return ref
}

// aroundRef parts the yarn words of a row that repeats others: what holds for every one of them, and what is done after
// the last ("rep Rows 2 and 3 twice. Fasten off B.").
func aroundRef(body []syntax.Node) (lead []*syntax.Yarn, ending []syntax.Node) {
	after := false
	for _, n := range body {
		switch x := n.(type) {
		case *syntax.RowRef:
			after = true
		case *syntax.Yarn:
			switch x.Do {
			case syntax.CutIt, syntax.DropIt, syntax.HoldLoop, syntax.ChangeTo:
				if after {
					ending = append(ending, x)
					continue
				}
			}
			lead = append(lead, x)
		}
	}
	return lead, ending
}

// yarnOver is the yarn in which a row repeats others, whatever they were worked in: that of the words before "rep", or of
// its heading; "" where it names none.
func yarnOver(heading string, lead []*syntax.Yarn) string {
	for _, y := range lead {
		if y.Do.TakesUp() && y.Letter != "" {
			return y.Letter
		}
	}
	return heading
}

// begunWith is a row's body begun with another yarn: "with B, ch 1, sc across" worked again with A.
func begunWith(yarn string, body []syntax.Node) []syntax.Node {
	for i, n := range body {
		y, ok := n.(*syntax.Yarn)
		if !ok {
			return body
		}
		if y.Do.TakesUp() {
			other := *y
			other.Letter = yarn
			body = slices.Clone(body)
			body[i] = &other
		}
	}
	return body
}

// uncut is the row without the cuts at its end: of "Rows 2-5: ... Fasten off." only the last row is cut. Rows that join a
// yarn are cut one by one.
func (r *written) uncut() *written {
	if anyNode(r.body, func(n syntax.Node) bool { y, ok := n.(*syntax.Yarn); return ok && y.Do == syntax.JoinIn }) {
		return r
	}
	isCut := func(n syntax.Node) bool {
		y, ok := n.(*syntax.Yarn)
		return ok && y.Do == syntax.CutIt
	}
	if !slices.ContainsFunc(r.tail, isCut) {
		return r
	}
	again := *r
	again.tail = slices.DeleteFunc(slices.Clone(r.tail), isCut)
	if n := len(r.body); n > 1 { // "sl st in next st, fasten off"
		if m, ok := r.body[n-1].(*syntax.Make); ok && m.Kind == slipStitch && m.Place != nil && m.Place.Ord == syntax.Next {
			again.body = r.body[: n-1 : n-1]
		}
	}
	return &again
}

// endingIn is the row with more words at its end than it was written with.
func (r *written) endingIn(words []syntax.Node, after turn) *written {
	if len(words) == 0 && after == unsaid {
		return r
	}
	again := *r
	again.tail = slices.Concat(r.tail, words)
	if after != unsaid {
		again.turn.after = after
	}
	return &again
}

// restFirst puts "leaving 8 sts unworked" before the chain and the turn that it is written behind.
func restFirst(body []syntax.Node) []syntax.Node {
	n := len(body)
	for n > 0 {
		if _, ok := body[n-1].(*syntax.Note); !ok {
			break
		}
		n--
	}
	if n < 2 {
		return body
	}
	rest, ok := body[n-1].(*syntax.Skip)
	if _, turn := body[n-2].(*syntax.Turn); !ok || !rest.Rest || !turn {
		return body
	}
	at := n - 2
	if at > 0 {
		if _, chain := body[at-1].(*syntax.ChainN); chain {
			at--
		}
	}
	out := append(body[:at:at], rest)
	out = append(out, body[at:n-1]...)
	return append(out, body[n:]...)
}

// splitEnd takes the ending off a row: turn, join, fasten off, and "ch 3" before a turn.
func splitEnd(body []syntax.Node) (rest, tail []syntax.Node) {
	i := len(body)
	for i > 0 {
		switch x := body[i-1].(type) {
		case *syntax.Turn, *syntax.Join, *syntax.Yarn, *syntax.Note:
			i--
			continue
		case *syntax.Make:
			if i > 1 && isOneSlip(x) && x.Place.Ord == syntax.First { // "sl st to first sc"
				join := &syntax.Join{Span: x.Span, Place: x.Place, With: slipStitch}
				return body[: i-1 : i-1], append([]syntax.Node{join}, body[i:]...)
			}
		case *syntax.ChainN:
			if i > 1 && i == len(body) {
				if j, ok := body[i-2].(*syntax.Join); ok && !j.Not { // "join, ch 1"
					i--
					continue
				}
				if m, ok := body[i-2].(*syntax.Make); ok && isOneSlip(m) && x.N.B == 1 { // "1 ss, 1 ch" closes a round
					return body[: i-2 : i-2], []syntax.Node{&syntax.Join{Span: m.Span, Place: m.Place, With: slipStitch}, x}
				}
			}
			if endsInTurn(body[i:]) {
				i--
				continue
			}
		}
		break
	}
	return body[:i:i], body[i:]
}

// spaceAtEnd gives the chains of the space that a row's last stitch goes into, 0 where they are not said, -1 for none.
func spaceAtEnd(body []syntax.Node) int {
	if len(body) == 0 {
		return -1
	}
	switch x := body[len(body)-1].(type) {
	case *syntax.Make:
		if x.Place != nil && x.Place.What == syntax.InSp && x.Place.Of == nil && x.Place.Ord != syntax.Each {
			return x.Place.Chains
		}
	case *syntax.Repeat:
		return spaceAtEnd(x.Ending)
	}
	return -1
}

// isOneSlip sees a single slip stitch that is told no place but the next or the first.
func isOneSlip(m *syntax.Make) bool {
	p := m.Place
	if m.Kind != slipStitch || m.N.B != 1 || m.N.A != 0 || p == nil || p.N.B != 1 || p.Of != nil {
		return false
	}
	return p.Ord == syntax.Next && p.What == syntax.InSt || p.Ord == syntax.First && (p.What == syntax.InSt || p.What == syntax.InKind)
}

// endsInTurn: a chain before it is the next row's turning chain; before a join it is a chain of the round.
func endsInTurn(tail []syntax.Node) bool {
	turn := false
	for _, n := range tail {
		switch n.(type) {
		case *syntax.Turn:
			turn = true
		case *syntax.Join:
			turn = false
		}
	}
	return turn
}

// anyNode reports whether f holds for a node or one within it.
func anyNode(nodes []syntax.Node, f func(syntax.Node) bool) bool {
	for _, n := range nodes {
		if f(n) {
			return true
		}
		switch x := n.(type) {
		case *syntax.Repeat:
			if anyNode(x.Body, f) || anyNode(x.Ending, f) {
				return true
			}
		case *syntax.Group:
			if anyNode(x.Body, f) {
				return true
			}
		}
	}
	return false
}

// hasWork reports whether a row makes stitches.
func hasWork(body []syntax.Node) bool {
	return anyNode(body, func(n syntax.Node) bool {
		switch n.(type) {
		case *syntax.Make, *syntax.Group:
			return true
		}
		return false
	})
}

// usesN reports whether the pattern's numbers depend on n.
func usesN(t *syntax.Tree) bool {
	for _, row := range t.Rows {
		if anyNode(row.Body, func(n syntax.Node) bool {
			for _, q := range numsOf(n) {
				if q.A != 0 {
					return true
				}
			}
			return false
		}) {
			return true
		}
	}
	return false
}

// numsOf gives the numbers written in one node.
func numsOf(n syntax.Node) []syntax.Num {
	switch x := n.(type) {
	case *syntax.Make:
		if x.Place != nil {
			return []syntax.Num{x.N, x.Place.N, x.Place.Ext.N}
		}
		return []syntax.Num{x.N}
	case *syntax.Skip:
		return []syntax.Num{x.N}
	case *syntax.ChainN:
		return []syntax.Num{x.N}
	case *syntax.Repeat:
		return []syntax.Num{x.Ext.N}
	case *syntax.Group:
		if x.Place != nil {
			return []syntax.Num{x.Place.N, x.Place.Ext.N}
		}
	case *syntax.RowRef:
		return []syntax.Num{x.Times}
	}
	return nil
}
