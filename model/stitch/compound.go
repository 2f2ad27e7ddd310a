package stitch

import (
	"fmt"
	"strconv"
	"strings"
)

// maxLegs is more than any pattern draws together in one stitch.
const maxLegs = 40

// template is a name with a hole for the stitch it is built on and, in some,
// a number: "{n}-{abbr} cl".
type template struct {
	text   string
	before []string // pieces before the hole; "{n}" is the number
	after  []string // pieces after it
}

func newTemplate(text string) (template, error) {
	before, after, ok := strings.Cut(text, "{abbr}")
	if !ok {
		before, after, ok = strings.Cut(text, "{name}")
	}
	if !ok {
		return template{}, fmt.Errorf("template %q has no place for a stitch", text)
	}
	return template{text, pieces(before), pieces(after)}, nil
}

// pieces cuts s around "{n}".
func pieces(s string) (out []string) {
	for s != "" {
		before, after, ok := strings.Cut(s, "{n}")
		if before != "" {
			out = append(out, before)
		}
		if ok {
			out = append(out, "{n}")
		}
		s = after
	}
	return out
}

// fill puts a stitch and a number into the template.
func (t template) fill(inner string, n int) string {
	return strings.NewReplacer("{abbr}", inner, "{name}", inner, "{n}", strconv.Itoa(n)).Replace(t.text)
}

// join fills the template with an abbreviation; one of several words does not run into the rest: "bl sl st".
func (t template) join(abbr string, n int) string {
	if strings.Contains(abbr, " ") && len(t.before) > 0 && !strings.HasSuffix(t.before[len(t.before)-1], " ") {
		abbr = " " + abbr
	}
	return t.fill(abbr, n)
}

// match finds the stitch and the number in s; n is 0 for templates without one.
func (t template) match(s string) (inner string, n int, ok bool) {
	for _, p := range t.before {
		if p == "{n}" {
			rest := strings.TrimLeft(s, "0123456789")
			n = number(s[:len(s)-len(rest)])
			s, ok = rest, n > 0
		} else {
			s, ok = strings.CutPrefix(s, p)
		}
		if !ok {
			return "", 0, false
		}
	}
	for i := len(t.after) - 1; i >= 0; i-- {
		if t.after[i] == "{n}" {
			rest := strings.TrimRight(s, "0123456789")
			n = number(s[len(rest):])
			s, ok = rest, n > 0
		} else {
			s, ok = strings.CutSuffix(s, t.after[i])
		}
		if !ok {
			return "", 0, false
		}
	}
	return s, n, s != ""
}

// number reads how many legs are meant; 0 when it is no number of legs.
func number(s string) int {
	n, err := strconv.Atoi(s)
	if err != nil || n < 2 || n > maxLegs {
		return 0
	}
	return n
}

// compound is a modifier made ready for use.
type compound struct {
	*modifier
	canonical template
	by        map[string]forms // by terms
	loop      Loop
	post      Post
	lump      Lump
	counted   bool // its name carries a number of legs
}

// forms are a compound's names in one set of terms.
type forms struct {
	name, abbr template
	read       []template // folded: all that are read as abbreviations
	spelled    []template
	sure       bool
}

func newCompound(m *modifier) (c compound, err error) {
	c = compound{modifier: m, by: make(map[string]forms), counted: m.Gather != ""}
	if c.canonical, err = newTemplate(m.Pattern); err != nil {
		return c, err
	}
	gather := m.Gather
	if gather == "together" {
		gather = ""
	}
	var okLoop, okPost, okLump bool
	c.loop, okLoop = loops[m.Loop]
	c.post, okPost = posts[m.Post]
	c.lump, okLump = lumps[gather]
	if !okLoop || !okPost || !okLump {
		return c, fmt.Errorf("modifier %q: unknown loop, post or gather", m.Pattern)
	}
	for lang, t := range m.byTerms() {
		f := forms{sure: t.Sure}
		if f.name, err = newTemplate(t.Name); err != nil {
			return c, fmt.Errorf("modifier %q: %w", m.Pattern, err)
		}
		if f.abbr, err = newTemplate(t.Abbr); err != nil {
			return c, fmt.Errorf("modifier %q: %w", m.Pattern, err)
		}
		for _, text := range append([]string{t.Name, t.Abbr}, t.Also...) {
			spelled := strings.Contains(text, "{name}")
			if !spelled {
				text = fold(text)
			}
			tm, err := newTemplate(text)
			if err != nil {
				return c, fmt.Errorf("modifier %q: %w", m.Pattern, err)
			}
			if spelled {
				f.spelled = append(f.spelled, tm)
			} else {
				f.read = append(f.read, tm)
			}
		}
		c.by[lang] = f
	}
	return c, nil
}

