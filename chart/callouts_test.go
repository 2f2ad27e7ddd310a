package chart

import (
	"testing"

	"strandway/chart/geom"
	"strandway/model/pattern"
)

// Every stitch that a callout can name is found again by its row and number, and its note stands
// where it was put.
func TestCalloutsNameTheirStitches(t *testing.T) {
	s := sampler(t)
	p := s.p
	for i := range p.Fabric.Rows { // the sampler's rows have names alone
		p.Fabric.Rows[i].No = i
	}
	named := 0
	for id := range int32(len(p.Fabric.Stitches)) {
		c, ok := CalloutAt(p, id)
		if !ok {
			continue
		}
		named++
		if calledOut(p, c) != id {
			t.Fatalf("row %d, stitch %d is not stitch %d", c.Row, c.Stitch, id)
		}
		if named%3 != 0 {
			continue
		}
		c.Text, c.Away = "work loosely", geom.Point{X: -3, Y: 2}
		list := s.draw(Options{Callouts: []Callout{{Row: 999, Stitch: 1, Text: "nowhere"}, c}})
		notes := Notes(list)
		if len(notes) != 1 || notes[0].Index != 1 {
			t.Fatalf("the notes of the chart are %+v, want the second alone", notes)
		}
		n := notes[0]
		away := n.Box.Centre().Sub(n.Head).Mul(1. / 5)
		if d := away.Sub(geom.Point{X: -3, Y: -2}); d.Len() > .02 {
			t.Errorf("the note stands at %v from its stitch", away)
		}
		top := p.Poses[id].Top
		if d := n.Head.Sub(geom.Point{X: list.Origin.X + 5*top.X, Y: list.Origin.Y - 5*top.Y}); d.Len() > .02 {
			t.Errorf("the line of stitch %d begins %v from its head", id, d)
		}
	}
	if named < 12 {
		t.Errorf("only %d stitches can be named", named)
	}
	if _, ok := CalloutAt(p, -1); ok {
		t.Error("no stitch was named")
	}
}

func TestCalloutsBelongToAPiece(t *testing.T) {
	p := &pattern.Pattern{Pieces: []pattern.Piece{{Name: "Front"}, {Name: "Back"}},
		Callouts: []pattern.Callout{{Text: "a"}, {Piece: "Back", Text: "b"}, {Piece: "Front", Text: "c"}}}
	if f, b := CalloutsOf(p, 0), CalloutsOf(p, 1); len(f) != 2 || f[1].Text != "c" || len(b) != 1 || b[0].Text != "b" {
		t.Errorf("the front has %v, the back %v", f, b)
	}
}
