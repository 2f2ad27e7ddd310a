package app

import (
	"context"
	"fmt"
	"image"
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"strandway/app/control"
	"strandway/app/session"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/chart/geom"
	"strandway/model/colour"
	"strandway/model/palette"
	"strandway/model/pattern"
	"strandway/render/cloth"
)

// swatch is a small cloth of the piece, with what is said of it.
type swatch struct {
	name   string
	shades []pattern.Shade // of the pattern's yarns, in their order
	here   bool            // it is the one that is shown everywhere
	hint   string
	do     func()
}

// tile is a place beside the swatches that is no picture.
type tile struct {
	says string
	do   func()
}

// sheetOf says how swatches are laid out.
type sheetOf struct {
	top   float32 // where they begin
	size  fyne.Size
	least float32 // width of one
	more  *tile   // behind them; nil for none
}

// Pictures of swatches, px, and their height as a share of their width.
const (
	swatchGap   = 18
	swatchMost  = 460
	flattest    = .4
	tallest     = .72
	scrolled    = .5 // where not all are in sight
	swatchesEnd = 8  // below the last
)

// columns gives the fewest columns in which n swatches are seen without scrolling, else as many as
// there is room for; and how large their pictures are then.
func (o sheetOf) columns(n int) (columns int, width, height float32) {
	across, down := o.size.Width-32+swatchGap, o.size.Height-o.top-swatchesEnd
	most := max(1, int(across/(o.least+swatchGap)))
	for columns = max(1, int(across/(swatchMost+swatchGap))); ; columns++ {
		width = across/float32(columns) - swatchGap
		lines := (n + columns - 1) / columns
		height = min(down/float32(lines)-captionHeight, width*tallest)
		if height >= width*flattest {
			return columns, width, float32(int(height))
		}
		if columns >= most {
			return columns, width, float32(int(width * scrolled))
		}
	}
}

// captionHeight is what stands below a swatch's picture, px.
const captionHeight = 58

// drawSwatches draws swatches in columns, as far as they are in sight.
func (w *window) drawSwatches(d *control.Canvas, k theme.Tokens, swatches []swatch, o sheetOf) []control.Spot {
	c := &w.contact
	n := len(swatches)
	if o.more != nil {
		n++
	}
	columns, width, height := o.columns(max(n, 1))
	step := height + captionHeight
	c.tall = o.top + float32((n+columns-1)/columns)*step + swatchesEnd
	c.scroll = max(0, min(c.scroll, c.tall-o.size.Height))
	m := w.s.Made()
	c.crop.want(w, m, width, height)
	var spots []control.Spot
	for i := range n {
		x := 16 + float32(i%columns)*(width+swatchGap)
		y := o.top + 3 + float32(i/columns)*step - c.scroll
		if y+step < o.top || y > o.size.Height {
			continue
		}
		if i == len(swatches) {
			d.Frame(x, y, width, height, 8, k.Desk, k.Line, 1)
			d.WordsMid("+", x+width/2, y+height/2-12, 20, false, k.Ink2)
			d.WordsMid(control.Fitted(translation.Say(o.more.says), theme.Second, false, width-16), x+width/2, y+height/2+16, theme.Second, false, k.Ink2)
			spots = append(spots, control.Spot{X: x, Y: y, W: width, H: height, Hint: translation.Say("one more colourway"), Do: o.more.do})
			continue
		}
		spots = append(spots, w.drawSwatch(d, k, m, swatches[i], x, y, width, height))
	}
	return spots
}

// drawSwatch draws one swatch: its picture, its name and letters, and how far its yarns are apart.
func (w *window) drawSwatch(d *control.Canvas, k theme.Tokens, m *session.Made, s swatch, x, y, width, height float32) control.Spot {
	c := &w.contact
	if img := c.picture(m, s.shades, c.seen); img != nil {
		picture := canvas.NewImageFromImage(img)
		picture.ScaleMode = canvas.ImageScaleFastest
		d.Add(picture, x, y, width, height)
	}
	if s.here {
		d.Frame(x-3, y-3, width+6, height+6, 4, color.Transparent, k.Accent, 2.4)
	}
	name := control.Fitted(s.name, theme.Body, true, width)
	end := d.Words(name, x, y+height+18, theme.Body, true, k.Ink)
	w.drawLetterChips(d, k, s.shades, x+width, y+height+18, end+8)
	if m != nil {
		colours := m.Work.ColoursIn(w.s.Piece(), s.shades)
		says, fine := apart(m, colours, c.seen.vision, width-22)
		icon, ink := "ok", k.Accent
		if !fine {
			icon, ink = "caution", k.Caution
		}
		if says != "" {
			d.Icon(theme.Icon(icon, ink), x, y+height+29, 15)
			d.Words(control.Fitted(says, theme.Second, false, width-22), x+21, y+height+37, theme.Second, false, k.Ink2)
		}
	}
	return control.Spot{X: x - 3, Y: y - 3, W: width + 6, H: height + 46, Hint: s.hint, Do: s.do}
}

