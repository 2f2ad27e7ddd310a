package work

import (
	"math"

	"strandway/model/fabric"
	"strandway/model/syntax"
)

// isEdge reports whether more is met than the row below.
func (w *worker) isEdge() bool { return w.edge != fabric.Upper || w.allRound }

// nextSide is the edge that follows round the piece: with the right side facing, top, left, bottom, right.
func (w *worker) nextSide(s fabric.Side) fabric.Side {
	order := [...]fabric.Side{fabric.Upper, fabric.Left, fabric.Bottom, fabric.Right}
	if w.step.ws {
		order = [...]fabric.Side{fabric.Upper, fabric.Right, fabric.Bottom, fabric.Left}
	}
	for i, o := range order {
		if o == s {
			return order[(i+1)%len(order)]
		}
	}
	return fabric.Upper
}

// along turns the corner: what follows is worked along another edge, or along all of them.
func (w *worker) along(x *syntax.Along) error {
	if x.Edge == syntax.LowerEdge && w.bridge > 0 {
		w.bridged = max(w.bridged, w.bridge) // the other side of the chains that this row has made
		return nil
	}
	if w.allRound {
		w.nextOnEdge(x.Edge)
		return nil
	}
	if x.Edge == syntax.SideEdge && (w.edge == fabric.Left || w.edge == fabric.Right) && w.pos == w.edgeStart && !w.start {
		return nil // "working along row ends, sc in each row end down the side": said twice
	}
	side := fabric.NoSide
	switch x.Edge {
	case syntax.NextEdge:
		if x.Face != 0 { // only says which side faces
			return nil
		}
		side = w.nextSide(w.edge)
	case syntax.LeftEdge:
		side = fabric.Left
	case syntax.RightEdge:
		side = fabric.Right
	case syntax.SideEdge:
		side = w.nextSide(w.edge)
		if side == fabric.Bottom || side == fabric.Upper {
			side = w.nextSide(side)
		}
	case syntax.LowerEdge:
		side = fabric.Bottom
	case syntax.UpperEdge:
		side = fabric.Upper
	case syntax.AllRound:
		w.allEdges()
		return nil
	}
	if !w.start {
		w.passed += w.left() // what is left of this edge is passed without a word
	}
	lands := w.edgeLandings(side)
	if len(lands) == 0 {
		return w.noEdge(side)
	}
	w.lands = append(w.lands[:w.met], lands...)
	w.pos, w.edgeStart, w.met = w.met, w.met, len(w.lands)
	w.edge, w.free = side, false
	return nil
}

// allEdges lets all other edges follow the upper one.
func (w *worker) allEdges() {
	w.lands = w.lands[:w.met]
	w.corners(0)
	for side := w.nextSide(fabric.Upper); side != fabric.Upper; side = w.nextSide(side) {
		w.lands = append(w.lands, w.edgeLandings(side)...)
	}
	w.met, w.allRound = len(w.lands), true
}

// edgesNamed counts the edges that a round names in turn, and tells whether it begins where the last row has ended: with
// the corner there and the row ends after it.
func edgesNamed(body []syntax.Node) (n int, atEnd bool) {
	last, corners, first, named := syntax.NextEdge, 0, true, false
	for _, node := range body {
		edge := syntax.NextEdge
		switch x := node.(type) {
		case *syntax.Along:
			edge = x.Edge
		case *syntax.Make:
			if x.Place == nil {
				first = false
				continue
			}
			switch x.Place.What {
			case syntax.InCorner:
				corners++
				continue
			case syntax.InEnd:
				edge = syntax.SideEdge
			case syntax.InUnder:
				edge, named = syntax.LowerEdge, named || last != syntax.LowerEdge
			default:
				first = false
				continue
			}
		default:
			continue
		}
		if edge == syntax.NextEdge || edge == syntax.AllRound {
			return 0, false
		}
		if edge != last || edge == syntax.SideEdge && corners > 0 {
			n++
		}
		if first && n == 1 && edge != syntax.LowerEdge && edge != syntax.UpperEdge && corners == 1 {
			atEnd = true
		}
		last, first = edge, false
	}
	if corners < 2 && !(n > 2 && named) {
		return 0, false
	}
	return n, atEnd
}

