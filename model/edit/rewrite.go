package edit

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"strandway/model"
	"strandway/model/diag"
	"strandway/model/strand"
	"strandway/model/syntax"
)

// planning rewrites the rows of one piece for a plan. All is by row of the
// fabric, the foundation first.
type planning struct {
	tree           *syntax.Tree
	work           *model.PieceWork
	needs          []strand.Need
	present, faces []strand.Face // as it is, and as planned
}

// flat reports whether the plan has a say in row r.
func (p *planning) flat(r int) bool {
	return r >= 1 && r < len(p.needs) && !p.needs[r].Around && len(p.needs[r].Yarns) > 0
}

// turns says whether the work is turned after row r.
func (p *planning) turns(r int) bool { return p.faces[r] != p.faces[r+1] }

// carriedOn reports whether the yarn with which row r ends is taken up again where it waits.
func (p *planning) carriedOn(r int) bool {
	if p.needs[r].Around {
		return false
	}
	for k := r + 1; k < len(p.needs); k++ {
		for i, u := range p.needs[k].Yarns {
			if u.Yarn == p.needs[r].Last {
				return i == 0 && p.flat(k) && !p.needs[k].Inset && p.faces[k] != p.faces[r]
			}
		}
	}
	return false
}

// carriedHere reports whether row r begins with a yarn that waits for it at its edge.
func (p *planning) carriedHere(r int) bool {
	if p.needs[r].Around || p.needs[r].Inset || len(p.needs[r].Yarns) == 0 {
		return false
	}
	yarn := p.needs[r].Yarns[0].Yarn
	for k := r - 1; k >= 0; k-- {
		if slices.ContainsFunc(p.needs[k].Yarns, func(u strand.Use) bool { return u.Yarn == yarn }) {
			return !p.needs[k].Around && p.needs[k].Last == yarn && p.faces[k] != p.faces[r]
		}
	}
	return false
}

// inPlace changes each written row where it stands.
func (p *planning) inPlace() string {
	c := &changes{text: p.tree.Text}
	done := map[int]bool{}
	for r := range p.needs {
		source := p.work.Fabric.Rows[r].Source
		if !p.flat(r) || source < 0 || done[source] {
			continue
		}
		done[source] = true
		row := p.tree.Rows[source]
		p.side(c, row, r)
		p.yarns(c, row, r)
		if p.flat(r + 1) {
			p.turn(c, source, r)
		}
	}
	return c.apply()
}

// side writes the side in a heading that names it, and takes it out where the
// row is worked again on the other side.
func (p *planning) side(c *changes, row *syntax.Row, r int) {
	if row.Side == 0 {
		return
	}
	head := p.tree.Text[row.Head.Start:row.Head.End]
	is, was := "RS", "WS"
	if p.faces[r] == strand.WS {
		is, was = was, is
	}
	if p.bothSides(p.work.Fabric.Rows[r].Source) {
		if m := sideMark.FindStringIndex(head); m != nil {
			c.replace(diag.Span{Start: row.Head.Start + m[0], End: row.Head.Start + m[1]}, "")
		}
		return
	}
	if at := strings.Index(head, was); at >= 0 {
		c.replace(diag.Span{Start: row.Head.Start + at, End: row.Head.Start + at + 2}, is)
	}
}

// bothSides reports whether a written row is worked on the right side once and on the wrong side again.
func (p *planning) bothSides(source int) bool {
	var met strand.Face
	for k := range p.faces {
		if p.work.Fabric.Rows[k].Source == source {
			if met != strand.AnyFace && met != p.faces[k] {
				return true
			}
			met = p.faces[k]
		}
	}
	return false
}

// sideMark is a side in a heading, with what sets it apart.
var sideMark = regexp.MustCompile(` \((?:RS|WS)\)|(?:RS|WS), `)

// turn writes after row r whether to turn: in the word that says so now, at its
// end or at the beginning of the next row, or in a word of its own.
func (p *planning) turn(c *changes, source, r int) {
	row := p.tree.Rows[source]
	words := "turn"
	if !p.turns(r) {
		words = "do not turn"
		if p.needs[r+1].Yarns[0].Yarn != p.needs[r].Last && p.carriedOn(r) {
			words += ", place loop on a marker"
		}
	}
	if t := lastTurn(row); t != nil {
		if t.Not != !p.turns(r) {
			c.replace(t.Span, asWritten(p.tree.Text[t.Start:t.End], words))
		}
		return
	}
	if p.turns(r) == turns(p.tree) {
		return
	}
	body := bodySpan(p.tree, row)
	end := body.Start + len(strings.TrimRight(p.tree.Text[body.Start:body.End], " .\n"))
	c.replace(diag.Span{Start: end, End: end}, ", "+words)
}

