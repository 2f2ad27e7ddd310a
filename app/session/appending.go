package session

import (
	"errors"
	"strings"

	"strandway/model/diag"
	"strandway/model/edit"
	"strandway/model/syntax"
	"strandway/model/work"
)

// Append works stitches behind the last one of the row in hand, before its turn: more of the same as one instruction
// with it. On an empty page chains begin a foundation.
func (s *Session) Append(t Typed) error {
	return s.append(t, func(left int, onChain, first bool) []syntax.Node {
		nodes := t.along(left)
		for i, n := range nodes {
			if x, ok := n.(*syntax.Make); ok && onChain {
				x.Place.What = syntax.InCh
				if first && i == 0 {
					x.Place.What, x.Place.Ord, x.Place.N = syntax.InHook, syntax.Nth, syntax.Plain(fromHook(t))
				}
			}
		}
		return nodes
	})
}

// Across works a stitch in each stitch that the row in hand has left.
func (s *Session) Across(t Typed) error {
	return s.append(t, func(_ int, onChain, first bool) []syntax.Node {
		each := t.make(1, &syntax.Place{Ord: syntax.Each, N: syntax.Plain(1), What: syntax.InSt, Ext: syntax.Extent{How: syntax.Across}})
		x, ok := each.(*syntax.Make)
		if !ok || !onChain {
			return []syntax.Node{each}
		}
		x.Place.What = syntax.InCh
		if !first {
			return []syntax.Node{each}
		}
		return []syntax.Node{t.make(1, &syntax.Place{Ord: syntax.Nth, N: syntax.Plain(fromHook(t)), What: syntax.InHook}), each}
	})
}

// fromHook is the chain from the hook in which a row on a chain begins: the chains before it are its turning chain.
func fromHook(t Typed) int {
	if t.Kind == nil {
		return 2
	}
	return max(t.Kind.TurningChain, 1) + 1
}

// append writes at the end of the row in hand what nodes gives for the stitches it has left, told whether it stands
// on the foundation chain and has no stitch yet.
func (s *Session) append(t Typed, nodes func(left int, onChain, first bool) []syntax.Node) error {
	tree := s.Tree()
	if strings.TrimSpace(tree.Text) == "" {
		return s.beginChain(t)
	}
	at, ok := s.rowInHand(tree)
	if !ok {
		return errors.New("begin a row first")
	}
	row := tree.Rows[at]
	place, n := bodyOf(tree, row), len(row.Body)
	if n > 0 {
		if turn, ok := row.Body[n-1].(*syntax.Turn); ok {
			place.End = turn.Start
			n--
		}
	}
	added := nodes(s.leftIn(at), onChain(tree, at), n == 0)
	before := ", "
	if n > 0 {
		if last := row.Body[n-1]; place.End >= last.At().End {
			if joined := work.Fold(append(singles(last), added...)); len(joined) < len(added)+1 || runsOn(last, added) {
				added, before = joinChains(joined), ""
				place = diag.Span{Start: last.At().Start, End: place.End}
			}
		}
	}
	words := syntax.PrintNodes(work.Fold(added), s.printing())
	old := strings.TrimRight(tree.Text[place.Start:place.End], " ,")
	switch {
	case before == "":
		words = likeCase(old, words)
	case old == "":
		for place.End < len(tree.Text) && tree.Text[place.End] == ' ' {
			place.End++ // behind the heading
		}
		words = strings.ToUpper(words[:1]) + words[1:]
		if row.Head.Len() > 0 && !strings.HasSuffix(tree.Text[:place.Start], " ") {
			words = " " + words
		}
	default:
		words = before + words
		place.Start += len(old)
	}
	if n < len(row.Body) {
		words += ", "
	}
	s.Replace("Add stitch", place, words)
	return nil
}

// beginChain begins the page with a foundation chain.
func (s *Session) beginChain(t Typed) error {
	if !t.plain() {
		return errors.New("a piece begins with a chain; take ch first")
	}
	yarn := "A"
	if yarns := s.Pattern().Yarns; len(yarns) > 0 {
		yarn = yarns[0].Letter
	}
	words := syntax.PrintNodes([]syntax.Node{t.make(t.N, nil)}, s.printing())
	s.Replace("Add stitch", diag.Span{End: len(s.Rows())}, "With "+yarn+", "+words)
	return nil
}

// rowInHand is the written row that holds the caret; spaces behind its last word are its own.
func (s *Session) rowInHand(tree *syntax.Tree) (at int, ok bool) {
	line := edit.Line(tree.Text, s.caret.At)
	caret := max(line.Start, len(strings.TrimRight(tree.Text[:s.caret.At], " ")))
	for i, r := range tree.Rows {
		if caret >= r.Span.Start && caret <= r.Span.End {
			at, ok = i, true
		}
	}
	return at, ok
}

// leftIn is how many stitches of the row below a written row has left to work, 0 where that is not known.
func (s *Session) leftIn(written int) int {
	if m := s.Made(); m != nil && m.pattern == s.Pattern() {
		if works := m.Works(written); len(works) == 1 {
			return m.Fabric().Rows[works[0]].Unworked
		}
	}
	return 0
}

// onChain reports whether a written row is the first on a foundation chain.
func onChain(t *syntax.Tree, at int) bool {
	return at == 1 && t.Rows[0].From == 0 && len(t.Rows[0].Body) > 0 && !t.Rows[at].Round
}

// singles takes "sc in next 3 sts" apart.
func singles(n syntax.Node) []syntax.Node {
	x, ok := n.(*syntax.Make)
	if !ok || x.Place == nil || x.Place.Ord != syntax.Next || x.N.B > 1 || x.Place.N.B < 2 {
		return []syntax.Node{n}
	}
	one := *x
	place := *x.Place
	place.N = syntax.Plain(1)
	one.Place = &place
	out := make([]syntax.Node, x.Place.N.B)
	for i := range out {
		out[i] = &one
	}
	return out
}

// runsOn reports whether chains follow chains, which are one run.
func runsOn(last syntax.Node, added []syntax.Node) bool {
	x, ok := last.(*syntax.ChainN)
	if !ok || len(added) == 0 || x.Counts != syntax.Unsaid || x.N.A != 0 || x.N.Sizes != nil {
		return false
	}
	_, ok = added[0].(*syntax.ChainN)
	return ok
}

// joinChains makes one run of chains of two that follow one another.
func joinChains(nodes []syntax.Node) []syntax.Node {
	var out []syntax.Node
	for _, n := range nodes {
		if x, ok := n.(*syntax.ChainN); ok && len(out) > 0 && runsOn(out[len(out)-1], []syntax.Node{x}) {
			run := *out[len(out)-1].(*syntax.ChainN)
			run.N = syntax.Plain(run.N.B + x.N.B)
			out[len(out)-1] = &run
			continue
		}
		out = append(out, n)
	}
	return out
}
