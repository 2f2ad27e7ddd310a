package translation

import (
	"maps"
	"regexp"
	"slices"
	"testing"
)

func words(t *testing.T, language string) map[string]string {
	t.Helper()
	w, err := Words(language)
	if err != nil {
		t.Fatalf("%s: %v", language, err)
	}
	return w
}

func TestEveryLanguageSaysTheSameThings(t *testing.T) {
	english := words(t, "en")
	hole := regexp.MustCompile(`{{\.[A-Za-z]+}}`)
	for _, language := range Languages {
		other := words(t, language)
		if a, b := slices.Sorted(maps.Keys(english)), slices.Sorted(maps.Keys(other)); !slices.Equal(a, b) {
			t.Errorf("%s has %d words, English %d", language, len(b), len(a))
		}
		for key, said := range other {
			if said == "" {
				t.Errorf("%s says nothing for %q", language, key)
			}
			if a, b := hole.FindAllString(key, -1), hole.FindAllString(said, -1); !slices.Equal(a, b) {
				t.Errorf("%s: %q leaves out or adds what is to be filled in: %q", language, key, said)
			}
		}
	}
	for key, said := range english {
		if key != said {
			t.Errorf("the English for %q is %q", key, said)
		}
	}
}

func TestTheToolkitTakesThem(t *testing.T) {
	if err := Load(); err != nil {
		t.Error(err)
	}
}
