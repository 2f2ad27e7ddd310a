package work

import (
	"fmt"
	"slices"
	"strings"

	"strandway/model/syntax"
)

// longestPeriod is the most steps that a repeat has when a row is folded.
const longestPeriod = 80

// Fold writes single steps as a designer would: like neighbours become one step
// ("sc in next 4 sts"), and the period that saves most becomes "*...; rep from *".
// There is at most one repeat.
func Fold(steps []syntax.Node) []syntax.Node {
	ids := identities(steps)
	from, period, times := bestRepeat(ids)
	if times == 0 {
		return merge(steps, ids)
	}
	end := from + period*times
	rep := &syntax.Repeat{Body: merge(steps[from:from+period], ids[from:from+period]), Star: true,
		Ext: syntax.Extent{How: syntax.Times, N: syntax.Plain(times)}}
	rest := steps[end:]
	if len(rest) == 0 && usesRow(rep.Body) {
		rep.Ext = syntax.Extent{How: syntax.Across}
	} else if n, ok := topsUsed(rest); ok && n > 0 {
		rep.Ext = syntax.Extent{How: syntax.ToLast, N: syntax.Plain(n)}
	}
	return slices.Concat(merge(steps[:from], ids[:from]), []syntax.Node{rep}, merge(rest, ids[end:]))
}

// bestRepeat finds the repeat that saves most steps, at least two; times is 0 if there is none.
func bestRepeat(ids []int) (from, period, times int) {
	best := 1
	for p := 1; p <= len(ids)/2 && p <= longestPeriod; p++ {
		for i := 0; i+p < len(ids); {
			j := i
			for j+p < len(ids) && ids[j] == ids[j+p] {
				j++
			}
			if k := (j - i + p) / p; k > 1 {
				one := runs(ids[i : i+p])
				if save := runs(ids[i:i+p*k]) - one; one > 1 && save > best {
					best, from, period, times = save, i, p, k
				}
			}
			i = max(j, i) + 1
		}
	}
	return from, period, times
}

// runs counts the steps that are left when like neighbours are one.
func runs(ids []int) int {
	n := 0
	for i, id := range ids {
		if i == 0 || id != ids[i-1] || id < 0 {
			n++
		}
	}
	return n
}

// identities numbers the steps so that like steps have like numbers; the number is negative for steps that do not merge
// with like neighbours.
func identities(steps []syntax.Node) []int {
	numbers := map[string]int{}
	byNode := map[syntax.Node]int{}
	ids := make([]int, len(steps))
	for i, n := range steps {
		id, ok := byNode[n]
		if !ok {
			key := nodeKey(n)
			if id, ok = numbers[key]; !ok {
				id = len(numbers) + 1
				if !mergeable(n) {
					id = -id
				}
				numbers[key] = id
			}
			byNode[n] = id
		}
		ids[i] = id
	}
	return ids
}

// nodeKey tells steps apart, wherever they are written.
func nodeKey(n syntax.Node) string {
	switch x := n.(type) {
	case *syntax.Make:
		return fmt.Sprint("make ", x.N, x.Kind, x.Unit != nil, placeKey(x.Place))
	case *syntax.Skip:
		return fmt.Sprint("skip ", x.N, x.What, x.Name, x.Chains, x.Behind, x.First, x.Rest)
	case *syntax.ChainN:
		return fmt.Sprint("ch ", x.N, x.Counts, x.AsKind, len(x.As), x.Start)
	case *syntax.Group:
		var b strings.Builder
		for _, m := range x.Body {
			b.WriteString(nodeKey(m) + ";")
		}
		return fmt.Sprint("group ", x.Name, placeKey(x.Place), b.String())
	case *syntax.Yarn:
		return fmt.Sprint("yarn ", x.Do, x.Letter, placeKey(x.Place))
	case *syntax.Note:
		return "note " + x.Text
	case *syntax.Along:
		return fmt.Sprint("along ", x.Edge, x.Face)
	}
	return fmt.Sprintf("%T at %v", n, n.At())
}

func placeKey(p *syntax.Place) string {
	if p == nil {
		return "nowhere"
	}
	q := *p
	q.Of = nil
	q.Span.Start, q.Span.End = 0, 0
	key := fmt.Sprint(q)
	if p.Of != nil {
		key += " of " + placeKey(p.Of)
	}
	return key
}

// mergeable reports whether a step and one more of it can be written "in next 2 sts".
func mergeable(n syntax.Node) bool {
	m, ok := n.(*syntax.Make)
	if !ok || m.Place == nil || m.N.B != 1 || m.Place.N.B != 1 || m.Place.Ord != syntax.Next || m.Place.Of != nil || m.Place.Below > 0 || m.Place.Row > 0 {
		return false
	}
	switch m.Place.What {
	case syntax.InSt, syntax.InKind, syntax.InCh, syntax.InStCh, syntax.InSp:
		return !strings.HasSuffix(m.Kind, "tog") && (m.Unit == nil || !m.Unit.Macro)
	}
	return false
}

// merge joins like neighbours.
func merge(steps []syntax.Node, ids []int) []syntax.Node {
	var out []syntax.Node
	for i := 0; i < len(steps); {
		j := i + 1
		for ids[i] > 0 && j < len(ids) && ids[j] == ids[i] {
			j++
		}
		if j > i+1 {
			m := *steps[i].(*syntax.Make)
			p := *m.Place
			p.N = syntax.Plain(j - i)
			m.Place = &p
			out = append(out, &m)
		} else {
			out = append(out, steps[i])
		}
		i = j
	}
	return out
}

// usesRow reports whether steps use up stitches of the row below, so that its end ends a repeat of them.
func usesRow(steps []syntax.Node) bool {
	return anyNode(steps, func(n syntax.Node) bool {
		switch x := n.(type) {
		case *syntax.Make:
			return x.Place == nil || x.Place.What != syntax.InRing
		case *syntax.Group:
			return x.Place != nil && x.Place.What != syntax.InRing
		case *syntax.Skip:
			return true
		}
		return false
	})
}

// topsUsed counts the stitches of the row below that steps use up; ok is false where spaces, names or depths make that uncertain.
func topsUsed(steps []syntax.Node) (n int, ok bool) {
	for _, s := range steps {
		switch x := s.(type) {
		case *syntax.Make:
			p := x.Place
			if p == nil || p.What != syntax.InSt || p.Ord != syntax.Next && p.Ord != syntax.Last || p.Of != nil || p.Below > 0 || p.Row > 0 || x.Unit != nil {
				return 0, false
			}
			n += max(1, p.N.B)
		case *syntax.Skip:
			if x.What != syntax.InSt || x.First || x.Rest || x.Behind {
				return 0, false
			}
			n += x.N.B
		case *syntax.Group:
			if x.Place == nil || x.Place.What != syntax.InSt || x.Place.Ord != syntax.Next {
				return 0, false
			}
			n++
		case *syntax.ChainN:
		default:
			return 0, false
		}
	}
	return n, true
}
