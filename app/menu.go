package app

import (
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
		for _, a := range w.table.In(name) {
			if a.Rule && len(m.Items) > 0 {
				m.Items = append(m.Items, fyne.NewMenuItemSeparator())
			}
			m.Items = append(m.Items, w.item(a))
		}
		menus = append(menus, m)
	}
	return fyne.NewMainMenu(menus...)
}

func (w *window) item(a *action.Action) *fyne.MenuItem {
	i := fyne.NewMenuItem(a.Text(), a.Run)
	i.Disabled = !a.Possible()
	i.IsQuit = a.ID == "quit"
	i.Checked = a.On != nil && a.On()
	if len(a.Keys) > 0 {
		i.Shortcut = shortcut(a.Keys[0])
		if a.Keys[0].Plain() {
			// The toolkit shows such keys but does not catch them; the widgets hand them on.
			i.Shortcut = &desktop.CustomShortcut{KeyName: fyne.KeyName(a.Keys[0].Key), Modifier: modifiers(a.Keys[0])}
		}
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
		k := 0
		for _, a := range w.table.In(m.Label) {
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

func shortcut(c action.Chord) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: fyne.KeyName(c.Key), Modifier: modifiers(c)}
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

// bindMoreKeys gives actions their further keys, which no menu shows.
func (w *window) bindMoreKeys() {
	for _, a := range w.table {
		for i, k := range a.Keys {
			if i > 0 && !k.Plain() {
				w.win.Canvas().AddShortcut(shortcut(k), func(fyne.Shortcut) { a.Run() })
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
