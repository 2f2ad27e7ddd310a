package app

import (
	"image"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"strandway/app/action"
	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/chart/geom"
	"strandway/chart/symbol"
	"strandway/model/edit"
	"strandway/model/pattern"
)

// drawingBoard is where the designer draws the symbol of a stitch of her own: strokes from point to
// point of a grid, or the symbol of another stitch.
type drawingBoard struct {
	w       *window
	of      string          // the stitch's abbreviation
	strokes []symbol.Stroke // the last one is in hand
	picked  string          // the symbol of another stitch, in place of strokes
	tiles   map[string]image.Image
	sheet   *sheet
}

// symbolActions is what the menus can do with symbols.
func (w *window) symbolActions() action.Table {
	return action.Table{
		{ID: "own-symbols", Menu: "Stitch", Label: "Stitches of your own…", Can: func() bool { return w.view != startView }, Do: w.showBoard},
	}
}

// showBoard opens the drawing board with the first stitch of the designer's own, or asks for one.
func (w *window) showBoard() {
	own := w.s.Pattern().Stitches
	if len(own) == 0 {
		w.askOwnStitch()
		return
	}
	w.openSheet(w.board(own[0]).sheet)
}

// board makes the drawing board for a stitch.
func (w *window) board(of pattern.Special) *drawingBoard {
	b := &drawingBoard{w: w, tiles: map[string]image.Image{}}
	b.take(of)
	b.sheet = &sheet{title: translation.Say("Stitches of your own"), size: fyne.NewSize(860, 570), draw: b.draw}
	return b
}

// take puts a stitch on the board, as it is drawn now.
func (b *drawingBoard) take(of pattern.Special) {
	b.of, b.picked, b.strokes = of.Abbreviation, "", nil
	if _, known := symbol.Standard().Symbol(of.Symbol); known {
		b.picked = of.Symbol
	} else if s, err := symbol.Strokes(of.Symbol); err == nil {
		b.strokes = s // one that cannot be read is drawn anew
	}
	b.strokes = append(b.strokes, symbol.Stroke{})
}

// inHand is the stroke that points are added to.
func (b *drawingBoard) inHand() *symbol.Stroke { return &b.strokes[len(b.strokes)-1] }

// add leads the stroke in hand on to a point; led back to where it began, it closes.
func (b *drawingBoard) add(p geom.Point) {
	b.picked = ""
	s := b.inHand()
	n := len(s.Points)
	switch {
	case n > 0 && s.Points[n-1] == p:
	case n > 2 && s.Points[0] == p:
		s.Closed = true
		b.lift()
	default:
		s.Points = append(s.Points, p)
	}
}

// lift ends the stroke in hand; the next point begins another.
func (b *drawingBoard) lift() {
	if len(b.inHand().Points) > 0 {
		b.strokes = append(b.strokes, symbol.Stroke{Curved: b.inHand().Curved})
	}
}

// takeBack takes back the last point. A stroke that was not drawn by hand goes as a whole.
func (b *drawingBoard) takeBack() {
	if len(b.inHand().Points) == 0 && len(b.strokes) > 1 {
		b.strokes = b.strokes[:len(b.strokes)-1]
	}
	s := b.inHand()
	switch n := len(s.Points); {
	case n == 0:
	case s.Handles != nil:
		*s = symbol.Stroke{}
	case s.Closed:
		s.Closed = false
	default:
		s.Points = s.Points[:n-1]
	}
}

// text is the symbol as the pattern file has it.
func (b *drawingBoard) text() string {
	if b.picked != "" {
		return b.picked
	}
	return symbol.Path(b.strokes)
}

// use gives the stitch the symbol.
func (b *drawingBoard) use(text string) {
	b.w.closeSheet()
	of := b.of
	b.w.s.Do("Symbol of a stitch", func(now edit.State) edit.State {
		now.Pattern = edit.Symbol(now.Pattern, of, text)
		return now
	})
}

// askOwnStitch asks for a stitch of the designer's own and then for its symbol.
func (w *window) askOwnStitch() { w.openSheet(w.ownStitch()) }

// ownStitch is the question for a stitch of the designer's own.
func (w *window) ownStitch() *sheet {
	terms := w.s.Pattern().Terms
	abbreviation, name, worked := control.NewField(""), control.NewField(""), control.NewField("")
	finish := func() {
		s := pattern.Special{Abbreviation: strings.TrimSpace(abbreviation.Text), Name: strings.TrimSpace(name.Text)}
		if terms == "UK" {
			s.UK = strings.TrimSpace(worked.Text)
		} else {
			s.US = strings.TrimSpace(worked.Text)
		}
		taken := slices.ContainsFunc(w.s.Pattern().Stitches, func(o pattern.Special) bool { return o.Abbreviation == s.Abbreviation })
		if s.Abbreviation == "" || s.US+s.UK == "" || taken {
			return
		}
		w.closeSheet()
		w.s.Do("A stitch of your own", func(now edit.State) edit.State {
			now.Pattern = edit.AddSpecial(now.Pattern, s)
			return now
		})
		w.openSheet(w.board(s).sheet)
	}
	fields := []*control.Field{abbreviation, name, worked}
	labels := []string{translation.Say("Abbreviation, as rows have it"), translation.Say("Name"), translation.Fill("How it is worked, in {{.Terms}} terms", "Terms", terms)}
	s := &sheet{title: translation.Say("A stitch of your own"), size: fyne.NewSize(560, 312)}
	for i, f := range fields {
		f.Enter = func(string) { finish() }
		s.fields = append(s.fields, placed{f, 24, sheetTop + 22 + 62*float32(i), 512, 36})
	}
	worked.SetPlaceHolder("(2 dc, ch 1, 2 dc) in indicated place")
	s.draw = func(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
		for i, l := range labels {
			d.Words(l, 24, sheetTop+12+62*float32(i), theme.Small, false, k.Ink2)
		}
		yes := d.Button(k, "Add", size.Width-24, size.Height-50, true, true, finish)
		no := d.Button(k, "Cancel", yes.X-10, size.Height-50, false, true, w.closeSheet)
		return []control.Spot{no, yes}
	}
	return s
}
