// Package trade holds the trade's tables: hooks, yarn weights, threads, sizes
// of bodies and household things, ease, and the customs for edges, carried
// yarns and ends.
//
// They are read once from assets/trade. What a record does not say is 0.
package trade

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"sync"

	"strandway/assets"

	"github.com/pelletier/go-toml/v2"
)

// Range is from the least to the most that is usual.
type Range [2]float64

// Known reports whether the table gives the range.
func (r Range) Known() bool { return r[1] != 0 || r[0] != 0 }

// Middle is half way.
func (r Range) Middle() float64 { return (r[0] + r[1]) / 2 }

// Holds reports whether x lies within a range widened on both sides by a share of it.
func (r Range) Holds(x, share float64) bool { return x >= r[0]*(1-share) && x <= r[1]*(1+share) }

// Nearest is the figure of the range nearest to x.
func (r Range) Nearest(x float64) float64 { return min(max(x, r[0]), r[1]) }

// Tables are all of them.
type Tables struct {
	Hooks   []Hook   `toml:"hook"`
	Weights []Weight `toml:"weight"`
	Threads []Thread `toml:"thread"`
	Colours []Colour `toml:"colour"`
	Body    []Body   `toml:"body"`
	Ease    []Ease   `toml:"ease"`
	Items   []Item   `toml:"item"`
	PickUps []PickUp `toml:"pick_up"`
	Carry   Carry    `toml:"carry"`
	Ends    Ends     `toml:"ends"`
}

// Hook is one size of crochet hook.
type Hook struct {
	MM      float64
	US      string `toml:"us"`
	USSteel string `toml:"us_steel"`
	UK      string `toml:"uk"`
	UKSteel string `toml:"uk_steel"`
	Japan   string
	Yarn    string // it is usual for
	Note    string
	Sure    bool
}

// Weight is one weight of yarn; a category has several under their usual names.
type Weight struct {
	Category    int
	Name        string // of the category
	US, UK, Ply string
	Wraps       Range // to the inch
	SC          Range `toml:"sc_per_10cm"`
	HookMM      Range `toml:"hook_mm"`
	MPer100g    Range `toml:"m_per_100g"`
	DiameterMM  Range `toml:"diameter_mm"`
	Note        string
	Sure        bool
}

// Thread is one cotton thread.
type Thread struct {
	Number     int
	HookMM     Range `toml:"hook_mm"`
	DiameterMM Range `toml:"diameter_mm"`
	MPer100g   Range `toml:"m_per_100g"`
	Sure       bool
}

// Colour is a plain colour word, with other words for it.
type Colour struct {
	Name  string
	Hex   string // "#rrggbb"
	Words []string
}

// Body is one measure of a body in one size.
type Body struct {
	Group   string // "baby", "woman", "head", "foot", "hand" ...
	Size    string
	Measure string // "chest", "head circumference" ...
	CM      Range  `toml:"cm"`
	Sure    bool
}

// Ease is how much wider than the body a garment is finished.
type Ease struct {
	Fit  string
	CM   Range `toml:"cm"`
	Rule string
	Sure bool
}

// Item is a household thing or a thing to wear that is made in usual sizes.
type Item struct {
	Name, Variant string
	AcrossCM      Range `toml:"across_cm"` // width, or length, as the trade names it first
	OtherCM       Range `toml:"other_cm"`
	Round         bool  // measured round, closed
	Disc          bool  // AcrossCM is its diameter
	Note          string
	Sure          bool
}

// PickUp is how many single crochet an edging takes in the end of a row of
// stitches as tall as so many chains, for an edge that lies flat.
type PickUp struct {
	Chains float64
	SC     float64 `toml:"sc"`
	Sure   bool
}

// Carry is the custom for a yarn carried up an edge or behind stitches.
type Carry struct {
	FloatCM           float64 `toml:"float_cm"`      // the longest that may hang free
	BabyFloatCM       float64 `toml:"baby_float_cm"` // on things for babies
	FloatStitches     int     `toml:"float_stitches"`
	BabyFloatStitches int     `toml:"baby_float_stitches"`
	BabyHoleMM        float64 `toml:"baby_hole_mm"`
}

// Ends is the custom for ends and for the yarn to have in hand.
type Ends struct {
	TailCM         float64 `toml:"tail_cm"`
	LeastTailCM    float64 `toml:"least_tail_cm"`
	Slack          float64 // length of a carried strand over the height it climbs
	Margin         float64 // share of yarn for swatch and mistakes
	MarginManyYarn float64 `toml:"margin_many_yarns"`
}

// Standard gives the tables. A fault in the files is a fault of the program.
var Standard = sync.OnceValue(func() *Tables {
	t, err := read(assets.Trade())
	if err != nil {
		panic(err)
	}
	return t
})

func read(files fs.FS) (*Tables, error) {
	names, err := fs.Glob(files, "*.toml")
	if err != nil {
		return nil, err
	}
	t := &Tables{}
	for _, name := range names {
		src, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		if err := toml.Unmarshal(src, t); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
	}
	if len(t.Weights) == 0 || len(t.PickUps) == 0 || t.Carry.FloatCM == 0 || t.Ends.TailCM == 0 {
		return nil, errors.New("the trade's tables are not complete")
	}
	return t, nil
}

// WeightOf is the weight of a category nearest to so many metres in 100 g; with
// 0 metres the last, and so the commonest for crochet, of the category.
func (t *Tables) WeightOf(category int, mPer100g float64) (best Weight, ok bool) {
	far := math.Inf(1)
	for _, w := range t.Weights {
		if w.Category != category || !w.MPer100g.Known() {
			continue
		}
		d := math.Abs(mPer100g - w.MPer100g.Nearest(mPer100g))
		if !ok || d < far || mPer100g == 0 {
			best, far, ok = w, d, true
		}
	}
	return best, ok
}

// SCInEnd is how many single crochet an edging takes in the end of a row of
// stitches as tall as so many chains.
func (t *Tables) SCInEnd(chains float64) float64 {
	last := len(t.PickUps) - 1
	for i, p := range t.PickUps {
		if i == last || chains <= p.Chains {
			return p.SC
		}
		if next := t.PickUps[i+1]; chains < next.Chains {
			return p.SC + (chains-p.Chains)/(next.Chains-p.Chains)*(next.SC-p.SC)
		}
	}
	return 1
}
