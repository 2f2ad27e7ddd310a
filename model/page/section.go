package page

import (
	"regexp"
	"strings"
)

// section is what a part of the page is about.
type section int

const (
	front section = iota // title and story
	materials
	hook
	gauge
	sizes
	abbreviations
	specials
	notes
	colours
	instructions // what follows are rows
	finishing
)

// headings are the words under which the trade sets the parts of a page.
var headings = func() map[string]section {
	m := map[string]section{}
	for s, words := range map[section]string{
		materials: `materials|material|materials needed|what you'll need|what you need|what you will need|you will need|you'll need|you need|supplies|
			supply list|requirements|yarn|yarns|yarn used|thread|notions|tools|needs`,
		hook:  `hook|hooks|hook size|crochet hook|needle`,
		gauge: `gauge|tension`,
		sizes: `size|sizes|sizing|measurements|finished size|finished sizes|finished measurements|finished circumference|finished dimensions|
			dimensions|to fit|actual size|approximate size|finished`,
		abbreviations: `abbreviations|abbreviation|abbr|abbrev|abbrevs|abbreviations used|stitches used|stitches|stitches and abbreviations|key|stitch abbreviations|
			abbreviations (us)|abbreviations (us terms)|abbreviations (uk)|abbreviations (uk terms)|terms|terminology|stitch key`,
		specials: `special stitches|special stitch|special stitches used|stitch guide|special abbreviations|special abbreviation|stitch glossary|
			pattern stitches|special techniques|special terms|stitch notes`,
		notes: `note|notes|pattern notes|tips|tip|before you begin|before you start|skill level|difficulty|level|skill|about this pattern|
			construction|good to know|general notes`,
		colours: `stripe sequence|stripes|stripe pattern|colour sequence|color sequence|colour order|color order|colour sequence list|striping|
			colors used|colour list|stripe order`,
		instructions: `instructions|instruction|pattern|directions|to make|method|the pattern|how to make it|let's begin|let's get started|to work|
			working instructions|written pattern|pattern instructions|start here|begin`,
		finishing: `finishing|to finish|making up|to make up|assembly|care|blocking|sewing up|safety|safety note|copyright|finish|
			putting it together|joining|seaming|to complete|finishing touches|aftercare`,
	} {
		for w := range strings.SplitSeq(words, "|") {
			m[strings.TrimSpace(w)] = s
		}
	}
	return m
}()

var headForm = regexp.MustCompile(`^([^:.–—]{1,40}?)\s*(?:(:|\.?\s*[–—]|\.—)\s*(.*))?$`)

var capitalHead = regexp.MustCompile(`^([A-Z]{4,})\s+([^\s:–—-].*\d.*|[^\s:–—-]{1,12}\s*[(\[].*)$`)

// sectionHead sees the heading of a part: alone on its line, or with what
// belongs to it behind a colon or a dash.
func sectionHead(text string) (s section, rest string, ok bool) {
	if m := capitalHead.FindStringSubmatch(text); m != nil { // "TENSION 17 tr and 9 rows to 10 cm"
		if s, ok := headings[strings.ToLower(m[1])]; ok {
			return s, m[2], true
		}
	}
	m := headForm.FindStringSubmatch(text)
	if m == nil {
		return front, "", false
	}
	word := strings.ToLower(strings.ReplaceAll(m[1], "’", "'"))
	word = strings.Trim(word, " \t*#_~=!-|&")
	if s, ok = headings[word]; !ok {
		s, ok = headings[strings.TrimSuffix(word, ".")]
	}
	return s, m[3], ok
}

