package page

import (
	"regexp"
	"strconv"
	"strings"
)

// foundation sees the chain or ring with which a piece begins, with what stands before it in its sentence.
func (r *reader) foundation(l line, gap bool) bool {
	at := foundationAt(l.text)
	if m := definitionForm.FindStringSubmatch(l.text); at > 0 && m != nil { // how a stitch of the library is made
		if _, ok := r.lib.Read(strings.TrimSpace(m[1]), strings.ToLower(r.terms)); ok {
			return false
		}
	}
	if at < 0 || r.section == abbreviations && !(gap && (at == 0 || withHook.MatchString(l.text[:at]) || commences.MatchString(l.text))) || r.section == gauge && swatch.MatchString(l.text) || r.open != nil && !r.open.remark && !gap && r.heading == nil && !r.piece().ended {
		return false
	}
	if r.section == specials && (r.special != nil || at > 0 && !gap) {
		return false
	}
	if len(r.pieces) > 0 && r.piece().begun && r.heading == nil && !r.piece().ended && !(gap && at == 0) {
		return false
	}
	if r.section != instructions && at > 0 && r.readable(l.text[at:]) < .5 {
		return false
	}
	r.close()
	r.section = instructions
	if p := r.piece(); p.begun || r.heading != nil && p.rows.Len() > 0 {
		p = r.begin()
	} else if r.heading != nil {
		r.rename(p)
	}
	r.statedMultiple(l.text)
	if at > 0 {
		r.write(&passage{remark: true, parts: []part{{l.at, strings.TrimRight(l.text[:at], " ")}}})
		l = line{l.at + at, l.text[at:]}
	}
	r.open = &passage{}
	r.open.add(l)
	return true
}

// swatch are words of a foundation for the swatch alone.
var swatch = regexp.MustCompile(`(?i)gauge|swatch|tension`)

// foundationLead is what a foundation is called before it is given.
var foundationLead = regexp.MustCompile(`(?i)^(?:foundation|base|start(?:ing)?|ring|begin(?:ning)?|set-?up)\b.{0,20}:$`)

// withYarn is the yarn named before the chain of a foundation.
var withYarn = regexp.MustCompile(`(?i)\b(?:with|using|in)\s+[^.;]{1,48}$`)

// addsChains stands before the chains of another repeat.
var addsChains = regexp.MustCompile(`(?i)\badd(?:ing)?\s+(?:another\s+)?$`)

// commences begins the sentence of a foundation.
var commences = regexp.MustCompile(`(?i)^(?:commence|begin|start|using|with|make)\b`)

// loopOnly is what follows the chain of a hanging loop.
var loopOnly = regexp.MustCompile(`(?i)^,?\s*(?:and )?(?:sl st|slip st\w*|ss|join)\s+(?:in|into|to|at)\s+(?:the\s+)?(?:last|same|next|base|other)\b`)

// leadYarn is all that stands before the chain of a small piece: "With B, ch 5."
var leadYarn = regexp.MustCompile(`(?i)^(?:with|using|in)\s+(?:(?:colou?r|yarn)\s+)?[\pL\d]+,?\s+$`)

// withHook is what stands before a foundation that begins "Using the No. 10 hook, commence with".
var withHook = regexp.MustCompile(`(?i)^(?:using|with)\b[^:;]{1,60}$`)

// joins is the join that makes a ring of a chain.
var joins = regexp.MustCompile(`(?i)^[\s,;.]*(?:and )?(?:then )?(?:join|sl st|slip st|ss\b|unite|close)`)

// foundationAt is where a foundation begins in a line, -1 without one.
func foundationAt(text string) int {
	at := -1
	if m := ringStart.FindStringIndex(text); m != nil && m[0] < 40 && !strings.Contains(text[:m[0]], ":") {
		at = max(0, strings.LastIndex(strings.ToLower(text[:m[0]]), "make"))
	}
	if chain := chainIn(text); chain >= 0 && (at < 0 || chain < at) {
		at = chain
	}
	if at > 0 {
		if m := withYarn.FindStringIndex(text[:at]); m != nil {
			at = m[0]
		}
		if lead := strings.TrimSpace(text[:at]); foundationLead.MatchString(lead) {
			at = 0
		}
	}
	return at
}

// chainIn is where a foundation chain is asked for in a line, -1 if nowhere: by its number where there is one,
// else by "a multiple of".
func chainIn(text string) int {
	unnumbered := -1
	for _, m := range chainStart.FindAllStringSubmatchIndex(text[:min(len(text), 160)], 4) {
		n := 0
		for g := 2; g < len(m); g += 2 {
			if m[g] >= 0 {
				n, _ = strconv.Atoi(text[m[g]:m[g+1]])
			}
		}
		after := text[m[1]:]
		ring := ringStart.MatchString(after) || joins.MatchString(after)
		switch {
		case strings.HasSuffix(strings.TrimRight(text[:m[0]], " "), "="): // a definition
		case addsChains.MatchString(text[:m[0]]): // "for a longer edging add 8 ch"
		case loopOnly.MatchString(after): // of a finished piece
			return -1
		case strings.Count(text[:m[0]], "(") > strings.Count(text[:m[0]], ")"): // an explanation
		case notChain.MatchString(after):
		case n == 0:
			if unnumbered < 0 {
				unnumbered = m[0]
			}
		case n < 6 && !ring && !fromHook.MatchString(after) && (m[0] > 0 && !leadYarn.MatchString(text[:m[0]]) || strings.Trim(after, " .") != ""):
			if m[0] == 0 {
				return -1 // a turning chain
			}
		default:
			return m[0]
		}
	}
	return unnumbered
}

// rename gives a piece without rows the heading met since.
func (r *reader) rename(p *piece) {
	delete(r.names, p.name)
	r.pieces = r.pieces[:len(r.pieces)-1]
	q := r.begin()
	p.name, r.pieces[len(r.pieces)-1] = q.name, p
}
