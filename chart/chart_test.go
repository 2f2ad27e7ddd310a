package chart

import (
	"flag"
	"fmt"
	"image/color"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/colour"
	"strandway/model/fabric"
)

var update = flag.Bool("update", false, "write the golden files anew")

func (s *swatch) draw(o Options) *display.List {
	o.Library = s.lib
	return Draw(s.p, o)
}

var harbour = []color.NRGBA{{0x1f, 0x2d, 0x4d, 0xff}, {0xf2, 0xea, 0xd6, 0xff}}

func TestSamplerIsEngravedAsBefore(t *testing.T) {
	for name, o := range map[string]Options{
		"sampler":      {Key: true, Inks: harbour, Title: "Sampler"},
		"sampler-dark": {Key: true, Inks: harbour, Dark: true, Terms: "uk", PlusCross: true},
		"sampler-left": {Inks: harbour, LeftHanded: true, Monochrome: true},
	} {
		got := sampler(t).draw(o).Dump()
		file := filepath.Join("testdata", name+".txt")
		if *update {
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s is drawn in another way; look at it, and if it is right: go test ./chart -update", name)
		}
	}
}

func TestEveryStitchHasOneGroupWithItsTitle(t *testing.T) {
	s := sampler(t)
	l := s.draw(Options{})
	seen := map[string]string{}
	stitches := 0
	for _, item := range l.Items {
		b, ok := item.(display.Begin)
		if !ok {
			continue
		}
		if _, twice := seen[b.ID]; twice {
			t.Errorf("id %s stands twice", b.ID)
		}
		seen[b.ID] = b.Title
		if b.Stitch >= 0 {
			stitches++
			if b.ID != fmt.Sprintf("s%d", b.Stitch) {
				t.Errorf("stitch %d has id %s", b.Stitch, b.ID)
			}
		}
	}
	if stitches != len(s.f.Stitches) {
		t.Errorf("%d stitches drawn, want %d", stitches, len(s.f.Stitches))
	}
	for id, want := range map[string]string{"r1": "Row 1", "s9": "Row 1: ch 3 in ch", "s10": "Row 1: dc in ch",
		"s20": "Row 2: fpdc in dc", "s22": "Row 2: sc2tog over 2 places", "s26": "Row 2: p of 3 in sc"} {
		if seen[id] != want {
			t.Errorf("%s: title %q, want %q", id, seen[id], want)
		}
	}
}

func TestTitlesTellThePlace(t *testing.T) {
	for _, c := range []struct {
		base fabric.Base
		want string
	}{
		{fabric.Base{At: 1, How: fabric.Space}, "in ch-2 sp"},
		{fabric.Base{At: -1, How: fabric.InRing}, "in ring"},
		{fabric.Base{At: 0, How: fabric.BackLoop}, "in back loop of dc"},
		{fabric.Base{At: 0, How: fabric.FrontPost, Down: 2}, "round front post of dc 2 rows below"},
		{fabric.Base{At: 0, How: fabric.Gap}, "between sts"},
		{fabric.Base{At: 0, How: fabric.RowEnd}, "in row end"},
	} {
		s := newSwatch(t, 0)
		s.put("dc", 0, 0)
		s.put("ch", 1, fabric.Chain)
		s.put("ch", 2, fabric.Chain)
		s.row("Row 4", 2)
		id := s.put("dc", 0, 0, 0)
		s.f.Bases[0] = c.base
		e := newEngraver(s.p, Options{Library: s.lib})
		if got := e.title(id); got != "Row 4: dc "+c.want {
			t.Errorf("got %q, want %q", got, "Row 4: dc "+c.want)
		}
	}
}

// texts are the lines of text in the group of an id.
func texts(l *display.List, id string) []string {
	var out []string
	depth := -1
	for _, item := range l.Items {
		switch t := item.(type) {
		case display.Begin:
			if depth >= 0 {
				depth++
			} else if t.ID == id {
				depth = 0
			}
		case display.End:
			depth = max(depth-1, -1)
		case display.Text:
			if depth >= 0 && t.Text != "" {
				out = append(out, t.Text)
			}
		}
	}
	return out
}

