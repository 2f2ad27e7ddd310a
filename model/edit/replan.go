package edit

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"strandway/model"
	"strandway/model/diag"
	"strandway/model/stitch"
	"strandway/model/strand"
	"strandway/model/syntax"
)

// Replan is a piece planned so that as little as possible is cut.
type Replan struct {
	Present, Best strand.Plan
	Rows          string // the rows rewritten so; as they are where the present way is as good
}

// Better reports whether the plan is better than the present way.
func (r *Replan) Better() bool { return r.Best.Less(r.Present) }

// Strands plans which rows of a piece to turn and on which side to begin, and
// rewrites the rows so: the words on turning, the sides in headings, and what is
// said of cutting and joining yarns that are now carried. Rows that several
// written rows are worked from are written out one by one where they no longer
// all turn alike. An error says why the rows cannot be planned or rewritten.
func Strands(lib *stitch.Library, w *model.Worked, piece int) (*Replan, error) {
	of := &w.Pieces[piece]
	if of.Findings.Faults() > 0 {
		return nil, errors.New("the rows have faults, so it is not known where the yarns wait: mend them first")
	}
	needs, present := strand.Needs(of.Fabric, w.RowCM(piece))
	if len(needs) == 0 {
		return nil, fmt.Errorf("piece %q has no rows worked flat, each in one yarn, that could be planned", of.Piece.Name)
	}
	best, ok := strand.Best(needs)
	if !ok {
		return nil, fmt.Errorf("piece %q has more than %d yarns: that is more than can be planned", of.Piece.Name, strand.MaxPlanYarns)
	}
	if best.Faces[0] != present[0] && needs[0].Face == strand.AnyFace { // begin as it is, unless that costs
		begun := slices.Clone(needs)
		begun[0].Face = present[0]
		if same, _ := strand.Best(begun); !best.Less(same) {
			best = same
		}
	}
	out := &Replan{Present: presentPlan(w, piece, needs, present), Best: best, Rows: of.Piece.Rows}
	if !out.Better() {
		return out, nil
	}
	p := planning{tree: of.Tree, work: of, needs: needs, faces: best.Faces}
	for _, write := range []func() string{p.inPlace, p.writtenOut} {
		out.Rows = write()
		if p.holds(lib, w, piece, out) {
			return out, nil
		}
	}
	return nil, fmt.Errorf("piece %q could be worked with %d cuts, but its rows would not come out when turned otherwise", of.Piece.Name, best.Cuts)
}

// presentPlan is what the rows cost as they are written, cuts that need not be included.
func presentPlan(w *model.Worked, piece int, needs []strand.Need, faces []strand.Face) strand.Plan {
	p := strand.Judge(needs, faces)
	s := strand.Follow(w.Pieces[piece].Fabric, w.RowCM(piece))
	cuts, longest := 0, 0.0
	for i := range s.ByYarn {
		joins := 0
		for _, j := range s.ByYarn[i].Joins {
			if j.Row <= len(needs) {
				joins++
			}
		}
		cuts += max(0, joins-1)
		for _, f := range s.ByYarn[i].Floats {
			if f.To <= len(needs) {
				longest = max(longest, f.CM)
			}
		}
	}
	p.Cuts, p.Longest = cuts, longest
	return p
}

// planning rewrites the rows of one piece for a plan.
type planning struct {
	tree  *syntax.Tree
	work  *model.PieceWork
	needs []strand.Need
	faces []strand.Face // of rows 1, 2 ... of the fabric
}

// face is the face on which fabric row r is to be worked.
func (p *planning) face(r int) strand.Face { return p.faces[r-1] }

// turns says whether the work is turned after fabric row r.
func (p *planning) turns(r int) bool { return p.face(r) != p.face(r+1) }

// last is the last row of the plan.
func (p *planning) last() int { return len(p.faces) }

// carriedOn reports whether the yarn of row r is taken up again where it waits.
func (p *planning) carriedOn(r int) bool {
	for k := r + 1; k <= p.last(); k++ {
		if p.needs[k-1].Yarn == p.needs[r-1].Yarn {
			return p.face(k) != p.face(r)
		}
	}
	return false
}

// carriedHere reports whether row r takes up a yarn that waits for it.
func (p *planning) carriedHere(r int) bool {
	for k := r - 1; k >= 1; k-- {
		if p.needs[k-1].Yarn == p.needs[r-1].Yarn {
			return p.face(k) != p.face(r)
		}
	}
	return false
}

