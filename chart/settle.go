package chart

import (
	"maps"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/model/fabric"
)

// Room that what hangs on other stitches wants, in u.
const (
	dotAbove    = .28 // of a slip stitch over the top it stands on
	dotOverOval = .42 // the same over a chain
	dotHalf     = .16 // half its length
	dotThick    = .115
	slimThick   = .135
	roomy       = .10 // of white round it; where there is more, no more is looked for
)

// settles reports whether a stitch waits for the others to be drawn and then
// takes the room that is left: the joins of rounds, the slip stitches that move
// along to their start, and the chains that begin them and do not count.
func (e *engraver) settles(id int32) bool {
	s := &e.f.Stitches[id]
	return !e.p.Poses[id].Placed && s.Flags&(fabric.Picot|fabric.Surface) == 0 && e.f.Rows[s.Row].Shape != fabric.Flat
}

// settle finds room for what hangs in rounds.
func (e *engraver) settle() {
	var waiting []int32
	for id := range e.f.Stitches {
		if p := &e.p.Poses[id]; e.settles(int32(id)) && p.Host >= 0 && !p.Dropped && e.p.Poses[p.Host].Placed {
			waiting = append(waiting, int32(id))
		}
	}
	if len(waiting) == 0 {
		return
	}
	first := *e
	first.settling, first.list, first.extents, first.drawn = true, &display.List{}, display.Extents{}, newKeyBook()
	first.cut = maps.Clone(e.cut)
	first.stitches()
	if e.p.RingR > 0 {
		first.ring()
	}
	ink := first.mapInk()
	e.settled = make(map[int32]frame, len(waiting))
	for _, id := range waiting {
		s := &e.f.Stitches[id]
		if s.Has(fabric.Chain) || s.Has(fabric.TurningChain) {
			_, before, chains := e.column(id)
			if before > 0 { // stands in the column of the first
				e.settled[id] = e.settled[id-int32(before)]
				continue
			}
			half := float64(chains)*sidePitch/2 - slimThick
			e.settled[id] = e.roomiest(ink, e.columnPlaces(id), half, slimThick, true)
			continue
		}
		places := e.travelPlaces(id)
		if s.Has(fabric.Join) {
			places = e.joinPlaces(id)
		}
		e.settled[id] = e.roomiest(ink, places, dotHalf, dotThick, false)
	}
}

// roomiest takes the first of several places with room enough for a shape of a
// half length and half thickness, or else that with most room, and fills it.
func (e *engraver) roomiest(ink *inkMap, places []frame, half, thick float64, along bool) frame {
	enough := thick + stroke + roomy
	var best frame
	most := -1.0
	points := func(f frame) [3]geom.Point {
		d := f.up
		reach := half
		if !along { // a dot lies across
			d, reach = f.up.Perp(), half-thick
		}
		return [3]geom.Point{e.page(f.foot.Sub(d.Mul(reach))), e.page(f.foot), e.page(f.foot.Add(d.Mul(reach)))}
	}
	for _, f := range places {
		room := enough * e.unit
		for _, q := range points(f) {
			room = min(room, ink.clearance(q, enough*e.unit))
		}
		if room > most {
			best, most = f, room
		}
		if room >= enough*e.unit {
			break
		}
	}
	for _, q := range points(best) { // its outline, as far as others need to know
		for _, d := range [4]geom.Point{{X: thick}, {X: -thick}, {Y: thick}, {Y: -thick}} {
			ink.add(q.Add(d.Mul(e.unit)))
		}
	}
	return best
}

// columnPlaces are the places beside its host for a column of chains.
func (e *engraver) columnPlaces(id int32) []frame {
	at := e.besideHost(id)
	host := e.p.Poses[id].Host
	side := e.outward(host, at.up)
	var places []frame
	for _, up := range [...]float64{0, -.12, .12, -.24, .24, .4, -.4, .6} {
		for _, out := range [...]float64{0, -.1, .1, -.2, .2, -.28, .34, .5} {
			places = append(places, frame{at.foot.Add(side.Mul(out)).Add(at.up.Mul(up)), at.up})
		}
	}
	return places
}

// travelPlaces are the places over or about its host for a slip stitch, best first.
func (e *engraver) travelPlaces(id int32) []frame {
	host := &e.p.Poses[e.p.Poses[id].Host]
	up := host.Up.Unit()
	var places []frame
	for _, turn := range [...]float64{0, .5, -.5, 1, -1, 1.5, -1.5, 2.2, -2.2, 3} {
		for _, far := range [...]float64{dotAbove, .36, .44, .54, .7, .9} {
			places = append(places, frame{host.Top.Add(up.Rotate(turn).Mul(far)), up})
		}
	}
	return places
}

// joinPlaces are the places between the two ends of its round for a join, best first.
func (e *engraver) joinPlaces(id int32) []frame {
	row := &e.f.Rows[e.f.Stitches[id].Row]
	target := &e.p.Poses[e.p.Poses[id].Host]
	if b := e.f.Of(id); len(b) > 0 && b[0].At >= 0 && e.p.Poses[b[0].At].Placed {
		target = &e.p.Poses[b[0].At]
	}
	up := target.Up.Unit()
	last := id - 1
	for last >= row.First && (!e.p.Poses[last].Placed || e.p.Poses[last].Dropped) {
		last--
	}
	if last < row.First || &e.p.Poses[last] == target {
		return e.travelPlaces(id)
	}
	q := &e.p.Poses[last]
	to := q.Top.Sub(target.Top)
	if to.Len() > 2.2 { // the round lies cut open: it is closed at its far end
		return []frame{{q.Top.Add(e.ahead(last, q.Up.Unit()).Mul(.62)), q.Up.Unit()}}
	}
	var places []frame
	for _, share := range [...]float64{.5, .4, .6, .3, .7, .2, .8} {
		for _, over := range [...]float64{.05, .2, -.1, .32, -.25, .44, -.4, -.55} {
			places = append(places, frame{target.Top.Add(to.Mul(share)).Add(up.Mul(over)), up})
		}
	}
	return append(places, e.travelPlaces(id)...)
}
