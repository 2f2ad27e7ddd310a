// Package fabric holds what working the rows of a piece gives: every stitch
// with its places, yarn and neighbours, row by row.
//
// A Fabric is made by package work and never changed afterwards; chart, cloth,
// strands, sizes and yarn are all computed from it. It is kept in flat slices
// with integer ids, so that a blanket of 200,000 stitches stays well under
// 100 MB (about 40 bytes a stitch).
package fabric

import (
	"strandway/model/diag"
	"strandway/model/stitch"
)

// Fabric is every stitch of one piece worked for one size.
type Fabric struct {
	Kinds    []*stitch.Kind // the kinds used; Stitch.Kind is an index into it
	Yarns    []string       // the yarn letters used; Stitch.Yarn is an index into it
	Stitches []Stitch       // in working order; a stitch's id is its index
	Bases    []Base
	Landings []int32 // of all rows: what the next row can be worked into, in the order in which this row made it
	Units    []Unit
	Rows     []Row // Rows[0] is the foundation, with no stitches when the piece starts in a ring
	Repeats  []Repeat
	Events   []Event // what happens to the yarn, in working order
}

// Flags tell what sort of stitch a stitch is.
type Flags uint16

const (
	TurningChain Flags = 1 << iota // one node for a turning or starting chain that counts as a stitch; Chains says of how many chains
	NoLanding                      // never worked into: chains that do not count, joins, travel, picots; in the foundation, the chains at the hook that are the first row's turning chain
	Chain                          // one chain
	Picot                          // made on the stitch before it, which is its base; Chains says of how many chains
	Long                           // worked below the usual row
	Behind                         // a long stitch that lies behind what it passes; without it, in front, as seen while working
	Join                           // slip stitch that closes a round, or the taller stitch of a half-join, which makes a space with the chains before it
	Travel                         // slip stitch that moves along before the round's first stitch
	Corner                         // a corner is here: the middle of a corner group
	Crossed                        // worked into a base already passed, so it crosses the stitch before it
	Surface                        // slip stitch worked on the face of the fabric
)

// Stitch is one made stitch, or one chain.
type Stitch struct {
	Base   uint32  // index of its first base in Fabric.Bases
	Unit   int32   // the group it belongs to, index in Fabric.Units; -1 for none
	Row    int32   // index in Fabric.Rows
	Col    float32 // its place along the foundation, in columns, rising to the right as seen from the right side; in rounds, along the first of them, from 0 round to its length
	Word   int32   // start of the instruction that made it, a byte in the piece's row text; -1 if none
	Kind   uint16  // index in Fabric.Kinds
	Flags  Flags
	NBase  uint8 // number of bases; several for a decrease, none for a chain
	Yarn   uint8 // index in Fabric.Yarns
	Chains uint8 // chains in a turning chain or picot
}

// Has reports whether all flags of f are set.
func (s *Stitch) Has(f Flags) bool { return s.Flags&f == f }

// How says how a stitch stands in its place.
type How uint8

const (
	Top       How = iota // under both top loops, or in a chain
	FrontLoop            // as seen while working
	BackLoop
	FrontPost // round the post, from the front, as seen while working
	BackPost
	Space     // in a chain-space: At is its first chain (in the order of making)
	Gap       // between two stitches: At is the first of them (in the order of making)
	InRing    // in the ring; At is -1
	RowEnd    // in the end of a row: At is the edge stitch it goes into
	Underside // in the other side of a foundation chain
	Third     // in the third loop, below the top
	OnFace    // on the surface of the fabric, at stitch At
	Legs      // between the legs of the stitch below
)

// Base is one place a stitch stands in.
type Base struct {
	At   int32 // stitch id, see [How]; -1 for the ring
	How  How
	Down uint8 // rows below: 1 is the usual row
}

// Unit is a group of stitches made in one place: a shell, a V-stitch, a corner.
type Unit struct {
	Name        string // the name it was made by, "" for an unnamed group
	First, Last int32  // stitches [First, Last)
	Corner      bool
}

// Shape says how a row hangs together with the one before it.
type Shape uint8

const (
	Flat   Shape = iota // a row from edge to edge
	Joined              // a round, closed by a join
	Spiral              // a round that runs on into the next
)

// Row is one worked row or round.
type Row struct {
	Label    string // as written: "Row 4", "Rnd 2", "foundation"
	No       int    // its number as worked; 0 for the foundation and rows without a number
	Source   int    // index of the written row in the piece's tree; of one that repeats another, the row repeated
	Under    int    // index of the written row under whose heading it is worked: Source, or the row that repeats it
	First    int32  // stitches [First, Last)
	Last     int32
	Land0    int32 // landings [Land0, Land1)
	Land1    int32
	Shape    Shape
	Turned   bool // the work was turned before this row
	FromLeft bool // it begins at the left edge, as seen from the right side
	WS       bool // the wrong side faces while it is worked
	Backward bool // worked against the hook's usual way, as crab stitch is
	Yarn     uint8
	Count    int  // stitches it offers; a chain that counts as a stitch is one, joins and travel are none
	Chains   int  // further chains, one each
	Unworked int  // tops of the row below neither worked, skipped nor covered
	Covered  int  // tops of the row below passed by long stitches
	EndSide  Side // on which row ends it stands, when it is worked along row ends; NoSide otherwise
}

// Side is an edge of a piece, right side up.
type Side uint8

const (
	NoSide Side = iota
	Left
	Right
	Bottom
	Upper // the last row
)

// Repeat is one working of an open repeat: the stitches that one time through made.
// The workings of one repeat follow one another and share Row and Written.
type Repeat struct {
	Row     int32     // index in Fabric.Rows
	Written diag.Span // the repeat in the piece's row text
	First   int32     // stitches [First, Last)
	Last    int32
}

// Do is what happens to a yarn.
type Do uint8

const (
	JoinYarn Do = iota // a new yarn, or one that was cut, begins here
	PickUp             // a yarn that waits is taken up again
	Drop               // it is left to wait
	Cut
	Change // the last pull-through of the stitch before is made with this yarn
	Hold   // the live loop is put on a marker
)

// Event is something that happens to a yarn, before stitch Before is made.
type Event struct {
	Do     Do
	Yarn   uint8
	Row    int32 // index in Fabric.Rows
	Before int32 // stitch id; len(Stitches) at the end
	Side   Side  // the edge at which it happens; NoSide in mid-row
}

// Of gives the bases of stitch id.
func (f *Fabric) Of(id int32) []Base {
	s := &f.Stitches[id]
	return f.Bases[s.Base : s.Base+uint32(s.NBase)]
}

// Kind gives the kind of stitch id.
func (f *Fabric) Kind(id int32) *stitch.Kind { return f.Kinds[f.Stitches[id].Kind] }

// LandingsOf gives a row's landings, in the order in which the row made them.
func (f *Fabric) LandingsOf(row int) []int32 {
	r := &f.Rows[row]
	return f.Landings[r.Land0:r.Land1]
}
