package command

import (
	"context"
	"image/color"
	"io"
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
	use:     "FILE -o X.png [--colourway NAME] [--piece P] [--face rs|ws] [--size NAME]",
	summary: "draw the cloth that the rows of a piece make",
	run:     runCloth,
}

// A cloth is drawn so large that its stitches can be told apart, as far as the sheet's width goes.
const (
	pixelsPerStitch = 48
	narrowest       = 1200 // pixels
	widest          = 4800
)

func runCloth(c *call) error {
	flags := c.options()
	choice := choose(flags, clothForms...)
	side := flags.String("face", "rs", "the `SIDE` to show: rs or ws")
	path, err := c.file()
	if err != nil {
		return err
	}
	if err := choice.check(clothForms...); err != nil {
		return err
	}
	var o cloth.Options
	switch strings.ToLower(*side) {
	case "rs":
		o.Face = cloth.RS
	case "ws":
		o.Face = cloth.WS
	default:
		return misused("--face must be rs or ws, not %s", *side)
	}
	src, err := c.open(path)
	if err != nil {
		return err
	}
	worked, piece, err := choice.work(src, c.stderr)
	if err != nil {
		return err
	}
	if g := src.pattern.Gauge; g.Stitches > 0 {
		o.StitchMM = g.OverCM * 10 / g.Stitches
	}
	yarns := clothYarns(worked, piece, choice.colourway)
	made := cloth.Make(layout.Arrange(worked.Pieces[piece].Fabric, layout.Measured()), yarns, o)
	sheet := cloth.Sheet{
		Title:     title(worked, piece),
		Colourway: choice.colourway,
		Names:     yarnNames(worked, piece, choice.colourway),
		Width:     int(max(narrowest, min(pixelsPerStitch*made.Box().Width(), widest))),
		StitchMM:  o.StitchMM,
		Inches:    src.pattern.Units == "in",
	}
	if o.Face == cloth.WS {
		sheet.Title += ", wrong side"
	}
	picture, err := made.DrawSheet(context.Background(), yarns, sheet)
	if err != nil {
		return err
	}
	err = render.WriteFile(choice.out, func(w io.Writer) error {
		return png.Encode(w, picture, png.Options{Text: map[string]string{"Title": sheet.Title}})
	})
	if err != nil {
		return err
	}
	return src.findings(c.stderr, worked, faults(worked.Findings))
}

// clothYarns are the yarns of a piece as the cloth draws them, in a colourway.
func clothYarns(worked *model.Worked, piece int, colourway string) []cloth.Yarn {
	colours := worked.YarnColours(piece, colourway)
	out := make([]cloth.Yarn, len(colours))
	for i := range out {
		out[i].Colour = colours[i]
		yarn, ok := worked.YarnOf(piece, i)
		if !ok || colourway != "" && yarn.Look == "variegated" {
			continue // a colourway names one colour a yarn
		}
		out[i].Look = looks[yarn.Look]
		out[i].RepeatM = yarn.RepeatM
		out[i].Colours = parsed(yarn.Colours)
	}
	return out
}

// yarnNames are the yarns as a sheet names them: letter, yarn and shade.
func yarnNames(worked *model.Worked, piece int, colourway string) []string {
	names := worked.YarnNames(piece, colourway)
	for i, letter := range worked.Pieces[piece].Fabric.Yarns {
		names[i] = strings.TrimSpace(letter + "  " + names[i])
	}
	return names
}

// looks are the looks of yarns by the names files give them.
var looks = map[string]cloth.Look{"solid": cloth.Solid, "heather": cloth.Heather, "tweed": cloth.Tweed, "variegated": cloth.Variegated}

// parsed leaves out what is no colour.
func parsed(written []string) []color.NRGBA {
	var out []color.NRGBA
	for _, s := range written {
		if c, err := colour.Parse(s); err == nil {
			out = append(out, c)
		}
	}
	return out
}
