package picture

import (
	"image"
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"strandway/app/theme"
	"strandway/chart/geom"
)

// Pane shows one picture of the pair.
type Pane struct {
	widget.BaseWidget

	pair   *Pair
	sight  sight
	screen screen
	raster *canvas.Raster
	layer  *fyne.Container
	focus  bool

	press   fyne.Position
	button  desktop.MouseButton
	from    geom.Point // where a choice was begun
	stroke  *stroke    // of the pencil; nil while none is drawn
	dragged bool
}

func newPane(pair *Pair) *Pane {
	p := &Pane{pair: pair}
	p.screen.changed = func() {
		pair.post(func() {
			p.raster.Refresh()
			pair.showBusy()
		})
	}
	p.raster = canvas.NewRaster(p.paint)
	p.layer = container.NewWithoutLayout(p.raster)
	p.ExtendBaseWidget(p)
	return p
}

// CreateRenderer implements fyne.Widget.
func (p *Pane) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewClip(p.layer))
}

// MinSize implements fyne.Widget.
func (p *Pane) MinSize() fyne.Size { return fyne.NewSize(60, 40) }

// Resize implements fyne.Widget.
func (p *Pane) Resize(s fyne.Size) {
	if s == p.Size() {
		return
	}
	p.BaseWidget.Resize(s)
	p.raster.Resize(s)
	p.layer.Resize(s)
}

// matrix maps places to px of the pane; scale is how many pixels one px has.
func (p *Pane) matrix(scale float64) geom.Matrix {
	v := p.pair.view
	box := p.sight.piece()
	middle := geom.Point{X: box.Min.X + v.Centre.X*box.Width(), Y: box.Min.Y + v.Centre.Y*box.Height()}
	s := v.Pixels * scale
	w, h := float64(p.Size().Width)*scale, float64(p.Size().Height)*scale
	// Whole pixels, so that a picture that has only been shifted need not be drawn anew between pixels.
	return geom.Matrix{A: s, D: -s, E: math.Round(w/2 - middle.X*s), F: math.Round(h/2 + middle.Y*s)}
}

// place is the place under a point of the pane.
func (p *Pane) place(at fyne.Position) geom.Point {
	m := p.matrix(1)
	return geom.Point{X: (float64(at.X) - m.E) / m.A, Y: (float64(at.Y) - m.F) / m.D}
}

// share is a point of the pane as shares of the piece's box.
func (p *Pane) share(at fyne.Position) geom.Point {
	q, box := p.place(at), p.sight.piece()
	return geom.Point{X: (q.X - box.Min.X) / max(box.Width(), .1), Y: (q.Y - box.Min.Y) / max(box.Height(), .1)}
}

func (p *Pane) paint(w, h int) image.Image {
	want := shot{size: image.Pt(w, h), paper: p.pair.th.Tokens().Paper}
	if p.sight != nil && w > 2 && h > 2 {
		want.sight, want.at, want.unsure = p.sight, p.matrix(float64(w)/float64(p.Size().Width)), p.pair.unsure
	}
	return p.screen.show(want)
}

// redraw paints the picture and lays the choice over it.
func (p *Pane) redraw() {
	p.raster.Refresh()
	p.Mark()
}

// Mark lays the choice over the picture.
func (p *Pane) Mark() {
	p.layer.Objects = []fyne.CanvasObject{p.raster}
	k := p.pair.th.Tokens()
	if p.sight != nil {
		p.rowInHand(k)
		for _, r := range choiceBoxes(p.sight, p.pair.s.Chosen().Stitches) {
			p.frame(r, k)
		}
		for _, lit := range choiceBoxes(p.sight, p.pair.Lit) {
			p.glow(lit.box, k)
		}
		p.markNote(k)
		p.showStroke()
		if p.dragged && p.button == desktop.MouseButtonPrimary && !p.pair.notes.held {
			p.frame(choiceBox{box: geom.Empty().Add(p.from).Add(p.place(p.press)), framed: true}, k)
		}
	}
	if p.focus {
		r := canvas.NewRectangle(color.Transparent)
		r.StrokeColor, r.StrokeWidth = k.Accent, 2
		r.Move(fyne.NewPos(1, 1))
		r.Resize(fyne.NewSize(p.Size().Width-2, p.Size().Height-2))
		p.layer.Objects = append(p.layer.Objects, r)
	}
	p.layer.Refresh()
}

