package yarn_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/yarn"
)

// worsted is a 5 mm hook and 200 m to 100 g.
var worsted = yarn.Tools{HookMM: 5, YarnMM: yarn.Thickness(100, 200)}

func library(t testing.TB) *stitch.Library {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

func TestThickness(t *testing.T) {
	for m, want := range map[float64]float64{400: 1.6, 200: 2.3, 100: 3.3} {
		if got := yarn.Thickness(100, m); math.Abs(got-want) > .06 {
			t.Errorf("%g m to 100 g: %.2f mm, want %.1f", m, got, want)
		}
	}
}

// The lengths agree with the trade's measured ones for worsted on a 5 mm hook, in cm.
func TestOfKind(t *testing.T) {
	lib := library(t)
	for _, c := range []struct {
		name      string
		low, high float64
	}{
		{"ch", 2.8, 4.4}, {"sc", 5.5, 7.8}, {"hdc", 7.9, 11.2}, {"dc", 9.8, 13.8}, {"tr", 12.6, 17.8},
		{"3-dc cl", 22.7, 32}, {"5-dc bobble", 36.5, 54}, {"5-dc popcorn", 44, 71},
	} {
		k, ok := lib.Kind(c.name)
		if !ok {
			t.Errorf("no %s", c.name)
			continue
		}
		l := worsted.OfKind(k)
		if cm := (l.Loops + l.Legs) / 10; cm < c.low || cm > c.high {
			t.Errorf("%s: %.1f cm, want %g to %g", c.name, cm, c.low, c.high)
		}
	}
}

// A stitch worked far below is drawn out only by what its own height does not reach.
func TestLongStitches(t *testing.T) {
	const sc, row = 20, "Row %d: Ch 1, %s across, turn.\n"
	take := func(words string) float64 {
		rows := "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n" + fmt.Sprintf(row, 2, "sc in each st") + fmt.Sprintf(row, 3, words)
		p := &pattern.Pattern{Terms: "US", Hook: pattern.Hook{MM: 5}, Gauge: pattern.Gauge{Stitches: 14, Rows: 15.5, OverCM: 10},
			Yarns: []pattern.Yarn{{Letter: "A", Weight: -1, Grams: 100, Metres: 200}}, Pieces: []pattern.Piece{{Name: "P", Rows: rows}}}
		w := model.Work(library(t), p, 0)
		if w.Findings.Faults() > 0 {
			t.Fatal(w.Findings)
		}
		f := w.Figures()
		return 100 * yarn.InRows(w.Pieces[0].Fabric, f.Pieces[0].Ask, 0)[3] / sc
	}
	plain := take("sc in each st")
	for _, c := range []struct {
		words     string
		low, high float64 // cm over a plain sc
	}{
		{"sc in each st 2 rows below", 1, 1.6},   // twice a row of 6.5 mm
		{"dc in each st 2 rows below", 4.2, 5.4}, // a dc nearly reaches by itself
		{"dc in each st", 4, 5.2},
		{"fpdc around each st", 5, 6.6}, // and round the post
		{"puff in each st", 12, 17},     // three loops, each drawn up
	} {
		if got := take(c.words) - plain; got < c.low || got > c.high {
			t.Errorf("%s: %.1f cm more than a sc, want %g to %g", c.words, got, c.low, c.high)
		}
	}
}

func TestBalls(t *testing.T) {
	for _, c := range []struct {
		metres, margin, ball float64
		want                 int
	}{{380, .1, 200, 3}, {360, .1, 200, 2}, {200, 0, 200, 1}, {200.5, 0, 200, 2}, {100, .1, 0, 0}} {
		if got := yarn.Balls(c.metres, c.margin, c.ball); got != c.want {
			t.Errorf("%g m and %g in balls of %g m: %d, want %d", c.metres, c.margin, c.ball, got, c.want)
		}
	}
}

func TestEnough(t *testing.T) {
	rows := []float64{2, 3, 3, 4}
	for _, c := range []struct {
		from   int
		metres float64
		want   int
	}{{0, 1.9, 0}, {0, 5, 2}, {0, 7.9, 2}, {1, 10, 3}, {2, 100, 2}, {4, 5, 0}} {
		if got := yarn.Enough(rows, c.from, c.metres); got != c.want {
			t.Errorf("%g m from row %d: %d rows, want %d", c.metres, c.from, got, c.want)
		}
	}
}

func TestSubstitute(t *testing.T) {
	if got := yarn.Substitute(600, 14, 17.5); math.Abs(got-750) > 1e-9 {
		t.Errorf("a finer yarn, 17.5 for 14 stitches: %g m, want 750", got)
	}
}

const stripes = `Ch 31.
Row 1 (A): Sc in 2nd ch from hook and in each ch across, turn.
Row 2 (A): Ch 1, sc in each st across, turn.
Row 3 (B): Ch 1, sc in each st across, turn.
Row 4 (B): Ch 1, sc in each st across, turn.
Row 5 (A): Ch 3 (counts as dc), dc in next st and in each st across, turn.
Row 6 (A): Ch 3 (counts as dc), dc in next st and in each st across, turn.
`

func striped(pieces ...string) *pattern.Pattern {
	p := &pattern.Pattern{Terms: "US", Hook: pattern.Hook{MM: 5}, Gauge: pattern.Gauge{Stitches: 14, Rows: 12, OverCM: 10},
		Yarns: []pattern.Yarn{{Letter: "A", Weight: -1, Grams: 100, Metres: 200, Price: 6}, {Letter: "B", Weight: -1, Grams: 50, Metres: 105}}}
	for i, rows := range pieces {
		p.Pieces = append(p.Pieces, pattern.Piece{Name: string(rune('P' + i)), Rows: rows})
	}
	return p
}

func TestMetresAddUpOverPieces(t *testing.T) {
	one := model.Work(library(t), striped(stripes), 0).Figures()
	three := model.Work(library(t), striped(stripes, stripes, stripes), 0).Figures()
	for i, a := range three.Yarns {
		sum := 0.0
		for _, m := range a.ByPiece {
			sum += m
		}
		if math.Abs(sum-a.Metres) > 1e-9 || math.Abs(a.Metres-3*one.Yarns[i].Metres) > 1e-9 {
			t.Errorf("yarn %s: %g m, pieces add up to %g, three times one is %g", a.Letter, a.Metres, sum, 3*one.Yarns[i].Metres)
		}
		if math.Abs(a.StitchM+a.FloatM+a.TailM-a.Metres) > 1e-9 {
			t.Errorf("yarn %s: %g in stitches, %g in floats, %g in tails are not %g", a.Letter, a.StitchM, a.FloatM, a.TailM, a.Metres)
		}
	}
}

func TestRowsAddUp(t *testing.T) {
	w := model.Work(library(t), striped(stripes), 0)
	f := w.Figures()
	for y := range w.Pieces[0].Fabric.Yarns {
		sum := 0.0
		for _, m := range yarn.InRows(w.Pieces[0].Fabric, f.Pieces[0].Ask, y) {
			sum += m
		}
		if want := f.Yarns[y].StitchM; math.Abs(sum-want) > 1e-9 {
			t.Errorf("yarn %d: rows add up to %g m, the piece takes %g", y, sum, want)
		}
	}
}

func TestAmounts(t *testing.T) {
	f := model.Work(library(t), striped(stripes), 0).Figures()
	a := f.Yarns[0]
	if a.Letter != "A" || a.Balls != 1 || a.Price != 6 || math.Abs(a.LeftOver-(200-a.Metres)) > 1e-9 || math.Abs(a.Grams-a.Metres/2) > 1e-9 {
		t.Errorf("%+v", a)
	}
	if math.Abs(a.TailM-.3) > 1e-9 || math.Abs(a.FloatM-.011*f.Pieces[0].Strands.ByYarn[0].FloatCM()) > 1e-9 {
		t.Errorf("%g m in ends, want two of 15 cm; %g m in floats", a.TailM, a.FloatM)
	}
}

// A weighed swatch finds a maker's hands to within a few per cent, though the
// scale is read to a tenth of a gram and the label is out by some.
func TestSwatchFindsTheMaker(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	lib := library(t)
	for range 60 {
		hands := .8 + .5*rng.Float64()
		plain := model.Work(lib, striped(stripes), 0).Figures()
		area, taken := 0.0, 0.0
		size := plain.Pieces[0].Size
		for r, cm := range size.RowCM {
			area += cm * size.WidthsCM[r]
		}
		p := striped(stripes)
		p.Gauge.Swatch = &pattern.Swatch{WidthCM: 15, HeightCM: 15, Grams: map[string]float64{}}
		for _, a := range plain.Yarns {
			y, _ := p.Yarn(a.Letter)
			grams := hands * a.StitchM * 225 / area * y.Grams / y.Metres
			p.Gauge.Swatch.Grams[a.Letter] = math.Round(grams*(1+.02*(2*rng.Float64()-1))*10) / 10
			taken += hands * a.StitchM
		}
		got := 0.0
		for _, a := range model.Work(lib, p, 0).Figures().Yarns {
			got += a.StitchM
		}
		if off := got/taken - 1; math.Abs(off) > .05 {
			t.Errorf("hands of %.2f: reckoned %.2f m, taken %.2f m, %+.1f %%", hands, got, taken, 100*off)
		}
	}
}

func TestTwoSwatchesTellLoopsFromLegs(t *testing.T) {
	lib := library(t)
	sc, _ := lib.Kind("sc")
	tr, _ := lib.Kind("tr")
	a, b := worsted.OfKind(sc).Times(600), worsted.OfKind(tr).Times(300)
	const loops, legs = .92, 1.15
	weigh := func(l yarn.Length) yarn.Weighed {
		return yarn.Weighed{Reckoned: l, Metres: (l.Loops*loops + l.Legs*legs) / 1000}
	}
	got := yarn.CalibrateTwo([]yarn.Weighed{weigh(a), weigh(b)})
	if math.Abs(got.Loops-loops) > 1e-6 || math.Abs(got.Legs-legs) > 1e-6 {
		t.Errorf("loops %g, legs %g, want %g and %g", got.Loops, got.Legs, loops, legs)
	}
	alike := yarn.CalibrateTwo([]yarn.Weighed{weigh(a), weigh(a)})
	if alike.Loops != alike.Legs {
		t.Errorf("two swatches of one stitch: loops %g, legs %g, want one factor", alike.Loops, alike.Legs)
	}
}

// Two swatches weighed on kitchen scales foretell a fabric between them, whatever the maker's hands do to loops and legs.
func TestTwoSwatchesFindTheMaker(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 10))
	lib := library(t)
	kind := func(name string) yarn.Length {
		k, _ := lib.Kind(name)
		return worsted.OfKind(k)
	}
	off, worst := 0, 0.0
	const trials = 200
	for range trials {
		loops, legs := .85+.3*rng.Float64(), .85+.3*rng.Float64()
		taken := func(l yarn.Length) float64 { return (l.Loops*loops + l.Legs*legs) / 1000 }
		weigh := func(l yarn.Length) yarn.Weighed {
			const gramsToMetre = .5
			grams := math.Round(taken(l)*gramsToMetre*(1+.02*(2*rng.Float64()-1))*10) / 10
			return yarn.Weighed{Reckoned: l, Metres: grams / gramsToMetre}
		}
		k := yarn.CalibrateTwo([]yarn.Weighed{weigh(kind("sc").Times(400)), weigh(kind("tr").Times(200))})
		piece := kind("sc").Times(4000).Add(kind("dc").Times(6000)).Add(kind("tr").Times(1000))
		reckoned := (piece.Loops*k.Loops + piece.Legs*k.Legs) / 1000
		share := math.Abs(reckoned/taken(piece) - 1)
		worst = max(worst, share)
		if share > .05 {
			off++
		}
	}
	if off > 0 {
		t.Errorf("%d of %d are off by more than 5 %%, the worst by %.1f %%", off, trials, 100*worst)
	}
}
