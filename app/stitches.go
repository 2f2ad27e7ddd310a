package app

import (
	"math"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model/stitch"
)

// families are the families of stitches in the order in which they are shown, and what they are called.
var families = []struct{ family, name string }{
	{"chain", "Chains and basic stitches"},
	{"basic", "Chains and basic stitches"},
	{"decrease", "Worked together"},
	{"cluster", "Clusters, bobbles and puffs"},
	{"post", "Round the post"},
	{"loop", "In one loop"},
	{"texture", "Textured"},
	{"edge", "Edges"},
	{"foundation", "Foundations"},
	{"surface", "On the surface"},
}

// latelyShown is how many stitches are remembered as taken lately.
const latelyShown = 9

// Measures of the sheet of all stitches, px.
const (
	stitchCell    = 78
	stitchTall    = 62
	stitchesWide  = 24*2 + 9*stitchCell
	stitchesTall  = 520
	familyHeading = 30
)

// stitchSheet shows all stitches by family, narrowed by what is typed.
type stitchSheet struct {
	w      *window
	field  *control.Field
	top    float32
	tall   float32
	chosen int             // among those shown; Enter takes it
	shown  []*stitch.Kind  // in order
	places []fyne.Position // of their cells, before scrolling
}

// findStitch opens the sheet of all stitches.
func (w *window) findStitch() {
	f := &stitchSheet{w: w, field: control.NewField("")}
	f.field.SetPlaceHolder(translation.Say("name or abbreviation"))
	s := &sheet{title: translation.Say("Find a stitch"), size: fyne.NewSize(stitchesWide, stitchesTall), fields: []placed{{f.field, stitchesWide - 264, 14, 240, 34}}, draw: f.draw}
	s.scroll = func(by float32) { f.scrollBy(-by * 2) }
	f.field.Enter = func(string) {
		if f.chosen < len(f.shown) {
			f.take(f.shown[f.chosen])
		}
	}
	f.field.OnChanged = func(string) {
		f.top, f.chosen = 0, 0
		s.card.Redraw()
		if f.chosen = f.nearest(); f.chosen > 0 {
			s.card.Redraw()
		}
	}
	f.field.Walk = func(step int) { f.walk(step); s.card.Redraw() }
	w.openSheet(s)
}

func (f *stitchSheet) scrollBy(by float32) {
	f.top = max(0, min(f.top+by, f.tall-(stitchesTall-sheetTop-16)))
}

// walk goes on to the next stitch that is shown, and scrolls to it.
func (f *stitchSheet) walk(step int) {
	f.chosen = max(0, min(f.chosen+step, len(f.shown)-1))
	if f.chosen < len(f.places) {
		y := f.places[f.chosen].Y
		f.top = max(min(f.top, y-familyHeading), y+stitchTall-(stitchesTall-sheetTop-16), 0)
	}
}

// nearest is the stitch shown whose word begins as what is typed, the shortest of them; the first where none does.
func (f *stitchSheet) nearest() int {
	best, sought := 0, strings.ToLower(f.field.Text)
	length := math.MaxInt
	for i, kind := range f.shown {
		if word := strings.ToLower(f.w.trayWord(kind)); strings.HasPrefix(word, sought) && len(word) < length {
			best, length = i, len(word)
		}
	}
	return best
}

// take works a stitch as the tray does, and remembers it.
func (f *stitchSheet) take(kind *stitch.Kind) {
	f.w.closeSheet()
	f.w.takeStitch(kind, f.w.trayWord(kind))
}

