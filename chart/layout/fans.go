package layout

import "math"

// fan is two or more stitches of a row that stand in one place, chains between
// them allowed.
type fan struct {
	row         int32
	first, last int32 // its outer members
	members     int32
	side        int8 // +1 at the left edge, -1 at the right: it leans one way only
	h           float64
	chains      bool      // there are chains between its members
	lean        []float64 // of each node from first to last, radians from upright, to the left
}

const (
	lowLean       = .2  // share of its opening, by which a fan's low end leans outward
	lowShare      = .72 // of their gap, that members of unlike height keep at the lower one's head
	archShare     = .7  // of their length, that chains between two members span
	widestArch    = 2.3 // u that they span at most
	leastArch     = .6  // share of their opening that chains keep in a fan with too little room
	mostArch      = 76 * math.Pi / 180
	leastClimb    = 26 * math.Pi / 180 // between members of unlike height with a run of chains from one to the other
	mostClimb     = 52 * math.Pi / 180
	tallestFan    = 1.35 // of their height, that stitches reach in a fan with too little room
	widestFan     = 128 * math.Pi / 180
	widestHalfFan = 58 * math.Pi / 180
)

// findFans groups neighbours that stand in one place.
//
// After it, every member knows its fan, and every fan the lean of its members.
func (p *piece) findFans() {
	for ri := range p.rows {
		r := p.rows[ri]
		for i := r.first; i < r.last; {
			n := &p.nodes[i]
			if n.nlegs != 1 || n.deep || p.legs[n.leg].a < 0 {
				i++
				continue
			}
			place := p.legs[n.leg]
			f := fan{row: int32(ri), first: i, last: i, members: 1, h: n.h}
			for j := i + 1; j < r.last; j++ {
				m := &p.nodes[j]
				if m.chain {
					continue
				}
				if m.nlegs != 1 || m.deep || !samePlace(p.legs[m.leg], place) {
					break
				}
				f.chains = f.chains || j > f.last+1
				f.last = j
				f.members++
			}
			switch {
			case f.members < 2:
			case p.fills(&f, place):
				p.fill(&f, place)
			default:
				p.addFan(f, r, place)
			}
			i = f.last + 1
		}
	}
}

// widens reports whether a fan is an increase that only widens its row: two in one stitch, or three low ones.
func (p *piece) widens(f *fan) bool {
	return !f.chains && (f.members == 2 || f.members == 3 && p.nodes[f.first].low)
}

func samePlace(l, m leg) bool {
	return l.post == m.post &&
		(l.a == m.a && l.b == m.b || l.a == m.b && l.b == m.a)
}

func (p *piece) addFan(f fan, r row, place leg) {
	below := p.rows[p.nodes[place.a].row]
	if !r.closed && !p.hasRing {
		atLeft := p.atEdge(f.first, r.first, -1, min(place.a, place.b), below.first) && p.skips(f.last+1, r, place)
		atRight := p.atEdge(f.last, r.last-1, 1, max(place.a, place.b), below.last-1) && p.skips(f.first-1, r, place)
		switch {
		case atLeft && !atRight:
			f.side = 1
		case atRight && !atLeft:
			f.side = -1
		}
	}
	for i := f.first; i <= f.last; i++ {
		if n := &p.nodes[i]; n.grown > 0 { // in the piece of which this one is a part
			n.h, n.grown = n.h/n.grown, 0
		}
	}
	f.h = max(p.nodes[f.first].h, p.nodes[f.last].h, .2)
	f.lean = p.leans(&f)
	for i := f.first; i <= f.last; i++ {
		if !p.nodes[i].chain {
			p.nodes[i].fan = int32(len(p.fans))
		}
	}
	p.fans = append(p.fans, f)
}

// atEdge reports whether a fan's outer member i is the last of its row, or has only
// the turning chain of the first row beside it, in the same place or the next.
func (p *piece) atEdge(i, last, outward, place, edge int32) bool {
	if i == last {
		return place == edge
	}
	return i+outward == last && p.nodes[last].turn && p.nodes[last].nlegs > 0 && p.legs[p.nodes[last].leg].a == edge && place == edge-outward
}

