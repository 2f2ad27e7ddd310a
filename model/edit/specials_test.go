package edit

import (
	"testing"

	"strandway/model/pattern"
)

func TestStitchesOfOnesOwn(t *testing.T) {
	p := mat()
	a := AddSpecial(p, pattern.Special{Abbreviation: "cockle", US: "(2 dc, ch 1, 2 dc) in indicated place"})
	b := Symbol(a, "cockle", "M 0 0 L 0 1.2")
	if len(p.Stitches) != 0 || a.Stitches[0].Symbol != "" || b.Stitches[0].Symbol != "M 0 0 L 0 1.2" {
		t.Errorf("%v, %v, %v", p.Stitches, a.Stitches, b.Stitches)
	}
	if c := Symbol(b, "cockle", ""); c.Stitches[0].Symbol != "" || c.Stitches[0].US == "" {
		t.Errorf("drawn from its parts it is %v", c.Stitches[0])
	}
}
