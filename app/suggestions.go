package app

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/session"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model"
	"strandway/model/edit"
	"strandway/model/palette"
	"strandway/model/pattern"
)

// offers are the suggestions at hand and what they were made from.
type offers struct {
	of       *model.Worked
	way      string
	piece    int
	locked   []bool
	stash    []palette.Shade
	swatches []swatch
	why      string // why there are none
}

// drawSuggestions draws the piece in shades by each rule; a click makes them a colourway.
func (w *window) drawSuggestions(d *control.Canvas, k theme.Tokens, size fyne.Size) (says string, spots []control.Spot) {
	says = translation.Say("click one to take it as a colourway; locked letters keep their shades")
	m := w.s.Made()
	if m == nil {
		return says, nil
	}
	swatches, why := w.suggested(m)
	spots = w.drawSwatches(d, k, swatches, sheetOf{top: swatchesTop + toolsHeight, size: size, least: 190})
	y := float32(swatchesTop + toolsHeight + 24)
	for _, line := range wrapped(why, theme.Body, size.Width-48) {
		d.Words(line, 24, y, theme.Body, false, k.Ink2)
		y += 22
	}
	d.Rect(0, swatchesTop-2, size.Width, toolsHeight, 0, k.Paper)
	return says, append(w.drawSources(d, k), spots...)
}

// drawSources draws the switch between any shade and the yarns at home.
func (w *window) drawSources(d *control.Canvas, k theme.Tokens) []control.Spot {
	c := &w.contact
	const y = swatchesTop + 4
	var spots []control.Spot
	x := float32(16)
	add := func(label string, here bool, hint string, do func()) {
		wide := control.Width(label, theme.Second, true) + 22
		ink := k.Ink2
		if here {
			ink = k.Ink
			d.Frame(x, y+2, wide, 28, 5, k.Wash, k.Accent, 1.6)
		}
		d.WordsMid(label, x+wide/2, y+16, theme.Second, here, ink)
		spots = append(spots, control.Spot{X: x, Y: y + 1, W: wide, H: 30, Hint: translation.Say(hint), Do: do})
		x += wide + 4
	}
	add(translation.Say("Any shade"), !c.fromStash, "shades that no yarn is known for yet", func() { c.fromStash = false; w.colour.Redraw() })
	if w.set.Stash != "" || c.stash != nil {
		label := translation.Say("Yarns at home")
		if c.stash != nil {
			label += fmt.Sprintf(" (%d)", len(c.stash))
		}
		add(label, c.fromStash, "only yarns of your list", w.useStash)
	}
	open := d.Button(k, "List of yarns at home…", x+8, y, false, false, w.askStash)
	open.Hint = translation.Say("a file with [[yarn]], name, shade and colour of each")
	return append(spots, open)
}

// suggested are the swatches of all suggestions; where there are none it says why.
func (w *window) suggested(m *session.Made) (swatches []swatch, why string) {
	o := &w.contact.offers
	now := offers{of: m.Work, way: w.s.Colourway(), piece: w.s.Piece(), locked: w.locks()}
	if w.contact.fromStash {
		now.stash = w.contact.stash
	}
	if o.of != now.of || o.way != now.way || o.piece != now.piece || !slices.Equal(o.locked, now.locked) || !slices.Equal(o.stash, now.stash) {
		*o = now
		o.make(w)
	}
	return o.swatches, o.why
}

// make makes the suggestions: equal steps, and from each kept letter the shades across from it, beside
// it and in equal steps. Shades that come a second time are left out.
func (o *offers) make(w *window) {
	p := o.of.Pattern
	if len(p.Yarns) < 2 {
		o.why = translation.Say("A suggestion is for two yarns or more: add one with the + below.")
		return
	}
	add := func(name string, wish palette.Wish) {
		wish.Locked, wish.Stash = o.locked, o.stash
		shades, err := o.of.Suggest(o.piece, o.way, wish)
		if err != nil {
			o.why = spoken(err.Error())
			return
		}
		if slices.ContainsFunc(o.swatches, func(s swatch) bool { return slices.Equal(s.shades, shades) }) {
			return
		}
		o.swatches = append(o.swatches, swatch{name: name, shades: shades,
			hint: translation.Say("take it as a colourway"), do: func() { w.adopt(name, shades) }})
	}
	add(translation.Say("Equal steps"), palette.Wish{Rule: palette.EqualSteps, Keep: -1})
	for _, way := range []struct {
		name string
		rule palette.Rule
	}{{"Across from {{.Letter}}", palette.Complementary}, {"Beside {{.Letter}}", palette.Analogous}, {"{{.Letter}} kept", palette.EqualSteps}} {
		for i, y := range p.Yarns {
			if i < len(o.locked) && (slices.Contains(o.locked, true) == o.locked[i]) { // the locked letters lead where there are any
				add(translation.Fill(way.name, "Letter", y.Letter), palette.Wish{Rule: way.rule, Keep: i})
			}
		}
	}
	add(translation.Say(teachingName), palette.Wish{Rule: palette.Teaching, Keep: -1})
	if len(o.swatches) > 0 {
		o.why = ""
	}
}

// adopt takes shades as a new colourway, and shows it among the others.
func (w *window) adopt(name string, shades []pattern.Shade) {
	p := w.s.Pattern()
	if len(shades) != len(p.Yarns) {
		return // the yarns have changed since
	}
	free := name
	for n := 2; ; n++ {
		if _, taken := p.Colourway(free); !taken {
			break
		}
		free = fmt.Sprintf("%s %d", name, n)
	}
	w.s.Do("New colourway", func(now edit.State) edit.State {
		now.Pattern = edit.AddColourway(now.Pattern, free, model.ByLetter(now.Pattern, shades))
		return now
	})
	w.s.ShowColourway(free)
	w.showLeaf(waysLeaf)
	w.contact.scroll = w.contact.tall // it is the last
	w.colour.Redraw()
	w.say(translation.Fill("“{{.Way}}” is a colourway now; F2 gives it another name.", "Way", free))
}

var stashEnds = []string{".toml"}

// askStash asks for the list of the yarns at home, and remembers it.
func (w *window) askStash() {
	w.askFile(translation.Say("List of yarns at home"), translation.Say("Open"), "", false, stashEnds, func(path string) {
		if !w.readStash(path) {
			return
		}
		if full, err := filepath.Abs(path); err == nil {
			path = full
		}
		w.set.Stash = path
		w.keepSettings()
		w.contact.fromStash = true
		w.showLeaf(suggestLeaf)
	})
}

// useStash takes suggestions from the list that was opened last.
func (w *window) useStash() {
	c := &w.contact
	if c.stash == nil && !w.readStash(w.set.Stash) {
		return
	}
	c.fromStash = true
	w.colour.Redraw()
}

// readStash reads a list of yarns and reports whether it could.
func (w *window) readStash(path string) bool {
	src, err := os.ReadFile(path)
	if err != nil {
		w.say(translation.Fill("Cannot read {{.File}}.", "File", path))
		return false
	}
	stash, err := palette.ReadStash(src, filepath.Base(path))
	if err != nil {
		w.say(spoken(err.Error()))
		return false
	}
	w.contact.stash = stash
	return true
}
