package edit

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"strandway/model/diag"
	"strandway/model/syntax"
)

// InsertRow puts a new row with a heading and nothing else behind row i of the tree, and
// gives the new text and the place where the row's words go. Rows after it are renumbered,
// in their headings and wherever a row names them.
func InsertRow(t *syntax.Tree, i int) (text string, caret int) {
	return insert(t, i, func(no int) string { return heading(t.Rows[i], no, turns(t)) })
}

// RepeatRow puts a copy of row i behind it, under the next number.
func RepeatRow(t *syntax.Tree, i int) (text string, caret int) {
	r := t.Rows[i]
	return insert(t, i, func(no int) string { return heading(r, no, turns(t)) + bodyText(t, r) })
}

func insert(t *syntax.Tree, i int, line func(no int) string) (string, int) {
	r := t.Rows[i]
	no := last(r) + 1
	c := &changes{text: t.Text}
	c.renumber(t, func(n int) int {
		if n >= no {
			return n + 1
		}
		return n
	})
	if turns(t) && !r.Round && !unturned(r) {
		c.otherSides(t, i)
	}
	end := Line(t.Text, max(r.Span.End-1, r.Span.Start)).End
	c.replace(diag.Span{Start: end, End: end}, "\n"+line(no))
	text := c.apply()
	return text, Line(text, end+c.shift(end)+1).End
}

// MoveRow exchanges row i with the one above it (down false) or below it, and their numbers.
// ok is false at the ends and between rows that do not stand on lines of their own.
func MoveRow(t *syntax.Tree, i int, down bool) (text string, caret int, ok bool) {
	j := i - 1
	if down {
		j = i + 1
	}
	if j < 0 || j >= len(t.Rows) || !numbered(t.Rows[i]) || !numbered(t.Rows[j]) {
		return t.Text, 0, false
	}
	a, b := t.Rows[min(i, j)], t.Rows[max(i, j)]
	upper, lower := bodySpan(t, a), bodySpan(t, b)
	bodyA, bodyB := t.Text[upper.Start:upper.End], t.Text[lower.Start:lower.End]
	c := &changes{text: t.Text}
	c.replace(upper, bodyB)
	c.replace(lower, bodyA)
	text = c.apply()
	if down {
		return text, lower.Start + len(bodyB) - len(bodyA), true
	}
	return text, upper.Start, true
}

// CarryRow puts row i in the place of row j; the rows between move by one, and the numbers stay in order. ok is false
// where one of them has no number.
func CarryRow(t *syntax.Tree, i, j int) (text string, caret int, ok bool) {
	from, to := min(i, j), max(i, j)
	if from == to || from < 0 || to >= len(t.Rows) {
		return t.Text, 0, false
	}
	var bodies []string
	for _, r := range t.Rows[from : to+1] {
		if !numbered(r) {
			return t.Text, 0, false
		}
		bodies = append(bodies, bodyText(t, r))
	}
	if i < j {
		bodies = append(bodies[1:], bodies[0])
	} else {
		bodies = append([]string{bodies[len(bodies)-1]}, bodies[:len(bodies)-1]...)
	}
	c := &changes{text: t.Text}
	for k, r := range t.Rows[from : to+1] {
		c.replace(bodySpan(t, r), bodies[k])
	}
	at := bodySpan(t, t.Rows[j]).Start
	return c.apply(), at + c.shift(at), true
}

// DeleteRow takes row i out and closes the numbers behind it.
func DeleteRow(t *syntax.Tree, i int) (text string, caret int) {
	r := t.Rows[i]
	s := diag.Span{Start: Line(t.Text, r.Span.Start).Start, End: Line(t.Text, max(r.Span.End-1, r.Span.Start)).End}
	if s.End < len(t.Text) {
		s.End++
	} else if s.Start > 0 {
		s.Start--
	}
	c := &changes{text: t.Text}
	if numbered(r) {
		gone := last(r) - r.From + 1
		c.renumber(t, func(n int) int {
			if n > last(r) {
				return n - gone
			}
			return n
		})
		if gone%2 == 1 && turns(t) && !r.Round && !unturned(r) {
			c.otherSides(t, i)
		}
	}
	c.replace(s, "")
	return c.apply(), min(s.Start, len(t.Text)-s.Len())
}

// ToggleTurn makes a row that ends in "turn" end in "do not turn", and the other way round;
// a row that says neither gets "do not turn", for rows turn by custom.
func ToggleTurn(t *syntax.Tree, i int) string {
	r := t.Rows[i]
	c := &changes{text: t.Text}
	for k := len(r.Body) - 1; k >= 0; k-- {
		turn, ok := r.Body[k].(*syntax.Turn)
		if !ok {
			continue
		}
		words := "do not turn"
		if turn.Not {
			words = "turn"
		}
		if old := t.Text[turn.Start:turn.End]; old != "" && old[0] >= 'A' && old[0] <= 'Z' {
			words = strings.ToUpper(words[:1]) + words[1:]
		}
		c.replace(turn.Span, words)
		return c.apply()
	}
	body := bodySpan(t, r)
	end := body.Start + len(strings.TrimRight(t.Text[body.Start:body.End], " .\n"))
	c.replace(diag.Span{Start: end, End: end}, ", do not turn")
	return c.apply()
}

const aHeading = `(?:(?:row|rnd|round|r)s?\s*\d+|\d+(?:st|nd|rd|th)?\s+(?:row|rnd|round)|next\s+(?:row|rnd|round))\b[^:]*:`

