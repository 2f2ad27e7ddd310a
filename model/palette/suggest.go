package palette

import (
	"cmp"
	"fmt"
	"image/color"
	"math"
	"slices"
	"strings"

	"github.com/lucasb-eyer/go-colorful"

	"strandway/model/colour"
)

// Rule is a way to choose colours that go together.
type Rule uint8

const (
	EqualSteps    Rule = iota // the yarns' own hues, in equal steps of lightness
	Complementary             // the kept yarn's hue and the one across from it
	Analogous                 // hues beside the kept yarn's
	Teaching                  // the nearest shades in which stitches read well on camera
)

var ruleNames = []string{"equal-steps", "complementary", "analogous", "teaching"}

// String is the rule's name on the command line.
func (r Rule) String() string { return ruleNames[r] }

// Rules are the rules by name.
func Rules() []string { return slices.Clone(ruleNames) }

// RuleNamed is the rule of a name.
func RuleNamed(name string) (Rule, error) {
	i := slices.Index(ruleNames, name)
	if i < 0 {
		return 0, fmt.Errorf("there is no rule %q; there is %s", name, strings.Join(ruleNames, ", "))
	}
	return Rule(i), nil
}

// Wish is what a suggestion must hold to.
type Wish struct {
	Rule   Rule
	Keep   int     // the yarn whose colour stays and whose hue the others follow; -1 for none
	Locked []bool  // by yarn: its colour stays; may be nil
	Stash  []Shade // choose among these yarns; nil for any colour
	Pairs  []Pair  // of yarns that touch, by their index among the colours: these come farthest apart
}

// Shade is one colour of a suggestion.
type Shade struct {
	Name   string // of the yarn of the stash, "Harbour Worsted, Slate"; "" for a colour no yarn is known for
	Colour color.NRGBA
}

// The range of CIELAB lightness over which yarns are spread. For teaching it is
// narrower: a camera loses stitches in the shadows of dark yarn and in the glare of white.
var ranges = map[Rule][2]float64{EqualSteps: {28, 90}, Complementary: {28, 90}, Analogous: {28, 90}, Teaching: {50, 90}}

// Suggest gives new colours for yarns: as many as there are, those kept and
// locked unchanged. The same wish always gives the same colours.
func Suggest(yarns []color.NRGBA, w Wish) ([]Shade, error) {
	if len(yarns) == 0 {
		return nil, fmt.Errorf("there is no yarn to suggest a colour for")
	}
	held := make([]bool, len(yarns))
	copy(held, w.Locked)
	base := 0
	if w.Keep >= 0 && w.Keep < len(yarns) {
		held[w.Keep], base = true, w.Keep
	}
	lightness := settle(spread(yarns, held, ranges[w.Rule]), held, w.Pairs)
	hue, _, _ := hcl(yarns[base])
	out := make([]Shade, len(yarns))
	place := 0 // among the yarns that take a hue from the rule
	for i, c := range yarns {
		out[i].Colour = c
		if held[i] {
			continue
		}
		h, chroma, _ := hcl(c)
		switch w.Rule {
		case Complementary:
			h, chroma = hue+180*float64((place+1)%2), max(chroma, .25)
		case Analogous:
			side := float64(place%2)*2 - 1
			h, chroma = hue+28*side*float64(place/2+1), max(chroma, .22)
		case Teaching:
			chroma = min(chroma, .55)
		}
		out[i].Colour = within(h, chroma, lightness[i]/100)
		place++
	}
	if w.Stash != nil {
		return fromStash(out, held, w.Stash)
	}
	return out, nil
}

// spread gives each yarn a lightness: in equal steps over a range, those held
// where they are, the others where they come as far from their neighbours as
// they can, in the order of lightness they have now.
func spread(yarns []color.NRGBA, held []bool, over [2]float64) []float64 {
	out := make([]float64, len(yarns))
	var free []int
	var fixed []float64
	for i, c := range yarns {
		out[i] = colour.Lightness(c)
		if held[i] {
			fixed = append(fixed, out[i])
		} else {
			free = append(free, i)
		}
	}
	slices.Sort(fixed)
	slices.SortStableFunc(free, func(a, b int) int { return cmp.Compare(out[a], out[b]) })
	rooms := roomsBetween(fixed, over)
	for range free {
		widest := 0
		for i := range rooms {
			if rooms[i].step(rooms[i].n+1) > rooms[widest].step(rooms[widest].n+1) {
				widest = i
			}
		}
		rooms[widest].n++
	}
	for _, r := range rooms {
		for k := range r.n {
			out[free[k]] = r.at(k)
		}
		free = free[r.n:]
	}
	return out
}

