package syntax

import (
	"fmt"
	"strconv"
	"strings"

	"strandway/model/stitch"
)

// stitch reads a stitch's name: an abbreviation, spelled words, "3-dc cluster", "sl st", or a named group.
func (r *reader) stitch() (string, bool) {
	n, name := r.stitchAt(r.i)
	if n == 0 {
		return "", false
	}
	r.pass(n)
	return name, true
}

// stitchWord reports whether a stitch's name begins at token i.
func (r *reader) stitchWord(i int) bool {
	n, _ := r.stitchAt(i)
	return n > 0
}

// stitchAt reads a stitch's name at token i and says how many tokens it takes, 0 for none.
func (r *reader) stitchAt(i int) (int, string) {
	at := func(k int) *token { return &r.tokens[min(i+k, len(r.tokens)-1)] }
	t := at(0)
	if t.kind != wordToken {
		return 0, ""
	}
	if n, name := r.ownStitch(i); n > 0 {
		return n, name
	}
	if t.text == "half" { // "half CL", of a stitch of the pattern's own
		if n, name := r.ownStitch(min(i+1, len(r.tokens)-1)); n > 0 {
			return n + 1, name
		}
	}
	switch t.text {
	case slipStitch:
		return 1, slipStitch
	case "sl", "slip":
		if at(1).text == "st" {
			return 2, slipStitch
		}
		return 0, ""
	case counted:
		return r.countedStitch(i)
	case "front", "back":
		if at(1).text == "post" {
			if n, kind := r.stitchAt(i + 2); n > 0 {
				return n + 2, r.orKind(t.text[:1]+"p"+kind, kind)
			}
		}
		return 0, ""
	case "long", "dropped", "standing":
		if n, kind := r.stitchAt(i + 1); n > 0 {
			return n + 1, kind
		}
	}
	if grammar[t.text] {
		if at(1).text == "st" { // the library may have "lp st", "tw st"
			if kind, ok := r.lookUp(r.lower(t) + " st"); ok {
				return 2, kind
			}
		}
		return 0, ""
	}
	n, kind := r.writtenStitch(i)
	if n == 0 {
		return r.groupWord(t, at(1))
	}
	switch {
	case at(n).text == "blo" || at(n).text == "flo":
		if k := r.orKind(at(n).text[:1]+"l"+kind, ""); k != "" {
			return n + 1, k
		}
	case at(n).kind == numberToken && at(n+1).text == "tog":
		return n + 2, r.together(kind, at(n).n)
	case at(n).text == "st": // "spike st", "24 sc sts"
		return n + 1, kind
	}
	return n, kind
}

// ownStitch looks for the pattern's own names, the longest first.
func (r *reader) ownStitch(i int) (int, string) {
	best, name := 0, ""
	t := &r.tokens[i]
	low := r.lower(t)
	for _, names := range [2][]ownName{r.own[low], r.own[strings.TrimSuffix(low, "s")]} {
		for _, o := range names {
			ok := len(o.words) > best
			for k := 1; ok && k < len(o.words); k++ {
				have := r.lower(&r.tokens[min(i+k, len(r.tokens)-1)])
				ok = have == o.words[k] || strings.TrimSuffix(have, "s") == o.words[k]
			}
			if ok {
				best, name = len(o.words), o.name
			}
		}
	}
	return best, name
}

// isStitch reports whether a word by itself names a stitch, so that with the one before it the two may name another: "spike sc".
func (r *reader) isStitch(t *token) bool {
	_, ok := r.lookUp(r.lower(t))
	return ok
}

// writtenStitch asks the library for a spelled-out name or an abbreviation.
func (r *reader) writtenStitch(i int) (int, string) {
	t := &r.tokens[i]
	low := r.lower(t)
	kind, ok := r.lookUp(low)
	if next := &r.tokens[min(i+1, len(r.tokens)-1)]; next.kind == wordToken && (!ok || next.text == "crochet" || next.text == "treble" || r.isStitch(next)) || strings.HasPrefix(low, "treble") {
		if k, n := r.o.Library.Spelled(r.wordsFrom(i, low), r.terms()); n > 0 && (n > 1 || !ok) {
			return n, k.Name
		}
	}
	if ok {
		return 1, kind
	}
	if len(low) <= 4 {
		for _, letters := range spaced {
			n := 0
			for n < len(letters) && r.lower(&r.tokens[min(i+n, len(r.tokens)-1)]) == letters[n] {
				n++
			}
			word := strings.ReplaceAll(strings.Join(letters, ""), "half", "h")
			if n == len(letters) {
				if kind, ok := r.lookUp(word); ok {
					return n, kind
				}
			}
		}
	}
	return 0, ""
}