// skips reports whether the stitch at i, beside a fan, leaves out places next to
// the fan's: half a shell has room on one side only, an increase at the edge widens
// the row.
func (p *piece) skips(i int32, r row, place leg) bool {
	if i < r.first || i >= r.last || p.nodes[i].nlegs == 0 {
		return true
	}
	l := p.legs[p.nodes[i].leg]
	d := l.a + l.b - place.a - place.b
	return d > 2 || d < -2
}

// leans opens the fan so that its tops stand a stitch apart, with room for the
// chains between them; a fan at an edge keeps its outer member upright.
func (p *piece) leans(f *fan) []float64 {
	lean := make([]float64, f.last-f.first+1)
	open := make([]float64, len(lean)) // by the chains before a member
	total, arches := 0.0, 0.0
	prev := f.first
	for i := f.first + 1; i <= f.last; i++ {
		if p.nodes[i].chain {
			continue
		}
		angle := p.opens(f, prev, i)
		if i > prev+1 {
			open[i-f.first] = angle
			arches += angle
		}
		total += angle
		lean[i-f.first] = total
		prev = i
	}
	widest := widestFan
	if f.side != 0 {
		widest = widestHalfFan
	}
	if arches > 0 && total > widest { // chains can arch higher sooner than stitches stand closer
		tight := max(leastArch, 1-(total-widest)/arches)
		turned := 0.0
		for i := range lean {
			turned += open[i] * (1 - tight)
			lean[i] -= turned
		}
		total -= turned
	}
	scale := min(1, widest/total)
	if f.chains && f.side == 0 && scale < 1 && !p.h.measured { // taller stitches reach a wider arc
		grow := min(tallestFan, 1/scale)
		for i := f.first; i <= f.last; i++ {
			p.nodes[i].h *= grow
			p.nodes[i].grown = grow
		}
		scale = min(1, scale*grow)
	}
	from := total / 2
	low, high := p.nodes[f.first].h, p.nodes[f.last].h
	switch {
	case unlike(low, high) && low < high: // the low end stands up, the taller lean away from it
		from = lowLean * total
	case unlike(low, high):
		from = (1 - lowLean) * total
	case f.side == 1:
		from = 0
	case f.side == -1:
		from = total
	}
	for i := range lean {
		lean[i] = (from - lean[i]) * scale
	}
	return lean
}

// opens is the angle between two neighbouring members of a fan.
func (p *piece) opens(f *fan, a, b int32) float64 {
	low, high := min(p.nodes[a].h, p.nodes[b].h), max(p.nodes[a].h, p.nodes[b].h)
	gap := p.abreast(a, b)
	chains := b - a - 1
	if chains > 0 {
		gap = chainGap * float64(chains+1)
		if chains > 1 { // they arch outward
			gap = min(archShare*gap, widestArch)
		}
	}
	switch {
	case chains > 1 && unlike(low, high): // the chains climb from one head to the other
		return leastClimb + (mostClimb-leastClimb)*min(1, max(0, gap-(high-low))/gap)
	case unlike(low, f.h): // they part already at the lower one's head
		f := 2 * math.Asin(min(.9, lowShare*gap/(2*low)))
		if chains > 0 {
			f = min(f, mostArch)
		}
		return f
	case chains > 0:
		return min(2*math.Asin(min(.9, gap/(2*f.h))), mostArch)
	}
	return 2 * math.Asin(min(.9, gap/(2*f.h)))
}

// abreast is the distance of the tops of two members of a fan that follow each other.
func (p *piece) abreast(a, b int32) float64 {
	if p.nodes[a].lump && p.nodes[b].lump {
		return lumpGap
	}
	return fanGap
}

// leanOf is how far node i leans to the left of upright, radians.
func (p *piece) leanOf(i int32) float64 {
	k := p.nodes[i].fan
	if k < 0 {
		return 0
	}
	f := &p.fans[k]
	return f.lean[i-f.first]
}
