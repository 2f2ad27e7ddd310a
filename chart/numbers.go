package chart

import (
	"cmp"
	"image/color"
	"math"
	"slices"
	"strconv"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
)

// Where numbers and arrows stand beside a row, in u from its ink.
const (
	arrowGap    = .50
	numberGap   = 1.12
	numberRow   = .80 // least distance of two numbers, one above the other
	arrowBeside = .45 // from the middle of a round's number
	inset       = 3.0 // a row that begins farther in than this has its number beside it, not in the column
)

// number is a row's number beside its start.
type number struct {
	row   int
	left  bool // on the page
	y     float64
	edge  float64 // of the ink beside it
	label string
	ink   color.NRGBA
	atEnd bool // it stands where the row ends
	count bool // it is the count at the row's end: no arrow goes with it
}

// numbers gives every row its number: beside its start, or among its stitches
// where it goes round a centre.
func (e *engraver) numbers() {
	var rows, rounds []int
	e.begin("numbers", "numbers", "", -1)
	for r := 1; r < len(e.f.Rows); r++ {
		switch {
		case e.firstPlaced(r) < 0:
		case e.p.Manner == layout.Point:
			e.openNumber(r)
		case e.p.Manner == layout.Blocks:
			e.blockNumber(r)
		case e.goesRound(r):
			rounds = append(rounds, r)
		case e.alongSide(r):
			e.openNumber(r)
		default:
			rows = append(rows, r)
		}
	}
	e.rowNumbers(rows, rounds)
	e.roundNumbers(rounds)
	e.roundList(rounds)
	e.end()
}

// goesRound reports whether a row's stitches turn about a centre.
func (e *engraver) goesRound(r int) bool {
	row := &e.f.Rows[r]
	if row.Shape == fabric.Flat {
		return false
	}
	first := e.p.Poses[e.firstPlaced(r)].Up
	for id := row.First; id < row.Last; id++ {
		if q := &e.p.Poses[id]; q.Placed && q.Up.Dot(first) < 0 {
			return true
		}
	}
	return false
}

// alongSide reports whether a row runs up or down a side of the piece: its stitches lie.
func (e *engraver) alongSide(r int) bool {
	row := &e.f.Rows[r]
	for id := row.First; id < row.Last; id++ {
		if p := &e.p.Poses[id]; p.Placed && math.Abs(p.Up.Unit().Y) > .5 {
			return false
		}
	}
	return true
}

// rowNumbers puts each row's number and the arrow of its direction at the edge where it begins,
// beyond the rounds that go about the rows.
func (e *engraver) rowNumbers(which, rounds []int) {
	ink, rows := e.rowBoxes()
	about := geom.Empty()
	for _, r := range rounds {
		about = about.Union(rows[r])
	}
	var numbers []number
	for _, r := range which {
		first := e.firstPlaced(r)
		row := &e.f.Rows[r]
		n := number{row: r, left: row.FromLeft != e.o.LeftHanded, label: e.facing(r, e.numberOf(r)), ink: e.look.yarn(row.Yarn).line}
		n.y = e.page(e.hostFoot(first).Lerp(e.p.Poses[first].Top, .5)).Y
		near := rows[max(r-1, 1)].Union(rows[r]).Union(rows[min(r+1, len(rows)-1)])
		if n.y > about.Min.Y && n.y < about.Max.Y {
			near = near.Union(about)
		}
		if n.left {
			n.edge = ink.Min.X
			if near.Min.X-ink.Min.X > inset*e.unit {
				n.edge = near.Min.X
			}
		} else {
			n.edge = ink.Max.X
			if ink.Max.X-near.Max.X > inset*e.unit {
				n.edge = near.Max.X
			}
		}
		if need := 2 * (numberGap + numberSize*float64(len(n.label))) * e.unit; e.hemmed(&n, rows, need) { // it stands at the row's end, where there is room
			n.left, n.atEnd = !n.left, true
			n.edge = near.Max.X
			if n.left {
				n.edge = near.Min.X
			}
		}
		numbers = append(numbers, n)
		if e.o.Counts && row.Count > 0 {
			c := n
			c.left, c.count, c.label, c.ink = !n.left, true, e.countOf(r), e.look.faint
			c.edge = ink.Max.X
			if c.left {
				c.edge = ink.Min.X
			}
			numbers = append(numbers, c)
		}
	}
	spread(numbers, numberRow*e.unit)
	for i := range numbers {
		e.rowNumber(&numbers[i])
	}
}

