package theme

import (
	"image/color"
	"math/rand/v2"
	"testing"

	"strandway/model/colour"
)

// Text reads at 4.5:1 on everything it stands on; edges and marks at 3:1.
func TestEveryPairOfTokensReads(t *testing.T) {
	for _, k := range []Tokens{light, dark} {
		grounds := map[string]color.NRGBA{"paper": k.Paper, "desk": k.Desk, "well": k.Well, "wash": k.Wash}
		texts := map[string]color.NRGBA{"ink": k.Ink, "ink2": k.Ink2, "accent": k.Accent, "fault": k.Fault, "caution": k.Caution, "note": k.Note}
		for g, ground := range grounds {
			for x, text := range texts {
				if c := colour.Contrast(text, ground); c < 4.5 {
					t.Errorf("dark=%v: %s on %s is %.1f:1", k.Dark, x, g, c)
				}
			}
		}
		for name, pair := range map[string][2]color.NRGBA{
			"on accent":     {k.OnAccent, k.Accent},
			"fault wash":    {k.Fault, k.FaultWash},
			"fault wash, 2": {k.Ink2, k.FaultWash},
			"caution wash":  {k.Caution, k.CautionWash},
		} {
			if c := colour.Contrast(pair[0], pair[1]); c < 4.5 {
				t.Errorf("dark=%v: %s is %.1f:1", k.Dark, name, c)
			}
		}
		if c := colour.Contrast(k.Edge, k.Paper); c < 3 {
			t.Errorf("dark=%v: edges on paper are %.1f:1", k.Dark, c)
		}
	}
}

func TestEveryYarnCanBeReadOnPaper(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		yarn := color.NRGBA{uint8(r.IntN(256)), uint8(r.IntN(256)), uint8(r.IntN(256)), 255}
		for _, k := range []Tokens{light, dark} {
			if c := colour.Contrast(k.YarnInk(yarn), k.Paper); c < 4.5 {
				t.Errorf("dark=%v: the ink for %v reads at %.2f:1", k.Dark, yarn, c)
			}
			if c := colour.Contrast(k.Casing(yarn), k.Paper); c < 3 {
				t.Errorf("dark=%v: the cord in %v stands out by %.2f:1", k.Dark, yarn, c)
			}
		}
	}
}

func TestAYarnThatReadsKeepsItsColour(t *testing.T) {
	navy := rgb(0x27405c)
	if got := light.YarnInk(navy); got != navy {
		t.Errorf("a dark blue on light paper became %v", got)
	}
}
