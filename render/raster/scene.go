package raster

import (
	"image"
	"image/color"
	"math"
	"sync"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/text"
)

// scene is a list made ready for one scale: what can be seen of it, with its
// symbols and letters as outlines. Bands only read it, at the same time.
type scene struct {
	toPixels   geom.Matrix
	page       image.Rectangle
	background color.Color
	outlines   *outlines
	marks      []mark
	idle       sync.Pool // bands that have been finished
}

// mark is one thing to paint: a shape placed, lines that occur once, or a picture.
type mark struct {
	box     image.Rectangle // pixels it may touch
	shape   *shape
	at      geom.Matrix // shape to pixels
	ink     color.NRGBA
	lines   *lines
	picture *picture
}

// newScene makes ready what can be seen in the pixels of view. It shares the
// outlines of the scene before, nil for none, if that is of the same scale.
func newScene(l *display.List, toPixels geom.Matrix, view image.Rectangle, background bool, before *scene) *scene {
	s := &scene{toPixels: toPixels, background: color.Transparent}
	scale := scaleOf(toPixels)
	if before != nil && before.outlines.scale == scale {
		const room = 64
		s.outlines, s.marks = before.outlines, make([]mark, 0, len(before.marks)+room)
	} else {
		s.outlines = newOutlines(scale)
	}
	if background {
		s.background = l.Background
	}
	page := toPixels.ApplyBox(geom.Box{Max: geom.Point{X: l.Width, Y: l.Height}})
	s.page = image.Rect(round(page.Min.X), round(page.Min.Y), round(page.Max.X), round(page.Max.Y))

	symbols := s.outlines.of(l)
	for _, item := range l.Items {
		switch item := item.(type) {
		case display.Use:
			if item.Symbol >= 0 && item.Symbol < len(symbols) {
				s.place(view, symbols[item.Symbol], item.At.Then(toPixels), item.Ink)
			}
		case display.Path:
			box := toPixels.ApplyBox(item.Path.Box().Grow(item.Width / 2))
			if r := pixels(box); r.Overlaps(view) {
				s.marks = append(s.marks, mark{box: r, lines: newLines(item, toPixels, s.outlines.scale)})
			}
		case display.Text:
			s.text(view, item)
		case display.Picture:
			box := toPixels.ApplyBox(geom.Box{
				Min: geom.Point{X: item.X, Y: item.Y},
				Max: geom.Point{X: item.X + item.Width, Y: item.Y + item.Height},
			})
			r := image.Rect(round(box.Min.X), round(box.Min.Y), round(box.Max.X), round(box.Max.Y))
			if item.Image != nil && r.Overlaps(view) {
				s.marks = append(s.marks, mark{box: r, picture: newPicture(item.Image, r.Size())})
			}
		}
	}
	return s
}

// place adds a shape to the marks if it can be seen. Its place is rounded, finer than eyes
// can tell, so that it is the same wherever on its page it comes from.
func (s *scene) place(view image.Rectangle, shape *shape, at geom.Matrix, ink color.NRGBA) {
	at.E, at.F = math.Round(at.E*placeSteps)/placeSteps, math.Round(at.F*placeSteps)/placeSteps
	if box := pixels(at.ApplyBox(shape.box)); box.Overlaps(view) {
		s.marks = append(s.marks, mark{box: box, shape: shape, at: at, ink: ink})
	}
}

// placeSteps is how many places are told apart along one pixel.
const placeSteps = 256

// text adds the letters of a line, all halos first so that none covers a neighbour.
func (s *scene) text(view image.Rectangle, t display.Text) {
	place := t.Place().Then(s.toPixels)
	around := geom.Box{ // no letter goes farther than an em from the line
		Min: geom.Point{X: -t.Size, Y: -1.5 * t.Size},
		Max: geom.Point{X: text.Width(t.Face, t.Text, t.Size) + t.Size, Y: t.Size},
	}
	if !pixels(place.ApplyBox(around)).Overlaps(view) {
		return
	}
	glyphs, _ := text.Set(t.Face, t.Text)
	add := func(halo float64, ink color.NRGBA) {
		for _, g := range glyphs {
			shape := s.outlines.letter(letter{t.Face, g.Index, t.Size, halo})
			s.place(view, shape, geom.Translate(g.X*t.Size, 0).Then(place), ink)
		}
	}
	if t.Halo.A > 0 {
		add(t.HaloWidth(), t.Halo)
	}
	add(0, t.Fill)
}

// scaleOf is how much longer m makes lengths, on the whole.
func scaleOf(m geom.Matrix) float64 { return math.Sqrt(math.Abs(m.A*m.D - m.B*m.C)) }

// farthest is how large, in pixels, a thing may be and still be painted: the
// rasteriser goes through every row of it, seen or not.
const farthest = 1 << 22

// pixels are the pixels that a box touches; none if it is not a box of sensible size.
func pixels(b geom.Box) image.Rectangle {
	if !(b.Width() >= 0 && b.Height() >= 0 && b.Width() < farthest && b.Height() < farthest) { // nor if it is not a number
		return image.Rectangle{}
	}
	return image.Rect(whole(math.Floor(b.Min.X)), whole(math.Floor(b.Min.Y)), whole(math.Ceil(b.Max.X)), whole(math.Ceil(b.Max.Y)))
}

func round(v float64) int { return whole(math.Round(v)) }

// whole is v as an int; what lies beyond any picture is brought to its edge.
func whole(v float64) int { return int(min(max(v, -1<<30), 1<<30)) }
