package work

import (
	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// landing is one thing that the hook meets and can work into: a top or a chain
// of the row below, a row end, or a chain of the foundation from its other side.
type landing struct {
	at     int32
	how    fabric.How // Top, RowEnd or Underside
	chain  bool       // a chain of a row: part of a space
	base   bool       // a chain of the foundation
	corner bool       // a corner of the piece's outline
}

// target is a place that was found.
type target struct {
	at   int32
	a, b int32 // landings taken; a < 0: none of those met
	how  fabric.How
	down uint8
	lie  syntax.Lie
}

// inRing is the target of everything worked into the ring.
var inRing = target{at: -1, a: -1, b: -1, how: fabric.InRing, down: 1}

// meet lays out the landings of the row below in the order in which the hook meets them.
func (w *worker) meet() {
	below := len(w.fab.Rows) - 1
	for below > 1 && w.fab.Rows[below].Land0 == w.fab.Rows[below].Land1 {
		below-- // a row worked on the face alone leaves the one below it to be met
	}
	if w.into > 0 {
		below = int(w.into)
	}
	prev := &w.fab.Rows[below]
	ids := w.fab.LandingsOf(below)
	w.isBase, w.own, w.blocks = below == 0, 0, w.row > 1 && w.extended == w.row-1
	w.lands = w.lands[:0]
	for _, id := range ids {
		s := &w.fab.Stitches[id]
		ch := s.Has(fabric.Chain)
		w.lands = append(w.lands, landing{at: id, chain: ch && !w.isBase, base: ch && w.isBase})
	}
	reversed := w.step.turned != w.step.backward
	if w.isBase {
		reversed = prev.Shape == fabric.Flat // a chain is worked back over from the hook, a closed one on from the join
	}
	if reversed {
		for i, j := 0, len(w.lands)-1; i < j; i, j = i+1, j-1 {
			w.lands[i], w.lands[j] = w.lands[j], w.lands[i]
		}
	}
	w.met = len(w.lands)
	w.survey()
}

// survey notes what sorts of places the row below has.
func (w *worker) survey() {
	w.hasSp, w.longest, w.groups = false, 0, 0
	clear(w.units)
	clear(w.kindsBelow)
	clear(w.sized)
	unit := int32(-1)
	for i := 0; i < w.met; i++ {
		if w.lands[i].chain {
			w.hasSp = true
			w.longest = max(w.longest, w.runEnd(i)-i+1)
		}
		u := w.unitAt(i)
		if u >= 0 && u != unit {
			if w.sized == nil {
				w.sized = map[int]bool{}
			}
			w.sized[w.sizeOf(u)] = true
			if w.units == nil {
				w.units = map[string]bool{}
			}
			w.units[w.fab.Units[u].Name] = true
			w.groups++
		}
		unit = u
	}
}

// sizeOf is how many stitches a group has.
func (w *worker) sizeOf(unit int32) (n int) {
	u := &w.fab.Units[unit]
	for i := u.First; i < u.Last; i++ {
		if w.fab.Stitches[i].Flags&(fabric.Chain|fabric.NoLanding|fabric.Picot) == 0 {
			n++
		}
	}
	return n
}

// isLump reports whether a kind is a cluster or one of its like.
func (w *worker) isLump(name string) bool {
	k := w.fab.Kinds[w.kind(name)]
	return k.Lump != stitch.NoLump
}

// hasKind reports whether the row below has a stitch of a kind.
func (w *worker) hasKind(name string) bool {
	has, known := w.kindsBelow[name]
	if !known {
		for i := 0; i < w.met && !has; i++ {
			has = !w.lands[i].chain && w.isKind(w.stitchAt(i), name)
		}
		if w.kindsBelow == nil {
			w.kindsBelow = map[string]bool{}
		}
		w.kindsBelow[name] = has
	}
	return has
}

func (w *worker) stitchAt(i int) *fabric.Stitch { return &w.fab.Stitches[w.lands[i].at] }

// unitAt is the group that landing i belongs to, -1 for none.
func (w *worker) unitAt(i int) int32 {
	if w.lands[i].how != fabric.Top {
		return -1
	}
	return w.fab.Stitches[w.lands[i].at].Unit
}

// take makes a target of landings a to b.
func (w *worker) take(a, b int) target {
	l := w.lands[a]
	t := target{at: l.at, how: l.how, a: int32(a), b: int32(b), down: 1}
	if l.at >= w.rowFirst() {
		t.down = 0 // a chain that this row began with
	} else if w.into > 0 {
		t.down = uint8(w.row - w.into)
	}
	return t
}

// takeSpace makes a target of the chain-space of landings a to b.
func (w *worker) takeSpace(a, b int) target {
	t := w.take(a, b)
	t.at, t.how = min(w.lands[a].at, w.lands[b].at), fabric.Space
	return t
}

// takeGap makes a target of the gap between landings a and a+1.
func (w *worker) takeGap(a int) target {
	t := w.take(a, a+1)
	t.at, t.how = min(w.lands[a].at, w.lands[a+1].at), fabric.Gap
	return t
}

// seek finds the next landing of a sort from the cursor on, -1 if there is none.
func (w *worker) seek(what syntax.What, name string, chains int) int {
	return w.seekFrom(w.pos, what, name, chains)
}

func (w *worker) seekFrom(i int, what syntax.What, name string, chains int) int {
	for ; i < w.met; i++ {
		if w.matches(i, what, name, chains) {
			return i
		}
	}
	return -1
}

// matches reports whether landing i is of a sort. Of a space it must be the first chain met.
func (w *worker) matches(i int, what syntax.What, name string, chains int) bool {
	l := &w.lands[i]
	switch what {
	case syntax.InSt:
		return !l.chain || w.reading.chains
	case syntax.InStCh, syntax.InStSp, syntax.InHook:
		return true
	case syntax.InCh:
		return l.chain || l.base
	case syntax.InSp:
		if l.chain {
			return chains == 0 || w.runEnd(i)-i+1 == chains || w.edgeLoop(i)
		}
		s := w.stitchAt(i) // the loop of a turning chain, where it is named by its length
		return chains > 2 && int(s.Chains) == chains && s.Has(fabric.TurningChain) && (w.longest < chains || w.blocks)
	case syntax.InKind:
		if !l.base && !l.chain && (w.reading.anyKind || (w.step.no != w.step.row.From && w.step.row.From > 0 || w.isLump(name)) && !w.hasKind(name)) {
			return true // a row worked again over another kind, or "cluster" for what is drawn together: the next stitch
		}
		return l.base || !l.chain && w.isKind(w.stitchAt(i), name)
	case syntax.InUnit:
		u := w.unitAt(i)
		return u >= 0 && (i == 0 || w.unitAt(i-1) != u) && w.isUnit(w.fab.Units[u].Name, name) && (chains == 0 || !w.sized[chains] || w.sizeOf(u) == chains)
	case syntax.InTch:
		return w.stitchAt(i).Has(fabric.TurningChain)
	case syntax.InCentre:
		return i == (w.met-1)/2
	case syntax.InCorner:
		return w.isCorner(i, chains)
	case syntax.InEnd:
		return l.how == fabric.RowEnd
	case syntax.InUnder: // in the first row the chain itself, until it is worked
		return l.how == fabric.Underside || l.base && w.edge == fabric.Upper
	case syntax.InUnworked:
		return i >= w.ledgeFrom && w.ledgeFrom > 0
	}
	return false
}

// isCorner: a corner of the outline; else the longest chain-space of the row
// below, or the middle of three in one where there are no spaces.
func (w *worker) isCorner(i, chains int) bool {
	l := &w.lands[i]
	if l.corner {
		return true
	}
	if w.isEdge() {
		return false
	}
	if l.chain {
		n := w.runEnd(i) - i + 1
		return n == w.longest && (chains == 0 || n == chains)
	}
	u := w.unitAt(i)
	if w.hasSp || u < 0 {
		return false
	}
	unit := &w.fab.Units[u]
	return unit.Last-unit.First == 3 && l.at == unit.First+1
}

// edgeLoop: chains beside a counted turning chain answer to any length, since writers name such a loop by the whole chain.
func (w *worker) edgeLoop(i int) bool {
	e := w.runEnd(i) + 1
	return e < w.met && w.stitchAt(e).Has(fabric.TurningChain) || i > 0 && w.stitchAt(i-1).Has(fabric.TurningChain)
}

// isUnit reports whether a group answers to a name. Where the row below has no group of that name, any group will do.
func (w *worker) isUnit(have, want string) bool {
	return want == "" || have == want || !w.units[want]
}

// runEnd is the last landing of the chain-space that landing i is part of.
func (w *worker) runEnd(i int) int {
	u := w.unitAt(i)
	for i+1 < w.met && w.lands[i+1].chain && w.unitAt(i+1) == u {
		i++
	}
	return i
}

// unitSpan gives the first and last landing of the group that begins at landing i.
func (w *worker) unitSpan(i int) (int, int) {
	u := w.unitAt(i)
	b := i
	for b+1 < w.met && w.unitAt(b+1) == u {
		b++
	}
	return i, b
}

// centre is the middle of a group: its chain-space if one stands there, else its middle stitch, else the gap in the middle.
func (w *worker) centre(a, b int) target {
	m := (a + b) / 2
	switch {
	case w.lands[m].chain:
		x, y := m, m
		for x > a && w.lands[x-1].chain {
			x--
		}
		for y < b && w.lands[y+1].chain {
			y++
		}
		return w.takeSpace(x, y)
	case (b-a)%2 == 1:
		return w.takeGap(m)
	}
	return w.take(m, m)
}

// left counts the tops from the cursor on: what the row leaves unworked.
func (w *worker) left() int {
	if w.free || w.isBase && w.ring {
		return 0
	}
	n := 0
	for i := w.pos; i < w.met; i++ {
		if u := w.unitAt(i); u >= 0 && w.round && (u == w.aside || w.aside >= 0 && w.beganIn(i)) {
			continue // the rest of a group whose middle was named
		}
		if !w.lands[i].chain || w.reading.chains {
			n++
		}
	}
	switch {
	case n == 1 && w.step.lastTop && w.stitchAt(w.met-1).Has(fabric.TurningChain):
		return 0
	case n == 1 && (w.edgeLoopWorked() || w.round && w.isBase && w.edge == fabric.Bottom):
		return 0 // the chain at the hook holds the round's first stitches
	case w.round && (n == w.closing || n < w.closing && w.halfJoined()):
		return 0 // the skip before the join closes the round
	case w.round && w.hasSame && w.same.inGap():
		return 0 // the rest of the last group of a round worked in spaces
	}
	return n
}

// halfJoined reports whether the round was closed by a tall stitch, which stands in the middle of its last space.
func (w *worker) halfJoined() bool {
	if len(w.fab.Stitches) == 0 {
		return false
	}
	last := &w.fab.Stitches[len(w.fab.Stitches)-1]
	return last.Has(fabric.Join) && w.fab.Kinds[last.Kind].Name != slipStitch
}

// inGap reports whether a place lies between tops.
func (t target) inGap() bool { return t.how == fabric.Space || t.how == fabric.Gap }

// edgeLoopWorked: the row ends in the loop that the turning chain below made; the chain's own top is then part of that loop.
func (w *worker) edgeLoopWorked() bool {
	last := w.met - 1
	return w.pos == last && last > 0 && w.stitchAt(last).Has(fabric.TurningChain) && w.lands[last-1].chain &&
		w.hasSame && w.same.a >= 0 && w.lands[w.same.a].chain
}

// pass counts what a jump to the row's last stitch leaves out unsaid: the tops that nobody named, and, as slack, what it
// may leave out. After a space or a gap the rest of its group is passed freely: that is how such rows are written.
func (w *worker) pass(to int) {
	free := w.hasSame && (w.same.inGap() || w.aside >= 0 && w.same.a >= 0 && int(w.same.a) < len(w.lands) && w.unitAt(int(w.same.a)) == w.aside)
	for j := w.pos; j < to; j++ {
		u := w.unitAt(j)
		inGroup := u >= 0 && (u == w.aside || u == w.unitAt(to)) // the rest of a shell whose centre was worked, or the near part of the group aimed at
		if free || inGroup || w.lands[j].chain {
			w.slack++
		} else {
			w.passed++
		}
	}
}
