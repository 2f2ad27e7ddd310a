package edit

import (
	"slices"
	"testing"

	"strandway/model/pattern"
)

func TestCalloutsAreAddedMovedAndTakenOut(t *testing.T) {
	p := mat()
	p.Pieces = append(p.Pieces, pattern.Piece{Name: "Edging"})
	a := AddCallout(p, pattern.Callout{Row: 1, Stitch: 2, Text: "work loosely"})
	b := AddCallout(a, pattern.Callout{Piece: "Edging", Row: 1, Stitch: 1, Text: "join here"})
	if got := CalloutsOn(b, 1); !slices.Equal(got, []int{1}) {
		t.Errorf("the edging has the callouts %v", got)
	}
	moved := b.Callouts[0]
	moved.X, moved.Y = -2, 1
	c := SetCallout(b, 0, moved)
	d := TakeOutCallout(c, 0)
	if len(p.Callouts) != 0 || len(a.Callouts) != 1 || b.Callouts[0].X != 0 || c.Callouts[0].X != -2 {
		t.Error("an older pattern changed")
	}
	if len(d.Callouts) != 1 || d.Callouts[0].Text != "join here" || len(c.Callouts) != 2 {
		t.Errorf("left are %v", d.Callouts)
	}
}
