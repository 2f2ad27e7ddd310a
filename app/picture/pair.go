package picture

import (
	"fmt"
	"math"
	"reflect"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"strandway/app/control"
	"strandway/app/session"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/chart/display"
	"strandway/chart/geom"
)

// Pair is chart and cloth of the piece in hand.
type Pair struct {
	widget.BaseWidget

	Modifiers func() fyne.KeyModifier
	Over      func(stitch int32) // the stitch under the pointer, -1 for none
	Letter    func(rune)         // a letter typed in a picture
	Key       func(*fyne.KeyEvent)
	Menu      func(fyne.Position) // shows the menu of what is chosen
	Noted     func()              // a note beside the chart is chosen, or none any more
	InHand    int                 // the fabric row that is being written, -1 for none
	Lit       []int32             // stitches lit because the pointer or the caret is at what made them

	s     *session.Session
	th    *theme.Theme
	view  View
	cells bool // the grid stands in place of the chart

	// Yarns are the yarns that the pencil can take, in the colourway shown.
	Yarns func() []Ink
	// Drew takes the stitches that the pencil went over, or with fill the one whose patch is to be filled.
	Drew func(letter string, stitches []int32, fill bool)

	// Draw takes the pencil in hand over the grid.
	Draw func()
	// ShowsAlone gives a picture all the room, or shows both again.
	ShowsAlone func(*Pane)

	pencil string // letter of the yarn that the pencil draws in, "" while it is not in hand
	fill   bool   // it fills patches

	stack bool
	alone *Pane // has all the room; nil while both are shown

	shown     *session.Made
	unsure    *session.Unsure // stitches shown that stand on a fault; nil for none
	Chart     *Pane
	Cloth     *Pane
	chart     *chartSight
	cloth     *clothSight
	notes     notes
	chartHead *control.Panel
	clothHead *control.Panel
	line      *canvas.Rectangle
	busy      *canvas.Rectangle
	working   bool // the rows are being worked, and have been for long
	post      func(func())
}

const headHeight = 38

// New makes the pair for a session; post runs a function on the window's goroutine.
func New(s *session.Session, th *theme.Theme, post func(func())) *Pair {
	p := &Pair{s: s, th: th, post: post, stack: true, view: View{Pixels: usual, Centre: geom.Point{X: .5, Y: .5}, Whole: true}}
	p.Chart, p.Cloth = newPane(p), newPane(p)
	p.chartHead = control.NewPanel(th, control.Row(headHeight), p.drawChartHead)
	p.clothHead = control.NewPanel(th, control.Row(headHeight), p.drawClothHead)
	p.line = canvas.NewRectangle(th.Tokens().Line)
	p.busy = canvas.NewRectangle(th.Tokens().Accent)
	p.busy.Hide()
	p.InHand, p.notes.chosen = -1, -1
	p.ExtendBaseWidget(p)
	s.Watch(p.changed)
	return p
}

func (p *Pair) changed(c session.Change) {
	const other = session.Text | session.Shown // another piece
	if c&other == other || c&session.Choice != 0 && len(p.s.Chosen().Stitches) > 0 {
		p.notes.chosen = -1
	}
	switch {
	case c&session.File != 0 && c&session.Pictures != 0: // another document
		p.chart, p.cloth, p.shown, p.unsure = nil, nil, nil, nil
		p.Chart.sight, p.Cloth.sight = nil, nil
		p.view.Whole = true
		p.notes = notes{chosen: -1}
	case c&(session.Pictures|session.Worked) != 0:
		p.take()
	case c&(session.Choice) != 0:
		p.Chart.Mark()
		p.Cloth.Mark()
	}
	if unsure := p.s.Unsure(); p.s.Current() && unsure != p.unsure {
		p.unsure = unsure
		p.Chart.redraw()
		p.Cloth.redraw()
	}
	p.chartHead.Redraw()
	p.clothHead.Redraw()
}

