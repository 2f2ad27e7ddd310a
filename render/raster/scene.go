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
	scale      float64 // pixels per mm
	page       image.Rectangle
	background color.Color
	marks      []mark
	letters    map[letter]*shape
	idle       sync.Pool // bands that have been finished
}

// mark is one thing to paint: a shape placed, a path, or a picture.
type mark struct {
	box     image.Rectangle // pixels it may touch
	shape   *shape
	at      geom.Matrix // shape to pixels
	ink     color.NRGBA
	path    *display.Path
	picture *picture
}

// letter is a glyph as it is drawn in one face and size, or the halo behind it.
type letter struct {
	face  display.Face
	index uint16
	size  float64 // mm
	halo  bool
}

// newScene makes ready what can be seen in the pixels of view.
func newScene(l *display.List, toPixels geom.Matrix, view image.Rectangle, background bool) *scene {
	s := &scene{
		toPixels:   toPixels,
		scale:      scaleOf(toPixels),
		background: color.Transparent,
		letters:    map[letter]*shape{},
	}
	if background {
		s.background = l.Background
	}
	page := toPixels.ApplyBox(geom.Box{Max: geom.Point{X: l.Width, Y: l.Height}})
	s.page = image.Rect(round(page.Min.X), round(page.Min.Y), round(page.Max.X), round(page.Max.Y))

	symbols := s.symbols(l)
	for _, item := range l.Items {
		switch item := item.(type) {
		case display.Use:
			if item.Symbol >= 0 && item.Symbol < len(symbols) {
				s.place(view, symbols[item.Symbol], item.At.Then(toPixels), item.Ink)
			}
		case display.Path:
			box := toPixels.ApplyBox(item.Path.Box().Grow(item.Width / 2))
			if r := pixels(box); r.Overlaps(view) {
				s.marks = append(s.marks, mark{box: r, path: &item})
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

// symbols are the shapes of a list's symbols, as fine as their largest use needs.
func (s *scene) symbols(l *display.List) []*shape {
	largest := make([]float64, len(l.Symbols))
	for _, item := range l.Items {
		if u, ok := item.(display.Use); ok && u.Symbol >= 0 && u.Symbol < len(largest) {
			largest[u.Symbol] = max(largest[u.Symbol], scaleOf(u.At))
		}
	}
	shapes := make([]*shape, len(l.Symbols))
	for i, symbol := range l.Symbols {
		shapes[i] = newShape(symbol.Paths, largest[i]*s.scale)
	}
	return shapes
}

// place adds a shape to the marks if it can be seen.
func (s *scene) place(view image.Rectangle, shape *shape, at geom.Matrix, ink color.NRGBA) {
	if box := pixels(at.ApplyBox(shape.box)); box.Overlaps(view) {
		s.marks = append(s.marks, mark{box: box, shape: shape, at: at, ink: ink})
	}
}

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
	add := func(halo bool, ink color.NRGBA) {
		for _, g := range glyphs {
			key := letter{t.Face, g.Index, t.Size, halo}
			shape := s.letters[key]
			if shape == nil {
				shape = s.letter(key, t.HaloWidth())
				s.letters[key] = shape
			}
			s.place(view, shape, geom.Translate(g.X*t.Size, 0).Then(place), ink)
		}
	}
	if t.Halo.A > 0 {
		add(true, t.Halo)
	}
	add(false, t.Fill)
}

func (s *scene) letter(l letter, haloWidth float64) *shape {
	path := display.Path{
		Path: text.Letter(l.face, l.index).Transform(geom.Scale(l.size, l.size)),
		Fill: display.Ink,
	}
	if l.halo {
		path.Stroke, path.Width = display.Ink, haloWidth
	}
	return newShape([]display.Path{path}, s.scale)
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
