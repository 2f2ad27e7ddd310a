package teach

import (
	"image/color"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model/steps"
)

// drawHead draws the head: what is seen, and how much one step is.
func (v *View) drawHead(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	x := d.Words(translation.Say("Step"), margin, 22, theme.Name, true, k.Ink)
	right := size.Width - margin
	var spots []control.Spot
	for _, c := range []struct {
		name string
		by   steps.By
	}{{"By stitch", steps.Stitch}, {"By row", steps.Row}} {
		c.name = translation.Say(c.name)
		w := control.Width(c.name, theme.Second, true) + 22
		right -= w
		if c.by == v.by {
			d.Frame(right, 9, w, 27, 5, k.Wash, k.Accent, 1.6)
			d.WordsMid(c.name, right+w/2, 22, theme.Second, true, k.Ink)
		} else {
			d.WordsMid(c.name, right+w/2, 22, theme.Second, false, k.Ink2)
		}
		spots = append([]control.Spot{{X: right, Y: 8, W: w, H: 29, Do: func() { v.SetBy(c.by); v.focus() }}}, spots...)
	}
	hand := translation.Say("Left-handed")
	w := control.Width(hand, theme.Second, true) + 22
	right -= w + 12
	if v.left {
		d.Frame(right, 9, w, 27, 5, k.Wash, k.Accent, 1.6)
	}
	d.WordsMid(hand, right+w/2, 22, theme.Second, v.left, k.Ink2)
	spots = append([]control.Spot{{X: right, Y: 8, W: w, H: 29, Do: func() { v.Hand(!v.left); v.focus() }}}, spots...)
	says := control.Fitted(translation.Say("what a camera sees, in the teaching colourway"), theme.Second, false, right-x-20)
	d.Words(says, x+10, 22, theme.Second, false, k.Ink2)
	return spots
}

// drawFoot draws what leads through the steps.
func (v *View) drawFoot(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	on := "Next stitch"
	if v.by == steps.Row {
		on = "Next row"
	}
	const y = 10
	back := d.Button(k, "Back", margin, y, false, false, func() { v.Walk(-1) })
	next := d.Button(k, on, back.X+back.W+8, y, true, false, func() { v.Walk(1) })
	save := d.Button(k, "Save frames…", size.Width-margin, y, false, true, func() {
		if v.Save != nil {
			v.Save()
		}
	})
	from := next.X + next.W + 16
	hint := control.Fitted(translation.Say("Page Up and Page Down, or a foot switch"), theme.Second, false, save.X-from-12)
	d.Words(hint, from, y+16, theme.Second, false, k.Ink2)
	return []control.Spot{back, next, save}
}

// TypedKey leads through the steps.
func (v *View) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyPageDown, fyne.KeyRight, fyne.KeySpace:
		v.Walk(1)
	case fyne.KeyPageUp, fyne.KeyLeft:
		v.Walk(-1)
	case fyne.KeyHome:
		v.GoTo(0)
	case fyne.KeyEnd:
		if st := v.Stage(); st != nil {
			v.Walk(st.Steps.Len())
		}
	default:
		if v.Keys != nil {
			v.Keys(e)
		}
	}
}

// TypedRune implements fyne.Focusable.
func (v *View) TypedRune(rune) {}

// FocusGained implements fyne.Focusable.
func (v *View) FocusGained() { v.ringed(true, v.th.Tokens().Accent) }

// FocusLost implements fyne.Focusable.
func (v *View) FocusLost() { v.ringed(false, v.th.Tokens().Line) }

func (v *View) ringed(on bool, c color.Color) {
	v.focused = on
	v.ring.StrokeColor = c
	v.ring.Refresh()
}

// Tapped gives the view the keys.
func (v *View) Tapped(*fyne.PointEvent) { v.focus() }

// focus gives the view the keys, so that they lead on after a button was clicked.
func (v *View) focus() {
	if c := fyne.CurrentApp().Driver().CanvasForObject(v); c != nil {
		c.Focus(v)
	}
}

// Tell says the present step in one line, for the status.
func (v *View) Tell() string {
	step, ok := v.Step()
	if !ok {
		return ""
	}
	return step.Where + ", " + step.Count + "; " + step.Says
}
