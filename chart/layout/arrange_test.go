package layout

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"strandway/chart/geom"
	"strandway/model/fabric"
)

func TestSwatches(t *testing.T) {
	for _, s := range swatches {
		t.Run(s.name, func(t *testing.T) {
			p := Arrange(swatchOf(t, s.rows, 3), Drawn())
			if p.Manner != s.manner || p.Corners != s.corners {
				t.Errorf("laid out in manner %d with %d corners, want %d with %d", p.Manner, p.Corners, s.manner, s.corners)
			}
			if c := crossings(p); len(c) != s.crossed {
				t.Errorf("%d legs cross, want %d: %v", len(c), s.crossed, c)
			}
			if n := tooNear(p); n > 0 {
				t.Errorf("%d pairs of stitches lie on each other", n)
			}
			if p.HeightError > s.missed+1e-9 {
				t.Errorf("heights are missed by %.3f u, at most %.3f is due", p.HeightError, s.missed)
			}
			if p.Repeat.Label != s.repeat {
				t.Errorf("repeat across %q, want %q", p.Repeat.Label, s.repeat)
			}
			if p.Upward.Label != s.upward {
				t.Errorf("repeat upward %q, want %q", p.Upward.Label, s.upward)
			}
		})
	}
}

// Every stitch is placed or hangs on one that is; every leg starts somewhere.
func TestEveryStitchHasItsPlace(t *testing.T) {
	for _, s := range swatches {
		t.Run(s.name, func(t *testing.T) {
			for _, h := range []Heights{Drawn(), Measured()} {
				p := Arrange(swatchOf(t, s.rows, 4), h)
				for id := range p.Poses {
					q := &p.Poses[id]
					switch {
					case q.Dropped:
					case !q.Placed && (q.Host < 0 || !p.Poses[q.Host].Placed):
						if p.Fabric.Stitches[id].Row > 0 {
							t.Errorf("stitch %d hangs on nothing", id)
						}
					case math.Abs(q.Up.Len()-1) > 1e-6:
						t.Errorf("stitch %d points by %v", id, q.Up)
					case math.IsNaN(q.Top.X + q.Top.Y):
						t.Errorf("stitch %d has no place", id)
					}
					for _, l := range p.LegsOf(int32(id)) {
						if math.IsNaN(l.Foot.X + l.Foot.Y) {
							t.Errorf("a leg of stitch %d has no foot", id)
						}
					}
				}
			}
		})
	}
}

func TestSamePlanEveryTime(t *testing.T) {
	for _, s := range swatches {
		f := swatchOf(t, s.rows, 5)
		if !reflect.DeepEqual(Arrange(f, Drawn()), Arrange(f, Drawn())) {
			t.Errorf("%s: two plans of one fabric differ", s.name)
		}
	}
}

// A fabric worked by the other hand gives the mirrored plan.
func TestMirroredFabric(t *testing.T) {
	for _, s := range swatches {
		if s.manner != Rows && s.manner != Ripple || s.name == "edged swatch" {
			continue
		}
		t.Run(s.name, func(t *testing.T) {
			f := swatchOf(t, s.rows, 3)
			g := *f
			g.Rows = slices.Clone(f.Rows)
			for i := range g.Rows {
				g.Rows[i].FromLeft = !g.Rows[i].FromLeft
			}
			p, q := Arrange(f, Drawn()), Arrange(&g, Drawn())
			sum := p.Poses[0].Top.X + q.Poses[0].Top.X
			for id := range p.Poses {
				if !p.Poses[id].Placed {
					continue
				}
				a, b := p.Poses[id].Top, q.Poses[id].Top
				if d := a.Sub(geom.Point{X: sum - b.X, Y: b.Y}).Len(); d > .02 {
					t.Fatalf("stitch %d lies %.3f u from its mirror image", id, d)
				}
			}
		})
	}
}

// Wide and long pieces are solved by what repeats: one repeat lies as the next.
func TestRepeatsLieAlike(t *testing.T) {
	for _, s := range swatches {
		if s.name != "shells" && s.name != "V-stitch" && s.name != "ripple" {
			continue
		}
		t.Run(s.name, func(t *testing.T) {
			f := swatchOf(t, s.rows, 24)
			p := build(f, Drawn())
			p.findFans()
			p.solve()
			if p.folded(keepRepeats) == nil {
				t.Fatal("solved whole")
			}
			q := p.period
			wide := p.at[q.nodes[0]*10].X - p.at[q.nodes[0]*9].X
			for k, r := range p.rows {
				n := q.nodes[k]
				for o := int32(r.len()) / 3; o < int32(r.len())*2/3; o++ {
					a, b := p.at[r.first+o], p.at[r.first+o+n]
					if d := b.Sub(a).Sub(geom.Point{X: wide}).Len(); d > .05 {
						t.Fatalf("row %d: node %d lies %.3f u from where the repeat before it puts it", k, o, d)
					}
				}
			}
		})
	}
}

