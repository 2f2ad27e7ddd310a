// Package model works a whole pattern: it calls the stages in order for every
// piece and gathers all that they find. It is the page to start reading from.
//
//	rows → syntax.Read → tree → work.Work → fabric → checks
//
// What comes out, a [Worked], holds all that charts, cloth and tables are made
// from. It is never changed; an edited pattern is worked anew.
package model

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/syntax"
	"strandway/model/trade"
	"strandway/model/work"
)

// Limit is how many stitches a piece may have before it is refused: a bed
// cover in lace weight has about 400,000.
const Limit = 1_000_000

// Worked is a pattern worked for one size.
type Worked struct {
	Pattern  *pattern.Pattern
	Size     int // index in Pattern.Sizes; 0 where the pattern names none
	Pieces   []PieceWork
	Findings diag.List // of the pattern and all its pieces
}

// PieceWork is one piece worked.
type PieceWork struct {
	Piece    pattern.Piece
	N        int // the repeats it was worked for
	Tree     *syntax.Tree
	Fabric   *fabric.Fabric
	Proof    work.Proof // of a piece whose foundation is written in n; finding the multiple of another takes a hundred workings
	Findings diag.List
}

// Work reads and works every piece of a pattern for one of its sizes. What
// cannot be read or worked is among the findings; the rest is worked all the same.
func Work(lib *stitch.Library, p *pattern.Pattern, size int) *Worked {
	w := &Worked{Pattern: p, Size: max(0, min(size, len(p.Sizes)-1))}
	w.Findings = checkPattern(p)
	for _, piece := range p.Pieces {
		done := workPiece(lib, p, piece, w.Size)
		w.Pieces = append(w.Pieces, done)
		w.Findings = append(w.Findings, done.Findings...)
	}
	w.Findings = append(w.Findings, checkUse(w)...)
	w.Findings = append(w.Findings, checkFigures(w)...)
	w.Findings = append(w.Findings, checkMerging(w)...)
	w.Findings.Sort()
	return w
}

// workPiece takes one piece through the stages.
func workPiece(lib *stitch.Library, p *pattern.Pattern, piece pattern.Piece, size int) PieceWork {
	tree, findings := syntax.Read(piece.Rows, ReadOptions(lib, p))
	o := work.Options{Size: size, Limit: Limit, RowsForLength: rowsForLength(p.Gauge, sizeOf(p, size))}
	var proof work.Proof
	var doubts diag.List
	if chain := foundation(tree); chain != nil && chain.N.A != 0 {
		o.N = fewest
		proof, doubts = work.Prove(lib, tree, o)
	}
	o.N = repeats(lib, p, tree, proof, o)
	fab, faults := work.Work(lib, tree, o)

	done := PieceWork{Piece: piece, N: o.N, Tree: tree, Fabric: fab, Proof: proof}
	done.Findings = append(findings, unforced(faults, tree)...)
	if done.Findings.Faults() == 0 {
		done.Findings = append(done.Findings, doubts...) // else they would tell the same fault for other n
	}
	done.Findings = append(done.Findings, checkPiece(piece, tree, fab)...)
	for i := range done.Findings {
		done.Findings[i].Piece = piece.Name
	}
	done.Findings.Sort()
	return done
}

// ReadOptions are the pattern's terms, own stitches and sizes, with which its rows are read.
func ReadOptions(lib *stitch.Library, p *pattern.Pattern) syntax.ReadOptions {
	o := syntax.ReadOptions{Library: lib, UK: p.Terms == "UK", Units: map[string]string{}, Yarns: map[string]string{}}
	shared := map[string]bool{"": true} // a name that several yarns have tells none of them
	for _, y := range p.Yarns {
		for _, name := range []string{y.Shade, y.Name} {
			if letter, taken := o.Yarns[name]; taken && letter != y.Letter {
				shared[name] = true
			}
			o.Yarns[name] = y.Letter
		}
	}
	maps.DeleteFunc(o.Yarns, func(name, _ string) bool { return shared[name] })
	nameColours(lib, o.Yarns)
	for _, s := range p.Stitches {
		o.Units[s.Abbreviation] = Definition(lib, s, strings.ToLower(p.Terms))
	}
	for _, s := range p.Sizes {
		o.Sizes = append(o.Sizes, s.Name)
	}
	return o
}

// nameColours lets a page name its yarns by plain colours, as in "join orange".
func nameColours(lib *stitch.Library, yarns map[string]string) {
	named := map[string]bool{}
	for name := range yarns {
		named[strings.ToLower(name)] = true
	}
	groups := lib.Units("us")
	for _, c := range trade.Standard().Colours {
		for _, word := range append(c.Words, c.Name) {
			_, group := groups[word]
			if _, kind := lib.Read(word, "us"); !kind && !group && !named[word] {
				yarns[word] = word
			}
		}
	}
}

// Definition is a special stitch's definition in one set of terms: as written
// where the pattern gives it in these, else translated.
func Definition(lib *stitch.Library, s pattern.Special, terms string) string {
	given := map[string]string{"us": s.US, "uk": s.UK}
	if given[terms] != "" {
		return given[terms]
	}
	written, uk := s.US, false
	if written == "" {
		written, uk = s.UK, true
	}
	tree, _ := syntax.Read("", syntax.ReadOptions{Library: lib, UK: uk, Units: map[string]string{s.Abbreviation: written}})
	unit, ok := tree.Units[s.Abbreviation]
	if !ok {
		return written
	}
	body := syntax.PrintNodes(unit.Body, syntax.PrintOptions{Library: lib, Terms: terms})
	if !unit.Macro {
		body = "(" + body + ")"
		if _, english := given[terms]; english {
			body += " in one place"
		}
	}
	return body
}

// unforced leaves out what working has to say of rows of which part could not
// be read: it follows from the words that are missing.
func unforced(worked diag.List, tree *syntax.Tree) diag.List {
	return slices.DeleteFunc(worked, func(f diag.Finding) bool {
		return slices.ContainsFunc(tree.Rows, func(r *syntax.Row) bool {
			return r.Bad && r.Span.Start <= f.Span.Start && f.Span.Start < r.Span.End
		})
	})
}

// sizeOf is the size of an index; the zero Size where the pattern names none.
func sizeOf(p *pattern.Pattern, size int) pattern.Size {
	if size >= len(p.Sizes) {
		return pattern.Size{}
	}
	return p.Sizes[size]
}

// SizeNamed is the index of a size; an error names the sizes there are.
func SizeNamed(p *pattern.Pattern, name string) (int, error) {
	names := make([]string, len(p.Sizes))
	for i, s := range p.Sizes {
		if s.Name == name {
			return i, nil
		}
		names[i] = s.Name
	}
	return 0, fmt.Errorf("there is no size %q%s", name, listed(names))
}

// PieceNamed is the index of a piece; an error names the pieces there are.
func (w *Worked) PieceNamed(name string) (int, error) {
	names := make([]string, len(w.Pieces))
	for i := range w.Pieces {
		if w.Pieces[i].Piece.Name == name {
			return i, nil
		}
		names[i] = w.Pieces[i].Piece.Name
	}
	return 0, fmt.Errorf("there is no piece %q%s", name, listed(names))
}
