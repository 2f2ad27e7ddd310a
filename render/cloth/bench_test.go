package cloth

import (
	"context"
	"runtime"
	"testing"

	"strandway/chart/layout"
)

// blanket is 100,980 single crochet in stripes.
var blanket = swatch{kind: sc, cols: 330, rows: 305, yarnOf: twoRows}

func fit(c *Cloth, side float64) View {
	b := c.Box().Grow(.9)
	return View{b, side / max(b.Width(), b.Height())}
}

func BenchmarkMake(b *testing.B) {
	p := blanket.plan()
	b.ReportAllocs()
	for b.Loop() {
		Make(p, nil, Options{})
	}
}

// The first picture of a small piece, nothing drawn before.
func BenchmarkFirstPicture(b *testing.B) {
	const shells = "Ch 38.\nRow 1 (RS): Sc in 2nd ch from hook, *skip next 2 ch, 5 dc in next ch, skip next 2 ch, sc in next ch; rep from * across, turn.\n" +
		"Row 2: Ch 3 (counts as dc), 2 dc in first sc, *skip next 2 dc, sc in next dc, skip next 2 dc, 5 dc in next sc; rep from * across, ending with 3 dc in last sc, turn.\n" +
		"Row 3: Ch 1, sc in first dc, *skip next 2 dc, 5 dc in next sc, skip next 2 dc, sc in next dc; rep from * across, turn.\nRows 4-13: Rep Rows 2 and 3."
	plans := map[string]*layout.Plan{
		"sc":     swatch{kind: sc, cols: 25, rows: 20, yarnOf: twoRows}.plan(),
		"dc":     swatch{kind: dc, cols: 25, rows: 20, yarnOf: twoRows}.plan(),
		"shells": worked(b, shells, 1),
	}
	for name, p := range plans {
		b.Run(name, func(b *testing.B) {
			yarns := harbour(b)
			for b.Loop() {
				c := Make(p, yarns, Options{})
				buf, err := c.Draw(context.Background(), fit(c, 1000))
				if err != nil {
					b.Fatal(err)
				}
				buf.Colour(yarns, Background{})
			}
		})
	}
}

// A piece of 2,000 stitches drawn again after a change of its rows.
func BenchmarkWarm(b *testing.B) {
	p, yarns, sprites := swatch{kind: sc, cols: 50, rows: 40, yarnOf: twoRows}.plan(), harbour(b), NewSprites(0)
	for b.Loop() {
		c := Make(p, yarns, Options{Sprites: sprites})
		buf, err := c.Draw(context.Background(), fit(c, 1000))
		if err != nil {
			b.Fatal(err)
		}
		buf.Colour(yarns, Background{})
	}
}

func BenchmarkColourway(b *testing.B) {
	yarns := harbour(b)
	c := Make(swatch{kind: sc, cols: 25, rows: 29, yarnOf: twoRows}.plan(), yarns, Options{})
	buf, err := c.Draw(context.Background(), fit(c, 1000))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		buf.Colour(yarns, Background{})
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/1000/(float64(buf.Width*buf.Height)/1e6), "ms/Mpx")
}

func BenchmarkBlanket(b *testing.B) {
	yarns := harbour(b)
	c := Make(blanket.plan(), yarns, Options{})
	for name, side := range map[string]float64{"4000px": 4000, "1000px": 1000} {
		b.Run(name, func(b *testing.B) {
			var before, after runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&before)
			for b.Loop() {
				if _, err := c.Paint(context.Background(), fit(c, side), yarns, Background{}); err != nil {
					b.Fatal(err)
				}
			}
			runtime.ReadMemStats(&after)
			b.ReportMetric(float64(c.Stitches())*float64(b.N)/b.Elapsed().Seconds(), "stitches/s")
			b.ReportMetric(float64(after.TotalAlloc-before.TotalAlloc)/float64(b.N)/1e6, "MB/op")
		})
	}
}

func BenchmarkHit(b *testing.B) {
	c := Make(swatch{kind: sc, cols: 50, rows: 40}.plan(), nil, Options{})
	at := c.Box().Centre()
	for b.Loop() {
		c.Hit(at)
	}
}

func BenchmarkSprite(b *testing.B) {
	a := newArtist(100, Shape{})
	k := key{part: part{tall, 1}, dy: 23}
	for b.Loop() {
		k.draw(a)
	}
}
