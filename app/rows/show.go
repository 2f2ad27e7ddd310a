package rows

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model/colour"
	"strandway/model/diag"
)

// look is what a text on the page looks like, wherever it stands.
type look struct {
	text   string
	size   float32
	face   uint8
	colour color.NRGBA
}

const (
	sans uint8 = iota
	bold
	serif
	serifItalic
)

// stock keeps the texts of the last picture of the page: one that looks the same is moved
// rather than set anew.
type stock struct{ spare, used map[look][]*canvas.Text }

func (s *stock) turn() {
	s.spare = s.used
	s.used = map[look][]*canvas.Text{}
}

func (s *stock) take(l look, th *theme.Theme) *canvas.Text {
	var t *canvas.Text
	if old := s.spare[l]; len(old) > 0 {
		t, s.spare[l] = old[len(old)-1], old[:len(old)-1]
	} else {
		t = &canvas.Text{Text: l.text, TextSize: l.size, Color: l.colour}
		switch l.face {
		case bold:
			t.TextStyle.Bold = true
		case serif:
			t.FontSource = th.Serif(false)
		case serifItalic:
			t.FontSource = th.Serif(true)
		}
		t.Resize(t.MinSize())
	}
	s.used[l] = append(s.used[l], t)
	return t
}

// picture gathers the objects of the page in drawing order.
type picture struct {
	p       *Page
	k       theme.Tokens
	under   []fyne.CanvasObject // washes
	over    []fyne.CanvasObject // words, marks and the caret
	present []button
}

// show puts together what is in sight.
func (p *Page) show() {
	if p.Size().Width < 200 {
		return
	}
	p.stock.turn()
	d := &picture{p: p, k: p.th.Tokens()}
	view := p.Size().Height
	for i := range p.boxes {
		b := &p.boxes[i]
		if b.y+b.height < p.scroll || b.y > p.scroll+view {
			continue
		}
		d.box(b)
	}
	switch no := p.waiting(); {
	case p.s.Rows() == "":
		d.blank()
	case no != "":
		y := p.height - ghostHeight + 2
		d.textRight(no, numberRight, y, lineHeight, look{size: theme.Number, face: bold, colour: d.k.Edge})
		d.text(translation.Say("the next row: Enter or Tab"), textLeft, y, lineHeight, look{size: theme.Body, face: serifItalic, colour: d.k.Ink2})
	}
	d.caret()
	d.target()
	d.scrollBar()
	p.raster.Resize(p.Size())
	p.raster.Move(fyne.NewPos(0, 0))
	paper := canvas.NewRectangle(d.k.Paper)
	paper.Resize(p.Size())
	p.layer.Objects = append(append([]fyne.CanvasObject{paper}, d.under...), append([]fyne.CanvasObject{p.raster}, d.over...)...)
	p.buttons = d.present
	p.layer.Resize(p.Size())
	p.raster.Refresh()
	p.layer.Refresh()
	p.seen = p.caretSeen()
}

// text sets words; y is the top of a line of the page, in which they are centred.
func (d *picture) text(s string, x, y, line float32, l look) *canvas.Text {
	l.text = s
	t := d.p.stock.take(l, d.p.th)
	t.Move(fyne.NewPos(x, y-d.p.scroll+(line-t.MinSize().Height)/2))
	d.over = append(d.over, t)
	return t
}

func (d *picture) textRight(s string, right, y, line float32, l look) {
	l.text = s
	t := d.p.stock.take(l, d.p.th)
	size := t.MinSize()
	t.Move(fyne.NewPos(right-size.Width, y-d.p.scroll+(line-size.Height)/2))
	d.over = append(d.over, t)
}

func (d *picture) wash(x, y, w, h, radius float32, c color.Color) {
	r := canvas.NewRectangle(c)
	r.CornerRadius = radius
	r.Move(fyne.NewPos(x, y-d.p.scroll))
	r.Resize(fyne.NewSize(w, h))
	d.under = append(d.under, r)
}

