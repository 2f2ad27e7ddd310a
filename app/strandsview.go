package app

import (
	"fmt"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/chart/display"
	"strandway/chart/schematic"
	"strandway/model/edit"
	"strandway/model/fabric"
	"strandway/model/strand"
)

// strandsSight is what the Strands view keeps between two drawings.
type strandsSight struct {
	leaf    leaf
	list    *display.List
	of      any  // what list was drawn from
	other   bool // the other way is shown
	colours string
}

// drawStrands draws every yarn's way up the edges, and beside it who waits where and whether there is a better way.
func (w *window) drawStrands(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	figures, r, m := w.figures(), w.reckoned(), w.s.Made()
	x := d.Words("Strands", 16, 22, theme.Body, true, k.Ink)
	if figures == nil {
		d.Words("the rows are being worked", x+10, 22, theme.Second, false, k.Ink2)
		return nil
	}
	s := &w.strandsSeen
	if r == nil || r.planned == nil || r.pattern != w.s.Pattern() {
		s.other = false
	}
	worked, of := m.Work, figures
	about := "the piece from the right side; every yarn's way up its edges"
	if s.other {
		worked, of = r.planned, r.figures
		about = "another way, not written yet"
	}
	side := min(float32(310), size.Width*.42)
	left := size.Width - side
	d.Words(control.Fitted(about, theme.Second, false, left-x-20), x+10, 22, theme.Second, false, k.Ink2)
	piece := w.s.Piece()
	if way := w.s.Colourway(); s.of != of || s.colours != way || s.list == nil {
		s.of, s.colours = of, way
		s.list = schematic.Strands(worked.Pieces[piece].Fabric, &of.Pieces[piece].Strands, of.Pieces[piece].Size.RowCM,
			schematic.StrandOptions{Title: worked.Pieces[piece].Piece.Name, Inks: worked.YarnColours(piece, way)})
	}
	s.leaf.draw(d, k, s.list, 16, 44, left-32, size.Height-58, w.win.Canvas().Scale(), false)
	d.Rect(left, 40, 1, size.Height-50, 0, k.Line)
	return w.drawWaiting(d, k, left+16, side-32)
}

// drawWaiting says of each yarn where it waits and how it is carried, and offers the other way.
func (w *window) drawWaiting(d *control.Canvas, k theme.Tokens, x, width float32) []control.Spot {
	figures, r, m := w.figures(), w.reckoned(), w.s.Made()
	strands := &figures.Pieces[w.s.Piece()].Strands
	rows := m.Fabric().Rows
	y := float32(56)
	lines := func(s string, size float32, bold bool, step float32) {
		for _, l := range wrapped(s, size, width) {
			d.Words(l, x, y, size, bold, k.Ink2)
			y += step
		}
	}
	for i := range strands.ByYarn {
		of := &strands.ByYarn[i]
		yarn, known := w.s.Pattern().Yarn(of.Letter)
		if known {
			w.ball(d, x, y-11, 24, w.shade(*yarn), k)
		}
		name := of.Letter
		if known {
			name += "  " + w.shadeName(*yarn)
		}
		d.Words(control.Fitted(name, theme.Body, true, width-36), x+36, y-3, theme.Body, true, k.Ink)
		y += 17
		for _, says := range []string{endsAt(of, len(rows)-1, rowLabel(rows)), carried(of, figures.Known())} {
			if says == "" {
				continue
			}
			for _, l := range wrapped(says, theme.Second, width-36) {
				d.Words(l, x+36, y, theme.Second, false, k.Ink2)
				y += 18
			}
		}
		y += 14
	}
	d.Rect(x, y-10, width, 1, 0, k.Line)
	y += 10
	d.Words("As it is", x, y, theme.Body, true, k.Ink)
	y += 21
	lines(strandsSum(strands, figures.Known()), theme.Second, false, 18)
	y += 12
	if r == nil {
		lines("another way is being looked for…", theme.Second, false, 18)
		return nil
	}
	var spots []control.Spot
	switch {
	case r.plan == nil:
		lines(spoken(r.why), theme.Second, false, 18)
	case !r.plan.Better():
		lines("There is no way with fewer cuts or shorter floats.", theme.Second, false, 18)
	default:
		d.Words("Another way", x, y, theme.Body, true, k.Ink)
		y += 21
		lines(planSum(r.plan.Present, r.plan.Best, figures.Known()), theme.Second, false, 18)
		y += 6
		label := "Show it"
		if w.strandsSeen.other {
			label = "Show it as it is"
		}
		show := d.Button(k, label, x, y, true, false, w.showOtherWay)
		use := d.Button(k, "Use it", show.X+show.W+10, y, false, false, w.useOtherWay)
		show.Hint, use.Hint = "draw the other way, without writing it", "write the rows so; one step of undo"
		spots = append(spots, show, use)
		y += 48
	}
	y += 8
	d.Rect(x, y, width, 1, 0, k.Line)
	y += 24
	limit := fmt.Sprintf("%g cm", m.Work.Limits().FloatCM)
	d.Words("Longest float you allow", x, y, theme.Second, false, k.Ink)
	bw := control.Width(limit, theme.Body, true) + 30
	allow := d.Button(k, limit, x+width-bw, y-16, false, false, w.askFloat)
	allow.Hint = "another limit; a longer float becomes a finding"
	return append(spots, allow)
}

