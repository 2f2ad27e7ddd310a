package layout

import (
	"math"
	"testing"

	"strandway/model/fabric"
)

// A dc that closes a round of loops stands for three of its chains: it runs from
// the first stitch to the middle of the loop, where the next round begins.
func TestHalfJoinClosesItsLoop(t *testing.T) {
	p := Arrange(swatchOf(t, `
Ch 6, join with sl st to form a ring.
Rnd 1: Ch 1, 12 sc in ring, join with sl st to first sc. (12 sc)
Rnd 2: Ch 1, sc in first sc, *ch 5, skip next sc, sc in next sc; rep from * around to last sc, ch 2, skip last sc, dc in first sc to join.
Rnd 3: Ch 1, sc in same sp, *ch 5, sc in next ch-5 sp; rep from * around, ch 2, dc in first sc to join.`, 1), Drawn())
	joins := 0
	for id := range p.Poses {
		q, s := &p.Poses[id], &p.Fabric.Stitches[id]
		if !s.Has(fabric.Join) || p.Fabric.Kind(int32(id)).Name != "dc" {
			continue
		}
		joins++
		if !q.Placed || q.NLegs != 1 {
			t.Fatalf("join %d has no place of its own", id)
		}
		first := p.Poses[p.Fabric.Of(int32(id))[0].At].Top
		if foot := p.LegsOf(int32(id))[0].Foot; foot != first {
			t.Errorf("join %d stands at %v, the first stitch ends at %v", id, foot, first)
		}
		if h := q.Top.Sub(first).Len(); h < 1.5 || h > 3 {
			t.Errorf("join %d is %.2f u long, want about that of three chains", id, h)
		}
	}
	if joins != 2 {
		t.Errorf("%d half-joins, want 2", joins)
	}
}

func TestHalfJoinedSquareHasFourCorners(t *testing.T) {
	p := Arrange(swatchOf(t, `
Ch 4, join with sl st to form ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, (ch 3, 3 dc in ring) 3 times, ch 1, hdc in top of beg ch-3 to join.
Rnd 2: Ch 3 (counts as dc), dc in same sp, *dc in next 3 dc, (2 dc, ch 3, 2 dc) in next ch-3 sp; rep from * 2 more times, dc in next 3 dc, 2 dc in first sp, ch 1, hdc in top of beg ch-3 to join.`, 1), Drawn())
	if p.Manner != Polygon || p.Corners != 4 {
		t.Errorf("laid out in manner %d with %d corners, want a square", p.Manner, p.Corners)
	}
	if w, h := p.Box.Width(), p.Box.Height(); math.Abs(w-h) > .6 {
		t.Errorf("%.1f wide, %.1f high", w, h)
	}
}
