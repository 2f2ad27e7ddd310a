package chart

import (
	"slices"
	"strings"
	"testing"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
	"strandway/model/syntax"
	"strandway/model/work"
)

// worked is the fabric of written rows.
func worked(t *testing.T, rows string, n int) *fabric.Fabric {
	t.Helper()
	lib := library(t)
	tree, findings := syntax.Read(rows, syntax.ReadOptions{Library: lib, Units: map[string]string{"wave": "5 dc in indicated place"}})
	f, more := work.Work(lib, tree, work.Options{N: n})
	if findings.Faults()+more.Faults() > 0 {
		t.Fatalf("%v %v", findings, more)
	}
	return f
}

const twoRows = "Ch 9.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn."

func drawRows(t *testing.T, rows string, o Options) *display.List {
	t.Helper()
	o.Library = library(t)
	return Draw(layout.Arrange(worked(t, rows, 0), layout.Drawn()), o)
}

func TestNumbersTellCountsAndSides(t *testing.T) {
	got := texts(drawRows(t, twoRows, Options{Counts: true, Sides: true}), "numbers")
	want := []string{"1 RS", "(8)", "2 WS", "(8)"}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// fillsIn counts the filled paths in the group of an id.
func fillsIn(l *display.List, id string) (n int) {
	inside := false
	for _, item := range l.Items {
		switch item := item.(type) {
		case display.Begin:
			inside = inside || item.ID == id
		case display.End:
			inside = false
		case display.Path:
			if inside && item.Fill.On && !item.Stroke.On {
				n++
			}
		}
	}
	return n
}

func TestTintsLieUnderTheRowsAskedFor(t *testing.T) {
	for _, c := range []struct {
		o    Options
		want int
	}{
		{Options{}, 0},
		{Options{Shade: true}, 1},
		{Options{Highlight: []int{1}}, 1},
		{Options{Highlight: []int{1}, Shade: true}, 2},
		{Options{Highlight: []int{7}}, 0},
	} {
		l := drawRows(t, twoRows, c.o)
		if got := fillsIn(l, "bands"); got != c.want {
			t.Errorf("%+v: %d tints, want %d", c.o, got, c.want)
		}
		if b, ok := l.Items[0].(display.Begin); c.want > 0 && (!ok || b.ID != "bands") {
			t.Errorf("%+v: tints do not come first", c.o)
		}
	}
}

func TestCalloutsStandWhereTheyArePut(t *testing.T) {
	find := func(l *display.List) (at geom.Point, ok bool) {
		for _, item := range l.Items {
			if text, is := item.(display.Text); is && text.Text == "turn here" {
				return geom.Point{X: text.X, Y: text.Y}, true
			}
		}
		return at, false
	}
	note := Callout{Row: 2, Stitch: 3, Text: "turn here", Away: geom.Point{X: 2, Y: 3}}
	l := drawRows(t, twoRows, Options{Callouts: []Callout{note}})
	at, ok := find(l)
	if !ok {
		t.Fatal("no note")
	}
	note.Away.X += 2
	moved, _ := find(drawRows(t, twoRows, Options{Callouts: []Callout{note}}))
	if d := moved.X - at.X; d < 9.99 || d > 10.01 { // the page begins at the same stitch
		t.Errorf("moved by %.2f mm, want two stitches of 5 mm", d)
	}
	if _, ok := find(drawRows(t, twoRows, Options{Callouts: []Callout{{Row: 9, Stitch: 1, Text: "turn here"}}})); ok {
		t.Error("a note on a row that is not there was written")
	}
}

func TestFiletIsChartedByMeshes(t *testing.T) {
	rows := "Ch 18.\nRow 1 (RS): Dc in 4th ch from hook (skipped 3 ch count as dc) and in next 2 ch, *ch 2, skip next 2 ch, dc in next 4 ch; rep from * across, turn."
	f := worked(t, rows, 0)
	l := Cells(f, Options{Library: library(t), Key: true}, 1)
	open, filled := 0, 0
	white := l.Background
	for _, item := range l.Items {
		if p, ok := item.(display.Path); ok && p.Fill.On && !p.Stroke.On {
			if p.Fill.Colour == white {
				open++
			} else {
				filled++
			}
		}
	}
	if open != 2 || filled != 3 {
		t.Errorf("%d open and %d filled meshes, want 2 and 3", open, filled)
	}
	if key := texts(l, "key"); !slices.Contains(key, "open mesh") || !slices.Contains(key, "filled mesh") {
		t.Errorf("key %q", key)
	}
}

func TestColourCountsFollowTheHook(t *testing.T) {
	f := worked(t, "Foundation (A): Ch 7.\nRow 1 (RS, A): Sc in 2nd ch from hook and in next ch, with B sc in next 4 ch, turn.\n"+
		"Row 2 (B): Ch 1, with B sc in next 4 sts, with A sc in next 2 sts.", 0)
	var got []string
	for _, row := range ColourCounts(f) {
		got = append(got, row.Label+": "+row.String())
	}
	if want := []string{"Row 1: 2 A, 4 B", "Row 2: 4 B, 2 A"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestSpecialStitchesAreDrawnAsTheirSymbol(t *testing.T) {
	const rows = "Ch 8.\nRow 1: Sc in 2nd ch from hook, skip next 2 ch, wave in next ch, skip next 2 ch, sc in next ch."
	parts := drawRows(t, rows, Options{Key: true})
	own := drawRows(t, rows, Options{Key: true, Own: []Own{{"wave", "wave shell", "M 0 0 L 0.5 2 L -0.5 2 Z"}}})
	has := func(l *display.List, name string) bool {
		return slices.ContainsFunc(l.Symbols, func(s display.Symbol) bool { return strings.HasPrefix(s.Name, name) })
	}
	if !has(parts, "dc") || has(own, "dc") || !has(own, "own-wave") {
		t.Error("the symbol must stand in place of its parts")
	}
	if !slices.Contains(texts(own, "key"), "wave shell") {
		t.Errorf("key %q", texts(own, "key"))
	}
	for _, wrong := range []string{"", "L 0 1", "M 0 0 L 0 -1", "no-such-symbol"} {
		if _, err := OwnSymbol("wave", wrong); err == nil {
			t.Errorf("%q passes for a symbol", wrong)
		}
	}
}
