package app

import (
	"cmp"
	"fmt"
	"image"
	"image/color"
	"os"
	"path/filepath"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	xdraw "golang.org/x/image/draw"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model/colour"
	"strandway/model/edit"
	"strandway/model/palette"
	"strandway/model/pattern"
)

// photograph takes a yarn's shade, or its sequence of colours, from a picture of a ball or swatch.
type photograph struct {
	w       *window
	yarn    pattern.Yarn
	picture image.Image     // small
	along   []palette.Found // the colours in it, in the order in which they follow one another
	n       int             // how many are looked for
	at      int             // the one that is chosen
	sheet   *sheet
}

const mostInPhotograph = 8

// askPhotograph asks for a picture of a yarn.
func (w *window) askPhotograph(y pattern.Yarn) {
	w.closeSheet()
	w.askFile(translation.Say("A photograph of a ball or swatch"), translation.Say("Open"), "", false, pictureEnds, func(path string) {
		w.say(translation.Say("Reading the photograph…"))
		go func() {
			picture, err := readPhotograph(path)
			w.post(func() {
				if err != nil {
					w.say(spoken(err.Error()))
					return
				}
				w.say("")
				p, err := w.photographed(y, picture)
				if err != nil {
					w.say(spoken(err.Error()))
					return
				}
				w.openSheet(p.sheet)
			})
		}()
	})
}

// readPhotograph reads a picture and makes it as small as it is shown.
func readPhotograph(path string) (image.Image, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf(translation.Say("cannot read %s"), path)
	}
	defer f.Close()
	picture, err := palette.Photograph(f)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", filepath.Base(path), err)
	}
	const most = 640 // px of a side
	size := picture.Bounds().Size()
	by := min(1, float64(most)/float64(max(size.X, size.Y)))
	small := image.NewNRGBA(image.Rect(0, 0, max(1, int(float64(size.X)*by)), max(1, int(float64(size.Y)*by))))
	xdraw.ApproxBiLinear.Scale(small, small.Rect, picture, picture.Bounds(), xdraw.Src, nil)
	return small, nil
}

// photographed shows the colours of a picture to choose from.
func (w *window) photographed(y pattern.Yarn, picture image.Image) (*photograph, error) {
	p := &photograph{w: w, yarn: y, picture: picture}
	p.sheet = &sheet{title: w.yarnTitle(y), size: fyne.NewSize(640, 404), draw: p.draw}
	return p, p.look(1)
}

// look looks for n colours.
func (p *photograph) look(n int) error {
	n = max(1, min(n, mostInPhotograph))
	found, err := palette.Colours(p.picture, n)
	if err != nil {
		return err
	}
	p.n, p.along = n, slices.Clone(found)
	slices.SortStableFunc(p.along, func(a, b palette.Found) int { return cmp.Compare(a.Along, b.Along) })
	p.at = slices.Index(p.along, found[0]) // the one with the largest share
	return nil
}

func (p *photograph) draw(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	const left, top, wide, high, aside = 24, 64, 300, 240, 348
	box := p.picture.Bounds().Size()
	scale := min(float32(wide)/float32(box.X), float32(high)/float32(box.Y))
	pw, ph := float32(box.X)*scale, float32(box.Y)*scale
	picture := canvas.NewImageFromImage(p.picture)
	picture.ScaleMode = canvas.ImageScaleSmooth
	x, y := left+(wide-pw)/2, top+(high-ph)/2
	d.Add(picture, x, y, pw, ph)
	const border = palette.PhotographBorder
	d.Frame(x+pw*border, y+ph*border, pw*(1-2*border), ph*(1-2*border), 2, color.Transparent, k.OnAccent, 1.5)
	d.Words(control.Fitted(translation.Say("the colours are those inside the frame"), theme.Small, false, wide), left, top+high+16, theme.Small, false, k.Ink2)

	spots := p.drawCount(d, k, aside, top) // first, so that the keys stay with them whatever is found
	for i, f := range p.along {
		y := float32(top + 58 + 25*i)
		d.Frame(aside, y-10, 46, 21, 4, f.Colour, k.Edge, 1)
		if i == p.at {
			d.Frame(aside-3, y-13, 52, 27, 6, color.Transparent, k.Accent, 2.2)
		}
		d.Words(fmt.Sprintf("%s   %.0f %%", colour.Hex(f.Colour), 100*f.Share), aside+60, y, theme.Second, i == p.at, k.Ink)
		spots = append(spots, control.Spot{X: aside - 4, Y: y - 12, W: 230, H: 25, Do: func() { p.at = i; p.sheet.card.Redraw() }})
	}
	yes := d.Button(k, "Use the chosen colour", size.Width-24, size.Height-50, true, true, p.take)
	no := d.Button(k, "Cancel", left, size.Height-50, false, false, p.w.closeSheet)
	spots = append(spots, no)
	if len(p.along) > 1 {
		spots = append(spots, d.Button(k, "Use all as its sequence", yes.X-10, size.Height-50, false, true, p.takeSequence))
	}
	return append(spots, yes)
}

// drawCount draws how many colours are looked for, with the buttons to change it.
func (p *photograph) drawCount(d *control.Canvas, k theme.Tokens, x, y float32) []control.Spot {
	x = d.Words(translation.Say("Colours in the yarn"), x, y+16, theme.Body, false, k.Ink) + 14
	d.Frame(x, y, 96, 32, 6, k.Desk, k.Edge, 1)
	d.WordsMid("–", x+16, y+16, theme.Body, true, k.Ink)
	d.WordsMid(fmt.Sprint(p.n), x+48, y+16, theme.Body, true, k.Ink)
	d.WordsMid("+", x+80, y+16, theme.Body, true, k.Ink)
	step := func(by int) func() {
		return func() {
			if err := p.look(p.n + by); err != nil {
				p.w.say(spoken(err.Error()))
			}
			p.sheet.card.Redraw()
		}
	}
	return []control.Spot{
		{X: x, Y: y, W: 32, H: 32, Do: step(-1), Button: true},
		{X: x + 64, Y: y, W: 32, H: 32, Do: step(1), Button: true, First: true},
	}
}

// take gives the yarn the chosen colour, in the colourway shown.
func (p *photograph) take() {
	shade := pattern.Shade{Shade: p.w.shadeName(p.yarn), Colour: colour.Hex(p.along[p.at].Colour)}
	p.w.closeSheet()
	p.w.s.Do("Colour from a photograph", func(now edit.State) edit.State {
		now.Pattern = edit.Shade(now.Pattern, p.w.s.Colourway(), p.yarn.Letter, shade)
		return now
	})
}

// takeSequence gives the yarn all colours, as they follow one another.
func (p *photograph) takeSequence() {
	var colours []string
	for _, f := range p.along {
		colours = append(colours, colour.Hex(f.Colour))
	}
	p.w.closeSheet()
	p.w.s.Do("Colours from a photograph", func(now edit.State) edit.State {
		now.Pattern = edit.Sequence(now.Pattern, p.w.s.Colourway(), p.yarn.Letter, colours)
		return now
	})
}
