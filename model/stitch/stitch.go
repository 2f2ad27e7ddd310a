// Package stitch holds the stitch library: what each kind of stitch is called,
// how it is made, how tall it is, what it stands in and offers, and which
// symbol draws it. The library is data, read from assets/stitches; a new stitch
// is a new record there.
package stitch

// Kind is the definition of one kind of stitch. Kinds are made by [Library]
// and never changed.
//
// Compound kinds (fpdc, bldc, dc3tog, 3-dc cl) are built by the library from a
// basic kind and its modifiers, so that any combination has a Kind.
type Kind struct {
	ID     string          // stable id in the library: "double-crochet"
	Name   string          // canonical US abbreviation, the word used in trees and fabrics: "dc", "fpdc", "dc3tog", "3-dc cl"
	Terms  map[string]Term // by language: "us", "uk", "es", "de", "fr", "nl"
	Family string          // basic, increase, decrease, cluster, post, loop, texture, edge, chain, surface, foundation

	Composition string // yarn-overs, insertions, pull-throughs, in the library's notation
	Wraps       int    // yarn-overs before the first insertion
	Pulls       int    // middle pull-throughs
	Legs        int    // insertions; 1 for plain stitches, 3 for dc3tog and 3-dc cl
	SamePlace   bool   // all legs stand in one place (clusters, puffs) rather than one each (decreases)
	Closed      bool   // drawn together by an own closing loop or chain (popcorn, some puffs)
	Below       int    // rows below the usual one in which it stands by its kind: 1 for a spike

	Bases  int     // stitches of the row below used up
	Offers int     // landings given to the next row
	Chains float64 // nominal height, in chains
	Height float64 // measured height, one sc = 1

	TurningChain int  // chains that stand for it at a row's start
	Counts       bool // whether that chain counts as a stitch by custom

	Plain  *Kind // the plain stitch it is built on: dc for fpdc, dc3tog, 5-dc bobble; itself for dc
	Post   Post
	Loop   Loop
	Lump   Lump
	Symbol string // name of the symbol in assets/symbols that draws it; compounds draw Plain's with marks
	Sure   bool   // false where the facts need checking
}

// Term is the name of a stitch in one language or set of terms.
type Term struct {
	Name string   // "double crochet"
	Abbr string   // "dc"; "" where the trade has none
	Also []string // other abbreviations met in print
	Sure bool
}

// Post says round which side of a post a stitch is worked.
type Post int8

const (
	NoPost    Post = 0
	FrontPost Post = 1
	BackPost  Post = -1
)

// Loop says which single loop a stitch is worked in by its kind.
type Loop uint8

const (
	BothLoops Loop = iota
	FrontLoop
	BackLoop
	ThirdLoop
)

// Lump says in what manner several legs of one place are gathered.
type Lump uint8

const (
	NoLump Lump = iota
	Cluster
	Bobble
	Puff
	Popcorn
	Star
	Bullion
	SpikeCluster
)
