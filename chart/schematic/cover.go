package schematic

import (
	"math"

	"strandway/chart/geom"
)

// cover is a grid of cells over the fabric that are covered or not.
type cover struct {
	origin        geom.Point // of cell 0, 0
	cell          float64    // u
	width, height int
	on            []bool
}

// newCover is an empty grid with room about the box; nil where the box is empty.
func newCover(b geom.Box, gap, fine float64) *cover {
	if b.IsEmpty() {
		return nil
	}
	const across = 280 // cells: a line's width of a printed page
	m := &cover{cell: max(fine, max(b.Width(), b.Height())/across)}
	room := gap + 2*m.cell
	b = b.Grow(room)
	m.origin = b.Min
	m.width, m.height = int(b.Width()/m.cell)+1, int(b.Height()/m.cell)+1
	m.on = make([]bool, m.width*m.height)
	return m
}

// mark covers half a stitch to every side of a point: a square, or a disc where edges are round.
func (m *cover) mark(at geom.Point, round bool) {
	q := at.Sub(m.origin).Mul(1 / m.cell)
	half := .5 / m.cell
	for y := max(0, int(math.Round(q.Y-half))); y < min(m.height, int(math.Round(q.Y+half))); y++ {
		for x := max(0, int(math.Round(q.X-half))); x < min(m.width, int(math.Round(q.X+half))); x++ {
			if !round || math.Hypot(float64(x)+.5-q.X, float64(y)+.5-q.Y) <= half {
				m.on[y*m.width+x] = true
			}
		}
	}
}

// field tells of each cell how far it lies inside the closed cover, in cells; less than 0 is outside.
type field struct {
	width, height int
	inside        []float64
}

// closed closes openings no wider than twice r cells: it grows the cover by r on
// all sides and takes as much away again.
func (m *cover) closed(r float64) *field {
	far := distances(m.width, m.height, m.on)
	for i, d := range far {
		m.on[i] = d > r // the outside of what has grown
	}
	f := &field{m.width, m.height, distances(m.width, m.height, m.on)}
	for i := range f.inside {
		f.inside[i] -= r + .5 // a cell's own edge lies half a cell from its middle
	}
	return f
}

// distances gives for each cell how far the nearest cell that is on lies, in
// cells: down each column, and then along each row over the lower envelope of
// the parabolas that the columns stand for.
func distances(width, height int, on []bool) []float64 {
	const none = 1e12
	squares := make([]float64, width*height)
	for x := range width {
		last := -1
		for y := range height {
			if on[y*width+x] {
				last = y
			}
			squares[y*width+x] = none
			if last >= 0 {
				squares[y*width+x] = float64((y - last) * (y - last))
			}
		}
		last = -1
		for y := height - 1; y >= 0; y-- {
			if on[y*width+x] {
				last = y
			}
			if last >= 0 {
				squares[y*width+x] = min(squares[y*width+x], float64((last-y)*(last-y)))
			}
		}
	}
	out := make([]float64, width*height)
	at, from := make([]int, width), make([]float64, width+1) // the parabolas of the envelope, and where each begins
	for y := range height {
		row := squares[y*width : (y+1)*width]
		n := 0
		at[0], from[0], from[1] = 0, -none, none
		for x := 1; x < width; x++ {
			meets := func(k int) float64 {
				return (row[x] + float64(x*x) - row[at[k]] - float64(at[k]*at[k])) / float64(2*(x-at[k]))
			}
			s := meets(n)
			for n > 0 && s <= from[n] {
				n--
				s = meets(n)
			}
			n++
			at[n], from[n], from[n+1] = x, s, none
		}
		k := 0
		for x := range width {
			for from[k+1] < float64(x) {
				k++
			}
			out[y*width+x] = math.Sqrt(row[at[k]] + float64((x-at[k])*(x-at[k])))
		}
	}
	return out
}

// largest is the longest ring along which the field is 0, between the middles of
// cells, keeping the inside on the left.
func (f *field) largest() []geom.Point {
	value := func(x, y int) float64 {
		if x < 0 || y < 0 || x >= f.width || y >= f.height {
			return -1
		}
		return f.inside[y*f.width+x]
	}
	// A square of four cells is left through the side where the edge goes out; sides are
	// numbered lower, right, upper, left.
	corner := [4][2]int{{0, 0}, {1, 0}, {1, 1}, {0, 1}}
	step := [4][2]int{{0, -1}, {1, 0}, {0, 1}, {-1, 0}}
	crossing := func(x, y, side int) (geom.Point, bool) {
		a, b := corner[side], corner[(side+1)%4]
		va, vb := value(x+a[0], y+a[1]), value(x+b[0], y+b[1])
		if va > 0 || vb <= 0 { // the inside must lie to the left on the way out
			return geom.Point{}, false
		}
		t := va / (va - vb)
		return geom.Point{X: float64(x) + .5 + float64(a[0]) + t*float64(b[0]-a[0]), Y: float64(y) + .5 + float64(a[1]) + t*float64(b[1]-a[1])}, true
	}
	var best []geom.Point
	seen := map[[2]int]bool{} // squares left through their right side
	for y := -1; y < f.height; y++ {
		for x := -1; x < f.width; x++ {
			if _, out := crossing(x, y, 1); !out || seen[[2]int{x, y}] {
				continue
			}
			var ring []geom.Point
			px, py, side := x, y, 1
			for {
				p, _ := crossing(px, py, side)
				if side == 1 {
					if seen[[2]int{px, py}] {
						break
					}
					seen[[2]int{px, py}] = true
				}
				ring = append(ring, p)
				px, py = px+step[side][0], py+step[side][1]
				came := (side + 2) % 4
				for k := 1; k < 4; k++ { // the sharpest turn to the right first keeps to one part
					side = (came + k) % 4
					if _, out := crossing(px, py, side); out {
						break
					}
				}
			}
			if math.Abs(area(ring)) > math.Abs(area(best)) {
				best = ring
			}
		}
	}
	return best
}
