package page_test

import (
	"strings"
	"testing"

	"strandway/model/corpus"
	"strandway/model/page"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

// FuzzRead checks on any text that reading ends, that the pattern can be saved and read back, that every place told
// lies in the page, and that no word of the page is lost.
func FuzzRead(f *testing.F) {
	for _, file := range corpus.Files() {
		examples, err := corpus.Read(file)
		if err != nil {
			f.Fatal(err)
		}
		for _, e := range examples {
			f.Add(e.Page)
		}
	}
	lib, err := stitch.Standard()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 20_000 {
			return
		}
		text = page.Plain([]byte(text))
		p, report := page.Read(lib, text, page.Options{})
		src := p.Encode()
		if _, err := pattern.Decode(src, "page.strand"); err != nil {
			t.Fatalf("%v\n%s", err, src)
		}
		lines := strings.Count(text, "\n") + 1
		for _, u := range report.Unread {
			if u.Line < 1 || u.Line > lines || u.Column < 1 {
				t.Errorf("%v lies outside the page", u)
			}
		}
		kept := words(p)
		for word := range strings.FieldsSeq(text) {
			if w := letters(word); w != "" && !strings.Contains(kept, w) {
				t.Errorf("%q is lost", word)
			}
		}
	})
}

// words are all letters and digits that a pattern keeps, run together.
func words(p *pattern.Pattern) string {
	var b strings.Builder
	b.WriteString(letters(p.Title + p.Note))
	for _, piece := range p.Pieces {
		b.WriteString(letters(piece.Name + piece.Rows))
	}
	return b.String()
}

func letters(s string) string {
	return strings.Map(func(c rune) rune {
		if c < 0x80 && (c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z') {
			return c
		}
		return -1
	}, s)
}