// lookUp reads one abbreviation, with a memory.
func (r *reader) lookUp(low string) (string, bool) {
	name, ok := r.kinds[low]
	if !ok {
		if k, found := r.o.Library.Read(low, r.terms()); found {
			name = k.Name
		}
		r.kinds[low] = name
	}
	return name, name != ""
}

// plainKind reads a stitch name at token i that is a kind, not a group.
func (r *reader) plainKind(i int) (string, bool) {
	n, name := r.stitchAt(i)
	return name, n > 0 && r.unit(name) == nil
}

// countedStitch reads "3-dc cluster", "5-dc shell", "5-double crochet popcorn" at token i.
func (r *reader) countedStitch(i int) (int, string) {
	t := &r.tokens[i]
	_, inner, _ := strings.Cut(r.lower(t), "-")
	used := 1
	kind, ok := r.lookUp(inner)
	if !ok {
		if k, n := r.o.Library.Spelled(r.wordsFrom(i, inner), r.terms()); n > 0 {
			kind, used, ok = k.Name, n, true
		}
	}
	next := &r.tokens[min(i+used, len(r.tokens)-1)]
	if !ok || next.kind != wordToken {
		return 0, ""
	}
	word := strings.TrimSuffix(r.lower(next), "s")
	if lump, ok := r.lookUp(word); ok && r.isLump(lump) {
		if k, ok := r.o.Library.Kind(fmt.Sprintf("%d-%s %s", t.n, kind, lump)); ok {
			return used + 1, k.Name
		}
	}
	if r.standardUnit(wordFor(word)) {
		return used + 1, r.sizedUnit(t.n, kind, wordFor(word))
	}
	return 0, ""
}

// wordsFrom gives the words at token i for a search of spelled names, the first replaced by another.
func (r *reader) wordsFrom(i int, first string) []string {
	words := append(make([]string, 0, 8), first)
	for k := i + 1; k < len(r.tokens) && len(words) < 8 && (r.tokens[k].kind == wordToken || r.tokens[k].kind == numberToken); k++ {
		words = append(words, r.lower(&r.tokens[k]))
	}
	return words
}

// isLump reports whether a kind gathers several legs of one place: cluster, bobble, puff, popcorn.
func (r *reader) isLump(name string) bool {
	k, ok := r.o.Library.Kind(name)
	return ok && k.Lump != stitch.NoLump
}

func wordFor(word string) string {
	if w := unitWords[word]; w != "" {
		return w
	}
	return word
}

// groupWord reads the name of one of the trade's standard groups.
func (r *reader) groupWord(t, next *token) (int, string) {
	low := r.lower(t)
	if low == "v" && next.text == "st" && r.standardUnit("v-st") {
		return 2, "v-st"
	}
	for _, w := range [2]string{low, strings.TrimSuffix(low, "s")} {
		if w = wordFor(w); r.standardUnit(w) {
			return 1, w
		}
	}
	return 0, ""
}

// sizedUnit makes the group "5-dc shell" known.
func (r *reader) sizedUnit(n int, kind, word string) string {
	name := fmt.Sprintf("%d-%s %s", n, kind, word)
	if r.tree.Units[name] == nil {
		r.tree.Units[name] = &Unit{Name: name, Body: []Node{&Make{N: Plain(n), Kind: kind}}}
	}
	return name
}

// orKind is the canonical name of a compound, or another where the library has none.
func (r *reader) orKind(name, other string) string {
	if k, ok := r.o.Library.Kind(name); ok {
		return k.Name
	}
	return other
}

// together is the kind that joins n of a kind at the top.
func (r *reader) together(kind string, n int) string {
	return r.orKind(kind+strconv.Itoa(n)+"tog", kind)
}

// basesOf is the number of places that one stitch of the kind takes.
func (r *reader) basesOf(kind string) int {
	if k, ok := r.o.Library.Kind(kind); ok && r.unit(kind) == nil && !k.SamePlace {
		return max(k.Legs, 1)
	}
	return 1
}

// bare is the plain stitch that a kind is built on.
func (r *reader) bare(kind string) string {
	if k, ok := r.o.Library.Kind(kind); ok && k.Plain != nil {
		return k.Plain.Name
	}
	return kind
}
