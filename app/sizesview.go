package app

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/chart/display"
	"strandway/chart/schematic"
	"strandway/model"
	"strandway/model/edit"
	"strandway/model/measure"
	"strandway/model/pattern"
	"strandway/model/size"
)

// sizesSight is what the Sizes view keeps between two drawings.
type sizesSight struct {
	leaf leaf
	list *display.List
	of   *reckoning
	size int
}

const (
	sizeLine = 30
)

// drawSizes draws the piece to scale in all its sizes, and the table of them.
func (w *window) drawSizes(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	figures, r := w.figures(), w.reckoned()
	x := d.Words("Measure", 16, 22, theme.Body, true, k.Ink)
	if figures == nil || r == nil {
		d.Words("the sizes are being reckoned", x+10, 22, theme.Second, false, k.Ink2)
		return nil
	}
	p := w.s.Pattern()
	spots := w.drawUnits(d, k, size.Width-16, p.Units == "in")
	gauge := d.Button(k, "Gauge…", spots[0].X-14, 7, false, true, w.askGauge)
	gauge.Hint = "stitches and rows over 10 cm"
	spots = append(spots, gauge)
	d.Words(control.Fitted(basis(figures, p), theme.Second, false, gauge.X-x-20), x+10, 22, theme.Second, false, k.Ink2)

	table := 84 + sizeLine*float32(len(r.table)) + 44
	high := max(size.Height-44-table, size.Height*.3)
	if figures.Known() {
		w.drawNest(d, k, r, 16, 46, size.Width-32, high-14)
	} else {
		d.Words("Neither a gauge nor hook and yarn are given, so nothing is known in cm yet: give the gauge above.", 16, 70, theme.Body, false, k.Ink2)
	}
	d.Rect(0, 44+high, size.Width, 1, 0, k.Line)
	return append(spots, w.drawTable(d, k, r, 44+high, size.Width)...)
}

// drawUnits draws the switch between cm and inches; its right end is x.
func (w *window) drawUnits(d *control.Canvas, k theme.Tokens, x float32, inches bool) []control.Spot {
	var spots []control.Spot
	for _, u := range []struct {
		name, units string
	}{{"inches", "in"}, {"cm", "cm"}} {
		width := control.Width(u.name, theme.Second, true) + 22
		x -= width
		here := (u.units == "in") == inches
		if here {
			d.Frame(x, 9, width, 27, 5, k.Wash, k.Accent, 1.6)
		}
		d.WordsMid(u.name, x+width/2, 22, theme.Second, here, k.Ink)
		spots = append([]control.Spot{{X: x, Y: 8, W: width, H: 29, Hint: "measures in " + u.name, Do: func() { w.setUnits(u.units) }}}, spots...)
	}
	return spots
}

func (w *window) setUnits(units string) {
	if w.s.Pattern().Units == units {
		return
	}
	w.s.Do("Measures in "+units, func(now edit.State) edit.State {
		p := *now.Pattern
		p.Units = units
		now.Pattern = &p
		return now
	})
}

// basis says from what the measures were reckoned.
func basis(f *model.Figures, p *pattern.Pattern) string {
	switch {
	case !f.Known():
		return "no gauge"
	case f.Scale.Guess:
		return "guessed from hook and yarn: take it as ±15 %"
	case p.Gauge.Stitches > 0:
		return fmt.Sprintf("gauge %g sts, %g rows over %g cm", p.Gauge.Stitches, p.Gauge.Rows, p.Gauge.OverCM)
	}
	return "by the measured swatch"
}

func (w *window) drawNest(d *control.Canvas, k theme.Tokens, r *reckoning, x, y, width, height float32) {
	s := &w.sizesSeen
	if s.of != r || s.size != w.s.Size() || s.list == nil {
		s.of, s.size = r, w.s.Size()
		s.list = schematic.Draw(r.nest, schematic.Options{Title: r.pattern.Pieces[r.piece].Name, Shown: min(s.size, len(r.nest)-1), Inches: r.pattern.Units == "in"})
	}
	s.leaf.draw(d, k, s.list, x, y, width, height, w.win.Canvas().Scale(), true)
}

