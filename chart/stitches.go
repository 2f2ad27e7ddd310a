package chart

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/chart/symbol"
	"strandway/model/fabric"
	"strandway/model/stitch"
)

// Gaps between a foot and the place it stands in, in u.
const (
	gapOverStitch   = .20
	gapOverChain    = .14 // above the oval's line
	gapCrossStitch  = .05 // a cross keeps its distance by itself
	gapCrossChain   = .10 // above the oval's line
	gapLeaning      = .09 // more, where a fan leans over several chains
	gapPost         = .16 // the hook stands above the bar below
	gapCornerSpace  = .48
	gapLoopMark     = .18 // more, where an arc lies under the foot
	gapUnderBar     = .15 // more yet, where the arc lies over a bar
	gapUnderTurning = .26
)

const (
	crossAlone     = .7  // u of leg under the head of a cross that stands in a space with others
	crossBelowHead = .22 // u from the head to the middle of a cross that shares its place with others
	crossTop       = .42 // u from its head to the middle of a cross that stands over picots
	crossedRaise   = .26 // of its height, by which the marks of a crossed stitch are raised
	leastMarks     = .56 // u between the stems of a fan at their marks, below which these are shorter
)

// stitches draws all rows, and then what passes over them.
func (e *engraver) stitches() {
	e.list.Items = slices.Grow(e.list.Items, 4*len(e.f.Stitches)) // most take a group and one symbol
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
	e.begin("long", "row", e.say("Stitches worked below the usual row"), -1)
	var crosses passed
	crosses, e.under = e.passable()
	for _, id := range long {
		e.stitch(id, !e.passes(id, crosses))
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
	e.begin("s"+strconv.Itoa(int(id)), "stitch", e.title(id), id)
	defer e.end()
	if own, first, ok := e.ownOf(id); ok {
		if first {
			e.ownStitch(id, own)
		}
		return
	}
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
	if e.isSpike(id) {
		g.symbol = "spike"
	}
	if len(legs) == 1 && (p.Fan >= 0 && !legs[0].Space || legs[0].Post != 0) {
		g.symbol = e.footed(g.symbol)
	}
	shape, ok := e.set.Symbol(g.symbol)
	if !ok {
		return
	}
	g.narrow = p.Fan >= 0 && e.members[p.Fan] >= crowdedFan
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
	posts := make([]post, len(feet))
	for i := range min(len(legs), len(posts)) {
		posts[i].side = legs[i].Post
		if legs[i].At >= 0 {
			posts[i].up = e.p.Poses[legs[i].At].Up.Unit()
		}
	}
	if k.SamePlace && k.Legs > 1 && !shape.Whole {
		g.legs, g.lump = bowedLegs(k.Legs), k.Lump
	}
	if len(feet) == 1 && g.legs == 0 {
		e.placeMarks(&g, id, shape, feet[0])
	}
	at := stance{feet: feet, posts: posts, top: p.Top}
	if e.inCrossing(id) && !shape.Whole { // its head lies in line with those beside it
		at.up = p.Up
	}
	e.engrave(g, at, mark, ink)
}

// placeMarks moves and shortens the marks of a stitch where others crowd them.
func (e *engraver) placeMarks(g *glyph, id int32, shape *symbol.Symbol, foot geom.Point) {
	p := &e.p.Poses[id]
	long, crossing := e.isLong(id), e.inCrossing(id)
	height := p.Top.Sub(foot).Len()
	high := e.overPicots(id) && e.isCross(id)
	if !long && !crossing && !high && p.Fan < 0 {
		return
	}
	_, middle, ok := shape.Marks(height)
	switch {
	case !ok:
	case long:
		var room bool
		g.raise, room = e.raised(shape, foot, p.Top, e.under)
		g.short = !room
	case crossing: // off the point where the stems cross
		g.short = true
		g.raise = int8(50 * crossedRaise * height)
	case high: // over the picots of the row below
		g.raise = int8(50 * max(0, height-crossTop-middle))
	case p.Fan >= 0 && e.isCross(id): // towards the heads, where they part
		g.raise = int8(50 * max(0, height-crossBelowHead-middle))
	case p.Fan >= 0:
		g.short = e.besideMember(id)*middle/height < leastMarks
	}
}

// besideMember is the distance of a stitch's head from the nearest one of its fan.
func (e *engraver) besideMember(id int32) float64 {
	least := math.Inf(1)
	for _, n := range [2]int32{id - 1, id + 1} {
		if n >= 0 && int(n) < len(e.p.Poses) && e.p.Poses[n].Fan == e.p.Poses[id].Fan {
			least = min(least, e.p.Poses[n].Top.Sub(e.p.Poses[id].Top).Len())
		}
	}
	return least
}

// post says round which side of a post a leg is hooked, and which way that post runs.
type post struct {
	side int8
	up   geom.Point
}

// stance is where a symbol stands.
type stance struct {
	feet  []geom.Point
	posts []post // by foot
	top   geom.Point
	up    geom.Point // of the head; zero where it stands square to the mean of the legs
}

// engrave draws a symbol from its feet to its head, in which several legs meet.
func (e *engraver) engrave(g glyph, s stance, mark string, ink yarnInk) {
	shape, ok := e.set.Symbol(g.symbol)
	if !ok {
		return
	}
	leg := g
	if s.up != (geom.Point{}) {
		leg.parts = legParts
	}
	if len(s.feet) > 1 {
		leg.parts = legParts
		if _, ok := e.set.Symbol(g.symbol + "-leg"); ok {
			leg.symbol, leg.parts = g.symbol+"-leg", allParts
		}
	}
	var mean geom.Point
	for i, foot := range s.feet {
		at, height := between(e.onPost(foot, s.posts[i], ink, g), s.top)
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
	up := s.up
	if up == (geom.Point{}) {
		up = mean.Unit()
	}
	e.put(head, frame{s.top.Sub(up.Mul(shape.Height())), up}, ink.line)
}

// onPost draws the hook of a post stitch at its foot, square to the post, and
// gives the point where its stem begins.
func (e *engraver) onPost(foot geom.Point, p post, ink yarnInk, g glyph) geom.Point {
	if p.side == 0 {
		return foot
	}
	hook := glyph{symbol: "front-post", fill: ink.fill, cased: g.cased}
	if (p.side < 0) != e.o.HooksLeft {
		hook.symbol = "back-post"
	}
	shape, _ := e.set.Symbol(hook.symbol)
	hook.height = steps(shape.Height())
	e.put(hook, frame{foot, p.up}, ink.line)
	return foot.Add(p.up.Mul(shape.Height()))
}

// footed is the form of a symbol that reaches down to its foot, where it has one:
// for stitches that share their foot or are hooked round a post.
func (e *engraver) footed(name string) string {
	if _, ok := e.set.Symbol(name + "-foot"); ok {
		return name + "-foot"
	}
	return name
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
	cross := e.f.Kind(id).Chains < 1.25 && p.NLegs < 2 && !e.isLong(id)
	overChain := l.At >= 0 && e.f.Stitches[l.At].Has(fabric.Chain) && !e.f.Stitches[l.At].Has(fabric.TurningChain)
	switch {
	case l.At < 0 && e.p.RingR > 0:
		return l.Foot.Add(dir.Mul(max(.75, e.p.RingR+.33)))
	case cross && l.Space && p.Fan >= 0: // several in one space stand side by side
		return p.Top.Sub(dir.Mul(crossAlone))
	case l.Post != 0:
		gap = min(gapPost, p.Top.Sub(l.Foot).Len()-e.postLength(id))
	case cross && overChain:
		gap = e.ovalReach(l.At, e.wayUp(id, dir)) + gapCrossChain
	case cross:
		gap = gapCrossStitch
	case overChain:
		gap = e.ovalReach(l.At, e.wayUp(id, dir)) + gapOverChain
	}
	if marked {
		gap += gapLoopMark
		if l.At >= 0 && cross && e.hasBar(l.At) {
			gap += gapUnderBar
		}
	}
	if p.Fan >= 0 {
		dir = e.fans[p.Fan]
		if cross {
			gap += .15
		}
		if l.Space && overChain && !cross && e.spaceLength(l.At) > 1 {
			gap += gapLeaning
			if round(e.p.Manner) {
				gap = gapCornerSpace
			}
		}
	}
	return l.Foot.Add(dir.Mul(gap))
}

// wayUp is the direction in which a stitch leaves its place: its fan's, or its own.
func (e *engraver) wayUp(id int32, own geom.Point) geom.Point {
	if k := e.p.Poses[id].Fan; k >= 0 {
		return e.fans[k]
	}
	return own
}

// ovalReach is how far a chain's oval reaches from its middle in a direction.
func (e *engraver) ovalReach(id int32, dir geom.Point) float64 {
	const long, short = ovalLength / 2, .2
	up := e.p.Poses[id].Up.Unit()
	return 1 / math.Hypot(dir.Cross(up)/long, dir.Dot(up)/short)
}

// hasBar reports whether a stitch ends in a bar, as the tall ones do.
func (e *engraver) hasBar(id int32) bool {
	return e.f.Stitches[id].Flags&(fabric.Chain|fabric.TurningChain) == 0 && e.f.Kind(id).Chains > 1.25
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

// meanDirections gives, for every fan, the direction from its place to the
// middle of its members, and their number.
func meanDirections(p *layout.Plan) (sum []geom.Point, members []int) {
	for id := range p.Poses {
		q := &p.Poses[id]
		if q.Fan < 0 || q.NLegs == 0 {
			continue
		}
		for int(q.Fan) >= len(sum) {
			sum, members = append(sum, geom.Point{}), append(members, 0)
		}
		members[q.Fan]++
		sum[q.Fan] = sum[q.Fan].Add(q.Top.Sub(p.Legs[q.FirstLeg].Foot).Unit())
	}
	for i := range sum {
		sum[i] = sum[i].Unit()
	}
	return sum, members
}

func middle(points []geom.Point) geom.Point {
	var m geom.Point
	for _, p := range points {
		m = m.Add(p)
	}
	return m.Mul(1 / float64(len(points)))
}
