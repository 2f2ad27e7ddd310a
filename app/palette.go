package app

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"github.com/lucasb-eyer/go-colorful"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model/colour"
	"strandway/model/edit"
	"strandway/model/palette"
	"strandway/model/pattern"
)

// picker chooses a shade: hue across, lightness up, and how strong the colour is; or as it is written.
type picker struct {
	w      *window
	yarn   pattern.Yarn
	hex    *control.Field
	name   *control.Field
	chroma float64 // 0 to 1 of what wool takes
	sheet  *sheet
}

// strongest is the chroma of the strongest dyed wool, in OkLCh.
const strongest = .2

const (
	fieldLeft   = 24
	fieldTop    = 64
	fieldWidth  = 372
	fieldHeight = 196
	hueSteps    = 31
	lightSteps  = 14
	asideLeft   = 420 // what stands beside the field
	asideWidth  = 196
)

// pickColour asks for another shade of a yarn, in the colourway shown.
func (w *window) pickColour(y pattern.Yarn) { w.openSheet(w.picker(y).sheet) }

func (w *window) picker(y pattern.Yarn) *picker {
	now := w.shade(y)
	name := y.Shade
	if way, ok := w.s.Pattern().Colourway(w.s.Colourway()); ok && way.Shades[y.Letter].Shade != "" {
		name = way.Shades[y.Letter].Shade
	}
	_, chroma, _ := lch(now)
	p := &picker{w: w, yarn: y, hex: control.NewField(colour.Hex(now)), name: control.NewField(name), chroma: min(1, max(.25, chroma/strongest))}
	p.hex.Enter = func(string) { p.take() }
	p.name.Enter = func(string) { p.take() }
	p.hex.OnChanged = func(string) { p.sheet.card.Redraw() }
	p.sheet = &sheet{
		title: w.yarnTitle(y),
		size:  fyne.NewSize(640, 410),
		draw:  p.draw,
		fields: []placed{
			{p.name, asideLeft, 176, asideWidth, 36},
			{p.hex, asideLeft, 240, asideWidth, 36},
		},
	}
	return p
}

// yarnTitle is what stands over a question about a yarn's shade.
func (w *window) yarnTitle(y pattern.Yarn) string {
	way := w.s.Colourway()
	if way == "" {
		way = lowerFirst(w.wayName())
	}
	return translation.Fill("Yarn {{.Letter}}", "Letter", y.Letter) + ", " + way
}

func (p *picker) draw(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	var spots []control.Spot
	cw, ch := float32(fieldWidth)/hueSteps, float32(fieldHeight)/lightSteps
	img := image.NewRGBA(image.Rect(0, 0, hueSteps, lightSteps))
	for j := range lightSteps {
		for i := range hueSteps {
			c := p.at(i, j)
			img.Set(i, j, c)
			spots = append(spots, control.Spot{X: fieldLeft + float32(i)*cw, Y: fieldTop + float32(j)*ch, W: cw, H: ch, Do: func() { p.hex.SetText(colour.Hex(c)) }})
		}
	}
	field := canvas.NewImageFromImage(img)
	field.ScaleMode = canvas.ImageScalePixels
	d.Add(field, fieldLeft, fieldTop, fieldWidth, fieldHeight)

	// How strong the colours of the field are.
	x := d.Words(translation.Say("Stronger"), fieldLeft, fieldTop+fieldHeight+22, theme.Second, false, k.Ink2) + 12
	for i := range 5 {
		share := float64(i+1) / 5
		c := colorful.OkLch(.6, strongest*share, 40).Clamped()
		edge, width := color.Color(k.Line), float32(1)
		if math.Abs(share-p.chroma) < .11 {
			edge, width = k.Accent, 2.2
		}
		d.Frame(x, fieldTop+fieldHeight+10, 32, 24, 5, opaque(c), edge, width)
		spots = append(spots, control.Spot{X: x, Y: fieldTop + fieldHeight + 8, W: 36, H: 28, Do: func() { p.chroma = share }})
		x += 40
	}
	p.drawAside(d, k)
	yes := d.Button(k, "Use it", size.Width-24, size.Height-50, true, true, p.take)
	no := d.Button(k, "Cancel", yes.X-10, size.Height-50, false, true, p.w.closeSheet)
	photo := d.Button(k, "From a photograph…", fieldLeft, size.Height-50, false, false, func() { p.w.askPhotograph(p.yarn) })
	for i := range spots {
		do := spots[i].Do
		spots[i].Do = func() { do(); p.sheet.card.Redraw() }
	}
	return append([]control.Spot{photo, no, yes}, spots...)
}

