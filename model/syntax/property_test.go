package syntax

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// grower makes random trees in the form that Read gives them.
type grower struct {
	*rand.Rand
	depth, stars int
}

func pick[T any](g *grower, of ...T) T { return of[g.IntN(len(of))] }

func (g *grower) num() Num {
	switch g.IntN(8) {
	case 0:
		return Num{A: 1 + g.IntN(6), B: g.IntN(7) - 3}
	case 1:
		n := 1 + g.IntN(40)
		return Num{B: n, Sizes: []int{n, n + 4, n + 9}}
	}
	return Plain(1 + g.IntN(30))
}

func (g *grower) kind() string { return pick(g, "sc", "hdc", "dc", "tr") }

func (g *grower) row() *Row {
	n := 1 + g.IntN(60)
	row := &Row{From: n, To: n, Round: g.IntN(3) == 0}
	switch g.IntN(8) {
	case 0:
		row.To = n + 1 + g.IntN(6)
	case 1:
		row.List = []int{n, n + 2, n + 4}
		row.To = n + 4
	case 2:
		row.Open = true
	case 3:
		row.Named, row.From, row.To = "Next", 0, 0
	}
	row.Side = pick(g, byte(0), byte(0), byte('R'), byte('W'))
	row.Yarn = pick(g, "", "", "A", "MC")
	if g.IntN(2) == 0 {
		row.Body = append(row.Body, g.turningChain())
	}
	for range 1 + g.IntN(5) {
		row.Body = append(row.Body, g.node())
	}
	row.Body = append(row.Body, g.ending()...)
	for range g.IntN(3) {
		row.Count = append(row.Count, pick(g,
			Tally{N: g.num()}, Tally{N: g.num(), What: InKind, Name: g.kind()},
			Tally{N: g.num(), What: InSp, Chains: g.IntN(4)}))
	}
	closeRound(row.Body, row.Round)
	markStart(row.Body)
	return row
}

func (g *grower) turningChain() Node {
	c := &ChainN{N: Plain(1 + g.IntN(5))}
	switch g.IntN(4) {
	case 0:
		c.Counts = CountsNot
	case 1:
		c.Counts, c.AsKind = Counts, g.kind()
		c.As = []Node{&Make{N: Plain(1), Kind: c.AsKind}, &ChainN{N: Plain(2)}}
	}
	return c
}

func (g *grower) ending() []Node {
	return pick(g, nil, []Node{&Turn{}}, []Node{&Turn{Not: true}}, []Node{&Join{With: slipStitch}}, []Node{&Join{Not: true, With: slipStitch}},
		[]Node{&Join{With: pick(g, slipStitch, "hdc", "dc"), Place: &Place{Ord: First, N: Plain(1), What: InKind, Name: g.kind()}}, &Turn{}},
		[]Node{&Yarn{Do: DropIt, Letter: "A"}, &Turn{Not: true}}, []Node{&Yarn{Do: CutIt}},
		[]Node{&Turn{}, &RowRef{Rows: []int{2, 3}, Times: Plain(2 + g.IntN(20)), More: g.IntN(2) == 0}})
}

func (g *grower) node() Node {
	g.depth++
	defer func() { g.depth-- }()
	most := 9
	if g.depth > 3 {
		most = 6
	}
	switch g.IntN(most) {
	case 0:
		return &ChainN{N: g.num()}
	case 1:
		w := pick(g, InSt, InCh, InSp, InKind)
		s := &Skip{N: Plain(1 + g.IntN(3)), What: w, Behind: g.IntN(8) == 0}
		if w == InKind {
			s.Name = g.kind()
		}
		if w == InSp {
			s.Chains = g.IntN(4)
		}
		return s
	case 2:
		return pick[Node](g, &Yarn{Do: With, Letter: "B"}, &Yarn{Do: ChangeTo, Letter: "A"}, &Yarn{Do: ChangeTo}, &Yarn{Do: HoldLoop}, &Yarn{Do: PickUpIt, Letter: "C"},
			&Yarn{Do: CarryIt, Letter: "B"}, &Yarn{Do: JoinIn, Letter: "B", Place: &Place{Ord: First, N: Plain(1)}}, &Note{Text: "work loosely here"}, &Note{Text: "2 dc in ring"},
			&Along{Edge: Edge(g.IntN(7)), Face: pick(g, byte(0), byte('W'))}, &Skip{Rest: true})
	case 6:
		return &Group{Body: g.inside(), Place: g.place()}
	case 7, 8:
		return g.repeat()
	}
	m := &Make{N: Plain(1), Kind: pick(g, "sc", "hdc", "dc", "tr", "fpdc", "bptr", "bldc", "dc2tog", "3-dc cl"), Place: g.place()}
	if g.IntN(4) == 0 {
		m.N = Plain(2 + g.IntN(4))
	}
	return m
}

func (g *grower) inside() []Node {
	nodes := []Node{&Make{N: Plain(1 + g.IntN(4)), Kind: g.kind()}}
	for range 1 + g.IntN(3) {
		nodes = append(nodes, &ChainN{N: Plain(1 + g.IntN(3))}, &Make{N: Plain(1 + g.IntN(4)), Kind: g.kind()})
	}
	return nodes
}

func (g *grower) repeat() Node {
	x := &Repeat{Star: g.IntN(2) == 0, Ext: g.extent()}
	if g.stars++; x.Star && g.stars > len(starMarks) {
		x.Star = false
	}
	defer func() { g.stars-- }()
	for range 2 + g.IntN(3) {
		x.Body = append(x.Body, g.node())
	}
	if _, note := x.Body[0].(*Note); note {
		x.Body[0] = &ChainN{N: Plain(2)}
	}
	if x.Ext.How == Times {
		x.Ext.N = Plain(2 + g.IntN(8))
		x.Ext.Soft = x.Star && g.IntN(2) == 0
	}
	switch {
	case !x.Star:
	case g.IntN(6) == 0:
		x.Ending = []Node{&Make{N: Plain(1), Kind: g.kind(), Place: &Place{Ord: Last, N: Plain(1)}}}
	case g.IntN(6) == 0:
		x.Break, x.AtBreak = 1, true
	}
	return x
}

