// Package schematic draws a piece to scale with its measures in cm and inches,
// all sizes nested, against a figure of known size; and the strands of a piece
// along its edges.
//
// It reads what has been measured and followed, and hands back a display list.
package schematic

import (
	"cmp"
	"fmt"
	"image"
	"image/color"
	"math"
	"slices"
	"strings"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/text"
)

// Piece is one size of a piece.
type Piece struct {
	Name              string    // of the size; "" where there is only one
	Outline           geom.Path // in any unit, y upward, as [Outline] gives it
	WidthCM, LengthCM float64   // the outline is drawn so large
	Round             bool      // worked from the middle outward
	Down              bool      // worked from the top down
}

// Options say how a schematic is drawn.
type Options struct {
	Title   string
	Against *Figure     // nil for none
	Cloth   image.Image // laid on the piece of index Shown; nil for none
	Shown   int         // the size drawn in front
	Inches  bool        // inches before cm
	Lines   int         // dimension lines each way at most, that of the size shown among them; 0 for one to each measure
}

// Sizes in mm.
const (
	room       = 170. // the longer side of the drawing, at most
	margin     = 10.
	titleSize  = 5.
	letterSize = 3.
	dimGap     = 6.5 // from one dimension line to the next
	tick       = 1.2
	hairline   = .18
	bold       = .5
)

var (
	ink   = color.NRGBA{0x22, 0x26, 0x2a, 0xff}
	faint = color.NRGBA{0x8a, 0x8e, 0x92, 0xff}
	fill  = color.NRGBA{0xf3, 0xef, 0xe6, 0xff}
	white = color.NRGBA{0xff, 0xff, 0xff, 0xff}
)

// scales are the scales 1 : n that are drawn at; the first that fits is taken.
var scales = []float64{1, 2, 2.5, 4, 5, 8, 10, 15, 20, 25, 30, 40, 50, 75, 100}

// sheet is a schematic being drawn; x and y are cm on the floor until they are put on the page.
type sheet struct {
	list   *display.List
	origin geom.Point // mm on the page of the lower left corner of the drawing
	perCM  float64    // mm on the page
	lift   float64    // of the pieces above the lower edge
	o      Options
}

// Draw draws the sizes of a piece, nested on one lower edge.
func Draw(sizes []Piece, o Options) *display.List {
	list := &display.List{Background: white, Title: o.Title, Desc: describe(sizes, o)}
	if len(sizes) == 0 {
		list.Width, list.Height = 2*margin, 2*margin
		return list
	}
	wide, high := 0.0, 0.0
	for _, p := range sizes {
		wide, high = max(wide, p.WidthCM), max(high, p.LengthCM)
	}
	figureX, pieceX, across, up := 0.0, 0.0, wide, high
	if f := o.Against; f != nil {
		up = max(high, f.Height)
		if f.Under {
			across = max(wide, f.Width)
			figureX, pieceX = (across-f.Width)/2, (across-wide)/2
		} else {
			pieceX = f.Width + .12*max(f.Width, wide)
			across = pieceX + wide
		}
	}
	per := scales[len(scales)-1]
	for i := len(scales) - 1; i >= 0 && max(across, up)*10/scales[i] <= room; i-- {
		per = scales[i]
	}
	labels := 0.0
	lengths := o.grouped(sizes, func(p Piece) float64 { return p.LengthCM })
	rows := float64(len(o.grouped(sizes, func(p Piece) float64 { return p.WidthCM })))
	for _, m := range lengths {
		labels = max(labels, text.Width(display.Sans, o.label(m), letterSize))
	}
	s := &sheet{list: list, perCM: 10 / per, o: o}
	if f := o.Against; f != nil && f.Middle && o.Shown < len(sizes) {
		s.lift = max(0, (f.Height-sizes[o.Shown].LengthCM)/2)
	}
	top := margin + titleSize + 6
	if o.Title == "" {
		top = margin
	}
	s.origin = geom.Point{X: margin, Y: top + up*s.perCM}
	list.Width = max(margin+across*s.perCM+float64(len(lengths))*dimGap+3+labels+margin, 2*margin+text.Width(display.SansBold, o.Title, titleSize), 100)
	list.Height = s.origin.Y + rows*dimGap + letterSize + 12 + margin
	s.text(margin, margin+titleSize-1, titleSize, display.Start, display.SansBold, ink, o.Title)
	note := fmt.Sprintf("scale 1 : %g", per)
	if o.Against != nil {
		note += ", against " + o.Against.Words
	}
	s.text(margin, list.Height-margin, letterSize, display.Start, display.Sans, faint, note)
	if f := o.Against; f != nil {
		s.figure(*f, figureX)
	}
	s.pieces(sizes, pieceX, wide)
	s.measures(sizes, pieceX, wide, across)
	return list
}

