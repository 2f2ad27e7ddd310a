package app

import (
	"fmt"
	"image/color"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"strandway/app/control"
	"strandway/app/session"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model"
	"strandway/model/colour"
	"strandway/model/palette"
	"strandway/model/pattern"
)

// teachingName is what the colourway for the camera is called; the Teach view looks for it.
const teachingName = "Teaching"

// visionName is how the window calls a vision.
func visionName(v colour.Vision) string {
	if v == colour.Full {
		return translation.Say("All colours")
	}
	for _, s := range sights() {
		if s.vision == v {
			return translation.Say(s.name)
		}
	}
	return v.String()
}

// drawReading draws the piece as all eyes see it, below each what it leaves of the contrast of yarns
// that touch, and at the foot whether the shades would do on camera.
func (w *window) drawReading(d *control.Canvas, k theme.Tokens, size fyne.Size) (says string, spots []control.Spot) {
	c, m := &w.contact, w.s.Made()
	says = translation.Fill("{{.Way}} as every eye sees it", "Way", w.wayName())
	if m == nil {
		return says, nil
	}
	shades := model.Shades(w.s.Pattern(), w.s.Colourway())
	if len(shades) != len(m.Work.Pattern.Yarns) {
		return says, nil // a yarn was added and is not worked yet
	}
	const left, gap = 74, 10
	visions := colour.Visions()
	column := (size.Width - left - 16 + gap) / float32(len(visions))
	width := column - gap
	height := float32(int(min(width*.8, max(70, size.Height*.24))))
	c.crop.want(w, m, width, height)
	top := swatchesTop - c.scroll
	for i, v := range visions {
		x := left + column*float32(i)
		if img := c.picture(m, shades, sight{vision: v, light: c.seen.light}); img != nil {
			picture := canvas.NewImageFromImage(img)
			picture.ScaleMode = canvas.ImageScaleFastest
			d.Add(picture, x, top+22, width, height)
		}
		d.Words(control.Fitted(visionName(v), theme.Second, true, width), x, top+8, theme.Second, true, k.Ink)
	}
	y := w.drawContrasts(d, k, m, shades, top+22+height+20, left, column)
	d.Icon(theme.Icon("caution", k.Caution), 16, y+3, 13)
	legend := fmt.Sprintf(translation.Say("“apart” is CIEDE2000, “L*” is lightness; under %d apart, in grey under %d of lightness, stitches run into one another"),
		palette.MergingDifference, palette.MergingLightness)
	for _, line := range wrapped(legend, theme.Small, size.Width-52) {
		d.Words(line, 35, y+10, theme.Small, false, k.Ink2)
		y += 17
	}
	y, spots = w.drawCamera(d, k, m, shades, y+12, size.Width)
	c.tall = y + c.scroll + 8
	return says, spots
}

// drawContrasts writes a line for each pair of yarns that touch, and gives where they end.
func (w *window) drawContrasts(d *control.Canvas, k theme.Tokens, m *session.Made, shades []pattern.Shade, y, left, column float32) float32 {
	const line = 28
	colours := m.Work.ColoursIn(w.s.Piece(), shades)
	contrasts := palette.Contrasts(colours, palette.Touching(m.Fabric()))
	if len(contrasts) == 0 {
		d.Words(translation.Say("No two yarns touch in this piece."), 16, y+8, theme.Body, false, k.Ink2)
		return y + line
	}
	// The numbers of a pair stand in two columns under each picture.
	second := min(column*.36, 52)
	for i := range contrasts[0].Seen {
		x := left + column*float32(i)
		d.Words(control.Fitted(translation.Say("apart"), theme.Small, false, second-4), x, y, theme.Small, false, k.Ink2)
		d.Words(translation.Say("L*"), x+second, y, theme.Small, false, k.Ink2)
	}
	y += 12
	for _, c := range contrasts {
		d.Rect(16, y, left-26+column*float32(len(c.Seen)), 1, 0, k.Line)
		middle := y + line/2
		w.letterChip(d, k, m.Fabric().Yarns[c.A], colours[c.A], 16, middle, 23)
		w.letterChip(d, k, m.Fabric().Yarns[c.B], colours[c.B], 41, middle, 23)
		for i, v := range colour.Visions() {
			x := left + column*float32(i)
			merge := slices.Contains(c.Merging, v)
			ink := k.Ink
			if merge {
				ink = k.Caution
			}
			d.Words(fmt.Sprintf("%.0f", c.Seen[i].Difference), x, middle, theme.Body, merge, ink)
			end := d.Words(fmt.Sprintf("%.0f", c.Seen[i].Lightness), x+second, middle, theme.Body, merge, ink)
			if !merge {
				continue
			}
			d.Icon(theme.Icon("caution", k.Caution), end+6, middle-8, 15)
			if word := translation.Say("merge"); control.Width(word, theme.Small, false) < x+column-end-30 {
				d.Words(word, end+24, middle, theme.Small, false, ink)
			}
		}
		y += line
	}
	return y
}

