package cloth

import (
	"testing"

	"strandway/model"
	"strandway/model/colour"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

// workedFile works a pattern file.
func workedFile(t *testing.T, src string) *model.Worked {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	p, err := pattern.Decode([]byte(src), "x.strand")
	if err != nil {
		t.Fatal(err)
	}
	w := model.Work(lib, p, 0)
	if w.Findings.Faults() > 0 {
		t.Fatal(w.Findings)
	}
	return w
}

func TestYarnsOfAPattern(t *testing.T) {
	w := workedFile(t, `strandway = 1
[[yarn]]
letter = "A"
colour = "#43525c"
plies = 2
twist = "S"
fuzz = 4
held_with = "B"
[[yarn]]
letter = "B"
colour = "#e9e4d6"
look = "variegated"
colours = ["#e9e4d6", "#d9c27a"]
repeat_m = 1.5
[[colourway]]
name = "Dusk"
B = { colour = "#5a4b6b" }
[[piece]]
name = "S"
rows = """
Foundation (A): Ch 6.
Row 1 (A): Sc in 2nd ch from hook and in each ch across, turn.
Row 2 (B): Ch 1, sc in each st across.
"""
`)
	own := YarnsOf(w, 0, "")
	if a := own[0]; a.Shape != (Shape{Plies: 2, Twist: STwist, Fuzz: 4, Strands: 2}) || colour.Hex(a.Held) != "#e9e4d6" {
		t.Errorf("yarn A is %+v", a)
	}
	if b := own[1]; b.Look != Variegated || len(b.Colours) != 2 || b.RepeatM != 1.5 {
		t.Errorf("yarn B is %+v", b)
	}
	dusk := YarnsOf(w, 0, "Dusk")
	if colour.Hex(dusk[0].Held) != "#5a4b6b" {
		t.Errorf("in Dusk A is held with %s", colour.Hex(dusk[0].Held))
	}
	if b := dusk[1]; b.Look != Solid || colour.Hex(b.Colour) != "#5a4b6b" {
		t.Errorf("in Dusk B is %+v: a colourway names one colour a yarn", b)
	}
	for i, y := range Seen(own, colour.Greyscale) {
		for _, c := range append(y.Colours, y.Colour) {
			if c.R != c.G || c.G != c.B {
				t.Errorf("yarn %d shows %s in greyscale", i, colour.Hex(c))
			}
		}
	}
	if colour.Hex(own[1].Colours[1]) != "#d9c27a" {
		t.Error("seeing yarns in grey changed them")
	}
}
