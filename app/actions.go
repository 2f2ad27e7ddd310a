package app

import (
	"fmt"

	"fyne.io/fyne/v2"

	"strandway/app/action"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model/edit"
)

// actions is everything the window can do, in the order of its menus.
func (w *window) actions() action.Table {
	keys := func(chords ...string) []action.Chord {
		var out []action.Chord
		for _, c := range chords {
			out = append(out, action.Key(c))
		}
		return out
	}
	open := func() bool { return w.view != startView }
	inRow := func() bool { return open() && w.s.Rows() != "" }
	made := func() bool { m := w.s.Made(); return m != nil && m.Chart != nil && open() }
	is := func(mode theme.Mode) func() bool { return func() bool { return w.th.Mode == mode } }
	dress := func(mode theme.Mode) func() { return func() { w.dress(mode) } }

	t := action.Table{
		{ID: "new", Menu: "File", Label: "New", Keys: keys("Ctrl+N"), Do: w.newDocument},
		{ID: "open", Menu: "File", Label: "Open…", Keys: keys("Ctrl+O"), Do: w.askOpen},
		{ID: "picture", Menu: "File", Label: "Rows from a picture…", Do: w.askPicture},
		{ID: "start", Menu: "File", Label: "Beginnings and files opened lately", Do: func() { w.ifSettled(func() { w.show(startView) }) }},
		{ID: "save", Menu: "File", Label: "Save", Keys: keys("Ctrl+S"), Can: open, Do: func() { w.save(nil) }, Rule: true},
		{ID: "save-copy", Menu: "File", Label: "Save a copy…", Keys: keys("Ctrl+Shift+S"), Can: open, Do: w.askCopy},
		{ID: "revert", Menu: "File", Label: "Open again as saved", Can: w.canRevert, Do: w.revert},
		{ID: "chart", Menu: "File", Label: "Save the chart…", Keys: keys("Ctrl+E"), Can: made, Do: w.askChart, Rule: true},
		{ID: "cloth", Menu: "File", Label: "Save the cloth…", Keys: keys("Ctrl+Shift+E"), Can: made, Do: w.askCloth},
		{ID: "contact", Menu: "File", Label: "Save the colourways…", Can: func() bool { return made() && w.s.Made().Cloth != nil }, Do: w.askContact},
		{ID: "frames", Menu: "File", Label: "Save frames…", Can: func() bool { return w.view == teachView && w.teach.Stage() != nil }, Do: w.askFrames},
		{ID: "close", Menu: "File", Label: "Close", Keys: keys("Ctrl+W"), Do: w.closeDocument, Rule: true},
		{ID: "quit", Menu: "File", Label: "Quit", Keys: keys("Ctrl+Q"), Do: w.quit},

		{ID: "undo", Menu: "Edit", Field: true, Label: "Undo", Say: named("Undo", w.s.UndoLabel), Keys: keys("Ctrl+Z"), Can: func() bool { return w.s.UndoLabel() != "" || w.sheetOpen() }, Do: func() { w.unlessField(&fyne.ShortcutUndo{}, w.s.Undo) }},
		{ID: "redo", Menu: "Edit", Field: true, Label: "Redo", Say: named("Redo", w.s.RedoLabel), Keys: keys("Ctrl+Shift+Z", "Ctrl+Y"), Can: func() bool { return w.s.RedoLabel() != "" || w.sheetOpen() }, Do: func() { w.unlessField(&fyne.ShortcutRedo{}, w.s.Redo) }},
		{ID: "cut", Menu: "Edit", Field: true, Label: "Cut", Keys: keys("Ctrl+X"), Do: w.cut, Rule: true},
		{ID: "copy", Menu: "Edit", Field: true, Label: "Copy", Keys: keys("Ctrl+C"), Do: w.copyText},
		{ID: "paste", Menu: "Edit", Field: true, Label: "Paste", Keys: keys("Ctrl+V"), Do: w.paste},
		{ID: "all", Menu: "Edit", Field: true, Label: "Choose all rows", Keys: keys("Ctrl+A"), Can: open, Do: w.chooseAll},
		{ID: "complete", Menu: "Edit", Label: "Complete the word", Keys: keys("Ctrl+Space"), Can: open, Do: func() { w.complete(true) }, Rule: true},
		{ID: "menu", Menu: "Edit", Label: "Menu of what is in hand", Keys: keys("Shift+F10"), Can: open, Do: w.popUpHere},
		{ID: "find", Menu: "Edit", Label: "Find in the rows…", Keys: keys("Ctrl+F"), Can: open, Do: w.askFind, Rule: true},
		{ID: "find-next", Menu: "Edit", Label: "Find next", Keys: keys("F3"), Can: func() bool { return w.sought != "" }, Do: w.findNext},
		{ID: "go", Menu: "Edit", Label: "Go to row…", Keys: keys("Ctrl+G"), Can: open, Do: w.askRow},
		{ID: "finding", Menu: "Edit", Label: "Next finding", Keys: keys("F8"), Can: open, Do: func() { w.nextFinding(1) }, Rule: true},
		{ID: "finding-last", Menu: "Edit", Label: "Last finding", Keys: keys("Shift+F8"), Can: open, Do: func() { w.nextFinding(-1) }},
		{ID: "mend", Menu: "Edit", Label: "Write the mend", Keys: keys("Ctrl+."), Can: func() bool { _, ok := w.s.MendAtHand(); return ok }, Do: w.mend},

		{ID: "row", Menu: "Row", Label: "New row below", Keys: keys("Ctrl+Return"), Can: open, Do: w.newRow},
		{ID: "row-again", Menu: "Row", Label: "Same row again below", Keys: keys("Ctrl+D"), Can: inRow, Do: func() { w.editRow("Same row again", edit.RepeatRow) }},
		{ID: "row-up", Menu: "Row", Label: "Move up", Keys: keys("Alt+Up"), Can: inRow, Do: func() { w.moveRow(false) }},
		{ID: "row-down", Menu: "Row", Label: "Move down", Keys: keys("Alt+Down"), Can: inRow, Do: func() { w.moveRow(true) }},
		{ID: "row-delete", Menu: "Row", Label: "Take the row out", Keys: keys("Ctrl+Shift+D"), Can: inRow, Do: func() { w.editRow("Take the row out", edit.DeleteRow) }},
		{ID: "turn", Menu: "Row", Label: "Turn, or do not turn", Keys: keys("Ctrl+T"), Can: inRow, Do: w.toggleTurn, Rule: true},
		{ID: "terms", Menu: "Row", Label: "Terms", Say: func() string { return translation.Fill("In {{.Terms}} terms", "Terms", w.otherTerms()) }, Keys: keys("F7"), Can: inRow, Do: w.changeTerms},
		{ID: "write-out", Menu: "Row", Label: "Write rows written as one out", Can: w.inRange, Do: w.writeOut},
		{ID: "piece", Menu: "Row", Label: "Next piece", Keys: keys("Ctrl+Tab"), Can: func() bool { return len(w.s.Pattern().Pieces) > 1 }, Do: w.nextPiece, Rule: true},
		{ID: "piece-new", Menu: "Row", Label: "New piece…", Can: open, Do: w.askPiece},
		{ID: "piece-name", Menu: "Row", Label: "Rename the piece…", Can: open, Do: w.askPieceRename},
		{ID: "piece-delete", Menu: "Row", Label: "Take the piece out", Can: func() bool { return len(w.s.Pattern().Pieces) > 1 }, Do: w.deletePiece},

		{ID: "find-stitch", Menu: "Stitch", Label: "Find a stitch…", Keys: keys("Ctrl+Shift+F"), Can: open, Do: w.findStitch},
		{ID: "take-out", Menu: "Stitch", Label: "Take out", Keys: keys("Delete"), Can: w.hasChoice, Do: w.takeOut},
		{ID: "repeat", Menu: "Stitch", Label: "Repeat…", Keys: keys("Ctrl+R"), Can: w.hasChoice, Do: w.askRepeat, Rule: true},
		{ID: "mirror", Menu: "Stitch", Label: "Mirror", Keys: keys("Ctrl+M"), Can: w.hasChoice, Do: func() { w.tell(w.s.Mirror()) }},
		{ID: "place", Menu: "Stitch", Label: "Place…", Keys: keys("Ctrl+Shift+P"), Can: w.hasChoice, Do: w.showPlaces},
		{ID: "lone", Menu: "Stitch", Label: "Let go of the choice", Rule: true, Can: w.hasChoice, Do: w.s.ChooseNone},
	}
	for i := range 9 {
		letter := string(rune('A' + i))
		t = append(t, &action.Action{ID: "yarn-" + letter, Menu: "Yarn", Label: translation.Fill("Row in yarn {{.Letter}}", "Letter", letter), Say: w.sayYarn(letter),
			Keys: keys(fmt.Sprintf("Alt+%d", i+1)),
			Can:  func() bool { return inRow() && (w.hasYarn(letter) || w.nextYarn() == letter) },
			Gone: func() bool { return !w.hasYarn(letter) },
			Why:  func() string { return w.noYarn(letter) },
			Do:   func() { w.rowYarn(letter) }})
	}
	return append(t, action.Table{
		{ID: "fill", Menu: "Yarn", Label: "Fill the patch", Say: w.sayFill, Keys: keys("Ctrl+Shift+Y"), Can: w.hasChoice, Do: w.fillPatch},
		{ID: "pencil", Menu: "Yarn", Label: "Pencil on the cells", Keys: keys("Ctrl+Shift+L"), Can: made, On: func() bool { letter, _ := w.pair.Pencil(); return letter != "" && w.pair.Cells() }, Do: w.togglePencil},
		{ID: "yarn-new", Menu: "Yarn", Label: "One more yarn", Can: open, Do: w.addYarn, Rule: true},
		{ID: "gauge", Menu: "Yarn", Label: "Gauge…", Can: open, Do: w.askGauge},
		{ID: "swatch", Menu: "Yarn", Label: "Swatch…", Can: open, Do: w.askSwatch},
		{ID: "hands", Menu: "Yarn", Label: "Remember the swatch, or forget it", Can: w.canKeepHands, Do: w.keepOrForget},
		{ID: "wanted", Menu: "Yarn", Label: "Width and length wanted…", Can: made, Do: w.askWanted},
		{ID: "enough", Menu: "Yarn", Label: "Enough for how many rows…", Can: made, Do: w.askEnough},
		{ID: "baby", Menu: "Yarn", Label: "For a baby or small child", Can: open, On: func() bool { return w.s.Pattern().Baby }, Do: w.toggleBaby},
		{ID: "float", Menu: "Yarn", Label: "Longest float you allow…", Can: open, Do: w.askFloat},
		{ID: "other-way", Menu: "Yarn", Label: "Show another way to work the strands", Can: w.canReplan, Do: w.showOtherWay},
		{ID: "use-way", Menu: "Yarn", Label: "Use the other way", Can: w.canReplan, Do: w.useOtherWay},
		{ID: "way", Menu: "Colour", Label: "Next colourway", Keys: keys("F9"), Can: open, Do: func() { w.s.NextColourway(1) }},
		{ID: "way-last", Menu: "Colour", Label: "Last colourway", Keys: keys("Shift+F9"), Can: open, Do: func() { w.s.NextColourway(-1) }},
		{ID: "way-new", Menu: "Colour", Label: "New colourway", Can: open, Do: w.addColourway},
		{ID: "way-name", Menu: "Colour", Label: "Rename the colourway…", Say: w.sayRename, Keys: keys("F2"), Can: open, Do: w.rename},

		{ID: "make", Menu: "View", Label: "Make", Keys: keys("Ctrl+1"), Can: open, On: func() bool { return w.view == makeView }, Do: func() { w.show(makeView) }},
		{ID: "colour", Menu: "View", Label: "Colour", Keys: keys("Ctrl+2"), Can: open, On: func() bool { return w.view == colourView }, Do: func() { w.show(colourView) }},
		{ID: "strands", Menu: "View", Label: "Strands", Keys: keys("Ctrl+3"), Can: open, On: func() bool { return w.view == strandsView }, Do: func() { w.show(strandsView) }},
		{ID: "sizes", Menu: "View", Label: "Sizes", Keys: keys("Ctrl+4"), Can: open, On: func() bool { return w.view == sizesView }, Do: func() { w.show(sizesView) }},
		{ID: "teach", Menu: "View", Label: "Teach", Keys: keys("Ctrl+5", "Ctrl+6"), Can: open, On: func() bool { return w.view == teachView }, Do: func() { w.show(teachView) }},
		{ID: "laid", Menu: "View", Label: "Cloth laid on the piece", Can: made, On: func() bool { return w.sizesSeen.onCloth }, Do: w.layCloth},
		{ID: "left-handed", Menu: "View", Label: "Teach as a left-hander works", On: w.teach.LeftHanded, Do: func() { w.teachHand(!w.teach.LeftHanded()) }},
		{ID: "cells", Menu: "View", Label: "Cells in place of the chart", Keys: keys("Ctrl+L"), Can: open, On: w.pair.Cells, Do: w.toggleCells, Rule: true},
		{ID: "chart-alone", Menu: "View", Label: "Chart alone", Keys: keys("Ctrl+Alt+1"), Can: open, On: func() bool { return w.pair.Alone() == w.pair.Chart }, Do: func() { w.showAlone(w.pair.Chart) }},
		{ID: "cloth-alone", Menu: "View", Label: "Cloth alone", Keys: keys("Ctrl+Alt+2"), Can: open, On: func() bool { return w.pair.Alone() == w.pair.Cloth }, Do: func() { w.showAlone(w.pair.Cloth) }},
		{ID: "larger", Menu: "View", Label: "Larger", Keys: keys("Ctrl+=", "Ctrl+Shift+=", "Ctrl++"), Can: made, Do: func() { w.pair.ZoomMiddle(1.2) }},
		{ID: "smaller", Menu: "View", Label: "Smaller", Keys: keys("Ctrl+-"), Can: made, Do: func() { w.pair.ZoomMiddle(1 / 1.2) }},
		{ID: "whole", Menu: "View", Label: "Whole piece", Keys: keys("Ctrl+0"), Can: made, Do: w.pair.ShowWhole},
		{ID: "next-pane", Menu: "View", Label: "Next pane", Keys: keys("F6"), Do: func() { w.focusNext(1) }, Rule: true},
		{ID: "last-pane", Menu: "View", Label: "Last pane", Keys: keys("Shift+F6"), Do: func() { w.focusNext(-1) }, Bare: true},
		{ID: "menus", Menu: "View", Label: "Menus", Keys: keys("F10"), Do: func() { w.openMenu(0) }, Bare: true},
		{ID: "wider", Menu: "View", Label: "Wider rows", Keys: keys("Ctrl+Alt+Right"), Do: func() { w.moveDivider(24) }, Bare: true},
		{ID: "narrower", Menu: "View", Label: "Narrower rows", Keys: keys("Ctrl+Alt+Left"), Do: func() { w.moveDivider(-24) }, Bare: true},
		{ID: "letters-larger", Menu: "View", Label: "Larger letters", Keys: keys("Ctrl+Alt+=", "Ctrl+Alt++"), Do: func() { w.scaleLetters(.1) }, Rule: true},
		{ID: "letters-smaller", Menu: "View", Label: "Smaller letters", Keys: keys("Ctrl+Alt+-"), Do: func() { w.scaleLetters(-.1) }},
		{ID: "light", Menu: "View", Label: "Light", On: is(theme.Light), Do: dress(theme.Light), Rule: true},
		{ID: "dark", Menu: "View", Label: "Dark", On: is(theme.Dark), Do: dress(theme.Dark)},
		{ID: "system", Menu: "View", Label: "As the system", On: is(theme.System), Do: dress(theme.System)},
		{ID: "full", Menu: "View", Label: "Fill the screen", Keys: keys("F11"), On: w.win.FullScreen, Do: w.fillScreen, Rule: true},

		{ID: "keys", Menu: "Help", Label: "All keys", Keys: keys("F1"), Do: w.showKeys},
		{ID: "about", Menu: "Help", Label: "About Strandway", Do: w.about},
	}...)
}

// named is a menu's label with what it concerns: "Undo typing".
func named(verb string, what func() string) func() string {
	return func() string {
		s := what()
		if s == "" {
			return translation.Say(verb)
		}
		step := translation.Say(s)
		if step == s {
			step = lowerFirst(s) // in English
		}
		return translation.Fill(verb+" {{.What}}", "What", step)
	}
}
