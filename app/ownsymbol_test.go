package app

import (
	"testing"

	"fyne.io/fyne/v2"

	"strandway/chart"
	"strandway/chart/geom"
	"strandway/model/pattern"
)

func TestSymbolsOfOnesOwnAreDrawn(t *testing.T) {
	w, settle := shown(t, "cockle-wrap", 1024, 700)
	w.showBoard()
	if !w.sheetOpen() {
		t.Fatal("there is no drawing board")
	}
	of := w.s.Pattern().Stitches[0]
	b := w.board(pattern.Special{Abbreviation: of.Abbreviation})
	w.openSheet(b.sheet)
	at := func(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }
	// The grid's points are clicked as any spot is.
	clicked := false
	for i, s := range b.sheet.card.Spots() {
		if s.First {
			s.Do()
			clicked = i > 0
		}
	}
	if !clicked || b.text() != "" || len(b.inHand().Points) != 1 {
		t.Fatalf("the foot was clicked and the strokes are %v", b.strokes)
	}
	for _, p := range []geom.Point{at(0, 1), at(0, 1), at(0, 2)} { // the same point twice is one
		b.add(p)
	}
	b.lift()
	b.add(at(-1, 1.5))
	b.add(at(1, 1.5))
	b.add(at(3, 1.5))
	b.takeBack()
	if got, want := b.text(), "M 0 0 L 0 1 L 0 2 M -1 1.5 L 1 1.5"; got != want {
		t.Errorf("drawn is %q, want %q", got, want)
	}
	b.lift()
	for _, p := range []geom.Point{at(0, 2), at(.5, 2.5), at(-.5, 2.5), at(0, 2)} { // back to the beginning
		b.add(p)
	}
	if got, want := b.text(), "M 0 0 L 0 1 L 0 2 M -1 1.5 L 1 1.5 M 0 2 L 0.5 2.5 L -0.5 2.5 Z"; got != want {
		t.Errorf("drawn is %q, want %q", got, want)
	}
	before := w.s.Pattern()
	b.use(b.text())
	settle()
	own, err := chart.OwnOf(w.s.Pattern())
	if err != nil || len(own) != 1 || own[0].Abbreviation != of.Abbreviation || w.sheetOpen() {
		t.Errorf("the pattern has %v, %v", own, err)
	}

	again := w.board(w.s.Pattern().Stitches[0])
	if again.text() != b.text() {
		t.Errorf("opened again it is %q", again.text())
	}
	for range 4 { // the empty stroke, and the triangle: opened, then point by point
		again.takeBack()
	}
	if got, want := again.text(), "M 0 0 L 0 1 L 0 2 M -1 1.5 L 1 1.5"; got != want {
		t.Errorf("after taking back it is %q, want %q", got, want)
	}
	again.picked = "popcorn"
	if again.text() != "popcorn" {
		t.Error("the picked symbol is not taken")
	}
	w.s.Undo()
	if w.s.Pattern() != before {
		t.Error("it takes more than one undo")
	}
}

func TestEveryWholeSymbolCanBePicked(t *testing.T) {
	for _, name := range wholeSymbols() {
		if _, err := chart.OwnSymbol("x", name); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestAStitchOfOnesOwnIsAskedFor(t *testing.T) {
	w, settle := shown(t, "groyne-runner", 1440, 900)
	w.showBoard() // there is none yet, so it is asked for
	if !w.sheetOpen() {
		t.Fatal("nothing was asked")
	}
	s := w.ownStitch()
	w.openSheet(s)
	s.fields[0].field.SetText("tuft")
	s.fields[2].field.SetText("(hdc, ch 1, hdc) in indicated place")
	s.fields[2].field.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	settle()
	if own := w.s.Pattern().Stitches; len(own) != 1 || own[0].Abbreviation != "tuft" || own[0].US == "" || !w.sheetOpen() {
		t.Errorf("the pattern has %v", own)
	}
}
