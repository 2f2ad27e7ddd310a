package app

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"

	"strandway/app/guide"
)

const aboutGuide = "guide"

// beginMat begins the walk through a newcomer's first mat, on a blank page in the real window.
func (w *window) beginMat() {
	w.ifSettled(func() {
		g, err := guide.Mat()
		p, err2 := starter("blank")
		if err != nil || err2 != nil {
			fyne.LogError("guide", fmt.Errorf("%w %w", err, err2))
			return
		}
		p.Title = "First mat"
		w.beginWith(p)
		w.guide = g
		w.seeGuide("")
	})
}

// seeGuide shows the step to do now, after an action was done or something was written.
func (w *window) seeGuide(did string) {
	g := w.guide
	if g == nil {
		return
	}
	p := w.s.Pattern()
	g.See(guide.State{Rows: w.s.Rows(), Did: did, Yarns: len(p.Yarns), Colourways: len(p.Colourways), Saved: w.s.Path() != "" && !w.s.Changed()})
	if g.Done() {
		w.guide = nil
		w.notify(notice{about: aboutGuide, says: "That was all: a mat in two yarns, charted, and in a file of yours. F1 lists every key.", answers: []choice{{label: "Go on", first: true, do: func() {}}}})
		return
	}
	step, number, of := g.Step()
	w.notify(notice{about: aboutGuide, says: fmt.Sprintf("%d of %d   %s", number, of, step.Say), press: step.Press, answers: []choice{{label: "Leave", do: func() { w.guide = nil }}}})
}

// leaveGuide ends the walk, and leaves what was made; it reports whether there was one, or its last word.
func (w *window) leaveGuide() bool {
	told := slices.ContainsFunc(w.notices, func(n notice) bool { return n.about == aboutGuide })
	w.guide = nil
	w.dismiss(aboutGuide)
	return told
}
