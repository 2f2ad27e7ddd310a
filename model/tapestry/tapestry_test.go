package tapestry

import (
	"image"
	"image/color"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

func library(t testing.TB) *stitch.Library {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

func piece(rows string, terms string) *pattern.Pattern {
	return &pattern.Pattern{Title: "Harbour Light", Terms: terms, Units: "cm",
		Yarns:  []pattern.Yarn{{Letter: "A", Colour: "#27405c"}, {Letter: "B", Colour: "#e6dcc6"}, {Letter: "C", Colour: "#b0532b"}},
		Pieces: []pattern.Piece{{Name: "Body", Rows: rows}}}
}

// worked is the grid that rows make, which must be without faults.
func worked(t testing.TB, lib *stitch.Library, rows, terms string) Grid {
	t.Helper()
	w := model.Work(lib, piece(rows, terms), 0)
	if f := w.Pieces[0].Findings; f.Faults() > 0 {
		t.Fatalf("%v\n%s", f, rows)
	}
	g, err := FromFabric(w.Pieces[0].Fabric)
	if err != nil {
		t.Fatalf("%v\n%s", err, rows)
	}
	return g
}

// drawn is a grid from lines, the last row on top as one sees the piece, a letter a stitch.
func drawn(lines ...string) Grid {
	slices.Reverse(lines)
	g := New(len(lines[0]), len(lines), []string{"A", "B", "C"})
	for i, c := range strings.Join(lines, "") {
		g.Cells[i] = uint8(c - 'A')
	}
	return g
}

func show(g Grid) string {
	s := ""
	for i := g.Height - 1; i >= 0; i-- {
		for _, y := range g.row(i) {
			s += g.letter(y)
		}
		s += "\n"
	}
	return s
}

func TestRowsOfAGrid(t *testing.T) {
	g := drawn(
		"AAAAAAAAAA",
		"ABBABBABBA",
		"AABBBBAAAC",
	)
	want := `With C, ch 11, carry yarn not in use.
Row 1 (RS): With C, sc in 2nd ch from hook, with A, sc in next 3 ch, with B, sc in next 4 ch, with A, sc in next 2 ch, turn.
Row 2 (WS): With A, ch 1, *with A, sc in next st, with B, sc in next 2 sts; rep from * to last st, with A, sc in next st, turn.
Row 3 (RS): With A, ch 1, sc in each st across.
`
	if got := g.Rows(library(t), "us"); got != want {
		t.Errorf("rows are\n%swant\n%s", got, want)
	}
}

func TestRowsOfAGridWorkThatGrid(t *testing.T) {
	lib := library(t)
	for _, terms := range []string{"US", "UK"} {
		for seed := range uint64(40) {
			r := rand.New(rand.NewPCG(seed, 7))
			g := New(4+r.IntN(30), 4+r.IntN(12), []string{"A", "B", "C"})
			repeat := 1 + r.IntN(g.Width) // some repeat, as borders do
			for i := range g.Cells {
				g.Cells[i] = uint8(r.IntN(1 + r.IntN(3)))
				if col := i % g.Width; col >= repeat {
					g.Cells[i] = g.Cells[i-repeat]
				}
			}
			rows := g.Rows(lib, strings.ToLower(terms))
			if got := worked(t, lib, rows, terms); show(got) != show(g) {
				t.Fatalf("%s, grid %d:\n%sbecame\n%srows:\n%s", terms, seed, show(g), show(got), rows)
			}
		}
	}
}

const stripes = `With A, ch 7.
Row 1 (RS): With A, sc in 2nd ch from hook and in each ch across, turn. (6 sc)
Row 2 (WS): Ch 1, sc in each st across, turn.
Row 3 (RS, B): Ch 1, sc in first st, sc in each st across, turn.
Row 4 (WS): With A, ch 1, sc in each st across. Fasten off.
`

func TestPaintingACellRewritesItsRowAlone(t *testing.T) {
	lib := library(t)
	g := worked(t, lib, stripes, "US").Pencil(1, Cell{0, 1}, Cell{2, 1})
	got, err := Paint(lib, piece(stripes, "US"), 0, 0, g)
	if err != nil {
		t.Fatal(err)
	}
	before, after := strings.Split(stripes, "\n"), strings.Split(got, "\n")
	if len(before) != len(after) {
		t.Fatalf("rows became\n%s", got)
	}
	for i := range before {
		if i != 2 && before[i] != after[i] {
			t.Errorf("%q became %q", before[i], after[i])
		}
	}
	if want := "Row 2 (WS): With B, ch 1, *with B, sc in next st, with A, sc in next st; rep from * to last 2 sts, with A, sc in next 2 sts, turn."; after[2] != want {
		t.Errorf("the row is\n%s\nwant\n%s", after[2], want)
	}
	if got := worked(t, lib, got, "US"); show(got) != show(g) {
		t.Errorf("the piece is\n%swant\n%s", show(got), show(g))
	}
}

func TestARowThatGoesOnInAYarnKeepsIt(t *testing.T) {
	lib := library(t)
	g, c := worked(t, lib, stripes, "US").Yarn("C")
	g = g.Pencil(c, Cell{0, 0}) // Row 1 now ends in C, and Row 2 does not name its yarn
	got, err := Paint(lib, piece(stripes, "US"), 0, 0, g)
	if err != nil {
		t.Fatal(err)
	}
	if got := worked(t, lib, got, "US"); show(got) != show(g) {
		t.Errorf("the piece is\n%swant\n%s", show(got), show(g))
	}
}

func TestPaintingARowThatStandsForSeveralWritesThemOut(t *testing.T) {
	lib := library(t)
	rows := "With A, ch 7.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRows 2-5: Ch 1, sc in each st across, turn.\n"
	g, b := worked(t, lib, rows, "US").Yarn("B")
	g = g.Pencil(b, Cell{3, 2})
	got, err := Paint(lib, piece(rows, "US"), 0, 0, g)
	if err != nil {
		t.Fatal(err)
	}
	if got := worked(t, lib, got, "US"); show(got) != show(g) {
		t.Errorf("the piece is\n%swant\n%s", show(got), show(g))
	}
}

func TestPaintRefuses(t *testing.T) {
	lib := library(t)
	for says, rows := range map[string]string{
		"Row 2 is not worked in sc":        "Ch 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 3, dc in each st across.\n",
		"Row 2 has 5 stitches where":       "Ch 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, skip first st, sc in each st across.\n",
		"there are no rows yet":            "Ch 7.\n",
		"the rows make 6 by 1 stitches":    "Ch 7.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n",
		"Rnd 1 is not worked in sc in eac": "Ch 4, join with sl st in first ch to form a ring.\nRnd 1: Ch 1, 8 sc in ring, join with sl st in first sc.\n",
	} {
		_, err := Paint(lib, piece(rows, "US"), 0, 0, New(5, 5, []string{"A"}))
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: got %v", says, err)
		}
	}
}

func TestFillTakesOnePatch(t *testing.T) {
	g := drawn(
		"ABA",
		"BAB",
		"AAB",
	)
	for _, c := range []struct {
		from Cell
		want string
	}{
		{Cell{0, 0}, "ABA\nBCB\nCCB\n"},
		{Cell{2, 1}, "ABA\nBAC\nAAC\n"},
		{Cell{0, 2}, "CBA\nBAB\nAAB\n"},
		{Cell{9, 9}, "ABA\nBAB\nAAB\n"},
	} {
		if got := show(g.Fill(2, c.from)); got != c.want {
			t.Errorf("from %v:\n%swant\n%s", c.from, got, c.want)
		}
	}
	if show(g) != "ABA\nBAB\nAAB\n" {
		t.Error("the grid itself was changed")
	}
}

var (
	sea   = color.NRGBA{0x27, 0x40, 0x5c, 255}
	foam  = color.NRGBA{0xe6, 0xdc, 0xc6, 255}
	ember = color.NRGBA{0xb0, 0x53, 0x2b, 255}
)

// light is a picture: sea below, foam above, with an ember square at the upper left.
func light(w, h int) *image.NRGBA {
	img := image.NewNRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			c := foam
			if y >= h/2 {
				c = sea
			}
			if x < w/4 && y < h/4 {
				c = ember
			}
			img.SetNRGBA(x, y, c)
		}
	}
	return img
}

