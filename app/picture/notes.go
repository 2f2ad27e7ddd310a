package picture

import (
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"strandway/app/theme"
	"strandway/chart/geom"
)

// notes is what the chart knows of the notes beside it.
type notes struct {
	chosen  int  // index among the notes of the piece, -1 for none
	held    bool // the pointer has the chosen one
	grip    geom.Point
	pointer geom.Point
}

// Note is a note of the chart, in places.
type Note struct {
	Index int
	Head  geom.Point // of its stitch
	Box   geom.Box   // of its words
}

// Notes are the notes that the chart shows.
func (p *Pair) Notes() []Note {
	if p.chart == nil || p.cells {
		return nil
	}
	var out []Note
	for _, n := range p.chart.notes() {
		head := p.chart.fromPage(geom.Box{Min: n.Head, Max: n.Head}).Min
		out = append(out, Note{n.Index, head, p.chart.fromPage(n.Box)})
	}
	return out
}

// Note is the note that is chosen.
func (p *Pair) Note() (Note, bool) {
	all := p.Notes()
	i := slices.IndexFunc(all, func(n Note) bool { return n.Index == p.notes.chosen })
	if i < 0 {
		return Note{}, false
	}
	return all[i], true
}

// ChooseNote chooses a note, or with -1 none.
func (p *Pair) ChooseNote(index int) {
	if index == p.notes.chosen {
		return
	}
	p.notes = notes{chosen: index}
	if index >= 0 {
		p.s.ChooseNone()
	}
	p.Chart.Mark()
	if p.Noted != nil {
		p.Noted()
	}
}

// takeNote chooses the note at a point of the chart and takes hold of it.
func (p *Pane) takeNote(at fyne.Position) bool {
	if p != p.pair.Chart {
		return false
	}
	const reach = 4 // px
	place := p.place(at)
	for _, n := range p.pair.Notes() {
		if n.Box.Grow(reach / p.pair.view.Pixels).Contains(place) {
			p.pair.ChooseNote(n.Index)
			p.pair.notes.held, p.pair.notes.pointer = true, place
			p.pair.notes.grip = place.Sub(n.Box.Centre())
			return true
		}
	}
	p.pair.ChooseNote(-1)
	return false
}

// dragNote takes the note along that is held.
func (p *Pane) dragNote(to fyne.Position) bool {
	if p.pair.notes.held {
		p.pair.notes.pointer = p.place(to)
		p.Mark()
	}
	return p.pair.notes.held
}

// dropNote leaves the note where the pointer is.
func (p *Pane) dropNote(moved bool) bool {
	held := p.pair.notes.held
	p.pair.notes.held = false
	if n, ok := p.pair.Note(); held && moved && ok {
		p.pair.s.MoveNote(n.Index, p.pair.notes.pointer.Sub(p.pair.notes.grip).Sub(n.Head), false)
	}
	return held
}

// markNote frames the chosen note, and while it is dragged shows where it comes to.
func (p *Pane) markNote(k theme.Tokens) {
	n, ok := p.pair.Note()
	if !ok || p != p.pair.Chart {
		return
	}
	r := p.rect(n.Box, 3)
	r.StrokeColor, r.StrokeWidth, r.FillColor = k.Accent, 2, color.Transparent
	if by := p.pair.notes.pointer.Sub(p.pair.notes.grip).Sub(n.Box.Centre()); p.pair.notes.held && p.dragged {
		wash := k.Wash
		wash.A = 170
		to := p.rect(geom.Box{Min: n.Box.Min.Add(by), Max: n.Box.Max.Add(by)}, 3)
		to.StrokeColor, to.StrokeWidth, to.FillColor = k.Accent, 2, wash
		if of := p.pair.s.Notes(); n.Index < len(of) {
			words := canvas.NewText(of[n.Index].Text, k.Ink)
			words.TextSize, words.Alignment = to.Size().Height*.55, fyne.TextAlignCenter
			words.Move(to.Position())
			words.Resize(to.Size())
			p.layer.Objects = append(p.layer.Objects, words)
		}
		line := canvas.NewLine(k.Accent)
		line.StrokeWidth = 1.5
		a, z := p.matrix(1).Apply(n.Head), p.matrix(1).Apply(n.Box.Centre().Add(by))
		line.Position1, line.Position2 = fyne.NewPos(float32(a.X), float32(a.Y)), fyne.NewPos(float32(z.X), float32(z.Y))
		p.layer.Objects = slices.Insert(p.layer.Objects, 1, fyne.CanvasObject(line)) // below all that is marked
	}
}
