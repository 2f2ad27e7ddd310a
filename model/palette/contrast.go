package palette

import (
	"cmp"
	"image/color"
	"slices"

	"strandway/model/colour"
)

// Contrast is how well two yarns that touch can be told apart.
type Contrast struct {
	Pair
	Seen    []Apart         // by vision, in the order of [colour.Visions]
	Merging []colour.Vision // in which their stitches run into one another
}

// Contrasts compares the pairs of yarns that touch, by their index among the colours.
func Contrasts(colours []color.NRGBA, pairs []Pair) []Contrast {
	var out []Contrast
	for _, p := range pairs {
		if int(p.B) >= len(colours) {
			continue
		}
		c := Contrast{Pair: p, Merging: Merging(colours[p.A], colours[p.B])}
		for _, v := range colour.Visions() {
			c.Seen = append(c.Seen, Compare(colours[p.A], colours[p.B], v))
		}
		out = append(out, c)
	}
	return out
}

// On camera, yarns that touch should be about three times as far apart as what
// merges to the eye, and none so dark that its stitches are lost in their own shadow.
const (
	CameraLightness = 20 // CIELAB L* between two yarns that touch
	CameraDarkest   = 40 // CIELAB L* of a yarn
)

// Filmed is what hinders stitches from being told apart on camera.
type Filmed struct {
	Near []Contrast // pairs too near in lightness, the nearest first
	Dark []int      // yarns too dark, by their index among the colours
}

// Reads reports whether nothing hinders.
func (f Filmed) Reads() bool { return len(f.Near)+len(f.Dark) == 0 }

// OnCamera looks for what hinders stitches from being told apart on camera.
func OnCamera(colours []color.NRGBA, pairs []Pair) Filmed {
	var f Filmed
	for _, c := range Contrasts(colours, pairs) {
		if c.Seen[colour.Full].Lightness < CameraLightness-.5 { // as it is said, in whole numbers
			f.Near = append(f.Near, c)
		}
	}
	slices.SortStableFunc(f.Near, func(a, b Contrast) int {
		return cmp.Compare(a.Seen[colour.Full].Lightness, b.Seen[colour.Full].Lightness)
	})
	for i, c := range colours {
		if colour.Lightness(c) < CameraDarkest {
			f.Dark = append(f.Dark, i)
		}
	}
	return f
}
