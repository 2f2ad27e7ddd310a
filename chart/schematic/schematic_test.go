package schematic_test

import (
	"flag"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/chart/schematic"
	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/strand"
	"strandway/model/syntax"
	"strandway/model/work"
)

var update = flag.Bool("update", false, "write the golden files")

func worked(t *testing.T, rows string) *fabric.Fabric {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	tree, _ := syntax.Read(rows, syntax.ReadOptions{Library: lib})
	f, findings := work.Work(lib, tree, work.Options{N: 3, Limit: 10000})
	if findings.Faults() > 0 {
		t.Fatalf("%s: %v", rows, findings)
	}
	return f
}

const stripes = `Foundation (A): Ch 21.
Row 1 (A): Sc in 2nd ch from hook and in each ch across, turn.
Row 2 (A): Ch 1, sc in each st across, turn.
Row 3 (B): Ch 1, sc in each st across, turn.
Row 4 (B): Ch 1, sc in each st across, turn. Fasten off B.
Row 5 (A): Ch 1, sc in each st across, turn.
`

// The area of an outline over that of its box tells its shape.
func TestOutline(t *testing.T) {
	for _, c := range []struct {
		name, rows string
		fills      float64
	}{
		{"rows of one width", stripes, 1},
		{"a triangle", "Ch 2.\nRow 1: Sc in 2nd ch from hook, turn.\nRow 2: Ch 1, 3 sc in st, turn.\n" +
			strings.Repeat("Next row: Ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st, turn.\n", 14), .6}, // rows from a point bend
		{"a square from the middle", "Ch 4, join with sl st to form a ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st to top of beg ch-3.\n" +
			"Rnd 2: Sl st in next 2 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, join with sl st to top of beg ch-3.\n", 1},
		{"a disc", "Ch 4, join with sl st to form a ring.\nRnd 1: 6 sc in ring.\nRnd 2: 2 sc in each st around.\nRnd 3: *2 sc in next st, sc in next st; rep from * around.\nRnd 4: *2 sc in next st, sc in next 2 sts; rep from * around.\nRnd 5: *2 sc in next st, sc in next 3 sts; rep from * around.\n", math.Pi / 4},
		{"an open net", "Ch 26.\nRow 1: Sc in 2nd ch from hook, *ch 5, skip next 3 ch, sc in next ch; rep from * across, turn.\nRow 2: Ch 5 (counts as dc, ch 2), sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * across, ch 2, dc in last sc, turn.\n", .95},
	} {
		path := schematic.Outline(layout.Arrange(worked(t, c.rows), layout.Measured()))
		box := path.Box()
		if box.IsEmpty() {
			t.Errorf("%s: no outline", c.name)
			continue
		}
		if got := area(path.Flatten(.01)[0].Points) / (box.Width() * box.Height()); math.Abs(got-c.fills) > .1 {
			t.Errorf("%s: the outline fills %.2f of its box, want about %.2f", c.name, got, c.fills)
		}
	}
	if path := schematic.Outline(&layout.Plan{Fabric: &fabric.Fabric{}, Box: geom.Empty()}); len(path.Verbs) != 0 {
		t.Error("nothing worked has an outline")
	}
}

func area(ring []geom.Point) float64 {
	sum := 0.0
	for i, p := range ring {
		sum += p.Cross(ring[(i+1)%len(ring)])
	}
	return math.Abs(sum) / 2
}

func TestInches(t *testing.T) {
	for cm, want := range map[float64]string{2.54: "1", 91.4: "36", 10: "4", 9.5: "3¾", 1.3: "½", 23: "9"} {
		if got := schematic.Inches(cm); got != want {
			t.Errorf("%g cm: %s in, want %s", cm, got, want)
		}
	}
}

func TestFiguresAreAsLargeAsTheySay(t *testing.T) {
	for _, f := range schematic.Figures() {
		box := geom.Empty()
		for _, p := range f.Paths {
			box = box.Union(p.Bounds())
		}
		if box.Min.X < -.5 || box.Min.Y < -.5 || math.Abs(box.Max.Y-f.Height) > .01*f.Height+.1 || box.Max.X > f.Width+.5 {
			t.Errorf("%s: drawn from %.1f, %.1f to %.1f, %.1f, said to be %g by %g", f.Name, box.Min.X, box.Min.Y, box.Max.X, box.Max.Y, f.Width, f.Height)
		}
	}
}

func rectangle() geom.Path {
	var p geom.Path
	p.MoveTo(geom.Point{})
	for _, q := range []geom.Point{{X: 2}, {X: 2, Y: 1}, {Y: 1}} {
		p.LineTo(q)
	}
	p.Close()
	return p
}

func TestDrawIsToScaleAndOnThePage(t *testing.T) {
	sizes := []schematic.Piece{{Name: "Small", Outline: rectangle(), WidthCM: 60, LengthCM: 30}, {Name: "Large", Outline: rectangle(), WidthCM: 120, LengthCM: 30}}
	figures := append([]schematic.Figure{{}}, schematic.Figures()...)
	for i, f := range figures {
		o := schematic.Options{Title: "Groyne Runner"}
		if i > 0 {
			o.Against = &f
		}
		list := schematic.Draw(sizes, o)
		ink := list.Measure().Ink
		if ink.Min.X < 0 || ink.Min.Y < 0 || ink.Max.X > list.Width || ink.Max.Y > list.Height {
			t.Errorf("against %q: ink from %v to %v on a page of %g by %g mm", f.Name, ink.Min, ink.Max, list.Width, list.Height)
		}
		extents := list.Measure()
		var widths []float64
		for k, item := range list.Items {
			if b, ok := item.(display.Begin); ok && b.Class == "size" {
				widths = append(widths, extents.Items[k].Width())
			}
		}
		if len(widths) != 2 || math.Abs(widths[1]/widths[0]-2) > .03 {
			t.Errorf("against %q: widths on the page %v, want one twice the other", f.Name, widths)
		}
	}
}

func TestStrandsPicture(t *testing.T) {
	f := worked(t, stripes)
	rowCM := []float64{0, .6, .6, .6, .6, .6}
	s := strand.Follow(f, rowCM)
	list := schematic.Strands(f, &s, rowCM, schematic.StrandOptions{Title: "Stripes"})
	ink := list.Measure().Ink
	if ink.Min.X < 0 || ink.Min.Y < 0 || ink.Max.X > list.Width || ink.Max.Y > list.Height {
		t.Errorf("ink from %v to %v on a page of %g by %g mm", ink.Min, ink.Max, list.Width, list.Height)
	}
	golden(t, "stripes", list)
}

func golden(t *testing.T, name string, list *display.List) {
	t.Helper()
	path := filepath.Join("testdata", name+".golden")
	got := list.Dump()
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs from its golden file: look at it, then run with -update", name)
	}
}

func BenchmarkOutline(b *testing.B) {
	rows := "Ch 101.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRows 2-50: Ch 1, sc in each st across, turn.\n"
	lib, err := stitch.Standard()
	if err != nil {
		b.Fatal(err)
	}
	tree, _ := syntax.Read(rows, syntax.ReadOptions{Library: lib})
	f, _ := work.Work(lib, tree, work.Options{N: 3, Limit: 10000})
	plan := layout.Arrange(f, layout.Measured())
	b.ReportMetric(float64(len(f.Stitches)), "stitches")
	for b.Loop() {
		schematic.Outline(plan)
	}
}
