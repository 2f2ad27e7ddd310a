package strand

import (
	"math"
	"slices"

	"strandway/model/fabric"
	"strandway/model/measure"
)

// Strand is one yarn's way through a piece.
type Strand struct {
	Letter string
	Yarn   uint8 // index in Fabric.Yarns
	Rows   []int // rows worked with it, wholly or in part, as indices in Fabric.Rows
	Floats []Float
	Joins  []Joint // where it begins
	Cuts   []Joint // where it ends, the end of the piece included
	Carry  []Carry // rows worked in several yarns, in which it runs behind
}

// Ends is how many ends of the strand are to be woven in.
func (s *Strand) Ends() int { return len(s.Joins) + len(s.Cuts) }

// FloatCM is the height that all its floats climb together, in cm.
func (s *Strand) FloatCM() float64 {
	cm := 0.0
	for _, f := range s.Floats {
		cm += f.CM
	}
	return cm
}

// Behind is how many stitches it runs behind in all.
func (s *Strand) Behind() int {
	n := 0
	for _, c := range s.Carry {
		n += c.Total
	}
	return n
}

// Float is the yarn carried up an edge from the end of one row to the beginning of a later one.
type Float struct {
	From, To int         // rows: it waits at the end of From and is taken up again at the beginning of To
	Side     fabric.Side // NoSide in rounds, and where it was left in mid-row
	CM       float64     // the height it climbs
}

// Joint is a place where a yarn begins or ends.
type Joint struct {
	Row  int
	Side fabric.Side // NoSide in mid-row and in rounds
}

// Carry is a yarn carried along a row behind stitches of another: between its
// own, and before the first of them from where it was left in mid-row.
type Carry struct {
	Row     int
	Longest int  // stitches: the longest stretch it runs behind
	Total   int  // stitches: all stretches together
	Front   bool // the wrong side faces the maker, so that it must be held to the front
}

// Wait is a yarn that waits at an edge between two rows.
type Wait struct {
	Yarn uint8
	From int // the row at whose end it waits
	Side fabric.Side
	CM   float64 // height of the edge at which it waits, from the foundation
}

// Strands is the way of every yarn through a piece.
type Strands struct {
	ByYarn  []Strand // in the order of Fabric.Yarns
	Waiting [][]Wait // by row: the yarns that wait while it is worked, in the order of Fabric.Yarns
	Held    []int    // rows after which the live loop is held by a marker: its yarn waits while another is worked without turning
	Ends    int      // to weave in
	Longest Float    // the longest float of all; CM is 0 where nothing is carried
}

// Cut is how many times a yarn is cut and joined again.
func (s *Strands) Cut() int {
	n := 0
	for y := range s.ByYarn {
		n += max(0, len(s.ByYarn[y].Joins)-1)
	}
	return n
}

// Follow follows every yarn of f. rowCM gives the height of each row in cm; nil
// leaves all heights 0.
//
// A yarn waits where its row ended. When a later row begins there, it is
// carried up; when that row begins at the other edge, or the rows say so, it is
// cut and joined again.
func Follow(f *fabric.Fabric, rowCM []float64) Strands {
	w := walk{fabric: f, waits: make([]wait, len(f.Yarns)), heights: make([]float64, len(f.Rows)+1)}
	for r := range f.Rows {
		if r < len(rowCM) {
			w.heights[r+1] = rowCM[r]
		}
		w.heights[r+1] += w.heights[r]
	}
	w.out = Strands{ByYarn: make([]Strand, len(f.Yarns)), Waiting: make([][]Wait, len(f.Rows))}
	for y := range w.waits {
		w.out.ByYarn[y] = Strand{Letter: f.Yarns[y], Yarn: uint8(y)}
		w.waits[y].row = -1
	}
	events := f.Events
	for r := range f.Rows {
		n := 0
		for n < len(events) && int(events[n].Row) <= r {
			n++
		}
		w.row(r, events[:n])
		events = events[n:]
	}
	w.cut(events)
	for y := range w.waits {
		w.end(uint8(y)) // the last end of every yarn is cut in the end
		w.out.Ends += w.out.ByYarn[y].Ends()
	}
	for r := range w.out.Waiting { // a yarn that is not worked again is cut off rather than left to wait
		w.out.Waiting[r] = slices.DeleteFunc(w.out.Waiting[r], func(at Wait) bool {
			rows := w.out.ByYarn[at.Yarn].Rows
			return rows[len(rows)-1] < r
		})
	}
	return w.out
}

// walk is the walk through the rows.
type walk struct {
	fabric  *fabric.Fabric
	heights []float64 // cm below each row
	waits   []wait
	out     Strands
}

// wait is where a yarn waits: at the end of a row; row -1 while it is not there.
type wait struct {
	row  int
	side fabric.Side
}

