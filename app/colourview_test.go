package app

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"strandway/app/control"
	"strandway/app/session"
	"strandway/app/translation"
	"strandway/model"
	"strandway/model/colour"
	"strandway/model/palette"
	"strandway/model/pattern"
)

// lateWork has what the window draws in the background handed over by the function it gives.
func lateWork(t *testing.T, w *window) (wait func(until func() bool)) {
	late := make(chan func(), 64)
	w.post = func(f func()) { late <- f }
	return func(until func() bool) {
		t.Helper()
		for patience := time.After(20 * time.Second); !until(); {
			select {
			case f := <-late:
				f()
			case <-patience:
				t.Fatal("the background never came to an end")
			}
		}
	}
}

// spot is the place of a panel whose hint begins with some words.
func spot(t *testing.T, p *control.Panel, hint string) control.Spot {
	t.Helper()
	for _, s := range p.Spots() {
		if strings.HasPrefix(s.Hint, hint) {
			return s
		}
	}
	t.Fatalf("there is nothing to click that would %s", hint)
	return control.Spot{}
}

func ownColours(w *window) string {
	var out []string
	for _, s := range model.Shades(w.s.Pattern(), w.s.Colourway()) {
		out = append(out, s.Colour)
	}
	return strings.Join(out, " ")
}

// Every leaf of the Colour view at the two sizes, and all that can be clicked on it.
func TestLeavesOfTheColourView(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 1024, Height: 700}, {Width: 1440, Height: 900}} {
		w, settle := shown(t, "quayside-cushion", size.Width, size.Height)
		wait := lateWork(t, w)
		for _, l := range leaves {
			w.contact.crop.buffer = nil
			w.showLeaf(l.leaf)
			wait(func() bool { return w.contact.crop.buffer != nil })
			spots := w.colour.Spots()
			if len(spots) < 6 {
				t.Errorf("%s has only %d places to click", l.name, len(spots))
			}
			for _, s := range spots {
				if s.X < 0 || s.X+s.W > w.colour.Size().Width+1 {
					t.Errorf("%s at %v: %q reaches beyond the view", l.name, size, s.Hint)
				}
			}
		}
		settle()
	}
}

func TestLettersChangeShadesInOneStep(t *testing.T) {
	w, settle := shown(t, "quayside-cushion", 1440, 900)
	w.showLeaf(lettersLeaf)
	before := ownColours(w)
	a, b, c := before[:7], before[8:15], before[16:]
	for _, tt := range []struct {
		name, lock string
		do         func()
		want       string
	}{
		{"swap", "", func() { w.swapLetters(0, 1) }, b + " " + a + " " + c},
		{"rotate", "", w.rotateLetters, b + " " + c + " " + a},
		{"rotate about a lock", "B", w.rotateLetters, c + " " + b + " " + a},
		{"dragged onto another", "", func() {
			strip := w.app.Driver().AbsolutePositionForObject(w.strip)
			third := spot(t, w.strip, "another shade for C")
			spot(t, w.strip, "another shade for A").Drop(strip.AddXY(third.X+40, third.Y+10))
		}, c + " " + b + " " + a},
		{"the last order", "", func() {
			all, _ := w.orders()
			all[len(all)-1].do()
		}, c + " " + b + " " + a},
	} {
		w.contact.locked = map[string]bool{tt.lock: true}
		tt.do()
		settle()
		if got := ownColours(w); got != tt.want {
			t.Errorf("%s gives %s, want %s", tt.name, got, tt.want)
		}
		w.s.Undo()
		if got := ownColours(w); got != before {
			t.Errorf("%s is not taken back by one undo: %s", tt.name, got)
		}
	}
	settle()
	w.contact.locked = map[string]bool{"A": true}
	w.swapLetters(0, 1)
	if got := ownColours(w); got != before || !strings.HasPrefix(w.said, "A keeps its shade") {
		t.Errorf("a locked letter was swapped: %s, %q", got, w.said)
	}
	if all, _ := w.orders(); len(all) != 2 {
		t.Errorf("with one of three letters locked there are %d orders", len(all))
	}
}

func TestSuggestionsAreAdopted(t *testing.T) {
	w, settle := shown(t, "quayside-cushion", 1440, 900)
	w.showLeaf(suggestLeaf)
	was := model.Shades(w.s.Pattern(), w.s.Colourway())
	spot(t, w.strip, "keep the shade of C").Do()
	all, why := w.suggested(w.s.Made())
	if len(all) < 4 || why != "" {
		t.Fatalf("%d suggestions, %q", len(all), why)
	}
	for _, s := range all {
		if s.shades[2] != was[2] {
			t.Errorf("%s changes the locked letter", s.name)
		}
	}
	ways := len(w.s.Pattern().Colourways)
	all[1].do()
	settle()
	added, ok := w.s.Pattern().Colourway(all[1].name)
	if !ok || len(w.s.Pattern().Colourways) != ways+1 || w.s.Colourway() != added.Name || w.contact.leaf != waysLeaf {
		t.Fatalf("after the click %d colourways, %q shown", len(w.s.Pattern().Colourways), w.s.Colourway())
	}
	w.adopt(all[1].name, all[1].shades)
	if _, ok := w.s.Pattern().Colourway(all[1].name + " 2"); !ok {
		t.Error("a second one of the name has no name of its own")
	}
	w.s.Undo()
	w.s.Undo()
	if len(w.s.Pattern().Colourways) != ways {
		t.Error("it takes more than one undo each")
	}
}

