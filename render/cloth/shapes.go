package cloth

// A part of a stitch is drawn from curves whose control points are given
// relative to the part's axis: from a post's foot to its top, from a link's
// start to its end. L is the axis's length.

// form is the shape a part of a stitch has.
type form uint8

const (
	vee         form = iota // sc from the right side: a V
	bump                    // sc from the wrong side: a bar over two legs
	tall                    // dc, tr, hdc from the right side: a post with wraps
	tallBack                // the same from the wrong side
	link                    // the V of top loops on a stitch
	chainLink               // a chain standing free
	raised                  // post stitch that stands out
	recessed                // post stitch that falls back
	longTall                // tall stitch over earlier rows
	longVee                 // sc over earlier rows
	leg                     // one leg of a decrease
	cluster                 // several legs in one place, gathered at the top
	puff                    // the same, soft and round
	bobble                  // pushed out toward the viewer
	popcorn                 // folded forward into a knob
	lumpBack                // bobbles and popcorns from behind
	coil                    // bullion: one post wrapped all along
	freeLoop                // the loop left free when only the other is worked
	float                   // yarn carried up an edge or across
	tail                    // yarn end left hanging
	surfaceLink             // chain lying on the face
	wound                   // straight yarn, wound on a shade card
	drawnLoop               // long loop left hanging
	standing                // chain of a turning chain, which stands in a stitch's room
)

// part is what a sprite shows: a form with so many wraps or legs.
type part struct {
	form form
	n    uint8
}

// control is a control point: c across the axis, a + l*L along it, z toward the viewer; w.
type control struct{ c, a, l, z float64 }

// curve is a strand in a part's own coordinates.
type curve struct {
	from, to float64 // which part of the stitch's yarn
	thick    float64 // radius as a factor of the yarn's
	path     []control
}

// mirror is the path on the other side of the axis, z deeper.
func mirror(path []control, z float64) []control {
	out := make([]control, len(path))
	for i, p := range path {
		out[i] = control{-p.c, p.a, p.l, p.z + z}
	}
	return out
}

// widen draws a path out across its axis.
func widen(path []control, by float64) []control {
	out := make([]control, len(path))
	for i, p := range path {
		out[i] = control{by * p.c, p.a, p.l, p.z}
	}
	return out
}

// shift moves a path by a and z.
func shift(path []control, a, l, z float64) []control {
	out := make([]control, len(path))
	for i, p := range path {
		out[i] = control{p.c, p.a + a, p.l + l, p.z + z}
	}
	return out
}

