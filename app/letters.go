package app

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model"
	"strandway/model/edit"
	"strandway/model/palette"
)

// mostOrders is how many orders of the letters are shown: all those of five.
const mostOrders = 120

// toolsHeight is the height of the strip of buttons above swatches, px.
const toolsHeight = 46

// drawLetters draws the piece with its shades in every order of the letters.
func (w *window) drawLetters(d *control.Canvas, k theme.Tokens, size fyne.Size) (says string, spots []control.Spot) {
	swatches, all := w.orders()
	says = translation.Say("click an order to give the letters their shades in it; locked ones stay")
	if !all {
		says = fmt.Sprintf(translation.Say("the first %d orders; lock letters to see fewer"), mostOrders)
	}
	spots = w.drawSwatches(d, k, swatches, sheetOf{top: swatchesTop + toolsHeight, size: size, least: 190})
	d.Rect(0, swatchesTop-2, size.Width, toolsHeight, 0, k.Paper)
	return says, append(w.drawLetterTools(d, k, size.Width), spots...)
}

// drawLetterTools draws the buttons that give two letters, or all, each other's shades.
func (w *window) drawLetterTools(d *control.Canvas, k theme.Tokens, width float32) []control.Spot {
	yarns, locked := w.s.Pattern().Yarns, w.locks()
	if len(yarns) < 2 {
		return nil
	}
	const y = swatchesTop + 4
	rotate := d.Button(k, "Rotate the letters", 16, y, false, false, w.rotateLetters)
	rotate.Hint = translation.Say("each takes the shade of the next one; locked ones stay")
	spots := []control.Spot{rotate}
	x := rotate.X + rotate.W + 22
	x = d.Words(translation.Say("Swap"), x, y+16, theme.Second, false, k.Ink2) + 10
	for a := range yarns {
		for b := a + 1; b < len(yarns); b++ {
			label := yarns[a].Letter + "–" + yarns[b].Letter
			wide := control.Width(label, theme.Body, true) + 30
			if locked[a] || locked[b] {
				continue
			}
			if x+wide > width-16 {
				return spots
			}
			swap := d.Button(k, label, x, y, false, false, func() { w.swapLetters(a, b) })
			swap.Hint = translation.Say("swap these two letters")
			spots = append(spots, swap)
			x += wide + 8
		}
	}
	return spots
}

// orders are the swatches of all orders, and whether they are all.
func (w *window) orders() (swatches []swatch, all bool) {
	p := w.s.Pattern()
	shades := model.Shades(p, w.s.Colourway())
	orders := palette.Orders(w.locks(), mostOrders+1)
	all = len(orders) <= mostOrders
	for i, o := range orders[:min(len(orders), mostOrders)] {
		letters := make([]string, len(o))
		for i, from := range o {
			letters[i] = p.Yarns[from].Letter
		}
		s := swatch{name: strings.Join(letters, " "), shades: palette.InOrder(shades, o), here: i == 0,
			hint: translation.Say("give the letters their shades in this order")}
		s.do = func() { w.reorder("Other order of the letters", o) }
		if i == 0 {
			s.name, s.hint = translation.Say("As they are"), translation.Say("as they are now")
			s.do = func() {}
		}
		swatches = append(swatches, s)
	}
	return swatches, all
}

// reorder gives the letters their shades in another order, in the colourway shown.
func (w *window) reorder(label string, o palette.Order) {
	w.s.Do(label, func(now edit.State) edit.State {
		now.Pattern = edit.Reorder(now.Pattern, w.s.Colourway(), o)
		return now
	})
}

// swapLetters lets two letters change shades, unless one of them is locked.
func (w *window) swapLetters(a, b int) {
	locks := w.locks()
	for _, i := range []int{a, b} {
		if locks[i] {
			w.say(translation.Fill("{{.Letter}} keeps its shade; unlock it first.", "Letter", w.s.Pattern().Yarns[i].Letter))
			return
		}
	}
	w.reorder("Swap two letters", palette.Swapped(len(w.s.Pattern().Yarns), a, b))
}

func (w *window) rotateLetters() { w.reorder("Rotate the letters", palette.Rotated(w.locks())) }

// askSwap asks which two letters are to change shades.
func (w *window) askSwap() {
	w.ask(translation.Say("Which two letters?"), "A B", "Swap", func(text string) {
		var at []int
		for _, letter := range strings.FieldsFunc(strings.ToUpper(text), func(r rune) bool { return r == ' ' || r == ',' || r == '–' || r == '-' }) {
			for i, y := range w.s.Pattern().Yarns {
				if y.Letter == letter {
					at = append(at, i)
				}
			}
		}
		if len(at) != 2 || at[0] == at[1] {
			w.say(translation.Say("Two letters of the pattern, as in A B."))
			return
		}
		w.swapLetters(at[0], at[1])
	})
}

// locks are the yarns whose shades stay, in the order of the pattern's yarns.
func (w *window) locks() []bool {
	yarns := w.s.Pattern().Yarns
	out := make([]bool, len(yarns))
	for i, y := range yarns {
		out[i] = w.contact.locked[y.Letter]
	}
	return out
}

// toggleLock lets a letter keep its shade, or lets go of it.
func (w *window) toggleLock(letter string) {
	if w.contact.locked == nil {
		w.contact.locked = map[string]bool{}
	}
	w.contact.locked[letter] = !w.contact.locked[letter]
	w.strip.Redraw()
	w.colour.Redraw()
}
