package app

import (
	"maps"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model/edit"
)

// completing is the list of words that the letters before the caret may be the beginning of.
type completing struct {
	start  int // where the letters begin
	words  []edit.Word
	chosen int // -1 while none is
	top    int // the first word in sight

	rows  string // that the list was made for
	caret int
	shut  int // where the letters begin that no list is wanted for, -1 for nowhere
}

// Measures of the list, px.
const (
	wordHeight = 24
	wordsWide  = 290 // at most
	leastWide  = 110
	wordsSeen  = 7
	leastBegun = 2 // letters, before the list comes of itself
)

// restAfter is how long nothing is typed before what was typed last is judged.
const restAfter = 1200 * time.Millisecond

// typedInRows follows the letters that are typed in the rows.
func (w *window) typedInRows() {
	w.offerWords(false)
	if w.resting == nil {
		w.resting = time.AfterFunc(restAfter, func() { w.post(w.rest) })
	} else {
		w.resting.Reset(restAfter)
	}
}

// rest has what was typed last judged, unless a word of it waits to be completed.
func (w *window) rest() {
	if w.completing.words == nil {
		w.s.Rest()
	}
}

// offerWords shows the words that what was just typed may be the beginning of. Asked for, it shows them at
// the first letter and also behind a whole word.
func (w *window) offerWords(asked bool) {
	rows, at := w.s.Rows(), w.s.Caret().At
	letters, words, whole := edit.Completions(rows, at, w.rowWords())
	c := &w.completing
	if c.shut != letters.Start {
		c.shut = -1
	}
	if len(words) == 0 || !asked && (whole || letters.Len() < leastBegun || c.shut >= 0) {
		w.closeWords()
		return
	}
	*c = completing{start: letters.Start, words: words, chosen: -1, rows: rows, caret: at, shut: -1}
	if asked {
		c.chosen = 0
	}
	w.words.Show()
	w.placeWords()
}

// placeWords puts the list under the caret, or above it where there is no room below.
func (w *window) placeWords() {
	height := float32(min(len(w.completing.words), wordsSeen))*wordHeight + 8
	width := float32(leastWide)
	for _, word := range w.completing.words {
		width = max(width, min(wordsWide, control.Width(word.Text, theme.Body, true)+control.Width(word.Means, theme.Second, false)+42))
	}
	at := w.page.Position().Add(w.page.PlaceOf(w.completing.start)).AddXY(-12, 3)
	if bottom := w.page.Position().Y + w.page.Size().Height; at.Y+height > bottom && at.Y > height+60 {
		at.Y -= height + 26
	}
	put(w.words, max(4, min(at.X, w.desk.Size().Width-width-4)), at.Y, width, height)
	w.words.Redraw()
}

func (w *window) closeWords() {
	if w.words.Visible() {
		w.words.Hide()
	}
	w.completing.words = nil
}

// staleWords closes the list when the rows or the caret have gone on without it.
func (w *window) staleWords() {
	if c := &w.completing; c.words != nil && (c.rows != w.s.Rows() || c.caret != w.s.Caret().At) {
		w.closeWords()
	}
}

// drawWords draws the list: each word, and what it is short for.
func (w *window) drawWords(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Frame(0, 0, size.Width, size.Height, 6, k.Paper, k.Edge, 1)
	c := &w.completing
	var spots []control.Spot
	y := float32(4)
	for i := c.top; i < len(c.words) && i < c.top+wordsSeen; i++ {
		if i == c.chosen {
			d.Rect(4, y, size.Width-8, wordHeight, 4, k.Wash)
		}
		x := d.Words(c.words[i].Text, 12, y+wordHeight/2, theme.Body, true, k.Ink)
		d.Words(control.Fitted(c.words[i].Means, theme.Second, false, size.Width-x-30), x+10, y+wordHeight/2, theme.Second, false, k.Ink2)
		spots = append(spots, control.Spot{X: 4, Y: y, W: size.Width - 8, H: wordHeight, Hint: translation.Say("Tab takes the word, Esc closes the list"), Do: func() { w.takeWord(i) }})
		y += wordHeight
	}
	if len(c.words) > wordsSeen { // how much of the list is in sight
		all := size.Height - 8
		bar := all * wordsSeen / float32(len(c.words))
		d.Rect(size.Width-6, 4+(all-bar)*float32(c.top)/float32(len(c.words)-wordsSeen), 3, bar, 1.5, k.Edge)
	}
	return spots
}

