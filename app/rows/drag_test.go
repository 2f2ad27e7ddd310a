package rows

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"strandway/model/pattern"
)

// A row is dragged by its number to the place of another; let go where it was, it stays.
func TestARowIsDraggedByItsNumber(t *testing.T) {
	page, _ := opened(t, 536, &pattern.Pattern{Terms: "US", Pieces: []pattern.Piece{{Rows: "With A, ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, hdc in each st across, turn.\nRow 3: Ch 1, sc in each st across."}}})
	var moved [][2]int
	page.MoveRow = func(from, to int) { moved = append(moved, [2]int{from, to}) }
	at := func(row int) fyne.Position {
		for i := range page.boxes {
			if page.boxes[i].row == row {
				return fyne.NewPos(60, page.boxes[i].textTop+8)
			}
		}
		t.Fatalf("there is no row %d", row)
		return fyne.Position{}
	}
	drag := func(from, to int) {
		page.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at(from)}, Button: desktop.MouseButtonPrimary})
		page.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at(to)}})
		page.MouseUp(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at(to)}, Button: desktop.MouseButtonPrimary})
		page.DragEnd()
	}
	drag(3, 1)
	drag(2, 2)
	drag(1, 0) // the foundation has no number to change places with
	if len(moved) != 1 || moved[0] != [2]int{3, 1} {
		t.Errorf("moved %v", moved)
	}
}
