package page

import (
	"regexp"
	"strconv"
	"strings"
)

// said are words by which a page names its terms.
var said = regexp.MustCompile(`(?i)\b(?:(UK|british|english|U\.K\.)|(US|USA|U\.S\.A?\.?|american))\s+(?:crochet\s+|standard\s+|stitch\s+)?(?:term|notation|abbreviation|stitch|pattern|version|english)|\b(?:terms|terminology|notation|pattern in|written in)\s*(?:used)?\s*[:=(–-]?\s*(?:are |is |in )?(?:(UK|british|U\.K\.)|(US|USA|american))\b`)

// sign is a word that stands in pages of one set of terms; weight says how surely.
type sign struct {
	form   *regexp.Regexp
	uk     bool
	weight int
}

// signs are told from the stitches used: a page in UK terms has no single
// crochet, and a stitch worked into the second chain is the shortest.
var signs = []sign{
	{regexp.MustCompile(`(?i)\bsc\b|\d+sc\b|sc\d?tog`), false, 4},
	{regexp.MustCompile(`(?i)\bhdc\b|\d+hdc\b`), false, 4},
	{regexp.MustCompile(`(?i)single crochet`), false, 4},
	{regexp.MustCompile(`(?i)half[- ]double`), false, 4},
	{regexp.MustCompile(`(?i)\bhtr\b|\d+htr\b`), true, 5},
	{regexp.MustCompile(`(?i)half[- ]treble`), true, 5},
	{regexp.MustCompile(`(?i)\bmiss\b`), true, 2},
	{regexp.MustCompile(`(?i)\btension\b`), true, 1},
	{regexp.MustCompile(`(?i)\byrh\b`), true, 2},
	{regexp.MustCompile(`(?i)\bskip\b|\bsk\b`), false, 1},
	{regexp.MustCompile(`(?i)\bgauge\b`), false, 1},
	{regexp.MustCompile(`(?i)\bcolor\b|\bcenter\b`), false, 1},
	{regexp.MustCompile(`(?i)\b(?:\d*dc|double crochet) in(?:to)? (?:the )?(?:2nd|second) ch`), true, 5},
	{regexp.MustCompile(`(?i)\b(?:\d*dc|double crochet) in(?:to)? (?:the )?(?:4th|fourth|3rd|third) ch`), false, 3},
	{regexp.MustCompile(`(?i)\b(?:\d*tr|treble) in(?:to)? (?:the )?(?:4th|fourth) ch`), true, 3},
	{regexp.MustCompile(`(?i)\b(?:3 ?ch|ch ?3)\s*\(?\s*(?:to |here and throughout )?(?:counts? as|=|stands for)\s*(?:a |the |first |1st |one |1 )*tr`), true, 4},
	{regexp.MustCompile(`(?i)\b(?:3 ?ch|ch ?3)\s*\(?\s*(?:to |here and throughout )?(?:counts? as|=|stands for)\s*(?:a |the |first |1st |one |1 )*d(?:c|ouble)`), false, 4},
	{regexp.MustCompile(`(?i)\b(?:1 ?ch|ch ?1)\s*\(?\s*(?:does not )?counts? as\s*(?:a |the |first |1st |one |1 )*dc`), true, 4},
	{regexp.MustCompile(`(?i)\b(?:3 ch(?:ains?)?|ch(?:ain)? ?3)\.?,?\s*\(?\s*(?:to )?(?:stands?|counts?|counting|count|stand)? ?(?:for|as)\s*(?:a |the |first |1st |one |1 )*tr(?:eble)?\b`), true, 4},
	{regexp.MustCompile(`(?i)\b\d+tr\b|\b\d+dc\b`), true, 1},
}

var (
	dcUsed = regexp.MustCompile(`(?i)\b\d*dc\b`)
	trUsed = regexp.MustCompile(`(?i)\b\d*tr\b`)
	scUsed = regexp.MustCompile(`(?i)\b\d*h?d?sc\b|\bhdc\b|single crochet`)

	// standsFor is a chain that counts as a treble and some chains: a treble of three chains is a UK one.
	standsFor = regexp.MustCompile(`(?i)(?:ch\s?(\d)|(\d)\s?ch)\s*\(?\s*(?:counts?|stands?) (?:as|for) (?:1 |one |a |first |1st )*tr(?:eble)?s?\s*(?:,|and|\+|plus)\s*(?:(?:(\d)\s?ch)|(?:ch\s?(\d)))`)
)

// undotted takes the full stops out of the abbreviations of old prints.
var undotted = strings.NewReplacer("d.c.", "dc", "D.c.", "dc", "s.c.", "sc", "h.tr.", "htr", "tr. ", "tr ")

// tellTerms says in which terms a page is written, and whether that is unclear.
func tellTerms(text string) (terms string, unclear bool) {
	text = undotted.Replace(text)
	if m := said.FindStringSubmatch(text); m != nil {
		if m[1]+m[3] != "" {
			return "UK", false
		}
		return "US", false
	}
	us, uk := 0, 0
	for _, s := range signs {
		if !s.form.MatchString(text) {
			continue
		}
		if s.uk {
			uk += s.weight
		} else {
			us += s.weight
		}
	}
	if dcUsed.MatchString(text) && trUsed.MatchString(text) && !scUsed.MatchString(text) {
		uk += 3 // in US terms a page with trebles hardly does without single crochet
	}
	for _, m := range standsFor.FindAllStringSubmatch(text, 8) {
		n, _ := strconv.Atoi(m[1] + m[2])
		less, _ := strconv.Atoi(m[3] + m[4])
		switch n - less {
		case 3:
			uk += 4
		case 4:
			us += 4
		}
	}
	if uk > us {
		return "UK", uk-us < 2
	}
	return "US", us-uk < 2 && namesTall(text)
}

// namesTall reports whether the page names a stitch that is another one in the other terms.
func namesTall(text string) bool {
	low := strings.ToLower(text)
	return strings.Contains(low, "dc") || strings.Contains(low, "tr") || strings.Contains(low, "double crochet")
}
