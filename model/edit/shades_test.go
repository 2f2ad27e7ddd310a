package edit

import (
	"slices"
	"testing"

	"strandway/model"
	"strandway/model/palette"
	"strandway/model/pattern"
)

func TestReorderedShades(t *testing.T) {
	p := mat()
	p.Yarns[0].Look, p.Yarns[0].Colours = "variegated", []string{"#27405c", "#445533"}
	swapped := palette.Swapped(2, 0, 1)
	own := Reorder(p, "", swapped)
	if a, b := own.Yarns[0], own.Yarns[1]; a.Letter != "A" || a.Shade != "Shell" || a.Look != "" || b.Shade != "Deep Water" || len(b.Colours) != 2 {
		t.Errorf("the yarns' own shades became %+v and %+v", a, b)
	}
	way := Reorder(p, "Low tide", swapped)
	if got := model.Shades(way, "Low tide"); got[0].Shade != "Shell" || got[1].Shade != "Deep Water" {
		t.Errorf("the colourway became %v", got)
	}
	if way.Yarns[0].Shade != "Deep Water" || len(p.Colourways[0].Shades) != 1 {
		t.Error("more than the colourway changed")
	}
	if got := model.Shades(Reorder(way, "Low tide", swapped), "Low tide"); !slices.Equal(got, model.Shades(p, "Low tide")) {
		t.Errorf("swapped twice they are %v", got)
	}
}

func TestASequenceIsSeenInTheColourwayShown(t *testing.T) {
	p := mat()
	p.Colourways = append(p.Colourways, pattern.Colourway{Name: "Ebb", Shades: map[string]pattern.Shade{"A": {Shade: "Moss", Colour: "#445533"}}})
	got := Sequence(p, "Low tide", "A", []string{"#112233", "#445566"})
	if y := got.Yarns[0]; y.Look != "variegated" || y.Colour != "#112233" || len(y.Colours) != 2 || y.RepeatM != skeinM {
		t.Errorf("the yarn became %+v", y)
	}
	if c := model.Shades(got, "Low tide")[0]; c.Colour != "#112233" || c.Shade != "Deep Water" {
		t.Errorf("in the colourway shown it is %v", c)
	}
	if c := model.Shades(got, "Ebb")[0]; c.Colour != "#445533" {
		t.Errorf("in another colourway it became %v", c)
	}
	if p.Yarns[0].Look != "" || p.Colourways[0].Shades["A"].Colour != "#27405c" {
		t.Error("the old pattern changed")
	}
}