func TestKeyListsExactlyWhatIsDrawn(t *testing.T) {
	s := sampler(t)
	us := texts(s.draw(Options{Key: true, Monochrome: true}), "key")
	want := []string{"ch", "chain", "p", "picot", "sc", "single crochet", "blsc", "single crochet in back loop only on WS", "sc2tog", "single crochet 2 together",
		"dc", "double crochet", "fpdc", "front post double crochet on WS", "5-dc bobble", "5-double crochet bobble", "5-dc popcorn", "5-double crochet popcorn",
		"join yarn", "fasten off"}
	slices.Sort(us)
	slices.Sort(want)
	if !slices.Equal(us, want) {
		t.Errorf("US key:\n got %q\nwant %q", us, want)
	}
	uk := texts(s.draw(Options{Key: true, Terms: "uk", Monochrome: true}), "key")
	for _, w := range []string{"dc2tog", "tr", "fptr", "5-tr bobble", "double crochet"} {
		if !slices.Contains(uk, w) {
			t.Errorf("UK key lacks %q: %q", w, uk)
		}
	}
	if slices.Contains(uk, "sc") {
		t.Error("UK key speaks of sc")
	}
}

func TestPaleYarnIsDarkenedAndItsOvalsKeepItsColour(t *testing.T) {
	s := newSwatch(t, 3)
	cream := color.NRGBA{0xf2, 0xea, 0xd6, 0xff}
	l := s.draw(Options{Inks: []color.NRGBA{cream}})
	want, _ := colour.Ink(cream)
	uses := 0
	for _, item := range l.Items {
		u, ok := item.(display.Use)
		if !ok {
			continue
		}
		uses++
		if u.Ink != want {
			t.Errorf("ink %v, want %v", u.Ink, want)
		}
		if fill := l.Symbols[u.Symbol].Paths[0].Fill; fill.Colour != cream {
			t.Errorf("oval filled with %v, want the yarn's own %v", fill.Colour, cream)
		}
	}
	if uses != 3 {
		t.Errorf("%d ovals, want 3", uses)
	}
}

func TestLeftHandedChartIsTheMirrorImage(t *testing.T) {
	right, left := sampler(t).draw(Options{}), sampler(t).draw(Options{LeftHanded: true})
	a, b := right.Measure(), left.Measure()
	axis := math.NaN() // twice the axis, in mm
	for i, item := range right.Items {
		if _, ok := item.(display.Use); !ok {
			continue
		}
		sum := a.Items[i].Centre().X + b.Items[i].Centre().X
		if math.IsNaN(axis) {
			axis = sum
		}
		if math.Abs(sum-axis) > .02 {
			t.Errorf("item %d is %g mm off its mirror image", i, sum-axis)
		}
	}
}

func TestDrawingStaysOnItsPage(t *testing.T) {
	for _, o := range []Options{{}, {Key: true, Title: "A long title that is wider than the sampler itself is by far"}, {LeftHanded: true, Key: true}} {
		l := sampler(t).draw(o)
		page := geom.Box{Max: geom.Point{X: l.Width, Y: l.Height}}
		if ink := l.Measure().Ink; !page.Contains(ink.Min) || !page.Contains(ink.Max) {
			t.Errorf("ink %v goes beyond the page %v", ink, page)
		}
	}
}

// Every kind of the library is drawn standing on a row of sc, keeps clear of its
// neighbours' columns and is hit where it stands.
func TestEveryKindIsDrawn(t *testing.T) {
	lib := library(t)
	for _, k := range lib.Kinds() {
		s := newSwatch(t, 7)
		s.row("Row 1", max(1, k.Chains*.7))
		var on []int32
		for i := range max(1, k.Bases) {
			on = append(on, int32(3-k.Bases/2+i))
		}
		flags := fabric.Flags(0)
		if k.Family == "chain" {
			flags, on = fabric.Chain, nil
		}
		id := s.put(k.Name, 3, flags, on...)
		l := s.draw(Options{})
		x := l.Measure()
		found := false
		for i, item := range l.Items {
			b, ok := item.(display.Begin)
			if !ok || b.Stitch != id {
				continue
			}
			found = true
			box := x.Items[i]
			if box.IsEmpty() {
				t.Errorf("%s: nothing drawn", k.Name)
			} else if box.Width() > (float64(max(1, k.Bases))+1)*5 {
				t.Errorf("%s: %.1f mm wide over %d places of 5 mm", k.Name, box.Width(), k.Bases)
			}
		}
		if !found {
			t.Errorf("%s: no group", k.Name)
		}
	}
}

func TestCrossedStitchesAreCasedInFrontAndCutBehind(t *testing.T) {
	for _, c := range []struct {
		flags fabric.Flags
		want  []turn
	}{
		{fabric.Crossed, []turn{{4, false}, {5, true}}},
		{fabric.Crossed | fabric.Behind, []turn{{5, false}, {4, true}}},
	} {
		s := newSwatch(t, 4)
		row := s.row("Row 1", 2.1)
		s.put("dc", 1, 0, 2)
		s.put("dc", 2, c.flags, 1)
		e := newEngraver(s.p, Options{Library: s.lib})
		if got := e.order(row); !slices.Equal(got, c.want) {
			t.Errorf("flags %b: order %v, want %v", c.flags, got, c.want)
		}
	}
}

