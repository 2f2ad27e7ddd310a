package tapestry

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/syntax"
	"strandway/model/work"
)

// Rows writes the grid as the rows of a flat piece, turned, the first from the
// right on the right side, in US or UK terms.
func (g Grid) Rows(lib *stitch.Library, terms string) string {
	o := syntax.PrintOptions{Library: lib, Terms: terms, Size: -1}
	first := g.letter(g.Cells[g.Width-1])
	t := &syntax.Tree{Rows: []*syntax.Row{{Body: []syntax.Node{
		&syntax.Yarn{Do: syntax.With, Letter: first}, &syntax.ChainN{N: syntax.Plain(g.Width + 1), Start: true},
		&syntax.Yarn{Do: syntax.CarryIt}}}}}
	for i := range g.Height {
		row := &syntax.Row{From: i + 1, To: i + 1, Side: 'R', Body: g.body(i, i%2 == 1, i == 0)}
		if i%2 == 1 {
			row.Side = 'W'
		}
		if i < g.Height-1 {
			row.Body = append(row.Body, &syntax.Turn{})
		}
		t.Rows = append(t.Rows, row)
	}
	return syntax.Print(t, o)
}

func (g Grid) letter(yarn uint8) string { return g.Yarns[yarn] }

// body is the words of one row without its turn, worked from the left or from
// the right, into the foundation chain or into the row below.
func (g Grid) body(i int, fromLeft, onChain bool) []syntax.Node {
	cells := slices.Clone(g.row(i))
	if !fromLeft {
		slices.Reverse(cells)
	}
	one := !slices.ContainsFunc(cells, func(y uint8) bool { return y != cells[0] })
	steps := []syntax.Node{&syntax.Yarn{Do: syntax.With, Letter: g.letter(cells[0])}}
	what := syntax.InSt
	if onChain {
		what = syntax.InCh
		steps = append(steps, make1(&syntax.Place{Ord: syntax.Nth, What: syntax.InHook, N: syntax.Plain(2)}))
	} else {
		steps = append(steps, &syntax.ChainN{N: syntax.Plain(1), Start: true})
	}
	if one { // a plain row, as one would write it without a grid
		each := &syntax.Place{Ord: syntax.Each, What: what, N: syntax.Plain(1), Ext: syntax.Extent{How: syntax.Across}}
		return append(steps, make1(each))
	}
	var worked []syntax.Node
	for k, yarn := range cells {
		if k == 0 || yarn != cells[k-1] {
			worked = append(worked, &syntax.Yarn{Do: syntax.With, Letter: g.letter(yarn)})
		}
		if k > 0 || !onChain {
			worked = append(worked, make1(&syntax.Place{Ord: syntax.Next, What: what, N: syntax.Plain(1)}))
		}
	}
	return append(steps, folded(worked)...)
}

// folded writes runs of yarns as a designer would. A repeat names its first yarn, for it comes to it from another;
// without one the yarn is in hand already.
func folded(worked []syntax.Node) []syntax.Node {
	steps := work.Fold(worked)
	if _, named := steps[0].(*syntax.Yarn); named {
		steps = steps[1:]
	}
	i := slices.IndexFunc(steps, func(n syntax.Node) bool { _, is := n.(*syntax.Repeat); return is })
	if i < 0 || i == len(steps)-1 {
		return steps
	}
	rep := steps[i].(*syntax.Repeat)
	rep.Ext = syntax.Extent{How: syntax.ToLast, N: syntax.Plain(stitches(steps[i+1:]))}
	if _, named := steps[i+1].(*syntax.Yarn); !named { // the run goes on behind the repeat: say so
		steps = slices.Insert(steps, i+1, lastOf(rep.Body))
	}
	return steps
}

// lastOf is the last change of yarn among steps.
func lastOf(steps []syntax.Node) syntax.Node {
	for _, n := range slices.Backward(steps) {
		if y, ok := n.(*syntax.Yarn); ok {
			return y
		}
	}
	return nil
}

// stitches counts what steps work into.
func stitches(steps []syntax.Node) (n int) {
	for _, s := range steps {
		if m, ok := s.(*syntax.Make); ok {
			n += m.Place.N.B
		}
	}
	return n
}

