package app

import "strandway/app/action"

// colourActions is what the menus can do with colours.
func (w *window) colourActions() action.Table {
	open := func() bool { return w.view != startView }
	several := func() bool { return open() && len(w.s.Pattern().Yarns) > 1 }
	made := func() bool { m := w.s.Made(); return open() && m != nil && m.Cloth != nil }
	leaf := func(l colourLeaf) func() { return func() { w.showLeaf(l) } }
	return action.Table{
		{ID: "contact", Menu: "File", Label: "Save the colourways…", Can: made, Do: w.askContact},
		{ID: "suggest", Menu: "Yarn", Label: "Suggest shades", Can: several, Do: leaf(suggestLeaf), Rule: true},
		{ID: "stash", Menu: "Yarn", Label: "List of yarns at home…", Can: open, Do: w.askStash},
		{ID: "teaching", Menu: "Yarn", Label: "Teaching colourway", Can: made, Do: w.adoptTeaching},
		{ID: "orders", Menu: "Yarn", Label: "Other orders of the letters", Can: several, Do: leaf(lettersLeaf)},
		{ID: "swap", Menu: "Yarn", Label: "Swap two letters…", Can: several, Do: w.askSwap},
		{ID: "rotate", Menu: "Yarn", Label: "Rotate the letters", Can: several, Do: w.rotateLetters},
		{ID: "read-colours", Menu: "Yarn", Label: "Can it be read?", Can: open, Do: leaf(readLeaf)},
	}
}
