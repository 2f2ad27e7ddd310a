package model_test

import (
	"image/color"
	"slices"
	"strings"
	"testing"

	"strandway/model"
	"strandway/model/diag"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

func library(t *testing.T) *stitch.Library {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

const mesh = "Ch 4n + 5.\nRow 1: Dc in 4th ch from hook and in each ch across, turn.\n"

// body is a pattern of one piece with a gauge, which has nothing to be told of.
func body(rows string) *pattern.Pattern {
	return &pattern.Pattern{Terms: "US", Gauge: pattern.Gauge{Stitches: 20, Rows: 10, OverCM: 10},
		Pieces: []pattern.Piece{{Name: "Body", Rows: rows}}}
}

// counts are the stitches of a piece's rows, the foundation left out.
func counts(w *model.Worked, piece int) []int {
	var out []int
	for _, r := range w.Pieces[piece].Fabric.Rows[1:] {
		out = append(out, r.Count)
	}
	return out
}

func TestWorkTakesTheRepeatsOfTheSize(t *testing.T) {
	lib := library(t)
	for _, c := range []struct {
		size  pattern.Size
		rows  string
		n     int
		count []int
	}{
		{pattern.Size{Repeats: 5}, mesh, 5, []int{23}},
		{pattern.Size{Repeats: 1}, mesh, 1, []int{7}},
		{pattern.Size{WidthCM: 30}, mesh, 14, []int{59}}, // 60 stitches wanted, 59 is nearer than 63
		{pattern.Size{WidthCM: .5}, mesh, 1, []int{7}},
		{pattern.Size{}, mesh, 3, []int{15}},
		// with three repeats four chains are left over, with four they come out
		{pattern.Size{}, "Ch 4n + 4.\nRow 1: Dc in 4th ch from hook, *dc in next 7 ch, ch 1, skip next ch; rep from * across, turn.\n", 4, []int{16}},
		{pattern.Size{Repeats: 9}, "Ch 10.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n", 9, []int{9}},
	} {
		p := body(c.rows)
		p.Sizes = []pattern.Size{{Name: "other"}, c.size}
		w := model.Work(lib, p, 1)
		if w.Pieces[0].N != c.n || !slices.Equal(counts(w, 0), c.count) {
			t.Errorf("%+v: n = %d, %v stitches; want %d, %v\n%v", c.size, w.Pieces[0].N, counts(w, 0), c.n, c.count, w.Findings)
		}
	}
}

func TestWorkRepeatsRowsToTheLengthWanted(t *testing.T) {
	lib := library(t)
	const even = mesh + "Row 2: Ch 3, dc in next st and in each st across, turn.\n"
	for _, c := range []struct {
		rows string
		want int
	}{
		{even + "Rep Row 2 until piece measures 12 cm.\n", 12},
		{even + "Rep Row 2 until piece measures 4 in.\n", 10},
		{even + "Rep Row 2 until desired length.\n", 25},
	} {
		p := body(c.rows)
		p.Sizes = []pattern.Size{{Name: "M", Repeats: 3, LengthCM: 25}}
		if w := model.Work(lib, p, 0); len(counts(w, 0)) != c.want {
			t.Errorf("%q: %d rows, want %d\n%v", c.rows, len(counts(w, 0)), c.want, w.Findings)
		}
	}
}

func TestWorkFindsWhatThePatternLacks(t *testing.T) {
	lib := library(t)
	yarns := func(letters string) (out []pattern.Yarn) {
		for _, l := range letters {
			out = append(out, pattern.Yarn{Letter: string(l)})
		}
		return out
	}
	for _, c := range []struct {
		name   string
		change func(*pattern.Pattern)
		want   string // the whole findings, one a line
	}{
		{"nothing", func(p *pattern.Pattern) {}, ""},
		{"no piece", func(p *pattern.Pattern) { p.Pieces = nil },
			"note: the pattern has no piece yet (write [[piece]], a name, and its rows)"},
		{"no rows", func(p *pattern.Pattern) { p.Pieces[0].Rows = "" },
			"note: this piece has no rows yet (begin with a foundation: ch 20)"},
		{"no gauge", func(p *pattern.Pattern) { p.Gauge = pattern.Gauge{} },
			"note: the pattern gives no gauge, so finished sizes are not known (measure a blocked swatch and write its stitches and rows under [gauge])"},
		{"a colourway's letter", func(p *pattern.Pattern) {
			p.Yarns = yarns("A")
			p.Colourways = []pattern.Colourway{{Name: "Dusk", Shades: map[string]pattern.Shade{"A": {}, "D": {}}}}
		}, `to think about: colourway "Dusk" names a yarn D that the pattern does not have (add the yarn, or take the letter out)`},
		{"a swatch's letter", func(p *pattern.Pattern) { p.Gauge.Swatch = &pattern.Swatch{Grams: map[string]float64{"B": 3}} },
			"to think about: the swatch weighs a yarn B that the pattern does not have (add the yarn, or take the letter out)"},
		{"a yarn unknown", func(p *pattern.Pattern) {
			p.Yarns = yarns("A")
			p.Pieces[0].Rows = "With A, ch 4n + 5.\nRow 1 (B): Sc in each ch across."
		},
			`to think about: Row 1: yarn B is worked, but the pattern does not say what it is (add yarn B to the pattern, or take a letter that it has)`},
		{"a yarn unused", func(p *pattern.Pattern) { p.Yarns = yarns("AB") },
			"note: no row is worked in yarn B (name it in a row's heading, as in Row 3 (B), or take it out)"},
		{"a stitch unused", func(p *pattern.Pattern) {
			p.Stitches = []pattern.Special{{Abbreviation: "tuft", US: "(hdc, ch 1, hdc) in indicated place"}}
		}, "note: the special stitch tuft is defined, but no row works it (take it out, or use it)"},
		{"a stitch used by another name", func(p *pattern.Pattern) {
			p.Stitches = []pattern.Special{{Abbreviation: "Tuft", US: "(hdc, ch 1, hdc) in indicated place"}}
			p.Pieces[0].Rows = "Ch 3n + 2.\nRow 1: Sc in 2nd ch from hook, *skip next ch, tuft in next ch, sc in next ch; rep from * across.\n"
		}, ""},
		{"a multiple that fits", func(p *pattern.Pattern) { p.Pieces[0].Multiple = "4 + 3" }, ""},
		{"a multiple of two", func(p *pattern.Pattern) { p.Pieces[0].Multiple = "6 + 1" },
			"to think about: Foundation: a foundation of 4n + 5 chains is no multiple of 6 + 1 and a turning chain (state the stitches of a repeat and the edge stitches, without the chains for turning)"},
		{"worked otherwise", func(p *pattern.Pattern) { p.Pieces[0].Worked = "spiral" },
			`to think about: Row 1: the piece is said to be worked in a spiral, but this is worked flat (write worked = "flat", or mend the row)`},
	} {
		p := body(mesh)
		c.change(p)
		var got []string
		for _, f := range model.Work(lib, p, 0).Findings {
			got = append(got, f.String())
		}
		if strings.Join(got, "\n") != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.name, strings.Join(got, "\n"), c.want)
		}
	}
}