// drawCamera says whether the shades would do on camera, and offers those that would or come
// nearest to it. It gives where it ends.
func (w *window) drawCamera(d *control.Canvas, k theme.Tokens, m *session.Made, shades []pattern.Shade, y, right float32) (float32, []control.Spot) {
	d.Rect(16, y, right-32, 1, 0, k.Line)
	y += 24
	d.Words(translation.Say("On camera"), 16, y, theme.Body, true, k.Ink)
	y += 26
	y = w.drawFilmed(d, k, m, w.wayName(), shades, "", 16, y, right)
	offered, err := w.teachingShades(m)
	if err != nil {
		d.Words(control.Fitted(spoken(err.Error()), theme.Second, false, right-32), 16, y, theme.Second, false, k.Ink2)
		return y + 22, nil
	}
	for _, way := range w.s.Pattern().Colourways {
		if slices.Equal(model.Shades(w.s.Pattern(), way.Name), offered) {
			return y, nil // it has been taken
		}
	}
	y += 4
	y = w.drawFilmed(d, k, m, translation.Say(teachingName), offered, translation.Say("the best there is: "), 16, y, right)
	take := d.Button(k, "Take the teaching shades as a colourway", 40, y, true, false, w.adoptTeaching)
	chips := take.X + take.W + 12
	w.drawLetterChips(d, k, offered, min(chips+27*float32(len(offered)), right-16), y+16, chips)
	return y + 40, []control.Spot{take}
}

// drawFilmed says of one set of shades whether it would do on camera, and gives where that ends.
func (w *window) drawFilmed(d *control.Canvas, k theme.Tokens, m *session.Made, name string, shades []pattern.Shade, weak string, x, y, right float32) float32 {
	colours := m.Work.ColoursIn(w.s.Piece(), shades)
	filmed := palette.OnCamera(colours, palette.Touching(m.Fabric()))
	icon, ink := "ok", k.Accent
	says := fmt.Sprintf(translation.Say("yarns that touch are %d or more apart in lightness, and none is too dark"), palette.CameraLightness)
	if !filmed.Reads() {
		icon, ink = "caution", k.Caution
		says = weak + hinders(filmed, m.Fabric().Yarns, colours)
	}
	d.Icon(theme.Icon(icon, ink), x, y-8, 16)
	for _, line := range wrapped(name+": "+says, theme.Second, right-x-40) {
		d.Words(line, x+24, y, theme.Second, false, k.Ink)
		y += 19
	}
	return y + 3
}

// hinders says what hinders stitches from being told apart on camera.
func hinders(f palette.Filmed, letters []string, colours []color.NRGBA) string {
	var parts []string
	for _, c := range f.Near {
		parts = append(parts, fmt.Sprintf("%s–%s %.0f", letters[c.A], letters[c.B], c.Seen[colour.Full].Lightness))
	}
	var says []string
	if len(parts) > 0 {
		says = append(says, fmt.Sprintf(translation.Say("%s apart in lightness, and %d are wanted"), strings.Join(parts, ", "), palette.CameraLightness))
	}
	for _, i := range f.Dark {
		says = append(says, fmt.Sprintf(translation.Say("stitches are lost in %s, whose lightness is %.0f; %d is wanted"), letters[i], colour.Lightness(colours[i]), palette.CameraDarkest))
	}
	return strings.Join(says, "; ")
}

// teachingShades are the shades nearest to the present ones in which stitches read well on camera.
func (w *window) teachingShades(m *session.Made) ([]pattern.Shade, error) {
	return m.Work.Suggest(w.s.Piece(), w.s.Colourway(), palette.Wish{Rule: palette.Teaching, Keep: -1, Locked: w.locks()})
}

// adoptTeaching takes them as a colourway.
func (w *window) adoptTeaching() {
	m := w.s.Made()
	if m == nil {
		return
	}
	shades, err := w.teachingShades(m)
	if err != nil {
		w.say(spoken(err.Error()))
		return
	}
	colours := m.Work.ColoursIn(w.s.Piece(), shades)
	filmed := palette.OnCamera(colours, palette.Touching(m.Fabric()))
	w.adopt(teachingName, shades)
	if !filmed.Reads() {
		w.say(spoken(teachingName + ": " + translation.Say("the best there is: ") + hinders(filmed, m.Fabric().Yarns, colours)))
	}
}

// wayName is what the colourway shown is called.
func (w *window) wayName() string {
	if way := w.s.Colourway(); way != "" {
		return way
	}
	return translation.Say("Own shades")
}
