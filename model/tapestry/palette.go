package tapestry

import (
	"cmp"
	"image/color"
	"slices"

	"github.com/lucasb-eyer/go-colorful"
)

// lab is a colour in OkLab, where distance is how different colours look.
type lab [3]float64

func labFrom(c colorful.Color) lab {
	l, a, b := c.OkLab()
	return lab{l, a, b}
}

func labOf(c color.NRGBA) lab {
	return labFrom(colorful.Color{R: float64(c.R) / 255, G: float64(c.G) / 255, B: float64(c.B) / 255})
}

func (c lab) colour() color.NRGBA {
	r, g, b := colorful.OkLab(c[0], c[1], c[2]).Clamped().RGB255()
	return color.NRGBA{R: r, G: g, B: b, A: 255}
}

// apart is the square of the distance.
func (c lab) apart(d lab) float64 {
	return (c[0]-d[0])*(c[0]-d[0]) + (c[1]-d[1])*(c[1]-d[1]) + (c[2]-d[2])*(c[2]-d[2])
}

func (c lab) plus(d lab, k float64) lab { return lab{c[0] + k*d[0], c[1] + k*d[1], c[2] + k*d[2]} }

func nearest(c lab, palette []lab) uint8 {
	best := 0
	for i := range palette {
		if c.apart(palette[i]) < c.apart(palette[best]) {
			best = i
		}
	}
	return uint8(best)
}

const (
	mostRounds = 60
	// alike is how near two colours can be and still count as two, squared: just visible side by side.
	alike = .02 * .02
)

// mainColours finds at most k colours that stand for all cells, the most used first:
// k-means, begun with the colours that lie farthest from one another, so that the same
// picture always gives the same yarns. Cells with an edge in them count little, for their
// mean is a colour that the picture does not have.
func mainColours(cells []sample, k int) []lab {
	centres := farthest(cells, k)
	owner := make([]uint8, len(cells))
	var count []float64
	for range mostRounds {
		moved := false
		sums := make([]lab, len(centres))
		count = make([]float64, len(centres))
		for i, c := range cells {
			n := nearest(c.mean, centres)
			moved = moved || n != owner[i]
			owner[i] = n
			sums[n] = sums[n].plus(c.mean, c.even)
			count[n] += c.even
		}
		for i := range centres {
			if count[i] > 0 {
				centres[i] = lab{}.plus(sums[i], 1/count[i])
			}
		}
		if !moved {
			break
		}
	}
	order := make([]int, len(centres))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(count[b], count[a]) })
	var out []lab
	for _, i := range order {
		if count[i] > 0 {
			out = append(out, centres[i])
		}
	}
	return out
}

// farthest picks the cell nearest to the mean, then each time the cell that is farthest from all
// picked and even, while there is one that looks different.
func farthest(cells []sample, k int) []lab {
	var mean lab
	for _, c := range cells {
		mean = mean.plus(c.mean, 1/float64(len(cells)))
	}
	first := cells[0].mean
	for _, c := range cells {
		if c.mean.apart(mean) < first.apart(mean) {
			first = c.mean
		}
	}
	centres := []lab{first}
	gap := make([]float64, len(cells))
	for i, c := range cells {
		gap[i] = c.even * c.mean.apart(first)
	}
	for len(centres) < k {
		far := 0
		for i := range gap {
			if gap[i] > gap[far] {
				far = i
			}
		}
		if gap[far] < alike {
			break
		}
		centres = append(centres, cells[far].mean)
		for i, c := range cells {
			gap[i] = min(gap[i], c.even*c.mean.apart(cells[far].mean))
		}
	}
	return centres
}

// dither hands what each cell's yarn misses on to the cells that come next, after Floyd and Steinberg.
func dither(g *Grid, samples []sample, palette []lab) {
	cells := make([]lab, len(samples))
	for i, s := range samples {
		cells[i] = s.mean
	}
	for row := range g.Height {
		for col := range g.Width {
			at := row*g.Width + col
			g.Cells[at] = nearest(cells[at], palette)
			miss := cells[at].plus(palette[g.Cells[at]], -1)
			for _, to := range []struct {
				column, row int
				share       float64
			}{{1, 0, 7. / 16}, {-1, 1, 3. / 16}, {0, 1, 5. / 16}, {1, 1, 1. / 16}} {
				if c := (Cell{col + to.column, row + to.row}); g.Has(c) {
					next := c.Row*g.Width + c.Column
					cells[next] = cells[next].plus(miss, to.share)
				}
			}
		}
	}
}