// rowInHand washes the row that is being written, and puts the hook where its next stitch goes.
func (p *Pane) rowInHand(k theme.Tokens) {
	m := p.pair.s.Made()
	if m == nil || m != p.pair.shown || p.pair.drawing(p) || p.pair.InHand < 0 || p.pair.InHand >= len(m.Fabric().Rows) || !straight(m.Plan.Manner) {
		return
	}
	row := &m.Fabric().Rows[p.pair.InHand]
	band := geom.Empty()
	for id := row.First; id < row.Last; id++ {
		if b := p.sight.bounds(id); !b.IsEmpty() {
			band = band.Union(b)
		}
	}
	if band.IsEmpty() || p.sight != sight(p.pair.chart) {
		return
	}
	next := p.sight.bounds(row.Last - 1)
	piece := p.sight.piece()
	band.Min.X, band.Max.X = min(band.Min.X, piece.Min.X), max(band.Max.X, piece.Max.X)
	if p.inColour() {
		p.outline(band, 1, 1, k)
	} else {
		wash := k.Accent
		wash.A = 22
		p.rect(band, 1).FillColor = wash
	}
	if row.Unworked == 0 || next.IsEmpty() {
		return
	}
	const hook = 22 // px
	at := p.matrix(1).Apply(geom.Point{X: next.Min.X, Y: next.Max.Y})
	x := at.X - hook
	if row.FromLeft {
		x = p.matrix(1).Apply(next.Max).X
	}
	icon := canvas.NewImageFromResource(theme.Icon("hook", k.Accent))
	icon.Move(fyne.NewPos(float32(x), float32(at.Y)-hook/3))
	icon.Resize(fyne.NewSize(hook, hook))
	p.layer.Objects = append(p.layer.Objects, icon)
}

func (p *Pane) glow(b geom.Box, k theme.Tokens) {
	if p.inColour() {
		p.outline(b, 3, 1, k)
		return
	}
	wash := k.Accent
	wash.A = 34
	p.rect(b, 3).FillColor = wash
}

// inColour reports whether the pane shows the yarns' own colours, which a wash would falsify: cloth, or the grid.
func (p *Pane) inColour() bool { return p == p.pair.Cloth || p.pair.cells }

// outline draws a line round a box of places that stands out from yarn of any colour: on the paper's colour.
func (p *Pane) outline(b geom.Box, grow float64, thick float32, k theme.Tokens) {
	under := p.rect(b, grow+1)
	under.StrokeColor, under.StrokeWidth = k.Paper, thick+2
	over := p.rect(b, grow)
	over.StrokeColor, over.StrokeWidth = k.Accent, thick
}

func (p *Pane) frame(c choiceBox, k theme.Tokens) {
	if p.inColour() {
		p.outline(c.box, 1, 2, k)
		return
	}
	wash := k.Accent
	wash.A = 38
	r := p.rect(c.box, 2)
	r.FillColor = wash
	r.CornerRadius = 3
	if c.framed {
		r.StrokeColor, r.StrokeWidth = k.Accent, 2
	}
}

// rect puts a rectangle round a box of places, grown by px.
func (p *Pane) rect(b geom.Box, grow float64) *canvas.Rectangle {
	m := p.matrix(1)
	a, z := m.Apply(geom.Point{X: b.Min.X, Y: b.Max.Y}), m.Apply(geom.Point{X: b.Max.X, Y: b.Min.Y})
	r := canvas.NewRectangle(color.Transparent)
	r.CornerRadius = 3
	r.Move(fyne.NewPos(float32(a.X-grow), float32(a.Y-grow)))
	r.Resize(fyne.NewSize(float32(z.X-a.X+2*grow), float32(z.Y-a.Y+2*grow)))
	p.layer.Objects = append(p.layer.Objects, r)
	return r
}

// Scrolled zooms with Ctrl held, and pans otherwise.
func (p *Pane) Scrolled(e *fyne.ScrollEvent) {
	if p.sight == nil {
		return
	}
	if p.pair.Modifiers()&fyne.KeyModifierShortcutDefault != 0 {
		p.pair.Zoom(math.Pow(1.1, float64(e.Scrolled.DY)/10), p.share(e.Position))
		return
	}
	p.pan(float64(e.Scrolled.DX)*2, float64(e.Scrolled.DY)*2)
}

// pan shifts the picture by px.
func (p *Pane) pan(dx, dy float64) {
	box := p.sight.piece()
	v := p.pair.view
	v.Centre.X -= dx / v.Pixels / max(box.Width(), .1)
	v.Centre.Y += dy / v.Pixels / max(box.Height(), .1)
	v.Whole = false
	p.pair.show(v.Clamp())
}

