package picture

import (
	"context"
	"image"
	"image/color"
	"image/draw"
	"testing"
	"time"

	"strandway/chart/geom"
)

// swatch is a sight of one colour that is drawn when it is let.
type swatch struct {
	colour color.NRGBA
	let    chan struct{}
	begun  chan struct{}
}

func newSwatch(c color.NRGBA) *swatch {
	return &swatch{c, make(chan struct{}), make(chan struct{}, 9)}
}

func (s *swatch) draw(ctx context.Context, want shot) (*image.RGBA, error) {
	s.begun <- struct{}{}
	select {
	case <-s.let:
	case <-ctx.Done():
		return nil, ctx.Err()
	}
	picture := image.NewRGBA(image.Rectangle{Max: want.size})
	draw.Draw(picture, picture.Rect, image.NewUniform(want.paper), image.Point{}, draw.Src)
	a, z := want.at.Apply(geom.Point{}), want.at.Apply(geom.Point{X: 1, Y: 1})
	draw.Draw(picture, image.Rect(int(a.X), int(z.Y), int(z.X), int(a.Y)), image.NewUniform(s.colour), image.Point{}, draw.Src)
	return picture, nil
}

func (s *swatch) piece() geom.Box              { return geom.Box{Max: geom.Point{X: 1, Y: 1}} }
func (s *swatch) whole() geom.Box              { return s.piece() }
func (s *swatch) hit(geom.Point) (int32, bool) { return 0, false }
func (s *swatch) bounds(int32) geom.Box        { return geom.Empty() }

var (
	paper = color.NRGBA{R: 250, G: 250, B: 240, A: 255}
	slate = color.NRGBA{R: 40, G: 60, B: 90, A: 255}
	cream = color.NRGBA{R: 230, G: 220, B: 190, A: 255}
)

// wall is a screen whose changes can be waited for.
type wall struct {
	screen
	told chan struct{}
}

func newWall() *wall {
	w := &wall{told: make(chan struct{}, 99)}
	w.changed = func() { w.told <- struct{}{} }
	return w
}

func (w *wall) wait(t *testing.T, it <-chan struct{}) {
	t.Helper()
	select {
	case <-it:
	case <-time.After(5 * time.Second):
		t.Fatal("nothing came")
	}
}

// of is a shot of a sight, with so many pixels a stitch and the foot of the piece x pixels from the left.
func of(s sight, pixels, x float64) shot {
	return shot{sight: s, at: geom.Matrix{A: pixels, D: -pixels, E: x, F: 40}, size: image.Pt(80, 50), paper: paper}
}

func at(m image.Image, x, y int) color.NRGBA {
	return color.NRGBAModel.Convert(m.At(x, y)).(color.NRGBA)
}

func TestTheLastPictureIsShownUntilTheNextIsDone(t *testing.T) {
	w, s := newWall(), newSwatch(slate)
	if got := at(w.show(of(s, 10, 20)), 25, 35); got != paper {
		t.Fatalf("before anything is drawn there is %v", got)
	}
	s.let <- struct{}{}
	w.wait(t, w.told)
	if got := at(w.show(of(s, 10, 20)), 25, 35); got != slate {
		t.Fatalf("the picture that was drawn is not shown: %v", got)
	}
	zoomed := w.show(of(s, 30, 10))
	if in, out := at(zoomed, 38, 12), at(zoomed, 42, 12); in != slate || out != paper {
		t.Errorf("while it is drawn larger, the last picture is not shown enlarged: %v, %v", in, out)
	}
	shifted := w.show(of(s, 10, 50))
	if in, out := at(shifted, 55, 35), at(shifted, 25, 35); in != slate || out != paper {
		t.Errorf("while it is drawn elsewhere, the last picture is not shown shifted: %v, %v", in, out)
	}
}

// What is no longer wanted is given up; what is wanted last is drawn.
func TestOnlyWhatIsWantedIsDrawn(t *testing.T) {
	w, first, second := newWall(), newSwatch(slate), newSwatch(cream)
	w.show(of(first, 10, 20))
	w.wait(t, first.begun)
	w.show(of(second, 10, 20)) // another piece: the first is never let
	w.wait(t, second.begun)
	second.let <- struct{}{}
	w.wait(t, w.told)
	if got := at(w.show(of(second, 10, 20)), 25, 35); got != cream {
		t.Errorf("it shows %v", got)
	}
}

// A shift lets what is being drawn be done, so that pictures keep coming while a pane is dragged.
func TestAShiftDoesNotGiveUpAPicture(t *testing.T) {
	w, s := newWall(), newSwatch(slate)
	w.show(of(s, 10, 20))
	w.wait(t, s.begun)
	w.show(of(s, 10, 30))
	s.let <- struct{}{}
	w.wait(t, w.told)
	if got := at(w.show(of(s, 10, 30)), 35, 35); got != slate {
		t.Errorf("the picture of before the shift is not shown: %v", got)
	}
	s.let <- struct{}{}
	w.wait(t, w.told)
}

// Of a piece that is put away nothing is left.
func TestAnotherDocumentBeginsOnEmptyPaper(t *testing.T) {
	w, s := newWall(), newSwatch(slate)
	w.show(of(s, 10, 20))
	w.wait(t, s.begun)
	s.let <- struct{}{}
	w.wait(t, w.told)
	w.show(of(s, 10, 30))
	w.wait(t, s.begun)
	if got := at(w.show(shot{size: image.Pt(80, 50), paper: paper}), 25, 35); got != paper {
		t.Fatalf("empty paper is %v", got)
	}
	s.let <- struct{}{}
	w.wait(t, w.told)
	if got := at(w.show(shot{size: image.Pt(80, 50), paper: paper}), 35, 35); got != paper {
		t.Errorf("a picture that came too late is shown: %v", got)
	}
}

func TestALatePictureIsTold(t *testing.T) {
	w, s := newWall(), newSwatch(slate)
	w.show(of(s, 10, 20))
	w.wait(t, w.told)
	if !w.isLate() {
		t.Error("it is not told that the picture takes long")
	}
	s.let <- struct{}{}
	w.wait(t, w.told)
	w.wait(t, w.told)
	if w.isLate() {
		t.Error("it is still told when the picture is done")
	}
}