// fromLastCorner turns the landings of a round about, so that it begins at the corner where the last row ended.
func (w *worker) fromLastCorner() {
	k := 0
	for k+1 < w.met && w.lands[k+1].how == w.lands[0].how {
		k++
	}
	turned := append(append(make([]landing, 0, w.met), w.lands[k:w.met]...), w.lands[:k]...)
	w.lands = append(w.lands[:0], turned...)
}

// nextOnEdge goes on to the next landing of a named edge, in a round that goes along all of them.
func (w *worker) nextOnEdge(edge syntax.Edge) {
	how := fabric.Top
	switch edge {
	case syntax.LeftEdge, syntax.RightEdge, syntax.SideEdge:
		how = fabric.RowEnd
	case syntax.LowerEdge:
		how = fabric.Underside
	case syntax.NextEdge, syntax.AllRound:
		return
	}
	for i := w.pos; i < w.met; i++ {
		if w.lands[i].how == how {
			w.pos = i
			return
		}
	}
}

// corners marks both ends of the edge that begins at landing i as corners of the outline.
func (w *worker) corners(i int) {
	if last := len(w.lands) - 1; last > i {
		w.lands[i].corner, w.lands[last].corner = true, true
	}
}

func (w *worker) noEdge(side fabric.Side) error {
	if side == fabric.Bottom {
		return fail("the piece has no foundation chain to work along")
	}
	return fail("the piece has no row ends to work along")
}

// edgeLandings gives the landings of an edge in the order in which the hook meets them.
func (w *worker) edgeLandings(side fabric.Side) []landing {
	switch side {
	case fabric.Bottom:
		return w.underside()
	case fabric.Upper:
		lands := make([]landing, 0, w.met)
		for _, l := range w.lands[:w.met] {
			if l.how == fabric.Top {
				lands = append(lands, l)
			}
		}
		return lands
	}
	return w.rowEnds(side)
}

// underside is the foundation chain from its other side, without the chain worked just now.
func (w *worker) underside() []landing {
	var lands []landing
	n := w.fab.Rows[0].Last
	if w.isBase {
		n -= int32(w.hooked)
	}
	rises := w.fab.Rows[0].FromLeft != w.step.ws // the right side facing, it is met from the left
	for k := range n {
		id := k
		if !rises {
			id = n - 1 - k
		}
		if w.fab.Stitches[id].Flags&fabric.NoLanding != 0 || w.isBase && w.hasSame && w.same.at == id && w.timesIn(id) > 1 {
			continue
		}
		lands = append(lands, landing{at: id, how: fabric.Underside, base: true})
	}
	if len(lands) > 1 && !w.isBase {
		lands[0].corner, lands[len(lands)-1].corner = true, true
	}
	return lands
}

// timesIn is how many stitches of the row in work go into one place: several in the last chain turn about its end.
func (w *worker) timesIn(at int32) (n int) {
	for id := w.rowFirst(); id < int32(len(w.fab.Stitches)); id++ {
		for _, b := range w.fab.Of(id) {
			if b.At == at {
				n++
			}
		}
	}
	return n
}

// rowEnds are the edge stitches of all rows that go from edge to edge.
func (w *worker) rowEnds(side fabric.Side) []landing {
	var lands []landing
	for i := 1; i < len(w.fab.Rows); i++ {
		r := &w.fab.Rows[i]
		if r.Shape != fabric.Flat || r.EndSide != fabric.NoSide || r.Land0 == r.Land1 {
			continue
		}
		id := w.fab.Landings[r.Land1-1]
		if r.FromLeft == (side == fabric.Left) {
			id = w.fab.Landings[r.Land0]
		}
		lands = append(lands, landing{at: id, how: fabric.RowEnd})
	}
	if down := (side == fabric.Left) != w.step.ws; down {
		for i, j := 0, len(lands)-1; i < j; i, j = i+1, j-1 {
			lands[i], lands[j] = lands[j], lands[i]
		}
	}
	return lands
}