func make1(p *syntax.Place) *syntax.Make {
	return &syntax.Make{N: syntax.Plain(1), Kind: single, Place: p}
}

// Paint rewrites the rows of a piece so that they work another grid of the same
// size: the words of the rows that change, each in its place, or, where one
// written row stands for several worked ones, all rows written out. The grid may
// name yarns that the piece has not used yet.
func Paint(lib *stitch.Library, p *pattern.Pattern, piece, size int, to Grid) (rows string, err error) {
	done := &model.Work(lib, p, size).Pieces[piece]
	from, err := FromFabric(done.Fabric)
	if err != nil {
		return "", err
	}
	if from.Width != to.Width || from.Height != to.Height {
		return "", fmt.Errorf("the rows make %d by %d stitches, the grid has %d by %d", from.Width, from.Height, to.Width, to.Height)
	}
	if p.Pieces[piece].Rows == "" {
		return "", errors.New("there are no rows yet to colour")
	}
	terms := strings.ToLower(p.Terms)
	rows = inPlace(lib, done, from, to, terms)
	if !works(lib, p, piece, size, rows, to) {
		rows = to.Rows(lib, terms)
	}
	if !works(lib, p, piece, size, rows, to) {
		return "", errors.New("the rows cannot be rewritten so that they work these colours; write them out one by one first")
	}
	return rows, nil
}

// inPlace rewrites the words of each worked row that changes where it is written. The
// row after it is rewritten too when it goes on in a yarn that it does not name.
func inPlace(lib *stitch.Library, done *model.PieceWork, from, to Grid, terms string) string {
	text := done.Tree.Text
	o := syntax.PrintOptions{Library: lib, Terms: terms, Size: -1}
	for i := to.Height - 1; i >= 0; i-- { // from the end, so that places before stay where they are
		changed := !sameColours(from, to, i) || i > 0 && lastYarn(from, done, i-1) != lastYarn(to, done, i-1)
		if !changed {
			continue
		}
		r := &done.Fabric.Rows[i+1]
		written := done.Tree.Rows[r.Source]
		body := to.body(i, r.FromLeft, i == 0)
		body = append(body, ending(written.Body)...)
		words := syntax.PrintNodes(body, o)
		end := written.Span.End
		for end > written.Head.End && text[end-1] == '\n' {
			end--
		}
		text = text[:written.Head.End] + " " + strings.ToUpper(words[:1]) + words[1:] + "." + text[end:]
	}
	return text
}

// ending is what stays of a row behind its stitches: whether it turns, and what is cut.
func ending(body []syntax.Node) []syntax.Node {
	end := len(body)
	for end > 0 {
		switch x := body[end-1].(type) {
		case *syntax.Turn:
		case *syntax.Yarn:
			if x.Do != syntax.CutIt && x.Do != syntax.DropIt {
				return body[end:]
			}
		default:
			return body[end:]
		}
		end--
	}
	return body[end:]
}

// lastYarn is the letter of the yarn in which row i ends.
func lastYarn(g Grid, done *model.PieceWork, i int) string {
	row := g.row(i)
	if done.Fabric.Rows[i+1].FromLeft {
		return g.letter(row[len(row)-1])
	}
	return g.letter(row[0])
}

// sameColours reports whether row i has the same colours in both grids, by their yarns' letters.
func sameColours(a, b Grid, i int) bool {
	return slices.EqualFunc(a.row(i), b.row(i), func(x, y uint8) bool { return a.letter(x) == b.letter(y) })
}

// works reports whether rows make the grid without a fault.
func works(lib *stitch.Library, p *pattern.Pattern, piece, size int, rows string, want Grid) bool {
	q := *p
	q.Pieces = slices.Clone(p.Pieces)
	q.Pieces[piece].Rows = rows
	done := &model.Work(lib, &q, size).Pieces[piece]
	got, err := FromFabric(done.Fabric)
	if err != nil || done.Findings.Faults() > 0 || got.Width != want.Width || got.Height != want.Height {
		return false
	}
	for i := range want.Height {
		if !sameColours(got, want, i) {
			return false
		}
	}
	return true
}
