package session

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"strandway/model/stitch"
	"strandway/model/syntax"
	"strandway/model/work"
)

// Typed is what one word typed in a picture asks for: n stitches of a kind, a named group n
// times, n chains, or n stitches to skip.
type Typed struct {
	N    int
	Kind *stitch.Kind // nil for a group and for a skip
	Unit *syntax.Unit // a group that the pattern or the trade has a name for: shell, V-st
	Skip bool
}

// typedWord has a number before the word or behind it: "5dc", "ch3", "sk 2".
var typedWord = regexp.MustCompile(`^(\d*)\s*(.*?)\s*(\d*)$`)

// mostTyped is the most stitches that one word makes.
const mostTyped = 200

// ReadTyped reads a word as it is typed in a picture, in the pattern's terms.
func (s *Session) ReadTyped(word string) (Typed, error) {
	parts := typedWord.FindStringSubmatch(strings.TrimSpace(word))
	number := func(digits string) int {
		n, _ := strconv.Atoi(digits)
		return min(max(n, 1), mostTyped)
	}
	// "sc2tog" is a word with all of its digits, "3-dc cl" too.
	if t, ok := s.typed(word); ok {
		return t, nil
	}
	if t, ok := s.typed(parts[2] + parts[3]); ok {
		t.N = number(parts[1])
		return t, nil
	}
	if t, ok := s.typed(parts[2]); ok {
		t.N = number(parts[1] + parts[3])
		return t, nil
	}
	says := fmt.Sprintf("%q is no stitch in %s terms", parts[2], s.Pattern().Terms)
	if near := s.lib.Nearest(parts[2], s.terms()); near != "" {
		says += fmt.Sprintf("; did you mean %q?", near)
	}
	return Typed{}, errors.New(says)
}

func (s *Session) terms() string { return strings.ToLower(s.Pattern().Terms) }

// typed reads a word without a number.
func (s *Session) typed(word string) (Typed, bool) {
	lower := strings.ToLower(strings.TrimSpace(word))
	if lower == "sk" || lower == "skip" || lower == "miss" {
		return Typed{N: 1, Skip: true}, true
	}
	for name, unit := range s.Tree().Units {
		if n := strings.ToLower(name); n == lower || n == lower+"-st" || n == lower+" st" {
			return Typed{N: 1, Unit: unit}, true
		}
	}
	if kind, ok := s.lib.Read(lower, s.terms()); ok && lower != "" {
		return Typed{N: 1, Kind: kind}, true
	}
	return Typed{}, false
}

func inNext() *syntax.Place {
	return &syntax.Place{Ord: syntax.Next, N: syntax.Plain(1), What: syntax.InSt}
}

// make is n of what was typed as one instruction in a place.
func (t Typed) make(n int, place *syntax.Place) syntax.Node {
	switch {
	case t.Skip:
		return &syntax.Skip{N: syntax.Plain(n), What: syntax.InSt}
	case t.Unit != nil:
		return &syntax.Make{N: syntax.Plain(n), Kind: t.Unit.Name, Unit: t.Unit, Place: place}
	case t.Kind.Family == "chain":
		return &syntax.ChainN{N: syntax.Plain(n)}
	}
	return &syntax.Make{N: syntax.Plain(n), Kind: t.Kind.Name, Place: place}
}

// plain reports whether what was typed takes no stitch of the row below to stand in.
func (t Typed) plain() bool { return t.Kind != nil && t.Kind.Family == "chain" }

// along is what was typed worked along the row: one in each next stitch while there are
// enough of them, all in the last one otherwise.
func (t Typed) along(left int) []syntax.Node {
	if t.plain() || t.Skip || left < t.N && left > 0 {
		return []syntax.Node{t.make(t.N, inNext())}
	}
	nodes := make([]syntax.Node, t.N)
	for i := range nodes {
		nodes[i] = t.make(1, inNext())
	}
	return nodes
}

// beside is a step with what was typed worked into the same place: "3 dc in next st", or where
// the kinds differ "(sc, 3 dc) in next st".
func (t Typed) beside(n syntax.Node) []syntax.Node {
	if t.plain() || t.Skip {
		return []syntax.Node{n, t.make(t.N, nil)}
	}
	one := func(p *syntax.Place) bool { return p != nil && p.Of == nil && p.N.B <= 1 && p.Ord != syntax.Each }
	switch x := n.(type) {
	case *syntax.Make:
		if !one(x.Place) || x.Unit != nil || strings.HasSuffix(x.Kind, "tog") {
			break
		}
		if t.Kind != nil && x.Kind == t.Kind.Name {
			more := *x
			more.N = syntax.Plain(max(x.N.B, 1) + t.N)
			return []syntax.Node{&more}
		}
		first := *x
		first.Place = nil
		return []syntax.Node{&syntax.Group{Body: []syntax.Node{&first, t.make(t.N, nil)}, Place: x.Place}}
	case *syntax.Group:
		if !one(x.Place) {
			break
		}
		more := *x
		more.Body = append(append([]syntax.Node(nil), x.Body...), t.make(t.N, nil))
		return []syntax.Node{&more}
	}
	return []syntax.Node{n, t.make(t.N, &syntax.Place{Ord: syntax.Same, N: syntax.Plain(1)})}
}

// Insert works what was typed behind the chosen stitch: along the row where it has stitches left
// to work, else into the same place, as an increase. With nothing chosen it goes to the end of the row in hand.
func (s *Session) Insert(t Typed) error {
	if len(s.chosen.Stitches) == 0 {
		return s.Append(t)
	}
	left := 0
	if m := s.Made(); m != nil && int(s.chosen.Lead) < len(m.Fabric().Stitches) {
		row := &m.Fabric().Rows[m.Fabric().Stitches[s.chosen.Lead].Row]
		if s.chosen.Lead == row.Last-1 {
			left = row.Unworked
		}
	}
	by := int32(t.N)
	if t.Skip {
		by = 0
	}
	return s.editSteps("Add stitch", func(steps []work.Step) []syntax.Node {
		var nodes []syntax.Node
		for _, st := range steps {
			if left == 0 && s.chosen.Lead >= st.First && s.chosen.Lead < st.Last {
				nodes = append(nodes, t.beside(st.Node)...)
			} else {
				nodes = append(nodes, st.Node)
			}
		}
		if left > 0 {
			nodes = append(nodes, t.along(left)...) // behind what was skipped, too
		}
		return nodes
	}, by)
}

// Put works what was typed in the place of every chosen stitch.
func (s *Session) Put(t Typed) error {
	return s.editSteps("Change stitch", s.eachChosen(func(st work.Step) []syntax.Node {
		return []syntax.Node{t.make(t.N, placeOf(st.Node))}
	}), 0)
}
