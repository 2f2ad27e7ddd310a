package work

import (
	"slices"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// Step is one instruction as it was worked, once, and the stitches it made.
// Repeats are taken apart into the steps within them, "sc in next 3 sts" into
// three; a group in one place is one step.
type Step struct {
	Node        syntax.Node
	First, Last int32 // stitches [First, Last)
}

// Trace is how one row of the fabric was worked. Start, the steps and End, one
// after the other, are the row's body.
type Trace struct {
	Row   int           // index in Fabric.Rows
	Start []syntax.Node // what stands before the first stitch: the foundation, yarn joined, an edge to work along
	Steps []Step
	End   []syntax.Node // turn, join, fasten off
}

// Steps works the rows as [Work] does, and tells how each of them was worked:
// what an edit of the chart changes, and [Fold] writes as a row again.
func Steps(lib *stitch.Library, t *syntax.Tree, o Options) (*fabric.Fabric, []Trace, diag.List) {
	w := newWorker(lib, t, o, probe{trace: true, upTo: o.UpTo})
	w.run()
	return w.fab, w.traces, w.findings
}

// Body writes the row's steps as the body of a row.
func (t *Trace) Body() []syntax.Node {
	nodes := make([]syntax.Node, len(t.Steps))
	for i := range t.Steps {
		nodes[i] = t.Steps[i].Node
	}
	return slices.Concat(t.Start, Fold(nodes), t.End)
}

// trace keeps a step, where steps are asked for.
func (w *worker) trace(n syntax.Node) {
	if w.probe.trace && w.place == nil && !w.inUnit {
		w.stepsMade = append(w.stepsMade, Step{Node: n, First: int32(len(w.fab.Stitches))})
	}
}

// traced gathers the steps of the row that was worked last; skip nodes of its body stood before them.
func (w *worker) traced(skip int) Trace {
	t := Trace{Row: int(w.row), Start: slices.Concat(w.step.head, w.step.body[:skip]), End: w.step.tail}
	end := w.fab.Rows[w.row].Last
	for i := len(w.stepsMade) - 1; i >= 0; i-- {
		w.stepsMade[i].Last = end
		end = w.stepsMade[i].First
	}
	if w.own > 0 && len(w.stepsMade) > 1 {
		w.stepsMade[1].Node = w.step.body[skip+1] // as it is written, in a chain from the hook
	}
	for _, s := range w.stepsMade {
		t.Steps = append(t.Steps, w.single(s)...)
	}
	w.stepsMade = w.stepsMade[:0]
	return t
}

// single takes "sc in next 3 sts" apart into three steps, and puts plain numbers for those that hang on n or the size.
func (w *worker) single(s Step) []Step {
	switch x := s.Node.(type) {
	case *syntax.ChainN:
		y := *x
		y.N = w.plainNum(x.N)
		s.Node = &y
	case *syntax.Skip:
		y := *x
		y.N = w.plainNum(x.N)
		s.Node = &y
	case *syntax.Make:
		y := *x
		y.N = w.plainNum(x.N)
		s.Node = &y
		if x.Place == nil {
			break
		}
		p := *x.Place
		p.N = w.plainNum(p.N)
		y.Place = &p
		n := p.N.B
		if n <= 1 || p.Ord != syntax.Next || p.Of != nil || p.What == syntax.InGap || spans(w.fab.Kinds[w.kind(x.Kind)]) > 1 || int(s.Last-s.First)%n != 0 {
			break
		}
		p.N = syntax.Plain(1)
		each := (s.Last - s.First) / int32(n)
		var out []Step
		for k := range int32(n) {
			out = append(out, Step{Node: &y, First: s.First + k*each, Last: s.First + (k+1)*each})
		}
		return out
	}
	return []Step{s}
}

// plainNum is a number as it is for the size in work.
func (w *worker) plainNum(q syntax.Num) syntax.Num {
	if q.A == 0 && q.Sizes == nil {
		return q
	}
	return syntax.Plain(w.num(q))
}
