package session

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"strandway/model/diag"
	"strandway/model/edit"
)

// Caret is the caret in the rows of the piece in hand.
func (s *Session) Caret() edit.Caret { return s.caret }

// ChosenText is the text that is chosen, "" when there is a caret only.
func (s *Session) ChosenText() string {
	c := s.caret.Span()
	return s.Rows()[c.Start:c.End]
}

// PutCaret sets the caret; with extend the text from the old anchor on is chosen.
func (s *Session) PutCaret(at int, extend bool) {
	at = min(max(at, 0), len(s.Rows()))
	next := edit.At(at)
	if extend {
		next.Anchor = s.caret.Anchor
	}
	if next == s.caret {
		return
	}
	s.history.Seal()
	s.caret, s.typing = next, false
	s.tell(Caret)
}

// ChooseText chooses a stretch of the rows.
func (s *Session) ChooseText(span diag.Span) {
	s.history.Seal()
	s.caret, s.typing = edit.Caret{Anchor: span.Start, At: span.End}, false
	s.tell(Caret)
}

// Type writes text in place of what is chosen. A word is one step of undo.
func (s *Session) Type(text string) {
	if text == "" {
		return
	}
	if strings.TrimSpace(text) == "" || s.caret.Span().Len() > 0 {
		s.history.Seal()
	}
	s.typing = true
	s.write("Typing", s.caret.Span(), text, s.history.Grow)
}

// Paste writes text as one step.
func (s *Session) Paste(text string) {
	if text == "" && s.caret.Span().Len() == 0 {
		return
	}
	s.history.Seal()
	s.typing = false
	s.write("Paste", s.caret.Span(), strings.ReplaceAll(text, "\r\n", "\n"), s.history.Do)
	s.history.Seal()
}

// Cut takes the chosen text out and gives it back.
func (s *Session) Cut() string {
	text := s.ChosenText()
	if text != "" {
		s.history.Seal()
		s.typing = false
		s.write("Cut", s.caret.Span(), "", s.history.Do)
		s.history.Seal()
	}
	return text
}

// Delete takes out what is chosen, else the letter or the word beside the caret.
func (s *Session) Delete(forward, word bool) {
	span := s.caret.Span()
	if span.Len() == 0 {
		to := s.Beside(s.caret.At, forward, word)
		span = diag.Span{Start: min(to, s.caret.At), End: max(to, s.caret.At)}
	}
	if span.Len() > 0 {
		s.typing = true
		s.write("Deleting", span, "", s.history.Grow)
	}
}

// Replace writes a stretch of the rows anew as one step, and leaves the caret behind it.
func (s *Session) Replace(label string, span diag.Span, text string) {
	s.history.Seal()
	s.typing = false
	s.write(label, span, text, s.history.Do)
	s.history.Seal()
}

// ReplaceTo writes the stretch from an offset to the caret anew as one step.
func (s *Session) ReplaceTo(label string, start int, text string) {
	s.Replace(label, diag.Span{Start: start, End: s.caret.At}, text)
}

// Rewrite gives the piece other rows as one step.
func (s *Session) Rewrite(label, rows string, caret int) {
	s.Do(label, func(now edit.State) edit.State {
		now.Pattern, now.Caret = edit.Rows(now.Pattern, now.Piece, rows), edit.At(caret)
		return now
	})
}

func (s *Session) write(label string, span diag.Span, text string, add func(string, edit.State)) {
	s.step(label, func(now edit.State) edit.State {
		now.Pattern = edit.Replace(now.Pattern, now.Piece, span, text)
		now.Caret = edit.At(span.Start + len(text))
		return now
	}, add)
}

// Beside is the place one letter or one word before or after an offset.
func (s *Session) Beside(at int, forward, word bool) int {
	text := s.Rows()
	next := func(at int) (rune, int) {
		if forward {
			r, n := utf8.DecodeRuneInString(text[at:])
			return r, at + n
		}
		r, n := utf8.DecodeLastRuneInString(text[:at])
		return r, at - n
	}
	_, to := next(at)
	if !word || to == at {
		return to
	}
	inWord := func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' }
	met := false
	for to = at; ; {
		r, beyond := next(to)
		if beyond == to || met && !inWord(r) {
			return to
		}
		met = met || inWord(r)
		to = beyond
	}
}
