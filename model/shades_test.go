package model

import (
	"testing"

	"strandway/model/colour"
	"strandway/model/palette"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

// threeYarns is a pattern in rows of A, B and C, with a colourway that leaves C as it is.
func threeYarns() *pattern.Pattern {
	return &pattern.Pattern{Terms: "US",
		Yarns: []pattern.Yarn{
			{Letter: "A", Shade: "Slate", Colour: "#43525c"},
			{Letter: "B", Shade: "Foam", Colour: "#e9e4d6"},
			{Letter: "C", Shade: "Gorse", Colour: "#c9962f"},
		},
		Colourways: []pattern.Colourway{{Name: "Thrift", Shades: map[string]pattern.Shade{
			"A": {Shade: "Thrift", Colour: "#c67d96"}, "B": {Shade: "Sea foam"},
		}}},
		Pieces: []pattern.Piece{{Name: "Body", Rows: "Foundation (A): Ch 11.\n" +
			"Row 1 (A): Sc in 2nd ch from hook and in each ch across, turn.\n" +
			"Row 2 (B): Ch 1, sc in each st across, turn.\nRow 3 (C): Ch 1, sc in each st across, turn."}},
	}
}

func TestShadesOfAColourway(t *testing.T) {
	p := threeYarns()
	for way, want := range map[string][3]pattern.Shade{
		"":       {{Shade: "Slate", Colour: "#43525c"}, {Shade: "Foam", Colour: "#e9e4d6"}, {Shade: "Gorse", Colour: "#c9962f"}},
		"Thrift": {{Shade: "Thrift", Colour: "#c67d96"}, {Shade: "Sea foam", Colour: "#e9e4d6"}, {Shade: "Gorse", Colour: "#c9962f"}},
	} {
		if got := [3]pattern.Shade(Shades(p, way)); got != want {
			t.Errorf("%q: %v, want %v", way, got, want)
		}
	}
	if got := ByLetter(p, Shades(p, "Thrift"))["B"].Shade; got != "Sea foam" {
		t.Errorf("B is %s", got)
	}
}

// A locked yarn keeps its shade with its name; the others lose theirs with their colour.
func TestSuggestedShades(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	w := Work(lib, threeYarns(), 0)
	got, err := w.Suggest(0, "Thrift", palette.Wish{Rule: palette.Complementary, Keep: -1, Locked: []bool{true, false, false}})
	if err != nil {
		t.Fatal(err)
	}
	if want := (pattern.Shade{Shade: "Thrift", Colour: "#c67d96"}); got[0] != want {
		t.Errorf("the locked yarn is %v, want %v", got[0], want)
	}
	if got[2].Shade != "" || got[2].Colour == "#c9962f" {
		t.Errorf("C is still %v", got[2])
	}
	for i, c := range w.ColoursIn(0, got) {
		if colour.Hex(c) != got[i].Colour {
			t.Errorf("yarn %d of the piece is %s, want %s", i, colour.Hex(c), got[i].Colour)
		}
	}
	p := threeYarns()
	p.Yarns[1].Colour, p.Colourways = "", nil
	if _, err := Work(lib, p, 0).Suggest(0, "", palette.Wish{Keep: -1}); err == nil {
		t.Error("a yarn without a colour was no hindrance")
	}
}
