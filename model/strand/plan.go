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

// MaxPlanYarns is the number of yarns that [Best] plans for: all ways in which
// they can wait, each at one edge or the other, are weighed at once.
const MaxPlanYarns = 12

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
	s := newSearch(needs)
	limits := slices.Clone(s.floats)
	slices.Sort(limits)
	limits = slices.Compact(limits)

	fewest := s.cheapest(limits[len(limits)-1]).cuts()
	least, _ := slices.BinarySearchFunc(limits, fewest, func(limit float64, cuts int) int {
		if s.cheapest(limit).cuts() > cuts {
			return -1
		}
		return 0
	})
	return s.plan(limits[least]), true
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

// search weighs the ways to work the rows. A state is the face of the last row,
// in bit 0 (set for WS), and for each yarn that has been joined a bit for the
// edge where it waits: set where WS rows begin. Which yarns have been joined
// follows from the row.
type search struct {
	needs  []Need
	floats []float64 // see [floatLengths]
	joins  []bool    // by row: its yarn is met for the first time
	layers [2][]cost // by state, after the last row and after the one before
	from   [][]int32 // by row and state: the state before; kept only for the plan itself
}

// cost is what a way costs: cuts, and rows that do not turn, in this order of weight.
type cost int64

const (
	oneCut      cost = 1 << 32
	unreachable cost = 1<<63 - 1
)

func (c cost) cuts() int { return int(c / oneCut) }

func newSearch(needs []Need) *search {
	s := &search{needs: needs, floats: floatLengths(needs), joins: make([]bool, len(needs))}
	met := [MaxPlanYarns]bool{}
	yarns := 0
	for k, n := range needs {
		s.joins[k] = !met[n.Yarn]
		met[n.Yarn] = true
		yarns = max(yarns, int(n.Yarn)+1)
	}
	for i := range s.layers {
		s.layers[i] = make([]cost, 2<<yarns)
	}
	return s
}

// cheapest gives the least cost of working the rows with no float longer than limit.
func (s *search) cheapest(limit float64) cost {
	s.sweep(limit)
	return slices.Min(s.layers[0])
}

// sweep goes through the rows and leaves in layers[0] the least cost of each state after the last.
func (s *search) sweep(limit float64) {
	here, next := s.layers[0], s.layers[1]
	for i := range here {
		here[i] = unreachable
	}
	here[0] = 0
	for k, n := range s.needs {
		for i := range next {
			next[i] = unreachable
		}
		edge := 2 << n.Yarn
		for state, paid := range here {
			if paid == unreachable {
				continue
			}
			for face := RS; face <= WS; face++ {
				if n.Face != AnyFace && n.Face != face {
					continue
				}
				ws := int(face - RS)
				sum := paid
				if meets := state&edge != 0 == (face == WS); !s.joins[k] && (!meets || s.floats[k] > limit) {
					sum += oneCut
				}
				if k > 0 && state&1 == ws {
					sum++
				}
				to := state&^edge&^1 | ws
				if face == RS { // it ends where WS rows begin
					to |= edge
				}
				if sum < next[to] {
					next[to] = sum
					if s.from != nil {
						s.from[k][to] = int32(state)
					}
				}
			}
		}
		here, next = next, here
	}
	s.layers[0], s.layers[1] = here, next
}

// plan is the cheapest plan with no float longer than limit.
func (s *search) plan(limit float64) Plan {
	s.from = make([][]int32, len(s.needs))
	for k := range s.from {
		s.from[k] = make([]int32, len(s.layers[0]))
	}
	least := s.cheapest(limit)
	state := slices.Index(s.layers[0], least)
	p := Plan{Faces: make([]Face, len(s.needs)), Cuts: least.cuts(), Unturned: int(least % oneCut)}
	for k := len(s.needs) - 1; k >= 0; k-- {
		p.Faces[k] = RS + Face(state&1)
		state = int(s.from[k][state])
		if meets := state&(2<<s.needs[k].Yarn) != 0 == (p.Faces[k] == WS); meets && !s.joins[k] && s.floats[k] <= limit {
			p.Longest = max(p.Longest, s.floats[k])
		}
	}
	return p
}
