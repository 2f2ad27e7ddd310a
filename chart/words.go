package chart

import (
	"fmt"
	"io/fs"
	"strings"
	"sync"

	"github.com/pelletier/go-toml/v2"

	"strandway/assets"
)

// words are what charts say, by the English for it, by language.
var words = sync.OnceValue(func() map[string]map[string]string {
	src, err := fs.ReadFile(assets.Trade(), "charts.toml")
	if err != nil {
		panic(fmt.Sprintf("the words of charts are not embedded: %v", err))
	}
	var table struct {
		Word []map[string]string `toml:"word"`
	}
	if err := toml.Unmarshal(src, &table); err != nil {
		panic(fmt.Sprintf("the embedded words of charts are broken: %v", err))
	}
	by := map[string]map[string]string{}
	for _, w := range table.Word {
		for language, said := range w {
			if by[language] == nil {
				by[language] = map[string]string{}
			}
			by[language][w["en"]] = said
		}
	}
	return by
})

// say is an English word or sentence in the language of the terms, its holes filled.
func (e *engraver) say(english string, with ...any) string {
	said, ok := words()[e.o.Terms][english]
	if !ok {
		said = english
	}
	if len(with) == 0 {
		return said
	}
	return fmt.Sprintf(said, with...)
}

// label is a row's or a repeat's name, "Rows 2–5", word by word in the language of the terms.
func (e *engraver) label(english string) string {
	parts := strings.Split(english, " ")
	for i, word := range parts {
		parts[i] = e.say(word)
	}
	return strings.Join(parts, " ")
}
