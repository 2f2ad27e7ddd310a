package cloth

import (
	"bytes"
	"context"
	"errors"
	"image"
	"image/color"
	"math"
	"testing"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
)

// forms counts the parts of a cloth by form.
func forms(c *Cloth) map[form]int {
	n := map[form]int{}
	for _, in := range c.instances {
		n[c.keys[in.key].part.form]++
	}
	return n
}

func drawn(t testing.TB, c *Cloth, pixelsPerW float64) *Buffer {
	t.Helper()
	b, err := c.Draw(context.Background(), View{c.Box().Grow(.9), pixelsPerW})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestEachStitchShowsItsParts(t *testing.T) {
	const base = "Ch 14.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\n"
	const posts = "Ch 14.\nRow 1 (RS): Dc in 4th ch from hook and in each ch across, turn.\n"
	tests := []struct {
		name, rows string
		face       Face
		form       form
		want       int
	}{
		{"sc from the right side shows V's", base, RS, vee, 13},
		{"and bumps from the wrong side", base, WS, bump, 13},
		{"the turned row shows bumps", base + "Row 2: Ch 1, sc in each st across.", RS, bump, 13},
		{"dc shows posts", posts, RS, tall, 11},
		{"and their backs", posts, WS, tallBack, 11},
		{"a turning chain is links that stand up", posts, RS, standing, 3},
		{"front posts on the right side stand out", posts + "Row 2: Ch 1, turn, sc in each st across.\nRow 3 (RS): Ch 1, turn, sc in first 2 sts, fpdc in next 3 sts, sc in each st across.", RS, raised, 3},
		{"and fall back from behind", posts + "Row 2: Ch 1, turn, sc in each st across.\nRow 3 (RS): Ch 1, turn, sc in first 2 sts, fpdc in next 3 sts, sc in each st across.", WS, recessed, 3},
		{"front posts worked from the wrong side fall back", posts + "Row 2 (WS): Ch 1, sc in first 2 sts, fpdc in next 3 sts, sc in each st across.", RS, recessed, 3},
		{"back loops only leave the front loop in sight", base + "Row 2: Ch 1, turn, sc in each st across.\nRow 3 (RS): Ch 1, turn, sc in back loop of each st across.", RS, freeLoop, 13},
		{"not from behind", base + "Row 2: Ch 1, turn, sc in each st across.\nRow 3 (RS): Ch 1, turn, sc in back loop of each st across.", WS, freeLoop, 0},
		{"the third loop pushes the top out to the other side", "Ch 14.\nRow 1 (RS): Hdc in 3rd ch from hook and in each ch across, turn.\nRow 2 (WS): Ch 1, hdc in third loop of each st across.", RS, link, 12 + 12 + 12},
		{"not on its own", "Ch 14.\nRow 1 (RS): Hdc in 3rd ch from hook and in each ch across, turn.\nRow 2 (WS): Ch 1, hdc in third loop of each st across.", WS, link, 12 + 12},
		{"a decrease has a leg in each of its stitches", base + "Row 2: Ch 1, sc in first st, sc3tog, sc in each st across.", RS, leg, 3},
		{"bobbles stand out on the right side", base + "Row 2: Ch 1, sc in first 3 sts, bobble in next st, sc in each st across.", RS, bobble, 1},
		{"and not on the wrong", base + "Row 2: Ch 1, sc in first 3 sts, bobble in next st, sc in each st across.", WS, bobble, 0},
		{"a cluster is gathered", posts + "Row 2: Ch 3, skip first st, dc in next 3 sts, 3-dc cl in next st, dc in each st across.", RS, cluster, 1},
		{"a spike reaches down", base + "Row 2: Ch 1, turn, sc in each st across.\nRow 3: Ch 1, turn, sc in first 3 sts, sc in next st 2 rows below, sc in each st across.", RS, longVee, 1},
		{"so does one named for it", base + "Row 2: Ch 1, turn, sc in each st across.\nRow 3: Ch 1, turn, sc in first 3 sts, spike st in next st, sc in each st across.", RS, longVee, 1},
		{"surface slip stitches lie on the face", base + "Row 2: Ch 1, sc in each st across, turn.\nRow 3: Surface sl st in each st across.", RS, surfaceLink, 13},
		{"and show bars behind", base + "Row 2: Ch 1, sc in each st across, turn.\nRow 3: Surface sl st in each st across.", WS, freeLoop, 13},
		{"loops hang on the side away from their maker", base + "Row 2 (WS): Ch 1, loop st in each st across.", RS, drawnLoop, 13},
		{"and not on the other", base + "Row 2 (WS): Ch 1, loop st in each st across.", WS, drawnLoop, 0},
		{"links lie across the posts", posts + "Row 2: Ch 3, skip first st, ldc in each st across.", RS, freeLoop, 11},
		{"foundation stitches make their own chain", "Row 1: Fsc 6.\nRow 2: Ch 1, turn, sc in each st across.", RS, chainLink, 7},
		{"a scale lies on the side that faced its maker", posts + "Row 2 (WS): Ch 1, sc in first 3 sts, scale in next st, sc in each st across.", WS, leg, 10},
		{"and not on the other", posts + "Row 2 (WS): Ch 1, sc in first 3 sts, scale in next st, sc in each st across.", RS, leg, 0},
		{"a Y has two posts", base + "Row 2: Ch 4 (counts as tr), skip first st, Y-st in next st, skip next st, tr in each st across.", WS, tall, 12},
		{"a star has spokes", base + "Row 2 (WS): Ch 3 (counts as hdc), skip first st, *star st in next 2 sts; rep from * across.", RS, leg, 6 * 5},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c := Make(worked(t, tt.rows, 1), nil, Options{Face: tt.face})
			if got := forms(c)[tt.form]; got != tt.want {
				t.Errorf("%d parts, want %d; parts by form: %v", got, tt.want, forms(c))
			}
		})
	}
}

