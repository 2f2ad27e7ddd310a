package app

import (
	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/session"
	"strandway/app/theme"
)

// redress draws the window anew in the present theme.
func (w *window) redress() {
	k := w.th.Tokens()
	for _, l := range w.lines {
		l.FillColor = k.Line
	}
	w.s.SetLook(session.Look{Dark: k.Dark})
	w.page.Redress()
	w.pair.Redress()
	w.teach.Redress()
	for _, p := range []*control.Panel{w.head, w.tabs, w.tray, w.strip, w.findings, w.status, w.colour, w.strands, w.sizes, w.start, w.notice, w.words} {
		p.Redraw()
	}
	w.desk.Refresh()
}

// followSystem is light or dark as the desktop is, from now on.
func (w *window) followSystem() {
	w.th.Told = true
	dark := w.th.IsDark()
	w.app.Settings().SetTheme(w.th)
	w.redress()
	w.app.Settings().AddListener(func(fyne.Settings) {
		if now := w.th.IsDark(); now != dark {
			dark = now
			w.redress()
		}
	})
}

// dress changes to light, dark, or what the system has.
func (w *window) dress(m theme.Mode) {
	w.th.Mode = m
	w.set.Theme = string(m)
	w.app.Settings().SetTheme(w.th)
	w.redress()
	w.refreshMenu()
	w.keepSettings()
}
