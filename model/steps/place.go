package steps

import (
	"fmt"

	"strandway/model/fabric"
)

// place says where a stitch goes, in parts: "in the front loop of" the "next" "sc"
// "two rows below".
type place struct {
	passed string // what is skipped to come there
	lead   string
	which  string // next, same, first, 2nd ...
	noun   string
	tail   string
}

// ring is the one place that has no neighbours.
const ring = "ring"

func (p place) String() string {
	if p.noun == "" {
		return p.lead
	}
	which := p.which
	if which != "" {
		which += " "
	}
	return p.lead + " the " + which + p.noun + p.tail
}

// several is the place of n stitches, one after another.
func (p place) several(n int) string {
	p.noun = fmt.Sprintf("%d %s", n, plural(p.noun))
	return p.String()
}

// place finds the words for the place of a stitch, as seen from the one before it in the row.
func (s *Steps) place(id int32) place {
	bases := s.f.Of(id)
	if len(bases) == 0 {
		return place{}
	}
	b := bases[0]
	p := place{lead: "in", noun: s.noun(b)}
	switch b.How {
	case fabric.InRing:
		return place{lead: "in", noun: ring}
	case fabric.Gap:
		p.lead = "between the stitches, in"
	case fabric.FrontLoop:
		p.lead = "in the front loop of"
	case fabric.BackLoop:
		p.lead = "in the back loop of"
	case fabric.Third:
		p.lead = "in the third loop of"
	case fabric.FrontPost:
		p.lead = "round the post, from the front, of"
	case fabric.BackPost:
		p.lead = "round the post, from the back, of"
	case fabric.Underside:
		p.lead = "in the other side of"
	case fabric.OnFace:
		p.lead = "through the fabric at"
	case fabric.Legs:
		p.lead = "between the legs of"
	case fabric.RowEnd:
		p.tail = " of " + s.f.Rows[s.f.Stitches[b.At].Row].Label
	}
	if b.At < 0 {
		return p
	}
	p.which, p.passed = s.which(id, bases)
	if p.which == "" {
		p.which, p.tail = nth(int(s.f.Rows[0].Last-b.At)), " from the hook"
	}
	if s.f.Stitches[b.At].Has(fabric.TurningChain) && b.How != fabric.RowEnd && b.How != fabric.Space {
		p.noun = "top of the turning chain"
		if s.f.Rows[s.f.Stitches[b.At].Row].Shape != fabric.Flat {
			p.noun = fmt.Sprintf("top of the beginning ch-%d", s.f.Stitches[b.At].Chains)
		}
		if p.which == "same" {
			p.noun = "place"
		} else {
			p.which = ""
		}
	}
	if len(bases) > 1 && bases[1].At != b.At {
		if p.lead == "in" {
			p.lead = "over"
		}
		p.noun = fmt.Sprintf("%d %s", len(bases), plural(s.common(bases)))
	}
	if b.Down > 1 && b.How != fabric.RowEnd {
		s.below(&p, id, b)
	}
	return p
}

// noun names what a stitch is worked into.
func (s *Steps) noun(b fabric.Base) string {
	switch {
	case b.At < 0:
		return ""
	case b.How == fabric.Space:
		return s.space(b.At)
	case b.How == fabric.Gap:
		return "gap"
	case b.How == fabric.RowEnd:
		return "row end"
	case s.f.Stitches[b.At].Has(fabric.Chain):
		return "chain"
	}
	return s.word(b.At)
}

// space names a chain-space by its chains.
func (s *Steps) space(first int32) string {
	if c := &s.f.Stitches[first]; c.Has(fabric.TurningChain) {
		return "turning-chain space"
	}
	return fmt.Sprintf("ch-%d space", s.run(first))
}

// run is the number of chains from one on.
func (s *Steps) run(first int32) int {
	n := 0
	for id := first; int(id) < len(s.f.Stitches) && s.plainChain(id) && s.f.Stitches[id].Row == s.f.Stitches[first].Row; id++ {
		n++
	}
	return max(1, n)
}

// word is a stitch's abbreviation.
func (s *Steps) word(id int32) string {
	w, _ := s.lib.Word(s.f.Kind(id), s.w.terms)
	return w
}

// common is the word that all places share.
func (s *Steps) common(bases []fabric.Base) string {
	noun := s.noun(bases[0])
	for _, b := range bases[1:] {
		if s.noun(b) != noun {
			return "stitch"
		}
	}
	return noun
}

