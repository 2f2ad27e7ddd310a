package strand

import (
	"strandway/model/fabric"
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

// Float is the yarn carried up an edge from the end of one row to the beginning of a later one.
type Float struct {
	From, To int // rows: it waits at the end of From and is taken up again at the beginning of To
	Side     fabric.Side
	CM       float64 // the height it climbs
}

// Joint is a place where a yarn begins or ends.
type Joint struct {
	Row  int
	Side fabric.Side // NoSide in mid-row and in rounds
}

// Carry is a yarn carried along a row behind stitches of another.
type Carry struct {
	Row      int
	Longest  int  // stitches: the longest stretch it runs behind
	Returned bool // it is worked again in the row after that stretch
}

// Strands is the way of every yarn through a piece.
type Strands struct {
	ByYarn  []Strand // in the order of Fabric.Yarns
	Ends    int      // to weave in
	Longest Float    // the longest float of all; CM is 0 where nothing is carried
}

// Follow follows every yarn of f. rowCM gives the height of each row in cm.
//
// A yarn waits where its row ended. When a later row begins there, it is
// carried up; when that row begins at the other edge, or the rows say so, it is
// cut and joined again.
func Follow(f *fabric.Fabric, rowCM []float64) Strands {
	heights := make([]float64, len(f.Rows)+1)
	for r, cm := range rowCM {
		heights[r+1] = heights[r] + cm
	}
	out := Strands{ByYarn: make([]Strand, len(f.Yarns))}
	waits := make([]wait, len(f.Yarns))
	for y := range out.ByYarn {
		out.ByYarn[y] = Strand{Letter: f.Yarns[y], Yarn: uint8(y)}
		waits[y].row = -1
	}
	events := f.Events
	for r := range f.Rows {
		row := &f.Rows[r]
		for _, use := range uses(f, row) {
			s, w := &out.ByYarn[use.yarn], &waits[use.yarn]
			begins := beginSide(row)
			switch {
			case use.midRow && w.row < 0:
				s.Joins = append(s.Joins, Joint{Row: r})
			case use.midRow:
			case w.row < 0:
				s.Joins = append(s.Joins, Joint{r, begins})
			case w.side != begins:
				s.Cuts = append(s.Cuts, Joint{w.row, w.side})
				s.Joins = append(s.Joins, Joint{r, begins})
			case w.row < r-1:
				float := Float{From: w.row, To: r, Side: begins, CM: heights[r] - heights[w.row+1]}
				s.Floats = append(s.Floats, float)
				if float.CM > out.Longest.CM {
					out.Longest = float
				}
			}
			s.Rows = append(s.Rows, r)
			if use.carry.Longest > 0 {
				use.carry.Row = r
				s.Carry = append(s.Carry, use.carry)
			}
			*w = wait{r, endSide(row)}
		}
		for len(events) > 0 && int(events[0].Row) <= r {
			e := events[0]
			events = events[1:]
			if w := &waits[e.Yarn]; e.Do == fabric.Cut && w.row >= 0 {
				s := &out.ByYarn[e.Yarn]
				s.Cuts = append(s.Cuts, Joint{w.row, w.side})
				w.row = -1
			}
		}
	}
	for y := range waits {
		if s := &out.ByYarn[y]; waits[y].row >= 0 { // the last end of every yarn is cut in the end
			s.Cuts = append(s.Cuts, Joint{waits[y].row, waits[y].side})
		}
		out.Ends += out.ByYarn[y].Ends()
	}
	return out
}

// wait is where a yarn waits: at the end of a row; row -1 while it is not there.
type wait struct {
	row  int
	side fabric.Side
}

// use is a yarn's part in one row.
type use struct {
	yarn   uint8
	midRow bool // not the yarn with which the row begins
	carry  Carry
}

// uses lists the yarns of a row in the order in which they come into it.
func uses(f *fabric.Fabric, row *fabric.Row) []use {
	if row.Last == row.First {
		return nil
	}
	var out []use
	var last [256]int32 // the stitch after the yarn's last one, counted from 1
	for id := row.First; id < row.Last; id++ {
		y := f.Stitches[id].Yarn
		at := id - row.First + 1
		if last[y] == 0 {
			out = append(out, use{yarn: y, midRow: len(out) > 0})
		} else if behind := int(at - last[y]); behind > 0 {
			for i := range out {
				if out[i].yarn == y && behind > out[i].carry.Longest {
					out[i].carry = Carry{Longest: behind}
				}
			}
		}
		last[y] = at + 1
	}
	return out
}

// beginSide is the edge at which a row begins; rounds have none.
func beginSide(row *fabric.Row) fabric.Side {
	switch {
	case row.Shape != fabric.Flat:
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
