package rendertest

import (
	"image"
	"image/color"
	"math"
	"testing"
)

func TestDifference(t *testing.T) {
	white, black := image.NewGray(image.Rect(0, 0, 4, 4)), image.NewGray(image.Rect(10, 10, 14, 14))
	for i := range white.Pix {
		white.Pix[i] = 255
	}
	if d := Difference(white, white); d != 0 {
		t.Errorf("a picture differs from itself by %v", d)
	}
	if d := Difference(white, black); math.Abs(d-1) > 1e-9 {
		t.Errorf("black and white differ by %v, want 1", d)
	}
	if d := Difference(white, image.NewNRGBA(white.Rect)); d != 0 {
		t.Errorf("a clear picture differs from white paper by %v", d)
	}
	black.SetGray(10, 10, color.Gray{Y: 255})
	if d := Difference(white, black); math.Abs(d-math.Sqrt(15./16)) > 1e-9 {
		t.Errorf("15 of 16 pixels differ by %v, want the root of 15/16", d)
	}
}
