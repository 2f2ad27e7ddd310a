package work

import (
	"cmp"
	"fmt"
	"slices"

	"strandway/model/diag"
	"strandway/model/syntax"
)

// unfolding turns ranges, lists and references into single rows in working order.
type unfolding struct {
	w      *worker
	out    []step
	places []placeInRun // of each step of out
	latest map[int]int  // index in out of the latest row of a number
	given  map[placeInRun]bool
	every  []everySecond // rows written for every second number
	run    int           // numbers that begin anew begin another run
	last   int           // the number of the latest row, or what it would be
	listed bool          // rows are not written in working order
}

// placeInRun is where a step stands among those with which it is worked.
type placeInRun struct{ run, no int }

// everySecond is a row written for every second number of a run.
type everySecond struct {
	row    *syntax.Row
	source int
	run    int
}

func (w *worker) unfold() []step {
	u := &unfolding{w: w, latest: map[int]int{}, given: map[placeInRun]bool{}}
	for source, row := range w.tree.Rows {
		if row.Sizes != nil && !slices.Contains(row.Sizes, w.opt.Size) {
			continue
		}
		row = row.ForSize(w.opt.Size)
		w.step = &step{row: row, source: source, no: row.From, written: w.look(row)}
		switch {
		case w.step.ref != nil:
			u.repeated(row, source)
		case row.Every:
			u.begin(row.From)
			u.every = append(u.every, everySecond{row, source, u.run})
		default:
			u.written(row, source)
		}
	}
	u.between()
	if len(u.out) >= maxRows {
		w.say(diag.Finding{Severity: diag.Fault, ID: "limit", Span: u.out[len(u.out)-1].row.Span,
			Message: fmt.Sprintf("more than %d rows are asked for, so the rest is not worked", maxRows-1), Hint: "repeat the rows less often"})
	}
	w.step = nil
	if u.listed {
		return u.inOrder()
	}
	return u.out
}

// begin begins another run of numbers where one is given a second time.
func (u *unfolding) begin(no int) {
	if u.given[placeInRun{u.run, no}] {
		u.run++
	}
}

// add adds a step under a number; 0 is that of a row without one.
func (u *unfolding) add(s step, no int) {
	if len(u.out) >= maxRows {
		return
	}
	s.no = no
	switch {
	case no > 0:
		u.last = no
		u.latest[no] = len(u.out)
		u.given[placeInRun{u.run, no}] = true
	case s.work:
		u.last++
		if _, taken := u.latest[u.last]; !taken {
			u.latest[u.last] = len(u.out)
		}
	}
	u.places = append(u.places, placeInRun{u.run, u.last})
	u.out = append(u.out, s)
}

// written adds the rows of a heading.
func (u *unfolding) written(row *syntax.Row, source int) {
	nos := u.numbers(row)
	u.listed = u.listed || row.List != nil
	if row.List == nil {
		u.begin(row.From)
	}
	for k, no := range nos {
		s := u.stepOf(row, source, k == len(nos)-1)
		s.count = countOf(row, k, len(nos))
		u.add(s, no)
	}
}

// countOf is the stated count of the k-th of n rows under one heading: its own where "(9, 11)" gives one for each.
func countOf(row *syntax.Row, k, n int) []syntax.Tally {
	each := n > 1 && len(row.Count) == n && !slices.ContainsFunc(row.Count, func(t syntax.Tally) bool {
		return t.What != syntax.InSt || t.Yarn != "" || t.Each
	})
	if each {
		return row.Count[k : k+1]
	}
	return row.Count
}

// stepOf is a written row as a step; only the last of a range is cut off at its end.
func (u *unfolding) stepOf(row *syntax.Row, source int, last bool) step {
	r := u.w.look(row)
	if !last {
		r = r.uncut()
	}
	return step{row: row, source: source, under: source, count: row.Count, written: r, body: r.body, letter: row.Yarn}
}

