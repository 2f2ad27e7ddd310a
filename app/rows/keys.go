package rows

import (
	"strings"

	"fyne.io/fyne/v2"

	"strandway/model/edit"
)

// FocusGained implements fyne.Focusable.
func (p *Page) FocusGained() { p.focus = true; p.show() }

// FocusLost implements fyne.Focusable.
func (p *Page) FocusLost() { p.focus = false; p.Left(); p.show() }

// AcceptsTab keeps Tab for the rows: it takes the row that waits.
func (p *Page) AcceptsTab() bool { return true }

// TypedRune writes a letter.
func (p *Page) TypedRune(r rune) {
	p.goalX = -1
	p.s.Type(string(r))
	p.Typed()
	if r != ':' {
		return
	}
	at := p.s.Caret().At
	line := edit.Line(p.s.Rows(), at)
	if line.End = at; line.Len() > 0 {
		if own, ok := edit.OwnHeading(p.s.Rows()[line.Start:at]); ok {
			p.s.Replace("Typing", line, own)
		}
	}
}

// TypedKey moves the caret and takes letters out.
func (p *Page) TypedKey(e *fyne.KeyEvent) {
	if p.First(e) {
		return
	}
	held := p.Modifiers()
	extend, word := held&fyne.KeyModifierShift != 0, held&fyne.KeyModifierShortcutDefault != 0
	at := p.s.Caret().At
	if e.Name != fyne.KeyUp && e.Name != fyne.KeyDown && e.Name != fyne.KeyPageUp && e.Name != fyne.KeyPageDown {
		p.goalX = -1
	}
	switch e.Name {
	case fyne.KeyLeft, fyne.KeyRight:
		p.sideways(at, e.Name == fyne.KeyRight, extend, word)
	case fyne.KeyUp:
		p.upDown(-lineHeight, extend)
	case fyne.KeyDown:
		p.upDown(lineHeight, extend)
	case fyne.KeyPageUp:
		p.upDown(-p.Size().Height+2*lineHeight, extend)
	case fyne.KeyPageDown:
		p.upDown(p.Size().Height-2*lineHeight, extend)
	case fyne.KeyHome:
		p.home(at, extend)
	case fyne.KeyEnd:
		if b, l, ok := p.caretLine(at); ok {
			end := b.lines[l].end
			if l+1 < len(b.lines) {
				end--
			}
			p.s.PutCaret(end, extend)
		}
	case fyne.KeyBackspace:
		p.s.Delete(false, word)
		p.Typed()
	case fyne.KeyDelete:
		p.s.Delete(true, word)
	case fyne.KeyReturn, fyne.KeyEnter:
		p.enter(at)
	case fyne.KeyTab:
		if !p.Complete() && p.atRowEnd(at) {
			p.NewRow()
		}
	case fyne.KeyEscape:
		p.s.ChooseNone()
		p.s.PutCaret(at, false)
	default:
		p.Keys(e)
	}
}

// TypedShortcut moves the caret with Ctrl held and hands all other shortcuts on.
func (p *Page) TypedShortcut(s fyne.Shortcut) {
	c, ok := s.(fyne.KeyboardShortcut)
	if !ok || c.Mod()&fyne.KeyModifierShortcutDefault == 0 {
		p.Shortcut(s)
		return
	}
	extend := c.Mod()&fyne.KeyModifierShift != 0
	at := p.s.Caret().At
	switch c.Key() {
	case fyne.KeyLeft, fyne.KeyRight:
		p.sideways(at, c.Key() == fyne.KeyRight, extend, true)
	case fyne.KeyHome:
		p.s.PutCaret(0, extend)
	case fyne.KeyEnd:
		p.s.PutCaret(len(p.s.Rows()), extend)
	case fyne.KeyBackspace:
		p.s.Delete(false, true)
	case fyne.KeyDelete:
		p.s.Delete(true, true)
	default:
		p.Shortcut(s)
	}
}

func (p *Page) sideways(at int, right, extend, word bool) {
	if chosen := p.s.Caret().Span(); chosen.Len() > 0 && !extend && !word {
		at = chosen.Start
		if right {
			at = chosen.End
		}
		p.s.PutCaret(at, false)
		return
	}
	p.s.PutCaret(p.s.Beside(at, right, word), extend)
}

// upDown moves the caret by a way down the page and keeps its distance from the edge.
func (p *Page) upDown(by float32, extend bool) {
	at := p.caretPoint(p.s.Caret().At)
	if p.goalX < 0 {
		p.goalX = at.X
	}
	goal, y := p.goalX, at.Y+lineHeight/2
	// The way between two rows is longer than a line: go on until the caret moves.
	for step := by; ; step += by {
		to := p.offsetAt(goal, max(0, y+step))
		if to != p.s.Caret().At || y+step < 0 || y+step > p.height {
			p.s.PutCaret(to, extend)
			break
		}
	}
	p.goalX = goal
}

// home goes to the beginning of the line, of the row's words, and then of its heading.
func (p *Page) home(at int, extend bool) {
	b, l, ok := p.caretLine(at)
	if !ok {
		return
	}
	to := b.lines[l].start
	if l == 0 && at == to && b.head > 0 {
		to = b.span.Start
	}
	p.s.PutCaret(to, extend)
}

// atRowEnd reports whether the caret stands behind the last word of a row.
func (p *Page) atRowEnd(at int) bool {
	line := edit.Line(p.s.Rows(), at)
	return at == line.End && strings.TrimSpace(p.s.Rows()[line.Start:line.End]) != ""
}

// enter ends the row: behind its last word a new row follows, elsewhere the text is divided.
func (p *Page) enter(at int) {
	if p.atRowEnd(at) {
		p.NewRow()
		return
	}
	p.s.Type("\n")
}