// which tells a place from its neighbours by the place of the stitch before. It is ""
// for the first stitch into a foundation chain, which is counted from the hook.
func (s *Steps) which(id int32, bases []fabric.Base) (which, passed string) {
	b := bases[0]
	of := s.f.Stitches[b.At].Row
	row := s.f.Stitches[id].Row
	last, found := fabric.Base{}, false
	for before := id - 1; before >= s.f.Rows[row].First && !found; before-- {
		if c := &s.f.Stitches[before]; c.Has(fabric.Picot) || c.Has(fabric.TurningChain) && of == 0 {
			continue
		}
		all := s.f.Of(before)
		if len(all) > 0 && all[len(all)-1].At >= 0 && s.f.Stitches[all[len(all)-1].At].Row == of {
			last, found = all[len(all)-1], true
		}
	}
	at := s.order[b.At]
	if !found {
		if f := &s.f.Rows[0]; of == 0 && b.How == fabric.Top && f.Shape == fabric.Flat && row == 1 {
			return "", ""
		}
		if s.atEdge(int(row), int(of), at) {
			return "first", ""
		}
		return "next", ""
	}
	if last.At == b.At {
		if s.f.Stitches[id-1].Has(fabric.TurningChain) && b.How != fabric.Space && s.atEdge(int(row), int(of), at) {
			return "first", "" // what the turning chain stands in place of
		}
		return "same", ""
	}
	to := s.order[last.At]
	if at < 0 || to < 0 || b.How == fabric.RowEnd {
		return "next", ""
	}
	step := at - to
	if s.f.Rows[row].FromLeft != s.f.Rows[of].FromLeft {
		step = -step
	}
	if n := int32(len(s.f.LandingsOf(int(of)))); s.f.Rows[of].Shape != fabric.Flat && n > 0 {
		step = ((step % n) + n) % n
		if step > n/2 {
			step -= n
		}
	}
	if step < 0 {
		return "skipped", ""
	}
	return "next", s.passing(int(of), to, at, b.How)
}

// atEdge reports whether a landing is the first that a row comes to.
func (s *Steps) atEdge(row, of int, at int32) bool {
	if s.f.Rows[of].Shape != fabric.Flat {
		return false
	}
	if s.f.Rows[row].FromLeft == s.f.Rows[of].FromLeft {
		return at == 0
	}
	return int(at) == len(s.f.LandingsOf(of))-1
}

// passing names what lies between two places. Who works into spaces passes the stitches
// between them without a word.
func (s *Steps) passing(of int, from, to int32, how fabric.How) string {
	lands := s.f.LandingsOf(of)
	if from > to {
		from, to = to, from
	}
	var names []string
	spaces := 0
	for i := from + 1; i < to; i++ {
		switch id := lands[i]; {
		case of > 0 && s.f.Stitches[id].Has(fabric.Chain):
			if i == from+1 || !s.f.Stitches[lands[i-1]].Has(fabric.Chain) {
				spaces++
			}
		case s.f.Stitches[id].Has(fabric.Chain):
			names = append(names, "chain")
		default:
			names = append(names, s.word(id))
		}
	}
	if how == fabric.Space {
		// Its own chains, and those of the space before, stand at the ends.
		if s.f.Stitches[lands[from]].Has(fabric.Chain) && from+1 < to && s.f.Stitches[lands[from+1]].Has(fabric.Chain) {
			spaces--
		}
		names = nil
	}
	var out []string
	if spaces > 0 {
		out = append(out, many(spaces, "chain-space"))
	}
	if len(names) > 0 {
		noun := names[0]
		for _, n := range names {
			if n != noun {
				noun = "stitch"
			}
		}
		out = append(out, many(len(names), noun))
	}
	if len(out) == 0 {
		return ""
	}
	return s.w.skip + " " + list(out)
}

// below says how deep a long stitch reaches and how it lies.
func (s *Steps) below(p *place, id int32, b fabric.Base) {
	if s.first[b.At] == id && p.which != "same" {
		p.which = "next"
		p.noun = "skipped " + p.noun
		p.passed = ""
	}
	p.tail = fmt.Sprintf(" %s rows below", number(int(b.Down)))
	over := "the row below"
	above := int(s.f.Stitches[id].Row) - 1
	if above >= 0 && s.overChains(above, s.f.Stitches[b.At].Col) {
		over = "the chains"
	}
	if b.How == fabric.FrontPost || b.How == fabric.BackPost {
		return
	}
	if s.f.Stitches[id].Has(fabric.Behind) {
		p.tail += ", behind " + over
	} else if s.f.Stitches[id].Has(fabric.Long) {
		p.tail += ", in front of " + over
	}
}

// overChains reports whether chains of a row lie over a column.
func (s *Steps) overChains(row int, col float32) bool {
	nearest, chains := float32(.75), false
	for _, id := range s.f.LandingsOf(row) {
		d := s.f.Stitches[id].Col - col
		if d = max(d, -d); d < nearest {
			nearest, chains = d, s.f.Stitches[id].Has(fabric.Chain)
		}
	}
	return chains
}

func number(n int) string {
	names := []string{"no", "one", "two", "three", "four", "five", "six"}
	if n < len(names) {
		return names[n]
	}
	return fmt.Sprint(n)
}
