package app

import (
	"image"
	"image/color"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"

	"strandway/app/action"
	"strandway/app/control"
	"strandway/app/guide"
	"strandway/app/picture"
	"strandway/app/rows"
	"strandway/app/session"
	"strandway/app/settings"
	"strandway/app/teach"
	"strandway/app/theme"
	"strandway/app/translation"
	"strandway/model"
	"strandway/model/edit"
	"strandway/model/stitch"
)

// view is what the right page shows.
type view int

const (
	startView view = iota // nothing is open yet
	makeView
	colourView
	strandsView
	sizesView
	teachView
)

// window holds the parts of the window together.
type window struct {
	app   fyne.App
	post  func(func()) // runs a function on the window's goroutine
	win   fyne.Window
	lib   *stitch.Library
	s     *session.Session
	set   *settings.Settings
	th    *theme.Theme
	table action.Table

	menuKeys map[action.Chord]int // the menus by the keys that open them

	view       view
	said       string                    // the status line's passing word, until the next change
	hint       string                    // what lies under the pointer
	symbols    map[symbolKey]image.Image // of the tray
	terms      string                    // that the tray is written in
	typed      string                    // letters typed in a picture, not yet a stitch
	completing completing
	words      *control.Panel // the list of words to complete by
	resting    *time.Timer    // judges what was typed last; nil before the first letter
	sought     string         // what was looked for last in the rows

	page     *rows.Page
	pair     *picture.Pair
	head     *control.Panel // of the rows
	tabs     *control.Panel
	tray     *control.Panel
	strip    *control.Panel
	findings *control.Panel
	status   *control.Panel
	colour   *control.Panel
	strands  *control.Panel
	sizes    *control.Panel
	start    *control.Panel
	teach    *teach.View
	divider  *divider
	desk     *fyne.Container
	lines    []*canvas.Rectangle
	over     *fyne.Container // the sheet that is open, above all
	top      int             // first finding shown in the list
	notice   *control.Panel  // the strip above the view
	notices  []notice        // those that wait; the strip shows the first
	keeper   keeper
	carried  *fyne.Container // a stitch on its way from the tray; nil while none is
	brush    string          // letter of the yarn that stitches were coloured in last
	strokes  []func()        // of the pencil, that wait to be worked
	guide    *guide.Guide    // through the first mat; nil when it is not walked
	contact  contact

	alone      bool   // the stage has the screen to itself
	stopFrames func() // stops the frames that are being saved; nil while none are

	reckoning   *reckoning    // of what is shown, or of what was shown before
	asked       *model.Worked // what is being reckoned
	askedPiece  int
	reckons     bool // the background is at it
	strandsSeen strandsSight
	sizesSeen   sizesSight

	startScroll, startTall float32
}

