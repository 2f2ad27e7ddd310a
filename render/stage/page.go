package stage

import (
	"image/color"
	"strings"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/text"
	"strandway/model/colour"
	"strandway/model/diag"
	"strandway/model/steps"
)

// The stage's colours: those of the window when it is light.
var (
	paper  = color.NRGBA{0xFB, 0xF8, 0xF2, 255}
	line   = color.NRGBA{0xD5, 0xCA, 0xB8, 255}
	edge   = color.NRGBA{0x8A, 0x7F, 0x6F, 255}
	ink    = color.NRGBA{0x2B, 0x26, 0x22, 255}
	ink2   = color.NRGBA{0x62, 0x59, 0x4E, 255}
	accent = color.NRGBA{0x17, 0x64, 0x5C, 255}
	wash   = color.NRGBA{0xDC, 0xEA, 0xE5, 255}
)

// writer puts words on the page.
type writer struct{ l *display.List }

func (w writer) words(x, y float64, face display.Face, size float64, c color.NRGBA, s string) (end float64) {
	w.l.Items = append(w.l.Items, display.Text{X: x, Y: y, Size: size, Face: face, Fill: c, Text: s})
	return x + text.Width(face, s, size)
}

// paragraph sets words in lines and gives the baseline after the last of them.
func (w writer) paragraph(x, y, width, leading float64, most int, face display.Face, size float64, c color.NRGBA, s string) float64 {
	for i, l := range lines(s, face, size, width) {
		if i == most {
			break
		}
		words := s[l.Start:l.End]
		if i == most-1 && l.End < len(s) {
			words = strings.TrimRight(words, " ,;") + " …"
		}
		w.words(x, y, face, size, c, words)
		y += leading
	}
	return y
}

// lines breaks words into lines of a width.
func lines(s string, face display.Face, size, width float64) []diag.Span {
	var out []diag.Span
	start, end := 0, 0 // of the line as far as it is known to fit
	for i := 0; i <= len(s); i++ {
		if i < len(s) && s[i] != ' ' && s[i] != '\n' {
			continue
		}
		if end > start && text.Width(face, s[start:i], size) > width {
			out = append(out, diag.Span{Start: start, End: end})
			start = end + 1
		}
		end = i
		if i < len(s) && s[i] == '\n' {
			out = append(out, diag.Span{Start: start, End: end})
			start, end = i+1, i+1
		}
	}
	if start < len(s) {
		out = append(out, diag.Span{Start: start, End: len(s)})
	}
	return out
}

// Where the parts of the stage stand.
const (
	margin     = 32
	rowsWidth  = 388
	footTop    = 500
	rowsBottom = 486
)

// page is all of the stage but the pictures.
func (s *Stage) page(step steps.Step) *display.List {
	w := writer{&display.List{Width: Width, Height: Height, Background: paper}}
	s.rows(w, step)
	s.foot(w, step)
	return w.l
}

// foot is the sentence with what stands round it.
func (s *Stage) foot(w writer, step steps.Step) {
	row := &s.f.Rows[step.Row]
	w.bar(margin, footTop, Width-2*margin, line)
	if n := row.Last - row.First; n > 0 {
		w.bar(margin, footTop, (Width-2*margin)*float64(step.Last-row.First)/float64(n), accent)
	}
	x := w.words(margin, footTop+34, display.SansBold, 18, ink, step.Where)
	about := step.Count
	if step.Repeat != "" {
		about += "  ·  " + step.Repeat
	}
	w.words(x+16, footTop+34, display.Sans, 16, ink2, about)
	const width = Width - 2*margin
	y := w.paragraph(margin, footTop+74, width, 32, 3, display.Serif, 23, ink, step.Says)
	if step.How != "" {
		w.paragraph(margin, y-2, width, 25, 2, display.Serif, 17, ink2, step.How)
	}
	w.words(margin, Height-24, display.SerifItalic, 18, ink2, step.Next)
}

// bar is a thin line along the stage.
func (w writer) bar(x, y, width float64, c color.NRGBA) {
	w.l.Items = append(w.l.Items, frame(box(x, y, x+width, y+4), 2, c, c, 0))
}

