// Package stage draws the step of a worked piece that is being taught: the rows
// near it with the word that is carried out, chart and cloth of the
// neighbourhood with the stitch and its place lit, and what is to be done in
// plain words. What the window shows and what is exported is the same picture.
//
// The stage is laid out for 1280 by 720 pixels and drawn at any size. It is
// always on light paper, since a camera or a printed page is.
package stage

import (
	"context"
	"image"
	"image/color"
	"image/draw"
	"math"

	"strandway/chart"
	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model"
	"strandway/model/fabric"
	"strandway/model/steps"
	"strandway/model/stitch"
	"strandway/render/cloth"
	"strandway/render/raster"
)

// The size the stage is laid out for, pixels.
const (
	Width  = 1280
	Height = 720
)

// Options say what is taught and in which yarns.
type Options struct {
	Library  *stitch.Library
	Title    string
	Terms    string       // of the words: US or UK
	Yarns    []cloth.Yarn // by index in the fabric, in the teaching colourway
	StitchMM float64      // width of one single crochet at the gauge; 0 when not known
	By       steps.By

	LeftHanded bool           // chart and cloth are mirrored, and left and right change places in the words
	Sprites    *cloth.Sprites // shared with other cloths; nil for none
}

// Stage is one piece ready to be taught. It is safe for use by several goroutines.
type Stage struct {
	Steps *steps.Steps

	o      Options
	text   string
	f      *fabric.Fabric
	chart  sight
	cloth  sight
	made   *cloth.Cloth
	list   *display.List
	groups []group
}

// New lays out chart and cloth of a worked piece.
func New(piece *model.PieceWork, o Options) *Stage {
	f := piece.Fabric
	s := &Stage{o: o, f: f, text: piece.Tree.Text}
	s.Steps = steps.Of(o.Library, piece.Tree, f, o.Terms, o.By)
	plan := layout.Arrange(f, layout.Drawn())
	inks := make([]color.NRGBA, len(o.Yarns))
	for i, y := range o.Yarns {
		inks[i] = y.Colour
	}
	s.list = chart.Draw(plan, chart.Options{Library: o.Library, Terms: o.Terms, Inks: inks, Unit: unit})
	onPaper(s.list)
	s.groups = groups(s.list, f)
	measured := layout.Arrange(f, layout.Measured())
	s.made = cloth.Make(measured, o.Yarns, cloth.Options{StitchMM: o.StitchMM, Sprites: o.Sprites})
	s.chart, s.cloth = newSight(plan), newSight(measured)
	return s
}

// By gives the same piece in steps of another length; chart and cloth are shared.
func (s *Stage) By(by steps.By, piece *model.PieceWork) *Stage {
	other := *s
	other.o.By = by
	other.Steps = steps.Of(s.o.Library, piece.Tree, piece.Fabric, s.o.Terms, by)
	return &other
}

// Frame is the picture of step i at a size in pixels.
func (s *Stage) Frame(ctx context.Context, i int, size image.Point) (*image.RGBA, error) {
	dst := image.NewRGBA(image.Rectangle{Max: size})
	draw.Draw(dst, dst.Rect, image.NewUniform(paper), image.Point{}, draw.Src)
	k := min(float64(size.X)/Width, float64(size.Y)/Height)
	if k <= 0 {
		return dst, nil
	}
	// A size of another shape than 16 by 9 has paper at two sides.
	toPixels := geom.Scale(k, k).Then(geom.Translate((float64(size.X)-k*Width)/2, (float64(size.Y)-k*Height)/2))
	step := s.Step(i)
	raster.PaintView(dst, s.page(step), toPixels)

	panes := s.panes()
	s.drawChart(dst, step, panes.chart, toPixels)
	if err := s.drawCloth(ctx, dst, step, panes.cloth, toPixels); err != nil {
		return nil, err
	}
	if s.o.LeftHanded {
		mirror(dst, pixels(panes.chart, toPixels))
		mirror(dst, pixels(panes.cloth, toPixels))
	}
	raster.PaintView(dst, s.captions(panes), toPixels)
	return dst, nil
}

