package app

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model"
	"strandway/model/measure"
	"strandway/model/pattern"
	"strandway/model/size"
)

// drawTable draws the sizes with what each comes to; a click works the pattern in that size. It
// scrolls where there are many, and below it stands what there is to say of the size in hand.
func (w *window) drawTable(d *control.Canvas, k theme.Tokens, r *reckoning, top float32, size fyne.Size) []control.Spot {
	width := size.Width
	x := d.Words(translation.Say("Sizes"), 16, top+24, theme.Body, true, k.Ink)
	spots := w.drawSizeWishes(d, k, top+8, width-16)
	d.Words(control.Fitted(translation.Say("click one to work it everywhere"), theme.Second, false, spots[0].X-x-20), x+10, top+24, theme.Second, false, k.Ink2)
	wide := width > 800
	cells := sizeCells(r, wide)
	right := columnEnds(cells, 24, width-32)
	y := top + 58
	for c, head := range cells[0] {
		if c > 0 { // the names need no head
			d.WordsRight(head, right[c], y, theme.Small, false, k.Ink2)
		}
	}
	d.Rect(16, y+12, width-32, 1, 0, k.Line)
	y = top + sizesTop
	s := &w.sizesSeen
	s.rows = max(1, int((size.Height-top-sizesTop-sizesEnd+2)/sizeLine))
	s.top = max(0, min(s.top, len(r.table)-s.rows))
	for i := s.top; i < min(len(r.table), s.top+s.rows); i++ {
		spots = append(spots, w.drawSizeLine(d, k, r, i, cells[i+1], right, y, width))
		y += sizeLine
	}
	if hidden := len(r.table) - s.rows; hidden > 0 {
		tall := float32(s.rows) * sizeLine
		bar := max(14, tall*float32(s.rows)/float32(len(r.table)))
		d.Rect(width-8, top+sizesTop+(tall-bar)*float32(s.top)/float32(hidden), 4, bar, 2, k.Edge)
	}
	here := min(w.s.Size(), len(r.table)-1)
	return append(spots, w.drawSizeNotes(d, k, r, here, wide, size)...)
}

// drawSizeLine draws one size.
func (w *window) drawSizeLine(d *control.Canvas, k theme.Tokens, r *reckoning, i int, says []string, right []float32, y, width float32) control.Spot {
	unmet := r.table[i].Unmet()
	here := i == w.s.Size()
	if here {
		d.Rect(10, y+1, width-20, sizeLine-2, 5, k.Wash)
	}
	end := d.Words(says[0], 24, y+sizeLine/2, theme.Second, true, k.Ink)
	if unmet != "" {
		d.Icon(theme.Icon("caution", k.Caution), end+6, y+sizeLine/2-8, 16)
	}
	for c := 1; c < len(says); c++ {
		d.WordsRight(says[c], right[c], y+sizeLine/2, theme.Second, here, k.Ink)
	}
	return control.Spot{X: 10, Y: y, W: width - 20, H: sizeLine, Hint: strings.TrimSuffix("work "+says[0]+" everywhere; "+unmet, "; "), Do: func() { w.s.ShowSize(i) }}
}

// scrollSizes scrolls the table under the wheel.
func (w *window) scrollSizes(by float32) {
	if by < 0 {
		w.sizesSeen.top++
	} else {
		w.sizesSeen.top--
	}
}

// drawSizeNotes says of the size in hand what of its wish is not met, from what its yarn was reckoned, and what it takes.
func (w *window) drawSizeNotes(d *control.Canvas, k theme.Tokens, r *reckoning, i int, wide bool, size fyne.Size) []control.Spot {
	figures, e := r.yarns[i], &r.table[i]
	y := size.Height - sizesEnd + 20
	right := size.Width - 16
	var spots []control.Spot
	if label, hint, do := w.handsOffer(figures); do != nil {
		b := control.Width(translation.Say(label), theme.Second, true) + 22
		right -= b
		d.Frame(right, y-13, b, 26, 5, k.Paper, k.Accent, 1.2)
		d.WordsMid(translation.Say(label), right+b/2, y, theme.Second, true, k.Accent)
		spots = append(spots, control.Spot{X: right, Y: y - 14, W: b, H: 28, Hint: hint, Do: do, Button: true})
		right -= 12
	}
	first := w.yarnBasis(figures)
	if unmet := e.Unmet(); unmet != "" {
		first = upperFirst(unmet) + ". " + first
	}
	second := yarnSums(figures)
	if !wide {
		second = sizeDetail(r, i) + " " + second
	}
	d.Words(control.Fitted(first, theme.Second, false, right-16), 16, y, theme.Second, false, k.Ink2)
	d.Words(control.Fitted(second, theme.Second, false, size.Width-32), 16, y+22, theme.Second, false, k.Ink2)
	return spots
}

// sizeDetail is what a narrow table has no columns for.
func sizeDetail(r *reckoning, i int) string {
	e, inches := &r.table[i], r.pattern.Units == "in"
	says := fmt.Sprintf("wanted %s, chain %s", wanted(r.pattern, i, inches), dashed(e.Foundation))
	if e.Side.Stitches > 0 {
		says += fmt.Sprintf(", %d along each side, %d across", e.Side.Stitches, e.Across)
	}
	return upperFirst(says) + "."
}