// drawLetterChips draws a chip for each letter in its shade between two places, the last ending at
// right; where there is no room for all of them it draws none.
func (w *window) drawLetterChips(d *control.Canvas, k theme.Tokens, shades []pattern.Shade, right, middle, left float32) {
	yarns := w.s.Pattern().Yarns
	if len(shades) != len(yarns) || len(yarns) == 0 {
		return
	}
	step := min(27, (right-left)/float32(len(yarns)))
	if step < 18 {
		return
	}
	x := right - step*float32(len(yarns)) + step - min(step-2, 23)
	for i, s := range shades {
		if c, err := colour.Parse(s.Colour); err == nil {
			w.letterChip(d, k, yarns[i].Letter, w.contact.seen.vision.Seen(c), x, middle, min(step-2, 23))
		}
		x += step
	}
}

// letterChip draws a letter on its shade.
func (w *window) letterChip(d *control.Canvas, k theme.Tokens, letter string, c color.NRGBA, x, middle, width float32) {
	d.Frame(x, middle-10, width, 20, 4, c, k.Edge, 1)
	ink := color.NRGBA{255, 255, 255, 255}
	if colour.Contrast(c, ink) < colour.Contrast(c, color.NRGBA{A: 255}) {
		ink = color.NRGBA{A: 255}
	}
	d.WordsMid(letter, x+width/2, middle, theme.Small, true, ink)
}

// apart says, in a width, how far the yarns that touch are apart in lightness as a vision sees them, and
// whether all of them can be told apart by all eyes.
func apart(m *session.Made, colours []color.NRGBA, v colour.Vision, width float32) (says string, fine bool) {
	letters := m.Fabric().Yarns
	name := func(c palette.Contrast) string { return letters[c.A] + "–" + letters[c.B] }
	contrasts := palette.Contrasts(colours, palette.Touching(m.Fabric()))
	if len(contrasts) == 0 {
		return "", true
	}
	var each, merging []string
	nearest := contrasts[0]
	for _, c := range contrasts {
		each = append(each, fmt.Sprintf("%s %.0f", name(c), c.Seen[v].Lightness))
		if len(c.Merging) > 0 {
			merging = append(merging, name(c))
		}
		if c.Seen[v].Lightness < nearest.Seen[v].Lightness {
			nearest = c
		}
	}
	if len(merging) > 0 {
		return translation.Fill("{{.Yarns}} can merge", "Yarns", strings.Join(merging, ", ")), false
	}
	for _, says := range []string{
		translation.Fill("Lightness apart: {{.Yarns}}", "Yarns", strings.Join(each, ", ")),
		strings.Join(each, ", "),
	} {
		if control.Width(says, theme.Second, false) <= width {
			return says, true
		}
	}
	return translation.Fill("nearest: {{.Yarns}}", "Yarns", fmt.Sprintf("%s %.0f", name(nearest), nearest.Seen[v].Lightness)), true
}

// crop is the part of the cloth that all swatches show.
type crop struct {
	buffer *cloth.Buffer
	asked  cropKey
}

type cropKey struct {
	cloth *cloth.Cloth
	size  image.Point
}

// want has the crop drawn in the background when it is not the one at hand.
func (c *crop) want(w *window, m *session.Made, width, height float32) {
	if m == nil || m.Cloth == nil || m.Cloth.Box().IsEmpty() || width < 20 || height < 20 {
		return
	}
	scale := w.win.Canvas().Scale()
	key := cropKey{m.Cloth, image.Pt(int(width*scale), int(height*scale))}
	if c.asked == key {
		return
	}
	c.asked = key
	view := cropView(m.Cloth, key.size, float64(scale))
	go func() {
		buffer, err := m.Cloth.Draw(context.Background(), view)
		if err != nil {
			return
		}
		w.post(func() {
			if c.asked == key {
				c.buffer = buffer
				w.colour.Redraw()
			}
		})
	}()
}

// cropView shows as much of the piece as keeps its stitches large enough to be seen.
func cropView(of *cloth.Cloth, size image.Point, scale float64) cloth.View {
	const small, large = 13, 120 // px of a stitch
	box := of.Box().Grow(.3)
	px := max(small*scale, min(float64(size.X)/box.Width(), float64(size.Y)/box.Height(), large*scale))
	mid := box.Centre()
	half := geom.Point{X: float64(size.X) / 2 / px, Y: float64(size.Y) / 2 / px}
	return cloth.View{Box: geom.Box{Min: mid.Sub(half), Max: mid.Add(half)}, PixelsPerW: px}
}

// picture is the crop in shades as it is seen, nil while it is being drawn.
func (c *contact) picture(m *session.Made, shades []pattern.Shade, seen sight) image.Image {
	if c.crop.buffer == nil || m == nil {
		return nil
	}
	yarns := cloth.Seen(cloth.YarnsIn(m.Work, c.w.s.Piece(), shades), seen.vision)
	if len(yarns) == 0 {
		return nil
	}
	return c.crop.buffer.Colour(yarns, cloth.Background{Ground: c.ground, Light: seen.light})
}
