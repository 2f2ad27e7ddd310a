package app

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
)

// fileSheet lets the author choose a file by its path, typed or picked from the folder.
type fileSheet struct {
	w       *window
	field   *control.Field
	save    bool
	ends    []string // the endings shown
	answer  string
	done    func(path string)
	redraw  func()
	folder  string
	entries []entry
	at, top int
	typed   string // what the list was made for
	says    string // why what was typed cannot be done
	missing string // the folder that is made when Enter is pressed again, "" for none
}

// entry is a file or folder in the list.
type entry struct {
	name string
	dir  bool
}

const entryHeight = 26

// askFile asks for a file; name is what is suggested.
func (w *window) askFile(title, answer, name string, save bool, ends []string, done func(path string)) {
	f := &fileSheet{w: w, save: save, ends: ends, answer: answer, done: done}
	folder := w.set.Folder
	if folder == "" {
		folder, _ = os.UserHomeDir()
	}
	f.field = control.NewField(filepath.Join(folder, name))
	if name == "" {
		f.field.SetText(folder + string(filepath.Separator))
	}
	f.field.Enter = f.enter
	f.field.Walk = func(step int) { f.walk(step) }
	f.at = -1
	s := &sheet{title: title, size: fyne.NewSize(640, 440), fields: []placed{{f.field, 24, sheetTop, 592, 36}}, draw: f.draw}
	s.scroll = func(by float32) { f.top = max(0, min(f.top-int(by/20), len(f.entries)-1)) }
	f.field.OnChanged = func(string) {
		f.at, f.says, f.missing = -1, "", ""
		s.card.Redraw()
	}
	f.redraw = func() { s.card.Redraw() }
	w.openSheet(s)
	f.field.CursorColumn = len([]rune(f.field.Text))
}

// list reads the folder that is typed.
func (f *fileSheet) list() {
	folder, start := filepath.Split(f.field.Text)
	if f.typed == f.field.Text && f.entries != nil {
		return
	}
	f.typed, f.folder, f.top = f.field.Text, folder, 0
	f.entries = []entry{}
	files, err := os.ReadDir(folder)
	if err != nil {
		return
	}
	if parent := filepath.Dir(filepath.Clean(folder)); parent != filepath.Clean(folder) {
		f.entries = append(f.entries, entry{"..", true})
	}
	for _, file := range files {
		name := file.Name()
		if strings.HasPrefix(name, ".") || !f.save && !strings.HasPrefix(strings.ToLower(name), strings.ToLower(start)) {
			continue
		}
		if file.IsDir() || slices.Contains(f.ends, strings.ToLower(filepath.Ext(name))) {
			f.entries = append(f.entries, entry{name, file.IsDir()})
		}
	}
	slices.SortStableFunc(f.entries, func(a, b entry) int {
		switch {
		case a.dir == b.dir:
			return 0
		case a.dir:
			return -1
		}
		return 1
	})
}

func (f *fileSheet) draw(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	f.list()
	answer := f.answer
	if f.missing != "" {
		answer = "Make the folder and save"
	}
	yes := d.Button(k, answer, size.Width-24, size.Height-50, true, true, func() { f.enter(f.field.Text) })
	no := d.Button(k, "Cancel", yes.X-10, size.Height-50, false, true, f.w.closeSheet)
	spots := []control.Spot{yes, no}
	y := float32(sheetTop + 48)
	if f.says != "" {
		d.Icon(theme.Icon("caution", k.Caution), 28, y+3, 18)
		d.Words(control.Fitted(f.says, theme.Body, false, size.Width-90), 54, y+12, theme.Body, false, k.Caution)
		y += 32
	} else if len(f.entries) == 0 {
		d.Words(translation.Say("Nothing here that can be opened."), 34, y+13, theme.Body, false, k.Ink2)
	}
	for i := f.top; i < len(f.entries) && y+entryHeight < size.Height-60; i++ {
		e := f.entries[i]
		if i == f.at {
			d.Rect(24, y, size.Width-48, entryHeight, 4, k.Wash)
		}
		name, ink := e.name, k.Ink
		if e.dir {
			name, ink = e.name+string(filepath.Separator), k.Ink2
		}
		d.Words(control.Fitted(name, theme.Body, false, size.Width-80), 34, y+entryHeight/2, theme.Body, false, ink)
		spots = append(spots, control.Spot{X: 24, Y: y, W: size.Width - 48, H: entryHeight, Do: func() { f.pick(i) }})
		y += entryHeight
	}
	return spots
}

// walk goes through the list with the arrow keys.
func (f *fileSheet) walk(step int) {
	if len(f.entries) == 0 {
		return
	}
	f.at = max(0, min(f.at+step, len(f.entries)-1))
	const seen = 10
	f.top = max(0, min(f.top, f.at), f.at-seen+1)
	f.w.over.Refresh()
}

// pick takes an entry of the list: a folder is opened, a file is taken; a second click on it opens it.
func (f *fileSheet) pick(i int) {
	e := f.entries[i]
	path := filepath.Join(f.folder, e.name)
	switch {
	case e.dir:
		f.field.SetText(strings.TrimSuffix(path, "/") + string(filepath.Separator))
	case f.save:
		f.field.SetText(path)
	default:
		f.enter(path)
	}
}

// enter ends the sheet with a path; a folder is gone into instead.
func (f *fileSheet) enter(path string) {
	if f.at >= 0 && f.at < len(f.entries) {
		i := f.at
		f.at = -1
		f.pick(i)
		return
	}
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		f.field.SetText(strings.TrimSuffix(path, "/") + string(filepath.Separator))
		return
	}
	if f.save && filepath.Ext(path) == "" {
		path += f.ends[0]
	}
	if !f.reachable(path) {
		f.redraw()
		return
	}
	f.w.closeSheet()
	if _, err := os.Stat(path); f.save && err == nil && path != f.w.s.Path() {
		f.w.choose(filepath.Base(path)+" is there already", "What stands in it is lost when it is replaced.",
			choice{label: "Replace it", do: func() { f.done(path) }},
			choice{label: "Keep it", first: true, do: func() {}})
		return
	}
	f.done(path)
}

// reachable reports whether there is a file to open, or a folder to save to, and says so on the sheet where there is
// none. A missing folder is made when it is asked for a second time.
func (f *fileSheet) reachable(path string) bool {
	if !f.save {
		if _, err := os.Stat(path); err != nil {
			f.says = translation.Fill("There is no file {{.Name}} here.", "Name", filepath.Base(path))
			return false
		}
		return true
	}
	folder := filepath.Dir(path)
	if info, err := os.Stat(folder); err == nil && info.IsDir() {
		return true
	}
	if f.missing != folder {
		f.missing = folder
		f.says = translation.Fill("There is no folder {{.Name}} yet.", "Name", folder)
		return false
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		f.says = spoken(err.Error())
		return false
	}
	return true
}
