package work

import (
	"strandway/model/fabric"
)

// A polygon has at least 3 and at most 8 corners.
const fewestCorners, mostCorners = 3, 8

// markCorners marks where a round has its corners: groups worked in a corner;
// else groups with chains in their middle, or three single crochets in one
// place, if the round has as many of them as a polygon has corners; else, in a
// ring, the longest of its spaces.
func (w *worker) markCorners(row *fabric.Row) {
	if !w.round || w.row == 0 {
		return
	}
	var named, chained, threes []*fabric.Unit
	last := int32(-1)
	for id := row.First; id < row.Last; id++ {
		u := w.fab.Stitches[id].Unit
		if u < 0 || u == last {
			continue
		}
		last = u
		unit := &w.fab.Units[u]
		switch {
		case unit.Corner:
			named = append(named, unit)
		case w.hasChainInside(unit):
			chained = append(chained, unit)
		case w.isThree(unit):
			threes = append(threes, unit)
		}
	}
	for _, units := range [][]*fabric.Unit{named, chained, threes} {
		if len(units) < fewestCorners || len(units) > mostCorners {
			continue
		}
		for _, u := range units {
			u.Corner = true
			w.fab.Stitches[w.middleOf(u.First, u.Last)].Flags |= fabric.Corner
		}
		return
	}
	if w.isBase && w.ring {
		w.markRingCorners(row)
	}
}

// hasChainInside reports whether a group has at least two chains between its stitches.
func (w *worker) hasChainInside(u *fabric.Unit) bool {
	n := 0
	for id := u.First; id < u.Last; id++ {
		if w.fab.Stitches[id].Has(fabric.Chain) {
			n++
		}
	}
	return n >= 2 && !w.fab.Stitches[u.Last-1].Has(fabric.Chain)
}

// isThree reports whether a group is three low stitches in one place.
func (w *worker) isThree(u *fabric.Unit) bool {
	if u.Last-u.First != 3 {
		return false
	}
	for id := u.First; id < u.Last; id++ {
		s := &w.fab.Stitches[id]
		if s.Flags&(fabric.Chain|fabric.NoLanding) != 0 || w.height(w.fab.Kinds[s.Kind]) > 1 {
			return false
		}
	}
	return true
}

// markRingCorners marks the spaces of a first round that has as many as a polygon has corners.
func (w *worker) markRingCorners(row *fabric.Row) {
	var middles []int32
	for id := row.First; id < row.Last; id++ {
		s := &w.fab.Stitches[id]
		if !s.Has(fabric.Chain) || s.Flags&fabric.NoLanding != 0 {
			continue
		}
		first := id
		for id+1 < row.Last && w.fab.Stitches[id+1].Has(fabric.Chain) {
			id++
		}
		if id > first {
			middles = append(middles, (first+id)/2)
		}
	}
	if len(middles) < fewestCorners || len(middles) > mostCorners {
		return
	}
	for _, id := range middles {
		w.fab.Stitches[id].Flags |= fabric.Corner
	}
}

// middleOf is the middle chain of a group's chains, else its middle stitch.
func (w *worker) middleOf(first, last int32) int32 {
	a, b := int32(-1), int32(-1)
	for id := first; id < last; id++ {
		if w.fab.Stitches[id].Has(fabric.Chain) {
			if a < 0 {
				a = id
			}
			b = id
		}
	}
	if a >= 0 {
		return (a + b) / 2
	}
	return (first + last - 1) / 2
}
