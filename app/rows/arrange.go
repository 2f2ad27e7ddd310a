package rows

import (
	"strings"

	"fyne.io/fyne/v2"

	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model/diag"
	"strandway/model/fabric"
)

// type faces and sizes the page measures with.
type scribe struct {
	th     *theme.Theme
	widths map[string]float32 // of words in the serif
	sans   map[string]float32
}

func newScribe(th *theme.Theme) *scribe {
	return &scribe{th: th, widths: map[string]float32{}, sans: map[string]float32{}}
}

// serif is the width of written text.
func (s *scribe) serif(text string) float32 {
	w, known := s.widths[text]
	if !known {
		size, _ := fyne.CurrentApp().Driver().RenderedTextSize(text, theme.Body, fyne.TextStyle{}, s.th.Serif(false))
		w = size.Width
		if len(s.widths) > 20000 {
			clear(s.widths)
		}
		s.widths[text] = w
	}
	return w
}

// italic is the width of what the page says in her face. It is asked for seldom.
func (s *scribe) italic(text string) float32 {
	size, _ := fyne.CurrentApp().Driver().RenderedTextSize(text, theme.Body, fyne.TextStyle{}, s.th.Serif(true))
	return size.Width
}

// second is the width of the program's own words.
func (s *scribe) second(text string) float32 {
	w, known := s.sans[text]
	if !known {
		w = fyne.MeasureText(text, theme.Second, fyne.TextStyle{}).Width
		if len(s.sans) > 20000 {
			clear(s.sans)
		}
		s.sans[text] = w
	}
	return w
}

// arrange lays the paragraphs out one under another for a page of a width. The row in hand shows
// its findings in full, and its heading where the caret stands in it.
func arrange(text string, list []paragraph, f *fabric.Fabric, width float32, caret int, s *scribe) ([]box, float32) {
	boxes := make([]box, 0, len(list))
	y := float32(topMargin)
	for k := range list {
		b := box{paragraph: list[k], y: y}
		if k > 0 && k == len(list)-1 && b.span.Len() == 0 && caret != b.span.Start {
			continue // the line break behind the last row begins no line of its own until it is gone to
		}
		inHand := caret >= b.span.Start && caret <= b.span.End
		from := b.span.Start + b.head
		if b.head > 0 && inHand && caret < from {
			b.unfolded, from = true, b.span.Start
		}
		if !b.unfolded {
			for from < b.span.End && from < caretOr(inHand, caret, b.span.End) && text[from] == ' ' {
				from++
			}
		}
		b.lines = wrap(text, from, b.span.End, width-textLeft-textMargin, s.serif, s.serif)
		// A foundation ring is no round yet: it has no loop, and its yarn comes in with the first round.
		if len(b.works) == 1 && b.works[0] == 0 && f.Rows[0].Shape != fabric.Flat {
			b.works = nil
		}
		b.loop = len(b.works) > 0 && f.Rows[b.works[0]].Shape != fabric.Flat
		if b.loop {
			y += loopGap + loopPadding
		}
		b.textTop = y
		y += lineHeight * float32(len(b.lines))
		if b.count != "" {
			last := b.lines[len(b.lines)-1]
			if textLeft+s.serif(text[last.start:last.end])+16 > width-countMargin-s.second(b.count) {
				y += lineHeight
			}
			b.countRow = y - lineHeight
		}
		y = b.arrangeCome(y, width, s)
		y = b.arrangeNotes(y, width, inHand, s)
		y = b.arrangeCords(y)
		b.height = y - b.y
		boxes = append(boxes, b)
	}
	return boxes, y + ghostHeight
}

func caretOr(inHand bool, caret, end int) int {
	if inHand {
		return caret
	}
	return end
}

// arrangeNotes sets the row's findings under its words: faults always, doubts and notes while the row is in hand.
func (b *box) arrangeNotes(y, width float32, inHand bool, s *scribe) float32 {
	b.noteTop = y
	if b.stands != "" {
		for _, l := range wrap(b.stands, 0, len(b.stands), width-textLeft-textMargin, s.second, s.second) {
			b.standsOn = append(b.standsOn, b.stands[l.start:l.end])
		}
		y += 2 + noteLine*float32(len(b.standsOn))
	}
	for i, fd := range b.findings {
		if fd.Severity != diag.Fault && !inHand {
			continue
		}
		n := note{finding: i, mend: fd.Mend != nil, y: y + 2}
		sentence := upperFirst(translation.Sentence(fd.Message))
		if fd.Hint != "" && fd.Mend == nil {
			sentence += "; " + translation.Sentence(fd.Hint)
		}
		if !strings.HasSuffix(sentence, "?") && !strings.HasSuffix(sentence, ".") {
			sentence += "."
		}
		for _, l := range wrap(sentence, 0, len(sentence), width-textLeft-textMargin, s.second, s.second) {
			n.lines = append(n.lines, sentence[l.start:l.end])
		}
		y += 4 + noteLine*float32(len(n.lines))
		if n.mend {
			y += buttonHeight + 6
		}
		b.notes = append(b.notes, n)
	}
	return y
}

// cordsShown is how many rows one written row may stand for before its cords are gathered.
const cordsShown = 4

// arrangeCords gives each row that is worked its cord. A row that stands for many
// ("Rows 6-60") shows its first two and its last two.
func (b *box) arrangeCords(y float32) float32 {
	switch {
	case b.loop:
		return y + loopPadding + loopGap
	case len(b.works) == 0:
		return y + afterCord
	}
	y += cordBelow
	for i := range min(len(b.works), cordsShown) {
		if i > 0 {
			y += 9
		}
		b.cords = append(b.cords, y)
	}
	return y + afterCord
}

// drawn gives the fabric row that the box's cord i stands for.
func (b *box) drawn(i int) int {
	if n := len(b.works); n > cordsShown && i >= cordsShown/2 {
		return b.works[n-cordsShown+i]
	}
	return b.works[i]
}
