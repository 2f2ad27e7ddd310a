package app

import (
	"context"
	"fmt"
	"image/png"
	"io"
	"path/filepath"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"strandway/app/session"
	"strandway/app/settings"
	"strandway/chart"
	"strandway/model/colour"
	"strandway/model/edit"
	"strandway/model/pattern"
	"strandway/render"
	"strandway/render/cloth"
)

var patternEnds = []string{".strand"}

// open opens a file and remembers it.
func (w *window) open(path string) {
	if err := w.s.Open(path); err != nil {
		w.say(spoken(err.Error()))
		return
	}
	w.remember(path)
	w.show(makeView)
	w.win.Canvas().Focus(w.page)
}

// remember puts a file among those opened lately.
func (w *window) remember(path string) {
	full, err := filepath.Abs(path)
	if err != nil {
		full = path
	}
	p := w.s.Pattern()
	r := settings.Recent{Path: full, Title: w.s.Name(), Opened: time.Now(), Tells: yarnsTell(len(p.Yarns), len(p.Pieces))}
	for _, y := range p.Yarns {
		r.Yarns = append(r.Yarns, colour.Hex(w.shade(y)))
	}
	w.set.Opened(r)
	w.keepSettings()
}

func yarnsTell(yarns, pieces int) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six"}
	word := func(n int, one, many string) string {
		if n == 1 {
			return "one " + one
		}
		if n < len(words) {
			return words[n] + " " + many
		}
		return fmt.Sprintf("%d %s", n, many)
	}
	return word(pieces, "piece", "pieces") + ", " + word(yarns, "yarn", "yarns")
}

func (w *window) keepSettings() {
	if size := w.win.Canvas().Size(); size.Width > 100 && !w.win.FullScreen() {
		w.set.Width, w.set.Height = size.Width, size.Height
	}
	if err := w.set.Save(); err != nil {
		fyne.LogError("settings", err)
	}
}

// ifSettled goes on at once when all is saved, else when the author has said what to do.
func (w *window) ifSettled(then func()) {
	if !w.s.Changed() || w.s.Rows() == "" && w.s.Path() == "" {
		then()
		return
	}
	if w.sheetOpen() {
		return
	}
	w.choose("Save "+w.s.Name()+" first?", "There are rows that stand in no file yet.",
		choice{label: "Save", first: true, do: func() { w.save(then) }},
		choice{label: "Close without saving", do: then},
		choice{label: "Keep working", do: func() {}})
}

func (w *window) quit() {
	w.ifSettled(func() {
		w.keepSettings()
		w.stopKeeping()
		w.win.SetCloseIntercept(nil)
		w.win.Close()
		w.app.Quit()
	})
}

func (w *window) newDocument() {
	w.begin(beginnings[len(beginnings)-1])
}

func (w *window) closeDocument() {
	w.ifSettled(func() {
		w.s.Begin(session.Blank())
		w.show(startView)
	})
}

func (w *window) askOpen() {
	w.ifSettled(func() {
		w.askFile("Open", "Open", "", false, patternEnds, w.open)
	})
}

// save saves to the document's file, or asks for one; then goes on.
func (w *window) save(then func()) {
	if w.s.Path() == "" {
		w.askFile("Save", "Save", fileName(w.s.Name())+".strand", true, patternEnds, func(path string) { w.saveTo(path, then) })
		return
	}
	w.saveTo(w.s.Path(), then)
}

func (w *window) saveTo(path string, then func()) {
	if w.s.Path() == "" && w.s.Pattern().Title == pattern.Untitled {
		w.nameAfter(path)
	}
	if err := w.s.Save(path); err != nil {
		w.say(spoken(err.Error()))
		return
	}
	w.remember(path)
	w.say("Saved " + filepath.Base(path))
	if then != nil {
		then()
	}
}

// nameAfter gives a pattern that has no title yet that of its file, so that it is not printed without one.
func (w *window) nameAfter(path string) {
	w.s.Do("Title", func(now edit.State) edit.State {
		p := *now.Pattern
		p.Title = upperFirst(strings.TrimSuffix(filepath.Base(path), filepath.Ext(path)))
		now.Pattern = &p
		return now
	})
}

func (w *window) askCopy() {
	w.askFile("Save a copy", "Save", fileName(w.s.Name())+" copy.strand", true, patternEnds, func(path string) {
		if err := w.s.SaveCopy(path); err != nil {
			w.say(spoken(err.Error()))
			return
		}
		w.say("Saved a copy as " + filepath.Base(path))
	})
}

// fileName is a title as a file can be called.
func fileName(title string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) {
			return '-'
		}
		return r
	}, title)
}

// askChart saves the chart for print or web, as its file's ending says.
func (w *window) askChart() {
	w.askFile("Save the chart as .png, .svg or .pdf", "Save", fileName(w.s.Name())+" chart.png", true, []string{".png", ".svg", ".pdf"}, func(path string) {
		m := w.s.Made()
		o := m.ChartOptions()
		o.Library, o.Title, o.Key = w.lib, w.s.Pattern().Title, true
		list := chart.Draw(m.Plan, o)
		if w.pair.Cells() {
			list = chart.Cells(m.Fabric(), o, 0)
		}
		w.saved(path, render.Write(path, list, render.Options{}))
	})
}

// clothPixels is how large one stitch is in a saved picture of the cloth, px, where the picture stays below mostPixels.
const (
	clothPixels = 48
	mostPixels  = 6000
)

// askCloth saves a picture of the cloth.
func (w *window) askCloth() {
	w.askFile("Save the cloth as .png", "Save", fileName(w.s.Name())+" cloth.png", true, []string{".png"}, func(path string) {
		m, way, back := w.s.Made(), w.s.Colourway(), w.contact.back()
		box := m.Cloth.Box().Grow(1)
		px := min(clothPixels, mostPixels/box.Width(), mostPixels/box.Height())
		w.say("Drawing the cloth…")
		go func() {
			picture, err := m.Cloth.Paint(context.Background(), cloth.View{Box: box, PixelsPerW: px}, m.ClothYarns(way), back)
			if err == nil {
				err = render.WriteFile(path, func(out io.Writer) error { return png.Encode(out, picture) })
			}
			w.post(func() { w.saved(path, err) })
		}()
	})
}

// saved says what became of a file.
func (w *window) saved(path string, err error) {
	if err != nil {
		w.say(spoken(err.Error()))
		return
	}
	w.set.Folder = filepath.Dir(path)
	w.say("Saved " + filepath.Base(path) + " in " + filepath.Dir(path))
}
