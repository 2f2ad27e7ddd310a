package model

import (
	"fmt"
	"slices"
	"strings"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/pattern"
	"strandway/model/syntax"
)

// checkPattern looks at what the head of the file says, whatever the rows say.
func checkPattern(p *pattern.Pattern) diag.List {
	var list diag.List
	add := func(severity diag.Severity, id, message, hint string) {
		list = append(list, diag.Finding{Severity: severity, ID: id, Message: message, Hint: hint})
	}
	if len(p.Pieces) == 0 {
		add(diag.Note, "no-piece", "the pattern has no piece yet", "write [[piece]], a name, and its rows")
	}
	if stitches, rows := gauge(p.Gauge); stitches == 0 || rows == 0 {
		add(diag.Note, "no-gauge", "the pattern gives no gauge, so finished sizes are not known",
			"measure a blocked swatch and write its stitches and rows under [gauge]")
	}
	for _, c := range p.Colourways {
		for _, letter := range unknownLetters(p, c.Shades) {
			add(diag.Doubt, "colourway-yarn", fmt.Sprintf("colourway %q names a yarn %s that the pattern does not have", c.Name, letter),
				"add the yarn, or take the letter out")
		}
	}
	for _, y := range p.Yarns {
		if _, ok := p.Yarn(y.HeldWith); y.HeldWith != "" && !ok {
			add(diag.Doubt, "held-yarn", fmt.Sprintf("yarn %s is held with a yarn %s that the pattern does not have", y.Letter, y.HeldWith),
				"add the yarn, or take held_with out")
		}
	}
	if s := p.Gauge.Swatch; s != nil {
		for _, letter := range unknownLetters(p, s.Grams) {
			add(diag.Doubt, "swatch-yarn", fmt.Sprintf("the swatch weighs a yarn %s that the pattern does not have", letter),
				"add the yarn, or take the letter out")
		}
	}
	return list
}

// unknownLetters are the letters that no yarn of the pattern has, in order.
func unknownLetters[V any](p *pattern.Pattern, by map[string]V) []string {
	var out []string
	for letter := range by {
		if _, ok := p.Yarn(letter); !ok {
			out = append(out, letter)
		}
	}
	slices.Sort(out)
	return out
}

// checkPiece compares what a piece states with what working it gave.
func checkPiece(piece pattern.Piece, tree *syntax.Tree, fab *fabric.Fabric) diag.List {
	var list diag.List
	if strings.TrimSpace(piece.Rows) == "" {
		return append(list, diag.Finding{Severity: diag.Note, ID: "no-rows", Message: "this piece has no rows yet",
			Hint: "begin with a foundation: ch 20"})
	}
	if chain := foundation(tree); chain != nil && piece.Multiple != "" {
		multiple, plus, err := pattern.ParseMultiple(piece.Multiple)
		if err == nil && !takes(chain.N, multiple, plus) {
			list = append(list, diag.Finding{Severity: diag.Doubt, ID: "multiple", Row: "Foundation", Span: chain.Span,
				Message: fmt.Sprintf("a foundation of %s chains is no multiple of %s and a turning chain", written(chain.N), piece.Multiple),
				Hint:    "state the stitches of a repeat and the edge stitches, without the chains for turning"})
		}
	}
	if shape, ok := worked[piece.Worked]; ok {
		if i := slices.IndexFunc(fab.Rows, func(r fabric.Row) bool { return r.No > 0 && r.Shape != shape.want }); i >= 0 {
			list = append(list, diag.Finding{Severity: diag.Doubt, ID: "worked", Row: fab.Rows[i].Label,
				Message: fmt.Sprintf("the piece is said to be worked %s, but this is worked %s", shape.words, manner[fab.Rows[i].Shape]),
				Hint:    fmt.Sprintf("write worked = %q, or mend the row", said[fab.Rows[i].Shape])})
		}
	}
	return list
}

// worked gives the shape of the rows of a piece by what the file says of it.
var worked = map[string]struct {
	want  fabric.Shape
	words string
}{
	"flat":          {fabric.Flat, "flat"},
	"joined rounds": {fabric.Joined, "in joined rounds"},
	"spiral":        {fabric.Spiral, "in a spiral"},
}

var (
	manner = [...]string{fabric.Flat: "flat", fabric.Joined: "as a joined round", fabric.Spiral: "in a spiral"}
	said   = [...]string{fabric.Flat: "flat", fabric.Joined: "joined rounds", fabric.Spiral: "spiral"}
)

