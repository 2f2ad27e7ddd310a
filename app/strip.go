package app

import (
	"fmt"
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model/colour"
	"strandway/model/pattern"
)

// drawStrip draws the yarns of the pattern and its colourways.
func (w *window) drawStrip(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Desk)
	p := w.s.Pattern()
	var spots []control.Spot
	card := float32(76)
	for _, way := range p.Colourways {
		card = max(card, min(112, control.Width(way.Name, theme.Small, true)+14))
	}
	room := max(size.Width*.42, 120)
	shown := min(len(p.Colourways), int(room/card))
	right := size.Width - 12 - float32(shown)*card
	if shown < len(p.Colourways) {
		right -= moreWidth
	}
	x := float32(16)
	step := min(float32(190), max(84, (right-x-60)/float32(max(len(p.Yarns), 1))))
	for i, y := range p.Yarns {
		if x+step > right-40 {
			spots = append(spots, w.drawMore(d, k, x, len(p.Yarns)-i, "{{.N}} more yarns, in Colour", func() { w.show(colourView) }))
			x += moreWidth
			break
		}
		c := w.shade(y)
		w.ball(d, x, 22, 30, c, k)
		name := w.shadeName(y)
		tx := d.Words(y.Letter, x+40, 29, theme.Body, true, k.Ink)
		above, below := name, w.needs(y.Letter)
		if below == "" {
			below = y.Name
		}
		if w.view == colourView {
			spots = append(spots, w.drawLock(d, k, y.Letter, tx+4, 29))
			tx += 22
			if w.contact.locked[y.Letter] {
				below = translation.Say("shade kept")
			}
		}
		if step < 150 {
			above = "" // there is room for one line alone
			if below == y.Name {
				below = name
			} else {
				below, _, _ = strings.Cut(below, ",")
			}
		}
		d.Words(control.Fitted(above, theme.Body, false, step-(tx-x)-14), tx+8, 29, theme.Body, false, k.Ink)
		d.Words(control.Fitted(below, theme.Second, false, step-48), x+40, 48, theme.Second, false, k.Ink2)
		spots = append(spots, control.Spot{X: x - 4, Y: 12, W: step - 6, H: 52, Hint: translation.Fill("another shade for {{.Letter}}; drag it onto another yarn to swap the two", "Letter", y.Letter),
			Do:   func() { w.pickColour(y) },
			Drop: func(at fyne.Position) { w.dropYarn(i, at, step) }, Carry: func(at fyne.Position) { w.carryYarn(i, at, step) }})
		x += step
	}
	d.WordsMid("+", x+14, 37, 20, false, k.Ink2)
	spots = append(spots, control.Spot{X: x, Y: 22, W: 28, H: 30, Hint: "one more yarn", Do: w.addYarn})
	if shown == 0 {
		return spots
	}
	d.Rect(right-10, 14, 1, size.Height-28, 0, k.Line)
	return append(spots, w.drawCards(d, k, size, right, card, shown)...)
}

// moreWidth is the width of the sign that there are more yarns or colourways than have room, px.
const moreWidth = 34

// drawMore draws that there are more, and what a click there does.
func (w *window) drawMore(d *control.Canvas, k theme.Tokens, x float32, n int, hint string, do func()) control.Spot {
	d.WordsMid(fmt.Sprintf("+%d", n), x+moreWidth/2, 37, theme.Second, true, k.Ink2)
	return control.Spot{X: x, Y: 20, W: moreWidth, H: 34, Hint: translation.Fill(hint, "N", n), Do: do}
}

// drawCards draws the cards of colourways from x on, that of the present one among them.
func (w *window) drawCards(d *control.Canvas, k theme.Tokens, size fyne.Size, x, card float32, shown int) (spots []control.Spot) {
	ways := w.s.Pattern().Colourways
	first := 0
	for i := range ways {
		if ways[i].Name == w.s.Colourway() && i >= shown {
			first = i - shown + 1
		}
	}
	for i := range shown {
		way := ways[first+i]
		cx := x + float32(i)*card
		here := way.Name == w.s.Colourway()
		if here {
			d.Frame(cx+card/2-31, 8, 62, 42, 4, k.Paper, k.Accent, 2.4)
		}
		w.stripes(d, cx+card/2-27, 11, 54, 36, way.Name)
		ink := k.Ink2
		if here {
			ink = k.Ink
		}
		d.WordsMid(control.Fitted(way.Name, theme.Small, here, card-4), cx+card/2, 61, theme.Small, here, ink)
		spots = append(spots, control.Spot{X: cx + 2, Y: 4, W: card - 4, H: size.Height - 8, Hint: "show " + way.Name + " (F9 for the next)", Do: func() { w.s.ShowColourway(way.Name) }})
	}
	if more := len(ways) - shown; more > 0 {
		spots = append(spots, w.drawMore(d, k, x+float32(shown)*card, more, "{{.N}} more colourways: F9 shows the next", func() { w.s.NextColourway(1) }))
	}
	return spots
}

// drawLock draws whether a letter keeps its shade when others are suggested or put in another order.
func (w *window) drawLock(d *control.Canvas, k theme.Tokens, letter string, x, middle float32) control.Spot {
	icon, ink, hint := "unlocked", k.Ink2, "keep the shade of {{.Letter}} when others change"
	if w.contact.locked[letter] {
		icon, ink, hint = "lock", k.Accent, "let the shade of {{.Letter}} change again"
	}
	d.Icon(theme.Icon(icon, ink), x, middle-9, 17)
	return control.Spot{X: x - 5, Y: middle - 14, W: 28, H: 28, Hint: translation.Fill(hint, "Letter", letter), Do: func() { w.toggleLock(letter) }}
}

