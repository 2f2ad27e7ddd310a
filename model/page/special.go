package page

import (
	"regexp"
	"strings"

	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// special is a stitch definition being gathered.
type special struct {
	lines []string
}

// definitionForm is "Shell (sh): 5 dc in next st", "V-st = (dc, ch 1, dc) in same st".
var definitionForm = regexp.MustCompile(`^[-•*]?\s*([\pL\d][\pL\d' /-]{0,40}?)\s*(?:[(\[]\s*([^)\]]{1,24}?)\s*[)\]])?\s*(?:is\s*)?(?::|=|\s[–—-]\s)\s*(\S.*)$`)

// sentences parts a line of several definitions: "Shell = 5 dc in st. Picot = ch 3, sl st in 3rd ch from hook."
func (r *reader) sentences(l line) []line {
	var out []line
	at := 0
	for _, m := range nextDefinition.FindAllStringIndex(l.text, -1) {
		next := line{l.at + m[0] + 1, strings.TrimLeft(l.text[m[0]+1:], " ")}
		if !r.defines(next) {
			continue
		}
		out = append(out, line{l.at + at, strings.TrimSpace(l.text[at : m[0]+1])})
		at = m[0] + 1
	}
	return append(out, line{l.at + at, strings.TrimSpace(l.text[at:])})
}

// nextDefinition is the end of one definition and the name of the next.
var nextDefinition = regexp.MustCompile(`\. +\p{Lu}[\pL -]{1,24}(?:\([^)]{1,12}\))?\s*[=:]`)

// defines sees a line that defines a stitch of the designer's own.
func (r *reader) defines(l line) bool {
	m := definitionForm.FindStringSubmatch(l.text)
	if m == nil || rowHead.MatchString(l.text) || letterFirst.MatchString(l.text) {
		return false
	}
	if _, _, ok := sectionHead(l.text); ok {
		return false
	}
	return r.definition(m) != nil
}

// definedLead stands before the name of a stitch that is defined: "For a spot: ...".
var definedLead = regexp.MustCompile(`(?i)^(?:for|to (?:make|work)) (?:an? |the |each )?`)

var capital = regexp.MustCompile(`^[-•*]?\s*\p{Lu}`)

// definition reads a definition; nil if the program could not use it.
func (r *reader) definition(m []string) *pattern.Special {
	name, short := definedLead.ReplaceAllString(strings.TrimSpace(m[1]), ""), m[2]
	s := pattern.Special{Abbreviation: short, Name: name}
	if short == "" || r.knows(short) || len(name) < len(short) && name == strings.ToUpper(name) { // "SM (solid mesh)"
		s.Abbreviation, s.Name = name, short
	}
	text := strings.TrimRight(strings.TrimSpace(m[3]), ".")
	if r.terms == "UK" {
		s.UK = text
	} else {
		s.US = text
	}
	o := syntax.ReadOptions{Library: r.lib, UK: r.terms == "UK", Units: map[string]string{s.Abbreviation: text}}
	tree, _ := syntax.Read("", o)
	if len(tree.Units) == 0 || r.knows(s.Abbreviation) {
		return nil
	}
	return &s
}

// knows reports whether a word is a stitch of the library in the page's terms that needs no definition. What
// a cluster or a puff is made of, every designer says anew.
func (r *reader) knows(word string) bool {
	k, ok := r.lib.Read(word, strings.ToLower(r.terms))
	return ok && k.Lump == stitch.NoLump
}

// shortForm is a stitch defined within a list of abbreviations: "p (picot: ch 3, sc in third ch from hook)".
var shortForm = regexp.MustCompile(`(?:^|[\s,;])([\pL-]{1,8})\s*\(([\pL -]{3,24}):\s*([^()]{4,120})\)`)

// shorts finds the stitches defined within a list of abbreviations.
func (r *reader) shorts(text string) {
	for _, m := range shortForm.FindAllStringSubmatch(text, -1) {
		if s := r.definition([]string{"", m[2], m[1], m[3]}); s != nil && r.readable(m[3]) > .7 {
			r.p.Stitches = append(r.p.Stitches, *s)
		}
	}
}

// addSpecial adds a line to the definition being gathered, or begins one.
func (r *reader) addSpecial(l line) {
	if parts := r.sentences(l); len(parts) > 1 {
		for _, one := range parts {
			r.addSpecial(one)
		}
		r.endSpecial()
		return
	}
	if r.special == nil || r.defines(l) || capital.MatchString(l.text) && definitionForm.MatchString(l.text) {
		r.endSpecial()
		r.special = &special{}
	}
	r.special.lines = append(r.special.lines, l.text)
	r.prose = append(r.prose, l.text)
}

// endSpecial reads the definition gathered.
func (r *reader) endSpecial() {
	if r.special == nil {
		return
	}
	text := strings.Join(r.special.lines, " ")
	r.special = nil
	m := definitionForm.FindStringSubmatch(text)
	if m == nil {
		return
	}
	s := r.definition(m)
	if s == nil {
		return
	}
	for _, t := range r.p.Stitches {
		if strings.EqualFold(t.Abbreviation, s.Abbreviation) {
			return
		}
	}
	r.p.Stitches = append(r.p.Stitches, *s)
}