func describe(sizes []Piece, o Options) string {
	words := o.Title
	for _, p := range sizes {
		words += fmt.Sprintf("; %s %.1f by %.1f cm", p.Name, p.WidthCM, p.LengthCM)
	}
	return words
}

// at puts a point in cm, y upward from the lower edge, on the page.
func (s *sheet) at(x, y float64) geom.Point {
	return geom.Point{X: s.origin.X + x*s.perCM, Y: s.origin.Y - y*s.perCM}
}

func (s *sheet) figure(f Figure, x float64) {
	s.list.Items = append(s.list.Items, display.Begin{ID: "figure", Class: "figure", Title: f.Words, Stitch: -1})
	to := geom.Scale(s.perCM, -s.perCM).Then(geom.Translate(s.origin.X+x*s.perCM, s.origin.Y))
	for _, p := range f.Paths {
		s.stroke(p.Transform(to), faint, .3)
	}
	s.list.Items = append(s.list.Items, display.End{})
}

// pieces draws the largest outlines first; that shown in front is filled and bold.
func (s *sheet) pieces(sizes []Piece, x, wide float64) {
	draw := func(i int) {
		p := sizes[i]
		box := p.Outline.Box()
		if box.IsEmpty() || box.Width() == 0 || box.Height() == 0 {
			return
		}
		left := x + (wide-p.WidthCM)/2
		m := geom.Translate(-box.Min.X, -box.Min.Y).
			Then(geom.Scale(p.WidthCM*s.perCM/box.Width(), -p.LengthCM*s.perCM/box.Height())).
			Then(geom.Translate(s.origin.X+left*s.perCM, s.origin.Y-s.lift*s.perCM))
		path := p.Outline.Transform(m)
		s.list.Items = append(s.list.Items, display.Begin{ID: fmt.Sprintf("size%d", i), Class: "size", Title: p.Name, Stitch: -1})
		switch {
		case i != s.o.Shown:
			s.stroke(path, faint, .25)
		case s.o.Cloth != nil:
			corner := s.at(left, s.lift+p.LengthCM)
			s.list.Items = append(s.list.Items, display.Picture{X: corner.X, Y: corner.Y, Width: p.WidthCM * s.perCM, Height: p.LengthCM * s.perCM,
				Image: s.o.Cloth, Alt: "the cloth"})
		default:
			s.list.Items = append(s.list.Items, display.Path{Path: path, Stroke: display.Solid(ink), Width: bold, Fill: display.Solid(fill)})
			s.direction(left+p.WidthCM/2, p)
		}
		s.list.Items = append(s.list.Items, display.End{})
	}
	if s.o.Shown < len(sizes) {
		draw(s.o.Shown)
	}
	for i := range sizes {
		if i != s.o.Shown {
			draw(i)
		}
	}
}

// direction is a small arrow the way the piece is worked: upward, downward, or outward from the middle.
func (s *sheet) direction(x float64, p Piece) {
	from, to := s.at(x, s.lift+p.LengthCM*.38), s.at(x, s.lift+p.LengthCM*.62)
	if p.Round {
		from, to = s.at(x, s.lift+p.LengthCM*.5), s.at(x, s.lift+p.LengthCM*.74)
	}
	if from.Y-to.Y < 3 {
		return
	}
	back := 1.8
	if p.Down {
		from, to, back = to, from, -back
	}
	s.line(from, to, faint, .3)
	s.line(geom.Point{X: to.X - 1.2, Y: to.Y + back}, to, faint, .3)
	s.line(geom.Point{X: to.X + 1.2, Y: to.Y + back}, to, faint, .3)
}

// measures draws the dimension lines: widths below, lengths at the right. Sizes
// of one measure share a line.
func (s *sheet) measures(sizes []Piece, x, wide, across float64) {
	for i, m := range s.o.grouped(sizes, func(p Piece) float64 { return p.WidthCM }) {
		left := x + (wide-m.cm)/2
		a, b := s.at(left, 0), s.at(left+m.cm, 0)
		step := geom.Point{Y: float64(i+1) * dimGap}
		label := s.o.label(m)
		half := text.Width(display.Sans, label, letterSize)/2 + 1.5
		if b.X-a.X > 2*half+4 {
			s.dimension(a.Add(step), b.Add(step), half, m.tint)
			s.label((a.X+b.X)/2, a.Y+step.Y+1, label, m.tint, display.Middle)
		} else {
			s.dimension(a.Add(step), b.Add(step), 0, m.tint)
			s.label(b.X+2, a.Y+step.Y+1, label, m.tint, display.Start)
		}
	}
	lengths := s.o.grouped(sizes, func(p Piece) float64 { return p.LengthCM })
	edge := s.at(across, 0).X + float64(len(lengths))*dimGap + 3
	for i, m := range lengths {
		a, b := s.at(across, s.lift), s.at(across, s.lift+m.cm)
		step := geom.Point{X: float64(i+1) * dimGap}
		s.dimension(a.Add(step), b.Add(step), 0, m.tint)
		below := (float64(i) - float64(len(lengths)-1)/2) * 1.5 * letterSize
		s.label(edge, a.Y-lengths[0].cm*s.perCM/2+1+below, s.o.label(m), m.tint, display.Start)
	}
}

