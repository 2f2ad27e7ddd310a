package edit

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"strandway/model/diag"
)

// rowWords are the words of rows that name no stitch.
var rowWords = []string{"across", "around", "back loop", "beginning", "between", "corner", "each", "ending", "evenly", "fasten off",
	"first", "foundation", "front loop", "join with sl st", "last", "loop", "next", "remaining", "repeat", "rep from *", "right side",
	"row", "rows below", "same", "skip", "skipped", "space", "st", "sts", "through", "together", "turn", "twice", "wrong side"}

// Completions are the words that could be meant by the letters before an offset, and where these
// letters stand. Words that the rows hold already come first, the most used before the others;
// then the stitches, and then the words of the trade. whole says that the letters are such a word as
// they stand.
func Completions(rows string, at int, stitches []string) (letters diag.Span, words []string, whole bool) {
	letters = diag.Span{Start: at, End: at}
	for letters.Start > 0 {
		r, n := utf8.DecodeLastRuneInString(rows[:letters.Start])
		if !inWord(r) {
			break
		}
		letters.Start -= n
	}
	begun := strings.ToLower(rows[letters.Start:letters.End])
	if begun == "" {
		return letters, nil, false
	}
	used := map[string]int{}
	for _, word := range strings.FieldsFunc(rows[:letters.Start]+" "+rows[letters.End:], func(r rune) bool { return !inWord(r) }) {
		used[strings.ToLower(word)]++
	}
	offer := func(list []string) {
		for _, word := range list {
			whole = whole || strings.EqualFold(word, begun)
			if strings.HasPrefix(strings.ToLower(word), begun) && len(word) > len(begun) && !slices.Contains(words, word) {
				words = append(words, word)
			}
		}
	}
	var own []string
	for word := range used {
		own = append(own, word)
	}
	slices.SortFunc(own, func(a, b string) int { return cmp.Or(used[b]-used[a], cmp.Compare(a, b)) })
	offer(own)
	offer(stitches)
	offer(rowWords)
	return letters, words, whole
}

func inWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '-' }
