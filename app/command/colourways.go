package command

import (
	"context"
	"fmt"
	"strings"

	"strandway/chart/layout"
	"strandway/model"
	"strandway/model/colour"
	"strandway/model/palette"
	"strandway/render/cloth"
)

var colourwaysCommand = command{
	name:    "colourways",
	use:     "FILE -o X.png [--piece P] [--size NAME] [--vision full|grey|red|green|blue]",
	summary: "draw the same crop of a piece in every colourway, side by side",
	detail:  "Below each colourway stands how far the yarns that touch are apart in lightness.",
	run:     runColourways,
}

func runColourways(c *call) error {
	flags := c.options()
	choice := choosePiece(flags, clothForms...)
	shown := show(flags)
	path, err := c.file()
	if err != nil {
		return err
	}
	if err := choice.check(clothForms...); err != nil {
		return err
	}
	as, err := shown()
	if err != nil {
		return err
	}
	src, err := c.open(path)
	if err != nil {
		return err
	}
	worked, piece, err := choice.work(src, c.stderr)
	if err != nil {
		return err
	}
	plan := layout.Arrange(worked.Pieces[piece].Fabric, layout.Measured())
	made := cloth.Make(plan, cloth.YarnsOf(worked, piece, ""), cloth.OptionsOf(worked, piece, plan))
	var ways []cloth.Way
	for _, name := range colourwayNames(worked) {
		way := cloth.Way{Name: name, Yarns: cloth.Seen(cloth.YarnsOf(worked, piece, name), as.vision)}
		if name == "" {
			way.Name = "Own colours"
		}
		way.Says, way.Doubt = apartInLightness(worked, piece, name, as.vision)
		ways = append(ways, way)
	}
	head := title(worked, piece)
	if as.vision != colour.Full {
		head += ", in " + as.vision.String()
	}
	picture, err := made.DrawContact(context.Background(), ways, cloth.Contact{Title: head, Background: as.back})
	if err != nil {
		return err
	}
	if err := writePicture(choice.out, picture, 0, head); err != nil {
		return err
	}
	return src.findings(c.stderr, worked, faults(worked.Findings))
}

// colourwayNames are the pattern's colourways, and before them "", the yarns'
// own colours, unless a colourway has just these.
func colourwayNames(worked *model.Worked) []string {
	p := worked.Pattern
	names := []string{""}
	for _, way := range p.Colourways {
		own := true
		for _, y := range p.Yarns {
			s := way.Shades[y.Letter]
			own = own && (s.Colour == "" || s.Colour == y.Colour)
		}
		if own {
			names[0] = way.Name
			continue
		}
		names = append(names, way.Name)
	}
	return names
}

// apartInLightness says how far the yarns that touch are apart in lightness, and
// whether some of them merge.
func apartInLightness(worked *model.Worked, piece int, colourway string, v colour.Vision) (says string, merge bool) {
	letters, colours := worked.Pieces[piece].Fabric.Yarns, worked.YarnColours(piece, colourway)
	var apart, merging []string
	for _, pair := range palette.Touching(worked.Pieces[piece].Fabric) {
		name := letters[pair.A] + "–" + letters[pair.B]
		apart = append(apart, fmt.Sprintf("%s %.0f", name, palette.Compare(colours[pair.A], colours[pair.B], v).Lightness))
		if visions := palette.Merging(colours[pair.A], colours[pair.B]); len(visions) > 0 {
			merging = append(merging, name)
		}
	}
	if len(apart) == 0 {
		return "", false
	}
	says = "Lightness apart: " + strings.Join(apart, ", ")
	if len(merging) > 0 {
		return says + "; " + strings.Join(merging, ", ") + " can merge", true
	}
	return says, false
}