// measured is a measure of one or more sizes.
type measured struct {
	names []string
	cm    float64
	tint  color.NRGBA
}

// grouped gathers the sizes by a measure, in their order: all, or the one shown,
// the least and the greatest, and then the first of the others.
func (o Options) grouped(sizes []Piece, of func(Piece) float64) []measured {
	all := grouped(sizes, o.Shown, of)
	if o.Lines == 0 || len(all) <= o.Lines {
		return all
	}
	rank := func(m measured) int {
		switch {
		case m.tint == ink:
			return 0
		case m.cm == slices.MaxFunc(all, byLength).cm, m.cm == slices.MinFunc(all, byLength).cm:
			return 1
		}
		return 2
	}
	kept := slices.Clone(all)
	slices.SortStableFunc(kept, func(a, b measured) int { return rank(a) - rank(b) })
	kept = kept[:o.Lines]
	return slices.DeleteFunc(all, func(m measured) bool {
		return !slices.ContainsFunc(kept, func(k measured) bool { return k.cm == m.cm })
	})
}

func byLength(a, b measured) int { return cmp.Compare(a.cm, b.cm) }

// grouped gathers the sizes by a measure, in their order.
func grouped(sizes []Piece, shown int, of func(Piece) float64) []measured {
	var out []measured
	for i, p := range sizes {
		k := 0
		for k < len(out) && math.Abs(out[k].cm-of(p)) > .05 {
			k++
		}
		if k == len(out) {
			out = append(out, measured{cm: of(p), tint: faint})
		}
		if p.Name != "" {
			out[k].names = append(out[k].names, p.Name)
		}
		if i == shown {
			out[k].tint = ink
		}
	}
	if len(out) == 1 {
		out[0].names = nil // it goes without saying
	}
	return out
}

// dimension is a line with a short stroke across each end, open for a label for
// so many mm to both sides of its middle.
func (s *sheet) dimension(a, b geom.Point, half float64, c color.NRGBA) {
	way, middle := b.Sub(a).Unit(), a.Lerp(b, .5)
	if half == 0 {
		s.line(a, b, c, hairline)
	} else {
		s.line(a, middle.Sub(way.Mul(half)), c, hairline)
		s.line(middle.Add(way.Mul(half)), b, c, hairline)
	}
	n := way.Perp().Mul(tick)
	s.line(a.Add(n), a.Sub(n), c, hairline)
	s.line(b.Add(n), b.Sub(n), c, hairline)
}

// label is a measure in both units, the pattern's own first.
func (o Options) label(m measured) string {
	metric, inch := fmt.Sprintf("%.1f cm", m.cm), Inches(m.cm)+" in"
	if o.Inches {
		metric, inch = inch, metric
	}
	words := metric + " (" + inch + ")"
	if len(m.names) > 0 {
		words = strings.Join(m.names, ", ") + ": " + words
	}
	return words
}

// Inches is a length in cm as a tape measure has it, to the quarter inch.
func Inches(cm float64) string {
	quarters := int(math.Round(cm / 2.54 * 4))
	whole, part := quarters/4, []string{"", "¼", "½", "¾"}[quarters%4]
	if whole == 0 && part != "" {
		return part
	}
	return fmt.Sprintf("%d%s", whole, part)
}

func (s *sheet) line(a, b geom.Point, c color.NRGBA, width float64) {
	var p geom.Path
	p.MoveTo(a)
	p.LineTo(b)
	s.stroke(p, c, width)
}

func (s *sheet) stroke(p geom.Path, c color.NRGBA, width float64) {
	s.list.Items = append(s.list.Items, display.Path{Path: p, Stroke: display.Solid(c), Width: width})
}

func (s *sheet) text(x, y, size float64, anchor display.Anchor, face display.Face, c color.NRGBA, words string) {
	s.list.Items = append(s.list.Items, display.Text{X: x, Y: y, Size: size, Anchor: anchor, Face: face, Fill: c, Text: words})
}

func (s *sheet) label(x, y float64, words string, c color.NRGBA, anchor display.Anchor) {
	s.text(x, y, letterSize, anchor, display.Sans, c, words)
}
