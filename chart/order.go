package chart

import (
	"math"

	"strandway/chart/geom"
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

// lowStitches are the middles of all crosses, by the square of one u they lie in.
func (e *engraver) lowStitches() map[[2]int][]geom.Point {
	low := make(map[[2]int][]geom.Point)
	for id := range e.f.Stitches {
		p := &e.p.Poses[id]
		if p.Placed && e.isCross(int32(id)) && !e.isLong(int32(id)) {
			c := p.Top.Lerp(e.hostFoot(int32(id)), .45)
			k := square(c)
			low[k] = append(low[k], c)
		}
	}
	return low
}

func square(p geom.Point) [2]int { return [2]int{int(math.Floor(p.X)), int(math.Floor(p.Y))} }

// isCross reports whether a stitch is drawn as a cross.
func (e *engraver) isCross(id int32) bool {
	s := &e.f.Stitches[id]
	return s.Flags&(fabric.Chain|fabric.TurningChain) == 0 && e.f.Kind(id).Chains < 1.25
}

// passes reports whether a leg of a long stitch runs over a cross. It is then
// drawn as a plain line: white round it would leave crumbs of the cross.
func (e *engraver) passes(id int32, low map[[2]int][]geom.Point) bool {
	top := e.p.Poses[id].Top
	for _, l := range e.legs(id) {
		d := top.Sub(l.Foot)
		for t := .3; t < d.Len()-.6; t += .4 {
			p := l.Foot.Add(d.Unit().Mul(t))
			k := square(p)
			for dy := -1; dy <= 1; dy++ {
				for dx := -1; dx <= 1; dx++ {
					for _, c := range low[[2]int{k[0] + dx, k[1] + dy}] {
						if c.Sub(p).Len() < .3 {
							return true
						}
					}
				}
			}
		}
	}
	return false
}
