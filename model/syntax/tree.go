// Package syntax turns written rows into a tree and a tree into written rows.
//
// [Read] is generous: it takes the trade's notation as people write it and
// reports every fault with its place, keeping the rows it could read. [Print]
// is strict: one form, in US or UK terms; what it writes, Read reads back as
// the same tree. A tree is never changed; an edit makes a new one that shares
// the rows it does not touch.
//
// The tree speaks US terms only. Whether a piece is written in US or UK terms
// is settled while reading, and again while printing.
package syntax

import "strandway/model/diag"

// Num is a number of the pattern: A*n + B, or one alternative per size.
type Num struct {
	A, B  int
	Sizes []int // all sizes, the first included; nil when there is one number for all. -1: this size leaves the step out
}

// Plain is the number n.
func Plain(n int) Num { return Num{B: n} }

// At is the number for n repeats in a size, counted from 0.
func (q Num) At(n, size int) int {
	if q.Sizes != nil {
		return q.Sizes[min(size, len(q.Sizes)-1)]
	}
	return q.A*n + q.B
}

// IsZero reports whether no number was written.
func (q Num) IsZero() bool { return q.A == 0 && q.B == 0 && q.Sizes == nil }

// Ord says which of several places is meant.
type Ord uint8

const (
	Next Ord = iota
	Same
	First
	Last
	Each
	Nth
)

// What says what sort of thing is worked into.
type What uint8

const (
	InSt       What = iota // any stitch top (a chain only where the row below is the foundation)
	InCh                   // one chain
	InStCh                 // each stitch and each chain
	InStSp                 // each stitch and each space, a space taken whole
	InSp                   // a chain-space; a gap where there are none
	InKind                 // a stitch of the named kind
	InUnit                 // a named group: shell, V-st
	InRing                 // the ring
	InHook                 // Nth ch from hook
	InTch                  // top of the turning chain
	InGap                  // between two groups or stitches
	InEnd                  // a row end
	InCentre               // the middle stitch of the row below
	InCorner               // a corner space or stitch
	InSkipped              // a stitch passed by a skip of this row
	InUnder                // the other side of the foundation chain
	InFace                 // the surface of the fabric
	InUnworked             // a stitch that a short row has left unworked
	InOpening              // the edge of an opening: a thumb hole, an armhole; Nth: of the chains over it
	InOther                // a stitch of another piece
)

// Loop says which loop of a stitch is meant.
type Loop uint8

const (
	BothLoops Loop = iota
	FrontLoop
	BackLoop
	ThirdLoop
)

// Lie says where a long stitch lies against what it passes.
type Lie uint8

const (
	LieUnsaid Lie = iota
	InFront
	BehindIt
)

// Place is where a stitch goes.
type Place struct {
	Span   diag.Span
	Ord    Ord
	N      Num // next N, last N, each of next N; for Nth and InHook the ordinal
	What   What
	Name   string // stitch kind (US) or unit name
	Chains int    // length of the chain-space, 0 = any
	Loop   Loop
	Below  int // rows below, 0 = the usual row
	Row    int // "of Row 4": the named row; 0 = not named
	Lie    Lie
	Of     *Place // "centre dc of next shell": Of is the shell, Ord is Nth, First, Last or Same (the centre)
	Centre bool
	Ext    Extent // for Each
}

// How says when a repeat stops.
type How uint8

const (
	Times  How = iota // N times in all
	Across            // as often as it fits
	ToLast            // until N of What are left
	ToNext            // until the next What: to corner
	OverN             // each over next N
	UntilN            // until N of What are made
	Evenly            // N of them, evenly spread
)

// Extent is the end of a repeat or of an "each".
type Extent struct {
	How    How
	N      Num // with ToNext: stitches left before it
	What   What
	Name   string
	Chains int  // length of the chain-space, 0 = any
	Soft   bool // "rep from * N times": N more by the letter, N in all by habit
}

// Node is one instruction.
type Node interface {
	// At is its place in the piece's row text.
	At() diag.Span
}

