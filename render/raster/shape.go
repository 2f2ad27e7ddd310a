package raster

import (
	"math"

	"github.com/golang/freetype/raster"
	"golang.org/x/image/math/fixed"

	"strandway/chart/display"
	"strandway/chart/geom"
)

// flatness is how far, in pixels, straight lines may stray from the curve they stand for.
const flatness = .1

// shape is a symbol or a letter as filled outlines, stroked once and placed often.
type shape struct {
	box    geom.Box
	layers []layer
}

// layer is an outline in one paint: the shape's points wound about by its loops.
type layer struct {
	paint display.Paint
	loops [][]geom.Point
}

// newShape outlines paths so that they hold at a scale of so many pixels per unit.
// Strokes of one paint that follow each other make one layer, so that no seam shows where they meet.
func newShape(paths []display.Path, scale float64) *shape {
	s := &shape{box: geom.Empty()}
	if scale <= 0 {
		return s
	}
	stroked := false // whether the last layer is of strokes
	for _, p := range paths {
		runs := p.Path.Flatten(flatness / scale)
		if p.Fill.On {
			s.add(p.Fill, fillLoops(runs), false)
			stroked = false
		}
		if p.Stroke.On {
			s.add(p.Stroke, strokeLoops(runs, p.Width, scale), stroked)
			stroked = true
		}
	}
	return s
}

func (s *shape) add(paint display.Paint, loops [][]geom.Point, join bool) {
	for _, loop := range loops {
		for _, a := range loop {
			s.box = s.box.Add(a)
		}
	}
	if last := len(s.layers) - 1; join && s.layers[last].paint == paint {
		s.layers[last].loops = append(s.layers[last].loops, loops...)
		return
	}
	s.layers = append(s.layers, layer{paint, loops})
}

func fillLoops(runs []geom.Run) [][]geom.Point {
	loops := make([][]geom.Point, len(runs))
	for i, run := range runs {
		loops[i] = run.Points
	}
	return loops
}

// strokeFineness is how many steps of the stroker's whole numbers make a
// 64th of a pixel: it drops arcs of less than half its unit.
const strokeFineness = 16

// startLength is the length of a raster.Path that has a start and no step.
const startLength = 4

// strokeLoops is the outline of lines drawn with a round pen.
func strokeLoops(runs []geom.Run, width, scale float64) [][]geom.Point {
	unit := scale * strokeFineness
	for _, run := range runs {
		for _, a := range run.Points { // what is far outside must still fit the stroker's numbers
			unit = min(unit, 1e7/max(math.Abs(a.X), math.Abs(a.Y), 1e-9))
		}
	}
	var loops recorder
	loops.unit = 1 / unit / 64
	loops.tolerance = flatness / scale
	for _, run := range runs {
		points := run.Points
		if run.Closed {
			points = append(points[:len(points):len(points)], points[0])
		}
		at := toFixed(points[0], unit)
		var line raster.Path
		line.Start(at)
		for _, a := range points[1:] {
			if next := toFixed(a, unit); next != at { // a step of no length has no direction
				line.Add1(next)
				at = next
			}
		}
		if len(line) == startLength { // a dot, as a line just long enough
			line.Add1(at.Add(fixed.Point26_6{X: strokeFineness}))
		}
		raster.Stroke(&loops, line, fixed.Int26_6(width*unit*64), raster.RoundCapper, raster.RoundJoiner)
	}
	return loops.loops
}

func toFixed(a geom.Point, unit float64) fixed.Point26_6 {
	return fixed.Point26_6{X: fixed.Int26_6(math.Round(a.X * unit * 64)), Y: fixed.Int26_6(math.Round(a.Y * unit * 64))}
}

// recorder takes down the outlines that the stroker makes.
type recorder struct {
	loops     [][]geom.Point
	unit      float64 // length of the stroker's smallest step
	tolerance float64
}

func (r *recorder) point(a fixed.Point26_6) geom.Point {
	return geom.Point{X: float64(a.X), Y: float64(a.Y)}.Mul(r.unit)
}

func (r *recorder) Start(a fixed.Point26_6) {
	r.loops = append(r.loops, []geom.Point{r.point(a)})
}

func (r *recorder) Add1(a fixed.Point26_6) {
	loop := &r.loops[len(r.loops)-1]
	*loop = append(*loop, r.point(a))
}

func (r *recorder) Add2(b, c fixed.Point26_6) {
	at, middle, end := r.at(), r.point(b), r.point(c)
	r.curve(at.Lerp(middle, 2./3), end.Lerp(middle, 2./3), end)
}

func (r *recorder) Add3(b, c, d fixed.Point26_6) {
	r.curve(r.point(b), r.point(c), r.point(d))
}

func (r *recorder) at() geom.Point {
	loop := r.loops[len(r.loops)-1]
	return loop[len(loop)-1]
}

func (r *recorder) curve(b, c, d geom.Point) {
	var p geom.Path
	p.MoveTo(r.at())
	p.CubicTo(b, c, d)
	loop := &r.loops[len(r.loops)-1]
	*loop = append(*loop, p.Flatten(r.tolerance)[0].Points[1:]...)
}
