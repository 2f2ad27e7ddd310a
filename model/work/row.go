package work

import (
	"cmp"
	"fmt"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// failed is the score of a reading that could not be worked to the row's end.
const failed = cannot

// work works one row: it lays out what the hook meets, tries the customary
// reading, and others only if the row does not come out or its count differs.
func (w *worker) work(s *step) {
	w.step = s
	w.row = int32(len(w.fab.Rows))
	fr := fabric.Row{
		Label: rowLabel(s.row, s.no), No: s.no, Source: s.source, Under: s.under,
		First: int32(len(w.fab.Stitches)), Land0: int32(len(w.fab.Landings)),
		Shape: s.shape, Turned: s.turned, WS: s.ws, Backward: s.backward, FromLeft: s.ws != s.backward,
	}
	w.round = s.shape != fabric.Flat
	w.rising, w.closing = fr.FromLeft, 0
	if w.round {
		w.rising, w.closing = s.ws == s.backward, w.unsaidSkip(s.body)
	}
	w.into = w.rowNamed(s.body)
	w.meet()
	w.cursor = cursor{met: w.met, yarn: w.yarn, start: true, tch: -1, aside: -1, skipA: -1, word: -1, edge: fabric.Upper}
	w.yarns.beginRow(w)
	w.beginRound()
	w.reading = reading{}
	skip, err := w.joinAt(s.body)
	body := s.body[skip:]
	hook := w.extension(body)
	if hook > 0 {
		body = w.extend(body, hook)
		w.step.pend = nil
	}
	base := w.save()
	best, first := 0, 0
	if w.met == 0 && w.row > 1 && err == nil {
		err = fail("there is no stitch below to work into")
	}
	if err == nil {
		best, first, err = w.read(body, &base)
	}
	w.finish(&fr)
	w.tell(err, best, first)
	w.yarns.settle(w, &w.fab.Rows[w.row])
	if w.probe.trace {
		w.traces = append(w.traces, w.traced(skip))
	}
}

// read tries the readings, leaves the row worked by the best, and gives its index and the score of the first.
func (w *worker) read(body []syntax.Node, base *cursor) (best, first int, err error) {
	try := func(k int) (int, error) {
		w.reading = readings[k].reading
		w.restore(base)
		w.met = base.met
		if w.reading.ledge {
			w.meetLedge()
		}
		if err := w.rowBody(body); err != nil {
			return failed, err
		}
		score := 4 * (w.left() + w.passed)
		if w.countOff() != nil {
			score += 2
		}
		return off*score + min(w.slack, off-1), nil
	}
	first, err = try(0)
	if first == 0 {
		return 0, 0, err
	}
	least, last := first, 0
	for k := 1; k < len(readings) && least > 0; k++ {
		if r := readings[k].reading; !w.mayRead(r) || least < off && r != (reading{chains: true}) {
			continue // where the row comes out, only what "st" takes in is still open
		}
		last = k
		if score, _ := try(k); score < least {
			best, least = k, score
		}
	}
	if last != best {
		_, err = try(best)
	} else if best > 0 {
		err = nil
	}
	return best, first, err
}

// rowBody works the row's instructions: its turning chain first, its ending last.
func (w *worker) rowBody(body []syntax.Node) error {
	if w.step.pend != nil {
		if err := w.turningChain(w.step.pend, body); err != nil {
			return err
		}
	}
	if w.reading.hook && w.pos == 0 {
		w.pos = min(w.height(w.plain(w.firstKind(body))), w.met)
		w.skipped, w.hooked = w.pos, w.pos
	}
	if err := w.sequence(body, true); err != nil {
		return err
	}
	if !w.round && w.left() > 0 && endsInSlip(w.step.body) {
		w.free = true
	}
	if w.endsShort() {
		w.short, w.free = w.left(), true
	}
	for _, n := range w.step.tail {
		switch x := n.(type) {
		case *syntax.Join:
			if !x.Not {
				w.join(x)
			}
		case *syntax.Yarn:
			w.takeYarn(x)
		}
	}
	return nil
}

// endsShort reports whether a row ends before the end of the row below as its own count says, though not in words: "hdc in
// next 14 sts, turn. (14 hdc)".
func (w *worker) endsShort() bool {
	if w.round || w.isBase || w.passed > 0 || len(w.step.count) == 0 || w.left() == 0 {
		return false
	}
	ends := false
	for _, n := range w.step.tail {
		switch x := n.(type) {
		case *syntax.Turn:
			ends = ends || !x.Not
		case *syntax.Yarn:
			ends = ends || x.Do == syntax.CutIt
		}
	}
	return ends && !anyNode(w.step.body, func(n syntax.Node) bool { _, open := w.open(n); return open }) && w.countOff() == nil
}

// endsInSlip: a row that ends with a slip stitch in a space leaves the rest of it, as pieces from corner to corner do.
func endsInSlip(body []syntax.Node) bool {
	if len(body) == 0 {
		return false
	}
	m, ok := body[len(body)-1].(*syntax.Make)
	return ok && m.Kind == slipStitch && m.Place != nil && m.Place.What == syntax.InSp
}

// finish closes the row: its columns, its landings, its counts, and what it left below.
func (w *worker) finish(fr *fabric.Row) {
	fr.Last = int32(len(w.fab.Stitches))
	fr.Yarn = w.yarns.ofRow(w, fr)
	fr.EndSide = w.endSide()
	if w.isBase && w.skipped > 0 {
		w.hideSkipped(w.skipped)
	}
	if w.round {
		w.nameFirst(fr)
	}
	w.markCorners(fr)
	w.columns(fr)
	for id := fr.First; id < fr.Last; id++ {
		s := &w.fab.Stitches[id]
		if s.Flags&(fabric.NoLanding|fabric.Picot|fabric.Surface) != 0 {
			continue
		}
		w.fab.Landings = append(w.fab.Landings, id)
		if s.Has(fabric.Chain) {
			fr.Chains++
		} else {
			fr.Count++
		}
	}
	fr.Land1 = int32(len(w.fab.Landings))
	fr.Covered = w.covered
	fr.Unworked = w.unworked()
	w.leaveLedge()
	w.fab.Rows = append(w.fab.Rows, *fr)
	if fr.No > 0 {
		w.rowsOfNo[fr.No] = w.row
	}
}

// nameFirst gives the group that a round begins with, of which the starting chain is part, the name of the others.
func (w *worker) nameFirst(fr *fabric.Row) {
	first, other := -1, ""
	for i := len(w.fab.Units) - 1; i >= 0 && w.fab.Units[i].First >= fr.First; i-- {
		u := &w.fab.Units[i]
		switch {
		case w.tch >= 0 && u.First == w.tch:
			first = i
		case w.tree.Units[u.Name] != nil:
			other = u.Name
		}
	}
	if first >= 0 && other != "" && w.tree.Units[w.fab.Units[first].Name] == nil {
		w.fab.Units[first].Name = other
	}
}

// unworked counts the tops from the cursor on, whether they are left on purpose or not.
func (w *worker) unworked() int {
	free := w.free
	w.free = false
	n := w.left()
	w.free = free
	return n
}

// tell says how the row came out.
func (w *worker) tell(err error, best, first int) {
	row := w.step.row
	if err != nil {
		w.tellMisfit(asMisfit(err))
		return
	}
	if best > 0 {
		w.say(diag.Finding{Severity: diag.Note, ID: "reading", Span: row.Span, Message: readings[best].note + ": so the row comes out"})
	}
	if w.short > 0 {
		w.say(diag.Finding{Severity: diag.Doubt, ID: "short", Span: row.Span, Message: "the row ends with " + count(w.short, "stitch") + " of the row below left over",
			Hint: `say "leave remaining sts unworked" if it ends here on purpose`})
	}
	if n := w.passed + w.left(); n > 0 {
		w.tellOver(n, diag.Span{})
	}
	if m := w.countOff(); m != nil {
		w.tellCount(m)
		w.miscounted = cmp.Or(w.miscounted, w.label())
	} else if len(w.step.count) > 0 {
		w.miscounted = ""
	}
	if best == 0 && w.hasSp && !w.reading.chains && w.passesSpaces() {
		w.say(diag.Finding{Severity: diag.Note, ID: "spaces", Span: row.Span,
			Message: "the chain-spaces of the row below are passed over", Hint: `write "each st and ch" if they are to be worked`})
	}
}

// passesSpaces reports whether the row works each stitch and never a space.
func (w *worker) passesSpaces() bool {
	each := false
	spaces := anyNode(w.step.body, func(n syntax.Node) bool {
		var p *syntax.Place
		switch x := n.(type) {
		case *syntax.Make:
			p = x.Place
			each = each || p != nil && p.Ord == syntax.Each && p.What == syntax.InSt
		case *syntax.Group:
			p = x.Place
		}
		if p == nil {
			return false
		}
		switch p.What {
		case syntax.InSp, syntax.InStSp, syntax.InStCh, syntax.InCh, syntax.InCorner:
			return true
		}
		return false
	})
	return each && !spaces
}

// follows is the hint for faults after the first row that failed: they may not be the row's own.
func (w *worker) follows() string {
	w.failures++
	if w.unsure == "" {
		w.unsure = w.label()
		return ""
	}
	return "it may follow from " + w.unsure
}

func (w *worker) tellMisfit(m *misfit) {
	if m.end {
		w.tellOver(1, m.span)
		return
	}
	f := diag.Finding{Severity: diag.Fault, ID: cmp.Or(m.id, "place"), Span: m.span, Message: w.reason(m), Hint: w.follows()}
	if f.Span == (diag.Span{}) {
		f.Span = w.step.row.Span
	}
	if f.Hint == "" && m.what == syntax.InTch {
		f.Hint, f.Mend = w.countsMend()
	}
	w.say(f)
}

// countsMend offers to say that the turning chain of the row below counts.
func (w *worker) countsMend() (string, *diag.Mend) {
	below := w.fab.Rows[w.row-1]
	if below.Source < 0 || below.Source >= len(w.tree.Rows) {
		return "", nil
	}
	c := firstChain(w.look(w.tree.Rows[below.Source]).body)
	if c == nil || c.Counts != syntax.Unsaid || w.isBase {
		return "", nil
	}
	mend := &diag.Mend{Label: fmt.Sprintf(`write "(counts as a stitch)" in %s`, below.Label), Span: diag.Span{Start: c.Span.End, End: c.Span.End}, Text: " (counts as a stitch)"}
	return fmt.Sprintf("say that the ch %d of %s counts as a stitch, or work into its last stitch", w.num(c.N), below.Label), mend
}

// tellOver tells of a row that does not come out, and which foundations would.
func (w *worker) tellOver(n int, span diag.Span) {
	f := diag.Finding{Severity: diag.Fault, ID: "fit", Span: span, Hint: w.follows()}
	if f.Span == (diag.Span{}) {
		f.Span = w.step.row.Span
	}
	noun := "stitch"
	if w.isBase {
		noun = "chain"
	}
	repeats := anyNode(w.step.body, func(n syntax.Node) bool { _, open := w.open(n); return open })
	switch {
	case repeats:
		f.Message = "the repeat does not come out: " + count(n, noun) + " over"
	default:
		f.Message = "the row does not come out: " + count(n, noun) + " over"
	}
	if f.Hint == "" && !w.probe.quiet && w.probe.base == 0 {
		f.Hint, f.Mend = w.fitHint()
	}
	if f.Hint == "" {
		f.Hint = w.oftener(n)
	}
	if !repeats && f.Hint == "" {
		f.Hint = `say "leave remaining sts unworked" if the row ends here on purpose`
	}
	if w.step.row.Named != "" && w.step.row.From == 0 && w.step.row.Named != "Next" {
		f.Severity = diag.Doubt // a loop or a tie stands on a few stitches
	}
	if !w.round && (n == 1 || n == 2 && !repeats) && w.hasSame && w.same.inGap() {
		f.Severity = diag.Doubt // a net that narrows leaves its last stitch
	}
	w.say(f)
}
