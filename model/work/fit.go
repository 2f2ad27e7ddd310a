package work

import (
	"slices"

	"strandway/model/fabric"
	"strandway/model/syntax"
)

// waysBack is how many repetitions can be taken back to let the rest of the row come out.
const waysBack = 6

// fitting works one open repeat and what follows it.
type fitting struct {
	w       *worker
	body    []syntax.Node
	repeat  *syntax.Repeat
	rest    []syntax.Node // what follows the last whole repeat
	marks   [waysBack]cursor
	reps    int   // repetitions that went in
	valid   int   // a mark is only a way back: beyond this one it has been overwritten
	trouble error // why what follows could not be worked, the first time
}

// off is what a top passed or left over costs a try, against a landing passed freely. Between two ways to come out,
// the one that passes nothing is the one meant.
const off = 1 << 10

// cannot is the cost of a try that could not be worked.
const cannot = 1 << 40

// fit works a body as often as it goes in, so that what follows comes out at the row's end.
func (w *worker) fit(o opened, tail []syntax.Node, top bool) error {
	f := &fitting{w: w, body: o.body, repeat: o.repeat, rest: tail}
	ending := false
	if x := o.repeat; x != nil {
		if x.AtBreak || x.Break > 0 && x.Ending == nil { // the mark alone says it as well
			f.rest = slices.Concat(o.body[:x.Break], tail)
		}
		if x.Ending != nil {
			f.rest, ending = slices.Concat(x.Ending, tail), true
		}
	}
	if err := w.toEdge(o.body); err != nil {
		return err
	}
	w.backToSpace(o.body)
	ext := o.ext
	limit, err := w.limitOf(&ext)
	if err != nil {
		return err
	}
	if o.ext.How == syntax.ToLast && top && !w.isBase && !worksOn(f.rest) {
		w.free = true // "dc in each st to last 6 sts, turn": these stay unworked on purpose
	}
	stop := f.fill(ext, limit)
	if m, ok := stop.(*misfit); ok && m.fatal {
		return m
	}
	switch o.ext.How {
	case syntax.ToNext, syntax.OverN, syntax.UntilN: // it has its own end, before the row's
		return w.sequence(f.rest, top)
	}
	if !top { // inside a bracket there is no row end to come out at
		return w.sequence(f.rest, false)
	}
	return f.comeOut(ending, ext.How == syntax.ToLast, stop)
}

// backToSpace: "sl st in first ch-3 sp, ch 1, *sc in ch-3 sp, ch 4; rep from * around" begins in the space to which the
// slip stitches led.
func (w *worker) backToSpace(body []syntax.Node) {
	if !w.round || !w.start || w.tch >= 0 || !w.hasSame || w.same.a < 0 || w.same.how != fabric.Space && !(w.same.how == fabric.Top && w.isCorner(int(w.same.a), 0)) || len(body) == 0 || w.same.b+1 != int32(w.pos) {
		return
	}
	p := placeOf(body[0])
	if w.same.how == fabric.Top {
		if p != nil && p.What == syntax.InCorner {
			w.pos = int(w.same.a)
		}
		return
	}
	if p != nil && p.Ord == syntax.Next && p.What == syntax.InSp && p.Of == nil && !anyNode(body[1:], func(n syntax.Node) bool { q := placeOf(n); return q != nil && q.Ord == syntax.Same }) {
		w.pos = int(w.same.a)
	}
}

// placeOf is the place of a stitch or a group, nil for none.
func placeOf(n syntax.Node) *syntax.Place {
	switch x := n.(type) {
	case *syntax.Make:
		return x.Place
	case *syntax.Group:
		return x.Place
	}
	return nil
}

// worksOn reports whether instructions need stitches of the row below.
func worksOn(nodes []syntax.Node) bool {
	return anyNode(nodes, func(n syntax.Node) bool {
		switch n.(type) {
		case *syntax.Make, *syntax.Group, *syntax.Skip:
			return true
		}
		return false
	})
}

// fill works the body as often as it goes in before the limit, and gives the reason why it stopped, if there was one.
func (f *fitting) fill(ext syntax.Extent, limit int) error {
	w := f.w
	f.marks[0] = w.save()
	made := len(w.fab.Stitches)
	for {
		switch {
		case ext.How == syntax.ToLast && w.nextOf(w.pos, ext.What, ext.Name, ext.Chains) >= limit,
			ext.How == syntax.UntilN && w.madeOf(made, ext.What, ext.Name) >= w.num(ext.N),
			w.pos >= w.met && !(w.round && f.reps == 0): // nothing left to stand in
			return nil
		}
		pos, before := w.pos, len(w.fab.Stitches)
		if err := w.once(f.body, f.repeat); err != nil {
			w.restore(&f.marks[f.reps%waysBack])
			return err
		}
		if w.pos <= pos && (len(w.fab.Stitches) == before || w.pos >= w.met || f.reps > 10_000) {
			return &misfit{id: "fit", text: "the repeat uses up no stitches, so it cannot end by itself", fatal: true}
		}
		if ext.How == syntax.ToLast && w.pos > limit {
			w.restore(&f.marks[f.reps%waysBack])
			return rowEnded()
		}
		f.reps++
		f.marks[f.reps%waysBack] = w.save()
		if len(w.fab.Stitches) > w.opt.Limit {
			return w.overLimit()
		}
	}
}

