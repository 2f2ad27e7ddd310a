package pattern

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
)

// Encode writes the pattern as a .strand file, always in the same order and
// leaving out what is not said. [Decode] reads it back as the same pattern.
func (p *Pattern) Encode() []byte {
	var w writer
	if p.Head != "" {
		w.WriteString(p.Head + "\n\n")
	}
	fmt.Fprintf(&w, "strandway = %d\n", Version)
	w.text("title", p.Title)
	w.text("designer", p.Designer)
	w.text("terms", p.Terms)
	w.text("units", p.Units)
	w.lines("note", p.Note)
	if p.Baby {
		w.WriteString("baby = true\n")
	}
	w.number("float_limit_cm", p.FloatLimitCM)
	w.number("margin_percent", p.MarginPercent)
	if p.Hook.MM != 0 {
		w.header("[hook]")
		w.number("mm", p.Hook.MM)
	}
	w.gauge(p.Gauge)
	for _, y := range p.Yarns {
		w.yarn(y)
	}
	for _, c := range p.Colourways {
		w.colourway(c)
	}
	for _, s := range p.Sizes {
		w.header("[[size]]")
		w.text("name", s.Name)
		w.number("repeats", float64(s.Repeats))
		w.number("width_cm", s.WidthCM)
		w.number("length_cm", s.LengthCM)
	}
	for _, s := range p.Stitches {
		w.header("[[stitch]]")
		w.text("abbreviation", s.Abbreviation)
		w.text("name", s.Name)
		w.lines("us", s.US)
		w.lines("uk", s.UK)
		w.text("symbol", s.Symbol)
	}
	for _, piece := range p.Pieces {
		w.header("[[piece]]")
		w.text("name", piece.Name)
		w.text("worked", piece.Worked)
		w.text("multiple", piece.Multiple)
		w.lines("note", piece.Note)
		if piece.Rows != "" {
			w.block("rows", piece.Rows)
		}
	}
	for _, c := range p.Callouts {
		w.header("[[callout]]")
		w.text("piece", c.Piece)
		w.number("row", float64(c.Row))
		w.number("stitch", float64(c.Stitch))
		w.text("text", c.Text)
		if c.X != 0 || c.Y != 0 {
			w.text("away", decimal(c.X)+" "+decimal(c.Y))
		}
	}
	return []byte(w.String())
}

// writer writes keys, leaving out those with nothing to say.
type writer struct{ strings.Builder }

func (w *writer) header(h string) { w.WriteString("\n" + h + "\n") }

func (w *writer) text(key, s string) {
	if s != "" {
		fmt.Fprintf(w, "%s = %s\n", key, quote(s))
	}
}

func (w *writer) number(key string, x float64) {
	if x != 0 {
		fmt.Fprintf(w, "%s = %s\n", key, decimal(x))
	}
}

// lines writes text in quotes if it is one line, else as a block.
func (w *writer) lines(key, s string) {
	if strings.Contains(s, "\n") {
		w.block(key, s)
	} else {
		w.text(key, s)
	}
}

// block writes text as it stands, between lines of three quotes.
func (w *writer) block(key, s string) {
	s = escape(s)
	stem := strings.TrimRight(s, `"`)
	s = strings.ReplaceAll(stem, `"""`, `""\"`) + strings.Repeat(`\"`, len(s)-len(stem))
	fmt.Fprintf(w, "%s = \"\"\"\n%s\"\"\"\n", key, s)
}

func (w *writer) gauge(g Gauge) {
	if g.Stitches != 0 || g.Rows != 0 {
		w.header("[gauge]")
		w.number("stitches", g.Stitches)
		w.number("rows", g.Rows)
		w.number("over_cm", g.OverCM)
	}
	w.swatch("[gauge.swatch]", g.Swatch)
	w.swatch("[gauge.second_swatch]", g.Second)
}

func (w *writer) swatch(header string, s *Swatch) {
	if s == nil {
		return
	}
	w.header(header)
	w.text("stitch", s.Stitch)
	w.number("stitches", s.Stitches)
	w.number("rows", s.Rows)
	w.number("width_cm", s.WidthCM)
	w.number("height_cm", s.HeightCM)
	w.number("unblocked_width_cm", s.UnblockedWidthCM)
	w.number("unblocked_height_cm", s.UnblockedHeightCM)
	var grams []string
	for _, letter := range slices.Sorted(maps.Keys(s.Grams)) {
		grams = append(grams, letter+" = "+decimal(s.Grams[letter]))
	}
	if len(grams) > 0 {
		fmt.Fprintf(w, "grams = { %s }\n", strings.Join(grams, ", "))
	}
}

func (w *writer) yarn(y Yarn) {
	w.header("[[yarn]]")
	w.text("letter", y.Letter)
	w.text("name", y.Name)
	w.text("shade", y.Shade)
	w.text("colour", y.Colour)
	if y.Weight >= 0 { // lace weight is 0
		fmt.Fprintf(w, "weight = %d\n", y.Weight)
	}
	w.number("grams", y.Grams)
	w.number("metres", y.Metres)
	w.number("price", y.Price)
	w.text("look", y.Look)
	if len(y.Colours) > 0 {
		quoted := make([]string, len(y.Colours))
		for i, c := range y.Colours {
			quoted[i] = quote(c)
		}
		fmt.Fprintf(w, "colours = [%s]\n", strings.Join(quoted, ", "))
	}
	w.number("repeat_m", y.RepeatM)
	w.number("plies", float64(y.Plies))
	w.text("twist", y.Twist)
	w.number("thickness", y.Thickness)
	w.number("fuzz", y.Fuzz)
	w.text("held_with", y.HeldWith)
}

func (w *writer) colourway(c Colourway) {
	w.header("[[colourway]]")
	w.text("name", c.Name)
	for _, letter := range slices.Sorted(maps.Keys(c.Shades)) {
		shade := c.Shades[letter]
		var said []string
		if shade.Shade != "" {
			said = append(said, "shade = "+quote(shade.Shade))
		}
		if shade.Colour != "" {
			said = append(said, "colour = "+quote(shade.Colour))
		}
		fmt.Fprintf(w, "%s = { %s }\n", letter, strings.Join(said, ", "))
	}
}

func decimal(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

func quote(s string) string {
	return `"` + strings.NewReplacer(`"`, `\"`, "\n", `\n`, "\t", `\t`).Replace(escape(s)) + `"`
}

// escape writes what may not stand in quoted text: backslashes and control characters, save tabs and line ends.
func escape(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '\\':
			b.WriteString(`\\`)
		case r < ' ' && r != '\n' && r != '\t', r == 0x7f:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
