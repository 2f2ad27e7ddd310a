package app

import (
	"cmp"
	"image/color"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model/diag"
	"strandway/model/fabric"
)

// drawHead draws the head of the rows: the piece, its size and terms, and how many rows it has.
func (w *window) drawHead(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	p := w.s.Pattern()
	const y = 22
	rows := ""
	if m := w.s.Made(); m != nil {
		rows = counted(lastRow(m.Fabric()))
	}
	right := size.Width - 16
	if rows != "" {
		right = d.WordsRight(rows, right, y, theme.Second, false, k.Ink2) - 12
	}
	name := p.Pieces[w.s.Piece()].Name
	x := d.Words(control.Fitted(name, theme.Name, true, right-60), 16, y, theme.Name, true, k.Ink)
	if len(p.Pieces) > 1 {
		x = d.More(x+6, y, k.Ink)
	}
	var about []string
	if w.s.Size() < len(p.Sizes) {
		about = append(about, p.Sizes[w.s.Size()].Name)
	}
	about = append([]string{translation.Say(p.Terms + " terms")}, about...)
	words := control.Fitted(strings.Join(about, " · "), theme.Second, false, right-x-30)
	end := d.Words(words, x+12, y+1, theme.Second, false, k.Ink2)
	if len(p.Sizes) > 1 {
		end = d.More(end+5, y+1, k.Ink2)
	}
	terms := control.Width(translation.Say(p.Terms+" terms"), theme.Second, false)
	spots := []control.Spot{{X: x + 8, Y: 6, W: terms + 8, H: 32, Hint: translation.Fill("In {{.Terms}} terms", "Terms", w.otherTerms()) + " (F7)", Do: w.changeTerms}}
	if len(p.Pieces) > 1 {
		spots = append(spots, control.Spot{X: 8, Y: 6, W: x, H: 32, Hint: "another piece (Ctrl+Tab)", Do: w.nextPiece})
	}
	if len(p.Sizes) > 1 {
		spots = append(spots, control.Spot{X: x + 6, Y: 6, W: end - x, H: 32, Hint: "another size", Do: w.nextSize})
	}
	return spots
}

// lastRow is the last row that was worked.
func lastRow(f *fabric.Fabric) *fabric.Row { return &f.Rows[len(f.Rows)-1] }

// counted says how many rows or rounds there are.
func counted(last *fabric.Row) string {
	one, many := "1 row", "{{.N}} rows"
	if last.Shape != fabric.Flat {
		one, many = "1 round", "{{.N}} rounds"
	}
	switch last.No {
	case 0:
		return ""
	case 1:
		return translation.Say(one)
	}
	return translation.Fill(many, "N", last.No)
}

// drawTabs draws the views to choose from; one that has nothing to show yet is not there.
func (w *window) drawTabs(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Desk)
	x := float32(16)
	var spots []control.Spot
	for _, t := range []struct {
		view view
		name string
		icon string
		keys string
	}{{makeView, "Make", "make", "Ctrl+1"}, {colourView, "Colour", "colour", "Ctrl+2"}, {strandsView, "Strands", "strands", "Ctrl+3"}, {sizesView, "Sizes", "sizes", "Ctrl+4"}, {teachView, "Teach", "teach", "Ctrl+5"}} {
		name := translation.Say(t.name)
		width := tabWidth(name)
		ink := k.Ink2
		if t.view == w.view {
			ink = k.Ink
			d.Rect(x, 0, width, size.Height+1, 0, k.Paper)
			d.Rect(x, 0, width, 2.5, 0, k.Accent)
			d.Rect(x, 0, 1, size.Height, 0, k.Line)
			d.Rect(x+width-1, 0, 1, size.Height, 0, k.Line)
		}
		icon := ink
		if t.view == w.view {
			icon = k.Accent
		}
		d.Icon(theme.Icon(t.icon, icon), x+10, 12, 20)
		d.Words(name, x+38, 22, theme.Body, t.view == w.view, ink)
		spots = append(spots, control.Spot{X: x, Y: 0, W: width, H: size.Height, Hint: name + " (" + t.keys + ")", Do: func() { w.show(t.view) }})
		x += width + 4
	}
	return spots
}

// tabWidth is how wide the tab of a view is, px.
func tabWidth(name string) float32 { return control.Width(name, theme.Body, true) + 54 }