// hemmed reports whether other rows leave a number less room beside its row than it needs, in mm.
func (e *engraver) hemmed(n *number, rows []geom.Box, need float64) bool {
	for q, b := range rows {
		if q == 0 || q >= n.row-1 && q <= n.row+1 || n.y < b.Min.Y || n.y > b.Max.Y {
			continue
		}
		if gap := n.edge - b.Max.X; n.left && gap > 0 && gap < need {
			return true
		}
		if gap := b.Min.X - n.edge; !n.left && gap > 0 && gap < need {
			return true
		}
	}
	return false
}

// openNumber puts the number of a row that opens from a point before its first
// stitch, in the direction from which the row comes.
func (e *engraver) openNumber(r int) {
	first := e.firstPlaced(r)
	p, row := &e.p.Poses[first], &e.f.Rows[r]
	at, _ := between(e.hostFoot(first), p.Top)
	out := e.outward(first, at.up)
	mid := at.foot.Lerp(p.Top, .5)
	ink := e.look.yarn(row.Yarn).line
	gap := 1.2
	if n := first - 1; n >= row.First && e.p.Poses[n].Host == first { // a chain stands beside it
		gap = 1.5
	}
	from, to := e.page(mid.Add(out.Mul(gap))), e.page(mid)
	e.arrow(from, to.Sub(from).Unit(), ink)
	size := numberSize * e.unit
	q := e.page(mid.Add(out.Mul(gap + .5)))
	e.text(display.Text{X: q.X, Y: q.Y + .28*size, Size: size, Anchor: display.Middle, Fill: ink, Text: e.numberOf(r)})
}

// blockNumber puts the number of a row of blocks outside its first one: before the
// side that it stands on, or that of its chains when it stands on another block.
func (e *engraver) blockNumber(r int) {
	row := &e.f.Rows[r]
	var stems []geom.Point
	var up geom.Point
	for id := row.First; id < row.Last; id++ {
		p, s := &e.p.Poses[id], &e.f.Stitches[id]
		switch {
		case !p.Placed || s.Has(fabric.Chain):
		case e.f.Kind(id).Chains < 1: // the next block begins, or this one
			if len(stems) > 0 {
				id = row.Last
			}
		default:
			up = p.Up
			stems = append(stems, e.hostFoot(id))
		}
	}
	if len(stems) == 0 {
		return
	}
	first := e.firstPlaced(r)
	from, way := middle(stems), up
	if own := r == 1 || e.f.Stitches[first].Has(fabric.Chain|fabric.NoLanding); !own {
		from = e.p.Poses[first].Top.Lerp(stems[0], .5)
		way = middle(stems).Sub(stems[0]).Unit()
	}
	ink := e.look.yarn(row.Yarn).line
	at, to := e.page(from.Sub(way.Mul(1.05))), e.page(from)
	e.arrow(at, to.Sub(at).Unit(), ink)
	size := numberSize * e.unit
	q, anchor := e.page(from.Sub(way.Mul(1.6))), display.Middle
	switch right := to.Sub(at).Unit().X; {
	case right > .5:
		q, anchor = e.page(from.Sub(way.Mul(1.3))), display.Finish
	case right < -.5:
		q, anchor = e.page(from.Sub(way.Mul(1.3))), display.Start
	}
	e.text(display.Text{X: q.X, Y: q.Y + .28*size, Size: size, Anchor: anchor, Fill: ink, Text: e.facing(r, e.numberOf(r))})
}

