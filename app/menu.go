package app

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"strandway/app/action"
)

// menu makes the menus from the table.
func (w *window) menu() *fyne.MainMenu {
	var menus []*fyne.Menu
	for _, name := range w.table.Menus() {
		m := fyne.NewMenu(name)
		for _, a := range w.shownIn(name) {
			if a.Rule && len(m.Items) > 0 {
				m.Items = append(m.Items, fyne.NewMenuItemSeparator())
			}
			m.Items = append(m.Items, w.item(a))
		}
		menus = append(menus, m)
	}
	return fyne.NewMainMenu(menus...)
}

// shownIn are the actions that a menu shows now.
func (w *window) shownIn(menu string) []*action.Action {
	return slices.DeleteFunc(w.table.In(menu), func(a *action.Action) bool { return !a.Shown() })
}

func (w *window) item(a *action.Action) *fyne.MenuItem {
	i := fyne.NewMenuItem(a.Text(), func() { w.run(a) })
	i.Disabled = !a.Possible()
	i.IsQuit = a.ID == "quit"
	i.Checked = a.On != nil && a.On()
	if len(a.Keys) > 0 {
		i.Shortcut = shortcut(a.Keys[0])
	}
	return i
}

// refreshMenu brings labels, ticks and what is possible up to date.
func (w *window) refreshMenu() {
	main := w.win.MainMenu()
	if main == nil || w.table == nil {
		return
	}
	changed := false
	for _, m := range main.Items {
		shown := w.shownIn(m.Label)
		rules := 0
		for _, i := range m.Items {
			if i.IsSeparator {
				rules++
			}
		}
		if len(shown) != len(m.Items)-rules { // some have come or gone
			w.win.SetMainMenu(w.menu())
			return
		}
		k := 0
		for _, a := range shown {
			for m.Items[k].IsSeparator {
				k++
			}
			i := m.Items[k]
			k++
			on := a.On != nil && a.On()
			if i.Label != a.Text() || i.Disabled == a.Possible() || i.Checked != on {
				i.Label, i.Disabled, i.Checked = a.Text(), !a.Possible(), on
				changed = true
			}
		}
	}
	if changed {
		main.Refresh()
	}
}

// shortcut is a chord as the toolkit knows it. Keys without Ctrl and Alt are shown in the
// menus but not caught there; the widgets hand them on to [window.plainKey].
func shortcut(c action.Chord) fyne.Shortcut {
	if c.Ctrl && !c.Shift && !c.Alt {
		// The toolkit has names of its own for these, and looks for no others.
		switch c.Key {
		case "Z":
			return &fyne.ShortcutUndo{}
		case "Y":
			return &fyne.ShortcutRedo{}
		case "X":
			return &fyne.ShortcutCut{}
		case "C":
			return &fyne.ShortcutCopy{}
		case "V":
			return &fyne.ShortcutPaste{}
		case "A":
			return &fyne.ShortcutSelectAll{}
		}
	}
	return &desktop.CustomShortcut{KeyName: fyne.KeyName(c.Key), Modifier: modifiers(c)}
}

// runShortcut does the action of a shortcut that no menu shows.
func (w *window) runShortcut(s fyne.Shortcut) {
	k, ok := s.(fyne.KeyboardShortcut)
	if !ok {
		return
	}
	held := k.Mod()
	c := action.Chord{
		Key:   string(k.Key()),
		Ctrl:  held&fyne.KeyModifierShortcutDefault != 0,
		Shift: held&fyne.KeyModifierShift != 0,
		Alt:   held&fyne.KeyModifierAlt != 0,
	}
	if a := w.table.For(c); a != nil {
		w.run(a)
	} else if at, ok := w.menuKeys[c]; ok {
		w.openMenu(at)
	}
}

// run does an action, unless a question waits that it has nothing to do with.
func (w *window) run(a *action.Action) {
	if w.sheetOpen() && !a.Field {
		return
	}
	if !a.Possible() && a.Why != nil {
		w.say(a.Why())
		return
	}
	a.Run()
	w.seeGuide(a.ID)
}

func modifiers(c action.Chord) fyne.KeyModifier {
	var m fyne.KeyModifier
	if c.Ctrl {
		m |= fyne.KeyModifierShortcutDefault
	}
	if c.Shift {
		m |= fyne.KeyModifierShift
	}
	if c.Alt {
		m |= fyne.KeyModifierAlt
	}
	return m
}

// openMenu opens a menu by its place in the bar and gives it the keys.
func (w *window) openMenu(at int) {
	bar, ok := w.win.Canvas().(interface{ ToggleMenu() }) // the desktop's canvas has it
	if !ok || w.sheetOpen() {
		return
	}
	bar.ToggleMenu()
	for range at {
		if item := w.win.Canvas().Focused(); item != nil {
			item.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
		}
	}
}

// menuLetters are the letters that open the menus with Alt: of each name the first letter that is still free.
func menuLetters(names []string) []string {
	letters := make([]string, len(names))
	for i, name := range names {
		for _, r := range strings.ToUpper(name) {
			if letter := string(r); r >= 'A' && r <= 'Z' && !slices.Contains(letters, letter) {
				letters[i] = letter
				break
			}
		}
	}
	return letters
}

// bindMenus opens the menus by Alt and a letter, wherever the keys are.
func (w *window) bindMenus() {
	for i, letter := range menuLetters(w.table.Menus()) {
		w.menuKeys[action.Chord{Alt: true, Key: letter}] = i
		w.win.Canvas().AddShortcut(shortcut(action.Chord{Alt: true, Key: letter}), func(fyne.Shortcut) { w.openMenu(i) })
	}
}

// bindMoreKeys gives actions their further keys, which no menu shows.
func (w *window) bindMoreKeys() {
	for _, a := range w.table {
		for i, k := range a.Keys {
			if (i > 0 || a.Bare) && !k.Plain() {
				w.win.Canvas().AddShortcut(shortcut(k), func(fyne.Shortcut) { w.run(a) })
			}
		}
	}
}

func lowerFirst(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToLower(r)) + strings.TrimPrefix(s, s[:n])
}

// chords writes all keys of an action.
func chords(keys []action.Chord) string {
	out := make([]string, len(keys))
	for i, k := range keys {
		out[i] = k.String()
	}
	return strings.Join(out, ", ")
}

// contains reports whether s holds what is sought, whatever the capitals.
func contains(s, sought string) bool {
	return strings.Contains(strings.ToLower(s), strings.ToLower(sought))
}