// drawFindings lists what there is to say about the piece.
func (w *window) drawFindings(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	var list diag.List
	if w.s.Rows() != "" { // an empty page lacks nothing yet
		list = w.s.Findings()
	}
	slices.SortStableFunc(list, func(a, b diag.Finding) int { return cmp.Compare(b.Severity, a.Severity) })
	x := d.Words(translation.Say("Findings"), 16, 20, theme.Body, true, k.Ink)
	d.Words(tally(list), x+10, 20, theme.Second, false, k.Ink2)
	var spots []control.Spot
	y := float32(40)
	w.top = max(0, min(w.top, len(list)-1))
	for i := w.top; i < len(list) && y < size.Height-20; i++ {
		f := list[i]
		c := severityColour(k, f.Severity)
		right := size.Width - 16
		d.Icon(theme.Icon(severityIcon(f.Severity), c), 16, y+1, 16)
		if f.Mend != nil {
			label := upperFirst(translation.Sentence(f.Mend.Label))
			bw := control.Width(label, theme.Second, true) + 22
			d.Frame(right-bw, y-2, bw, 26, 6, k.Paper, k.Accent, 1.2)
			d.WordsMid(label, right-bw/2, y+11, theme.Second, true, k.Accent)
			spots = append(spots, control.Spot{X: right - bw, Y: y - 2, W: bw, H: 26, Hint: "write it (Ctrl+.)", Do: func() { w.s.Mend(f) }})
			right -= bw + 10
		}
		for n, l := range wrapped(sentence(f), theme.Second, right-42) {
			if y > size.Height-14 {
				break
			}
			if n == 0 {
				spots = append(spots, control.Spot{X: 10, Y: y - 3, W: right - 12, H: 24, Hint: "show it in the rows", Do: func() { w.showFinding(f) }})
			}
			d.Words(l, 42, y+9, theme.Second, false, k.Ink)
			y += 19
		}
		y += 9
	}
	return spots
}

// showFinding puts the caret to a finding's words.
func (w *window) showFinding(f diag.Finding) {
	if f.Span.Len() > 0 {
		w.s.PutCaret(f.Span.Start, false)
		w.win.Canvas().Focus(w.page)
	}
}

func severityColour(k theme.Tokens, s diag.Severity) color.NRGBA {
	switch s {
	case diag.Fault:
		return k.Fault
	case diag.Doubt:
		return k.Caution
	}
	return k.Note
}

func severityIcon(s diag.Severity) string {
	return [...]string{diag.Note: "note", diag.Doubt: "caution", diag.Fault: "fault"}[s]
}

// tally counts findings by grade.
func tally(list diag.List) string {
	n := map[diag.Severity]int{}
	for _, f := range list {
		n[f.Severity]++
	}
	if len(list) == 0 {
		return translation.Say("none")
	}
	var parts []string
	add := func(n int, one, many string) {
		switch n {
		case 0:
		case 1:
			parts = append(parts, translation.Fill(one, "N", n))
		default:
			parts = append(parts, translation.Fill(many, "N", n))
		}
	}
	add(n[diag.Fault], "1 fault", "{{.N}} faults")
	add(n[diag.Doubt], "{{.N}} to think about", "{{.N}} to think about")
	add(n[diag.Note], "1 note", "{{.N}} notes")
	if n[diag.Fault] == 0 {
		parts = append(parts, translation.Say("no faults"))
	}
	return strings.Join(parts, ", ")
}

// wrapped breaks a sentence into lines.
func wrapped(s string, size, width float32) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		if line != "" && control.Width(line+" "+word, size, false) > width {
			lines = append(lines, line)
			line = word
			continue
		}
		line = strings.TrimSpace(line + " " + word)
	}
	return append(lines, line)
}

// upperFirst begins a sentence.
func upperFirst(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

// drawStatus draws the status line: where the hook is, in words.
func (w *window) drawStatus(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Well)
	const y = 14
	right := size.Width - 16
	saved := "Saved"
	switch {
	case w.s.Changed():
		saved = "Not saved"
	case w.s.Path() == "":
		saved = "New"
	}
	right = d.WordsRight(translation.Say(saved), right, y, theme.Second, false, k.Ink2) - 24
	var spots []control.Spot
	if !w.findings.Visible() && w.s.Rows() != "" {
		if list := w.s.Findings(); len(list) > 0 {
			worst, _ := list.Worst()
			end := right
			right = d.WordsRight(tally(list), right, y, theme.Second, false, severityColour(k, worst)) - 22
			d.Icon(theme.Icon(severityIcon(worst), severityColour(k, worst)), right, y-8, 16)
			spots = append(spots, control.Spot{X: right, Y: 0, W: end - right, H: size.Height, Hint: "next finding (F8)", Do: func() { w.nextFinding(1) }})
			right -= 20
		}
	}
	if cm := w.finished(); cm != "" {
		right = d.WordsRight(cm, right, y, theme.Second, false, k.Ink2) - 24
	}
	if m := w.metres(); m != "" && size.Width > 900 {
		right = d.WordsRight(m, right, y, theme.Second, false, k.Ink2) - 24
	}
	says := w.where()
	if w.hint != "" {
		says = w.hint
	}
	if w.said != "" {
		says = w.said
	}
	d.Words(control.Fitted(says, theme.Second, false, right-16), 16, y, theme.Second, false, k.Ink)
	return spots
}
