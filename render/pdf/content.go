package pdf

import (
	"image/color"
	"math"
	"strconv"

	"strandway/chart/geom"
)

// content is a run of a page's drawing operators, in millimetres of the list.
type content struct{ out []byte }

// op ends an operation by its operator.
func (c *content) op(operator string) *content {
	c.out = append(c.out, operator...)
	c.out = append(c.out, '\n')
	return c
}

// number writes a number to a thousandth.
func (c *content) number(v float64) *content { return c.decimals(v, 1e3) }

func (c *content) decimals(v, steps float64) *content {
	v = math.Round(v*steps)/steps + 0 // no minus before a zero
	if math.IsNaN(v) || math.IsInf(v, 0) {
		v = 0
	}
	c.out = strconv.AppendFloat(c.out, v, 'f', -1, 64)
	c.out = append(c.out, ' ')
	return c
}

func (c *content) point(a geom.Point) *content { return c.number(a.X).number(a.Y) }

func (c *content) matrix(m geom.Matrix) *content {
	return c.decimals(m.A, 1e6).decimals(m.B, 1e6).decimals(m.C, 1e6).decimals(m.D, 1e6).number(m.E).number(m.F)
}

func (c *content) colour(ink color.NRGBA) *content {
	return c.number(float64(ink.R) / 255).number(float64(ink.G) / 255).number(float64(ink.B) / 255)
}

func (c *content) dash(lengths []float64) *content {
	c.out = append(c.out, '[')
	for _, length := range lengths {
		c.number(length)
	}
	return c.op("] 0 d")
}

func (c *content) rectangle(b geom.Box) *content {
	return c.point(b.Min).number(b.Width()).number(b.Height()).op("re")
}

func (c *content) outline(p geom.Path) *content {
	p.Walk(func(v geom.Verb, to []geom.Point) {
		for _, a := range to {
			c.point(a)
		}
		c.out = append(c.out, "mlch"[v], '\n')
	})
	return c
}
