package cloth

// fullLight is the light on ground where no shadow falls.
const fullLight = 255

// Distances over which depth is compared, w: the neighbourhood whose mean depth
// tells how sunk a sample lies, and the step toward the light.
const (
	neighbourhood = .17
	towardX       = .10
	towardY       = .14
)

// shader darkens what lies deeper than its neighbourhood, and what lies deeper
// than what stands between it and the light. This makes the shadows where
// strands touch, the depth of holes and the valleys of ribs. It goes down the
// field line by line, so that its scratch stays small.
type shader struct {
	sums   []int32   // of the lines of the neighbourhood, by column
	lines  [][]int32 // running sums across, of the last 2r+1 lines
	blurs  [][]int16 // mean depths of the last lines, as far as the light reaches
	column []int32
}

func (s *shader) resize(w, lines, blurs int) {
	fit := func(n int) []int32 { return make([]int32, n) }
	if len(s.sums) != w || len(s.lines) != lines || len(s.blurs) != blurs {
		s.sums, s.lines, s.blurs = fit(w), make([][]int32, lines), make([][]int16, blurs)
		for i := range s.lines {
			s.lines[i] = fit(w)
		}
		for i := range s.blurs {
			s.blurs[i] = make([]int16, w)
		}
	}
	clear(s.sums)
}

// shade darkens the light of f; table is the depth of the ground, 1/64 w.
func (s *shader) shade(f *field, scale float64, table int16) {
	r := max(1, int(scale*neighbourhood))
	dx, dy := int(scale*towardX), int(scale*towardY)
	n := 2*r + 1
	s.resize(f.w, n, dy+1)
	area := int32(65536 / (n * n))

	// Lines above the field are taken to be like its first, those below like its last.
	s.across(f, s.lines[0], 0, r, table)
	for i := 1; i <= r; i++ {
		copy(s.lines[i], s.lines[0])
	}
	for y := range r {
		s.across(f, s.lines[r+1+y], min(y+1, f.h-1), r, table)
	}
	for _, line := range s.lines {
		for x, v := range line {
			s.sums[x] += v
		}
	}
	for y := range f.h {
		blur := s.blurs[y%(dy+1)]
		for x, sum := range s.sums {
			blur[x] = int16(int64(sum) * int64(area) >> 16)
		}
		lit := s.blurs[max(0, y-dy)%(dy+1)]
		darken(f, y, blur, lit, dx, table)

		oldest := s.lines[y%n]
		for x, v := range oldest {
			s.sums[x] -= v
		}
		s.across(f, oldest, min(y+r+1, f.h-1), r, table)
		for x, v := range oldest {
			s.sums[x] += v
		}
	}
}

// across writes the sums of 2r+1 depths round each sample of line y.
func (s *shader) across(f *field, out []int32, y, r int, table int16) {
	line := f.z[y*f.w : (y+1)*f.w]
	last := len(line) - 1
	var sum int32
	for x := -r; x <= r; x++ {
		sum += int32(max(table, line[min(max(x, 0), last)]))
	}
	for x := range line {
		out[x] = sum
		sum += int32(max(table, line[min(x+r+1, last)])) - int32(max(table, line[max(x-r, 0)]))
	}
}

// darken takes light from line y by its own mean depths and those toward the light.
func darken(f *field, y int, blur, lit []int16, dx int, table int16) {
	const strength, darkest = 3, 84
	z := f.z[y*f.w : (y+1)*f.w]
	lights := f.light[y*f.w : (y+1)*f.w]
	for x := range z {
		d := int32(max(table, z[x]))
		dark := strength * max(0, int32(blur[x])-d)
		dark += strength * max(0, int32(lit[max(0, x-dx)])-d)
		if dark == 0 {
			continue
		}
		if z[x] == zEmpty { // on the ground shadows are soft
			dark = dark * 2 / 5
		}
		lights[x] = uint8(int32(lights[x]) * max(darkest, 256-dark) >> 8)
	}
}
