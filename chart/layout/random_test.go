package layout

import (
	"math"
	"math/rand/v2"
	"testing"

	"strandway/model/fabric"
	"strandway/model/stitch"
)

// Whatever a fabric holds, laying it out ends, with numbers for places.
func TestAnyFabric(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	for seed := range uint64(200) {
		g := rand.New(rand.NewPCG(seed, 1))
		f := randomFabric(g, lib.Kinds())
		for _, h := range []Heights{Drawn(), Measured()} {
			p := Arrange(f, h)
			for id := range p.Poses {
				q := &p.Poses[id]
				if x := q.Top.X + q.Top.Y + q.Up.X + q.Up.Y + q.Depth; math.IsNaN(x) || math.IsInf(x, 0) {
					t.Fatalf("seed %d: stitch %d lies at %v", seed, id, q.Top)
				}
			}
		}
	}
}

func randomFabric(g *rand.Rand, kinds []*stitch.Kind) *fabric.Fabric {
	f := &fabric.Fabric{Kinds: kinds, Yarns: []string{"A"}}
	rows := 2 + g.IntN(8)
	wide := 1 + g.IntN(40)
	shape := fabric.Shape(g.IntN(3))
	ring := g.IntN(3) == 0
	chain := uint16(0)
	for i, k := range kinds {
		if k.Name == "ch" {
			chain = uint16(i)
		}
	}
	for r := range rows {
		row := fabric.Row{First: int32(len(f.Stitches)), No: r, Shape: shape, FromLeft: g.IntN(2) == 0, WS: g.IntN(2) == 0}
		if r > 2 && g.IntN(4) == 0 {
			row.EndSide, row.Shape = fabric.Side(g.IntN(5)), fabric.Shape(g.IntN(3))
		}
		n := max(0, wide+g.IntN(9)-4)
		for range n {
			s := fabric.Stitch{Row: int32(r), Base: uint32(len(f.Bases)), Unit: -1, Kind: uint16(g.IntN(len(kinds)))}
			if r == 0 || g.IntN(4) == 0 {
				s.Kind, s.Flags = chain, fabric.Chain
			} else {
				s.Flags = fabric.Flags(g.IntN(1<<11)) &^ fabric.Chain
				for range g.IntN(3) {
					b := fabric.Base{At: int32(g.IntN(len(f.Stitches))), How: fabric.How(g.IntN(13)), Down: uint8(1 + g.IntN(3))}
					if g.IntN(8) > 0 { // in its order in the row below
						below := f.Rows[r-1]
						b.At = below.First + (int32(len(f.Stitches))-row.First)*(below.Last-below.First)/int32(n)
						b.How = fabric.Top
					}
					switch {
					case ring && r == 1:
						b.At, b.How = -1, fabric.InRing
					case b.How == fabric.InRing:
						b.How = fabric.Top
					}
					f.Bases = append(f.Bases, b)
					s.NBase++
				}
			}
			f.Stitches = append(f.Stitches, s)
		}
		row.Last = int32(len(f.Stitches))
		row.Count = int(row.Last - row.First)
		f.Rows = append(f.Rows, row)
		if r == 0 && row.First == row.Last {
			ring = true
			f.Stitches = append(f.Stitches, fabric.Stitch{Kind: chain, Flags: fabric.Chain, Unit: -1})
			f.Rows[0].Last++
		}
	}
	return f
}
