package app

import (
	"fmt"

	"strandway/app/translation"
	"strandway/model/edit"
	"strandway/model/fabric"
	"strandway/model/measure"
)

// where says in words where the caret is and how far its row has come.
func (w *window) where() string {
	m := w.s.Made()
	if w.s.Rows() == "" || m == nil {
		if w.view == startView {
			return translation.Say("Nothing written yet; type a row at the left, or choose a beginning at the right")
		}
		return translation.Say("Nothing written yet; begin at the left with the chain, as in “With A, ch 21.”, and press Enter for Row 1")
	}
	if f, ok := w.s.MendAtHand(); ok {
		line := edit.Line(w.s.Rows(), w.s.Caret().At)
		if f.Span.Start >= line.Start && f.Span.Start <= line.End {
			return translation.Fill("{{.Finding}} Ctrl+. does it", "Finding", sentence(f)+" "+upperFirst(translation.Sentence(f.Mend.Label))+":")
		}
	}
	row, ok := w.rowInHand()
	if !ok {
		return ""
	}
	r := &m.Fabric().Rows[row]
	side := "right side"
	if r.WS {
		side = "wrong side"
	}
	yarn := letterOr(m.Fabric().Yarns, r.Yarn)
	switch {
	case r.Shape != fabric.Flat:
	case r.FromLeft:
		yarn = translation.Fill("{{.Yarn}} from the left edge", "Yarn", yarn)
	default:
		yarn = translation.Fill("{{.Yarn}} from the right edge", "Yarn", yarn)
	}
	says := fmt.Sprintf("%s, %s, %s", upperFirst(translation.Sentence(upperFirst(r.Label))), translation.Say(side), yarn)
	switch {
	case r.Count > 0 && r.Unworked > 0:
		says += "; " + translation.Fill("{{.N}} stitches so far", "N", r.Count) + ", " + translation.Fill("{{.N}} of the row below left", "N", r.Unworked)
	case r.Count > 0:
		says += "; " + translation.Fill("{{.N}} stitches", "N", r.Count)
	case r.Chains > 0:
		says += "; " + translation.Fill("{{.N}} chains", "N", r.Chains)
	}
	if u := w.s.Unsure(); u.Rows[row] {
		says += "; " + translation.Fill("it stands on the fault in {{.Row}}", "Row", u.On)
	}
	return says
}

func letterOr(letters []string, yarn uint8) string {
	if int(yarn) < len(letters) && letters[yarn] != "" {
		return translation.Fill("yarn {{.Letter}}", "Letter", letters[yarn])
	}
	return translation.Say("the yarn")
}

// rowInHand is the fabric row that the caret's written row makes; the last one where it makes several.
func (w *window) rowInHand() (row int, ok bool) {
	m := w.s.Made()
	if m == nil {
		return 0, false
	}
	tree, since := m.Tree(), w.s.Since()
	written := -1
	for i, r := range tree.Rows {
		if s := since.Span(r.Span); w.s.Caret().At >= s.Start && w.s.Caret().At <= s.End {
			written = i
		}
	}
	for i := range m.Fabric().Rows {
		if m.WrittenRow(i) == written {
			row, ok = i, true
		}
	}
	return row, ok && written >= 0
}

// finished is the size the piece comes to, "" where it is not known from a gauge.
func (w *window) finished() string {
	f := w.figures()
	if f == nil || !f.Known() || f.Scale.Guess {
		return ""
	}
	of := &f.Pieces[w.s.Piece()].Size
	if of.WidthCM < .1 {
		return ""
	}
	return lengths(of.WidthCM, of.LengthCM, w.s.Pattern().Units == "in", of.Form == measure.Disc)
}

// metres is the yarn that the whole pattern takes, "" where it is not known.
func (w *window) metres() string {
	f := w.figures()
	if f == nil {
		return ""
	}
	sum := 0.0
	for _, a := range f.Yarns {
		sum += a.Metres
	}
	if sum < .5 {
		return ""
	}
	return translation.Fill("{{.N}} m of yarn", "N", fmt.Sprintf("%.0f", sum))
}

// overStitch says what lies under the pointer.
func (w *window) overStitch(id int32) {
	m := w.s.Made()
	if m == nil || id < 0 || int(id) >= len(m.Fabric().Stitches) {
		w.showHint("")
		return
	}
	f := m.Fabric()
	r := &f.Rows[f.Stitches[id].Row]
	word, ok := w.lib.Word(f.Kind(id), termsOf(w.s.Pattern().Terms))
	if !ok {
		word = f.Kind(id).Name
	}
	w.showHint(fmt.Sprintf("%s, stitch %d of %s, %s", word, id-r.First+1, r.Label, letterOr(f.Yarns, f.Stitches[id].Yarn)))
}

func termsOf(terms string) string {
	if terms == "UK" {
		return "uk"
	}
	return "us"
}
