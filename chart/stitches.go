package chart

import (
	"fmt"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
	"strandway/model/stitch"
)

// Gaps between a foot and the place it stands in, in u.
const (
	gapOverStitch   = .20
	gapOverChain    = .30 // half an oval and .10
	gapCrossStitch  = .05 // a cross keeps its distance by itself
	gapCrossChain   = .22
	gapPost         = .16 // the hook stands above the bar below
	gapCornerSpace  = .42
	gapLoopMark     = .10 // more, where an arc lies under the foot
	gapUnderTurning = .30
)

// stitches draws all rows, and then what passes over them.
func (e *engraver) stitches() {
	for r := range e.f.Rows {
		row := &e.f.Rows[r]
		if row.First == row.Last {
			continue
		}
		e.begin(fmt.Sprintf("r%d", r), "row", e.rowTitle(r), -1)
		for _, d := range e.order(row) {
			e.stitch(d.id, d.cased)
		}
		e.end()
	}
	var long []int32
	for id := range e.f.Stitches {
		if e.isLong(int32(id)) {
			long = append(long, int32(id))
		}
	}
	if len(long) == 0 {
		return
	}
	e.begin("long", "row", "Stitches worked below the usual row", -1)
	low := e.lowStitches()
	for _, id := range long {
		e.stitch(id, !e.passes(id, low))
	}
	e.end()
}

func (e *engraver) legs(id int32) []layout.Leg {
	p := &e.p.Poses[id]
	return e.p.Legs[p.FirstLeg : p.FirstLeg+int32(p.NLegs)]
}

// stitch draws one stitch in a group of its own.
func (e *engraver) stitch(id int32, cased bool) {
	s, p, k := &e.f.Stitches[id], &e.p.Poses[id], e.f.Kind(id)
	if p.Dropped {
		return
	}
	e.begin(fmt.Sprintf("s%d", id), "stitch", e.title(id), id)
	defer e.end()
	switch {
	case s.Has(fabric.Picot):
		e.picot(id)
	case !p.Placed:
		e.hanging(id)
	case s.Has(fabric.TurningChain) && s.Chains > 0:
		e.turningChain(id)
	case s.Has(fabric.Chain) || k.Family == "chain" && k.Symbol == "chain":
		e.chain(id)
	default:
		e.standing(id, k, cased)
	}
}

// standing draws a stitch on its feet.
func (e *engraver) standing(id int32, k *stitch.Kind, cased bool) {
	s, p := &e.f.Stitches[id], &e.p.Poses[id]
	legs := e.legs(id)
	ink := e.look.yarn(s.Yarn)
	g := glyph{symbol: e.symbolOf(k), fill: ink.fill, cased: cased}
	if joined := g.symbol + "-foot"; p.Fan >= 0 && len(legs) == 1 && !legs[0].Space {
		if _, ok := e.set.Symbol(joined); ok {
			g.symbol = joined
		}
	}
	shape, ok := e.set.Symbol(g.symbol)
	if !ok {
		return
	}
	mark := e.loopMark(id, k)
	e.drawn.stitch(e, id, k, legs, mark)

	feet := make([]geom.Point, 0, 2)
	for i := range legs {
		foot := e.foot(id, &legs[i], mark != "")
		if legs[i].Post != 0 && foot.Sub(p.Top).Len() > legs[i].Foot.Sub(p.Top).Len() {
			g.cased = !e.isLong(id) || cased // it reaches over the post below
		}
		feet = append(feet, foot)
	}
	if len(feet) == 0 { // it stands on nothing, as foundation stitches do
		feet = append(feet, p.Top.Sub(p.Up.Unit().Mul(shape.Height())))
	}
	if shape.Whole {
		feet = []geom.Point{middle(feet)}
	}
	posts := make([]int8, len(feet))
	for i := range min(len(legs), len(posts)) {
		posts[i] = legs[i].Post
	}
	if k.SamePlace && k.Legs > 1 && !shape.Whole {
		g.legs, g.lump = bowedLegs(k.Legs), k.Lump
	}
	e.engrave(g, feet, posts, p.Top, mark, ink)
}

// engrave draws a symbol from its feet to its head. Several legs meet in one
// head, which stands square to their mean.
func (e *engraver) engrave(g glyph, feet []geom.Point, posts []int8, top geom.Point, mark string, ink yarnInk) {
	shape, ok := e.set.Symbol(g.symbol)
	if !ok {
		return
	}
	leg := g
	if len(feet) > 1 {
		leg.parts = legParts
		if _, ok := e.set.Symbol(g.symbol + "-leg"); ok {
			leg.symbol, leg.parts = g.symbol+"-leg", allParts
		}
	}
	var mean geom.Point
	for i, foot := range feet {
		at, height := between(e.onPost(foot, top, posts[i], ink, g), top)
		leg.height = steps(height)
		e.put(leg, at, ink.line)
		if mark != "" {
			e.put(glyph{symbol: mark, height: steps(.14), fill: ink.fill}, frame{foot, at.up}, ink.line)
		}
		mean = mean.Add(at.up)
	}
	if leg.parts == allParts { // one leg with its head, or legs that meet in a point
		return
	}
	head := g
	head.parts, head.height, head.cased = headParts, steps(shape.Height()), false
	up := mean.Unit()
	e.put(head, frame{top.Sub(up.Mul(shape.Height())), up}, ink.line)
}

