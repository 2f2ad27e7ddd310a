package chart

import (
	"fmt"
	"math"

	"strandway/chart/geom"
	"strandway/model/fabric"
)

// chain draws one chain of a run: an oval along the run, shortened in tight arcs.
func (e *engraver) chain(id int32) {
	s, p := &e.f.Stitches[id], &e.p.Poses[id]
	row := &e.f.Rows[s.Row]
	length := ovalLength
	for _, n := range [2]int32{id - 1, id + 1} {
		if n < row.First || n >= row.Last || !e.p.Poses[n].Placed || e.p.Poses[n].Dropped {
			continue
		}
		if d := e.p.Poses[n].Top.Sub(p.Top).Len(); d < .85 {
			length = min(length, max(ovalLeast, .9*d))
		}
	}
	along := p.Up.Unit().Perp().Mul(-1)
	e.drawn.chains = true
	e.oval(p.Top, along, length, e.look.yarn(s.Yarn))
}

// oval draws one chain about its centre.
func (e *engraver) oval(centre, along geom.Point, length float64, ink yarnInk) {
	e.put(glyph{symbol: "chain", height: steps(length), fill: ink.fill}, frame{centre.Sub(along.Mul(length / 2)), along}, ink.line)
}

// turningChain draws a chain that counts as a stitch: its ovals stacked from place to top.
func (e *engraver) turningChain(id int32) {
	s, p := &e.f.Stitches[id], &e.p.Poses[id]
	foot := p.Top.Sub(p.Up.Unit().Mul(float64(s.Chains) * .62))
	gap := gapUnderTurning
	if legs := e.legs(id); len(legs) > 0 {
		foot = legs[0].Foot
		switch {
		case legs[0].At < 0 && e.p.RingR > 0:
			gap = max(.75, e.p.RingR+.33)
		case p.Fan >= 0: // it begins at the fan's common foot
			foot, gap = e.foot(id, &legs[0], false), .08
		}
	}
	e.drawn.chains = true
	at, height := between(foot, p.Top)
	pitch := (height - gap) / float64(s.Chains)
	for k := range int(s.Chains) {
		centre := foot.Add(at.up.Mul(gap + (float64(k)+.5)*pitch))
		e.oval(centre, at.up, min(.8, pitch*.86), e.look.yarn(s.Yarn))
	}
}

// hanging draws a stitch that takes no place of its own.
func (e *engraver) hanging(id int32) {
	s, p := &e.f.Stitches[id], &e.p.Poses[id]
	if p.Host < 0 || !e.p.Poses[p.Host].Placed {
		return
	}
	switch {
	case s.Has(fabric.Chain) || s.Has(fabric.TurningChain):
		e.sideChain(id)
	case s.Has(fabric.Join):
		e.join(id)
	case s.Has(fabric.Surface):
		host := &e.p.Poses[p.Host]
		foot := e.hostFoot(p.Host)
		e.drawn.stitch(e, id, e.f.Kind(id), nil, "")
		at, _ := between(foot, host.Top)
		e.put(glyph{symbol: "surface", height: steps(.6), fill: e.look.paper, cased: true},
			frame{foot.Lerp(host.Top, .5).Sub(at.up.Mul(.3)), at.up}, e.look.yarn(s.Yarn).line)
	default:
		host := &e.p.Poses[p.Host]
		at := host.Top
		if !e.f.Stitches[p.Host].Has(fabric.Chain) { // above a bar, but within an oval
			at = at.Add(host.Up.Unit().Mul(.26))
		}
		e.dot(id, at)
	}
}

// hostFoot is the place in which a stitch stands, or its foot.
func (e *engraver) hostFoot(id int32) geom.Point {
	if legs := e.legs(id); len(legs) > 0 {
		return legs[0].Foot
	}
	p := &e.p.Poses[id]
	return p.Top.Sub(p.Up.Unit())
}

// sideChain draws a chain that is no stitch: upright beside the stitch it hangs
// on, on the side from which the work comes.
func (e *engraver) sideChain(id int32) {
	s, host := &e.f.Stitches[id], e.p.Poses[id].Host
	n, k := e.run(id)
	total := n
	if s.Has(fabric.TurningChain) && s.Chains > 1 {
		total = int(s.Chains)
	}
	foot, top := e.hostFoot(host), e.p.Poses[host].Top
	if e.p.Poses[host].NLegs > 0 && e.legs(host)[0].At < 0 && e.p.RingR > 0 {
		foot = foot.Add(top.Sub(foot).Unit().Mul(max(.75, e.p.RingR+.33)))
	}
	at, _ := between(foot, top)
	side := e.outward(host, at.up)
	centre := foot.Lerp(top, .5).Add(side.Mul(.62))
	e.drawn.chains = true
	ink := e.look.yarn(s.Yarn)
	for i := k; i < k+1+total-n; i++ {
		e.oval(centre.Add(at.up.Mul(-.08+(float64(i)-float64(total-1)/2)*.62)), at.up, .54, ink)
	}
}

// run counts the chains that hang together with id, and how many come before it.
func (e *engraver) run(id int32) (n, before int) {
	s := &e.f.Stitches[id]
	row := &e.f.Rows[s.Row]
	hangs := func(j int32) bool {
		return j >= row.First && j < row.Last && !e.p.Poses[j].Placed &&
			e.f.Stitches[j].Has(fabric.Chain) && e.p.Poses[j].Host == e.p.Poses[id].Host
	}
	first, last := id, id+1
	for hangs(first - 1) {
		first--
	}
	for hangs(last) {
		last++
	}
	return int(last - first), int(id - first)
}

