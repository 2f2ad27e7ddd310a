package pattern

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"
)

// Decode reads a .strand file. The name stands in errors, which are [Errors].
// Nothing is half-read: with an error there is no pattern.
func Decode(src []byte, name string) (*Pattern, error) {
	src = unixLines(src)
	if !utf8.Valid(src) {
		return nil, Errors{{File: name, Message: "this is not a text file", Hint: "a pattern is UTF-8 text"}}
	}
	d, top := open(src, name)
	if top == nil {
		return nil, d.errors()
	}
	if !d.version(top) {
		return nil, d.errors()
	}
	p := &Pattern{
		Head:     head(src),
		Title:    top.text("title"),
		Designer: top.text("designer"),
		Terms:    top.oneOf("terms", []string{"US", "UK"}),
		Units:    top.oneOf("units", []string{"cm", "in"}),
		Note:     top.lines("note"),

		Baby:          top.yes("baby"),
		FloatLimitCM:  top.number("float_limit_cm"),
		MarginPercent: top.number("margin_percent"),

		Hook:  readHook(top.table("hook")),
		Gauge: readGauge(top.table("gauge")),
	}
	if p.Terms == "" {
		p.Terms = "US"
	}
	if p.Units == "" {
		p.Units = "cm"
	}
	names := unique{}
	for _, t := range top.tables("yarn") {
		p.Yarns = append(p.Yarns, readYarn(t, names))
	}
	for _, t := range top.tables("colourway") {
		p.Colourways = append(p.Colourways, readColourway(t, names))
	}
	for _, t := range top.tables("size") {
		p.Sizes = append(p.Sizes, readSize(t, names))
	}
	for _, t := range top.tables("stitch") {
		p.Stitches = append(p.Stitches, readSpecial(t, names))
	}
	for _, t := range top.tables("piece") {
		p.Pieces = append(p.Pieces, readPiece(t, names))
	}
	for _, t := range top.tables("callout") {
		p.Callouts = append(p.Callouts, readCallout(t, p))
	}
	top.close()
	if err := d.errors(); err != nil {
		return nil, err
	}
	return p, nil
}

// RowsAt gives for each piece of a file that [Decode] reads the byte of its
// [Text] at which the rows begin, or -1 when it has none. An offset in the rows
// is the same number of bytes further on in the text, unless they hold escapes.
func RowsAt(src []byte) []int {
	src = unixLines(src)
	_, top := open(src, "")
	if top == nil {
		return nil
	}
	var at []int
	for _, t := range top.tables("piece") {
		if !t.has("rows") {
			at = append(at, -1)
			continue
		}
		i := t.doc.places[join(t.path, "rows")].value
		for _, mark := range []string{`"""` + "\n", "'''\n", `"""`, "'''", `"`, "'"} {
			if bytes.HasPrefix(src[i:], []byte(mark)) {
				i += len(mark)
				break
			}
		}
		at = append(at, i)
	}
	return at
}

// Text is a file's text as [Decode] reads it: the places in its errors and those
// of [RowsAt] are places in it.
func Text(src []byte) string { return string(unixLines(src)) }

// unixLines ends every line with a line feed alone, and drops a byte order mark.
func unixLines(src []byte) []byte {
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	return bytes.ReplaceAll(src, []byte("\r\n"), []byte("\n"))
}

// head is the comment that stands before everything else.
func head(src []byte) string {
	var lines []string
	for line := range strings.Lines(string(src)) {
		line = strings.TrimSpace(line)
		if line != "" && line[0] != '#' {
			break
		}
		lines = append(lines, line)
	}
	return strings.TrimSpace(strings.Join(lines, "\n"))
}

// version reports whether the file is of a version this program knows.
func (d *document) version(top *table) bool {
	if !top.has("strandway") {
		d.fault(0, "the file does not say that it is a pattern", fmt.Sprintf("begin it with the line: strandway = %d", Version))
		return false
	}
	switch v := top.whole("strandway", -anyMany, anyMany, Version); {
	case v < 1:
		top.fault("strandway", fmt.Sprintf("there is no format version %d", v), fmt.Sprintf("write strandway = %d", Version))
	case v > Version:
		top.fault("strandway", fmt.Sprintf("the file is of format version %d, and this program reads up to %d", v, Version),
			"open it with a newer Strandway")
	}
	return len(d.faults) == 0
}

