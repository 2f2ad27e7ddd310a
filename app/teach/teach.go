// Package teach is the view in which a piece is shown step by step: the stage exactly as
// it is exported, with what leads through the steps below it.
package teach

import (
	"context"
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"strandway/app/control"
	"strandway/app/session"
	"strandway/app/theme"
	"strandway/model/steps"
	"strandway/model/stitch"
	"strandway/render/cloth"
	"strandway/render/stage"
)

// View shows the piece in hand step by step.
type View struct {
	widget.BaseWidget

	Keys func(*fyne.KeyEvent) bool // takes keys that are not the view's own
	Save func()                    // asks where the frames are to go
	Told func()                    // the step has changed
	Hand func(left bool)           // the piece is to be shown as a left-hander works it, or not

	s    *session.Session
	th   *theme.Theme
	lib  *stitch.Library
	post func(func())

	by      steps.By
	at      int32 // the first stitch of the present step
	alone   bool
	left    bool // as a left-hander works it
	focused bool

	made    *session.Made // what the stages are of
	stages  [2]*stage.Stage
	sprites *cloth.Sprites

	img     *image.RGBA // the newest frame
	drawn   frame       // what it shows
	drawing bool
	size    image.Point // of the stage, pixels

	head, foot *control.Panel
	stage      *canvas.Raster
	back, ring *canvas.Rectangle
}

// frame says what a picture shows.
type frame struct {
	stage *stage.Stage
	step  int
	size  image.Point
}

const (
	headHeight = 44
	footHeight = 52
	margin     = 16
)

// New makes the view; post runs a function on the window's goroutine.
func New(s *session.Session, lib *stitch.Library, th *theme.Theme, post func(func())) *View {
	v := &View{s: s, th: th, lib: lib, post: post, sprites: cloth.NewSprites(0)}
	v.head = control.NewPanel(th, control.Row(headHeight), v.drawHead)
	v.foot = control.NewPanel(th, control.Row(footHeight), v.drawFoot)
	v.stage = canvas.NewRaster(v.show)
	v.stage.ScaleMode = canvas.ImageScaleFastest
	v.back = canvas.NewRectangle(color.Transparent)
	v.ring = canvas.NewRectangle(color.Transparent)
	v.ring.StrokeWidth, v.ring.CornerRadius = 1, 2
	v.ExtendBaseWidget(v)
	s.Watch(v.changed)
	return v
}

// changed takes up what the session has made, when the view is seen.
func (v *View) changed(c session.Change) {
	if c&(session.Pictures|session.Worked|session.Shown) != 0 && v.Visible() {
		v.take()
	}
}

// take prepares the piece that the session has made.
func (v *View) take() {
	m := v.s.Made()
	if m == nil || m.Cloth == nil || len(m.Fabric().Stitches) == 0 {
		return
	}
	if v.made != nil && v.made.Piece() == m.Piece() {
		return // only the colourway shown elsewhere is another
	}
	v.made = m
	piece := v.s.Piece()
	o := stage.Options{
		Library: v.lib,
		Title:   title(m, piece),
		Terms:   m.Work.Pattern.Terms,
		Yarns:   m.ClothYarns(stage.Teaching(m.Work, piece)),
		Sprites: v.sprites,

		LeftHanded: v.left,
	}
	if g := m.Work.Pattern.Gauge; g.Stitches > 0 {
		o.StitchMM = g.OverCM * 10 / g.Stitches
	}
	go func() {
		byStitch := stage.New(m.Piece(), o)
		byRow := byStitch.By(steps.Row, m.Piece())
		v.post(func() {
			if v.made == m {
				v.stages = [2]*stage.Stage{steps.Stitch: byStitch, steps.Row: byRow}
				v.GoTo(v.at)
			}
		})
	}()
}

// title is the pattern's title, and the piece's where there are several.
func title(m *session.Made, piece int) string {
	p := m.Work.Pattern
	if len(p.Pieces) > 1 {
		return p.Title + ": " + p.Pieces[piece].Name
	}
	return p.Title
}

// Stage is the stage in steps of the present length, nil while it is being made.
func (v *View) Stage() *stage.Stage { return v.stages[v.by] }

// Step is the present step; ok is false while there is none.
func (v *View) Step() (step steps.Step, ok bool) {
	if st := v.Stage(); st != nil {
		return st.Step(st.Steps.Find(v.at)), true
	}
	return steps.Step{}, false
}

// GoTo shows the step in which a stitch is made.
func (v *View) GoTo(id int32) {
	v.at = id
	if st := v.Stage(); st != nil {
		v.at = st.Steps.At(st.Steps.Find(id)).First
	}
	v.redraw()
}

