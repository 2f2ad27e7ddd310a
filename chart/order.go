package chart

import (
	"math"

	"strandway/chart/geom"
	"strandway/chart/symbol"
	"strandway/model/fabric"
)

// turn is one stitch's turn in the order of drawing.
type turn struct {
	id    int32
	cased bool
}

// order gives the stitches of a row in the order in which they are drawn. Those
// that cross others in front come after them and are cased; where they cross
// behind, those they cross are.
func (e *engraver) order(row *fabric.Row) []turn {
	var out []turn
	for id := row.First; id < row.Last; {
		if e.isLong(id) {
			id++
			continue
		}
		s := &e.f.Stitches[id]
		n := int32(1)
		if !s.Has(fabric.Crossed) {
			out = append(out, turn{id: id})
			id++
			continue
		}
		for id+n < row.Last && e.f.Stitches[id+n].Has(fabric.Crossed) {
			n++
		}
		crossed := min(int(n), len(out)) // as many as cross them, in a cable of two over two
		front := !s.Has(fabric.Behind)
		var run []turn
		for k := range n {
			run = append(run, turn{id + k, front})
		}
		if front {
			out = append(out, run...)
		} else {
			over := append([]turn(nil), out[len(out)-crossed:]...)
			for i := range over {
				over[i].cased = true
			}
			out = append(append(out[:len(out)-crossed], run...), over...)
		}
		id += n
	}
	return out
}

// inCrossing reports whether a stitch crosses others or is crossed by those after it.
func (e *engraver) inCrossing(id int32) bool {
	if !e.crossed[e.f.Stitches[id].Row] {
		return false
	}
	if e.f.Stitches[id].Has(fabric.Crossed) {
		return true
	}
	last := e.f.Rows[e.f.Stitches[id].Row].Last
	first := id + 1
	for first < last && !e.f.Stitches[first].Has(fabric.Crossed) {
		first++
	}
	end := first
	for end < last && e.f.Stitches[end].Has(fabric.Crossed) {
		end++
	}
	return first-id <= end-first
}

func (e *engraver) isLong(id int32) bool {
	s := &e.f.Stitches[id]
	if s.Has(fabric.Chain) {
		return false
	}
	if s.Has(fabric.Long) {
		return true
	}
	for _, l := range e.legs(id) {
		if l.Deep {
			return true
		}
	}
	return false
}

// crossedRows says of each row whether stitches cross in it.
func crossedRows(f *fabric.Fabric) []bool {
	crossed := make([]bool, len(f.Rows))
	for id := range f.Stitches {
		if s := &f.Stitches[id]; s.Has(fabric.Crossed) {
			crossed[s.Row] = true
		}
	}
	return crossed
}

// overPicots reports whether a stitch stands on a row with picots.
func (e *engraver) overPicots(id int32) bool {
	legs := e.legs(id)
	return len(legs) > 0 && legs[0].At >= 0 && e.picots[e.f.Stitches[legs[0].At].Row]
}

// picotRows says of each row whether it has picots.
func picotRows(f *fabric.Fabric) []bool {
	rows := make([]bool, len(f.Rows))
	for id := range f.Stitches {
		if s := &f.Stitches[id]; s.Has(fabric.Picot) {
			rows[s.Row] = true
		}
	}
	return rows
}

// isSpike reports whether a stitch is drawn as a spike: a sc worked below the
// usual row is one, by whatever name it was written.
func (e *engraver) isSpike(id int32) bool { return e.f.Kind(id).Symbol == "sc" && e.isLong(id) }

// passed are the middles of what long stitches may pass, by the square of one u they lie in.
type passed map[[2]int][]geom.Point

func (at passed) add(p geom.Point) { at[square(p)] = append(at[square(p)], p) }

// nearest is how far the nearest one lies from a point; more than 1 when there is none near.
func (at passed) nearest(p geom.Point) float64 {
	k, least := square(p), math.Inf(1)
	for dy := -1; dy <= 1; dy++ {
		for dx := -1; dx <= 1; dx++ {
			for _, c := range at[[2]int{k[0] + dx, k[1] + dy}] {
				least = min(least, c.Sub(p).Len())
			}
		}
	}
	return least
}

func square(p geom.Point) [2]int { return [2]int{int(math.Floor(p.X)), int(math.Floor(p.Y))} }

// passable finds the crosses, and with them the ovals and bars, that long stitches may pass.
func (e *engraver) passable() (crosses, all passed) {
	crosses, all = passed{}, passed{}
	for id := range e.f.Stitches {
		p := &e.p.Poses[id]
		if !p.Placed || p.Dropped || e.isLong(int32(id)) {
			continue
		}
		if e.isCross(int32(id)) {
			c := p.Top.Lerp(e.hostFoot(int32(id)), .45)
			crosses.add(c)
			all.add(c)
			continue
		}
		all.add(p.Top)
	}
	return crosses, all
}

// isCross reports whether a stitch is drawn as a cross.
func (e *engraver) isCross(id int32) bool {
	s := &e.f.Stitches[id]
	return s.Flags&(fabric.Chain|fabric.TurningChain) == 0 && e.f.Kind(id).Chains < 1.25
}

// passes reports whether a leg of a long stitch runs over a cross. It is then
// drawn as a plain line: white round it would leave crumbs of the cross.
func (e *engraver) passes(id int32, crosses passed) bool {
	top := e.p.Poses[id].Top
	for _, l := range e.legs(id) {
		d := top.Sub(l.Foot)
		for t := .3; t < d.Len()-.6; t += .4 {
			if crosses.nearest(l.Foot.Add(d.Unit().Mul(t))) < .3 {
				return true
			}
		}
	}
	return false
}

// raised is how much higher than usual the marks of a long stitch sit, so that
// they keep off what its stem passes: the least move that clears them, if there is one.
func (e *engraver) raised(shape *symbol.Symbol, foot, top geom.Point, all passed) (raise int8, clears bool) {
	const (
		clear = .5 // half an oval, half a slash and some white
		step  = .06
	)
	reach, middle, ok := shape.Marks(top.Sub(foot).Len())
	if !ok {
		return 0, true
	}
	up := top.Sub(foot).Unit()
	best, most := 0.0, -1.0
	for k := range 40 {
		move := float64((k+1)/2) * step
		if k%2 == 0 {
			move = -move
		}
		at := middle + move
		if at-reach < .3 || at+reach > top.Sub(foot).Len()-.3 {
			continue
		}
		room := math.Inf(1)
		for _, end := range [2]float64{-1, 1} {
			room = min(room, all.nearest(foot.Add(up.Mul(at+end*max(reach-.13, 0)))))
		}
		if room > most {
			best, most = move, room
		}
		if room > clear {
			break
		}
	}
	return int8(math.Round(best * 50)), most > clear
}
