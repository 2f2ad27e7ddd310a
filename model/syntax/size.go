package syntax

import (
	"fmt"
	"strings"
)

// rowsBySize takes the numbers of the bracket at hand for the last row of the further sizes, or for the only one.
func (r *reader) rowsBySize(row *Row, last bool) {
	by := [][2]int{{row.From, row.To}}
	close := r.tok().match
	for r.pass(1); r.i < close; r.pass(1) {
		if !r.number(0) && r.tok().kind != ordinalToken {
			continue
		}
		n := r.tok().n
		if last {
			by = append(by, [2]int{row.From, n})
		} else {
			by = append(by, [2]int{n, n})
		}
	}
	r.pass(1)
	if len(by) == len(r.o.Sizes) {
		row.BySize = by
	}
}

// rangesBySize reads "(11th to 20th: 11th to 22nd)", "(5-11, 5-12)": both ends of the range for each further size.
func (r *reader) rangesBySize(row *Row) bool {
	close := r.tok().match
	by := [][2]int{{row.From, row.To}}
	k := r.i + 1
	isNumber := func(k int) bool { return r.tokens[k].kind == numberToken || r.tokens[k].kind == ordinalToken }
	for k+2 < close && isNumber(k) && isNumber(k+2) {
		if t := r.tokens[k+1].text; t != "-" && t != dash && t != "to" {
			return false
		}
		by = append(by, [2]int{r.tokens[k].n, r.tokens[k+2].n})
		k += 3
		if t := r.tokens[k].text; k < close && t != "," && t != ":" && t != ";" {
			return false
		}
		k++
	}
	if len(by) != len(r.o.Sizes) || k < close {
		return false
	}
	r.i = close + 1
	row.BySize = by
	return true
}

// ForSize is the row with the numbers that its heading has for a size.
func (r *Row) ForSize(size int) *Row {
	if r.BySize == nil {
		return r
	}
	q, by := *r, r.BySize[min(max(size, 0), len(r.BySize)-1)]
	q.From, q.To, q.BySize = by[0], by[1], nil
	return &q
}

// numbersBySize is the " (24, 28)" behind the number of the first size.
func (r *Row) numbersBySize() string {
	var more []string
	for _, by := range r.BySize[min(1, len(r.BySize)):] {
		more = append(more, fmt.Sprint(by[1]))
	}
	if more == nil {
		return ""
	}
	return " (" + strings.Join(more, ", ") + ")"
}

// sizesHere is how many numbers stand in the bracket at hand, 0 if other things do.
func (r *reader) sizesHere() int {
	n, close := 0, r.tok().match
	for k := r.i + 1; k < close; k++ {
		switch t := &r.tokens[k]; {
		case t.kind == numberToken, t.kind == ordinalToken:
			n++
		case t.text != "," && t.text != ":":
			return 0
		}
	}
	return n
}

// sizeNames reads "L only", "sizes L and XL only".
func (r *reader) sizeNames(out *[]int) bool {
	start := r.i
	var got []int
	numbered := r.word("size", "sizes")
	r.fill("for", "size", "sizes")
	for {
		found, words := -1, 1
		for i, name := range r.o.Sizes {
			if n := r.namedHere(name); n >= words {
				found, words = i, n
			}
		}
		if all := r.sizesBegin(); found < 0 && len(all) > 1 { // "Adult sizes only"
			got = append(got, all...)
			r.pass(1)
			r.fill("size", "sizes", "and", ",")
			continue
		}
		if found < 0 && r.number(0) && r.tok().n > 0 && numbered {
			found = r.tok().n - 1
		}
		if found < 0 {
			break
		}
		got = append(got, found)
		r.pass(words)
		if r.word("and", ",") {
			r.pass(1)
		}
	}
	if got == nil || !r.eat("only") {
		r.i = start
		return false
	}
	*out = got
	return true
}

// sizesBegin are the sizes whose names begin with the word at hand.
func (r *reader) sizesBegin() (all []int) {
	if !r.is(wordToken) || !r.wordAt(1, "size", "sizes") {
		return nil
	}
	for i, name := range r.o.Sizes {
		if strings.HasPrefix(strings.ToLower(name), r.lower(r.tok())+" ") {
			all = append(all, i)
		}
	}
	return all
}

// namedHere is how many tokens a name takes here, 0 if another thing stands here.
func (r *reader) namedHere(name string) int {
	from := r.tok().start
	if to := from + len(name); to <= len(r.src) && strings.EqualFold(r.src[from:to], name) {
		for k := range 8 {
			if end := r.peek(k).end; end >= to {
				if end == to {
					return k + 1
				}
				return 0
			}
		}
	}
	return 0
}

// ownYarn reads a yarn by its name in this pattern.
func (r *reader) ownYarn(letter *string) bool {
	if r.yarns == nil {
		r.yarns = map[string][]string{}
		for name := range r.o.Yarns {
			first, _, _ := strings.Cut(strings.ToLower(name), " ")
			r.yarns[first] = append(r.yarns[first], name)
		}
	}
	best := 0
	for _, name := range r.yarns[r.lower(r.tok())] {
		if n := r.namedHere(name); n > best {
			best, *letter = n, r.o.Yarns[name]
		}
	}
	r.pass(best)
	return best > 0
}