func TestSuggestionsFromTheYarnsAtHome(t *testing.T) {
	w, settle := shown(t, "quayside-cushion", 1440, 900)
	list := filepath.Join(t.TempDir(), "home.toml")
	if err := os.WriteFile(list, []byte("[[yarn]]\nname = \"Lantern DK\"\nshade = \"Ink\"\ncolour = \"#22334f\"\n[[yarn]]\nname = \"Lantern DK\"\nshade = \"Foam\"\ncolour = \"#e9e4d6\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	w.set.Stash = list
	w.showLeaf(suggestLeaf)
	spot(t, w.colour, "only yarns of your list").Do()
	whole := w.contact.stash
	w.contact.stash = whole[:1]
	if _, why := w.suggested(w.s.Made()); !strings.Contains(why, "holds only 1") {
		t.Errorf("one yarn for three letters: %q", why)
	}
	w.contact.stash = whole
	w.toggleLock("A")
	all, _ := w.suggested(w.s.Made())
	if len(all) == 0 {
		t.Fatal("nothing is suggested from two yarns for two letters")
	}
	for _, s := range all {
		names := []string{s.shades[1].Shade, s.shades[2].Shade}
		slices.Sort(names)
		if !slices.Equal(names, []string{"Lantern DK, Foam", "Lantern DK, Ink"}) {
			t.Errorf("%s takes %q", s.name, names)
		}
	}
	w.set.Stash = filepath.Join(t.TempDir(), "gone.toml")
	w.contact.stash, w.contact.fromStash = nil, false
	w.useStash()
	if w.contact.fromStash || !strings.Contains(w.said, "gone.toml") {
		t.Errorf("a list that is gone: %q", w.said)
	}
	settle()
}

// The window says the same of yarns that touch as the command, and offers the teaching shades in one step.
func TestReadingAndTeaching(t *testing.T) {
	w, settle := shown(t, "quayside-cushion", 1440, 900)
	w.showLeaf(readLeaf)
	ways := len(w.s.Pattern().Colourways)
	w.adoptTeaching()
	settle()
	if w.s.Colourway() != teachingName || len(w.s.Pattern().Colourways) != ways+1 {
		t.Fatalf("%q is shown", w.s.Colourway())
	}
	m := w.s.Made()
	if f := palette.OnCamera(m.Work.YarnColours(w.s.Piece(), teachingName), palette.Touching(m.Fabric())); !f.Reads() {
		t.Errorf("the teaching colourway does not read on camera: %+v", f)
	}
	w.s.Undo()
	settle()
	w.contact.locked = map[string]bool{"C": true} // Net Blue is too dark
	w.adoptTeaching()
	if !strings.Contains(w.said, "the best there is") || !strings.Contains(w.said, "lost in C") {
		t.Errorf("of weak teaching shades it says %q", w.said)
	}
}

func TestColoursAreReadAsWritten(t *testing.T) {
	w, settle := shown(t, "quayside-cushion", 1440, 900)
	l, a, b := colour.Lab(color.NRGBA{47, 93, 124, 255})
	for _, written := range []string{"#2f5d7c", "rgb 47 93 124", fmt.Sprintf("lab %.2f %.2f %.2f", l, a, b)} {
		p := w.picker(w.s.Pattern().Yarns[1])
		w.openSheet(p.sheet)
		p.hex.SetText(written)
		p.take()
		settle()
		if got := colour.Hex(w.shade(w.s.Pattern().Yarns[1])); got != "#2f5d7c" || w.sheetOpen() {
			t.Errorf("%q gives %s", written, got)
		}
		w.s.Undo()
	}
	p := w.picker(w.s.Pattern().Yarns[1])
	w.openSheet(p.sheet)
	p.hex.SetText("sea")
	p.take()
	if !w.sheetOpen() {
		t.Error("a word that is no colour was taken")
	}
}

// halves is a picture of two colours beside one another.
func halves(left, right color.Color) image.Image {
	img := image.NewNRGBA(image.Rect(0, 0, 80, 60))
	draw.Draw(img, image.Rect(0, 0, 40, 60), image.NewUniform(left), image.Point{}, draw.Src)
	draw.Draw(img, image.Rect(40, 0, 80, 60), image.NewUniform(right), image.Point{}, draw.Src)
	return img
}

func TestShadesFromAPhotograph(t *testing.T) {
	w, settle := shown(t, "quayside-cushion", 1440, 900)
	path := filepath.Join(t.TempDir(), "ball.png")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	blue, rust := color.NRGBA{47, 93, 124, 255}, color.NRGBA{179, 74, 42, 255}
	if err := png.Encode(f, halves(blue, rust)); err != nil {
		t.Fatal(err)
	}
	f.Close()
	picture, err := readPhotograph(path)
	if err != nil {
		t.Fatal(err)
	}
	p, err := w.photographed(w.s.Pattern().Yarns[0], picture)
	if err != nil {
		t.Fatal(err)
	}
	w.openSheet(p.sheet)
	if err := p.look(2); err != nil || len(p.along) != 2 {
		t.Fatalf("%d colours, %v", len(p.along), err)
	}
	p.at = 1
	p.take()
	settle()
	if d := colour.Difference(w.shade(w.s.Pattern().Yarns[0]), rust); d > 3 {
		t.Errorf("the shade is %.0f from the chosen colour", d)
	}
	w.s.Undo()
	p.takeSequence()
	settle()
	y := w.s.Pattern().Yarns[0]
	if y.Look != "variegated" || len(y.Colours) != 2 || colour.Hex(w.shade(y)) != y.Colours[0] {
		t.Errorf("the yarn is %+v", y)
	}
	if _, err := readPhotograph(filepath.Join(t.TempDir(), "none.png")); err == nil {
		t.Error("a picture that is not there was read")
	}
}

// A sheet is saved with the pictures of the leaf that is open.
func TestTheLeafIsSavedAsASheet(t *testing.T) {
	w, settle := shown(t, "quayside-cushion", 1440, 900)
	m := w.s.Made()
	for leaf, want := range map[colourLeaf]int{waysLeaf: 3, lettersLeaf: 6, readLeaf: 5} {
		w.showLeaf(leaf)
		ways := w.contactWays(m)
		if len(ways) != want {
			t.Errorf("%s has %d pictures, want %d", leaves[leaf].name, len(ways), want)
		}
		for _, way := range ways {
			if way.Name == "" || way.Says == "" || len(way.Yarns) != 3 {
				t.Errorf("%s: a picture says %q, %q", leaves[leaf].name, way.Name, way.Says)
			}
		}
	}
	w.showLeaf(lettersLeaf)
	w.contact.seen = sights()[2]
	if got, want := w.contactTitle(), "Quayside Cushion: Front, Market day, Grey"; got != want {
		t.Errorf("over the sheet stands %q, want %q", got, want)
	}
	settle()
}

func BenchmarkRedrawLetters(b *testing.B) {
	w, _ := shown(b, "quayside-cushion", 1440, 900)
	late := make(chan func(), 64)
	w.post = func(f func()) { late <- f }
	w.showLeaf(lettersLeaf)
	for w.contact.crop.buffer == nil {
		(<-late)()
	}
	for b.Loop() {
		w.colour.Redraw()
	}
}

// A pattern with nothing written, with one yarn, without yarns and with a fault has its leaves too.
func TestLeavesOfPoorPatterns(t *testing.T) {
	one, none, faulty := session.Blank(), session.Blank(), session.Blank()
	one.Pieces[0].Rows = "With A, ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n"
	none.Yarns, none.Pieces[0].Rows = nil, one.Pieces[0].Rows
	faulty.Pieces[0].Rows = "With A, ch 11.\nRow 1: Zigzag the boat.\nRow 2 (B): Ch 1, sc in each st across.\n"
	for name, p := range map[string]*pattern.Pattern{"nothing written": session.Blank(), "one yarn": one, "no yarns": none, "a fault": faulty} {
		w, settle := shown(t, "", 1024, 700)
		w.beginWith(p)
		settle()
		for _, l := range leaves {
			w.showLeaf(l.leaf)
			if len(w.colour.Spots()) < 4 {
				t.Errorf("%s: %s has no heads", name, l.name)
			}
		}
		w.adoptTeaching()
		w.rotateLetters()
		w.s.ChooseNone()
		settle()
	}
}

// What a step of colours, notes and symbols is called stands in the menu, in every language.
func TestStepsHaveNamesInEveryLanguage(t *testing.T) {
	for _, language := range translation.Languages {
		words, err := translation.Words(language)
		if err != nil {
			t.Fatal(err)
		}
		for _, step := range []string{
			"Swap two letters", "Rotate the letters", "Other order of the letters", "New colourway", "Colour from a photograph",
			"Colours from a photograph", "Note on the chart", "Move the note", "Words of the note", "Take the note out",
			"Symbol of a stitch", "A stitch of your own",
		} {
			if words[step] == "" {
				t.Errorf("%s has no name for %q", language, step)
			}
		}
		for _, l := range leaves {
			if words[l.name] == "" || words[l.hint] == "" {
				t.Errorf("%s does not say %q, %q", language, l.name, l.hint)
			}
		}
		for _, s := range sights() {
			if words[s.name] == "" {
				t.Errorf("%s does not say %q", language, s.name)
			}
		}
		for _, g := range grounds {
			if words[g.name] == "" {
				t.Errorf("%s does not say %q", language, g.name)
			}
		}
	}
}