// takeWord writes a word of the list in place of the letters.
func (w *window) takeWord(i int) {
	c := &w.completing
	if i >= len(c.words) {
		return
	}
	word, start := c.words[i].Text, c.start
	begun := w.s.Rows()[start:w.s.Caret().At]
	w.closeWords()
	w.s.ReplaceTo("Complete the word", start, asBegun(word, begun))
	w.win.Canvas().Focus(w.page)
}

// listKey uses a key for the list of words while it is open, and reports whether it did. Enter takes a word only
// where one was chosen by the arrows, so that it ends the row as ever.
func (w *window) listKey(e *fyne.KeyEvent) bool {
	c := &w.completing
	if c.words == nil {
		return false
	}
	switch e.Name {
	case fyne.KeyDown:
		w.chooseWord(c.chosen + 1)
	case fyne.KeyUp:
		if c.chosen < 0 {
			return false
		}
		w.chooseWord(c.chosen - 1)
	case fyne.KeyTab:
		w.takeWord(max(c.chosen, 0))
	case fyne.KeyReturn, fyne.KeyEnter:
		if c.chosen < 0 {
			return false
		}
		w.takeWord(c.chosen)
	case fyne.KeyEscape:
		c.shut = c.start
		w.closeWords()
	default:
		return false
	}
	return true
}

func (w *window) chooseWord(i int) {
	c := &w.completing
	c.chosen = min(i, len(c.words)-1)
	c.top = max(0, min(c.top, max(c.chosen, 0)), c.chosen-wordsSeen+1)
	w.words.Redraw()
}

// complete completes the word before the caret, and reports whether there is one to complete: the word at once where
// there is no other, else from the list.
func (w *window) complete(asked bool) bool {
	rows, at := w.s.Rows(), w.s.Caret().At
	letters, words, whole := edit.Completions(rows, at, w.rowWords())
	switch {
	case len(words) == 0 || whole && !asked:
		return false
	case asked && w.completing.words != nil:
		w.chooseWord((w.completing.chosen + 1) % len(w.completing.words))
	case asked && len(words) > 1:
		w.offerWords(true)
	default:
		w.completing = completing{start: letters.Start, words: words, shut: -1}
		w.takeWord(0)
	}
	return true
}

// asBegun keeps a capital that the word was begun with.
func asBegun(word, begun string) string {
	if begun != "" && begun[:1] != strings.ToLower(begun[:1]) {
		return upperFirst(word)
	}
	return word
}

// rowWords are the abbreviations of all stitches in the pattern's terms, and the names of groups.
func (w *window) rowWords() []edit.Word {
	p := w.s.Pattern()
	terms := termsOf(p.Terms)
	var words []edit.Word
	for _, own := range p.Stitches {
		words = append(words, edit.Word{Text: own.Abbreviation, Means: own.Name})
	}
	for _, kind := range w.lib.Kinds() {
		if word, ok := w.lib.Word(kind, terms); ok {
			name := w.lib.Name(kind, terms)
			if name == word {
				name = ""
			}
			words = append(words, edit.Word{Text: word, Means: name})
		}
	}
	units := w.lib.Units(terms)
	for _, name := range slices.Sorted(maps.Keys(units)) {
		words = append(words, edit.Word{Text: name, Means: units[name]})
	}
	return words
}
