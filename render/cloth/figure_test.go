package cloth

import (
	"slices"
	"testing"

	"strandway/chart/layout"
	"strandway/model/stitch"
)

// Every stitch of the library must show more than its top loops, from either side.
func TestEveryStitchShows(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	plan := worked(t, "Ch 12.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc in each st across.", 1)
	for _, k := range lib.Kinds() {
		if k.Chains < .5 || k.Family == "chain" {
			continue
		}
		f := *plan.Fabric
		f.Kinds = append(slices.Clone(f.Kinds), k)
		f.Stitches = slices.Clone(f.Stitches)
		id := f.Rows[3].First + 5
		f.Stitches[id].Kind = uint16(len(f.Kinds) - 1)
		for face, name := range map[Face]string{RS: "right", WS: "wrong"} {
			shown := 0
			c := Make(layout.Arrange(&f, layout.Measured()), nil, Options{Face: face})
			for _, in := range c.instances {
				if form := c.keys[in.key].part.form; in.stitch == id && form != link && form != chainLink {
					shown++
				}
			}
			if shown == 0 {
				t.Errorf("%s shows nothing on the %s side", k.Name, name)
			}
		}
	}
}

func TestFigures(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]figure{
		"dc":       {},
		"dc2tog":   {},
		"popcorn":  {},
		"ldc":      {links: 1},
		"ltr":      {links: 2},
		"loop st":  {loop: true},
		"fdc":      {chain: true},
		"y-st":     {arms: 1},
		"inv y-st": {fork: true},
		"x-st":     {arms: 1, fork: true},
		"csc":      {inVee: true},
		"croc st":  {scale: 10},
	} {
		k, ok := lib.Kind(name)
		if !ok {
			t.Errorf("the library has no %s", name)
			continue
		}
		if got := figureOf(k); got != want {
			t.Errorf("%s shows %+v, want %+v", name, got, want)
		}
	}
}