func (g *grower) extent() Extent {
	return pick(g, Extent{How: Times}, Extent{How: Across}, Extent{How: ToLast, N: Plain(1 + g.IntN(4))},
		Extent{How: ToLast, N: Plain(2), What: InKind, Name: g.kind()}, Extent{How: ToNext, What: InCorner}, Extent{How: ToNext, What: InCentre},
		Extent{How: UntilN, N: Plain(7), What: InSp})
}

func (g *grower) place() *Place {
	p := &Place{Ord: pick(g, Next, Next, Next, Same, First, Last, Each), N: Plain(1), What: pick(g, InSt, InSt, InKind, InCh, InSp)}
	if p.Ord == Next || p.Ord == Last {
		if g.IntN(3) == 0 {
			p.N = g.num()
		}
	}
	if p.What == InKind {
		p.Name = g.kind()
	}
	if p.What == InSp {
		p.Chains = g.IntN(5)
	}
	if p.Ord == Each {
		if p.Ext = g.extent(); p.Ext.How == Times || p.Ext.How == UntilN {
			p.Ext = Extent{How: Across}
		}
	}
	switch g.IntN(14) {
	case 0:
		return &Place{N: Plain(1), What: InRing}
	case 1:
		return &Place{N: Plain(1), What: InTch}
	case 2:
		return &Place{Ord: Nth, N: Plain(2 + g.IntN(4)), What: InHook}
	case 3:
		return &Place{N: Plain(1), What: InGap, Name: pick(g, "", "group", "edge")}
	case 4:
		return &Place{N: Plain(1 + g.IntN(3)), What: pick(g, InSkipped, InEnd, InCorner, InUnder, InFace)}
	case 5:
		return &Place{Ord: Same, N: Plain(1), What: InKind, Name: g.kind(), Centre: true, Of: &Place{N: Plain(1), What: InUnit, Name: "group"}}
	case 6:
		return &Place{Ord: Nth, N: Plain(2), What: InKind, Name: g.kind(), Of: &Place{Ord: pick(g, Next, Last), N: Plain(1), What: InUnit, Name: "group"}}
	case 7:
		return &Place{Ord: Each, N: Plain(1), What: InSp, Chains: 2, Of: &Place{N: Plain(1), What: InUnit, Name: "group"}, Ext: Extent{How: Across}}
	case 8, 9:
		if p.What != InSp {
			p.Loop = pick(g, FrontLoop, BackLoop, ThirdLoop)
		}
	case 10:
		p.Below = 2 + g.IntN(3)
	case 11:
		p.Row = 1 + g.IntN(9)
	case 12:
		if p.Ord == Next && p.What == InSt {
			p.Lie = pick(g, BehindIt, InFront)
		}
	}
	return p
}

// TestPrintedTreesReadBack holds the promise of the package: what Print writes, Read reads as the same
// tree, in either terms, and printing that again changes nothing.
func TestPrintedTreesReadBack(t *testing.T) {
	lib := library(t)
	trees := 3000
	if testing.Short() {
		trees = 300
	}
	for seed := range trees {
		g := &grower{Rand: rand.New(rand.NewPCG(uint64(seed), 7))}
		tree := &Tree{}
		for range 1 + g.IntN(3) {
			tree.Rows = append(tree.Rows, g.row())
		}
		for _, terms := range []string{"us", "uk"} {
			for _, long := range []bool{false, true} {
				o := PrintOptions{Library: lib, Terms: terms, Long: long, Size: -1}
				text := Print(tree, o)
				again, finds := Read(text, ReadOptions{Library: lib, UK: terms == "uk"})
				for i, row := range tree.Rows {
					if i >= len(again.Rows) || dump(row) != dump(again.Rows[i]) {
						have := "nothing"
						if i < len(again.Rows) {
							have = dump(again.Rows[i])
						}
						t.Fatalf("seed %d, %s, long %v\n%s\n%s\n%v", seed, terms, long, text, difference(dump(row), have), finds)
					}
				}
				if finds.Faults() > 0 {
					t.Fatalf("seed %d: %s\n%v", seed, text, finds)
				}
				if twice := Print(again, o); twice != text {
					t.Fatalf("seed %d: not a fixed point\n%s\n%s", seed, text, twice)
				}
			}
		}
	}
}

// TestSpansCoverTheirWords checks that every instruction of a read row points at its own words.
func TestSpansCoverTheirWords(t *testing.T) {
	lib := library(t)
	_, texts := cases(t, "testdata/constructs.txt")
	for _, text := range texts {
		tree, _ := Read(text, ReadOptions{Library: lib})
		for _, row := range tree.Rows {
			if row.Span.Start > row.Span.End || row.Span.End > len(text) {
				t.Fatalf("%s: span %v of %d bytes", row.Label(), row.Span, len(text))
			}
			for _, n := range row.Body {
				at := n.At()
				if at.Len() <= 0 || at.Start < row.Span.Start || at.End > row.Span.End {
					t.Errorf("%s: %s has span %v, the row %v", row.Label(), dump(n), at, row.Span)
				}
			}
			Walk(row.Body, func(n Node) bool {
				if at := n.At(); at.Len() <= 0 {
					t.Errorf("%s in %q: %s has no place", row.Label(), fmt.Sprint(text[row.Span.Start:row.Span.End]), dump(n))
				}
				return true
			})
		}
	}
}
