package cloth

import (
	"math"
	"testing"

	"strandway/chart/layout"
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

func TestClothAgreesWithTheGauge(t *testing.T) {
	const head = "strandway = 1\n[gauge]\nstitches = 15\nrows = "
	for name, src := range map[string]string{
		"sc": head + "17\n[[piece]]\nname = \"S\"\nrows = \"\"\"\nFoundation: Ch 31.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\n" +
			"Row 3: Rep Row 2.\nRow 4: Rep Row 2.\n\"\"\"",
		"dc": head + "8\n[[piece]]\nname = \"S\"\nrows = \"\"\"\nFoundation: Ch 32.\nRow 1 (RS): Dc in 4th ch from hook (skipped ch count as dc) and in each ch across, turn.\n" +
			"Row 2: Ch 3 (counts as dc), dc in next st and in each st across, turn.\nRow 3: Rep Row 2.\nRow 4: Rep Row 2.\n\"\"\"",
	} {
		w := workedFile(t, src)
		plan := layout.Arrange(w.Pieces[0].Fabric, layout.Measured())
		o := OptionsOf(w, 0, plan)
		c := Make(plan, nil, o)
		// 30 stitches at 15 to 10 cm are 200 mm wide; 4 rows by the gauge.
		if wide := c.Box().Width() * o.StitchMM; math.Abs(wide/200-1) > .01 {
			t.Errorf("%s: the cloth is %.1f mm wide, want 200", name, wide)
		}
		want := 4 * 100 / w.Pattern.Gauge.Rows
		if tall := rise(plan) * o.Stretch * o.StitchMM; math.Abs(tall/want-1) > .01 {
			t.Errorf("%s: its rows are %.1f mm high, want %.1f", name, tall, want)
		}
	}
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
