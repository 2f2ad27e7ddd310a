package chart

import (
	"strandway/chart/geom"
	"strandway/model/fabric"
)

// yarnMarks puts a hollow triangle where a yarn is joined and a filled one where it is cut.
func (e *engraver) yarnMarks() {
	var ink *inkMap
	for i := range e.f.Events {
		v := &e.f.Events[i]
		name, id := "", v.Before
		switch v.Do {
		case fabric.JoinYarn:
			name, id = "join", e.placedFrom(v.Before, 1)
		case fabric.Cut:
			name, id = "cut", e.placedFrom(v.Before-1, -1)
		}
		if name == "" || id < 0 || v.Do == fabric.JoinYarn && e.placedFrom(0, 1) == id {
			continue // a piece's first loop has no sign of its own
		}
		if ink == nil {
			ink = e.mapInk()
			e.begin("yarns", "yarns", "", -1)
		}
		e.triangle(name, id, v, ink)
	}
	if ink != nil {
		e.end()
	}
}

// placedFrom is the first stitch from id on, in steps of step, that has a place; -1 for none.
func (e *engraver) placedFrom(id, step int32) int32 {
	for ; id >= 0 && int(id) < len(e.f.Stitches); id += step {
		if e.p.Poses[id].Placed && !e.p.Poses[id].Dropped {
			return id
		}
	}
	return -1
}

// triangle points at the foot of a row's first stitch or at the head of its
// last, from the side where there is most room.
func (e *engraver) triangle(name string, id int32, v *fabric.Event, ink *inkMap) {
	shape, ok := e.set.Symbol(name)
	if !ok {
		return
	}
	p := &e.p.Poses[id]
	foot := e.hostFoot(id)
	at, height := between(foot, p.Top)
	out := e.outward(id, at.up)
	tip := foot.Add(at.up.Mul(min(.3, height/2)))
	if name == "cut" {
		tip = p.Top.Sub(at.up.Mul(.1))
		if row := &e.f.Rows[e.f.Stitches[id].Row]; int(id) > int(row.First) {
			out = e.ahead(id, at.up)
		}
	}
	var best frame
	enough := .45 * e.unit
	most := -1.0
search:
	for _, dir := range [...]geom.Point{out, out.Add(at.up.Mul(-.6)).Unit(), out.Add(at.up.Mul(.6)).Unit(), at.up, at.up.Mul(-1)} {
		for _, away := range [...]float64{.34, .5, .7, 1, 1.4} {
			f := frame{tip.Add(dir.Mul(away)), dir}
			if room := ink.clearance(e.page(f.foot.Add(dir.Mul(.25))), enough); room > most {
				best, most = f, room
			}
			if most > .7*enough { // room enough: sooner beside the row than anywhere better
				break search
			}
		}
	}
	yarn := e.look.yarn(v.Yarn)
	e.put(glyph{symbol: name, height: steps(shape.Height()), fill: e.look.paper}, best, yarn.line)
	for _, d := range [3]float64{0, .2, .4} {
		ink.add(e.page(best.foot.Add(best.up.Mul(d))))
	}
	if name == "join" {
		e.drawn.join = true
	} else {
		e.drawn.cut = true
	}
}

// ahead is the direction beside a stitch in which its row goes on.
func (e *engraver) ahead(id int32, up geom.Point) geom.Point {
	right := up.Perp().Mul(-1)
	row := &e.f.Rows[e.f.Stitches[id].Row]
	for n := id - 1; n >= row.First; n-- {
		if !e.p.Poses[n].Placed {
			continue
		}
		if right.Dot(e.p.Poses[id].Top.Sub(e.p.Poses[n].Top)) > 0 {
			return right
		}
		break
	}
	return right.Mul(-1)
}
