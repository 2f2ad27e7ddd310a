package edit

import (
	"regexp"
	"strings"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// InTerms is p with its rows in US or UK terms. Only the words that name stitches are written anew; where that would
// change what the rows say, they are written in the program's own form.
func InTerms(lib *stitch.Library, p *pattern.Pattern, to string) *pattern.Pattern {
	if strings.EqualFold(p.Terms, to) {
		return p
	}
	worked := model.Work(lib, p, 0)
	q := p
	for i := range p.Pieces {
		q = Rows(q, i, wordsIn(lib, worked.Pieces[i].Tree, strings.ToLower(p.Terms), strings.ToLower(to)))
	}
	other := *q
	other.Terms = strings.ToUpper(to)
	again := model.Work(lib, &other, 0)
	for i := range p.Pieces {
		before := worked.Pieces[i].Tree
		if canonical(lib, before) != canonical(lib, again.Pieces[i].Tree) {
			other.Pieces[i].Rows = syntax.Print(before, syntax.PrintOptions{Library: lib, Terms: strings.ToLower(to), Size: -1})
		}
	}
	return &other
}

func canonical(lib *stitch.Library, t *syntax.Tree) string {
	return syntax.Print(t, syntax.PrintOptions{Library: lib, Terms: "us", Size: -1})
}

// stitchWord is a word that can name a stitch: letters with figures and strokes in it, or a slip stitch in two words.
var stitchWord = regexp.MustCompile(`(?i)\bsl sts?\b|[a-z][a-z0-9]*(?:-[a-z0-9]+)*`)

// plainWords say a thing in one set of terms alone, though they name no stitch.
var plainWords = map[string]map[string]string{
	"uk": {"sk": "miss", "skip": "miss", "skipped": "missed"},
	"us": {"miss": "skip", "missed": "skipped"},
}

// wordsIn is the text of a tree with the words of its rows in other terms; remarks between the rows stay as they are.
func wordsIn(lib *stitch.Library, t *syntax.Tree, from, to string) string {
	c := &changes{text: t.Text}
	for _, r := range t.Rows {
		body := bodySpan(t, r)
		for _, at := range stitchWord.FindAllStringIndex(t.Text[body.Start:body.End], -1) {
			word := body
			word.Start, word.End = body.Start+at[0], body.Start+at[1]
			if other, ok := wordIn(lib, t.Text[word.Start:word.End], from, to); ok {
				c.replace(word, other)
			}
		}
	}
	return c.apply()
}

// wordIn is a word in other terms; ok is false where it stays the same.
func wordIn(lib *stitch.Library, word, from, to string) (other string, ok bool) {
	lower := strings.ToLower(word)
	other, ok = plainWords[to][lower]
	if kind, known := lib.Read(lower, from); !ok && known {
		other, ok = lib.Word(kind, to)
		if short, _ := lib.Word(kind, from); !strings.EqualFold(short, lower) && !strings.EqualFold(short+"s", lower) {
			other = lib.Name(kind, to) // it was spelled out
		}
	}
	if !ok || strings.EqualFold(other, lower) {
		return word, false
	}
	if word[:1] != lower[:1] {
		other = strings.ToUpper(other[:1]) + other[1:]
	}
	return other, true
}
