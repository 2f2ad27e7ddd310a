package work

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"strandway/model/fabric"
	"strandway/model/syntax"
)

// mostMore bounds by how many workings of a repeat a stated count may be off and the repeat still be the likely cause.
const mostMore = 3

// cause is the hint for a stated count that differs from the row: what to write, and what may have gone wrong in the
// rows if the count is right.
func (w *worker) cause(m *miscount) string {
	row, below := &w.fab.Rows[w.row], &w.fab.Rows[w.row-1]
	more := m.want - m.got
	made, _ := w.repeatOf(row, m.of)
	times := w.workings(row)
	stitches := m.of.What == syntax.InSt || m.of.What == syntax.InKind
	suspect := fmt.Sprintf("look for %d too few", more)
	switch before := cmp.Or(w.unsure, w.miscounted); {
	case before != "" && before != w.label():
		return "it may follow from " + before
	case stitches && w.row == 1 && row.Shape == fabric.Flat && row.Count == m.got && len(w.lands)+more > 0 && w.eachOnce(row):
		suspect = fmt.Sprintf("begin with %d chains", len(w.lands)+more)
	case stitches && made > 0 && more%made == 0 && abs(more)/made <= mostMore && times+more/made > 0:
		suspect = fmt.Sprintf("see whether the repeat, which makes %d, is to be worked %d times instead of %d", made, times+more/made, times)
	case w.row > 1 && m.want == below.Count && m.of.What == syntax.InSt:
		suspect = fmt.Sprintf("see whether the row is to keep the %d of %s", m.want, below.Label)
	case reversed(m.want) == m.got:
		return fmt.Sprintf("write %d: its figures may have changed places", m.got)
	case more < 0:
		suspect = fmt.Sprintf("look for %d too many", -more)
	}
	return fmt.Sprintf("write %d, or %s", m.got, suspect)
}

// eachOnce reports whether a row has one stitch in each place it met, so that more chains make as many stitches more.
func (w *worker) eachOnce(row *fabric.Row) bool {
	last := int32(-1)
	for _, id := range w.fab.LandingsOf(int(w.row)) {
		s := &w.fab.Stitches[id]
		if s.Has(fabric.TurningChain) {
			continue
		}
		if s.Has(fabric.Chain) || s.NBase != 1 || w.fab.Of(id)[0].At == last {
			return false
		}
		last = w.fab.Of(id)[0].At
	}
	return row.Unworked == 0
}

// workings counts how often the last repeat of a row was worked.
func (w *worker) workings(row *fabric.Row) int {
	n := 0
	for i := len(w.fab.Repeats) - 1; i >= 0 && w.fab.Repeats[i].First >= row.First; i-- {
		if w.fab.Repeats[i].Written != w.fab.Repeats[len(w.fab.Repeats)-1].Written {
			break
		}
		n++
	}
	return n
}

// repeatOf gives how many stitches one working of the row's last repeat makes, by what t counts, and how many of
// the places below it takes; 0 where the row has no repeat worked twice.
func (w *worker) repeatOf(row *fabric.Row, t *syntax.Tally) (made, taken int) {
	if w.workings(row) < 2 {
		return 0, 0
	}
	last := w.fab.Repeats[len(w.fab.Repeats)-1]
	before := w.fab.Repeats[len(w.fab.Repeats)-2]
	for id := last.First; id < last.Last; id++ {
		s := &w.fab.Stitches[id]
		if s.Flags&(fabric.NoLanding|fabric.Picot|fabric.Chain) == 0 && (t == nil || t.What != syntax.InKind || w.isKind(s, t.Name)) {
			made++
		}
	}
	return made, w.reached(last) - w.reached(before)
}

// reached gives the farthest place, in the order in which the row meets them, that a repeat works into; 0 for none.
func (w *worker) reached(r fabric.Repeat) int {
	far := 0
	for id := r.First; id < r.Last; id++ {
		for _, b := range w.fab.Of(id) {
			far = max(far, slices.IndexFunc(w.lands, func(l landing) bool { return l.at == b.At }))
		}
	}
	return far
}

// oftener is the hint for a row that stops n places before the end where its repeat, worked a fixed number of times,
// would come out if it were worked some times more.
func (w *worker) oftener(n int) string {
	row := &w.fab.Rows[w.row]
	_, taken := w.repeatOf(row, nil)
	if taken == 0 || n%taken != 0 || n/taken > mostMore {
		return ""
	}
	times := w.workings(row)
	return fmt.Sprintf("it comes out if the repeat is worked %d times instead of %d", times+n/taken, times)
}

func reversed(n int) int {
	figures := []byte(strconv.Itoa(n))
	slices.Reverse(figures)
	n, _ = strconv.Atoi(string(figures))
	return n
}

func abs(n int) int { return max(n, -n) }
