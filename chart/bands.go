package chart

import (
	"cmp"
	"fmt"
	"image/color"
	"slices"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
)

const bandEnd = .6 // u by which a row's tint goes beyond its last stitches

// bands lays tints under every second row, and stronger ones under the rows to be seen.
func (e *engraver) bands() {
	if !e.o.Shade && len(e.o.Highlight) == 0 {
		return
	}
	e.begin("bands", "bands", "", -1)
	for r := 1; r < len(e.f.Rows); r++ {
		row := &e.f.Rows[r]
		switch {
		case slices.Contains(e.o.Highlight, row.No):
			e.band(r, e.look.strong)
		case e.o.Shade && r%2 == 0:
			e.band(r, e.look.tint)
		}
	}
	e.end()
}

// band fills the strip between the heads of a row and the places it stands in.
func (e *engraver) band(r int, tint color.NRGBA) {
	row := &e.f.Rows[r]
	var heads, feet []geom.Point
	for id := row.First; id < row.Last; id++ {
		p := &e.p.Poses[id]
		if !p.Placed || p.Dropped {
			continue
		}
		heads = append(heads, p.Top)
		if e.f.Stitches[id].Has(fabric.Chain) || e.isLong(id) {
			continue
		}
		for _, l := range e.legs(id) {
			foot := l.Foot
			if l.At < 0 && e.p.RingR > 0 {
				foot = p.Top.Unit().Mul(max(.42, e.p.RingR))
			}
			feet = append(feet, foot)
		}
	}
	if len(heads) < 2 || len(feet) == 0 {
		return
	}
	closed := e.goesRound(r) && row.Shape != fabric.Flat
	if e.p.Manner != layout.Point && !closed {
		heads, feet = across(heads), across(feet)
	}
	var path geom.Path
	run := func(points []geom.Point) {
		for i, q := range points {
			if len(path.Verbs) == 0 || i == 0 && closed {
				path.MoveTo(e.page(q))
			} else {
				path.LineTo(e.page(q))
			}
		}
		if closed {
			path.Close()
		}
	}
	slices.Reverse(feet)
	run(heads)
	run(feet) // back again: a round leaves its middle free
	path.Close()
	e.list.Items = append(e.list.Items, display.Path{Path: path, Fill: display.Solid(tint)})
}

// across orders points from left to right and goes on beyond both ends.
func across(points []geom.Point) []geom.Point {
	slices.SortFunc(points, func(a, b geom.Point) int { return cmp.Compare(a.X, b.X) })
	first, last := points[0], points[len(points)-1]
	first.X -= bandEnd
	last.X += bandEnd
	return slices.Concat([]geom.Point{first}, points, []geom.Point{last})
}

// countOf is the stitches a row offers, as they stand at its end.
func (e *engraver) countOf(r int) string { return fmt.Sprintf("(%d)", e.f.Rows[r].Count) }