func TestProportionsAreTheGauges(t *testing.T) {
	const px = 16
	size := func(s swatch) (w, h int) {
		b := drawn(t, Make(s.plan(), harbour(t), Options{}), px).Colour(harbour(t), Background{Ground: Transparent})
		opaque := image.Rectangle{}
		for y := range b.Rect.Dy() {
			for x := range b.Rect.Dx() {
				if b.RGBAAt(x, y).A == 255 {
					opaque = opaque.Union(image.Rect(x, y, x+1, y+1))
				}
			}
		}
		return opaque.Dx(), opaque.Dy()
	}
	// The yarn stands out beyond the outermost stitches; the difference of two
	// swatches is free of that.
	for _, k := range []swatch{{kind: sc}, {kind: hdc}, {kind: dc}, {kind: tr}} {
		w0, h0 := size(swatch{kind: k.kind, cols: 5, rows: 4})
		w1, h1 := size(swatch{kind: k.kind, cols: 35, rows: 24})
		if got, want := float64(w1-w0), 30.*px; math.Abs(got-want) > .01*want {
			t.Errorf("30 %s are %.0f pixels wide, want %.0f", k.kind.Name, got, want)
		}
		if got, want := float64(h1-h0), 20*k.kind.Height*px; math.Abs(got-want) > .01*want {
			t.Errorf("20 rows of %s are %.0f pixels high, want %.0f", k.kind.Name, got, want)
		}
	}
}

func TestDrawingIsRepeatable(t *testing.T) {
	s := swatch{kind: dc, cols: 9, rows: 5, yarnOf: twoRows}
	yarns := harbour(t)
	first := drawn(t, Make(s.plan(), yarns, Options{}), 30).Colour(yarns, Background{})
	shared := NewSprites(0)
	for range 2 {
		c := Make(s.plan(), yarns, Options{Sprites: shared})
		if !bytes.Equal(first.Pix, drawn(t, c, 30).Colour(yarns, Background{}).Pix) {
			t.Fatal("the same cloth was drawn in two ways")
		}
		img, err := c.Paint(context.Background(), View{c.Box().Grow(.9), 30}, yarns, Background{})
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first.Pix, img.Pix) {
			t.Fatal("Paint and Draw with Colour differ")
		}
	}
}