// MouseDown begins a choice, or with the middle button a shift of the pictures.
func (p *Pane) MouseDown(e *desktop.MouseEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(p); c != nil {
		c.Focus(p)
	}
	p.press, p.button, p.dragged = e.Position, e.Button, false
	if p.sight == nil || e.Button != desktop.MouseButtonPrimary {
		return
	}
	if p.pair.drawing(p) {
		p.beginStroke(e.Position)
		return
	}
	p.from = p.place(e.Position)
	if p.takeNote(e.Position) {
		return
	}
	id, ok := p.sight.hit(p.from)
	switch {
	case !ok:
		p.pair.s.ChooseNone()
	case e.Modifier&fyne.KeyModifierShift != 0 && len(p.pair.s.Chosen().Stitches) > 0:
		p.pair.chooseBetween(p.sight, p.pair.s.Chosen().Lead, id)
	default:
		p.pair.s.Choose([]int32{id}, id)
	}
}

// TappedSecondary chooses the stitch under the pointer, unless it is chosen, and shows its menu.
func (p *Pane) TappedSecondary(e *fyne.PointEvent) {
	if p.sight == nil {
		return
	}
	if id, ok := p.sight.hit(p.place(e.Position)); ok && !p.pair.s.Chosen().Has(id) {
		p.pair.s.Choose([]int32{id}, id)
	}
	p.pair.Menu(e.AbsolutePosition)
}

// StitchAt is the stitch at a place of the window.
func (p *Pane) StitchAt(at fyne.Position) (id int32, ok bool) {
	in := at.Subtract(fyne.CurrentApp().Driver().AbsolutePositionForObject(p))
	size := p.Size()
	if p.sight == nil || in.X < 0 || in.Y < 0 || in.X > size.Width || in.Y > size.Height {
		return 0, false
	}
	return p.sight.hit(p.place(in))
}

// MouseUp ends a choice.
func (p *Pane) MouseUp(e *desktop.MouseEvent) {
	if p.stroke != nil {
		p.endStroke()
		return
	}
	if p.dropNote(p.dragged) {
		p.dragged = false
	}
	if p.dragged && p.button == desktop.MouseButtonPrimary && p.sight != nil {
		p.dragged = false
		p.pair.chooseIn(p.sight, geom.Empty().Add(p.from).Add(p.place(e.Position)))
	}
	p.dragged = false
	p.Mark()
}

// Dragged draws the choice out, or shifts the pictures.
func (p *Pane) Dragged(e *fyne.DragEvent) {
	if p.sight == nil {
		return
	}
	if p.stroke != nil {
		p.draw(e.Position)
		return
	}
	p.press, p.dragged = e.Position, true
	if p.dragNote(e.Position) {
		return
	}
	if p.button == desktop.MouseButtonTertiary {
		p.pan(float64(e.Dragged.DX), float64(e.Dragged.DY))
		return
	}
	p.Mark()
}

// DragEnd implements fyne.Draggable.
func (p *Pane) DragEnd() {}

// MouseIn implements desktop.Hoverable.
func (p *Pane) MouseIn(*desktop.MouseEvent) {}

// MouseMoved tells what lies under the pointer.
func (p *Pane) MouseMoved(e *desktop.MouseEvent) {
	if p.sight == nil || p.pair.Over == nil {
		return
	}
	if id, ok := p.sight.hit(p.place(e.Position)); ok {
		p.pair.Over(id)
		return
	}
	p.pair.Over(-1)
}

// MouseOut implements desktop.Hoverable.
func (p *Pane) MouseOut() {
	if p.pair.Over != nil {
		p.pair.Over(-1)
	}
}

// FocusGained implements fyne.Focusable.
func (p *Pane) FocusGained() { p.focus = true; p.Mark() }

// FocusLost implements fyne.Focusable.
func (p *Pane) FocusLost() { p.focus = false; p.Mark() }

// TypedRune hands letters on: they write stitches.
func (p *Pane) TypedRune(r rune) { p.pair.Letter(r) }

// TypedKey hands keys on: arrows go from stitch to stitch.
func (p *Pane) TypedKey(e *fyne.KeyEvent) { p.pair.Key(e) }

// At is where a place of the piece, in stitch widths, stands on the pane, in px.
func (p *Pane) At(place geom.Point) geom.Point { return p.matrix(1).Apply(place) }
