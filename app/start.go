package app

import (
	"image/color"
	"os"
	"path/filepath"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model/colour"
	"strandway/model/pattern"
	"strandway/samples"
)

// beginning is one way to start a piece: a starter and how its card shows it.
type beginning struct {
	starter     string
	name, about string
	picture     func(d *control.Canvas, k theme.Tokens, x, y, w, h float32)
}

// beginnings are the ways to start, the page with no stitches last.
var beginnings = []beginning{
	{"flat", "Flat piece", "turned rows", flatPicture},
	{"rounds", "Rounds", "from a ring", roundPicture},
	{"edging", "Shell edging", "on a row of sc", shellPicture},
	{"blank", "Blank page", "no stitches", blankPicture},
}

const (
	cardHeight  = 178
	recentTall  = 54
	startMargin = 46
)

// drawStart draws the start page: ways to begin, files opened lately, and the samples.
func (w *window) drawStart(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	width := min(size.Width-2*startMargin, 820)
	left := float32(startMargin)
	var spots []control.Spot
	y := float32(38) - w.startScroll
	w.chapter(d, k, "Begin with", left, y)
	y += 36
	n := float32(len(beginnings))
	card := (width - 16*(n-1)) / n
	for i, b := range beginnings {
		x := left + float32(i)*(card+16)
		edge, line := k.Edge, float32(1.2)
		if i == 0 {
			edge, line = k.Accent, 2
		}
		d.Frame(x, y, card, cardHeight, 8, k.Paper, edge, line)
		b.picture(d, k, x+16, y+14, card-32, 104)
		d.Words(control.Fitted(translation.Say(b.name), theme.Body, true, card-24), x+14, y+136, theme.Body, true, k.Ink)
		d.Words(control.Fitted(translation.Say(b.about), theme.Second, false, card-24), x+14, y+157, theme.Second, false, k.Ink2)
		spots = append(spots, control.Spot{X: x, Y: y, W: card, H: cardHeight, Hint: b.name + ": " + b.about, Do: func() { w.begin(b) }})
	}
	y += cardHeight + 16
	mat := d.Button(k, "Make your first mat: six minutes", left, y, false, false, w.beginMat)
	spots = append(spots, mat)
	y += mat.H + 36
	if len(w.set.Recent) > 0 {
		w.chapter(d, k, "Open again", left, y)
		y += 26
		for i, r := range w.set.Recent {
			if i == 4 {
				break
			}
			spots = append(spots, w.line(d, k, left, y, width, r.Title, r.Tells+"   "+folderOf(r.Path), when(r.Opened, time.Now()), parsed(r.Yarns), func() { w.ifSettled(func() { w.open(r.Path) }) }))
			y += recentTall
		}
		y += 40
	}
	w.chapter(d, k, "From Marram Bay", left, y)
	y += 26
	for _, name := range samples.Names() {
		p, err := sample(name)
		if err != nil {
			continue
		}
		var yarns []color.NRGBA
		for _, yarn := range p.Yarns {
			if c, err := colour.Parse(yarn.Colour); err == nil {
				yarns = append(yarns, c)
			}
		}
		spots = append(spots, w.line(d, k, left, y, width, p.Title, yarnsTell(len(p.Yarns), len(p.Pieces)), "sample", yarns, func() { w.beginSample(name) }))
		y += recentTall
	}
	open := d.Button(k, "Open a file…", left, y+18, true, false, w.askOpen)
	d.Words("or drop a .strand file anywhere", open.X+open.W+18, y+34, theme.Second, false, k.Ink2)
	w.startTall = y + 70 + w.startScroll
	return append(spots, open)
}

// folderOf is the folder of a file, from the author's own folder on where it lies in that.
func folderOf(path string) string {
	folder := filepath.Dir(path)
	if home, err := os.UserHomeDir(); err == nil {
		if in, ok := strings.CutPrefix(folder, home); ok && (in == "" || in[0] == filepath.Separator) {
			return "~" + in
		}
	}
	return folder
}

// chapter sets a head of the start page in the printing face.
func (w *window) chapter(d *control.Canvas, k theme.Tokens, s string, x, y float32) {
	t := control.Text(translation.Say(s), theme.Chapter, false, k.Ink)
	t.FontSource = w.th.Serif(false)
	size := t.MinSize()
	d.Add(t, x, y-size.Height/2, size.Width, size.Height)
}

// line is a file to open: its stripes, its title, what is in it and when it was opened.
func (w *window) line(d *control.Canvas, k theme.Tokens, x, y, width float32, title, tells, when string, yarns []color.NRGBA, do func()) control.Spot {
	d.Rect(x, y, width, 1, 0, k.Line)
	d.Rect(x, y+recentTall, width, 1, 0, k.Line)
	stack := yarns
	for len(stack) > 0 && len(stack) < 6 {
		stack = append(stack, yarns...)
	}
	for i, c := range stack[:min(len(stack), 6)] {
		d.Rect(x, y+10+float32(i)*6, 46, 6, 0, c)
	}
	d.Words(control.Fitted(title, theme.Body, true, width-200), x+64, y+18, theme.Body, true, k.Ink)
	d.Words(control.Fitted(tells, theme.Second, false, width-200), x+64, y+38, theme.Second, false, k.Ink2)
	d.WordsRight(when, x+width, y+28, theme.Second, false, k.Ink2)
	return control.Spot{X: x - 8, Y: y + 2, W: width + 16, H: recentTall - 3, Hint: "open " + title, Do: do}
}

func parsed(hex []string) []color.NRGBA {
	var out []color.NRGBA
	for _, h := range hex {
		if c, err := colour.Parse(h); err == nil {
			out = append(out, c)
		}
	}
	return out
}

// when says when a file was opened, as one would say it.
func when(t, now time.Time) string {
	day := func(t time.Time) time.Time { return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, t.Location()) }
	switch days := int(day(now).Sub(day(t.In(now.Location()))).Hours()/24 + .5); {
	case days <= 0:
		return "today, " + t.Format("15:04")
	case days == 1:
		return "yesterday"
	case t.Year() == now.Year():
		return t.Format("2 January")
	}
	return t.Format("2 January 2006")
}

func sample(name string) (*pattern.Pattern, error) { return decoded(name, samples.Read) }

func starter(name string) (*pattern.Pattern, error) { return decoded(name, samples.Starter) }

func decoded(name string, read func(string) ([]byte, error)) (*pattern.Pattern, error) {
	src, err := read(name)
	if err != nil {
		return nil, err
	}
	return pattern.Decode(src, name+".strand")
}

// begin starts a piece.
func (w *window) begin(b beginning) {
	w.ifSettled(func() {
		if p, err := starter(b.starter); err == nil {
			w.beginWith(p)
		}
	})
}

// beginSample opens a sample as a pattern that has no file yet.
func (w *window) beginSample(name string) {
	w.ifSettled(func() {
		if p, err := sample(name); err == nil {
			w.beginWith(p)
		}
	})
}

func (w *window) beginWith(p *pattern.Pattern) {
	w.s.Begin(p)
	w.show(makeView)
	w.win.Canvas().Focus(w.page)
}

// scrollStart moves the start page under the wheel.
func (w *window) scrollStart(by float32) {
	w.startScroll = max(0, min(w.startScroll-by*2, w.startTall-w.start.Size().Height))
}