// fits reports whether the rule makes sense on k: a post, loop or length is
// said once, and only a plain stitch is drawn together with its like.
func (c *compound) fits(k *Kind) bool {
	if k.Plain.Legs == 0 || k.Composition == "" && k.Legs <= 1 {
		return false
	}
	if c.counted {
		return k.Legs == 1 && k.Lump == NoLump && k.Bases == 1 && k.Offers == 1
	}
	return k.Post == NoPost && k.Loop == BothLoops && k.Below == 0
}

// build makes the compound of a canonical name, by the first rule that fits.
func (l *Library) build(name string) (*Kind, bool) {
	for i := range l.modifiers {
		c := &l.modifiers[i]
		inner, n, ok := c.canonical.match(name)
		if !ok {
			continue
		}
		if k, ok := l.Kind(inner); ok && c.fits(k) {
			return c.apply(k, n), true
		}
	}
	return nil, false
}

// apply makes the compound of k with n legs.
func (c *compound) apply(k *Kind, n int) *Kind {
	out := *k
	out.Name = c.canonical.fill(k.Name, n)
	out.ID = strings.ReplaceAll(out.Name, " ", "-")
	out.Family = c.Family
	out.Terms = c.names(k, n)
	out.Height *= c.Height
	switch {
	case c.counted:
		c.gather(&out, k, n)
	case c.post != NoPost:
		out.Post = c.post
		out.Composition = strings.ReplaceAll(k.Composition, "(top)", "("+c.Post+" post)")
		out.TurningChain = max(1, k.TurningChain-1) // a plain stitch at the edge, lower to match
	case c.loop != BothLoops:
		out.Loop = c.loop
		out.Composition = strings.ReplaceAll(k.Composition, "(top)", "("+c.Loop+" loop)")
	}
	if c.Below > 0 {
		out.Below = c.Below
		out.Composition = strings.ReplaceAll(k.Composition, "(top)", "(below)")
	}
	return &out
}

// gather gives out n legs of k, one each or all in one place.
func (c *compound) gather(out, k *Kind, n int) {
	out.Legs, out.Lump = n, c.lump
	part, loops := leg(k.Composition)
	if c.lump == NoLump {
		out.Bases = n
		out.Composition = fmt.Sprintf("[%s] x%d; off%d", part, n, n*loops+1)
		return
	}
	out.SamePlace = true
	part = strings.ReplaceAll(part, "(top)", "(same)")
	out.Composition = fmt.Sprintf("[%s] x%d; off%d", part, n, n*loops+1)
	switch c.lump {
	case Bobble:
		out.Composition += "; ch1"
	case Popcorn:
		out.Closed = true
		out.Composition = fmt.Sprintf("[st(%s)] x%d; drop; ins(first of them); catch; off1", k.Name, n)
	}
}

// names are the compound's names in all terms in which both parts have one.
func (c *compound) names(k *Kind, n int) map[string]Term {
	m := make(map[string]Term, len(c.by))
	for lang, f := range c.by {
		t, ok := k.Terms[lang]
		if !ok {
			continue
		}
		abbr := t.Abbr
		if abbr == "" {
			abbr = t.Name
		}
		m[lang] = Term{Name: f.name.fill(t.Name, n), Abbr: f.abbr.join(abbr, n), Sure: f.sure && t.Sure}
	}
	return m
}
