// Package rows is the left page of the window: the written rows, ruled by the
// yarn that works them.
//
// The page writes nothing itself. It shows the session's rows, turns keys and
// the pointer into carets and edits of the session, and lays itself out anew
// when the session tells of a change.
package rows

import (
	"image"
	"strconv"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"strandway/app/session"
	"strandway/app/theme"
	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/model/diag"
	"strandway/render/raster"
)

// Page shows and edits the rows of the piece in hand.
type Page struct {
	widget.BaseWidget

	// Keys takes keys that are not the page's own: F8 and the like. It reports whether it used one.
	Keys func(*fyne.KeyEvent) bool
	// Shortcut takes shortcuts that are not the page's own.
	Shortcut func(fyne.Shortcut)
	// NewRow writes a row below the one in hand, as Enter does at the end of a row.
	NewRow func()
	// Hint shows the reason for what is under the pointer, "" for nothing.
	Hint func(string)
	// MoveRow puts a written row in the place of another; the rows between move up.
	MoveRow func(from, to int)
	// First takes keys before the page does, while something of the window's waits for one. It reports whether it used one.
	First func(*fyne.KeyEvent) bool
	// Typed is called after letters were typed or taken out.
	Typed func()
	// Left is called when the keys go elsewhere.
	Left func()
	// Complete completes the word begun before the caret, and reports whether there is one.
	Complete func() bool
	// Menu shows the page's menu at a place of the window.
	Menu func(fyne.Position)
	// Modifiers tells which of Shift, Ctrl and Alt are held.
	Modifiers func() fyne.KeyModifier

	s      *session.Session
	th     *theme.Theme
	scribe *scribe

	boxes  []box
	height float32 // of all rows
	scroll float32
	seen   bool // the caret was in sight when the page was shown last
	ruling *display.List
	goalX  float32 // where up and down aim at; -1 for where the caret is
	focus  bool
	kept   *image.RGBA

	preview string // the rows as they would be written another way; "" for none

	layer   *fyne.Container
	raster  *canvas.Raster
	stock   stock
	buttons []button

	carried  *carry // a row dragged by its number
	pressed  time.Time
	pressAt  int
	dragging bool
}

// button is the mend of a finding, as it stands on the page.
type button struct {
	at   fyne.Position
	size fyne.Size
	mend diag.Finding
}

// New makes the page of a session.
func New(s *session.Session, th *theme.Theme) *Page {
	p := &Page{s: s, th: th, scribe: newScribe(th), goalX: -1}
	p.raster = canvas.NewRaster(p.paintCords)
	p.layer = container.NewWithoutLayout()
	p.ExtendBaseWidget(p)
	s.Watch(p.changed)
	return p
}

func (p *Page) changed(c session.Change) {
	if c&(session.Text|session.Caret|session.Worked|session.Pictures|session.Choice|session.Shown) == 0 {
		return
	}
	p.relay()
	if p.seen || c&(session.Caret|session.Text) != 0 {
		p.keepInSight()
	}
	p.show()
}

// caretSeen reports whether the caret is in sight.
func (p *Page) caretSeen() bool {
	y := p.caretPoint(p.s.Caret().At).Y - p.scroll
	return y >= 0 && y+lineHeight <= p.Size().Height
}

// Redress lays the page out anew after the theme has changed.
func (p *Page) Redress() {
	p.relay()
	p.show()
}

// relay lays the rows out for the present width.
func (p *Page) relay() {
	width := p.Size().Width
	if width < 200 {
		return
	}
	m := p.s.Made()
	if p.s.Rows() == "" {
		p.boxes, p.height = arrange("", []paragraph{{row: -1, tag: "Start"}}, nil, width, 0, p.scribe)
		p.ruling = blankRules(p.th.Tokens(), width, p.Size().Height)
		return
	}
	list := paragraphs(p.s.Rows(), m, p.s.Since(), p.s.Findings(), p.s.Unsure())
	compareRows(list, p.s.Rows(), p.preview)
	if m == nil {
		p.boxes, p.height = arrange(p.s.Rows(), list, nil, width, p.s.Caret().At, p.scribe)
		p.ruling = nil
		return
	}
	p.boxes, p.height = arrange(p.s.Rows(), list, m.Fabric(), width, p.s.Caret().At, p.scribe)
	p.ruling = cords(p.boxes, m.Fabric(), m.Colours(), p.th.Tokens(), width, p.height+lineHeight)
}

