package page

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"strandway/model/pattern"
)

// isSection sees the heading of a part of the page and enters it.
func (r *reader) isSection(i int, l line) bool {
	s, rest, ok := sectionHead(l.text)
	if !ok || r.section == instructions && len(r.pieces) > 0 && r.piece().begun && s != notes && s != finishing && s != specials && s != colours && s != instructions && s != gauge && rest != "" {
		return false
	}
	if r.section == instructions && r.open != nil && !r.open.remark && rest != "" && r.readable(l.text) > .6 {
		return false
	}
	if s == notes && r.section == instructions { // a note among the rows
		r.close()
		r.open = &passage{remark: true}
		r.open.add(l)
		return true
	}
	r.close()
	r.endSpecial()
	r.section = s
	if s == instructions && rest == "" {
		r.prose = append(r.prose, l.text)
		return true
	}
	r.fact(l, true)
	return true
}

// pieceWords are words of which one makes a short line the heading of a piece.
var pieceWords = regexp.MustCompile(`(?i)\b(?:body|sleeves?|front|back|edging|border|base|sides?|strap|handles?|cuff|crown|brim|leg|foot|heel|toe|thumb|head|arms?|ears?|tail|wings?|beak|nose|panel|square|motif|centre|center|flower|leaf|leaves|petals?|stem|collar|band|ribbing|hood|pocket|yoke|gusset|hand|top|bottom|lid|main|part|section|strips?|block|hexagon|triangle|circle|half|welt|lapel|brim|blanket|scarf|shawl|hat|mitt|sock|bag|basket|cushion|swatch|wings?|claws?|fins?|spikes?|round|trim|flap|bow|stitch pattern|make \d+|make two)\b`)

// chatter begins a line that speaks to the reader and heads nothing.
var chatter = regexp.MustCompile(`(?i)^(?:let'?s|let’s|now|ok|okay|here|time|ready|you|we|i|i'm|it|this|that|so|and|but|if|when|please|enjoy|happy|thank|hi|hello|don't|love|done|that's|by|design(?:ed)? by|pattern by|copyright|©)\b`)

// plainName is a heading of one word in capitals, which no instruction is.
var plainName = regexp.MustCompile(`^[A-Z]{4,}$`)

// firstOf names one of several alike.
var firstOf = regexp.MustCompile(`^(?:First|Second|Third|Fourth|Left|Right|Upper|Lower) \pL+(?: and all following)?$|^(?:Left|Right) and (?:left|right|Left|Right)(?: alike)?$`)

// shaping is a heading that reads as an instruction.
var shaping = regexp.MustCompile(`(?i)^(?:(?:increase|decrease|increasing|decreasing|increases|decreases)(?: (?:section|part|rows|rounds|rnds|half|side))?|(?:inc|dec)rease to .*)$`)

// fits begins a line of measures.
var fits = regexp.MustCompile(`(?i)^(?:fits|height|width|length|weight|yarn|level|time)\b`)

// isPieceHead sees a short line that heads a piece.
func (r *reader) isPieceHead(i int, l line) bool {
	text := strings.TrimRight(l.text, " :*#-–—")
	words := len(strings.Fields(text))
	if words == 0 || words > 7 || len(text) > 60 || chatter.MatchString(text) || strings.ContainsAny(text[len(text)-1:], ".!?,;") {
		return false
	}
	if strings.Contains(text, "...") || fits.MatchString(text) {
		return false
	}
	if _, only := r.sizesOnly(l.text); only || bareSizes.MatchString(text) || sizesWord.MatchString(text) || handwork.MatchString(text) {
		return false
	}
	if balls.MatchString(text) || metres.MatchString(text) || letterHead.MatchString(text) || letterLast.MatchString(text) || letterFirst.MatchString(text) || hookWord.MatchString(text) {
		return false // a line of materials
	}
	c := []rune(text)[0]
	if !unicode.IsUpper(c) && !unicode.IsDigit(c) && !lowerHead(text) || r.readable(text) > .6 && !plainName.MatchString(text) && !shaping.MatchString(text) || foundationAt(text) >= 0 && !strings.Contains(text, "(") {
		return false
	}
	if r.section == materials && words == 1 && text != strings.ToUpper(text) && !pieceWords.MatchString(text) {
		return false // "Stuffing"
	}
	upper := text == strings.ToUpper(text) || firstOf.MatchString(text) || shaping.MatchString(text)
	return (upper || lowerHead(text) || pieceWords.MatchString(text) || strings.HasSuffix(l.text, ":") || titled(text)) && r.rowsFollow(i)
}