// yarnSums are weight, what is left over, and the price.
func yarnSums(f *model.Figures) string {
	var parts []string
	price := 0.0
	for _, a := range f.Yarns {
		if a.Grams > 0 && len(parts) < 6 {
			parts = append(parts, fmt.Sprintf("%s %.0f–%.0f m, %.0f g, %.0f m left over", a.Letter, a.Low, a.High, a.Grams, a.LeftOver))
		}
		price += a.Price
	}
	if price > 0 {
		parts = append(parts, fmt.Sprintf("price of all balls %.2f", price))
	}
	if parts == nil {
		return ""
	}
	return strings.Join(parts, "; ") + "."
}

// sizeCells are the words of the table, its head first; a narrow one leaves some columns out.
func sizeCells(r *reckoning, wide bool) [][]string {
	inches := r.pattern.Units == "in"
	letters := yarnLetters(r)
	line := func(name, wanted, comes, stitches, rows, chain, side string, metres []string, balls string) []string {
		out := []string{name}
		if wide {
			out = append(out, wanted)
		}
		out = append(out, comes, stitches, rows)
		if wide {
			out = append(out, chain, side)
		}
		return append(append(out, metres...), balls)
	}
	var heads []string
	for _, h := range []string{"Wanted", "Comes to", "Stitches", "Rows", "Chain", "Each side", "Balls"} {
		heads = append(heads, translation.Say(h))
	}
	cells := [][]string{line("", heads[0], heads[1], heads[2], heads[3], heads[4], heads[5], letters, heads[6])}
	for i := range r.table {
		e := &r.table[i]
		name := e.Size
		if name == "" {
			name = translation.Say("The one size")
		}
		var metres []string
		for _, l := range letters {
			metres = append(metres, metresOf(r.yarns[i], l))
		}
		cells = append(cells, line(name, wanted(r.pattern, i, inches), comesTo(e, inches), fmt.Sprint(e.Stitches), fmt.Sprint(e.Rows),
			dashed(e.Foundation), dashed(e.Side.Stitches), metres, balls(r.yarns[i])))
	}
	return cells
}

// columnEnds are the right ends of a table's columns, what room is left shared among them.
func columnEnds(cells [][]string, left, right float32) []float32 {
	wide := make([]float32, len(cells[0]))
	sum := float32(0)
	for c := range wide {
		for _, row := range cells {
			wide[c] = max(wide[c], control.Width(row[c], theme.Second, true))
		}
		if c == 0 {
			wide[c] += 24 // for a mark behind the name
		}
		sum += wide[c]
	}
	gap := max(6, (right-left-sum)/float32(len(wide)-1))
	ends := make([]float32, len(wide))
	x := left
	for c := range wide {
		ends[c] = x + wide[c]
		x = ends[c] + gap
	}
	return ends
}

// yarnLetters are the yarns of the table's columns, as many as there is room for.
func yarnLetters(r *reckoning) []string {
	var letters []string
	for _, a := range r.yarns[0].Yarns {
		if len(letters) < 5 {
			letters = append(letters, a.Letter)
		}
	}
	return letters
}

func comesTo(e *size.Entry, inches bool) string {
	return lengths(e.Finished.WidthCM, e.Finished.LengthCM, inches, e.Finished.Form == measure.Disc)
}

func wanted(p *pattern.Pattern, i int, inches bool) string {
	if i >= len(p.Sizes) {
		return "–"
	}
	return lengths(p.Sizes[i].WidthCM, p.Sizes[i].LengthCM, inches, false)
}

// lengths writes a width and a length, or what is across of a disc.
func lengths(width, length float64, inches, across bool) string {
	unit := "cm"
	if inches {
		width, length, unit = width/2.54, length/2.54, "in"
	}
	switch {
	case width == 0 && length == 0:
		return "–"
	case across:
		return fmt.Sprintf("%.1f %s across", width, unit)
	case length == 0:
		return fmt.Sprintf("%.1f %s", width, unit)
	case width == 0:
		return fmt.Sprintf("%.1f %s long", length, unit)
	}
	return fmt.Sprintf("%.1f × %.1f %s", width, length, unit)
}

func dashed(n int) string {
	if n == 0 {
		return "–"
	}
	return fmt.Sprint(n)
}

// metresOf is what is needed of a yarn over all pieces, "–" where it is not known.
func metresOf(f *model.Figures, letter string) string {
	for _, a := range f.Yarns {
		if a.Letter == letter {
			return fmt.Sprintf("%.0f m", a.Metres)
		}
	}
	return "–"
}

// balls are those of every yarn: "2 + 1 + 1".
func balls(f *model.Figures) string {
	var parts []string
	for _, a := range f.Yarns {
		parts = append(parts, dashed(a.Balls))
	}
	if len(parts) > 6 {
		parts = append(parts[:6], "…")
	}
	return strings.Join(parts, " + ")
}
