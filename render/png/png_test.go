package png

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/adler32"
	"image"
	"image/color"
	"image/draw"
	stdpng "image/png"
	"io"
	"math/rand/v2"
	"runtime"
	"strings"
	"testing"
)

// noise is a picture in which no two pixels are alike, clear in part.
func noise(width, height int) *image.NRGBA {
	random := rand.New(rand.NewPCG(3, 4))
	m := image.NewNRGBA(image.Rect(0, 0, width, height))
	for i := range m.Pix {
		m.Pix[i] = uint8(random.Uint32())
	}
	return m
}

func TestEncodeReadsBack(t *testing.T) {
	for _, size := range []image.Point{{1, 1}, {3, 2}, {17, bandRows}, {5, bandRows + 1}, {40, 3*bandRows + 7}, {2000, 1}} {
		clear := image.NewRGBA(image.Rectangle{Max: size})
		draw.Draw(clear, clear.Rect, noise(size.X, size.Y), image.Point{}, draw.Src)
		opaque := image.NewRGBA(clear.Rect)
		copy(opaque.Pix, clear.Pix)
		for i := 3; i < len(opaque.Pix); i += 4 {
			opaque.Pix[i] = 255
		}
		for name, m := range map[string]*image.RGBA{"opaque": opaque, "clear": clear} {
			var b bytes.Buffer
			if err := Encode(&b, m, Options{}); err != nil {
				t.Fatal(err)
			}
			got, err := stdpng.Decode(&b)
			if err != nil {
				t.Fatalf("%s %v: %v", name, size, err)
			}
			for y := range size.Y {
				for x := range size.X {
					g, w := color.RGBAModel.Convert(got.At(x, y)).(color.RGBA), m.RGBAAt(x, y)
					slack := 0
					if w.A < 255 {
						slack = 1 // alpha taken out and put in again
					}
					if !alike(g, w, slack) {
						t.Fatalf("%s %v: pixel %d,%d is %v, want %v", name, size, x, y, g, w)
					}
				}
			}
		}
	}
}

func alike(a, b color.RGBA, slack int) bool {
	for _, d := range []int{int(a.R) - int(b.R), int(a.G) - int(b.G), int(a.B) - int(b.B)} {
		if d < -slack || d > slack {
			return false
		}
	}
	return a.A == b.A
}

func TestEncodeOfAPartAndOfOtherModels(t *testing.T) {
	grey := image.NewGray(image.Rect(-3, 5, 20, 30))
	for i := range grey.Pix {
		grey.Pix[i] = uint8(i)
	}
	part := grey.SubImage(image.Rect(2, 8, 9, 21))
	var b bytes.Buffer
	if err := Encode(&b, part, Options{}); err != nil {
		t.Fatal(err)
	}
	got, err := stdpng.Decode(&b)
	if err != nil {
		t.Fatal(err)
	}
	if got.Bounds().Size() != image.Pt(7, 13) {
		t.Fatalf("size %v, want 7 x 13", got.Bounds().Size())
	}
	if g, w := color.GrayModel.Convert(got.At(4, 6)), grey.GrayAt(6, 14); g != w {
		t.Errorf("a pixel is %v, want %v", g, w)
	}
}

func TestForms(t *testing.T) {
	half := color.NRGBA{R: 200, G: 100, B: 50, A: 128}
	paint := func(band *image.RGBA) { draw.Draw(band, band.Rect, image.NewUniform(half), image.Point{}, draw.Src) }
	for form, want := range map[Form]color.NRGBA{
		RGBA:      {200, 100, 50, 128},
		GreyAlpha: {124, 124, 124, 128}, // .299 x 200 + .587 x 100 + .114 x 50
	} {
		var b bytes.Buffer
		if err := Stream(&b, image.Pt(9, 200), form, Options{}, paint); err != nil {
			t.Fatal(err)
		}
		m, err := stdpng.Decode(&b)
		if err != nil {
			t.Fatal(err)
		}
		if got := color.NRGBAModel.Convert(m.At(8, 199)).(color.NRGBA); !alike(color.RGBA(got), color.RGBA(want), 1) {
			t.Errorf("form %d: %v, want %v", form, got, want)
		}
	}
	var b bytes.Buffer
	if err := Stream(&b, image.Pt(2, 2), Grey, Options{}, func(m *image.RGBA) { draw.Draw(m, m.Rect, image.White, image.Point{}, draw.Src) }); err != nil {
		t.Fatal(err)
	}
	if m, err := stdpng.Decode(&b); err != nil || m.ColorModel() != color.GrayModel || m.At(1, 1) != (color.Gray{Y: 255}) {
		t.Errorf("white paper in grey is %v, %v", m, err)
	}
}

