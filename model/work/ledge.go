package work

import (
	"slices"

	"strandway/model/fabric"
	"strandway/model/syntax"
)

// ledge is what a short row left unworked on purpose, in the order in which a row working that way meets it.
type ledge struct {
	toward fabric.Side
	ids    []int32
}

// toward is the edge that the row in work goes to.
func (w *worker) toward() fabric.Side {
	if w.step.ws != w.step.backward {
		return fabric.Right
	}
	return fabric.Left
}

// ledgeAhead gives the nearest ledge that a row going this way comes to.
func (w *worker) ledgeAhead() *ledge {
	if w.round {
		return nil
	}
	for i := len(w.ledges) - 1; i >= 0; i-- {
		if w.ledges[i].toward == w.toward() {
			return &w.ledges[i]
		}
	}
	return nil
}

// meetLedge lets what short rows left unworked follow the row below.
func (w *worker) meetLedge() {
	w.lands = w.lands[:w.met]
	for i := len(w.ledges) - 1; i >= 0; i-- {
		if w.ledges[i].toward != w.toward() {
			continue
		}
		for _, id := range w.ledges[i].ids {
			w.lands = append(w.lands, landing{at: id, chain: w.fab.Stitches[id].Has(fabric.Chain)})
		}
	}
	w.met = len(w.lands)
}

// leftBy is the ledge that a row has left, of the latest if no row is named; -1 for none.
func (w *worker) leftBy(row int) int {
	for i := len(w.ledges) - 1; i >= 0; i-- {
		if row == 0 || w.fab.Rows[w.fab.Stitches[w.ledges[i].ids[0]].Row].No == row {
			return i
		}
	}
	return -1
}

// toLedge goes over to the stitches that a row has left unworked. A row that begins there leaves the row below alone.
func (w *worker) toLedge(row int) error {
	if shift := w.step.no - w.step.row.From; row > 0 && shift > 0 && w.step.row.From > 0 && w.leftBy(row+shift) >= 0 {
		row += shift // a row worked again speaks of the rows that were worked again with it
	}
	if w.ledgeFrom > 0 && (row == 0 || row == w.ledgeRow) {
		return nil
	}
	i := w.leftBy(row)
	if i < 0 {
		return fail("no stitches of row %d are left unworked", row)
	}
	ids := w.ledges[i].ids
	if w.ledges[i].toward != w.toward() && !w.round {
		ids = slices.Clone(ids)
		slices.Reverse(ids)
	}
	if !w.start {
		w.passed += w.left()
	}
	if w.ledgeRow = row; w.ledgeFrom == 0 {
		w.ledgeFrom = w.met
	}
	w.pos, w.lands = w.met, w.lands[:w.met]
	for _, id := range ids {
		w.lands = append(w.lands, landing{at: id, chain: w.fab.Stitches[id].Has(fabric.Chain)})
	}
	w.met = len(w.lands)
	return nil
}

// findUnworked finds a stitch that a short row has left. Where none has and no row is named, the next one is meant.
func (w *worker) findUnworked(p *syntax.Place) (target, error) {
	if p.Row == 0 && (w.leftBy(0) < 0 || !w.start && w.pos < w.met && w.ledgeFrom == 0) {
		return w.findNext(syntax.InSt, "", 0)
	}
	if err := w.toLedge(p.Row); err != nil {
		return target{}, err
	}
	if p.Ord == syntax.Last {
		return w.findLast(&syntax.Place{Ord: syntax.Last, N: p.N, What: syntax.InUnworked})
	}
	return w.findNext(syntax.InUnworked, "", 0)
}

// leaveLedge remembers what the row left unworked on purpose, and forgets what it worked of earlier ones.
func (w *worker) leaveLedge() {
	if w.ledgeFrom > 0 {
		w.forgetWorked()
		return
	}
	if w.reading.ledge {
		w.ledges = slices.DeleteFunc(w.ledges, func(l ledge) bool { return l.toward == w.toward() })
	}
	if !w.free || w.pos >= w.met {
		return
	}
	l := ledge{toward: w.toward()}
	for _, at := range w.lands[w.pos:w.met] {
		l.ids = append(l.ids, at.at)
	}
	if w.round { // the gap goes on where the round began
		for _, at := range w.lands[:w.leftFirst] {
			l.ids = append(l.ids, at.at)
		}
	}
	w.ledges = append(w.ledges, l)
}

// forgetWorked takes out of the ledges what the row in work has worked into.
func (w *worker) forgetWorked() {
	worked := map[int32]bool{}
	for id := w.rowFirst(); id < int32(len(w.fab.Stitches)); id++ {
		for _, b := range w.fab.Of(id) {
			worked[b.At] = true
		}
	}
	kept := w.ledges[:0]
	for _, l := range w.ledges {
		l.ids = slices.DeleteFunc(l.ids, func(id int32) bool { return worked[id] })
		if len(l.ids) > 0 {
			kept = append(kept, l)
		}
	}
	w.ledges = kept
}
