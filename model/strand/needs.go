package strand

import (
	"math"
	"slices"

	"strandway/model/fabric"
	"strandway/model/stitch"
)

// Needs gives what each row of f asks of a plan, the foundation first, with the
// faces on which the rows are worked now. rowCM is the height of each row in cm.
//
// A row whose stitches look otherwise from behind keeps the face it has: posts,
// single loops, lumps, long and surface stitches, and rows in several yarns. So
// do a round or an edging, which begins where the work is, and the rows before
// and after it. Any other row may be worked on either side.
func Needs(f *fabric.Fabric, rowCM []float64) (needs []Need, present []Face) {
	s := Follow(f, rowCM)
	for r := range f.Rows {
		row := &f.Rows[r]
		n := Need{Around: beginSide(row) == fabric.NoSide || row.Backward}
		if r < len(rowCM) {
			n.Height = rowCM[r]
		}
		used := uses(f, row)
		for _, u := range used {
			joined := slices.ContainsFunc(s.ByYarn[u.yarn].Joins, func(j Joint) bool { return j.Row == r })
			n.Yarns = append(n.Yarns, Use{u.yarn, joined})
		}
		if len(used) > 0 {
			n.Last = f.Stitches[row.Last-1].Yarn
		}
		face := RS
		if row.WS != (r == 0) { // the foundation lies with the face that row 1 turns away
			face = WS
		}
		if r > 1 {
			n.Inset = inset(f, r)
			n.Turns = row.Turned && row.Unworked > turningChain
		}
		n.Turns = n.Turns || r == 1
		if n.Around || n.Inset || len(used) > 1 || oneFaced(f, row) {
			n.Face = face
		}
		needs, present = append(needs, n), append(present, face)
	}
	if len(needs) > 1 { // what it begins is told by the first row
		needs[0].Around = needs[1].Around
		present[0] = other(present[1])
	}
	for k := 1; k < len(needs); k++ {
		if needs[k].Around || needs[k-1].Around {
			needs[k].Turns = false
			needs[k].Face, needs[k-1].Face = present[k], present[k-1]
		}
	}
	return needs, present
}

// turningChain is how many tops many a row leaves without a word: the turning
// chain's. More are left on purpose, and the row after turns there.
const turningChain = 1

// inset reports whether a flat row begins away from the edge of the row below.
func inset(f *fabric.Fabric, r int) bool {
	row, below := &f.Rows[r], f.LandingsOf(r-1)
	if row.First == row.Last || len(below) == 0 {
		return false
	}
	edge := f.Stitches[below[0]].Col
	for _, id := range below {
		if col := f.Stitches[id].Col; col < edge == row.FromLeft {
			edge = col
		}
	}
	const near = 2.5 // columns: a turning chain and what it passes
	return math.Abs(float64(f.Stitches[row.First].Col-edge)) > near
}

// oneFaced reports whether a row shows other stitches when it is worked on its other side.
func oneFaced(f *fabric.Fabric, row *fabric.Row) bool {
	for id := row.First; id < row.Last; id++ {
		s := &f.Stitches[id]
		if k := f.Kinds[s.Kind]; k.Lump != stitch.NoLump || s.Flags&(fabric.Long|fabric.Surface) != 0 {
			return true
		}
		for _, b := range f.Of(id) {
			switch b.How {
			case fabric.FrontLoop, fabric.BackLoop, fabric.FrontPost, fabric.BackPost, fabric.OnFace, fabric.Third:
				return true
			}
		}
	}
	return false
}