func (d *picture) box(b *box) {
	p, k, width := d.p, d.k, d.p.Size().Width
	text := p.s.Rows()
	caret := p.s.Caret()
	inHand := caret.At >= b.span.Start && caret.At <= b.span.End
	worst := b.worst()

	washTop, washBottom := b.textTop-4, b.noteTop+4+noteLine*float32(len(b.standsOn))
	if len(b.notes) > 0 {
		last := b.notes[len(b.notes)-1]
		washBottom = last.y + noteLine*float32(len(last.lines)) + 6
		if last.mend {
			washBottom += buttonHeight + 6
		}
	}
	left, right := float32(washLeft), width-washMargin-4
	if b.loop {
		left, right = loopLeft+8, width-loopMargin-8
	}
	switch {
	case worst != nil && worst.Severity == diag.Fault:
		d.wash(left, washTop, right-left, washBottom-washTop, 5, k.FaultWash)
	case inHand:
		d.wash(left, washTop, right-left, washBottom-washTop, 5, k.Wash)
	}
	if p.holdsChoice(b) {
		d.wash(left+1, b.textTop+2, 3, lineHeight-4, 1.5, k.Accent)
	}
	d.chosenText(b)

	ink := k.Ink
	if b.unsure {
		ink = k.Ink2
	}
	number := look{size: theme.Number, face: bold, colour: ink}
	numberEnd := float32(numberRight)
	if len(b.number) > 3 && b.side == "" {
		numberEnd += 18 // a range of rows takes the side's place
	}
	d.textRight(b.number, numberEnd, b.textTop, lineHeight, number)
	if b.side != "" {
		d.text(b.side, sideLeft, b.textTop, lineHeight, look{size: theme.Small, colour: k.Ink2})
	}
	if b.tag != "" {
		d.textRight(translation.Say(b.tag), numberRight+16, b.textTop, lineHeight, look{size: theme.Small, colour: k.Ink2})
	}
	words := look{size: theme.Body, face: serif, colour: ink}
	if b.row < 0 {
		words = look{size: theme.Body, face: serifItalic, colour: k.Ink2}
	}
	for i, l := range b.lines {
		y := b.textTop + float32(i)*lineHeight
		if y+lineHeight < p.scroll || y > p.scroll+p.Size().Height {
			continue
		}
		s := text[l.start:l.end]
		if b.unfolded && i == 0 && b.span.Start+b.head > l.start {
			cut := min(b.span.Start+b.head-l.start, len(s))
			head := words
			head.colour = k.Accent
			d.text(s[:cut], textLeft, y, lineHeight, head)
			d.text(s[cut:], textLeft+p.scribe.serif(s[:cut]), y, lineHeight, words)
			continue
		}
		if strings.TrimSpace(s) != "" {
			d.text(s, textLeft, y, lineHeight, words)
		}
	}
	d.rewritten(b, text)
	if b.count != "" {
		d.textRight(b.count, width-countMargin, b.countRow, lineHeight, look{size: theme.Second, colour: k.Ink2})
	}
	if worst != nil && len(b.notes) == 0 {
		d.mark(worst.Severity, width-markMargin-7, b.textTop+float32(len(b.lines)-1)*lineHeight+3)
	}
	for i := range b.findings {
		d.underline(b, &b.findings[i])
	}
	for i, l := range b.standsOn {
		d.text(l, textLeft, b.noteTop+float32(i)*noteLine, noteLine, look{size: theme.Second, colour: k.Ink2})
	}
	for i := range b.notes {
		d.note(b, &b.notes[i])
	}
}

// holdsChoice reports whether a chosen stitch was made by the row.
func (p *Page) holdsChoice(b *box) bool {
	m := p.s.Made()
	if m == nil {
		return false
	}
	chosen := p.s.Chosen().Stitches
	if len(chosen) == 0 {
		return false
	}
	for _, w := range b.works {
		r := &m.Fabric().Rows[w]
		for _, id := range chosen {
			if id >= r.First && id < r.Last {
				return true
			}
		}
	}
	return false
}

// each calls f with the part of every line of the box that a stretch of the rows covers.
func (d *picture) each(b *box, s diag.Span, f func(x0, x1, y float32)) {
	text := d.p.s.Rows()
	for i, l := range b.lines {
		from, to := max(s.Start, l.start), min(s.End, l.end)
		if from > to || from == to && s.Len() > 0 {
			continue
		}
		x := textLeft + d.p.scribe.serif(text[l.start:from])
		f(x, x+d.p.scribe.serif(text[from:to]), b.textTop+float32(i)*lineHeight)
	}
}

// chosenText washes the chosen text and the word of the chosen stitch.
func (d *picture) chosenText(b *box) {
	accent := colour.Mix(d.k.Wash, d.k.Accent, .28)
	if s := d.p.s.Caret().Span(); s.Len() > 0 {
		d.each(b, s, func(x0, x1, y float32) { d.wash(x0, y, x1-x0, lineHeight, 2, accent) })
	}
	if c := d.p.s.Chosen(); len(c.Stitches) > 0 {
		if word, ok := d.p.s.WordOf(c.Lead); ok && word.Start >= b.span.Start && word.Start < b.span.End {
			d.each(b, word, func(x0, x1, y float32) {
				d.wash(x0-2, y+1, x1-x0+4, lineHeight-2, 3, accent)
				d.wash(x0-1, y+lineHeight-2, x1-x0+2, 1.5, 0, d.k.Accent)
			})
		}
	}
}