func TestSameBytesOnAnyMachine(t *testing.T) {
	m := noise(300, 1000)
	encode := func(processors int) []byte {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(processors))
		var b bytes.Buffer
		if err := Encode(&b, m, Options{DPI: 300, Text: map[string]string{"Title": "a", "Author": "b"}}); err != nil {
			t.Fatal(err)
		}
		return b.Bytes()
	}
	one := encode(1)
	for _, n := range []int{1, 2, 5} {
		if !bytes.Equal(one, encode(n)) {
			t.Errorf("%d processors write other bytes than one", n)
		}
	}
}

func TestChunks(t *testing.T) {
	var b bytes.Buffer
	text := map[string]string{"Title": "Tide mat", "Author": "Señora Ñ", "Comment": ""}
	if err := Encode(&b, noise(2, 2), Options{DPI: 300, Text: text}); err != nil {
		t.Fatal(err)
	}
	chunks := map[string]string{}
	var order []string
	for rest := b.Bytes()[8:]; len(rest) > 0; {
		n := binary.BigEndian.Uint32(rest)
		name := string(rest[4:8])
		order = append(order, name)
		chunks[name] += string(rest[8 : 8+n])
		rest = rest[12+n:]
	}
	if got, want := strings.Join(order, " "), "IHDR sRGB gAMA pHYs iTXt tEXt IDAT IEND"; got != want {
		t.Errorf("chunks %s, want %s", got, want)
	}
	if got, want := chunks["pHYs"], "\x00\x00\x2e\x23\x00\x00\x2e\x23\x01"; got != want { // 11811 pixels per metre
		t.Errorf("pHYs % x, want % x", got, want)
	}
	if got, want := chunks["tEXt"], "Title\x00Tide mat"; got != want {
		t.Errorf("tEXt %q, want %q", got, want)
	}
	if got, want := chunks["iTXt"], "Author\x00\x00\x00\x00\x00Señora Ñ"; got != want {
		t.Errorf("iTXt %q, want %q", got, want)
	}
}

func TestJoinSums(t *testing.T) {
	data := noise(1000, 100).Pix
	for _, cut := range []int{0, 1, 5552, 65521, 65522, len(data) - 1, len(data)} {
		got := joinSums(adler32.Checksum(data[:cut]), adler32.Checksum(data[cut:]), len(data)-cut)
		if want := adler32.Checksum(data); got != want {
			t.Errorf("cut at %d: %08x, want %08x", cut, got, want)
		}
	}
}

// full is a disk with no more room than its number of bytes.
type full int

var errFull = errors.New("no space left")

func (f *full) Write(b []byte) (int, error) {
	if *f -= full(len(b)); *f < 0 {
		return 0, errFull
	}
	return len(b), nil
}

func TestFullDisk(t *testing.T) {
	for _, room := range []full{0, 100, 200_000} {
		if err := Encode(&room, noise(400, 900), Options{}); !errors.Is(err, errFull) {
			t.Errorf("error %v, want that the disk is full", err)
		}
	}
}

func TestNoPixels(t *testing.T) {
	err := Encode(io.Discard, image.NewRGBA(image.Rect(0, 0, 0, 7)), Options{})
	if err == nil || !strings.Contains(err.Error(), "0 by 7 pixels") {
		t.Errorf("error %v, want one that names the size", err)
	}
}

func BenchmarkEncode(b *testing.B) {
	m := image.NewRGBA(image.Rect(0, 0, 2000, 2000))
	draw.Draw(m, m.Rect, image.White, image.Point{}, draw.Src)
	for b.Loop() {
		if err := Encode(io.Discard, m, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
