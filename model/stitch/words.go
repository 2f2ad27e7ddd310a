package stitch

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"strandway/model/diag"
)

// phrase is a name of one or more words.
type phrase struct {
	words []string
	kind  *Kind
}

// index makes the tables by which words are read; extra are words for compounds.
func (l *Library) index(extra map[string]string) {
	l.words = make(map[string]map[string]string, len(terms))
	l.phrases = make(map[string][]phrase, len(terms))
	l.shown = make(map[string][]string, len(terms))
	for _, lang := range terms {
		words := make(map[string]string, 4*len(l.kinds))
		add := func(word string, k *Kind) {
			if w := fold(word); w != "" && words[w] == "" {
				words[w] = k.Name
			}
		}
		// Abbreviations go before other words: UK "dc" is never taken for a US one met in print.
		for _, k := range l.kinds {
			if t, ok := k.Terms[lang]; ok && t.Abbr != "" {
				add(t.Abbr, k)
				l.shown[lang] = append(l.shown[lang], t.Abbr)
			}
		}
		for _, k := range l.kinds {
			t, ok := k.Terms[lang]
			if !ok {
				continue
			}
			l.phrases[lang] = append(l.phrases[lang], phrase{strings.Fields(strings.ToLower(t.Name)), k})
			add(t.Name, k)
			if !strings.Contains(t.Name, " ") {
				l.shown[lang] = append(l.shown[lang], t.Name)
			}
			for _, a := range t.Also {
				add(a, k)
				if w := strings.Fields(strings.ToLower(a)); len(w) > 1 {
					l.phrases[lang] = append(l.phrases[lang], phrase{w, k})
				}
			}
			if w := strings.Fields(strings.ToLower(t.Abbr)); len(w) > 1 {
				l.phrases[lang] = append(l.phrases[lang], phrase{w, k})
			}
		}
		if lang == "us" || lang == "uk" {
			for word, name := range extra {
				if k, ok := l.Kind(name); ok {
					add(word, k)
				}
			}
		}
		l.words[lang] = words
	}
}

// fold makes words comparable: small letters, no spaces, hyphens, dots, slashes or apostrophes.
func fold(word string) string {
	return strings.Map(func(r rune) rune {
		switch r {
		case ' ', '-', '.', '/', '\'', '’', '‑', '\u00a0':
			return -1
		}
		return unicode.ToLower(r)
	}, word)
}

// Read is the kind meant by one written abbreviation or name in the given
// terms: "htr2tog" in "uk" is hdc2tog. Case, hyphens and plurals do not matter.
func (l *Library) Read(word, terms string) (*Kind, bool) {
	w := fold(word)
	if k, ok := l.read(w, terms, 0); ok {
		return k, true
	}
	if s, ok := strings.CutSuffix(w, "s"); ok {
		return l.read(s, terms, 0)
	}
	return nil, false
}

func (l *Library) read(folded, terms string, depth int) (*Kind, bool) {
	if name, ok := l.words[terms][folded]; ok {
		return l.Kind(name)
	}
	if depth > 2 { // a loop or post round several legs of a stitch is the most there is
		return nil, false
	}
	for i := range l.modifiers {
		c := &l.modifiers[i]
		for _, t := range c.by[terms].read {
			inner, n, ok := t.match(folded)
			if !ok {
				continue
			}
			if k, ok := l.read(inner, terms, depth+1); ok && (c.fits(k) || c.counted && k.Legs == 1) {
				if k, ok := l.Kind(c.canonical.fill(k.Name, n)); ok {
					return k, true
				}
			}
		}
	}
	return nil, false
}

// Spelled finds the longest spelled-out name at the start of words, which are
// in small letters: "front post double crochet two together". used is the
// number of words it takes; 0 when there is none.
func (l *Library) Spelled(words []string, terms string) (k *Kind, used int) {
	return l.spelled(words, terms, 0)
}

func (l *Library) spelled(words []string, terms string, depth int) (best *Kind, used int) {
	if depth > 2 || len(words) == 0 {
		return nil, 0
	}
	for _, p := range l.phrases[terms] {
		if len(p.words) > used && startsWith(words, p.words) {
			best, used = p.kind, len(p.words)
		}
	}
	for i := range l.modifiers {
		c := &l.modifiers[i]
		for _, t := range c.by[terms].spelled {
			if len(t.before) == 0 {
				continue
			}
			n0, lead, ok := take(words, t.before)
			if !ok {
				continue
			}
			inner, mid := l.spelled(words[lead:], terms, depth+1)
			if inner == nil {
				continue
			}
			n1, tail, ok := take(words[lead+mid:], t.after)
			if !ok || lead+mid+tail <= used {
				continue
			}
			if k, ok := l.Kind(c.canonical.fill(inner.Name, n0+n1)); ok {
				best, used = k, lead+mid+tail
			}
		}
	}
	return l.lengthen(best, words, used, terms)
}

