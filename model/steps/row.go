package steps

import (
	"fmt"
	"sort"

	"strandway/model/fabric"
)

// tellRow writes the words of a step that is a whole row.
func (s *Steps) tellRow(st *Step) {
	row := &s.f.Rows[st.Row]
	st.Word = st.Text
	st.Count = s.whole(st.Row)
	st.Says = join(s.beginning(st.Row), sentence(s.direction(st.Row)), s.after(st.Last, st.Row))
	if row.Count > 0 {
		st.How = sentence("it has " + s.made(row))
	}
	if st.Row+1 >= len(s.f.Rows) {
		st.Next = "That is the last " + rowWord(row.Shape) + "."
		return
	}
	next := &s.f.Rows[st.Row+1]
	st.Next = "Then: " + next.Label
	if letter := s.letter(next.Yarn); letter != "" {
		st.Next += " in " + letter
	}
	if next.Turned && st.Row > 0 {
		st.Next += ", turned"
	}
	st.Next += "."
}

// whole is the row's count.
func (s *Steps) whole(r int) string {
	row := &s.f.Rows[r]
	if row.Count == 0 {
		return many(row.Chains, "chain")
	}
	return many(row.Count, "stitch")
}

// direction says which way a row is worked and in which yarn.
func (s *Steps) direction(r int) string {
	row := &s.f.Rows[r]
	if r == 0 && row.No == 0 {
		return "make the foundation of " + many(int(row.Last-row.First), "chain") + s.in(row.Yarn)
	}
	says := "work " + row.Label + s.in(row.Yarn)
	if row.Shape != fabric.Flat {
		return says
	}
	if row.WS {
		says += ", the wrong side facing"
	} else {
		says += ", the right side facing"
	}
	from, to := "right", "left"
	if row.FromLeft {
		from, to = to, from
	}
	return fmt.Sprintf("%s; on the chart from the %s edge to the %s", says, from, to)
}

func (s *Steps) in(yarn uint8) string {
	if letter := s.letter(yarn); letter != "" {
		return " in " + letter
	}
	return ""
}

// letter names a yarn; "" where the piece has one only.
func (s *Steps) letter(yarn uint8) string {
	if len(s.f.Yarns) < 2 || int(yarn) >= len(s.f.Yarns) {
		return ""
	}
	return "yarn " + s.f.Yarns[yarn]
}

// made counts the row's stitches by kind, in the order in which they are met.
func (s *Steps) made(row *fabric.Row) string {
	var order []string
	n := map[string]int{}
	for id := row.First; id < row.Last; id++ {
		if !s.counts(id) {
			continue
		}
		w := s.word(id)
		if n[w] == 0 {
			order = append(order, w)
		}
		n[w]++
	}
	for i, w := range order {
		order[i] = fmt.Sprintf("%d %s", n[w], w)
	}
	if row.Chains > 0 {
		order = append(order, many(row.Chains, "chain"))
	}
	return list(order)
}

// beginning says what is done before the first stitch of a row: the turn, and the yarns
// that change places at the edge.
func (s *Steps) beginning(r int) string {
	row := &s.f.Rows[r]
	if r == 0 {
		return ""
	}
	below := &s.f.Rows[r-1]
	var turn string
	switch {
	case r == 1 && (below.Shape == fabric.Flat || below.First == below.Last):
		// From a foundation chain one works back without a word, and a ring has no sides.
	case row.Turned:
		turn = "Turn."
	case row.Shape == fabric.Flat:
		turn = "Do not turn."
	}
	return join(turn, s.yarnHere(row.First))
}

// yarnHere says what happens to the yarns before a stitch; what belongs to the row
// before is said there.
func (s *Steps) yarnHere(id int32) string {
	row := s.f.Stitches[id].Row
	var out []string
	for _, e := range s.events(id) {
		if e.Row != row && e.Do == fabric.Cut || e.Do == fabric.Change {
			continue
		}
		yarn := s.letter(e.Yarn)
		if yarn == "" {
			yarn = "the yarn"
		}
		switch e.Do {
		case fabric.JoinYarn:
			if id > 0 && !s.changed(id, e.Yarn) {
				out = append(out, "Join "+yarn+s.joined(id, e.Side)+".")
			}
		case fabric.PickUp:
			if !s.changed(id, e.Yarn) {
				out = append(out, "Take up "+yarn+", which waits"+at(e.Side)+".")
			}
		case fabric.Drop:
			out = append(out, sentence(yarn+" waits"+at(e.Side)))
		case fabric.Cut:
			out = append(out, "Fasten off "+yarn+".")
		case fabric.Hold:
			out = append(out, "Put the live loop on a marker.")
		}
	}
	return join(out...)
}

// joined says where a yarn is joined: at an edge, or in the place of a round's first stitch.
func (s *Steps) joined(id int32, side fabric.Side) string {
	bases := s.f.Of(id)
	if side != fabric.NoSide || len(bases) == 0 || bases[0].At < 0 {
		return at(side)
	}
	which := " in the "
	if s.f.Stitches[bases[0].At].Has(fabric.Corner) {
		which = " in a corner "
	}
	return which + s.noun(bases[0])
}

// changed reports whether a yarn came in with the last pull-through of the stitch before.
func (s *Steps) changed(id int32, yarn uint8) bool {
	for _, e := range s.events(id) {
		if e.Do == fabric.Change && e.Yarn == yarn {
			return true
		}
	}
	return false
}

// after says what ends a step: another yarn in its last pull-through, and yarns cut.
func (s *Steps) after(next int32, row int) string {
	var out []string
	if row == 0 && s.ends(next, row) && s.f.Rows[0].Shape == fabric.Joined && next > 0 {
		if k, ok := s.lib.Kind("slst"); ok {
			w, _ := s.lib.Word(k, s.w.terms)
			out = append(out, "Join with a "+w+" to form a ring.")
		}
	}
	for _, e := range s.events(next) {
		switch {
		case e.Do == fabric.Change:
			out = append(out, "Make the last pull-through with "+s.letter(e.Yarn)+".")
		case e.Do == fabric.Cut && int(e.Row) == row && s.ends(next, row):
			if yarn := s.letter(e.Yarn); yarn != "" {
				out = append(out, "Fasten off "+yarn+".")
			} else {
				out = append(out, "Fasten off.")
			}
		}
	}
	return join(out...)
}

// ends reports whether a row ends before a stitch.
func (s *Steps) ends(next int32, row int) bool { return s.f.Rows[row].Last == next }

// events are those before a stitch.
func (s *Steps) events(id int32) []fabric.Event {
	i := sort.Search(len(s.event), func(i int) bool { return s.f.Events[s.event[i]].Before >= id })
	var out []fabric.Event
	for ; i < len(s.event) && s.f.Events[s.event[i]].Before == id; i++ {
		out = append(out, s.f.Events[s.event[i]])
	}
	return out
}

func at(side fabric.Side) string {
	switch side {
	case fabric.Left:
		return " at the left edge"
	case fabric.Right:
		return " at the right edge"
	}
	return ""
}
