package command

import (
	"context"
	"flag"
	"image"
	"image/draw"
	"io"
	"slices"
	"strings"

	"strandway/chart/layout"
	"strandway/model"
	"strandway/model/colour"
	"strandway/render"
	"strandway/render/cloth"
	"strandway/render/png"
)

var clothForms = []string{".png"}

var clothCommand = command{
	name:    "cloth",
	use:     "FILE -o X.png [--colourway NAME] [--piece P] [--face rs|ws|both] [--size NAME] [--sheet] [--tails]",
	summary: "draw the cloth that the rows of a piece make",
	detail: "The picture prints at the size the gauge gives. With --sheet it has a caption, a scale bar and a\n" +
		"shade card of each yarn.",
	run: runCloth,
}

// A cloth is drawn so large that its stitches can be told apart, as far as the sheet's width goes.
const (
	pixelsPerStitch = 48
	narrowest       = 1200 // pixels
	widest          = 4800
)

// showing says how a cloth is shown: on what, in which light, to whose eyes.
type showing struct {
	back   cloth.Background
	vision colour.Vision
}

var (
	faces   = map[string][]cloth.Face{"rs": {cloth.RS}, "ws": {cloth.WS}, "both": {cloth.RS, cloth.WS}}
	grounds = map[string]cloth.Ground{"paper": cloth.Paper, "white": cloth.White, "wood": cloth.Wood, "linen": cloth.Linen, "transparent": cloth.Transparent}
	lights  = map[string]cloth.Light{"daylight": cloth.Daylight, "warm": cloth.Warm}
	visions = map[string]colour.Vision{"full": colour.Full, "grey": colour.Greyscale, "red": colour.Protanopia, "green": colour.Deuteranopia, "blue": colour.Tritanopia}
)

// show adds the options of showing to a flag set.
func show(flags *flag.FlagSet) *showing {
	s := showing{back: cloth.Background{Ground: cloth.Paper, Light: cloth.Daylight}, vision: colour.Full}
	oneOf(flags, &s.back.Ground, "ground", "lay it on `GROUND`: paper, white, wood, linen or transparent; on paper without it", grounds)
	oneOf(flags, &s.back.Light, "light", "in which `LIGHT`: daylight or warm; in daylight without it", lights)
	oneOf(flags, &s.vision, "vision", "as `EYES` see it: full, grey (lightness alone), red, green or blue (without these cones)", visions)
	return &s
}

func runCloth(c *call) error {
	flags := c.options()
	choice := choose(flags, clothForms...)
	sides := faces["rs"]
	oneOf(flags, &sides, "face", "the `SIDE` to show: rs, ws or both; the right side without it", faces)
	shown := show(flags)
	onSheet := flags.Bool("sheet", false, "with caption, scale bar and shade cards")
	tails := flags.Bool("tails", false, "show the yarn ends, not yet woven in")
	path, err := c.file()
	if err != nil {
		return err
	}
	if err := choice.check(clothForms...); err != nil {
		return err
	}
	src, worked, piece, err := c.worked(path, choice)
	if err != nil {
		return err
	}
	yarns := cloth.Seen(cloth.YarnsOf(worked, piece, choice.colourway), shown.vision)
	plan := layout.Arrange(worked.Pieces[piece].Fabric, layout.Measured())
	o := cloth.OptionsOf(worked, piece, plan)
	o.Tails, o.Sprites = *tails, cloth.NewSprites(0)
	var pictures []image.Image
	var perMM float64
	for _, o.Face = range sides {
		made := cloth.Make(plan, yarns, o)
		sheet := cloth.Sheet{
			Title:      title(worked, piece),
			Colourway:  choice.colourway,
			Names:      yarnNames(worked, piece, choice.colourway),
			Width:      int(max(narrowest, min(pixelsPerStitch*made.Box().Width(), widest))),
			StitchMM:   o.StitchMM,
			Inches:     src.pattern.Units == "in",
			Background: shown.back,
		}
		if o.Face == cloth.WS {
			sheet.Title += ", wrong side"
		}
		picture, view, err := drawCloth(made, yarns, sheet, *onSheet)
		if err != nil {
			return err
		}
		pictures, perMM = append(pictures, picture), view.PixelsPerMM(o.StitchMM)
	}
	if err := writePicture(choice.out, beside(pictures), perMM, title(worked, piece)); err != nil {
		return err
	}
	return src.drawn(c.stderr, worked, choice.out)
}

// drawCloth draws one side, bare or on its sheet.
func drawCloth(made *cloth.Cloth, yarns []cloth.Yarn, s cloth.Sheet, onSheet bool) (image.Image, cloth.View, error) {
	if onSheet {
		picture, err := made.DrawSheet(context.Background(), yarns, s)
		return picture, made.SheetView(s), err
	}
	view := made.WholeView(s.Width)
	picture, err := made.Paint(context.Background(), view, yarns, s.Background)
	return picture, view, err
}

// writePicture writes a PNG that says its colour space and its size in print.
func writePicture(path string, picture image.Image, pixelsPerMM float64, title string) error {
	return render.WriteFile(path, func(w io.Writer) error {
		return png.Encode(w, picture, png.Options{DPI: pixelsPerMM * 25.4, Text: map[string]string{"Title": title}})
	})
}

// beside lays pictures side by side.
func beside(pictures []image.Image) image.Image {
	if len(pictures) == 1 {
		return pictures[0]
	}
	var size image.Point
	for _, p := range pictures {
		size = image.Pt(size.X+p.Bounds().Dx(), max(size.Y, p.Bounds().Dy()))
	}
	out := image.NewRGBA(image.Rectangle{Max: size})
	x := 0
	for _, p := range pictures {
		draw.Draw(out, p.Bounds().Add(image.Pt(x, 0)), p, p.Bounds().Min, draw.Src)
		x += p.Bounds().Dx()
	}
	return out
}

// yarnNames are the yarns as a sheet names them: letter, yarn and shade.
func yarnNames(worked *model.Worked, piece int, colourway string) []string {
	way, _ := worked.Pattern.Colourway(colourway)
	var out []string
	for i, letter := range worked.Pieces[piece].Fabric.Yarns {
		words := letter
		if yarn, ok := worked.YarnOf(piece, i); ok {
			shade := yarn.Shade
			if way != nil && way.Shades[yarn.Letter].Shade != "" {
				shade = way.Shades[yarn.Letter].Shade
			}
			said := slices.DeleteFunc([]string{yarn.Name, shade}, func(s string) bool { return s == "" })
			words += "  " + strings.Join(said, ", ")
		}
		out = append(out, words)
	}
	return out
}
