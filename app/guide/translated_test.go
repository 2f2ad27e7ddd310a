package guide

import (
	"testing"

	"strandway/app/translation"
)

// Each step is said in every language of the window.
func TestStepsAreTranslated(t *testing.T) {
	g, err := Mat()
	if err != nil {
		t.Fatal(err)
	}
	for _, language := range translation.Languages[1:] {
		sentences, err := translation.Sentences(language)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range g.steps {
			if sentences[s.Say] == "" {
				t.Errorf("%s has no word for %q", language, s.Say)
			}
		}
	}
}
