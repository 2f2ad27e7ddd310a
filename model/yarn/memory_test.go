package yarn_test

import (
	"reflect"
	"strings"
	"testing"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/yarn"
)

var lantern = yarn.Remembered{Yarn: "Lantern DK", HookMM: 4, Loops: .93, Legs: 1.1, From: "Groyne Runner", Day: "2026-03-01"}

func TestMemory(t *testing.T) {
	m := yarn.Memory{}.With(lantern).With(yarn.Remembered{Yarn: "Harbour Worsted", HookMM: 5, Loops: 1, Legs: 1})
	tighter := lantern
	tighter.Loops = .88
	if m = m.With(tighter); len(m) != 2 {
		t.Errorf("%d entries, want the newer one of a yarn and hook in place of the older", len(m))
	}
	for _, c := range []struct {
		yarn string
		hook float64
		want float64 // loops; 0: not remembered
	}{{"Lantern DK", 4, .88}, {" lantern dk", 4, .88}, {"Lantern DK", 4.5, 0}, {"Lantern", 4, 0}, {"", 4, 0}} {
		if got, ok := m.Of(c.yarn, c.hook); ok != (c.want > 0) || got.Loops != c.want {
			t.Errorf("%q with %g mm: %+v %v, want %g", c.yarn, c.hook, got, ok, c.want)
		}
	}
	src, err := m.Encode()
	if err != nil {
		t.Fatal(err)
	}
	if again, err := yarn.DecodeMemory(src); err != nil || !reflect.DeepEqual(again, m) {
		t.Errorf("%v %v, want %v", again, err, m)
	}
	if left := m.Without("Lantern DK", 4); len(left) != 1 || len(m) != 2 {
		t.Errorf("%v left of %v", left, m)
	}
	for _, bad := range []string{"[[swatch]]\nyarn = \"A\"\nloops = 0.1\nlegs = 1", "[[swatch]", "[[swatch]]\nyarn = \"A\"\nloops = nan\nlegs = 1"} {
		if _, err := yarn.DecodeMemory([]byte(bad)); err == nil {
			t.Errorf("%q is read", bad)
		}
	}
}

// A yarn without a swatch of its own is reckoned by what is remembered of it and the hook, and no other yarn is.
func TestRememberedFactors(t *testing.T) {
	lib := library(t)
	p := striped(stripes)
	p.Hook.MM = 4
	p.Yarns[0].Name = "Lantern DK"
	w := model.Work(lib, p, 0)
	hands := yarn.Memory{{Yarn: "Lantern DK", HookMM: 4, Loops: .8, Legs: .8, From: "Groyne Runner"}}
	plain, by := w.Figures(), w.FiguresBy(hands)
	if got := by.Yarns[0].StitchM / plain.Yarns[0].StitchM; got < .799 || got > .801 {
		t.Errorf("A takes %g of what hook and yarn alone give, want 0.8", got)
	}
	if by.Yarns[1].StitchM != plain.Yarns[1].StitchM || by.Factors("A").From != "Groyne Runner" || by.Factors("B").Calibrated {
		t.Errorf("factors %+v and %+v", by.Factors("A"), by.Factors("B"))
	}

	p.Gauge.Swatch = &pattern.Swatch{WidthCM: 15, HeightCM: 15, Grams: map[string]float64{"A": 6, "B": 3}}
	w = model.Work(lib, p, 0)
	if got := w.FiguresBy(hands).Factors("A"); got.From != "" || !got.Calibrated {
		t.Errorf("%+v, want the pattern's own swatch before what is remembered", got)
	}
	told := w.Swatches(w.Figures(), "2026-03-01")
	if len(told) != 1 || told[0].Yarn != "Lantern DK" || told[0].HookMM != 4 || !strings.HasPrefix(told[0].Day, "2026") {
		t.Errorf("%+v, want the one yarn that has a name", told)
	}
}
