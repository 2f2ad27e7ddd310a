package app

import (
	"strings"

	"strandway/app/translation"
	"strandway/model/diag"
)

// mend writes the mend at hand.
func (w *window) mend() {
	if f, ok := w.s.MendAtHand(); ok {
		w.s.Mend(f)
	}
}

// nextFinding goes from finding to finding.
func (w *window) nextFinding(step int) {
	if f, ok := w.s.NextFinding(step); ok {
		w.say(sentence(f))
		w.win.Canvas().Focus(w.page)
	} else {
		w.say("Nothing to say about the rows.")
	}
}

// sentence is a finding as the window says it.
func sentence(f diag.Finding) string {
	s := translation.Sentence(f.Message)
	if f.Row != "" {
		s = translation.Sentence(f.Row) + ": " + s
	}
	if f.Hint != "" && f.Mend == nil {
		s += "; " + translation.Sentence(f.Hint)
	}
	return spoken(s)
}

// spoken makes a sentence of a message: a capital at its head, a full stop at its end where
// nothing stands there yet.
func spoken(s string) string {
	s = upperFirst(s)
	if !strings.HasSuffix(s, "?") && !strings.HasSuffix(s, ".") {
		s += "."
	}
	return s
}
