package work

import (
	"strandway/model/fabric"
	"strandway/model/syntax"
)

// rowWork is what stays the same while one row is worked, whichever reading is tried.
type rowWork struct {
	step       *step
	row        int32     // its index in the fabric
	lands      []landing // what the hook meets, in that order; cursor.met says how many of them count
	isBase     bool      // the row below is the foundation
	hasSp      bool      // it has chain-spaces
	longest    int       // the most chains in one of its spaces
	units      map[string]bool
	sized      map[int]bool    // the sizes of its groups
	kindsBelow map[string]bool // of the kinds asked for, which the row below has
	groups     int             // how many groups it has
	own        int             // chains of the row's own foundation, with which it begins
	blocks     bool            // the row below began with one: its turning chain is a loop
	into       int32           // the row of the fabric into which all of this one goes, behind what lies above it; 0 for the row below
	round      bool            // the row is a round
	closing    int             // stitches it may pass at its end, before the join
	rising     bool            // columns rise as it is worked
	reading    reading
}

// cursor is all that one instruction changes. A copy of it is a way back.
type cursor struct {
	pos       int    // next landing
	met       int    // landings met so far and still to come
	same      target // the place worked last
	hasSame   bool
	start     bool   // nothing but the turning chain is worked yet
	chained   bool   // the starting chain is made
	travelled bool   // slip stitches have moved the beginning along
	origin    target // where the yarn was joined, when between stitches
	hasOrigin bool
	tch       int32 // the row's turning chain, if it counts; -1
	shared    bool  // the turning chain stands in the first stitch's own place
	skipped   int   // chains passed at the hook, in a row over the foundation
	hooked    int   // the place of the first chain worked into, counted from the hook
	place     *target
	inUnit    bool  // a macro is worked, whose steps are not the row's
	nested    int   // repeats within repeats
	aside     int32 // the unit whose middle was named last: the rest of it is passed free
	passed    int   // tops passed that nobody named
	slack     int   // landings that a jump to the row's last stitch leaves out, as it may
	covered   int   // tops passed by long stitches
	behind    int   // of these, what a "skip st behind" would still name
	skipA     int   // landings of the last skip, for "in the skipped st"
	skipB     int
	short     int         // stitches left over by a row that ends where its count says
	bridge    int32       // chains that this row has made to another piece: how many,
	bridgeAt  int32       // the first of them,
	bridged   int32       // and how many of them are worked into, from both sides
	leftFirst int         // landings that a round passes before its first stitch
	free      bool        // the rest of the row below is left on purpose
	edge      fabric.Side // the edge that is worked along: Upper in a usual row
	edgeStart int         // the landing at which it begins
	ledgeRow  int         // the row that left it, where one is named
	ledgeFrom int         // the landing from which on what a short row left follows; 0 for none
	allRound  bool        // all edges are worked one after another
	spur      int32       // chains of a spur, worked back over from its tip: the last one taken,
	spurEnd   int32       // and the first of them
	yarn      uint8
	word      int32           // where the instruction in work is written
	below     [maxDepth]int32 // the stitch taken last so many rows below, +1

	// lengths of what is made
	stitches, bases, unitsMade, repeats, yarnWords, traced int
}

// maxDepth is how many rows down the last long stitch is remembered.
const maxDepth = 8

// save gives a way back to this moment.
func (w *worker) save() cursor {
	c := w.cursor
	c.stitches, c.bases, c.unitsMade = len(w.fab.Stitches), len(w.fab.Bases), len(w.fab.Units)
	c.repeats, c.yarnWords, c.traced = len(w.fab.Repeats), len(w.yarns.words), len(w.stepsMade)
	return c
}

// restore undoes everything made since the cursor was saved.
func (w *worker) restore(c *cursor) {
	w.cursor = *c
	w.fab.Stitches, w.fab.Bases, w.fab.Units = w.fab.Stitches[:c.stitches], w.fab.Bases[:c.bases], w.fab.Units[:c.unitsMade]
	w.fab.Repeats = w.fab.Repeats[:c.repeats]
	w.yarns.words = w.yarns.words[:c.yarnWords]
	w.stepsMade = w.stepsMade[:c.traced]
}