// lastTurn is the word on turning with which a row ends, nil where it has none.
func lastTurn(row *syntax.Row) *syntax.Turn {
	for k := len(row.Body) - 1; k >= 0; k-- {
		if t, ok := row.Body[k].(*syntax.Turn); ok {
			return t
		}
	}
	return nil
}

// asWritten gives words the capital of what they replace.
func asWritten(old, words string) string {
	if old != "" && old[0] >= 'A' && old[0] <= 'Z' {
		return strings.ToUpper(words[:1]) + words[1:]
	}
	return words
}

// yarns takes out of row r that a yarn is cut which now waits, and that one is joined which has waited.
func (p *planning) yarns(c *changes, row *syntax.Row, r int) {
	letters := p.work.Fabric.Yarns
	first, last := letters[p.needs[r].Yarns[0].Yarn], letters[p.needs[r].Last]
	for _, n := range row.Body {
		y, ok := n.(*syntax.Yarn)
		switch {
		case !ok:
		case y.Do == syntax.CutIt && (y.Letter == "" || y.Letter == last) && p.carriedOn(r):
			c.replace(sentence(p.tree.Text, y.Span), "")
		case y.Do == syntax.JoinIn && (y.Letter == "" || y.Letter == first) && p.carriedHere(r):
			c.replace(y.Span, asWritten(p.tree.Text[y.Start:y.End], "pick up "+first))
		}
	}
}

// sentence is a stretch of text with the stop or comma that sets it apart.
func sentence(text string, s diag.Span) diag.Span {
	for s.Start > 0 && text[s.Start-1] == ' ' {
		s.Start--
	}
	switch {
	case s.Start > 0 && strings.IndexByte(",;", text[s.Start-1]) >= 0:
		s.Start--
	case s.End < len(text) && strings.IndexByte(".,;", text[s.End]) >= 0:
		s.End++
	}
	return s
}

// writtenOut writes a line for every row up to the first round or edging, in
// place of all the written rows that they come from; what a row repeats is
// named by its number.
func (p *planning) writtenOut() string {
	fab := p.work.Fabric
	last := 0
	for p.flat(last + 1) {
		last++
	}
	if last == 0 || !slices.Equal(p.faces[last+1:], p.present[last+1:]) {
		return p.tree.Text
	}
	c := &changes{text: p.tree.Text}
	first := map[int]int{} // the fabric row that a written row made first
	var lines []string
	var from, to int
	for r := 1; r <= last; r++ {
		source := fab.Rows[r].Source
		if source < 0 {
			return p.tree.Text
		}
		row := p.tree.Rows[source]
		if r == 1 {
			from = row.Span.Start
		}
		to = max(to, Line(p.tree.Text, max(row.Span.End-1, row.Span.Start)).End)
		words, again := "", false
		if k, met := first[source]; met {
			words, again = fmt.Sprintf("Rep Row %d", k), true
		} else {
			first[source] = r
			words = strings.TrimRight(p.unturned(row, r), " .,\n")
		}
		switch {
		case r+1 == len(fab.Rows):
		case r < last && p.turns(r), r == last && fab.Rows[r+1].Turned:
			words += ", turn"
		default:
			words += ", do not turn"
		}
		side := "RS, "
		switch {
		case !again && p.bothSides(source):
			side = ""
		case p.faces[r] == strand.WS:
			side = "WS, "
		}
		lines = append(lines, fmt.Sprintf("Row %d (%s%s): %s.", r, side, fab.Yarns[p.needs[r].Yarns[0].Yarn], words))
	}
	if last+1 < len(fab.Rows) { // the written row goes on past the plan
		if source := fab.Rows[last+1].Source; source >= 0 && p.tree.Rows[source].Span.Start < to {
			return p.tree.Text
		}
	}
	for _, row := range p.tree.Rows { // and the rows that only say to work others again
		if row.Span.Start >= to && hasRef(row) {
			to = Line(p.tree.Text, max(row.Span.End-1, row.Span.Start)).End
		}
	}
	c.replace(diag.Span{Start: from, End: to}, strings.Join(lines, "\n"))
	return c.apply()
}

func hasRef(row *syntax.Row) bool {
	return slices.ContainsFunc(row.Body, func(n syntax.Node) bool { _, ok := n.(*syntax.RowRef); return ok })
}

// unturned is the words of a written row without its word on turning and its needless cuts.
func (p *planning) unturned(row *syntax.Row, r int) string {
	c := &changes{text: p.tree.Text}
	body := bodySpan(p.tree, row)
	c.replace(diag.Span{Start: 0, End: body.Start}, "")
	if t := lastTurn(row); t != nil {
		c.replace(sentence(p.tree.Text, t.Span), "")
	}
	p.yarns(c, row, r)
	c.replace(diag.Span{Start: body.End, End: len(p.tree.Text)}, "")
	return c.apply()
}