// ghostHeight is the room for the row that waits below the last one.
const ghostHeight = lineHeight + afterCord

// waiting is the number of the row that waits to be written, "" where none does.
func (p *Page) waiting() string {
	for i := len(p.boxes) - 1; i >= 0; i-- {
		b := &p.boxes[i]
		if b.span.Len() == 0 {
			if at := p.s.Caret().At; at >= b.span.Start && at <= b.span.End {
				return "" // its place is being written in
			}
			continue
		}
		if b.row < 0 || len(b.works) == 0 {
			return ""
		}
		last := &p.s.Made().Fabric().Rows[b.works[len(b.works)-1]]
		return strconv.Itoa(last.No + 1)
	}
	return ""
}

// caretLine is the box and line that hold an offset; ok is false before the first layout.
func (p *Page) caretLine(at int) (b *box, l int, ok bool) {
	for i := range p.boxes {
		b := &p.boxes[i]
		if at < b.span.Start || at > b.span.End && i+1 < len(p.boxes) {
			continue
		}
		for l := range b.lines {
			if at < b.lines[l].end || l+1 == len(b.lines) {
				return b, l, true
			}
		}
	}
	return nil, 0, false
}

// caretPoint is where an offset stands on the page, before scrolling.
func (p *Page) caretPoint(at int) fyne.Position {
	b, l, ok := p.caretLine(at)
	if !ok {
		return fyne.NewPos(textLeft, topMargin)
	}
	ln := b.lines[l]
	at = min(max(at, ln.start), len(p.s.Rows()))
	return fyne.NewPos(textLeft+p.scribe.serif(p.s.Rows()[ln.start:at]), b.textTop+float32(l)*lineHeight)
}

// offsetAt is the place in the rows nearest to a point of the page, before scrolling.
func (p *Page) offsetAt(x, y float32) int {
	for i := range p.boxes {
		b := &p.boxes[i]
		if y >= b.y+b.height && i+1 < len(p.boxes) {
			continue
		}
		l := min(max(int((y-b.textTop)/lineHeight), 0), len(b.lines)-1)
		return p.offsetIn(b.lines[l], x, l+1 == len(b.lines))
	}
	return 0
}

// offsetIn is the place in a line nearest to x.
func (p *Page) offsetIn(l line, x float32, last bool) int {
	text := p.s.Rows()
	best, nearest := l.start, float32(1e9)
	for at := l.start; at <= l.end; at++ {
		if at < len(text) && at > 0 && text[at]&0xC0 == 0x80 {
			continue
		}
		if at == l.end && !last && at > l.start {
			break // the place behind the last space belongs to the next line
		}
		d := textLeft + p.scribe.serif(text[l.start:at]) - x
		if d < 0 {
			d = -d
		}
		if d < nearest {
			best, nearest = at, d
		}
	}
	return best
}

func (p *Page) keepInSight() {
	view := p.Size().Height
	at := p.caretPoint(p.s.Caret().At)
	top, bottom := at.Y-lineHeight, at.Y+lineHeight+46
	if b, _, ok := p.caretLine(p.s.Caret().At); ok && b.height < view/2 {
		top, bottom = b.y, b.y+b.height+24
	}
	if bottom > p.scroll+view {
		p.scroll = bottom - view
	}
	if top < p.scroll {
		p.scroll = top
	}
	p.clampScroll()
}

func (p *Page) clampScroll() {
	p.scroll = max(0, min(p.scroll, p.height+40-p.Size().Height))
}

// Scrolled moves the page under the wheel.
func (p *Page) Scrolled(e *fyne.ScrollEvent) {
	p.scroll -= e.Scrolled.DY * 2
	p.clampScroll()
	p.show()
}

// paintCords paints the cords in sight into the kept picture.
func (p *Page) paintCords(w, h int) image.Image {
	if p.kept == nil || p.kept.Rect.Dx() != w || p.kept.Rect.Dy() != h {
		p.kept = image.NewRGBA(image.Rect(0, 0, w, h))
	}
	clear(p.kept.Pix)
	if p.ruling != nil && w > 2 && h > 2 {
		scale := float64(w) / float64(p.Size().Width)
		raster.PaintView(p.kept, p.ruling, geom.Translate(0, -float64(p.scroll)).Then(geom.Scale(scale, scale)))
	}
	return p.kept
}