func TestWorkTakesBothTermsForSpecialStitches(t *testing.T) {
	lib := library(t)
	for _, c := range []struct{ terms, us, uk, rows string }{
		{"US", "(hdc, ch 1, hdc) in indicated place", "", "Ch 3n + 2.\nRow 1: Sc in 2nd ch from hook, *skip next ch, tuft in next ch, sc in next ch; rep from * across.\n"},
		{"US", "", "(htr, ch 1, htr) in indicated place", "Ch 3n + 2.\nRow 1: Sc in 2nd ch from hook, *skip next ch, tuft in next ch, sc in next ch; rep from * across.\n"},
		{"UK", "(hdc, ch 1, hdc) in indicated place", "", "Ch 3n + 2.\nRow 1: Dc in 2nd ch from hook, *miss next ch, tuft in next ch, dc in next ch; rep from * across.\n"},
	} {
		p := body(c.rows)
		p.Terms = c.terms
		p.Stitches = []pattern.Special{{Abbreviation: "tuft", US: c.us, UK: c.uk}}
		w := model.Work(lib, p, 0)
		if got := counts(w, 0); len(w.Findings) > 0 || !slices.Equal(got, []int{10}) {
			t.Errorf("%+v: %v stitches\n%v", c, got, w.Findings)
		}
	}
}

func TestWorkRefusesMoreThanCanBeWorked(t *testing.T) {
	p := body(mesh)
	p.Sizes = []pattern.Size{{Name: "M", Repeats: 10_000_000}}
	w := model.Work(library(t), p, 0)
	if w.Findings.Faults() != 1 || len(w.Pieces[0].Fabric.Stitches) > model.Limit {
		t.Errorf("%d stitches, %v", len(w.Pieces[0].Fabric.Stitches), w.Findings)
	}
}

