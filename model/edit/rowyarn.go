package edit

import (
	"strings"

	"strandway/model/diag"
	"strandway/model/syntax"
)

// RowYarn works row i in a yarn. It is named where the row names its yarn already: in the words that the row begins with,
// which hold, and in its heading; a row that names none gets it in its heading. What the row works in other yarns further
// on is worked in this one too.
func RowYarn(t *syntax.Tree, i int, letter string) string {
	r := t.Rows[i]
	c := &changes{text: t.Text}
	first := syntax.FirstYarn(r.Body)
	if first != nil {
		c.nameYarn(first, letter)
		c.takeYarnsOut(r, first)
	}
	head := t.Text[r.Head.Start:r.Head.End]
	open, shut := strings.IndexByte(head, '('), strings.LastIndexByte(head, ')')
	switch at := t.HeadYarn(r); {
	case at.Len() > 0:
		c.replace(at, letter)
	case first != nil || r.Head.Len() == 0:
	case open >= 0 && open < shut:
		end := r.Head.Start + shut
		c.replace(diag.Span{Start: end, End: end}, ", "+letter)
	default:
		if colon := strings.LastIndexByte(head, ':'); colon >= 0 {
			at := r.Head.Start + colon
			c.replace(diag.Span{Start: at, End: at}, " ("+letter+")")
		}
	}
	return c.apply()
}

// nameYarn writes another letter where words name a yarn.
func (c *changes) nameYarn(y *syntax.Yarn, letter string) {
	if at := strings.LastIndex(c.text[y.Start:y.End], y.Letter); at >= 0 {
		c.replace(diag.Span{Start: y.Start + at, End: y.Start + at + len(y.Letter)}, letter)
	}
}

// takeYarnsOut takes the words out with which a row changes yarn between its stitches. Those behind its last stitch are for
// the next row.
func (c *changes) takeYarnsOut(r *syntax.Row, first *syntax.Yarn) {
	last := 0
	syntax.Walk(r.Body, func(n syntax.Node) bool {
		switch n.(type) {
		case *syntax.Make, *syntax.Group, *syntax.ChainN, *syntax.Repeat, *syntax.RowRef:
			last = n.At().Start
		}
		return true
	})
	syntax.Walk(r.Body, func(n syntax.Node) bool {
		if y, ok := n.(*syntax.Yarn); ok && y != first && y.Do.TakesUp() && y.Start < last {
			end := y.End + len(c.text[y.End:]) - len(strings.TrimLeft(c.text[y.End:], ", "))
			c.replace(diag.Span{Start: y.Start, End: end}, "")
		}
		return true
	})
}
