package palette

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"strandway/model/colour"
	"strandway/model/stitch"
	"strandway/model/syntax"
	"strandway/model/work"
)

func hex(t testing.TB, s string) color.NRGBA {
	t.Helper()
	c, err := colour.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func harbour(t testing.TB) []color.NRGBA {
	return []color.NRGBA{hex(t, "#2f5d7c"), hex(t, "#efe6d2"), hex(t, "#d8a23a"), hex(t, "#8c3b3b")}
}

func TestTouchingAreStitchesOnAndBesideOneAnother(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	rows := "Foundation (A): Ch 11.\nRow 1 (A): Sc in 2nd ch from hook and in each ch across, turn.\n" +
		"Row 2 (B): Ch 1, sc in each st across, turn.\nRow 3 (C): Ch 1, sc in each st across, turn."
	tree, findings := syntax.Read(rows, syntax.ReadOptions{Library: lib})
	f, faults := work.Work(lib, tree, work.Options{})
	if findings.Faults()+faults.Faults() > 0 {
		t.Fatal(findings, faults)
	}
	if got, want := Touching(f), []Pair{{0, 1}, {1, 2}}; !slices.Equal(got, want) {
		t.Errorf("touching are %v, want %v: A and C never meet", got, want)
	}
}

func TestMerging(t *testing.T) {
	for _, tt := range []struct {
		a, b string
		want []colour.Vision
	}{
		{"#2f5d7c", "#efe6d2", nil},
		{"#22334f", "#25304a", colour.Visions()},
		{"#c0504d", "#4f7f3f", []colour.Vision{colour.Deuteranopia, colour.Greyscale}},
		{"#b08a4f", "#8f9a55", []colour.Vision{colour.Protanopia, colour.Deuteranopia, colour.Greyscale}},
	} {
		if got := Merging(hex(t, tt.a), hex(t, tt.b)); !slices.Equal(got, tt.want) {
			t.Errorf("%s and %s merge in %v, want %v", tt.a, tt.b, got, tt.want)
		}
	}
}

func lightnesses(shades []Shade) []float64 {
	var out []float64
	for _, s := range shades {
		out = append(out, colour.Lightness(s.Colour))
	}
	slices.Sort(out)
	return out
}

func TestEqualStepsOfLightness(t *testing.T) {
	got, err := Suggest(harbour(t), Wish{Rule: EqualSteps, Keep: -1})
	if err != nil {
		t.Fatal(err)
	}
	l := lightnesses(got)
	step := (l[3] - l[0]) / 3
	for i := 1; i < 4; i++ {
		if math.Abs(l[i]-l[i-1]-step) > 1.5 {
			t.Errorf("the lightnesses %.0f have no equal steps", l)
		}
	}
}

func TestSuggestionsKeepWhatIsKeptAndTellYarnsApart(t *testing.T) {
	yarns := harbour(t)
	for _, name := range Rules() {
		rule, err := RuleNamed(name)
		if err != nil {
			t.Fatal(err)
		}
		got, err := Suggest(yarns, Wish{Rule: rule, Keep: 0, Locked: []bool{false, false, true, false}})
		if err != nil {
			t.Fatal(err)
		}
		if got[0].Colour != yarns[0] || got[2].Colour != yarns[2] {
			t.Errorf("%s changes a kept or locked yarn: %v", name, got)
		}
		l := lightnesses(got)
		for i := 1; i < len(l); i++ {
			if l[i]-l[i-1] < 8 {
				t.Errorf("%s: two yarns are only %.1f apart in lightness: %.0f", name, l[i]-l[i-1], l)
			}
		}
		again, _ := Suggest(yarns, Wish{Rule: rule, Keep: 0, Locked: []bool{false, false, true, false}})
		if !slices.Equal(got, again) {
			t.Errorf("%s suggests something else the second time", name)
		}
	}
	if _, err := RuleNamed("random"); err == nil || !strings.Contains(err.Error(), "equal-steps") {
		t.Errorf("an unknown rule: %v", err)
	}
}

func TestHuesOfTheRules(t *testing.T) {
	yarns := harbour(t)
	base, _, _ := hcl(yarns[0])
	turn := func(c color.NRGBA) float64 {
		h, _, _ := hcl(c)
		return math.Abs(math.Mod(h-base+540, 360) - 180)
	}
	got, _ := Suggest(yarns[:2], Wish{Rule: Complementary})
	if d := turn(got[1].Colour); d < 172 {
		t.Errorf("the complement lies %.0f degrees away", d)
	}
	got, _ = Suggest(yarns[:3], Wish{Rule: Analogous})
	for _, s := range got[1:] {
		if d := turn(s.Colour); d > 36 {
			t.Errorf("%s lies %.0f degrees away from its neighbour", colour.Hex(s.Colour), d)
		}
	}
}

func TestTeachingShadesAreNeitherDarkNorGlaring(t *testing.T) {
	got, err := Suggest([]color.NRGBA{hex(t, "#17171a"), hex(t, "#22334f")}, Wish{Rule: Teaching, Keep: -1})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range got {
		if l := colour.Lightness(s.Colour); l < 48 || l > 92 {
			t.Errorf("%s has lightness %.0f", colour.Hex(s.Colour), l)
		}
	}
	if visions := Merging(got[0].Colour, got[1].Colour); len(visions) > 0 {
		t.Errorf("the teaching shades merge in %v", visions)
	}
}

func TestYarnsThatTouchComeFarthestApart(t *testing.T) {
	// A lies between the others, which never meet, and is neither the darkest nor the lightest.
	yarns := []color.NRGBA{hex(t, "#7c8a93"), hex(t, "#2f5d7c"), hex(t, "#efe6d2"), hex(t, "#d8a23a")}
	pairs := []Pair{{0, 1}, {0, 2}, {0, 3}}
	l := func(w Wish) float64 {
		got, err := Suggest(yarns, w)
		if err != nil {
			t.Fatal(err)
		}
		least := 100.
		for _, p := range pairs {
			least = min(least, Compare(got[p.A].Colour, got[p.B].Colour, colour.Full).Lightness)
		}
		return least
	}
	alone, touching := l(Wish{Keep: -1}), l(Wish{Keep: -1, Pairs: pairs})
	if touching < alone-1 || touching < 18 {
		t.Errorf("yarns that touch are %.0f apart, %.0f without looking at what touches", touching, alone)
	}
	steps := Wish{Rule: EqualSteps, Keep: -1, Pairs: []Pair{{1, 3}}}
	if got, _ := Suggest(yarns, steps); Compare(got[1].Colour, got[3].Colour, colour.Full).Lightness < 60 {
		t.Errorf("the only two yarns that touch are not the darkest and the lightest: %v", got)
	}
}

const stash = `
[[yarn]]
name = "Harbour Worsted"
shade = "Slate"
colour = "#43525c"
grams = 150

[[yarn]]
name = "Harbour Worsted"
shade = "Foam"
colour = "233 228 214"

[[yarn]]
name = "Lantern DK"
colour = "#d8a23a"
`

func TestSuggestionsFromAStash(t *testing.T) {
	have, err := ReadStash([]byte(stash), "stash.toml")
	if err != nil {
		t.Fatal(err)
	}
	got, err := Suggest(harbour(t)[:3], Wish{Keep: -1, Stash: have})
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, s := range got {
		names = append(names, s.Name)
	}
	if want := []string{"Harbour Worsted, Slate", "Harbour Worsted, Foam", "Lantern DK"}; !slices.Equal(names, want) {
		t.Errorf("from the stash come %q, want %q", names, want)
	}
	if _, err := Suggest(harbour(t), Wish{Keep: -1, Stash: have}); err == nil || !strings.Contains(err.Error(), "holds only 3") {
		t.Errorf("a stash too small gives %v", err)
	}
}

func TestStashesThatCannotBeRead(t *testing.T) {
	for src, want := range map[string]string{
		"":                                  "lists no yarns",
		"[[yarn]\n":                         "stash.toml:1:",
		"[[yarn]]\nname = \"x\"\n":          "yarn 1: \"\" is not a colour",
		"[[yarn]]\nname = 4\n":              "stash.toml:2:",
		"[[yarn]]\ncolour = \"sea\"\n":      "yarn 1: \"sea\" is not a colour",
		"yarn = \"a list of tables, no\"\n": "stash.toml:1:",
	} {
		if _, err := ReadStash([]byte(src), "stash.toml"); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q in it", src, err, want)
		}
	}
}