// underline draws the zigzag under the words a finding is about.
func (d *picture) underline(b *box, f *diag.Finding) {
	c := d.severity(f.Severity)
	if f.Severity == diag.Note {
		return
	}
	d.each(b, f.Span, func(x0, x1, y float32) {
		const step = 3
		y += lineHeight - 1.5 - d.p.scroll
		up := float32(0)
		for x := x0; x < x1; x += step {
			l := canvas.NewLine(c)
			l.StrokeWidth = 1.1
			l.Position1 = fyne.NewPos(x, y-up)
			up = 2.4 - up
			l.Position2 = fyne.NewPos(min(x+step, x1), y-up)
			d.over = append(d.over, l)
		}
	})
}

func (d *picture) severity(s diag.Severity) color.NRGBA {
	switch s {
	case diag.Fault:
		return d.k.Fault
	case diag.Doubt:
		return d.k.Caution
	}
	return d.k.Note
}

// mark is the sign of a finding's grade, told by shape as well as by colour.
func (d *picture) mark(s diag.Severity, x, y float32) {
	icon := canvas.NewImageFromResource(theme.Icon(markName(s), d.severity(s)))
	icon.Move(fyne.NewPos(x, y-d.p.scroll))
	icon.Resize(fyne.NewSize(16, 16))
	d.over = append(d.over, icon)
}

func markName(s diag.Severity) string {
	return [...]string{diag.Note: "note", diag.Doubt: "caution", diag.Fault: "fault"}[s]
}

// note is a finding's sentence under its row, with the mend as a button.
func (d *picture) note(b *box, n *note) {
	f := b.findings[n.finding]
	c := d.severity(f.Severity)
	d.mark(f.Severity, 52, n.y+1)
	for i, s := range n.lines {
		d.text(s, textLeft, n.y+float32(i)*noteLine, noteLine, look{size: theme.Second, colour: c})
	}
	if !n.mend {
		return
	}
	label := look{text: upperFirst(translation.Sentence(f.Mend.Label)), size: theme.Second, face: bold, colour: c}
	y := n.y + noteLine*float32(len(n.lines)) + 4
	w := d.p.scribe.second(label.text) + 30
	r := canvas.NewRectangle(d.k.Paper)
	r.StrokeColor, r.StrokeWidth, r.CornerRadius = c, 1.2, 6
	at := fyne.NewPos(textLeft, y-d.p.scroll)
	r.Move(at)
	r.Resize(fyne.NewSize(w, buttonHeight-2))
	d.over = append(d.over, r)
	d.text(label.text, textLeft+12, y-1, buttonHeight, label)
	d.present = append(d.present, button{at: at, size: fyne.NewSize(w, buttonHeight), mend: f})
}

func (d *picture) caret() {
	if !d.p.focus || d.p.s.Caret().Span().Len() > 0 {
		return
	}
	at := d.p.caretPoint(d.p.s.Caret().At)
	c := canvas.NewRectangle(d.k.Accent)
	c.Move(fyne.NewPos(at.X-1, at.Y-d.p.scroll+1))
	c.Resize(fyne.NewSize(2, lineHeight-2))
	d.over = append(d.over, c)
}

// blank is what an empty page says.
func (d *picture) blank() {
	italic := func(s string) float32 { return d.p.scribe.italic(s) }
	between := 0 // the rules of the page
	for _, s := range []string{
		translation.Say("Write your rows here, as you would print them."),
		translation.Say("The chart, the cloth and the counts appear beside them."),
		translation.Say("Begin with: With A, ch 21."),
	} {
		for _, l := range wrap(s, 0, len(s), d.p.Size().Width-textLeft-textMargin, italic, italic) {
			between++
			d.text(s[l.start:l.end], textLeft, topMargin+float32(between)*44-4, lineHeight, look{size: theme.Body, face: serifItalic, colour: d.k.Ink2})
		}
	}
}

// scrollBar shows how much of the rows is in sight.
func (d *picture) scrollBar() {
	view, all := d.p.Size().Height, d.p.height+40
	if all <= view {
		return
	}
	c := d.k.Edge
	c.A = 120
	bar := canvas.NewRectangle(c)
	bar.CornerRadius = 1.5
	length := max(view*view/all, 24)
	bar.Move(fyne.NewPos(d.p.Size().Width-5, d.p.scroll/(all-view)*(view-length)))
	bar.Resize(fyne.NewSize(3, length))
	d.over = append(d.over, bar)
}
