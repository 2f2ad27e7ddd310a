package layout

import (
	"fmt"
	"math"
	"strings"

	"strandway/model/fabric"
)

// bracket marks the repeats found, across and upward.
func (p *piece) bracket(plan *Plan) {
	if p.hasRing || p.manner == Blocks || len(p.rows) < 2 {
		return
	}
	p.bracketAcross(plan)
	p.bracketUpward(plan)
}

// bracketAcross marks the second working of the repeat, so that the first shows
// how it meets the edge.
func (p *piece) bracketAcross(plan *Plan) {
	n, from := int32(0), int32(0)
	if q := p.period; q != nil {
		n = q.nodes[0]
	}
	if m, at := p.writtenRepeat(); m > 0 && (n == 0 || n%m != 0 && m%n != 0 || m > n) {
		n, from = m, at
	} else if m > 0 {
		from = at % n
	} else if n < 2 {
		n, from = p.repeatAbove()
	}
	ground := p.rows[0]
	if n < 2 || int(2*n) > ground.len() {
		return
	}
	pitch := (p.at[ground.last-1].X - p.at[ground.first].X) / float64(ground.len()-1)
	for int(from+2*n) <= ground.len() && from < n {
		from += n
	}
	if int(from+n) > ground.len() {
		from = int32(ground.len()) - n
	}
	left := p.at[ground.first].X - pitch/2
	plan.Repeat = Bracket{
		On:    true,
		From:  left + float64(from)*pitch,
		To:    left + float64(from+n)*pitch,
		Label: fmt.Sprintf("%d sts", n),
	}
}

// writtenRepeat is the width of the first row's repeat in foundation stitches, as
// its workings lie, and the first place of its leftmost working.
func (p *piece) writtenRepeat() (n, at int32) {
	var starts []int32
	for _, q := range p.f.Repeats {
		if q.Row != 1 {
			continue
		}
		for id := q.First; id < q.Last; id++ {
			i := p.nodeOf[id]
			if i < 0 || p.nodes[i].nlegs == 0 {
				continue
			}
			if l := p.legs[p.nodes[i].leg]; l.a >= 0 && p.nodes[l.a].row == 0 {
				starts = append(starts, l.a-p.rows[0].first)
				break
			}
		}
	}
	if len(starts) < 2 {
		return 0, 0
	}
	n = starts[1] - starts[0]
	at = starts[0]
	if n < 0 {
		n, at = -n, starts[len(starts)-1]
	}
	return n, at
}

// repeatAbove is the same for a row above the first, by the columns in which its workings lie.
func (p *piece) repeatAbove() (n, at int32) {
	left := float64(p.f.Stitches[p.nodes[p.rows[0].first].id].Col)
	for i := range len(p.f.Repeats) - 1 {
		q, next := p.f.Repeats[i], p.f.Repeats[i+1]
		if q.Row != next.Row || q.Written != next.Written || q.First == q.Last || next.First == next.Last {
			continue
		}
		a, b := p.leftmost(q), p.leftmost(next)
		if n := int32(math.Round(math.Abs(a - b))); n > 1 {
			return n, max(0, int32(math.Round(min(a, b)-left)))
		}
	}
	return 0, 0
}

// leftmost is the first column of one working of a repeat.
func (p *piece) leftmost(q fabric.Repeat) float64 {
	col := math.Inf(1)
	for id := q.First; id < q.Last; id++ {
		col = min(col, float64(p.f.Stitches[id].Col))
	}
	return col
}

// bracketUpward marks rows that repeat, yarn and all: those that the pattern repeats, or those found alike.
func (p *piece) bracketUpward(plan *Plan) {
	if from, to, ok := p.rowsRepeated(); ok {
		plan.Upward = Bracket{On: true, From: float64(from), To: float64(to), Label: rowRange(p.f, from, to)}
		return
	}
	alike := p.rowHashes()
	for k, r := range p.rows {
		for i := r.first; i < r.last; i++ {
			n := &p.nodes[i]
			s := &p.f.Stitches[n.id]
			if n.nlegs == 0 || p.legs[n.leg].post == 0 { // posts change their name with the side
				alike[k] = mix(alike[k], uint64(s.Kind))
			}
			alike[k] = mix(alike[k], uint64(s.Yarn))
		}
	}
	up := findUpward(alike, 2) // the first row stands on the foundation, which makes it another row
	if up.rows < 2 {
		return
	}
	from, to := p.rows[up.from].source, p.rows[up.from+up.rows-1].source
	plan.Upward = Bracket{On: true, From: float64(from), To: float64(to), Label: rowRange(p.f, from, to)}
}

// rowsRepeated gives the first rows that a written row works again in their own yarns: "Rows 8-23: rep Rows 4-7".
func (p *piece) rowsRepeated() (from, to int, ok bool) {
	rows := p.f.Rows
	written := map[int]int{} // fabric row by the written row it is the first working of
	for r := 1; r < len(rows); r++ {
		row := &rows[r]
		if row.Under == row.Source {
			if _, met := written[row.Source]; !met {
				written[row.Source] = r
			}
			continue
		}
		from, met := written[row.Source]
		if !met {
			return 0, 0, false
		}
		to = from
		for k := r; k < len(rows) && rows[k].Under == row.Under; k++ {
			source, met := written[rows[k].Source]
			if !met || rows[source].Yarn != rows[k].Yarn {
				return 0, 0, false
			}
			to = max(to, source)
		}
		return from, to, to > from
	}
	return 0, 0, false
}

// rowRange names rows as a pattern prints them: "Rows 2–5".
func rowRange(f *fabric.Fabric, from, to int) string {
	word := "Rows"
	if strings.HasPrefix(f.Rows[from].Label, "R") && f.Rows[from].Shape != fabric.Flat {
		word = "Rnds"
	}
	a, b := f.Rows[from].No, f.Rows[to].No
	if a == 0 || b == 0 { // rows that go by names
		return f.Rows[from].Label + " – " + f.Rows[to].Label
	}
	return fmt.Sprintf("%s %d–%d", word, a, b)
}
