package app

import "strandway/app/action"

// colourActions is what the menus can do with colours.
func (w *window) colourActions() action.Table {
	open := func() bool { return w.view != startView }
	several := func() bool { return open() && len(w.s.Pattern().Yarns) > 1 }
	made := func() bool { m := w.s.Made(); return open() && m != nil && m.Cloth != nil }
	leaf := func(l colourLeaf) func() { return func() { w.showLeaf(l) } }
	return action.Table{
		{ID: "suggest", Menu: "Colour", Label: "Suggest shades", Can: several, Do: leaf(suggestLeaf), Rule: true},
		{ID: "stash", Menu: "Yarn", Label: "List of yarns at home…", Can: open, Do: w.askStash},
		{ID: "teaching", Menu: "Colour", Label: "Teaching colourway", Can: made, Do: w.adoptTeaching},
		{ID: "orders", Menu: "Colour", Label: "Other orders of the letters", Can: several, Do: leaf(lettersLeaf)},
		{ID: "swap", Menu: "Colour", Label: "Swap two letters…", Can: several, Do: w.askSwap},
		{ID: "rotate", Menu: "Colour", Label: "Rotate the letters", Can: several, Do: w.rotateLetters},
		{ID: "read-colours", Menu: "Colour", Label: "Can it be read?", Can: open, Do: leaf(readLeaf)},
	}
}
