package command

import (
	"bufio"
	"fmt"
	"image/color"
	"slices"
	"strings"
	"text/tabwriter"

	"strandway/model"
	"strandway/model/colour"
	"strandway/model/edit"
	"strandway/model/palette"
	"strandway/model/pattern"
)

var coloursCommand = command{
	name: "colours",
	use: "FILE [--colourway NAME] [--suggest RULE|--teaching|--swap A,B|--rotate|--order C,A,B] [--keep A] [--lock B,C]\n" +
		"        [--stash STASH.toml] [--add NAME]",
	summary: "say how well the yarns can be told apart, suggest others, or put them in another order",
	detail: "The table gives for yarns that touch their difference (CIEDE2000) and their difference in lightness (L*),\n" +
		"as each kind of eyes sees them. With --add the new colours are written into the file as a colourway.",
	run: runColours,
}

func runColours(c *call) error {
	flags := c.options()
	var choice choice
	flags.StringVar(&choice.piece, "piece", "", "the piece `P`, by its name; the first without it")
	flags.StringVar(&choice.size, "size", "", "work the size `NAME`; the first without it")
	flags.StringVar(&choice.colourway, "colourway", "", "begin with the colourway `NAME`; with the yarns' own colours without it")
	wish := wishFor(flags)
	path, err := c.file()
	if err != nil {
		return err
	}
	if err := wish.check(flags); err != nil {
		return err
	}
	_, worked, piece, err := c.worked(path, &choice)
	if err != nil {
		return err
	}
	out := bufio.NewWriter(c.stdout)
	if wish.way == "" {
		writeApart(out, worked, piece, worked.YarnColours(piece, choice.colourway))
		return out.Flush()
	}
	shades, err := wish.shades(worked, piece, choice.colourway)
	if err != nil {
		return err
	}
	if wish.add != "" {
		if err := addColourway(path, worked.Pattern, wish.add, shades); err != nil {
			return err
		}
	}
	for i, y := range worked.Pattern.Yarns {
		fmt.Fprintln(out, strings.TrimRight(y.Letter+"  "+shades[i].Colour+"  "+shades[i].Shade, " "))
	}
	fmt.Fprintln(out)
	colours := worked.ColoursIn(piece, shades)
	writeApart(out, worked, piece, colours)
	if wish.rule == palette.Teaching {
		writeFilmed(out, worked, piece, colours)
	}
	return out.Flush()
}

// addColourway writes a new colourway into the file.
func addColourway(path string, p *pattern.Pattern, name string, shades []pattern.Shade) error {
	if _, met := p.Colourway(name); met {
		return misused("there is a colourway %q already: choose another name", name)
	}
	return pattern.Save(path, edit.AddColourway(p, name, model.ByLetter(p, shades)))
}

// writeApart writes the table of yarns that touch.
func writeApart(out *bufio.Writer, worked *model.Worked, piece int, colours []color.NRGBA) {
	letters := worked.Pieces[piece].Fabric.Yarns
	contrasts := palette.Contrasts(colours, palette.Touching(worked.Pieces[piece].Fabric))
	if len(contrasts) == 0 {
		fmt.Fprintln(out, "no two yarns touch in this piece")
		return
	}
	t := tabwriter.NewWriter(out, 0, 0, 3, ' ', 0)
	fmt.Fprint(t, "yarns")
	for _, v := range colour.Visions() {
		fmt.Fprintf(t, "\t%s", v)
	}
	fmt.Fprintln(t)
	for _, c := range contrasts {
		fmt.Fprintf(t, "%s %s", letters[c.A], letters[c.B])
		for i, v := range colour.Visions() {
			fmt.Fprintf(t, "\t%.0f, L* %.0f", c.Seen[i].Difference, c.Seen[i].Lightness)
			if slices.Contains(c.Merging, v) {
				fmt.Fprint(t, " merge")
			}
		}
		fmt.Fprintln(t)
	}
	t.Flush()
}

// writeFilmed says where colours for teaching fall short of what a camera wants.
func writeFilmed(out *bufio.Writer, worked *model.Worked, piece int, colours []color.NRGBA) {
	letters := worked.Pieces[piece].Fabric.Yarns
	filmed := palette.OnCamera(colours, palette.Touching(worked.Pieces[piece].Fabric))
	if filmed.Reads() {
		return
	}
	fmt.Fprintln(out, "\nthese are the best there are, and still weak on camera:")
	for _, c := range filmed.Near {
		fmt.Fprintf(out, "  %s and %s are %.0f apart in lightness, and %d are wanted\n",
			letters[c.A], letters[c.B], c.Seen[colour.Full].Lightness, palette.CameraLightness)
	}
	for _, i := range filmed.Dark {
		fmt.Fprintf(out, "  stitches are lost in %s, whose lightness is %.0f; %d is wanted\n", letters[i], colour.Lightness(colours[i]), palette.CameraDarkest)
	}
}