func TestPartOfACloth(t *testing.T) {
	yarns := harbour(t)
	c := Make(swatch{kind: sc, cols: 30, rows: 40, yarnOf: twoRows}.plan(), yarns, Options{})
	whole := drawn(t, c, 20).Colour(yarns, Background{Ground: White})
	box := geom.Box{Min: geom.Point{X: c.Box().Min.X - .9 + 12, Y: c.Box().Max.Y + .9 - 30}, Max: geom.Point{X: c.Box().Min.X - .9 + 20, Y: c.Box().Max.Y + .9 - 17}}
	b, err := c.Draw(context.Background(), View{box, 20})
	if err != nil {
		t.Fatal(err)
	}
	part := b.Colour(yarns, Background{Ground: White})
	off := 0
	for y := range part.Rect.Dy() {
		for x := range part.Rect.Dx() {
			if a, b := part.RGBAAt(x, y), whole.RGBAAt(x+12*20, y+17*20); distance(a, b) > 6 {
				off++
			}
		}
	}
	if n := part.Rect.Dx() * part.Rect.Dy(); off > n/100 {
		t.Errorf("%d of %d pixels differ from the whole picture's", off, n)
	}
}

func distance(a, b color.RGBA) int {
	d := func(x, y uint8) int { return max(int(x)-int(y), int(y)-int(x)) }
	return max(d(a.R, b.R), d(a.G, b.G), d(a.B, b.B), d(a.A, b.A))
}

func TestColourwayNeedsNoNewDrawing(t *testing.T) {
	s := swatch{kind: sc, cols: 9, rows: 8, yarnOf: threeRows}
	was := harbour(t)
	was[0].Look, was[0].Colours = Heather, []color.NRGBA{{R: 200, G: 200, B: 190, A: 255}}
	was[1].Look, was[1].RepeatM, was[1].Colours = Variegated, 2, []color.NRGBA{{R: 90, A: 255}, {G: 90, A: 255}}
	now := []Yarn{was[0], was[1], was[2]}
	now[0].Colour = color.NRGBA{R: 120, G: 40, B: 90, A: 255}
	now[1].Colours = []color.NRGBA{{R: 240, G: 220, A: 255}, {B: 180, A: 255}, {R: 30, A: 255}}
	now[2].Colour = color.NRGBA{R: 30, G: 80, B: 60, A: 255}

	c := Make(s.plan(), was, Options{})
	if !c.Matches(now) {
		t.Fatal("yarns of the same looks do not match")
	}
	recoloured := drawn(t, c, 24).Colour(now, Background{Ground: Linen, Light: Warm})
	redrawn := drawn(t, Make(s.plan(), now, Options{}), 24).Colour(now, Background{Ground: Linen, Light: Warm})
	if !bytes.Equal(recoloured.Pix, redrawn.Pix) {
		t.Error("recolouring and redrawing differ")
	}
}

func TestMatches(t *testing.T) {
	made := harbour(t)
	c := Make(swatch{kind: sc, cols: 2, rows: 2}.plan(), made, Options{})
	tests := []struct {
		name   string
		change func(y []Yarn) []Yarn
		want   bool
	}{
		{"the same", func(y []Yarn) []Yarn { return y }, true},
		{"another colour", func(y []Yarn) []Yarn { y[0].Colour.R++; return y }, true},
		{"another look", func(y []Yarn) []Yarn { y[0].Look = Tweed; return y }, false},
		{"another twist", func(y []Yarn) []Yarn { y[1].Shape.Twist = STwist; return y }, false},
		{"a yarn more", func(y []Yarn) []Yarn { return append(y, Yarn{}) }, false},
	}
	for _, tt := range tests {
		if got := c.Matches(tt.change(harbour(t))); got != tt.want {
			t.Errorf("%s: %v, want %v", tt.name, got, tt.want)
		}
	}
}