var (
	// Both legs of the V come out of one hole just above the row below; between
	// them the bar on the stitch's back closes the fabric.
	veeShape = []curve{
		{.5, .55, 1.25, []control{{-.54, -.02, .52, -.26}, {-.2, 0, .58, -.20}, {.2, 0, .58, -.20}, {.54, -.02, .52, -.26}}},
		{.25, .5, 1.08, []control{{.08, -.26, 0, .02}, {.11, -.06, 0, .36}, {.22, 0, .30, .48}, {.35, 0, .68, .40}, {.47, 0, 1.02, .04}}},
		{.55, .75, 1.08, []control{{-.03, -.28, 0, .04}, {-.07, -.06, 0, .40}, {-.15, 0, .32, .50}, {-.27, 0, .72, .40}, {-.37, 0, 1.04, .04}}},
	}
	longVeeShape = []curve{
		{.25, .5, 1.08, []control{{.05, -.18, 0, -.20}, {.09, .05, 0, .45}, {.14, 0, .40, .62}, {.24, 0, .75, .52}, {.40, 0, 1, .04}}},
		{.55, .75, 1.08, []control{{-.05, -.18, 0, -.20}, {-.09, .05, 0, .45}, {-.14, 0, .40, .62}, {-.24, 0, .75, .52}, {-.37, 0, 1, .04}}},
	}
	// From behind a sc shows one bump whose ends dive.
	bumpShape = []curve{
		{.25, .45, 1.08, []control{{-.26, -.20, 0, 0}, {-.25, .04, 0, .26}, {-.19, .26, 0, .28}, {-.09, 0, .54, .10}}},
		{.45, .6, 1.08, []control{{.25, -.20, 0, 0}, {.24, .04, 0, .24}, {.19, .26, 0, .28}, {.09, 0, .54, .10}}},
		{.6, .8, 1.06, []control{{-.50, 0, .26, -.22}, {-.44, 0, .44, .08}, {-.28, 0, .62, .32}, {0, 0, .73, .42}, {.28, 0, .68, .32}, {.46, 0, .52, .08}, {.52, 0, .34, -.22}}},
	}
	// The post of a tall stitch: pinched where the wrap holds it, opening to the V at its top.
	tallLegs = []curve{
		{.15, .45, 1.12, []control{{-.08, -.22, 0, .08}, {-.22, .06, 0, .30}, {-.25, 0, .26, .28}, {-.17, 0, .47, .14}, {-.22, 0, .66, .25}, {-.31, 0, .86, .26}, {-.40, 0, 1, 0}}},
		{.45, .75, 1.12, []control{{.11, -.22, 0, .05}, {.22, .06, 0, .27}, {.24, 0, .26, .28}, {.17, 0, .47, .14}, {.22, 0, .66, .27}, {.32, 0, .86, .24}, {.44, 0, 1, 0}}},
	}
	// A long stitch stands proud; its foot dives under the loops it is worked into.
	longLegs = []curve{
		{.15, .45, 1, []control{{-.01, -.22, 0, -.27}, {-.12, .06, 0, .48}, {-.19, 0, .26, .46}, {-.11, 0, .47, .30}, {-.17, 0, .66, .43}, {-.28, 0, .86, .40}, {-.40, 0, 1, 0}}},
		{.45, .75, 1, []control{{.05, -.22, 0, -.30}, {.13, .06, 0, .45}, {.17, 0, .26, .46}, {.11, 0, .47, .30}, {.16, 0, .66, .45}, {.29, 0, .86, .38}, {.44, 0, 1, 0}}},
	}
	tallBackLegs = []curve{
		{.15, .45, 1.12, []control{{-.24, -.14, 0, 0}, {-.25, .12, 0, .24}, {-.23, 0, .32, .26}, {-.17, 0, .50, .16}, {-.21, 0, .68, .22}, {-.20, 0, .90, .05}}},
		{.45, .75, 1.12, []control{{.24, -.14, 0, 0}, {.25, .12, 0, .22}, {.22, 0, .32, .26}, {.17, 0, .50, .16}, {.22, 0, .68, .22}, {.20, 0, .90, .05}}},
	}
	// The bar below the top that a tall stitch shows from behind.
	backBar = curve{.75, .85, 1, []control{{-.48, -.36, 1, -.18}, {-.36, -.30, 1, .12}, {-.12, -.24, 1, .30}, {.18, -.24, 1, .28}, {.40, -.30, 1, .08}, {.50, -.35, 1, -.18}}}
	// A half double shows its wrap as a third loop right under the top.
	thirdLoop = curve{0, .15, 1, []control{{-.52, -.30, .86, -.20}, {-.38, -.20, .86, .16}, {-.10, -.12, .86, .38}, {.18, -.12, .86, .38}, {.42, -.20, .86, .14}, {.54, -.29, .86, -.20}}}

	// Wraps, round height 0: rising to the right from the front, flat and falling from behind.
	wrapFront    = []control{{-.42, -.29, 0, -.16}, {-.34, -.21, 0, .14}, {-.19, -.11, 0, .38}, {0, 0, 0, .46}, {.19, .12, 0, .40}, {.35, .22, 0, .14}, {.43, .30, 0, -.16}}
	wrapBack     = []control{{-.43, .15, 0, -.16}, {-.35, .12, 0, .14}, {-.20, .08, 0, .38}, {0, .03, 0, .46}, {.20, -.03, 0, .40}, {.36, -.12, 0, .14}, {.44, -.17, 0, -.16}}
	wrapRaised   = []control{{-.36, -.28, 0, .20}, {-.29, -.21, 0, .50}, {-.16, -.11, 0, .74}, {0, 0, 0, .82}, {.16, .11, 0, .76}, {.30, .22, 0, .50}, {.37, .29, 0, .20}}
	wrapLeg      = []control{{-.28, -.22, 0, -.16}, {-.14, -.09, 0, .33}, {0, 0, 0, .42}, {.14, .10, 0, .33}, {.28, .22, 0, -.16}}
	wrapGathered = []control{{-.23, -.17, 0, -.12}, {-.14, -.10, 0, .06}, {0, 0, 0, .14}, {.14, .10, 0, .06}, {.23, .17, 0, -.12}}
	wrapCoil     = []control{{-.38, -.13, 0, -.16}, {-.31, -.11, 0, .14}, {-.16, -.06, 0, .42}, {0, 0, 0, .52}, {.16, .06, 0, .42}, {.31, .11, 0, .14}, {.38, .13, 0, -.16}}

	// A V lying on its side: its point comes out of the link before, its legs
	// open and tuck away outside the next link's point.
	linkHalf  = []control{{.02, -.16, 0, -.16}, {.06, 0, .06, .12}, {.155, 0, .42, .24}, {.235, 0, .82, .16}, {.24, 0, 1.05, 0}, {.14, 0, 1.24, -.24}}
	chainHalf = []control{{.02, -.16, 0, -.16}, {.055, 0, .06, .12}, {.143, 0, .42, .24}, {.216, 0, .82, .16}, {.22, 0, 1.05, 0}, {.13, 0, 1.24, -.24}}

	// A raised post comes round the post below from both sides, then stands proud.
	raisedLegs = []curve{
		{.15, .45, 1.08, []control{{-.30, -.66, 0, -.2}, {-.42, -.52, 0, .16}, {-.36, -.28, 0, .62}, {-.21, .04, 0, .70}, {-.19, 0, .34, .66}, {-.13, 0, .54, .52}, {-.19, 0, .72, .60}, {-.20, 0, .92, .40}, {-.18, 0, 1.04, -.05}}},
		{.45, .75, 1.08, []control{{.32, -.62, 0, -.2}, {.43, -.48, 0, .14}, {.35, -.26, 0, .60}, {.20, .04, 0, .68}, {.18, 0, .34, .66}, {.13, 0, .54, .52}, {.19, 0, .72, .60}, {.20, 0, .92, .40}, {.20, 0, 1.04, -.05}}},
	}
	// A recessed post lies behind; the hook pushed the loops of the row below to the front of it.
	recessedShape = []curve{
		{.15, .45, 1.2, []control{{-.25, -.2, 0, -1.1}, {-.26, .10, 0, -.86}, {-.25, 0, .40, -.84}, {-.24, 0, .62, -.86}, {-.26, 0, .90, -1}}},
		{.45, .75, 1.2, []control{{.25, -.2, 0, -1.1}, {.26, .10, 0, -.88}, {.25, 0, .40, -.84}, {.24, 0, .62, -.86}, {.26, 0, .90, -1}}},
		{.75, .85, .95, []control{{-.50, -.16, 0, -.92}, {-.30, -.02, 0, -.70}, {0, .06, 0, -.62}, {.30, .04, 0, -.70}, {.50, -.06, 0, -.92}}},
		{.85, 1, .95, []control{{-.50, .20, 0, -.96}, {-.30, .30, 0, -.74}, {0, .36, 0, -.68}, {.30, .34, 0, -.74}, {.50, .24, 0, -.96}}},
	}
	legShape = []curve{
		{.15, .45, 1, []control{{-.06, -.20, 0, .05}, {-.12, .08, 0, .28}, {-.13, 0, .4, .26}, {-.10, 0, .75, .24}, {-.05, 0, 1, 0}}},
		{.45, .75, 1, []control{{.08, -.20, 0, .03}, {.12, .08, 0, .26}, {.12, 0, .4, .25}, {.09, 0, .75, .22}, {.05, 0, 1, 0}}},
	}
	coilLegs = []curve{
		{.1, .2, 1, []control{{-.10, -.20, 0, .05}, {-.10, .05, 0, .20}, {-.08, 0, .5, .18}, {-.10, 0, 1, 0}}},
		{.2, .3, 1, []control{{.10, -.20, 0, .03}, {.10, .05, 0, .20}, {.08, 0, .5, .18}, {.10, 0, 1, 0}}},
	}
	freeLoopShape = []curve{
		{.75, .9, .95, []control{{-.54, -.02, 0, -.1}, {-.38, .05, 0, .34}, {0, .10, 0, .52}, {.38, .06, 0, .34}, {.54, 0, 0, -.1}}},
	}
	drawnLoopShape = curve{0, 1, .92, []control{{-.10, 0, .30, .20}, {-.17, -.10, 0, .52}, {-.25, -.75, 0, .60}, {-.22, -1.35, 0, .56}, {-.02, -1.62, 0, .50}, {.17, -1.35, 0, .56}, {.21, -.75, 0, .58}, {.15, -.10, 0, .48}, {.09, 0, .30, .18}}}
	// A float hangs slack between the rows it joins, bowed outward on the side that c points to.
	floatShape = []curve{
		{0, 1, .95, []control{{-.30, -.05, 0, .05}, {-.02, .06, 0, .30}, {.20, 0, .28, .34}, {.10, 0, .55, .40}, {.20, 0, .82, .34}, {-.04, .02, 1, .30}, {-.34, .12, 1, .05}}},
	}
	woundShape = []curve{
		{0, 1, 1, []control{{0, -.3, 0, 0}, {.01, 0, .33, 0}, {-.01, 0, .66, 0}, {0, .3, 1, 0}}},
	}
	tailShape = []curve{
		{0, 1, .95, []control{{0, -.30, 0, -.1}, {.03, 0, 0, .16}, {-.10, 0, .3, .10}, {.12, 0, .62, 0}, {-.04, 0, 1, 0}}},
	}
)

