package app

import (
	"math"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"strandway/app/session"
	"strandway/app/settings"
	"strandway/app/theme"
	"strandway/chart/geom"
	"strandway/model/stitch"
	"strandway/samples"
)

// shown is a window of a size on the test driver, with a sample worked to the end.
func shown(t testing.TB, name string, width, height float32) (*window, func()) {
	t.Helper()
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	a := app.NewWithID("bay.marram.strandway.test")
	posted := make(chan func(), 256)
	post := func(f func()) { posted <- f }
	s := session.New(lib, post)
	t.Cleanup(s.Close)
	w := newWindow(a, lib, s, settings.Defaults(), theme.New(theme.Light), post)
	w.win.Resize(fyne.NewSize(width, height))
	if name != "" {
		w.beginSample(name)
	}
	settle := func() {
		t.Helper()
		patience := time.After(20 * time.Second)
		for !s.Current() {
			select {
			case f := <-posted:
				f()
			case <-patience:
				t.Fatal("the background never came to an end")
			}
		}
	}
	settle()
	return w, settle
}

func TestTheTableIsSound(t *testing.T) {
	w, _ := shown(t, "", 1024, 700)
	if err := w.table.Check(); err != nil {
		t.Error(err)
	}
	for _, a := range w.table {
		for _, k := range a.Keys {
			if w.table.For(k) != a {
				t.Errorf("%v does not lead to %s", k, a.ID)
			}
		}
	}
	if got, want := strings.Join(w.table.Menus(), " "), "File Edit Row Stitch Yarn Colour View Help"; got != want {
		t.Errorf("menus are %s, want %s", got, want)
	}
}

// Every action that is possible can be done in every view without harm, the ones that ask included.
func TestEveryActionCanBeDone(t *testing.T) {
	for _, view := range []view{makeView, colourView, strandsView, sizesView} {
		w, settle := shown(t, "groyne-runner", 1440, 900)
		w.show(view)
		for _, a := range w.table {
			if a.ID == "quit" || a.ID == "close" || a.ID == "new" {
				continue // they end the document
			}
			w.run(a)
			settle()
			w.closeSheet()
		}
	}
}

func TestSamplesAtAllSizes(t *testing.T) {
	for _, name := range samples.Names() {
		for _, size := range []fyne.Size{{Width: 1024, Height: 700}, {Width: 1440, Height: 900}, {Width: 2560, Height: 1440}} {
			w, settle := shown(t, name, size.Width, size.Height)
			for piece := range w.s.Pattern().Pieces {
				w.s.ShowPiece(piece)
				settle()
			}
			if picture := w.win.Canvas().Capture(); picture.Bounds().Dx() < 800 {
				t.Errorf("%s at %v: the picture is %v", name, size, picture.Bounds())
			}
		}
	}
}

// One picture alone has the room of both, and its stitches are no smaller for it.
func TestOnePictureAlone(t *testing.T) {
	w, settle := shown(t, "groyne-runner", 1440, 900)
	settle()
	both := w.pair.Chart.Size()
	w.showAlone(w.pair.Chart)
	settle()
	if alone := w.pair.Chart.Size(); alone.Width*alone.Height < 1.8*both.Width*both.Height || w.pair.Cloth.Visible() {
		t.Errorf("alone the chart has %v, beside the cloth %v", alone, both)
	}
	w.focusNext(1)
	for range 8 {
		if w.win.Canvas().Focused() == w.pair.Cloth {
			t.Fatal("the cloth, which is not shown, has the keys")
		}
		w.focusNext(1)
	}
	w.showAlone(w.pair.Chart)
	settle()
	if w.pair.Chart.Size() != both || !w.pair.Cloth.Visible() {
		t.Error("a second time does not show both again")
	}
}

// Columns of chart and cloth stand at the same x when one stands above the other.
func TestChartAndClothShareColumns(t *testing.T) {
	w, settle := shown(t, "", 1440, 900)
	p := session.Blank()
	p.Pieces[0].Rows = "With A, ch 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\n"
	w.beginWith(p)
	settle()
	size := w.pair.Chart.Size()
	if w.pair.Cloth.Size().Width != size.Width {
		t.Fatal("the pair does not stand one above the other")
	}
	for _, x := range []float64{3, 17.5, 30} {
		a := w.pair.Chart.At(geom.Point{X: x})
		b := w.pair.Cloth.At(geom.Point{X: x})
		if math.Abs(a.X-b.X) > .5 {
			t.Errorf("column %g stands at %.2f in the chart and at %.2f in the cloth", x, a.X, b.X)
		}
	}
}

