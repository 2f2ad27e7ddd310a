package cloth

import (
	"context"
	"fmt"
	"image"
	"image/color"
	"math"

	"github.com/fogleman/gg"
	"github.com/golang/freetype/truetype"
	"golang.org/x/image/font"

	"strandway/assets"
	"strandway/chart/geom"
)

// Sheet says what stands round a cloth on its finished picture.
type Sheet struct {
	Title      string   // the piece, and the pattern it belongs to
	Colourway  string   // "" for the pattern's own colours
	Names      []string // of the yarns, in the fabric's order: "A  Harbour Worsted, Slate"
	Width      int      // pixels; 1600 when 0
	StitchMM   float64  // width of one single crochet; 7 when 0
	Inches     bool     // the scale bar in inches
	Background Background
}

// Sizes on a sheet, as parts of its width.
const (
	sheetMargin = .045
	titleSize   = .026
	textSize    = .0165
	cardWidth   = .075 // of a yarn's shade card
	cardHeight  = .034
)

// DrawSheet draws a finished picture: the cloth, its scale bar, caption and a
// shade card of each yarn.
func (c *Cloth) DrawSheet(ctx context.Context, yarns []Yarn, s Sheet) (image.Image, error) {
	if s.Width <= 0 {
		s.Width = 1600
	}
	width := float64(s.Width)
	margin := sheetMargin * width
	v := c.SheetView(s)
	picture, err := c.Paint(ctx, v, yarns, s.Background)
	if err != nil {
		return nil, err
	}

	cards := cardsOf(yarns, s.Names)
	foot := footOf(width, len(cards))
	height := margin + float64(picture.Rect.Dy()) + foot + margin
	d := gg.NewContext(s.Width, int(math.Ceil(height)))
	if s.Background.Ground != Transparent {
		d.SetColor(color.White)
		d.Clear()
	}
	d.DrawImage(picture, (s.Width-picture.Rect.Dx())/2, int(margin))

	p := &pen{Context: d, width: width}
	y := margin + float64(picture.Rect.Dy())
	if err := p.caption(s, y, margin); err != nil {
		return nil, err
	}
	p.scaleBar(v.PixelsPerW, s, y, width-margin)
	if err := p.cards(ctx, cards, c.sprites, s.Background, y+captionHeight*width, margin); err != nil {
		return nil, err
	}
	return d.Image(), nil
}

// SheetView is the view of the whole cloth on a sheet.
func (c *Cloth) SheetView(s Sheet) View {
	const tallest = 1.4 // height of the cloth's picture as a part of its width
	width := float64(s.Width) * (1 - 2*sheetMargin)
	box := c.box.Grow(Margin)
	return View{Box: box, PixelsPerW: min(width/box.Width(), tallest*width/box.Height())}
}

// card is the shade card of one yarn.
type card struct {
	yarn Yarn
	name string
}

func cardsOf(yarns []Yarn, names []string) []card {
	var out []card
	for i, y := range yarns {
		if i < len(names) {
			out = append(out, card{y, names[i]})
		}
	}
	return out
}

const (
	cardsAcross   = 3
	captionHeight = .085 // from the picture to the cards, as a part of the width
	cardStep      = .050
)

// footOf is the height of what stands below the picture.
func footOf(width float64, cards int) float64 {
	lines := (cards + cardsAcross - 1) / cardsAcross
	return width * (captionHeight + cardStep*float64(lines))
}

// pen writes on a sheet.
type pen struct {
	*gg.Context
	width float64
}

var ink = color.NRGBA{44, 42, 40, 255}

func (p *pen) face(name string, size float64) (font.Face, error) {
	data, err := assets.Font(name)
	if err != nil {
		return nil, err
	}
	f, err := truetype.Parse(data)
	if err != nil {
		return nil, fmt.Errorf("font %s: %w", name, err)
	}
	return truetype.NewFace(f, &truetype.Options{Size: size * p.width}), nil
}