// Forms of the lines with which rows begin.
var (
	// inWords is an ordinal in words: "ninth", "twenty-fourth".
	inWords = `(?:(?:twenty|thirty|forty)-)?(?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|eleventh|twelfth|thirteenth|fourteenth|fifteenth|sixteenth|seventeenth|eighteenth|nineteenth|twentieth|thirtieth|fortieth)`
	numbers = `#?\s*\d{1,4}(?:st|nd|rd|th|d)?`
	several = numbers + `(?:\s*(?:[-–—,&+]|to|and|through|thru)\s*(?:(?:and|row|rnd|round|r)\s*)?` + numbers + `)*`
	rowHead = regexp.MustCompile(`(?i)^(?:[-•*]\s+)?(?:\d{1,2}[.)]\s+)?(?:(?:with|using)\s+[\pL\d]{1,12},\s+)?(?:(?:rows?|rnds?|rounds?|rds?|rw|r)\s*\.?\s*(?:nos?\.?\s*)?` + several + `|` +
		several + `(?:st|nd|rd|th)?\s*(?:[(\[][^)\]]{1,40}[)\]]\s*)?(?:rows?|rnds?|rounds?|rds?)|` +
		`(?:` + inWords + `(?:\s*(?:,|and|to|&)\s*` + inWords + `)*|next|last|final)\s+(?:rows?|rnds?|rounds?|rds?)|` +
		`(?:next|following|last)\s+(?:\d+|two|three|four|five|six|seven|eight|nine|ten)\s*(?:[(\[][\d\s,:/-]+[)\]]\s*)?(?:rows|rnds|rounds|rds)|` +
		`(?:(?:all|every|each)\s+)?(?:the\s+)?(?:(?:even|odd)(?:[- ]numbered)?|ws|rs|(?:wrong|right)[- ]side)\s+(?:rows?|rnds?|rounds?)|` +
		`(?:foundation|base|set[- ]?up|joining|edging|border|beginning|ribbing|increase|decrease|pattern)\s+(?:row|rnd|round)\b(?:\s*\d+)?)(?:[^\pL\d]|$)`)
	bareHead = regexp.MustCompile(`^(\d{1,3}(?:[-–]\d{1,3})?)\s*(?:[.):]|\s[-–])\s+(\S.*)$`)
	midHead  = regexp.MustCompile(`(?i)(?:[.)\]!]["”]?|with [\pL]{1,12},|using [\pL]{1,12},)\s+((?:(?:row|rnd|round)s?\s*\d{1,3}|r\d{1,3}|\d{1,3}(?:st|nd|rd|th|d)\s+(?:row|rnd|round)s?|` + inWords + `(?:\s*(?:and|to)\s*` + inWords + `)?\s+(?:row|rnd|round)s?)\s*(?:[-–](?:\s*\d+)?\s*)?(?:\([^)]{1,20}\)\s*)?(?:[:.–—]|\s-\s))`)
	firstNum = regexp.MustCompile(`\d+`)

	// ringStart is what a piece worked from its middle begins with.
	ringStart  = regexp.MustCompile(`(?i)(?:magic|adjustable|sliding|slip)\s+(?:ring|circle|loop)|\bMR\b|\bin(?:to)? (?:the )?(?:ring|mr)\b|form (?:a |the )?(?:ring|circle)|^\D{0,12}\d+ ?\w{2,3} in (?-i:[A-Z]{1,2})\b`)
	chainStart = regexp.MustCompile(`(?i)\b(?:(?:make (?:a )?|work )?(?:ch|chains?|chained|fsc|fdc|fhdc)\s*(?:x\s*|of\s+)?(\d+|n\b|(?:four|five|six|seven|eight|nine|ten|twelve|fourteen|fifteen|sixteen|eighteen|twenty|thirty|forty|fifty|sixty)\b|\d+n\b|(?:a|any)\s+(?:multiple|number|even|odd))|(?:make|cast on|work)\s+(\d+)\s*(?:[(\[][\d\s,:;/–-]+[)\]]\s*)*(?:ch|chains?)\b|(\d+)\s*(?:[(\[][\d\s,:;/–-]+[)\]]\s*)*(?:ch|chains?|foundation)\b)`)
	notChain   = regexp.MustCompile(`(?i)^[^.;]{0,24}\b(?:counts?|at (?:the )?(?:beg|start)|sps?\b|spaces?|loops?|throughout)`)
	fromHook   = regexp.MustCompile(`(?i)\b(?:chain|ch|st|stitch)s?\s+(?:away\s+)?from\s+(?:the\s+)?hook`)
)

// ordinalNumbers are the spelled ordinals of headings.
var ordinalNumbers = func() map[string]int {
	m := map[string]int{"thirtieth": 30, "fortieth": 40}
	for i, w := range strings.Fields("first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth") {
		m[w] = i + 1
		for k, ten := range []string{"twenty", "thirty", "forty"} {
			if i < 9 {
				m[ten+"-"+w] = 20 + 10*k + i + 1
			}
		}
	}
	return m
}()
