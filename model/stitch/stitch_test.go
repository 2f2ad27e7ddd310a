package stitch

import (
	"strings"
	"sync"
	"testing"
)

func standardLibrary(t testing.TB) *Library {
	t.Helper()
	l, err := Standard()
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestReadTakesTheTradesAbbreviations(t *testing.T) {
	l := standardLibrary(t)
	for _, c := range []struct{ terms, word, want string }{
		{"us", "sc", "sc"}, {"uk", "dc", "sc"}, {"uk", "htr", "hdc"}, {"uk", "tr", "dc"}, {"uk", "dtr", "tr"},
		{"uk", "trtr", "dtr"}, {"uk", "ttr", "dtr"}, {"uk", "qtr", "trtr"}, {"uk", "edc", "esc"}, {"uk", "etr", "edc"},
		{"us", "edc", "edc"}, {"us", "ch", "ch"}, {"us", "sl st", "slst"}, {"us", "slst", "slst"}, {"uk", "ss", "slst"},
		{"us", "Sts", ""}, {"uk", "sc", ""}, {"us", "htr", ""},
		{"us", "DC", "dc"}, {"us", "dcs", "dc"}, {"uk", "trs", "dc"},
		{"us", "FPdc", "fpdc"}, {"us", "dcfp", "fpdc"}, {"us", "BPtr", "bptr"}, {"uk", "FPtr", "fpdc"}, {"uk", "RtrF", "fpdc"}, {"uk", "RdtrB", "bptr"},
		{"us", "dc blo", "bldc"}, {"us", "sc-flo", "flsc"}, {"us", "BLsc", "blsc"}, {"us", "scblo", "blsc"}, {"us", "sctbl", "blsc"}, {"uk", "dc blo", "blsc"},
		{"us", "hdc in 3rd lp", "tlhdc"},
		{"us", "dc3tog", "dc3tog"}, {"uk", "htr2tog", "hdc2tog"}, {"us", "fpdc2tog", "fpdc2tog"}, {"us", "dcfp2tog", "fpdc2tog"}, {"us", "bldc2tog", "bldc2tog"},
		{"us", "3-dc cl", "3-dc cl"}, {"us", "3dc-cl", "3-dc cl"}, {"uk", "3-tr cluster", "3-dc cl"}, {"us", "5-dc bobble", "5-dc bobble"}, {"us", "4-hdc puff", "4-hdc puff"}, {"us", "5-dc pc", "5-dc popcorn"},
		{"us", "bo", "bobble"}, {"us", "MB", "bobble"}, {"us", "ps", "puff"}, {"us", "popcorns", "popcorn"}, {"us", "cl", "cl"}, {"us", "p", "picot"}, {"us", "rev sc", "rsc"}, {"uk", "rev dc", "rsc"},
		{"us", "long dc", "long dc"}, {"us", "drop dc", "long dc"}, {"uk", "long tr", "long dc"}, {"us", "ldc", "ldc"},
		{"us", "dec", "sc2tog"}, {"uk", "dec", "sc2tog"},
		{"de", "fM", "sc"}, {"de", "hStb", "hdc"}, {"es", "pa", "dc"}, {"fr", "ms", "sc"}, {"nl", "hv", "slst"}, {"de", "vRStb", "fpdc"},
		{"us", "fpfpdc", ""}, {"us", "dc2tog3tog", ""}, {"us", "dc99999999999tog", ""}, {"us", "dc1tog", ""}, {"us", "2-ch cl", ""}, {"us", "", ""}, {"us", "3-sc2tog cl", ""},
	} {
		k, ok := l.Read(c.word, c.terms)
		if c.want == "" {
			if ok {
				t.Errorf("%s %q: read as %s, want unknown", c.terms, c.word, k.Name)
			}
			continue
		}
		if !ok || k.Name != c.want {
			t.Errorf("%s %q: got %v, want %s", c.terms, c.word, k, c.want)
		}
	}
}

func TestSpelledNamesAreReadWhole(t *testing.T) {
	l := standardLibrary(t)
	for _, c := range []struct {
		terms, words, want string
		used               int
	}{
		{"us", "double crochet in next", "dc", 2},
		{"uk", "double crochet in next", "sc", 2},
		{"us", "half double crochets", "hdc", 3},
		{"uk", "half treble in", "hdc", 2},
		{"us", "treble crochet", "tr", 2},
		{"uk", "trebles", "dc", 1},
		{"us", "front post double crochet two together over", "fpdc2tog", 6},
		{"us", "double crochet 3 together", "dc3tog", 4},
		{"us", "single crochet in back loop only", "blsc", 6},
		{"us", "slip stitch to first", "slst", 2},
		{"us", "sl st in", "slst", 2},
		{"us", "back loop single crochet", "blsc", 4},
		{"uk", "raised treble front", "fpdc", 3},
		{"us", "crab stitches", "rsc", 2},
		{"us", "in next stitch", "", 0},
		{"us", "double", "", 0},
	} {
		k, used := l.Spelled(strings.Fields(c.words), c.terms)
		name := ""
		if k != nil {
			name = k.Name
		}
		if name != c.want || used != c.used {
			t.Errorf("%s %q: got %q of %d words, want %q of %d", c.terms, c.words, name, used, c.want, c.used)
		}
	}
}

func TestCompoundsFollowTheirParts(t *testing.T) {
	l := standardLibrary(t)
	for _, c := range []struct {
		name        string
		composition string
		legs, bases int
		same        bool
		height      float64
	}{
		{"dc3tog", "[yo1; ins(top); up; off2] x3; off4", 3, 3, false, 1.75},
		{"sc2tog", "[ins(top); up] x2; off3", 2, 2, false, 1},
		{"hdc2tog", "[yo1; ins(top); up] x2; off5", 2, 2, false, 1.4},
		{"tr2tog", "[yo2; ins(top); up; [off2] x2] x2; off3", 2, 2, false, 2.5},
		{"fpdc", "yo1; ins(front post); up; off2; off2", 1, 1, false, 1.4},
		{"bldc2tog", "[yo1; ins(back loop); up; off2] x2; off3", 2, 2, false, 1.68},
		{"3-dc cl", "[yo1; ins(same); up; off2] x3; off4", 3, 1, true, 1.75},
		{"5-dc bobble", "[yo1; ins(same); up; off2] x5; off6; ch1", 5, 1, true, 1.75},
		{"bobble", "[yo1; ins(same); up; off2] x5; off6; ch1", 5, 1, true, 1.75},
		{"puff", "[yo1; ins(same); up] x3; off7", 3, 1, true, 1.498},
		{"5-dc popcorn", "[st(dc)] x5; drop; ins(first of them); catch; off1", 5, 1, true, 1.75},
	} {
		k, ok := l.Kind(c.name)
		if !ok {
			t.Errorf("%s: not built", c.name)
			continue
		}
		if k.Composition != c.composition || k.Legs != c.legs || k.Bases != c.bases || k.SamePlace != c.same || k.Height-c.height > 1e-9 || c.height-k.Height > 1e-9 {
			t.Errorf("%s: got %q, %d legs, %d bases, same place %v, height %g", c.name, k.Composition, k.Legs, k.Bases, k.SamePlace, k.Height)
		}
	}
	if k, _ := l.Kind("fpdc2tog"); k.Plain.Name != "dc" || k.Post != FrontPost {
		t.Errorf("fpdc2tog: built on %s with post %d, want dc round the front", k.Plain.Name, k.Post)
	}
}

func TestEveryCompositionClosesWithOneLoop(t *testing.T) {
	l := standardLibrary(t)
	for _, k := range l.Kinds() {
		acts, err := parseComposition(k.Composition)
		if err != nil {
			t.Errorf("%s: %v", k.Name, err)
			continue
		}
		if m := analyse(acts); m.left != 1 {
			t.Errorf("%s: %q leaves %d loops on the hook", k.Name, k.Composition, m.left)
		}
	}
}

// Every kind is known in US and UK terms, and its printed word reads back as itself.
func TestWordsReadBackAsTheSameKind(t *testing.T) {
	l := standardLibrary(t)
	kinds := l.Kinds()
	if len(kinds) < 100 {
		t.Errorf("%d kinds, want at least 100", len(kinds))
	}
	for _, k := range kinds {
		for _, terms := range []string{"us", "uk"} {
			word, ok := l.Word(k, terms)
			if !ok || k.Terms[terms].Name == "" {
				t.Errorf("%s: no sure %s name", k.Name, terms)
				continue
			}
			for _, w := range []string{word, l.Name(k, terms)} {
				got, ok := l.Read(w, terms)
				if !ok {
					if n, used := l.Spelled(strings.Fields(strings.ToLower(w)), terms); used == len(strings.Fields(w)) {
						got = n
					}
				}
				if got != k && !(strings.HasPrefix(k.Name, "spike") || k.Lump != NoLump) {
					t.Errorf("%s: %s %q reads back as %v", k.Name, terms, w, got)
				}
			}
		}
		for terms := range k.Terms {
			word, ok := l.Word(k, terms)
			if got, read := l.Read(word, terms); ok && (!read || got != k) {
				t.Errorf("%s: %s %q reads back as %v", k.Name, terms, word, got)
			}
		}
	}
}

func TestUKWordsOfUSStitches(t *testing.T) {
	l := standardLibrary(t)
	for name, want := range map[string]string{"sc": "dc", "hdc": "htr", "dc": "tr", "tr": "dtr", "dtr": "trtr", "slst": "ss",
		"fpdc": "fptr", "bldc2tog": "bltr2tog", "3-dc cl": "3-tr cl", "puff": "puff", "tlhdc": "htr in 3rd lp"} {
		k, _ := l.Kind(name)
		if got, ok := l.Word(k, "uk"); got != want || !ok {
			t.Errorf("%s in UK terms: got %q (%v), want %q", name, got, ok, want)
		}
	}
}

func TestWordIsNotSureWhereTheTradeIsNot(t *testing.T) {
	l := standardLibrary(t)
	k, _ := l.Kind("star")
	if w, ok := l.Word(k, "de"); ok {
		t.Errorf("star stitch in German: %q is given as sure", w)
	}
	k, _ = l.Kind("inv dec")
	if w, ok := l.Word(k, "es"); ok || w != "inv dec" {
		t.Errorf("a word without Spanish: got %q, %v; want the US one, not sure", w, ok)
	}
}

func TestNearestWord(t *testing.T) {
	l := standardLibrary(t)
	for _, c := range []struct{ terms, word, want string }{
		{"us", "dcc", "dc"}, {"us", "hcd", "hdc"}, {"us", "sc2tg", "sc2tog"}, {"us", "fpcd", "fpdc"}, {"us", "popcron", "popcorn"},
		{"uk", "htrr", "htr"}, {"us", "zzzzzz", ""}, {"us", "x", ""},
	} {
		if got := l.Nearest(c.word, c.terms); got != c.want {
			t.Errorf("%s %q: nearest is %q, want %q", c.terms, c.word, got, c.want)
		}
	}
}

func TestUnitsAreWrittenInTheTermsAsked(t *testing.T) {
	l := standardLibrary(t)
	for _, c := range []struct{ terms, unit, want string }{
		{"us", "shell", "5 dc"}, {"uk", "shell", "5 tr"}, {"us", "v-st", "dc, ch 1, dc"}, {"uk", "v-st", "tr, ch 1, tr"},
	} {
		if got := l.Units(c.terms)[c.unit]; got != c.want {
			t.Errorf("%s %s: got %q, want %q", c.terms, c.unit, got, c.want)
		}
	}
}

func TestCompileRecipe(t *testing.T) {
	l := standardLibrary(t)
	k, err := l.Compile("tuft", "[yo1; ins(same); up; off2] x4; off5")
	if err != nil {
		t.Fatal(err)
	}
	if k.Legs != 4 || k.Plain.Name != "dc" || k.Lump != Cluster || !k.SamePlace || k.Bases != 1 {
		t.Errorf("tuft: %+v", k)
	}
	for _, bad := range []string{"yo1; ins(top); up; off2", "yo1; off2", "[yo1; up", "[ins(top); up] x900000000; off2", ""} {
		if k, err := l.Compile("bad", bad); err == nil {
			t.Errorf("%q: compiled to %+v, want an error", bad, k)
		}
	}
}

func TestOneKindANameForAllGoroutines(t *testing.T) {
	l := standardLibrary(t)
	got := make([]*Kind, 16)
	var wg sync.WaitGroup
	for i := range got {
		wg.Go(func() { got[i], _ = l.Kind("bltr7tog") })
	}
	wg.Wait()
	for _, k := range got {
		if k == nil || k != got[0] {
			t.Fatal("several kinds of one name")
		}
	}
}

func FuzzRead(f *testing.F) {
	l := standardLibrary(f)
	for _, s := range []string{"fpdc2tog", "3-dc cl", "dc-blo", "RtrF", "9999-dc bobble"} {
		f.Add(s)
	}
	f.Add("[[yo1; up] x3; off2] x2")
	f.Fuzz(func(t *testing.T, word string) {
		for _, terms := range terms {
			if k, ok := l.Read(word, terms); ok {
				if again, ok := l.Kind(k.Name); !ok || again != k {
					t.Errorf("%q reads as %q, which is not its name", word, k.Name)
				}
			}
			l.Nearest(word, terms)
		}
		l.Spelled(strings.Fields(word), "us")
		l.Compile("x", word)
	})
}
