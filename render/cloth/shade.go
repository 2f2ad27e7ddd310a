package cloth

import "math"

// fullLight is the light on ground where no shadow falls.
const fullLight = 255

// Distances over which depth is compared, w: the neighbourhood whose mean depth
// tells how sunk a sample lies, and the step toward the light.
const (
	neighbourhood = .17
	towardX       = .10
	towardY       = .14
)

// shadeReach is how far round a sample its shade is decided, w.
const shadeReach = neighbourhood + towardY + .02

// shader darkens what lies deeper than its neighbourhood, and what lies deeper
// than what stands between it and the light. This makes the shadows where
// strands touch, the depth of holes and the valleys of ribs.
//
// Mean depths are smooth, so they are taken over cells of 2 by 2 samples. The
// shader goes down the field line by line of cells and keeps only the lines it
// looks at.
type shader struct {
	depth []int32   // of one line of cells
	lines [][]int32 // running sums across, of the last 2r+1 lines
	sums  []int32   // of those lines, by column
	means [][]int32 // mean depths of the last lines, as far as the light reaches
}

func (s *shader) resize(w, lines, means int) {
	if len(s.sums) == w && len(s.lines) == lines && len(s.means) == means {
		clear(s.sums)
		return
	}
	s.depth, s.sums = make([]int32, w), make([]int32, w)
	s.lines, s.means = make([][]int32, lines), make([][]int32, means)
	for i := range s.lines {
		s.lines[i] = make([]int32, w)
	}
	for i := range s.means {
		s.means[i] = make([]int32, w)
	}
}

// shade darkens the light of f, whose sides are even; table is the depth of the
// ground, 1/64 w.
func (s *shader) shade(f *field, scale float64, table int16) {
	cells := scale / 2 // per w
	r := max(1, int(cells*neighbourhood))
	dx, dy := int(math.Round(cells*towardX)), int(math.Round(cells*towardY))
	n := 2*r + 1
	w, h := f.w/2, f.h/2
	s.resize(w, n, dy+1)
	share := int64(1<<16) / int64(n*n*4)

	// Lines above the field are taken to be like its first, those below like its last.
	for i := range n {
		s.across(f, s.lines[i], max(0, i-r), r, table)
		for x, v := range s.lines[i] {
			s.sums[x] += v
		}
	}
	for y := range h {
		mean := s.means[y%(dy+1)]
		for x, sum := range s.sums {
			mean[x] = int32(int64(sum) * share >> 16)
		}
		lit := s.means[max(0, y-dy)%(dy+1)]
		f.darken(2*y, mean, lit, dx, table)
		f.darken(2*y+1, mean, lit, dx, table)

		oldest := s.lines[y%n]
		for x, v := range oldest {
			s.sums[x] -= v
		}
		s.across(f, oldest, y+r+1, r, table)
		for x, v := range oldest {
			s.sums[x] += v
		}
	}
}

// across writes the sums of the depths in 2r+1 cells round each cell of line y.
func (s *shader) across(f *field, out []int32, y, r int, table int16) {
	y = min(y, f.h/2-1)
	upper, lower := f.z[2*y*f.w:(2*y+1)*f.w], f.z[(2*y+1)*f.w:(2*y+2)*f.w]
	depth := s.depth
	for x := range depth {
		a, b := upper[2*x:2*x+2:2*x+2], lower[2*x:2*x+2:2*x+2]
		depth[x] = int32(max(table, a[0])) + int32(max(table, a[1])) + int32(max(table, b[0])) + int32(max(table, b[1]))
	}
	last := len(depth) - 1
	var sum int32
	for x := -r; x <= r; x++ {
		sum += depth[min(max(x, 0), last)]
	}
	for x := range out {
		out[x] = sum
		sum += depth[min(x+r+1, last)] - depth[max(x-r, 0)]
	}
}

// darken takes light from line y by the mean depths of its cells and those
// toward the light.
func (f *field) darken(y int, mean, lit []int32, dx int, table int16) {
	const strength, darkest, softest = 3, 84, 130
	z := f.z[y*f.w : (y+1)*f.w]
	lights := f.light[y*f.w:][:len(z)]
	for c, m := range mean {
		l := lit[max(0, c-dx)]
		for x := 2 * c; x < 2*c+2; x++ {
			d := int32(max(table, z[x]))
			dark := strength * (max(0, m-d) + max(0, l-d))
			if z[x] == zEmpty { // on the ground shadows are soft, even below a tall body, and fall from the light
				dark = max(0, m-d)*2/5 + max(0, l-d)*7/5
				dark = dark * softest / (dark + softest)
			}
			lights[x] = uint8(int32(lights[x]) * max(darkest, 256-dark) >> 8)
		}
	}
}
