package app

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model"
	"strandway/model/colour"
	"strandway/model/palette"
	"strandway/render/cloth"
)

// contact is what the Colour view keeps: the leaf that is open, how its pictures are looked at,
// and the crop of the cloth that all of them show, drawn once and coloured for each.
type contact struct {
	w      *window
	leaf   colourLeaf
	seen   sight
	ground cloth.Ground
	crop   crop
	scroll float32
	tall   float32

	locked    map[string]bool // by letter: keeps its shade
	stash     []palette.Shade // the yarns at home; nil before they are opened
	fromStash bool            // suggestions are taken from them
	offers    offers
}

// colourLeaf is one leaf of the Colour view.
type colourLeaf int

const (
	waysLeaf colourLeaf = iota
	lettersLeaf
	suggestLeaf
	readLeaf
)

// leaves are the leaves of the Colour view by name.
var leaves = []struct {
	leaf colourLeaf
	name string
	hint string
}{
	{waysLeaf, "Colourways", "the same piece in every colourway"},
	{lettersLeaf, "Letters", "these shades in every order of the letters"},
	{suggestLeaf, "Suggestions", "other shades by rule, or from the yarns at home"},
	{readLeaf, "Can it be read?", "how far yarns that touch are apart, to all eyes and on camera"},
}

// sight is a light or an eye that all pictures are seen by.
type sight struct {
	name   string
	vision colour.Vision
	light  cloth.Light
}

// sights are the lights and eyes there are; the first is the usual one.
func sights() []sight {
	return []sight{
		{name: "Daylight"},
		{name: "Warm light", light: cloth.Warm},
		{name: "Grey", vision: colour.Greyscale},
		{name: "Red-blind", vision: colour.Protanopia},
		{name: "Green-blind", vision: colour.Deuteranopia},
		{name: "Blue-blind", vision: colour.Tritanopia},
	}
}

// ground is something that a piece can lie on.
type ground struct {
	on   cloth.Ground
	name string
}

// grounds are what there is to lie on.
var grounds = []ground{{cloth.Paper, "On paper"}, {cloth.Wood, "On wood"}, {cloth.Linen, "On linen"}, {cloth.Transparent, "On nothing"}}

// back is what the pictures lie on, in their light.
func (c *contact) back() cloth.Background {
	return cloth.Background{Ground: c.ground, Light: c.seen.light}
}

// Heights of the Colour view's parts, px.
const (
	leavesHeight = 44
	sightsHeight = 38
	swatchesTop  = leavesHeight + sightsHeight
)

// drawColour draws the leaf of the Colour view that is open.
func (w *window) drawColour(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	c := &w.contact
	var says string
	var spots []control.Spot
	switch c.leaf {
	case waysLeaf:
		says, spots = w.drawWays(d, k, size)
	case lettersLeaf:
		says, spots = w.drawLetters(d, k, size)
	case suggestLeaf:
		says, spots = w.drawSuggestions(d, k, size)
	case readLeaf:
		says, spots = w.drawReading(d, k, size)
	}
	// The heads lie over what is scrolled under them.
	d.Rect(0, 0, size.Width, swatchesTop-2, 0, k.Paper)
	heads, grounded := w.drawLeaves(d, k, size.Width)
	return slices.Concat(heads, w.drawSights(d, k, size.Width, says, !grounded), spots)
}

// drawLeaves draws the names of the leaves, and at the right, where there is room, what the pictures lie on.
func (w *window) drawLeaves(d *control.Canvas, k theme.Tokens, width float32) (spots []control.Spot, grounded bool) {
	x := float32(8)
	for _, l := range leaves {
		name := translation.Say(l.name)
		wide := control.Width(name, theme.Body, true) + 20
		here := l.leaf == w.contact.leaf
		ink := k.Ink2
		if here {
			ink = k.Ink
			d.Rect(x+10, 36, wide-20, 2.5, 1, k.Accent)
		}
		d.WordsMid(name, x+wide/2, 22, theme.Body, here, ink)
		spots = append(spots, control.Spot{X: x + 2, Y: 7, W: wide - 4, H: 30, Hint: translation.Say(l.hint), Do: func() { w.showLeaf(l.leaf) }})
		x += wide
	}
	right := width - 16
	save := translation.Say("Save…")
	if wide := control.Width(save, theme.Second, true) + 22; right-wide > x+8 {
		d.Frame(right-wide, 9, wide, 27, 5, k.Paper, k.Accent, 1.2)
		d.WordsMid(save, right-wide/2, 22, theme.Second, true, k.Accent)
		spots = append(spots, control.Spot{X: right - wide, Y: 9, W: wide, H: 27, Hint: translation.Say("save these pictures as one sheet"), Do: w.askContact})
		right -= wide + 14
	}
	if wide := w.groundWidth(); right-wide > x+8 {
		return append(spots, w.drawClothGround(d, k, right-wide, 22)), true
	}
	return spots, false
}

// groundName says what the pictures lie on.
func (w *window) groundName() string {
	i := slices.IndexFunc(grounds, func(g ground) bool { return g.on == w.contact.ground })
	return translation.Say(grounds[i].name)
}

