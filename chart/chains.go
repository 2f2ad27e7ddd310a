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
		length = min(length, roomFor(e.p.Poses[n].Top.Sub(p.Top).Len()))
	}
	along := p.Up.Unit().Perp().Mul(-1)
	e.drawn.chains = true
	e.oval(p.Top, along, length, e.look.yarn(s.Yarn))
}

// roomFor is the length of ovals that follow one another at a pitch, with white between them.
func roomFor(pitch float64) float64 { return max(ovalLeast, pitch-stroke-ovalGap) }

// oval draws one chain about its centre; short ones are slimmer, so that they stay ovals.
func (e *engraver) oval(centre, along geom.Point, length float64, ink yarnInk) {
	name := "chain"
	if length < ovalSlim {
		name = "chain-slim"
	}
	e.put(glyph{symbol: name, height: steps(length), fill: ink.fill}, frame{centre.Sub(along.Mul(length / 2)), along}, ink.line)
}

// turningChain draws a chain that counts as a stitch: its ovals stacked from
// place to top, bowed outward where they have less room than they want.
func (e *engraver) turningChain(id int32) {
	s, p := &e.f.Stitches[id], &e.p.Poses[id]
	foot := p.Top.Sub(p.Up.Unit().Mul(float64(s.Chains) * .62))
	gap := gapUnderTurning
	if legs := e.legs(id); len(legs) > 0 {
		foot = legs[0].Foot
		switch {
		case legs[0].At < 0 && e.p.RingR > 0:
			gap = max(.75, e.p.RingR+.33)
		case p.Fan >= 0: // it begins beside the fan's common foot
			foot, gap = e.foot(id, &legs[0], false), besideFan
			foot = foot.Add(e.asideOf(id, p.Top.Sub(foot)).Mul(besideFan))
		}
	}
	e.drawn.chains = true
	at, height := between(foot, p.Top)
	ovals := int(s.Chains)
	bow := bowFor(height-gap, leastPitch*float64(ovals))
	side := e.outward(id, at.up)
	const pieces = 24
	line := make([]geom.Point, 0, pieces+1)
	for i := range pieces + 1 {
		t := float64(i) / pieces
		line = append(line, foot.Add(at.up.Mul(gap+t*(height-gap))).Add(side.Mul(4*bow*t*(1-t)))) // a parabola is near enough to an arc
	}
	ends := shared(line, ovals)
	for k := range ovals {
		chord := ends[k+1].Sub(ends[k])
		e.oval(ends[k].Lerp(ends[k+1], .5).Add(side.Mul(bow/float64(2*ovals*ovals))), chord.Unit(), min(ovalLength, roomFor(chord.Len())), e.look.yarn(s.Yarn))
	}
}

// shared divides a run of lines into n pieces of one length and gives their ends.
func shared(line []geom.Point, n int) []geom.Point {
	total := 0.0
	for i := range len(line) - 1 {
		total += line[i+1].Sub(line[i]).Len()
	}
	ends := []geom.Point{line[0]}
	passed := 0.0
	for i := range len(line) - 1 {
		d := line[i+1].Sub(line[i]).Len()
		for len(ends) < n {
			want := total * float64(len(ends)) / float64(n)
			if want > passed+d {
				break
			}
			ends = append(ends, line[i].Lerp(line[i+1], (want-passed)/d))
		}
		passed += d
	}
	return append(ends, line[len(line)-1])
}

// bowFor is how far a chain of a given length bows out between ends that stand
// closer than that.
func bowFor(between, length float64) float64 {
	if length <= between {
		return 0
	}
	return math.Sqrt(3 * between * (length - between) / 8) // a flat parabola's length, turned round
}

// asideOf is the direction across its fan in which a stitch, standing that way, lies away from the rest.
func (e *engraver) asideOf(id int32, up geom.Point) geom.Point {
	across := e.fans[e.p.Poses[id].Fan].Perp()
	if across.Dot(up) < 0 {
		return across.Mul(-1)
	}
	return across
}