// outward is the direction beside a stitch from which its row comes to it.
func (e *engraver) outward(id int32, up geom.Point) geom.Point {
	right := up.Perp().Mul(-1)
	row := &e.f.Rows[e.f.Stitches[id].Row]
	for n := id + 1; n < row.Last; n++ {
		if !e.p.Poses[n].Placed {
			continue
		}
		if right.Dot(e.p.Poses[n].Top.Sub(e.p.Poses[id].Top)) > 0 {
			return right.Mul(-1)
		}
		return right
	}
	if row.FromLeft {
		return right.Mul(-1)
	}
	return right
}

// join draws the slip stitch that closes a round: a dot between the round's two ends.
func (e *engraver) join(id int32) {
	row := &e.f.Rows[e.f.Stitches[id].Row]
	host := &e.p.Poses[e.p.Poses[id].Host]
	target := host
	if b := e.f.Of(id); len(b) > 0 && b[0].At >= 0 && e.p.Poses[b[0].At].Placed {
		target = &e.p.Poses[b[0].At]
	}
	at := target.Top.Add(target.Up.Unit().Mul(.3))
	for last := id - 1; last >= row.First; last-- {
		if q := &e.p.Poses[last]; q.Placed {
			switch {
			case q == target:
			case q.Top.Sub(target.Top).Len() < 2.2:
				to := q.Top.Sub(target.Top)
				if e.isCross(last) { // between two crosses there is room
					at = target.Top.Add(to.Mul(.5))
				} else { // above the bars
					at = target.Top.Add(to.Unit().Mul(min(.42, to.Len()/2))).Add(target.Up.Unit().Mul(.24))
				}
			default: // the round lies cut open: it is closed at its far end
				at = q.Top.Add(e.ahead(last, q.Up.Unit()).Mul(.62))
			}
			break
		}
	}
	e.dot(id, at)
}

// dot draws a slip stitch about its centre.
func (e *engraver) dot(id int32, centre geom.Point) {
	s, k := &e.f.Stitches[id], e.f.Kind(id)
	shape, ok := e.set.Symbol(k.Symbol)
	if !ok {
		return
	}
	up := e.p.Poses[e.p.Poses[id].Host].Up.Unit()
	ink := e.look.yarn(s.Yarn)
	e.drawn.stitch(e, id, k, nil, "")
	e.put(glyph{symbol: k.Symbol, height: steps(shape.Height()), fill: ink.fill}, frame{centre.Sub(up.Mul(shape.Height() / 2)), up}, ink.line)
}

// picot draws a picot on the head of the stitch it was made on: the symbol for
// three chains, else a ring of as many ovals.
func (e *engraver) picot(id int32) {
	s, k := &e.f.Stitches[id], e.f.Kind(id)
	host := e.p.Poses[id].Host
	if host < 0 || !e.p.Poses[host].Placed {
		return
	}
	ink := e.look.yarn(s.Yarn)
	up := e.p.Poses[host].Up.Unit()
	foot := e.p.Poses[host].Top.Add(up.Mul(.16))
	e.drawn.stitch(e, id, k, nil, "")
	n := int(s.Chains)
	if shape, ok := e.set.Symbol(k.Symbol); ok && (n == 0 || n == 3) {
		e.put(glyph{symbol: k.Symbol, height: steps(shape.Height()), fill: ink.fill}, frame{foot, up}, ink.line)
		return
	}
	const pitch = .56
	radius := float64(n+1) * pitch / (2 * math.Pi)
	centre := foot.Add(up.Mul(radius + .08))
	for i := range n {
		a := 2 * math.Pi * float64(i+1) / float64(n+1) // the gap at the foot is as long as a chain
		out := up.Mul(-1).Rotate(a)
		e.oval(centre.Add(out.Mul(radius)), out.Perp(), .5, ink)
	}
	slip, _ := e.set.Symbol("slip")
	e.put(glyph{symbol: "slip", height: steps(slip.Height()), fill: ink.fill}, frame{foot.Sub(up.Mul(slip.Height() / 2)), up}, ink.line)
}

// ring draws the centre: a chain ring as its ovals, any other as a circle.
func (e *engraver) ring() {
	foundation := &e.f.Rows[0]
	chains := 0
	for id := foundation.First; id < foundation.Last; id++ {
		if e.p.Poses[id].Placed {
			return // drawn with its row
		}
		if e.f.Stitches[id].Has(fabric.Chain) {
			chains++
		}
	}
	if chains >= 3 {
		e.chainRing(foundation, chains)
		return
	}
	shape, ok := e.set.Symbol("ring")
	if !ok {
		return
	}
	e.begin("ring", "ring", "ring", -1)
	size := 2 * max(.42, e.p.RingR)
	m := geom.Scale(size/shape.Height(), size/shape.Height()).Then(geom.Translate(0, -size/2))
	for _, part := range shape.Parts {
		p := e.outline(part.Path.Transform(m), part.Fill, e.look.paper)
		p.Stroke.Inherit, p.Stroke.Colour = false, e.look.yarn(foundation.Yarn).line
		e.list.Items = append(e.list.Items, p)
	}
	e.drawn.ring = true
	e.end()
}

func (e *engraver) chainRing(foundation *fabric.Row, chains int) {
	radius := max(.42, e.p.RingR)
	length := min(ovalLength, .92*2*radius*math.Sin(math.Pi/float64(chains)))
	k := 0
	for id := foundation.First; id < foundation.Last; id++ {
		s := &e.f.Stitches[id]
		if !s.Has(fabric.Chain) {
			continue
		}
		out := geom.Point{Y: -1}.Rotate(2 * math.Pi * (float64(k) + .5) / float64(chains))
		e.begin(fmt.Sprintf("s%d", id), "stitch", e.title(id), id)
		e.oval(out.Mul(radius), out.Perp(), length, e.look.yarn(s.Yarn))
		e.end()
		k++
	}
	e.drawn.chains = true
}