func rowLabel(rows []fabric.Row) func(int) string {
	return func(r int) string { return rows[r].Label }
}

// endsAt says where a yarn is at the end of the piece.
func endsAt(s *strand.Strand, last int, label func(int) string) string {
	if len(s.Rows) == 0 {
		return "not worked yet"
	}
	at := s.Rows[len(s.Rows)-1]
	if at == last {
		return "in hand at the end of " + label(at)
	}
	return "last worked in " + label(at)
}

// carried says how often a yarn is joined, carried and cut.
func carried(s *strand.Strand, known bool) string {
	longest := 0.0
	for _, f := range s.Floats {
		longest = max(longest, f.CM)
	}
	says := plural(len(s.Joins), "join") + ", " + plural(len(s.Floats), "float")
	if known && longest > 0 {
		says += fmt.Sprintf(", longest %.1f cm", longest)
	}
	return says
}

func strandsSum(s *strand.Strands, known bool) string {
	says := plural(s.Cut(), "cut") + ", " + plural(s.Ends, "end") + " to weave in"
	if known && s.Longest.CM > 0 {
		says += fmt.Sprintf(", longest float %.1f cm", s.Longest.CM)
	}
	return upperFirst(says) + "."
}

// planSum says what a plan is better in.
func planSum(now, best strand.Plan, known bool) string {
	says := plural(best.Cuts, "cut") + " where there would be " + plural(now.Cuts, "cut")
	if known {
		says += fmt.Sprintf(", longest float %.1f cm", best.Longest)
	}
	if best.Unturned > 0 {
		says += "; " + plural(best.Unturned, "row") + " begun without turning"
	}
	return upperFirst(says) + "."
}

// plural is a number with its noun: "no cuts", "1 cut", "3 cuts".
func plural(n int, noun string) string {
	switch n {
	case 0:
		return "no " + noun + "s"
	case 1:
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// canReplan reports whether there is another way that is better than the rows as they are.
func (w *window) canReplan() bool {
	r := w.reckoning
	return r != nil && r.planned != nil && r.pattern == w.s.Pattern() && r.piece == w.s.Piece()
}

func (w *window) showOtherWay() {
	if w.canReplan() {
		w.show(strandsView)
		w.strandsSeen.other = !w.strandsSeen.other
		w.strands.Redraw()
	}
}

func (w *window) useOtherWay() {
	if w.canReplan() {
		rows := w.reckoning.plan.Rows
		w.s.Rewrite("Another way", rows, min(w.s.Caret().At, len(rows)))
		w.say("The rows are written the other way; Ctrl+Z takes it back.")
	}
}

// askFloat asks for the longest float up an edge that raises no finding.
func (w *window) askFloat() {
	now := strconv.FormatFloat(w.s.Pattern().FloatLimitCM, 'f', -1, 64)
	if m := w.s.Made(); m != nil {
		now = strconv.FormatFloat(m.Work.Limits().FloatCM, 'f', -1, 64)
	}
	w.ask("Longest float you allow, in cm", now, "Use it", func(text string) {
		cm, err := number(text)
		if err != nil || cm <= 0 || cm > 100 {
			w.say("A float has a length in cm, as in 2.5.")
			return
		}
		w.s.Do("Longest float", func(now edit.State) edit.State {
			p := *now.Pattern
			p.FloatLimitCM = cm
			now.Pattern = &p
			return now
		})
	})
}

// number reads a decimal number, with a point or a comma.
func number(s string) (float64, error) {
	return strconv.ParseFloat(strings.ReplaceAll(strings.TrimSpace(s), ",", "."), 64)
}