// hanging draws a stitch that takes no place of its own.
func (e *engraver) hanging(id int32) {
	s, p := &e.f.Stitches[id], &e.p.Poses[id]
	if p.Host < 0 || !e.p.Poses[p.Host].Placed {
		return
	}
	at, settled := e.settled[id]
	switch {
	case e.settling && e.settles(id):
	case s.Has(fabric.Chain) || s.Has(fabric.TurningChain):
		if !settled {
			at = e.besideHost(id)
		}
		e.sideChain(id, at)
	case s.Has(fabric.Surface):
		host := &e.p.Poses[p.Host]
		foot := e.hostFoot(p.Host)
		e.drawn.stitch(e, id, e.f.Kind(id), nil, "")
		at, _ := between(foot, host.Top)
		e.put(glyph{symbol: "surface", height: steps(.6), fill: e.look.paper, cased: true},
			frame{foot.Lerp(host.Top, .5).Sub(at.up.Mul(.3)), at.up}, e.look.yarn(s.Yarn).line)
	default:
		if !settled {
			host, above := &e.p.Poses[p.Host], dotAbove
			if e.f.Stitches[p.Host].Has(fabric.Chain) {
				above = dotOverOval
			}
			at = frame{host.Top.Add(host.Up.Unit().Mul(above)), host.Up.Unit()}
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

// besideHost is the middle of the chains that stand upright beside the stitch
// they hang on, on the side from which the work comes, and their direction.
func (e *engraver) besideHost(id int32) frame {
	host := e.p.Poses[id].Host
	foot, top := e.hostFoot(host), e.p.Poses[host].Top
	if e.p.Poses[host].NLegs > 0 && e.legs(host)[0].At < 0 && e.p.RingR > 0 {
		foot = foot.Add(top.Sub(foot).Unit().Mul(max(.75, e.p.RingR+.33)))
	}
	at, _ := between(foot, top)
	side := e.outward(host, at.up)
	if legs := e.legs(host); len(legs) > 1 { // beside the outer leg
		for _, l := range legs {
			if l.Foot.Sub(foot).Dot(side) > 0 {
				foot = l.Foot
			}
		}
		at, _ = between(foot, top)
		side = e.outward(host, at.up)
	}
	return frame{foot.Lerp(top, .5).Add(side.Mul(.62)).Sub(at.up.Mul(.08)), at.up}
}

// sideChain draws a chain that is no stitch in its column, given by its middle and direction.
func (e *engraver) sideChain(id int32, at frame) {
	n, k, total := e.column(id)
	e.drawn.chains = true
	ink := e.look.yarn(e.f.Stitches[id].Yarn)
	for i := k; i < k+1+total-n; i++ {
		e.oval(at.foot.Add(at.up.Mul((float64(i)-float64(total-1)/2)*sidePitch)), at.up, roomFor(sidePitch), ink)
	}
}

// column counts the stitches of a column of chains, those before id, and the chains in all.
func (e *engraver) column(id int32) (n, before, chains int) {
	n, before = e.run(id)
	chains = n
	if s := &e.f.Stitches[id]; s.Has(fabric.TurningChain) && s.Chains > 1 {
		chains = int(s.Chains)
	}
	return n, before, chains
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

// dot draws a slip stitch about its centre.
func (e *engraver) dot(id int32, at frame) {
	s, k := &e.f.Stitches[id], e.f.Kind(id)
	shape, ok := e.set.Symbol(k.Symbol)
	if !ok {
		return
	}
	ink := e.look.yarn(s.Yarn)
	e.drawn.stitch(e, id, k, nil, "")
	e.put(glyph{symbol: k.Symbol, height: steps(shape.Height()), fill: ink.fill}, frame{at.foot.Sub(at.up.Mul(shape.Height() / 2)), at.up}, ink.line)
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
	foot := e.p.Poses[host].Top.Add(up.Mul(picotAbove))
	name := k.Symbol
	if beside, ok := e.besidePicot(host, id); ok {
		foot = e.p.Poses[host].Top.Lerp(beside, .5).Add(up.Mul(picotWithin))
		name += "-within"
	}
	e.drawn.stitch(e, id, k, nil, "")
	n := int(s.Chains)
	if shape, ok := e.set.Symbol(name); ok && (n == 0 || n == 3) {
		e.put(glyph{symbol: name, height: steps(shape.Height()), fill: ink.fill}, frame{foot, up}, ink.line)
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

// besidePicot is the head up to which a picot stands, halfway: where another
// stitch stands on its own head, or the next one in the same place.
func (e *engraver) besidePicot(host, id int32) (geom.Point, bool) {
	p := &e.p.Poses[host]
	next := id + 1
	for last := e.f.Rows[e.f.Stitches[host].Row].Last; next < last && !e.p.Poses[next].Placed; {
		next++
	}
	if next < int32(len(e.p.Poses)) && e.f.Stitches[next].Row == e.f.Stitches[host].Row {
		q := &e.p.Poses[next]
		if q.Top.Sub(p.Top).Len() < picotReach && (e.carries(host) || p.Fan >= 0 && p.Fan == q.Fan) {
			return q.Top, true
		}
	}
	return p.Top.Add(e.ahead(host, p.Up.Unit()).Mul(picotReach)), e.carries(host)
}

// carries reports whether a stitch of a later row stands in this one.
func (e *engraver) carries(id int32) bool {
	if e.loaded == nil {
		e.loaded = make([]bool, len(e.f.Stitches))
		for n := range e.f.Stitches {
			for _, b := range e.f.Of(int32(n)) {
				if b.At >= 0 && e.f.Stitches[b.At].Row < e.f.Stitches[n].Row {
					e.loaded[b.At] = true
				}
			}
		}
	}
	return e.loaded[id]
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
