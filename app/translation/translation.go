// Package translation holds what the window says in other languages. English
// words are the keys, so that the code reads as the window does; what a file
// lacks is said in English. Names of stitches come from the stitch library.
package translation

import (
	"embed"
	"encoding/json"
	"sync"

	"fyne.io/fyne/v2/lang"
)

//go:embed words/*.json
var files embed.FS

// Languages are the languages there are, English first.
var Languages = []string{"en", "de", "es", "fr"}

// Load makes the translations known to the toolkit, which chooses by the system's languages.
func Load() error { return lang.AddTranslationsFS(files, "words") }

// Words are all words in one language, by the English ones.
func Words(language string) (map[string]string, error) {
	src, err := files.ReadFile("words/" + language + ".json")
	if err != nil {
		return nil, err
	}
	words := map[string]string{}
	return words, json.Unmarshal(src, &words)
}

// known are the words that the files have; the toolkit complains of others.
var known = sync.OnceValue(func() map[string]string {
	words, err := Words(Languages[0])
	if err != nil {
		panic(err) // the files are part of the program
	}
	return words
})

// Say is something the window says in the language of its user, in English where no file has it.
func Say(words string) string {
	if _, ok := known()[words]; !ok {
		return words
	}
	return lang.L(words)
}

// Fill is a sentence in the language of the window's user with something in the place of {{.hole}}.
func Fill(sentence, hole string, with any) string {
	return lang.L(sentence, map[string]any{hole: with})
}