func TestImportFindsThePicturesColours(t *testing.T) {
	g, found, err := Import(light(80, 80), Options{Stitches: 8, Aspect: 1, New: 3})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(found, []color.NRGBA{sea, foam, ember}) {
		t.Errorf("found %v", found)
	}
	want := strings.Repeat("CCBBBBBB\n", 2) + strings.Repeat("BBBBBBBB\n", 2) + strings.Repeat("AAAAAAAA\n", 4)
	if show(g) != want {
		t.Errorf("grid is\n%s", show(g))
	}
}

func TestImportKeepsProportionsAtTheGauge(t *testing.T) {
	g, _, err := Import(light(200, 100), Options{Stitches: 36, Aspect: .9, New: 2})
	if err != nil {
		t.Fatal(err)
	}
	if g.Height != 20 { // 36 / 2 / .9
		t.Errorf("%d rows, want 20", g.Height)
	}
}

func TestImportIntoThePatternsYarns(t *testing.T) {
	yarns := []color.NRGBA{{0, 0, 0, 255}, {255, 255, 255, 255}}
	g, _, err := Import(light(40, 40), Options{Stitches: 4, Aspect: 1, Yarns: yarns})
	if err != nil {
		t.Fatal(err)
	}
	if want := "BBBB\nBBBB\nAAAA\nAAAA\n"; show(g) != want {
		t.Errorf("grid is\n%s", show(g))
	}
}

