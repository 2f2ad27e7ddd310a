package rows

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"strandway/app/session"
	"strandway/app/translation"
	"strandway/model/diag"
	"strandway/model/syntax"
)

// paragraph is one written row on the page, or a line that stands between rows.
type paragraph struct {
	gone     bool      // it would go, were the rows written another way
	come     []string  // lines that would come behind it
	span     diag.Span // in the present rows, without the line break
	head     int       // bytes of the heading, which the page shows as number and side
	row      int       // index in the tree, -1 for a line between rows
	number   string    // "4", "6–60", "" without one
	side     string    // "RS", "WS", ""
	tag      string    // what stands in the place of a number: "Start"
	count    string    // the yarn that its heading names and what it comes to, "" where its words say so
	works    []int     // the fabric rows it makes
	findings []diag.Finding
	unsure   bool   // it stands on a fault
	stands   string // says so, of the first such row
}

// paragraphs divides the present text into rows. What has been made may be of an older text, and nil at
// first; since carries its places over.
func paragraphs(text string, m *session.Made, since session.Shift, findings diag.List, unsure *session.Unsure) []paragraph {
	starts := []int{0}
	for i := range len(text) {
		if text[i] == '\n' && i+1 < len(text) {
			starts = append(starts, i+1)
		}
	}
	if strings.HasSuffix(text, "\n") {
		starts = append(starts, len(text))
	}
	if m != nil {
		// A row that runs over several lines is one paragraph; two on one line are two.
		for _, r := range m.Tree().Rows {
			row := since.Span(r.Span)
			if !since.Touched(r.Span) || strings.Contains(m.Rows()[r.Span.Start:r.Span.End], "\n") {
				starts = slices.DeleteFunc(starts, func(at int) bool { return at > row.Start && at < row.End })
			} // else a line that was put into the row is seen as one at once
			starts = append(starts, row.Start)
		}
	}
	slices.Sort(starts)
	starts = slices.Compact(starts)

	var list []paragraph
	for k, at := range starts {
		end := len(text)
		if k+1 < len(starts) {
			end = starts[k+1]
		}
		end = at + len(strings.TrimSuffix(text[at:end], "\n"))
		list = append(list, paragraph{span: diag.Span{Start: at, End: end}, row: -1})
	}
	if m == nil {
		return list
	}
	for i, r := range m.Tree().Rows {
		start := since.At(r.Span.Start)
		k, found := slices.BinarySearchFunc(list, start, func(p paragraph, at int) int { return p.span.Start - at })
		if !found {
			continue
		}
		list[k].describe(i, r, m, since)
	}
	markUnsure(list, unsure)
	for _, fd := range findings {
		if fd.Span.Len() == 0 {
			continue
		}
		for k := range list {
			if p := &list[k]; fd.Span.Start >= p.span.Start && fd.Span.Start <= p.span.End {
				p.findings = append(p.findings, fd)
				break
			}
		}
	}
	return list
}

// markUnsure marks the rows that stand on a fault.
func markUnsure(list []paragraph, unsure *session.Unsure) {
	first := true
	for k := range list {
		p := &list[k]
		if len(p.works) == 0 || !unsure.Rows[p.works[0]] {
			continue
		}
		p.unsure = true
		if first {
			p.stands = translation.Fill("From here on all stands on the fault in {{.Row}}.", "Row", unsure.On)
		}
		first = false
	}
}

// describe fills in what the tree and the fabric know of a row.
func (p *paragraph) describe(index int, r *syntax.Row, m *session.Made, since session.Shift) {
	f := m.Fabric()
	p.row = index
	if r.Head.Len() > 0 {
		p.head = min(max(since.At(r.Head.End)-p.span.Start, 0), p.span.Len())
	}
	switch {
	case r.To > r.From:
		p.number = fmt.Sprintf("%d–%d", r.From, r.To)
	case r.From > 0:
		p.number = strconv.Itoa(r.From)
	case len(r.List) > 0:
		p.number = strconv.Itoa(r.List[0]) + "…"
	case r.Named != "" || r.Head.Len() > 0:
		p.tag = "Start"
	}
	p.works = m.Works(index)
	switch r.Side {
	case 'R':
		p.side = "RS"
	case 'W':
		p.side = "WS"
	case 0:
		if len(p.works) == 1 && p.number != "" {
			p.side = "RS"
			if f.Rows[p.works[0]].WS {
				p.side = "WS"
			}
		}
	}
	if len(p.works) > 0 && !saysNumber(r) {
		last := &f.Rows[p.works[len(p.works)-1]]
		if last.Count > 0 {
			p.count = fmt.Sprintf("%d sts", last.Count)
		} else if last.Chains > 0 {
			p.count = fmt.Sprintf("%d ch", last.Chains)
		}
	}
	if p.head > 0 && r.Yarn != "" {
		p.count = strings.TrimSuffix(r.Yarn+" · "+p.count, " · ")
	}
}

// saysNumber reports whether the row states its count for the size shown: a formula in n does not.
func saysNumber(r *syntax.Row) bool {
	return len(r.Count) > 0 && !slices.ContainsFunc(r.Count, func(t syntax.Tally) bool { return t.N.A != 0 || t.N.Sizes != nil })
}

// worst is the gravest finding of the row, nil without any.
func (p *paragraph) worst() *diag.Finding {
	var worst *diag.Finding
	for i := range p.findings {
		if worst == nil || p.findings[i].Severity > worst.Severity {
			worst = &p.findings[i]
		}
	}
	return worst
}