// rows are the row in hand with its word lit, and those before and after it.
func (s *Stage) rows(w writer, step steps.Step) {
	y := 44.
	if s.o.Title != "" {
		w.words(margin, y, display.Sans, 15, ink2, s.o.Title)
		y += 34
	}
	if step.Row > 0 {
		y = s.neighbour(w, step.Row-1, y, 2) + 10
	}
	y += 6
	s.yarn(w, step.Row, margin+9, y-6)
	w.words(margin+28, y, display.SansBold, 17, ink, s.f.Rows[step.Row].Label)
	y = s.inHand(w, step, y+30) + 14
	if step.Row+1 < len(s.f.Rows) && y < rowsBottom-40 {
		s.neighbour(w, step.Row+1, y, min(3, int((rowsBottom-y)/21)))
	}
}

// neighbour is a row beside the one in hand, in few lines.
func (s *Stage) neighbour(w writer, row int, y float64, most int) float64 {
	label := s.label(row)
	at := s.Steps.Text(row)
	face, size := display.Serif, 15.
	return w.paragraph(margin, y, rowsWidth, 21, most, face, size, ink2, label+": "+s.text[at.Start:at.End])
}

// label names a row; a foundation's label is a word in a sentence.
func (s *Stage) label(row int) string {
	l := s.f.Rows[row].Label
	return strings.ToUpper(l[:min(1, len(l))]) + l[min(1, len(l)):]
}

// yarn is a ball in the row's colour.
func (s *Stage) yarn(w writer, row int, x, y float64) {
	i := int(s.f.Rows[row].Yarn)
	if i >= len(s.o.Yarns) {
		return
	}
	const r = 9
	w.l.Items = append(w.l.Items, frame(box(x-r, y-r, x+r, y+r), r, s.o.Yarns[i].Colour, edge, 1.2))
	if i < len(s.f.Yarns) && len(s.f.Yarns) > 1 {
		letter := s.f.Yarns[i]
		on := color.NRGBA{255, 255, 255, 255}
		if c := s.o.Yarns[i].Colour; colour.Contrast(c, on) < colour.Contrast(c, ink) {
			on = ink
		}
		w.l.Items = append(w.l.Items, display.Text{X: x, Y: y + 4, Size: 11, Anchor: display.Middle, Face: display.SansBold, Fill: on, Text: letter})
	}
}

// inHand is the row in hand. Of a long row the lines about the word are shown.
func (s *Stage) inHand(w writer, step steps.Step, y float64) float64 {
	const size, leading = 19, 28
	row := s.text[step.Text.Start:step.Text.End]
	set := lines(row, display.Serif, size, rowsWidth)
	word := diag.Span{Start: step.Word.Start - step.Text.Start, End: step.Word.End - step.Text.Start}
	first, last := 0, len(set)
	if most := max(3, int((rowsBottom-20-y)/leading)); last > most {
		for first+most < last && set[first+most/2].End < word.Start {
			first++
		}
		last = first + most
	}
	for i := first; i < last; i++ {
		l := set[i]
		if from, to := max(l.Start, word.Start), min(l.End, word.End); from < to && s.Steps.By == steps.Stitch {
			x0 := margin + text.Width(display.Serif, row[l.Start:from], size)
			x1 := margin + text.Width(display.Serif, row[l.Start:to], size)
			w.l.Items = append(w.l.Items, frame(box(x0-4, y-20, x1+4, y+7), 5, wash, accent, 1.4))
		}
		words := row[l.Start:l.End]
		if i == first && first > 0 {
			words = "… " + words
		}
		if i == last-1 && last < len(set) {
			words += " …"
		}
		w.words(margin, y, display.Serif, size, ink, words)
		y += leading
	}
	return y
}

// captions name the two pictures.
func (s *Stage) captions(p panes) *display.List {
	l := &display.List{Width: Width, Height: Height}
	for _, c := range []struct {
		name string
		pane geom.Box
	}{{"Chart", p.chart}, {"Cloth, right side", p.cloth}} {
		l.Items = append(l.Items, frame(c.pane, 8, color.NRGBA{}, line, 1.2), display.Text{
			X: c.pane.Min.X + 12, Y: c.pane.Min.Y + 22, Size: 13, Face: display.Sans, Fill: ink2, Halo: paper, Text: c.name})
	}
	return l
}
