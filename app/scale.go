package app

import (
	"math"
	"os"
	"strconv"

	"fyne.io/fyne/v2"

	"strandway/app/settings"
	"strandway/app/translation"
)

// How large letters can be, and all that stands about them, 1 for the usual size.
const (
	leastScale = .9
	mostScale  = 1.6
)

// scaleVariable is where the toolkit looks for the scale.
const scaleVariable = "FYNE_SCALE"

// applyScale has the toolkit draw at the scale that is remembered, unless one was asked for from outside.
func applyScale(set *settings.Settings) {
	if set.Scale > 0 && os.Getenv(scaleVariable) == "" {
		setScale(set.Scale)
	}
}

func setScale(scale float32) {
	_ = os.Setenv(scaleVariable, strconv.FormatFloat(float64(scale), 'f', 1, 32)) // a name without = can always be set
}

// scaleLetters makes letters, and all that stands about them, larger or smaller at once.
func (w *window) scaleLetters(by float32) {
	now := w.set.Scale
	if now == 0 {
		now = 1
	}
	before := now
	now = max(leastScale, min(float32(math.Round(float64(now+by)*10)/10), mostScale))
	w.set.Scale = now
	setScale(now)
	w.app.Settings().SetTheme(w.th) // the toolkit looks for the scale again
	size := w.win.Canvas().Size()
	w.win.Resize(fyne.NewSize(size.Width*before/now, size.Height*before/now)) // the window stays as large as it is
	w.redress()
	w.keepSettings()
	w.say(translation.Fill("Letters at {{.N}} %", "N", int(math.Round(float64(now)*100))))
}
