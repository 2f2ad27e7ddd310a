package display

import (
	"fmt"
	"image/color"
	"math"
	"strconv"
	"strings"

	"strandway/chart/geom"
)

// Dump is the list as text for tests to compare: one item a line, groups
// indented, lengths rounded to 0.01 mm and angles to 0.1 degrees.
func (l *List) Dump() string {
	d := dumper{list: l}
	d.line("page %s x %s mm%s", number(l.Width), number(l.Height), named(" on ", l.Background))
	if l.Title != "" {
		d.line("title %q", l.Title)
	}
	if l.Desc != "" {
		d.line("desc %q", l.Desc)
	}
	for _, s := range l.Symbols {
		d.line("symbol %s", s.Name)
		d.depth++
		for _, p := range s.Paths {
			d.item(p)
		}
		d.depth--
	}
	for _, item := range l.Items {
		d.item(item)
	}
	return d.String()
}

type dumper struct {
	strings.Builder
	list  *List
	depth int
}

func (d *dumper) line(format string, args ...any) {
	d.WriteString(strings.Repeat("  ", d.depth))
	fmt.Fprintf(d, format, args...)
	d.WriteByte('\n')
}

func (d *dumper) item(item Item) {
	switch item := item.(type) {
	case Begin:
		stitch := ""
		if item.Stitch >= 0 {
			stitch = fmt.Sprintf(" stitch %d", item.Stitch)
		}
		d.line("group %s %s%s %q", item.ID, item.Class, stitch, item.Title)
		d.depth++
	case End:
		d.depth = max(0, d.depth-1)
	case Path:
		d.line("path %s%s", item.style(), outline(item.Path))
	case Use:
		d.line("use %s %s%s", d.list.symbol(item).Name, placement(item.At), named(" ink ", item.Ink))
	case Text:
		anchor := [...]string{"start", "middle", "finish"}[min(item.Anchor, Finish)]
		turn := ""
		if item.Angle != 0 {
			turn = " turn " + degrees(item.Angle)
		}
		d.line("text %q %s at %s,%s size %s %s%s%s%s", item.Text, anchor, number(item.X), number(item.Y), number(item.Size),
			faceName(item.Face), turn, named(" ", item.Fill), named(" halo ", item.Halo))
	case Picture:
		size := "no picture"
		if item.Image != nil {
			size = fmt.Sprintf("%d x %d px", item.Image.Bounds().Dx(), item.Image.Bounds().Dy())
		}
		d.line("picture %q at %s,%s %s x %s mm, %s", item.Alt, number(item.X), number(item.Y), number(item.Width), number(item.Height), size)
	}
}

// style is how a path is drawn: "stroke #000 0.35, fill ink: ".
func (p Path) style() string {
	var parts []string
	if p.Stroke.On {
		part := "stroke " + p.Stroke.String() + " " + number(p.Width)
		if len(p.Dash) > 0 {
			part += " dash"
			for _, length := range p.Dash {
				part += " " + number(length)
			}
		}
		parts = append(parts, part)
	}
	if p.Fill.On {
		parts = append(parts, "fill "+p.Fill.String())
	}
	if len(parts) == 0 {
		parts = append(parts, "unpainted")
	}
	return strings.Join(parts, ", ") + ": "
}

// String is the paint as in the dump: a colour, "ink" or "none".
func (p Paint) String() string {
	switch {
	case !p.On:
		return "none"
	case p.Inherit:
		return "ink"
	}
	return colourName(p.Colour)
}

// outline is a path in the letters of SVG.
func outline(p geom.Path) string {
	var b strings.Builder
	p.Walk(func(v geom.Verb, to []geom.Point) {
		if b.Len() > 0 {
			b.WriteByte(' ')
		}
		b.WriteByte("MLCZ"[v])
		for _, a := range to {
			b.WriteString(" " + number(a.X) + "," + number(a.Y))
		}
	})
	return b.String()
}

// placement is a matrix as a place, and a turn, a scale and a mirror where there are such.
func placement(m geom.Matrix) string {
	s := "at " + number(m.E) + "," + number(m.F)
	sx, sy := math.Hypot(m.A, m.B), math.Hypot(m.C, m.D)
	if skew := m.A*m.C + m.B*m.D; math.Abs(skew) > 1e-6*sx*sy {
		return s + fmt.Sprintf(" by %.3f %.3f %.3f %.3f", m.A, m.B, m.C, m.D)
	}
	if turn := degrees(math.Atan2(m.B, m.A)); turn != "0" {
		s += " turn " + turn
	}
	if number(sx) != "1" || number(sy) != "1" {
		s += " scale " + number(sx)
		if number(sx) != number(sy) {
			s += "," + number(sy)
		}
	}
	if m.A*m.D-m.B*m.C < 0 {
		s += " mirrored"
	}
	return s
}

func faceName(f Face) string {
	name := f.Family()
	if f.Bold() {
		name += " bold"
	}
	if f.Italic() {
		name += " italic"
	}
	return name
}

// named is a colour after some words, nothing if it is clear.
func named(before string, c color.NRGBA) string {
	if c.A == 0 {
		return ""
	}
	return before + colourName(c)
}

func colourName(c color.NRGBA) string {
	if c.A == 255 {
		return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
	}
	return fmt.Sprintf("#%02x%02x%02x%02x", c.R, c.G, c.B, c.A)
}

func degrees(radians float64) string {
	return strconv.FormatFloat(math.Round(radians*1800/math.Pi)/10+0, 'f', -1, 64)
}

// number is a length rounded to two decimals, without zeros that say nothing.
func number(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100+0, 'f', -1, 64)
}
