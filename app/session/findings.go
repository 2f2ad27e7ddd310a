package session

import (
	"slices"
	"strings"

	"strandway/model/diag"
	"strandway/model/edit"
)

// Findings are those of the piece in hand and of the pattern as a whole, their places
// carried over to the present rows. Those whose words have been edited since are left out, and those about what is
// being typed: it is no fault yet.
func (s *Session) Findings() diag.List {
	if s.made == nil {
		return nil
	}
	name := s.Pattern().Pieces[s.piece].Name
	since := s.Since()
	var list diag.List
	for _, f := range s.made.Work.Findings {
		if f.Piece != "" && f.Piece != name {
			continue
		}
		if f.Piece == name && f.Span.Len() > 0 {
			if since.Touched(f.Span) {
				continue
			}
			f.Span = since.Span(f.Span)
			if s.beingTyped(f.Span) || f.ID == "empty" && s.begun(f.Span) || f.ID == "fit" && s.goesOn(f.Span) {
				continue
			}
			if f.Mend != nil {
				m := *f.Mend
				m.Span = since.Span(m.Span)
				f.Mend = &m
			}
		}
		list = append(list, f)
	}
	return list
}

// beingTyped reports whether a stretch of the rows is being typed in.
func (s *Session) beingTyped(span diag.Span) bool {
	return s.typing && span.Start < s.caret.At && s.caret.At <= span.End
}

// begun reports whether the caret stands behind a heading in the same line: the row is being begun.
func (s *Session) begun(heading diag.Span) bool {
	return s.caret.At >= heading.End && s.caret.At <= edit.Line(s.Rows(), heading.End).End
}

// goesOn reports whether a row is the last one, has the caret in it, and does not end yet: stitches that it leaves
// unworked are those still to be worked.
func (s *Session) goesOn(row diag.Span) bool {
	m := s.Made()
	rest := s.Rows()[row.End:]
	words := strings.TrimRight(s.Rows()[row.Start:row.End], " \n")
	if s.caret.At < row.Start || strings.TrimSpace(rest) != "" || words == "" {
		return false
	}
	if strings.HasSuffix(words, ".") || strings.HasSuffix(words, ")") || strings.HasSuffix(words, "turn") {
		return false
	}
	return m.Fabric().Rows[len(m.Fabric().Rows)-1].Unworked > 0
}

// Rest says that the author has stopped typing for a while: what she typed last is judged now.
func (s *Session) Rest() {
	if s.typing {
		s.typing = false
		s.tell(Worked)
	}
}

// NextFinding puts the caret to the next finding in the rows, or with step -1 to the last
// one, and gives it; ok is false when there is none.
func (s *Session) NextFinding(step int) (found diag.Finding, ok bool) {
	list := slices.DeleteFunc(s.Findings(), func(f diag.Finding) bool { return f.Span.Len() == 0 })
	if len(list) == 0 {
		return diag.Finding{}, false
	}
	found = list[0]
	if step < 0 {
		found = list[len(list)-1]
		for _, f := range list {
			if f.Span.Start < s.caret.At {
				found = f
			}
		}
	} else {
		for _, f := range slices.Backward(list) {
			if f.Span.Start > s.caret.At {
				found = f
			}
		}
	}
	s.history.Seal()
	s.caret = edit.At(found.Span.Start)
	s.tell(Caret)
	return found, true
}

// MendAtHand is the finding with a mend that stands in the caret's row, else the first in
// the piece; ok is false when none can be mended.
func (s *Session) MendAtHand() (found diag.Finding, ok bool) {
	line := edit.Line(s.Rows(), s.caret.At)
	for _, f := range s.Findings() {
		if f.Mend == nil {
			continue
		}
		if f.Span.Start >= line.Start && f.Span.Start <= line.End {
			return f, true
		}
		if !ok {
			found, ok = f, true
		}
	}
	return found, ok
}

// Mend makes a finding's mend as one step.
func (s *Session) Mend(f diag.Finding) {
	switch {
	case f.Mend == nil:
	case f.Mend.Yarn != "":
		s.Do("Mend", func(now edit.State) edit.State {
			now.Pattern = edit.AddYarn(now.Pattern, f.Mend.Yarn)
			return now
		})
	default:
		s.Replace("Mend", f.Mend.Span, f.Mend.Text)
	}
}
