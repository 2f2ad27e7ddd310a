package stage

import (
	"context"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/gif"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"

	"strandway/model/colour"
	"strandway/render"
	"strandway/render/png"
)

// Film says which steps are exported, and how.
type Film struct {
	From, To int         // steps [From, To)
	Size     image.Point // pixels
	Seconds  float64     // each step is shown, in a GIF
	Progress func(done, all int)
}

// Limits of an export.
const (
	MostPNGs    = 20_000
	gifPixels   = 200_000_000 // all frames of a GIF are held in memory
	shortest    = 0.02        // seconds; viewers slow down what is faster
	longest     = 600
	least16by9  = 160
	mostPixels  = 3840
	lastShown   = 2 // times as long as the others
	transparent = 255
)

// MostFrames is how many frames a GIF of a size may have.
func MostFrames(size image.Point) int { return max(1, gifPixels/max(1, size.X*size.Y)) }

// check refuses what cannot be exported, in one sentence.
func (f Film) check(most int, form string) error {
	n := f.To - f.From
	switch {
	case n <= 0:
		return errors.New("there is no step to show")
	case f.Size.X < least16by9 || f.Size.Y < least16by9*9/16 || f.Size.X > mostPixels || f.Size.Y > mostPixels:
		return fmt.Errorf("a frame of %d by %d pixels cannot be drawn; from %d by %d to %d by %d will do", f.Size.X, f.Size.Y, least16by9, least16by9*9/16, mostPixels, mostPixels)
	case n > most:
		return fmt.Errorf("these are %d frames, and %s of %d by %d pixels takes %d at most; choose fewer rows, or whole rows as steps", n, form, f.Size.X, f.Size.Y, most)
	}
	return nil
}

func (f Film) tell(done int) {
	if f.Progress != nil {
		f.Progress(done, f.To-f.From)
	}
}

// WriteFrames writes one PNG a step into a new folder. The folder takes its name only
// when all frames are in it.
func (s *Stage) WriteFrames(ctx context.Context, dir string, f Film) error {
	if err := f.check(MostPNGs, "a folder of frames"); err != nil {
		return err
	}
	dir = filepath.Clean(dir)
	if held, err := os.ReadDir(dir); err == nil && len(held) > 0 {
		return fmt.Errorf("cannot write frames to %s: the folder holds files already; choose a new one", dir)
	} else if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("cannot write frames to %s: there is a file of that name; choose another", dir)
	}
	part, err := os.MkdirTemp(filepath.Dir(dir), "."+filepath.Base(dir)+".*")
	if err != nil {
		return fmt.Errorf("cannot write frames to %s: the folder above it does not exist or does not allow it", dir)
	}
	defer os.RemoveAll(part)
	for i := f.From; i < f.To; i++ {
		img, err := s.Frame(ctx, i, f.Size)
		if err != nil {
			return err
		}
		path := filepath.Join(part, fmt.Sprintf("frame-%05d.png", i-f.From+1))
		err = render.WriteFile(path, func(w io.Writer) error {
			return png.Encode(w, img, png.Options{Text: map[string]string{"Title": s.o.Title}})
		})
		if err != nil {
			return err
		}
		f.tell(i - f.From + 1)
	}
	if err := os.Chmod(part, 0o755); err != nil {
		return err
	}
	if err := os.Remove(dir); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return os.Rename(part, dir)
}

// WriteGIF writes the steps as one animated GIF, whole or not at all.
func (s *Stage) WriteGIF(ctx context.Context, path string, f Film) error {
	if err := f.check(MostFrames(f.Size), "a GIF"); err != nil {
		return err
	}
	if !(f.Seconds >= shortest && f.Seconds <= longest) {
		return fmt.Errorf("a step can be shown for %g to %d seconds, not %g", shortest, longest, f.Seconds)
	}
	film, err := s.animate(ctx, f)
	if err != nil {
		return err
	}
	return render.WriteFile(path, func(w io.Writer) error { return gif.EncodeAll(w, film) })
}

