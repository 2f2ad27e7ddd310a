package app

import (
	"strings"

	"strandway/model/edit"
)

// completing is a word that is being completed: each press takes the next of the words.
type completing struct {
	start int
	words []string
	at    int
	rows  string // as the last press left them
	caret int
}

// complete completes the word before the caret and reports whether there is one to complete. A word
// that is whole as it stands is made longer only when asked.
func (w *window) complete(asked bool) bool {
	rows, at := w.s.Rows(), w.s.Caret().At
	c := &w.completing
	const choice = 2 // words there are to go round, the letters themselves among them
	if c.rows != rows || c.caret != at || len(c.words) <= choice && !asked {
		letters, words, whole := edit.Completions(rows, at, w.stitchWords())
		if len(words) == 0 || whole && !asked {
			return false
		}
		*c = completing{start: letters.Start, words: append(words, rows[letters.Start:letters.End]), at: -1}
	}
	c.at = (c.at + 1) % len(c.words)
	w.s.ReplaceTo("Complete the word", c.start, asBegun(c.words[c.at], rows[c.start:at]))
	c.rows, c.caret = w.s.Rows(), w.s.Caret().At
	others := c.words[:len(c.words)-1]
	w.say(strings.Join(others[:min(len(others), 8)], " · ") + "   Ctrl+Space for the next")
	return true
}

// asBegun keeps a capital that the word was begun with.
func asBegun(word, begun string) string {
	if begun != "" && begun[:1] != strings.ToLower(begun[:1]) {
		return upperFirst(word)
	}
	return word
}

// stitchWords are the abbreviations of all stitches in the pattern's terms.
func (w *window) stitchWords() []string {
	var words []string
	for _, kind := range w.lib.Kinds() {
		if word, ok := w.lib.Word(kind, termsOf(w.s.Pattern().Terms)); ok {
			words = append(words, word)
		}
	}
	return words
}
