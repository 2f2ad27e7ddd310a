package raster

import (
	"math"
	"slices"

	"strandway/chart/display"
	"strandway/chart/geom"
)

// lines is a path that occurs once, as straight lines in pixels.
type lines struct {
	runs         []geom.Run
	fill, stroke display.Paint
	width        float64   // pixels
	dash         []float64 // pixels
}

func newLines(p display.Path, toPixels geom.Matrix, scale float64) *lines {
	l := &lines{fill: p.Fill, stroke: p.Stroke, width: p.Width * scale, runs: p.Path.Transform(toPixels).Flatten(flatness)}
	for _, d := range p.Dash {
		l.dash = append(l.dash, d*scale)
	}
	for i := range l.runs {
		l.runs[i].Points = thin(l.runs[i].Points)
		for k, a := range l.runs[i].Points {
			l.runs[i].Points[k] = onGrid(a)
		}
	}
	return l
}

// same reports whether two paths are painted alike.
func (l *lines) same(k *lines) bool {
	return l.fill == k.fill && l.stroke == k.stroke && l.width == k.width && slices.Equal(l.dash, k.dash) &&
		slices.EqualFunc(l.runs, k.runs, func(a, b geom.Run) bool { return a.Closed == b.Closed && slices.Equal(a.Points, b.Points) })
}

// onGrid brings a point to the rasteriser's grid, of 64 steps a pixel. What only the last bits
// tell apart comes to the same place.
func onGrid(a geom.Point) geom.Point {
	return geom.Point{X: math.Round(a.X*64) / 64, Y: math.Round(a.Y*64) / 64}
}

// thin leaves out points less than a quarter of a pixel from the last: gg passes
// over steps shorter than an eighth, and would lose a line made of nothing else.
func thin(points []geom.Point) []geom.Point {
	const step = .25
	kept := points[:1:1]
	for _, a := range points[1:] {
		if a.Sub(kept[len(kept)-1]).Len() >= step {
			kept = append(kept, a)
		}
	}
	if len(kept) == 1 { // a dot, as a line just long enough
		dot := geom.Point{X: step / 2}
		return []geom.Point{kept[0].Sub(dot), kept[0].Add(dot)}
	}
	kept[len(kept)-1] = points[len(points)-1]
	return kept
}