// takes reports whether a foundation has as many chains as a multiple of
// stitches and a turning chain of up to five. 4n + 6 takes 4 + 1: it is 4 + 1
// with one repeat more, and a chain to turn.
func takes(chains syntax.Num, multiple, plus int) bool {
	if chains.Sizes != nil || chains.A%multiple != 0 {
		return chains.Sizes != nil
	}
	return ((chains.B-plus)%multiple+multiple)%multiple <= 5
}

// written is a number as rows write it.
func written(q syntax.Num) string {
	switch {
	case q.A == 0:
		return fmt.Sprint(q.B)
	case q.B < 0:
		return fmt.Sprintf("%dn - %d", q.A, -q.B)
	}
	return fmt.Sprintf("%dn + %d", q.A, q.B)
}

// checkUse compares the yarns and special stitches the pattern names with those its rows use.
func checkUse(w *Worked) diag.List {
	var list diag.List
	yarns, words := map[string]bool{}, map[string]bool{}
	for i := range w.Pieces {
		piece := &w.Pieces[i]
		for _, letter := range piece.Fabric.Yarns {
			_, known := w.Pattern.Yarn(letter)
			if !known && letter != "" && len(w.Pattern.Yarns) > 0 && !yarns[letter] {
				row := firstRowIn(piece.Fabric, letter)
				list = append(list, diag.Finding{Severity: diag.Doubt, ID: "no-yarn", Piece: piece.Piece.Name, Row: row.label, Span: row.span(piece.Tree),
					Message: fmt.Sprintf("yarn %s is worked, but the pattern does not say what it is", letter),
					Hint:    fmt.Sprintf("add yarn %s to the pattern, or take a letter that it has", letter),
					Mend:    &diag.Mend{Label: "add yarn " + letter, Yarn: letter}})
			}
			yarns[letter] = true
		}
		usedWords(piece.Tree, words)
	}
	if len(w.Pieces) == 0 || w.Findings.Faults() > 0 {
		return list // rows that cannot be worked may well use the rest
	}
	for _, y := range w.Pattern.Yarns {
		if !yarns[y.Letter] && len(w.Pattern.Yarns) > 1 {
			list = append(list, diag.Finding{Severity: diag.Note, ID: "unused-yarn", Message: fmt.Sprintf("no row is worked in yarn %s", y.Letter),
				Hint: "name it in a row's heading, as in Row 3 (" + y.Letter + "), or take it out"})
		}
	}
	for _, s := range w.Pattern.Stitches {
		if !words[strings.ToLower(s.Abbreviation)] {
			list = append(list, diag.Finding{Severity: diag.Note, ID: "unused-stitch",
				Message: fmt.Sprintf("the special stitch %s is defined, but no row works it", s.Abbreviation), Hint: "take it out, or use it"})
		}
	}
	return list
}

// yarnRow is the first row in which a yarn is worked.
type yarnRow struct {
	label  string
	source int // index in the tree's rows, -1 for none
}

func firstRowIn(fab *fabric.Fabric, letter string) yarnRow {
	for i := range fab.Stitches {
		if s := &fab.Stitches[i]; fab.Yarns[s.Yarn] == letter {
			row := &fab.Rows[s.Row]
			return yarnRow{row.Label, row.Source}
		}
	}
	return yarnRow{source: -1}
}

// span is the heading of the row as written.
func (r yarnRow) span(tree *syntax.Tree) diag.Span {
	if r.source < 0 || r.source >= len(tree.Rows) {
		return diag.Span{}
	}
	return tree.Rows[r.source].Head
}

// usedWords notes every kind and group that the rows of a tree name, in small letters.
func usedWords(tree *syntax.Tree, words map[string]bool) {
	add := func(word string) { words[strings.ToLower(word)] = true }
	note := func(n syntax.Node) bool {
		var place *syntax.Place
		switch n := n.(type) {
		case *syntax.Make:
			add(n.Kind)
			if n.Unit != nil {
				add(n.Unit.Name)
			}
			place = n.Place
		case *syntax.Group:
			add(n.Name)
			place = n.Place
		}
		for ; place != nil; place = place.Of {
			add(place.Name)
		}
		return true
	}
	for _, row := range tree.Rows {
		syntax.Walk(row.Body, note)
	}
	for _, unit := range tree.Units {
		syntax.Walk(unit.Body, note)
	}
}

// listed puts the names there are behind a sentence, or says that there are none.
func listed(names []string) string {
	if len(names) == 0 {
		return "; the pattern names none"
	}
	return "; there is " + strings.Join(names, ", ")
}
