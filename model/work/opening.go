package work

import (
	"slices"

	"strandway/model/fabric"
	"strandway/model/syntax"
)

// fewestOpen is how many stitches a row must pass to leave an opening.
const fewestOpen = 3

// opening is what a row has passed, with the chains that it made over it.
type opening struct{ skipped, chains []int32 }

// openingOf finds the latest opening that no row has worked round yet, of a named row if one is named.
func (w *worker) openingOf(no int) *opening {
	used := map[int32]bool{}
	for i := len(w.fab.Rows) - 1; i > 1; i-- {
		r := &w.fab.Rows[i]
		if no == 0 || r.No == no {
			if o := w.openingIn(r, w.fab.LandingsOf(i-1), used); o != nil {
				return o
			}
		}
		for id := r.First; id < r.Last; id++ {
			for _, b := range w.fab.Of(id) {
				used[b.At] = true
			}
		}
	}
	return nil
}

// openingIn finds the first opening that a row has left in the stitches below it.
func (w *worker) openingIn(r *fabric.Row, below []int32, later map[int32]bool) *opening {
	place := map[int32]int{}
	for i, id := range below {
		place[id] = i
	}
	last, first, chains, leading := -1, -1, []int32(nil), []int32(nil)
	free := func(ids []int32) bool {
		return len(ids) >= fewestOpen && !slices.ContainsFunc(ids, func(id int32) bool { return later[id] })
	}
	for id := r.First; id < r.Last; id++ {
		s := &w.fab.Stitches[id]
		if s.Has(fabric.Chain | fabric.NoLanding) {
			continue
		}
		if s.Has(fabric.Chain) {
			chains = append(chains, id)
			continue
		}
		bases := w.fab.Of(id)
		if len(bases) == 0 {
			continue
		}
		at, ok := place[bases[0].At]
		if !ok {
			continue
		}
		if last < 0 {
			first, leading = at, chains
		} else if over := below[min(last, at, len(below)-1)+1 : max(last, at, min(last, at)+1)]; free(over) {
			return &opening{slices.Clone(over), chains}
		}
		last, chains = place[bases[len(bases)-1].At], nil
	}
	if r.Shape == fabric.Flat || first < 0 {
		return nil
	}
	round := slices.Concat(below[max(first, last)+1:], below[:min(first, last)])
	if first > last {
		round = below[last+1 : first]
	}
	if free(round) {
		return &opening{round, slices.Concat(chains, leading)}
	}
	return nil
}

// toOpening lets the row meet nothing but an opening: what was passed, then the chains over it from their other side.
func (w *worker) toOpening(row int) (*opening, error) {
	o := w.openingOf(row)
	if o == nil {
		return nil, fail("no row above has left an opening or skipped stitches to work into")
	}
	if !w.start {
		w.passed += w.left()
	}
	w.ledgeFrom = w.met
	w.pos, w.lands = w.met, w.lands[:w.met]
	for n := len(o.skipped); n > 0 && w.fab.Stitches[o.skipped[n-1]].Has(fabric.Chain); n = len(o.skipped) { // the spaces at its corners
		o.skipped = o.skipped[:n-1]
	}
	for len(o.skipped) > 0 && w.fab.Stitches[o.skipped[0]].Has(fabric.Chain) {
		o.skipped = o.skipped[1:]
	}
	for _, id := range o.skipped {
		w.lands = append(w.lands, landing{at: id, chain: w.fab.Stitches[id].Has(fabric.Chain)})
	}
	for _, id := range slices.Backward(o.chains) {
		w.lands = append(w.lands, landing{at: id, how: fabric.Underside, base: true})
	}
	w.met = len(w.lands)
	return o, nil
}

// findOpening finds a place at the edge of an opening: a stitch passed, or one of the chains over it.
func (w *worker) findOpening(p *syntax.Place) (target, error) {
	if w.ledgeFrom == 0 {
		o, err := w.toOpening(p.Row)
		if err != nil {
			return target{}, err
		}
		if n := w.num(p.N); p.What == syntax.InOpening && p.Ord == syntax.Nth && n <= len(o.chains) {
			w.pos = w.ledgeFrom + len(o.skipped) + n - 1
		}
	}
	if p.What == syntax.InOpening && p.Ord != syntax.Nth { // its corner, between two stitches
		i := min(w.pos, w.met-1)
		return w.take(i, i), nil
	}
	if w.pos >= w.met {
		return target{}, fail("no stitch is left at the opening")
	}
	w.pos++
	return w.take(w.pos-1, w.pos-1), nil
}

// alongBridge takes the next of the chains that this row has made to another piece, from the one side and then the other.
func (w *worker) alongBridge(other bool) (target, error) {
	if other {
		w.bridged = max(w.bridged, w.bridge)
	}
	if w.bridged >= 2*w.bridge {
		return target{}, none(syntax.InCh, "", 0)
	}
	t := target{at: w.bridgeAt + w.bridged%w.bridge, a: -1, b: -1}
	if w.bridged++; other {
		t.how = fabric.Underside
	}
	w.fab.Stitches[t.at].Flags |= fabric.NoLanding
	return t, nil
}