// rowBoxes is the box of all ink and of each row, in mm.
func (e *engraver) rowBoxes() (all geom.Box, rows []geom.Box) {
	x := e.measured()
	rows = make([]geom.Box, len(e.f.Rows))
	for i := range rows {
		rows[i] = geom.Empty()
	}
	for i, item := range e.list.Items {
		b, ok := item.(display.Begin)
		if !ok || b.Class != "row" || len(b.ID) < 2 {
			continue
		}
		if r, err := strconv.Atoi(b.ID[1:]); err == nil && r < len(rows) {
			rows[r] = x.Items[i]
		}
	}
	return x.Ink, rows
}

// firstPlaced is the first stitch of a row that has a place; -1 for none.
func (e *engraver) firstPlaced(r int) int32 {
	for id := e.f.Rows[r].First; id < e.f.Rows[r].Last; id++ {
		if e.p.Poses[id].Placed && !e.p.Poses[id].Dropped {
			return id
		}
	}
	return -1
}

// numberOf is what stands beside a row: its number, or its name when it has none.
func (e *engraver) numberOf(r int) string {
	row := &e.f.Rows[r]
	label := strconv.Itoa(row.No)
	if row.No == 0 {
		label = e.label(row.Label)
	}
	if e.o.Monochrome && len(e.f.Yarns) > 1 {
		label += " " + e.f.Yarns[row.Yarn]
	}
	return label
}

// facing adds to a row's number which side faces, where that is asked for.
func (e *engraver) facing(r int, label string) string {
	switch {
	case !e.o.Sides:
		return label
	case e.f.Rows[r].WS:
		return label + " " + e.say("WS")
	}
	return label + " " + e.say("RS")
}

// spread moves numbers of one edge apart where rows are lower than numbers.
func spread(numbers []number, least float64) {
	for _, left := range [2]bool{true, false} {
		var side []*number
		for i := range numbers {
			if numbers[i].left == left {
				side = append(side, &numbers[i])
			}
		}
		slices.SortFunc(side, func(a, b *number) int { return cmp.Compare(b.y, a.y) })
		for i := 1; i < len(side); i++ {
			if side[i].edge == side[i-1].edge {
				side[i].y = min(side[i].y, side[i-1].y-least)
			}
		}
	}
}

func (e *engraver) rowNumber(n *number) {
	u := e.unit
	side, anchor := 1.0, display.Start
	if n.left {
		side, anchor = -1, display.Finish
	}
	if n.count {
		e.text(display.Text{X: n.edge + side*arrowGap*u, Y: n.y + .36*.78*labelSize*u, Size: labelSize * u,
			Anchor: anchor, Face: display.Sans, Fill: n.ink, Text: n.label})
		return
	}
	if n.atEnd {
		e.arrow(geom.Point{X: n.edge + side*arrowGap*u, Y: n.y}, geom.Point{X: side}, n.ink)
	} else {
		e.arrow(geom.Point{X: n.edge + side*(arrowGap+.46)*u, Y: n.y}, geom.Point{X: -side}, n.ink)
	}
	e.text(display.Text{X: n.edge + side*numberGap*u, Y: n.y + .36*.78*numberSize*u, Size: numberSize * u,
		Anchor: anchor, Face: display.Sans, Fill: n.ink, Text: n.label})
}

// arrow draws an arrow on the page from a point in mm; dir is a unit vector, y downward.
func (e *engraver) arrow(from, dir geom.Point, ink color.NRGBA) {
	foot := from.Mul(1 / e.unit)
	foot.Y = -foot.Y
	if e.o.LeftHanded {
		foot.X, dir.X = -foot.X, -dir.X
	}
	shape, ok := e.set.Symbol("arrow")
	if !ok {
		return
	}
	e.put(glyph{symbol: "arrow", height: steps(shape.Height()), fill: e.look.paper}, frame{foot, geom.Point{X: dir.X, Y: -dir.Y}}, ink)
}