// Walk goes on by a number of steps, or back.
func (v *View) Walk(by int) {
	if st := v.Stage(); st != nil {
		i := st.Steps.Find(v.at) + by
		v.GoTo(st.Steps.At(max(0, min(i, st.Steps.Len()-1))).First)
	}
}

// By is how much one step is.
func (v *View) By() steps.By { return v.by }

// SetBy changes how much one step is; the stitch in hand stays.
func (v *View) SetBy(by steps.By) {
	v.by = by
	v.GoTo(v.at)
}

// LeftHanded reports whether the piece is shown as a left-hander works it.
func (v *View) LeftHanded() bool { return v.left }

// SetLeftHanded shows the piece as a left-hander works it: mirrored.
func (v *View) SetLeftHanded(on bool) {
	if v.left != on {
		v.left, v.made = on, nil
		v.take()
	}
}

// SetAlone shows the stage by itself, without what leads through the steps.
func (v *View) SetAlone(on bool) {
	if v.alone != on {
		v.alone = on
		v.place()
	}
}

// redraw asks for the frame of the present step.
func (v *View) redraw() {
	v.head.Redraw()
	v.foot.Redraw()
	v.draw()
	if v.Told != nil {
		v.Told()
	}
}

// draw makes the frame in the background; while one is being made the next waits.
func (v *View) draw() {
	st := v.Stage()
	if st == nil || v.size.X < 2 || v.size.Y < 2 || v.drawing || !v.Visible() {
		return
	}
	want := frame{st, st.Steps.Find(v.at), v.size}
	if want == v.drawn {
		return
	}
	v.drawing = true
	go func() {
		img, err := want.stage.Frame(context.Background(), want.step, want.size)
		v.post(func() {
			v.drawing = false
			if err == nil {
				v.img, v.drawn = img, want
				v.stage.Refresh()
			}
			v.draw()
		})
	}()
}

// show is the newest frame; the raster says the size it wants.
func (v *View) show(width, height int) image.Image {
	if size := image.Pt(width, height); size != v.size {
		v.size = size
		v.draw()
	}
	if v.img == nil {
		return image.NewRGBA(image.Rect(0, 0, 1, 1))
	}
	return v.img
}

// Show brings the view up, at the stitch that the caret's word made.
func (v *View) Show() {
	v.BaseWidget.Show()
	if made := v.s.MadeBy(v.s.Caret().At); len(made) > 0 {
		if now, ok := v.Step(); !ok || !v.holds(made, now) {
			v.at = made[0]
		}
	}
	v.take()
	v.GoTo(v.at)
}

// holds reports whether one of the stitches is made in a step.
func (v *View) holds(ids []int32, s steps.Step) bool {
	for _, id := range ids {
		if id >= s.First && id < s.Last {
			return true
		}
	}
	return false
}

// Redress draws the view in another theme; the stage is always on light paper.
func (v *View) Redress() {
	k := v.th.Tokens()
	v.back.FillColor, v.ring.StrokeColor = k.Paper, k.Line
	if v.focused {
		v.ring.StrokeColor = k.Accent
	}
	v.back.Refresh()
	v.ring.Refresh()
	v.head.Redraw()
	v.foot.Redraw()
}

// CreateRenderer implements fyne.Widget.
func (v *View) CreateRenderer() fyne.WidgetRenderer {
	v.Redress()
	return widget.NewSimpleRenderer(container.NewWithoutLayout(v.back, v.stage, v.ring, v.head, v.foot))
}

// MinSize implements fyne.Widget.
func (v *View) MinSize() fyne.Size { return fyne.NewSize(320, 280) }

// Resize implements fyne.Widget.
func (v *View) Resize(s fyne.Size) {
	if s != v.Size() {
		v.BaseWidget.Resize(s)
		v.place()
	}
}

// place lays the view out: the stage as large as there is room for.
func (v *View) place() {
	s := v.Size()
	v.back.Resize(s)
	top, bottom, side := float32(headHeight), s.Height-footHeight, float32(margin)
	if v.alone {
		v.head.Hide()
		v.foot.Hide()
		v.ring.Hide()
		top, bottom, side = 0, s.Height, 0
	} else {
		v.head.Show()
		v.foot.Show()
		v.ring.Show()
		v.head.Resize(fyne.NewSize(s.Width, headHeight))
		v.foot.Move(fyne.NewPos(0, bottom))
		v.foot.Resize(fyne.NewSize(s.Width, footHeight))
	}
	width := min(s.Width-2*side, (bottom-top)*stage.Width/stage.Height)
	height := width * stage.Height / stage.Width
	at := fyne.NewPos((s.Width-width)/2, top+max(0, (bottom-top-height)/2))
	for _, o := range []fyne.CanvasObject{v.stage, v.ring} {
		o.Move(at)
		o.Resize(fyne.NewSize(width, height))
	}
}
