package app

import "strandway/app/picture"

// inks are the yarns that the pencil can take.
func (w *window) inks() []picture.Ink {
	var inks []picture.Ink
	for _, y := range w.s.Pattern().Yarns {
		inks = append(inks, picture.Ink{Letter: y.Letter, Colour: w.shade(y)})
	}
	return inks
}

// drew works what the pencil went over. A stroke that comes while the one before it is still being worked waits for it.
func (w *window) drew(letter string, stitches []int32, fill bool) {
	w.brush = letter
	w.strokes = append(w.strokes, func() {
		w.s.Choose(stitches, stitches[0])
		if fill {
			w.tell(w.s.FillPatch(letter))
		} else {
			w.tell(w.s.Pencil(letter))
		}
		w.s.ChooseNone()
	})
	w.nextStroke()
}

// nextStroke works the stroke that waits longest, once the rows are worked.
func (w *window) nextStroke() {
	if len(w.strokes) == 0 || !w.s.Worked() {
		return
	}
	stroke := w.strokes[0]
	w.strokes = w.strokes[1:]
	stroke()
}

// togglePencil takes the pencil in hand over the grid, in the yarn that was used last, or puts it down.
func (w *window) togglePencil() {
	if letter, _ := w.pair.Pencil(); letter != "" && w.pair.Cells() {
		w.pair.TakePencil("", false)
	} else {
		w.pair.ShowCells(true)
		w.pair.TakePencil(w.brush, false)
	}
	w.refreshMenu()
}

// putPencilDown puts the pencil down and reports whether it was in hand.
func (w *window) putPencilDown() bool {
	letter, _ := w.pair.Pencil()
	if letter == "" || !w.pair.Cells() {
		return false
	}
	w.togglePencil()
	return true
}
