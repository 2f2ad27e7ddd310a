package render

import (
	"fmt"
	"os/exec"
	"path/filepath"
	"testing"

	"strandway/chart"
	"strandway/chart/layout"
	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/render/raster"
	"strandway/render/rendertest"
	"strandway/samples"
)

// The SVG of a chart looks in other programs, where they are installed, as our own picture of it.
func TestChartsLookAlikeElsewhere(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range samples.Names() {
		src, err := samples.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		p, err := pattern.Decode(src, name)
		if err != nil {
			t.Fatal(err)
		}
		w := model.Work(lib, p, 0)
		l := chart.Draw(layout.Arrange(w.Pieces[0].Fabric, layout.Drawn()),
			chart.Options{Library: lib, Inks: w.YarnColours(0, ""), Title: p.Title, Key: true, Shade: true, Counts: true})
		dir := t.TempDir()
		in, out := filepath.Join(dir, "chart.svg"), filepath.Join(dir, "chart.png")
		if err := Write(in, l, Options{}); err != nil {
			t.Fatal(err)
		}
		want := raster.Paint(l, raster.Options{DPI: 96})
		size := want.Bounds().Size()
		for program, args := range map[string][]string{
			"rsvg-convert": {"-d", "96", "-p", "96", "-o", out, in},
			"inkscape":     {"--export-dpi=96", "--export-filename=" + out, in},
			"chromium": {"--headless", "--no-sandbox", "--hide-scrollbars", "--screenshot=" + out,
				fmt.Sprintf("--window-size=%d,%d", size.X, size.Y), "file://" + in},
		} {
			t.Run(name+"/"+program, func(t *testing.T) {
				if _, err := exec.LookPath(program); err != nil {
					t.Skip(program + " is not installed")
				}
				if message, err := exec.Command(program, args...).CombinedOutput(); err != nil {
					t.Fatalf("%v: %s", err, message)
				}
				got := rendertest.Part(rendertest.Load(t, out), 0, 0, size.X, size.Y)
				tolerance := .03
				if program == "chromium" { // it does not fit the drawing to whole pixels, as the others do
					tolerance = .05
				}
				rendertest.Compare(t, name, got, want, tolerance)
			})
		}
	}
}
