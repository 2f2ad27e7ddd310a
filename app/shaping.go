package app

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"strandway/app/session"
	"strandway/app/translation"
)

// askRepeat asks how often the chosen stitches are worked.
func (w *window) askRepeat() {
	w.ask(translation.Say("Work the chosen stitches how often in all?"), "2", translation.Say("Repeat"), func(text string) {
		n, err := strconv.Atoi(strings.TrimSpace(text))
		if err != nil {
			w.say(translation.Say("A number is wanted: how often the stitches are worked in all."))
			return
		}
		w.tell(w.s.Repeat(n))
	})
}

// showPlaces shows the places that the chosen stitches can be moved to.
func (w *window) showPlaces() {
	m := fyne.NewMenu("")
	for _, p := range session.Placings {
		m.Items = append(m.Items, fyne.NewMenuItem(translation.Say(p.Name), func() { w.tell(w.s.Place(p)) }))
	}
	pane := w.pair.Chart
	if w.win.Canvas().Focused() == w.pair.Cloth {
		pane = w.pair.Cloth
	}
	at := w.app.Driver().AbsolutePositionForObject(pane).AddXY(40, 40)
	if id := w.s.Chosen().Lead; w.hasChoice() {
		if place, ok := pane.PlaceOf(id); ok {
			at = place
		}
	}
	widget.ShowPopUpMenuAtPosition(m, w.win.Canvas(), at)
}

// copyStitches copies the chosen stitches of a picture as words, and reports whether there were any.
func (w *window) copyStitches() bool {
	if !w.pencilling() {
		return false
	}
	words, err := w.s.ChosenWords()
	w.tell(err)
	if err == nil {
		w.app.Clipboard().SetContent(words)
		w.say(translation.Fill("Copied: {{.Words}}", "Words", words))
	}
	return err == nil
}
