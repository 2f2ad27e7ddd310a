package control

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"strandway/app/theme"
)

// Spot is a place on a panel that can be clicked, and reached by the arrow keys.
type Spot struct {
	X, Y, W, H float32
	Do         func()
	Hint       string                 // one line, shown in the status line under the pointer
	Drop       func(at fyne.Position) // takes it when it has been dragged to a place of the window; nil: it stays
	Carry      func(at fyne.Position) // follows it while it is dragged; may be nil
	Menu       func(at fyne.Position) // shows its menu at a place of the window; nil: it has none
	Button     bool                   // a stop of Tab, where the panel has such stops
	First      bool                   // where the keys begin
}

// Panel is a strip of the window that draws itself anew at every change: tray, tabs, yarn
// strip, heads. Its spots can be clicked, and walked by arrow keys while it has the focus.
type Panel struct {
	widget.BaseWidget

	Draw  func(d *Canvas, k theme.Tokens, size fyne.Size) []Spot
	Keys  func(*fyne.KeyEvent) bool // takes keys that are not the panel's own
	Hint  func(string)              // shows the hint of the spot under the pointer
	Rune  func(rune)                // takes letters; nil: they are not used
	Wheel func(by float32)          // scrolls; nil: there is nothing to scroll
	Tab   func()                    // takes the Tab key; nil: it leaves the panel

	th      *theme.Theme
	min     fyne.Size
	layer   *fyne.Container
	spots   []Spot
	at      int // the spot the keys are at
	over    int // the spot under the pointer, -1 for none
	focused bool
	dragged *Spot // the spot that is being dragged; nil while none is
	dropAt  fyne.Position
}

// NewPanel makes a panel of a least size.
func NewPanel(th *theme.Theme, min fyne.Size, draw func(d *Canvas, k theme.Tokens, size fyne.Size) []Spot) *Panel {
	p := &Panel{Draw: draw, th: th, min: min, layer: container.NewWithoutLayout(), over: -1}
	p.ExtendBaseWidget(p)
	return p
}

// Show draws the panel anew.
func (p *Panel) Show() { p.Redraw(); p.BaseWidget.Show() }

// Redraw draws the panel anew.
func (p *Panel) Redraw() {
	if p.Size().Width < 2 || p.Size().Height < 2 {
		return
	}
	d := &Canvas{}
	k := p.th.Tokens()
	p.spots = p.Draw(d, k, p.Size())
	p.at = min(p.at, max(len(p.spots)-1, 0))
	if p.focused && p.at < len(p.spots) {
		s := p.spots[p.at]
		p.ring(d, k, s)
	}
	p.layer.Objects = d.Objects
	p.layer.Resize(p.Size())
	p.layer.Refresh()
}

// ring marks the spot that the keys are at, with a gap, so that it is seen about a button's own edge.
func (p *Panel) ring(d *Canvas, k theme.Tokens, s Spot) {
	const gap, edge = 4, 1.5
	size := p.Size()
	left, top := max(s.X-gap, edge), max(s.Y-gap, edge)
	right, bottom := min(s.X+s.W+gap, size.Width-edge), min(s.Y+s.H+gap, size.Height-edge)
	d.Frame(left, top, right-left, bottom-top, 9, color.Transparent, k.Ink, 2)
}

// Spots are the places that can be clicked now.
func (p *Panel) Spots() []Spot { return p.spots }

// ToFirst puts the keys to the spot where they begin.
func (p *Panel) ToFirst() {
	for i, s := range p.spots {
		if s.First {
			p.at = i
		}
	}
	p.Redraw()
}

// ToButton goes on to the next button, or with step -1 to the last one, and reports whether
// there is one. From outside it enters at the end that is nearer.
func (p *Panel) ToButton(step int, outside bool) bool {
	at := p.at + step
	if outside {
		at = 0
		if step < 0 {
			at = len(p.spots) - 1
		}
	}
	for ; at >= 0 && at < len(p.spots); at += step {
		if p.spots[at].Button {
			p.at = at
			p.Redraw()
			return true
		}
	}
	return false
}

// beyond is the spot that the keys come to on the way down, or with step -1 up: the nearest one
// that lies lower, or where none does the next in order.
func (p *Panel) beyond(step int) int {
	if len(p.spots) == 0 {
		return 0
	}
	at := p.spots[p.at]
	nearest, least := -1, float32(0)
	for i, s := range p.spots {
		down := float32(step) * (s.Y + s.H/2 - at.Y - at.H/2)
		if down < min(s.H, at.H)/2 {
			continue
		}
		aside := s.X + s.W/2 - at.X - at.W/2
		if far := down + max(aside, -aside)/2; nearest < 0 || far < least {
			nearest, least = i, far
		}
	}
	if nearest >= 0 {
		return nearest
	}
	return max(0, min(p.at+step, len(p.spots)-1))
}

