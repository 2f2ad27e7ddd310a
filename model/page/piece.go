package page

import (
	"fmt"
	"regexp"
	"slices"
	"sort"
	"strings"

	"strandway/model/pattern"
)

// piece gathers the rows of one piece and knows where in the page they stand.
type piece struct {
	name     string
	multiple string
	rows     strings.Builder
	from     []origin // by place in rows
	written  []*passage
	parts    []named // headings within the piece
	last     int     // the greatest row number so far
	begun    bool    // it has a foundation or a row
	ended    bool    // its yarn has been cut
}

// named is a heading within a piece, and the passage that follows it.
type named struct {
	name string
	from int
}

// stretch is what of a piece a name stands for.
type stretch struct {
	p        *piece
	from, to int // passages
}

// stretches are the piece as a whole, or, where it has headings within, what belongs to each of them.
func (p *piece) stretches() []named { return append([]named{{p.name, 0}}, p.parts...) }

// origin says that the rows from a place on stand in the page at another.
type origin struct{ rows, page int }

// source is the place in the page of a place in the rows.
func (p *piece) source(at int) int {
	i := sort.Search(len(p.from), func(i int) bool { return p.from[i].rows > at }) - 1
	if i < 0 {
		return 0
	}
	return p.from[i].page + at - p.from[i].rows
}

// add writes instructions, and remembers them for pieces that are worked alike.
func (p *piece) add(x *passage) {
	p.written = append(p.written, x)
	p.write(x, "")
}

// write adds a passage as one line.
func (p *piece) write(x *passage, lead string) {
	p.rows.WriteString(lead)
	for _, t := range x.parts {
		p.from = append(p.from, origin{p.rows.Len(), t.at})
		p.rows.WriteString(t.text)
	}
	p.rows.WriteByte('\n')
}

// begin opens a new piece. Its name is the heading above it.
func (r *reader) begin() *piece {
	p := &piece{multiple: r.multiple}
	r.multiple = ""
	if r.heading != nil {
		p.name = strings.TrimRight(r.heading.text, " :.-–—")
		r.heading = nil
	}
	if p.name == "" {
		p.name = "Body"
		if len(r.pieces) > 0 {
			p.name = fmt.Sprintf("Part %d", len(r.pieces)+1)
		}
	}
	for name, n := p.name, 2; r.names[p.name]; n++ {
		p.name = fmt.Sprintf("%s %d", name, n)
	}
	r.names[p.name] = true
	r.pieces = append(r.pieces, p)
	return p
}

// piece is the piece at hand.
func (r *reader) piece() *piece {
	if len(r.pieces) == 0 {
		return r.begin()
	}
	return r.pieces[len(r.pieces)-1]
}

// bareChain is a chain and no more.
var bareChain = regexp.MustCompile(`(?i)^(?:make (?:a )?)?(?:ch|chain)s?\s*\d+\.?$|^\d+\s*(?:ch|chains?)\.?$`)

// finish puts the pieces into the pattern.
func (r *reader) finish() {
	rules := ""
	for _, s := range r.rules {
		rules += "Note: " + s + "\n"
	}
	r.pieces = slices.DeleteFunc(r.pieces, func(p *piece) bool {
		cord := p != r.pieces[0] && strings.HasPrefix(p.name, "Part ") && len(p.written) == 1 && bareChain.MatchString(p.written[0].text())
		if cord { // a chain that nothing is worked on is a cord, not a piece
			r.prose = append(r.prose, strings.TrimSpace(p.rows.String()))
		}
		return cord
	})
	for _, p := range r.pieces {
		for i := range p.from {
			p.from[i].rows += len(rules)
		}
		r.p.Pieces = append(r.p.Pieces, pattern.Piece{Name: p.name, Multiple: p.multiple, Rows: rules + p.rows.String()})
	}
	r.p.Note = strings.TrimSpace(strings.Join(r.prose, "\n"))
}
