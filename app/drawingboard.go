package app

import (
	"image"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/chart"
	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/symbol"
	"strandway/render/raster"
)

// The grid of the drawing board: what it spans in stitch widths, and where it stands, px.
const (
	boardSide = 3    // to the left and right of the foot
	boardDown = .5   // below it
	boardUp   = 4.5  // above it
	boardStep = .25  // from point to point
	boardUnit = 56   // px of one stitch width
	penWidth  = .085 // of strokes, stitch widths, as in charts

	boardLeft  = 24
	boardTop   = 104
	boardWide  = 2 * boardSide * boardUnit
	boardHigh  = (boardUp + boardDown) * boardUnit
	boardAside = boardLeft + boardWide + 32 // where what stands beside it begins
)

// onBoard takes places in stitch widths to px of the grid.
func onBoard() geom.Matrix {
	return geom.Scale(boardUnit, -boardUnit).Then(geom.Translate(boardSide*boardUnit, boardUp*boardUnit))
}

// boardPoints are the points of the grid, row by row from the top.
func boardPoints() []geom.Point {
	var out []geom.Point
	for y := boardUp; y >= -boardDown; y -= boardStep {
		for x := -float64(boardSide); x <= boardSide; x += boardStep {
			out = append(out, geom.Point{X: x, Y: y})
		}
	}
	return out
}

func (b *drawingBoard) draw(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Add(canvas.NewImageFromImage(b.picture(k)), boardLeft, boardTop, boardWide, boardHigh)
	var spots []control.Spot
	const half = boardStep * boardUnit / 2
	for _, p := range boardPoints() {
		at := onBoard().Apply(p)
		spots = append(spots, control.Spot{X: boardLeft + float32(at.X) - half, Y: boardTop + float32(at.Y) - half, W: 2 * half, H: 2 * half,
			First: p == geom.Point{}, Do: func() { b.add(p) }})
	}
	spots = append(spots, b.drawTools(d, k)...)
	spots = append(spots, b.drawStitches(d, k, size.Width)...)
	aside := size.Width - boardAside - 24
	d.Words(translation.Say("As charts draw it"), boardAside, boardTop+6, theme.Small, false, k.Ink2)
	shape, err := chart.OwnSymbol(b.of, b.text())
	says := "Click points of the grid to lead a stroke from one to the next; the stitch stands on the stronger line."
	if err == nil {
		d.Add(canvas.NewImageFromImage(preview(shape, k, aside, 124)), boardAside, boardTop+16, aside, 124)
	} else if b.text() != "" {
		says = "A symbol rises above its foot: lead a stroke upward from the stronger line."
	}
	d.Words(control.Fitted(translation.Say(says), theme.Second, false, size.Width-48), boardLeft, size.Height-70, theme.Second, false, k.Ink2)
	spots = append(spots, b.drawTiles(d, k, boardAside, boardTop+152, aside)...)
	for i := range spots {
		do := spots[i].Do
		spots[i].Do = func() { do(); b.sheet.card.Redraw() }
	}
	parts := d.Button(k, "Draw it from its parts", boardLeft, size.Height-50, false, false, func() { b.use("") })
	yes := d.Button(k, "Use it", size.Width-24, size.Height-50, true, true, func() {
		if err == nil {
			b.use(b.text())
		}
	})
	yes.First = false // the keys begin at the foot
	no := d.Button(k, "Cancel", yes.X-10, size.Height-50, false, true, b.w.closeSheet)
	return append(spots, parts, no, yes)
}

// drawTools draws what can be done with the stroke in hand.
func (b *drawingBoard) drawTools(d *control.Canvas, k theme.Tokens) []control.Spot {
	curve := "Curve it"
	if b.inHand().Curved {
		curve = "Straighten it"
	}
	var spots []control.Spot
	x, y := float32(boardLeft), float32(boardTop+boardHigh+12)
	for _, tool := range []struct {
		label string
		do    func()
	}{
		{"New stroke", b.lift},
		{curve, func() { b.inHand().Curved = !b.inHand().Curved }},
		{"Take back", b.takeBack},
		{"Clear", func() { b.picked, b.strokes = "", []symbol.Stroke{{}} }},
	} {
		if wide := control.Width(translation.Say(tool.label), theme.Body, true) + 30; x+wide > boardLeft+boardWide+24 && x > boardLeft {
			x, y = boardLeft, y+38
		}
		s := d.Button(k, tool.label, x, y, false, false, tool.do)
		spots = append(spots, s)
		x += s.W + 6
	}
	return spots
}

// drawStitches draws the stitches of the designer's own to choose from.
func (b *drawingBoard) drawStitches(d *control.Canvas, k theme.Tokens, width float32) []control.Spot {
	const y = sheetTop + 4
	var spots []control.Spot
	x := float32(boardLeft)
	for _, s := range b.w.s.Pattern().Stitches {
		wide := control.Width(s.Abbreviation, theme.Body, true) + 24
		if x+wide > width-180 {
			break
		}
		ink := k.Ink2
		if s.Abbreviation == b.of {
			ink = k.Ink
			d.Frame(x, y, wide, 30, 5, k.Wash, k.Accent, 1.6)
		}
		d.WordsMid(s.Abbreviation, x+wide/2, y+15, theme.Body, s.Abbreviation == b.of, ink)
		spots = append(spots, control.Spot{X: x, Y: y, W: wide, H: 30, Button: true, Do: func() { b.take(s) }})
		x += wide + 4
	}
	return append(spots, d.Button(k, "Another stitch…", x+8, y-1, false, false, b.w.askOwnStitch))
}