func TestHitFindsTheStitch(t *testing.T) {
	for _, face := range []Face{RS, WS} {
		p := swatch{kind: sc, cols: 8, rows: 6}.plan()
		c := Make(p, nil, Options{Face: face})
		for id, pose := range p.Poses {
			if pose.NLegs == 0 {
				continue
			}
			at := pose.Top.Sub(geom.Point{Y: .30})
			if face == WS {
				at.X = -at.X
			}
			got, ok := c.Hit(at)
			// A V opens between its legs: one may look through it at the row below.
			if !ok || got != int32(id) && p.Fabric.Stitches[got].Col != p.Fabric.Stitches[id].Col {
				t.Errorf("face %d: at stitch %d one finds %d %v", face, id, got, ok)
			}
			if !c.Bounds(int32(id)).Contains(at) {
				t.Errorf("face %d: stitch %d does not lie within its bounds %v", face, id, c.Bounds(int32(id)))
			}
		}
		if id, ok := c.Hit(c.Box().Max.Add(geom.Point{X: 2})); ok {
			t.Errorf("beside the cloth one finds stitch %d", id)
		}
	}
}

func TestChainSpaceIsAHole(t *testing.T) {
	p := worked(t, "Ch 18.\nRow 1 (RS): Dc in 6th ch from hook, *ch 1, skip next ch, dc in next ch; rep from * across, turn.\nRow 2: Ch 4 (counts as dc, ch 1), skip first st, *dc in next dc, ch 1; rep from * to last st, dc in 3rd ch of tch.", 1)
	c := Make(p, nil, Options{})
	holes := 0
	for i, s := range p.Fabric.Stitches {
		if s.Row != 2 || !s.Has(fabric.Chain) || !p.Poses[i].Placed {
			continue
		}
		below := p.Poses[i].Top.Sub(geom.Point{Y: .8})
		if id, ok := c.Hit(below); ok {
			t.Errorf("under chain %d one finds stitch %d", i, id)
		}
		holes++
	}
	if holes < 5 {
		t.Errorf("only %d chain-spaces were looked at", holes)
	}
}

func TestLongStitchHidesWhatItPasses(t *testing.T) {
	p := worked(t, "Ch 10.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc in first 3 sts, dc in next st 2 rows below, sc in each st across.", 1)
	for i, s := range p.Fabric.Stitches {
		if !s.Has(fabric.Long) {
			continue
		}
		l := p.Legs[p.Poses[i].FirstLeg]
		for _, tt := range []struct {
			face Face
			want bool
		}{{RS, true}, {WS, false}} {
			at := l.Foot.Lerp(p.Poses[i].Top, .3)
			if tt.face == WS {
				at.X = -at.X
			}
			id, _ := Make(p, nil, Options{Face: tt.face}).Hit(at)
			if got := id == int32(i); got != tt.want {
				t.Errorf("face %d: the long stitch is seen: %v, want %v", tt.face, got, tt.want)
			}
		}
		return
	}
	t.Error("no long stitch was worked")
}

func TestFloatsClimbTheEdge(t *testing.T) {
	tests := []struct {
		name   string
		rows   int
		yarnOf func(int) int
		want   int
	}{
		{"one yarn carries nothing", 8, nil, 0},
		{"two rows each: the other waits two rows", 8, twoRows, 2},
		{"three yarns", 12, threeRows, 3},
	}
	for _, tt := range tests {
		p := swatch{kind: sc, cols: 10, rows: tt.rows, yarnOf: tt.yarnOf}.plan()
		c := Make(p, nil, Options{})
		if got := forms(c)[float]; got != tt.want {
			t.Errorf("%s: %d floats, want %d", tt.name, got, tt.want)
		}
		for _, in := range c.instances {
			if k := c.keys[in.key]; k.part.form == float && (in.x < 9.5 || k.part.n == leftward) {
				t.Errorf("%s: a float stands at x %.1f, want the right edge", tt.name, in.x)
			}
		}
	}
	p := swatch{kind: sc, cols: 10, rows: 8, yarnOf: twoRows}.plan()
	for i := range p.Fabric.Events {
		if p.Fabric.Events[i].Do == fabric.Drop {
			p.Fabric.Events[i].Do = fabric.Cut
		}
	}
	if got := forms(Make(p, nil, Options{}))[float]; got != 0 {
		t.Errorf("%d floats of yarns that were cut", got)
	}
	if got := forms(Make(p, nil, Options{Tails: true}))[tail]; got != 2 {
		t.Errorf("%d tails, want one at each cut: 2", got)
	}
}

