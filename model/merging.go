package model

import (
	"fmt"
	"slices"
	"strings"

	"strandway/model/colour"
	"strandway/model/diag"
	"strandway/model/palette"
	"strandway/model/pattern"
)

// checkMerging tells of yarns that touch and cannot be told apart, in the yarns'
// own colours and in each colourway. A pair is told of once, at the first piece
// in which it touches.
func checkMerging(w *Worked) diag.List {
	var list diag.List
	told := map[[2]string]bool{}
	for i := range w.Pieces {
		for _, pair := range w.Touching(i) {
			a, b := &w.Pattern.Yarns[pair.A], &w.Pattern.Yarns[pair.B]
			if !told[[2]string{a.Letter, b.Letter}] {
				told[[2]string{a.Letter, b.Letter}] = true
				list = append(list, merging(w.Pattern, a, b)...)
			}
		}
	}
	return list
}

// Touching gives the yarns that touch in a piece, by their index in the pattern.
func (w *Worked) Touching(piece int) []palette.Pair {
	var out []palette.Pair
	for _, pair := range palette.Touching(w.Pieces[piece].Fabric) {
		a, b := w.indexOf(piece, int(pair.A)), w.indexOf(piece, int(pair.B))
		if a >= 0 && b >= 0 && a != b {
			out = append(out, palette.Pair{A: uint8(min(a, b)), B: uint8(max(a, b))})
		}
	}
	return out
}

// indexOf is the pattern's index of a yarn of a piece's fabric; -1 for one it does not have.
func (w *Worked) indexOf(piece, index int) int {
	yarn, ok := w.YarnOf(piece, index)
	if !ok {
		return -1
	}
	return slices.IndexFunc(w.Pattern.Yarns, func(y pattern.Yarn) bool { return y.Letter == yarn.Letter })
}

// merging compares two yarns in every set of colours they are shown in.
func merging(p *pattern.Pattern, a, b *pattern.Yarn) diag.List {
	var list diag.List
	met := map[[2]string]bool{}
	compare := func(ca, cb, where string) {
		if met[[2]string{ca, cb}] { // the first colourway often is the yarns' own colours
			return
		}
		met[[2]string{ca, cb}] = true
		first, err := colour.Parse(ca)
		second, err2 := colour.Parse(cb)
		if err != nil || err2 != nil {
			return
		}
		visions := palette.Merging(first, second)
		if len(visions) == 0 {
			return
		}
		list = append(list, diag.Finding{Severity: diag.Doubt, ID: "merging-yarns",
			Message: fmt.Sprintf("yarns %s and %s touch and merge %s%s: lightness %.0f and %.0f", a.Letter, b.Letter, seenBy(visions), where,
				colour.Lightness(first), colour.Lightness(second)),
			Hint: "make one of them lighter or darker, or let the program suggest a colourway in equal steps"})
	}
	compare(a.Colour, b.Colour, "")
	for _, way := range p.Colourways {
		shade := func(y *pattern.Yarn) string {
			if c := way.Shades[y.Letter].Colour; c != "" {
				return c
			}
			return y.Colour
		}
		compare(shade(a), shade(b), fmt.Sprintf(" in colourway %q", way.Name))
	}
	return list
}

// seenBy says in which visions yarns merge.
func seenBy(visions []colour.Vision) string {
	if visions[0] == colour.Full {
		return "to every eye"
	}
	words := make([]string, len(visions))
	for i, v := range visions {
		words[i] = v.String()
	}
	return "in " + strings.Join(words, " and ")
}