// ball is a picture of yarn in bands of colours, in light and shade.
func ball(colours ...color.NRGBA) *image.NRGBA {
	r := rand.New(rand.NewPCG(1, 2))
	img := image.NewNRGBA(image.Rect(0, 0, 300, 120))
	ramps := make([][256]color.NRGBA, len(colours))
	for i, c := range colours {
		ramps[i] = colour.Ramp(c)
	}
	for y := range 120 {
		for x := range 300 {
			ramp := &ramps[x*len(colours)/300]
			img.SetNRGBA(x, y, ramp[min(250, 120+60*(y%9)/8+r.IntN(30))])
		}
	}
	return img
}

func TestSequenceOfAPhotographedBall(t *testing.T) {
	want := harbour(t)
	got, err := Sequence(ball(want...), 4)
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != 4 {
		t.Fatalf("%d colours were found", len(got))
	}
	for i, c := range got {
		if d := colour.Difference(c, want[i]); d > 8 {
			t.Errorf("colour %d is %s, want about %s (%.1f apart)", i+1, colour.Hex(c), colour.Hex(want[i]), d)
		}
	}
	again, _ := Sequence(ball(want...), 4)
	if !slices.Equal(got, again) {
		t.Error("the same photograph gives other colours the second time")
	}
}

func TestColourOfASolidBall(t *testing.T) {
	slate := hex(t, "#5b6b73")
	got, err := Colours(ball(slate), 1)
	if err != nil {
		t.Fatal(err)
	}
	if d := colour.Difference(got[0].Colour, slate); d > 6 {
		t.Errorf("the ball is %s, want about %s", colour.Hex(got[0].Colour), colour.Hex(slate))
	}
}

func TestPhotographsThatCannotBeRead(t *testing.T) {
	var whole bytes.Buffer
	if err := png.Encode(&whole, ball(hex(t, "#5b6b73"))); err != nil {
		t.Fatal(err)
	}
	if _, err := Photograph(bytes.NewReader(whole.Bytes())); err != nil {
		t.Errorf("a good picture: %v", err)
	}
	for name, src := range map[string][]byte{
		"no PNG or JPEG": []byte("a ball of blue yarn"),
		"is damaged":     whole.Bytes()[:whole.Len()/2],
	} {
		if _, err := Photograph(bytes.NewReader(src)); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := Colours(image.NewNRGBA(image.Rect(0, 0, 90, 90)), 3); err == nil || !strings.Contains(err.Error(), "shows nothing") {
		t.Errorf("a picture all transparent: %v", err)
	}
}

func BenchmarkColours(b *testing.B) {
	img := ball(harbour(b)...)
	for b.Loop() {
		if _, err := Colours(img, 5); err != nil {
			b.Fatal(err)
		}
	}
}
