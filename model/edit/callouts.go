package edit

import (
	"slices"

	"strandway/model/pattern"
)

// AddCallout is p with one more callout.
func AddCallout(p *pattern.Pattern, c pattern.Callout) *pattern.Pattern {
	q := *p
	q.Callouts = append(slices.Clone(p.Callouts), c)
	return &q
}

// SetCallout is p with another callout in the place of one of its own.
func SetCallout(p *pattern.Pattern, i int, c pattern.Callout) *pattern.Pattern {
	q := *p
	q.Callouts = slices.Clone(p.Callouts)
	q.Callouts[i] = c
	return &q
}

// TakeOutCallout is p without one of its callouts.
func TakeOutCallout(p *pattern.Pattern, i int) *pattern.Pattern {
	q := *p
	q.Callouts = slices.Delete(slices.Clone(p.Callouts), i, i+1)
	return &q
}

// CalloutsOn gives the indices of the callouts beside the chart of a piece, in the order in
// which its chart has them.
func CalloutsOn(p *pattern.Pattern, piece int) []int {
	var out []int
	for i := range p.Callouts {
		if p.Callouts[i].On(p, piece) {
			out = append(out, i)
		}
	}
	return out
}