func newWindow(a fyne.App, lib *stitch.Library, s *session.Session, set *settings.Settings, th *theme.Theme, post func(func())) *window {
	a.Settings().SetTheme(th)
	w := &window{app: a, brush: "A", post: post, symbols: map[symbolKey]image.Image{}, menuKeys: map[action.Chord]int{}, win: a.NewWindow("Strandway"), lib: lib, s: s, set: set, th: th}
	s.SetLook(session.Look{Dark: th.IsDark()})
	w.page = rows.New(s, th)
	w.page.Shortcut, w.page.Hint = w.runShortcut, w.showHint
	w.page.MoveRow = w.carryRow
	w.page.Menu = func(at fyne.Position) { w.popUp(rowsMenu, at) }
	w.page.Complete = func() bool { return w.complete(false) }
	w.page.First, w.page.Typed, w.page.Left = w.listKey, w.typedInRows, w.closeWords
	w.page.Keys, w.page.NewRow, w.page.Modifiers = w.plainKey, w.newRow, w.modifiers
	w.pair = picture.New(s, th, post)
	w.pair.Yarns, w.pair.Drew, w.pair.Draw, w.pair.ShowsAlone = w.inks, w.drew, w.togglePencil, w.showAlone
	w.pair.Menu = func(at fyne.Position) { w.popUp(pictureMenu, at) }
	w.pair.Modifiers, w.pair.Over, w.pair.Noted = w.modifiers, w.overStitch, w.sayNote
	w.pair.Key, w.pair.Letter = w.pictureKey, w.pictureLetter

	panel := func(height float32, draw func(*control.Canvas, theme.Tokens, fyne.Size) []control.Spot) *control.Panel {
		p := control.NewPanel(th, control.Row(height), draw)
		p.Keys, p.Hint = w.plainKey, w.showHint
		return p
	}
	w.head = panel(44, w.drawHead)
	w.tabs = panel(44, w.drawTabs)
	w.tray = panel(54, w.drawTray)
	w.strip = panel(76, w.drawStrip)
	w.findings = panel(136, w.drawFindings)
	w.status = panel(28, w.drawStatus)
	w.colour = panel(200, w.drawColour)
	w.strands = panel(200, w.drawStrands)
	w.sizes = panel(200, w.drawSizes)
	w.start = panel(200, w.drawStart)
	w.words = panel(wordHeight, w.drawWords)
	w.words.Hide()
	w.completing.shut = -1
	w.notice = panel(noticeHeight, w.drawNotice)
	w.notice.Hide()
	w.colour.Wheel, w.start.Wheel = w.scrollColour, w.scrollStart
	w.strands.Wheel, w.sizes.Wheel = w.scrollStrands, w.scrollSizes
	w.findings.Wheel = func(by float32) {
		if by < 0 {
			w.top++
		} else {
			w.top--
		}
	}
	w.contact.w = w
	w.teach = teach.New(s, lib, th, post)
	w.teach.Keys, w.teach.Save, w.teach.Told = w.plainKey, w.askFrames, w.tellStep
	w.teach.Hand = w.teachHand
	w.teach.SetLeftHanded(set.LeftHanded)
	w.teach.Hide()
	w.divider = newDivider(w)

	w.over = container.NewStack()
	w.table = inLanguage(slices.Concat(w.actions(), w.noteActions(), w.symbolActions(), w.colourActions()))
	w.win.SetMainMenu(w.menu())
	w.bindMenus()
	w.bindMoreKeys()
	w.win.Canvas().SetOnTypedKey(func(e *fyne.KeyEvent) { w.plainKey(e) })
	w.lines = []*canvas.Rectangle{canvas.NewRectangle(color.Transparent), canvas.NewRectangle(color.Transparent), canvas.NewRectangle(color.Transparent), canvas.NewRectangle(color.Transparent), canvas.NewRectangle(color.Transparent)}
	w.desk = container.New(&deskLayout{w}, w.page, w.head, w.findings, w.tabs, w.tray, w.pair, w.colour, w.strands, w.sizes, w.start, w.strip, w.status)
	for _, l := range w.lines {
		w.desk.Add(l)
	}
	w.desk.Add(w.divider)
	w.desk.Add(w.notice)
	w.desk.Add(w.words)
	w.desk.Add(w.teach) // above all, for when it has the screen to itself
	w.win.SetPadded(false)
	w.win.SetContent(container.NewStack(w.desk, w.over))
	w.win.Resize(fyne.NewSize(set.Width, set.Height))
	w.win.SetCloseIntercept(w.quit)
	w.win.SetOnDropped(func(_ fyne.Position, files []fyne.URI) {
		if len(files) > 0 {
			w.ifSettled(func() { w.open(files[0].Path()) })
		}
	})
	s.Watch(w.changed)
	s.Watch(func(c session.Change) {
		if c&session.File != 0 && c&session.Pictures != 0 {
			w.leaveGuide() // another document
			w.contact.locked, w.contact.scroll = nil, 0
		}
		w.seeGuide("")
	})
	w.show(startView)
	w.redress()
	w.win.Canvas().Focus(w.page)
	return w
}

// modifiers are the keys held beside others.
func (w *window) modifiers() fyne.KeyModifier {
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()
	}
	return 0
}

// changed redraws what a change of the session concerns.
func (w *window) changed(c session.Change) {
	if c&(session.Text|session.Caret|session.Choice|session.Shown) != 0 {
		w.said = ""
	}
	if w.view == startView && c&session.Text != 0 && (w.s.Rows() != "" || w.s.Path() != "") {
		w.show(makeView)
	}
	if c&(session.Text|session.Shown) != 0 {
		w.previewRows()
	}
	if terms := w.s.Pattern().Terms; terms != w.terms {
		w.terms = terms
		w.tray.Redraw()
	}
	if c&(session.Choice|session.Caret|session.Worked|session.Pictures) != 0 {
		w.light()
	}
	if c&(session.Text|session.Shown|session.Pictures) != 0 {
		w.watchWork()
	}
	w.staleWords()
	if c&session.Worked != 0 {
		w.nextStroke()
	}
	w.head.Redraw()
	w.status.Redraw()
	if c&^session.Caret != 0 {
		w.findings.Redraw()
		w.strip.Redraw()
	}
	if c&(session.Pictures|session.Worked|session.Shown|session.Text) != 0 && w.view == colourView {
		w.colour.Redraw()
	}
	if c&^(session.Caret|session.Choice|session.File) != 0 {
		switch w.view {
		case strandsView:
			w.strands.Redraw()
		case sizesView:
			w.sizes.Redraw()
		}
	}
	if c&(session.File|session.Text) != 0 {
		w.name()
	}
	if c&(session.File|session.Text|session.Choice|session.Pictures) != 0 {
		w.refreshMenu()
	}
}

// light lights the stitches that the word at the caret made.
func (w *window) light() {
	w.pair.Lit = nil
	if len(w.s.Chosen().Stitches) == 0 {
		const most = 120 // a whole row is lit in the rows already
		if ids := w.s.MadeBy(w.s.Caret().At); len(ids) <= most {
			w.pair.Lit = ids
		}
	}
	w.pair.InHand = -1
	if row, ok := w.rowInHand(); ok {
		w.pair.InHand = row
	}
	w.pair.Chart.Mark()
	w.pair.Cloth.Mark()
}

