package chart

import (
	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/text"
	"strandway/model/fabric"
)

// roundList says beside the chart what the numbers among the stitches of rounds have no room for.
func (e *engraver) roundList(which []int) {
	if len(which) == 0 || !e.o.Counts && !e.o.Sides {
		return
	}
	ink := e.measured().Ink
	size := labelSize * e.unit
	for i, r := range which {
		label := e.facing(r, e.numberOf(r))
		if e.o.Counts {
			label += " " + e.countOf(r)
		}
		e.text(display.Text{X: ink.Max.X + e.unit, Y: ink.Min.Y + float64(i+1)*1.4*size, Size: size,
			Face: display.Sans, Fill: e.look.faint, Text: label})
	}
}

// roundNumbers puts each round's number where there is most room, near its start.
func (e *engraver) roundNumbers(which []int) {
	if len(which) == 0 {
		return
	}
	ink := e.mapInk()
	bothWays := false
	for _, r := range which {
		first, this := &e.f.Rows[which[0]], &e.f.Rows[r]
		bothWays = bothWays || (first.WS != first.Backward) != (this.WS != this.Backward)
	}
	for _, r := range which {
		e.roundNumber(r, ink, bothWays)
	}
}

// roundNumber puts one round's number, and the arrow of its direction where rounds go both ways.
func (e *engraver) roundNumber(r int, ink *inkMap, arrow bool) {
	row := &e.f.Rows[r]
	enough := .5 * e.unit
	label := e.numberOf(r)
	half := max(text.Width(display.Sans, label, roundSize*e.unit)/2-.2*e.unit, 0)
	var best, outward geom.Point
	most := -1.0
	for i, pair := range e.nearStart(row) {
		a, b := &e.p.Poses[pair[0]], &e.p.Poses[pair[1]]
		out := a.Up.Add(b.Up).Unit()
		for _, across := range [...]float64{.5, .35, .65, .2} {
			for _, deep := range [...]float64{.15, .4, .65, .9, 1.2, 1.6, -.4, -.7, -1, -1.4, -1.8} {
				p := a.Top.Lerp(b.Top, across).Sub(out.Mul(deep))
				if round(e.p.Manner) && p.Len() < e.p.RingR+.5 { // a number in the ring would be taken for its chains
					continue
				}
				room := enough
				for _, d := range [3]float64{-1, 0, 1} {
					room = min(room, ink.clearance(e.page(p).Add(geom.Point{X: d * half}), enough))
				}
				if arrow {
					along := out.Perp()
					if row.WS != row.Backward {
						along = along.Mul(-1)
					}
					room = min(room, ink.clearance(e.page(p.Add(along.Mul(arrowBeside+.2))), enough))
				}
				room -= .02 * float64(i) * enough
				if deep < 0 { // it is rather within its round than beyond it
					room -= .3 * enough
				}
				if room > most {
					best, outward, most = e.page(p), out, room
				}
			}
		}
	}
	if most < 0 {
		return
	}
	size := roundSize * e.unit
	e.text(display.Text{X: best.X, Y: best.Y + .36*.78*size, Size: size, Anchor: display.Middle, Face: display.Sans,
		Fill: e.look.yarn(row.Yarn).line, Halo: e.look.paper, Text: label})
	for _, dx := range [3]float64{-.2, 0, .2} { // the next round's number keeps off this one
		ink.add(geom.Point{X: best.X + dx*e.unit, Y: best.Y})
	}
	if arrow {
		from := e.unpage(best)
		along := outward.Perp()
		if row.WS != row.Backward {
			along = along.Mul(-1)
		}
		e.put(glyph{symbol: "arrow", height: steps(.42), fill: e.look.paper}, frame{from.Add(along.Mul(arrowBeside)), along}, e.look.yarn(row.Yarn).line)
	}
}

// nearStart gives pairs of neighbours of a round, those about its start first.
func (e *engraver) nearStart(row *fabric.Row) [][2]int32 {
	var placed []int32
	for id := row.First; id < row.Last; id++ {
		if e.p.Poses[id].Placed {
			placed = append(placed, id)
		}
	}
	n := len(placed)
	if n < 2 {
		return nil
	}
	var pairs [][2]int32
	for k := range min(n, 12) {
		i := k / 2
		if k%2 == 1 {
			i = n - 1 - k/2
		}
		pairs = append(pairs, [2]int32{placed[i], placed[(i+1)%n]})
	}
	return pairs
}