// caption writes title and colourway below the picture.
func (p *pen) caption(s Sheet, y, margin float64) error {
	title, err := p.face("NotoSerif-Regular", titleSize)
	if err != nil {
		return err
	}
	p.SetColor(ink)
	p.SetFontFace(title)
	p.DrawString(s.Title, margin, y+.040*p.width)
	text, err := p.face("NotoSans-Regular", textSize)
	if err != nil {
		return err
	}
	p.SetFontFace(text)
	if s.Colourway != "" {
		p.DrawString(s.Colourway, margin, y+.066*p.width)
	}
	return nil
}

// scaleBar draws a bar of a round length that ends at right.
func (p *pen) scaleBar(pixelsPerW float64, s Sheet, y, right float64) {
	mm := stitchMM(s.StitchMM)
	unit, label := 10., "cm"
	if s.Inches {
		unit, label = 25.4, "in"
	}
	perUnit := pixelsPerW * unit / mm
	n := roundLength(.22 * p.width / perUnit)
	x := right - n*perUnit
	y += .030 * p.width
	tick := .007 * p.width
	p.SetColor(ink)
	p.SetLineWidth(.0016 * p.width)
	p.SetLineCapButt()
	p.DrawLine(x, y, right, y)
	for i := 0.; i <= n; i++ {
		h := tick
		if i > 0 && i < n {
			h = tick / 2
		}
		if n > 20 && math.Mod(i, 10) != 0 {
			continue
		}
		p.DrawLine(x+i*perUnit, y-h, x+i*perUnit, y)
	}
	if n < 1 {
		p.DrawLine(right, y-tick, right, y)
	}
	p.Stroke()
	p.DrawStringAnchored(fmt.Sprintf("%g %s", n, label), (x+right)/2, y+.012*p.width, .5, .5)
}

// roundLength is the greatest of 1, 2, 5, 10 ... times a power of ten up to most.
func roundLength(most float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(max(most, .01))))
	for _, n := range []float64{5, 2, 1} {
		if n*power <= most {
			return n * power
		}
	}
	return power
}

// cards draws the yarns as they lie wound on a shade card, with their names.
func (p *pen) cards(ctx context.Context, cards []card, sprites *Sprites, back Background, y, margin float64) error {
	step := (p.width - 2*margin) / cardsAcross
	w, h := cardWidth*p.width, cardHeight*p.width
	for i, c := range cards {
		left := margin + step*float64(i%cardsAcross)
		top := y + cardStep*p.width*float64(i/cardsAcross)
		wound := woundCard(c.yarn, sprites)
		img, err := wound.Paint(ctx, View{Box: wound.box, PixelsPerW: w / wound.box.Width()}, []Yarn{c.yarn}, back)
		if err != nil {
			return err
		}
		p.DrawImage(img, int(left), int(top))
		p.SetColor(ink)
		lines := p.WordWrap(c.name, step-w-.02*p.width)
		for k, line := range lines[:min(2, len(lines))] {
			p.DrawStringAnchored(line, left+w+.012*p.width, top+h/2+(float64(k)-float64(min(2, len(lines))-1)/2)*1.3*textSize*p.width, 0, .35)
		}
	}
	return nil
}

// woundCard is yarn laid side by side, as on a shade card.
func woundCard(y Yarn, sprites *Sprites) *Cloth {
	const length, turns, gap = 4.4, 6, .36
	k := key{part: part{form: wound}, dx: quantised(length), shape: y.Shape}
	c := &Cloth{
		sprites: sprites,
		yarns:   []Yarn{y},
		looks:   looksOf([]Yarn{y}, 1),
		table:   -beneath,
	}
	c.looks[0].repeat = length * 2.2
	thick := y.Shape.thickness()
	for i := range turns {
		k.variant = uint8(i % 3)
		if i < 3 {
			c.keys = append(c.keys, k)
		}
		c.instances = append(c.instances, instance{
			y: float32((float64(i) + .5) * gap * thick), from: float32(i) * length, length: length,
			key: int32(i % 3), seed: uint32(i + 1),
		})
	}
	c.box = geom.Box{Max: geom.Point{X: length, Y: turns * gap * thick}}
	return c
}