func TestAChangeIsAskedForOnceBeforeItIsLost(t *testing.T) {
	w, settle := shown(t, "groyne-runner", 1024, 700)
	w.s.Type("x")
	settle()
	gone := false
	w.ifSettled(func() { gone = true })
	if gone || !w.sheetOpen() {
		t.Fatal("the change was let go without a word")
	}
	w.ifSettled(func() { gone = true })
	w.closeSheet()
	if gone || w.sheetOpen() {
		t.Error("asked twice, or gone when the question was left")
	}
	if err := w.s.Save(t.TempDir() + "/x.strand"); err != nil {
		t.Fatal(err)
	}
	w.ifSettled(func() { gone = true })
	if !gone {
		t.Error("nothing was unsaved, and it was asked all the same")
	}
}

// Enter behind the foundation opens Row 1, whatever stands behind its last word.
func TestEnterOpensTheNextRow(t *testing.T) {
	for typed, want := range map[string]string{
		"With A, ch 21.":  "With A, ch 21.\nRow 1: Sc in each ch.",
		"With A, ch 21. ": "With A, ch 21. \nRow 1: Sc in each ch.",
		"Ch 21":           "Ch 21\nRow 1: Sc in each ch.",
	} {
		w, settle := shown(t, "", 1024, 700)
		w.beginWith(session.Blank())
		write := func(s string) {
			for _, r := range s {
				w.page.TypedRune(r)
			}
		}
		write(typed)
		w.page.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		write("Sc in each ch.")
		settle()
		if got := w.s.Rows(); got != want {
			t.Errorf("after %q the rows are %q, want %q", typed, got, want)
		}
	}
}

// Tab goes round the buttons and fields of a sheet and never reaches the rows behind it.
func TestTabStaysOnTheSheet(t *testing.T) {
	w, _ := shown(t, "groyne-runner", 1024, 700)
	before := w.s.Rows()
	tab := &fyne.KeyEvent{Name: fyne.KeyTab}
	for _, open := range []func(){
		func() {
			w.choose("Which?", "", choice{label: "This", first: true, do: func() {}}, choice{label: "That", do: func() {}})
		},
		w.askRow,
		func() { w.pickColour(w.s.Pattern().Yarns[0]) },
	} {
		open()
		for range 6 {
			f := w.win.Canvas().Focused()
			if f == nil || f == fyne.Focusable(w.page) {
				t.Fatalf("the keys are with %T", f)
			}
			if on, ok := f.(fyne.Tabbable); !ok || !on.AcceptsTab() {
				t.Fatalf("%T lets Tab go", f)
			}
			f.TypedKey(tab)
			w.win.Canvas().Focused().TypedRune('x')
		}
		w.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		if w.sheetOpen() {
			t.Error("Esc left the sheet open")
		}
	}
	if w.s.Rows() != before {
		t.Error("the rows were written to behind a sheet")
	}
}

func TestAKeyForAYarnThatIsNotThereSaysSo(t *testing.T) {
	w, _ := shown(t, "", 1024, 700)
	w.beginWith(session.Blank())
	for _, a := range w.table {
		if a.ID == "yarn-B" {
			w.run(a)
		}
	}
	if !strings.Contains(w.said, "no yarn B") {
		t.Errorf("said %q", w.said)
	}
}

const mat = `Pebble Mat

Materials
Harbour Worsted in Deep Water (A)
4 mm hook

Gauge: 16 sts and 18 rows = 10 cm in sc

With A, ch 21.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (20 sc)
Row 2: Ch 1, sc in each st across, turn. (20 sc)
Row 3: Ch 1, sc in each st across, frobble. (20 sc)
Fasten off.
`