// AcceptsTab implements fyne.Tabbable.
func (p *Panel) AcceptsTab() bool { return p.Tab != nil }

// CreateRenderer implements fyne.Widget.
func (p *Panel) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewClip(p.layer))
}

// MinSize implements fyne.Widget.
func (p *Panel) MinSize() fyne.Size { return p.min }

// SetMinSize sets the least size.
func (p *Panel) SetMinSize(s fyne.Size) { p.min = s }

// Resize draws the panel for another size.
func (p *Panel) Resize(s fyne.Size) {
	if s != p.Size() {
		p.BaseWidget.Resize(s)
		p.Redraw()
	}
}

// Refresh draws the panel in the present theme.
func (p *Panel) Refresh() { p.Redraw(); p.BaseWidget.Refresh() }

func (p *Panel) spotAt(pos fyne.Position) int {
	for i, s := range p.spots {
		if s.Do != nil && pos.X >= s.X && pos.X < s.X+s.W && pos.Y >= s.Y && pos.Y < s.Y+s.H {
			return i
		}
	}
	return -1
}

// Tapped does what the spot under the pointer does. A click leaves the keys where they were.
func (p *Panel) Tapped(e *fyne.PointEvent) {
	if i := p.spotAt(e.Position); i >= 0 {
		p.at = i
		p.spots[i].Do()
	}
}

// Dragged takes a spot along that can be dropped elsewhere.
func (p *Panel) Dragged(e *fyne.DragEvent) {
	if p.dragged == nil {
		i := p.spotAt(e.Position.SubtractXY(e.Dragged.DX, e.Dragged.DY))
		if i < 0 || p.spots[i].Drop == nil {
			return
		}
		spot := p.spots[i]
		p.dragged = &spot
	}
	p.dropAt = e.AbsolutePosition
	if p.dragged.Carry != nil {
		p.dragged.Carry(p.dropAt)
	}
}

// DragEnd drops what was taken along.
func (p *Panel) DragEnd() {
	if p.dragged != nil {
		drop := p.dragged.Drop
		p.dragged = nil
		drop(p.dropAt)
	}
}

// TappedSecondary shows the menu of the spot under the pointer.
func (p *Panel) TappedSecondary(e *fyne.PointEvent) {
	if i := p.spotAt(e.Position); i >= 0 && p.spots[i].Menu != nil {
		p.spots[i].Menu(e.AbsolutePosition)
	}
}

// Scrolled hands the wheel on.
func (p *Panel) Scrolled(e *fyne.ScrollEvent) {
	if p.Wheel != nil {
		p.Wheel(e.Scrolled.DY)
		p.Redraw()
	}
}

// MouseIn implements desktop.Hoverable.
func (p *Panel) MouseIn(e *desktop.MouseEvent) { p.MouseMoved(e) }

// MouseMoved shows the hint of the spot under the pointer.
func (p *Panel) MouseMoved(e *desktop.MouseEvent) {
	i := p.spotAt(e.Position)
	if i == p.over {
		return
	}
	p.over = i
	if p.Hint == nil {
		return
	}
	if i < 0 {
		p.Hint("")
		return
	}
	p.Hint(p.spots[i].Hint)
}

// MouseOut implements desktop.Hoverable.
func (p *Panel) MouseOut() {
	p.over = -1
	if p.Hint != nil {
		p.Hint("")
	}
}

// FocusGained implements fyne.Focusable.
func (p *Panel) FocusGained() { p.focused = true; p.Redraw() }

// FocusLost implements fyne.Focusable.
func (p *Panel) FocusLost() { p.focused = false; p.Redraw() }

// TypedRune implements fyne.Focusable.
func (p *Panel) TypedRune(r rune) {
	if r != ' ' && p.Rune != nil {
		p.Rune(r)
	}
}

// TypedKey walks the spots and does what the present one does.
func (p *Panel) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyTab:
		if p.Tab != nil {
			p.Tab()
		}
		return
	case fyne.KeyPageDown, fyne.KeyPageUp:
		if p.Wheel != nil {
			by := p.Size().Height / 2
			if e.Name == fyne.KeyPageDown {
				by = -by
			}
			p.Wheel(by)
		}
	case fyne.KeyLeft:
		p.at = max(p.at-1, 0)
	case fyne.KeyRight:
		p.at = max(min(p.at+1, len(p.spots)-1), 0)
	case fyne.KeyUp:
		p.at = p.beyond(-1)
	case fyne.KeyDown:
		p.at = p.beyond(1)
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		if p.at < len(p.spots) && p.spots[p.at].Do != nil {
			p.spots[p.at].Do()
		}
	default:
		if p.Keys != nil {
			p.Keys(e)
		}
		return
	}
	p.Redraw()
}