// reading holds the choices that the trade leaves open; the zero value is the custom.
type reading struct {
	chains  bool // "st" counts chains too
	inAll   bool // "rep from * 3 times" is three in all
	flip    bool // the turning chain counts the other way
	inside  bool // after "in next shell" the shell's other stitches are still to come
	hook    bool // a row on the foundation leaves out the chains that stand for turning
	under   bool // "ch 3, skip 1 st" skips the stitch that the chain stands on
	inEach  bool // "2 sc in next 2 sts" is two in each
	anyKind bool // "next dc" of a row worked again is the next stitch
	through bool // "to last shell" takes that shell in
	ledge   bool // what a short row left unworked below follows
}

// readings are tried in this order, and those that come later only where no earlier one comes out.
var readings = []struct {
	reading
	note string
}{
	{reading{}, ""},
	{reading{inAll: true}, `"rep from * n times" read as n in all`},
	{reading{inEach: true}, `"2 sc in next 2 sts" read as two in each`},
	{reading{hook: true}, "the chain at the hook read as left out for turning"},
	{reading{under: true}, "the first skip read as the stitch under the turning chain"},
	{reading{flip: true}, "turning chain read the other way about counting as a stitch"},
	{reading{chains: true}, `"st" read as taking in the chains`},
	{reading{inside: true}, "the rest of a named group read as still to be worked"},
	{reading{through: true}, `"to last" read as taking it in`},
	{reading{anyKind: true}, "the kinds named read as whatever the row below has"},
	{reading{ledge: true}, "the stitches left unworked below read as still to be worked"},
	{reading{chains: true, flip: true}, `"st" read as taking in the chains, turning chain the other way`},
}

// mayRead reports whether a reading differs from the custom for the row in work.
func (w *worker) mayRead(a reading) bool {
	if a.inAll && !anyNode(w.step.body, func(n syntax.Node) bool {
		x, ok := n.(*syntax.Repeat)
		return ok && x.Star && x.Ext.Soft
	}) {
		return false
	}
	if a.hook && (!w.isBase || w.round || w.ring || w.met < 3 || firstChain(w.step.body) != nil) {
		return false
	}
	if a.under && !anyNode(w.step.body, func(n syntax.Node) bool { x, ok := n.(*syntax.Skip); return ok && !x.First }) {
		return false
	}
	if a.inEach && !anyNode(w.step.body, func(n syntax.Node) bool { x, ok := n.(*syntax.Make); return ok && x.Alike }) {
		return false
	}
	if a.chains && !w.hasSp {
		return false
	}
	if a.anyKind && (w.step.no == w.step.row.From || w.step.row.From == 0) {
		return false
	}
	if a.through && !anyNode(w.step.body, func(n syntax.Node) bool {
		x, ok := n.(*syntax.Repeat)
		return ok && x.Ext.How == syntax.ToLast && x.Ext.What == syntax.InUnit
	}) {
		return false
	}
	if a.ledge && w.ledgeAhead() == nil {
		return false
	}
	if a.flip { // a chain of one never counts unless the row says so
		if w.isBase && firstChain(w.step.body) == nil && w.step.pend == nil {
			return w.step.row.Hook == syntax.Unsaid && w.height(w.plain(w.firstKind(w.step.body))) > 1
		}
		c := w.startChain()
		return c != nil && c.Counts == syntax.Unsaid && w.num(c.N) > 1
	}
	return true
}

// startChain gives the turning chain of the row in work, nil if it has none.
func (w *worker) startChain() *syntax.ChainN {
	if c := firstChain(w.step.body); c != nil {
		return c
	}
	return w.step.pend
}

// firstChain gives the chain a row begins with.
func firstChain(body []syntax.Node) *syntax.ChainN {
	for _, n := range body {
		switch x := n.(type) {
		case *syntax.ChainN:
			return x
		case *syntax.Turn, *syntax.Note, *syntax.Yarn:
			continue
		case *syntax.Make:
			if x.Kind == slipStitch {
				continue // on the way to where the round begins
			}
		}
		return nil
	}
	return nil
}
