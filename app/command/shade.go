package command

import (
	"fmt"
	"os"

	"strandway/model/colour"
	"strandway/model/edit"
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
	named := flags.String("yarn", "", "the yarn `A`, by its letter")
	written := flags.String("colour", "", "its `COLOUR`, as written")
	photo := flags.String("photo", "", "take it from the `PICTURE`, PNG or JPEG")
	n := flags.Int("colours", 1, "take the sequence of `N` colours of a variegated yarn")
	path, err := c.file()
	if err != nil {
		return err
	}
	switch {
	case *named == "":
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
	i, err := yarnAt(src.pattern.Yarns, *named)
	if err != nil {
		return err
	}
	letter, changed := src.pattern.Yarns[i].Letter, src.pattern
	if *written != "" {
		shade, err := colour.Read(*written)
		if err != nil {
			return wrongUse{err}
		}
		changed = edit.Shade(changed, "", letter, pattern.Shade{Shade: changed.Yarns[i].Shade, Colour: colour.Hex(shade)})
	} else if changed, err = fromPhotograph(changed, letter, *photo, *n); err != nil {
		return err
	}
	if err := pattern.Save(path, changed); err != nil {
		return err
	}
	fmt.Fprintf(c.stdout, "%s  %s\n", letter, changed.Yarns[i].Colour)
	if *n > 1 {
		for _, shade := range changed.Yarns[i].Colours {
			fmt.Fprintf(c.stdout, "   %s\n", shade)
		}
	}
	return nil
}

// fromPhotograph gives a yarn its colour, or its sequence of n colours, as a picture has them.
func fromPhotograph(p *pattern.Pattern, letter, path string, n int) (*pattern.Pattern, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("cannot read the photograph: %w", err)
	}
	defer f.Close()
	img, err := palette.Photograph(f)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	sequence, err := palette.Sequence(img, n)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	if n == 1 {
		yarn, _ := p.Yarn(letter)
		return edit.Shade(p, "", letter, pattern.Shade{Shade: yarn.Shade, Colour: colour.Hex(sequence[0])}), nil
	}
	colours := make([]string, len(sequence))
	for i, c := range sequence {
		colours[i] = colour.Hex(c)
	}
	return edit.Sequence(p, "", letter, colours), nil
}
