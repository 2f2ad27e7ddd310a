package chart

import (
	"math"

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
		case fabric.Hold:
			name, id = "hold", e.placedFrom(v.Before-1, -1)
		case fabric.PickUp:
			if e.o.Waiting && v.Side != fabric.NoSide {
				name, id = "pick-up", e.placedFrom(v.Before, 1)
			}
		case fabric.Drop:
			if e.o.Waiting && v.Side != fabric.NoSide {
				name, id = "wait", e.placedFrom(v.Before-1, -1)
			}
		}
		if name == "" || id < 0 || v.Do == fabric.JoinYarn && (e.placedFrom(0, 1) == id || e.inMidRow(id)) {
			continue // a piece's first loop has no sign of its own, and a change of colour in mid-row shows by itself
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

// inMidRow reports whether stitches of its own row stand before this one.
func (e *engraver) inMidRow(id int32) bool {
	return e.firstPlaced(int(e.f.Stitches[id].Row)) != id
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
	if name != "join" && name != "pick-up" { // at the row's end
		tip = p.Top.Sub(at.up.Mul(.1))
		if row := &e.f.Rows[e.f.Stitches[id].Row]; int(id) > int(row.First) {
			out = e.ahead(id, at.up)
		}
	}
	var best frame
	enough := .24 * e.unit
	most := -1.0
search:
	for _, turn := range [...]float64{0, -.55, .55, -1.1, 1.1, -math.Pi / 2, math.Pi / 2, -2.1, 2.1, -2.6, 2.6} {
		dir := out.Rotate(turn)
		for _, away := range [...]float64{.34, .5, .7, 1, 1.4, 1.8, 2.3} {
			f := frame{tip.Add(dir.Mul(away)), dir}
			room := enough
			for _, q := range e.outlineOf(f) {
				room = min(room, ink.clearance(q, enough))
			}
			if room > most {
				best, most = f, room
			}
			if most >= enough { // room enough: sooner beside the row than anywhere better
				break search
			}
		}
	}
	yarn := e.look.yarn(v.Yarn)
	e.put(glyph{symbol: name, height: steps(shape.Height()), fill: e.look.paper}, best, yarn.line)
	for _, q := range e.outlineOf(best) {
		ink.add(q)
	}
	e.drawn.yarns[name] = true
}

// outlineOf is points of a triangle that stands at f, on the page.
func (e *engraver) outlineOf(f frame) []geom.Point {
	var points []geom.Point
	across := f.up.Perp()
	for _, d := range [...]geom.Point{{}, {Y: .2}, {X: .12, Y: .2}, {X: -.12, Y: .2}, {X: .23, Y: .4}, {X: -.23, Y: .4}, {Y: .4}} {
		points = append(points, e.page(f.foot.Add(across.Mul(d.X)).Add(f.up.Mul(d.Y))))
	}
	return points
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
