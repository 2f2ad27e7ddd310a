package raster

import (
	"slices"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/text"
)

// outlines are symbols and letters at one scale, each stroked once. Scenes of one scale may share
// them, one after the other.
type outlines struct {
	scale   float64 // pixels per mm
	symbols []symbol
	letters map[letter]*shape
}

// symbol is a symbol of a list, as fine as its largest use needs.
type symbol struct {
	paths   []display.Path
	largest float64
	shape   *shape
}

// letter is a glyph as it is drawn in one face and size, or the halo behind it.
type letter struct {
	face  display.Face
	index uint16
	size  float64 // mm
	halo  float64 // its width, mm; 0 for the letter itself
}

func newOutlines(scale float64) *outlines {
	return &outlines{scale: scale, letters: map[letter]*shape{}}
}

// of are the shapes of a list's symbols. Those of earlier lists that have gone are forgotten.
func (o *outlines) of(l *display.List) []*shape {
	largest := make([]float64, len(l.Symbols))
	for _, item := range l.Items {
		if u, ok := item.(display.Use); ok && u.Symbol >= 0 && u.Symbol < len(largest) {
			largest[u.Symbol] = max(largest[u.Symbol], scaleOf(u.At))
		}
	}
	symbols, shapes := make([]symbol, len(l.Symbols)), make([]*shape, len(l.Symbols))
	for i, s := range l.Symbols {
		symbols[i] = o.symbol(s.Paths, largest[i])
		shapes[i] = symbols[i].shape
	}
	o.symbols = symbols
	return shapes
}

func (o *outlines) symbol(paths []display.Path, largest float64) symbol {
	for _, s := range o.symbols {
		if s.largest == largest && slices.EqualFunc(s.paths, paths, samePath) {
			return s
		}
	}
	return symbol{paths, largest, newShape(paths, largest*o.scale)}
}

func samePath(a, b display.Path) bool {
	return a.Stroke == b.Stroke && a.Fill == b.Fill && a.Width == b.Width && slices.Equal(a.Dash, b.Dash) &&
		slices.Equal(a.Path.Verbs, b.Path.Verbs) && slices.Equal(a.Path.Points, b.Path.Points)
}

func (o *outlines) letter(l letter) *shape {
	s := o.letters[l]
	if s == nil {
		path := display.Path{
			Path: text.Letter(l.face, l.index).Transform(geom.Scale(l.size, l.size)),
			Fill: display.Ink,
		}
		if l.halo > 0 {
			path.Stroke, path.Width = display.Ink, l.halo
		}
		s = newShape([]display.Path{path}, o.scale)
		o.letters[l] = s
	}
	return s
}
