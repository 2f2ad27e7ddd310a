package work

import "strandway/model/syntax"

// Step is one instruction as it was worked, once, and the stitches it made.
// Repeats are taken apart into the steps within them; a group in one place is one step.
type Step struct {
	Node        syntax.Node
	First, Last int32 // stitches [First, Last)
}

// Trace is how one row of the fabric was worked.
type Trace struct {
	Row   int           // index in Fabric.Rows
	Start []syntax.Node // what stood before the first stitch: yarn joined, an edge to work along
	Steps []Step
	End   []syntax.Node // turn, join, fasten off
}

// trace keeps a step, where steps are asked for.
func (w *worker) trace(n syntax.Node) {
	if !w.probe.trace || w.place != nil || w.inUnit {
		return
	}
	w.stepsMade = append(w.stepsMade, Step{Node: n, First: int32(len(w.fab.Stitches))})
}

// traced gathers the steps of the row that was worked last.
func (w *worker) traced(skip int) Trace {
	t := Trace{Row: int(w.row), Start: w.step.body[:skip], End: w.step.tail, Steps: append([]Step(nil), w.stepsMade...)}
	last := w.fab.Rows[w.row].Last
	for i := len(t.Steps) - 1; i >= 0; i-- {
		t.Steps[i].Last = last
		last = t.Steps[i].First
	}
	w.stepsMade = w.stepsMade[:0]
	return t
}
