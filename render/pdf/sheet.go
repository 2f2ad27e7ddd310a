package pdf

import (
	"strandway/chart/geom"
	"strandway/render/sheet"
)

// place maps the list's millimetres to the sheet's points, which have y upward.
func place(s sheet.Sheet) geom.Matrix {
	return geom.Translate(s.At.X-s.Part.Min.X, s.At.Y-s.Part.Min.Y).
		Then(geom.Scale(pointsPerMM, -pointsPerMM)).
		Then(geom.Translate(0, s.Height*pointsPerMM))
}

// marks draws what says how the sheets join.
func (d *document) marks(c *content, s sheet.Sheet) {
	lines, label := s.Marks()
	c.op("q").matrix(place(s)).op("cm 1 J 1 j")
	d.path(c, lines)
	d.text(c, label)
	c.op("Q")
}
