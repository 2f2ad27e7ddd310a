package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"image/color"
	"io"
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
)

var _ = flag.Bool("update", false, "write the files in testdata anew")

var black = color.NRGBA{A: 255}

func write(t *testing.T, l *display.List, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, l, o); err != nil {
		t.Fatal(err)
	}
	wellFormed(t, b.Bytes())
	return b.String()
}

// wellFormed fails the test if a document cannot be read, names an id twice or refers to none.
func wellFormed(t *testing.T, document []byte) {
	t.Helper()
	ids, references := map[string]bool{}, []string{}
	for d := xml.NewDecoder(bytes.NewReader(document)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("not well formed: %v", err)
		}
		element, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		for _, a := range element.Attr {
			switch {
			case a.Name.Local == "id":
				if ids[a.Value] {
					t.Errorf("the id %q stands twice", a.Value)
				}
				ids[a.Value] = true
			case a.Name.Local == "href" && strings.HasPrefix(a.Value, "#"):
				references = append(references, a.Value[1:])
			}
		}
	}
	for _, r := range references {
		if !ids[r] {
			t.Errorf("nothing has the id %q that is used", r)
		}
	}
}

func TestPage(t *testing.T) {
	rendertest.Golden(t, "page.svg", []byte(write(t, rendertest.Page(), Options{})))
	rendertest.Golden(t, "page-text.svg", []byte(write(t, rendertest.Page(), Options{TextAsText: true})))
}

func TestSameBytesEachTime(t *testing.T) {
	first := write(t, rendertest.Page(), Options{})
	for range 5 {
		if write(t, rendertest.Page(), Options{}) != first {
			t.Fatal("the same page gives other bytes")
		}
	}
}

// Another program's picture of the SVG is our picture of the page.
func TestLooksLikeThePicture(t *testing.T) {
	program, err := exec.LookPath("rsvg-convert")
	if err != nil {
		t.Skip("rsvg-convert is not installed")
	}
	for name, o := range map[string]Options{"paths": {}, "clear": {Transparent: true}} {
		in, out := filepath.Join(t.TempDir(), "page.svg"), filepath.Join(t.TempDir(), "page.png")
		if err := os.WriteFile(in, []byte(write(t, rendertest.Page(), o)), 0o644); err != nil {
			t.Fatal(err)
		}
		if message, err := exec.Command(program, "-d", "254", "-p", "254", "-o", out, in).CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, message)
		}
		want := raster.Paint(rendertest.Page(), raster.Options{DPI: 254, Transparent: o.Transparent})
		rendertest.Compare(t, name, rendertest.Load(t, out), want, .012)
	}
}

