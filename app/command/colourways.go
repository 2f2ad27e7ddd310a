package command

import (
	"context"
	"fmt"
	"image/color"
	"strings"

	"strandway/chart/layout"
	"strandway/model"
	"strandway/model/colour"
	"strandway/model/fabric"
	"strandway/model/palette"
	"strandway/render/cloth"
)

var colourwaysCommand = command{
	name:    "colourways",
	use:     "FILE -o X.png [--piece P] [--size NAME] [--orders [--colourway NAME] [--lock B,C]] [--vision full|grey|red|green|blue]",
	summary: "draw the same crop of a piece in every colourway, side by side",
	detail: "Below each colourway stands how far the yarns that touch are apart in lightness. With --orders it is one\n" +
		"colourway with its colours in every order of the yarns.",
	run: runColourways,
}

func runColourways(c *call) error {
	flags := c.options()
	choice := choosePiece(flags, clothForms...)
	orders := flags.Bool("orders", false, "one colourway in every order of its colours")
	flags.StringVar(&choice.colourway, "colourway", "", "with --orders, the colourway `NAME`; the yarns' own colours without it")
	lock := flags.String("lock", "", "with --orders, leave the yarns `B,C` as they are")
	shown := show(flags)
	path, err := c.file()
	if err != nil {
		return err
	}
	if err := choice.check(clothForms...); err != nil {
		return err
	}
	if !*orders && (choice.colourway != "" || *lock != "") {
		return misused("--colourway and --lock go with --orders")
	}
	src, worked, piece, err := c.worked(path, choice)
	if err != nil {
		return err
	}
	plan := layout.Arrange(worked.Pieces[piece].Fabric, layout.Measured())
	made := cloth.Make(plan, cloth.YarnsOf(worked, piece, ""), cloth.OptionsOf(worked, piece, plan))
	sheet := contactSheet{worked, piece, shown.vision}
	ways := sheet.colourways()
	head := title(worked, piece)
	if *orders {
		locked, err := lockedYarns(worked.Pattern.Yarns, *lock)
		if err != nil {
			return err
		}
		ways = sheet.orders(choice.colourway, locked)
		if choice.colourway != "" {
			head += ", " + choice.colourway
		}
	}
	if shown.vision != colour.Full {
		head += ", in " + shown.vision.String()
	}
	picture, err := made.DrawContact(context.Background(), ways, cloth.Contact{Title: head, Background: shown.back})
	if err != nil {
		return err
	}
	if err := writePicture(choice.out, picture, 0, head); err != nil {
		return err
	}
	return src.faults(c.stderr, worked)
}

// contactSheet gathers what stands on a contact sheet.
type contactSheet struct {
	worked *model.Worked
	piece  int
	vision colour.Vision
}

// colourways are the pattern's colourways, and before them the yarns' own colours.
func (s *contactSheet) colourways() []cloth.Way {
	var ways []cloth.Way
	for _, name := range colourwayNames(s.worked) {
		yarns := cloth.YarnsOf(s.worked, s.piece, name)
		if name == "" {
			name = "Own colours"
		}
		ways = append(ways, s.way(name, yarns))
	}
	return ways
}

// mostOrders is how many orders a sheet holds: those of five yarns.
const mostOrders = 120

// orders are the orders of a colourway's colours, the letters in each written in the order of the yarns.
func (s *contactSheet) orders(colourway string, locked []bool) []cloth.Way {
	shades := model.Shades(s.worked.Pattern, colourway)
	letters := make([]string, len(shades))
	for i, y := range s.worked.Pattern.Yarns {
		letters[i] = y.Letter
	}
	var ways []cloth.Way
	for _, o := range palette.Orders(locked, mostOrders) {
		yarns := cloth.YarnsIn(s.worked, s.piece, palette.InOrder(shades, o))
		ways = append(ways, s.way(strings.Join(palette.InOrder(letters, o), " "), yarns))
	}
	return ways
}

// way is one picture of the sheet, and whether its yarns can be told apart.
func (s *contactSheet) way(name string, yarns []cloth.Yarn) cloth.Way {
	way := cloth.Way{Name: name, Yarns: cloth.Seen(yarns, s.vision)}
	colours := make([]color.NRGBA, len(yarns))
	for i, y := range yarns {
		colours[i] = y.Colour
	}
	way.Says, way.Doubt = apartInLightness(s.worked.Pieces[s.piece].Fabric, colours, s.vision)
	return way
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
func apartInLightness(f *fabric.Fabric, colours []color.NRGBA, v colour.Vision) (says string, merge bool) {
	var apart, merging []string
	for _, c := range palette.Contrasts(colours, palette.Touching(f)) {
		name := f.Yarns[c.A] + "–" + f.Yarns[c.B]
		apart = append(apart, fmt.Sprintf("%s %.0f", name, c.Seen[v].Lightness))
		if len(c.Merging) > 0 {
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