// groundWidth is how much room it takes, px.
func (w *window) groundWidth() float32 {
	return control.Width(w.groundName(), theme.Second, false) + 14
}

// drawClothGround draws what the pictures lie on, from x on.
func (w *window) drawClothGround(d *control.Canvas, k theme.Tokens, x, middle float32) control.Spot {
	d.More(d.Words(w.groundName(), x, middle, theme.Second, false, k.Ink)+6, middle, k.Ink2)
	return control.Spot{X: x - 6, Y: middle - 14, W: w.groundWidth() + 12, H: 29, Hint: translation.Say("what the piece lies on"),
		Do: func() { w.askGround(fyne.NewPos(x-6, middle+16)) }}
}

// drawSights draws the sentence about the leaf, or what the pictures lie on where that still wants a
// place, and the switches of light and eye.
func (w *window) drawSights(d *control.Canvas, k theme.Tokens, width float32, says string, wanting bool) []control.Spot {
	const middle = leavesHeight + 16
	right := width - 10
	spots := w.chips(d, k, &right, middle, func(s sight) bool {
		return w.contact.leaf != readLeaf || s.vision == colour.Full // which shows all eyes at once
	})
	if wanting && w.groundWidth() < right-30 {
		return append([]control.Spot{w.drawClothGround(d, k, 18, middle)}, spots...)
	}
	if control.Width(says, theme.Second, false) < right-24 { // half a sentence says nothing
		d.Words(says, 18, middle, theme.Second, false, k.Ink2)
	}
	return spots
}

// chips draws switches of light and eye, the last ending at right, which becomes where the first begins.
func (w *window) chips(d *control.Canvas, k theme.Tokens, right *float32, middle float32, shown func(sight) bool) []control.Spot {
	all := sights()
	seen := w.contact.seen.name
	if seen == "" || !shown(w.contact.seen) {
		seen = all[0].name
	}
	var spots []control.Spot
	for i := len(all) - 1; i >= 0; i-- {
		s := all[i]
		if !shown(s) {
			continue
		}
		name := translation.Say(s.name)
		wide := control.Width(name, theme.Second, true) + 16
		*right -= wide
		here := s.name == seen
		ink := k.Ink2
		if here {
			ink = k.Ink
			d.Frame(*right, middle-13, wide, 26, 5, k.Wash, k.Accent, 1.6)
		}
		d.WordsMid(name, *right+wide/2, middle, theme.Second, here, ink)
		spots = append([]control.Spot{{X: *right, Y: middle - 14, W: wide, H: 28, Hint: translation.Say("see every picture so"), Do: func() {
			w.contact.seen = s
			w.colour.Redraw()
		}}}, spots...)
	}
	return spots
}

// showLeaf opens a leaf of the Colour view.
func (w *window) showLeaf(l colourLeaf) {
	w.contact.leaf, w.contact.scroll = l, 0
	if w.view != colourView {
		w.show(colourView)
	}
	w.colour.Redraw()
	w.win.Canvas().Focus(w.colour)
}

// askGround shows what the piece can lie on.
func (w *window) askGround(at fyne.Position) {
	m := fyne.NewMenu("")
	for _, g := range grounds {
		item := fyne.NewMenuItem(translation.Say(g.name), func() {
			w.contact.ground = g.on
			w.colour.Redraw()
		})
		item.Checked = g.on == w.contact.ground
		m.Items = append(m.Items, item)
	}
	place := w.app.Driver().AbsolutePositionForObject(w.colour)
	widget.ShowPopUpMenuAtPosition(m, w.win.Canvas(), place.Add(at))
}

// drawWays draws the piece in every colourway.
func (w *window) drawWays(d *control.Canvas, k theme.Tokens, size fyne.Size) (says string, spots []control.Spot) {
	swatches := w.ways()
	more := tile{"New colourway: these shades, to be changed", w.addColourway}
	return translation.Fill("the same piece, {{.Ways}}", "Ways", ways(len(w.s.Pattern().Colourways))),
		w.drawSwatches(d, k, swatches, sheetOf{top: swatchesTop, size: size, least: 280, more: &more})
}

// ways are the swatches of all colourways.
func (w *window) ways() []swatch {
	p := w.s.Pattern()
	names := []string{}
	for _, way := range p.Colourways {
		names = append(names, way.Name)
	}
	if len(names) == 0 {
		names = []string{""}
	}
	var out []swatch
	for _, name := range names {
		shown := name
		if shown == "" {
			shown = translation.Say("Own shades")
		}
		out = append(out, swatch{name: shown, shades: model.Shades(p, name), here: name == w.s.Colourway(),
			hint: translation.Fill("show {{.Way}}", "Way", shown), do: func() { w.s.ShowColourway(name) }})
	}
	return out
}

func ways(n int) string {
	words := []string{"in its own shades", "one way", "two ways", "three ways", "four ways", "five ways", "six ways", "seven ways", "eight ways", "nine ways"}
	if n < len(words) {
		return translation.Say(words[n])
	}
	return fmt.Sprintf(translation.Say("%d ways"), n)
}