// settle exchanges lightnesses among the yarns that are not held until those
// that touch are as far apart as they can be. With the order they have now as
// good as another, it stays.
func settle(lightness []float64, held []bool, pairs []Pair) []float64 {
	best, least := lightness, nearest(lightness, pairs)
	for {
		var better []float64
		for i := range lightness {
			for j := i + 1; j < len(lightness); j++ {
				if held[i] || held[j] {
					continue
				}
				turned := slices.Clone(best)
				turned[i], turned[j] = turned[j], turned[i]
				if n := nearest(turned, pairs); n > least+.5 {
					better, least = turned, n
				}
			}
		}
		if better == nil {
			return best
		}
		best = better
	}
}

// nearest is how far apart the two touching yarns are that lie nearest in lightness.
func nearest(lightness []float64, pairs []Pair) float64 {
	least := 100.
	for _, p := range pairs {
		if int(p.B) < len(lightness) {
			least = min(least, math.Abs(lightness[p.A]-lightness[p.B]))
		}
	}
	return least
}

// room is a range of lightness in which n yarns are spread evenly. A yarn
// stands at an end that is open, and a step inside one that is taken.
type room struct {
	from, to  float64
	low, high bool // the end is open
	n         int
}

// roomsBetween divides a range at the places that are taken.
func roomsBetween(taken []float64, over [2]float64) []room {
	var out []room
	r := room{from: over[0], low: true}
	for _, l := range taken {
		r.to = max(l, r.from)
		out = append(out, r)
		r = room{from: r.to}
	}
	r.to, r.high = max(over[1], r.from), true
	return append(out, r)
}

// step is how far apart n yarns stand in the room.
func (r room) step(n int) float64 {
	steps := n + 1
	if r.low {
		steps--
	}
	if r.high {
		steps--
	}
	return (r.to - r.from) / max(float64(steps), .5) // alone in an open room a yarn has room on both sides
}

// at is the lightness of yarn k of the room's n.
func (r room) at(k int) float64 {
	switch {
	case r.low && r.high && r.n == 1:
		return (r.from + r.to) / 2
	case r.low:
		return r.from + r.step(r.n)*float64(k)
	}
	return r.from + r.step(r.n)*float64(k+1)
}

// fromStash takes for each colour the nearest yarn of the stash, none of them
// twice; where two want the same, the nearer has it.
func fromStash(wanted []Shade, held []bool, stash []Shade) ([]Shade, error) {
	free := 0
	for _, h := range held {
		if !h {
			free++
		}
	}
	if len(stash) < free {
		return nil, fmt.Errorf("%d yarns want a colour and the stash holds only %d: add yarns to it or lock more letters", free, len(stash))
	}
	type match struct {
		yarn, stash int
		far         float64
	}
	var matches []match
	for i := range wanted {
		for j := range stash {
			if !held[i] {
				matches = append(matches, match{i, j, colour.Difference(wanted[i].Colour, stash[j].Colour)})
			}
		}
	}
	slices.SortStableFunc(matches, func(a, b match) int { return cmp.Compare(a.far, b.far) })
	done, used := slices.Clone(held), make([]bool, len(stash))
	for _, m := range matches {
		if !done[m.yarn] && !used[m.stash] {
			wanted[m.yarn] = stash[m.stash]
			done[m.yarn], used[m.stash] = true, true
		}
	}
	return wanted, nil
}

func hcl(c color.NRGBA) (h, chroma, l float64) {
	return colorful.Color{R: float64(c.R) / 255, G: float64(c.G) / 255, B: float64(c.B) / 255}.Hcl()
}

// within is the colour of a hue and lightness with as much of the chroma as a screen can show.
func within(h, chroma, l float64) color.NRGBA {
	c := colorful.Hcl(math.Mod(h+720, 360), chroma, l)
	for !c.IsValid() && chroma > .004 {
		chroma *= .96
		c = colorful.Hcl(math.Mod(h+720, 360), chroma, l)
	}
	r, g, b := c.Clamped().RGB255()
	return color.NRGBA{R: r, G: g, B: b, A: 255}
}
