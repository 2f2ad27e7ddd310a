package work

import (
	"fmt"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// firstYarn is the letter of the yarn where the pattern names none.
const firstYarn = "A"

// yarns follows every yarn of the piece.
type yarns struct {
	at       []yarnAt
	words    []yarnWord // of the row in work
	hand     int        // the yarn in hand when the row in work began; -1 for none
	begun    bool
	trailing []*syntax.Yarn // said after the last row
}

// yarnAt is where one yarn is.
type yarnAt struct {
	state yarnState
	side  fabric.Side // the edge at which it waits; NoSide inside the fabric
	waits bool        // it was let go of
}

type yarnState uint8

const (
	fresh yarnState = iota // not joined yet
	live                   // in hand, or waiting to be taken up again
	gone                   // cut
)

// yarnWord is something the rows say of a yarn, before stitch before.
type yarnWord struct {
	do     syntax.YarnDo
	yarn   uint8
	before int32
	span   diag.Span
}

// index gives the index of a yarn by its letter; "" is the first yarn.
func (y *yarns) index(f *fabric.Fabric, letter string) uint8 {
	if letter == "" {
		if len(f.Yarns) > 0 {
			return 0
		}
		letter = firstYarn
	}
	for i, l := range f.Yarns {
		if l == letter {
			return uint8(i)
		}
	}
	if len(f.Yarns) == 255 { // more than any pattern has: the last one stands for the rest
		return 254
	}
	f.Yarns = append(f.Yarns, letter)
	y.at = append(y.at, yarnAt{})
	return uint8(len(f.Yarns) - 1)
}

// startWith names the yarn of the foundation, once.
func (w *worker) startWith(letter string) {
	if !w.yarns.begun && (letter != "" || len(w.fab.Yarns) == 0) {
		w.yarn = w.yarns.index(w.fab, letter)
		w.yarns.begun = letter != ""
	}
}

// takeYarn notes what a row says of a yarn, and takes it in hand where that is meant.
func (w *worker) takeYarn(x *syntax.Yarn) {
	yarn := w.yarn
	if x.Letter != "" {
		yarn = w.yarns.index(w.fab, x.Letter)
	}
	w.yarns.words = append(w.yarns.words, yarnWord{x.Do, yarn, int32(len(w.fab.Stitches)), x.Span})
	switch x.Do {
	case syntax.With, syntax.JoinIn, syntax.ChangeTo, syntax.PickUpIt:
		w.yarn = yarn
	}
}

// beginRow takes the words said before a row, and the yarn that its heading names.
func (y *yarns) beginRow(w *worker) {
	y.words = y.words[:0]
	for _, x := range w.step.lead {
		w.takeYarn(x)
	}
	if w.step.letter != "" {
		w.takeYarn(&syntax.Yarn{Span: w.step.row.Head, Do: syntax.With, Letter: w.step.letter})
	}
}

// ofRow is the yarn a row begins with.
func (y *yarns) ofRow(w *worker, fr *fabric.Row) uint8 {
	if fr.First < fr.Last {
		return w.fab.Stitches[fr.First].Yarn
	}
	return w.yarn
}

// settle makes events of what a row says of its yarns, notes where each waits
// now, and says where a yarn could not have been taken up.
func (y *yarns) settle(w *worker, row *fabric.Row) {
	begin, end := edgesOf(row)
	if w.row == 1 { // the foundation's yarn waits where the first row begins
		first := w.fab.Stitches
		yarn := row.Yarn
		if len(first) > 0 {
			yarn = first[0].Yarn
		}
		y.event(w, fabric.JoinYarn, yarn, 0, fabric.NoSide)
		y.at[yarn] = yarnAt{state: live, side: begin}
		y.hand = int(yarn)
	}
	cur := y.hand
	used := [256]bool{}
	begun := false
	take := func(yarn uint8, do syntax.YarnDo, before int32, span diag.Span) {
		at := &y.at[yarn]
		side := fabric.NoSide
		if before == row.First {
			side = begin
		} else if before >= row.Last {
			side = end
		}
		if cur >= 0 && cur != int(yarn) && y.at[cur].state == live {
			if before > row.First {
				y.at[cur].side = side
			}
			y.drop(w, uint8(cur), before)
		}
		switch {
		case do == syntax.JoinIn && cur == int(yarn) && before == row.First && at.state == live && at.side == begin:
			// it hangs there already
		case at.state != live || do == syntax.JoinIn:
			y.event(w, fabric.JoinYarn, yarn, before, side)
		default:
			if before == row.First && side != fabric.NoSide && at.side != fabric.NoSide && at.side != side {
				w.tellYarn(w.fab.Yarns[yarn], at.side, side, span)
			}
			if cur != int(yarn) || at.waits {
				y.event(w, fabric.PickUp, yarn, before, side)
			}
		}
		if do == syntax.ChangeTo {
			y.event(w, fabric.Change, yarn, before, side)
		}
		at.state, at.side, at.waits = live, side, false
		cur = int(yarn)
	}
	start := func() {
		begun = true
		if cur < 0 || y.at[row.Yarn].state != live || cur != int(row.Yarn) || y.at[row.Yarn].side != begin {
			take(row.Yarn, syntax.With, row.First, w.step.row.Head)
		}
	}
	for _, word := range y.words {
		if word.before > row.First && !begun {
			start()
		}
		switch word.do {
		case syntax.With, syntax.PickUpIt:
			if cur != int(word.yarn) || word.before == row.First {
				take(word.yarn, word.do, word.before, word.span)
			}
		case syntax.JoinIn, syntax.ChangeTo:
			take(word.yarn, word.do, word.before, word.span)
		case syntax.DropIt:
			if word.before >= row.Last {
				y.at[word.yarn].side = end
			}
			y.drop(w, word.yarn, word.before)
		case syntax.HoldLoop:
			if word.before >= row.Last {
				y.at[word.yarn].side = end
			}
			y.event(w, fabric.Hold, word.yarn, word.before, y.at[word.yarn].side)
			y.at[word.yarn].waits = true
		case syntax.CutIt:
			side := y.at[word.yarn].side
			if word.before >= row.Last && cur == int(word.yarn) {
				side = end
			}
			y.event(w, fabric.Cut, word.yarn, word.before, side)
			y.at[word.yarn].state = gone
		}
	}
	if !begun && row.First < row.Last {
		start()
	}
	for id := row.First; id < row.Last; id++ {
		used[w.fab.Stitches[id].Yarn] = true
	}
	last := row.Yarn
	if row.First < row.Last {
		last = w.fab.Stitches[row.Last-1].Yarn
	}
	for yarn := range y.at { // a yarn left in mid-row waits inside the fabric
		if used[yarn] && yarn != int(last) && y.at[yarn].state == live {
			y.at[yarn].side = fabric.NoSide
		}
	}
	if y.at[last].state == live {
		y.at[last].side = end
	}
	y.hand = cur
}

// edgesOf gives the edges at which a row begins and ends; rounds have none.
func edgesOf(row *fabric.Row) (begin, end fabric.Side) {
	switch {
	case row.Shape != fabric.Flat || row.EndSide != fabric.NoSide:
		return fabric.NoSide, fabric.NoSide
	case row.FromLeft:
		return fabric.Left, fabric.Right
	}
	return fabric.Right, fabric.Left
}

func (y *yarns) event(w *worker, do fabric.Do, yarn uint8, before int32, side fabric.Side) {
	w.fab.Events = append(w.fab.Events, fabric.Event{Do: do, Yarn: yarn, Row: w.row, Before: before, Side: side})
}

// drop lets go of a yarn, once.
func (y *yarns) drop(w *worker, yarn uint8, before int32) {
	if !y.at[yarn].waits {
		y.event(w, fabric.Drop, yarn, before, y.at[yarn].side)
		y.at[yarn].waits = true
	}
}

// tellYarn says that a yarn waits at the other edge than where the row begins.
func (w *worker) tellYarn(letter string, waits, begins fabric.Side, span diag.Span) {
	f := diag.Finding{Severity: diag.Doubt, ID: "yarn", Span: span,
		Message: fmt.Sprintf("yarn %s waits at the %s edge, but this row begins at the %s", letter, edgeWord(waits), edgeWord(begins)),
		Hint:    "do not turn before this row, or cut and rejoin",
	}
	if f.Span == (diag.Span{}) {
		f.Span = w.step.row.Span
	}
	if !w.step.turned {
		f.Hint = "turn before this row, or cut and rejoin"
	} else if turn := w.turnBefore(); turn != nil {
		f.Mend = &diag.Mend{Label: `write "do not turn"`, Span: turn.Span, Text: "do not turn"}
	}
	w.say(f)
}

// turnBefore gives the word "turn" at the end of the row before, nil where it is not written.
func (w *worker) turnBefore() *syntax.Turn {
	below := &w.fab.Rows[w.row-1]
	if w.row < 2 || below.Source < 0 {
		return nil
	}
	for _, n := range w.look(w.tree.Rows[below.Source]).tail {
		if t, ok := n.(*syntax.Turn); ok && !t.Not {
			return t
		}
	}
	return nil
}

func edgeWord(s fabric.Side) string {
	if s == fabric.Left {
		return "left"
	}
	return "right"
}

// endYarns makes events of what is said after the last row.
func (w *worker) endYarns() {
	end := int32(len(w.fab.Stitches))
	for _, x := range w.yarns.trailing {
		yarn := w.yarn
		if x.Letter != "" {
			yarn = w.yarns.index(w.fab, x.Letter)
		}
		do, ok := map[syntax.YarnDo]fabric.Do{syntax.CutIt: fabric.Cut, syntax.DropIt: fabric.Drop, syntax.HoldLoop: fabric.Hold}[x.Do]
		if ok && w.yarns.at[yarn].state == live {
			w.yarns.event(w, do, yarn, end, w.yarns.at[yarn].side)
		}
	}
}
