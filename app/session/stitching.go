package session

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"strandway/model/diag"
	"strandway/model/edit"
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

// editSteps has change write the steps of the chosen stitches' row anew; the row's words follow from it.
// The choice then stands by further on.
func (s *Session) editSteps(label string, change func([]work.Step) []syntax.Node, by int32) error {
	m := s.Made()
	switch {
	case m == nil || m.pattern != s.Pattern():
		return errors.New("the rows are still being worked; try again in a moment")
	case len(s.chosen.Stitches) == 0:
		return errors.New("choose a stitch first")
	}
	lead := s.chosen.Lead
	row := int(m.Fabric().Stitches[lead].Row)
	fabricRow := &m.Fabric().Rows[row]
	at := m.WrittenRow(row)
	written := m.Tree().Rows[at]
	if len(m.Works(at)) > 1 {
		return &SeveralRows{fabricRow.Label, row}
	}
	_, traces, _ := work.Steps(s.lib, m.Tree(), work.Options{N: m.Piece().N, Size: m.size})
	traced := slices.IndexFunc(traces, func(t work.Trace) bool { return t.Row == row })
	if traced < 0 {
		return fmt.Errorf("the steps of %s are not known", fabricRow.Label)
	}
	trace := traces[traced]
	var steps []work.Step
	for _, n := range change(trace.Steps) {
		steps = append(steps, work.Step{Node: n})
	}
	trace.Steps = steps
	words := syntax.PrintNodes(trace.Body(), syntax.PrintOptions{Library: s.lib, Terms: strings.ToLower(s.Pattern().Terms), Size: m.size})
	body := bodyOf(m.Tree(), written)
	if old := m.Rows()[body.Start:body.End]; old != "" {
		words = likeCase(old, words)
	}
	index := lead - fabricRow.First + by
	s.Do(label, func(now edit.State) edit.State {
		now.Pattern = edit.Replace(now.Pattern, now.Piece, body, words)
		now.Caret = edit.At(body.Start)
		return now
	})
	s.wish = wish{pattern: s.Pattern(), row: row, index: max(index, 0)}
	return nil
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
	for row += up; up != 0 && row >= 0 && row < len(f.Rows); row += up {
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

func abs(x float32) float32 { return max(x, -x) }
