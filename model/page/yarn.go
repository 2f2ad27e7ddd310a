package page

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"strandway/model/pattern"
	"strandway/model/trade"
)

// hookByLetter gives the hook's millimetres by its US letter.
var hookByLetter = sync.OnceValue(func() map[string]float64 {
	m := map[string]float64{}
	for _, h := range trade.Standard().Hooks {
		letter, _, _ := strings.Cut(h.US, "-")
		if letter = strings.TrimSpace(letter); len(letter) == 1 && m[letter] == 0 {
			m[letter] = h.MM
		}
	}
	return m
})

// colourByWord gives the colour of a plain colour word.
var colourByWord = sync.OnceValue(func() map[string]string {
	m := map[string]string{}
	for _, c := range trade.Standard().Colours {
		for _, w := range append(c.Words, c.Name) {
			m[w] = c.Hex
		}
	}
	return m
})

var (
	lettersOf = `(MC|CC\s?[1-9]?|[A-H])`
	// yarnLetter finds the letter of a yarn in a list of materials.
	letterFirst  = regexp.MustCompile(`(?i:\b(?:yarn|colou?r|shade|main colou?r|contrast(?:ing)? colou?r)\s*)?[("]?\b` + lettersOf + `\b[)"]?\s*(?:[:=]|\s?[–—-]\s)\s*([^,;()|/]+?)(?:\s+(?:MC|CC\d?|[A-H])\s*[:=].*|[,;(|/].*)?$`)
	letterLast   = regexp.MustCompile(`([\pL][\pL' ]{1,40}?)\s*\((?:(?i:colou?r|yarn|shade)\s*)?` + lettersOf + `\)`)
	letterHead   = regexp.MustCompile(`\b` + lettersOf + `\s*\(([\pL][\pL' ]{1,30})\)`)
	letterColour = regexp.MustCompile(`\b` + lettersOf + `\s+([\pL]+(?: [A-Z][a-z]+)?)`)
	letterNext   = regexp.MustCompile(`\b` + lettersOf + `\s*(?:[:=]|\s[–—-]\s)`)
	balls        = regexp.MustCompile(`(?i)\b(\d{2,3})\s*-?\s*(?:g|gr|grams?)\b`)
	metres       = regexp.MustCompile(`(?i)\b(\d{2,4})\s*-?\s*(m|metres|meters|yds?|yards)\b`)
	amount       = regexp.MustCompile(`(?i)^\s*(?:\d+\s*x\s*)?(?:approx\.?|about)?\s*\d+\s*(?:g|balls?|skeins?|hanks?|yds?|yards|m|oz)\b\s*(?:of\s+)?|\b\d+\s*(?:g|balls?|skeins?|hanks?|yds?|yards|m|oz)\b.*$`)
)

// yarns finds the yarns of a list of materials: letters, names, colours.
func (r *reader) yarns(text string) {
	if r.section != materials && r.section != colours && !letterNext.MatchString(text) && !letterHead.MatchString(text) {
		return
	}
	if r.section == notes || r.section == abbreviations || r.section == specials || r.section == finishing || r.section == gauge {
		return
	}
	found := false
	add := func(letter, name, text string) {
		letter = strings.ToUpper(strings.ReplaceAll(letter, " ", ""))
		name = strings.Trim(amount.ReplaceAllString(strings.TrimSpace(name), ""), " .,:;–—-()")
		if _, known := r.p.Yarn(letter); known || len(r.p.Yarns) > 40 {
			return
		}
		found = true
		y := pattern.Yarn{Letter: letter, Name: name, Weight: -1, Colour: colourIn(text)}
		if c := colourIn(name); c != "" {
			y.Colour, y.Shade, y.Name = c, name, ""
		}
		r.amounts(&y, text)
		r.p.Yarns = append(r.p.Yarns, y)
	}
	// several on one line: each from its letter to the next
	if at := letterNext.FindAllStringIndex(text, -1); len(at) > 1 {
		for i, m := range at {
			end := len(text)
			if i+1 < len(at) {
				end = at[i+1][0]
			}
			one := strings.TrimRight(text[m[0]:end], " ,;|/")
			if f := letterFirst.FindStringSubmatch(one); f != nil {
				add(f[1], f[2], one)
			}
		}
		return
	}
	for _, m := range letterColour.FindAllStringSubmatch(text, -1) {
		if colourIn(m[2]) != "" {
			add(m[1], m[2], m[2])
		}
	}
	for _, m := range letterHead.FindAllStringSubmatch(text, -1) {
		add(m[1], m[2], text)
	}
	for _, m := range letterLast.FindAllStringSubmatch(text, -1) {
		add(m[2], m[1], text)
	}
	if !found && r.section == materials {
		r.unlettered(text)
	}
	if !found {
		if m := letterFirst.FindStringSubmatch(text); m != nil {
			add(m[1], m[2], text)
		}
	}
}

