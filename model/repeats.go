package model

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/syntax"
	"strandway/model/work"
)

// fewest is the least number of repeats to prove a pattern over, and to show it with when nothing
// says how wide it is to be: with three, one repeat has a neighbour on either side.
const fewest = 3

// repeats is the number of repeats to work: the size's own, else as many as its
// width takes, else the smallest that comes out.
func repeats(lib *stitch.Library, p *pattern.Pattern, tree *syntax.Tree, proof work.Proof, o work.Options) int {
	size := sizeOf(p, o.Size)
	if size.Repeats > 0 {
		return size.Repeats
	}
	if multiple, plus, ok := widest(proof); ok && size.WidthCM > 0 && p.Gauge.Stitches > 0 {
		stitches := size.WidthCM * p.Gauge.Stitches / p.Gauge.OverCM
		return max(1, int(math.Round((stitches-float64(plus))/float64(multiple))))
	}
	if proof.Multiple == 0 {
		return fewest // the rows do not ask for n
	}
	const tries = 6
	for o.N = fewest; o.N < fewest+tries; o.N++ {
		if _, findings := work.Work(lib, tree, o); findings.Faults() == 0 {
			return o.N
		}
	}
	return fewest
}

// foundation is the chain that a piece begins with; nil when it begins otherwise.
func foundation(tree *syntax.Tree) *syntax.ChainN {
	if len(tree.Rows) == 0 {
		return nil
	}
	for _, n := range tree.Rows[0].Body {
		switch n := n.(type) {
		case *syntax.ChainN:
			return n
		case *syntax.Make, *syntax.Group, *syntax.Repeat:
			return nil
		}
	}
	return nil
}

// WithRepeats is the pattern with n stitch repeats across a piece, whatever its
// size says. A foundation of a fixed number of chains is written anew, as long
// as n repeats take; the counts that its rows state then hold no longer.
func WithRepeats(lib *stitch.Library, p *pattern.Pattern, size, piece, n int) (*pattern.Pattern, error) {
	q := *p
	q.Sizes = slices.Clone(p.Sizes)
	if len(q.Sizes) == 0 {
		q.Sizes = []pattern.Size{{}}
	}
	q.Sizes[size].Repeats = n
	of := p.Pieces[piece]
	tree, _ := syntax.Read(of.Rows, ReadOptions(lib, p))
	chain := foundation(tree)
	if chain != nil && chain.N.A != 0 {
		return &q, nil
	}
	var proof work.Proof
	if chain != nil {
		proof, _ = work.Prove(lib, tree, work.Options{N: fewest, Size: size, Limit: Limit})
	}
	if proof.Multiple == 0 {
		return nil, fmt.Errorf("piece %q has no stitch repeat across that could be worked %d times", of.Name, n)
	}
	ch := "ch"
	if strings.HasPrefix(of.Rows[chain.Span.Start:], "C") {
		ch = "Ch"
	}
	of.Rows = fmt.Sprintf("%s%s %d%s", of.Rows[:chain.Span.Start], ch, proof.Multiple*n+proof.Plus, of.Rows[chain.Span.End:])
	q.Pieces = slices.Clone(p.Pieces)
	q.Pieces[piece] = of
	return &q, nil
}

// Widest is how wide a piece that is written in repeats lies: multiple × n + plus
// stitches, chains among them; ok is false where its foundation is of a fixed number.
func (p *PieceWork) Widest() (multiple, plus int, ok bool) { return widest(p.Proof) }

// widest is the formula of the row with the most stitches to a repeat, chains
// among them: it is the one that says how wide the piece lies.
func widest(proof work.Proof) (multiple, plus int, ok bool) {
	for _, row := range proof.Rows {
		if a := row.A + row.ChainsA; row.Known && row.A > 0 && a > multiple {
			multiple, plus, ok = a, row.B+row.ChainsB, true
		}
	}
	return multiple, plus, ok
}

var lengthForm = regexp.MustCompile(`(\d+(?:\.\d+)?)\s*(cm|mm|in\b|ins\b|inch|inches|")`)

// rowsForLength tells how many rows a length takes ("20 cm", "8 in"): by the
// row gauge; a length without a figure ("desired length") is the size's own.
// It gives 0 where it cannot tell.
func rowsForLength(g pattern.Gauge, size pattern.Size) func(string) int {
	return func(text string) int {
		cm := size.LengthCM
		if m := lengthForm.FindStringSubmatch(text); m != nil {
			cm, _ = strconv.ParseFloat(m[1], 64)
			switch m[2] {
			case "cm":
			case "mm":
				cm /= 10
			default:
				cm *= 2.54
			}
		}
		if g.Rows == 0 {
			return 0
		}
		return int(math.Round(cm * g.Rows / g.OverCM))
	}
}