func TestCentreStitchesStandVInV(t *testing.T) {
	foot := func(stitch string) float64 {
		p := worked(t, "Foundation: Ch 12, join with sl st in first ch.\nRnd 1 (RS): Ch 1, sc in each ch around, join with sl st in first sc.\nRnd 2: Ch 1, "+stitch+" in each st around, join with sl st in first st.", 1)
		c := Make(p, nil, Options{})
		low := math.Inf(1)
		for _, in := range c.instances {
			if p.Fabric.Stitches[in.stitch].Row == 2 && c.keys[in.key].part.form == vee {
				low = min(low, float64(in.y))
			}
		}
		return low
	}
	if sc, csc := foot("sc"), foot("csc"); sc-csc < .3 {
		t.Errorf("the V of a centre sc begins at %.2f, that of a sc at %.2f; want it to reach into the one below", csc, sc)
	}
}

func TestYarnIsCarriedLevelAcrossARow(t *testing.T) {
	c := Make(worked(t, "With A.\nFoundation: Ch 13.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, *with A, sc in next 3 sts, with B, sc in next 3 sts; rep from * across, turn.", 1), nil, Options{Face: WS})
	floats := 0
	for _, in := range c.instances {
		if k := c.keys[in.key]; k.part.form == float {
			floats++
			if k.dy > 1 || k.dy < -1 {
				t.Errorf("a float climbs %d/%d w", k.dy, leanSteps)
			}
		}
	}
	if floats == 0 {
		t.Error("no yarn is carried")
	}
}

func TestAnEdgingCoversFloats(t *testing.T) {
	const stripes = "With A.\nFoundation: Ch 9.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\n" +
		"Rows 3-4: With B, ch 1, sc in each st across, turn.\nRows 5-6: With A, ch 1, sc in each st across, turn.\n"
	depth := func(rows string) (z int16) {
		c := Make(worked(t, rows, 1), nil, Options{})
		for _, in := range c.instances {
			if c.keys[in.key].part.form == float {
				z = in.z
			}
		}
		return z
	}
	if bare, edged := depth(stripes), depth(stripes+"Edging: With C, ch 1, sc evenly around, working 3 sc in each corner, join with sl st in first sc."); bare <= 0 || edged >= 0 {
		t.Errorf("the float lies at %d bare, want in front; at %d edged, want behind", bare, edged)
	}
}

func TestRoundsClose(t *testing.T) {
	// A gap in the braid would lie where the last stitch of the round meets the first.
	for _, rows := range []string{
		"Rnd 1 (RS): 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)",
		"Ch 9.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\nEdging: Ch 1, sc evenly around, working 3 sc in each corner, join with sl st in first sc.",
	} {
		p := worked(t, rows, 1)
		if last := len(p.Fabric.Rows) - 1; !newMaker(p, nil, Options{}).closed(last) {
			t.Errorf("the last round of %q lies open", rows)
		}
	}
}

func TestYarnIsUsedInWorkingOrder(t *testing.T) {
	c := Make(swatch{kind: dc, cols: 6, rows: 4, yarnOf: twoRows}.plan(), nil, Options{})
	end := map[uint8]float64{}
	last := map[uint8]int32{}
	for _, in := range c.instances {
		if f := c.keys[in.key].part.form; f != tall && f != tallBack {
			continue
		}
		if float64(in.from) < end[in.yarn]-1e-3 {
			t.Errorf("stitch %d begins on the yarn before stitch %d ends", in.stitch, last[in.yarn])
		}
		end[in.yarn], last[in.yarn] = float64(in.from+in.length), in.stitch
	}
	// 5 mm hook and worsted: a dc takes about 111 mm, 15.6 widths of 7.1 mm.
	if got := float64(c.instances[len(c.instances)-1].length); math.Abs(got-15.6) > .4 {
		t.Errorf("a dc takes %.1f w of yarn, want 15.6", got)
	}
}