type (
	// Make works N stitches into each of its places.
	Make struct {
		diag.Span
		N     Num
		Kind  string // canonical US name: dc, fpdc, dc2tog, 3-dc cl; or the name of a Unit
		Unit  *Unit  // set where Kind is a named group
		Place *Place // nil within a Group: its place; elsewhere Read always sets it
		Alike bool   // "2 sc in next 2 sts": one in each by custom, two in each where the row then comes out
	}
	// Skip passes N of What.
	Skip struct {
		diag.Span
		N      Num
		What   What
		Name   string
		Chains int
		Behind bool // "skip st behind": names what the long stitch has passed already
		First  bool
		Rest   bool // "leave remaining sts unworked"
		Row    int  // "skip next 6 unworked sts of Row 2": the named row; 0 = not named
	}
	// ChainN is a run of N chains.
	ChainN struct {
		diag.Span
		N      Num
		Counts Counting
		As     []Node // what it counts as, beyond one stitch: dc, ch 2
		AsKind string
		Start  bool // stands at the row's start
	}
	// Group is worked in one place: (dc, ch 1, dc) in next st.
	Group struct {
		diag.Span
		Body  []Node
		Place *Place
		Name  string
	}
	// Repeat is worked several times or as often as it fits.
	Repeat struct {
		diag.Span
		Body    []Node
		Break   int // nodes before the ** mark, 0 = none
		Ext     Extent
		Star    bool   // written with asterisks
		Ending  []Node // "ending with ...": may stand for the end of the last repeat
		AtBreak bool   // "ending last rep at **"
	}
	// Turn turns the work, or says that it is not turned.
	Turn struct {
		diag.Span
		Not bool
	}
	// Join closes a round, or says that it is not closed.
	Join struct {
		diag.Span
		Place *Place
		Not   bool
		With  string // the kind it is made with, "slst" by default; hdc, dc for half-joins
	}
	// Yarn is something done to a yarn.
	Yarn struct {
		diag.Span
		Do     YarnDo
		Letter string // as the pattern names it, "" = the yarn in hand
		Place  *Place // "join B in any corner"
	}
	// Note is a remark in the row, kept as written.
	Note struct {
		diag.Span
		Text string
	}
	// RowRef works other rows again.
	RowRef struct {
		diag.Span
		Rows  []int
		Last  int // "last 2 rows"
		Times Num
		More  bool
		Until string // "until it measures 20 cm", as written
		For   Num    // "for 6 rows": how many rows are made of them
		InAll bool   // "until 30 rows have been worked": For is all that the piece has then
		But   []Swap // "but ch 5 for ch 3"
		Grow  bool   // "continue in this way": each row differs from the one before as the last two differ
		Sts   Num    // "until there are 60 sts": with Grow, the stitches of the last row
		Round bool
	}
	// Along says that what follows is worked along an edge: row ends, the foundation, round the piece.
	Along struct {
		diag.Span
		Edge Edge
		Face byte // 'R', 'W' or 0: which side faces
	}
)

// Swap is what a repeated row has in place of what is written: "ch 5 for ch 3". Both are a ChainN or a Make.
type Swap struct{ Old, New Node }

// Edge is an edge of a piece.
type Edge uint8

const (
	NextEdge Edge = iota // the next one round, from where the hook is
	LeftEdge
	RightEdge
	SideEdge  // a side, not said which
	LowerEdge // the foundation's other side
	UpperEdge // the last row
	AllRound
)

// YarnDo is what is done to a yarn.
type YarnDo uint8

const (
	With YarnDo = iota // go on with it, joining it if it is not there
	JoinIn
	ChangeTo // in the last pull-through of the stitch before
	DropIt
	CutIt // break, cut, fasten off
	PickUpIt
	CarryIt  // carry it along: up the side or inside the stitches
	HoldLoop // put the live loop on a marker
)

func (x *Make) At() diag.Span   { return x.Span }
func (x *Skip) At() diag.Span   { return x.Span }
func (x *ChainN) At() diag.Span { return x.Span }
func (x *Group) At() diag.Span  { return x.Span }
func (x *Repeat) At() diag.Span { return x.Span }
func (x *Turn) At() diag.Span   { return x.Span }
func (x *Join) At() diag.Span   { return x.Span }
func (x *Yarn) At() diag.Span   { return x.Span }
func (x *Note) At() diag.Span   { return x.Span }
func (x *RowRef) At() diag.Span { return x.Span }
func (x *Along) At() diag.Span  { return x.Span }

// Counting says whether a turning chain is a stitch: by the row's words, or left open.
type Counting uint8

const (
	Unsaid Counting = iota
	Counts
	CountsNot
)

// Unit is a named group: its body goes into one place, or, as a Macro, finds its own places.
type Unit struct {
	Span   diag.Span
	Name   string
	Body   []Node
	Macro  bool
	Recipe string // a yarn-over recipe, in the library's composition notation: one stitch on one base
}

// Tally is one part of a stated count.
type Tally struct {
	Span   diag.Span // the number alone
	N      Num
	What   What
	Name   string
	Chains int
	Yarn   string // "12 A": stitches in that yarn
	Each   bool   // per side, per corner: not checked
}

// Row is one written row, or a line that stands between rows.
type Row struct {
	Span     diag.Span // all of it, heading included
	Head     diag.Span // the heading alone
	Round    bool
	Named    string   // Foundation, Next, Edging
	From, To int      // 0: unheaded; To > From for a range
	BySize   [][2]int // From and To by size; nil where they are the same for all
	List     []int
	Open     bool // "Row 3 and up"
	Every    bool // "Row 2 and all WS rows": every second row from From on that is not written itself
	Many     Num  // "Next 4 rows": how many rows without a number
	Side     byte // 'R', 'W' or 0
	Yarn     string
	Body     []Node
	Count    []Tally
	Hook     Counting // "(skipped 3 ch count as dc)"
	HookAs   []Node
	Bad      bool   // part of it could not be read
	Lost     string // the word at which the thread was lost, when Bad
	Sizes    []int  // sizes (from 0) that work it; nil = all
}

// Tree is all that was read of one piece's rows.
type Tree struct {
	Text      string // the row text itself
	UK        bool
	Units     map[string]*Unit
	Order     []string            // names of Units in the order of definition
	TchCounts map[string]Counting // by kind, from notes: "ch 3 counts as dc throughout"
	NoTurn    bool
	Rows      []*Row
	Notes     []*Note
}
