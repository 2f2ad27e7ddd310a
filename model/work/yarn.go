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
	if x.Do.TakesUp() {
		w.yarn = yarn
	}
}

// beginRow takes the words said before a row, and the yarn that its heading names unless its own words begin with another.
func (y *yarns) beginRow(w *worker) {
	y.words = y.words[:0]
	for _, x := range w.step.lead {
		w.takeYarn(x)
	}
	switch first := syntax.FirstYarn(w.step.body); {
	case w.step.letter == "":
	case first != nil && first.Letter != w.step.letter:
		w.tellHeading(w.step.letter, first)
	default:
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
	r := settling{yarns: y, w: w, row: row}
	r.begin, r.end = edgesOf(row)
	if w.row == 1 {
		r.foundation()
	}
	for _, word := range y.words {
		if word.before > row.First {
			r.start()
		}
		r.heed(word)
	}
	if row.First < row.Last {
		r.start()
	}
	r.leave()
}

// settling follows the yarns through one row that has been worked.
type settling struct {
	*yarns
	w          *worker
	row        *fabric.Row
	begin, end fabric.Side
	begun      bool // the row's first yarn has been taken in hand
}

// foundation: its yarn waits where the first row begins.
func (r *settling) foundation() {
	yarn := r.row.Yarn
	if len(r.w.fab.Stitches) > 0 {
		yarn = r.w.fab.Stitches[0].Yarn
	}
	r.event(r.w, fabric.JoinYarn, yarn, 0, fabric.NoSide)
	r.at[yarn] = yarnAt{state: live, side: r.begin}
	r.hand = int(yarn)
}

// start takes in hand the yarn of the row's first stitch, once, unless it hangs there.
func (r *settling) start() {
	if r.begun {
		return
	}
	r.begun = true
	if at := r.at[r.row.Yarn]; at.state != live || r.hand != int(r.row.Yarn) || at.side != r.begin {
		r.take(yarnWord{syntax.With, r.row.Yarn, r.row.First, r.w.step.row.Head})
	}
}

// heed does what a word says.
func (r *settling) heed(word yarnWord) {
	at := &r.at[word.yarn]
	switch word.do {
	case syntax.With, syntax.PickUpIt:
		if r.hand != int(word.yarn) || word.before == r.row.First {
			r.take(word)
		}
	case syntax.JoinIn, syntax.ChangeTo:
		r.take(word)
	case syntax.DropIt:
		if word.before >= r.row.Last {
			at.side = r.end
		}
		r.drop(r.w, word.yarn, word.before)
	case syntax.HoldLoop:
		if word.before >= r.row.Last {
			at.side = r.end
		}
		r.event(r.w, fabric.Hold, word.yarn, word.before, at.side)
		at.waits = true
	case syntax.CutIt:
		side := at.side
		if word.before >= r.row.Last && r.hand == int(word.yarn) {
			side = r.end
		}
		r.event(r.w, fabric.Cut, word.yarn, word.before, side)
		at.state = gone
	}
}

// take lets the yarn in hand wait and takes up another, which is joined if it is not there.
func (r *settling) take(word yarnWord) {
	side := fabric.NoSide
	if word.before == r.row.First {
		side = r.begin
	} else if word.before >= r.row.Last {
		side = r.end
	}
	inHand := r.hand == int(word.yarn)
	if r.hand >= 0 && !inHand && r.at[r.hand].state == live {
		if word.before > r.row.First {
			r.at[r.hand].side = side
		}
		r.drop(r.w, uint8(r.hand), word.before)
	}
	at := &r.at[word.yarn]
	switch {
	case word.do == syntax.JoinIn && inHand && word.before == r.row.First && at.state == live && at.side == r.begin:
		// it hangs there already
	case at.state != live || word.do == syntax.JoinIn:
		r.event(r.w, fabric.JoinYarn, word.yarn, word.before, side)
	default:
		if word.before == r.row.First && side != fabric.NoSide && at.side != fabric.NoSide && at.side != side {
			r.w.tellYarn(r.w.fab.Yarns[word.yarn], at.side, side, word.span)
		}
		if !inHand || at.waits {
			r.event(r.w, fabric.PickUp, word.yarn, word.before, side)
		}
	}
	if word.do == syntax.ChangeTo {
		r.event(r.w, fabric.Change, word.yarn, word.before, side)
	}
	*at = yarnAt{state: live, side: side}
	r.hand = int(word.yarn)
}

// leave notes where the row leaves its yarns: the last one at its end, the others inside the fabric.
func (r *settling) leave() {
	last := r.row.Yarn
	if r.row.First < r.row.Last {
		last = r.w.fab.Stitches[r.row.Last-1].Yarn
	}
	for id := r.row.First; id < r.row.Last; id++ {
		if yarn := r.w.fab.Stitches[id].Yarn; yarn != last && r.at[yarn].state == live {
			r.at[yarn].side = fabric.NoSide
		}
	}
	if r.at[last].state == live {
		r.at[last].side = r.end
	}
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

// tellHeading says that a row's words begin with another yarn than its heading names.
func (w *worker) tellHeading(heading string, first *syntax.Yarn) {
	f := diag.Finding{Severity: diag.Doubt, ID: "heading-yarn", Span: first.Span,
		Message: fmt.Sprintf("the heading says yarn %s, but the row begins with yarn %s, and is worked so", heading, first.Letter),
		Hint:    fmt.Sprintf("write %s in its heading, or begin the row with %s", first.Letter, heading)}
	if at := w.tree.HeadYarn(w.step.row); at.Len() > 0 {
		f.Mend = &diag.Mend{Label: fmt.Sprintf(`write "%s" in the heading`, first.Letter), Span: at, Text: first.Letter}
	}
	w.say(f)
}

// tellOverYarn says that a row which repeats another works it in a yarn of its own, although that one's words begin with another.
func (w *worker) tellOverYarn(row *syntax.Row, repeated step, yarn string, lead []*syntax.Yarn) {
	for _, y := range lead {
		if y.Letter == yarn {
			if row.Yarn != "" && row.Yarn != yarn {
				w.tellHeading(row.Yarn, y)
			}
			return
		}
	}
	if first := syntax.FirstYarn(repeated.body); first != nil && first.Letter != yarn {
		w.say(diag.Finding{Severity: diag.Note, ID: "heading-yarn", Span: row.Head,
			Message: fmt.Sprintf("%s begins with yarn %s; repeated here it is worked in yarn %s, as this heading says", rowLabel(repeated.row, repeated.no), first.Letter, yarn)})
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
		f.Mend = &diag.Mend{Label: fmt.Sprintf(`write "do not turn" in %s`, w.fab.Rows[w.row-1].Label), Span: turn.Span, Text: "do not turn"}
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
