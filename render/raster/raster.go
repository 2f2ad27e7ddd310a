// Package raster paints display lists as pixels: a whole picture, a view on a
// screen, or a PNG streamed to a file.
//
// A picture is painted in bands, each by one goroutine. A band's sheet is a gg
// context, which draws the lines that occur once. Symbols and letters, which
// occur by the thousand, are stroked into outlines once and then filled by the
// rasteriser that gg is built on: gg would stroke each of them anew. Both go
// through every row of the sheet for each outline, which is why bands are low.
package raster

import (
	"context"
	"image"
	"image/color"
	"image/draw"
	"math"
	"runtime"
	"sync"
	"sync/atomic"

	"strandway/chart/display"
	"strandway/chart/geom"
)

// Options say how a list becomes a picture.
type Options struct {
	DPI         float64 // pixels per inch; 0 is 300
	Transparent bool    // leave the page's background out
	Grey        bool    // shades of grey, for a printer without colour
}

// bandRows is the height of a band in pixels: high enough that few symbols fall
// on two.
const bandRows = 128

const mmPerInch = 25.4

func (o Options) dpi() float64 {
	if o.DPI <= 0 {
		return 300
	}
	return o.DPI
}

// Size is the size in pixels of a list's picture.
func Size(l *display.List, o Options) image.Point {
	k := o.dpi() / mmPerInch
	return image.Pt(max(1, int(math.Round(l.Width*k))), max(1, int(math.Round(l.Height*k))))
}

// Paint is the picture of a list.
func Paint(l *display.List, o Options) *image.RGBA {
	dst := image.NewRGBA(image.Rectangle{Max: Size(l, o)})
	k := o.dpi() / mmPerInch
	paint(dst, newScene(l, geom.Scale(k, k), dst.Rect, !o.Transparent, nil))
	if o.Grey {
		turnGrey(dst)
	}
	return dst
}

// PaintView paints what a screen shows of a list over dst. The map toPixels
// scales and shifts the page's millimetres to the pixels of dst; only the page
// itself gets the list's background.
func PaintView(dst *image.RGBA, l *display.List, toPixels geom.Matrix) {
	paint(dst, newScene(l, toPixels, dst.Rect, true, nil))
}

// paint shares the bands of dst out among the processors.
func paint(dst *image.RGBA, s *scene) {
	n := (dst.Rect.Dy() + bandRows - 1) / bandRows
	inParallel(context.Background(), n, func(i int) {
		y := dst.Rect.Min.Y + i*bandRows
		s.paint(dst.SubImage(image.Rect(dst.Rect.Min.X, y, dst.Rect.Max.X, y+bandRows)).(*image.RGBA))
	})
}

// inParallel does jobs 0 to n-1 with one worker a processor, until ctx is done.
func inParallel(ctx context.Context, n int, do func(int)) error {
	var wait sync.WaitGroup
	var next atomic.Int64
	for range min(n, runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < n && ctx.Err() == nil; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	wait.Wait()
	return ctx.Err()
}

// paint paints the scene's part of a band over it.
func (s *scene) paint(dst *image.RGBA) {
	s.onBand(dst, func(b *band) {
		draw.Draw(b.sheet, s.page, image.NewUniform(s.background), image.Point{}, draw.Over)
		for i := range s.marks {
			if m := &s.marks[i]; m.box.Overlaps(dst.Rect) {
				b.mark(m)
			}
		}
	})
}

// onBand paints on a band with one that is idle.
func (s *scene) onBand(dst *image.RGBA, paint func(*band)) {
	if dst.Rect.Empty() {
		return
	}
	b, _ := s.idle.Get().(*band)
	if b == nil {
		b = &band{}
	}
	defer s.idle.Put(b)
	b.begin(dst)
	defer b.finish()
	paint(b)
}

func (b *band) mark(m *mark) {
	switch {
	case m.shape != nil:
		b.fill(m.shape, m.at, m.ink)
	case m.lines != nil:
		b.lines(m.lines)
	default:
		m.picture.paint(b.sheet, m.box)
	}
}

// turnGrey makes every pixel the grey that is as light.
func turnGrey(m *image.RGBA) {
	for i := 0; i+3 < len(m.Pix); i += 4 {
		p := m.Pix[i : i+4 : i+4]
		y := color.GrayModel.Convert(color.RGBA{R: p[0], G: p[1], B: p[2], A: 255}).(color.Gray).Y
		p[0], p[1], p[2] = y, y, y
	}
}
