package work

import (
	"fmt"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// The search for foundations that would fit goes so far to either side, and less
// far where it would be felt while a row is typed.
const (
	farthest   = 40
	mostProbed = 40_000 // stitches worked for it in all
)

// fitHint works the rows so far over nearby foundations and names the nearest
// that come out, with a mend of the foundation's number where it is a plain one.
func (w *worker) fitHint() (string, *diag.Mend) {
	base := w.fab.Rows[0].Chains
	if base == 0 {
		return "", nil
	}
	reach := min(farthest, mostProbed/2/max(1, len(w.fab.Stitches)))
	upTo := int(w.row)
	var room fabric.Fabric
	less, more := 0, 0
	for d := 1; d <= reach && (less == 0 || more == 0); d++ {
		if less == 0 && base-d > 1 && w.comesOut(base-d, upTo, &room) {
			less = base - d
		}
		if more == 0 && w.comesOut(base+d, upTo, &room) {
			more = base + d
		}
	}
	switch {
	case less > 0 && more > 0:
		near := less
		if more-base < base-less {
			near = more
		}
		return fmt.Sprintf("a foundation of %d or %d chains would come out, not %d", less, more, base), w.foundationMend(near)
	case more > 0:
		return fmt.Sprintf("a foundation of %d chains would come out, not %d", more, base), w.foundationMend(more)
	}
	return "", nil
}

// comesOut reports whether the rows up to one come out over a foundation of so many chains.
func (w *worker) comesOut(base, upTo int, room *fabric.Fabric) bool {
	v := newWorker(w.lib, w.tree, w.opt, probe{base: base, upTo: upTo, quiet: true, stop: true})
	v.workIn(room)
	return len(v.fab.Rows) > upTo && !faulty(v.findings)
}

// faulty reports whether anything did not come out; a wrong count or range is the writer's, not the work's.
func faulty(l diag.List) bool {
	for _, f := range l {
		if f.Severity == diag.Fault && f.ID != "count" && f.ID != "range" {
			return true
		}
	}
	return false
}

// foundationMend writes another number of chains, where the foundation is a plain number.
func (w *worker) foundationMend(n int) *diag.Mend {
	c := foundationChain(w.tree)
	if c == nil || c.N.A != 0 || c.N.Sizes != nil || c.Span.End > len(w.tree.Text) {
		return nil
	}
	text := w.tree.Text[c.Span.Start:c.Span.End]
	for i := 0; i < len(text); i++ {
		j := i
		for j < len(text) && text[j] >= '0' && text[j] <= '9' {
			j++
		}
		if j > i {
			at := diag.Span{Start: c.Span.Start + i, End: c.Span.Start + j}
			return &diag.Mend{Label: fmt.Sprintf(`write "ch %d" in the foundation`, n), Span: at, Text: fmt.Sprint(n)}
		}
	}
	return nil
}

// foundationChain gives the chain that the piece begins with, nil if it begins otherwise.
func foundationChain(t *syntax.Tree) *syntax.ChainN {
	for _, row := range t.Rows {
		for _, n := range row.Body {
			switch x := n.(type) {
			case *syntax.ChainN:
				return x
			case *syntax.Make, *syntax.Group, *syntax.Repeat:
				return nil
			}
		}
	}
	return nil
}
