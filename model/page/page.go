// Package page turns a whole published page into a pattern.
//
// A page is what people publish: a title, a story, materials, gauge, notes,
// pieces with their rows, remarks among them, lines cut anywhere. [Read] sorts
// its lines, joins what a line break has parted, and leaves the rows of every
// piece in the words in which they were written. No line is dropped: what is
// not rows goes into notes, and rows that could not be read whole stay in
// their piece and are told in the [Report].
package page

import (
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"strandway/model"
	"strandway/model/diag"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// Options say what is known of a page beforehand.
type Options struct {
	Terms string // "US" or "UK"; "" tells them from the page
}

// Report tells how a page was read.
type Report struct {
	Terms   string // the terms in which the page was read, "US" or "UK"
	Unclear bool   // the page does not show its terms clearly: ask
	Unread  []Unread
}

// Unread is a row or line that was not read whole. It is kept as written.
type Unread struct {
	Piece        string
	Row          string // label of the row, "line" for a line between rows
	Line, Column int    // of the word in the page, from 1; columns in runes
	Word         string // the word at which the thread was lost
}

// Read turns a page into a pattern. It always gives one, for the worst page an empty one.
func Read(lib *stitch.Library, text string, o Options) (*pattern.Pattern, Report) {
	r := &reader{lib: lib, text: text, lines: cut(text)}
	r.terms, r.unclear = tellTerms(text)
	if o.Terms != "" {
		r.terms, r.unclear = o.Terms, false
	}
	r.p = &pattern.Pattern{Terms: r.terms, Units: units(text)}
	r.names = map[string]bool{}
	r.sort()
	return r.p, r.report()
}

// reader sorts the lines of one page.
type reader struct {
	lib     *stitch.Library
	text    string
	lines   []line
	terms   string
	unclear bool
	p       *pattern.Pattern

	section  section
	prose    []string // of the pattern's note
	told     bool     // the page has begun to tell, so that no title is to come
	rules    []string // sentences of the notes that govern every row
	pieces   []*piece
	open     *passage   // the row being gathered
	heading  *line      // a piece heading that has no rows yet
	waiting  []*passage // instructions between such a heading and its first row
	only     string     // the sizes that the rows are for, "" for all
	multiple string     // stated before the first piece
	special  *special   // the special stitch being gathered
	names    map[string]bool
	stripes  map[int]string // yarn by row number, from a stripe list
}

// report looks at the rows as the program will read them.
func (r *reader) report() Report {
	out := Report{Terms: r.terms, Unclear: r.unclear}
	o := model.ReadOptions(r.lib, r.p)
	for i, p := range r.pieces {
		tree, findings := syntax.Read(r.p.Pieces[i].Rows, o)
		add := func(row string, at int, word string) {
			line, column := diag.Place(r.text, p.source(at))
			out.Unread = append(out.Unread, Unread{p.name, row, line, column, word})
		}
		for _, row := range tree.Rows {
			if row.Bad {
				at := row.Span.Start
				if j := slices.IndexFunc(findings, func(f diag.Finding) bool {
					return f.Severity == diag.Fault && row.Span.Start <= f.Span.Start && f.Span.Start < row.Span.End
				}); j >= 0 {
					at = findings[j].Span.Start
				}
				add(cmp.Or(row.Label(), "line"), at, row.Lost)
			}
		}
		for _, f := range findings {
			if f.ID == "remark" && f.Severity == diag.Doubt {
				word, _, _ := strings.Cut(tree.Text[f.Span.Start:f.Span.End], " ")
				add("line", f.Span.Start, strings.TrimRight(word, "\n"))
			}
		}
	}
	slices.SortStableFunc(out.Unread, func(a, b Unread) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	return out
}

// units are those that the page measures in first.
func units(text string) string {
	cm, in := measureCM.FindStringIndex(text), measureIn.FindStringIndex(text)
	if in != nil && (cm == nil || in[0] < cm[0]) {
		return "in"
	}
	return "cm"
}

// Plain gives the page as text the reader takes: Unix lines, valid UTF-8.
func Plain(src []byte) string {
	s := strings.TrimPrefix(string(src), "\ufeff")
	s = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\f", "\n").Replace(s)
	if !utf8.ValidString(s) {
		s = strings.ToValidUTF8(s, "?")
	}
	return s
}
