package page

import (
	"regexp"
	"strings"
)

// line is one line of the page.
type line struct {
	at   int    // where its text begins in the page, in bytes
	text string // without the blanks around it and the marks of a web page
}

func (l line) blank() bool { return l.text == "" }

// boldHead is a heading between the marks that web pages set for bold type: "**Row 1:** ch 1".
var boldHead = regexp.MustCompile(`^(#{1,6}\s+|(?:\*\*|__)([^*_]{1,60})(?:\*\*|__))`)

// ruledHead is a heading between ornaments: "~ HEAD ~".
var ruledHead = regexp.MustCompile(`^[~=_*•-]{1,5}\s+(\pL[^~=_*•-]{1,40}?)\s+[~=_*•-]{1,5}$`)

// cut parts a page into lines.
func cut(text string) []line {
	var out []line
	at := 0
	for raw := range strings.Lines(text) {
		s := strings.TrimLeft(raw, " \t\u00a0\u200b\ufeff>")
		l := line{at: at + len(raw) - len(s)}
		at += len(raw)
		l.text = strings.TrimRight(s, " \t\n\r\u00a0\u200b")
		if m := ruledHead.FindStringSubmatchIndex(l.text); m != nil {
			l.at, l.text = l.at+m[2], l.text[m[2]:m[3]]
		}
		if m := boldHead.FindStringSubmatchIndex(l.text); m != nil {
			from := m[1]
			if m[4] >= 0 { // blanks stand for the closing mark, so that places stay
				from = m[4]
				l.text = l.text[:m[5]] + strings.Repeat(" ", m[1]-m[5]) + l.text[m[1]:]
			}
			l.at, l.text = l.at+from, strings.TrimRight(l.text[from:], " ")
		}
		out = append(out, l)
	}
	return out
}

// part is a stretch of the page within a passage.
type part struct {
	at   int // in the page
	text string
}

// passage is a row, or a remark, joined from the lines over which it was set.
type passage struct {
	parts  []part
	remark bool
}

// brokenWord is the end of a line that cuts a word.
var brokenWord = regexp.MustCompile(`\pL\pL-$`)

// add joins the next line to a passage.
func (p *passage) add(l line) {
	if n := len(p.parts); n > 0 {
		last := &p.parts[n-1]
		first := l.text[0]
		switch {
		case brokenWord.MatchString(last.text) && first >= 'a' && first <= 'z':
			last.text = last.text[:len(last.text)-1] // chang-|ing
		case strings.HasSuffix(last.text, "-") && first != ' ': // ch-|2 sp
		default:
			last.text += " "
		}
	}
	p.parts = append(p.parts, part(l))
}

func (p *passage) text() string {
	var b strings.Builder
	for _, t := range p.parts {
		b.WriteString(t.text)
	}
	return b.String()
}

// from is the passage without its first n bytes.
func (p *passage) from(n int) *passage {
	q := &passage{remark: p.remark}
	for _, t := range p.parts {
		if n >= len(t.text) {
			n -= len(t.text)
			continue
		}
		q.parts = append(q.parts, part{t.at + n, t.text[n:]})
		n = 0
	}
	return q
}

// to is the passage up to byte n.
func (p *passage) to(n int) *passage {
	q := &passage{remark: p.remark}
	for _, t := range p.parts {
		if n <= 0 {
			break
		}
		q.parts = append(q.parts, part{t.at, t.text[:min(n, len(t.text))]})
		n -= len(t.text)
	}
	return q
}