// yarnUnder is the yarn of the strip at a place of the window, each step px wide; -1 where none is.
func (w *window) yarnUnder(at fyne.Position, step float32) int {
	in := at.Subtract(w.app.Driver().AbsolutePositionForObject(w.strip))
	i := int((in.X - 12) / step)
	if in.Y < 0 || in.Y > w.strip.Size().Height || in.X < 12 || i >= len(w.s.Pattern().Yarns) {
		return -1
	}
	return i
}

// carryYarn shows a yarn under the pointer on its way, and says with which it would be swapped.
func (w *window) carryYarn(i int, at fyne.Position, step float32) {
	const side = 30
	yarns := w.s.Pattern().Yarns
	if w.carried == nil {
		d := &control.Canvas{}
		w.ball(d, 0, 0, side, w.shade(yarns[i]), w.th.Tokens())
		w.carried = container.NewWithoutLayout(d.Objects...)
		w.desk.Add(w.carried)
	}
	place := at.Subtract(w.app.Driver().AbsolutePositionForObject(w.desk))
	put(w.carried, place.X+8, place.Y-side/2, side, side)
	says := ""
	if onto := w.yarnUnder(at, step); onto >= 0 && onto != i {
		says = fmt.Sprintf(translation.Say("let go to swap %s and %s"), yarns[i].Letter, yarns[onto].Letter)
	}
	w.showHint(says)
}

// dropYarn swaps a yarn's shade with that of the yarn on which it was dropped.
func (w *window) dropYarn(i int, at fyne.Position, step float32) {
	w.putDown()
	if onto := w.yarnUnder(at, step); onto >= 0 && onto != i {
		w.swapLetters(i, onto)
	}
}

// needs says how many metres and balls of a yarn the pattern takes, "" where that is not known.
func (w *window) needs(letter string) string {
	f := w.figures()
	if f == nil {
		return ""
	}
	for _, a := range f.Yarns {
		if a.Letter != letter || a.Metres < .5 {
			continue
		}
		says := fmt.Sprintf("%.0f m", a.Metres)
		if a.Balls > 0 {
			says += ", " + plural(a.Balls, "ball")
		}
		return says
	}
	return ""
}

// shadeName is the name of a yarn's shade in the colourway shown.
func (w *window) shadeName(y pattern.Yarn) string {
	if way, ok := w.s.Pattern().Colourway(w.s.Colourway()); ok && way.Shades[y.Letter].Shade != "" {
		return way.Shades[y.Letter].Shade
	}
	return y.Shade
}

// shade is a yarn's colour in the colourway shown.
func (w *window) shade(y pattern.Yarn) color.NRGBA {
	hex := y.Colour
	if way, ok := w.s.Pattern().Colourway(w.s.Colourway()); ok && way.Shades[y.Letter].Colour != "" {
		hex = way.Shades[y.Letter].Colour
	}
	c, err := colour.Parse(hex)
	if err != nil {
		return color.NRGBA{128, 128, 128, 255}
	}
	return c
}

// ball draws a ball of yarn.
func (w *window) ball(d *control.Canvas, x, y, size float32, c color.NRGBA, k theme.Tokens) {
	disc := canvas.NewCircle(c)
	disc.StrokeColor, disc.StrokeWidth = k.Casing(c), 1
	d.Add(disc, x, y, size, size)
	line := colour.Mix(c, color.NRGBA{255, 255, 255, 255}, .35)
	if colour.Lightness(c) > 65 {
		line = colour.Mix(c, color.NRGBA{0, 0, 0, 255}, .3)
	}
	for _, l := range [][4]float32{{.2, .62, .62, .2}, {.3, .76, .76, .3}, {.46, .84, .84, .46}} {
		s := canvas.NewLine(line)
		s.StrokeWidth = 1.1
		s.Position1 = fyne.NewPos(x+l[0]*size, y+l[1]*size)
		s.Position2 = fyne.NewPos(x+l[2]*size, y+l[3]*size)
		d.Objects = append(d.Objects, s)
	}
}

// stripes draws the piece's own rows as a small stack in a colourway, so that the card is a picture of it.
func (w *window) stripes(d *control.Canvas, x, y, width, height float32, way string) {
	colours := w.stripeColours(way)
	if len(colours) == 0 {
		return
	}
	const most = 9
	if len(colours) > most {
		colours = colours[:most]
	}
	h := height / float32(len(colours))
	for i, c := range colours {
		// The first row lies lowest, as in the piece.
		d.Rect(x, y+height-float32(i+1)*h, width, h+.5, 0, c)
	}
}

// stripeColours are the colours of the rows in working order, rows of one yarn that follow one another as one.
func (w *window) stripeColours(way string) []color.NRGBA {
	m := w.s.Made()
	if m == nil {
		return nil
	}
	yarns := m.ClothYarns(way)
	var out []color.NRGBA
	last := -1
	for i := range m.Fabric().Rows {
		r := &m.Fabric().Rows[i]
		if r.Last > r.First && int(r.Yarn) != last && int(r.Yarn) < len(yarns) {
			last = int(r.Yarn)
			out = append(out, yarns[last].Colour)
		}
	}
	return out
}
