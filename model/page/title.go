package page

import (
	"regexp"
	"strings"
)

// isTitle sees the page's name: its first line, unless that begins a part or a row.
func (r *reader) isTitle(l line) bool {
	l.text = inBrackets.ReplaceAllString(listNumber.ReplaceAllString(l.text, ""), "")
	if l.text == "" {
		return false
	}
	const longest = 90
	_, _, head := sectionHead(l.text)
	return r.section == front && !r.told && !head && len(l.text) <= longest && !rowHead.MatchString(l.text) && foundationAt(l.text) < 0 && !noTitle.MatchString(l.text) &&
		(!sentence.MatchString(l.text) || l.text == strings.ToUpper(l.text))
}

// noTitle are first lines that name nothing: terms, tools, makers, greetings and whole sentences.
var noTitle = regexp.MustCompile(`(?i)\b(?:US|UK|american|british)\b.{0,12}\bterm|\bhook\b|\bmm\b|https?:|www\.|^(?:by|free|copyright|©|page|hello|hi|hey|dear|welcome|skill|level|difficulty|note|terms|written|published|posted|updated|\d[\d ./-]*)\b|^©|[,;:]$`)

// sentence ends as no title does.
var sentence = regexp.MustCompile(`\pL{3,}[.!]$`)

var (
	pageNumber  = regexp.MustCompile(`(?i)(?:^|\s{2,}|\s[-–—|]\s)\s*(?:page|p\.)\s*\d+(?:\s*(?:of|/)\s*\d+)?\s*$|\s{4,}\d{1,3}$|^\d{1,3}$`)
	listNumber  = regexp.MustCompile(`(?i)^(?:no|nr|pattern|design)\.?\s*\d+[.:]?\s*[-–—:.]*\s*`)
	inBrackets  = regexp.MustCompile(`\s*[(\[][^)\]]*[)\]]$`)
	freePattern = regexp.MustCompile(`(?i)\s*[-–—:|,]*\s*\b(?:a )?(?:free |pdf )?(?:crochet )?pattern$|^(?:free )?(?:crochet )?pattern\s*:\s*`)
	afterDash   = regexp.MustCompile(`\s[-–—~|]\s+\p{Ll}.*$`)
)

// titleOf is the name in a page's first line, without its number, page number and asides.
func titleOf(line string) string {
	t := pageNumber.ReplaceAllString(line, "")
	if head, _, wide := strings.Cut(t, "     "); wide && len(head) > 5 { // what stands at the other end of the line is no part of it
		t = strings.TrimSpace(head)
	}
	for _, aside := range []*regexp.Regexp{listNumber, inBrackets, afterDash, freePattern} {
		if short := strings.TrimSpace(aside.ReplaceAllString(t, "")); len(short) > 2 {
			t = short
		}
	}
	return strings.TrimRight(strings.Join(strings.Fields(t), " "), ".")
}
