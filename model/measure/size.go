package measure

import (
	"math"
	"slices"

	"strandway/model/fabric"
)

// Form is how a piece lies.
type Form uint8

const (
	Sheet  Form = iota // worked flat
	Disc               // grown flat from a ring: a circle or a polygon
	Hollow             // grown from a ring and then cupped: a hat, a basket, a toy
	Tube               // rounds on a closed chain
)

// Size is a piece's size in cm.
type Size struct {
	Form     Form
	Stitches int       // of its widest row, chains among them, edgings not
	WidthCM  float64   // of a sheet, its widest row, edgings included; of a disc, across; of a tube or hollow piece laid flat, half of once round
	LengthCM float64   // from foundation to last row, edgings included; of a disc, across; of a hollow piece, from its middle to its edge
	RowCM    []float64 // height of each row
	WidthsCM []float64 // width of each row; of a round, once round
	Fullness float64   // of a disc: its last round over what lies flat there; 1 is flat, more ruffles, less cups
}

// Fullness outside these bounds shows: the round waves, or it lifts at the edge.
const (
	cups    = .85
	ruffles = 1.15
)

// Lies says how a round piece lies: "flat", "ruffles" or "cups"; "" for others.
func (s *Size) Lies() string {
	switch {
	case s.Form == Hollow:
		return "cups"
	case s.Form != Disc:
		return ""
	case s.Fullness > ruffles:
		return "ruffles"
	case s.Fullness < cups:
		return "cups"
	}
	return "flat"
}

// Of measures a piece.
func Of(f *fabric.Fabric, s Scale) Size {
	size := Size{RowCM: Heights(f), WidthsCM: make([]float64, len(f.Rows))}
	for r := range size.RowCM {
		size.RowCM[r] *= s.SCCM
		size.WidthsCM[r] = float64(f.Rows[r].Count+f.Rows[r].Chains) * s.ColumnCM
	}
	switch {
	case len(f.Rows) < 2:
	case fromRing(f):
		size.disc(f, s)
	case f.Rows[1].Shape != fabric.Flat && !edgesOf(f, 1).any():
		size.Form = Tube
		size.LengthCM = sum(size.RowCM)
		size.Stitches = widest(f)
		size.WidthCM = steadyWidth(size.WidthsCM[1:]) / 2
	default:
		size.sheet(f)
	}
	return size
}

// sheet adds up the rows of a flat piece, and the edgings on the sides where they stand.
func (s *Size) sheet(f *fabric.Fabric) {
	var body []float64
	var below edges // of the row before; none for a row of the body
	border := 0.0
	for r := 1; r < len(f.Rows); r++ {
		h := s.RowCM[r]
		on := edgesOf(f, r)
		if below.any() && !on.any() && f.Rows[r].Shape != fabric.Flat {
			on = below // a further round of the same edging
		}
		if below = on; !on.any() {
			body = append(body, s.WidthsCM[r])
			s.Stitches = max(s.Stitches, f.Rows[r].Count+f.Rows[r].Chains)
			s.LengthCM += h
			continue
		}
		border += h * float64(on.left+on.right)
		s.LengthCM += h * float64(on.lower+on.upper)
	}
	s.WidthCM = steadyWidth(body) + border
}

// edges are those on which an edging stands: 1 for each.
type edges struct{ left, right, lower, upper int }

func (e edges) any() bool { return e != edges{} }

// edgesOf finds the edges along which a row goes; none for a row of the body.
func edgesOf(f *fabric.Fabric, r int) edges {
	var e edges
	row := &f.Rows[r]
	upper := 0
	for id := row.First; id < row.Last; id++ {
		for _, b := range f.Of(id) {
			switch {
			case b.At < 0:
			case b.How == fabric.RowEnd && AtLeft(f, b.At):
				e.left = 1
			case b.How == fabric.RowEnd:
				e.right = 1
			case r > 1 && f.Stitches[b.At].Row == 0:
				e.lower = 1
			case f.Stitches[b.At].Row == int32(r-1):
				upper = 1
			}
		}
	}
	if e.left+e.right > 0 { // else a row of the body stands on the one before it
		e.upper = upper
	}
	return e
}

