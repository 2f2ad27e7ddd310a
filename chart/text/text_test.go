package text

import (
	"math"
	"slices"
	"sync"
	"testing"
)

var all = []Face{Sans, SansBold, Serif, SerifItalic}

func TestWidth(t *testing.T) {
	for _, c := range []struct {
		face Face
		text string
		want float64 // em
	}{
		{Sans, "", 0},
		{Sans, "1", .572}, // figures are all as wide, so that numbers stand in columns
		{Sans, "12", 1.144},
		{Sans, "888", 1.716},
		{SansBold, "12", 1.144},
	} {
		if got := Width(c.face, c.text, 1); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s %q is %.4f em wide, want %.4f", c.face.Family(), c.text, got, c.want)
		}
	}
	if one, ten := Width(Serif, "shell in next ch-2 sp", 1), Width(Serif, "shell in next ch-2 sp", 10); math.Abs(ten-10*one) > 1e-9 {
		t.Errorf("at ten times the size a line is %.4f wide, at one %.4f", ten, one)
	}
}

func TestKerning(t *testing.T) {
	for _, face := range all {
		apart := Width(face, "A", 1) + Width(face, "V", 1)
		if together := Width(face, "AV", 1); together >= apart {
			t.Errorf("%s: AV is %.3f wide, no less than A and V with %.3f", face.Family(), together, apart)
		}
	}
}

// The outline of a line lies within its width, but for what little letters overhang.
func TestOutlineIsAsLongAsMeasured(t *testing.T) {
	for _, face := range all {
		const line = "HHnext 2 scH"
		box, width := Outline(face, line, 10).Bounds(), Width(face, line, 10)
		if box.Min.X < -.5 || box.Min.X > 1.5 || box.Max.X > width+.6 || // italics lean
			box.Max.X < width-1.5 {
			t.Errorf("%s: ink from %.2f to %.2f in a line of %.2f", face.Family(), box.Min.X, box.Max.X, width)
		}
		if box.Min.Y > -7 || box.Max.Y > .2 {
			t.Errorf("%s: ink from %.2f to %.2f, want capitals to stand on 0", face.Family(), box.Min.Y, box.Max.Y)
		}
	}
}

// missing are the runes of s that a face has no glyph for.
func missing(face Face, s string) []rune {
	var out []rune
	glyphs, _ := Set(face, s)
	for _, g := range glyphs {
		if g.Index == 0 {
			out = append(out, g.Rune)
		}
	}
	return out
}

func TestFacesHaveTheGlyphsOfPatterns(t *testing.T) {
	for _, face := range all {
		if m := missing(face, "½ ¼ × – — ″ ñ é ü ł 5 dc · 2–3"); len(m) > 0 {
			t.Errorf("%s lacks %q", face.Family(), m)
		}
	}
	if m := missing(Sans, "長編み dc"); !slices.Equal(m, []rune("長編み")) {
		t.Errorf("missing %q, want the three that the face lacks", m)
	}
}

func TestUnknownFaceIsSans(t *testing.T) {
	if Width(Face(99), "dc", 1) != Width(Sans, "dc", 1) {
		t.Error("an unknown face is not set in sans")
	}
}

func TestFacesAreSharedByPainters(t *testing.T) {
	want := Outline(Serif, "Row 12", 3).Bounds()
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			if got := Outline(Serif, "Row 12", 3).Bounds(); got != want {
				t.Errorf("outline at the same time as others: %v, want %v", got, want)
			}
		})
	}
	wait.Wait()
}
