package edit

import (
	"cmp"
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"strandway/model/diag"
)

// Word is a word that rows can hold, and what it is short for, "" where it says so itself.
type Word struct{ Text, Means string }

// rowWords are the words of rows that name no stitch.
var rowWords = []string{"across", "around", "back loop", "beginning", "between", "corner", "each", "ending", "evenly", "fasten off",
	"first", "foundation", "front loop", "join with sl st", "last", "loop", "next", "remaining", "repeat", "rep from *", "right side",
	"row", "rows below", "same", "skip", "skipped", "space", "st", "sts", "through", "together", "turn", "twice", "wrong side"}

// Completions are the words that could be meant by the letters before an offset, and where these
// letters stand. Words that the rows hold already come first, the most used before the others;
// then the stitches, and then the words of the trade. whole says that the letters are such a word as
// they stand.
func Completions(rows string, at int, stitches []Word) (letters diag.Span, words []Word, whole bool) {
	letters = diag.Span{Start: at, End: at}
	for letters.Start > 0 {
		r, n := utf8.DecodeLastRuneInString(rows[:letters.Start])
		if !inWord(r) {
			break
		}
		letters.Start -= n
	}
	begun := strings.ToLower(rows[letters.Start:letters.End])
	if begun == "" || begun[0] >= '0' && begun[0] <= '9' && len(begun) < 2 {
		return letters, nil, false
	}
	means := map[string]string{}
	for _, w := range stitches {
		means[strings.ToLower(w.Text)] = w.Means
	}
	offer := func(text string) {
		lower := strings.ToLower(text)
		whole = whole || lower == begun
		if strings.HasPrefix(lower, begun) && len(text) > len(begun) && !slices.ContainsFunc(words, func(w Word) bool { return strings.EqualFold(w.Text, text) }) {
			words = append(words, Word{text, means[lower]})
		}
	}
	used := map[string]int{}
	countWords(used, rows[:letters.Start], begun)
	countWords(used, rows[letters.End:], begun)
	for _, text := range slices.SortedFunc(maps.Keys(used), func(a, b string) int { return cmp.Or(used[b]-used[a], cmp.Compare(a, b)) }) {
		offer(text)
	}
	for _, w := range stitches {
		offer(w.Text)
	}
	for _, text := range rowWords {
		offer(text)
	}
	return letters, words, whole
}

// countWords counts the words of a text that begin with some letters.
func countWords(used map[string]int, text, begun string) {
	for word := range strings.FieldsFuncSeq(text, func(r rune) bool { return !inWord(r) }) {
		if len(word) >= len(begun) && strings.EqualFold(word[:len(begun)], begun) {
			used[strings.ToLower(word)]++
		}
	}
}

func inWord(r rune) bool {
	if r < utf8.RuneSelf {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-'
	}
	return unicode.IsLetter(r) || unicode.IsDigit(r)
}
