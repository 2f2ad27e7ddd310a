package session

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"strandway/model/diag"
	"strandway/model/pattern"
	"strandway/model/syntax"
	"strandway/model/work"
)

// Stitches are edited where they lie: the row is taken apart into its steps, the steps are
// changed, and folded they are the row's words again.

// TakeOut takes the chosen stitches out of their row. What they stood in is left unworked.
func (s *Session) TakeOut() error {
	return s.editSteps("Take out", s.eachChosen(func(work.Step) []syntax.Node { return nil }), -1)
}

// placeOf is where a step works, nil for the next stitch.
func placeOf(n syntax.Node) *syntax.Place {
	switch x := n.(type) {
	case *syntax.Make:
		return x.Place
	case *syntax.Group:
		return x.Place
	}
	return nil
}

// editSteps has change write the steps of every row that holds chosen stitches anew; the rows' words follow from
// them. The choice then stands by further on.
func (s *Session) editSteps(label string, change func([]work.Step) []syntax.Node, by int32) error {
	traces, err := s.chosenTraces()
	if err != nil {
		return err
	}
	m := s.Made()
	leadRow := int(m.Fabric().Stitches[s.chosen.Lead].Row)
	var rows strings.Builder
	caret, at := 0, 0
	for _, trace := range traces {
		var steps []work.Step
		for _, n := range change(trace.Steps) {
			steps = append(steps, work.Step{Node: n})
		}
		trace.Steps = steps
		words := syntax.PrintNodes(trace.Body(), s.printing())
		body := bodyOf(m.Tree(), m.Tree().Rows[m.WrittenRow(trace.Row)])
		if old := m.Rows()[body.Start:body.End]; old != "" {
			words = likeCase(old, words)
		}
		rows.WriteString(m.Rows()[at:body.Start])
		if trace.Row == leadRow {
			caret = rows.Len()
		}
		rows.WriteString(words)
		at = body.End
	}
	rows.WriteString(m.Rows()[at:])
	index := s.chosen.Lead - m.Fabric().Rows[leadRow].First + by
	s.Rewrite(label, rows.String(), caret)
	s.wish = wish{pattern: s.Pattern(), row: leadRow, index: max(index, 0)}
	return nil
}

func (s *Session) printing() syntax.PrintOptions {
	return syntax.PrintOptions{Library: s.lib, Terms: s.terms(), Size: s.size}
}

// chosenTraces are the steps of the rows that hold chosen stitches, in the order of the written rows.
func (s *Session) chosenTraces() ([]work.Trace, error) {
	m := s.Made()
	switch {
	case m == nil || m.pattern != s.Pattern():
		return nil, errors.New("the rows are still being worked; try again in a moment")
	case len(s.chosen.Stitches) == 0:
		return nil, errors.New("choose a stitch first")
	}
	wanted, last := map[int]bool{}, 0
	for _, id := range s.chosen.Stitches {
		row := int(m.Fabric().Stitches[id].Row)
		if !wanted[row] && len(m.Works(m.WrittenRow(row))) > 1 {
			return nil, &SeveralRows{m.Fabric().Rows[row].Label, row}
		}
		wanted[row], last = true, max(last, row)
	}
	_, traces, _ := work.Steps(s.lib, m.Tree(), work.Options{N: m.Piece().N, Size: m.size, UpTo: last})
	traces = slices.DeleteFunc(traces, func(t work.Trace) bool { return !wanted[t.Row] })
	if len(traces) < len(wanted) {
		return nil, fmt.Errorf("the steps of %s are not known", m.Fabric().Rows[m.Fabric().Stitches[s.chosen.Lead].Row].Label)
	}
	slices.SortFunc(traces, func(a, b work.Trace) int { return m.WrittenRow(a.Row) - m.WrittenRow(b.Row) })
	return traces, nil
}

