package app

import (
	"strings"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
)

// noticeHeight is the height of the strip above the view, px.
const noticeHeight = 44

// notice is something to be told that cannot wait for the status line, with its answers. It stands in a
// strip above the view, never over the rows, until it is answered.
type notice struct {
	about   string // what it is of; a newer one about the same thing takes its place
	says    string
	press   string // the key or the words to type that it names, "" for none
	answers []choice
}

// notify puts a notice behind those that wait, or in place of the one about the same thing.
func (w *window) notify(n notice) {
	for i := range w.notices {
		if w.notices[i].about == n.about {
			w.notices[i] = n
			w.showNotice()
			return
		}
	}
	w.notices = append(w.notices, n)
	w.showNotice()
}

// dismiss takes the notice about something away.
func (w *window) dismiss(about string) {
	for i := range w.notices {
		if w.notices[i].about == about {
			w.notices = append(w.notices[:i:i], w.notices[i+1:]...)
			break
		}
	}
	w.showNotice()
}

// showNotice shows the first notice that waits. The view moves only when the strip comes or goes.
func (w *window) showNotice() {
	wanted := len(w.notices) > 0
	if wanted != w.notice.Visible() {
		if wanted {
			w.notice.Show()
		} else {
			w.notice.Hide()
		}
		w.desk.Refresh()
	}
	w.notice.ToFirst()
}

// drawNotice draws the strip.
func (w *window) drawNotice(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Wash)
	if len(w.notices) == 0 {
		return nil
	}
	n := w.notices[0]
	n.says = translation.Sentence(n.says)
	y := size.Height / 2
	right := size.Width - 12
	var spots []control.Spot
	for i, a := range n.answers {
		s := d.Button(k, a.label, right, y-15, a.first, true, func() {
			w.dismiss(n.about)
			a.do()
			if w.win.Canvas().Focused() == w.notice && !w.sheetOpen() {
				w.win.Canvas().Focus(w.page)
			}
		})
		s.First = i == 0
		spots = append([]control.Spot{s}, spots...)
		right = s.X - 8
	}
	room := right - 24
	press := control.Width(n.press, theme.Body, true)
	if control.Width(n.says, theme.Body, false)+press+8 <= room {
		x := d.Words(n.says, 16, y, theme.Body, false, k.Ink)
		d.Words(n.press, x+8, y, theme.Body, true, k.Accent)
		return spots
	}
	lines := append(wrapped(n.says, theme.Second, room), "")
	d.Words(lines[0], 16, y-9, theme.Second, false, k.Ink)
	press = min(control.Width(n.press, theme.Second, true), room/2)
	x := d.Words(control.Fitted(strings.TrimSpace(strings.Join(lines[1:], " ")), theme.Second, false, room-press-8), 16, y+9, theme.Second, false, k.Ink)
	if x > 16 {
		x += 8
	}
	d.Words(control.Fitted(n.press, theme.Second, true, room+16-x), x, y+9, theme.Second, true, k.Accent)
	return spots
}
