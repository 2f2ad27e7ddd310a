package app

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// Measures of the window, px.
const (
	headHeight     = 44
	trayHeight     = 54
	stripHeight    = 76
	statusHeight   = 28
	findingsHeight = 136
	leastRows      = 340
	lowWindow      = 760 // below it the findings fold into the status line
)

// deskLayout puts the panes of the window side by side.
type deskLayout struct{ w *window }

// MinSize implements fyne.Layout.
func (l *deskLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(800, 520) }

// Layout implements fyne.Layout.
func (l *deskLayout) Layout(_ []fyne.CanvasObject, s fyne.Size) {
	w := l.w
	left := w.rowsWidth(s.Width)
	bottom := s.Height - statusHeight
	right := s.Width - left - 1
	x := left + 1

	rowsBottom := bottom
	if s.Height >= lowWindow {
		rowsBottom -= findingsHeight
		w.findings.Show()
		put(w.findings, 0, rowsBottom+1, left, findingsHeight-1)
	} else {
		w.findings.Hide()
	}
	put(w.head, 0, 0, left, headHeight-1)
	put(w.page, 0, headHeight, left, rowsBottom-headHeight)
	put(w.tabs, x, 0, right, headHeight-1)
	top := float32(headHeight)
	if w.notice.Visible() {
		put(w.notice, x, top, right, noticeHeight-1)
		top += noticeHeight
	}
	if w.view == makeView {
		put(w.tray, x, top, right, trayHeight-1)
		top += trayHeight
	}
	stripTop := bottom
	if w.view != startView && w.view != teachView {
		stripTop -= stripHeight
		put(w.strip, x, stripTop+1, right, stripHeight-1)
	}
	for _, o := range []fyne.CanvasObject{w.pair, w.colour, w.strands, w.sizes, w.start, w.teach} {
		if o.Visible() {
			put(o, x, top, right, stripTop-top)
		}
	}
	put(w.status, 0, bottom, s.Width, statusHeight)
	put(w.divider, left-3, 0, 7, bottom)
	w.teach.SetAlone(w.alone)
	if w.alone {
		put(w.teach, 0, 0, s.Width, s.Height)
	}

	lines := w.lines
	put(lines[0], left, 0, 1, bottom)
	put(lines[1], 0, headHeight-1, s.Width, 1)
	put(lines[2], x, top-1, right, 1)
	visible(lines[2], w.view == makeView)
	put(lines[3], x, stripTop, right, 1)
	visible(lines[3], w.view != startView && w.view != teachView)
	put(lines[4], 0, rowsBottom, left, 1)
	visible(lines[4], w.findings.Visible())
}

func visible(r *canvas.Rectangle, on bool) {
	if on != r.Visible() {
		if on {
			r.Show()
		} else {
			r.Hide()
		}
	}
}

func put(o fyne.CanvasObject, x, y, w, h float32) {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(w, h))
}

// rowsWidth is the width of the rows page in a window of a width.
func (w *window) rowsWidth(whole float32) float32 {
	width := w.set.Rows
	if width == 0 {
		switch {
		case whole < 1200:
			width = 384
		case whole < 2000:
			width = 536
		default:
			width = 640
		}
	}
	return max(leastRows, min(width, whole/2))
}

// divider is the edge between rows and pictures, which can be dragged.
type divider struct {
	widget.BaseWidget
	w *window
}

func newDivider(w *window) *divider {
	d := &divider{w: w}
	d.ExtendBaseWidget(d)
	return d
}

// CreateRenderer implements fyne.Widget.
func (d *divider) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(canvas.NewRectangle(color.Transparent))
}

// Cursor implements desktop.Cursorable.
func (d *divider) Cursor() desktop.Cursor { return desktop.HResizeCursor }

// Dragged moves the edge.
func (d *divider) Dragged(e *fyne.DragEvent) {
	d.w.moveDivider(e.Dragged.DX)
}

// DragEnd implements fyne.Draggable.
func (d *divider) DragEnd() {}

func (w *window) moveDivider(by float32) {
	whole := w.desk.Size().Width
	w.set.Rows = max(leastRows, min(w.rowsWidth(whole)+by, whole/2))
	w.desk.Refresh()
}