// drawTable draws the sizes with what each comes to; a click works the pattern in that size.
func (w *window) drawTable(d *control.Canvas, k theme.Tokens, r *reckoning, top, width float32) []control.Spot {
	x := d.Words("Sizes", 16, top+24, theme.Body, true, k.Ink)
	d.Words("click one to work it everywhere", x+10, top+24, theme.Second, false, k.Ink2)
	cells := sizeCells(r, width > 800)
	right := columnEnds(cells, 24, width-32)
	y := top + 56
	for c, head := range cells[0] {
		if c == 0 {
			continue // the names need no head
		}
		d.WordsRight(head, right[c], y, theme.Small, false, k.Ink2)
	}
	d.Rect(16, y+13, width-32, 1, 0, k.Line)
	y += 32
	var spots []control.Spot
	unmet := ""
	for i := range r.table {
		e := &r.table[i]
		here := i == w.s.Size()
		if here {
			d.Rect(10, y-sizeLine/2+1, width-20, sizeLine-2, 5, k.Wash)
			unmet = e.Unmet()
		}
		says := cells[i+1]
		end := d.Words(says[0], 24, y, theme.Second, true, k.Ink)
		if e.Unmet() != "" {
			d.Icon(theme.Icon("caution", k.Caution), end+6, y-8, 16)
		}
		for c := 1; c < len(says); c++ {
			d.WordsRight(says[c], right[c], y, theme.Second, here, k.Ink)
		}
		spots = append(spots, control.Spot{X: 10, Y: y - sizeLine/2, W: width - 20, H: sizeLine, Hint: strings.TrimSuffix("work "+says[0]+" everywhere; "+e.Unmet(), "; "), Do: func() { w.s.ShowSize(i) }})
		y += sizeLine
	}
	note := yarnBasis(r.yarns[min(w.s.Size(), len(r.yarns)-1)])
	if unmet != "" {
		note = upperFirst(unmet) + ". " + note
	}
	d.Words(control.Fitted(note, theme.Second, false, width-32), 16, y+12, theme.Second, false, k.Ink2)
	return spots
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
	cells := [][]string{line("", "Wanted", "Comes to", "Stitches", "Rows", "Chain", "Each side", letters, "Balls")}
	for i := range r.table {
		e := &r.table[i]
		name := e.Size
		if name == "" {
			name = "The one size"
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

// yarnBasis says how the yarn was reckoned.
func yarnBasis(f *model.Figures) string {
	if len(f.Yarns) == 0 {
		return "Without a hook or a yarn's weight its metres are not known."
	}
	says := "Yarn from hook and yarn: take it as ±12 %"
	for i := range f.Pieces {
		for _, factors := range f.Pieces[i].Ask.Factors {
			if factors.Calibrated {
				says = "Yarn by the weighed swatch: take it as ±5 %"
			}
		}
	}
	return says + fmt.Sprintf("; balls with %.0f %% in hand.", 100*f.Margin)
}

// askGauge asks for the gauge: stitches and rows over 10 cm.
func (w *window) askGauge() {
	now := ""
	if g := w.s.Pattern().Gauge; g.Stitches > 0 && g.OverCM > 0 {
		now = fmt.Sprintf("%g %g", g.Stitches*10/g.OverCM, g.Rows*10/g.OverCM)
	}
	w.ask("Gauge: stitches and rows over 10 cm, as in 14 16.5", now, "Use it", func(text string) {
		parts := strings.Fields(text)
		if len(parts) == 2 {
			stitches, err1 := number(parts[0])
			rows, err2 := number(parts[1])
			if err1 == nil && err2 == nil && stitches > 0 && rows > 0 {
				w.s.Do("Gauge", func(now edit.State) edit.State {
					p := *now.Pattern
					p.Gauge.Stitches, p.Gauge.Rows, p.Gauge.OverCM = stitches, rows, 10
					now.Pattern = &p
					return now
				})
				return
			}
		}
		w.say("A gauge is two numbers: the stitches and the rows over 10 cm.")
	})
}