func TestLongStitchesComeLastAndAreCasedOnlyOverChains(t *testing.T) {
	for _, c := range []struct {
		between string
		flags   fabric.Flags
		cased   bool
	}{{"ch", fabric.Chain, true}, {"sc", 0, false}} {
		s := newSwatch(t, 3)
		s.row("Row 1", 1)
		for x := range 3 {
			on := []int32{int32(x)}
			if c.flags != 0 {
				on = nil
			}
			s.put(c.between, float64(x), c.flags, on...)
		}
		s.row("Row 2", 1)
		long := s.put("dc", 1, fabric.Long, 1)
		s.p.Legs[len(s.p.Legs)-1].Deep = true
		after := s.put("sc", 2, 0, 5)
		l := s.draw(Options{})
		var order []int32
		cased := false
		for i, item := range l.Items {
			if b, ok := item.(display.Begin); ok && b.Stitch >= 0 {
				order = append(order, b.Stitch)
				if b.Stitch == long {
					cased = len(l.Symbols[l.Items[i+1].(display.Use).Symbol].Paths) == 6
				}
			}
		}
		if order[len(order)-1] != long || order[len(order)-2] != after {
			t.Errorf("over %s: order %v, want stitch %d last", c.between, order, long)
		}
		if cased != c.cased {
			t.Errorf("over %s: cased %v, want %v", c.between, cased, c.cased)
		}
	}
}

func TestRowNumbersStandWhereRowsBegin(t *testing.T) {
	l := sampler(t).draw(Options{})
	at := map[string]float64{}
	for _, item := range l.Items {
		if x, ok := item.(display.Text); ok {
			at[x.Text] = x.X
		}
	}
	if at["1"] < l.Width/2 || at["2"] > l.Width/2 {
		t.Errorf("row 1 begins at the right, row 2 at the left; numbers at %g and %g of %g mm", at["1"], at["2"], l.Width)
	}
	mono := sampler(t).draw(Options{Monochrome: true})
	if got := texts(mono, "numbers"); !slices.Equal(got, []string{"1 A", "2 B"}) {
		t.Errorf("numbers in one ink: %q, want the yarns' letters beside them", got)
	}
}

func TestRoundNumbersKeepOutOfTheRingAndOffTheStitches(t *testing.T) {
	s := newSwatch(t, 0)
	s.p.Manner, s.p.RingR = layout.Circle, .42
	s.row("Rnd 1", 0)
	for i := range 12 {
		id := s.put("dc", 0, 0)
		dir := geom.Point{X: 1}.Rotate(2 * math.Pi * float64(i) / 12)
		s.f.Stitches[id].NBase, s.p.Poses[id].NLegs = 1, 1
		s.p.Poses[id].Top, s.p.Poses[id].Up = dir.Mul(2.85), dir
		s.f.Bases = append(s.f.Bases, fabric.Base{At: -1, How: fabric.InRing})
		s.p.Legs = append(s.p.Legs, layout.Leg{At: -1})
	}
	l := s.draw(Options{Unit: 10})
	x := l.Measure()
	var number geom.Box
	for i, item := range l.Items {
		if _, ok := item.(display.Text); ok {
			number = x.Items[i]
		}
	}
	if number.Width() == 0 {
		t.Fatal("no number")
	}
	for i, item := range l.Items {
		u, ok := item.(display.Use)
		if !ok || !x.Items[i].Overlaps(number) {
			continue
		}
		for _, p := range l.Symbols[u.Symbol].Paths {
			for _, q := range sampled(p.Path.Transform(u.At), .5) {
				if number.Contains(q) {
					t.Fatalf("the number %v lies on ink at %v", number, q)
				}
			}
		}
	}
}

func TestAnEmptyFabricIsAnEmptyPage(t *testing.T) {
	for _, f := range []*fabric.Fabric{{}, {Rows: make([]fabric.Row, 1)}} {
		for _, l := range []*display.List{Draw(&layout.Plan{Fabric: f}, Options{Library: library(t), Key: true}), Cells(f, Options{Library: library(t)}, 1)} {
			if len(l.Items) > 4 || l.Width <= 0 {
				t.Errorf("%d items on a page %g mm wide", len(l.Items), l.Width)
			}
		}
	}
}

func BenchmarkDraw200000(b *testing.B) {
	s := newSwatch(b, 400)
	for r := range 500 {
		s.row(fmt.Sprintf("Row %d", r+1), 1)
		for x := range 400 {
			s.put("sc", float64(x), 0, int32(r*400+x))
		}
	}
	for b.Loop() {
		s.draw(Options{})
	}
}
