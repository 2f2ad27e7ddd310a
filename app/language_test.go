package app

import (
	"testing"

	"strandway/app/control"
	"strandway/app/theme"
	"strandway/app/translation"
)

const (
	room     = 1.35 // how much wider than in English a menu may come out
	smallest = 1024 // px, the width of the smallest window
	between  = 28   // px between two names of the menu bar
)

func TestEveryLabelIsTranslatedAndHasRoom(t *testing.T) {
	w, _ := shown(t, "", smallest, 700)
	for _, language := range translation.Languages {
		words, err := translation.Words(language)
		if err != nil {
			t.Fatal(err)
		}
		in := func(english string) string {
			said, ok := words[english]
			if !ok {
				t.Errorf("%s has no word for %q", language, english)
			}
			return said
		}
		width := func(s string) float32 { return control.Width(s, theme.Body, false) }

		bar := float32(0)
		for _, menu := range w.table.Menus() {
			bar += width(in(menu)) + between
			widest, widestEnglish := float32(0), float32(0)
			for _, a := range w.table.In(menu) {
				if len(a.ID) == len("yarn-A") && a.Menu == "Yarn" {
					continue // one sentence with the letter filled in, below
				}
				widest, widestEnglish = max(widest, width(in(a.Label))), max(widestEnglish, width(a.Label))
			}
			if widest > room*widestEnglish {
				t.Errorf("%s: menu %s comes out %.0f px wide, in English %.0f", language, menu, widest, widestEnglish)
			}
		}
		if bar > smallest {
			t.Errorf("%s: the menu bar comes out %.0f px wide", language, bar)
		}

		tabs := float32(0)
		for _, view := range []string{"Make", "Colour", "Strands", "Sizes", "Teach"} {
			tabs += tabWidth(in(view)) + 4
		}
		if right := smallest - w.rowsWidth(smallest); tabs > right {
			t.Errorf("%s: the views take %.0f px of %.0f in the smallest window", language, tabs, right)
		}
		for _, sentence := range []string{
			"Undo {{.What}}", "Redo {{.What}}", "Row in yarn {{.Letter}}", "Typing", "Deleting", "Mend", "Paste", "Cut",
			"Saved", "Not saved", "New", "right side", "wrong side", "{{.N}} stitches", "none", "no faults", "Findings", "Chart", "Cells", "Cloth",
			"Begin with", "Open again", "Open with them", "Let them go", "Take the other file", "Keep mine", "See both",
		} {
			in(sentence)
		}
		for _, b := range beginnings {
			in(b.name)
			in(b.about)
		}
	}
}
