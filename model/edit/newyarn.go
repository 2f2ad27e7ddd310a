package edit

import (
	"math"
	"slices"

	"strandway/model/colour"
	"strandway/model/pattern"
)

// fresh are the shades that a new yarn may begin with.
var fresh = []pattern.Shade{
	{Shade: "Ember", Colour: "#c2612f"}, {Shade: "Shell", Colour: "#e6dcc6"}, {Shade: "Gorse", Colour: "#c9962f"},
	{Shade: "Deep Water", Colour: "#27405c"}, {Shade: "Thrift", Colour: "#c67d96"}, {Shade: "Marsh", Colour: "#4a5734"},
}

// NextYarn is the letter that the next yarn of a pattern gets.
func NextYarn(p *pattern.Pattern) string {
	letter := byte('A')
	for letter < 'Z' && slices.ContainsFunc(p.Yarns, func(y pattern.Yarn) bool { return y.Letter == string(letter) }) {
		letter++
	}
	return string(letter)
}

// AddYarn is p with one more yarn under a letter: like its last one, in the shade that stands farthest from all it has.
func AddYarn(p *pattern.Pattern, letter string) *pattern.Pattern {
	yarn := pattern.Yarn{Name: "Harbour Worsted", Weight: 4, Grams: 100, Metres: 200}
	if n := len(p.Yarns); n > 0 {
		yarn = p.Yarns[n-1]
	}
	best, far := fresh[0], -1.0
	for _, f := range fresh {
		if near := nearest(p, f.Colour); near > far {
			best, far = f, near
		}
	}
	yarn.Letter, yarn.Shade, yarn.Colour = letter, best.Shade, best.Colour
	q := *p
	q.Yarns = append(slices.Clone(p.Yarns), yarn)
	return &q
}

// nearest is how far a colour is from the nearest one among the yarns of a pattern.
func nearest(p *pattern.Pattern, hex string) float64 {
	near := math.Inf(1)
	c, err := colour.Parse(hex)
	if err != nil {
		return -1
	}
	for _, y := range p.Yarns {
		if other, err := colour.Parse(y.Colour); err == nil {
			near = min(near, colour.Difference(c, other))
		}
	}
	return near
}
