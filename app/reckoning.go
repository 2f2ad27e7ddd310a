package app

import (
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/chart/schematic"
	"strandway/model"
	"strandway/model/edit"
	"strandway/model/measure"
	"strandway/model/pattern"
	"strandway/model/size"
	"strandway/model/stitch"
	"strandway/model/yarn"
)

// reckoning is what the Strands and Sizes views show beyond the figures of the size in hand.
// It is made in the background, for one state of the pattern, and never changed.
type reckoning struct {
	pattern *pattern.Pattern
	piece   int
	size    int

	work *model.Worked
	plan *layout.Plan // of the piece as it lies, in the size in hand; nil where there is none
	box  geom.Box     // of its outline

	replan  *edit.Replan // another way to work the piece; nil where it cannot be planned
	why     string       // why not
	planned *model.Worked
	figures *model.Figures // of planned

	table []size.Entry      // of the piece, by size
	yarns []*model.Figures  // by size
	nest  []schematic.Piece // the piece in every size
}

// reckon reckons a worked pattern.
func reckon(lib *stitch.Library, w *model.Worked, piece int, hands yarn.Memory) *reckoning {
	r := &reckoning{pattern: w.Pattern, piece: piece, size: w.Size, work: w}
	plan, err := edit.Strands(lib, w, piece)
	switch {
	case err != nil:
		r.why = err.Error()
	default:
		r.replan = plan
	}
	if r.replan != nil && r.replan.Better() {
		r.planned = model.Work(lib, edit.Rows(w.Pattern, piece, r.replan.Rows), w.Size)
		r.figures = r.planned.Figures()
	}
	edging := size.EdgingOf(w.Pattern)
	for i := range max(1, len(w.Pattern.Sizes)) {
		sized := w
		if i != w.Size {
			sized = model.Work(lib, w.Pattern, i)
		}
		figures := sized.FiguresBy(hands)
		r.yarns = append(r.yarns, figures)
		r.table = append(r.table, size.Entries(sized, figures, edging)[piece])
		of := figures.Pieces[piece].Size
		plan := layout.Arrange(sized.Pieces[piece].Fabric, layout.Measured())
		p := schematic.Piece{Outline: schematic.Outline(plan),
			WidthCM: of.WidthCM, LengthCM: of.LengthCM, Round: of.Form == measure.Disc, Down: of.Form == measure.Hollow}
		if i == w.Size {
			r.plan, r.box = plan, p.Outline.Box()
		}
		if len(w.Pattern.Sizes) > 1 {
			p.Name = w.Pattern.Sizes[i].Name
		}
		r.nest = append(r.nest, p)
	}
	return r
}

// reckoned is the reckoning of what is shown. Until the one of the present rows has come it is the
// one before, or nil. One is made at a time: while letters are typed only the newest rows count.
func (w *window) reckoned() *reckoning {
	m := w.s.Made()
	if m == nil {
		return nil
	}
	piece, at := w.s.Piece(), m.Work
	if (w.asked != at || w.askedPiece != piece) && !w.reckons {
		w.asked, w.askedPiece, w.reckons = at, piece, true
		hands := w.s.Hands()
		go func() {
			r := reckon(w.lib, at, piece, hands)
			w.post(func() {
				w.reckons, w.reckoning = false, r
				w.strands.Redraw()
				w.sizes.Redraw()
				w.previewRows()
			})
		}()
	}
	if r := w.reckoning; r != nil && r.piece == piece && len(r.pattern.Pieces) == len(w.s.Pattern().Pieces) {
		return r
	}
	return nil
}

// figures are those of the size in hand, nil before the rows have been worked.
func (w *window) figures() *model.Figures {
	if m := w.s.Made(); m != nil && m.Figures != nil && w.s.Piece() < len(m.Figures.Pieces) {
		return m.Figures
	}
	return nil
}
