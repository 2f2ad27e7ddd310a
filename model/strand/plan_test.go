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
		needs = append(needs, Need{Yarns: []Use{{Yarn: uint8(l - 'A')}}, Last: uint8(l - 'A'), Height: 1})
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

func TestBestPlansRoundRounds(t *testing.T) {
	needs := rowsIn("ABABA")
	needs[2].Around, needs[2].Face = true, RS // a round in A between the rows
	needs[1].Face, needs[3].Face = RS, RS
	got, _ := Best(needs)
	// B ends Row 2 at the left edge and is wanted at the right in Row 4; A can be taken up anywhere after its round.
	if got.Cuts != 1 || got.Unturned != 0 || got.Longest != 1 {
		t.Errorf("%+v, want B cut once and every row turned", got)
	}
}

func TestBestKeepsTurns(t *testing.T) {
	needs := rowsIn("AB")
	needs[1].Turns, needs[0].Face, needs[1].Face = true, RS, RS
	if got, ok := Best(needs); ok {
		t.Errorf("%+v, though two rows cannot both show the right side with a turn between", got)
	}
}

// exhaustive weighs every choice of faces, and for every yarn that could be carried whether it is cut.
func exhaustive(needs []Need) (best Plan, ok bool) {
	best.Cuts = 1 << 30
	faces := make([]Face, len(needs))
	type yarn struct {
		top  float64
		edge Face // whose rows begin where it waits; AnyFace in the fabric
	}
	var walk func(k int, height float64, p Plan, at map[uint8]yarn)
	walk = func(k int, height float64, p Plan, at map[uint8]yarn) {
		if k == len(needs) {
			if p.Less(best) {
				p.Faces = append([]Face{}, faces...)
				best, ok = p, true
			}
			return
		}
		n := needs[k]
		for face := RS; face <= WS; face++ {
			if n.Face != AnyFace && n.Face != face || n.Turns && k > 0 && faces[k-1] == face {
				continue
			}
			faces[k] = face
			q := p
			if k > 0 && faces[k-1] == face && !n.Around && !needs[k-1].Around {
				q.Unturned++
			}
			next := map[uint8]yarn{}
			for y, was := range at {
				next[y] = was
			}
			for i, u := range n.Yarns {
				edge := AnyFace
				if u.Yarn == n.Last && !n.Around {
					edge = other(face)
				}
				next[u.Yarn] = yarn{height + n.Height, edge}
				if _, met := at[u.Yarn]; met && i > 0 && u.Joined {
					q.Cuts++
				}
			}
			first := n.Yarns[0]
			was, met := at[first.Yarn]
			carried := q
			carried.Longest = max(carried.Longest, height-was.top)
			cut := q
			cut.Cuts++
			switch anywhere := n.Around || n.Inset || was.edge == AnyFace; {
			case !met:
				walk(k+1, height+n.Height, q, next)
			case anywhere && first.Joined:
				walk(k+1, height+n.Height, cut, next)
			case anywhere:
				walk(k+1, height+n.Height, carried, next)
			case was.edge == face:
				walk(k+1, height+n.Height, carried, next)
				fallthrough
			default:
				walk(k+1, height+n.Height, cut, next)
			}
		}
	}
	walk(0, 0, Plan{}, map[uint8]yarn{})
	return best, ok
}

// anyNeeds makes rows and rounds at random, in one yarn or several.
func anyNeeds(rng *rand.Rand, rows, yarns int) []Need {
	needs := make([]Need, rows)
	for k := range needs {
		n := Need{Height: float64(1+rng.IntN(3)) / 2, Face: Face(rng.IntN(6)), Turns: rng.IntN(6) == 0, Around: rng.IntN(6) == 0, Inset: rng.IntN(8) == 0}
		if n.Face > WS {
			n.Face = AnyFace
		}
		for _, y := range rng.Perm(yarns)[:1+rng.IntN(3)/2] {
			n.Yarns = append(n.Yarns, Use{uint8(y), rng.IntN(3) == 0})
		}
		n.Last = n.Yarns[rng.IntN(len(n.Yarns))].Yarn
		needs[k] = n
	}
	return needs
}

func TestBestIsAsGoodAsTryingEverything(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	planned := 0
	for range 600 {
		needs := anyNeeds(rng, 1+rng.IntN(7), 3)
		got, ok := Best(needs)
		want, can := exhaustive(needs)
		if ok != can {
			t.Fatalf("%v: planned %v, trying everything %v", needs, ok, can)
		}
		if !ok {
			continue
		}
		planned++
		if got.Less(want) || want.Less(got) {
			t.Fatalf("%v: %d cuts, %g cm, %d unturned; trying everything gives %d, %g, %d",
				needs, got.Cuts, got.Longest, got.Unturned, want.Cuts, want.Longest, want.Unturned)
		}
		if j := Judge(needs, got.Faces); j.Cuts > got.Cuts {
			t.Fatalf("%v: the plan's faces cost %d cuts, not %d", needs, j.Cuts, got.Cuts)
		}
	}
	if planned < 300 {
		t.Errorf("only %d of the cases could be planned", planned)
	}
}

func TestBestNeverCutsMore(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		needs := anyNeeds(rng, 2+rng.IntN(30), 4)
		faces := make([]Face, len(needs))
		for k := range needs { // a way that keeps what the rows ask
			faces[k] = RS + Face(rng.IntN(2))
			if needs[k].Face != AnyFace {
				faces[k] = needs[k].Face
			}
			if k > 0 && faces[k] == faces[k-1] {
				needs[k].Turns = false
			}
		}
		got, ok := Best(needs)
		if present := Judge(needs, faces); !ok || got.Cuts > present.Cuts {
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
				yarn := uint8(rng.IntN(6))
				needs[k] = Need{Yarns: []Use{{Yarn: yarn}}, Last: yarn, Height: .8}
			}
			for b.Loop() {
				Best(needs)
			}
		})
	}
}
