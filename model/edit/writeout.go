package edit

import (
	"fmt"
	"strings"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// WriteOut writes a written row that stands for several, "Rows 8-23: Rep Rows 4-7 four times", as
// a line for each of them, in the words of the row that each is worked from. at is the index of
// the written row in the tree. ok is false where the rows it stands for have no numbers of their own.
func WriteOut(t *syntax.Tree, f *fabric.Fabric, at int) (rows string, ok bool) {
	var lines []string
	for r := range f.Rows {
		row := &f.Rows[r]
		if row.Under != at {
			continue
		}
		if row.No == 0 || row.Source < 0 || !numbered(t.Rows[row.Source]) {
			return t.Text, false
		}
		lines = append(lines, ownHeading(t.Rows[row.Source], row, f)+bodyText(t, t.Rows[row.Source]))
	}
	if len(lines) < 2 {
		return t.Text, false
	}
	written := t.Rows[at]
	c := &changes{text: t.Text}
	c.replace(diag.Span{Start: written.Span.Start, End: Line(t.Text, max(written.Span.End-1, written.Span.Start)).End}, strings.Join(lines, "\n"))
	return c.apply(), true
}

// ownHeading is the heading of one worked row, which says as much as that of the row it is worked from.
func ownHeading(source *syntax.Row, row *fabric.Row, f *fabric.Fabric) string {
	h := "Row"
	if source.Round {
		h = "Rnd"
	}
	var remarks []string
	if source.Side != 0 {
		side := "RS"
		if row.WS {
			side = "WS"
		}
		remarks = append(remarks, side)
	}
	if source.Yarn != "" && int(row.Yarn) < len(f.Yarns) {
		remarks = append(remarks, f.Yarns[row.Yarn])
	}
	if remarks == nil {
		return fmt.Sprintf("%s %d: ", h, row.No)
	}
	return fmt.Sprintf("%s %d (%s): ", h, row.No, strings.Join(remarks, ", "))
}
