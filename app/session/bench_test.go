package session

import (
	"context"
	"errors"
	"fmt"
	"image"
	"image/color"
	"math"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"strandway/chart/geom"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/render/cloth"
	"strandway/render/raster"
)

// pane is the size of each of the two pictures in a window of 1440 by 900.
var pane = image.Pt(903, 330)

// painter paints both pictures as the window does: the whole piece, as large as the pane lets it be
// by steps of an eighth of twice the size.
type painter struct {
	chart raster.Screen
	cloth cloth.Screen

	painted  *Made // what the pictures show
	pictures [2]*image.RGBA
}

// view maps places in stitch widths, y upward, to pixels: the middle of a box in the middle of the pane.
func view(box geom.Box) geom.Matrix {
	const perDouble, usual = 8, 34
	s := min(float64(pane.X)/box.Width(), float64(pane.Y)/box.Height(), usual)
	s = usual * math.Exp2(math.Floor(math.Log2(s/usual)*perDouble)/perDouble)
	mid := box.Centre()
	return geom.Matrix{A: s, D: -s, E: math.Round(float64(pane.X)/2 - mid.X*s), F: math.Round(float64(pane.Y)/2 + mid.Y*s)}
}

// paint gives the pictures of chart and cloth.
func (p *painter) paint(tb testing.TB, m *Made) [2]*image.RGBA {
	tb.Helper()
	was := p.painted
	if was == nil {
		was = &Made{}
	}
	p.painted = m
	var errs [2]error
	ctx := context.Background()
	var all sync.WaitGroup
	all.Go(func() {
		if was.Chart == m.Chart {
			return
		}
		const unit = 5 // mm of a stitch width
		toPlace := geom.Translate(-m.Chart.Origin.X, -m.Chart.Origin.Y).Then(geom.Scale(1./unit, -1./unit))
		p.pictures[0], errs[0] = p.chart.Show(ctx, m.Chart, toPlace.Then(view(m.Plan.Box)), pane, color.NRGBA{255, 255, 255, 255})
	})
	all.Go(func() {
		if was.Cloth == m.Cloth && reflect.DeepEqual(was.ClothYarns(was.colourway), m.ClothYarns(m.colourway)) {
			return
		}
		at := view(m.Cloth.Box())
		box := geom.Box{
			Min: geom.Point{X: -at.E / at.A, Y: (at.F - float64(pane.Y)) / at.A},
			Max: geom.Point{X: (float64(pane.X) - at.E) / at.A, Y: at.F / at.A},
		}
		p.pictures[1], errs[1] = p.cloth.Show(ctx, m.Cloth, cloth.View{Box: box, PixelsPerW: at.A}, m.ClothYarns(m.Colourway()), cloth.Background{Ground: cloth.Transparent})
	})
	all.Wait()
	if err := errors.Join(errs[:]...); err != nil {
		tb.Fatal(err)
	}
	return p.pictures
}

// blanket is a pattern of about so many stitches, square, in stripes of two yarns: rows of sc
// and dc, written one by one as an author does who has no repeats yet.
func blanket(stitches int) *pattern.Pattern {
	side := 1
	for side*side < stitches {
		side++
	}
	var b strings.Builder
	fmt.Fprintf(&b, "With A, ch %d.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\n", side+1)
	for row := 2; row <= side; row++ {
		yarn, words := "A", "Ch 1, sc in each st across, turn."
		if row/2%2 == 1 {
			yarn = "B"
		}
		if row%4 == 0 {
			words = "Ch 3 (counts as dc), dc in next st and in each st across, turn."
		}
		fmt.Fprintf(&b, "Row %d (%s): %s\n", row, yarn, words)
	}
	p := Blank()
	p.Yarns = append(p.Yarns, pattern.Yarn{Letter: "B", Colour: "#e6dcc6", Weight: 4})
	p.Pieces[0].Rows = b.String()
	return p
}

// desktop is a session on a pattern, with the pictures that its window would paint.
type desktop struct {
	*Session
	painter
	posted chan func()
}