// limitOf gives the landing at which an extent ends.
func (w *worker) limitOf(ext *syntax.Extent) (int, error) {
	switch ext.How {
	case syntax.ToLast:
		return w.fromLast(ext), nil
	case syntax.ToNext:
		limit := w.seek(ext.What, ext.Name, ext.Chains)
		switch {
		case limit < 0 && w.round && ext.What == syntax.InCorner && w.pos > 0:
			limit = w.met // the last side of a round ends where the round began
		case limit < 0:
			return 0, none(ext.What, ext.Name, ext.Chains)
		}
		if n := w.num(ext.N); n > 0 {
			limit = w.back(limit, n)
		}
		*ext = syntax.Extent{How: syntax.ToLast, What: syntax.InStCh}
		return limit, nil
	case syntax.OverN:
		limit := w.pos
		for range w.num(ext.N) {
			if limit = w.nextOf(limit, ext.What, ext.Name, ext.Chains); limit >= w.met {
				return 0, none(ext.What, ext.Name, 0)
			}
			limit++
		}
		*ext = syntax.Extent{How: syntax.ToLast, What: syntax.InStCh}
		return limit, nil
	}
	return w.met, nil
}

// back is the landing n tops before landing i, but not behind the cursor.
func (w *worker) back(i, n int) int {
	for ; i > w.pos && n > 0; i-- {
		if !w.lands[i-1].chain {
			n--
		}
	}
	return i
}

// fromLast finds the landing from which N of a sort are left.
func (w *worker) fromLast(ext *syntax.Extent) int {
	n := w.num(ext.N)
	for i := w.met - 1; i >= 0; i-- {
		switch {
		case ext.What == syntax.InUnit:
			if w.matches(i, syntax.InUnit, "", ext.Chains) {
				n--
			}
		case w.matches(i, ext.What, ext.Name, ext.Chains) && (ext.What != syntax.InSp || i == 0 || !w.lands[i-1].chain):
			n--
		}
		if n == 0 {
			if w.reading.through && ext.What == syntax.InUnit {
				_, i = w.unitSpan(i)
				i++
			}
			return i
		}
	}
	return 0
}

// nextOf is the next landing of a sort from i on; the number of landings if there is none.
func (w *worker) nextOf(i int, what syntax.What, name string, chains int) int {
	if i = w.seekFrom(i, what, name, chains); i < 0 {
		return w.met
	}
	return i
}

// comeOut tries what follows after ever fewer repetitions, and leaves the row worked where least is left over.
func (f *fitting) comeOut(ending, once bool, stop error) error {
	w := f.w
	bestK, bestPart, least := -1, 0, cannot
	f.valid = f.reps
	for k := f.reps; k >= max(0, f.reps-waysBack+1) && least > 0; k-- {
		for part := 0; part == 0 || ending && part < len(f.body) && least > 0; part++ { // the ending takes the place of the last repeat's end
			c := f.try(k, part)
			if ending && c < off && f.takesPlaceOf(part) {
				c = 0
			}
			if c < least {
				bestK, bestPart, least = k, part, c
			}
		}
		if once || w.place != nil {
			break
		}
	}
	reason := f.trouble
	if m, ok := stop.(*misfit); ok && !m.end && f.reps == 0 {
		reason = m // it never fitted: that says more than the leftover
		if least >= off {
			return reason
		}
	}
	switch {
	case bestK < 0 && reason != nil:
		return reason
	case bestK < 0 && stop != nil:
		return stop
	case bestK < 0:
		return rowEnded()
	case least > 0:
		f.try(bestK, bestPart)
	}
	return nil
}

// takesPlaceOf reports whether the ending begins as the body goes on after its first part nodes.
func (f *fitting) takesPlaceOf(part int) bool {
	switch x := f.rest[0].(type) {
	case *syntax.ChainN:
		y, ok := f.body[part].(*syntax.ChainN)
		return ok && f.w.num(x.N) == f.w.num(y.N)
	case *syntax.Make:
		y, ok := f.body[part].(*syntax.Make)
		return ok && x.Kind == y.Kind
	}
	return false
}

// try works what follows after k repetitions and part of another, and gives its cost: what is then passed or left over.
func (f *fitting) try(k, part int) int {
	w := f.w
	f.valid = min(f.valid, k)
	w.restore(&f.marks[f.valid%waysBack])
	for range k - f.valid {
		if w.once(f.body, f.repeat) != nil {
			return cannot
		}
	}
	if part > 0 && w.sequence(f.body[:part], false) != nil {
		return cannot
	}
	if err := w.sequence(f.rest, true); err != nil {
		if f.trouble == nil {
			f.trouble = err
		}
		return cannot
	}
	return off*(w.passed+w.left()) + min(w.slack, off-1)
}

// madeOf counts the stitches or groups of a sort made since stitch first: "until 12 fans are made".
func (w *worker) madeOf(first int, what syntax.What, name string) int {
	n, unit := 0, int32(-1)
	for i := first; i < len(w.fab.Stitches); i++ {
		s := &w.fab.Stitches[i]
		switch {
		case s.Flags&fabric.NoLanding != 0:
		case what == syntax.InUnit:
			if s.Unit >= 0 && s.Unit != unit && w.isUnit(w.fab.Units[s.Unit].Name, name) {
				n++
			}
			unit = s.Unit
		case what == syntax.InSp || what == syntax.InCh:
			if s.Has(fabric.Chain) && (i == first || what == syntax.InCh || !w.fab.Stitches[i-1].Has(fabric.Chain)) {
				n++
			}
		case !s.Has(fabric.Chain) && (what != syntax.InKind || w.isKind(s, name)):
			n++
		}
	}
	return n
}
