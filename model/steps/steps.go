// Package steps tells how a piece is worked, step by step in plain words: what is
// made and where, how the hook moves, how far one has come and what is next. It
// is for teaching; the words are English, in US or UK terms.
//
// Of only finds where the steps begin and end. The words of a step are made when
// it is asked for, so that a blanket's hundred thousand steps cost nothing.
package steps

import (
	"sort"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// By says how much is one step.
type By uint8

const (
	Stitch By = iota // one stitch; chains that follow one another are one step
	Row              // a whole row or round
)

// Steps are the steps of one piece.
type Steps struct {
	By By

	lib   *stitch.Library
	tree  *syntax.Tree
	f     *fabric.Fabric
	w     words
	cuts  []int32 // the first stitch of each step, and at last the number of stitches
	order []int32 // by stitch: its place among the landings of its row, -1 where it is none
	first []int32 // by stitch: the first that was worked into it, -1 for none
	event []int32 // indices of the fabric's events, by the stitch they come before
}

// Step is one step.
type Step struct {
	First, Last int32         // the stitches it makes, [First, Last)
	Row         int           // index in the fabric's rows
	Places      []fabric.Base // what it is worked into; none for chains and whole rows
	Text        diag.Span     // the written row, heading left out, in the piece's row text
	Word        diag.Span     // the instruction within it; of no length when it is not known

	Where  string // "Row 9 (RS)"
	Count  string // "stitch 9 of 28"
	Repeat string // "2nd time of 6 through the repeat"; "" outside repeats
	Says   string // "Dc in the next ch-2 space."
	How    string // the movements of the hook; "" where there is nothing to say
	Next   string // "Then: sc in the next 2 sc."
}

// Of finds the steps of a worked piece. The terms are "us" or "uk".
func Of(lib *stitch.Library, t *syntax.Tree, f *fabric.Fabric, terms string, by By) *Steps {
	s := &Steps{By: by, lib: lib, tree: t, f: f, w: wordsIn(terms)}
	s.index()
	for r := range f.Rows {
		row := &f.Rows[r]
		for id := row.First; id < row.Last; id++ {
			if id == row.First || by == Stitch && !s.goesOn(id) {
				s.cuts = append(s.cuts, id)
			}
		}
	}
	s.cuts = append(s.cuts, int32(len(f.Stitches)))
	return s
}

// index finds the order of landings, what was worked into each stitch first, and the
// order of events.
func (s *Steps) index() {
	n := len(s.f.Stitches)
	s.order, s.first = make([]int32, n), make([]int32, n)
	for i := range n {
		s.order[i], s.first[i] = -1, -1
	}
	for r := range s.f.Rows {
		for i, id := range s.f.LandingsOf(r) {
			s.order[id] = int32(i)
		}
	}
	for id := range n {
		for _, b := range s.f.Of(int32(id)) {
			if b.At >= 0 && s.first[b.At] < 0 {
				s.first[b.At] = int32(id)
			}
		}
	}
	s.event = make([]int32, len(s.f.Events))
	for i := range s.event {
		s.event[i] = int32(i)
	}
	sort.SliceStable(s.event, func(a, b int) bool {
		return s.f.Events[s.event[a]].Before < s.f.Events[s.event[b]].Before
	})
}

// goesOn reports whether a stitch belongs to the step of the one before it: chains of
// one instruction do.
func (s *Steps) goesOn(id int32) bool {
	a, b := &s.f.Stitches[id-1], &s.f.Stitches[id]
	return s.plainChain(id-1) && s.plainChain(id) && a.Word == b.Word && a.Unit == b.Unit && a.Yarn == b.Yarn
}

// plainChain reports whether a stitch is one chain and nothing besides.
func (s *Steps) plainChain(id int32) bool {
	c := &s.f.Stitches[id]
	return c.Has(fabric.Chain) && !c.Has(fabric.TurningChain) && !c.Has(fabric.Picot) && c.NBase == 0
}

// Len is the number of steps.
func (s *Steps) Len() int { return len(s.cuts) - 1 }

// Find is the step in which a stitch is made.
func (s *Steps) Find(id int32) int {
	i := sort.Search(len(s.cuts), func(i int) bool { return s.cuts[i] > id }) - 1
	return max(0, min(i, s.Len()-1))
}

// Rows gives the steps [from, to) that work the rows of a fabric, by their numbers; the
// foundation is 0. ok is false where no such row is worked.
func (s *Steps) Rows(first, last int) (from, to int, ok bool) {
	from = -1
	for i := range s.Len() {
		if no := s.f.Rows[s.f.Stitches[s.cuts[i]].Row].No; no >= first && no <= last {
			if from < 0 {
				from = i
			}
			to = i + 1
		}
	}
	return from, to, from >= 0
}

// At is step i.
func (s *Steps) At(i int) Step {
	st := Step{First: s.cuts[i], Last: s.cuts[i+1]}
	st.Row = int(s.f.Stitches[st.First].Row)
	st.Text = s.Text(st.Row)
	st.Where = s.where(st.Row)
	if s.By == Row {
		s.tellRow(&st)
		return st
	}
	s.tellStitch(&st, i)
	return st
}

// Text is the written row that a row is worked from, without its heading.
func (s *Steps) Text(row int) diag.Span {
	source := s.f.Rows[row].Source
	if source < 0 || source >= len(s.tree.Rows) {
		return diag.Span{}
	}
	r := s.tree.Rows[source]
	span := diag.Span{Start: max(r.Span.Start, r.Head.End), End: r.Span.End}
	for span.Start < span.End && (s.tree.Text[span.Start] == ':' || s.tree.Text[span.Start] == ' ') {
		span.Start++
	}
	for span.End > span.Start && (s.tree.Text[span.End-1] == '\n' || s.tree.Text[span.End-1] == ' ') {
		span.End--
	}
	return span
}

// where names a row and the side that faces.
func (s *Steps) where(row int) string {
	r := &s.f.Rows[row]
	if row == 0 && r.No == 0 {
		return "Foundation"
	}
	if r.WS {
		return r.Label + " (WS)"
	}
	return r.Label + " (RS)"
}
