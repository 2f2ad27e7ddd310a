package work

import (
	"strings"

	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// Canonical names that the worker knows by their part in the work.
const (
	chainStitch = "ch"
	slipStitch  = "slst"
	picotStitch = "picot"
	tallStitch  = "dc" // what a turning chain of three or more stands for where the row's own stitch is shorter
)

// Families of the library whose stitches do not stand on a row as others do.
const (
	foundationFamily = "foundation" // made with their own chain
	surfaceFamily    = "surface"    // worked on the face of the fabric
)

// kind gives the index in the fabric of a kind by its canonical name.
func (w *worker) kind(name string) uint16 {
	if name == w.lastKind.name { // as most stitches of a row are
		return w.lastKind.id
	}
	id, ok := w.kinds[name]
	if !ok {
		id = uint16(len(w.fab.Kinds))
		w.fab.Kinds = append(w.fab.Kinds, w.lookUp(name))
		w.kinds[name] = id
	}
	w.lastKind = kindOf{name, id}
	return id
}

// kindOf is the index in the fabric of a kind by its name.
type kindOf struct {
	name string
	id   uint16
}

// lookUp finds a kind in the library. A stitch that is defined in the pattern
// by a recipe is a kind of its own: one stitch on one base.
func (w *worker) lookUp(name string) *stitch.Kind {
	u := w.tree.Units[name]
	if u == nil || u.Recipe == "" {
		if k, ok := w.lib.Kind(name); ok {
			return k
		}
	}
	if u != nil && u.Recipe != "" {
		if k, err := w.lib.Compile(name, u.Recipe); err == nil { // told in the library's own notation
			return k
		}
	}
	k := &stitch.Kind{ID: name, Name: name, Family: "texture", Legs: 1, SamePlace: true, Bases: 1, Offers: 1}
	if base, ok := w.lib.Kind(tallStitch); ok {
		k.Plain, k.Chains, k.Height, k.TurningChain, k.Symbol = base, base.Chains, base.Height, base.TurningChain, base.Symbol
	}
	if u != nil {
		k.Composition = u.Recipe
		k.Legs, k.Lump = lumpOf(u.Recipe)
	}
	if like, ok := w.lib.Kind(name); ok { // "bobble", told at length: what the library knows of bobbles holds
		k.Lump, k.Symbol, k.Plain, k.Height, k.Closed = like.Lump, like.Symbol, like.Plain, like.Height, like.Closed
		if k.Legs <= 1 {
			k.Legs = like.Legs
		}
	}
	return k
}

// oftenWords say in a recipe how often its steps are done.
var oftenWords = [...]struct {
	word  string
	times int
}{
	{"5 more times", 6}, {"4 more times", 5}, {"3 more times", 4}, {"2 more times", 3}, {"once more", 2},
	{"6 times", 6}, {"5 times", 5}, {"five times", 5}, {"4 times", 4}, {"four times", 4}, {"3 times", 3}, {"three times", 3}, {"2 times", 2}, {"twice", 2},
}

// lumpOf takes from a recipe how often the hook goes in.
func lumpOf(recipe string) (legs int, lump stitch.Lump) {
	low := strings.ToLower(recipe)
	legs = max(1, strings.Count(low, "insert"))
	for _, o := range oftenWords {
		if strings.Contains(low, o.word) {
			legs *= o.times
			break
		}
	}
	if legs > 1 {
		lump = stitch.Cluster
	}
	return legs, lump
}

// plain gives the plain stitch that a kind is built on: dc for fpdc, dc3tog, 5-dc bobble. nil for no stitch.
func (w *worker) plain(name string) *stitch.Kind {
	if name == "" {
		return nil
	}
	k := w.fab.Kinds[w.kind(name)]
	if k.Plain != nil {
		return k.Plain
	}
	return k
}

// height is how many chains stand for a stitch at a row's start.
func (w *worker) height(k *stitch.Kind) int {
	if k == nil {
		return 1
	}
	return max(1, k.TurningChain)
}

func kindName(k *stitch.Kind) string {
	if k == nil {
		return ""
	}
	return k.Name
}

// spans is how many places a kind draws together: 3 for dc3tog; 1 for a plain stitch or a cluster in one place.
func spans(k *stitch.Kind) int {
	if k.SamePlace {
		return 1
	}
	return max(1, k.Bases)
}

// isKind reports whether a stitch answers to a name: fpdc is a dc too, a popcorn of dc is none.
func (w *worker) isKind(s *fabric.Stitch, name string) bool {
	k := w.fab.Kinds[s.Kind]
	return k.Name == name || k.Plain != nil && k.Lump == stitch.NoLump && k.Plain.Name == name || firstOne.ReplaceAllString(k.Name, "") == name
}

// isPicot: chains that stand up by themselves and offer nothing to the next row.
func (w *worker) isPicot(name string) bool {
	k := w.fab.Kinds[w.kind(name)]
	return k.Offers == 0 && k.Name != chainStitch && kindName(k.Plain) == chainStitch
}

// backwards is how the library's compositions say that a stitch goes into the place behind.
const backwards = "backwards"

// firstKind gives the kind of the first stitch that is made, slip stitches apart; "" for none.
func (w *worker) firstKind(nodes []syntax.Node) string {
	for _, n := range nodes {
		k := ""
		switch x := n.(type) {
		case *syntax.Make:
			switch {
			case x.Kind == slipStitch:
			case x.Unit != nil && x.Unit.Recipe == "":
				k = w.firstKind(x.Unit.Body)
			default:
				k = x.Kind
			}
		case *syntax.Group:
			k = w.firstKind(x.Body)
		case *syntax.Repeat:
			k = w.firstKind(x.Body)
		}
		if k != "" {
			return k
		}
	}
	return ""
}
