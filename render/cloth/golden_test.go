package cloth

import (
	"flag"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "write the golden pictures anew; look at them")

// golden compares a picture with testdata/name.png. Small differences, as
// another processor's arithmetic makes them, are let pass.
func golden(t *testing.T, name string, img *image.RGBA) {
	t.Helper()
	path := filepath.Join("testdata", name+".png")
	if *update {
		f, err := os.Create(path)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		if err := png.Encode(f, img); err != nil {
			t.Fatal(err)
		}
		return
	}
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	decoded, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	want := image.NewRGBA(decoded.Bounds())
	draw.Draw(want, want.Rect, decoded, image.Point{}, draw.Src)
	if want.Rect != img.Rect {
		t.Fatalf("the picture is %v, want %v", img.Rect, want.Rect)
	}
	sum := 0.
	for i, v := range img.Pix {
		d := float64(v) - float64(want.Pix[i])
		sum += d * d
	}
	if rms := math.Sqrt(sum / float64(len(img.Pix))); rms > 2 {
		t.Errorf("the picture differs from %s by %.1f of 255 (root mean square)", path, rms)
	}
}

func TestPictures(t *testing.T) {
	yarns := harbour(t)
	tweed := append([]Yarn(nil), yarns...)
	tweed[0].Look, tweed[0].Colours = Tweed, []color.NRGBA{{R: 217, G: 194, B: 122, A: 255}}
	tweed[1].Shape = Shape{Plies: 2, Twist: STwist, Fuzz: 2}
	tests := []struct {
		name   string
		swatch swatch
		face   Face
		yarns  []Yarn
		back   Background
	}{
		{"sc", swatch{kind: sc, cols: 6, rows: 6, yarnOf: twoRows}, RS, yarns, Background{}},
		{"sc-wrong-side", swatch{kind: sc, cols: 6, rows: 6, yarnOf: twoRows}, WS, yarns, Background{}},
		{"sc-unturned", swatch{kind: sc, cols: 6, rows: 6, round: true}, RS, yarns, Background{Ground: Linen}},
		{"hdc", swatch{kind: hdc, cols: 6, rows: 4}, RS, yarns, Background{Ground: White}},
		{"dc-tweed", swatch{kind: dc, cols: 6, rows: 4, yarnOf: twoRows}, RS, tweed, Background{Ground: Wood, Light: Warm}},
		{"tr", swatch{kind: tr, cols: 5, rows: 2}, RS, yarns, Background{Ground: Transparent}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c := Make(tt.swatch.plan(), tt.yarns, Options{Face: tt.face})
			golden(t, tt.name, drawn(t, c, 24).Colour(tt.yarns, tt.back))
		})
	}
}
