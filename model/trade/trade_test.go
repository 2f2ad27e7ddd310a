package trade

import "testing"

func TestTablesAreRead(t *testing.T) {
	all := Standard()
	if len(all.Hooks) < 50 || len(all.Weights) < 12 || len(all.Threads) < 11 || len(all.Body) < 262 || len(all.Ease) < 10 || len(all.Items) < 35 {
		t.Fatalf("%d hooks, %d weights, %d threads, %d body measures, %d eases, %d items",
			len(all.Hooks), len(all.Weights), len(all.Threads), len(all.Body), len(all.Ease), len(all.Items))
	}
	for _, b := range all.Body {
		if b.Group == "" || b.Size == "" || b.Measure == "" || !b.CM.Known() || b.CM[0] > b.CM[1] {
			t.Errorf("%+v", b)
		}
	}
	for _, i := range all.Items {
		if i.Name == "" || !i.AcrossCM.Known() || i.AcrossCM[0] > i.AcrossCM[1] {
			t.Errorf("%+v", i)
		}
	}
	for _, w := range all.Weights {
		if w.HookMM[0] > w.HookMM[1] || w.MPer100g[0] > w.MPer100g[1] || w.SC[0] > w.SC[1] {
			t.Errorf("%+v", w)
		}
	}
}

func TestWeightOf(t *testing.T) {
	for _, c := range []struct {
		category int
		m        float64
		us       string
	}{
		{4, 200, "worsted"},
		{4, 140, "aran, afghan"},
		{3, 220, "DK, light worsted"},
		{0, 450, "crochet thread no. 10"},
		{0, 1200, "cobweb"},
	} {
		if w, ok := Standard().WeightOf(c.category, c.m); !ok || w.US != c.us {
			t.Errorf("category %d of %g m: %q, want %q", c.category, c.m, w.US, c.us)
		}
	}
	if _, ok := Standard().WeightOf(9, 0); ok {
		t.Error("there is no category 9")
	}
}

func TestSCInEnd(t *testing.T) {
	for chains, want := range map[float64]float64{0: .5, 1: 1, 1.5: 1.25, 2: 1.5, 3: 2, 3.5: 2.5, 4: 3, 9: 5} {
		if got := Standard().SCInEnd(chains); got != want {
			t.Errorf("%g chains: %g, want %g", chains, got, want)
		}
	}
}
