package stage

import (
	"context"
	"errors"
	"image"
	"image/color"
	"image/gif"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"strandway/chart/geom"
	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/steps"
	"strandway/model/stitch"
	"strandway/render/cloth"
	"strandway/samples"
)

// set makes the stage of the first piece of a sample.
func set(t testing.TB, sample string, by steps.By) *Stage {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	src, err := samples.Read(sample)
	if err != nil {
		t.Fatal(err)
	}
	p, err := pattern.Decode(src, sample)
	if err != nil {
		t.Fatal(err)
	}
	w := model.Work(lib, p, 0)
	var yarns []cloth.Yarn
	for _, c := range w.YarnColours(0, Teaching(w, 0)) {
		yarns = append(yarns, cloth.Yarn{Colour: c})
	}
	return New(&w.Pieces[0], Options{Library: lib, Title: p.Title, Terms: "us", Yarns: yarns, By: by})
}

func frameOf(t testing.TB, s *Stage, i int, size image.Point) *image.RGBA {
	t.Helper()
	img, err := s.Frame(context.Background(), i, size)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// count is how many pixels of a pane have a colour.
func count(img *image.RGBA, at image.Rectangle, c color.NRGBA) (n int) {
	for y := at.Min.Y; y < at.Max.Y; y++ {
		for x := at.Min.X; x < at.Max.X; x++ {
			if img.RGBAAt(x, y) == (color.RGBA{c.R, c.G, c.B, 255}) {
				n++
			}
		}
	}
	return n
}

var usual = image.Pt(Width, Height)

func TestStitchAndPlaceAreLit(t *testing.T) {
	for _, sample := range samples.Names() {
		s := set(t, sample, steps.Stitch)
		i := s.Steps.Len() * 2 / 3
		for len(s.Steps.At(i).Places) == 0 {
			i++
		}
		img := frameOf(t, s, i, usual)
		p := s.panes()
		for name, pane := range map[string]image.Rectangle{"chart": pixels(p.chart, geom.Identity), "cloth": pixels(p.cloth, geom.Identity)} {
			if n := count(img, pane, accent); n < 40 {
				t.Errorf("%s, step %d: %d lit pixels on the %s", sample, i, n, name)
			}
		}
		if n := count(img, image.Rect(0, 0, 440, 490), wash); n < 200 {
			t.Errorf("%s, step %d: the word is not lit in the row: %d pixels", sample, i, n)
		}
	}
}

func TestChartAndClothGrowWithTheSteps(t *testing.T) {
	s := set(t, "groyne-runner", steps.Row)
	empty := func(i int) int {
		img := frameOf(t, s, i, usual)
		return count(img, pixels(s.panes().cloth, geom.Identity), paper)
	}
	if a, b := empty(1), empty(4); a <= b {
		t.Errorf("there is as much bare paper round the cloth after Row 4 (%d) as after Row 1 (%d)", b, a)
	}
}

func TestFrameIsTheSameEachTime(t *testing.T) {
	s, again := set(t, "quayside-cushion", steps.Stitch), set(t, "quayside-cushion", steps.Stitch)
	frameOf(t, again, 3, usual) // what was shown before leaves no trace
	if a, b := frameOf(t, s, 40, usual), frameOf(t, again, 40, usual); !slices.Equal(a.Pix, b.Pix) {
		t.Error("the same step gives two pictures")
	}
}

func TestOtherShapesHavePaperAtTheSides(t *testing.T) {
	s := set(t, "groyne-runner", steps.Stitch)
	img := frameOf(t, s, 30, image.Pt(640, 640))
	if n := count(img, image.Rect(0, 0, 640, 120), paper); n != 640*120 {
		t.Errorf("%d of %d pixels above the stage are paper", n, 640*120)
	}
}

func TestFilmOfRows(t *testing.T) {
	s := set(t, "groyne-runner", steps.Row)
	path := filepath.Join(t.TempDir(), "film.gif")
	film := Film{From: 2, To: 6, Size: image.Pt(640, 360), Seconds: 1.5}
	read := func() ([]byte, *gif.GIF) {
		if err := s.WriteGIF(t.Context(), path, film); err != nil {
			t.Fatal(err)
		}
		src, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		g, err := gif.DecodeAll(strings.NewReader(string(src)))
		if err != nil {
			t.Fatal(err)
		}
		return src, g
	}
	src, g := read()
	if len(g.Image) != 4 || g.Config.Width != 640 || g.Config.Height != 360 {
		t.Fatalf("%d frames of %d by %d", len(g.Image), g.Config.Width, g.Config.Height)
	}
	if want := []int{150, 150, 150, 300}; !slices.Equal(g.Delay, want) {
		t.Errorf("shown for %v hundredths of a second, want %v", g.Delay, want)
	}
	if again, _ := read(); string(again) != string(src) {
		t.Error("the same film was written differently")
	}

	// Laid over one another, the frames are the stage's own but for the palette.
	shown := image.NewRGBA(image.Rect(0, 0, 640, 360))
	for _, frame := range g.Image {
		for y := frame.Rect.Min.Y; y < frame.Rect.Max.Y; y++ {
			for x := frame.Rect.Min.X; x < frame.Rect.Max.X; x++ {
				if c := color.RGBAModel.Convert(frame.At(x, y)).(color.RGBA); c.A > 0 {
					shown.SetRGBA(x, y, c)
				}
			}
		}
	}
	stage := frameOf(t, s, 5, film.Size)
	far, sum := 0, 0
	for i, v := range stage.Pix {
		d := int(v) - int(shown.Pix[i])
		d = max(d, -d)
		sum += d
		far = max(far, d)
	}
	if mean := float64(sum) / float64(len(stage.Pix)); mean > 2 || far > 90 {
		t.Errorf("the last frame is %.1f off in the mean and %d at most", mean, far)
	}
}

func TestFramesAreWhatTheStageShows(t *testing.T) {
	s := set(t, "groyne-runner", steps.Stitch)
	dir := filepath.Join(t.TempDir(), "frames")
	film := Film{From: 30, To: 33, Size: image.Pt(640, 360)}
	if err := s.WriteFrames(t.Context(), dir, film); err != nil {
		t.Fatal(err)
	}
	held, err := os.ReadDir(dir)
	if err != nil || len(held) != 3 || held[0].Name() != "frame-00001.png" {
		t.Fatalf("the folder holds %v, %v", held, err)
	}
	f, err := os.Open(filepath.Join(dir, "frame-00002.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	want := frameOf(t, s, 31, film.Size)
	for y := range 360 {
		for x := range 640 {
			if got := color.RGBAModel.Convert(img.At(x, y)); got != want.At(x, y) {
				t.Fatalf("pixel %d, %d is %v, the stage shows %v", x, y, got, want.At(x, y))
			}
		}
	}
	if err := s.WriteFrames(t.Context(), dir, film); err == nil || !strings.Contains(err.Error(), "holds files already") {
		t.Errorf("frames went into a folder that held some: %v", err)
	}
}

func TestStoppedExportLeavesNothing(t *testing.T) {
	s := set(t, "groyne-runner", steps.Stitch)
	ctx, stop := context.WithCancel(t.Context())
	parent := t.TempDir()
	film := Film{From: 0, To: 40, Size: image.Pt(320, 180), Seconds: 1, Progress: func(done, all int) {
		if done == 2 {
			stop()
		}
	}}
	if err := s.WriteFrames(ctx, filepath.Join(parent, "frames"), film); !errors.Is(err, context.Canceled) {
		t.Errorf("the folder: %v", err)
	}
	if err := s.WriteGIF(ctx, filepath.Join(parent, "film.gif"), film); !errors.Is(err, context.Canceled) {
		t.Errorf("the film: %v", err)
	}
	if held, _ := os.ReadDir(parent); len(held) > 0 {
		t.Errorf("there is %v", held)
	}
}

func TestWhatCannotBeExportedIsSaid(t *testing.T) {
	s := set(t, "groyne-runner", steps.Stitch)
	all := Film{To: s.Steps.Len(), Size: usual, Seconds: 2}
	for want, change := range map[string]func(*Film){
		"these are 545 frames, and a GIF of 1280 by 720 pixels takes 217 at most": func(*Film) {},
		"there is no step to show":                           func(f *Film) { f.To = 0 },
		"a frame of 20 by 10 pixels cannot be drawn":         func(f *Film) { f.Size = image.Pt(20, 10) },
		"a step can be shown for 0.02 to 600 seconds, not 0": func(f *Film) { f.To, f.Seconds = 3, 0 },
	} {
		film := all
		change(&film)
		if err := s.WriteGIF(t.Context(), filepath.Join(t.TempDir(), "x.gif"), film); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("said %v, want %q", err, want)
		}
	}
}

func TestTeachingColourway(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	way := func(name, a, b string) pattern.Colourway {
		return pattern.Colourway{Name: name, Shades: map[string]pattern.Shade{"A": {Colour: a}, "B": {Colour: b}}}
	}
	for _, c := range []struct {
		want string
		ways []pattern.Colourway
	}{
		{"", nil},
		{"", []pattern.Colourway{way("Fog", "#888888", "#999999")}},
		{"Ink", []pattern.Colourway{way("Fog", "#888888", "#999999"), way("Ink", "#202040", "#f0f0e0")}},
		{"teaching", []pattern.Colourway{way("Ink", "#202040", "#f0f0e0"), way("teaching", "#4a7fb0", "#f0a050")}},
	} {
		w := model.Work(lib, &pattern.Pattern{
			Terms:      "US",
			Yarns:      []pattern.Yarn{{Letter: "A", Colour: "#444444"}, {Letter: "B", Colour: "#777777"}},
			Colourways: c.ways,
			Pieces:     []pattern.Piece{{Name: "Mat", Rows: "Foundation (A): Ch 5.\nRow 1 (B): Sc in 2nd ch from hook and in each ch across."}},
		}, 0)
		if got := Teaching(w, 0); got != c.want {
			t.Errorf("taught in %q, want %q", got, c.want)
		}
	}
}

// BenchmarkStep is what a key press in the window costs.
func BenchmarkStep(b *testing.B) {
	for _, sample := range samples.Names() {
		s := set(b, sample, steps.Stitch)
		b.Run(sample, func(b *testing.B) {
			i := s.Steps.Len() / 2
			for b.Loop() {
				frameOf(b, s, i, usual)
				i = min(i+1, s.Steps.Len()-1)
			}
		})
	}
}