// smallHead is a heading in small letters: "leaf (green, 3 pcs)".
var smallHead = regexp.MustCompile(`^[\pL][\pL ]{1,24} \(([^)]{2,30})\)$`)

// howMany says how often a piece is made.
var howMany = regexp.MustCompile(`(?i)\bpcs?\b|\bpieces?\b|\bmake\b|\bx ?\d|\d ?x\b`)

func lowerHead(text string) bool {
	m := smallHead.FindStringSubmatch(text)
	return m != nil && (howMany.MatchString(m[1]) || colourIn(m[1]) != "")
}

// titled reports whether the longer words of a line begin with capitals.
func titled(text string) bool {
	for _, w := range strings.Fields(text) {
		if c := []rune(w)[0]; len(w) > 3 && unicode.IsLetter(c) && !unicode.IsUpper(c) {
			return false
		}
	}
	return true
}

// rowsFollow reports whether a row or a foundation stands soon below a line.
func (r *reader) rowsFollow(i int) bool {
	seen := 0
	for j := i + 1; j < len(r.lines) && seen < 6; j++ {
		l := r.lines[j]
		if l.blank() {
			continue
		}
		if rowHead.MatchString(l.text) || foundationAt(l.text) >= 0 || r.sendsToAnother(l.text) {
			return true
		}
		if m := bareHead.FindStringSubmatch(l.text); m != nil && r.readable(m[2]) > .5 {
			return true
		}
		if _, rest, ok := sectionHead(l.text); ok && rest == "" {
			return false
		}
		seen++
	}
	return false
}

// keep keeps a line that heads nothing as a remark.
func (r *reader) keep(l line) {
	r.heading = nil
	if len(r.pieces) == 0 || !r.piece().begun {
		r.prose = append(r.prose, l.text)
		return
	}
	r.piece().write(&passage{parts: []part{part(l)}}, "Note: ")
}

// fact takes what a line outside the rows says, and keeps it.
func (r *reader) fact(l line, gap bool) {
	if len(r.prose) > 0 && gap {
		r.prose = append(r.prose, "")
	}
	if parts := r.sentences(l); len(parts) > 1 {
		for _, one := range parts {
			r.fact(one, false)
		}
		r.endSpecial()
		return
	}
	if colon := strings.Index(l.text, ":"); colon > 0 && r.section != abbreviations {
		r.rule(l.text[colon+1:])
	}
	if r.section == specials && (r.special != nil || r.defines(l)) {
		r.addSpecial(l)
		return
	}
	if r.defines(l) && (r.section != abbreviations || len(strings.Fields(l.text)) > 7 && !strings.Contains(l.text, ";")) {
		r.addSpecial(l)
		return
	}
	r.prose = append(r.prose, l.text)
	r.told = r.told || !noTitle.MatchString(l.text)
	r.rule(l.text)
	r.statedMultiple(l.text)
	r.shorts(l.text)
	r.hookSize(l.text)
	r.gauge(l.text)
	r.sizeNames(l.text)
	r.yarns(l.text)
	if m := madeBy.FindStringSubmatch(l.text); m != nil && r.p.Designer == "" {
		r.p.Designer = strings.TrimSpace(m[1])
	}
}

var madeBy = regexp.MustCompile(`(?i)^(?:a )?(?:pattern |design(?:ed)? )?by:?\s+(\pLu?[^.,!?]{2,40})$`)

// rule keeps a sentence that governs the rows, to set it above them.
func (r *reader) rule(text string) {
	for s := range strings.SplitSeq(text, ". ") {
		if s = strings.Trim(s, " .•-*"); governs.MatchString(s) && len(s) < 200 {
			if s = strings.TrimPrefix(strings.TrimPrefix(s, "Note: "), "Notes: "); !slices.Contains(r.rules, s) {
				r.rules = append(r.rules, s)
			}
		}
	}
}

