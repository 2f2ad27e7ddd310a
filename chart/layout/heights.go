package layout

import (
	"math"

	"strandway/model/stitch"
)

// Heights says how tall stitches stand, in u, and how the fabric gives way around them.
// There are two: those a chart is drawn with, and those measured on cloth.
type Heights struct {
	measured bool

	byChains []float64 // height of a stitch of 0, 1, 2 ... chains; linear in between
	lumpRow  float64   // height of a sc row that holds bobbles and popcorns
	cableRow float64   // height of a sc row that holds posts crossing each other; 0 for that of a sc
	picot    float64   // more height of a row above one with picots, which stand between the two
	seam     float64   // more room where a round ends and begins, for its chain and join

	space, spaceLow float64 // height lost by a tall stitch, by a sc, that closes round a space
	post            float64 // share of its height that a stitch keeps round a post
	arch            float64 // how far the middle of a chain run stands above its ends, at the start
	raised, sunk    float64 // width of a column of posts that stand out, that fall back; 0 for 1 u
	cabled          float64 // of a column whose posts cross those of others

	ringChain float64 // radius of the ring for each chain in it
	ringLeast float64 // least radius of the ring
	feet      float64 // least radius at which feet stand in the ring
}

// Drawn is the heights a chart is drawn with: taller than life, so that every bar has room.
func Drawn() Heights {
	return Heights{
		byChains:  []float64{.72, 1, 1.55, 2.1, 2.9, 3.6, 4.3},
		lumpRow:   1.5,
		cableRow:  1.9,
		picot:     .65,
		seam:      .3,
		post:      1,
		arch:      .5,
		ringChain: .127, // .8 u of ring for each oval
		ringLeast: .42,
		feet:      .75,
	}
}

// Measured is the heights of worked cloth, in widths of a single crochet.
func Measured() Heights {
	return Heights{
		measured:  true,
		byChains:  []float64{.35, .84, 1.35, 1.9, 2.7, 3.4, 4.1},
		lumpRow:   .84,
		space:     .26,
		spaceLow:  .12,
		post:      .79,
		arch:      -.12,
		raised:    .98,
		cabled:    .60,
		sunk:      .34,
		ringChain: .09,
		ringLeast: .2,
		feet:      .42,
	}
}

// chains is the height of a stitch as tall as n chains.
func (h Heights) chains(n float64) float64 {
	last := len(h.byChains) - 1
	i := min(max(int(math.Floor(n)), 0), last-1)
	return h.byChains[i] + (max(n, 0)-float64(i))*(h.byChains[i+1]-h.byChains[i])
}

// of is the height of a kind standing in an ordinary place.
func (h Heights) of(k *stitch.Kind) float64 {
	if k == nil {
		return h.chains(1)
	}
	if k.Plain != nil && k.Chains == 0 {
		k = k.Plain
	}
	return h.chains(k.Chains)
}

// ring gives the radius of a ring of n chains and the radius at which feet stand in it.
func (h Heights) ring(n int) (radius, feet float64) {
	radius = max(h.ringLeast, h.ringChain*float64(n))
	return radius, max(h.feet, radius+.33)
}
