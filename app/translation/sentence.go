package translation

import (
	"embed"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2/lang"
)

//go:embed sentences/*.json
var sentenceFiles embed.FS

// Sentences are the sentences with values in one language, by the English ones: "yarn {1} runs behind {2} stitches".
// What is said of a pattern is made in English by packages that know no other language; the values are found in it again
// by the English sentence.
func Sentences(language string) (map[string]string, error) {
	src, err := sentenceFiles.ReadFile("sentences/" + language + ".json")
	if err != nil {
		return nil, err
	}
	sentences := map[string]string{}
	return sentences, json.Unmarshal(src, &sentences)
}

// book is the sentences of one language, made ready to be looked up.
type book struct {
	plain map[string]string
	forms []form // with values, the longest first, so that the one that says most is taken
	said  map[string]string
}

// form is a sentence with values.
type form struct {
	english *regexp.Regexp
	length  int // of what is fixed in it
	other   string
}

var hole = regexp.MustCompile(`\{\d\}`)

func newBook(language string) (*book, error) {
	sentences, err := Sentences(language)
	if err != nil {
		return nil, err
	}
	b := &book{plain: map[string]string{}, said: map[string]string{}}
	for english, other := range sentences {
		if !hole.MatchString(english) {
			b.plain[english] = other
			continue
		}
		fixed := hole.Split(english, -1)
		for i := range fixed {
			fixed[i] = regexp.QuoteMeta(fixed[i])
		}
		b.forms = append(b.forms, form{regexp.MustCompile(`^` + strings.Join(fixed, `(.+?)`) + `$`), len(hole.ReplaceAllString(english, "")), other})
	}
	slices.SortFunc(b.forms, func(a, c form) int {
		if a.length != c.length {
			return c.length - a.length
		}
		return strings.Compare(a.other, c.other)
	})
	return b, nil
}

// depth is how deep values may hold sentences of their own.
const depth = 3

// say gives a sentence in the language of the book; ok is false where the book does not have it.
func (b *book) say(s string, deep int) (said string, ok bool) {
	if said, ok := b.plain[s]; ok {
		return said, true
	}
	for _, f := range b.forms {
		values := f.english.FindStringSubmatch(s)
		if values == nil {
			continue
		}
		return hole.ReplaceAllStringFunc(f.other, func(h string) string {
			value := values[h[1]-'0']
			if deep < depth {
				if said, ok := b.say(value, deep+1); ok {
					return said
				}
			}
			return value
		}), true
	}
	return s, false
}

// capitalised says a sentence that begins with a capital, ends with a full stop, or both, as those that are made of findings do.
func (b *book) capitalised(s string) string {
	if said, known := b.said[s]; known {
		return said
	}
	said, ok := b.say(s, 0)
	if bare := strings.TrimSuffix(s, "."); !ok {
		if said, ok = b.say(bare, 0); !ok {
			r, n := utf8.DecodeRuneInString(bare)
			if said, ok = b.say(string(unicode.ToLower(r))+bare[n:], 0); ok {
				said = upper(said)
			}
		}
		if ok && bare != s {
			said += "."
		}
	}
	if !ok {
		said = s
	}
	const most = 4000 // kept answers
	if len(b.said) > most {
		clear(b.said)
	}
	b.said[s] = said
	return said
}

func upper(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

// present is the book of the window's language, nil for English.
var present = sync.OnceValue(func() *book {
	language := lang.L("en")
	if language == "en" {
		return nil
	}
	b, err := newBook(language)
	if err != nil {
		panic(fmt.Errorf("the sentences in %s: %w", language, err)) // the files are part of the program
	}
	return b
})

// Sentence is a sentence that was made in English, in the language of the window's user; in English where no file has
// it. It is called on the window's goroutine.
func Sentence(s string) string {
	b := present()
	if b == nil {
		return s
	}
	return b.capitalised(s)
}