// onPost draws the hook of a post stitch at its foot and gives the point where its stem begins.
func (e *engraver) onPost(foot, top geom.Point, post int8, ink yarnInk, g glyph) geom.Point {
	if post == 0 {
		return foot
	}
	hook := glyph{symbol: "front-post", fill: ink.fill, cased: g.cased}
	if post < 0 {
		hook.symbol = "back-post"
	}
	shape, _ := e.set.Symbol(hook.symbol)
	hook.height = steps(shape.Height())
	at, _ := between(foot, top)
	e.put(hook, at, ink.line)
	return foot.Add(at.up.Mul(shape.Height()))
}

// symbolOf is the symbol of a kind, + for x where that is asked for.
func (e *engraver) symbolOf(k *stitch.Kind) string {
	if e.o.PlusCross && k.Symbol == "sc" {
		return "sc-plus"
	}
	return k.Symbol
}

// foot is where a leg begins: its place, and the gap that the drawing leaves.
// The members of a fan share one foot.
func (e *engraver) foot(id int32, l *layout.Leg, marked bool) geom.Point {
	p := &e.p.Poses[id]
	dir := p.Top.Sub(l.Foot).Unit()
	gap := gapOverStitch
	cross := e.f.Kind(id).Chains < 1.25
	overChain := l.At >= 0 && e.f.Stitches[l.At].Has(fabric.Chain) && !e.f.Stitches[l.At].Has(fabric.TurningChain)
	switch {
	case l.At < 0 && e.p.RingR > 0:
		return l.Foot.Add(dir.Mul(max(.75, e.p.RingR+.33)))
	case l.Post != 0:
		gap = min(gapPost, p.Top.Sub(l.Foot).Len()-e.postLength(id))
	case cross && overChain:
		gap = gapCrossChain
	case cross:
		gap = gapCrossStitch
	case overChain:
		gap = gapOverChain
	}
	if marked {
		gap += gapLoopMark
	}
	if p.Fan >= 0 {
		dir = e.fans[p.Fan]
		if cross {
			gap += .15
		}
		if l.Space && overChain && !cross && round(e.p.Manner) && e.spaceLength(l.At) > 1 {
			gap = gapCornerSpace
		}
	}
	return l.Foot.Add(dir.Mul(gap))
}

// postLength is the least height of a post stitch above its hook's foot, so that
// all it carries has room; in rows of low stitches it reaches down round the
// post below, where it is worked.
func (e *engraver) postLength(id int32) float64 {
	shape, ok := e.set.Symbol(e.symbolOf(e.f.Kind(id)))
	if !ok {
		return 0
	}
	return .45*shape.Height() + .35
}

// loopMark names the arc under a stitch that is worked in one loop alone, as the
// right side shows it: on wrong side rows front and back change places.
func (e *engraver) loopMark(id int32, k *stitch.Kind) string {
	loop := k.Loop
	for _, b := range e.f.Of(id) {
		switch b.How {
		case fabric.FrontLoop:
			loop = stitch.FrontLoop
		case fabric.BackLoop:
			loop = stitch.BackLoop
		case fabric.Third:
			loop = stitch.ThirdLoop
		}
	}
	ws := e.f.Rows[e.f.Stitches[id].Row].WS
	switch {
	case loop == stitch.ThirdLoop:
		return "third-loop"
	case loop == stitch.FrontLoop && !ws, loop == stitch.BackLoop && ws:
		return "front-loop"
	case loop != stitch.BothLoops:
		return "back-loop"
	}
	return ""
}

// meanDirections gives, for every fan, the direction from its place to the middle of its members.
func meanDirections(p *layout.Plan) []geom.Point {
	var sum []geom.Point
	for id := range p.Poses {
		q := &p.Poses[id]
		if q.Fan < 0 || q.NLegs == 0 {
			continue
		}
		for int(q.Fan) >= len(sum) {
			sum = append(sum, geom.Point{})
		}
		sum[q.Fan] = sum[q.Fan].Add(q.Top.Sub(p.Legs[q.FirstLeg].Foot).Unit())
	}
	for i := range sum {
		sum[i] = sum[i].Unit()
	}
	return sum
}

func middle(points []geom.Point) geom.Point {
	var m geom.Point
	for _, p := range points {
		m = m.Add(p)
	}
	return m.Mul(1 / float64(len(points)))
}
