// Package display is the display list: what the chart hands to the painters.
//
// A List holds a few kinds of items, in drawing order, in millimetres with y
// downward. It knows no crochet; painters (raster, SVG, PDF, screen) know
// nothing but it. Each group carries an id, so that a click on any picture and
// an element of any SVG find the stitch it was drawn for.
package display

import (
	"image"
	"image/color"

	"strandway/chart/geom"
	"strandway/chart/text"
)

// List is a drawing: its size in millimetres, the symbols it uses, its items in order.
type List struct {
	Width, Height float64     // mm
	Origin        geom.Point  // where the origin of what was laid out falls on the page, mm
	Background    color.NRGBA // A = 0: none
	Title, Desc   string      // for accessibility
	Symbols       []Symbol    // shapes drawn many times; Use refers to them by index
	Items         []Item
}

// Symbol is a shape that is placed many times, in its own coordinates (mm, y downward, before placing).
type Symbol struct {
	Name  string
	Paths []Path // Stroke and Fill colours with A = 0 and Inherit set take the colour of the Use
}

// Item is a Path, Use, Text, Image, Begin or End.
type Item interface{ item() }

// Path is an outline, stroked and filled.
type Path struct {
	Path   geom.Path
	Stroke Paint
	Width  float64   // mm; round caps and joins always
	Dash   []float64 // mm on, off; nil = solid
	Fill   Paint
}

// Paint is a colour, none, or the colour inherited from the Use that places it.
type Paint struct {
	Colour  color.NRGBA
	On      bool // false: not painted
	Inherit bool // take the Use's Ink
}

// Solid is a paint of one colour.
func Solid(c color.NRGBA) Paint { return Paint{Colour: c, On: true} }

// Ink is the paint inherited from the Use.
var Ink = Paint{On: true, Inherit: true}

// Use places a symbol.
type Use struct {
	Symbol int
	At     geom.Matrix // symbol to page
	Ink    color.NRGBA
}

// Anchor says which point of a text stands at its place.
type Anchor uint8

const (
	Start Anchor = iota
	Middle
	Finish
)

// Text is one line of text, in one of the embedded faces.
type Text struct {
	X, Y   float64 // mm: the baseline's start, middle or end
	Size   float64 // mm: the em
	Anchor Anchor
	Face   Face
	Fill   color.NRGBA
	Halo   color.NRGBA // A = 0: none; drawn as an outline of a fifth of the size behind the letters
	Angle  float64     // radians, clockwise as seen
	Text   string
}

// Face is one of the faces embedded in assets/fonts.
type Face = text.Face

const (
	Sans        = text.Sans
	SansBold    = text.SansBold
	Serif       = text.Serif
	SerifItalic = text.SerifItalic
)

// Picture is a raster image in a rectangle.
type Picture struct {
	X, Y, Width, Height float64 // mm
	Image               image.Image
	Alt                 string
}

// Begin opens a group, End closes it. Groups nest.
type Begin struct {
	ID     string // "r4", "s112": goes into the SVG as it is, must be unique
	Class  string // "row", "stitch", "numbers", "key"
	Title  string // for accessibility and hover: "Row 4", "dc in next ch-2 sp"
	Stitch int32  // the stitch drawn here, or -1
}

// End closes the group that was opened last.
type End struct{}

func (Path) item()    {}
func (Use) item()     {}
func (Text) item()    {}
func (Picture) item() {}
func (Begin) item()   {}
func (End) item()     {}