// panes are where chart and cloth stand, in the stage's pixels.
type panes struct{ chart, cloth geom.Box }

// panes gives chart and cloth a strip each, one above the other, so that their columns
// agree; what is worked about a centre is taller than wide, and stands side by side.
func (s *Stage) panes() panes {
	const left, right, top, bottom, gap = 452, Width - 28, 24, 482, 12
	if s.chart.round() {
		mid := float64(left+right) / 2
		return panes{box(left, top, mid-gap/2, bottom), box(mid+gap/2, top, right, bottom)}
	}
	mid := float64(top+bottom) / 2
	return panes{box(left, top, right, mid-gap/2), box(left, mid+gap/2, right, bottom)}
}

func box(x0, y0, x1, y1 float64) geom.Box {
	return geom.Box{Min: geom.Point{X: x0, Y: y0}, Max: geom.Point{X: x1, Y: y1}}
}

// pixels is a pane's place on the picture.
func pixels(b geom.Box, m geom.Matrix) image.Rectangle {
	b = m.ApplyBox(b)
	return image.Rect(int(math.Round(b.Min.X)), int(math.Round(b.Min.Y)), int(math.Round(b.Max.X)), int(math.Round(b.Max.Y)))
}

// drawChart draws what of the chart has been worked so far, and pale what is to come in
// the row.
func (s *Stage) drawChart(dst *image.RGBA, step steps.Step, pane geom.Box, toPixels geom.Matrix) {
	view := dst.SubImage(pixels(pane, toPixels)).(*image.RGBA)
	if view.Rect.Empty() {
		return
	}
	scale := s.chart.scale(pane)
	mid := s.chart.camera(step, s.Steps.By == steps.Row, pane)
	at := pane.Centre()
	// The plan's y grows upward, the page's downward.
	toStage := geom.Matrix{A: scale, D: -scale, E: at.X - mid.X*scale, F: at.Y + mid.Y*scale}
	seen := geom.Box{Min: mid, Max: mid}.Grow(max(pane.Width(), pane.Height())/scale/2 + 3)
	raster.PaintView(view, s.under(step, toStage, scale), toPixels)
	toPage := geom.Translate(-s.list.Origin.X, -s.list.Origin.Y).Then(geom.Scale(1/float64(unit), -1/float64(unit)))
	raster.PaintView(view, s.worked(step, seen), toPage.Then(toStage).Then(toPixels))
}

// drawCloth draws the cloth as far as it is worked.
func (s *Stage) drawCloth(ctx context.Context, dst *image.RGBA, step steps.Step, pane geom.Box, toPixels geom.Matrix) error {
	at := pixels(pane, toPixels)
	if at.Empty() {
		return nil
	}
	scale := s.cloth.scale(pane)
	mid := s.cloth.camera(step, s.Steps.By == steps.Row, pane)
	half := geom.Point{X: pane.Width() / scale / 2, Y: pane.Height() / scale / 2}
	view := geom.Box{Min: mid.Sub(half), Max: mid.Add(half)}
	buffer, err := s.made.Before(step.Last).Draw(ctx, cloth.View{Box: view, PixelsPerW: float64(at.Dx()) / view.Width()})
	if err != nil {
		return err
	}
	picture := buffer.Colour(s.o.Yarns, cloth.Background{Ground: cloth.Transparent})
	draw.Draw(dst, at, picture, image.Point{}, draw.Over)
	if s.Steps.By == steps.Row {
		return nil
	}
	centre := pane.Centre()
	toStage := geom.Matrix{A: scale, D: -scale, E: centre.X - mid.X*scale, F: centre.Y + mid.Y*scale}
	raster.PaintView(dst.SubImage(at).(*image.RGBA), s.over(step, toStage, scale), toPixels)
	return nil
}