// eachChosen has change write anew every step that made a chosen stitch.
func (s *Session) eachChosen(change func(work.Step) []syntax.Node) func([]work.Step) []syntax.Node {
	return func(steps []work.Step) []syntax.Node {
		var nodes []syntax.Node
		for _, st := range steps {
			if s.chooses(st) {
				nodes = append(nodes, change(st)...)
			} else {
				nodes = append(nodes, st.Node)
			}
		}
		return nodes
	}
}

func (s *Session) chooses(st work.Step) bool {
	for id := st.First; id < st.Last; id++ {
		if s.chosen.Has(id) {
			return true
		}
	}
	return false
}

// bodyOf is the stretch of text that a row's instructions take up, without heading, stated count and full stop.
func bodyOf(t *syntax.Tree, r *syntax.Row) diag.Span {
	s := diag.Span{Start: r.Head.End, End: r.Head.End}
	if r.Head.Len() == 0 {
		s = diag.Span{Start: r.Span.Start, End: r.Span.Start}
	}
	for s.Start < r.Span.End && t.Text[s.Start] == ' ' {
		s.Start++
	}
	s.End = s.Start
	for _, n := range r.Body {
		s.End = max(s.End, n.At().End)
	}
	return s
}

// likeCase begins words with a capital where the old words did.
func likeCase(old, words string) string {
	if words == "" {
		return words
	}
	if c := old[:1]; c == strings.ToUpper(c) && c != strings.ToLower(c) {
		return strings.ToUpper(words[:1]) + words[1:]
	}
	return words
}

// wish is a stitch to choose once the rows have been worked.
type wish struct {
	pattern *pattern.Pattern
	row     int
	index   int32
}

// grant chooses the stitch that was wished for.
func (s *Session) grant(m *Made) {
	if s.wish.pattern != m.pattern || s.wish.row >= len(m.Fabric().Rows) {
		return
	}
	r := &m.Fabric().Rows[s.wish.row]
	index := s.wish.index
	s.wish = wish{}
	if r.Last > r.First {
		id := min(r.First+index, r.Last-1)
		s.Choose([]int32{id}, id)
	}
}

// Step goes from the chosen stitch to its neighbour: by along its row as seen from the right
// side, up rows upward.
func (s *Session) Step(by, up int, extend bool) {
	m := s.Made()
	if m == nil || len(m.Fabric().Stitches) == 0 {
		return
	}
	f := m.Fabric()
	if len(s.chosen.Stitches) == 0 {
		last := int32(len(f.Stitches) - 1)
		s.Choose([]int32{last}, last)
		return
	}
	lead := min(s.chosen.Lead, int32(len(f.Stitches)-1))
	st := &f.Stitches[lead]
	row := int(st.Row)
	to := lead
	if by != 0 {
		r := &f.Rows[row]
		if !r.FromLeft {
			by = -by
		}
		to = min(max(lead+int32(by), r.First), r.Last-1)
	}
	way := 1
	if up < 0 {
		way = -1
	}
	for row = min(max(row+up, 0), len(f.Rows)-1); up != 0 && row >= 0 && row < len(f.Rows); row += way {
		r := &f.Rows[row]
		if r.Last == r.First {
			continue
		}
		to = r.First
		for id := r.First; id < r.Last; id++ {
			if abs(f.Stitches[id].Col-st.Col) < abs(f.Stitches[to].Col-st.Col) {
				to = id
			}
		}
		break
	}
	if extend {
		s.Choose(append(slices.Clone(s.chosen.Stitches), to), to)
		return
	}
	s.Choose([]int32{to}, to)
}

// StepToEnd goes to the end of the chosen stitch's row, right or left as seen from the right side.
func (s *Session) StepToEnd(right, extend bool) {
	m := s.Made()
	if m == nil || len(s.chosen.Stitches) == 0 || int(s.chosen.Lead) >= len(m.Fabric().Stitches) {
		s.Step(0, 0, extend)
		return
	}
	r := &m.Fabric().Rows[m.Fabric().Stitches[s.chosen.Lead].Row]
	by := int(r.Last - r.First)
	if !right {
		by = -by
	}
	s.Step(by, 0, extend)
}

func abs(x float32) float32 { return max(x, -x) }
