package syntax

import (
	"regexp"

	"strandway/model/diag"
)

// TakesUp reports whether a yarn of which this is said is in hand from then on.
func (d YarnDo) TakesUp() bool {
	switch d {
	case With, JoinIn, ChangeTo, PickUpIt:
		return true
	}
	return false
}

// FirstYarn is where words take up a yarn that they name before anything is worked; nil where they do not. It holds
// for the row, whatever its heading says.
func FirstYarn(words []Node) *Yarn {
	for _, n := range words {
		switch x := n.(type) {
		case *Yarn:
			if x.Do.TakesUp() && x.Letter != "" {
				return x
			}
		case *Note, *Turn, *Along:
		default:
			return nil
		}
	}
	return nil
}

// HeadYarn is the place of the yarn's letter in a row's heading, the zero Span where its heading has none.
func (t *Tree) HeadYarn(r *Row) diag.Span {
	if r.Yarn == "" || r.Head.End > len(t.Text) {
		return diag.Span{}
	}
	at := regexp.MustCompile(`[(\[][^)\]]*\b(` + regexp.QuoteMeta(r.Yarn) + `)\b[^(\[]*[)\]]`).FindStringSubmatchIndex(t.Text[r.Head.Start:r.Head.End])
	if at == nil {
		return diag.Span{}
	}
	return diag.Span{Start: r.Head.Start + at[2], End: r.Head.Start + at[3]}
}
