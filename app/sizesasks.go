package app

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/settings"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model"
	"strandway/model/edit"
	"strandway/model/pattern"
	"strandway/model/yarn"
)

// drawSizeWishes draws the buttons of the table; their right end is x.
func (w *window) drawSizeWishes(d *control.Canvas, k theme.Tokens, y, x float32) []control.Spot {
	var spots []control.Spot
	for _, b := range []struct {
		label, hint string
		do          func()
	}{
		{"Swatch…", "a swatch, measured and weighed", w.askSwatch},
		{"Gauge…", "stitches and rows over 10 cm", w.askGauge},
		{"Wanted…", "the width and length wanted; the rows are written to fit", w.askWanted},
	} {
		label := translation.Say(b.label)
		width := control.Width(label, theme.Second, true) + 22
		x -= width
		d.Frame(x, y, width, 28, 5, k.Paper, k.Accent, 1.2)
		d.WordsMid(label, x+width/2, y+14, theme.Second, true, k.Accent)
		spots = append([]control.Spot{{X: x, Y: y, W: width, H: 28, Hint: b.hint, Do: b.do, Button: true}}, spots...)
		x -= 8
	}
	return spots
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

// asked is one field of a question for several figures; "" is allowed and stands for 0.
type asked struct{ label, value string }

// askFigures asks for several figures at once.
func (w *window) askFigures(title, answer string, entries []asked, done func(figures []float64)) {
	const line, column, labels, down = 42, 300, 176, 6
	var fields []placed
	for i, e := range entries {
		f := control.NewField(e.value)
		fields = append(fields, placed{f, float32(24 + i/down*column + labels), float32(sheetTop + i%down*line), 92, 34})
	}
	finish := func() {
		figures := make([]float64, len(fields))
		for i, f := range fields {
			if text := strings.TrimSpace(f.field.Text); text != "" {
				x, err := number(text)
				if err != nil || x < 0 {
					w.say(fmt.Sprintf("%s: %q is not a figure.", translation.Say(entries[i].label), text))
					w.win.Canvas().Focus(f.field)
					return
				}
				figures[i] = x
			}
		}
		w.closeSheet()
		done(figures)
	}
	for _, f := range fields {
		f.field.Enter = func(string) { finish() }
	}
	columns, rows := (len(entries)+down-1)/down, min(len(entries), down)
	size := fyne.NewSize(float32(max(columns*column+8, 360)), float32(sheetTop+rows*line+66))
	w.openSheet(&sheet{
		title: translation.Say(title), size: size, fields: fields,
		draw: func(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
			for i, e := range entries {
				f := fields[i]
				d.Words(control.Fitted(translation.Say(e.label), theme.Second, false, labels-8), f.x-labels, f.y+17, theme.Second, false, k.Ink)
			}
			yes := d.Button(k, answer, size.Width-24, size.Height-50, true, true, finish)
			no := d.Button(k, "Cancel", yes.X-10, size.Height-50, false, true, w.closeSheet)
			return []control.Spot{yes, no}
		},
	})
}

// figure writes a figure for a field, "" for 0.
func figure(x float64) string {
	if x == 0 {
		return ""
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// askWanted asks for the width and length wanted of the piece in hand, and writes the rows to fit in one step.
func (w *window) askWanted() {
	m := w.s.Made()
	if m == nil {
		return
	}
	per, unit := 1.0, "cm"
	if w.s.Pattern().Units == "in" {
		per, unit = 2.54, "in"
	}
	var wide, long float64
	if i, sizes := w.s.Size(), w.s.Pattern().Sizes; i < len(sizes) {
		wide, long = sizes[i].WidthCM/per, sizes[i].LengthCM/per
	}
	width, length := translation.Say("Width")+", "+unit, translation.Say("Length")+", "+unit
	w.askFigures("Wanted", "Write it", []asked{{width, figure(wide)}, {length, figure(long)}}, func(x []float64) {
		fitted, err := edit.Fit(w.lib, m.Work, w.s.Piece(), x[0]*per, x[1]*per)
		if err != nil {
			w.say(spoken(err.Error()))
			return
		}
		w.s.Do("Width and length", func(now edit.State) edit.State {
			now.Pattern = fitted
			return now
		})
		w.say("The rows are written to fit; Ctrl+Z takes it back.")
	})
}

// mostWeighed is for how many yarns the question for a swatch has fields.
const mostWeighed = 6

// askSwatch asks for a swatch: what was counted, measured before and after blocking, and weighed. It gives the gauge too.
func (w *window) askSwatch() {
	p := w.s.Pattern()
	was := pattern.Swatch{}
	if p.Gauge.Swatch != nil {
		was = *p.Gauge.Swatch
	}
	entries := []asked{
		{"Stitches counted", figure(was.Stitches)}, {"Rows counted", figure(was.Rows)}, {"Width, cm", figure(was.WidthCM)}, {"Height, cm", figure(was.HeightCM)},
		{"Width before blocking, cm", figure(was.UnblockedWidthCM)}, {"Height before blocking, cm", figure(was.UnblockedHeightCM)},
	}
	counted := len(entries)
	yarns := p.Yarns[:min(len(p.Yarns), mostWeighed)]
	for _, y := range yarns {
		entries = append(entries, asked{translation.Fill("Grams of {{.Letter}}", "Letter", y.Letter), figure(was.Grams[y.Letter])})
	}
	w.askFigures("Swatch", "Use it", entries, func(x []float64) {
		swatch := was
		swatch.Stitches, swatch.Rows, swatch.WidthCM, swatch.HeightCM, swatch.UnblockedWidthCM, swatch.UnblockedHeightCM = x[0], x[1], x[2], x[3], x[4], x[5]
		swatch.Grams = map[string]float64{}
		for i, y := range yarns {
			if grams := x[counted+i]; grams > 0 {
				swatch.Grams[y.Letter] = grams
			}
		}
		if swatch.WidthCM == 0 || swatch.HeightCM == 0 {
			w.say("A swatch has a width and a height in cm.")
			return
		}
		w.s.Do("Swatch", func(now edit.State) edit.State {
			q := *now.Pattern
			q.Gauge.Swatch = &swatch
			if swatch.Stitches > 0 && swatch.Rows > 0 {
				q.Gauge.Stitches, q.Gauge.Rows, q.Gauge.OverCM = over10(swatch.Stitches, swatch.WidthCM), over10(swatch.Rows, swatch.HeightCM), 10
			}
			now.Pattern = &q
			return now
		})
	})
}

// over10 is a count over a length as a count over 10 cm, to a tenth.
func over10(count, cm float64) float64 {
	x, _ := strconv.ParseFloat(fmt.Sprintf("%.1f", 10*count/cm), 64)
	return x
}

// yarnBasis says how the yarn was reckoned.
func (w *window) yarnBasis(f *model.Figures) string {
	if len(f.Yarns) == 0 {
		return translation.Say("Without a hook or a yarn's weight its metres are not known.")
	}
	says := translation.Say("Yarn from hook and yarn: take it as ±12 %")
	for _, a := range f.Yarns {
		switch from := f.Factors(a.Letter); {
		case from.Calibrated && from.From == "":
			says = translation.Say("Yarn by the weighed swatch: take it as ±5 %")
		case from.Calibrated:
			says = translation.Fill("Yarn by your swatch for {{.Pattern}}, remembered: take it as ±5 %", "Pattern", from.From)
		}
	}
	return says + "; " + translation.Fill("balls with {{.Percent}} % in hand.", "Percent", fmt.Sprintf("%.0f", 100*f.Margin))
}

// handsOffer is what can be done with what swatches tell of the maker's hands: remember the one of
// this pattern, or forget one that is remembered; do is nil where there is nothing.
func (w *window) handsOffer(f *model.Figures) (label, hint string, do func()) {
	m := w.s.Made()
	if m == nil {
		return "", "", nil
	}
	hands := w.s.Hands()
	if told := m.Work.Swatches(f, time.Now().Format(time.DateOnly)); len(told) > 0 {
		fresh := slices.ContainsFunc(told, func(r yarn.Remembered) bool {
			old, ok := hands.Of(r.Yarn, r.HookMM)
			return !ok || old.Loops != r.Loops || old.Legs != r.Legs
		})
		if fresh {
			return "Remember", "use what this swatch tells of your hands for every pattern in the same yarn and hook", func() {
				for _, r := range told {
					hands = hands.With(r)
				}
				w.keepHands(hands, "Remembered, for this yarn and hook.")
			}
		}
		return "", "", nil
	}
	for _, a := range f.Yarns {
		if f.Factors(a.Letter).From != "" {
			return "Forget", "reckon from hook and yarn again", func() {
				for _, y := range w.s.Pattern().Yarns {
					hands = hands.Without(y.Name, f.Hook(y.Letter))
				}
				w.keepHands(hands, "Forgotten; the yarn is reckoned from hook and yarn.")
			}
		}
	}
	return "", "", nil
}

// canKeepHands reports whether there is something to remember or to forget.
func (w *window) canKeepHands() bool {
	figures := w.figures()
	if figures == nil {
		return false
	}
	_, _, do := w.handsOffer(figures)
	return do != nil
}

func (w *window) keepOrForget() {
	if figures := w.figures(); figures != nil {
		if _, _, do := w.handsOffer(figures); do != nil {
			do()
		}
	}
}

// keepHands keeps what is known of the maker's hands.
func (w *window) keepHands(hands yarn.Memory, says string) {
	if err := settings.SaveHands(hands); err != nil {
		w.say(spoken(err.Error()))
		return
	}
	w.s.SetHands(hands)
	w.asked = nil // the table is reckoned anew
	w.say(says)
	w.sizes.Redraw()
}

// askEnough asks for what is left of a ball, and says for how many rows it is enough, from the row in hand on.
func (w *window) askEnough() {
	w.ask(translation.Say("Yarn left: its letter and metres, as in B 34"), "", "Reckon", func(text string) {
		letter, metres, ok := strings.Cut(strings.TrimSpace(text), " ")
		left, err := number(metres)
		m, figures := w.s.Made(), w.figures()
		if !ok || err != nil || left < 0 || m == nil || figures == nil {
			w.say("That is a letter and metres, as in B 34.")
			return
		}
		f := m.Fabric()
		letter = strings.ToUpper(letter)
		y := slices.Index(f.Yarns, letter)
		if y < 0 || figures.Yarns == nil {
			w.say(fmt.Sprintf("No row is worked in yarn %s, or its thickness is not known.", letter))
			return
		}
		from := 1
		if row, ok := w.rowInHand(); ok && row > 0 {
			from = row
		}
		rows := yarn.InRows(f, figures.Pieces[w.s.Piece()].Ask, y)
		enough := inYarn(rows[from : from+yarn.Enough(rows, from, left)])
		w.say(fmt.Sprintf("From %s on, %g m of %s are enough for %d of its %d rows.", f.Rows[from].Label, left, letter, enough, inYarn(rows[from:])))
	})
}

// inYarn counts the rows that take any of a yarn.
func inYarn(metres []float64) (n int) {
	for _, m := range metres {
		if m > 0 {
			n++
		}
	}
	return n
}
