package app

import (
	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
)

// showKeys lists every action with its keys; what is typed narrows the list.
func (w *window) showKeys() {
	top := float32(0)
	found := control.NewField("")
	found.SetPlaceHolder("Search")
	const line = 24
	s := &sheet{
		title: "All keys", size: fyne.NewSize(620, 520), fields: []placed{{found, 400, 14, 196, 34}},
		scroll: func(by float32) { top = max(0, min(top-by, float32(len(w.table))*line-360)) },
		draw: func(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
			y := float32(sheetTop+14) - top
			menu := ""
			for _, a := range w.table {
				if len(a.Keys) == 0 || !contains(a.Menu+" "+a.Text(), found.Text) {
					continue
				}
				if y > sheetTop && y < size.Height-56 {
					if a.Menu != menu {
						d.Words(a.Menu, 24, y, theme.Second, true, k.Ink2)
						menu = a.Menu
					}
					d.Words(a.Text(), 104, y, theme.Body, false, k.Ink)
					d.WordsRight(chords(a.Keys), size.Width-24, y, theme.Body, true, k.Ink)
				}
				y += line
			}
			for _, other := range pictureKeys {
				if !contains(other[0], found.Text) {
					continue
				}
				if y > sheetTop && y < size.Height-56 {
					d.Words(other[0], 104, y, theme.Body, false, k.Ink)
					d.WordsRight(other[1], size.Width-24, y, theme.Body, true, k.Ink)
				}
				y += line
			}
			return []control.Spot{d.Button(k, "Close", size.Width-24, size.Height-46, true, true, w.closeSheet)}
		},
	}
	found.Enter = func(string) { w.closeSheet() }
	found.OnChanged = func(string) { top = 0; s.card.Redraw() }
	found.Walk = func(step int) { s.scroll(float32(-step) * line); s.card.Redraw() }
	w.openSheet(s)
}

// pictureKeys are what the pictures do with keys that stand in no menu.
var pictureKeys = [][2]string{
	{"In a picture: stitch and row", "Arrows"},
	{"In a picture: choose more", "Shift+Arrows"},
	{"In a picture: add a stitch behind the chosen one", "5dc, then Space"},
	{"In a picture: work it in place of the chosen", "dc, then Return"},
	{"In a picture: the row's ends", "Home, End"},
	{"In a picture: five rows on", "Page Up, Page Down"},
	{"In a picture: take out", "Backspace"},
	{"In a picture: new row", "Return"},
	{"Zoom at the pointer", "Ctrl+Wheel"},
}

func (w *window) about() {
	w.choose("Strandway", "A chart editor for crochet: the file is the written pattern, and all else follows from it.",
		choice{label: "Close", first: true, do: func() {}})
}
