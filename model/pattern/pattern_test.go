package pattern_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"unicode"

	"strandway/model/diag"
	"strandway/model/pattern"
)

const runner = `# A runner for the hall table.
# Wash before measuring.

strandway = 1
title = "Groyne Runner"
designer = "Marram Bay"
terms = "US"
units = "cm"
note = """
Yarn not in use waits at the edge.
Carry it up loosely.
"""
baby = true
float_limit_cm = 1.5
margin_percent = 12.5

[hook]
mm = 4

[gauge]
stitches = 18
rows = 14.5
over_cm = 10

[gauge.swatch]
stitches = 27
rows = 22
width_cm = 15
height_cm = 15
unblocked_width_cm = 14.5
unblocked_height_cm = 14
grams = { A = 7.5, B = 4 }

[gauge.second_swatch]
stitch = "sc"
stitches = 27
rows = 30
width_cm = 15
height_cm = 15
grams = { A = 12 }

[[yarn]]
letter = "A"
name = "Lantern DK"
shade = "Wet Slate"
colour = "#43525c"
weight = 3
grams = 50
metres = 120
price = 4.5
look = "variegated"
colours = ["#43525c", "#6b7a83"]
repeat_m = 1.5
plies = 3
twist = "S"
thickness = 1.2
fuzz = 4
held_with = "B"

[[yarn]]
letter = "B"
name = "Lantern DK"
shade = "Foam"
colour = "#e9e4d6"

[[colourway]]
name = "Low tide"
A = { shade = "Kelp", colour = "#3f4a2c" }
B = { colour = "#d9c27a" }

[[size]]
name = "Side table"
repeats = 9
length_cm = 90

[[stitch]]
abbreviation = "Tuft"
us = "(hdc, ch 1, hdc) in indicated place"
symbol = "M 0 0 L 0 1.2"

[[piece]]
name = "Body"
worked = "flat"
multiple = "4 + 1"
rows = """
Foundation (A): ch 4n + 2.
Row 1 (RS, A): sc in 2nd ch from hook and in each ch across, turn.
"""

[[callout]]
piece = "Body"
row = 1
stitch = 3
text = "marker here"
away = "1.5 -2"
`

