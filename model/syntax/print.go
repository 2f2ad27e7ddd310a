package syntax

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"strandway/model/stitch"
)

// PrintOptions say in which words rows are written.
type PrintOptions struct {
	Library    *stitch.Library
	Terms      string // "us", "uk"; "es", "de", "fr", "nl" for the stitches' names alone
	Long       bool   // stitches and places spelled out
	LeftHanded bool   // left and right change places
	Size       int    // the size whose numbers are written, from 0; -1 for all
}

// Print writes the whole tree in the one canonical form. What it writes in US or UK terms, [Read] reads back as the
// same tree.
func Print(t *Tree, o PrintOptions) string {
	p := newPrinter(t, o)
	var b strings.Builder
	notes := t.Notes
	said := map[*Note]bool{}
	writeNotes := func(before int) {
		for len(notes) > 0 && notes[0].Start <= before {
			b.WriteString(p.noteLine(notes[0]) + "\n")
			said[notes[0]] = true
			notes = notes[1:]
		}
	}
	for _, name := range t.Order {
		b.WriteString(p.definition(t.Units[name]) + "\n")
	}
	for _, kind := range slices.SortedFunc(maps.Keys(t.TchCounts), p.byHeight) {
		b.WriteString(p.chainNote(kind, t.TchCounts[kind]) + "\n")
	}
	for i, row := range t.Rows {
		writeNotes(row.Span.Start)
		if i > 0 && row.From == 0 && row.Named == "" {
			b.WriteString("\n") // a line of its own, not the end of the row above
		}
		b.WriteString(p.row(row) + "\n")
	}
	if n := len(t.Rows); n > 0 && len(notes) > 0 {
		b.WriteString("\n")
	}
	writeNotes(len(t.Text) + 1)
	return b.String()
}

// PrintRow writes row i of the tree, its heading and its count included.
func PrintRow(t *Tree, i int, o PrintOptions) string { return newPrinter(t, o).row(t.Rows[i]) }

// PrintNodes writes instructions as they stand within a row.
func PrintNodes(nodes []Node, o PrintOptions) string { return newPrinter(nil, o).seq(nodes) }

type printer struct {
	o     PrintOptions
	tree  *Tree
	words wording
	round bool // the row at hand is a round
	stars int  // how many starred repeats are open
	group bool // within a group: bare stitches go into its place
}

func newPrinter(t *Tree, o PrintOptions) *printer {
	if t == nil {
		t = &Tree{}
	}
	return &printer{o: o, tree: t, words: wordingOf(o)}
}

// wording holds the words of the rows that have more than one form.
type wording struct {
	st, sts, ch, sp, sps, skip, skipped, rep, rnd, tch string
}

func wordingOf(o PrintOptions) wording {
	w := wording{"st", "sts", "ch", "sp", "sps", "skip", "skipped", "rep", "Rnd", "tch"}
	if o.Long {
		w = wording{"stitch", "stitches", "chain", "space", "spaces", "skip", "skipped", "repeat", "Round", "turning chain"}
	}
	if o.Terms == "uk" {
		w.skip, w.skipped = "miss", "missed"
	}
	return w
}

// noteLine writes a remark on a line of its own.
func (p *printer) noteLine(n *Note) string {
	t, _ := Read(n.Text, ReadOptions{Library: p.o.Library, UK: p.o.Terms == "uk"})
	if len(t.Rows) == 0 && len(t.Notes) == 1 && t.Notes[0].Text == n.Text && len(t.Order)+len(t.TchCounts) == 0 {
		return n.Text
	}
	return "Note: " + n.Text
}

// chainNote writes a note about turning chains.
func (p *printer) chainNote(kind string, c Counting) string {
	n := 3
	if k, ok := p.o.Library.Kind(kind); ok {
		n = k.TurningChain
	}
	verb := "counts"
	if c == CountsNot {
		verb = "does not count"
	}
	return fmt.Sprintf("Note: %s %d %s as %s throughout.", p.words.ch, n, verb, p.kind(kind))
}

// byHeight orders kinds by their turning chains.
func (p *printer) byHeight(a, b string) int {
	height := func(name string) int {
		if k, ok := p.o.Library.Kind(name); ok {
			return k.TurningChain
		}
		return 0
	}
	return cmp.Or(cmp.Compare(height(a), height(b)), cmp.Compare(a, b))
}

func (p *printer) definition(u *Unit) string {
	head := upper(p.unitName(u.Name)) + ": "
	switch {
	case u.Recipe != "":
		return head + u.Recipe + "."
	case u.Macro:
		return head + p.seq(u.Body) + "."
	}
	return head + "(" + p.inGroup(u.Body) + ") in one " + p.words.st + "."
}

func (p *printer) row(row *Row) string {
	p.round = row.Round
	head := p.heading(row)
	body := p.hooked(row)
	s := upper(body)
	if s != "" && !strings.HasSuffix(s, ".") {
		s += "."
	}
	if row.Count != nil {
		s = strings.TrimSpace(s + " (" + p.tallies(row.Count) + ")")
	}
	if head == "" {
		return s
	}
	return strings.TrimSpace(head + ": " + s)
}

