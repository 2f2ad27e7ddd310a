package strand

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// rowsIn reads "AABB": one row a letter, each a centimetre high.
func rowsIn(letters string) []Need {
	var needs []Need
	for _, l := range letters {
		needs = append(needs, Need{Yarn: uint8(l - 'A'), Height: 1})
	}
	return needs
}

func TestBest(t *testing.T) {
	for _, c := range []struct {
		rows     string
		cuts     int
		longest  float64
		unturned int
	}{
		{"AAAA", 0, 0, 0},
		{"AABBAABB", 0, 2, 0}, // two-row stripes wait at their own edge
		{"ABCABC", 0, 2, 0},   // an odd number of yarns meets again by itself
		{"ABABABAB", 0, 1, 3}, // one-row stripes in two yarns: two rows a side
		{"AB", 0, 0, 0},
	} {
		got, ok := Best(rowsIn(c.rows))
		if !ok || got.Cuts != c.cuts || got.Longest != c.longest || got.Unturned != c.unturned {
			t.Errorf("%s: %d cuts, longest float %g cm, %d unturned, want %d, %g, %d", c.rows, got.Cuts, got.Longest, got.Unturned, c.cuts, c.longest, c.unturned)
		}
	}
}

func TestBestKeepsFaces(t *testing.T) {
	needs := rowsIn("ABAB")
	for k := range needs {
		needs[k].Face = RS
	}
	got, _ := Best(needs)
	if got.Cuts != 2 || got.Unturned != 3 {
		t.Errorf("rows all on the right side: %d cuts, %d unturned, want 2 and 3", got.Cuts, got.Unturned)
	}
}

// exhaustive weighs every choice of faces, and for every yarn that could be carried whether it is cut.
func exhaustive(needs []Need) Plan {
	floats := floatLengths(needs)
	best := Plan{Cuts: 1 << 30}
	faces := make([]Face, len(needs))
	var walk func(k int, p Plan, waits map[uint8]Face)
	walk = func(k int, p Plan, waits map[uint8]Face) {
		if k == len(needs) {
			if p.Less(best) {
				p.Faces = append([]Face{}, faces...)
				best = p
			}
			return
		}
		n := needs[k]
		for face := RS; face <= WS; face++ {
			if n.Face != AnyFace && n.Face != face {
				continue
			}
			faces[k] = face
			q := p
			if k > 0 && faces[k-1] == face {
				q.Unturned++
			}
			at, waiting := waits[n.Yarn]
			next := map[uint8]Face{}
			for y, f := range waits {
				next[y] = f
			}
			next[n.Yarn] = other(face)
			if waiting {
				cut := q
				cut.Cuts++
				walk(k+1, cut, next)
			}
			if !waiting || at == face {
				if waiting {
					q.Longest = max(q.Longest, floats[k])
				}
				walk(k+1, q, next)
			}
		}
	}
	walk(0, Plan{}, map[uint8]Face{})
	return best
}

func TestBestIsAsGoodAsTryingEverything(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		needs := make([]Need, 1+rng.IntN(7))
		for k := range needs {
			needs[k] = Need{Yarn: uint8(rng.IntN(3)), Height: float64(1+rng.IntN(3)) / 2, Face: Face(rng.IntN(6))}
			if needs[k].Face > WS {
				needs[k].Face = AnyFace
			}
		}
		got, _ := Best(needs)
		want := exhaustive(needs)
		if got.Less(want) || want.Less(got) {
			t.Fatalf("%v: %d cuts, %g cm, %d unturned; trying everything gives %d, %g, %d",
				needs, got.Cuts, got.Longest, got.Unturned, want.Cuts, want.Longest, want.Unturned)
		}
		if j := Judge(needs, got.Faces); j.Cuts > got.Cuts {
			t.Fatalf("%v: the plan's faces cost %d cuts, not %d", needs, j.Cuts, got.Cuts)
		}
	}
}

func TestBestNeverCutsMore(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 100 {
		needs := make([]Need, 2+rng.IntN(30))
		faces := make([]Face, len(needs))
		for k := range needs {
			needs[k] = Need{Yarn: uint8(rng.IntN(4)), Height: .8}
			faces[k] = RS + Face(rng.IntN(2))
		}
		got, _ := Best(needs)
		if present := Judge(needs, faces); got.Cuts > present.Cuts {
			t.Fatalf("planned %d cuts, the present way has %d", got.Cuts, present.Cuts)
		}
	}
}

func BenchmarkBest(b *testing.B) {
	for _, rows := range []int{100, 400} {
		b.Run(fmt.Sprintf("rows=%d/yarns=6", rows), func(b *testing.B) {
			rng := rand.New(rand.NewPCG(5, 6))
			needs := make([]Need, rows)
			for k := range needs {
				needs[k] = Need{Yarn: uint8(rng.IntN(6)), Height: .8}
			}
			for b.Loop() {
				Best(needs)
			}
		})
	}
}
