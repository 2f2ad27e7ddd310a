package cloth

import (
	"context"
	"image"
	"image/color"
	"image/draw"
	"math"

	"github.com/fogleman/gg"

	"strandway/chart/geom"
)

// Way is one colourway on a contact sheet.
type Way struct {
	Name  string
	Says  string // one line below the name
	Doubt bool   // what it says is a caution
	Yarns []Yarn
}

// Contact says how a contact sheet is laid out.
type Contact struct {
	Title      string
	Width      int // pixels; 1800 when 0
	Background Background
}

// DrawContact draws the same crop of a cloth in every colourway, side by side.
// The cloth is composed once and coloured as often as there are colourways.
func (c *Cloth) DrawContact(ctx context.Context, ways []Way, o Contact) (image.Image, error) {
	if o.Width <= 0 {
		o.Width = 1800
	}
	across := contactColumns(len(ways))
	width := float64(o.Width)
	margin := sheetMargin * width
	gap := .02 * width
	side := math.Floor((width - 2*margin - gap*float64(across-1)) / float64(across))
	view, h := c.crop(side)
	buffer, err := c.Draw(ctx, view)
	if err != nil {
		return nil, err
	}
	const head, foot = .075, .082
	step := h + foot*width
	lines := (len(ways) + across - 1) / across
	d := gg.NewContext(o.Width, int(head*width+step*float64(lines)+margin/2))
	d.SetColor(color.White)
	d.Clear()
	p := &pen{Context: d, width: width}
	title, err := p.face("NotoSerif-Regular", titleSize)
	if err != nil {
		return nil, err
	}
	text, err := p.face("NotoSans-Regular", textSize)
	if err != nil {
		return nil, err
	}
	small, err := p.face("NotoSans-Regular", .85*textSize)
	if err != nil {
		return nil, err
	}
	p.SetColor(ink)
	p.SetFontFace(title)
	p.DrawString(o.Title, margin, .052*width)
	for i, way := range ways {
		x, y := margin+(side+gap)*float64(i%across), head*width+step*float64(i/across)
		picture := buffer.Colour(way.Yarns, o.Background)
		at := picture.Rect.Add(image.Pt(int(x), int(y)))
		draw.Draw(d.Image().(draw.Image), at, picture, image.Point{}, draw.Over)
		p.SetColor(ink)
		p.SetFontFace(text)
		p.DrawString(way.Name, x, y+h+.022*width)
		p.SetFontFace(small)
		p.SetColor(quiet)
		if way.Doubt {
			p.SetColor(caution)
		}
		lines := p.WordWrap(way.Says, side)
		for k, line := range lines[:min(2, len(lines))] {
			p.DrawString(line, x, y+h+(.040+.018*float64(k))*width)
		}
	}
	return d.Image(), nil
}

var (
	quiet   = color.NRGBA{110, 106, 100, 255}
	caution = color.NRGBA{158, 74, 30, 255}
)

// contactColumns is how many colourways stand side by side.
func contactColumns(n int) int {
	switch {
	case n <= 2:
		return max(1, n)
	case n == 4:
		return 2
	case n <= 9:
		return 3
	}
	return 4
}

// crop is the part of the cloth that a contact sheet shows at a width in pixels,
// so large that its stitches can be told apart; h is its height in pixels.
func (c *Cloth) crop(side float64) (v View, h float64) {
	const finest = 20 // pixels a stitch
	box := c.box.Grow(Margin)
	scale := max(finest, side/box.Width())
	h = math.Floor(min(.8*side, box.Height()*scale))
	mid := box.Centre()
	half := geom.Point{X: side / 2 / scale, Y: h / 2 / scale}
	return View{Box: geom.Box{Min: mid.Sub(half), Max: mid.Add(half)}, PixelsPerW: scale}, h
}
