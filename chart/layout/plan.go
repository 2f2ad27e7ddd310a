// Package layout gives every stitch of a fabric its pose in the plane.
//
// It reads a fabric and the heights to lay it out at, and hands back a [Plan]
// in units of one stitch width u, y upward. The same code lays out the chart
// (drawn heights) and the cloth (measured heights). It draws nothing.
package layout

import (
	"strandway/chart/geom"
	"strandway/model/fabric"
)

// Manner is how a fabric is laid out as a whole.
type Manner uint8

const (
	Rows    Manner = iota // flat, straight columns
	Ripple                // flat, rows that rise and fall
	Tube                  // rounds on a closed foundation, cut open
	Blocks                // rows of blocks from corner to corner
	Point                 // rows that grow from a point
	Circle                // rounds from a ring
	Polygon               // rounds with corners
	Oval                  // rounds about both sides of a foundation
)

// Plan is a fabric laid out.
type Plan struct {
	Fabric      *fabric.Fabric
	Manner      Manner
	Corners     int     // of a polygon, or between the edges of rows from a point
	Poses       []Pose  // one a stitch, by id
	Legs        []Leg   // of all poses, see LegsOf
	Strip       int     // the first row of the sides of a hollow body, which lie beneath its crown as a strip; 0 for none
	RingR       float64 // radius of the ring, u; 0 without one
	Repeat      Bracket // across
	Upward      Bracket // up: rows that repeat
	Box         geom.Box
	Iterations  int
	HeightError float64 // mean, u
}

// Bracket is a repeat found in the fabric, to be bracketed.
type Bracket struct {
	On       bool
	From, To float64 // x (across), or row indices (up)
	Label    string  // "6 sts", "Rows 2-5"
}

// Pose is where a stitch stands. Stitches that are not laid out (joins, travel, chains that do not count, picots)
// have Placed false and hang on Host; their Top and Up say where beside it.
type Pose struct {
	Top      geom.Point // the middle of its top; the centre of a chain
	Up       geom.Point // unit vector from its foot to its top; for a chain the normal of its run
	FirstLeg int32
	NLegs    int16
	Fan      int32 // the fan it belongs to, -1 for none
	Placed   bool
	Host     int32   // the stitch it hangs on, when not Placed; -1 otherwise
	Dropped  bool    // spare foundation chains that became the turning chain
	Depth    float64 // toward the viewer, u; not 0 only in hollow bodies
}

// Leg is one leg of a stitch: from its foot in the place to the stitch's top.
type Leg struct {
	Foot  geom.Point // the point in the place itself, before any gap the drawing leaves
	Space bool       // the place is a space or gap
	Post  int8       // round a post: +1 front, -1 back, as seen from the right side
	Deep  bool       // stands more than one row below
	At    int32      // stitch it stands in, -1 ring
}
