package control

import (
	"fyne.io/fyne/v2"

	"strandway/app/theme"
	"strandway/app/translation"
)

// Button draws a button and gives its spot; its right end is x when right is set.
func (d *Canvas) Button(k theme.Tokens, label string, x, y float32, first, right bool, do func()) Spot {
	const height = 32
	label = translation.Say(label)
	w := Width(label, theme.Body, true) + 30
	if right {
		x -= w
	}
	if first {
		d.Rect(x, y, w, height, 6, k.Accent)
		d.WordsMid(label, x+w/2, y+height/2, theme.Body, true, k.OnAccent)
	} else {
		d.Frame(x, y, w, height, 6, k.Paper, k.Accent, 1.2)
		d.WordsMid(label, x+w/2, y+height/2, theme.Body, true, k.Accent)
	}
	return Spot{X: x, Y: y, W: w, H: height, Do: do, Button: true, First: first}
}

// Row is a strip of fixed height.
func Row(height float32) fyne.Size { return fyne.NewSize(40, height) }
