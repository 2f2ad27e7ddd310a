package app

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/chart"
	"strandway/chart/geom"
	"strandway/model/stitch"
	"strandway/render/raster"
)

// trayKinds are the stitches at hand, by their US names, in groups as a pattern book lists them.
var trayKinds = [][]string{
	{"ch", "sl st", "sc", "hdc", "dc", "tr"},
	{"sc2tog", "dc2tog"},
	{"fpdc", "bpdc", "blsc"},
	{"3-dc cl", "bobble", "puff", "popcorn", "picot"},
}

// drawTray draws the stitches at hand: the symbol over its abbreviation in the pattern's terms.
func (w *window) drawTray(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Desk)
	x := float32(10)
	const allWide = 46
	room := size.Width - allWide - 8 // the way to all others stands at the end, always in sight
	all := control.Spot{X: room, Y: 3, W: allWide, H: 48, Hint: translation.Say("all stitches, by family or by name") + " (Ctrl+Shift+F)", Do: w.findStitch}
	d.Rect(room-6, 12, 1, size.Height-24, 0, k.Line)
	d.Icon(theme.Icon("find", k.Ink), room+allWide/2-10, 8, 20)
	d.WordsMid("…", room+allWide/2, 42, theme.Small, true, k.Ink)
	var spots []control.Spot
	for g, group := range trayKinds {
		for i, name := range group {
			kind, ok := w.lib.Read(name, "us")
			if !ok {
				continue
			}
			word := w.trayWord(kind)
			width := max(42, control.Width(word, theme.Small, false)+14)
			if i == 0 && g > 0 && x+13+width <= room-6 {
				d.Rect(x+6, 12, 1, size.Height-24, 0, k.Line)
				x += 13
			}
			if x+width > room-6 {
				return append(spots, all)
			}
			d.Add(w.symbol(kind, k, 40, 36), x+width/2-20, 0, 40, 36)
			d.WordsMid(word, x+width/2, 43, theme.Small, false, k.Ink)
			spots = append(spots, control.Spot{X: x, Y: 3, W: width, H: 48, Hint: upperFirst(w.lib.Name(kind, termsOf(w.s.Pattern().Terms))) + ": " + translation.Say("a click works it next, or in place of what is chosen; drag it onto a stitch; more under the second button"), Do: func() { w.takeStitch(kind, word) }, Drop: func(at fyne.Position) { w.dropStitch(kind, at) },
				Carry: func(at fyne.Position) { w.carryStitch(kind, at) }, Menu: func(at fyne.Position) { w.stitchMenu(kind, at) }})
			x += width
		}
	}
	return append(spots, all)
}

// symbol is a stitch's chart symbol for the tray, drawn once for a light and once for a dark window.
func (w *window) symbol(kind *stitch.Kind, k theme.Tokens, width, height float32) fyne.CanvasObject {
	key := symbolKey{kind.Name, k.Dark}
	img, drawn := w.symbols[key]
	if !drawn {
		img = symbolImage(kind, k, width, height)
		w.symbols[key] = img
	}
	return canvas.NewImageFromImage(img)
}

type symbolKey struct {
	kind string
	dark bool
}

func symbolImage(kind *stitch.Kind, k theme.Tokens, w, h float32) image.Image {
	const sharp = 2 // drawn twice as large, for screens that show more pixels
	list := chart.Sample(kind, chart.Options{Dark: k.Dark, Unit: 5})
	bare := *list
	bare.Background.A = 0
	s := min(15.0/5, float64(h)/list.Height, float64(w)/list.Width) * sharp
	img := image.NewRGBA(image.Rect(0, 0, int(w*sharp), int(h*sharp)))
	raster.PaintView(img, &bare, geom.Translate(-list.Width/2, -list.Height/2).Then(geom.Scale(s, s)).Then(geom.Translate(float64(w)*sharp/2, float64(h)*sharp/2)))
	return img
}

// hasChoice reports whether stitches are chosen.
func (w *window) hasChoice() bool { return len(w.s.Chosen().Stitches) > 0 }

func (w *window) takeOut() { w.tell(w.s.TakeOut()) }

// pictureLetter gathers what is typed in a picture: "5dc".
func (w *window) pictureLetter(r rune) {
	if r == ' ' {
		w.placeTyped(false)
		return
	}
	w.typed += string(r)
	w.sayTyped()
}

func (w *window) sayTyped() {
	if w.typed == "" {
		w.say("")
		return
	}
	w.say(w.typed + "▏ Space adds it behind the chosen stitch, Enter works it in place of what is chosen, Esc forgets it")
}

// placeTyped works what was typed.
func (w *window) placeTyped(instead bool) {
	if w.typed == "" {
		return
	}
	typed, err := w.s.ReadTyped(w.typed)
	w.typed = ""
	w.say("")
	switch {
	case err != nil:
		w.say(spoken(err.Error()))
	case instead:
		w.tell(w.s.Put(typed))
	default:
		w.tell(w.s.Insert(typed))
	}
}

// farRows is how many rows the keys for a far way go.
const farRows = 5

// chooseLast chooses the last stitch of the row in hand.
func (w *window) chooseLast() {
	if row, ok := w.rowInHand(); ok {
		if r := &w.s.Made().Fabric().Rows[row]; r.Last > r.First {
			w.s.Choose([]int32{r.Last - 1}, r.Last-1)
		}
	}
}

// pictureKey goes from stitch to stitch and edits what is chosen.
func (w *window) pictureKey(e *fyne.KeyEvent) {
	if w.win.Canvas().Focused() == w.pair.Chart && w.noteKey(e) {
		return
	}
	held := w.modifiers()
	extend := held&fyne.KeyModifierShift != 0
	switch e.Name {
	case fyne.KeyHome, fyne.KeyEnd:
		w.s.StepToEnd(e.Name == fyne.KeyEnd, extend)
	case fyne.KeyPageUp:
		w.s.Step(0, farRows, extend)
	case fyne.KeyPageDown:
		w.s.Step(0, -farRows, extend)
	case fyne.KeyLeft:
		w.s.Step(-1, 0, extend)
	case fyne.KeyRight:
		w.s.Step(1, 0, extend)
	case fyne.KeyUp:
		w.s.Step(0, 1, extend)
	case fyne.KeyDown:
		w.s.Step(0, -1, extend)
	case fyne.KeyReturn, fyne.KeyEnter:
		switch {
		case w.typed == "":
			w.newRow()
			w.s.ChooseNone() // what is typed next goes into the new row
		case w.hasChoice():
			w.placeTyped(true)
		default:
			w.placeTyped(false)
		}
	case fyne.KeyBackspace:
		if w.typed != "" {
			r := []rune(w.typed)
			w.typed = string(r[:len(r)-1])
			w.sayTyped()
			return
		}
		if !w.hasChoice() {
			w.chooseLast()
		}
		w.takeOut()
	case fyne.KeyEscape:
		switch {
		case w.typed != "":
			w.typed = ""
			w.say("")
		case w.putPencilDown():
		case w.hasChoice():
			w.s.ChooseNone()
		default:
			w.win.Canvas().Focus(w.page)
		}
	case fyne.KeySpace: // arrives as a letter too
	default:
		w.plainKey(e)
	}
}
