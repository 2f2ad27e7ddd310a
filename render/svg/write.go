package svg

import (
	"image/color"
	"math"
	"strconv"
	"strings"

	"strandway/chart/display"
	"strandway/chart/geom"
)

func (s *writer) raw(text string) *writer {
	s.out = append(s.out, text...)
	return s
}

// number writes a length to a hundredth of a millimetre.
func (s *writer) number(v float64) *writer { return s.decimals(v, 2) }

// decimals writes a number rounded to so many decimals, without zeros that say nothing.
func (s *writer) decimals(v float64, n int) *writer {
	k := math.Pow10(n)
	v = math.Round(v*k)/k + 0 // no minus before a zero
	if math.IsNaN(v) || math.IsInf(v, 0) {
		v = 0
	}
	s.out = strconv.AppendFloat(s.out, v, 'f', -1, 64)
	return s
}

// outline writes a path's data.
func (s *writer) outline(p geom.Path, decimals int) *writer {
	p.Walk(func(v geom.Verb, to []geom.Point) {
		s.out = append(s.out, "MLCZ"[v])
		for i, a := range to {
			if i > 0 {
				s.raw(" ")
			}
			s.decimals(a.X, decimals).raw(" ").decimals(a.Y, decimals)
		}
	})
	return s
}

func (s *writer) paintOrInk(attribute string, p display.Paint) {
	if p.Inherit {
		s.raw(" " + attribute + `="currentColor"`)
		return
	}
	s.paint(attribute, p.Colour)
}

func (s *writer) paint(attribute string, c color.NRGBA) {
	s.raw(" " + attribute + `="`).hex(c).raw(`"`)
	if c.A < 255 {
		s.raw(" "+attribute+`-opacity="`).decimals(float64(c.A)/255, 3).raw(`"`)
	}
}

// ink sets the colour that symbols inherit.
func (s *writer) ink(c color.NRGBA) {
	s.raw(` color="`).hex(c).raw(`"`)
	if c.A < 255 {
		s.raw(` opacity="`).decimals(float64(c.A)/255, 3).raw(`"`)
	}
}

func (s *writer) hex(c color.NRGBA) *writer {
	const digits = "0123456789abcdef"
	s.raw("#")
	for _, v := range []uint8{c.R, c.G, c.B} {
		s.out = append(s.out, digits[v>>4], digits[v&15])
	}
	return s
}

func (s *writer) element(name, text string) {
	if text != "" {
		s.raw("<" + name + ">").escaped(text).raw("</" + name + ">\n")
	}
}

func (s *writer) attribute(name, value string) *writer {
	return s.raw(" " + name + `="`).escaped(value).raw(`"`)
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

// escaped writes text for XML, without the characters that XML does not allow.
func (s *writer) escaped(text string) *writer {
	text = strings.Map(func(r rune) rune {
		if r < ' ' && r != '\t' && r != '\n' || r == 0xFFFE || r == 0xFFFF {
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, "\uFFFD"))
	return s.raw(escaper.Replace(text))
}

// symbolIDs are ids for symbols: their names as far as an id can hold them.
func symbolIDs(symbols []display.Symbol) []string {
	ids := make([]string, len(symbols))
	taken := map[string]bool{}
	for i, symbol := range symbols {
		id := "symbol-" + strings.Map(func(r rune) rune {
			if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' {
				return r
			}
			return '-'
		}, symbol.Name)
		if taken[id] {
			id += "-" + strconv.Itoa(i)
		}
		taken[id] = true
		ids[i] = id
	}
	return ids
}
