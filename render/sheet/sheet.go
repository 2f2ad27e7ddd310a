// Package sheet spreads drawings over sheets of paper: one where they fit, else
// several that overlap, with marks to join them by.
package sheet

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
	Margin  = 10. // mm: what home printers leave white
	Overlap = 10. // mm that neighbouring sheets both show
)

// Sheet is one sheet of paper and the part of a list on it.
type Sheet struct {
	Width, Height float64    // mm
	Part          geom.Box   // of the list
	At            geom.Point // where the part's upper left corner lies on the sheet
	Column, Row   int        // from 0
	Columns, Rows int
	Title         string
}

// Tiled reports whether the sheet is one of several to be joined.
func (s Sheet) Tiled() bool { return s.Columns*s.Rows > 1 }

// Spread spreads a list over as few sheets as can be, upright or lying, row by row.
func Spread(l *display.List, paper Paper) []Sheet {
	whole := geom.Box{Max: geom.Point{X: l.Width, Y: l.Height}}
	if paper == AsDrawn {
		return []Sheet{{Width: l.Width, Height: l.Height, Part: whole, Columns: 1, Rows: 1}}
	}
	width, height := paper.size()
	if len(spread(l, height, width)) < len(spread(l, width, height)) {
		width, height = height, width
	}
	return spread(l, width, height)
}

func spread(l *display.List, width, height float64) []Sheet {
	const slack = .5 // a page drawn for this paper has its own margins
	if l.Width <= width+slack && l.Height <= height+slack {
		edge := Margin
		if l.Width > width-2*Margin || l.Height > height-2*Margin {
			edge = 0
		}
		return []Sheet{{
			Width: width, Height: height, Columns: 1, Rows: 1,
			Part: geom.Box{Max: geom.Point{X: l.Width, Y: l.Height}},
			At:   geom.Point{X: (width - l.Width) / 2, Y: min(edge, (height-l.Height)/2)},
		}}
	}
	columns, partWidth := share(l.Width, width-2*Margin)
	rows, partHeight := share(l.Height, height-2*Margin)
	var all []Sheet
	for row := range rows {
		for column := range columns {
			corner := geom.Point{X: float64(column) * (partWidth - Overlap), Y: float64(row) * (partHeight - Overlap)}
			all = append(all, Sheet{
				Width: width, Height: height, Title: l.Title,
				Part:   geom.Box{Min: corner, Max: corner.Add(geom.Point{X: partWidth, Y: partHeight})},
				At:     geom.Point{X: (width - partWidth) / 2, Y: (height - partHeight) / 2},
				Column: column, Row: row, Columns: columns, Rows: rows,
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
	n = int(math.Ceil((length - Overlap) / (most - Overlap)))
	return n, (length-Overlap)/float64(n) + Overlap
}

const (
	tick      = 4. // mm
	labelSize = 3. // mm
)

// Marks are lines in the margins, beside every edge that joins another sheet,
// where the middle of the overlap runs, and a label that says which sheet this
// is. Sheets lie right when their marks meet. Both are in the list's millimetres.
func (s Sheet) Marks() (display.Path, display.Text) {
	grey := color.NRGBA{R: 110, G: 110, B: 110, A: 255}
	var lines geom.Path
	line := func(x0, y0, x1, y1 float64) {
		lines.MoveTo(geom.Point{X: x0, Y: y0})
		lines.LineTo(geom.Point{X: x1, Y: y1})
	}
	p := s.Part
	upright := func(x float64) {
		line(x, p.Min.Y-tick-1, x, p.Min.Y-1)
		line(x, p.Max.Y+1, x, p.Max.Y+tick+1)
	}
	lying := func(y float64) {
		line(p.Min.X-tick-1, y, p.Min.X-1, y)
		line(p.Max.X+1, y, p.Max.X+tick+1, y)
	}
	if s.Column > 0 {
		upright(p.Min.X + Overlap/2)
	}
	if s.Column < s.Columns-1 {
		upright(p.Max.X - Overlap/2)
	}
	if s.Row > 0 {
		lying(p.Min.Y + Overlap/2)
	}
	if s.Row < s.Rows-1 {
		lying(p.Max.Y - Overlap/2)
	}
	label := fmt.Sprintf("sheet %d of %d: column %d of %d, row %d of %d; join where the marks meet",
		s.Row*s.Columns+s.Column+1, s.Columns*s.Rows, s.Column+1, s.Columns, s.Row+1, s.Rows)
	if s.Title != "" {
		label = s.Title + ", " + label
	}
	size := labelSize * min(1, (p.Width()-2*Overlap)/text.Width(display.Sans, label, labelSize))
	return display.Path{Path: lines, Stroke: display.Solid(grey), Width: .2}, display.Text{
		X: p.Centre().X, Y: p.Max.Y + 1 + tick, Size: size, Anchor: display.Middle, Fill: grey, Text: label,
	}
}

// Page is the sheet as a list of its own, for painters that know no paper: the
// margins are covered, and marks stand in them.
func (s Sheet) Page(l *display.List) *display.List {
	page := &display.List{Width: s.Width, Height: s.Height, Background: l.Background, Title: l.Title, Desc: l.Desc, Symbols: l.Symbols}
	page.Items = append(page.Items, l.Items...)
	if s.Tiled() {
		far := math.Hypot(l.Width, l.Height)
		cover := func(x0, y0, x1, y1 float64) {
			var p geom.Path
			p.MoveTo(geom.Point{X: x0, Y: y0})
			p.LineTo(geom.Point{X: x1, Y: y0})
			p.LineTo(geom.Point{X: x1, Y: y1})
			p.LineTo(geom.Point{X: x0, Y: y1})
			p.Close()
			page.Items = append(page.Items, display.Path{Path: p, Fill: display.Solid(l.Background)})
		}
		a, b := s.Part.Min, s.Part.Max
		cover(a.X-far, a.Y-far, a.X, b.Y+far)
		cover(b.X, a.Y-far, b.X+far, b.Y+far)
		cover(a.X-far, a.Y-far, b.X+far, a.Y)
		cover(a.X-far, b.Y, b.X+far, b.Y+far)
		lines, label := s.Marks()
		page.Items = append(page.Items, lines, label)
	}
	page.Move(s.At.X-s.Part.Min.X, s.At.Y-s.Part.Min.Y)
	return page
}