var governs = regexp.MustCompile(`(?i)\b(?:ch(?:ain)?s?\b.*\b(?:not |n't |n’t )?counts?\b(?: as)?|do(?:es)? not turn\b|never turn|(?:don't|don’t) (?:ever )?turn|without turning|(?:all|every) (?:rows?|rounds?|rnds?).*(?:right side|RS))`)

var (
	hookMM     = regexp.MustCompile(`(?i)(\d{1,2}(?:[.,]\d{1,2})?)\s*-?\s*mm\b`)
	hookWord   = regexp.MustCompile(`(?i)\bhook|^needle`)
	hookLetter = regexp.MustCompile(`\b([B-T])(?:\s*[-/ ]\s*(\d{1,2}(?:\.\d+)?|1½))?\b`)
)

// hookSize finds the hook, in millimetres or by its US letter.
func (r *reader) hookSize(text string) {
	if r.p.Hook.MM != 0 || r.section != hook && !hookWord.MatchString(text) {
		return
	}
	if m := hookMM.FindStringSubmatch(text); m != nil {
		r.p.Hook.MM, _ = strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
		return
	}
	near := text
	if at := hookWord.FindStringIndex(text); at != nil {
		near = text[max(0, at[0]-24):min(len(text), at[1]+24)]
	}
	for _, m := range hookLetter.FindAllStringSubmatch(near, -1) {
		if mm := hookByLetter()[m[1]]; mm != 0 {
			r.p.Hook.MM = mm
			return
		}
	}
}

var (
	measureCM = regexp.MustCompile(`(?i)\d\s*(?:cm|mm)\b`)
	measureIn = regexp.MustCompile(`(?i)\d\s*(?:in\b|ins\b|inch|"|”|″)`)

	gaugeStitches = regexp.MustCompile(`(?i)(\d{1,3}(?:\.\d+)?)\s*(?:sts?|stitches|sc|hdc|dc|tr|htr|half|single|double|treble)\b`)
	gaugeRows     = regexp.MustCompile(`(?i)(\d{1,3}(?:\.\d+)?)\s*(?:rows|rnds|rounds|r)\b`)
	gaugeOver     = regexp.MustCompile(`(?i)(\d{1,2}(?:\.\d+)?)\s*(cm|in\b|ins\b|inch|inches|"|”|″)`)
)

// gauge finds stitches and rows over a length.
func (r *reader) gauge(text string) {
	if r.section != gauge && !strings.Contains(strings.ToLower(text), "gauge") || r.p.Gauge.Stitches != 0 {
		return
	}
	over := gaugeOver.FindStringSubmatch(text)
	if over == nil {
		return
	}
	var g pattern.Gauge
	if m := gaugeStitches.FindStringSubmatch(text); m != nil {
		g.Stitches, _ = strconv.ParseFloat(m[1], 64)
	}
	if m := gaugeRows.FindStringSubmatch(text); m != nil {
		g.Rows, _ = strconv.ParseFloat(m[1], 64)
	}
	g.OverCM, _ = strconv.ParseFloat(over[1], 64)
	if over[2] != "cm" {
		g.OverCM *= 2.54
		if g.OverCM > 10.1 && g.OverCM < 10.2 {
			g.OverCM = 10 // 4 in and 10 cm are one measure to the trade
		}
	}
	if g.Stitches != 0 && g.OverCM != 0 {
		r.p.Gauge = g
	}
}

var (
	sizeList = regexp.MustCompile(`^\s*([\pL\d][\pL\d /-]{0,20}?)\s*[(\[]([\pL\d][^)\]]{0,80})[)\]](?:\s*[(\[]([^)\]]{1,60})[)\]])*\s*\.?$`)
	hasName  = regexp.MustCompile(`^(?:(?:X{0,3}[SML]|\dX)/(?:X{0,3}[SML]|\dX)|\d{0,2}X{0,3}[SL]|XX?[SL]|M|[SML]\d?|\d{1,2}X|[A-Z][a-z]+.*|(?i:small|medium|large|child|adult|toddler|baby|newborn).*)$`)
)

