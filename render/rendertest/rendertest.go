// Package rendertest compares pictures and texts in tests with what they should be.
package rendertest

import (
	"bytes"
	"flag"
	"image"
	"image/draw"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"
)

// Difference is how far two pictures of one size lie apart on white paper: the root mean
// square over all pixels, 0 for the same picture, 1 for black instead of white.
func Difference(a, b image.Image) float64 {
	p, q := onWhite(a), onWhite(b)
	sum := 0.0
	for i := range p.Pix {
		d := float64(p.Pix[i]) - float64(q.Pix[i])
		sum += d * d
	}
	return math.Sqrt(sum/float64(len(p.Pix))*4/3) / 255 // every fourth value is alpha, the same in both
}

// Compare fails the test if two pictures differ in size, or by more than
// tolerance. It then puts both, and where they differ, into testdata/failed.
func Compare(t testing.TB, name string, got, want image.Image, tolerance float64) {
	t.Helper()
	if g, w := got.Bounds().Size(), want.Bounds().Size(); g != w {
		t.Errorf("%s: the picture has %d x %d pixels, want %d x %d", name, g.X, g.Y, w.X, w.Y)
		return
	}
	d := Difference(got, want)
	if d <= tolerance {
		return
	}
	dir := filepath.Join("testdata", "failed")
	for suffix, m := range map[string]image.Image{"got": got, "want": want, "difference": contrast(got, want)} {
		if err := save(filepath.Join(dir, name+"-"+suffix+".png"), m); err != nil {
			t.Error(err)
		}
	}
	t.Errorf("%s: the picture differs by %.4f, allowed is %.4f; see %s", name, d, tolerance, dir)
}

// Golden fails the test if got is not what testdata/name holds. Run with
// -update, where the test has that flag, it writes the file instead.
func Golden(t testing.TB, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if update := flag.Lookup("update"); update != nil && update.Value.String() == "true" {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v; run with -update to write it", err)
	}
	if bytes.Equal(got, want) {
		return
	}
	gotLines, wantLines := bytes.Split(got, []byte("\n")), bytes.Split(want, []byte("\n"))
	for i := range max(len(gotLines), len(wantLines)) {
		var g, w []byte
		if i < len(gotLines) {
			g = gotLines[i]
		}
		if i < len(wantLines) {
			w = wantLines[i]
		}
		if !bytes.Equal(g, w) {
			t.Errorf("%s:%d:\n got %s\nwant %s", path, i+1, g, w)
			return
		}
	}
}

// Load reads a PNG.
func Load(t testing.TB, path string) image.Image {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	m, err := png.Decode(f)
	if err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	return m
}

func save(path string, m image.Image) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	defer f.Close()
	return png.Encode(f, m)
}

func onWhite(m image.Image) *image.RGBA {
	sheet := image.NewRGBA(image.Rectangle{Max: m.Bounds().Size()})
	draw.Draw(sheet, sheet.Rect, image.White, image.Point{}, draw.Src)
	draw.Draw(sheet, sheet.Rect, m, m.Bounds().Min, draw.Over)
	return sheet
}

// contrast is white where two pictures agree and the darker the less they do.
func contrast(a, b image.Image) *image.Gray {
	p, q := onWhite(a), onWhite(b)
	m := image.NewGray(p.Rect)
	for i := range m.Pix {
		most := 0
		for k := 4 * i; k < 4*i+3; k++ {
			most = max(most, int(p.Pix[k])-int(q.Pix[k]), int(q.Pix[k])-int(p.Pix[k]))
		}
		m.Pix[i] = uint8(255 - min(255, 4*most))
	}
	return m
}

// Part is a rectangle cut out of a picture.
func Part(m image.Image, x, y, width, height int) image.Image {
	part := image.NewRGBA(image.Rect(0, 0, width, height))
	draw.Draw(part, part.Rect, m, m.Bounds().Min.Add(image.Pt(x, y)), draw.Src)
	return part
}