func TestFarOutRowsDoNotBeat(t *testing.T) {
	c := Make(swatch{kind: sc, cols: 60, rows: 160}.plan(), harbour(t), Options{})
	for _, px := range []float64{1.7, 2.3, 3.1, 5.3, 7.1} {
		img := drawn(t, c, px).Colour(harbour(t), Background{})
		// Mean light in bands of five pairs of rows, away from the edges.
		band := int(math.Round(10 * .84 * px))
		low, high := math.Inf(1), 0.
		for y := 4 * band; y+4*band < img.Rect.Dy(); y += band {
			sum := 0.
			for i := range band {
				for x := 20; x < img.Rect.Dx()-20; x++ {
					sum += float64(img.RGBAAt(x, y+i).G)
				}
			}
			sum /= float64(band * (img.Rect.Dx() - 40))
			low, high = min(low, sum), max(high, sum)
		}
		if high > 1.06*low {
			t.Errorf("at %.1f pixels a stitch bands vary from %.1f to %.1f", px, low, high)
		}
	}
}

func TestTransparentGround(t *testing.T) {
	img := drawn(t, Make(swatch{kind: sc, cols: 4, rows: 4}.plan(), harbour(t), Options{}), 30).Colour(harbour(t), Background{Ground: Transparent})
	if c := img.RGBAAt(0, 0); c.A > 3 {
		t.Errorf("the corner is %v, want nothing", c)
	}
	if c := img.RGBAAt(img.Rect.Dx()/2, img.Rect.Dy()/2); c.A != 255 {
		t.Errorf("the middle is %v, want yarn", c)
	}
}

func TestDrawingStops(t *testing.T) {
	c := Make(swatch{kind: sc, cols: 40, rows: 40}.plan(), nil, Options{})
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := c.Draw(ctx, View{c.Box(), 50}); !errors.Is(err, context.Canceled) {
		t.Errorf("a cancelled drawing gives %v", err)
	}
	if _, err := c.Draw(context.Background(), View{c.Box(), 20}); err != nil {
		t.Errorf("after a cancelled one a drawing gives %v", err)
	}
}

func TestNothingWorked(t *testing.T) {
	p := &layout.Plan{Fabric: &fabric.Fabric{}, Box: geom.Empty()}
	c := Make(p, nil, Options{})
	if b := drawn(t, c, 20); b.Width < 1 || b.Height < 1 {
		t.Errorf("nothing is %d by %d pixels", b.Width, b.Height)
	}
	if _, ok := c.Hit(geom.Point{}); ok {
		t.Error("a stitch was found where none is")
	}
	if _, err := c.DrawSheet(context.Background(), nil, Sheet{Title: "Nothing yet"}); err != nil {
		t.Error(err)
	}
}

func TestSpritesAreKeptWithinTheirLimit(t *testing.T) {
	s := NewSprites(1 << 20)
	c := Make(swatch{kind: dc, cols: 6, rows: 4}.plan(), nil, Options{Sprites: s})
	for px := 20.; px < 70; px += 5 {
		drawn(t, c, px)
	}
	total := 0
	for _, l := range s.levels[1:] {
		total += l.size
	}
	if total > 1<<20 {
		t.Errorf("%d bytes of sprites of earlier scales are kept, want at most 1 MB", total)
	}
	if s.levels[0].scale != 130 {
		t.Errorf("the scale last used is %g, want 130", s.levels[0].scale)
	}
}

func TestClothAsFarAsWorked(t *testing.T) {
	p := worked(t, "Foundation: Ch 7.\nRow 1: Sc in 2nd ch from hook and in each ch across.", 1)
	c := Make(p, nil, Options{})
	paint := func(before int32) *Buffer {
		b, err := c.Before(before).Draw(t.Context(), View{Box: c.Box(), PixelsPerW: 12})
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	covered := func(b *Buffer) (n int) {
		img := b.Colour(nil, Background{Ground: Transparent})
		for i := 3; i < len(img.Pix); i += 4 {
			if img.Pix[i] > 0 {
				n++
			}
		}
		return n
	}
	foundation, half, all := covered(paint(7)), covered(paint(10)), covered(paint(13))
	if !(0 < foundation && foundation < half && half < all) {
		t.Errorf("yarn covers %d, %d and %d pixels after the foundation, half a row and all", foundation, half, all)
	}
}
