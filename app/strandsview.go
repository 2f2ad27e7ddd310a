package app

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/chart/display"
	"strandway/chart/schematic"
	"strandway/model"
	"strandway/model/edit"
	"strandway/model/fabric"
	"strandway/model/strand"
)

// strandsSight is what the Strands view keeps between two drawings.
type strandsSight struct {
	now, then strandsLeaf // as it is, and another way
	other     bool        // the other way is shown
}

// strandsLeaf is one picture of strands.
type strandsLeaf struct {
	leaf leaf
	list *display.List
	of   strandsKey
}

// strandsKey is what a picture of strands was drawn from.
type strandsKey struct {
	figures *model.Figures
	way     string
	narrow  bool
}

// besideLeast is the least width in px in which both ways stand side by side.
const besideLeast = 460

// drawStrands draws every yarn's way up the edges, and beside it who waits where and whether there is a better way.
func (w *window) drawStrands(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	figures, r, m := w.figures(), w.reckoned(), w.s.Made()
	x := d.Words(translation.Say("Strands"), 16, 22, theme.Body, true, k.Ink)
	if figures == nil {
		d.Words(translation.Say("the rows are being worked"), x+10, 22, theme.Second, false, k.Ink2)
		return nil
	}
	s := &w.strandsSeen
	s.other = s.other && w.canReplan()
	side := min(float32(310), size.Width*.42)
	left := size.Width - side
	about := translation.Say("the piece from the right side; every yarn's way up its edges")
	if s.other {
		about = translation.Say("another way, not written yet")
	}
	d.Words(control.Fitted(about, theme.Second, false, left-x-20), x+10, 22, theme.Second, false, k.Ink2)
	const top = 44
	x, width, high := float32(16), left-32, size.Height-58
	switch {
	case s.other && width >= besideLeast:
		half := (width - 16) / 2
		w.drawLeaf(d, k, &s.now, m.Work, figures, translation.Say("As it is"), true, x, top, half, high)
		w.drawLeaf(d, k, &s.then, r.planned, r.figures, translation.Say("Another way"), true, x+half+16, top, half, high)
	case s.other:
		w.drawLeaf(d, k, &s.then, r.planned, r.figures, translation.Say("Another way"), false, x, top, width, high)
	default:
		w.drawLeaf(d, k, &s.now, m.Work, figures, "", false, x, top, width, high)
	}
	d.Rect(left, 40, 1, size.Height-50, 0, k.Line)
	return w.drawWaiting(d, k, left+16, side-32)
}

// drawLeaf draws the strands of one way to work the piece.
func (w *window) drawLeaf(d *control.Canvas, k theme.Tokens, l *strandsLeaf, worked *model.Worked, of *model.Figures, title string, narrow bool, x, y, width, height float32) {
	piece, way := w.s.Piece(), w.s.Colourway()
	if key := (strandsKey{of, way, narrow}); l.of != key || l.list == nil {
		l.of = key
		if title == "" {
			title = worked.Pieces[piece].Piece.Name
		}
		l.list = schematic.Strands(worked.Pieces[piece].Fabric, &of.Pieces[piece].Strands, of.Pieces[piece].Size.RowCM,
			schematic.StrandOptions{Title: title, Inks: worked.YarnColours(piece, way), Narrow: narrow})
	}
	l.leaf.draw(d, k, l.list, x, y, width, height, w.win.Canvas().Scale(), false)
}

