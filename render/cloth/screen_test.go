package cloth

import (
	"bytes"
	"context"
	"image/color"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"strandway/chart/geom"
)

// Whatever is edited, and however the view goes about, a screen shows what drawing the cloth from nothing gives.
func TestAScreenShowsWhatDrawingAnewDoes(t *testing.T) {
	rows := []string{
		"Ch 19.",
		"Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.",
		"Row 2: Ch 1, sc in each st across, turn.",
		"Row 3 (B): Ch 1, sc in each st across, turn.",
		"Row 4: Ch 3 (counts as dc), dc in next st and in each st across, turn.",
		"Row 5: Ch 1, sc in each st across, turn.",
		"Row 6 (A): Ch 1, sc in each st across, turn.",
		"Row 7: Ch 1, sc in each st across, turn.",
	}
	others := []string{
		"Ch 1, sc in next 3 sts, dc in next 2 sts, sc in each st across, turn.",
		"Ch 1, 2 sc in first st, sc in each st across, turn.",
		"Ch 1, sc in next 5 sts, FPdc around next st, sc in each st across, turn.",
		"Ch 1, sc in each st across, turn.",
		"Ch 1, sc in next 4 sts, ch 2, skip next 2 sts, sc in each st across, turn.",
		"Ch 1, sc2tog, sc in each st across, turn.",
	}
	yarns := [][]Yarn{
		{{Colour: color.NRGBA{R: 39, G: 64, B: 92, A: 255}}, {Colour: color.NRGBA{R: 230, G: 220, B: 198, A: 255}}},
		{{Colour: color.NRGBA{R: 120, G: 64, B: 92, A: 255}}, {Colour: color.NRGBA{R: 230, G: 220, B: 198, A: 255}}},
		{{Colour: color.NRGBA{R: 39, G: 64, B: 92, A: 255}, Look: Variegated, RepeatM: .2,
			Colours: []color.NRGBA{{R: 200, A: 255}, {G: 200, A: 255}}}, {Colour: color.NRGBA{R: 230, G: 220, B: 198, A: 255}}},
	}
	for name, show := range map[string]struct {
		box    geom.Box
		scales []float64
		steps  int
	}{
		"samples kept":     {geom.Box{Min: geom.Point{X: -2, Y: -2}, Max: geom.Point{X: 22, Y: 13}}, []float64{2.3, 9, 17.5}, 60},
		"too many samples": {geom.Box{Min: geom.Point{X: -20, Y: -20}, Max: geom.Point{X: 400, Y: 300}}, []float64{.5}, 16},
	} {
		t.Run(name, func(t *testing.T) {
			screened(t, slices.Clone(rows), others, yarns, View{show.box, show.scales[0]}, show.scales, show.steps)
		})
	}
}

// screened edits rows and moves a view at random, and compares the screen with what drawing from nothing gives.
func screened(t *testing.T, rows, others []string, yarns [][]Yarn, view View, scales []float64, steps int) {
	random := rand.New(rand.NewPCG(1, 2))
	sprites := NewSprites(0)
	var screen Screen
	way, back := 0, Background{Ground: Transparent}
	for step := range steps {
		switch random.IntN(8) {
		case 0:
			way = random.IntN(len(yarns))
		case 1:
			view.PixelsPerW = scales[random.IntN(len(scales))]
		case 2, 3:
			by := geom.Point{X: float64(random.IntN(41) - 20), Y: float64(random.IntN(41) - 20)}.Mul(1 / view.PixelsPerW)
			view.Box.Min, view.Box.Max = view.Box.Min.Add(by), view.Box.Max.Add(by)
		case 4:
			back.Ground = []Ground{Transparent, Linen}[random.IntN(2)]
		default:
			row := 3 + random.IntN(len(rows)-3)
			head, _, _ := strings.Cut(rows[row], ": ")
			rows[row] = head + ": " + others[random.IntN(len(others))]
		}
		c := Make(worked(t, strings.Join(rows, "\n"), 1), yarns[way], Options{Sprites: sprites})
		got, err := screen.Show(context.Background(), c, view, yarns[way], back)
		if err != nil {
			t.Fatal(err)
		}
		drawn, err := c.Draw(context.Background(), view)
		if err != nil {
			t.Fatal(err)
		}
		if want := drawn.Colour(yarns[way], back); want.Rect != got.Rect || !bytes.Equal(want.Pix, got.Pix) {
			t.Fatalf("step %d: the screen shows another picture than drawing anew gives", step)
		}
	}
}

// After a stitch in one row most of the picture is taken over.
func TestAScreenDrawsAnewWhatChanged(t *testing.T) {
	rows := "Ch 41.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRows 2-29: Ch 1, sc in each st across, turn.\nRow 30: Ch 1, sc in next 3 sts"
	was := Make(worked(t, rows+", leave remaining sts unworked.", 1), nil, Options{})
	now := Make(worked(t, rows+", sc in next 3 sts, leave remaining sts unworked.", 1), nil, Options{Sprites: was.sprites})
	v := View{Box: geom.Box{Min: geom.Point{X: -1, Y: -1}, Max: geom.Point{X: 42, Y: 42}}, PixelsPerW: 10}
	var screen Screen
	if _, err := screen.Show(context.Background(), was, v, nil, Background{}); err != nil {
		t.Fatal(err)
	}
	before := screen
	if _, err := screen.Show(context.Background(), now, v, nil, Background{}); err != nil {
		t.Fatal(err)
	}
	fresh, whole := 0, 0
	for n := range screen.tiles {
		drawn := screen.draw(n, &field{}, &before, true)
		fresh, whole = fresh+drawn.Dx()*drawn.Dy(), whole+screen.tiles[n].Dx()*screen.tiles[n].Dy()
	}
	if fresh == 0 || fresh > whole/10 {
		t.Errorf("%d of %d pixels were drawn anew", fresh, whole)
	}
}

func BenchmarkScreen(b *testing.B) {
	rows := "Ch 144.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRows 2-139: Ch 1, sc in each st across, turn.\nRow 140: Ch 1, sc in next 3 sts"
	was := Make(worked(b, rows+", leave remaining sts unworked.", 1), nil, Options{})
	now := Make(worked(b, rows+", sc in next 3 sts, leave remaining sts unworked.", 1), nil, Options{Sprites: was.sprites})
	yarns, v := harbour(b), fit(was, 340)
	var s Screen
	for b.Loop() {
		for _, c := range []*Cloth{was, now} {
			if _, err := s.Show(context.Background(), c, v, yarns, Background{Ground: Transparent}); err != nil {
				b.Fatal(err)
			}
		}
	}
}
