// Package control holds the small parts the window is put together from:
// words, buttons, fields and sheets that look and behave alike everywhere.
package control

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Text is a line of the program's own words.
func Text(s string, size float32, bold bool, c color.Color) *canvas.Text {
	return &canvas.Text{Text: s, TextSize: size, TextStyle: fyne.TextStyle{Bold: bold}, Color: c}
}

// Width is the width of a line of the program's own words, px.
func Width(s string, size float32, bold bool) float32 {
	return fyne.MeasureText(s, size, fyne.TextStyle{Bold: bold}).Width
}

// Fitted is s shortened with an ellipsis until it is no wider than width.
func Fitted(s string, size float32, bold bool, width float32) string {
	if Width(s, size, bold) <= width {
		return s
	}
	r := []rune(s)
	for len(r) > 0 && Width(string(r)+"…", size, bold) > width {
		r = r[:len(r)-1]
	}
	return string(r) + "…"
}

// Canvas puts objects at fixed places; it is what the window's own widgets draw on.
type Canvas struct{ Objects []fyne.CanvasObject }

// Rect puts a filled rectangle.
func (d *Canvas) Rect(x, y, w, h, radius float32, fill color.Color) *canvas.Rectangle {
	r := canvas.NewRectangle(fill)
	r.CornerRadius = radius
	d.put(r, x, y, w, h)
	return r
}

// Frame puts a rectangle with an edge.
func (d *Canvas) Frame(x, y, w, h, radius float32, fill, edge color.Color, width float32) {
	r := d.Rect(x, y, w, h, radius, fill)
	r.StrokeColor, r.StrokeWidth = edge, width
}

// Words puts a line of words whose left end is x and whose middle is y.
func (d *Canvas) Words(s string, x, y, size float32, bold bool, c color.Color) float32 {
	t := Text(s, size, bold, c)
	m := t.MinSize()
	d.put(t, x, y-m.Height/2, m.Width, m.Height)
	return x + m.Width
}

// WordsRight puts a line of words whose right end is x.
func (d *Canvas) WordsRight(s string, x, y, size float32, bold bool, c color.Color) float32 {
	w := Width(s, size, bold)
	d.Words(s, x-w, y, size, bold, c)
	return x - w
}

// WordsMid puts a line of words whose middle is x.
func (d *Canvas) WordsMid(s string, x, y, size float32, bold bool, c color.Color) {
	d.Words(s, x-Width(s, size, bold)/2, y, size, bold, c)
}

// More puts the small arrow that says that there are others to choose, and gives its right end.
func (d *Canvas) More(x, y float32, c color.Color) float32 {
	const half = 4
	for _, to := range []float32{x, x + 2*half} {
		l := canvas.NewLine(c)
		l.StrokeWidth = 1.5
		l.Position1, l.Position2 = fyne.NewPos(to, y-half/2), fyne.NewPos(x+half, y+half/2)
		d.Objects = append(d.Objects, l)
	}
	return x + 2*half
}

// Icon puts an icon of 20 units a side, scaled to size.
func (d *Canvas) Icon(r fyne.Resource, x, y, size float32) {
	d.put(canvas.NewImageFromResource(r), x, y, size, size)
}

// Add puts any object.
func (d *Canvas) Add(o fyne.CanvasObject, x, y, w, h float32) { d.put(o, x, y, w, h) }

func (d *Canvas) put(o fyne.CanvasObject, x, y, w, h float32) {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(w, h))
	d.Objects = append(d.Objects, o)
}
