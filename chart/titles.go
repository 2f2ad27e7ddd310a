package chart

import (
	"fmt"

	"strandway/model/fabric"
)

// rowTitle is what a row is called: "Row 4".
func (e *engraver) rowTitle(r int) string {
	row := &e.f.Rows[r]
	switch {
	case row.Label != "":
		return row.Label
	case r == 0:
		return "foundation"
	case row.Shape == fabric.Flat:
		return fmt.Sprintf("Row %d", row.No)
	}
	return fmt.Sprintf("Rnd %d", row.No)
}

// title says in a line what a stitch is: "Row 4: dc in ch-2 sp".
func (e *engraver) title(id int32) string {
	s := &e.f.Stitches[id]
	word, _ := e.o.Library.Word(e.f.Kind(id), e.o.Terms)
	switch {
	case s.Has(fabric.TurningChain) && s.Chains > 0:
		if ch, ok := e.o.Library.Kind("ch"); ok {
			word, _ = e.o.Library.Word(ch, e.o.Terms)
		}
		word = fmt.Sprintf("%s %d", word, s.Chains)
	case s.Has(fabric.Picot) && s.Chains > 0:
		word = fmt.Sprintf("%s of %d", word, s.Chains)
	}
	place := e.place(id)
	if place != "" {
		place = " " + place
	}
	return e.rowTitle(int(s.Row)) + ": " + word + place
}

// place says where a stitch stands, in the words of the row language.
func (e *engraver) place(id int32) string {
	bases := e.f.Of(id)
	switch len(bases) {
	case 0:
		return ""
	case 1:
	default:
		return fmt.Sprintf("over %d places", len(bases))
	}
	b := bases[0]
	in := ""
	if b.At >= 0 {
		in, _ = e.o.Library.Word(e.f.Kind(b.At), e.o.Terms)
	}
	var place string
	switch b.How {
	case fabric.InRing:
		return "in ring"
	case fabric.Space:
		place = fmt.Sprintf("in ch-%d sp", e.spaceLength(b.At))
	case fabric.Gap:
		place = "between sts"
	case fabric.RowEnd:
		place = "in row end"
	case fabric.Underside:
		place = "in other side of foundation"
	case fabric.FrontPost:
		place = "round front post of " + in
	case fabric.BackPost:
		place = "round back post of " + in
	case fabric.FrontLoop:
		place = "in front loop of " + in
	case fabric.BackLoop:
		place = "in back loop of " + in
	case fabric.Third:
		place = "in third loop of " + in
	case fabric.Legs:
		place = "between legs of " + in
	case fabric.OnFace:
		place = "on the face of " + in
	default:
		if in == "" {
			return ""
		}
		place = "in " + in
	}
	if b.Down > 1 {
		place += fmt.Sprintf(" %d rows below", b.Down)
	}
	return place
}

// spaceLength counts the chains of the space that begins with chain first.
func (e *engraver) spaceLength(first int32) int {
	end := first
	for last := e.f.Rows[e.f.Stitches[first].Row].Last; end < last && e.f.Stitches[end].Has(fabric.Chain); {
		end++
	}
	return max(int(end-first), 1)
}
