package picture

import (
	"context"
	"image"
	"image/color"
	"image/draw"
	"sync"

	xdraw "golang.org/x/image/draw"

	"strandway/app/session"
	"strandway/app/theme"
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
	// paint draws over dst; m maps places to pixels. It reports false when it will paint better
	// soon and calls again for it.
	paint(dst *image.RGBA, m geom.Matrix, k theme.Tokens)
	hit(p geom.Point) (stitch int32, ok bool)
	bounds(stitch int32) geom.Box
}

// chartUnit is how many mm of a chart's page one stitch width takes.
const chartUnit = 5.0

// chartSight shows a display list: the symbols, or the cells.
type chartSight struct {
	list    *display.List
	extents func() map[int32]geom.Box // by stitch, mm
	box     geom.Box
}

func newChartSight(list *display.List, box geom.Box) *chartSight {
	bare := *list
	bare.Background = color.NRGBA{} // the pane has its own paper
	return &chartSight{list: &bare, box: box, extents: sync.OnceValue(func() map[int32]geom.Box {
		boxes := map[int32]geom.Box{}
		measured := bare.Measure()
		for i, item := range bare.Items {
			if b, ok := item.(display.Begin); ok && b.Stitch >= 0 {
				boxes[b.Stitch] = measured.Items[i]
			}
		}
		return boxes
	})}
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

func (c *chartSight) paint(dst *image.RGBA, m geom.Matrix, k theme.Tokens) {
	draw.Draw(dst, dst.Rect, image.NewUniform(k.Paper), image.Point{}, draw.Src)
	pageToPlace := geom.Translate(-c.list.Origin.X, -c.list.Origin.Y).Then(geom.Scale(1/chartUnit, -1/chartUnit))
	raster.PaintView(dst, c.list, pageToPlace.Then(m))
}

func (c *chartSight) hit(p geom.Point) (int32, bool) {
	q := c.toPage().Apply(p)
	return c.list.Hit(q.X, q.Y)
}

func (c *chartSight) bounds(stitch int32) geom.Box {
	if b, ok := c.extents()[stitch]; ok && !b.IsEmpty() {
		return c.fromPage(b)
	}
	return geom.Empty()
}

// clothSight shows cloth. Drawing goes on in the background; until it is done the last
// picture is shown, scaled and shifted.
type clothSight struct {
	cloth  *cloth.Cloth
	yarns  []cloth.Yarn
	redraw func() // called from the background when a picture is done

	mu     sync.Mutex
	image  *image.RGBA
	at     geom.Matrix // what the picture was drawn for
	asked  geom.Matrix
	size   image.Point
	cancel context.CancelFunc
	buffer *cloth.Buffer
}

func newClothSight(m *session.Made, old *clothSight, redraw func()) *clothSight {
	c := &clothSight{cloth: m.Cloth, yarns: m.ClothYarns(m.Colourway()), redraw: redraw}
	if old != nil {
		old.mu.Lock()
		defer old.mu.Unlock()
		if old.cancel != nil {
			old.cancel()
		}
		c.image, c.at = old.image, old.at
		if old.cloth == c.cloth && old.buffer != nil && old.asked == old.at {
			// Only the colours have changed.
			c.buffer, c.asked, c.size = old.buffer, old.asked, old.size
			c.image = c.buffer.Colour(c.yarns, cloth.Background{Ground: cloth.Transparent})
		}
	}
	return c
}

func (c *clothSight) piece() geom.Box { return c.cloth.Box() }
func (c *clothSight) whole() geom.Box { return c.cloth.Box().Grow(.6) }

func (c *clothSight) paint(dst *image.RGBA, m geom.Matrix, k theme.Tokens) {
	draw.Draw(dst, dst.Rect, image.NewUniform(k.Paper), image.Point{}, draw.Src)
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.image != nil {
		if c.at == m {
			draw.Draw(dst, dst.Rect, c.image, image.Point{}, draw.Over)
		} else {
			s := m.A / c.at.A
			old := geom.Scale(s, s).Then(geom.Translate(m.E-c.at.E*s, m.F-c.at.F*s))
			xdraw.NearestNeighbor.Transform(dst, [6]float64{old.A, old.C, old.E, old.B, old.D, old.F}, c.image, c.image.Rect, xdraw.Over, nil)
		}
	}
	if c.asked != m || c.size != dst.Rect.Size() {
		c.ask(m, dst.Rect.Size())
	}
}

// ask has the view drawn in the background; an older view that is still being drawn is dropped.
func (c *clothSight) ask(m geom.Matrix, size image.Point) {
	if c.cancel != nil {
		c.cancel()
	}
	ctx, cancel := context.WithCancel(context.Background())
	c.asked, c.size, c.cancel = m, size, cancel
	view := cloth.View{
		Box: geom.Box{
			Min: geom.Point{X: -m.E / m.A, Y: (float64(size.Y) - m.F) / m.D},
			Max: geom.Point{X: (float64(size.X) - m.E) / m.A, Y: -m.F / m.D},
		},
		PixelsPerW: m.A,
	}
	go func() {
		buffer, err := c.cloth.Draw(ctx, view)
		if err != nil {
			return // a newer view was asked for
		}
		picture := buffer.Colour(c.yarns, cloth.Background{Ground: cloth.Transparent})
		c.mu.Lock()
		current := c.asked == m
		if current {
			c.image, c.at, c.buffer = picture, m, buffer
		}
		c.mu.Unlock()
		if current {
			c.redraw()
		}
	}()
}

func (c *clothSight) hit(p geom.Point) (int32, bool) { return c.cloth.Hit(p) }

func (c *clothSight) bounds(stitch int32) geom.Box { return c.cloth.Bounds(stitch) }
