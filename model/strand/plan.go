package strand

import "slices"

// Need is what one row asks of a plan: its yarns, its height, and how far it is
// settled how it is worked.
type Need struct {
	Yarns  []Use   // in the order in which they come into it; none in an empty row
	Last   uint8   // the yarn with which it ends
	Height float64 // cm
	Face   Face    // AnyFace where the row may be worked on either side
	Turns  bool    // the work must be turned before it
	Around bool    // a round or a row along an edge: it begins and ends at neither edge
	Inset  bool    // it begins away from the edge
}

// Use is a yarn's part in a row.
type Use struct {
	Yarn   uint8
	Joined bool // it is joined in this row as the rows stand
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
// more than [MaxPlanYarns] yarns, or when no way keeps what the rows ask.
//
// A hook works toward its own far edge whichever side faces, so the face of a
// row says where it begins: at the right edge on the right side, at the left
// edge on the wrong side (seen from the right side), and it ends at the other.
// A yarn can be carried up to a row only if it waits at the edge where that
// row begins; else it is cut. A yarn that was left in mid-row or in a round can
// be taken up anywhere; where the rows join it all the same, that stays. How
// long the float is depends only on the two rows, not on the way chosen between
// them; so the shortest longest float is the least limit on floats that costs
// no further cut.
func Best(needs []Need) (plan Plan, ok bool) {
	for _, n := range needs {
		for _, u := range n.Yarns {
			if u.Yarn >= MaxPlanYarns {
				return Plan{}, false
			}
		}
	}
	if len(needs) == 0 {
		return Plan{}, true
	}
	s := newSearch(needs)
	limits := slices.Clone(s.floats)
	slices.Sort(limits)
	limits = slices.Compact(limits)

	all := s.cheapest(limits[len(limits)-1])
	if all == unreachable {
		return Plan{}, false
	}
	least, _ := slices.BinarySearchFunc(limits, all.cuts(), func(limit float64, cuts int) int {
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
	t := takenUp(needs)
	p := Plan{Faces: faces, Longest: t.always}
	waits := map[uint8]Face{}
	for k, n := range needs {
		p.Cuts += t.fixed[k]
		if t.decides[k] {
			if waits[n.Yarns[0].Yarn] == faces[k] {
				p.Longest = max(p.Longest, t.floats[k])
			} else {
				p.Cuts++
			}
		}
		if k > 0 && !n.Around && !needs[k-1].Around && faces[k] == faces[k-1] {
			p.Unturned++
		}
		if !n.Around && len(n.Yarns) > 0 {
			waits[n.Last] = other(faces[k])
		}
	}
	return p
}

// taking is how each row takes up the yarn with which it begins, as far as
// that is the same for every plan.
type taking struct {
	decides []bool    // it waits at an edge: the plan decides whether it can be carried
	floats  []float64 // cm: the float that brings it up, the rows between; 0 where the plan does not decide
	fixed   []int     // yarns that are cut and joined again whatever the plan
	always  float64   // cm: the longest float that every plan has
}

func takenUp(needs []Need) taking {
	t := taking{make([]bool, len(needs)), make([]float64, len(needs)), make([]int, len(needs)), 0}
	height := 0.0
	top, loose := map[uint8]float64{}, map[uint8]bool{} // by yarn met: the height of its last row; it was left at no edge
	for k, n := range needs {
		for i, u := range n.Yarns {
			from, met := top[u.Yarn]
			atEdge := i == 0 && !n.Around && !n.Inset && !loose[u.Yarn]
			switch {
			case !met:
			case atEdge:
				t.decides[k], t.floats[k] = true, height-from
			case u.Joined:
				t.fixed[k]++
			case i == 0:
				t.always = max(t.always, height-from)
			}
		}
		height += n.Height
		for _, u := range n.Yarns {
			top[u.Yarn], loose[u.Yarn] = height, n.Around || u.Yarn != n.Last
		}
	}
	return t
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
// edge where it waits: set where WS rows begin. Which yarns have been joined,
// and which wait at no edge, follows from the row.
type search struct {
	taking
	needs  []Need
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
	s := &search{taking: takenUp(needs), needs: needs}
	yarns := 0
	for _, n := range needs {
		for _, u := range n.Yarns {
			yarns = max(yarns, int(u.Yarn)+1)
		}
	}
	for i := range s.layers {
		s.layers[i] = make([]cost, 2<<yarns)
	}
	return s
}

// cheapest gives the least cost of working the rows with no float longer than
// limit where the plan decides; unreachable where nothing keeps what they ask.
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
	for k := range s.needs {
		for i := range next {
			next[i] = unreachable
		}
		n := &s.needs[k]
		first, last := 0, 0 // the bits of the yarns with which it begins and ends
		if len(n.Yarns) > 0 {
			first = 2 << n.Yarns[0].Yarn
		}
		if len(n.Yarns) > 0 && !n.Around {
			last = 2 << n.Last
		}
		rows := k > 0 && !n.Around && !s.needs[k-1].Around // one upon the other
		for state, paid := range here {
			if paid == unreachable {
				continue
			}
			paid += cost(s.fixed[k]) * oneCut
			for face := RS; face <= WS; face++ {
				ws := int(face - RS)
				if n.Face != AnyFace && n.Face != face || n.Turns && k > 0 && state&1 == ws {
					continue
				}
				sum := paid
				if meets := state&first != 0 == (face == WS); s.decides[k] && (!meets || s.floats[k] > limit) {
					sum += oneCut
				}
				if rows && state&1 == ws {
					sum++
				}
				to := state&^last&^1 | ws
				if face == RS { // it ends where WS rows begin
					to |= last
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

// plan is the cheapest plan with no float longer than limit where it decides.
func (s *search) plan(limit float64) Plan {
	s.from = make([][]int32, len(s.needs))
	for k := range s.from {
		s.from[k] = make([]int32, len(s.layers[0]))
	}
	least := s.cheapest(limit)
	state := slices.Index(s.layers[0], least)
	p := Plan{Faces: make([]Face, len(s.needs)), Cuts: least.cuts(), Longest: s.always, Unturned: int(least % oneCut)}
	for k := len(s.needs) - 1; k >= 0; k-- {
		p.Faces[k] = RS + Face(state&1)
		state = int(s.from[k][state])
		if s.decides[k] && s.floats[k] <= limit && state&(2<<s.needs[k].Yarns[0].Yarn) != 0 == (p.Faces[k] == WS) {
			p.Longest = max(p.Longest, s.floats[k])
		}
	}
	return p
}
