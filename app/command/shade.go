package command

import (
	"fmt"
	"os"

	"strandway/model/colour"
	"strandway/model/palette"
	"strandway/model/pattern"
)

var shadeCommand = command{
	name:    "shade",
	use:     "FILE --yarn A [--colour COLOUR] [--photo PICTURE [--colours N]]",
	summary: "give a yarn its colour, as written or from a photograph of a ball or swatch",
	detail: "A colour is written as #2f5d7c, as \"rgb(47, 93, 124)\" or as \"lab(37, -8, -22)\". Photograph yarn in\n" +
		"daylight, filling the middle of the picture. With --colours the yarn becomes variegated: its colours in\n" +
		"the order in which they follow along the longer side of the picture.",
	run: runShade,
}

func runShade(c *call) error {
	flags := c.options()
	letter := flags.String("yarn", "", "the yarn `A`, by its letter")
	written := flags.String("colour", "", "its `COLOUR`, as written")
	photo := flags.String("photo", "", "take it from the `PICTURE`, PNG or JPEG")
	n := flags.Int("colours", 1, "take the sequence of `N` colours of a variegated yarn")
	path, err := c.file()
	if err != nil {
		return err
	}
	switch {
	case *letter == "":
		return misused("say which yarn, with --yarn")
	case (*written == "") == (*photo == ""):
		return misused("give --colour or --photo")
	case *n < 1 || *n > 16 || *n > 1 && *photo == "":
		return misused("--colours goes with --photo and is from 1 to 16")
	}
	src, err := c.open(path)
	if err != nil {
		return err
	}
	i, err := yarnAt(src.pattern.Yarns, *letter)
	if err != nil {
		return err
	}
	yarn := &src.pattern.Yarns[i]
	if *written != "" {
		shade, err := colour.Read(*written)
		if err != nil {
			return wrongUse{err}
		}
		yarn.Colour = colour.Hex(shade)
	} else if err := fromPhotograph(yarn, *photo, *n); err != nil {
		return err
	}
	if err := pattern.Save(path, src.pattern); err != nil {
		return err
	}
	fmt.Fprintf(c.stdout, "%s  %s\n", yarn.Letter, yarn.Colour)
	if *n > 1 {
		for _, shade := range yarn.Colours {
			fmt.Fprintf(c.stdout, "   %s\n", shade)
		}
	}
	return nil
}

// fromPhotograph takes a yarn's colour, or its sequence of n colours, from a picture.
func fromPhotograph(yarn *pattern.Yarn, path string, n int) error {
	f, err := os.Open(path)
	if err != nil {
		return fmt.Errorf("cannot read the photograph: %w", err)
	}
	defer f.Close()
	img, err := palette.Photograph(f)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	found, err := palette.Colours(img, n)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	yarn.Colour = colour.Hex(found[0].Colour)
	if n == 1 {
		return nil
	}
	sequence, err := palette.Sequence(img, n)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	yarn.Look, yarn.Colours = "variegated", nil
	for _, c := range sequence {
		yarn.Colours = append(yarn.Colours, colour.Hex(c))
	}
	return nil
}
