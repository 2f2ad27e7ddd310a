package raster

import (
	"context"
	"image"
	"image/color"
	"image/draw"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/render/tiles"
)

// Screen keeps the picture of a list that is shown. After a change of the list, or when the
// view is shifted by whole pixels, only what differs is painted anew. The zero Screen is ready
// to use, by one goroutine at a time.
type Screen struct {
	scene   *scene
	grid    *tiles.Grid
	picture *image.RGBA // of whole tiles
	paper   color.NRGBA
}

// screenTile is the side of a screen's tiles in pixels. Tiles are painted whole, since the
// rasteriser rounds otherwise what reaches beyond its sheet.
const screenTile = 64

// Show gives the picture, of size pixels, of a list on paper without an end. The map toPixels
// scales and shifts the page's millimetres to pixels. The picture is not changed later. When ctx
// is done first, the screen stays as it was.
func (s *Screen) Show(ctx context.Context, l *display.List, toPixels geom.Matrix, size image.Point, paper color.NRGBA) (*image.RGBA, error) {
	// Pixels are counted from the origin of what was laid out, since the page round it changes with the list.
	origin := toPixels.Apply(l.Origin)
	corner := image.Pt(-round(origin.X), -round(origin.Y))
	view := image.Rectangle{Min: corner, Max: corner.Add(size)}
	next := Screen{grid: tiles.New(view, screenTile), paper: paper}
	next.grid.View = next.grid.Bounds()
	next.picture = image.NewRGBA(next.grid.View)
	next.scene = newScene(l, toPixels.Then(geom.Translate(float64(corner.X), float64(corner.Y))), next.grid.View, false, s.scene)
	for i := range next.scene.marks {
		next.grid.Deal(int32(i), next.scene.marks[i].box)
	}
	stale := next.grid.Tile
	if s.scene != nil && s.paper == paper && s.scene.outlines == next.scene.outlines {
		draw.Draw(next.picture, s.picture.Rect, s.picture, s.picture.Rect.Min, draw.Src)
		before := tiles.Before{
			Grid: s.grid,
			Same: func(was, now int32) bool { return s.scene.marks[was].same(&next.scene.marks[now]) },
			Was:  func(i int32) image.Rectangle { return s.scene.marks[i].box },
			Now:  func(i int32) image.Rectangle { return next.scene.marks[i].box },
		}
		stale = func(t int) image.Rectangle { return next.grid.Stale(t, before) }
	}
	err := inParallel(ctx, next.grid.Len(), func(t int) {
		if !stale(t).Empty() {
			next.paint(t)
		}
	})
	if err != nil {
		return nil, err
	}
	*s = next
	shown := image.NewRGBA(image.Rectangle{Max: size})
	draw.Draw(shown, shown.Rect, s.picture, view.Min, draw.Src)
	return shown, nil
}

// paint paints a tile.
func (s *Screen) paint(t int) {
	s.scene.onBand(s.picture.SubImage(s.grid.Tile(t)).(*image.RGBA), func(b *band) {
		draw.Draw(b.sheet, b.sheet.Rect, image.NewUniform(s.paper), image.Point{}, draw.Src)
		for _, i := range s.grid.Things(t) {
			b.mark(&s.scene.marks[i])
		}
	})
}

// same reports whether two marks are painted alike. Pictures are not compared.
func (m *mark) same(o *mark) bool {
	if m.box != o.box || m.shape != o.shape || m.at != o.at || m.ink != o.ink || (m.lines == nil) != (o.lines == nil) {
		return false
	}
	return m.shape != nil || m.lines != nil && m.lines.same(o.lines)
}
