package picture

import (
	"slices"

	"strandway/chart/geom"
)

// choiceBox is a stretch of chosen stitches as it is marked in a picture.
type choiceBox struct {
	box    geom.Box
	framed bool
}

// choiceBoxes marks stitches: a block that fills its rectangle in one frame, stitches that
// lie apart one by one.
func choiceBoxes(s sight, ids []int32) []choiceBox {
	const mostSingle = 300 // more than that are marked by their rectangle alone
	all, area := geom.Empty(), 0.0
	boxes := make([]choiceBox, 0, len(ids))
	for _, id := range ids {
		b := s.bounds(id)
		if b.IsEmpty() {
			continue
		}
		all = all.Union(b)
		area += b.Width() * b.Height()
		boxes = append(boxes, choiceBox{box: b})
	}
	if len(boxes) == 0 {
		return nil
	}
	if len(boxes) > mostSingle || area > .5*all.Width()*all.Height() {
		return []choiceBox{{box: all, framed: true}}
	}
	if len(boxes) == 1 {
		boxes[0].framed = true
	}
	return boxes
}

// chooseIn chooses the stitches whose middle lies in a box of a picture.
func (p *Pair) chooseIn(s sight, box geom.Box) {
	m := p.s.Made()
	if m == nil {
		return
	}
	var ids []int32
	for id := range int32(len(m.Fabric().Stitches)) {
		if b := s.bounds(id); !b.IsEmpty() && box.Contains(b.Centre()) {
			ids = append(ids, id)
		}
	}
	if len(ids) > 0 {
		p.s.Choose(ids, ids[0])
	}
}

// chooseBetween chooses the rectangle that has two stitches at its corners.
func (p *Pair) chooseBetween(s sight, a, b int32) {
	box := s.bounds(a).Union(s.bounds(b))
	p.chooseIn(s, box)
	if c := p.s.Chosen(); !slices.Contains(c.Stitches, b) {
		p.s.Choose(append(slices.Clone(c.Stitches), a, b), b)
	}
}