// take shows what the session has made.
func (p *Pair) take() {
	m := p.s.Made()
	if m == nil || m.Cloth == nil || m == p.shown {
		return
	}
	if p.shown == nil || p.shown.Chart != m.Chart {
		if p.chart == nil || !p.cells {
			p.chart = newChartSight(m.Chart, m.Plan.Box, p.chart)
		}
		if p.cells {
			go p.takeCells(m)
		}
	}
	if next := newClothSight(m, p.cloth); p.cloth == nil || p.cloth.cloth != next.cloth || !reflect.DeepEqual(p.cloth.yarns, next.yarns) {
		p.cloth = next
	}
	p.shown = m
	p.Chart.sight, p.Cloth.sight = p.chart, p.cloth
	p.place()
}

// takeCells draws the grid, in the background, and shows it when it is done.
func (p *Pair) takeCells(m *session.Made) {
	cells := m.Cells()
	p.post(func() {
		if p.cells && p.shown != nil && p.shown.Chart == m.Chart {
			p.chart = newChartSight(cells, cellsBox(cells), p.chart)
			p.Chart.sight = p.chart
			p.place()
		}
	})
}

// cellsBox is the box of the grid's cells: one stitch width a column, one a row.
func cellsBox(cells *display.List) geom.Box {
	s := &chartSight{list: cells}
	return s.whole().Grow(-1)
}

// Cells tells whether the grid stands in place of the chart.
func (p *Pair) Cells() bool { return p.cells }

// ShowCells puts the grid in place of the chart, or the chart back.
func (p *Pair) ShowCells(on bool) {
	p.cells, p.shown = on, nil
	p.take()
	p.chartHead.Redraw()
}

// Alone is the picture that has all the room, nil while both are shown.
func (p *Pair) Alone() *Pane { return p.alone }

// ShowAlone gives a picture all the room, or with nil shows both.
func (p *Pair) ShowAlone(pane *Pane) {
	p.alone, p.view.Whole = pane, true
	p.place()
}

// Zoom makes the stitches larger about a point, in shares of the piece.
func (p *Pair) Zoom(by float64, at geom.Point) { p.show(p.view.Zoom(by, at).Clamp()) }

// ZoomMiddle makes the stitches larger about the middle of the panes.
func (p *Pair) ZoomMiddle(by float64) { p.Zoom(by, p.view.Centre) }

// ShowWhole shows the whole piece.
func (p *Pair) ShowWhole() {
	p.view.Whole = true
	p.place()
}

func (p *Pair) show(v View) {
	p.view = v
	p.Chart.redraw()
	p.Cloth.redraw()
	p.chartHead.Redraw()
	p.clothHead.Redraw()
}

// Busy shows or hides the line that says that better pictures are on their way.
func (p *Pair) Busy(on bool) {
	p.working = on
	p.showBusy()
}

func (p *Pair) showBusy() {
	on := p.working || p.Chart.screen.isLate() || p.Cloth.screen.isLate()
	switch {
	case on && !p.busy.Visible():
		p.busy.FillColor = p.th.Tokens().Accent
		p.busy.Show()
	case !on && p.busy.Visible():
		p.busy.Hide()
	}
}

// Redress draws everything in another theme.
func (p *Pair) Redress() {
	p.line.FillColor = p.th.Tokens().Line
	p.line.Refresh()
	p.chartHead.Redraw()
	p.clothHead.Redraw()
	p.Chart.redraw()
	p.Cloth.redraw()
}

// Resize implements fyne.Widget.
func (p *Pair) Resize(s fyne.Size) {
	if s == p.Size() {
		return
	}
	p.BaseWidget.Resize(s)
	p.place()
}

// MinSize implements fyne.Widget.
func (p *Pair) MinSize() fyne.Size { return fyne.NewSize(300, 240) }

