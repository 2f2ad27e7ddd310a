package rows

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"strandway/app/theme"
)

// Preview shows the rows as they would be written another way, without writing them: what would
// go is struck through, and what would come stands under it. The same rows, or "", end it.
func (p *Page) Preview(rows string) {
	if p.preview == rows {
		return
	}
	p.preview = rows
	p.relay()
	p.clampScroll()
	p.show()
}

// compareRows marks the paragraphs of the present rows that would go, and gives each the lines that
// would come behind it.
func compareRows(list []paragraph, now, then string) {
	if then == "" || then == now {
		return
	}
	old, fresh := strings.Split(now, "\n"), strings.Split(then, "\n")
	keeps := common(old, fresh)
	at, next := 0, 0 // the offset of the old line, and the fresh line that comes next
	for i, line := range old {
		if k := paragraphAt(list, at); k >= 0 && strings.TrimSpace(line) != "" {
			if keeps[i] < 0 {
				list[k].gone = true
			}
			until := len(fresh)
			for j := i + 1; j < len(old); j++ {
				if keeps[j] >= 0 {
					until = keeps[j]
					break
				}
			}
			if keeps[i] >= 0 {
				next = keeps[i] + 1
			}
			if last := i+1 == len(old) || keeps[i+1] >= 0; last || keeps[i] < 0 && until-next == goingFrom(keeps, i) {
				if !last {
					until = next + 1 // line for line
				}
				for ; next < until; next++ {
					if s := strings.TrimSpace(fresh[next]); s != "" {
						list[k].come = append(list[k].come, s)
					}
				}
			}
		}
		at += len(line) + 1
	}
}

// goingFrom is how many lines from i on are not kept.
func goingFrom(keeps []int, i int) int {
	n := 0
	for ; i < len(keeps) && keeps[i] < 0; i++ {
		n++
	}
	return n
}

// paragraphAt is the paragraph that holds an offset, -1 for none.
func paragraphAt(list []paragraph, at int) int {
	for k := len(list) - 1; k >= 0; k-- {
		if list[k].span.Start <= at && at <= list[k].span.End {
			return k
		}
	}
	return -1
}

// common gives for each line of a its partner in b, -1 where it has none: the longest run of lines
// that stand in both in the same order.
func common(a, b []string) []int {
	long := make([][]int, len(a)+1)
	for i := range long {
		long[i] = make([]int, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			if a[i] == b[j] {
				long[i][j] = long[i+1][j+1] + 1
			} else {
				long[i][j] = max(long[i+1][j], long[i][j+1])
			}
		}
	}
	keeps := make([]int, len(a))
	j := 0
	for i := range a {
		keeps[i] = -1
		for k := j; k < len(b); k++ {
			if a[i] == b[k] && long[i][j] == long[i+1][k+1]+1 {
				keeps[i], j = k, k+1
				break
			}
		}
	}
	return keeps
}

// arrangeCome sets the lines that would come under the words.
func (b *box) arrangeCome(y, width float32, s *scribe) float32 {
	b.comeTop = y
	for _, line := range b.come {
		for _, l := range wrap(line, 0, len(line), width-textLeft-textMargin, s.serif, s.serif) {
			b.comeLines = append(b.comeLines, line[l.start:l.end])
		}
	}
	if n := len(b.comeLines); n > 0 {
		y += 2 + lineHeight*float32(n)
	}
	return y
}

// rewritten strikes a row through that would go, and sets what would come.
func (d *picture) rewritten(b *box, text string) {
	if b.gone {
		for i, l := range b.lines {
			d.strike(textLeft, b.textTop+(float32(i)+.55)*lineHeight, d.p.scribe.serif(strings.TrimRight(text[l.start:l.end], " ")), d.k.Caution)
		}
	}
	for i, s := range b.comeLines {
		d.text(s, textLeft, b.comeTop+2+float32(i)*lineHeight, lineHeight, look{size: theme.Body, face: serif, colour: d.k.Accent})
	}
}

func (d *picture) strike(x, y, w float32, c color.Color) {
	l := canvas.NewLine(c)
	l.StrokeWidth = 1.4
	l.Position1, l.Position2 = fyne.NewPos(x, y-d.p.scroll), fyne.NewPos(x+w, y-d.p.scroll)
	d.over = append(d.over, l)
}