// drawTiles draws the symbols of other stitches to choose from.
func (b *drawingBoard) drawTiles(d *control.Canvas, k theme.Tokens, x, y, width float32) []control.Spot {
	const side = 39
	d.Words(translation.Say("or as another stitch is drawn"), x, y+6, theme.Small, false, k.Ink2)
	columns := int(width / side)
	var spots []control.Spot
	for i, name := range wholeSymbols() {
		img, drawn := b.tiles[name]
		if !drawn {
			shape, _ := symbol.Standard().Symbol(name)
			img = preview(shape, k, side, side)
			b.tiles[name] = img
		}
		tx, ty := x+side*float32(i%columns), y+16+side*float32(i/columns)
		if name == b.picked {
			d.Frame(tx, ty, side, side, 5, k.Wash, k.Accent, 2)
		}
		d.Add(canvas.NewImageFromImage(img), tx, ty, side, side)
		spots = append(spots, control.Spot{X: tx, Y: ty, W: side, H: side, Button: i == 0, Hint: name, Do: func() { b.picked = name }})
	}
	return spots
}

// wholeSymbols are the names of the symbols that can stand alone.
func wholeSymbols() []string {
	var out []string
	for _, name := range symbol.Standard().Names() {
		_, part, cut := strings.Cut(name, "-")
		shape, _ := symbol.Standard().Symbol(name)
		if small := shape.Height() < .5; small || cut && (strings.HasSuffix(part, "leg") || strings.HasSuffix(part, "foot") || part == "slim" || part == "cap" || part == "within") {
			continue
		}
		out = append(out, name)
	}
	return out
}

// picture draws the grid, the strokes and the points of the one in hand.
func (b *drawingBoard) picture(k theme.Tokens) image.Image {
	const sharp = 2 // drawn twice as large, for screens that show more pixels
	list := &display.List{}
	line := func(a, z geom.Point, ink display.Paint, width float64) {
		var p geom.Path
		p.MoveTo(a)
		p.LineTo(z)
		list.Items = append(list.Items, display.Path{Path: p.Transform(onBoard()), Stroke: ink, Width: width})
	}
	dot := func(at geom.Point, width float64, ink display.Paint) {
		line(at, at.Add(geom.Point{X: .001}), ink, width)
	}
	for x := -boardSide; x <= boardSide; x++ {
		line(geom.Point{X: float64(x), Y: -boardDown}, geom.Point{X: float64(x), Y: boardUp}, display.Solid(k.Line), .7)
	}
	for y := 1.; y <= boardUp; y++ {
		line(geom.Point{X: -boardSide, Y: y}, geom.Point{X: boardSide, Y: y}, display.Solid(k.Line), .7)
	}
	for _, p := range boardPoints() {
		dot(p, 2, display.Solid(k.Line))
	}
	line(geom.Point{X: -boardSide}, geom.Point{X: boardSide}, display.Solid(k.Edge), 1.6)
	dot(geom.Point{}, 9, display.Solid(k.Edge))
	if shape, known := symbol.Standard().Symbol(b.picked); known {
		list.Items = append(list.Items, shapeItems(shape, onBoard(), boardUnit, k)...)
	} else {
		for i := range b.strokes {
			ink := display.Solid(k.Ink)
			if i == len(b.strokes)-1 {
				ink = display.Solid(k.Accent)
			}
			if path, err := symbol.ParsePath(symbol.Path(b.strokes[i : i+1])); err == nil {
				list.Items = append(list.Items, display.Path{Path: path.Transform(onBoard()), Stroke: ink, Width: penWidth * boardUnit})
			}
		}
		for _, p := range b.inHand().Points {
			dot(p, 9, display.Solid(k.Accent))
		}
	}
	return painted(list, boardWide, boardHigh, sharp)
}

// preview draws a symbol as a chart has it, in a strip up to three times side by side.
func preview(shape *symbol.Symbol, k theme.Tokens, width, height float32) image.Image {
	const sharp, usual, margin = 2, 34, 5 // px of a stitch width at a chart's own size
	w, h := float64(width), float64(height)
	box := shape.Box.Add(shape.Foot)
	unit := min(usual, (h-2*margin)/box.Height(), (w-2*margin)/max(box.Width(), .1))
	step := max(1, math.Ceil(box.Width()+.2)) * unit
	n := 1.
	left := w/2 - unit*box.Centre().X
	if width > 2*height { // a strip, no tile
		n = max(1, min(3, math.Floor((w-2*margin)/step)))
		left = margin - unit*box.Min.X
	}
	list := &display.List{}
	for i := range int(n) {
		m := geom.Scale(unit, -unit).Then(geom.Translate(left+step*float64(i), h/2+unit*box.Centre().Y))
		list.Items = append(list.Items, shapeItems(shape, m, unit, k)...)
	}
	return painted(list, w, h, sharp)
}

// shapeItems are the parts of a symbol at its own height.
func shapeItems(shape *symbol.Symbol, m geom.Matrix, unit float64, k theme.Tokens) []display.Item {
	var out []display.Item
	for i, part := range shape.Parts {
		item := display.Path{Path: shape.Stretched(i, shape.Height()).Transform(m), Stroke: display.Solid(k.Ink), Width: penWidth * unit}
		switch part.Fill {
		case symbol.Ink:
			item.Fill = display.Solid(k.Ink)
		case symbol.Paper:
			item.Fill = display.Solid(k.Paper)
		}
		out = append(out, item)
	}
	return out
}

// painted paints a list in px, each as sharp as so many pixels.
func painted(list *display.List, width, height, sharp float64) image.Image {
	img := image.NewRGBA(image.Rect(0, 0, int(width*sharp), int(height*sharp)))
	raster.PaintView(img, list, geom.Scale(sharp, sharp))
	return img
}