func TestDitherMixesWhatNoYarnHas(t *testing.T) {
	grey := image.NewNRGBA(image.Rect(0, 0, 20, 20))
	for i := range grey.Pix {
		grey.Pix[i] = 110
	}
	yarns := []color.NRGBA{{0, 0, 0, 255}, {255, 255, 255, 255}}
	share := func(dither bool) float64 {
		g, _, err := Import(grey, Options{Stitches: 20, Aspect: 1, Yarns: yarns, Dither: dither})
		if err != nil {
			t.Fatal(err)
		}
		n := 0.
		for _, c := range g.Cells {
			n += float64(c)
		}
		return n / float64(len(g.Cells))
	}
	if s := share(false); s != 0 && s != 1 {
		t.Errorf("without dither %.2f of the cells are white", s)
	}
	if s := share(true); s < .3 || s > .9 {
		t.Errorf("with dither %.2f of the cells are white", s)
	}
}

func TestImportRefuses(t *testing.T) {
	for says, c := range map[string]struct {
		img image.Image
		o   Options
	}{
		"nothing to see":      {light(2, 2), Options{Stitches: 20, Aspect: 1, New: 2}},
		"too few to see":      {light(40, 40), Options{Stitches: 2, Aspect: 1, New: 2}},
		"more than one piece": {light(40, 40), Options{Stitches: 5000, Aspect: 1, New: 2}},
		"from 2 to 26 yarns":  {light(40, 40), Options{Stitches: 20, Aspect: 1, New: 1}},
		"all of one colour":   {image.NewNRGBA(image.Rect(0, 0, 9, 9)), Options{Stitches: 20, Aspect: 1, New: 2}},
	} {
		if _, _, err := Import(c.img, c.o); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: got %v", says, err)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add("")
	f.Add("\x89PNG\r\n\x1a\n")
	f.Add("\xff\xd8\xff\xe0")
	f.Fuzz(func(t *testing.T, src string) {
		if img, err := Read(strings.NewReader(src)); err == nil && img == nil {
			t.Error("neither a picture nor an error")
		}
	})
}

func BenchmarkImport(b *testing.B) {
	img := light(2000, 2000)
	for b.Loop() {
		if _, _, err := Import(img, Options{Stitches: 150, Aspect: .9, New: 6}); err != nil {
			b.Fatal(err)
		}
	}
}
