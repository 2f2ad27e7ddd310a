package tapestry

import (
	"errors"
	"fmt"
	"image"
	"image/color"
	_ "image/jpeg" // pictures come as JPEG
	_ "image/png"  // or as PNG
	"io"
	"iter"
	"math"

	"github.com/lucasb-eyer/go-colorful"
)

const (
	fewest     = 4       // stitches or rows that a picture can be seen in
	mostAcross = 1000    // stitches: a bed cover in fine yarn
	mostCells  = 400_000 // stitches in all
	mostPixels = 100_000_000
	mostYarns  = 26 // one letter each
)

// Read reads a PNG or JPEG picture.
func Read(r io.ReadSeeker) (image.Image, error) {
	c, _, err := image.DecodeConfig(r)
	if err != nil {
		return nil, errors.New("it is no PNG or JPEG picture")
	}
	if c.Width*c.Height > mostPixels {
		return nil, fmt.Errorf("with %d by %d pixels it is too large; 2,000 across are more than any piece can show", c.Width, c.Height)
	}
	if _, err := r.Seek(0, io.SeekStart); err != nil {
		return nil, err
	}
	img, _, err := image.Decode(r)
	if err != nil {
		return nil, errors.New("it is damaged or cut short")
	}
	return img, nil
}

// Options say how a picture becomes a grid.
type Options struct {
	Stitches int     // across
	Aspect   float64 // the height of a row over the width of a stitch, at the gauge
	Yarns    []color.NRGBA
	New      int  // how many yarns to find in the picture where Yarns is empty
	Dither   bool // mix colours that no yarn has; most pieces look calmer without
}

// Import makes a grid of a picture, so many stitches across and as many rows as keep its proportions
// at the gauge. Colours are taken to the nearest of the yarns, as near as they look; without yarns
// the picture's own main colours are found, which are given back by the grid's index, the most used first.
func Import(img image.Image, o Options) (Grid, []color.NRGBA, error) {
	b := img.Bounds()
	if b.Dx() < fewest || b.Dy() < fewest {
		return Grid{}, nil, fmt.Errorf("with %d by %d pixels there is nothing to see in it", b.Dx(), b.Dy())
	}
	rows := int(math.Round(float64(o.Stitches) * float64(b.Dy()) / float64(b.Dx()) / o.Aspect))
	switch {
	case o.Stitches < fewest || rows < fewest:
		return Grid{}, nil, fmt.Errorf("%d stitches by %d rows are too few to see a picture in", o.Stitches, rows)
	case o.Stitches > mostAcross || o.Stitches*rows > mostCells:
		return Grid{}, nil, fmt.Errorf("%d stitches by %d rows are more than one piece can be: at most %d across and %d in all", o.Stitches, rows, mostAcross, mostCells)
	case len(o.Yarns) == 0 && (o.New < 2 || o.New > mostYarns):
		return Grid{}, nil, fmt.Errorf("a picture takes from 2 to %d yarns, not %d", mostYarns, o.New)
	}
	cells := sampled(img, o.Stitches, rows)
	var palette []lab
	for _, y := range o.Yarns {
		palette = append(palette, labOf(y))
	}
	if len(palette) == 0 {
		palette = mainColours(cells, o.New)
	}
	if len(palette) < 2 {
		return Grid{}, nil, errors.New("it is all of one colour")
	}
	g := New(o.Stitches, rows, letters(len(palette)))
	if o.Dither {
		dither(&g, cells, palette)
	} else {
		vote(&g, img, palette)
	}
	colours := make([]color.NRGBA, len(palette))
	for i, c := range palette {
		colours[i] = c.colour()
	}
	return g, colours, nil
}

func letters(n int) []string {
	out := make([]string, n)
	for i := range out {
		out[i] = string(rune('A' + i))
	}
	return out
}

// sample is the colour of one cell.
type sample struct {
	mean lab     // mixed as light mixes
	even float64 // 1 where the cell is all of one colour, towards 0 where an edge runs through it
}

// mixedBy is the mean square distance from its mean at which a cell counts half as even: two colours
// that are clearly different, half and half.
const mixedBy = .002

// sampled is the colours of all cells.
func sampled(img image.Image, width, height int) []sample {
	out := make([]sample, width*height)
	for i := range out {
		var light [3]float64
		var seen []lab
		for c := range pixels(img, i%width, i/width, width, height) {
			r, g, b := c.FastLinearRgb()
			light[0], light[1], light[2] = light[0]+r, light[1]+g, light[2]+b
			seen = append(seen, labFrom(c))
		}
		n := float64(len(seen))
		out[i].mean = labFrom(colorful.FastLinearRgb(light[0]/n, light[1]/n, light[2]/n))
		spread := 0.
		for _, c := range seen {
			spread += c.apart(out[i].mean) / n
		}
		out[i].even = mixedBy / (mixedBy + spread)
	}
	return out
}

// vote gives each cell the yarn that most of its pixels are nearest to, so that an edge
// between two colours makes no stitch of a third.
func vote(g *Grid, img image.Image, palette []lab) {
	votes := make([]int, len(palette))
	for i := range g.Cells {
		clear(votes)
		for c := range pixels(img, i%g.Width, i/g.Width, g.Width, g.Height) {
			votes[nearest(labFrom(c), palette)]++
		}
		for yarn, n := range votes {
			if n > votes[g.Cells[i]] {
				g.Cells[i] = uint8(yarn)
			}
		}
	}
}

// mostLooked is how many pixels a cell is looked at, each way.
const mostLooked = 5

// pixels are the colours of a cell's pixels, evenly spread ones where there are many. What is
// see-through shows white paper.
func pixels(img image.Image, col, row, width, height int) iter.Seq[colorful.Color] {
	b := img.Bounds()
	x0, x1 := stretch(col, width, b.Dx())
	y0, y1 := stretch(height-1-row, height, b.Dy()) // rows are worked upward, pictures run downward
	return func(yield func(colorful.Color) bool) {
		across, down := min(x1-x0, mostLooked), min(y1-y0, mostLooked)
		for k := range across * down {
			x, y := x0+(2*(k%across)+1)*(x1-x0)/(2*across), y0+(2*(k/across)+1)*(y1-y0)/(2*down)
			if !yield(onPaper(img.At(b.Min.X+x, b.Min.Y+y))) {
				return
			}
		}
	}
}

// stretch is the pixels that cell i of n covers, at least one.
func stretch(i, n, pixels int) (from, to int) {
	from = i * pixels / n
	return from, max(from+1, (i+1)*pixels/n)
}

func onPaper(c color.Color) colorful.Color {
	r, g, b, a := c.RGBA() // weighted by a already
	white := 0xffff - a
	return colorful.Color{R: float64(r+white) / 0xffff, G: float64(g+white) / 0xffff, B: float64(b+white) / 0xffff}
}