// A whole page pasted where nothing is written becomes a pattern, in one step of undo.
func TestPasteOfAWholePage(t *testing.T) {
	w, settle := shown(t, "", 1024, 700)
	w.app.Clipboard().SetContent(mat)
	w.paste()
	if w.sheetOpen() { // the terms are not clear: take the first answer
		w.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	}
	settle()
	p := w.s.Pattern()
	if p.Title != "Pebble Mat" || p.Hook.MM != 4 || w.view != makeView || !w.s.Changed() {
		t.Fatalf("the page became %q with a hook of %g mm", p.Title, p.Hook.MM)
	}
	if !strings.Contains(w.s.Rows(), "Row 2: Ch 1, sc in each st across, turn.") {
		t.Errorf("the rows are %q", w.s.Rows())
	}
	w.s.Undo()
	if w.s.Rows() != "" {
		t.Error("one undo does not take the page back")
	}
}

func TestRowsAlonePasteAsTheyAre(t *testing.T) {
	w, _ := shown(t, "", 1024, 700)
	w.beginWith(session.Blank())
	rows := "With A, ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across."
	w.app.Clipboard().SetContent(rows)
	w.paste()
	if w.s.Rows() != rows {
		t.Errorf("the rows are %q", w.s.Rows())
	}
}

// Tab completes a word that is begun; behind a whole one it opens the next row.
func TestTabInTheRows(t *testing.T) {
	w, settle := shown(t, "", 1024, 700)
	w.beginWith(session.Blank())
	for _, r := range "With A, ch 21. Sc in each c" {
		w.page.TypedRune(r)
	}
	tab := func() { w.page.TypedKey(&fyne.KeyEvent{Name: fyne.KeyTab}) }
	tab()
	if got := w.s.Rows(); !strings.HasSuffix(got, "each ch") {
		t.Errorf("completed to %q", got)
	}
	w.page.TypedRune('.')
	tab()
	settle()
	if got := w.s.Rows(); !strings.HasSuffix(got, "each ch.\nRow 1: ") {
		t.Errorf("Tab behind the row gives %q", got)
	}
}

// A stitch in rows written as one can be changed once they have been written out, in one step.
func TestRowsWrittenAsOneAreWrittenOut(t *testing.T) {
	w, settle := shown(t, "groyne-runner", 1440, 900)
	before := w.s.Rows()
	f := w.s.Made().Fabric()
	row := 0
	for i := range f.Rows {
		if f.Rows[i].No == 10 {
			row = i
		}
	}
	id := f.Rows[row].First + 2
	w.s.Choose([]int32{id}, id)
	w.takeOut()
	if !w.sheetOpen() {
		t.Fatalf("nothing was offered; said %q", w.said)
	}
	w.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	settle()
	if !strings.Contains(w.s.Rows(), "Row 10") || strings.Contains(w.s.Rows(), "Rows 8") {
		t.Errorf("the rows are not written out; said %q", w.said)
	}
	if !w.s.Chosen().Has(id) {
		t.Errorf("chosen is %v, want %d", w.s.Chosen(), id)
	}
	w.s.Undo()
	if w.s.Rows() != before {
		t.Error("it takes more than one undo")
	}
}

// A stitch dragged from the tray onto another is worked in its place.
func TestAStitchDroppedOnAnother(t *testing.T) {
	w, settle := shown(t, "", 1440, 900)
	p := session.Blank()
	p.Pieces[0].Rows = "With A, ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn."
	w.beginWith(p)
	settle()
	kind, ok := w.lib.Kind("dc")
	if !ok {
		t.Fatal("no dc")
	}
	at, found := fyne.Position{}, false
	place := w.app.Driver().AbsolutePositionForObject(w.pair.Chart)
	last := int32(len(w.s.Made().Fabric().Stitches) - 1)
	for x := float32(0); x < w.pair.Chart.Size().Width && !found; x += 4 {
		for y := float32(0); y < w.pair.Chart.Size().Height && !found; y += 4 {
			at = place.AddXY(x, y)
			id, hit := w.pair.Chart.StitchAt(at)
			found = hit && id == last
		}
	}
	w.dropStitch(kind, at)
	settle()
	if !found || !strings.Contains(w.s.Rows(), "dc") {
		t.Errorf("found %t; the rows are %q; said %q", found, w.s.Rows(), w.said)
	}
	before := w.s.Rows()
	w.dropStitch(kind, fyne.NewPos(2, 2))
	if w.s.Rows() != before {
		t.Error("a stitch dropped beside the pictures changed the rows")
	}
}