// drawAside draws the shade with its numbers, and how far it is from the yarns that it touches.
func (p *picker) drawAside(d *control.Canvas, k theme.Tokens) {
	d.Words(translation.Say("Shade"), asideLeft, 166, theme.Small, false, k.Ink2)
	d.Words(translation.Say("Colour"), asideLeft, 230, theme.Small, false, k.Ink2)
	c, err := colour.Read(p.hex.Text)
	if err != nil {
		for i, line := range wrapped(translation.Say("write it as #2f5d7c, as rgb 47 93 124 or as lab 37 -8 -22"), theme.Second, asideWidth) {
			d.Words(line, asideLeft, fieldTop+12+18*float32(i), theme.Second, false, k.Fault)
		}
		return
	}
	l, a, b := colour.Lab(c)
	d.Frame(asideLeft, fieldTop, asideWidth, 44, 6, c, k.Edge, 1)
	d.Words(fmt.Sprintf("%s   rgb %d %d %d", colour.Hex(c), c.R, c.G, c.B), asideLeft, fieldTop+59, theme.Small, false, k.Ink2)
	d.Words(fmt.Sprintf("lab %d %d %d", int(math.Round(l)), int(math.Round(a)), int(math.Round(b))), asideLeft, fieldTop+77, theme.Small, false, k.Ink2)
	says, fine := p.touches(c)
	if says == "" {
		return
	}
	icon, ink := "ok", k.Accent
	if !fine {
		icon, ink = "caution", k.Caution
	}
	const y = fieldTop + fieldHeight + 56
	d.Icon(theme.Icon(icon, ink), fieldLeft, y-8, 16)
	d.Words(control.Fitted(says, theme.Second, false, 560), fieldLeft+24, y, theme.Second, false, k.Ink)
}

// touches says how far the shade is in lightness from those of the yarns that touch its yarn, and
// whether it can be told from all of them.
func (p *picker) touches(c color.NRGBA) (says string, fine bool) {
	m, yarns := p.w.s.Made(), p.w.s.Pattern().Yarns
	if m == nil || len(m.Work.Pattern.Yarns) != len(yarns) {
		return "", true
	}
	colours, at := make([]color.NRGBA, len(yarns)), -1
	for i, y := range yarns {
		colours[i] = p.w.shade(y)
		if y.Letter == p.yarn.Letter {
			colours[i], at = c, i
		}
	}
	fine = true
	var parts []string
	for _, c := range palette.Contrasts(colours, m.Work.Touching(p.w.s.Piece())) {
		other := int(c.A) + int(c.B) - at
		if int(c.A) != at && int(c.B) != at {
			continue
		}
		part := fmt.Sprintf("%s %.0f", yarns[other].Letter, c.Seen[colour.Full].Lightness)
		if len(c.Merging) > 0 {
			part += " (" + translation.Say("can merge") + ")"
			fine = false
		}
		parts = append(parts, part)
	}
	if len(parts) == 0 {
		return "", true
	}
	return translation.Fill("Lightness apart: {{.Yarns}}", "Yarns", strings.Join(parts, ", ")), fine
}

// at is the colour of a place of the field; its last column is grey.
func (p *picker) at(i, j int) color.NRGBA {
	l := .96 - .84*float64(j)/(lightSteps-1)
	if i == hueSteps-1 {
		return opaque(colorful.OkLch(l, 0, 0).Clamped())
	}
	c := strongest * p.chroma
	hue := 360 * float64(i) / (hueSteps - 1)
	out := colorful.OkLch(l, c, hue)
	for !out.IsValid() && c > .005 {
		c *= .95
		out = colorful.OkLch(l, c, hue)
	}
	return opaque(out.Clamped())
}

func lch(c color.NRGBA) (l, chroma, hue float64) {
	return colorful.Color{R: float64(c.R) / 255, G: float64(c.G) / 255, B: float64(c.B) / 255}.OkLch()
}

func opaque(c colorful.Color) color.NRGBA {
	r, g, b := c.RGB255()
	return color.NRGBA{R: r, G: g, B: b, A: 255}
}

// take gives the yarn the shade.
func (p *picker) take() {
	c, err := colour.Read(p.hex.Text)
	if err != nil {
		return // which stands beside the field
	}
	shade := pattern.Shade{Shade: p.name.Text, Colour: colour.Hex(c)}
	p.w.closeSheet()
	p.w.s.Do("Colour of "+p.yarn.Letter, func(now edit.State) edit.State {
		now.Pattern = edit.Shade(now.Pattern, p.w.s.Colourway(), p.yarn.Letter, shade)
		return now
	})
}

// addYarn adds the next yarn, and gives the keys back to the rows, where it is worked.
func (w *window) addYarn() {
	w.s.Do("One more yarn", func(now edit.State) edit.State {
		now.Pattern = edit.AddYarn(now.Pattern, w.nextYarn())
		return now
	})
	if w.win.Canvas().Focused() == w.strip {
		w.win.Canvas().Focus(w.page)
	}
}

// addColourway begins a colourway with the shades that are shown.
func (w *window) addColourway() {
	w.ask("New colourway", "", "Add", func(name string) {
		if _, taken := w.s.Pattern().Colourway(name); name == "" || taken {
			w.say("A colourway needs a name of its own.")
			return
		}
		shades := map[string]pattern.Shade{}
		for _, y := range w.s.Pattern().Yarns {
			shades[y.Letter] = pattern.Shade{Shade: y.Shade, Colour: colour.Hex(w.shade(y))}
		}
		w.s.Do("New colourway", func(now edit.State) edit.State {
			now.Pattern = edit.AddColourway(now.Pattern, name, shades)
			return now
		})
		w.s.ShowColourway(name)
	})
}

func (w *window) askWayName() {
	old := w.s.Colourway()
	w.ask("Rename the colourway", old, "Rename", func(name string) {
		if _, taken := w.s.Pattern().Colourway(name); name == "" || taken {
			return
		}
		w.s.Do("Rename the colourway", func(now edit.State) edit.State {
			now.Pattern = edit.RenameColourway(now.Pattern, old, name)
			return now
		})
		w.s.ShowColourway(name)
	})
}
