package fabric

import "slices"

// Alike reports whether two fabrics have the same stitches in the same places, wherever the
// words that made them stand in the text.
func (f *Fabric) Alike(g *Fabric) bool {
	return slices.Equal(f.Kinds, g.Kinds) && slices.Equal(f.Yarns, g.Yarns) &&
		slices.EqualFunc(f.Stitches, g.Stitches, func(a, b Stitch) bool { a.Word = b.Word; return a == b }) &&
		slices.Equal(f.Bases, g.Bases) && slices.Equal(f.Landings, g.Landings) && slices.Equal(f.Units, g.Units) &&
		slices.Equal(f.Rows, g.Rows) && slices.Equal(f.Events, g.Events) &&
		slices.EqualFunc(f.Repeats, g.Repeats, func(a, b Repeat) bool { a.Written = b.Written; return a == b })
}
