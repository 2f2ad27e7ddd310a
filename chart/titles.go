package chart

import (
	"fmt"
	"strconv"

	"strandway/model/fabric"
)

// rowTitle is what a row is called: "Row 4".
func (e *engraver) rowTitle(r int) string {
	row := &e.f.Rows[r]
	switch {
	case row.Label != "":
		return e.label(row.Label)
	case r == 0:
		return e.say("foundation")
	case row.Shape == fabric.Flat:
		return e.say("Row") + " " + strconv.Itoa(row.No)
	}
	return e.say("Rnd") + " " + strconv.Itoa(row.No)
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
		word = e.say("%s of %d", word, s.Chains)
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
		return e.say("over %d places", len(bases))
	}
	b := bases[0]
	in := ""
	if b.At >= 0 {
		in, _ = e.o.Library.Word(e.f.Kind(b.At), e.o.Terms)
	}
	var place string
	switch b.How {
	case fabric.InRing:
		return e.say("in ring")
	case fabric.Space:
		place = e.say("in ch-%d sp", e.spaceLength(b.At))
	case fabric.Gap:
		place = e.say("between sts")
	case fabric.RowEnd:
		place = e.say("in row end")
	case fabric.Underside:
		place = e.say("in other side of foundation")
	case fabric.FrontPost:
		place = e.say("round front post of %s", in)
	case fabric.BackPost:
		place = e.say("round back post of %s", in)
	case fabric.FrontLoop:
		place = e.say("in front loop of %s", in)
	case fabric.BackLoop:
		place = e.say("in back loop of %s", in)
	case fabric.Third:
		place = e.say("in third loop of %s", in)
	case fabric.Legs:
		place = e.say("between legs of %s", in)
	case fabric.OnFace:
		place = e.say("on the face of %s", in)
	default:
		if in == "" {
			return ""
		}
		place = e.say("in %s", in)
	}
	if b.Down > 1 {
		place = e.say("%s %d rows below", place, b.Down)
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
