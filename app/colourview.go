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
	"strandway/chart/geom"
	"strandway/model/colour"
	"strandway/render/cloth"
)

// contact is the contact sheet: the same crop of the cloth, drawn once and coloured
// for every colourway.
type contact struct {
	w      *window
	seen   sight // how the pictures are looked at
	buffer *cloth.Buffer
	of     *cloth.Cloth
	size   image.Point
	asked  askedFor
	scroll float32
	tall   float32
}

type askedFor struct {
	cloth *cloth.Cloth
	size  image.Point
}

// sight is a light or an eye that all pictures are seen by.
type sight struct {
	name   string
	vision colour.Vision
	warm   bool
}

func sights() []sight {
	return []sight{
		{name: "Daylight"},
		{name: "Warm light", warm: true},
		{name: "Grey", vision: colour.Greyscale},
		{name: "Red-blind", vision: colour.Protanopia},
		{name: "Green-blind", vision: colour.Deuteranopia},
		{name: "Blue-blind", vision: colour.Tritanopia},
	}
}

func (s sight) of(c color.NRGBA) color.NRGBA { return s.vision.Seen(c) }

// Lightness that neighbours must differ by, L*, to be told apart without their hue.
const apart = 12

// drawColour draws the contact sheet.
func (w *window) drawColour(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	c := &w.contact
	p := w.s.Pattern()
	var spots []control.Spot
	x := d.Words("Colourways", 16, 22, theme.Body, true, k.Ink)
	if size.Width > 760 {
		x = d.Words("the same piece, "+ways(len(p.Colourways)), x+10, 22, theme.Second, false, k.Ink2)
	}

	// The switches of light and eye stand at the right, as many as there is room for.
	right := size.Width - 16
	all := sights()
	for i := len(all) - 1; i >= 0; i-- {
		s := all[i]
		sw := control.Width(s.name, theme.Second, true) + 22
		if right-sw < x+90 && s.name != c.seen.name && i > 0 {
			continue
		}
		right -= sw
		if here := s.name == c.seen.name || c.seen.name == "" && i == 0; here {
			d.Frame(right, 9, sw, 27, 5, k.Wash, k.Accent, 1.6)
			d.WordsMid(s.name, right+sw/2, 22, theme.Second, true, k.Ink)
		} else {
			d.WordsMid(s.name, right+sw/2, 22, theme.Second, false, k.Ink2)
		}
		spots = append(spots, control.Spot{X: right, Y: 8, W: sw, H: 29, Hint: "see every picture in " + strings.ToLower(s.name), Do: func() {
			c.seen = s
			w.colour.Redraw()
		}})
	}

	columns := 2
	if size.Width > 1300 {
		columns = 3
	}
	const gap = 18
	width := (size.Width - 32 - gap*float32(columns-1)) / float32(columns)
	pictureHeight := float32(int(min(width*.385, max(120, (size.Height-60)/3-60))))
	step := pictureHeight + 58
	c.want(w.s.Made(), width, pictureHeight)
	names := []string{}
	for _, way := range p.Colourways {
		names = append(names, way.Name)
	}
	if len(names) == 0 {
		names = []string{""}
	}
	for i := range len(names) + 1 {
		px := 16 + float32(i%columns)*(width+gap)
		py := 44 + float32(i/columns)*step - c.scroll
		if py+step < 40 || py > size.Height {
			continue
		}
		if i == len(names) {
			d.Frame(px, py, width, pictureHeight, 8, k.Desk, k.Line, 1)
			d.WordsMid("+", px+width/2, py+pictureHeight/2-12, 20, false, k.Ink2)
			d.WordsMid("New colourway: these shades, to be changed", px+width/2, py+pictureHeight/2+16, theme.Second, false, k.Ink2)
			spots = append(spots, control.Spot{X: px, Y: py, W: width, H: pictureHeight, Hint: "one more colourway", Do: w.addColourway})
			continue
		}
		spots = append(spots, w.drawWay(d, k, names[i], px, py, width, pictureHeight))
	}
	c.tall = 44 + float32((len(names)+columns)/columns)*step
	return spots
}

func ways(n int) string {
	words := []string{"in its own shades", "one way", "two ways", "three ways", "four ways", "five ways", "six ways", "seven ways", "eight ways", "nine ways"}
	if n < len(words) {
		return words[n]
	}
	return fmt.Sprintf("%d ways", n)
}