// unique holds the names met so far, by what they name.
type unique map[string]string

// name reads a name that must be there and must be the only one of its kind.
func (u unique) name(t *table, key, of string) string {
	s := t.text(key)
	if strings.TrimSpace(s) == "" {
		t.doc.fault(t.here(), fmt.Sprintf("a %s has no %s", of, key), fmt.Sprintf(`add a line: %s = "..."`, key))
		return s
	}
	id := join(of, s)
	if _, met := u[id]; met {
		t.fault(key, fmt.Sprintf("there is a %s %q already", of, s), fmt.Sprintf("give each %s a %s of its own", of, key))
	}
	u[id] = s
	return s
}

func readHook(t *table) Hook {
	if t == nil {
		return Hook{}
	}
	defer t.close()
	return Hook{MM: t.number("mm")}
}

func readGauge(t *table) Gauge {
	if t == nil {
		return Gauge{}
	}
	defer t.close()
	g := Gauge{Stitches: t.number("stitches"), Rows: t.number("rows"), OverCM: t.number("over_cm")}
	if !t.has("over_cm") {
		g.OverCM = 10 // the trade's usual length
	}
	g.Swatch = readSwatch(t.table("swatch"))
	g.Second = readSwatch(t.table("second_swatch"))
	return g
}

func readSwatch(t *table) *Swatch {
	if t == nil {
		return nil
	}
	defer t.close()
	s := &Swatch{
		Stitch:            t.text("stitch"),
		Stitches:          t.number("stitches"),
		Rows:              t.number("rows"),
		WidthCM:           t.number("width_cm"),
		HeightCM:          t.number("height_cm"),
		UnblockedWidthCM:  t.number("unblocked_width_cm"),
		UnblockedHeightCM: t.number("unblocked_height_cm"),
	}
	if grams := t.table("grams"); grams != nil {
		s.Grams = map[string]float64{}
		for letter := range grams.values {
			if grams.letter(letter) {
				s.Grams[letter] = grams.number(letter)
			}
		}
		grams.close()
	}
	return s
}

var letterForm = regexp.MustCompile(`^(?:[A-Z]|MC|CC[1-9]?)$`)

// letter reports whether a key is a yarn letter, and notes a fault if it is not.
func (t *table) letter(key string) bool {
	ok := letterForm.MatchString(key)
	if !ok {
		t.known = append(t.known, key)
		t.doc.fault(t.doc.places[join(t.path, key)].key, fmt.Sprintf("%q is not a yarn letter", key), "a yarn letter is one capital letter, A to Z, or MC, CC, CC1 to CC9")
	}
	return ok
}

func readYarn(t *table, names unique) Yarn {
	defer t.close()
	y := Yarn{
		Letter:  names.name(t, "letter", "yarn"),
		Name:    t.text("name"),
		Shade:   t.text("shade"),
		Colour:  t.colour("colour"),
		Weight:  t.whole("weight", 0, 7, -1),
		Grams:   t.number("grams"),
		Metres:  t.number("metres"),
		Price:   t.number("price"),
		Look:    t.oneOf("look", Looks),
		Colours: t.colours("colours"),
		RepeatM: t.number("repeat_m"),

		Plies:     t.whole("plies", 1, 24, 0),
		Twist:     t.oneOf("twist", Twists),
		Thickness: t.number("thickness"),
		Fuzz:      t.number("fuzz"),
		HeldWith:  t.text("held_with"),
	}
	if y.HeldWith != "" && (y.HeldWith == y.Letter || !letterForm.MatchString(y.HeldWith)) {
		t.fault("held_with", fmt.Sprintf("%q is not the letter of another yarn", y.HeldWith), "name the yarn held together with this one by its letter")
	}
	if y.Letter != "" && !letterForm.MatchString(y.Letter) {
		t.fault("letter", fmt.Sprintf("%q is not a yarn letter", y.Letter), "a yarn letter is one capital letter, A to Z, or MC, CC, CC1 to CC9")
	}
	return y
}

