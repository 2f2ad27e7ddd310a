// Package work makes a fabric of written rows, as hands would: row after row,
// landing after landing.
//
// Two ideas carry it. An open repeat takes the rest of its row along: "rep from
// * across" is not divided out but worked as often as it goes in, then what
// follows it is tried; if the row does not come out, one repetition is taken
// back and the rest tried again. And what the trade leaves open is a short list
// of readings: the customary one is tried first, and the others only where the
// row's own arithmetic speaks against it.
//
// Nothing that was tried leaves a trace but what the cursor holds, so a copy of
// the cursor is a way back.
package work

import (
	"fmt"
	"slices"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// Options say for which size and how far a piece is worked.
type Options struct {
	N         int // the n of the pattern's numbers: how many repeats
	Size      int // the size, counted from 0
	RowsUntil int // how often rows are repeated that are worked "until it measures"; 2 when 0
	Limit     int // most stitches; 2,000,000 when 0
	UpTo      int // the last row of the fabric to be worked; 0 for all

	// RowsForLength gives the number of rows the piece has in all when it
	// measures what the text says ("until it measures 20 cm"), or 0 where that
	// is not known. It may be nil.
	RowsForLength func(text string) int
}

const defaultLimit = 2_000_000

// mostFailures is how many rows may fail before the rest is given up.
const mostFailures = 100

// Work works the rows of a tree into a fabric. Whatever does not come out is
// told in the findings; the fabric then holds what hands would have made.
func Work(lib *stitch.Library, t *syntax.Tree, o Options) (*fabric.Fabric, diag.List) {
	w := newWorker(lib, t, o, probe{upTo: o.UpTo})
	w.run()
	return w.fab, w.findings
}

// probe narrows a working down for the worker's own questions.
type probe struct {
	base  int  // foundation chains in place of the written ones; 0 = as written
	upTo  int  // stop after this row of the fabric; 0 = all
	quiet bool // do not look for foundations that would fit
	stop  bool // stop at the first fault
	trace bool // keep the steps of each row
}

// worker holds the fabric so far and the row in work.
type worker struct {
	lib      *stitch.Library
	tree     *syntax.Tree
	opt      Options
	probe    probe
	fab      *fabric.Fabric
	findings diag.List
	told     map[told]bool

	kinds      map[string]uint16            // indexes in fab.Kinds
	lastKind   kindOf                       // the one asked for last
	learned    map[standing]syntax.Counting // what a row said of its turning chain holds for the rows after it
	yarns      yarns                        // where each yarn is
	ring       bool                         // the piece starts in a ring
	extended   int32                        // the last row that began with a foundation of its own
	failures   int                          // rows that failed
	unsure     string                       // the first row that failed: what follows may follow from it
	miscounted string                       // the first of the rows, up to the last one, whose counts differ
	ledges     []ledge                      // stitches that short rows left unworked
	traces     []Trace                      // only where they are asked for
	stepsMade  []Step                       // of the row in work
	written    map[*syntax.Row]*written     // what is computed once for each written row
	opened     map[syntax.Node]opened       // likewise for each open instruction
	rowsOfNo   map[int]int32                // the latest row of the fabric with a number

	circle float32   // columns of a round
	cols   []float32 // room for the columns of a row
	known  []bool

	rowWork
	cursor
}

// told keeps a repeated row from saying a thing twice.
type told struct {
	id   string
	span diag.Span
}

func newWorker(lib *stitch.Library, t *syntax.Tree, o Options, p probe) *worker {
	if o.Limit <= 0 {
		o.Limit = defaultLimit
	}
	if o.RowsUntil <= 0 {
		o.RowsUntil = 2
	}
	return &worker{
		lib: lib, tree: t, opt: o, probe: p,
		fab:      &fabric.Fabric{},
		told:     map[told]bool{},
		kinds:    map[string]uint16{},
		learned:  map[standing]syntax.Counting{},
		written:  map[*syntax.Row]*written{},
		opened:   map[syntax.Node]opened{},
		rowsOfNo: map[int]int32{},
	}
}

func (w *worker) run() {
	if w.opt.N < 1 && usesN(w.tree) {
		w.fab.Rows = append(w.fab.Rows, fabric.Row{Label: foundationLabel, Source: -1, Under: -1})
		w.yarns.index(w.fab, "")
		w.say(diag.Finding{Severity: diag.Fault, ID: "repeats",
			Message: fmt.Sprintf("with n = %d there is nothing to work", w.opt.N), Hint: "ask for at least 1 repeat"})
		return
	}
	steps := w.settle(w.layFoundation(w.unfold()))
	if len(steps) > 0 && steps[0].ws && steps[0].shape == fabric.Flat {
		w.mirrorFoundation()
	}
	w.makeRoom(len(steps))
	for i := range steps {
		if i > 0 && (len(w.fab.Stitches) > w.opt.Limit || w.failures > mostFailures) {
			break // the rows that failed have said so
		}
		w.work(&steps[i])
		if w.probe.upTo > 0 && len(w.fab.Rows) > w.probe.upTo || w.probe.stop && faulty(w.findings) {
			break
		}
	}
	w.endYarns()
}

// makeRoom makes room for rows as long as the foundation, so that a large piece is not copied as it grows.
func (w *worker) makeRoom(rows int) {
	const most = 1 << 18 // stitches
	if w.probe.upTo > 0 {
		rows = min(rows, w.probe.upTo)
	}
	n := min(rows*len(w.fab.Stitches), most)
	w.fab.Stitches = slices.Grow(w.fab.Stitches, n)
	w.fab.Bases = slices.Grow(w.fab.Bases, n)
	w.fab.Landings = slices.Grow(w.fab.Landings, n)
}

// workIn works in the room of an earlier working, of which nothing is asked any more but its rows.
func (w *worker) workIn(room *fabric.Fabric) {
	w.fab.Stitches, w.fab.Bases, w.fab.Landings = room.Stitches[:0], room.Bases[:0], room.Landings[:0]
	w.run()
	*room = *w.fab
}

// say adds a finding for the row in work. A repeated row says a thing once.
func (w *worker) say(f diag.Finding) {
	key := told{f.ID, f.Span}
	if w.told[key] {
		return
	}
	w.told[key] = true
	if f.Row == "" {
		f.Row = w.label()
	}
	w.findings = append(w.findings, f)
}

// label names the row in work; a repeated row by its own number, and by the number of the row it repeats.
func (w *worker) label() string {
	if w.step == nil {
		return ""
	}
	row, no := w.step.row, w.step.no
	name := rowLabel(row, no)
	if no > 0 && row.From > 0 && row.List == nil && (no < row.From || no > max(row.From, row.To)) {
		return fmt.Sprintf("%s (as %s)", name, rowLabel(row, row.From))
	}
	return name
}

// rowLabel is the label of a row under a number: "Row 4", "Rnd 2", "Foundation row".
func rowLabel(row *syntax.Row, no int) string {
	word := "Row"
	if row.Round {
		word = "Rnd"
	}
	switch {
	case no > 0:
		return fmt.Sprintf("%s %d", word, no)
	case row.Named != "":
		return row.Named
	}
	return word
}

// num is a number of the pattern for the size in work.
func (w *worker) num(q syntax.Num) int { return q.At(w.opt.N, w.opt.Size) }

// times is a number that means one where none was written.
func (w *worker) times(q syntax.Num) int {
	if q.IsZero() {
		return 1
	}
	return max(0, w.num(q))
}
