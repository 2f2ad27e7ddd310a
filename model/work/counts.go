package work

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// tally is what a row has of what a stated count names, and what a writer may have meant by another number.
type tally struct {
	n                                       int
	apart                                   int // of a kind: those in no group
	withChains, withoutTurning, withTurning int // -1 where the reading makes no sense
}

// miscount is a stated count that differs from the row.
type miscount struct {
	of        *syntax.Tally
	want, got int
	meant     string // what the number takes in or leaves out by some writers' custom; "" where it is wrong
}

// countOff compares the stated counts with the row, nil if all agree.
func (w *worker) countOff() *miscount {
	groups := slices.ContainsFunc(w.step.count, func(t syntax.Tally) bool { return t.What == syntax.InUnit })
	for i := range w.step.count {
		t := &w.step.count[i]
		if u := w.tree.Units[t.Name]; t.Each || w.probe.base > 0 && t.N.A == 0 || t.What == syntax.InUnit && u != nil && u.Macro {
			continue
		}
		want, got := w.num(t.N), w.tally(t)
		if got.n == 0 && (t.What == syntax.InUnit && t.Name == "group" || t.What == syntax.InKind && (w.isPicot(t.Name) || w.isLump(t.Name))) {
			continue // petals and their like, of which the rows do not speak as groups
		}
		if (t.What == syntax.InUnit || t.What == syntax.InKind) && want+w.halves(t) == got.n || t.What == syntax.InKind && want+w.otherwise(t) == got.n {
			continue
		}
		if want == got.n || groups && t.What == syntax.InKind && want == got.apart { // "(4 V-sts, 2 dc)"
			continue
		}
		m := &miscount{of: t, want: want, got: got.n}
		switch want {
		case got.withChains:
			m.meant = "takes in the chains"
		case got.withoutTurning:
			m.meant = "leaves out the turning chain"
		case got.withTurning:
			m.meant = "takes in the turning chain"
		}
		return m
	}
	return nil
}

// otherwise are the stitches of a kind that the count names apart: "32 dc, 15 long dc".
func (w *worker) otherwise(of *syntax.Tally) (n int) {
	for i := range w.step.count {
		t := &w.step.count[i]
		if t.What == syntax.InKind && t.Name != of.Name && kindName(w.plain(t.Name)) == of.Name {
			n += w.tally(t).n
		}
	}
	return n
}

// halves are the groups that a count names apart from the whole ones: "5 shells, 2 half shells".
func (w *worker) halves(of *syntax.Tally) (n int) {
	for _, t := range w.step.count {
		if t.Each && t.What == of.What && t.Name == of.Name {
			n += w.num(t.N)
		}
	}
	return n
}

// tellCount tells of a stated count that differs, with the likely cause.
func (w *worker) tellCount(m *miscount) {
	f := diag.Finding{Severity: diag.Note, ID: "count", Span: m.of.Span}
	if f.Span == (diag.Span{}) {
		f.Span = w.step.row.Span
	}
	if m.meant != "" {
		f.Message = fmt.Sprintf("the count of %d %s", m.want, m.meant)
	} else {
		f.Severity = diag.Fault
		f.Message = fmt.Sprintf("%d %s stated, %d worked", m.want, w.countedWord(m.of), m.got)
		f.Hint = w.cause(m)
		if m.of.Span.Len() > 0 && m.of.N.A == 0 && m.of.N.Sizes == nil {
			text := fmt.Sprint(m.got)
			if others := w.othersOf(m); others != "" {
				text = others + ", " + text
			}
			f.Mend = &diag.Mend{Label: fmt.Sprintf(`write "(%s %s)"`, text, w.countedWord(m.of)), Span: m.of.Span, Text: text}
		}
	}
	w.say(f)
}