// inPlace changes each written row where it stands.
func (p *planning) inPlace() string {
	c := &changes{text: p.tree.Text}
	done := map[int]bool{}
	for r := 1; r <= p.last(); r++ {
		source := p.work.Fabric.Rows[r].Source
		if source < 0 || done[source] {
			continue
		}
		done[source] = true
		row := p.tree.Rows[source]
		p.side(c, row, r)
		p.yarns(c, row, r)
		if r < p.last() {
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
	if p.face(r) == strand.WS {
		is, was = was, is
	}
	for k := r + 1; k <= p.last(); k++ {
		if p.work.Fabric.Rows[k].Source == p.work.Fabric.Rows[r].Source && p.face(k) != p.face(r) {
			if m := sideMark.FindStringIndex(head); m != nil {
				c.replace(diag.Span{Start: row.Head.Start + m[0], End: row.Head.Start + m[1]}, "")
			}
			return
		}
	}
	if at := strings.Index(head, was); at >= 0 {
		c.replace(diag.Span{Start: row.Head.Start + at, End: row.Head.Start + at + 2}, is)
	}
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
		if p.needs[r].Yarn != p.needs[r-1].Yarn && p.carriedOn(r) {
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
	for _, n := range row.Body {
		y, ok := n.(*syntax.Yarn)
		switch {
		case !ok || y.Letter != "" && y.Letter != p.work.Fabric.Yarns[p.needs[r-1].Yarn]:
		case y.Do == syntax.CutIt && p.carriedOn(r):
			c.replace(sentence(p.tree.Text, y.Span), "")
		case y.Do == syntax.JoinIn && p.carriedHere(r):
			c.replace(y.Span, asWritten(p.tree.Text[y.Start:y.End], "pick up "+p.work.Fabric.Yarns[p.needs[r-1].Yarn]))
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

// writtenOut writes a line for every row of the plan, in place of all the
// written rows that they come from; what a row repeats is named by its number.
func (p *planning) writtenOut() string {
	fab := p.work.Fabric
	c := &changes{text: p.tree.Text}
	first := map[int]int{} // the fabric row that a written row made first
	var lines []string
	var from, to int
	for r := 1; r <= p.last(); r++ {
		source := fab.Rows[r].Source
		if source < 0 {
			return p.tree.Text
		}
		row := p.tree.Rows[source]
		if r == 1 {
			from = row.Span.Start
		}
		to = max(to, Line(p.tree.Text, max(row.Span.End-1, row.Span.Start)).End)
		words := ""
		if k, met := first[source]; met {
			words = fmt.Sprintf("Rep Row %d", k)
		} else {
			first[source] = r
			words = strings.TrimRight(p.unturned(row, r), " .,\n")
		}
		if r < p.last() && !p.turns(r) {
			words += ", do not turn"
		} else if r < p.last() {
			words += ", turn"
		}
		side := "RS"
		if p.face(r) == strand.WS {
			side = "WS"
		}
		lines = append(lines, fmt.Sprintf("Row %d (%s, %s): %s.", r, side, fab.Yarns[p.needs[r-1].Yarn], words))
	}
	if p.last()+1 < len(fab.Rows) { // the written row goes on past the plan
		if source := fab.Rows[p.last()+1].Source; source >= 0 && p.tree.Rows[source].Span.Start < to {
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

// holds reports whether the rewritten rows are worked as planned and bring no new fault or doubt.
func (p *planning) holds(lib *stitch.Library, w *model.Worked, piece int, out *Replan) bool {
	again := model.Work(lib, Rows(w.Pattern, piece, out.Rows), w.Size)
	if again.Pieces[piece].Findings.Faults() > 0 || doubts(again.Pieces[piece].Findings) > doubts(p.work.Findings) || len(again.Pieces[piece].Fabric.Rows) != len(p.work.Fabric.Rows) {
		return false
	}
	needs, faces := strand.Needs(again.Pieces[piece].Fabric, again.RowCM(piece))
	if len(faces) != len(p.faces) {
		return false
	}
	now := presentPlan(again, piece, needs, faces)
	return slices.Equal(faces, p.faces) && now.Cuts <= out.Best.Cuts
}

func doubts(list diag.List) (n int) {
	for _, f := range list {
		if f.Severity == diag.Doubt {
			n++
		}
	}
	return n
}
