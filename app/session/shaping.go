package session

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"strandway/model/syntax"
	"strandway/model/work"
)

// block is the steps from the first chosen one to the last, as indices [from, to); what lies between them belongs to it.
func (s *Session) block(steps []work.Step) (from, to int) {
	from = -1
	for i, st := range steps {
		if s.chooses(st) {
			if from < 0 {
				from = i
			}
			to = i + 1
		}
	}
	return max(from, 0), to
}

func nodesOf(steps []work.Step) []syntax.Node {
	nodes := make([]syntax.Node, len(steps))
	for i, st := range steps {
		nodes[i] = st.Node
	}
	return nodes
}

// Repeat works the chosen stitches n times in all, in each of their rows.
func (s *Session) Repeat(n int) error {
	if n < 2 || n > mostTyped {
		return fmt.Errorf("stitches are repeated 2 to %d times", mostTyped)
	}
	return s.editSteps("Repeat", func(steps []work.Step) []syntax.Node {
		from, to := s.block(steps)
		nodes := nodesOf(steps[:from])
		for range n {
			nodes = append(nodes, nodesOf(steps[from:to])...)
		}
		return append(nodes, nodesOf(steps[to:])...)
	}, 0)
}

// Mirror works the chosen stitches the other way round, in each of their rows.
func (s *Session) Mirror() error {
	return s.editSteps("Mirror", func(steps []work.Step) []syntax.Node {
		from, to := s.block(steps)
		nodes := nodesOf(steps)
		slices.Reverse(nodes[from:to])
		for i := from; i < to; i++ {
			if g, ok := nodes[i].(*syntax.Group); ok {
				turned := *g
				turned.Body = slices.Clone(g.Body)
				slices.Reverse(turned.Body)
				nodes[i] = &turned
			}
		}
		return nodes
	}, 0)
}

// ChosenWords are the chosen stitches as a row would say them, a line for each of their rows.
func (s *Session) ChosenWords() (string, error) {
	traces, err := s.chosenTraces()
	if err != nil {
		return "", err
	}
	var lines []string
	for _, t := range traces {
		from, to := s.block(t.Steps)
		lines = append(lines, syntax.PrintNodes(work.Fold(nodesOf(t.Steps[from:to])), s.printing()))
	}
	return strings.Join(lines, "\n"), nil
}

// PasteWords works what was copied as words behind the chosen stitches.
func (s *Session) PasteWords(words string) error {
	tree, finds := syntax.Read("Row 1: "+strings.TrimSpace(words), syntax.ReadOptions{Library: s.lib, UK: s.terms() == "uk"})
	if len(tree.Rows) != 1 || finds.Faults() > 0 || len(tree.Rows[0].Body) == 0 {
		return errors.New("what was copied are no stitches of one row")
	}
	return s.editSteps("Paste", func(steps []work.Step) []syntax.Node {
		_, to := s.block(steps)
		return slices.Concat(nodesOf(steps[:to]), tree.Rows[0].Body, nodesOf(steps[to:]))
	}, 0)
}

// Placing is a place that a stitch can be moved to.
type Placing struct {
	Name   string
	before string // of the kind's name: fp, bp, fl, bl
	what   syntax.What
	below  int
}

// Placings are the places that a stitch can be moved to.
var Placings = []Placing{
	{Name: "in both loops"},
	{Name: "in the front loop", before: "fl"},
	{Name: "in the back loop", before: "bl"},
	{Name: "round the post, from the front", before: "fp"},
	{Name: "round the post, from the back", before: "bp"},
	{Name: "in the next space", what: syntax.InSp},
	{Name: "two rows below", below: 2},
	{Name: "three rows below", below: 3},
}

// Place works the chosen stitches in another place.
func (s *Session) Place(p Placing) error {
	var unknown error
	change := func(st work.Step) []syntax.Node {
		x, ok := st.Node.(*syntax.Make)
		if !ok {
			return []syntax.Node{st.Node}
		}
		kind, ok := s.lib.Kind(p.before + s.bare(x.Kind))
		if !ok || x.Unit != nil {
			unknown = fmt.Errorf("%s cannot be worked %s", x.Kind, p.Name)
			return []syntax.Node{st.Node}
		}
		moved := *x
		moved.Kind = kind.Name
		place := inNext()
		if x.Place != nil && x.Place.Ord != syntax.Each {
			at := *x.Place
			place = &at
		}
		if moved.Place = place; place.What != syntax.InHook {
			place.What, place.Name, place.Chains, place.Loop, place.Below = p.what, "", 0, syntax.BothLoops, p.below
		}
		return []syntax.Node{&moved}
	}
	// Nothing is changed where one of the stitches cannot be.
	traces, err := s.chosenTraces()
	if err != nil {
		return err
	}
	for _, t := range traces {
		s.eachChosen(change)(t.Steps)
	}
	if unknown != nil {
		return unknown
	}
	return s.editSteps("Place", s.eachChosen(change), 0)
}

// bare is a kind's name without the loop or post it is worked in.
func (s *Session) bare(kind string) string {
	for _, p := range Placings {
		if rest, ok := strings.CutPrefix(kind, p.before); ok && p.before != "" {
			if _, known := s.lib.Kind(rest); known {
				return rest
			}
		}
	}
	return kind
}