// numbers are those of the rows that a heading stands for.
func (u *unfolding) numbers(row *syntax.Row) (nos []int) {
	switch {
	case row.List != nil:
		return row.List
	case !row.Many.IsZero():
		return make([]int, max(0, min(u.w.num(row.Many), maxRows)))
	}
	for no := row.From; no <= u.w.lastOf(row) && len(nos) < maxRows; no++ {
		nos = append(nos, no)
	}
	return nos
}

// at is the step of a row that is referred to by its number.
func (u *unfolding) at(no int) (step, bool) {
	if i, ok := u.latest[no]; ok {
		return u.out[i], true
	}
	for i := len(u.every) - 1; i >= 0; i-- {
		if e := u.every[i]; e.run == u.run && no >= e.row.From && (no-e.row.From)%2 == 0 {
			return u.stepOf(e.row, e.source, false), true
		}
	}
	return step{}, false
}

// repeated adds the rows that come of a reference.
func (u *unfolding) repeated(row *syntax.Row, source int) {
	w := u.w
	ref, after := w.step.ref, w.step.turn.after
	nos, rows := u.referred(row, ref)
	u.listed = u.listed || row.List != nil
	if row.List == nil {
		u.begin(row.From)
	}
	var from []step
	for _, no := range rows {
		s, ok := u.at(no)
		if !ok {
			w.say(diag.Finding{Severity: diag.Fault, ID: "rowref", Span: ref.Span,
				Message: fmt.Sprintf("row %d is referred to, but there is no such row above", no), Hint: u.rowsThereAre()})
			s.row = nil
		}
		from = append(from, s)
	}
	if ref.Last > 0 {
		from = u.lastOnes(ref.Last)
	}
	if ref.Grow {
		u.grown(row, ref, source)
		return
	}
	lead, ending := aroundRef(row.Body)
	for k, no := range nos {
		if len(from) == 0 {
			break
		}
		s := from[k%len(from)]
		if s.row == nil {
			continue
		}
		s.under, s.lead, s.count = source, lead, nil
		if ref.But != nil {
			again := *s.written
			again.body = swapped(again.body, ref.But)
			s.written, s.body = &again, again.body
		}
		if yarn := yarnOver(row.Yarn, lead); yarn != "" {
			w.tellOverYarn(row, s, yarn, lead)
			s.letter, s.body = yarn, begunWith(yarn, s.body)
		}
		if each := countOf(row, k, len(nos)); len(each) < len(row.Count) {
			s.count = each
		}
		if k == len(nos)-1 {
			s.count = countOf(row, k, len(nos))
			s.written = s.written.endingIn(ending, after)
		}
		u.add(s, no)
	}
}

// lastOnes are the n rows worked last.
func (u *unfolding) lastOnes(n int) (last []step) {
	for i := len(u.out) - 1; i >= 0 && len(last) < n; i-- {
		if u.out[i].work {
			last = append(last, u.out[i])
		}
	}
	slices.Reverse(last)
	return last
}

// lastOf is the last number of a row's range: "Row 3 and up" is worked as often as rows "until it measures".
func (w *worker) lastOf(row *syntax.Row) int {
	if row.Open {
		return row.From + w.opt.RowsUntil - 1
	}
	return max(row.From, row.To)
}

func (u *unfolding) rowsThereAre() string {
	highest := 0
	for no := range u.latest {
		highest = max(highest, no)
	}
	if highest == 0 {
		return ""
	}
	return fmt.Sprintf("the rows above end with row %d", highest)
}

// referred gives the numbers that a reference makes rows of, and the rows it repeats in turn.
func (u *unfolding) referred(row *syntax.Row, ref *syntax.RowRef) (nos, rows []int) {
	w := u.w
	rows = ref.Rows
	each := max(len(rows), ref.Last)
	switch {
	case each == 0:
		return nil, nil
	case row.List != nil, !row.Many.IsZero():
		return u.numbers(row), rows
	case row.From > 0:
		nos = u.numbers(row)
		w.checkRange(row, ref, len(nos), each)
		return nos, rows
	}
	n := w.num(ref.Times) * each
	switch {
	case !ref.Sts.IsZero():
		n = u.rowsTo(ref, rows)
	case !ref.For.IsZero():
		if n = w.num(ref.For); ref.InAll {
			n -= u.last
		}
	case ref.Until != "":
		n = w.opt.RowsUntil * each
		if w.opt.RowsForLength != nil {
			if all := w.opt.RowsForLength(ref.Until); all > 0 {
				n = max(1, (all-u.last+each-1)/each) * each
			}
		}
	case ref.Times.IsZero():
		n = w.opt.RowsUntil * each
	}
	for k := range min(max(n, 0), maxRows) {
		nos = append(nos, u.last+1+k)
	}
	return nos, rows
}

