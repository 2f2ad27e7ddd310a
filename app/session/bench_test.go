package session

import (
	"context"
	"fmt"
	"image"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"strandway/chart/geom"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/render/cloth"
	"strandway/render/raster"
)

// pane is the size of each of the two pictures in a window of 1440 by 900.
var pane = image.Rect(0, 0, 903, 330)

// painter paints both pictures as the window does: the whole piece, as large as the pane lets it be.
type painter struct {
	chart *image.RGBA
}

func (p *painter) paint(tb testing.TB, m *Made) {
	scale := func(b geom.Box) float64 {
		return min(float64(pane.Dx())/b.Width(), float64(pane.Dy())/b.Height(), 34)
	}
	list := m.Chart
	s := scale(geom.Box{Max: geom.Point{X: list.Width, Y: list.Height}})
	raster.PaintView(p.chart, list, geom.Scale(s, s))
	box := m.Cloth.Box()
	view := cloth.View{Box: box, PixelsPerW: scale(box)}
	buffer, err := m.Cloth.Draw(context.Background(), view)
	if err != nil {
		tb.Fatal(err)
	}
	buffer.Colour(m.ClothYarns(m.Colourway()), cloth.Background{Ground: cloth.Transparent})
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
	d := &desktop{posted: make(chan func(), 64), painter: painter{chart: image.NewRGBA(pane)}}
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

// BenchmarkKey is the time from a key to both pictures painted anew, while the last row is being written.
// Beside the mean it gives the time within which 95 of 100 keys are done.
func BenchmarkKey(b *testing.B) {
	for _, stitches := range []int{2_000, 20_000} {
		b.Run(fmt.Sprint(stitches), func(b *testing.B) {
			d := newDesktop(b)
			defer d.Close()
			d.Begin(blanket(stitches))
			d.settle(b)
			d.Type("\nRow: Ch 1")
			d.settle(b)
			const words = ", sc in next 3 sts"
			var took []time.Duration
			for i := 0; b.Loop(); i++ {
				begun := time.Now()
				d.Type(words[i%len(words) : i%len(words)+1])
				d.settle(b)
				took = append(took, time.Since(begun))
			}
			slices.Sort(took)
			b.ReportMetric(float64(took[len(took)*95/100].Microseconds())/1000, "p95-ms")
			b.ReportMetric(float64(len(d.Made().Fabric().Stitches)), "stitches")
		})
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
