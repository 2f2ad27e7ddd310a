package app

import (
	"context"
	"errors"
	"fmt"
)

// fillScreen fills the screen with the window, or while teaching with the stage alone,
// and gives it back.
func (w *window) fillScreen() {
	on := !w.win.FullScreen()
	if w.alone || w.view == teachView {
		w.alone = w.view == teachView && !w.alone
		on = w.alone
	}
	if w.alone {
		w.win.SetMainMenu(nil)
		w.win.Canvas().Focus(w.teach)
	} else if w.win.MainMenu() == nil {
		w.win.SetMainMenu(w.menu())
	}
	w.win.SetFullScreen(on)
	w.desk.Refresh()
}

// leaveTeaching does what Esc does on the stage: it stops frames that are being saved, or
// gives the screen back.
func (w *window) leaveTeaching() bool {
	switch {
	case w.stopFrames != nil:
		w.stopFrames()
	case w.alone:
		w.fillScreen()
	default:
		return false
	}
	return true
}

// tellStep says the present step in the status line.
func (w *window) tellStep() {
	if w.view == teachView {
		w.say(w.teach.Tell())
	}
}

// askFrames asks where the frames of the steps are to go: a film, or a folder of pictures.
func (w *window) askFrames() {
	film, what, ok := w.teach.Film()
	if !ok {
		return
	}
	name := fileName(w.s.Name()) + " " + lowerFirst(what) + ".gif"
	title := fmt.Sprintf("Save frames: %s, %d steps. Without .gif, a folder of pictures", what, film.To-film.From)
	w.askFile(title, "Save", name, true, []string{".gif"}, func(path string) {
		ctx, stop := context.WithCancel(context.Background())
		w.stopFrames = stop
		film.Progress = func(n, all int) {
			if ctx.Err() == nil {
				w.say(fmt.Sprintf("Drawing the frames, %d of %d; Esc stops", n, all))
			}
		}
		w.teach.Write(ctx, path, film, func(err error) {
			stop()
			w.stopFrames = nil
			if errors.Is(err, context.Canceled) {
				w.say("Stopped; nothing was written.")
				return
			}
			w.saved(path, err)
		})
	})
}

// teachHand teaches as a left-hander works, or a right-hander, from now on.
func (w *window) teachHand(left bool) {
	w.set.LeftHanded = left
	w.teach.SetLeftHanded(left)
	w.teach.Redress()
	w.refreshMenu()
	w.keepSettings()
}
