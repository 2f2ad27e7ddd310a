package chart

import (
	"strandway/chart/geom"
	"strandway/chart/symbol"
	"strandway/model/stitch"
)

// How far the outer legs of a lump bow out, in u.
const (
	bowFew     = .30 // up to three legs
	bowMany    = .44
	bowPopcorn = .52
	capWidth   = .2 // half of what the legs of a popcorn take up under its cap
)

// bowedLegs is how many of a lump's legs are drawn: more than six would run together.
func bowedLegs(n int) int8 { return int8(min(n, 6)) }

// lump draws several legs from one foot to one head: a cluster, bobble, puff
// or popcorn built on the stitch of symbol s. Its legs carry shortened marks;
// a popcorn is closed by a cap in place of the bar.
func (e *engraver) lump(s *symbol.Symbol, g glyph, height float64, add func(geom.Path, symbol.Fill)) {
	n := int(g.legs)
	bow, top, spread := bowFew, height, 0.0
	if n > 3 {
		bow = bowMany
	}
	lid, _ := e.set.Symbol("popcorn-cap")
	if g.lump == stitch.Popcorn {
		bow, top, spread = bowPopcorn, height-lid.Height()*.8, capWidth
	}
	for k := range n {
		side := 0.0
		if n > 1 {
			side = 2*float64(k)/float64(n-1) - 1
		}
		// a cubic with both handles at 4/3 of the bow reaches the bow in its middle
		end := geom.Point{X: side * spread, Y: top}
		c1 := geom.Point{X: side * bow * 4 / 3, Y: top * .3}
		c2 := geom.Point{X: side * (bow*4/3 + spread), Y: top * .7}
		var stem geom.Path
		stem.MoveTo(geom.Point{})
		stem.CubicTo(c1, c2, end)
		add(stem, symbol.Open)
		for i, part := range s.Parts {
			if part.Role == symbol.Mark && part.Fill == symbol.Open {
				add(shortened(s.Stretched(i, top), side*bow, n), symbol.Open)
			}
		}
	}
	if g.lump == stitch.Popcorn {
		for i, part := range lid.Parts {
			path := lid.Stretched(i, lid.Height())
			add(path.Transform(geom.Translate(0, height-lid.Height())), part.Fill)
		}
		return
	}
	for i, part := range s.Parts {
		if part.Role == symbol.Head {
			add(s.Stretched(i, height), part.Fill)
		}
	}
}

// shortened is a mark that shares its stem's side with the marks of other legs.
func shortened(mark geom.Path, x float64, legs int) geom.Path {
	k := .55
	if legs > 3 {
		k = .25
	}
	c := mark.Box().Centre()
	return mark.Transform(geom.Translate(-c.X, -c.Y).Then(geom.Scale(k, k)).Then(geom.Translate(c.X+x, c.Y)))
}
