package picture

import (
	"context"
	"image"
	"image/draw"
	"sync"

	"strandway/app/session"
	"strandway/chart"
	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/render/cloth"
	"strandway/render/raster"
)

// sight is one picture of a piece. Places are in stitch widths with y upward.
type sight interface {
	// piece is the box of the stitches themselves, whole the box of all that is drawn.
	piece() geom.Box
	whole() geom.Box
	// draw draws the picture for a screen. Only one sight of a screen draws at a time.
	draw(ctx context.Context, s shot) (*image.RGBA, error)
	hit(p geom.Point) (stitch int32, ok bool)
	bounds(stitch int32) geom.Box
}

// chartUnit is how many mm of a chart's page one stitch width takes.
const chartUnit = 5.0

// chartSight shows a display list: the symbols, or the cells.
type chartSight struct {
	list   *display.List
	groups func() map[int32][]display.Item // the items of each stitch
	notes  func() []chart.Note
	box    geom.Box
	screen *raster.Screen
}

// newChartSight makes the sight that follows an old one; old may be nil.
func newChartSight(list *display.List, box geom.Box, old *chartSight) *chartSight {
	c := &chartSight{list: list, box: box, screen: &raster.Screen{}}
	if old != nil {
		c.screen = old.screen
	}
	c.groups = sync.OnceValue(c.findGroups)
	c.notes = sync.OnceValue(func() []chart.Note { return chart.Notes(list) })
	return c
}

// findGroups finds the items that each stitch is drawn with.
func (c *chartSight) findGroups() map[int32][]display.Item {
	groups := map[int32][]display.Item{}
	var open []int // the Begins of the groups that are open
	for i, item := range c.list.Items {
		switch item.(type) {
		case display.Begin:
			open = append(open, i)
		case display.End:
			if n := len(open) - 1; n >= 0 {
				if b := c.list.Items[open[n]].(display.Begin); b.Stitch >= 0 {
					groups[b.Stitch] = c.list.Items[open[n] : i+1 : i+1]
				}
				open = open[:n]
			}
		}
	}
	return groups
}

// toPage maps places to the chart's page.
func (c *chartSight) toPage() geom.Matrix {
	return geom.Scale(chartUnit, -chartUnit).Then(geom.Translate(c.list.Origin.X, c.list.Origin.Y))
}

func (c *chartSight) fromPage(b geom.Box) geom.Box {
	o := c.list.Origin
	return geom.Box{
		Min: geom.Point{X: (b.Min.X - o.X) / chartUnit, Y: (o.Y - b.Max.Y) / chartUnit},
		Max: geom.Point{X: (b.Max.X - o.X) / chartUnit, Y: (o.Y - b.Min.Y) / chartUnit},
	}
}

func (c *chartSight) piece() geom.Box { return c.box }

func (c *chartSight) whole() geom.Box {
	return c.fromPage(geom.Box{Max: geom.Point{X: c.list.Width, Y: c.list.Height}})
}

func (c *chartSight) draw(ctx context.Context, s shot) (*image.RGBA, error) {
	c.groups() // so that the window's goroutine need not look for them
	c.notes()
	pageToPlace := geom.Translate(-c.list.Origin.X, -c.list.Origin.Y).Then(geom.Scale(1/chartUnit, -1/chartUnit))
	return c.screen.Show(ctx, c.list, pageToPlace.Then(s.at), s.size, s.paper)
}

func (c *chartSight) hit(p geom.Point) (int32, bool) {
	q := c.toPage().Apply(p)
	return c.list.Hit(q.X, q.Y)
}

func (c *chartSight) bounds(stitch int32) geom.Box {
	group, ok := c.groups()[stitch]
	if !ok {
		return geom.Empty()
	}
	alone := display.List{Symbols: c.list.Symbols, Items: group}
	if ink := alone.Measure().Ink; !ink.IsEmpty() {
		return c.fromPage(ink)
	}
	return geom.Empty()
}

// clothSight shows cloth.
type clothSight struct {
	cloth  *cloth.Cloth
	yarns  []cloth.Yarn
	screen *cloth.Screen
}

// newClothSight makes the sight that follows an old one; old may be nil.
func newClothSight(m *session.Made, old *clothSight) *clothSight {
	c := &clothSight{cloth: m.Cloth, yarns: m.ClothYarns(m.Colourway()), screen: &cloth.Screen{}}
	if old != nil {
		c.screen = old.screen
	}
	return c
}

func (c *clothSight) piece() geom.Box { return c.cloth.Box() }
func (c *clothSight) whole() geom.Box { return c.cloth.Box().Grow(.6) }

func (c *clothSight) draw(ctx context.Context, s shot) (*image.RGBA, error) {
	view := cloth.View{
		Box: geom.Box{
			Min: geom.Point{X: -s.at.E / s.at.A, Y: (float64(s.size.Y) - s.at.F) / s.at.D},
			Max: geom.Point{X: (float64(s.size.X) - s.at.E) / s.at.A, Y: -s.at.F / s.at.D},
		},
		PixelsPerW: s.at.A,
	}
	picture, err := c.screen.Show(ctx, c.cloth, view, c.yarns, cloth.Background{Ground: cloth.Transparent})
	if err != nil {
		return nil, err
	}
	out := image.NewRGBA(picture.Rect)
	draw.Draw(out, out.Rect, image.NewUniform(s.paper), image.Point{}, draw.Src)
	draw.Draw(out, out.Rect, picture, image.Point{}, draw.Over)
	return out, nil
}

func (c *clothSight) hit(p geom.Point) (int32, bool) { return c.cloth.Hit(p) }

func (c *clothSight) bounds(stitch int32) geom.Box { return c.cloth.Bounds(stitch) }