// AtLeft reports whether an edge stitch is the one at the left end of its row.
func AtLeft(f *fabric.Fabric, id int32) bool {
	row := &f.Rows[f.Stitches[id].Row]
	atBeginning := id-row.First < row.Last-1-id
	return atBeginning == row.FromLeft
}

// disc follows the rounds outward while they are full enough to lie flat;
// from where they are not, they stand up and the piece is hollow.
func (s *Size) disc(f *fabric.Fabric, scale Scale) {
	s.Form, s.Stitches = Disc, widest(f)
	radius, depth, longest := ringCM(f, scale), 0.0, 0.0
	for r := 1; r < len(f.Rows); r++ {
		h := s.RowCM[r]
		longest = max(longest, s.WidthsCM[r])
		const few = 3 // rounds: before that the ring's own slack decides
		flat := 2 * math.Pi * (radius + h) * perimeter(corners(f, r))
		const drawn = .7 // of a stitch's width that a chain takes up between groups
		once := (float64(f.Rows[r].Count) + drawn*float64(f.Rows[r].Chains)) * scale.ColumnCM
		if s.Fullness = once / flat; depth > 0 || r > few && s.Fullness < cups-.1 {
			depth += h
		} else {
			radius += h
		}
	}
	s.WidthCM, s.LengthCM = 2*radius, 2*radius
	if depth > 0 {
		s.Form = Hollow
		s.WidthCM, s.LengthCM = longest/2, radius+depth
	}
}

// widest is the most stitches of any row, chains among them.
func widest(f *fabric.Fabric) int {
	n := 0
	for r := 1; r < len(f.Rows); r++ {
		n = max(n, f.Rows[r].Count+f.Rows[r].Chains)
	}
	return n
}

// Increases is how many stitches a round must grow by to lie flat, for stitches
// so wide and rounds so high, both in cm.
func Increases(columnCM, rowCM float64) float64 { return 2 * math.Pi * rowCM / columnCM }

// corners counts the corners of round r.
func corners(f *fabric.Fabric, r int) int {
	n, at := 0, int32(-1)
	row := &f.Rows[r]
	for id := row.First; id < row.Last; id++ {
		if s := &f.Stitches[id]; s.Has(fabric.Corner) {
			if s.Unit < 0 || s.Unit != at {
				n++
			}
			at = s.Unit
		}
	}
	return n
}

// perimeter is how much longer the perimeter of a polygon of so many corners is
// than that of the circle inside it.
func perimeter(corners int) float64 {
	if corners < 3 {
		return 1
	}
	c := float64(corners)
	return c * math.Tan(math.Pi/c) / math.Pi
}

// steadyWidth is the width of a piece whose rows differ only by how many
// stitches and chains its pattern happens to offer: the median of its rows. A
// piece that is shaped is as wide as its widest row.
func steadyWidth(widths []float64) float64 {
	if len(widths) == 0 {
		return 0
	}
	rows := slices.Clone(widths)
	slices.Sort(rows)
	median, most := rows[len(rows)/2], rows[len(rows)-1]
	if steady := rows[0] > .6*most; steady {
		return median
	}
	return most
}

func fromRing(f *fabric.Fabric) bool {
	return f.Rows[1].Shape != fabric.Flat && standsIn(f, 1, fabric.InRing)
}

func standsIn(f *fabric.Fabric, r int, how fabric.How) bool {
	row := &f.Rows[r]
	for id := row.First; id < row.Last; id++ {
		for _, b := range f.Of(id) {
			if b.How == how {
				return true
			}
		}
	}
	return false
}

// ringCM is the radius of the hole in the middle: that of a closed ring of the
// foundation's chains, .09 of a stitch a chain, and no less than a fifth.
func ringCM(f *fabric.Fabric, s Scale) float64 {
	return max(.2, .09*float64(f.Rows[0].Chains)) * s.ColumnCM
}