// CreateRenderer implements fyne.Widget.
func (p *Page) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewClip(p.layer))
}

// Resize lays the rows out for another width.
func (p *Page) Resize(size fyne.Size) {
	if size == p.Size() {
		return
	}
	p.BaseWidget.Resize(size)
	p.relay()
	p.keepInSight()
	p.show()
}

// MinSize implements fyne.Widget.
func (p *Page) MinSize() fyne.Size { return fyne.NewSize(340, 120) }

// Cursor implements desktop.Cursorable.
func (p *Page) Cursor() desktop.Cursor { return desktop.TextCursor }

// MouseDown puts the caret, writes a mend, or chooses the word at the second press.
func (p *Page) MouseDown(e *desktop.MouseEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(p); c != nil {
		c.Focus(p)
	}
	if e.Button != desktop.MouseButtonPrimary {
		return
	}
	for _, b := range p.buttons {
		if e.Position.X >= b.at.X && e.Position.X <= b.at.X+b.size.Width && e.Position.Y >= b.at.Y && e.Position.Y <= b.at.Y+b.size.Height {
			p.s.Mend(b.mend)
			return
		}
	}
	p.goalX = -1
	if p.waiting() != "" && e.Position.Y+p.scroll > p.height-ghostHeight {
		p.s.PutCaret(len(strings.TrimRight(p.s.Rows(), " \n")), false)
		p.NewRow()
		return
	}
	at := p.offsetAt(e.Position.X, e.Position.Y+p.scroll)
	twice := time.Since(p.pressed) < 400*time.Millisecond && at == p.pressAt
	p.pressed, p.pressAt = time.Now(), at
	switch {
	case e.Position.X < textLeft-8:
		p.chooseRow(at)
		p.beginCarry(e.Position.Y + p.scroll)
	case twice:
		p.s.ChooseText(diag.Span{Start: p.s.Beside(at+1, false, true), End: p.s.Beside(at, true, true)})
	default:
		p.s.ChooseNone()
		p.s.PutCaret(at, e.Modifier&fyne.KeyModifierShift != 0)
		p.dragging = true
	}
}

// TappedSecondary puts the caret, unless into what is chosen, and shows the page's menu.
func (p *Page) TappedSecondary(e *fyne.PointEvent) {
	at := p.offsetAt(e.Position.X, e.Position.Y+p.scroll)
	if c := p.s.Caret().Span(); c.Len() == 0 || at < c.Start || at > c.End {
		p.s.PutCaret(at, false)
	}
	p.Menu(e.AbsolutePosition)
}

// CaretPlace is where the caret stands, below its line.
func (p *Page) CaretPlace() fyne.Position { return p.PlaceOf(p.s.Caret().At) }

// PlaceOf is where a place of the rows stands on the page, below its line.
func (p *Page) PlaceOf(at int) fyne.Position {
	return p.caretPoint(at).AddXY(0, lineHeight-p.scroll)
}

// chooseRow chooses a row's words and the stitches they made.
func (p *Page) chooseRow(at int) {
	b, _, ok := p.caretLine(at)
	if !ok {
		return
	}
	if m := p.s.Made(); m != nil && len(b.works) > 0 {
		var ids []int32
		for _, w := range b.works {
			for id := m.Fabric().Rows[w].First; id < m.Fabric().Rows[w].Last; id++ {
				ids = append(ids, id)
			}
		}
		if len(ids) > 0 {
			p.s.Choose(ids, ids[0])
		}
	}
	p.s.ChooseText(diag.Span{Start: b.span.Start + b.head, End: b.span.End})
}

// MouseUp implements desktop.Mouseable.
func (p *Page) MouseUp(*desktop.MouseEvent) {
	p.dragging = false
	if p.carried != nil {
		p.endCarry()
	}
}

// Dragged chooses text.
func (p *Page) Dragged(e *fyne.DragEvent) {
	if p.carried != nil {
		p.carryOn(e.Position.Y + p.scroll)
		return
	}
	if p.dragging {
		p.s.PutCaret(p.offsetAt(e.Position.X, e.Position.Y+p.scroll), true)
	}
}

// DragEnd implements fyne.Draggable.
func (p *Page) DragEnd() { p.dragging = false }