// sizeNames finds the names of the sizes: "S (M, L)".
func (r *reader) sizeNames(text string) {
	if m := sizesInText.FindStringSubmatch(text); m != nil && len(r.p.Sizes) == 0 && r.namesSizes(m[1], m[2]) {
		return
	}
	if m := sizesByAge.FindStringSubmatch(text); m != nil && len(r.p.Sizes) == 0 {
		for _, name := range append([]string{m[1]}, listOf.FindAllString(m[2], -1)...) {
			r.p.Sizes = append(r.p.Sizes, pattern.Size{Name: name})
		}
		return
	}
	s, rest, ok := sectionHead(text)
	if r.section != sizes && !sizesWord.MatchString(text) && !bareSizes.MatchString(text) || len(r.p.Sizes) > 0 {
		return
	}
	if !ok || s != sizes {
		rest = text
	}
	rest = strings.TrimRight(sizesWord.ReplaceAllString(strings.TrimSpace(rest), ""), " .")
	m := sizeList.FindStringSubmatch(rest)
	if m == nil {
		return
	}
	if m[3] != "" {
		m[2] += "," + m[3]
	}
	r.namesSizes(m[1], m[2])
}

// sizesInText names sizes within a sentence: "in two sizes: Child (Adult)".
var sizesInText = regexp.MustCompile(`(?i:\bsizes?|^to fit)\b:?\s+(?i:(?:ladies|women|men|adults?|kids|child(?:ren)?|girls|boys)['’]?s?\s+)?([\pL\d][\pL\d/-]{0,12}(?: [SML])?)\s*[(\[]([\pL\d][^)\]]{0,80})[)\]]`)

// sizesByAge names sizes by numbers: "Sizes: 2 (4, 6) years", "To fit ages 3-6 (6-12) months".
var (
	sizesByAge = regexp.MustCompile(`(?i)^(?:to fit |size |sizes )?(?:sizes?|ages?|years|to fit)\b:?\s*(?:to fit )?(?:ages?:?\s*)?(\d{1,3}(?:[-–/]\d{1,3})?)\s*[(\[]((?:\d{1,3}(?:[-–/]\d{1,3})?[\s,:;]*)+)[)\]]\s*(?:years?|months?|mths?|yrs?|$|[–—-])`)
	listOf     = regexp.MustCompile(`\d{1,3}(?:[-–/]\d{1,3})?`)
)

// namesSizes takes names for those of the sizes, if they can be.
func (r *reader) namesSizes(first, others string) bool {
	between := ",;:"
	if !strings.ContainsAny(others, between) && strings.Count(others, "-") > 1 {
		between = "-" // S (M-L-XL)
	}
	list := append([]string{first}, strings.FieldsFunc(others, func(c rune) bool { return strings.ContainsRune(between, c) })...)
	seen := map[string]bool{}
	var out []pattern.Size
	for _, name := range list {
		if name = strings.Trim(name, " ,"); name == "" {
			continue
		}
		if !hasName.MatchString(name) || seen[name] {
			return false
		}
		seen[name] = true
		out = append(out, pattern.Size{Name: name})
	}
	r.p.Sizes = out
	return true
}

var bareSizes = regexp.MustCompile(`^(?:XS|S|Small|One|0-3)\s*[(\[]`)

var sizesWord = regexp.MustCompile(`(?i)^(?:(?:women|men|child|children|adult|baby)(?:['’]?s)?\s+)?sizes?:?\s+`)

var multipleForm = regexp.MustCompile(`(?i)multiples? of\s+(\d{1,3})\s*(?:sts?|stitches|ch|chains?)?\s*(?:(\+|plus|add)\s*(\d{1,3}))?`)

// statedMultiple finds "multiple of 6 + 1" and gives it to the piece, or to the one that is to come.
func (r *reader) statedMultiple(text string) {
	m := multipleForm.FindStringSubmatch(text)
	if m == nil || m[1] == "0" {
		return
	}
	multiple := m[1]
	if m[3] != "" {
		multiple += " + " + m[3]
	}
	if len(r.pieces) == 0 {
		r.multiple = multiple
	} else if p := r.piece(); p.multiple == "" {
		p.multiple = multiple
	}
}