func TestElements(t *testing.T) {
	at := func(m geom.Matrix) *display.List {
		return &display.List{
			Width: 10, Height: 10,
			Symbols: []display.Symbol{{Name: "3-dc cl", Paths: []display.Path{{Path: rendertest.Line(0, 0, .1234, 1), Stroke: display.Ink, Width: .35}}}},
			Items:   []display.Item{display.Use{At: m, Ink: black}},
		}
	}
	list := func(items ...display.Item) *display.List { return &display.List{Width: 10, Height: 10, Items: items} }
	for _, c := range []struct {
		name string
		list *display.List
		want string
	}{
		{"true size", &display.List{Width: 210, Height: 148.5}, `width="210mm" height="148.5mm" viewBox="0 0 210 148.5" role="img"`},
		{"title", &display.List{Title: `"A" & <B>` + "\x01"}, `<title>&quot;A&quot; &amp; &lt;B&gt;</title>`},
		{"description", &display.List{Desc: "rows 1 to 4"}, "<desc>rows 1 to 4</desc>"},
		{"symbol", at(geom.Identity), `<g id="symbol-3-dc-cl"><path d="M0 0L0.123 1" stroke="currentColor" stroke-width="0.35"/></g>`},
		{"shift", at(geom.Translate(1.006, -.001)), `<use xlink:href="#symbol-3-dc-cl" x="1.01" y="0"/>`},
		{"turn", at(geom.Rotate(math.Pi / 6).Then(geom.Translate(1, 2))), `transform="translate(1 2)rotate(30)"/>`},
		{"mirror", at(geom.Scale(-1, 1).Then(geom.Translate(1, 2))), `transform="matrix(-1 0 0 1 1 2)"/>`},
		{"group", list(display.Begin{ID: "s12", Class: "stitch", Title: "dc in next st", Stitch: 12}, display.End{}),
			`<g id="s12" class="stitch">` + "\n<title>dc in next st</title>\n</g>"},
		{"group left open", list(display.Begin{ID: "r1"}), `<g id="r1">` + "\n</g>\n</g>\n</svg>"},
		{"dash", list(display.Path{Path: rendertest.Line(0, 0, 9, 0), Stroke: display.Solid(black), Width: .2, Dash: []float64{1, .5}}),
			`stroke="#000000" stroke-width="0.2" stroke-dasharray="1 0.5"/>`},
		{"translucent fill", list(display.Path{Path: rendertest.Rectangle(0, 0, 1, 1), Fill: display.Solid(color.NRGBA{R: 255, A: 51})}),
			`<path d="M0 0L1 0L1 1L0 1Z" fill="#ff0000" fill-opacity="0.2"/>`},
		{"words for a line of letters", list(display.Text{Text: "Row 1", Size: 3, Fill: black}), `<g role="img" aria-label="Row 1"`},
		{"not a number", list(display.Path{Path: rendertest.Line(math.NaN(), math.Inf(1), 1, 1), Stroke: display.Solid(black)}), `d="M0 0L1 1"`},
	} {
		if got := write(t, c.list, Options{}); !strings.Contains(got, c.want) {
			t.Errorf("%s: want %s in\n%s", c.name, c.want, got)
		}
	}
}

func TestColourIsNamedOncePerGroup(t *testing.T) {
	red := color.NRGBA{R: 200, A: 255}
	l := &display.List{Symbols: []display.Symbol{{Name: "ch"}}, Items: []display.Item{display.Begin{ID: "r1", Stitch: -1}}}
	for range 5 {
		l.Items = append(l.Items, display.Use{At: geom.Identity, Ink: red})
	}
	l.Items = append(l.Items, display.Use{At: geom.Identity, Ink: black}, display.End{}, display.Use{At: geom.Identity, Ink: black})
	got := write(t, l, Options{})
	if n := strings.Count(got, `color="#c80000"`); n != 1 {
		t.Errorf("the group's colour stands %d times, want once:\n%s", n, got)
	}
	if n := strings.Count(got, `y="0" color="#000000"`); n != 1 {
		t.Errorf("black is named by %d symbols, want by the one in the red group:\n%s", n, got)
	}
}

func TestTextAsText(t *testing.T) {
	l := &display.List{Items: []display.Item{display.Text{
		X: 5, Y: 6, Size: 3, Anchor: display.Finish, Face: display.SerifItalic, Angle: math.Pi / 2, Text: "5 dc & ch", Fill: black,
	}}}
	const want = `<text x="5" y="6" font-size="3" font-family="'Noto Serif', serif" font-style="italic" text-anchor="end" transform="rotate(90 5 6)" fill="#000000">5 dc &amp; ch</text>`
	if got := write(t, l, Options{TextAsText: true}); !strings.Contains(got, want) {
		t.Errorf("want %s in\n%s", want, got)
	}
}

func FuzzText(f *testing.F) {
	f.Add("Row 1: 5 dc", "r1")
	f.Add("\x00\xff<&\"'", "]]>")
	f.Fuzz(func(t *testing.T, words, title string) {
		l := &display.List{Title: title, Items: []display.Item{
			display.Begin{Title: title, Class: words}, display.Text{Text: words, Size: 3, Fill: black}, display.End{},
		}}
		write(t, l, Options{})
		write(t, l, Options{TextAsText: true})
	})
}