func newDesktop(tb testing.TB) *desktop {
	tb.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		tb.Fatal(err)
	}
	d := &desktop{posted: make(chan func(), 64)}
	d.Session = New(lib, func(f func()) { d.posted <- f })
	return d
}

// settle waits until all is made of the present rows, and paints it.
func (d *desktop) settle(tb testing.TB) {
	tb.Helper()
	for !d.Current() {
		select {
		case f := <-d.posted:
			f()
		case <-time.After(30 * time.Second):
			tb.Fatal("the background never came to an end")
		}
	}
	d.paint(tb, d.Made())
}

// choose chooses the stitch in the middle of the row in the middle of the piece.
func (d *desktop) choose() {
	rows := d.Made().Fabric().Rows
	row := &rows[len(rows)/2]
	id := (row.First + row.Last) / 2
	d.Choose([]int32{id}, id)
}

// put puts what is typed in a picture in place of the chosen stitch, or before it.
func (d *desktop) put(tb testing.TB, word string, edit func(Typed) error) {
	tb.Helper()
	typed, err := d.ReadTyped(word)
	if err == nil {
		err = edit(typed)
	}
	if err != nil {
		tb.Fatal(err)
	}
}

// keys are ways to change a piece with one key. Each may begin and then takes turn after turn.
var keys = []struct {
	name  string
	begin func(testing.TB, *desktop)
	key   func(tb testing.TB, d *desktop, turn int)
}{
	{ // the last row is being written, letter by letter
		"last row",
		func(tb testing.TB, d *desktop) { d.Type("\nRow: Ch 1") },
		func(_ testing.TB, d *desktop, turn int) {
			const words = ", sc in next 3 sts"
			d.Type(words[turn%len(words) : turn%len(words)+1])
		},
	},
	{ // a stitch in the middle becomes another and itself again: what stands on it moves a little
		"stitch in the middle",
		func(_ testing.TB, d *desktop) {},
		func(tb testing.TB, d *desktop, turn int) {
			d.choose()
			d.put(tb, []string{"hdc", "sc"}[turn%2], d.Put)
		},
	},
	{ // a stitch more in the middle, and undone again: every row from there on has one more
		"stitch more",
		func(_ testing.TB, d *desktop) {},
		func(tb testing.TB, d *desktop, turn int) {
			if turn%2 == 1 {
				d.Undo()
				return
			}
			d.choose()
			d.put(tb, "2sc", d.Put)
		},
	},
}

// BenchmarkKey is the time from a key until everything is made of the rows as they are then, findings and
// figures too, and both pictures of the whole piece are final on their screens. Beside the mean it gives the
// time within which 95 of 100 keys are done.
func BenchmarkKey(b *testing.B) {
	for _, stitches := range []int{2_000, 20_000} {
		for _, way := range keys {
			b.Run(fmt.Sprintf("%d/%s", stitches, way.name), func(b *testing.B) {
				d := newDesktop(b)
				defer d.Close()
				d.Begin(blanket(stitches))
				d.settle(b)
				way.begin(b, d)
				d.settle(b)
				var took []time.Duration
				for turn := 0; b.Loop(); turn++ {
					begun := time.Now()
					way.key(b, d, turn)
					d.settle(b)
					took = append(took, time.Since(begun))
				}
				slices.Sort(took)
				b.ReportMetric(float64(took[len(took)*95/100].Microseconds())/1000, "p95-ms")
				b.ReportMetric(float64(len(d.Made().Fabric().Stitches)), "stitches")
			})
		}
	}
}

// BenchmarkOpen is the time from a file of 20,000 stitches to its first pictures, and the memory
// that the session then holds.
func BenchmarkOpen(b *testing.B) {
	path := b.TempDir() + "/blanket.strand"
	if err := pattern.Save(path, blanket(20_000)); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		d := newDesktop(b)
		if err := d.Open(path); err != nil {
			b.Fatal(err)
		}
		d.settle(b)
		b.StopTimer()
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		b.ReportMetric(float64(m.HeapAlloc)/1e6, "MB-held")
		runtime.KeepAlive(d)
		d.Close()
		b.StartTimer()
	}
}
