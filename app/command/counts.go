package command

import (
	"bufio"
	"fmt"
	"io"

	"strandway/model"
	"strandway/model/fabric"
)

var counts = command{
	name:    "counts",
	use:     "FILE [--size NAME]",
	summary: "print the stitches of every row as worked, one row a line, separated by tabs",
	detail: "The columns are piece, row, side (RS or WS), direction as seen from the right side (R: worked right\n" +
		"to left, L: left to right), yarn, stitches, stitches with chains. Stitches are all that the row offers, a\n" +
		"turning or starting chain that counts as one included, joins and travelling slip stitches not; with\n" +
		"chains, every further chain is one more.",
	run: runCounts,
}

func runCounts(c *call) error {
	flags := c.options()
	size := flags.String("size", "", "work the size `NAME`; the first without it")
	path, err := c.file()
	if err != nil {
		return err
	}
	src, err := c.open(path)
	if err != nil {
		return err
	}
	worked, err := src.work(*size)
	if err != nil {
		return err
	}
	out := bufio.NewWriter(c.stdout)
	writeCounts(out, worked)
	if err := out.Flush(); err != nil {
		return err
	}
	return src.faults(c.stderr, worked)
}

// writeCounts writes the table of counts, a line a row.
func writeCounts(w io.Writer, worked *model.Worked) {
	for i := range worked.Pieces {
		piece := &worked.Pieces[i]
		for j := range piece.Fabric.Rows {
			row := &piece.Fabric.Rows[j]
			if row.First == row.Last && j == 0 {
				continue // a ring has no stitches of its own
			}
			fmt.Fprintf(w, "%s\t%s\t%s\t%s\t%s\t%d\t%d\n", piece.Piece.Name, row.Label, side(row), direction(row),
				yarnLetter(piece.Fabric, row), row.Count, row.Count+row.Chains)
		}
	}
}

func side(r *fabric.Row) string {
	if r.WS {
		return "WS"
	}
	return "RS"
}

func direction(r *fabric.Row) string {
	if r.FromLeft {
		return "L"
	}
	return "R"
}

func yarnLetter(f *fabric.Fabric, r *fabric.Row) string {
	if int(r.Yarn) < len(f.Yarns) {
		return f.Yarns[r.Yarn]
	}
	return ""
}
