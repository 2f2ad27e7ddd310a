package app

import (
	"context"
	"fmt"
	"image"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/chart/display"
	"strandway/chart/schematic"
	"strandway/model"
	"strandway/model/edit"
	"strandway/model/pattern"
	"strandway/render/cloth"
)

// sizesSight is what the Sizes view keeps between two drawings.
type sizesSight struct {
	leaf    leaf
	list    *display.List
	of      nestKey
	against string // the figure of known size; "" for none
	onCloth bool   // the cloth is laid on the piece
	laid    laidCloth
	top     int // first size shown in the table
	rows    int // sizes that the table has room for
}

// nestKey is what the nested outlines were drawn from.
type nestKey struct {
	of      *reckoning
	size    int
	against string
	cloth   image.Image
}

// laidCloth is the cloth of the size in hand, painted in the background.
type laidCloth struct {
	of    *reckoning
	way   string
	image image.Image // nil while it is being painted
}

const (
	sizeLine = 30
	sizesTop = 84 // above the first size
	sizesEnd = 62 // below the last
)

// drawSizes draws the piece to scale in all its sizes, and the table of them.
func (w *window) drawSizes(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	figures, r := w.figures(), w.reckoned()
	x := d.Words(translation.Say("Measure"), 16, 22, theme.Body, true, k.Ink)
	if figures == nil || r == nil {
		d.Words(translation.Say("the sizes are being reckoned"), x+10, 22, theme.Second, false, k.Ink2)
		return nil
	}
	spots := w.drawUnits(d, k, size.Width-16, w.s.Pattern().Units == "in")
	spots, x = append(w.drawGround(d, k, spots[0].X-14), spots...), x+10
	d.Words(control.Fitted(basis(figures, w.s.Pattern()), theme.Second, false, spots[0].X-x-16), x, 22, theme.Second, false, k.Ink2)

	table := min(sizesTop+sizeLine*float32(len(r.table))+sizesEnd, max(size.Height*.46, sizesTop+2*sizeLine+sizesEnd))
	high := size.Height - 44 - table
	if figures.Known() {
		w.drawNest(d, k, r, 16, 46, size.Width-32, high-14)
	} else {
		d.Words(translation.Say("Neither a gauge nor hook and yarn are given, so nothing is known in cm yet: give the gauge below."), 16, 70, theme.Body, false, k.Ink2)
	}
	d.Rect(0, 44+high, size.Width, 1, 0, k.Line)
	return append(spots, w.drawTable(d, k, r, 44+high, size)...)
}

// drawGround draws what the piece is laid on or beside, and the switch for its cloth; their right end is x.
func (w *window) drawGround(d *control.Canvas, k theme.Tokens, x float32) []control.Spot {
	s := &w.sizesSeen
	laid := translation.Say("Cloth")
	width := control.Width(laid, theme.Second, true) + 22
	x -= width
	edge := k.Edge
	if s.onCloth {
		edge = k.Accent
		d.Frame(x, 9, width, 27, 5, k.Wash, edge, 1.6)
	} else {
		d.Frame(x, 9, width, 27, 5, k.Paper, edge, 1)
	}
	d.WordsMid(laid, x+width/2, 22, theme.Second, s.onCloth, k.Ink)
	cloth := control.Spot{X: x, Y: 8, W: width, H: 29, Hint: "the cloth laid on the piece, or its outline alone", Do: w.layCloth}

	name := translation.Say("Against nothing")
	if s.against != "" {
		name = translation.Fill("Against {{.Thing}}", "Thing", translation.Say(figureWord(s.against)))
	}
	width = control.Width(name, theme.Second, false) + 38
	x -= width + 8
	d.Frame(x, 9, width, 27, 5, k.Paper, k.Edge, 1)
	end := d.Words(name, x+11, 22, theme.Second, false, k.Ink)
	d.More(end+7, 22, k.Ink2)
	at := fyne.NewPos(x, 38)
	return []control.Spot{{X: x, Y: 8, W: width, H: 29, Hint: "something of known size beside or under the piece", Do: func() { w.pickFigure(at) }}, cloth}
}

// figureWord names a figure in the window: "table top".
func figureWord(name string) string { return strings.ReplaceAll(name, "-", " ") }

// pickFigure asks what the piece is drawn against.
func (w *window) pickFigure(at fyne.Position) {
	m := fyne.NewMenu("")
	add := func(label, name string) {
		item := fyne.NewMenuItem(label, func() {
			w.sizesSeen.against = name
			w.sizes.Redraw()
		})
		item.Checked = name == w.sizesSeen.against
		m.Items = append(m.Items, item)
	}
	add(translation.Say("nothing"), "")
	for _, f := range schematic.Figures() {
		add(translation.Say(figureWord(f.Name)), f.Name)
	}
	widget.ShowPopUpMenuAtPosition(m, w.win.Canvas(), w.app.Driver().AbsolutePositionForObject(w.sizes).Add(at))
}

func (w *window) layCloth() {
	w.sizesSeen.onCloth = !w.sizesSeen.onCloth
	w.show(sizesView)
}

// laidNow is the cloth to lay on the piece, nil where none is wished or while it is being painted.
func (w *window) laidNow(r *reckoning) image.Image {
	s, way := &w.sizesSeen, w.s.Colourway()
	if !s.onCloth || r.plan == nil {
		return nil
	}
	if s.laid.of != r || s.laid.way != way {
		old := s.laid.image
		s.laid = laidCloth{of: r, way: way, image: old}
		go func() {
			const pixels = 1100
			image, err := cloth.Laid(context.Background(), r.work, r.piece, way, r.plan, r.box, pixels)
			w.post(func() {
				if err == nil && s.laid.of == r && s.laid.way == way {
					s.laid.image = image
					w.sizes.Redraw()
				}
			})
		}()
	}
	return s.laid.image
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
		return translation.Say("no gauge")
	case f.Scale.Guess:
		return translation.Say("guessed from hook and yarn: take it as ±15 %")
	}
	says := translation.Say("by the measured swatch")
	if p.Gauge.Stitches > 0 {
		says = fmt.Sprintf("gauge %g sts, %g rows over %g cm", p.Gauge.Stitches, p.Gauge.Rows, p.Gauge.OverCM)
	}
	if b := model.BlockingOf(p.Gauge.Swatch); b.Width != 1 || b.Length != 1 {
		says += fmt.Sprintf("; blocking: × %.2f wide, × %.2f long", b.Width, b.Length)
	}
	return says
}

func (w *window) drawNest(d *control.Canvas, k theme.Tokens, r *reckoning, x, y, width, height float32) {
	s := &w.sizesSeen
	key := nestKey{r, w.s.Size(), s.against, w.laidNow(r)}
	if s.of != key || s.list == nil {
		s.of = key
		o := schematic.Options{Lines: 3, Shown: min(key.size, len(r.nest)-1), Inches: r.pattern.Units == "in", Cloth: key.cloth}
		if f, ok := schematic.FigureNamed(s.against); ok {
			o.Against = &f
		}
		s.list = schematic.Draw(r.nest, o)
	}
	s.leaf.draw(d, k, s.list, x, y, width, height, w.win.Canvas().Scale(), true)
}
