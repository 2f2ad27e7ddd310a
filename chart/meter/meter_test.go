package meter_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"strandway/chart"
	"strandway/chart/display"
	"strandway/chart/layout"
	"strandway/chart/meter"
	"strandway/model"
	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/samples"
)

const unit = 5 // mm

func library(t testing.TB) *stitch.Library {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

// patterns are the samples, the classic stitch patterns and fabrics of all sorts, by file name.
func patterns(t testing.TB) map[string]*pattern.Pattern {
	t.Helper()
	out := map[string]*pattern.Pattern{}
	add := func(name string, src []byte, err error) {
		if err != nil {
			t.Fatal(err)
		}
		p, err := pattern.Decode(src, name)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = p
	}
	for _, name := range samples.Names() {
		src, err := samples.Read(name)
		add(name, src, err)
	}
	files, err := filepath.Glob("testdata/*/*.strand")
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range files {
		src, err := os.ReadFile(path)
		add(strings.TrimSuffix(filepath.Base(path), ".strand"), src, err)
	}
	if len(out) < 80 {
		t.Fatalf("only %d patterns", len(out))
	}
	return out
}

func draw(f *fabric.Fabric, lib *stitch.Library) (*layout.Plan, meter.Report) {
	p := layout.Arrange(f, layout.Drawn())
	l := chart.Draw(p, chart.Options{Library: lib, Unit: unit, Key: true})
	return p, meter.Measure(p, l, unit, false)
}

func TestClassicsAreWorkedWithoutFault(t *testing.T) {
	lib := library(t)
	for name, p := range patterns(t) {
		for _, f := range model.Work(lib, p, 0).Findings {
			if f.Severity == diag.Fault {
				t.Errorf("%s: %v", name, f)
			}
		}
	}
}

func TestChartsAreClean(t *testing.T) {
	lib := library(t)
	for name, p := range patterns(t) {
		t.Run(name, func(t *testing.T) {
			for i := range p.Pieces {
				for _, n := range []int{1, 3, 10} {
					q, err := model.WithRepeats(lib, p, 0, i, n)
					fixed := err != nil || p.Pieces[i].Multiple == "" // it has no repeat across, as a motif has none
					if fixed {
						q = p
					}
					_, r := draw(model.Work(lib, q, 0).Pieces[i].Fabric, lib)
					for k, fault := range r {
						if k == 8 {
							break
						}
						t.Errorf("piece %d, %d repeats: %v", i+1, n, fault)
					}
					if len(r) > 0 {
						t.Errorf("piece %d, %d repeats: %v", i+1, n, fmt.Sprint(r.String()))
					}
					if fixed {
						break
					}
				}
			}
		})
	}
}

// A chart that is spoiled on purpose shows that the meter sees.
func TestMeterSeesFaults(t *testing.T) {
	lib := library(t)
	p := patterns(t)["plain-dc"]
	plan := layout.Arrange(model.Work(lib, p, 0).Pieces[0].Fabric, layout.Drawn())
	row := plan.Fabric.Rows[2]
	a, b := row.First+3, row.First+4
	for _, c := range []struct {
		name  string
		spoil func(p *layout.Plan)
		want  meter.Kind
	}{
		{"bars pushed together", func(p *layout.Plan) { p.Poses[b].Top.X = p.Poses[a].Top.X - .6 }, meter.Touching},
		{"stems crossed", func(p *layout.Plan) { p.Poses[a].Top, p.Poses[b].Top = p.Poses[b].Top, p.Poses[a].Top }, meter.Crossing},
		{"one stitch out of its place", func(p *layout.Plan) { p.Poses[b].Top.X += .3 }, meter.Uneven},
		{"a low turning chain", func(p *layout.Plan) { p.Poses[row.First].Top.Y -= 1.7 }, meter.Squeezed},
	} {
		t.Run(c.name, func(t *testing.T) {
			q := *plan
			q.Poses = slices.Clone(plan.Poses)
			c.spoil(&q)
			l := chart.Draw(&q, chart.Options{Library: lib, Unit: unit})
			if r := meter.Measure(&q, l, unit, false); r.Count(c.want) == 0 {
				t.Errorf("got %v, want some %v", r, c.want)
			}
		})
	}
	l := chart.Draw(plan, chart.Options{Library: lib, Unit: unit})
	l.Items = append(l.Items, display.Text{X: l.Width / 2, Y: l.Height / 2, Size: 4, Text: "here"})
	if r := meter.Measure(plan, l, unit, false); r.Count(meter.OnInk) != 1 {
		t.Errorf("got %v, want a label on ink", r)
	}
}

// The same file gives the same chart, byte for byte.
func TestChartsAreDrawnTheSameTwice(t *testing.T) {
	lib := library(t)
	for name, p := range patterns(t) {
		var dumps [2]string
		for k := range dumps {
			w := model.Work(lib, p, 0)
			l := chart.Draw(layout.Arrange(w.Pieces[0].Fabric, layout.Drawn()), chart.Options{Library: lib, Inks: w.YarnColours(0, ""), Key: true})
			dumps[k] = l.Dump()
		}
		if dumps[0] != dumps[1] {
			t.Errorf("%s is drawn in two ways", name)
		}
	}
}

// Whatever is asked of its look, a chart stays clean.
func TestChartsAreCleanInEveryLook(t *testing.T) {
	lib := library(t)
	for name, p := range patterns(t) {
		w := model.Work(lib, p, 0)
		for i := range w.Pieces {
			plan := layout.Arrange(w.Pieces[i].Fabric, layout.Drawn())
			for look, o := range map[string]chart.Options{
				"left-handed": {LeftHanded: true, HooksLeft: true},
				"plus":        {PlusCross: true, Monochrome: true},
				"marked":      {Counts: true, Sides: true, Shade: true, Highlight: []int{2}, Waiting: true},
			} {
				o.Library, o.Unit, o.Key = lib, unit, true
				if r := meter.Measure(plan, chart.Draw(plan, o), unit, o.LeftHanded); len(r) > 0 {
					t.Errorf("%s, piece %d, %s: %v: %v", name, i+1, look, r, r[0])
				}
			}
		}
	}
}
