// Package app is the window: the written rows at the left, what they make at the right.
//
// It computes nothing of crochet. The session holds the document and has it
// worked in the background; the window shows what comes of it and turns keys and
// the pointer into steps of the session.
package app

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"strandway/app/journal"
	"strandway/app/session"
	"strandway/app/settings"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model/stitch"
)

// Run opens the window on a pattern file, or with "" on the start page, and returns when it is closed.
func Run(path string) error {
	lib, err := stitch.Standard()
	if err != nil {
		return fmt.Errorf("the stitch library cannot be read: %w", err)
	}
	if err := translation.Load(); err != nil {
		fyne.LogError("translations", err)
	}
	set, err := settings.Load()
	if err != nil {
		fyne.LogError("settings", err) // a spoilt file of settings keeps no one from working
	}
	applyScale(set)
	a := app.NewWithID("bay.marram.strandway")
	s := session.New(lib, fyne.Do)
	defer s.Close()
	if hands, err := settings.LoadHands(); err != nil {
		fyne.LogError("remembered swatches", err)
	} else {
		s.SetHands(hands)
	}
	w := newWindow(a, lib, s, set, theme.New(theme.Mode(set.Theme)), fyne.Do)
	go func() {
		if theme.SystemTells() {
			fyne.Do(w.followSystem)
		}
	}()
	if folder, err := journal.Folder(); err != nil {
		fyne.LogError("journal", err)
	} else if j, err := journal.Open(folder, journal.System()); err != nil {
		fyne.LogError("journal", err)
	} else {
		w.keep(j)
		end := make(chan struct{})
		defer close(end)
		go w.lookOut(end)
	}
	if path != "" {
		w.open(path)
		if s.Path() == "" {
			return fmt.Errorf("cannot open %s: %s", path, w.said)
		}
	}
	if path == "" && set.First {
		w.beginMat()
	}
	w.win.ShowAndRun()
	return nil
}