func TestLongStitchesLieLevel(t *testing.T) {
	s := swatchNamed(t, "long stitches")
	p := Arrange(swatchOf(t, s.rows, 4), Drawn())
	deep := 0
	for id := range p.Poses {
		for _, l := range p.LegsOf(int32(id)) {
			if !l.Deep {
				continue
			}
			deep++
			if a, b := p.Poses[id].Top.Y, p.Poses[id-1].Top.Y; math.Abs(a-b) > .05 {
				t.Errorf("long stitch %d stands at %.2f, its neighbour at %.2f", id, a, b)
			}
		}
	}
	if deep == 0 {
		t.Error("no long stitch was found")
	}
}

func TestPostsAsSeenFromTheRightSide(t *testing.T) {
	p := Arrange(swatchOf(t, swatchNamed(t, "post rib").rows, 4), Drawn())
	column := map[int]int8{}
	for id := range p.Poses {
		for _, l := range p.LegsOf(int32(id)) {
			if l.Post == 0 {
				continue
			}
			x := int(math.Round(p.Poses[id].Top.X))
			if was, ok := column[x]; ok && was != l.Post {
				t.Errorf("column %d of the rib changes side at stitch %d", x, id)
			}
			column[x] = l.Post
		}
	}
	if len(column) < 4 {
		t.Errorf("%d columns of posts", len(column))
	}
}

func TestRibsCloseUpInCloth(t *testing.T) {
	f := swatchOf(t, swatchNamed(t, "post rib").rows, 8)
	drawn, cloth := Arrange(f, Drawn()), Arrange(f, Measured())
	if w := cloth.Box.Width() / drawn.Box.Width(); w > .8 {
		t.Errorf("the rib is %.2f of its flat width", w)
	}
}

func TestHat(t *testing.T) {
	f := swatchOf(t, swatchNamed(t, "hat").rows, 1)
	chart, cloth := Arrange(f, Drawn()), Arrange(f, Measured())
	if chart.Strip != 4 {
		t.Errorf("the strip of the sides begins with row %d, want 4", chart.Strip)
	}
	near, far := 0.0, 0.0
	for id := range cloth.Poses {
		near, far = max(near, cloth.Poses[id].Depth), min(far, cloth.Poses[id].Depth)
		if chart.Poses[id].Depth != 0 {
			t.Fatalf("stitch %d of the chart has depth", id)
		}
	}
	if far > -3 || near < 1 {
		t.Errorf("the body reaches from %.1f to %.1f in depth", far, near)
	}
}

func TestSquareLiesSquare(t *testing.T) {
	for _, name := range []string{"granny square", "solid square"} {
		p := Arrange(swatchOf(t, swatchNamed(t, name).rows, 1), Drawn())
		if d := math.Abs(p.Box.Width() - p.Box.Height()); d > .3 {
			t.Errorf("%s: %.1f wide, %.1f high", name, p.Box.Width(), p.Box.Height())
		}
	}
}

func TestHangingStitches(t *testing.T) {
	p := Arrange(swatchOf(t, `
Ch 9.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in first 2 sts, *sc in next st, ch 3, sl st in 3rd ch from hook, sc in next st; rep from * across, turn.`, 1), Drawn())
	var chains, picots int
	for id := range p.Poses {
		q, s := &p.Poses[id], &p.Fabric.Stitches[id]
		switch {
		case s.Has(fabric.Picot):
			picots++
			if host := p.Poses[q.Host]; !host.Placed || q.Top.Y < host.Top.Y {
				t.Errorf("picot %d does not sit on its stitch", id)
			}
		case s.Has(fabric.Chain|fabric.NoLanding) && s.Row > 0:
			chains++
			host := p.Poses[q.Host].Top
			if d := math.Abs(q.Top.X - host.X); d < .5 || d > .8 {
				t.Errorf("chain %d stands %.2f beside its stitch", id, d)
			}
		}
	}
	if chains != 1 || picots < 2 {
		t.Errorf("%d starting chains and %d picots", chains, picots)
	}
}

func swatchNamed(t *testing.T, name string) swatch {
	t.Helper()
	for _, s := range swatches {
		if strings.EqualFold(s.name, name) {
			return s
		}
	}
	t.Fatalf("no swatch %q", name)
	return swatch{}
}

// What is solved of a piece does not grow with its width and its length.
func TestCostStaysWithTheRepeat(t *testing.T) {
	solved := func(n, rows int) int {
		p := build(swatchOf(t, fmt.Sprintf(shellRows, rows), n), Drawn())
		p.findFans()
		p.findPeriod()
		f := p.folded(keepRepeats)
		if f == nil {
			t.Fatalf("%d repeats of %d rows are solved whole", n, rows)
		}
		return len(f.small.nodes)
	}
	if a, b := solved(20, 21), solved(80, 81); b > a+a/4 {
		t.Errorf("%d nodes are solved of a small piece, %d of a large one", a, b)
	}
}
