package model

import (
	"image/color"
	"slices"
	"strings"

	"strandway/model/colour"
	"strandway/model/pattern"
)

// unsaid are the colours of yarns whose colour the pattern does not give: plain
// wools, far enough apart in lightness to be told from one another.
var unsaid = []color.NRGBA{
	{0x5b, 0x6b, 0x73, 0xff},
	{0xd9, 0xcf, 0xb8, 0xff},
	{0xa3, 0x5f, 0x4a, 0xff},
	{0x8f, 0xa3, 0x7a, 0xff},
	{0x3f, 0x3a, 0x4d, 0xff},
	{0xd6, 0xa8, 0x4f, 0xff},
}

// YarnColours gives the colours of a piece's yarns, by the index the fabric
// gives them. With an empty colourway they are the yarns' own.
func (w *Worked) YarnColours(piece int, colourway string) []color.NRGBA {
	letters := w.Pieces[piece].Fabric.Yarns
	out := make([]color.NRGBA, len(letters))
	for i := range letters {
		out[i] = unsaid[i%len(unsaid)]
		if yarn, ok := w.YarnOf(piece, i); ok {
			if c, ok := w.ColourOf(yarn.Letter, colourway); ok {
				out[i] = c
			}
		}
	}
	return out
}

// YarnNames gives name and shade in a colourway of each yarn of a piece, by the
// fabric's index: "Harbour Worsted, Slate"; "" where the pattern says neither.
func (w *Worked) YarnNames(piece int, colourway string) []string {
	way, _ := w.Pattern.Colourway(colourway)
	out := make([]string, len(w.Pieces[piece].Fabric.Yarns))
	for i := range out {
		yarn, ok := w.YarnOf(piece, i)
		if !ok {
			continue
		}
		shade := yarn.Shade
		if way != nil && way.Shades[yarn.Letter].Shade != "" {
			shade = way.Shades[yarn.Letter].Shade
		}
		said := slices.DeleteFunc([]string{yarn.Name, shade}, func(s string) bool { return s == "" })
		out[i] = strings.Join(said, ", ")
	}
	return out
}

// ColourOf gives the colour of a yarn in a colourway, if the pattern says it.
func (w *Worked) ColourOf(letter, colourway string) (color.NRGBA, bool) {
	yarn, ok := w.Pattern.Yarn(letter)
	if !ok {
		return color.NRGBA{}, false
	}
	written := yarn.Colour
	if way, ok := w.Pattern.Colourway(colourway); ok && way.Shades[letter].Colour != "" {
		written = way.Shades[letter].Colour
	}
	c, err := colour.Parse(written)
	return c, err == nil
}

// YarnOf gives the pattern's yarn for an index of a piece's fabric. Rows that
// name no yarn are worked in the first.
func (w *Worked) YarnOf(piece, index int) (*pattern.Yarn, bool) {
	letter := w.Pieces[piece].Fabric.Yarns[index]
	if letter == "" && len(w.Pattern.Yarns) > 0 {
		return &w.Pattern.Yarns[0], true
	}
	return w.Pattern.Yarn(letter)
}
