package app

import (
	"image"
	"image/color"
	"math"

	"fyne.io/fyne/v2/canvas"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/render/raster"
)

// leaf shows a drawing as it prints, on paper, scrolled where it is long.
type leaf struct {
	scroll float32 // px of the window
	tall   float32

	painted *image.RGBA
	of      leafKey
}

type leafKey struct {
	list   *display.List
	size   image.Point
	scroll float32
}

// Paper px to the mm at which a leaf's letters are as large as the window's own.
const (
	leafMost  = 5.2
	leafLeast = 3.2
)

// draw puts the part of the drawing in sight into a place of the panel; upright says
// that it is to be seen whole rather than scrolled.
func (l *leaf) draw(d *control.Canvas, k theme.Tokens, list *display.List, x, y, w, h, scale float32, whole bool) {
	if w < 20 || h < 20 || list.Width <= 0 || list.Height <= 0 {
		return
	}
	per := min(float64(w)/list.Width, leafMost)
	if whole {
		per = min(per, float64(h)/list.Height)
	} else if near := float64(h) / list.Height; per > near && per < 1.3*near {
		per = near // a little smaller, and the whole of it is seen
	} else {
		per = max(per, min(leafLeast, float64(w)/list.Width))
	}
	l.tall = float32(list.Height * per)
	l.scroll = max(0, min(l.scroll, l.tall-h))
	wide, high := float32(list.Width*per), min(h, l.tall)
	key := leafKey{list, image.Pt(int(wide*scale), int(high*scale)), l.scroll}
	if key != l.of {
		l.of = key
		l.painted = image.NewRGBA(image.Rectangle{Max: key.size})
		px := per * float64(scale)
		raster.PaintView(l.painted, list, geom.Scale(px, px).Then(geom.Translate(0, -math.Round(float64(l.scroll*scale)))))
	}
	picture := canvas.NewImageFromImage(l.painted)
	picture.ScaleMode = canvas.ImageScaleFastest
	left := x + (w-wide)/2
	d.Add(picture, left, y, wide, high)
	d.Frame(left-1, y-1, wide+2, high+2, 2, color.Transparent, k.Line, 1)
	if l.tall > h {
		bar := h * h / l.tall
		d.Rect(x+w-5, y+(h-bar)*l.scroll/(l.tall-h), 4, bar, 2, k.Edge)
	}
}

// move scrolls under the wheel.
func (l *leaf) move(by float32) { l.scroll -= by * 2 }
