package rows

import (
	"strings"
	"unicode/utf8"
)

// Measures of the page, px. Margins hold the lanes in which yarns wait.
const (
	lineHeight   = 20
	cordBelow    = 7  // from the last line to the cord
	afterCord    = 10 // from the cord to the next row
	numberRight  = 70
	sideLeft     = 78
	textLeft     = 105
	textMargin   = 58 // from the text's right edge to the page's
	countMargin  = 71
	markMargin   = 55
	washLeft     = 42
	washMargin   = 46
	laneLeft     = 34 // the innermost lanes
	laneMargin   = 38
	laneWidth    = 7
	lanes        = 3
	loopLeft     = 27
	loopMargin   = 46
	loopGap      = 7 // above and below a round's loop
	loopPadding  = 11
	noteLine     = 18
	buttonHeight = 28
	topMargin    = 10
)

// measure gives the width of text in px.
type measure func(text string) float32

// line is a line of a paragraph as it is wrapped: a stretch of the rows.
type line struct{ start, end int }

// wrap breaks text[start:end] into lines no wider than width, between words where that can be.
func wrap(text string, start, end int, width float32, word, space measure) []line {
	var lines []line
	for _, hard := range strings.SplitAfter(text[start:end], "\n") {
		stop := start + len(strings.TrimSuffix(hard, "\n"))
		lines = append(lines, wrapLine(text, start, stop, width, word, space)...)
		start += len(hard)
	}
	return lines
}

func wrapLine(text string, start, end int, width float32, word, space measure) []line {
	var lines []line
	at, used := start, float32(0)
	for i := start; i < end; {
		j := i
		for j < end && text[j] != ' ' {
			j++
		}
		w := word(text[i:j])
		if used > 0 && used+w > width {
			lines = append(lines, line{at, i})
			at, used = i, 0
		}
		for w > width && utf8.RuneCountInString(text[i:j]) > 1 {
			// One word wider than the page is broken where the page ends.
			k := i
			for k < j && word(text[i:k]) <= width {
				_, n := utf8.DecodeRuneInString(text[k:])
				k += n
			}
			_, n := utf8.DecodeLastRuneInString(text[:k])
			k = max(k-n, i+1)
			lines = append(lines, line{at, k})
			at, i = k, k
			w = word(text[i:j])
		}
		used += w
		for j < end && text[j] == ' ' {
			j++
			used += space(" ")
		}
		i = j
	}
	return append(lines, line{at, end})
}

// box is a paragraph laid out on the page; y is from the page's top, before scrolling.
type box struct {
	paragraph
	lines     []line
	unfolded  bool // its heading is shown among the words
	y         float32
	textTop   float32
	countRow  float32 // y of the count's line
	cords     []float32
	loop      bool
	comeTop   float32
	comeLines []string // that would come in place of the row or behind it
	noteTop   float32
	standsOn  []string // lines that say that the row stands on a fault
	notes     []note
	height    float32
}

// note is a finding under a row: its sentence in lines, and whether a button stands under it.
type note struct {
	finding int // index in the paragraph's findings
	lines   []string
	mend    bool
	y       float32
}

// textBottom is where the words end.
func (b *box) textBottom() float32 { return b.textTop + lineHeight*float32(len(b.lines)) }
