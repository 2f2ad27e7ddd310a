package command

import (
	"errors"
	"fmt"
	"image"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode"
	"unicode/utf8"

	"strandway/model/pattern"
	"strandway/model/tapestry"
)

var tapestryCommand = command{
	name:    "tapestry",
	use:     "PICTURE -o NEW.strand [--width-cm W | --stitches N] [--yarns K] [--gauge SxR] [--terms US|UK] [--dither]",
	summary: "make rows in several yarns of a picture, a PNG or JPEG",
	detail: "Each stitch is one single crochet in the colour that the picture has there; rows are as many as keep its proportions at the gauge.\n" +
		"The rows carry the yarns not in use along.",
	run: runTapestry,
}

const (
	usualStitches = 80 // across, where nothing is said: a cushion
	usualYarns    = 4
)

func runTapestry(c *call) error {
	flags := c.options()
	out := flags.String("o", "", "write the pattern to `NEW.strand`")
	width := flags.Float64("width-cm", 0, "make it `W` cm wide at the gauge")
	stitches := flags.Int("stitches", usualStitches, "make it `N` stitches wide")
	yarns := flags.Int("yarns", usualYarns, "find `K` yarns in the picture")
	gauge := tapestry.UsualGauge
	written := flags.String("gauge", fmt.Sprintf("%gx%g", gauge.Stitches, gauge.Rows), "stitches and rows of sc over 10 cm, as `SxR`")
	terms := "US"
	oneOf(flags, &terms, "terms", "write the rows in US or UK `TERMS`; in US without it", readTerms)
	dither := flags.Bool("dither", false, "mix colours that no yarn has, stitch by stitch")
	path, err := c.file()
	if err != nil {
		return err
	}
	switch n, err := fmt.Sscanf(*written, "%fx%f", &gauge.Stitches, &gauge.Rows); {
	case *out == "":
		return misused("say where to write the pattern, with -o")
	case !strings.EqualFold(filepath.Ext(*out), ".strand"):
		return misused("a pattern's file name ends in .strand, unlike %s", *out)
	case err != nil || n != 2 || !(gauge.Stitches > 0 && gauge.Stitches < 200 && gauge.Rows > 0 && gauge.Rows < 200):
		return misused("--gauge is stitches and rows over 10 cm, as in 16x18, not %s", *written)
	case given(flags, "width-cm") && given(flags, "stitches"):
		return misused("say either --width-cm or --stitches")
	case given(flags, "width-cm") && !(*width > 0 && *width < 1000):
		return misused("--width-cm must be over 0 and under 1000")
	}
	if *width > 0 {
		*stitches = int(*width*gauge.Stitches/gauge.OverCM + .5)
	}
	img, err := picture(path)
	if err != nil {
		return fmt.Errorf("cannot make a tapestry of %s: %w", path, err)
	}
	grid, colours, err := tapestry.Import(img, tapestry.Options{Stitches: *stitches, Aspect: tapestry.Aspect(gauge), New: *yarns, Dither: *dither})
	if err != nil {
		return fmt.Errorf("cannot make a tapestry of %s: %w", path, err)
	}
	lib, err := library()
	if err != nil {
		return err
	}
	p := grid.Pattern(lib, titleOf(path), terms, gauge, colours)
	if err := pattern.Save(*out, p); err != nil {
		return err
	}
	fmt.Fprintf(c.stdout, "%s: %d stitches by %d rows, %.0f by %.0f cm, %d yarns\n", *out, grid.Width, grid.Height,
		float64(grid.Width)*gauge.OverCM/gauge.Stitches, float64(grid.Height)*gauge.OverCM/gauge.Rows, len(colours))
	return nil
}

// picture reads a picture's file.
func picture(path string) (image.Image, error) {
	f, err := os.Open(path)
	if at := (*fs.PathError)(nil); errors.As(err, &at) {
		return nil, at.Err
	} else if err != nil {
		return nil, err
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, errors.New("it is a folder")
	}
	return tapestry.Read(f)
}

// titleOf makes a title of a file's name: "harbour-light.png" gives "Harbour light".
func titleOf(path string) string {
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	name = strings.Join(strings.FieldsFunc(name, func(r rune) bool { return r == '-' || r == '_' || r == ' ' }), " ")
	if name == "" {
		return "Tapestry"
	}
	first, n := utf8.DecodeRuneInString(name)
	return string(unicode.ToUpper(first)) + name[n:]
}
