package pdf

import (
	"fmt"
	"image/color"
	"math"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/text"
)

// Paper is what a list is printed on.
type Paper uint8

const (
	AsDrawn Paper = iota // a page as large as the list
	A4
	Letter
)

// size is the width and height of an upright sheet in mm.
func (p Paper) size() (width, height float64) {
	if p == Letter {
		return 215.9, 279.4
	}
	return 210, 297
}

const (
	margin  = 10. // mm: what home printers leave white
	overlap = 10. // mm that neighbouring sheets both show
)

// sheet is one page of the file and the part of a list on it.
type sheet struct {
	width, height float64
	part          geom.Box   // of the list
	at            geom.Point // where the part's upper left corner lies on the sheet
	column, row   int        // from 0
	columns, rows int
	title         string
}

func (s sheet) tiled() bool { return s.columns*s.rows > 1 }

// place maps the list's millimetres to the sheet's points, which have y upward.
func (s sheet) place() geom.Matrix {
	return geom.Translate(s.at.X-s.part.Min.X, s.at.Y-s.part.Min.Y).
		Then(geom.Scale(pointsPerMM, -pointsPerMM)).
		Then(geom.Translate(0, s.height*pointsPerMM))
}

// sheets spreads a list over as few sheets as can be, upright or lying, row by row.
func sheets(l *display.List, paper Paper) []sheet {
	whole := geom.Box{Max: geom.Point{X: l.Width, Y: l.Height}}
	if paper == AsDrawn {
		return []sheet{{width: l.Width, height: l.Height, part: whole, columns: 1, rows: 1}}
	}
	width, height := paper.size()
	if len(spread(l, height, width)) < len(spread(l, width, height)) {
		width, height = height, width
	}
	return spread(l, width, height)
}

func spread(l *display.List, width, height float64) []sheet {
	const slack = .5 // a page drawn for this paper has its own margins
	if l.Width <= width+slack && l.Height <= height+slack {
		edge := margin
		if l.Width > width-2*margin || l.Height > height-2*margin {
			edge = 0
		}
		return []sheet{{
			width: width, height: height, columns: 1, rows: 1,
			part: geom.Box{Max: geom.Point{X: l.Width, Y: l.Height}},
			at:   geom.Point{X: (width - l.Width) / 2, Y: min(edge, (height-l.Height)/2)},
		}}
	}
	columns, partWidth := share(l.Width, width-2*margin)
	rows, partHeight := share(l.Height, height-2*margin)
	var all []sheet
	for row := range rows {
		for column := range columns {
			corner := geom.Point{X: float64(column) * (partWidth - overlap), Y: float64(row) * (partHeight - overlap)}
			all = append(all, sheet{
				width: width, height: height, title: l.Title,
				part:   geom.Box{Min: corner, Max: corner.Add(geom.Point{X: partWidth, Y: partHeight})},
				at:     geom.Point{X: (width - partWidth) / 2, Y: (height - partHeight) / 2},
				column: column, row: row, columns: columns, rows: rows,
			})
		}
	}
	return all
}

// share divides a length into equal parts that overlap and are no longer than most.
func share(length, most float64) (n int, part float64) {
	if length <= most {
		return 1, length
	}
	n = int(math.Ceil((length - overlap) / (most - overlap)))
	return n, (length-overlap)/float64(n) + overlap
}

const (
	tick      = 4. // mm
	labelSize = 3. // mm
)

// marks draws into the margins, beside every edge that joins another sheet, where
// the middle of the overlap runs: sheets lie right when their marks meet.
func (d *document) marks(c *content, s sheet) {
	grey := color.NRGBA{R: 110, G: 110, B: 110, A: 255}
	c.op("q").matrix(s.place()).op("cm 1 J 1 j")
	var lines geom.Path
	line := func(x0, y0, x1, y1 float64) {
		lines.MoveTo(geom.Point{X: x0, Y: y0})
		lines.LineTo(geom.Point{X: x1, Y: y1})
	}
	p := s.part
	upright := func(x float64) {
		line(x, p.Min.Y-tick-1, x, p.Min.Y-1)
		line(x, p.Max.Y+1, x, p.Max.Y+tick+1)
	}
	lying := func(y float64) {
		line(p.Min.X-tick-1, y, p.Min.X-1, y)
		line(p.Max.X+1, y, p.Max.X+tick+1, y)
	}
	if s.column > 0 {
		upright(p.Min.X + overlap/2)
	}
	if s.column < s.columns-1 {
		upright(p.Max.X - overlap/2)
	}
	if s.row > 0 {
		lying(p.Min.Y + overlap/2)
	}
	if s.row < s.rows-1 {
		lying(p.Max.Y - overlap/2)
	}
	d.path(c, display.Path{Path: lines, Stroke: display.Solid(grey), Width: .2})
	label := fmt.Sprintf("sheet %d of %d: column %d of %d, row %d of %d; join where the marks meet",
		s.row*s.columns+s.column+1, s.columns*s.rows, s.column+1, s.columns, s.row+1, s.rows)
	if s.title != "" {
		label = s.title + ", " + label
	}
	size := labelSize * min(1, (p.Width()-2*overlap)/text.Width(display.Sans, label, labelSize))
	d.text(c, display.Text{
		X: p.Centre().X, Y: p.Max.Y + 1 + tick, Size: size, Anchor: display.Middle, Fill: grey, Text: label,
	})
	c.op("Q")
}
