package teach

import (
	"image"
	"image/color"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"strandway/app/session"
	"strandway/app/theme"
	"strandway/model/pattern"
	"strandway/model/steps"
	"strandway/model/stitch"
	"strandway/samples"
)

// shown is the view with a sample, in a window of a size; settle lets the background work end.
func shown(t testing.TB, sample string, width, height float32) (v *View, settle func()) {
	t.Helper()
	test.NewTempApp(t)
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	src, err := samples.Read(sample)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "sample.strand")
	if err := os.WriteFile(path, src, 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := pattern.Load(path); err != nil {
		t.Fatal(err)
	}
	posted := make(chan func(), 256)
	s := session.New(lib, func(f func()) { posted <- f })
	t.Cleanup(s.Close)
	if err := s.Open(path); err != nil {
		t.Fatal(err)
	}
	v = New(s, lib, theme.New(theme.Light), func(f func()) { posted <- f })
	v.Hide()
	w := test.NewWindow(v)
	t.Cleanup(w.Close)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(width, height))
	settle = func() {
		t.Helper()
		patience := time.After(20 * time.Second)
		for ready := false; !ready; {
			if v.Stage() != nil {
				w.Canvas().Capture() // the raster learns its size when it is drawn
			}
			select {
			case f := <-posted:
				f()
			case <-time.After(5 * time.Millisecond):
			case <-patience:
				t.Fatal("the background never came to an end")
			}
			ready = v.img != nil && !v.drawing && v.drawn.stage == v.Stage() && v.drawn.step == v.Stage().Steps.Find(v.at) && v.drawn.size == v.size
		}
	}
	for !s.Current() {
		(<-posted)()
	}
	v.Show()
	settle()
	return v, settle
}

func key(v *View, names ...fyne.KeyName) {
	for _, n := range names {
		v.TypedKey(&fyne.KeyEvent{Name: n})
	}
}

func step(t *testing.T, v *View) int {
	t.Helper()
	if v.Stage() == nil {
		t.Fatal("there is no stage")
	}
	return v.Stage().Steps.Find(v.at)
}

func TestKeysLeadThroughTheSteps(t *testing.T) {
	v, _ := shown(t, "groyne-runner", 900, 640)
	key(v, fyne.KeyHome)
	for _, c := range []struct {
		key  fyne.KeyName
		want int
	}{
		{fyne.KeyPageUp, 0}, {fyne.KeyPageDown, 1}, {fyne.KeyRight, 2}, {fyne.KeySpace, 3}, {fyne.KeyLeft, 2}, {fyne.KeyPageUp, 1},
		{fyne.KeyEnd, 544}, {fyne.KeyPageDown, 544},
	} {
		key(v, c.key)
		if got := step(t, v); got != c.want {
			t.Errorf("%s leads to step %d, want %d", c.key, got, c.want)
		}
	}
	var other fyne.KeyName
	v.Keys = func(e *fyne.KeyEvent) bool { other = e.Name; return true }
	key(v, fyne.KeyF11)
	if other != fyne.KeyF11 {
		t.Error("F11 is not handed on")
	}
}

func TestTheStitchInHandStaysWhenStepsChange(t *testing.T) {
	v, _ := shown(t, "groyne-runner", 900, 640)
	v.GoTo(130)
	v.SetBy(steps.Row)
	now, ok := v.Step()
	if !ok || now.Where != "Row 5 (RS)" {
		t.Fatalf("by row it shows %s", now.Where)
	}
	film, what, ok := v.Film()
	if !ok || film.From != 0 || film.To != 25 || what != "all rows" {
		t.Errorf("it saves steps %d to %d of %s", film.From, film.To, what)
	}
	v.SetBy(steps.Stitch)
	if now, _ = v.Step(); now.Where != "Row 5 (RS)" {
		t.Errorf("by stitch it shows %s", now.Where)
	}
	film, what, _ = v.Film()
	first, last := v.Stage().Steps.At(film.From), v.Stage().Steps.At(film.To-1)
	if what != "Row 5" || first.First != 124 || last.Last != 149 {
		t.Errorf("it saves stitches %d to %d of %s", first.First, last.Last, what)
	}
}

// What the window shows is what is exported, pixel for pixel.
func TestTheWindowShowsTheExportedFrame(t *testing.T) {
	v, settle := shown(t, "quayside-cushion", 1280+2*margin, 720+headHeight+footHeight)
	v.GoTo(60)
	settle()
	if v.size != image.Pt(1280, 720) {
		t.Fatalf("the stage is %v", v.size)
	}
	shownNow := fyne.CurrentApp().Driver().CanvasForObject(v).Capture()
	dir := filepath.Join(t.TempDir(), "frames")
	film, _, _ := v.Film()
	film.From = step(t, v)
	film.To = film.From + 1
	if err := v.Stage().WriteFrames(t.Context(), dir, film); err != nil {
		t.Fatal(err)
	}
	f, err := os.Open(filepath.Join(dir, "frame-00001.png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	want, _, err := image.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	// The hairline round the stage lies on its outermost pixels.
	for y := 2; y < 718; y++ {
		for x := 2; x < 1278; x++ {
			a := color.RGBAModel.Convert(shownNow.At(x+margin, y+headHeight))
			if b := color.RGBAModel.Convert(want.At(x, y)); a != b {
				t.Fatalf("pixel %d, %d is %v in the window and %v in the frame", x, y, a, b)
			}
		}
	}
}

func TestAloneTheStageFillsTheView(t *testing.T) {
	v, settle := shown(t, "groyne-runner", 1280, 720)
	v.SetAlone(true)
	settle()
	if v.size != image.Pt(1280, 720) || v.head.Visible() || v.foot.Visible() {
		t.Errorf("alone it is %v, with head %v and foot %v", v.size, v.head.Visible(), v.foot.Visible())
	}
}

func TestTheFootLeadsToo(t *testing.T) {
	v, _ := shown(t, "groyne-runner", 900, 640)
	key(v, fyne.KeyHome)
	saved := false
	v.Save = func() { saved = true }
	for range 3 { // Back, Next stitch, Save frames
		v.foot.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		v.foot.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	}
	if step(t, v) != 1 || !saved {
		t.Errorf("the buttons led to step %d, frames asked for: %v", step(t, v), saved)
	}
}

func TestFramesAreWrittenInTheBackground(t *testing.T) {
	v, _ := shown(t, "groyne-runner", 900, 640)
	v.SetBy(steps.Row)
	film, _, _ := v.Film()
	film.To, film.Size = 3, image.Pt(320, 180)
	v.post = func(f func()) { f() }
	var told []int
	film.Progress = func(n, all int) { told = append(told, n, all) }
	done := make(chan error)
	path := filepath.Join(t.TempDir(), "rows.gif")
	v.Write(t.Context(), path, film, func(err error) { done <- err })
	if err := <-done; err != nil {
		t.Fatal(err)
	}
	if want := []int{1, 3, 2, 3, 3, 3}; !slices.Equal(told, want) {
		t.Errorf("told %v, want %v", told, want)
	}
	if _, err := os.Stat(path); err != nil {
		t.Error(err)
	}
}
