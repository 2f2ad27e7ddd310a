package app

import (
	"fmt"
	"image"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/symbol"
	"strandway/model/stitch"
	"strandway/render/raster"
)

// trayKinds are the stitches at hand, by their US names, in groups as a pattern book lists them.
var trayKinds = [][]string{
	{"ch", "sl st", "sc", "hdc", "dc", "tr"},
	{"sc2tog", "dc2tog"},
	{"fpdc", "bpdc", "blsc"},
	{"3-dc cl", "5-dc bobble", "puff", "pc", "picot"},
}

// drawTray draws the stitches at hand: the symbol over its abbreviation in the pattern's terms.
func (w *window) drawTray(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Desk)
	terms := termsOf(w.s.Pattern().Terms)
	x := float32(10)
	var spots []control.Spot
	for g, group := range trayKinds {
		if g > 0 && x+60 < size.Width {
			d.Rect(x+6, 12, 1, size.Height-24, 0, k.Line)
			x += 13
		}
		for _, name := range group {
			kind, ok := w.lib.Read(name, "us")
			if !ok {
				continue
			}
			word, ok := w.lib.Word(kind, terms)
			if !ok {
				word = kind.Name
			}
			width := max(42, control.Width(word, theme.Small, false)+14)
			if x+width > size.Width-8 {
				return spots
			}
			if img := w.symbolImage(kind, k); img != nil {
				d.Add(img, x+width/2-16, 4, 32, 30)
			}
			d.WordsMid(word, x+width/2, 43, theme.Small, false, k.Ink)
			spots = append(spots, control.Spot{X: x, Y: 3, W: width, H: 48, Hint: w.trayHint(kind, terms), Do: func() { w.takeStitch(kind, word) }})
			x += width
		}
	}
	return spots
}

func (w *window) trayHint(k *stitch.Kind, terms string) string {
	name := w.lib.Name(k, terms)
	if w.hasChoice() {
		return name + ": works it in place of the chosen stitches"
	}
	return name + ": writes it at the caret"
}

// takeStitch works a kind in place of the chosen stitches, or writes it at the caret.
func (w *window) takeStitch(k *stitch.Kind, word string) {
	if w.hasChoice() {
		w.tell(w.s.PutStitch(k))
		return
	}
	before := w.s.Rows()[:w.s.Caret().Span().Start]
	switch {
	case before == "" || strings.HasSuffix(before, " ") || strings.HasSuffix(before, "\n") || strings.HasSuffix(before, "("):
	case strings.HasSuffix(before, ",") || strings.HasSuffix(before, ":") || strings.HasSuffix(before, "*"):
		word = " " + word
	default:
		word = ", " + word
	}
	w.s.Type(word)
	w.win.Canvas().Focus(w.page)
}

// symbolImage is a stitch's chart symbol for the tray.
func (w *window) symbolImage(kind *stitch.Kind, k theme.Tokens) fyne.CanvasObject {
	shape, ok := symbol.Standard().Symbol(kind.Symbol)
	if !ok {
		return nil
	}
	const px, scale = 96, 3 // drawn three times as large and shown at a third
	list := &display.List{}
	box := geom.Empty()
	legs := 1
	if !shape.Whole {
		legs = max(1, kind.Legs)
	}
	var paths []display.Path
	for leg := range legs {
		turn := geom.Identity
		if legs > 1 {
			// Legs of a decrease spread at the foot, those of a cluster bow apart in the middle.
			angle := (float64(leg) - float64(legs-1)/2) * .45
			turn = geom.Translate(-shape.Head.X, -shape.Head.Y).Then(geom.Rotate(angle)).Then(geom.Translate(shape.Head.X, shape.Head.Y))
		}
		for _, part := range shape.Parts {
			path := display.Path{Path: part.Path.Transform(turn), Stroke: display.Solid(k.Ink), Width: .1}
			switch part.Fill {
			case symbol.Paper:
				path.Fill = display.Solid(k.Desk)
			case symbol.Ink:
				path.Fill = display.Solid(k.Ink)
			}
			box = box.Union(path.Path.Box())
			paths = append(paths, path)
		}
	}
	box = box.Grow(.12)
	s := min(17, 30/box.Width(), 27/box.Height()) * scale
	mid := box.Centre()
	to := geom.Translate(-mid.X, -mid.Y).Then(geom.Scale(s, -s)).Then(geom.Translate(px/2, px/2*.94))
	for _, p := range paths {
		p.Path = p.Path.Transform(to)
		p.Width *= max(s, 12*scale)
		p.Width = min(p.Width, 1.7*scale)
		list.Items = append(list.Items, p)
	}
	img := image.NewRGBA(image.Rect(0, 0, px, px*30/32))
	raster.PaintView(img, list, geom.Identity)
	out := canvas.NewImageFromImage(img)
	out.ScaleMode = canvas.ImageScaleSmooth
	return out
}

// hasChoice reports whether stitches are chosen.
func (w *window) hasChoice() bool { return len(w.s.Chosen().Stitches) > 0 }

func (w *window) takeOut() { w.tell(w.s.TakeOut()) }

// tell says why something was not done.
func (w *window) tell(err error) {
	if err != nil {
		w.say(upperFirst(err.Error()) + ".")
	}
}

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
	digits := len(w.typed) - len(strings.TrimLeft(w.typed, "0123456789"))
	n, _ := strconv.Atoi(w.typed[:digits])
	n = min(max(n, 1), 200)
	word := w.typed[digits:]
	w.typed = ""
	terms := termsOf(w.s.Pattern().Terms)
	kind, ok := w.lib.Read(word, terms)
	if !ok {
		says := fmt.Sprintf("%q is no stitch in %s terms", word, w.s.Pattern().Terms)
		if near := w.lib.Nearest(word, terms); near != "" {
			says += fmt.Sprintf("; did you mean %q?", near)
		}
		w.say(says)
		return
	}
	w.say("")
	if instead {
		w.tell(w.s.PutStitch(kind))
		return
	}
	w.tell(w.s.InsertStitch(kind, n))
}

// pictureKey goes from stitch to stitch and edits what is chosen.
func (w *window) pictureKey(e *fyne.KeyEvent) {
	held := w.modifiers()
	extend := held&fyne.KeyModifierShift != 0
	switch e.Name {
	case fyne.KeyLeft:
		w.s.Step(-1, 0, extend)
	case fyne.KeyRight:
		w.s.Step(1, 0, extend)
	case fyne.KeyUp:
		w.s.Step(0, 1, extend)
	case fyne.KeyDown:
		w.s.Step(0, -1, extend)
	case fyne.KeyReturn, fyne.KeyEnter:
		if w.typed == "" {
			w.newRow()
			return
		}
		w.placeTyped(true)
	case fyne.KeyBackspace:
		if w.typed != "" {
			r := []rune(w.typed)
			w.typed = string(r[:len(r)-1])
			w.sayTyped()
			return
		}
		w.takeOut()
	case fyne.KeyEscape:
		switch {
		case w.typed != "":
			w.typed = ""
			w.say("")
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
