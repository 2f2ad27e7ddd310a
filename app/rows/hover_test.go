package rows

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"strandway/model/pattern"
)

// The pointer over a marked word is told why it is marked; beside it nothing is said.
func TestHoverTellsTheReason(t *testing.T) {
	page, s := opened(t, 536, &pattern.Pattern{Terms: "US", Pieces: []pattern.Piece{{Rows: "With A, ch 11.\nRow 1: Sc in frobble, turn.\nRow 2: Ch 1, sc in each st across."}}})
	said := ""
	page.Hint = func(s string) { said = s }
	over := func(words string) {
		at := page.caretPoint(strings.Index(s.Rows(), words) + 1)
		page.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(at.X+1, at.Y+8)}})
	}
	over("frobble")
	if !strings.Contains(said, "frobble") {
		t.Errorf("over the fault it says %q", said)
	}
	over("With A")
	if said != "" {
		t.Errorf("over words without a fault it says %q", said)
	}
}
