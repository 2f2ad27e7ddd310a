package palette

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"image"
	"image/color"
	_ "image/jpeg" // photographs
	_ "image/png"
	"io"
	"math"
	"slices"

	"github.com/lucasb-eyer/go-colorful"
)

// Found is a colour in a photograph.
type Found struct {
	Colour color.NRGBA
	Share  float64 // of the yarn in the picture, 0 to 1
	Along  float64 // where it lies on the mean, 0 to 1 along the picture's longer side, from the left or top
}

// Photograph reads a PNG or JPEG picture.
func Photograph(r io.Reader) (image.Image, error) {
	const most = 100e6 // pixels
	var head bytes.Buffer
	config, _, err := image.DecodeConfig(io.TeeReader(r, &head))
	switch {
	case errors.Is(err, image.ErrFormat):
		return nil, errors.New("this is no PNG or JPEG picture: save the photograph as one of these")
	case err != nil:
		return nil, fmt.Errorf("the picture is damaged: %w", err)
	case config.Width == 0 || config.Height == 0:
		return nil, errors.New("the picture is empty")
	case float64(config.Width)*float64(config.Height) > most:
		return nil, fmt.Errorf("the picture has %d by %d pixels, which is too large: make it smaller", config.Width, config.Height)
	}
	img, _, err := image.Decode(io.MultiReader(&head, r))
	if err != nil {
		return nil, fmt.Errorf("the picture is damaged: %w", err)
	}
	return img, nil
}

// Colours finds the n colours of the yarn in a photograph of a ball or swatch,
// the one with the largest share first. Shadows between strands and the gleam on
// them count little, so that the colours are those of the lit yarn. The middle
// of the picture is taken, where the yarn is.
func Colours(img image.Image, n int) ([]Found, error) {
	samples := take(img)
	if len(samples) < 16 {
		return nil, errors.New("the picture shows nothing to take a colour from: photograph the yarn in daylight, filling the middle")
	}
	n = max(1, min(n, 16))
	groups := cluster(samples, n)
	out := make([]Found, 0, n)
	for _, g := range groups {
		out = append(out, Found{g.mean.rgb(), g.weight, g.along})
	}
	total := 0.
	for _, f := range out {
		total += f.Share
	}
	for i := range out {
		out[i].Share /= total
	}
	slices.SortStableFunc(out, func(a, b Found) int { return cmp.Compare(b.Share, a.Share) })
	return out, nil
}

// Sequence gives the colours of a variegated or self-striping yarn in the order
// in which they follow one another along the longer side of a photograph.
func Sequence(img image.Image, n int) ([]color.NRGBA, error) {
	found, err := Colours(img, n)
	if err != nil {
		return nil, err
	}
	slices.SortStableFunc(found, func(a, b Found) int { return cmp.Compare(a.Along, b.Along) })
	out := make([]color.NRGBA, len(found))
	for i, f := range found {
		out[i] = f.Colour
	}
	return out, nil
}

// lab is a colour in OkLab, in which equal distances look equal.
type lab [3]float64

func (c lab) rgb() color.NRGBA {
	r, g, b := colorful.OkLab(c[0], c[1], c[2]).Clamped().RGB255()
	return color.NRGBA{R: r, G: g, B: b, A: 255}
}

// far is the distance of two colours. Yarn in light and shade is one colour, so
// lightness counts for half.
func (c lab) far(d lab) float64 {
	l, a, b := .5*(c[0]-d[0]), c[1]-d[1], c[2]-d[2]
	return l*l + a*a + b*b
}

// sample is one place of a picture.
type sample struct {
	lab
	weight, along float64
}

// PhotographBorder is the share of a photograph at each of its edges that is not looked at.
const PhotographBorder = .12

// take takes samples from the middle of a picture on an even grid.
func take(img image.Image) []sample {
	const side, border = 96, PhotographBorder
	b := img.Bounds()
	var out []sample
	for j := range side {
		for i := range side {
			u, v := border+(1-2*border)*(float64(i)+.5)/side, border+(1-2*border)*(float64(j)+.5)/side
			r, g, bl, a := img.At(b.Min.X+int(u*float64(b.Dx())), b.Min.Y+int(v*float64(b.Dy()))).RGBA()
			if a < 0x8000 {
				continue // cut out
			}
			k := 1 / float64(a)
			l, ca, cb := colorful.Color{R: float64(r) * k, G: float64(g) * k, B: float64(bl) * k}.OkLab()
			s := sample{lab: lab{l, ca, cb}, along: v}
			if b.Dx() >= b.Dy() {
				s.along = u
			}
			out = append(out, s)
		}
	}
	weigh(out)
	return out
}

// weigh lets the samples of middling light count most.
func weigh(samples []sample) {
	byLight := make([]float64, len(samples))
	for i, s := range samples {
		byLight[i] = s.lab[0]
	}
	slices.Sort(byLight)
	if len(byLight) == 0 {
		return
	}
	dark, gleam := byLight[len(byLight)/5], byLight[len(byLight)*49/50]
	for i := range samples {
		samples[i].weight = 1
		if l := samples[i].lab[0]; l < dark || l > gleam {
			samples[i].weight = .15
		}
	}
}

// group is a cluster of samples.
type group struct {
	mean          lab
	weight, along float64
}

// cluster divides samples into n groups of like colour by k-means. It begins
// with the colour nearest the mean and those farthest from the ones chosen before, so
// that the same picture always gives the same groups.
func cluster(samples []sample, n int) []group {
	groups := begin(samples, n)
	of := make([]int, len(samples))
	for range 40 {
		moved := false
		for i, s := range samples {
			nearest := 0
			for g := range groups {
				if s.far(groups[g].mean) < s.far(groups[nearest].mean) {
					nearest = g
				}
			}
			if of[i] != nearest {
				of[i], moved = nearest, true
			}
		}
		next := make([]group, len(groups))
		for i, s := range samples {
			g := &next[of[i]]
			g.weight += s.weight
			g.along += s.weight * s.along
			for k := range s.lab {
				g.mean[k] += s.weight * s.lab[k]
			}
		}
		for i := range next {
			if g := &next[i]; g.weight > 0 {
				g.along /= g.weight
				for k := range g.mean {
					g.mean[k] /= g.weight
				}
			} else {
				g.mean = groups[i].mean
			}
		}
		groups = next
		if !moved {
			break
		}
	}
	return slices.DeleteFunc(groups, func(g group) bool { return g.weight == 0 })
}

// begin chooses the colours from which clusters grow.
func begin(samples []sample, n int) []group {
	mean, total := lab{}, 0.
	for _, s := range samples {
		total += s.weight
		for k := range mean {
			mean[k] += s.weight * s.lab[k]
		}
	}
	for k := range mean {
		mean[k] /= total
	}
	nearest := slices.MinFunc(samples, func(a, b sample) int { return cmp.Compare(a.far(mean), b.far(mean)) })
	out := []group{{mean: nearest.lab}}
	far := make([]float64, len(samples))
	for i := range far {
		far[i] = math.Inf(1)
	}
	for len(out) < n {
		best := -1
		for i, s := range samples {
			far[i] = min(far[i], s.far(out[len(out)-1].mean))
			if best < 0 || far[i]*s.weight > far[best]*samples[best].weight {
				best = i
			}
		}
		if far[best] == 0 {
			break // the picture has fewer colours
		}
		out = append(out, group{mean: samples[best].lab})
	}
	return out
}