// lengthen adds what may follow a name: "two together", "in back loop only".
func (l *Library) lengthen(k *Kind, words []string, used int, terms string) (*Kind, int) {
	for grown := k != nil; grown; {
		grown = false
		for i := range l.modifiers {
			c := &l.modifiers[i]
			for _, t := range c.by[terms].spelled {
				if len(t.before) > 0 {
					continue
				}
				n, tail, ok := take(words[used:], t.after)
				if !ok || tail == 0 {
					continue
				}
				if longer, ok := l.Kind(c.canonical.fill(k.Name, n)); ok {
					k, used, grown = longer, used+tail, true
				}
			}
		}
	}
	return k, used
}

// take matches a template's pieces at the start of words.
func take(words, pieces []string) (n, used int, ok bool) {
	for _, p := range pieces {
		if p == "{n}" {
			if used >= len(words) {
				return 0, 0, false
			}
			if n = spelledNumber(words[used]); n == 0 {
				return 0, 0, false
			}
			used++
			continue
		}
		want := strings.Fields(strings.ReplaceAll(p, "-", " "))
		if !startsWith(words[used:], want) {
			return 0, 0, false
		}
		used += len(want)
	}
	return n, used, true
}

// startsWith compares word by word; a plural will do for the last.
func startsWith(words, want []string) bool {
	if len(words) < len(want) {
		return false
	}
	for i, w := range want {
		if words[i] == w {
			continue
		}
		if i < len(want)-1 || words[i] != w+"s" && words[i] != w+"es" {
			return false
		}
	}
	return true
}

func spelledNumber(s string) int {
	for i, w := range [...]string{"two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"} {
		if s == w {
			return i + 2
		}
	}
	return number(s)
}

// Word is the abbreviation to print for k in the given terms, or its name where
// the trade has none. ok is false where the word is not sure; where there is no
// word at all it is the US one.
func (l *Library) Word(k *Kind, terms string) (word string, ok bool) {
	t, found := k.Terms[terms]
	switch {
	case found && t.Abbr != "":
		return t.Abbr, t.Sure
	case found && t.Name != "":
		return t.Name, t.Sure
	case terms != "us":
		w, _ := l.Word(k, "us")
		return w, false
	}
	return k.Name, false
}

// Name is the long name of k in the given terms, in US terms where it has none.
func (l *Library) Name(k *Kind, terms string) string {
	if t, ok := k.Terms[terms]; ok && t.Name != "" {
		return t.Name
	}
	if t := k.Terms["us"]; t.Name != "" {
		return t.Name
	}
	return k.Name
}

// Nearest is the abbreviation most like a misspelled word, "" when none is near.
func (l *Library) Nearest(word, terms string) string {
	w := fold(word)
	best, least := "", 3
	switch n := utf8.RuneCountInString(w); {
	case n <= 3:
		least = 2
	case n > 40: // longer than any name
		return ""
	}
	for _, c := range l.shown[terms] {
		f := fold(c)
		if d := diag.Distance(w, f); d < least && d < utf8.RuneCountInString(f) {
			best, least = c, d
		}
	}
	return best
}

// Units are the trade's usual groups in row language, in the given terms:
// "shell" is "5 dc" in "us" and "5 tr" in "uk".
func (l *Library) Units(terms string) map[string]string {
	m := make(map[string]string, 2*len(l.groups))
	for _, g := range l.groups {
		written := l.translate(g.Written, terms)
		m[g.Name] = written
		for _, a := range g.Also {
			m[a] = written
		}
	}
	return m
}

// translate writes row language in US terms in other terms, word by word.
func (l *Library) translate(written, terms string) string {
	words := strings.Split(written, " ")
	for i, w := range words {
		bare := strings.TrimRight(w, ",")
		if _, err := strconv.Atoi(bare); err == nil {
			continue
		}
		if k, ok := l.Read(bare, "us"); ok {
			word, _ := l.Word(k, terms)
			words[i] = word + w[len(bare):]
		}
	}
	return strings.Join(words, " ")
}