// between adds the rows written for every second number where no other row is written for it.
func (u *unfolding) between() {
	last := map[int]int{}
	for p := range u.given {
		last[p.run] = max(last[p.run], p.no)
	}
	for _, e := range u.every {
		u.run, u.w.step = e.run, &step{row: e.row, source: e.source, no: e.row.From}
		to := max(last[e.run], e.row.From)
		if e.row.To > e.row.From {
			to = e.row.To
		}
		for no := e.row.From; no <= to && len(u.out) < maxRows; no += 2 {
			if !u.given[placeInRun{e.run, no}] {
				u.listed = true
				u.add(u.stepOf(e.row, e.source, false), no)
			}
		}
	}
}

// inOrder sorts the steps by their numbers, run by run.
func (u *unfolding) inOrder() []step {
	order := make([]int, len(u.out))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		p, q := u.places[a], u.places[b]
		return cmp.Or(cmp.Compare(p.run, q.run), cmp.Compare(p.no, q.no))
	})
	out := make([]step, 0, len(order))
	for _, i := range order {
		out = append(out, u.out[i])
	}
	return out
}

// swapped writes a row anew with what a reference puts in place of its words: "as Row 5 but ch 9 for ch 8".
func swapped(nodes []syntax.Node, but []syntax.Swap) []syntax.Node {
	out := make([]syntax.Node, len(nodes))
	for i, n := range nodes {
		for _, b := range but {
			n = swap(n, b)
		}
		switch x := n.(type) {
		case *syntax.Make:
			if x.Place != nil && x.Place.Chains > 0 { // the spaces are those of another row
				y, q := *x, *x.Place
				q.Chains = 0
				y.Place, n = &q, &y
			}
		case *syntax.Repeat:
			y := *x
			y.Body, y.Ending = swapped(x.Body, but), swapped(x.Ending, but)
			if x.Ending == nil {
				y.Ending = nil
			}
			n = &y
		case *syntax.Group:
			y := *x
			y.Body = swapped(x.Body, but)
			if x.Place != nil {
				q := *x.Place
				q.Chains, y.Place = 0, &q
			}
			n = &y
		}
		out[i] = n
	}
	return out
}

// swap puts one thing in place of another, where it stands.
func swap(n syntax.Node, b syntax.Swap) syntax.Node {
	switch old := b.Old.(type) {
	case *syntax.ChainN:
		x, ok := n.(*syntax.ChainN)
		if !ok || x.N.B != old.N.B || x.N.A != old.N.A {
			return n
		}
		switch other := b.New.(type) {
		case *syntax.ChainN:
			y := *x
			y.N = other.N
			return &y
		case *syntax.Make:
			y := *other
			y.Span = x.Span
			return &y
		}
	case *syntax.Make:
		x, ok := n.(*syntax.Make)
		if !ok || x.Kind != old.Kind {
			return n
		}
		spread := old.N.B > 1 && x.N.B == 1 && x.Place != nil && x.Place.N.B == old.N.B // "dc in next 3 sts"
		if x.N.B != old.N.B && !spread {
			return n
		}
		switch other := b.New.(type) {
		case *syntax.Make:
			y := *x
			y.Kind, y.Unit = other.Kind, other.Unit
			if spread {
				q := *x.Place
				q.N = other.N
				y.Place = &q
			} else {
				y.N = other.N
			}
			return &y
		case *syntax.ChainN:
			y := *other
			y.Span = x.Span
			return &y
		}
	}
	return n
}