// place arranges the panes and, while the whole piece is to be seen, fits it into them.
func (p *Pair) place() {
	w, h := p.Size().Width, p.Size().Height
	if w < 10 || h < 10 {
		return
	}
	if p.chart != nil {
		p.stack = stacked(p.chart.whole(), p.cloth.whole(), size{float64(w), float64(h)}, headHeight, p.stack)
	}
	visible(p.alone != p.Cloth, p.chartHead, p.Chart)
	visible(p.alone != p.Chart, p.clothHead, p.Cloth)
	visible(p.alone == nil, p.line)
	switch {
	case p.alone != nil:
		head := p.chartHead
		if p.alone == p.Cloth {
			head = p.clothHead
		}
		put(head, 0, 0, w, headHeight)
		put(p.alone, 0, headHeight, w, h-headHeight)
	case p.stack:
		half := float32(math.Round(float64(h) / 2))
		put(p.chartHead, 0, 0, w, headHeight)
		put(p.Chart, 0, headHeight, w, half-headHeight)
		put(p.line, 0, half, w, 1)
		put(p.clothHead, 0, half+1, w, headHeight)
		put(p.Cloth, 0, half+1+headHeight, w, h-half-1-headHeight)
	default:
		half := float32(math.Round(float64(w) / 2))
		put(p.chartHead, 0, 0, half, headHeight)
		put(p.Chart, 0, headHeight, half, h-headHeight)
		put(p.line, half, 0, 1, h)
		put(p.clothHead, half+1, 0, w-half-1, headHeight)
		put(p.Cloth, half+1, headHeight, w-half-1, h-headHeight)
	}
	put(p.busy, 0, 0, w, 2)
	if p.view.Whole && p.chart != nil {
		p.view = p.fitted()
	}
	p.show(p.view)
}

func visible(on bool, objects ...fyne.CanvasObject) {
	for _, o := range objects {
		switch {
		case on && !o.Visible():
			o.Show()
		case !on && o.Visible():
			o.Hide()
		}
	}
}

func put(o fyne.CanvasObject, x, y, w, h float32) {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(w, h))
}

// fitted is the view of the whole piece.
func (p *Pair) fitted() View {
	v := View{Pixels: usual, Centre: geom.Point{X: .5, Y: .5}, Whole: true}
	for _, pane := range []*Pane{p.Chart, p.Cloth} {
		if p.alone != nil && p.alone != pane {
			continue
		}
		// Numbers stand at one side: what is drawn reaches farther from the piece's middle on it.
		whole, middle := pane.sight.whole(), pane.sight.piece().Centre()
		reach := geom.Point{
			X: max(whole.Max.X-middle.X, middle.X-whole.Min.X),
			Y: max(whole.Max.Y-middle.Y, middle.Y-whole.Min.Y),
		}
		v.Pixels = min(v.Pixels,
			float64(pane.Size().Width)/2/max(reach.X, .5),
			float64(pane.Size().Height)/2/max(reach.Y, .5))
	}
	v.Pixels = stepped(max(v.Pixels, smallest))
	return v
}

// CreateRenderer implements fyne.Widget.
func (p *Pair) CreateRenderer() fyne.WidgetRenderer {
	return &pairRenderer{p}
}

type pairRenderer struct{ p *Pair }

func (r *pairRenderer) Layout(fyne.Size)   { r.p.place() }
func (r *pairRenderer) MinSize() fyne.Size { return r.p.MinSize() }
func (r *pairRenderer) Refresh()           { r.p.Redress() }
func (r *pairRenderer) Destroy()           {}
func (r *pairRenderer) Objects() []fyne.CanvasObject {
	p := r.p
	return []fyne.CanvasObject{p.Chart, p.Cloth, p.chartHead, p.clothHead, p.line, p.busy}
}

func (p *Pair) drawChartHead(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	name := "Chart"
	if p.cells {
		name = "Cells"
	}
	x := d.Words(translation.Say(name), 16, 20, theme.Body, true, k.Ink)
	const w = 96
	left := size.Width - 16 - w
	var tools []control.Spot
	if p.cells {
		tools = p.drawTools(d, k, &x, left-12)
	}
	tools = append(tools, p.drawAlone(d, k, left-32, p.Chart))
	if !p.cells && len(p.Yarns()) > 1 {
		d.Icon(theme.Icon("pencil", k.Ink2), left-61, 10, 20)
		tools = append(tools, control.Spot{X: left - 64, Y: 7, W: 26, H: 26, Hint: "draw in yarns over the cells", Do: p.Draw})
	}
	d.Words(control.Fitted(p.says(), theme.Second, false, left-x-84), x+10, 20, theme.Second, false, k.Ink2)
	d.Frame(left, 7, w, 26, 6, k.Desk, k.Edge, 1)
	d.WordsMid("–", left+13, 20, theme.Body, true, k.Ink)
	d.WordsMid(fmt.Sprintf("%.0f %%", p.view.Pixels/usual*100), left+w/2, 20, theme.Second, false, k.Ink)
	d.WordsMid("+", left+w-13, 20, theme.Body, true, k.Ink)
	return append(tools, []control.Spot{
		{X: left, Y: 6, W: 28, H: 28, Do: func() { p.ZoomMiddle(1 / 1.2) }, Hint: "smaller (Ctrl+−)"},
		{X: left + 28, Y: 6, W: 40, H: 28, Do: p.ShowWhole, Hint: "the whole piece (Ctrl+0)"},
		{X: left + w - 28, Y: 6, W: 28, H: 28, Do: func() { p.ZoomMiddle(1.2) }, Hint: "larger (Ctrl++)"},
	}...)
}

