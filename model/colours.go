package model

import (
	"image/color"

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
	way, _ := w.Pattern.Colourway(colourway)
	letters := w.Pieces[piece].Fabric.Yarns
	out := make([]color.NRGBA, len(letters))
	for i := range letters {
		out[i] = unsaid[i%len(unsaid)]
		yarn, ok := w.YarnOf(piece, i)
		if !ok {
			continue
		}
		written := yarn.Colour
		if way != nil && way.Shades[yarn.Letter].Colour != "" {
			written = way.Shades[yarn.Letter].Colour
		}
		if c, err := colour.Parse(written); err == nil {
			out[i] = c
		}
	}
	return out
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