// gathering says how the legs of one place are gathered: how wide they spread,
// how far they stand out, how many are in sight, and how full they are along their height.
type gathering struct {
	width, bulge float64
	seen         int       // legs in sight at most; the others lie behind them
	wrapped      bool      // its legs are tall stitches, each with its wrap in sight
	profile      []control // c and z as factors of width and bulge
}

var gatherings = map[form]gathering{
	cluster:  {.36, .34, 4, true, []control{{.10, -.18, 0, .05}, {.55, 0, .12, .75}, {1, 0, .35, 1}, {.90, 0, .62, 1}, {.50, 0, .82, .80}, {.15, 0, .97, .25}}},
	puff:     {.44, .54, 5, false, []control{{.10, -.16, 0, .05}, {.55, 0, .12, .60}, {1, 0, .38, 1}, {1, 0, .60, 1}, {.62, 0, .82, .80}, {.12, 0, .97, .30}}},
	bobble:   {.50, .72, 4, false, []control{{.10, -.16, 0, .05}, {.66, 0, .10, .55}, {1, 0, .34, .98}, {1, 0, .60, 1}, {.70, 0, .82, .80}, {.12, 0, .98, .30}}},
	popcorn:  {.52, .85, 4, true, []control{{.10, -.12, 0, .02}, {.62, 0, .12, .50}, {1, 0, .36, .95}, {1, 0, .62, 1.05}, {.80, 0, .84, 1}, {.30, 0, 1, .60}}},
	lumpBack: {.38, .20, 3, false, []control{{.20, -.16, 0, .05}, {.60, 0, .12, .60}, {.90, 0, .35, .60}, {.90, 0, .62, .60}, {.50, 0, .84, .60}, {.15, 0, .97, .30}}},
}

// neck is the loop that draws a gathered stitch together at its top.
var neck = []control{{-.30, -.16, .97, -.1}, {-.20, -.10, .97, .28}, {0, -.07, .97, .44}, {.20, -.10, .97, .28}, {.30, -.16, .97, -.1}}