// Delays before the window says that it is at work, so that quick work goes by unsaid.
const (
	busyAfter = 500 * time.Millisecond
	sayAfter  = 2 * time.Second
)

// watchWork shows that pictures are on their way when they take long.
func (w *window) watchWork() {
	if w.s.Current() {
		w.pair.Busy(false)
		return
	}
	pattern := w.s.Pattern()
	late := func() bool { return !w.s.Current() && w.s.Pattern() == pattern }
	time.AfterFunc(busyAfter, func() {
		w.post(func() { w.pair.Busy(late()) })
	})
	time.AfterFunc(sayAfter, func() {
		w.post(func() {
			if late() {
				w.say("Working the rows and drawing the cloth…")
			}
		})
	})
}

// name writes the title of the window.
func (w *window) name() {
	title := w.s.Name() + " – Strandway"
	if w.s.Changed() {
		title = "• " + title
	}
	w.win.SetTitle(title)
}

// say shows a passing word in the status line.
func (w *window) say(s string) {
	w.said = translation.Sentence(s)
	w.status.Redraw()
}

func (w *window) showHint(s string) {
	if s = translation.Sentence(s); s != w.hint {
		w.hint = s
		w.status.Redraw()
	}
}

// show takes another view to the right page.
func (w *window) show(v view) {
	w.view, w.hint = v, ""
	w.previewRows()
	if v != teachView && w.alone {
		w.fillScreen()
	}
	shown := func(o fyne.CanvasObject, on bool) {
		if on {
			o.Show()
		} else {
			o.Hide()
		}
	}
	shown(w.pair, v == makeView)
	shown(w.tray, v == makeView)
	shown(w.colour, v == colourView)
	shown(w.strands, v == strandsView)
	shown(w.sizes, v == sizesView)
	shown(w.start, v == startView)
	shown(w.strip, v != startView && v != teachView)
	shown(w.teach, v == teachView)
	w.tabs.Redraw()
	for _, p := range []*control.Panel{w.colour, w.strands, w.sizes, w.start, w.strip} {
		if p.Visible() {
			p.Redraw()
		}
	}
	w.desk.Refresh()
	w.status.Redraw()
	w.refreshMenu()
	if v == teachView {
		w.win.Canvas().Focus(w.teach)
	}
}

// plainKey does the action of a key that the menus cannot catch: F8 and the like.
func (w *window) plainKey(e *fyne.KeyEvent) bool {
	if e.Name == fyne.KeyEscape && w.sheetOpen() {
		w.closeSheet() // the keys are with nothing on the sheet
		return true
	}
	if e.Name == fyne.KeyEscape && (w.leaveTeaching() || w.leaveGuide()) {
		return true
	}
	c := action.Chord{Key: string(e.Name), Shift: w.modifiers()&fyne.KeyModifierShift != 0}
	if a := w.table.For(c); a != nil {
		w.run(a)
		return true
	}
	return false
}

// focusNext takes the focus to the next pane, or with step -1 to the last one.
func (w *window) focusNext(step int) {
	stops := []fyne.Focusable{w.page, w.tabs, w.tray, w.pair.Chart, w.pair.Cloth, w.strip, w.findings}
	if w.view == colourView {
		stops = []fyne.Focusable{w.page, w.tabs, w.colour, w.strip, w.findings}
	}
	if w.view == teachView {
		stops = []fyne.Focusable{w.page, w.tabs, w.teach, w.findings}
	}
	if w.view == strandsView {
		stops = []fyne.Focusable{w.page, w.tabs, w.strands, w.strip, w.findings}
	}
	if w.view == sizesView {
		stops = []fyne.Focusable{w.page, w.tabs, w.sizes, w.strip, w.findings}
	}
	if w.view == startView {
		stops = []fyne.Focusable{w.page, w.start}
	}
	if w.notice.Visible() {
		stops = append(stops, w.notice)
	}
	stops = slices.DeleteFunc(stops, func(f fyne.Focusable) bool {
		o, ok := f.(fyne.CanvasObject)
		return ok && !o.Visible()
	})
	at := -1
	for i, f := range stops {
		if w.win.Canvas().Focused() == f {
			at = i
		}
	}
	if at < 0 && step < 0 {
		at = 0
	}
	w.win.Canvas().Focus(stops[(at+step+len(stops))%len(stops)])
}

// newRow writes a row below the one in hand.
func (w *window) newRow() { w.editRow("New row", edit.InsertRow) }

// scrollColour moves the contact sheet under the wheel.
func (w *window) scrollColour(by float32) {
	c := &w.contact
	c.scroll = max(0, min(c.scroll-by*2, c.tall-w.colour.Size().Height))
}

// toggleCells puts the grid in place of the chart, or the chart back.
func (w *window) toggleCells() {
	w.pair.ShowCells(!w.pair.Cells())
	w.refreshMenu()
}

// showAlone gives one of the pictures all the room, or shows both again.
func (w *window) showAlone(pane *picture.Pane) {
	w.show(makeView)
	if w.pair.Alone() == pane {
		pane = nil
	}
	w.pair.ShowAlone(pane)
	w.refreshMenu()
}
