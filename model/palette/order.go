package palette

import "slices"

// Order says which shade each yarn takes: yarn i takes the one that yarn o[i] has.
type Order []int

// AsTheyAre is the order that changes nothing of n yarns.
func AsTheyAre(n int) Order {
	o := make(Order, n)
	for i := range o {
		o[i] = i
	}
	return o
}

// Swapped is the order in which two of n yarns change shades.
func Swapped(n, a, b int) Order {
	o := AsTheyAre(n)
	o[a], o[b] = b, a
	return o
}

// Rotated is the order in which each yarn that is not locked takes the shade of
// the next one, and the last that of the first.
func Rotated(locked []bool) Order {
	o := AsTheyAre(len(locked))
	free := unlocked(locked)
	for k, i := range free {
		o[i] = free[(k+1)%len(free)]
	}
	return o
}

// Orders are the orders that leave locked yarns as they are, at most so many,
// each once. The first changes nothing, and those that come soon change late yarns.
func Orders(locked []bool, most int) []Order {
	free := unlocked(locked)
	var out []Order
	now := slices.Clone(free)
	for more := true; more && len(out) < most; more = next(now) {
		o := AsTheyAre(len(locked))
		for k, i := range free {
			o[i] = now[k]
		}
		out = append(out, o)
	}
	return out
}

// next makes the next permutation in the order of a dictionary, and reports
// whether there is one.
func next(p []int) bool {
	i := len(p) - 2
	for i >= 0 && p[i] > p[i+1] {
		i--
	}
	if i < 0 {
		return false
	}
	j := len(p) - 1
	for p[j] < p[i] {
		j--
	}
	p[i], p[j] = p[j], p[i]
	slices.Reverse(p[i+1:])
	return true
}

func unlocked(locked []bool) []int {
	var free []int
	for i, l := range locked {
		if !l {
			free = append(free, i)
		}
	}
	return free
}

// InOrder gives what the yarns have in another order.
func InOrder[T any](have []T, o Order) []T {
	out := make([]T, len(have))
	for i := range have {
		out[i] = have[o[i]]
	}
	return out
}