// row takes the yarns through row r, in which the events happen.
func (w *walk) row(r int, events []fabric.Event) {
	row := &w.fabric.Rows[r]
	before := 0
	for before < len(events) && events[before].Before <= row.First {
		before++
	}
	w.cut(events[:before])
	joined := [256]bool{}
	for _, e := range events {
		if e.Do == fabric.JoinYarn && e.Before >= row.First { // the foundation's yarn is joined before it
			joined[e.Yarn] = true
		}
	}
	begins, ends := beginSide(row), endSide(row)
	used := uses(w.fabric, row)
	for _, use := range used {
		s, at := &w.out.ByYarn[use.yarn], w.waits[use.yarn]
		side := begins
		if use.midRow {
			side = fabric.NoSide
		}
		elsewhere := at.side != side && at.side != fabric.NoSide && side != fabric.NoSide
		if at.row >= 0 && (elsewhere || joined[use.yarn]) {
			w.end(use.yarn)
			at.row = -1
		}
		if at.row >= 0 && (use.midRow || at.side == fabric.NoSide && !w.endsWith(at.row, use.yarn)) {
			across := w.across(at.row, r, use.yarn)
			use.longest, use.total = max(use.longest, across), use.total+across
		}
		switch {
		case at.row < 0:
			s.Joins = append(s.Joins, Joint{r, side})
		case at.row < r-1 && !use.midRow:
			f := Float{From: at.row, To: r, CM: w.heights[r] - w.heights[at.row+1]}
			if at.side == begins {
				f.Side = begins
			}
			w.float(s, f)
		}
		s.Rows = append(s.Rows, r)
		if use.longest > 0 {
			s.Carry = append(s.Carry, Carry{Row: r, Longest: use.longest, Total: use.total, Front: row.WS})
		}
		w.waits[use.yarn] = wait{r, fabric.NoSide}
	}
	if len(used) > 0 {
		w.waits[w.fabric.Stitches[row.Last-1].Yarn].side = ends
	}
	w.cut(events[before:])
	for y, at := range w.waits {
		if at.row >= 0 && at.row < r {
			w.out.Waiting[r] = append(w.out.Waiting[r], Wait{Yarn: uint8(y), From: at.row, Side: at.side, CM: w.heights[at.row+1]})
		}
	}
	if held := r - 1; held > 0 && row.Shape == fabric.Flat && !row.Turned && len(used) > 0 {
		last := w.fabric.Rows[held].Last - 1
		if y := w.fabric.Stitches[max(last, 0)].Yarn; y != used[0].yarn && w.waits[y].row == held {
			w.out.Held = append(w.out.Held, held)
		}
	}
}

// endsWith reports whether row r ends with a yarn.
func (w *walk) endsWith(r int, yarn uint8) bool {
	row := &w.fabric.Rows[r]
	return row.Last > row.First && w.fabric.Stitches[row.Last-1].Yarn == yarn
}

// across is how many stitches lie between the last that a yarn made in one row
// and its first in a later one, the shorter way round in rounds.
func (w *walk) across(from, to int, yarn uint8) int {
	f := w.fabric
	a, b := &f.Rows[from], &f.Rows[to]
	is := func(id int32) bool { s := &f.Stitches[id]; return s.Yarn == yarn && !s.Has(fabric.NoLanding) }
	last, first := a.Last-1, b.First
	for last > a.First && !is(last) {
		last--
	}
	for first < b.Last-1 && !is(first) {
		first++
	}
	apart := math.Abs(float64(f.Stitches[last].Col - f.Stitches[first].Col))
	if b.Shape != fabric.Flat {
		round := 0.0
		for id := b.First; id < b.Last; id++ {
			if s := &f.Stitches[id]; !s.Has(fabric.NoLanding) {
				round = max(round, float64(s.Col)+1)
			}
		}
		apart = min(apart, max(0, round-apart))
	}
	return max(0, int(math.Round(apart))-1)
}

func (w *walk) float(s *Strand, f Float) {
	s.Floats = append(s.Floats, f)
	if f.CM > w.out.Longest.CM {
		w.out.Longest = f
	}
}

// cut ends the yarns that the events cut.
func (w *walk) cut(events []fabric.Event) {
	for _, e := range events {
		if e.Do == fabric.Cut {
			w.end(e.Yarn)
		}
	}
}

// end cuts a yarn where it waits, if it is there.
func (w *walk) end(yarn uint8) {
	at := &w.waits[yarn]
	if at.row < 0 {
		return
	}
	s := &w.out.ByYarn[yarn]
	s.Cuts = append(s.Cuts, Joint{at.row, at.side})
	at.row = -1
}

// use is a yarn's part in one row.
type use struct {
	yarn           uint8
	midRow         bool // not the yarn with which the row begins
	longest, total int  // stitches behind which it runs: in one stretch, and in all
}

// uses lists the yarns of a row in the order in which they come into it.
func uses(f *fabric.Fabric, row *fabric.Row) []use {
	if row.Last == row.First {
		return nil
	}
	var out []use
	var after [256]int32 // the place behind the yarn's last stitch; 0 before its first
	for id := row.First; id < row.Last; id++ {
		y, at := f.Stitches[id].Yarn, id-row.First
		if after[y] == 0 {
			out = append(out, use{yarn: y, midRow: len(out) > 0})
		}
		for i := range out {
			if out[i].yarn == y && after[y] > 0 {
				out[i].longest = max(out[i].longest, int(at-after[y]))
				out[i].total += int(at - after[y])
			}
		}
		after[y] = at + 1
	}
	return out
}

// beginSide is the edge at which a row begins; rounds and rows along an edge have none.
func beginSide(row *fabric.Row) fabric.Side {
	switch {
	case row.Shape != fabric.Flat || row.EndSide != fabric.NoSide:
		return fabric.NoSide
	case row.FromLeft:
		return fabric.Left
	}
	return fabric.Right
}

// endSide is the edge at which a row ends.
func endSide(row *fabric.Row) fabric.Side {
	switch beginSide(row) {
	case fabric.Left:
		return fabric.Right
	case fabric.Right:
		return fabric.Left
	}
	return fabric.NoSide
}

// Covered says which edges an edging covers: those with stitches worked into
// their row ends.
func Covered(f *fabric.Fabric) (left, right bool) {
	for id := range f.Stitches {
		for _, b := range f.Of(int32(id)) {
			if b.How != fabric.RowEnd || b.At < 0 {
				continue
			}
			if measure.AtLeft(f, b.At) {
				left = true
			} else {
				right = true
			}
		}
	}
	return left, right
}