// colourList is a list of colours by name alone: "DK in Navy, Blue, Sky and White".
var colourList = regexp.MustCompile(`\b(\p{Lu}[\pL]+(?: \p{Lu}[\pL]+)?(?:, \p{Lu}[\pL]+(?: \p{Lu}[\pL]+)?)*,? (?:and|&) \p{Lu}[\pL]+(?: \p{Lu}[\pL]+)?)`)

var colourBetween = regexp.MustCompile(`,? (?:and|&) |, `)

// unlettered takes a list of plain colours for the yarns, lettered in their order.
func (r *reader) unlettered(text string) {
	m := colourList.FindString(text)
	if m == "" || len(r.p.Yarns) > 0 {
		return
	}
	names := colourBetween.Split(m, -1)
	for _, name := range names {
		if colourIn(name) == "" {
			return
		}
	}
	for i, name := range names[:min(len(names), 26)] {
		r.p.Yarns = append(r.p.Yarns, pattern.Yarn{Letter: string(rune('A' + i)), Shade: name, Colour: colourIn(name), Weight: -1})
	}
}

// amounts finds what one ball weighs and how long it is.
func (r *reader) amounts(y *pattern.Yarn, text string) {
	if m := balls.FindStringSubmatch(text); m != nil {
		y.Grams, _ = strconv.ParseFloat(m[1], 64)
	}
	if m := metres.FindStringSubmatch(text); m != nil {
		y.Metres, _ = strconv.ParseFloat(m[1], 64)
		if strings.HasPrefix(strings.ToLower(m[2]), "y") {
			y.Metres = float64(int(y.Metres*.9144 + .5))
		}
	}
}

// colourIn is the colour of the first plain colour word in a text, "" without one.
func colourIn(text string) string {
	for _, w := range strings.FieldsFunc(strings.ToLower(text), func(c rune) bool { return c < 'a' || c > 'z' }) {
		if hex := colourByWord()[w]; hex != "" {
			return hex
		}
	}
	return ""
}

// stripeForm is a row heading with nothing but a colour behind it.
var stripeForm = regexp.MustCompile(`(?i)^(?:rows?|rnds?|rounds?)?\s*\d[\d\s,&–—-]*(?:and\s*\d+\s*)?(?:rows?)?\s*[:=–—-]?\s*(?:in\s+|with\s+|colou?r\s+|yarn\s+)?([\pL][\pL\d' ]{0,24})\.?$`)

// isStripe sees a line of a stripe list, which looks like a row and is none: "Rows 1-2: A".
func (r *reader) isStripe(l line) bool {
	m := stripeForm.FindStringSubmatch(l.text)
	if m == nil {
		return false
	}
	name := strings.TrimSpace(m[1])
	if _, ok := r.p.Yarn(strings.ToUpper(name)); ok || len(name) == 1 && name == strings.ToUpper(name) || name == "MC" || name == "CC" {
		return true
	}
	for _, y := range r.p.Yarns {
		if strings.EqualFold(y.Name, name) || strings.EqualFold(y.Shade, name) {
			return true
		}
	}
	return colourByWord()[strings.ToLower(name)] != ""
}

// stripe keeps a line of a stripe list as a remark.
func (r *reader) stripe(l line) {
	if r.section == instructions {
		r.close()
		r.write(&passage{remark: true, parts: []part{part(l)}})
		return
	}
	r.prose = append(r.prose, l.text)
}
