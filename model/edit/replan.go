package edit

import (
	"errors"
	"fmt"
	"slices"

	"strandway/model"
	"strandway/model/diag"
	"strandway/model/stitch"
	"strandway/model/strand"
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
// said of cutting and joining yarns that are now carried. Rounds, edgings and
// rows in several yarns stay as they are; the rows between them are planned
// round them. Rows that several written rows are worked from are written out
// one by one where they no longer all turn alike. An error says why the rows
// cannot be planned or rewritten.
func Strands(lib *stitch.Library, w *model.Worked, piece int) (*Replan, error) {
	of := &w.Pieces[piece]
	if of.Findings.Faults() > 0 {
		return nil, errors.New("the rows have faults, so it is not known where the yarns wait: mend them first")
	}
	needs, present := strand.Needs(of.Fabric, w.RowCM(piece))
	if !slices.ContainsFunc(needs[min(1, len(needs)):], func(n strand.Need) bool { return !n.Around }) {
		return nil, fmt.Errorf("piece %q has no rows worked flat that could be turned otherwise", of.Piece.Name)
	}
	best, ok := strand.Best(needs)
	if !ok {
		return nil, fmt.Errorf("piece %q has more than %d yarns: that is more than can be planned", of.Piece.Name, strand.MaxPlanYarns)
	}
	if best.Faces[1] != present[1] && needs[1].Face == strand.AnyFace { // begin as it is, unless that costs
		begun := slices.Clone(needs)
		begun[1].Face = present[1]
		if same, _ := strand.Best(begun); !best.Less(same) {
			best = same
		}
	}
	out := &Replan{Present: presentPlan(w, piece, needs, present), Best: best, Rows: of.Piece.Rows}
	if !out.Better() {
		return out, nil
	}
	p := planning{tree: of.Tree, work: of, needs: needs, present: present, faces: best.Faces}
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
	p.Cuts, p.Longest = s.Cut(), s.Longest.CM
	return p
}

// holds reports whether the rewritten rows are worked as planned and bring no new fault or doubt.
func (p *planning) holds(lib *stitch.Library, w *model.Worked, piece int, out *Replan) bool {
	again := model.Work(lib, Rows(w.Pattern, piece, out.Rows), w.Size)
	if again.Pieces[piece].Findings.Faults() > 0 || doubts(again.Pieces[piece].Findings) > doubts(p.work.Findings) || len(again.Pieces[piece].Fabric.Rows) != len(p.work.Fabric.Rows) {
		return false
	}
	for r := range p.work.Fabric.Rows {
		now, was := &again.Pieces[piece].Fabric.Rows[r], &p.work.Fabric.Rows[r]
		if now.Count != was.Count || now.Chains != was.Chains || now.Last-now.First != was.Last-was.First {
			return false
		}
	}
	needs, faces := strand.Needs(again.Pieces[piece].Fabric, again.RowCM(piece))
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