// scrollStrands scrolls the pictures under the wheel, both alike.
func (w *window) scrollStrands(by float32) {
	w.strandsSeen.now.leaf.move(by)
	w.strandsSeen.then.leaf.move(by)
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
		at := len(rows) - 1
		if row, ok := w.rowInHand(); ok {
			at = row
		}
		for _, says := range []string{isAt(strands, i, at, rowLabel(rows), figures.Known()), carried(of, figures.Known())} {
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
	d.Words(translation.Say("As it is"), x, y, theme.Body, true, k.Ink)
	y += 21
	lines(strandsSum(strands, figures.Known()), theme.Second, false, 18)
	y += 12
	if r == nil {
		lines(translation.Say("another way is being looked for…"), theme.Second, false, 18)
		return nil
	}
	var spots []control.Spot
	switch {
	case r.replan == nil:
		lines(spoken(r.why), theme.Second, false, 18)
	case !r.replan.Better():
		lines(translation.Say("There is no way with fewer cuts or shorter floats."), theme.Second, false, 18)
	default:
		d.Words(translation.Say("Another way"), x, y, theme.Body, true, k.Ink)
		y += 21
		lines(planSum(r.replan.Present, r.replan.Best, figures.Known()), theme.Second, false, 18)
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
	d.Words(translation.Say("Longest float you allow"), x, y, theme.Second, false, k.Ink)
	bw := control.Width(limit, theme.Body, true) + 30
	allow := d.Button(k, limit, x+width-bw, y-16, false, false, w.askFloat)
	allow.Hint = "another limit; a longer float becomes a finding"
	baby := w.drawBaby(d, k, x, y+36, width)
	return append(spots, allow, baby)
}

// drawBaby draws the switch for things made for babies.
func (w *window) drawBaby(d *control.Canvas, k theme.Tokens, x, y, width float32) control.Spot {
	const side = 16
	edge, fill := k.Edge, k.Paper
	if w.s.Pattern().Baby {
		edge, fill = k.Accent, k.Accent
	}
	d.Frame(x, y-side/2, side, side, 4, fill, edge, 1.4)
	if w.s.Pattern().Baby {
		d.WordsMid("✓", x+side/2, y, theme.Second, true, k.OnAccent)
	}
	d.Words(control.Fitted(translation.Say("For a baby or small child"), theme.Second, false, width-side-8), x+side+8, y, theme.Second, false, k.Ink)
	return control.Spot{X: x - 4, Y: y - 15, W: width + 8, H: 30, Hint: translation.Say("stricter floats and holes, and the trade's cautions; local product-safety rules decide"), Do: w.toggleBaby}
}

// toggleBaby makes the pattern one for a baby, or not.
func (w *window) toggleBaby() {
	w.s.Do("For a baby or small child", func(now edit.State) edit.State {
		p := *now.Pattern
		p.Baby = !p.Baby
		now.Pattern = &p
		return now
	})
}

func rowLabel(rows []fabric.Row) func(int) string {
	return func(r int) string { return rows[r].Label }
}

// isAt says where a yarn is while a row is worked.
func isAt(s *strand.Strands, yarn, row int, label func(int) string, known bool) string {
	of := &s.ByYarn[yarn]
	switch {
	case len(of.Rows) == 0:
		return "not worked yet"
	case slices.Contains(of.Rows, row):
		return "in hand in " + label(row)
	case row < of.Rows[0]:
		return "joined in " + label(of.Rows[0])
	}
	for _, wait := range s.Waiting[row] {
		if int(wait.Yarn) == yarn {
			says := "waits inside the fabric"
			if wait.Side != fabric.NoSide {
				says = "waits at the " + map[fabric.Side]string{fabric.Left: "left", fabric.Right: "right"}[wait.Side] + " edge"
			}
			if known {
				says += fmt.Sprintf(", %.1f cm up", wait.CM)
			}
			return says + ", since " + label(wait.From)
		}
	}
	last := of.Rows[0]
	for _, r := range of.Rows {
		if r < row {
			last = r
		}
	}
	return "cut after " + label(last)
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
		w.previewRows()
	}
}

// previewRows shows in the rows what the other way would write, while it is shown.
func (w *window) previewRows() {
	if w.view == strandsView && w.strandsSeen.other && w.canReplan() {
		w.page.Preview(w.reckoning.replan.Rows)
	} else {
		w.page.Preview("")
	}
}

func (w *window) useOtherWay() {
	if w.canReplan() {
		rows := w.reckoning.replan.Rows
		w.strandsSeen.other = false
		w.previewRows()
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
