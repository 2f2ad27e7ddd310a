package work

import (
	"errors"
	"fmt"

	"strandway/model/diag"
	"strandway/model/syntax"
)

// misfit is why an instruction could not be worked. Its words are made only
// when it is told, since an open repeat ends with one every time.
type misfit struct {
	id     string // of the finding; "place" when empty
	text   string // said already; "" when a sort of place is missing
	end    bool   // the row ended before its instructions did
	fatal  bool   // not to be got round by working less often
	what   syntax.What
	name   string
	chains int
	span   diag.Span // the instruction
}

func (m *misfit) Error() string {
	if m.text != "" {
		return m.text
	}
	return "the row ended before its instructions did"
}

// fail is a misfit in words.
func fail(format string, args ...any) error { return &misfit{text: fmt.Sprintf(format, args...)} }

// none is the misfit of a sort of place that is not there.
func none(what syntax.What, name string, chains int) error {
	return &misfit{what: what, name: name, chains: chains}
}

func rowEnded() error { return &misfit{end: true} }

func asMisfit(err error) *misfit {
	var m *misfit
	if errors.As(err, &m) {
		return m
	}
	return &misfit{text: err.Error()}
}

// placeWord names a sort of place in the pattern's own terms.
func (w *worker) placeWord(what syntax.What, name string, chains int) string {
	switch what {
	case syntax.InSp, syntax.InStSp:
		if chains > 0 {
			return fmt.Sprintf("ch-%d space", chains)
		}
		return "ch-space"
	case syntax.InKind:
		return w.abbreviation(name)
	case syntax.InUnit:
		return unitWord(name)
	case syntax.InCh:
		return "chain"
	case syntax.InCorner:
		return "corner"
	case syntax.InGap:
		return "space between stitches"
	case syntax.InEnd:
		return "row end"
	case syntax.InUnder:
		return "chain of the foundation's other side"
	}
	return "stitch"
}

func unitWord(name string) string {
	if name == "" {
		return "group"
	}
	return name
}

// abbreviation is a stitch's name as the pattern's terms have it.
func (w *worker) abbreviation(name string) string {
	terms := "us"
	if w.tree.UK {
		terms = "uk"
	}
	if k, ok := w.lib.Kind(name); ok {
		if word, ok := w.lib.Word(k, terms); ok {
			return word
		}
	}
	return name
}

// reason puts a misfit into words, by what the row below holds.
func (w *worker) reason(m *misfit) string {
	if m.text != "" {
		return m.text
	}
	word := w.placeWord(m.what, m.name, m.chains)
	if m.what == syntax.InSp && m.chains > 0 {
		for i := w.pos; i < w.met; i++ {
			if w.lands[i].chain {
				if n := w.runEnd(i) - i + 1; n != m.chains {
					return fmt.Sprintf("no %s is left in the row below; the next one is of %s", word, count(n, "chain"))
				}
			}
		}
	}
	for i := range w.met {
		if w.matches(i, m.what, m.name, 0) {
			return fmt.Sprintf("no %s is left in the row below", word)
		}
	}
	return fmt.Sprintf("there is no %s in the row below", word)
}

// count puts a number before a noun: "1 chain", "3 chains", "2 stitches".
func count(n int, noun string) string {
	switch {
	case n == 1:
	case noun == "stitch":
		noun = "stitches"
	default:
		noun += "s"
	}
	return fmt.Sprintf("%d %s", n, noun)
}

// ordinal writes 1st, 2nd, 3rd, 4th.
func ordinal(n int) string {
	suffix := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			suffix = "st"
		case 2:
			suffix = "nd"
		case 3:
			suffix = "rd"
		}
	}
	return fmt.Sprintf("%d%s", n, suffix)
}
