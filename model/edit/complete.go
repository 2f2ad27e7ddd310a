package edit

import (
	"cmp"
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
	for _, text := range usedWords(rows[:letters.Start] + " " + rows[letters.End:]) {
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

// usedWords are the words of a text, the most used first.
func usedWords(text string) []string {
	used := map[string]int{}
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return !inWord(r) }) {
		used[strings.ToLower(word)]++
	}
	words := make([]string, 0, len(used))
	for word := range used {
		words = append(words, word)
	}
	slices.SortFunc(words, func(a, b string) int { return cmp.Or(used[b]-used[a], cmp.Compare(a, b)) })
	return words
}

func inWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' }