func TestWithRepeats(t *testing.T) {
	lib := library(t)
	for _, c := range []struct {
		rows string
		n    int
		want []int
	}{
		{mesh, 2, []int{11}},
		{"Ch 26.\nRow 1: Sc in 2nd ch from hook, *skip next 2 ch, 5 dc in next ch, skip next 2 ch, sc in next ch; rep from * across.\n", 2, []int{13}},
	} {
		p, err := model.WithRepeats(lib, body(c.rows), 0, 0, c.n)
		if err != nil {
			t.Errorf("%q: %v", c.rows, err)
			continue
		}
		if w := model.Work(lib, p, 0); !slices.Equal(counts(w, 0), c.want) || w.Findings.Faults() > 0 {
			t.Errorf("%q: %v stitches, want %v\n%v", c.rows, counts(w, 0), c.want, w.Findings)
		}
	}
	_, err := model.WithRepeats(lib, body("Rnd 1: 6 sc in ring.\n"), 0, 0, 2)
	if err == nil || err.Error() != `piece "Body" has no stitch repeat across that could be worked 2 times` {
		t.Errorf("got %v", err)
	}
}

func TestYarnColours(t *testing.T) {
	p := body("With A, ch 4n + 5.\nRow 1 (A): Dc in 4th ch from hook and in each ch across, turn.\nRow 2 (B): Ch 3, dc in next st and in each st across, turn.\nRow 3 (C): Ch 3, dc in next st and in each st across.\n")
	p.Yarns = []pattern.Yarn{{Letter: "A", Colour: "#112233"}, {Letter: "B", Colour: "#445566"}, {Letter: "C"}}
	p.Colourways = []pattern.Colourway{{Name: "Dusk", Shades: map[string]pattern.Shade{"B": {Colour: "#aabbcc"}}}}
	w := model.Work(library(t), p, 0)
	for way, want := range map[string][]color.NRGBA{
		"":     {{0x11, 0x22, 0x33, 0xff}, {0x44, 0x55, 0x66, 0xff}},
		"Dusk": {{0x11, 0x22, 0x33, 0xff}, {0xaa, 0xbb, 0xcc, 0xff}},
	} {
		got := w.YarnColours(0, way)
		if len(got) != 3 || !slices.Equal(got[:2], want) || got[2].A != 0xff {
			t.Errorf("%q: %v, want %v and one of the program's own", way, got, want)
		}
	}
}

func TestNamesThatAreNot(t *testing.T) {
	p := body(mesh)
	p.Sizes = []pattern.Size{{Name: "S"}, {Name: "M"}}
	if _, err := model.SizeNamed(p, "XL"); err == nil || err.Error() != `there is no size "XL"; there is S, M` {
		t.Errorf("got %v", err)
	}
	if _, err := model.Work(library(t), p, 0).PieceNamed("Sleeve"); err == nil || err.Error() != `there is no piece "Sleeve"; there is Body` {
		t.Errorf("got %v", err)
	}
}

func TestDefinitionInOtherTerms(t *testing.T) {
	lib := library(t)
	for _, c := range []struct {
		stitch      pattern.Special
		terms, want string
	}{
		{pattern.Special{Abbreviation: "tuft", US: "(hdc, ch 1, hdc) in indicated place"}, "us", "(hdc, ch 1, hdc) in indicated place"},
		{pattern.Special{Abbreviation: "tuft", US: "(hdc, ch 1, hdc) in indicated place"}, "uk", "(htr, ch 1, htr) in one place"},
		{pattern.Special{Abbreviation: "tuft", UK: "(htr, ch 1, htr) in indicated place"}, "us", "(hdc, ch 1, hdc) in one place"},
		{pattern.Special{Abbreviation: "tuft", US: "yarn over in some way of one's own"}, "uk", "yarn over in some way of one's own"},
	} {
		if got := model.Definition(lib, c.stitch, c.terms); got != c.want {
			t.Errorf("%v in %s: %q, want %q", c.stitch, c.terms, got, c.want)
		}
	}
}

// A finding of a piece names it, so that its place can be looked up.
func TestFindingsNameTheirPiece(t *testing.T) {
	p := body("Ch 10.\nRow 1: Dcc in each ch across.\n")
	w := model.Work(library(t), p, 0)
	if worst, ok := w.Findings.Worst(); !ok || worst != diag.Fault || w.Findings[len(w.Findings)-1].Piece != "Body" {
		t.Errorf("got %+v", w.Findings)
	}
}

func TestYarnsAreKnownByTheirOwnNames(t *testing.T) {
	p := body("Ch 5.\nRow 1 (A): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: With Foam, ch 1, sc in each st across, turn.\n")
	p.Yarns = []pattern.Yarn{{Letter: "A", Name: "Lantern DK", Shade: "Wet Slate"}, {Letter: "B", Name: "Lantern DK", Shade: "Foam"}}
	f := model.Work(library(t), p, 0).Pieces[0].Fabric
	if got := f.Yarns[f.Rows[2].Yarn]; got != "B" {
		t.Errorf("a row with Foam is worked in yarn %s, want B", got)
	}
}