// evenly spreads n workings of a body over what is left of the edge, or up to
// the next corner. Row ends count by their height; where no number is written,
// there are as many as single crochets are as high.
func (w *worker) evenly(body []syntax.Node, ext syntax.Extent) error {
	if len(body) == 0 {
		return nil
	}
	ends := w.asksRowEnds(body)
	if n := w.num(ext.N); w.isBase && w.met == 0 && n > 0 && n <= w.opt.Limit { // on a hem or another edge that is no fabric of the piece
		w.start = false
		for range n {
			for _, node := range body {
				if m, ok := node.(*syntax.Make); ok {
					w.one(m, inRing)
				}
			}
		}
		return nil
	}
	if w.pos >= w.met || ends && w.seek(syntax.InEnd, "", 0) < 0 {
		if err := w.along(&syntax.Along{Edge: syntax.SideEdge}); err != nil {
			return err
		}
	}
	if w.pos >= w.met {
		return none(syntax.InSt, "", 0)
	}
	from, end := w.pos, w.evenlyTo(ext, ends)
	var total float64
	for i := from; i < end; i++ {
		total += w.extentOf(i)
	}
	n := w.num(ext.N)
	if ext.N.IsZero() {
		n = int(math.Round(total))
	}
	if n > w.opt.Limit {
		return w.overLimit()
	}
	w.start = false
	inUnit := w.inUnit
	w.inUnit = true // the stitches are no steps of their own
	defer func() { w.inUnit = inUnit }()
	i, sum := from, w.extentOf(from)
	for k := range n {
		at := (float64(k) + 0.5) / float64(n) * total
		for sum < at && i+1 < end {
			i++
			sum += w.extentOf(i)
		}
		w.pos = i
		if err := w.sequence(body, false); err != nil {
			return err
		}
	}
	w.pos = end
	return nil
}

// evenlyTo is the landing at which an even stretch ends; one in row ends does not go round the corner.
func (w *worker) evenlyTo(ext syntax.Extent, ends bool) int {
	end := w.pos
	if w.ledgeFrom > 0 { // all round an opening
		return w.met
	}
	for end < w.met {
		switch {
		case ext.What == syntax.InCorner:
			if w.isCorner(end, 0) {
				return end
			}
		case (!w.allRound || ends) && w.lands[end].how != w.lands[w.pos].how:
			return end
		}
		end++
	}
	return end
}

// goesRound reports whether a round after rows from edge to edge goes round all
// edges of the piece: it names corners, or is spread evenly.
func goesRound(body []syntax.Node) bool {
	evenly := func(p *syntax.Place) bool {
		return p != nil && (p.What == syntax.InCorner || p.Ext.What == syntax.InCorner ||
			p.Ext.How == syntax.Evenly && p.What == syntax.InSt && p.Ext.N.IsZero())
	}
	along, round := false, false
	anyNode(body, func(n syntax.Node) bool {
		switch x := n.(type) {
		case *syntax.Along:
			along = along || x.Edge != syntax.NextEdge || x.Face == 0
		case *syntax.Make:
			round = round || evenly(x.Place)
		case *syntax.Group:
			round = round || evenly(x.Place)
		case *syntax.Repeat:
			round = round || x.Ext.What == syntax.InCorner
		}
		return false
	})
	return round && !along
}

// extentOf is how much room a landing takes along its edge, in single crochets.
func (w *worker) extentOf(i int) float64 {
	if w.lands[i].how != fabric.RowEnd {
		return 1
	}
	return max(0.5, w.fab.Kinds[w.stitchAt(i).Kind].Height)
}

// asksRowEnds reports whether a body is worked into row ends.
func (w *worker) asksRowEnds(body []syntax.Node) bool {
	return anyNode(body, func(n syntax.Node) bool {
		switch x := n.(type) {
		case *syntax.Make:
			return x.Place != nil && x.Place.What == syntax.InEnd
		case *syntax.Group:
			return x.Place != nil && x.Place.What == syntax.InEnd
		}
		return false
	})
}

// endSide is the edge that a row was worked along.
func (w *worker) endSide() fabric.Side {
	if w.round || w.edge == fabric.Upper {
		return fabric.NoSide
	}
	return w.edge
}