var colourForm = regexp.MustCompile(`^#[0-9a-fA-F]{6}$`)

// colour reads "#rrggbb".
func (t *table) colour(key string) string {
	s := t.text(key)
	if s != "" && !colourForm.MatchString(s) {
		t.badColour(key, s)
	}
	return strings.ToLower(s)
}

func (t *table) badColour(key, s string) {
	t.fault(key, fmt.Sprintf("%q is not a colour", s), `write six hexadecimal digits after a number sign: "#43525c"`)
}

// colours reads a list of colours.
func (t *table) colours(key string) []string {
	v, ok := t.take(key)
	if !ok {
		return nil
	}
	list, ok := v.([]any)
	if !ok {
		t.wrongType(key, "a list of colours", `write them in square brackets: ["#43525c", "#e9e4d6"]`)
	}
	var out []string
	for _, v := range list {
		s, _ := v.(string)
		if !colourForm.MatchString(s) {
			t.badColour(key, fmt.Sprint(v))
			continue
		}
		out = append(out, strings.ToLower(s))
	}
	return out
}

func readColourway(t *table, names unique) Colourway {
	defer t.close()
	c := Colourway{Name: names.name(t, "name", "colourway"), Shades: map[string]Shade{}}
	for key := range t.values {
		if slices.Contains(t.known, key) || !t.letter(key) {
			continue
		}
		if s := t.table(key); s != nil {
			c.Shades[key] = Shade{Shade: s.text("shade"), Colour: s.colour("colour")}
			s.close()
		}
	}
	return c
}

func readSize(t *table, names unique) Size {
	defer t.close()
	return Size{
		Name:     names.name(t, "name", "size"),
		Repeats:  t.whole("repeats", 1, anyMany, 0), // what is too large to work is refused when it is worked
		WidthCM:  t.number("width_cm"),
		LengthCM: t.number("length_cm"),
	}
}

func readSpecial(t *table, names unique) Special {
	defer t.close()
	s := Special{
		Abbreviation: names.name(t, "abbreviation", "stitch"),
		Name:         t.text("name"),
		US:           t.lines("us"),
		UK:           t.lines("uk"),
		Symbol:       t.text("symbol"),
	}
	if s.US == "" && s.UK == "" {
		t.doc.fault(t.here(), fmt.Sprintf("the stitch %q has no definition", s.Abbreviation), `add a line: us = "(hdc, ch 1, hdc) in indicated place"`)
	}
	return s
}

func readCallout(t *table, p *Pattern) Callout {
	defer t.close()
	c := Callout{
		Piece:  t.text("piece"),
		Row:    t.whole("row", 1, 100_000, 1),
		Stitch: t.whole("stitch", 1, 1_000_000, 1),
		Text:   t.text("text"),
	}
	c.X, c.Y = t.away("away")
	if c.Text == "" {
		t.doc.fault(t.here(), "the callout says nothing", `add a line: text = "work loosely"`)
	}
	named := func(q Piece) bool { return q.Name == c.Piece }
	if c.Piece != "" && !slices.ContainsFunc(p.Pieces, named) {
		t.fault("piece", fmt.Sprintf("there is no piece %q", c.Piece), "write the name of one of the pieces")
	}
	return c
}

func readPiece(t *table, names unique) Piece {
	defer t.close()
	p := Piece{
		Name:     names.name(t, "name", "piece"),
		Worked:   t.oneOf("worked", Workings),
		Multiple: t.text("multiple"),
		Note:     t.lines("note"),
		Rows:     t.lines("rows"),
	}
	if p.Multiple != "" {
		if _, _, err := ParseMultiple(p.Multiple); err != nil {
			t.fault("multiple", err.Error(), `write it as "4 + 1": stitches of a repeat, then the edge stitches`)
		}
	}
	return p
}