// othersOf are the stitches of other kinds where a count of one kind is that of all stitches of the row: of "20 sc" one is
// a post stitch by now. "" where the count is wrong otherwise.
func (w *worker) othersOf(m *miscount) string {
	if m.of.What != syntax.InKind || len(w.step.count) > 1 || m.got == 0 {
		return ""
	}
	all := syntax.Tally{What: syntax.InSt}
	if w.tally(&all).n != m.want {
		return ""
	}
	var kinds []string
	for _, s := range w.rowStitches() {
		name := w.fab.Kinds[s.Kind].Name
		if name != m.of.Name && s.Flags&(fabric.Chain|fabric.NoLanding|fabric.Picot) == 0 && !slices.Contains(kinds, name) {
			kinds = append(kinds, name)
		}
	}
	var others []string
	for _, name := range kinds {
		of := syntax.Tally{What: syntax.InKind, Name: name}
		others = append(others, fmt.Sprintf("%d %s", w.tally(&of).n, w.countedWord(&of)))
	}
	return strings.Join(others, ", ")
}

// countedWord is the noun of a stated count, as the trade writes it after a number.
func (w *worker) countedWord(t *syntax.Tally) string {
	switch t.What {
	case syntax.InSt:
		if t.Yarn != "" {
			return "sts in " + t.Yarn
		}
		return "sts"
	case syntax.InKind:
		return w.abbreviation(t.Name)
	case syntax.InUnit:
		return unitWord(t.Name) + "s"
	case syntax.InSp:
		if t.Chains > 0 {
			return fmt.Sprintf("ch-%d sps", t.Chains)
		}
		return "sps"
	}
	return w.placeWord(t.What, t.Name, t.Chains) + "s"
}

// rowStitches are the stitches of the row in work.
func (w *worker) rowStitches() []fabric.Stitch { return w.fab.Stitches[w.rowFirst():] }

// tally counts what a stated count names in the row in work.
func (w *worker) tally(t *syntax.Tally) tally {
	var tops, chains, turning, uncounted, kind, apart, spaces, units int
	unit, run, runUnit := int32(-1), 0, int32(-1)
	endRun := func() {
		if run > 0 && (t.Chains == 0 || t.Chains == run) {
			spaces++
		}
		run = 0
	}
	row := w.rowStitches()
	for i := range row {
		s := &row[i]
		if s.Has(fabric.Picot) && t.What == syntax.InKind && w.isPicot(t.Name) {
			kind++
		}
		if s.Flags&(fabric.NoLanding|fabric.Picot) != 0 {
			if s.Has(fabric.Chain) {
				uncounted++
			}
			continue
		}
		if t.Yarn != "" && w.fab.Yarns[s.Yarn] != t.Yarn {
			continue
		}
		if s.Has(fabric.Chain) {
			chains++
			if run > 0 && s.Unit != runUnit {
				endRun()
			}
			run, runUnit = run+1, s.Unit
		} else {
			endRun()
			tops++
			if s.Has(fabric.TurningChain) {
				turning++
			}
			if t.What == syntax.InKind && w.isKind(s, t.Name) {
				kind++
				if s.Unit < 0 {
					apart++
				}
			}
		}
		if s.Unit != unit && s.Unit >= 0 && w.answersTo(w.fab.Units[s.Unit].Name, t.Name) {
			units++
		}
		unit = s.Unit
	}
	endRun()
	oneMore := 0
	if turning == 0 && uncounted > 1 && !w.neverCounts() { // a ch 2 beside its stitch, counted all the same
		oneMore = 1
	}
	switch t.What {
	case syntax.InKind:
		return tally{kind, apart, kind + chains, kind - turning, kind + oneMore}
	case syntax.InUnit:
		return tally{units, -1, -1, -1, -1}
	case syntax.InSp, syntax.InCorner:
		return tally{spaces, -1, -1, -1, -1}
	case syntax.InCh:
		return tally{chains, -1, -1, -1, -1}
	}
	return tally{tops, -1, tops + chains, tops - turning, tops + oneMore}
}

// neverCounts reports whether the pattern says of the row's turning chain that it counts for nothing.
func (w *worker) neverCounts() bool {
	return w.tree.TchCounts[kindName(w.plain(w.firstKind(w.step.body)))] == syntax.CountsNot
}

// firstOne is how writers name the group that a row begins with: "beg cl", "beginning shell".
var firstOne = regexp.MustCompile(`^(?:beg|beginning|starting|start|first)[ -]`)

// answersTo reports whether a group made in this row is meant by a name: groups without names of their own answer to any.
func (w *worker) answersTo(have, want string) bool {
	return want == "" || want == "group" || have == want || w.tree.Units[have] == nil || firstOne.ReplaceAllString(have, "") == want
}
