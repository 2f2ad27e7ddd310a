package chart

import (
	"strings"
	"testing"

	"strandway/chart/display"
)

// Every word is there in every language, with the holes of the English one.
func TestWordsOfChartsAreComplete(t *testing.T) {
	for english := range words()["en"] {
		for _, language := range []string{"de", "es", "fr", "nl"} {
			said := words()[language][english]
			if said == "" {
				t.Errorf("%q has no word in %s", english, language)
			}
			for _, hole := range []string{"%s", "%d"} {
				if strings.Count(said, hole) != strings.Count(english, hole) {
					t.Errorf("%q is %q in %s", english, said, language)
				}
			}
		}
	}
}

func TestKeySpeaksTheTermsLanguage(t *testing.T) {
	for terms, want := range map[string]string{
		"us": "join yarn", "uk": "join yarn", "de": "Faden ansetzen", "es": "unir el hilo", "fr": "joindre le fil", "nl": "draad aanhechten",
	} {
		said := map[string]bool{}
		for _, item := range sampler(t).draw(Options{Terms: terms, Key: true}).Items {
			if text, ok := item.(display.Text); ok {
				said[text.Text] = true
			}
		}
		if !said[want] {
			t.Errorf("%s: the key does not say %q", terms, want)
		}
	}
}

func TestRepeatsAreNamedInTheTermsLanguage(t *testing.T) {
	for terms, want := range map[string]string{"us": "Rows 2–3", "de": "Reihen 2–3", "fr": "Rangs 2–3"} {
		s := newSwatch(t, 3)
		e := newEngraver(s.p, Options{Library: s.lib, Terms: terms})
		if got := e.label("Rows 2–3"); got != want {
			t.Errorf("%s: %q, want %q", terms, got, want)
		}
	}
}
