package cloth

import (
	"testing"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/colour"
	"strandway/model/fabric"
	"strandway/model/stitch"
)

var (
	ch  = &stitch.Kind{Name: "ch", Family: "chain", Chains: 1}
	sc  = &stitch.Kind{Name: "sc", Legs: 1, Chains: 1, Height: .84}
	hdc = &stitch.Kind{Name: "hdc", Legs: 1, Wraps: 1, Chains: 2, Height: 1.35}
	dc  = &stitch.Kind{Name: "dc", Legs: 1, Wraps: 1, Pulls: 1, Chains: 3, Height: 1.9}
	tr  = &stitch.Kind{Name: "tr", Legs: 1, Wraps: 2, Pulls: 2, Chains: 4, Height: 2.7}
)

// swatch lays plain rows of one kind on a foundation, two rows to a yarn.
type swatch struct {
	kind       *stitch.Kind
	cols, rows int
	round      bool // never turned, the right side always in front
	yarnOf     func(row int) int
}

func (s swatch) plan() *layout.Plan {
	f := &fabric.Fabric{Kinds: []*stitch.Kind{ch, s.kind}, Yarns: []string{"A", "B", "C"}}
	p := &layout.Plan{Fabric: f, Box: geom.Empty()}
	if s.yarnOf == nil {
		s.yarnOf = func(int) int { return 0 }
	}
	last := map[int]int{}
	for r := range s.rows + 1 {
		yarn := s.yarnOf(max(0, r-1))
		first := int32(len(f.Stitches))
		fromLeft := r%2 == 0 && !s.round
		if prev, ok := last[yarn]; ok && prev < r-1 {
			f.Events = append(f.Events,
				fabric.Event{Do: fabric.Drop, Yarn: uint8(yarn), Before: f.Rows[prev].Last},
				fabric.Event{Do: fabric.PickUp, Yarn: uint8(yarn), Before: first})
		}
		last[yarn] = r
		for i := range s.cols {
			col := i
			if !fromLeft {
				col = s.cols - 1 - i
			}
			st := fabric.Stitch{Row: int32(r), Col: float32(col), Yarn: uint8(yarn), Base: uint32(len(f.Bases)), Unit: -1}
			pose := layout.Pose{Top: geom.Point{X: float64(col) + .5, Y: float64(r) * s.kind.Height}, Up: geom.Point{Y: 1}, Fan: -1, Placed: true, FirstLeg: int32(len(p.Legs)), Host: -1}
			if r == 0 {
				st.Flags, st.Chains = fabric.Chain, 1
			} else {
				st.Kind, st.NBase = 1, 1
				below := f.Rows[r-1].First + int32(i)
				if !s.round || r == 1 {
					below = f.Rows[r-1].Last - 1 - int32(i)
					if r == 1 && !fromLeft { // the foundation is worked back along
						below = f.Rows[0].First + int32(s.cols-1-i)
						if f.Stitches[below].Col != float32(col) {
							below = f.Rows[0].Last - 1 - below
						}
					}
				}
				f.Bases = append(f.Bases, fabric.Base{At: below, Down: 1})
				p.Legs = append(p.Legs, layout.Leg{Foot: geom.Point{X: float64(col) + .5, Y: float64(r-1) * s.kind.Height}, At: below})
				pose.NLegs = 1
				if i == 0 && s.kind.Chains > 2 {
					st.Flags, st.Chains = fabric.TurningChain, uint8(s.kind.Chains)
				}
			}
			f.Stitches = append(f.Stitches, st)
			p.Poses = append(p.Poses, pose)
		}
		f.Rows = append(f.Rows, fabric.Row{First: first, Last: int32(len(f.Stitches)), FromLeft: fromLeft, WS: fromLeft && r > 0, Turned: !s.round, Yarn: uint8(yarn)})
	}
	p.Box = geom.Box{Max: geom.Point{X: float64(s.cols), Y: float64(s.rows) * s.kind.Height}}
	return p
}

func twoRows(r int) int   { return r / 2 % 2 }
func threeRows(r int) int { return r / 2 % 3 }

// harbour is the colours of Harbour Worsted used throughout: blue, cream, terracotta.
func harbour(t testing.TB) []Yarn {
	t.Helper()
	var out []Yarn
	for _, s := range []string{"#2f5d7c", "#e9dcc3", "#c9704f"} {
		c, err := colour.Parse(s)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, Yarn{Colour: c})
	}
	return out
}
