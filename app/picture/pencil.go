package picture

import (
	"image/color"
	"math"
	"slices"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
)

// Ink is a yarn that the pencil can take.
type Ink struct {
	Letter string
	Colour color.NRGBA
}

// stroke is what the pencil has gone over since the button went down.
type stroke struct {
	at       fyne.Position
	stitches []int32
}

// Pencil is the yarn that the pencil draws in and whether it fills patches; "" while it is not in hand.
func (p *Pair) Pencil() (letter string, fill bool) { return p.pencil, p.fill }

// TakePencil takes the pencil in hand, or with "" puts it down.
func (p *Pair) TakePencil(letter string, fill bool) {
	p.pencil, p.fill = letter, fill
	p.chartHead.Redraw()
}

// drawing reports whether the pencil is in hand over a pane: the grid alone is drawn in.
func (p *Pair) drawing(pane *Pane) bool { return p.cells && p.pencil != "" && pane == p.Chart }

func (p *Pair) saysPencil() string {
	if p.fill {
		return translation.Fill("a click fills a patch in yarn {{.Letter}}", "Letter", p.pencil)
	}
	return translation.Fill("drag over the cells to draw in yarn {{.Letter}}", "Letter", p.pencil)
}

func (p *Pane) beginStroke(at fyne.Position) {
	id, ok := p.sight.hit(p.place(at))
	if p.pair.fill {
		if ok {
			p.pair.Drew(p.pair.pencil, []int32{id}, true)
		}
		return
	}
	p.stroke = &stroke{at: at}
	p.draw(at)
}

// draw goes on to a place of the pane, over every cell between.
func (p *Pane) draw(to fyne.Position) {
	const step = 4 // px, less than the smallest cell that can be drawn in
	from := p.stroke.at
	dx, dy := float64(to.X-from.X), float64(to.Y-from.Y)
	n := int(math.Hypot(dx, dy)/step) + 1
	for i := range n {
		share := float32(i+1) / float32(n)
		at := fyne.NewPos(from.X+share*(to.X-from.X), from.Y+share*(to.Y-from.Y))
		if id, ok := p.sight.hit(p.place(at)); ok && !slices.Contains(p.stroke.stitches, id) {
			p.stroke.stitches = append(p.stroke.stitches, id)
		}
	}
	p.stroke.at = to
	p.Mark()
}

func (p *Pane) endStroke() {
	stitches := p.stroke.stitches
	p.stroke = nil
	if len(stitches) > 0 {
		p.pair.Drew(p.pair.pencil, stitches, false)
	}
	p.Mark()
}

// showStroke lays the pencil's colour over what it has gone over.
func (p *Pane) showStroke() {
	if p.stroke == nil {
		return
	}
	ink := p.pair.th.Tokens().Accent
	for _, y := range p.pair.Yarns() {
		if y.Letter == p.pair.pencil {
			ink = y.Colour
		}
	}
	for _, id := range p.stroke.stitches {
		if b := p.sight.bounds(id); !b.IsEmpty() {
			p.rect(b, 0).FillColor = ink
		}
	}
}

// drawTools draws the pencil's yarns and the fill in the head of the grid, from x on, and moves x behind them.
func (p *Pair) drawTools(d *control.Canvas, k theme.Tokens, x *float32, right float32) []control.Spot {
	const side = 26
	var spots []control.Spot
	tool := func(chosen bool, hint string, do func(), picture func(x float32)) {
		if *x+side+4 > right {
			return
		}
		if chosen {
			d.Frame(*x, 7, side, side, 5, k.Wash, k.Accent, 2)
		}
		picture(*x)
		spots = append(spots, control.Spot{X: *x, Y: 7, W: side, H: side, Hint: hint, Do: do})
		*x += side + 4
	}
	*x += 12
	for _, y := range p.Yarns() {
		letter := y.Letter
		chosen := p.pencil == letter
		next := letter
		if chosen {
			next = "" // a second click puts it down
		}
		tool(chosen, translation.Fill("draw in yarn {{.Letter}}", "Letter", letter), func() { p.TakePencil(next, p.fill) }, func(x float32) {
			d.Frame(x+4, 11, side-8, side-8, 3, y.Colour, k.Casing(y.Colour), 1)
			d.WordsMid(letter, x+side/2, 20, theme.Small, true, inkOn(y.Colour))
		})
	}
	if p.pencil != "" {
		tool(p.fill, translation.Say("fill patches"), func() { p.TakePencil(p.pencil, !p.fill) }, func(x float32) {
			d.Icon(theme.Icon("fill", k.Ink), x+3, 10, 20)
		})
	}
	*x += 4
	return spots
}

// inkOn is the ink in which a letter can be read on a colour.
func inkOn(c color.NRGBA) color.NRGBA {
	const middle = 128
	if (299*int(c.R)+587*int(c.G)+114*int(c.B))/1000 > middle {
		return color.NRGBA{A: 255}
	}
	return color.NRGBA{R: 255, G: 255, B: 255, A: 255}
}
