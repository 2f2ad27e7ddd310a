package translation

import (
	"maps"
	"regexp"
	"slices"
	"testing"
)

func TestEveryLanguageHasTheSameSentences(t *testing.T) {
	first, err := Sentences(Languages[1])
	if err != nil {
		t.Fatal(err)
	}
	holes := func(s string) []string {
		h := hole.FindAllString(s, -1)
		slices.Sort(h)
		return h
	}
	for _, language := range Languages[1:] {
		sentences, err := Sentences(language)
		if err != nil {
			t.Fatal(err)
		}
		if a, b := slices.Sorted(maps.Keys(first)), slices.Sorted(maps.Keys(sentences)); !slices.Equal(a, b) {
			t.Errorf("%s has %d sentences, %s %d", language, len(b), Languages[1], len(a))
		}
		for english, other := range sentences {
			if other == "" || !slices.Equal(holes(english), holes(other)) {
				t.Errorf("%s: %q leaves out or adds values: %q", language, english, other)
			}
		}
	}
}

func TestSentencesFindTheirValues(t *testing.T) {
	german, err := newBook("de")
	if err != nil {
		t.Fatal(err)
	}
	for english, want := range map[string]string{
		`Cannot read "frobble".`:                                                            `"frobble" ist nicht zu lesen.`,
		`Did you mean "dc"?`:                                                                `War "dc" gemeint?`,
		"The row does not come out: 5 stitches over.":                                       "Die Reihe geht nicht auf: 5 Maschen zu viel.",
		"The row does not come out: 1 stitch over.":                                         "Die Reihe geht nicht auf: 1 Masche zu viel.",
		"row 4 follows row 2: what lies between is missing":                                 "Reihe 4 folgt auf Reihe 2: dazwischen fehlt etwas",
		"yarn A waits at the left edge, but this row begins at the right":                   "Garn A wartet am linken Rand, diese Reihe beginnt aber am rechten",
		"a foundation of 14 or 17 chains would come out, not 16":                            "mit 14 or 17 Luftmaschen im Anschlag ginge es auf, nicht mit 16",
		"yarns A and B touch and merge to every eye: lightness 40 and 41":                   "Garne A und B berühren sich und verschwimmen für jedes Auge: Helligkeit 40 und 41",
		"Saved mats.strand":                                                                 "mats.strand gespeichert",
		"Row 12":                                                                            "Reihe 12",
		"something that no file has":                                                        "something that no file has",
		"A piece without a name has 3 rows that were never saved.":                          "Ein Teil ohne Namen hat 3 Reihen, die nie gespeichert wurden.",
		`"dcc" is no stitch in US terms; did you mean "dc"?`:                                `"dcc" ist keine Masche in US-Begriffen; war "dc" gemeint?`,
		"turning chain read the other way about counting as a stitch: so the row comes out": "ob die Wendeluftmaschen als Masche zählen, anders gelesen: so geht die Reihe auf",
	} {
		if got := german.capitalised(english); got != want {
			t.Errorf("%q is said as %q, want %q", english, got, want)
		}
	}
}

// A sentence is found again whatever its values are: filled in, each gives its own form and no other.
func TestEachSentenceIsItsOwn(t *testing.T) {
	for _, language := range Languages[1:] {
		b, err := newBook(language)
		if err != nil {
			t.Fatal(err)
		}
		sentences, err := Sentences(language)
		if err != nil {
			t.Fatal(err)
		}
		value := regexp.MustCompile(`\{(\d)\}`)
		for english, other := range sentences {
			filled, want := value.ReplaceAllString(english, "“$1”"), value.ReplaceAllString(other, "“$1”")
			if got, ok := b.say(filled, depth); !ok || got != want {
				t.Errorf("%s: %q is said as %q, want %q", language, filled, got, want)
			}
		}
	}
}