// draw draws the stitches taken lately and all others by family.
func (f *stitchSheet) draw(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	f.shown, f.places = f.shown[:0], f.places[:0]
	var spots []control.Spot
	y := float32(0)
	section := func(name string, kinds []*stitch.Kind) {
		kinds = slices.DeleteFunc(slices.Clone(kinds), func(kind *stitch.Kind) bool { return !f.w.answers(kind, f.field.Text) })
		if len(kinds) == 0 {
			return
		}
		if at := sheetTop + y - f.top + 16; at > sheetTop && at < size.Height-24 {
			d.Words(translation.Say(name), 24, at, theme.Second, true, k.Ink2)
		}
		y += familyHeading
		for i, kind := range kinds {
			if i > 0 && i%9 == 0 {
				y += stitchTall
			}
			f.places = append(f.places, fyne.NewPos(24+float32(i%9)*stitchCell, y))
			f.shown = append(f.shown, kind)
			if spot, ok := f.cell(d, k, size, len(f.shown)-1); ok {
				spots = append(spots, spot)
			}
		}
		y += stitchTall + 6
	}
	section("Taken lately", f.w.lately())
	for i, of := range families {
		if i > 0 && families[i-1].name == of.name {
			continue
		}
		var kinds []*stitch.Kind
		for _, same := range families[i:] {
			if same.name == of.name {
				kinds = append(kinds, f.w.family(same.family)...)
			}
		}
		section(of.name, kinds)
	}
	f.tall = y
	if len(f.shown) == 0 {
		d.Words(translation.Say("No stitch is called so."), 24, sheetTop+30, theme.Body, false, k.Ink2)
	}
	return spots
}

// cell draws one stitch; ok is false where it is out of sight.
func (f *stitchSheet) cell(d *control.Canvas, k theme.Tokens, size fyne.Size, i int) (spot control.Spot, ok bool) {
	x, y := f.places[i].X, sheetTop+f.places[i].Y-f.top
	if y < sheetTop-4 || y+stitchTall > size.Height-4 {
		return control.Spot{}, false
	}
	kind := f.shown[i]
	if i == f.chosen {
		d.Rect(x, y, stitchCell-4, stitchTall-4, 5, k.Wash)
	}
	d.Add(f.w.symbol(kind, k, 40, 36), x+(stitchCell-4)/2-20, y+2, 40, 36)
	d.WordsMid(control.Fitted(f.w.trayWord(kind), theme.Small, false, stitchCell-8), x+(stitchCell-4)/2, y+46, theme.Small, false, k.Ink)
	return control.Spot{X: x, Y: y, W: stitchCell - 4, H: stitchTall - 4, Hint: f.w.lib.Name(kind, termsOf(f.w.s.Pattern().Terms)), Do: func() { f.take(kind) }}, true
}

// answers reports whether a stitch is one that is sought.
func (w *window) answers(kind *stitch.Kind, sought string) bool {
	terms := termsOf(w.s.Pattern().Terms)
	word, _ := w.lib.Word(kind, terms)
	return contains(word, sought) || contains(w.lib.Name(kind, terms), sought) || contains(w.trayWord(kind), sought)
}

// family is the stitches of a family that have a word in the pattern's terms.
func (w *window) family(name string) []*stitch.Kind {
	var kinds []*stitch.Kind
	for _, kind := range w.lib.Kinds() {
		if _, ok := w.lib.Word(kind, termsOf(w.s.Pattern().Terms)); ok && kind.Family == name {
			kinds = append(kinds, kind)
		}
	}
	return kinds
}

// lately is the stitches that were taken last, the last one first.
func (w *window) lately() []*stitch.Kind {
	var kinds []*stitch.Kind
	for _, name := range w.set.Stitches {
		if kind, ok := w.lib.Kind(name); ok {
			kinds = append(kinds, kind)
		}
	}
	return kinds
}

// took remembers a stitch as taken last.
func (w *window) took(kind *stitch.Kind) {
	names := slices.DeleteFunc(slices.Clone(w.set.Stitches), func(name string) bool { return name == kind.Name })
	names = slices.Insert(names, 0, kind.Name)
	w.set.Stitches = names[:min(len(names), latelyShown)]
}

// trayWord is what a stitch is called in the tray: its abbreviation, but its name where that is one letter or two that
// few would know, as for a picot or a bobble.
func (w *window) trayWord(kind *stitch.Kind) string {
	word, ok := w.lib.Word(kind, termsOf(w.s.Pattern().Terms))
	if !ok || len(word) <= 2 && (kind.Family == "cluster" || kind.Family == "edge") {
		return kind.Name
	}
	return word
}
