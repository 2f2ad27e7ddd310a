package pdf

import (
	"bytes"
	"fmt"
	"image/color"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/render/raster"
	"strandway/render/rendertest"
	"strandway/render/sheet"
)

var black = color.NRGBA{A: 255}

func write(t *testing.T, o Options, lists ...*display.List) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, lists, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// reader runs one of the usual PDF programs on a file.
func reader(t *testing.T, program string, file []byte, before, after []string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		t.Skip(program + " is not installed")
	}
	in := filepath.Join(t.TempDir(), "chart.pdf")
	if err := os.WriteFile(in, file, 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(path, append(append(before, in), after...)...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v: %s", program, err, out)
	}
	return string(out)
}

func TestLooksLikeThePicture(t *testing.T) {
	out := filepath.Join(t.TempDir(), "page")
	reader(t, "pdftoppm", write(t, Options{}, rendertest.Page()), []string{"-r", "508", "-png", "-singlefile"}, []string{out})
	got := rendertest.Part(rendertest.Load(t, out+".png"), 0, 0, 1800, 1200)
	rendertest.Compare(t, "page", got, raster.Paint(rendertest.Page(), raster.Options{DPI: 508}), .03)
}

func TestTextCanBeRead(t *testing.T) {
	got := reader(t, "pdftotext", write(t, Options{}, rendertest.Page()), nil, []string{"-"})
	for _, want := range []string{"Ripple & shell", "repeat AVA"} {
		if !strings.Contains(got, want) {
			t.Errorf("want %q in the text:\n%s", want, got)
		}
	}
}

func TestTitleAndSize(t *testing.T) {
	got := reader(t, "pdfinfo", write(t, Options{}, rendertest.Page()), nil, nil)
	for _, want := range []string{"Ripple & shell", "two rows, worked to and fro", "255.12 x 170.08 pts"} {
		if !strings.Contains(got, want) {
			t.Errorf("want %q in:\n%s", want, got)
		}
	}
}

// Laid with their marks on each other, the sheets are the chart.
func TestSheetsJoin(t *testing.T) {
	l := rendertest.Page()
	l.Width, l.Items = 400, nil
	for i := range 60 {
		l.Items = append(l.Items, display.Use{Symbol: i % 3, At: geom.Translate(10+6.3*float64(i), 30), Ink: black})
	}
	out := filepath.Join(t.TempDir(), "sheet")
	file := write(t, Options{Paper: sheet.A4}, l)
	reader(t, "pdftoppm", file, []string{"-r", "254", "-png"}, []string{out})
	whole := raster.Paint(l, raster.Options{DPI: 254})
	for i, s := range sheet.Spread(l, sheet.A4) {
		got := rendertest.Load(t, fmt.Sprintf("%s-%d.png", out, i+1))
		part := func(min geom.Point) (x, y int) { return int(math.Round(min.X * 10)), int(math.Round(min.Y * 10)) }
		width, height := int(s.Part.Width()*10)-4, int(s.Part.Height()*10)-4 // without the edges
		gx, gy := part(s.At)
		wx, wy := part(s.Part.Min)
		rendertest.Compare(t, fmt.Sprintf("sheet-%d", i+1),
			rendertest.Part(got, gx+2, gy+2, width, height), rendertest.Part(whole, wx+2, wy+2, width, height), .012)
	}
	if text := reader(t, "pdftotext", file, nil, []string{"-"}); !strings.Contains(text, "sheet 2 of 2: column 2 of 2, row 1 of 1") {
		t.Errorf("the sheets are not numbered:\n%s", text)
	}
}

func TestNonsenseIsPassedOver(t *testing.T) {
	nan := math.NaN()
	l := &display.List{Width: 10, Height: 10, Items: []display.Item{
		display.Use{Symbol: 3}, display.Use{Symbol: -1}, display.Picture{}, display.Text{}, display.End{},
		display.Text{Text: "\U0001F9F6 \xff", Size: 3, Fill: black},
		display.Path{Path: rendertest.Line(nan, nan, 1, 1), Stroke: display.Solid(black), Width: nan},
		display.Path{Path: geom.Path{Verbs: []geom.Verb{geom.Cubic}}, Fill: display.Solid(black)},
	}}
	if file := write(t, Options{}, l); !bytes.HasPrefix(file, []byte("%PDF-")) {
		t.Error("no PDF was written")
	}
}

func TestSameBytesEachTime(t *testing.T) {
	first := write(t, Options{Paper: sheet.A4}, rendertest.Page(), rendertest.Page())
	for range 3 {
		if !bytes.Equal(first, write(t, Options{Paper: sheet.A4}, rendertest.Page(), rendertest.Page())) {
			t.Fatal("the same pages give other bytes")
		}
	}
}