// animate draws the frames. Of each but the first only what has changed is kept.
func (s *Stage) animate(ctx context.Context, f Film) (*gif.GIF, error) {
	set := newPaletted(s.palette())
	film := &gif.GIF{Config: image.Config{ColorModel: set.palette, Width: f.Size.X, Height: f.Size.Y}}
	var before *image.Paletted
	for i := f.From; i < f.To; i++ {
		img, err := s.Frame(ctx, i, f.Size)
		if err != nil {
			return nil, err
		}
		now := set.convert(img)
		film.Image = append(film.Image, changed(before, now))
		film.Delay = append(film.Delay, int(math.Round(f.Seconds*100)))
		film.Disposal = append(film.Disposal, gif.DisposalNone)
		before = now
		f.tell(i - f.From + 1)
	}
	film.Delay[len(film.Delay)-1] *= lastShown
	return film, nil
}

// changed is the part of a picture that differs from the one before, clear where it does not.
func changed(before, now *image.Paletted) *image.Paletted {
	if before == nil {
		return now
	}
	var box image.Rectangle
	w := now.Rect.Dx()
	for y := range now.Rect.Dy() {
		a, b := before.Pix[y*before.Stride:][:w], now.Pix[y*now.Stride:][:w]
		for x := range b {
			if a[x] != b[x] {
				box = box.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	if box.Empty() {
		box = image.Rect(0, 0, 1, 1)
	}
	out := image.NewPaletted(box, now.Palette)
	for y := box.Min.Y; y < box.Max.Y; y++ {
		for x := box.Min.X; x < box.Max.X; x++ {
			c := now.Pix[y*now.Stride+x]
			if c == before.Pix[y*before.Stride+x] {
				c = transparent
			}
			out.Pix[(y-box.Min.Y)*out.Stride+x-box.Min.X] = c
		}
	}
	return out
}

// palette is made from what a stage is drawn with: its own colours, letters softened
// against their ground, and the shades of each yarn. The last entry is clear.
func (s *Stage) palette() color.Palette {
	var p color.Palette
	add := func(c color.NRGBA) {
		for _, have := range p {
			if have == c {
				return
			}
		}
		if len(p) < transparent {
			p = append(p, c)
		}
	}
	between := func(a, b color.NRGBA, n int) {
		for i := range n + 1 {
			add(colour.Mix(a, b, float64(i)/float64(n)))
		}
	}
	between(ink, paper, 8)
	between(ink2, paper, 8)
	between(accent, paper, 8)
	between(ink, wash, 5)
	between(accent, wash, 4)
	between(colour.Mix(ink, paper, .4), paper, 6) // shadows of the cloth
	for _, c := range []color.NRGBA{line, edge, {255, 255, 255, 255}} {
		add(c)
	}
	var yarns []color.NRGBA
	for _, y := range s.o.Yarns {
		yarns = append(append(yarns, y.Colour), y.Colours...)
	}
	for _, c := range yarns {
		lines, _ := colour.Ink(c)
		between(lines, paper, 5)
	}
	each := (transparent - len(p)) / max(1, len(yarns))
	for _, c := range yarns {
		ramp := colour.Ramp(c)
		for i := range each {
			add(ramp[i*255/max(1, each-1)])
		}
	}
	for len(p) < transparent {
		p = append(p, paper)
	}
	return append(p, color.NRGBA{})
}

// paletted turns pictures into those of one palette, each colour into the nearest.
type paletted struct {
	palette color.Palette
	nearest map[[3]uint8]uint8
}

func newPaletted(p color.Palette) *paletted {
	return &paletted{palette: p, nearest: map[[3]uint8]uint8{}}
}

func (t *paletted) convert(img *image.RGBA) *image.Paletted {
	out := image.NewPaletted(img.Rect, t.palette)
	var last [3]uint8
	index := t.index(last)
	for i := range out.Pix {
		c := [3]uint8(img.Pix[4*i : 4*i+3])
		if c != last {
			last, index = c, t.index(c)
		}
		out.Pix[i] = index
	}
	return out
}

func (t *paletted) index(c [3]uint8) uint8 {
	if i, ok := t.nearest[c]; ok {
		return i
	}
	best, least := 0, math.MaxInt
	for i, p := range t.palette[:transparent] {
		q := p.(color.NRGBA)
		r, g, b := int(c[0])-int(q.R), int(c[1])-int(q.G), int(c[2])-int(q.B)
		if d := 3*r*r + 6*g*g + b*b; d < least { // the eye's own weights, roughly
			best, least = i, d
		}
	}
	t.nearest[c] = uint8(best)
	return uint8(best)
}