// says tells in words what is chosen.
func (p *Pair) says() string {
	c := p.s.Chosen()
	m := p.s.Made()
	if m == nil {
		return ""
	}
	if p.cells && p.pencil != "" {
		return p.saysPencil()
	}
	switch n := len(c.Stitches); {
	case n == 1 && int(c.Lead) < len(m.Fabric().Stitches):
		st := &m.Fabric().Stitches[c.Lead]
		return translation.Sentence(fmt.Sprintf("%s of %s", m.Fabric().Kind(c.Lead).Name, m.Fabric().Rows[st.Row].Label))
	case n > 1:
		return translation.Fill("{{.N}} stitches chosen", "N", n)
	}
	if u := p.s.Unsure(); len(u.Stitches) > 0 {
		return translation.Fill("what stands on the fault in {{.Row}} is pale", "Row", u.On)
	}
	return translation.Say("from the right side")
}

func (p *Pair) drawClothHead(d *control.Canvas, k theme.Tokens, size fyne.Size) []control.Spot {
	d.Rect(0, 0, size.Width, size.Height, 0, k.Paper)
	x := d.Words(translation.Say("Cloth"), 16, 20, theme.Body, true, k.Ink)
	way := p.s.Colourway()
	if way == "" {
		way = translation.Say("own shades")
	}
	right := size.Width - 16
	if label, w := p.scale(); w > 0 {
		d.Rect(right-w, 28, w, 1.6, 0, k.Ink2)
		d.Rect(right-w, 24, 1.6, 9, 0, k.Ink2)
		d.Rect(right-1.6, 24, 1.6, 9, 0, k.Ink2)
		d.WordsMid(label, right-w/2, 15, theme.Small, false, k.Ink2)
		right -= w
	}
	right -= 32
	alone := p.drawAlone(d, k, right, p.Cloth)
	d.Words(control.Fitted(way+", "+translation.Say("right side"), theme.Second, false, right-x-24), x+10, 20, theme.Second, false, k.Ink2)
	return []control.Spot{alone}
}

// drawAlone draws the tool that gives a picture all the room.
func (p *Pair) drawAlone(d *control.Canvas, k theme.Tokens, x float32, pane *Pane) control.Spot {
	icon, hint := "alone", "this picture alone"
	if p.alone == pane {
		icon, hint = "pair", "chart and cloth together"
	}
	d.Icon(theme.Icon(icon, k.Ink2), x+3, 10, 20)
	return control.Spot{X: x, Y: 7, W: 26, H: 26, Hint: hint, Do: func() { p.ShowsAlone(pane) }}
}

// scale is a length in round centimetres or inches and its width in px; 0 without a gauge.
func (p *Pair) scale() (label string, w float32) {
	pt := p.s.Pattern()
	if pt.Gauge.Stitches <= 0 || pt.Gauge.OverCM <= 0 {
		return "", 0
	}
	px := p.view.Pixels * pt.Gauge.Stitches / pt.Gauge.OverCM // of one cm
	unit := "cm"
	if pt.Units == "in" {
		px, unit = px*2.54, "in"
	}
	for _, n := range []int{1, 2, 5, 10, 20, 50, 100} {
		if w := float64(n) * px; w >= 48 {
			return fmt.Sprintf("%d %s", n, unit), float32(w)
		}
	}
	return "", 0
}
