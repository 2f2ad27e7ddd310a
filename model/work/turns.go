package work

import (
	"fmt"
	"slices"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// turnWord is what a row's words say of turning before it and after it.
type turnWord struct {
	before, after turn
}

type turn uint8

const (
	unsaid turn = iota
	turned
	notTurned
)

// turnsOf reads the turns of a row. A turn before the first stitch counts for
// that row; said once, it does not count again for the row after.
func turnsOf(body []syntax.Node) (t turnWord) {
	begun := false
	for _, n := range body {
		switch x := n.(type) {
		case *syntax.Turn:
			said := turned
			if x.Not {
				said = notTurned
			}
			if begun {
				t.after = said
			} else {
				t.before = said
			}
		case *syntax.ChainN, *syntax.Note, *syntax.Yarn, *syntax.Along:
		default:
			begun = true
		}
	}
	return t
}

// settle decides for every row its shape, whether the work is turned before it,
// and which side faces. Rows that make nothing hand their words to the next.
func (w *worker) settle(all []step) []step {
	var steps []step
	var lead []*syntax.Yarn
	var pend *syntax.ChainN
	after := unsaid // what was said after the last row
	anyTurn := false
	cut := false             // the yarn in hand was cut: the next row may begin on either face
	var begins []syntax.Node // where the next row begins, said on a line of its own
	var face byte
	for _, s := range all {
		if s.turn.before != unsaid {
			after, anyTurn = s.turn.before, anyTurn || s.turn.before == turned
		}
		if !s.work && !hasWork(s.body) {
			nodes := slices.Concat(s.written.body, s.tail)
			if slices.ContainsFunc(nodes, joinsIn) {
				begins, face, cut = nodes, s.face, true
				continue
			}
			for _, n := range nodes {
				switch x := n.(type) {
				case *syntax.Yarn:
					lead = append(lead, x)
					cut = cut || x.Do == syntax.CutIt
				case *syntax.ChainN:
					pend = x
				}
			}
			continue
		}
		s.lead = append(s.lead[:len(s.lead):len(s.lead)], lead...)
		lead = nil
		if begins != nil {
			s.body, begins = slices.Concat(begins, s.body), nil
			if s.face == 0 && face != 0 {
				again := *s.written
				again.face, s.written = face, &again
			}
		}
		if firstChain(s.body) == nil {
			s.pend = pend
		}
		anyTurn = anyTurn || s.turn.after == turned
		s.shape = w.shapeOf(&s, steps, anyTurn)
		s.backward = w.worksBackward(s.body)
		if len(steps) == 0 {
			s.turned = s.shape == fabric.Flat && !w.ring
		} else {
			s.turned = w.turnsBefore(&s, &steps[len(steps)-1], after, cut)
		}
		steps = append(steps, s)
		after, pend, cut = s.turn.after, nil, false
		for _, n := range s.tail {
			switch x := n.(type) {
			case *syntax.ChainN:
				pend = x
			case *syntax.Yarn:
				cut = cut || x.Do == syntax.CutIt
			}
		}
	}
	w.yarns.trailing = lead
	w.settleSides(steps)
	for i := range steps {
		steps[i].edgeLoop = -1
		if i+1 < len(steps) {
			steps[i].usesTch, steps[i].edgeLoop = steps[i+1].tch, steps[i+1].endsIn
		}
	}
	return steps
}

// turnsBefore: rows turn, rounds and rows worked backward do not, unless it is said. After a cut the face that
// is named decides.
func (w *worker) turnsBefore(s, prev *step, said turn, cut bool) bool {
	switch {
	case said != unsaid:
		return said == turned
	case w.tree.NoTurn, s.backward:
		return false
	case cut && s.face != 0 && s.face == prev.face:
		return false
	case s.shape != fabric.Flat:
		return false
	}
	return !isEdging(s.body)
}

// settleSides gives each row its side from the turns. The first side that is marked holds for the rows before it too.
func (w *worker) settleSides(steps []step) {
	ws, first := false, true
	for i := range steps {
		if i > 0 && steps[i].turned {
			ws = !ws
		}
		if m := steps[i].face; m != 0 && first {
			first = false
			if (m == 'W') != ws {
				ws = !ws
				for k := range i {
					steps[k].ws = !steps[k].ws
				}
			}
		} else if m != 0 && (m == 'W') != ws {
			w.step = &steps[i]
			w.sideDiffers(&steps[i], steps[max(0, i-1)].no, ws)
			if w.markHolds(steps, i, ws) {
				ws, steps[i].turned = !ws, !steps[i].turned
			}
		}
		steps[i].ws = ws
	}
	w.step = nil
}

// markHolds decides whether row i is worked by its mark, which differs from the side ws of its turns: the next mark bears
// out the one or the other. Where none follows, words of turning weigh more than a mark. A repeated row keeps to its turns.
func (w *worker) markHolds(steps []step, i int, ws bool) bool {
	if steps[i].no != steps[i].row.From {
		return false
	}
	for _, s := range steps[i+1:] {
		if s.turned {
			ws = !ws
		}
		if s.face != 0 && s.no == s.row.From {
			return (s.face == 'W') != ws
		}
	}
	return steps[i].turn.before == unsaid && (i == 0 || steps[i-1].turn.after == unsaid)
}

func (w *worker) sideDiffers(s *step, before int, ws bool) {
	is, marked := sideWord(ws), sideWord(!ws)
	f := diag.Finding{Severity: diag.Doubt, ID: "side", Span: s.row.Head}
	if f.Span == (diag.Span{}) {
		f.Span = s.row.Span
	}
	if s.no != s.row.From {
		f.Message = fmt.Sprintf("row %d repeats a row marked %s, but falls on the %s", s.no, marked, is)
		f.Hint = "repeat an even number of rows, or let the repeat end with a row that is not turned"
	} else {
		f.Message = fmt.Sprintf("row %d is marked %s, but by its turns it is a %s row", s.no, marked, is)
		f.Hint = fmt.Sprintf("mark it %s, or say \"do not turn\" after row %d", is, before)
		f.Mend = w.markMend(s.row, marked, is)
	}
	w.say(f)
}

func sideWord(ws bool) string {
	if ws {
		return "WS"
	}
	return "RS"
}

// markMend writes the other side into a heading, where it is marked by two letters.
func (w *worker) markMend(row *syntax.Row, was, is string) *diag.Mend {
	if row.Head.End > len(w.tree.Text) || row.Head.Len() < 2 {
		return nil
	}
	head := w.tree.Text[row.Head.Start:row.Head.End]
	for i := 0; i+2 <= len(head); i++ {
		if head[i:i+2] == was {
			at := row.Head.Start + i
			return &diag.Mend{Label: fmt.Sprintf("mark Row %d %s", row.From, is), Span: diag.Span{Start: at, End: at + 2}, Text: is}
		}
	}
	return nil
}

// isEdging reports whether a row goes on along another edge: the work is turned round the corner, not over.
func isEdging(body []syntax.Node) bool {
	for _, n := range body {
		switch x := n.(type) {
		case *syntax.Along:
			return x.Edge != syntax.NextEdge || x.Face == 0
		case *syntax.ChainN, *syntax.Note, *syntax.Yarn, *syntax.Turn:
		default:
			return false
		}
	}
	return false
}
