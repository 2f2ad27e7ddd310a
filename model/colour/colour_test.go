package colour

import (
	"image/color"
	"math"
	"testing"
)

func hex(t testing.TB, s string) color.NRGBA {
	t.Helper()
	c, err := Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestParse(t *testing.T) {
	for _, s := range []string{"#2f5d7c", "#000000", "#ffffff"} {
		if got := Hex(hex(t, s)); got != s {
			t.Errorf("%s comes back as %s", s, got)
		}
	}
	for _, s := range []string{"", "2f5d7c", "#2f5d7", "#2f5d7g", "#2f5d7c00", "blue"} {
		if _, err := Parse(s); err == nil {
			t.Errorf("%q was taken for a colour", s)
		}
	}
}

func TestContrast(t *testing.T) {
	tests := []struct {
		a, b string
		want float64
	}{
		{"#000000", "#ffffff", 21},
		{"#777777", "#ffffff", 4.48},
		{"#2f5d7c", "#2f5d7c", 1},
	}
	for _, tt := range tests {
		if got := Contrast(hex(t, tt.a), hex(t, tt.b)); math.Abs(got-tt.want) > .01 {
			t.Errorf("contrast of %s and %s is %.2f, want %.2f", tt.a, tt.b, got, tt.want)
		}
	}
}

func TestDifferenceTellsYarnsApart(t *testing.T) {
	navy, ink, cream := hex(t, "#22334f"), hex(t, "#25304a"), hex(t, "#efe6d4")
	if d := Difference(navy, ink); d > 5 {
		t.Errorf("two navies differ by %.1f, want under 5", d)
	}
	if d := Difference(navy, cream); d < 50 {
		t.Errorf("navy and cream differ by %.1f, want over 50", d)
	}
	if a, b := Difference(navy, cream), Difference(cream, navy); math.Abs(a-b) > 1e-9 {
		t.Errorf("difference is not the same both ways: %g and %g", a, b)
	}
}

func TestInkReadsOnPaperAndKeepsItsHue(t *testing.T) {
	for _, s := range []string{"#f7f5f0", "#ffe14d", "#efe6d4", "#9ad8c8", "#f4b8c8"} {
		ink, capped := Ink(hex(t, s))
		if !capped {
			t.Errorf("%s was not darkened", s)
		}
		if l := Lightness(ink); l > 59 {
			t.Errorf("ink of %s has lightness %.1f, want at most 58", s, l)
		}
		h0, c0, _ := of(hex(t, s)).Hcl()
		h1, _, _ := of(ink).Hcl()
		if d := math.Abs(math.Mod(h1-h0+540, 360) - 180); c0 > .1 && d > 6 {
			t.Errorf("ink of %s turns its hue by %.0f degrees", s, d)
		}
	}
	navy := hex(t, "#22334f")
	if ink, capped := Ink(navy); capped || ink != navy {
		t.Errorf("navy ink became %s", Hex(ink))
	}
	if ink, lifted := InkOnDark(navy); !lifted || Lightness(ink) < 61 {
		t.Errorf("navy on a dark screen has lightness %.1f", Lightness(ink))
	}
}

func TestRampRisesAndHoldsTheYarn(t *testing.T) {
	for _, s := range []string{"#17171a", "#f7f5f0", "#c2272d", "#2f5d7c", "#d9a441"} {
		yarn := hex(t, s)
		ramp := Ramp(yarn)
		for i := 1; i < 256; i++ {
			if Lightness(ramp[i]) < Lightness(ramp[i-1])-.6 {
				t.Errorf("%s: light %d is darker than %d", s, i, i-1)
				break
			}
		}
		if d := Lightness(ramp[230]) - Lightness(ramp[60]); d < 12 {
			t.Errorf("%s: light and shade differ by %.1f only: its stitches do not show", s, d)
		}
	}
	if d := Difference(Ramp(hex(t, "#2f5d7c"))[Lit], hex(t, "#2f5d7c")); d > 1.5 {
		t.Errorf("a lit strand of blue differs from the blue by %.1f", d)
	}
}

func TestVision(t *testing.T) {
	red, green := hex(t, "#c0504d"), hex(t, "#5f9050")
	full := Difference(red, green)
	if d := Difference(Deuteranopia.Seen(red), Deuteranopia.Seen(green)); d > full/2 {
		t.Errorf("red and green still differ by %.0f of %.0f without green cones", d, full)
	}
	for _, v := range []Vision{Full, Protanopia, Deuteranopia, Tritanopia, Greyscale} {
		grey := hex(t, "#808080")
		if d := Difference(v.Seen(grey), grey); d > 1 {
			t.Errorf("%v tints grey by %.1f", v, d)
		}
	}
	blue, teal := hex(t, "#3b6fb5"), hex(t, "#1f8f8a")
	if d := Difference(Tritanopia.Seen(blue), Tritanopia.Seen(teal)); d > Difference(blue, teal)*.6 {
		t.Errorf("blue and teal still differ by %.0f of %.0f without blue cones", d, Difference(blue, teal))
	}
	g := Greyscale.Seen(red)
	if g.R != g.G || g.G != g.B {
		t.Errorf("greyscale gives %s", Hex(g))
	}
}

func BenchmarkRamp(b *testing.B) {
	c := hex(b, "#2f5d7c")
	for b.Loop() {
		Ramp(c)
	}
}
