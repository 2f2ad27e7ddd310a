package steps

import (
	"fmt"
	"strings"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// tellStitch writes the words of step i, which is one stitch or a run of chains.
func (s *Steps) tellStitch(st *Step, i int) {
	id := st.First
	row := &s.f.Rows[st.Row]
	st.Word = s.instruction(id)
	if s.plainChain(id) {
		st.Places = nil
	} else {
		st.Places = s.f.Of(id)
	}
	p := s.place(id)
	before, after := "", s.after(st.Last, st.Row)
	if id == row.First {
		before = s.beginning(st.Row)
	} else {
		before = s.yarnHere(id)
	}
	if p.passed != "" {
		before = join(before, sentence(p.passed))
	}
	st.Says = join(before, sentence(s.phrase(st.First, st.Last, p)), after)
	if !s.plainChain(id) && !s.f.Stitches[id].Has(fabric.TurningChain) && !s.f.Stitches[id].Has(fabric.Picot) {
		one := p
		if bases := s.f.Of(id); len(bases) > 1 {
			one.lead, one.noun = strings.Replace(one.lead, "over", "in", 1), s.common(bases)
		}
		one.tail, _, _ = strings.Cut(one.tail, ",") // how it lies is said already
		st.How = sentence(s.making(s.f.Kind(id), one))
	}
	st.Count = s.count(st)
	st.Repeat = s.repeat(id)
	st.Next = s.next(i)
}

// phrase says what a step makes and where, without capital and full stop.
func (s *Steps) phrase(first, last int32, p place) string {
	c := &s.f.Stitches[first]
	word := s.word(first)
	switch {
	case s.plainChain(first):
		chains := fmt.Sprintf("ch %d", last-first)
		if c.Has(fabric.Corner) || s.f.Stitches[last-1].Has(fabric.Corner) {
			return chains + " for the corner"
		}
		if c.Has(fabric.NoLanding) && c.Row > 0 {
			return chains + ", which does not count as a stitch"
		}
		return chains
	case c.Has(fabric.Picot):
		return fmt.Sprintf("make a picot of %s on the stitch just made", many(int(c.Chains), "chain"))
	case c.Has(fabric.TurningChain):
		says := fmt.Sprintf("ch %d, which counts as the first %s", c.Chains, word)
		if s.skipped(first) {
			return fmt.Sprintf("the chains at the hook count as the first %s", word)
		}
		if first != s.f.Rows[c.Row].First {
			says = fmt.Sprintf("ch %d, which counts as a %s", c.Chains, word)
		}
		return says
	case c.Has(fabric.Join):
		if p.noun == "" {
			return "join with a " + word
		}
		p.which = ""
		if b := s.f.Of(first)[0]; b.At == s.f.Rows[c.Row].First && !s.f.Stitches[b.At].Has(fabric.TurningChain) {
			p.which = "first"
		}
		return "join with a " + word + " " + p.String()
	}
	says := word
	if where := p.String(); where != "" {
		says += " " + where
	}
	if c.Has(fabric.Travel) {
		says += ", to move along"
	}
	return says
}

// skipped reports whether a turning chain is the end of the foundation: no instruction
// of its own row made it.
func (s *Steps) skipped(id int32) bool {
	c := &s.f.Stitches[id]
	if c.Row != 1 || s.f.Rows[0].Shape != fabric.Flat {
		return false
	}
	chains := false
	syntax.Walk(s.tree.Rows[s.f.Rows[1].Source].Body, func(n syntax.Node) bool {
		if _, is := n.(*syntax.ChainN); is && n.At().Start == int(c.Word) {
			chains = true
		}
		return true
	})
	return !chains
}

// next says what comes after step i: a run of like stitches together.
func (s *Steps) next(i int) string {
	if i+1 >= s.Len() {
		return "That is the last stitch."
	}
	id := s.cuts[i+1]
	row := &s.f.Rows[s.f.Stitches[id].Row]
	if id == row.First {
		done := "That ends the " + rowWord(row.Shape) + "."
		if s.f.Stitches[s.cuts[i]].Row == 0 && s.f.Rows[0].No == 0 {
			done = "That is the foundation."
		}
		return done + " Then begin " + row.Label + "."
	}
	p := s.place(id)
	n := s.alike(i+1, p)
	says := s.phrase(id, s.cuts[i+2], p)
	switch word := s.word(id); {
	case n > 1 && p.noun == ring:
		says = fmt.Sprintf("%d %s %s", n, word, p)
	case n > 1 && p.which == "same":
		says = fmt.Sprintf("%d more %s %s", n, word, p)
	case n > 1:
		says = word + " " + p.several(n)
	}
	if p.passed != "" {
		says = p.passed + ", " + says
	}
	return "Then: " + says + "."
}

// alike is how many steps from i on are the same stitch in like places, one after another.
func (s *Steps) alike(i int, p place) int {
	first := s.cuts[i]
	c := &s.f.Stitches[first]
	if p.noun == "" || c.Flags&^fabric.Long&^fabric.Behind != 0 || c.NBase != 1 || p.which != "next" && p.which != "same" && p.noun != ring {
		return 1
	}
	n := 1
	for j := i + 1; j < s.Len() && s.f.Stitches[s.cuts[j]].Row == c.Row; j++ {
		id := s.cuts[j]
		if d := &s.f.Stitches[id]; d.Kind != c.Kind || d.Flags != c.Flags || d.NBase != 1 {
			break
		}
		if q := s.place(id); q != (place{"", p.lead, p.which, p.noun, p.tail}) {
			break
		}
		n++
	}
	return n
}

// count says how many stitches of the row there are with this one.
func (s *Steps) count(st *Step) string {
	row := &s.f.Rows[st.Row]
	if st.Row == 0 && row.Count == 0 {
		return many(int(row.Last-row.First), "chain")
	}
	done, all := 0, 0
	for id := row.First; id < row.Last; id++ {
		if !s.counts(id) {
			continue
		}
		all++
		if id < st.Last {
			done++
		}
	}
	if all == 0 {
		return ""
	}
	if done == 0 {
		return many(all, "stitch")
	}
	says := fmt.Sprintf("stitch %d of %d", done, all)
	if u := s.f.Stitches[st.First].Unit; u >= 0 && s.counts(st.First) {
		unit := &s.f.Units[u]
		in, of := 0, 0
		for id := unit.First; id < unit.Last; id++ {
			if !s.counts(id) {
				continue
			}
			of++
			if id <= st.First {
				in++
			}
		}
		if name := unit.Name; of > 1 {
			if _, plain := s.lib.Kind(name); plain || name == "" {
				says += fmt.Sprintf(", %s of %d in one place", nth(in), of)
			} else {
				says += fmt.Sprintf(", %s of %d in the %s", nth(in), of, name)
			}
		}
	}
	return says
}

// counts reports whether a stitch is one of those the row offers.
func (s *Steps) counts(id int32) bool {
	c := &s.f.Stitches[id]
	return c.Has(fabric.TurningChain) || !c.Has(fabric.NoLanding) && !c.Has(fabric.Chain)
}

// repeat says which working of the outermost repeat a stitch belongs to.
func (s *Steps) repeat(id int32) string {
	row := s.f.Stitches[id].Row
	var written diag.Span
	at, all := 0, 0
	for i := range s.f.Repeats {
		r := &s.f.Repeats[i]
		if r.Row == row && r.First <= id && id < r.Last && r.Written.Len() > written.Len() {
			written = r.Written
		}
	}
	if written.Len() == 0 {
		return ""
	}
	for i := range s.f.Repeats {
		r := &s.f.Repeats[i]
		if r.Row != row || r.Written != written {
			continue
		}
		all++
		if r.First <= id {
			at = all
		}
	}
	if all < 2 {
		return ""
	}
	return fmt.Sprintf("%s time of %d through the repeat", nth(at), all)
}

// instruction is the stretch of text that made a stitch. A stitch of a named group has
// its word in the group's definition, so that the group's name in the row stands for it.
func (s *Steps) instruction(id int32) diag.Span {
	c := &s.f.Stitches[id]
	source := s.f.Rows[c.Row].Source
	if source < 0 || source >= len(s.tree.Rows) {
		return diag.Span{}
	}
	row := s.tree.Rows[source]
	var found diag.Span
	if c.Unit >= 0 && s.f.Units[c.Unit].Name != "" {
		if name := s.f.Units[c.Unit].Name; s.tree.Units[name] != nil {
			found = named(row.Body, name, s.wordBefore(s.f.Units[c.Unit].First))
		}
	}
	if found.Len() == 0 && c.Word >= int32(row.Span.Start) {
		syntax.Walk(row.Body, func(n syntax.Node) bool {
			if at := n.At(); at.Start == int(c.Word) && at.Len() > 0 && (found.Len() == 0 || at.Len() < found.Len()) {
				found = at
			}
			return true
		})
	}
	return found
}

// wordBefore is the word of the stitch before one, if it is in the same row and before it in the text.
func (s *Steps) wordBefore(id int32) int {
	if id == 0 || s.f.Stitches[id-1].Row != s.f.Stitches[id].Row {
		return 0
	}
	return int(s.f.Stitches[id-1].Word)
}

// named finds the next mention of a group after a place in the row, or the first of all.
func named(body []syntax.Node, name string, after int) diag.Span {
	var first, next diag.Span
	syntax.Walk(body, func(n syntax.Node) bool {
		if m, ok := n.(*syntax.Make); ok && m.Kind == name {
			if first.Len() == 0 {
				first = m.At()
			}
			if next.Len() == 0 && m.At().Start > after {
				next = m.At()
			}
		}
		return true
	})
	if next.Len() > 0 {
		return next
	}
	return first
}

func rowWord(shape fabric.Shape) string {
	if shape == fabric.Flat {
		return "row"
	}
	return "round"
}
