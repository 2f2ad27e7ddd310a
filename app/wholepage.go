package app

import (
	"fmt"
	"strings"

	"strandway/model/edit"
	"strandway/model/page"
	"strandway/model/pattern"
)

// pastePage opens a whole page as a pattern, in place of one in which nothing is written yet,
// and reports whether it did. terms are the page's, "" to tell them from its words.
func (w *window) pastePage(text, terms string) bool {
	if strings.TrimSpace(w.s.Rows()) != "" || len(w.s.Pattern().Pieces) > 1 || strings.Count(strings.TrimSpace(text), "\n") < 2 {
		return false
	}
	p, report := page.Read(w.lib, page.Plain([]byte(text)), page.Options{Terms: terms})
	if !wholePage(p) {
		return false
	}
	if report.Unclear && terms == "" {
		in := func(terms string) func() { return func() { w.pastePage(text, terms) } }
		w.choose("Is the page written in US or UK terms?", "Its words fit both: a dc of the one is a tr of the other.",
			choice{label: "US terms", first: report.Terms != "UK", do: in("US")},
			choice{label: "UK terms", first: report.Terms == "UK", do: in("UK")},
			choice{label: "Cancel", do: func() {}})
		return true
	}
	w.s.Do("Paste a page", func(edit.State) edit.State {
		return edit.State{Pattern: p, Caret: edit.At(len(strings.TrimRight(p.Pieces[0].Rows, " \n")))}
	})
	w.show(makeView)
	w.win.Canvas().Focus(w.page)
	w.say(readAs(p, report))
	return true
}

// wholePage reports whether there is more to a page than rows: those alone are pasted as they are.
func wholePage(p *pattern.Pattern) bool {
	if len(p.Pieces) == 0 || p.Pieces[0].Rows == "" {
		return false
	}
	return p.Hook.MM > 0 || p.Gauge.Stitches > 0 || len(p.Pieces) > 1 || len(p.Yarns) > 0
}

// readAs says what became of a page.
func readAs(p *pattern.Pattern, report page.Report) string {
	says := fmt.Sprintf("Read in %s terms: %s", report.Terms, yarnsTell(len(p.Yarns), len(p.Pieces)))
	switch n := len(report.Unread); n {
	case 0:
		return says + "; every row could be read."
	case 1:
		u := report.Unread[0]
		return says + fmt.Sprintf("; %s of %s was not read whole, at “%s”. F8 goes there.", u.Row, u.Piece, u.Word)
	default:
		return says + fmt.Sprintf("; %d rows were not read whole and are marked. F8 goes from one to the next.", n)
	}
}
