// Package edit changes patterns: the rows of a piece, its yarns and
// colourways. Every edit takes a pattern and gives a new one that shares what it
// did not touch, and [History] keeps them in order for undo.
//
// Edits of rows are edits of text. What an author wrote elsewhere in a row is
// never rewritten, not even its spelling.
package edit

import (
	"slices"
	"strings"

	"strandway/model/diag"
	"strandway/model/pattern"
)

// Rows is p with other rows for one piece.
func Rows(p *pattern.Pattern, piece int, rows string) *pattern.Pattern {
	q := *p
	q.Pieces = slices.Clone(p.Pieces)
	q.Pieces[piece].Rows = rows
	return &q
}

// Replace is p with a stretch of one piece's rows written anew.
func Replace(p *pattern.Pattern, piece int, span diag.Span, text string) *pattern.Pattern {
	rows := p.Pieces[piece].Rows
	return Rows(p, piece, rows[:span.Start]+text+rows[span.End:])
}

// Shade is p with another shade for one yarn in a colourway, or, with an empty
// colourway, for the yarn itself.
func Shade(p *pattern.Pattern, colourway, letter string, shade pattern.Shade) *pattern.Pattern {
	q := *p
	if colourway == "" {
		q.Yarns = slices.Clone(p.Yarns)
		for i := range q.Yarns {
			if q.Yarns[i].Letter == letter {
				q.Yarns[i].Shade, q.Yarns[i].Colour = shade.Shade, shade.Colour
			}
		}
		return &q
	}
	q.Colourways = slices.Clone(p.Colourways)
	for i := range q.Colourways {
		if q.Colourways[i].Name != colourway {
			continue
		}
		shades := make(map[string]pattern.Shade, len(q.Colourways[i].Shades)+1)
		for l, s := range q.Colourways[i].Shades {
			shades[l] = s
		}
		shades[letter] = shade
		q.Colourways[i].Shades = shades
	}
	return &q
}

// AddColourway is p with one more colourway, which begins with the shades given.
func AddColourway(p *pattern.Pattern, name string, shades map[string]pattern.Shade) *pattern.Pattern {
	q := *p
	q.Colourways = append(slices.Clone(p.Colourways), pattern.Colourway{Name: name, Shades: shades})
	return &q
}

// RenameColourway is p with another name for a colourway.
func RenameColourway(p *pattern.Pattern, old, name string) *pattern.Pattern {
	q := *p
	q.Colourways = slices.Clone(p.Colourways)
	for i := range q.Colourways {
		if q.Colourways[i].Name == old {
			q.Colourways[i].Name = name
		}
	}
	return &q
}

// Line is the line of text around an offset, without its line break.
func Line(text string, offset int) diag.Span {
	offset = min(max(offset, 0), len(text))
	s := diag.Span{Start: strings.LastIndexByte(text[:offset], '\n') + 1, End: len(text)}
	if n := strings.IndexByte(text[offset:], '\n'); n >= 0 {
		s.End = offset + n
	}
	return s
}