var (
	twoHeadings = regexp.MustCompile(`(?i)^\s*` + aHeading + `\s*(` + aHeading + `)$`)
	headingOnly = regexp.MustCompile(`(?i)^\s*` + aHeading + `\s*$`)
	beginsRow   = regexp.MustCompile(`(?i)^\s*` + aHeading)
)

// OwnHeading takes away the heading that the program began a row with where the author has
// written one of her own behind it; ok is false where she has not.
func OwnHeading(written string) (own string, ok bool) {
	m := twoHeadings.FindStringSubmatch(written)
	if m == nil {
		return written, false
	}
	return m[1], true
}

// Instead reports whether text that is pasted behind what is written in a line so far takes the place of it: a
// row with its heading, where there is nothing but a heading yet.
func Instead(written, pasted string) bool {
	return headingOnly.MatchString(written) && beginsRow.MatchString(pasted)
}

// heading is what stands before the words of row no, in the manner of the row before it.
func heading(before *syntax.Row, no int, turned bool) string {
	h := "Row "
	if before.Round {
		h = "Rnd "
	}
	h += strconv.Itoa(no)
	var remarks []string
	switch {
	case before.Side == 0:
	case (before.Side == 'R') == (turned && !before.Round && !unturned(before)):
		remarks = append(remarks, "WS")
	default:
		remarks = append(remarks, "RS")
	}
	if before.Yarn != "" {
		remarks = append(remarks, before.Yarn)
	}
	if remarks != nil {
		h += " (" + strings.Join(remarks, ", ") + ")"
	}
	return h + ": "
}

var eitherSide = regexp.MustCompile(`\b(?:RS|WS)\b`)

// otherSides marks the rows behind row i of the same run RS for WS and WS for RS: one turn more or less lies before them.
func (c *changes) otherSides(t *syntax.Tree, i int) {
	before := t.Rows[i].From
	for _, r := range t.Rows[i+1:] {
		if r.From > 0 && r.From <= before || r.Round {
			return // the numbers begin anew
		}
		before = max(before, r.From)
		if m := eitherSide.FindStringIndex(t.Text[r.Head.Start:r.Head.End]); m != nil {
			at := diag.Span{Start: r.Head.Start + m[0], End: r.Head.Start + m[1]}
			other := "RS"
			if t.Text[at.Start:at.End] == other {
				other = "WS"
			}
			c.replace(at, other)
		}
	}
}

// unturned reports whether a row says that the work is not turned behind it.
func unturned(r *syntax.Row) bool {
	not := false
	for _, n := range r.Body {
		if turn, ok := n.(*syntax.Turn); ok {
			not = turn.Not
		}
	}
	return not
}

// turns tells whether the rows of a piece turn by custom.
func turns(t *syntax.Tree) bool { return !t.NoTurn }

func numbered(r *syntax.Row) bool { return r.From > 0 }

// last is the last number of a row's heading, 0 for a row without one.
func last(r *syntax.Row) int { return max(r.From, r.To) }

// bodySpan is the row without its heading.
func bodySpan(t *syntax.Tree, r *syntax.Row) diag.Span {
	s := diag.Span{Start: r.Head.End, End: r.Span.End}
	if r.Head.Len() == 0 {
		s.Start = r.Span.Start
	}
	for s.Start < s.End && t.Text[s.Start] == ' ' {
		s.Start++
	}
	for s.End > s.Start && t.Text[s.End-1] == '\n' {
		s.End--
	}
	return s
}

func bodyText(t *syntax.Tree, r *syntax.Row) string {
	s := bodySpan(t, r)
	return t.Text[s.Start:s.End]
}

// changes are replacements in one text, made all at once.
type changes struct {
	text string
	all  []change
}

type change struct {
	span diag.Span
	text string
}

func (c *changes) replace(s diag.Span, text string) { c.all = append(c.all, change{s, text}) }

// apply makes the changes; one that lies inside another is left out.
func (c *changes) apply() string {
	slices.SortStableFunc(c.all, func(a, b change) int { return a.span.Start - b.span.Start })
	var out strings.Builder
	at := 0
	for _, x := range c.all {
		if x.span.Start < at {
			continue
		}
		out.WriteString(c.text[at:x.span.Start])
		out.WriteString(x.text)
		at = x.span.End
	}
	out.WriteString(c.text[at:])
	return out.String()
}

// shift is how far the changes before an offset push it.
func (c *changes) shift(offset int) int {
	by := 0
	for _, x := range c.all {
		if x.span.End <= offset && x.span.Len() > 0 {
			by += len(x.text) - x.span.Len()
		}
	}
	return by
}

var (
	rowNumbers = regexp.MustCompile(`(?i)\b(?:rows?|rnds?|rounds?)\s+\d+(?:\s*(?:-|–|,|and|to|&)\s*(?:rows?\s+|rnds?\s+|rounds?\s+)?\d+)*`)
	digits     = regexp.MustCompile(`\d+`)
)

// renumber rewrites the row numbers in headings and in what rows say of other rows.
func (c *changes) renumber(t *syntax.Tree, to func(int) int) {
	in := func(s diag.Span) {
		for _, m := range rowNumbers.FindAllStringIndex(t.Text[s.Start:s.End], -1) {
			for _, d := range digits.FindAllStringIndex(t.Text[s.Start+m[0]:s.Start+m[1]], -1) {
				at := diag.Span{Start: s.Start + m[0] + d[0], End: s.Start + m[0] + d[1]}
				n, err := strconv.Atoi(t.Text[at.Start:at.End])
				if err == nil && to(n) != n {
					c.replace(at, strconv.Itoa(to(n)))
				}
			}
		}
	}
	for _, r := range t.Rows {
		in(r.Head)
		in(bodySpan(t, r))
	}
}