// drawWay draws one colourway: its picture, its name, and how far its yarns are apart.
func (w *window) drawWay(d *control.Canvas, k theme.Tokens, name string, x, y, width, height float32) control.Spot {
	m := w.s.Made()
	here := name == w.s.Colourway()
	if img := w.contact.picture(m, name); img != nil {
		picture := canvas.NewImageFromImage(img)
		picture.ScaleMode = canvas.ImageScaleFastest
		d.Add(picture, x, y, width, height)
	}
	if here {
		d.Frame(x-3, y-3, width+6, height+6, 4, color.Transparent, k.Accent, 2.4)
	}
	shown := name
	if shown == "" {
		shown = "Own shades"
	}
	d.Words(control.Fitted(shown, theme.Body, true, width-120), x, y+height+18, theme.Body, true, k.Ink)
	if m == nil {
		return control.Spot{}
	}
	yarns, letters := m.ClothYarns(name), m.Fabric().Yarns
	cx := x + width
	for i := len(yarns) - 1; i >= 0 && i < 8; i-- {
		cx -= 27
		c := w.contact.seen.of(yarns[i].Colour)
		d.Frame(cx, y+height+8, 23, 20, 4, c, k.Edge, 1)
		ink := color.NRGBA{255, 255, 255, 255}
		if colour.Contrast(c, ink) < colour.Contrast(c, color.NRGBA{A: 255}) {
			ink = color.NRGBA{A: 255}
		}
		d.WordsMid(letters[i], cx+11.5, y+height+18, theme.Small, true, ink)
	}
	says, fine := lightness(m, yarns, letters, w.contact.seen)
	icon, ink := "ok", k.Accent
	if !fine {
		icon, ink = "caution", k.Caution
	}
	if says != "" {
		d.Icon(theme.Icon(icon, ink), x, y+height+29, 15)
		d.Words(control.Fitted(says, theme.Second, false, width-22), x+21, y+height+37, theme.Second, false, k.Ink2)
	}
	return control.Spot{X: x - 3, Y: y - 3, W: width + 6, H: height + 44, Hint: "show " + shown, Do: func() { w.s.ShowColourway(name) }}
}

// lightness says how far the yarns are apart in lightness, as they are seen, and whether the ones
// that touch can be told apart by it.
func lightness(m *session.Made, yarns []cloth.Yarn, letters []string, seen sight) (says string, fine bool) {
	touch := touching(m)
	var parts []string
	fine = true
	for a := range yarns {
		for b := a + 1; b < len(yarns); b++ {
			la, lb := colour.Lightness(seen.of(yarns[a].Colour)), colour.Lightness(seen.of(yarns[b].Colour))
			diff := max(la-lb, lb-la)
			if diff < apart && touch[[2]int{a, b}] && fine {
				fine = false
				says = fmt.Sprintf("%s and %s merge in grey: only %.0f apart", letters[a], letters[b], diff)
			}
			parts = append(parts, fmt.Sprintf("%s–%s %.0f", letters[a], letters[b], diff))
		}
	}
	if fine && len(parts) > 0 {
		says = "Lightness apart: " + strings.Join(parts, ", ")
	}
	return says, fine
}

// touching are the pairs of yarns that lie beside one another, the lesser index first.
func touching(m *session.Made) map[[2]int]bool {
	f := m.Fabric()
	out := map[[2]int]bool{}
	for i := range f.Stitches {
		for _, b := range f.Of(int32(i)) {
			if b.At < 0 {
				continue
			}
			a, z := int(f.Stitches[i].Yarn), int(f.Stitches[b.At].Yarn)
			out[[2]int{min(a, z), max(a, z)}] = true
		}
	}
	return out
}

// want has the crop drawn in the background when it is not the one at hand.
func (c *contact) want(m *session.Made, width, height float32) {
	if m == nil || m.Cloth == nil || m.Cloth.Box().IsEmpty() || width < 20 || height < 20 {
		return
	}
	scale := c.w.win.Canvas().Scale()
	size := image.Pt(int(width*scale), int(height*scale))
	if c.asked == (askedFor{m.Cloth, size}) {
		return
	}
	c.asked = askedFor{m.Cloth, size}
	box := m.Cloth.Box()
	// As much of the piece as shows its colours at a size at which stitches can be seen.
	least := 20 * float64(scale)
	px := max(least, min(float64(size.X)/max(box.Width(), 1), float64(size.Y)/max(box.Height(), 1), 6*least))
	mid := box.Centre()
	half := geom.Point{X: float64(size.X) / 2 / px, Y: float64(size.Y) / 2 / px}
	view := cloth.View{Box: geom.Box{Min: mid.Sub(half), Max: mid.Add(half)}, PixelsPerW: px}
	go func() {
		buffer, err := m.Cloth.Draw(context.Background(), view)
		if err != nil {
			return
		}
		c.w.post(func() {
			if c.asked == (askedFor{m.Cloth, size}) {
				c.buffer, c.of, c.size = buffer, m.Cloth, size
				c.w.colour.Redraw()
			}
		})
	}()
}

// picture is the crop in a colourway, nil while it is being drawn.
func (c *contact) picture(m *session.Made, way string) image.Image {
	if c.buffer == nil || m == nil {
		return nil
	}
	yarns := m.ClothYarns(way)
	if len(yarns) == 0 {
		return nil
	}
	for i := range yarns {
		yarns[i].Colour = c.seen.of(yarns[i].Colour)
		for j := range yarns[i].Colours {
			yarns[i].Colours[j] = c.seen.of(yarns[i].Colours[j])
		}
	}
	back := cloth.Background{}
	if c.seen.warm {
		back.Light = cloth.Warm
	}
	return c.buffer.Colour(yarns, back)
}