func decode(t *testing.T, src string) *pattern.Pattern {
	t.Helper()
	p, err := pattern.Decode([]byte(src), "x.strand")
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestDecodeReadsEveryKey(t *testing.T) {
	got := decode(t, runner)
	want := &pattern.Pattern{
		Head:     "# A runner for the hall table.\n# Wash before measuring.",
		Title:    "Groyne Runner",
		Designer: "Marram Bay",
		Terms:    "US",
		Units:    "cm",
		Note:     "Yarn not in use waits at the edge.\nCarry it up loosely.\n",

		Baby:          true,
		FloatLimitCM:  1.5,
		MarginPercent: 12.5,

		Hook: pattern.Hook{MM: 4},
		Gauge: pattern.Gauge{Stitches: 18, Rows: 14.5, OverCM: 10,
			Swatch: &pattern.Swatch{Stitches: 27, Rows: 22, WidthCM: 15, HeightCM: 15, UnblockedWidthCM: 14.5, UnblockedHeightCM: 14,
				Grams: map[string]float64{"A": 7.5, "B": 4}},
			Second: &pattern.Swatch{Stitch: "sc", Stitches: 27, Rows: 30, WidthCM: 15, HeightCM: 15, Grams: map[string]float64{"A": 12}}},
		Yarns: []pattern.Yarn{
			{Letter: "A", Name: "Lantern DK", Shade: "Wet Slate", Colour: "#43525c", Weight: 3, Grams: 50, Metres: 120, Price: 4.5,
				Look: "variegated", Colours: []string{"#43525c", "#6b7a83"}, RepeatM: 1.5,
				Plies: 3, Twist: "S", Thickness: 1.2, Fuzz: 4, HeldWith: "B"},
			{Letter: "B", Name: "Lantern DK", Shade: "Foam", Colour: "#e9e4d6", Weight: -1},
		},
		Colourways: []pattern.Colourway{{Name: "Low tide", Shades: map[string]pattern.Shade{
			"A": {Shade: "Kelp", Colour: "#3f4a2c"}, "B": {Colour: "#d9c27a"}}}},
		Sizes:    []pattern.Size{{Name: "Side table", Repeats: 9, LengthCM: 90}},
		Stitches: []pattern.Special{{Abbreviation: "Tuft", US: "(hdc, ch 1, hdc) in indicated place", Symbol: "M 0 0 L 0 1.2"}},
		Callouts: []pattern.Callout{{Piece: "Body", Row: 1, Stitch: 3, Text: "marker here", X: 1.5, Y: -2}},
		Pieces: []pattern.Piece{{Name: "Body", Worked: "flat", Multiple: "4 + 1",
			Rows: "Foundation (A): ch 4n + 2.\nRow 1 (RS, A): sc in 2nd ch from hook and in each ch across, turn.\n"}},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

func TestEncodeWritesTheFileAsItWasWritten(t *testing.T) {
	if got := string(decode(t, runner).Encode()); got != runner {
		t.Errorf("got:\n%s", got)
	}
}

func TestEncodeKeepsAnyText(t *testing.T) {
	for _, s := range []string{"a\\b", `say "shell"`, `"""`, `""""`, "tab\tand\nline", "café ☂", "bell\x07", "\r", ` ends in "`} {
		p := &pattern.Pattern{Terms: "UK", Units: "in", Note: s, Designer: strings.NewReplacer("\n", "", "\r", "").Replace(s),
			Pieces: []pattern.Piece{{Name: "Body", Rows: s}}}
		got := decode(t, string(p.Encode()))
		if !reflect.DeepEqual(got, p) {
			t.Errorf("%q: got %+v", s, got)
		}
	}
}

func TestDecodeNamesEveryFault(t *testing.T) {
	for _, c := range []struct{ src, want string }{
		{"", "x.strand:1:1: the file does not say that it is a pattern (begin it with the line: strandway = 1)"},
		{"strandway = 2\ncolor = 3", "x.strand:1:13: the file is of format version 2, and this program reads up to 1 (open it with a newer Strandway)"},
		{`strandway = "1"`, "x.strand:1:13: strandway must be a whole number (write it without quotes: strandway = 1)"},
		{"strandway = 1\ntitel = \"A\"\n[hook]\nsize = 4\n",
			"x.strand:2:1: unknown key \"titel\" (did you mean \"title\"?)\n" +
				"x.strand:4:1: unknown key \"size\" (the keys here are mm)"},
		{"strandway = 1\ntitle = 4", `x.strand:2:9: title must be text (write it in quotes: title = "...")`},
		{"strandway = 1\nterms = \"USA\"", `x.strand:2:9: terms "USA" is not known (write one of: US, UK)`},
		{"strandway = 1\n[hook]\nmm = \"4\"", "x.strand:3:6: mm must be a number (write it without quotes: mm = 4.5)"},
		{"strandway = 1\n[hook]\nmm = -4", "x.strand:3:6: mm must be more than 0 (leave the line out if it is not known)"},
		{"strandway = 1\n[hook]\nmm = nan", "x.strand:3:6: mm must be more than 0 (leave the line out if it is not known)"},
		{"strandway = 1\nyarn = 3", "x.strand:2:8: yarn must be a list of tables (write [[yarn]] on a line of its own for each, then its keys)"},
		{"strandway = 1\n[[yarn]]\nletter = \"A\"\ncolour = \"slate\"",
			`x.strand:4:10: "slate" is not a colour (write six hexadecimal digits after a number sign: "#43525c")`},
		{"strandway = 1\n[[yarn]]\nletter = \"A\"\n[[yarn]]\nletter = \"A\"",
			`x.strand:5:10: there is a yarn "A" already (give each yarn a letter of its own)`},
		{"strandway = 1\n[[yarn]]\nletter = \"blue\"", `x.strand:3:10: "blue" is not a yarn letter (a yarn letter is one capital letter, A to Z, or MC, CC, CC1 to CC9)`},
		{"strandway = 1\n[[yarn]]\nletter = \"A\"\nheld_with = \"A\"",
			`x.strand:4:13: "A" is not the letter of another yarn (name the yarn held together with this one by its letter)`},
		{"strandway = 1\n[[yarn]]\nletter = \"A\"\ntwist = \"left\"", `x.strand:4:9: twist "left" is not known (write one of: S, Z)`},
		{"strandway = 1\n[[yarn]]\nname = \"x\"", `x.strand:2:3: a yarn has no letter (add a line: letter = "...")`},
		{"strandway = 0", "x.strand:1:13: there is no format version 0 (write strandway = 1)"},
		{"strandway = 1\n[[size]]\nname = \"S\"\nrepeats = 0", "x.strand:4:11: repeats must be 1 or more (leave the line out if it is not known)"},
		{"strandway = 1\n[[size]]\nname = \"S\"\nrepeats = 2.5", "x.strand:4:11: repeats must be a whole number (write it without quotes: repeats = 1)"},
		{"strandway = 1\n[[piece]]\nname = \"B\"\nmultiple = \"four\"",
			`x.strand:4:12: "four" is not a multiple of stitches (write it as "4 + 1": stitches of a repeat, then the edge stitches)`},
		{"strandway = 1\n[[colourway]]\nname = \"Dusk\"\nAB = { colour = \"#000000\" }",
			`x.strand:4:1: "AB" is not a yarn letter (a yarn letter is one capital letter, A to Z, or MC, CC, CC1 to CC9)`},
		{"strandway = 1\n[[stitch]]\nabbreviation = \"Tuft\"",
			`x.strand:2:3: the stitch "Tuft" has no definition (add a line: us = "(hdc, ch 1, hdc) in indicated place")`},
	} {
		p, err := pattern.Decode([]byte(c.src), "x.strand")
		if err == nil || err.Error() != c.want {
			t.Errorf("%q:\n got %v\nwant %s", c.src, err, c.want)
		}
		if p != nil {
			t.Errorf("%q: half-read", c.src)
		}
	}
}

func TestDecodePlacesFaultsOfTheTOML(t *testing.T) {
	for _, c := range []struct {
		src          string
		line, column int
	}{
		{"strandway = 1\ntitle = Groyne", 2, 9},
		{"strandway = 1\ntitle = \"é\" x", 2, 13},
		{"strandway = 1\ntitle = \"a\"\ntitle = \"b\"", 3, 1},
	} {
		_, err := pattern.Decode([]byte(c.src), "x.strand")
		var list pattern.Errors
		if !errors.As(err, &list) || len(list) != 1 {
			t.Errorf("%q: got %v", c.src, err)
			continue
		}
		if list[0].Line != c.line || list[0].Column != c.column {
			t.Errorf("%q: %v, want %d:%d", c.src, err, c.line, c.column)
		}
	}
}

func TestDecodeRefusesWhatIsNotText(t *testing.T) {
	_, err := pattern.Decode([]byte("\xff\xfe\x00"), "x.strand")
	if err == nil || err.Error() != "x.strand: this is not a text file (a pattern is UTF-8 text)" {
		t.Errorf("got %v", err)
	}
}

func TestDecodeReadsWindowsLines(t *testing.T) {
	windows := "\ufeff" + strings.ReplaceAll(runner, "\n", "\r\n")
	if !reflect.DeepEqual(decode(t, windows), decode(t, runner)) {
		t.Error("the same file with other line ends reads otherwise")
	}
}

func TestRowsAtFindsTheRowsInTheFile(t *testing.T) {
	for _, src := range []string{
		runner,
		"strandway = 1\n[[piece]]\nname = \"a\"\nrows = \"Row 1: sc.\"",
		"strandway = 1\n[[piece]]\nname = \"a\"\nrows = '''Row 1: sc.'''\n[[piece]]\nname = \"b\"\nrows = '''\nRow 1: dc.\n'''",
		"strandway = 1\npiece = [{name = \"a\", rows = \"Row 1: sc.\"}]",
	} {
		p := decode(t, src)
		at := pattern.RowsAt([]byte(src))
		if len(at) != len(p.Pieces) {
			t.Fatalf("%q: %v", src, at)
		}
		for i, piece := range p.Pieces {
			if !strings.HasPrefix(src[at[i]:], piece.Rows) {
				line, column := diag.Place(src, at[i])
				t.Errorf("%q: rows of %s said to begin at %d:%d", src, piece.Name, line, column)
			}
		}
	}
}

func TestParseMultiple(t *testing.T) {
	for _, c := range []struct {
		s              string
		multiple, plus int
	}{
		{"4 + 1", 4, 1}, {"4n+1", 4, 1}, {"multiple of 6 plus 3", 6, 3}, {"12", 12, 0}, {"10 - 2", 10, -2},
	} {
		multiple, plus, err := pattern.ParseMultiple(c.s)
		if err != nil || multiple != c.multiple || plus != c.plus {
			t.Errorf("%q: %d + %d, %v", c.s, multiple, plus, err)
		}
	}
	for _, s := range []string{"", "n", "4 +", "0 + 1", "4 + 1 + 1", "-4"} {
		if _, _, err := pattern.ParseMultiple(s); err == nil {
			t.Errorf("%q was read", s)
		}
	}
}

func TestSaveTakesThePlaceOfTheOldFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "runner.strand")
	if err := os.WriteFile(path, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	p := decode(t, runner)
	if err := pattern.Save(path, p); err != nil {
		t.Fatal(err)
	}
	if got, err := pattern.Load(path); err != nil || !reflect.DeepEqual(got, p) {
		t.Errorf("got %+v, %v", got, err)
	}
	if info, _ := os.Stat(path); info.Mode().Perm() != 0o600 {
		t.Errorf("permissions became %v", info.Mode())
	}
	if left, _ := os.ReadDir(dir); len(left) != 1 {
		t.Errorf("left over: %v", left)
	}
}

func TestSaveKeepsALink(t *testing.T) {
	dir := t.TempDir()
	target, link := filepath.Join(dir, "target.strand"), filepath.Join(dir, "link.strand")
	if err := os.WriteFile(target, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("target.strand", link); err != nil {
		t.Skip(err)
	}
	if err := pattern.Save(link, decode(t, runner)); err != nil {
		t.Fatal(err)
	}
	if got, _ := os.ReadFile(target); string(got) != runner {
		t.Errorf("the link's target holds %q", got)
	}
}

func TestSaveLosesNothingWhenItCannotWrite(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "folder.strand")
	if err := os.Mkdir(path, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(path, "kept"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	err := pattern.Save(path, decode(t, runner))
	if err == nil || !strings.HasPrefix(err.Error(), "cannot save "+path+": ") || strings.Count(err.Error(), path) != 1 {
		t.Errorf("got %v", err)
	}
	if left, _ := os.ReadDir(dir); len(left) != 1 {
		t.Errorf("left over: %v", left)
	}
}

func TestLoadSaysWhyItCannotRead(t *testing.T) {
	dir := t.TempDir()
	for path, want := range map[string]string{
		filepath.Join(dir, "none.strand"): "no such file or directory",
		dir:                               "it is a folder",
	} {
		if _, err := pattern.Load(path); err == nil || err.Error() != "cannot read "+path+": "+want {
			t.Errorf("got %v", err)
		}
	}
}

// escaped tells the characters that may be written otherwise than they are.
func escaped(r rune) bool {
	return r == '\\' || r == '"' || r != '\n' && r != '\t' && unicode.IsControl(r)
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(runner))
	f.Add([]byte("strandway = 1\npiece = [{name = \"a\", rows = \"x\"}]\nhook.mm = 4"))
	f.Add([]byte("strandway = 1\n[[yarn]]\nletter = \"AA\"\nweight = 9\ncolours = [1]"))
	f.Fuzz(func(t *testing.T, src []byte) {
		p, err := pattern.Decode(src, "x")
		if err != nil {
			return
		}
		once := p.Encode()
		again, err := pattern.Decode(once, "x")
		if err != nil {
			t.Fatalf("%v in:\n%s", err, once)
		}
		if !bytes.Equal(again.Encode(), once) {
			t.Fatalf("not a fixed point:\n%s", once)
		}
		for i, at := range pattern.RowsAt(once) {
			rows := p.Pieces[i].Rows
			if at >= 0 && !strings.ContainsFunc(rows, escaped) && !strings.HasPrefix(string(once[at:]), rows) {
				t.Fatalf("rows of piece %d are not at %d in:\n%s", i, at, once)
			}
		}
	})
}