func (p *printer) heading(row *Row) string {
	if p.o.Size >= 0 {
		row = row.ForSize(p.o.Size)
	}
	head := row.Label()
	if row.Named == "Foundation" {
		head = ""
	}
	if p.o.Long && row.Round {
		head = strings.Replace(head, "Rnd", "Round", 1)
	}
	if head == "" {
		return ""
	}
	var marks []string
	if row.Side != 0 {
		marks = append(marks, string(row.Side)+"S")
	}
	if row.Yarn != "" {
		marks = append(marks, row.Yarn)
	}
	if len(row.Sizes) > 0 {
		var sizes []int
		for _, s := range row.Sizes {
			sizes = append(sizes, s+1)
		}
		marks = append(marks, "size "+strings.ReplaceAll(list(sizes), ",", " and")+" only")
	}
	if marks != nil {
		head += " (" + strings.Join(marks, ", ") + ")"
	}
	return head
}

// hooked writes the row's body, with "(skipped ch count as dc)" after the stitch that skips them.
func (p *printer) hooked(row *Row) string {
	if row.Hook == Unsaid {
		return p.seq(row.Body)
	}
	text := " (" + p.words.skipped + " " + p.words.ch + " does not count)"
	if row.Hook == Counts {
		as := p.words.st
		if len(row.HookAs) > 0 {
			as = p.inGroup(row.HookAs)
		}
		text = " (" + p.words.skipped + " " + p.words.ch + " counts as " + as + ")"
	}
	at := len(row.Body)
	for i, n := range row.Body {
		q := placeOf(n)
		if s, ok := n.(*Skip); q != nil && q.What == InHook || ok && s.First {
			at = i + 1
			break
		}
	}
	s := p.seq(row.Body[:at]) + text
	if rest := p.seq(row.Body[at:]); rest != "" {
		s += ", " + rest
	}
	return s
}

func (p *printer) tallies(tallies []Tally) string {
	var out []string
	for _, t := range tallies {
		s := p.num(t.N) + " "
		switch t.What {
		case InKind:
			s += p.kind(t.Name)
		case InUnit:
			s += p.unitName(cmp.Or(t.Name, "group"))
			if !t.N.isOne() {
				s += "s"
			}
		case InSp:
			s += p.space(t.Chains, true)
		case InCh:
			s += p.words.ch
		case InCorner:
			s += "corners"
		default:
			if s += p.words.sts; t.Yarn != "" {
				s = p.num(t.N) + " " + t.Yarn
			}
		}
		if t.Each {
			s += " per side"
		}
		out = append(out, s)
	}
	return strings.Join(out, ", ")
}

func (p *printer) num(q Num) string {
	switch {
	case len(q.Sizes) > 0 && p.o.Size >= 0:
		return fmt.Sprint(q.At(0, p.o.Size))
	case len(q.Sizes) > 0:
		s := fmt.Sprint(q.Sizes[0]) + " ("
		for i, n := range q.Sizes[1:] {
			if i > 0 {
				s += ", "
			}
			if n < 0 {
				s += "–"
				continue
			}
			s += fmt.Sprint(n)
		}
		return s + ")"
	case q.A == 0:
		return fmt.Sprint(q.B)
	}
	s := "n"
	if q.A != 1 {
		s = fmt.Sprint(q.A) + "n"
	}
	switch {
	case q.B > 0:
		return fmt.Sprintf("%s + %d", s, q.B)
	case q.B < 0:
		return fmt.Sprintf("%s - %d", s, -q.B)
	}
	return s
}

// kind writes the name of a stitch.
func (p *printer) kind(name string) string {
	k, ok := p.o.Library.Kind(name)
	if !ok {
		return p.unitName(name)
	}
	if p.o.Long {
		return p.o.Library.Name(k, p.o.Terms)
	}
	if w, ok := p.o.Library.Word(k, p.o.Terms); ok {
		return w
	}
	return name
}

// unitName writes the name of a group; the stitch within "5-dc shell" is put into the terms asked.
func (p *printer) unitName(name string) string {
	n := digits(name)
	if len(name) > 1 && name[1] == '-' && n == 0 {
		return upper(name) // V-st
	}
	if n == 0 || n == len(name) || name[n] != '-' {
		return name
	}
	kind, rest, _ := strings.Cut(name[n+1:], " ")
	k, ok := p.o.Library.Kind(kind)
	if !ok {
		return name
	}
	if w, ok := p.o.Library.Word(k, p.o.Terms); ok {
		kind = w
	}
	return strings.TrimSpace(name[:n+1] + kind + " " + rest)
}

func (p *printer) space(chains int, many bool) string {
	w := p.words.sp
	if many {
		w = p.words.sps
	}
	if chains > 0 {
		return fmt.Sprintf("ch-%d %s", chains, w)
	}
	return w
}

// upper writes the first letter as a capital; a sign stays.
func upper(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' || s == "n" || strings.HasPrefix(s, "n ") { // n is the number of repeats
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// ordinal writes 1st, 2nd, 3rd, 11th.
func ordinal(n int) string {
	suffix := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			suffix = "st"
		case 2:
			suffix = "nd"
		case 3:
			suffix = "rd"
		}
	}
	return fmt.Sprint(n) + suffix
}
