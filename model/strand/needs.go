package strand

import (
	"strandway/model/fabric"
	"strandway/model/stitch"
)

// Needs gives what each row of f asks of a plan, from the first row after the
// foundation up to the first that cannot be planned, with the faces on which
// the rows are worked now. rowCM is the height of each row in cm. Rows of f
// with an index past those returned are rounds, edgings, or worked in several
// yarns, and stay as they are.
//
// A row whose stitches look otherwise from behind keeps the face it has: posts,
// single loops, lumps, long and surface stitches. Any other row may be worked
// on either side.
func Needs(f *fabric.Fabric, rowCM []float64) (needs []Need, present []Face) {
	for r := 1; r < len(f.Rows); r++ {
		row := &f.Rows[r]
		if beginSide(row) == fabric.NoSide || row.Backward || len(uses(f, row)) != 1 {
			break
		}
		n := Need{Yarn: f.Stitches[row.First].Yarn}
		if r < len(rowCM) {
			n.Height = rowCM[r]
		}
		face := RS
		if row.WS {
			face = WS
		}
		if oneFaced(f, row) {
			n.Face = face
		}
		needs, present = append(needs, n), append(present, face)
	}
	return needs, present
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
