// Package strand follows every yarn through a piece: the rows it works, where
// it waits, each float up an edge, each join, cut and end; and plans which rows
// to turn so that nothing need be cut.
//
// It reads a worked fabric and the rows' heights in cm and changes neither.
package strand

import "slices"

// Need is what one row asks of a plan: its yarn, its height, and whether its
// face is settled.
type Need struct {
	Yarn   uint8
	Height float64 // cm
	Face   Face    // AnyFace where the row may be worked on either side
}

// Face says on which side a row is worked.
type Face uint8

const (
	AnyFace Face = iota
	RS
	WS
)

// Plan is one way to work the rows: the face of each, and what that costs.
type Plan struct {
	Faces    []Face
	Cuts     int     // yarns cut and joined again between their first and last row
	Longest  float64 // cm: the longest float
	Unturned int     // rows before which the work is not turned
}

// Less orders plans: fewest cuts, then the shortest longest float, then the
// fewest rows that do not turn.
func (p Plan) Less(q Plan) bool {
	if p.Cuts != q.Cuts {
		return p.Cuts < q.Cuts
	}
	if p.Longest != q.Longest {
		return p.Longest < q.Longest
	}
	return p.Unturned < q.Unturned
}

// MaxPlanYarns is the number of yarns that [Best] plans for: each waits at the
// left edge, at the right, or nowhere, and all ways are weighed at once.
const MaxPlanYarns = 7

// Best finds the best plan for the rows by dynamic programming over the row,
// its face and the edge at which each yarn waits. ok is false when there are
// more than [MaxPlanYarns] yarns.
//
// A hook works toward its own far edge whichever side faces, so the face of a
// row says where it begins: at the right edge on the right side, at the left
// edge on the wrong side (seen from the right side), and it ends at the other.
// A yarn can be carried up to a row only if it waits at the edge where that
// row begins; else it is cut. How long the float is depends only on the two
// rows, not on the way chosen between them; so the shortest longest float is
// the least limit on floats that costs no further cut.
func Best(needs []Need) (plan Plan, ok bool) {
	for _, n := range needs {
		if n.Yarn >= MaxPlanYarns {
			return Plan{}, false
		}
	}
	if len(needs) == 0 {
		return Plan{}, true
	}
	floats := floatLengths(needs)
	limits := slices.Clone(floats)
	slices.Sort(limits)
	limits = slices.Compact(limits)

	fewest := cheapest(needs, floats, limits[len(limits)-1])
	least, _ := slices.BinarySearchFunc(limits, fewest.Cuts, func(limit float64, cuts int) int {
		if cheapest(needs, floats, limit).Cuts > cuts {
			return -1
		}
		return 0
	})
	return cheapest(needs, floats, limits[least]), true
}

// Judge says what working the rows on the given faces costs, with no yarn cut
// that could be carried.
func Judge(needs []Need, faces []Face) Plan {
	floats := floatLengths(needs)
	p := Plan{Faces: faces}
	waits := map[uint8]Face{}
	for k, n := range needs {
		if at, waiting := waits[n.Yarn]; waiting {
			if at == faces[k] {
				p.Longest = max(p.Longest, floats[k])
			} else {
				p.Cuts++
			}
		}
		if k > 0 && faces[k] == faces[k-1] {
			p.Unturned++
		}
		waits[n.Yarn] = other(faces[k])
	}
	return p
}

// floatLengths gives for each row the length of the float that brings its yarn
// up from the row where it was last worked: the rows between, or 0.
func floatLengths(needs []Need) []float64 {
	height := 0.0
	last := map[uint8]float64{}
	lengths := make([]float64, len(needs))
	for k, n := range needs {
		if from, worked := last[n.Yarn]; worked {
			lengths[k] = height - from
		}
		height += n.Height
		last[n.Yarn] = height
	}
	return lengths
}

// other is the face whose rows begin where rows of face f end.
func other(f Face) Face {
	if f == RS {
		return WS
	}
	return RS
}

// waiting packs for each yarn, in base 3, the face whose rows begin where it
// waits; 0 while it has not been joined.
type waiting int

var powers = [MaxPlanYarns + 1]waiting{1, 3, 9, 27, 81, 243, 729, 2187}

func (w waiting) of(yarn uint8) Face { return Face(w / powers[yarn] % 3) }

func (w waiting) with(yarn uint8, at Face) waiting {
	return w + (waiting(at)-waiting(w.of(yarn)))*powers[yarn]
}

// cost is what has been paid up to a state, and how it was reached.
type cost struct {
	cuts, unturned int32
	from           int32 // state before; -1 where the state cannot be reached
}

// cheapest works out the plan with the fewest cuts, then the fewest rows that
// do not turn, with no float longer than limit. A state is the face of the
// last row and where each yarn waits.
func cheapest(needs []Need, floats []float64, limit float64) Plan {
	yarns := uint8(0)
	for _, n := range needs {
		yarns = max(yarns, n.Yarn+1)
	}
	states := int(powers[yarns]) * 3
	layers := make([][]cost, len(needs)+1)
	for k := range layers {
		layers[k] = make([]cost, states)
		for s := range layers[k] {
			layers[k][s].from = -1
		}
	}
	layers[0][0].from = 0
	for k, n := range needs {
		for s, paid := range layers[k] {
			if paid.from < 0 {
				continue
			}
			before, w := Face(s%3), waiting(s/3)
			for face := RS; face <= WS; face++ {
				if n.Face != AnyFace && n.Face != face {
					continue
				}
				next := paid
				if at := w.of(n.Yarn); at != AnyFace && (at != face || floats[k] > limit) {
					next.cuts++
				}
				if before == face {
					next.unturned++
				}
				next.from = int32(s)
				to := int(w.with(n.Yarn, other(face)))*3 + int(face)
				if was := layers[k+1][to]; was.from < 0 || dearer(was, next) {
					layers[k+1][to] = next
				}
			}
		}
	}
	best := -1
	for s, paid := range layers[len(needs)] {
		if paid.from >= 0 && (best < 0 || dearer(layers[len(needs)][best], paid)) {
			best = s
		}
	}
	p := Plan{Faces: make([]Face, len(needs)), Cuts: int(layers[len(needs)][best].cuts), Unturned: int(layers[len(needs)][best].unturned)}
	for k, s := len(needs), best; k > 0; k-- {
		p.Faces[k-1] = Face(s % 3)
		s2 := int(layers[k][s].from)
		if at := waiting(s2 / 3).of(needs[k-1].Yarn); at == p.Faces[k-1] && floats[k-1] <= limit {
			p.Longest = max(p.Longest, floats[k-1])
		}
		s = s2
	}
	return p
}

func dearer(a, b cost) bool {
	return a.cuts > b.cuts || a.cuts == b.cuts && a.unturned > b.unturned
}
