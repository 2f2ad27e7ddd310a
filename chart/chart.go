// Package chart draws a fabric that was laid out as a chart: symbols, numbers,
// repeats and a key, as pattern books engrave them.
//
// [Draw] makes the symbol chart, [Cells] the grid of one cell a stitch. Both
// return a display list in millimetres. Everything is reckoned in u, one stitch
// width, with y upward, and brought to the page at the very end of each step.
package chart

import (
	"image/color"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/stitch"
)

// Options say how a chart is drawn.
type Options struct {
	Library    *stitch.Library
	Terms      string        // of the key and the titles: us, uk, es, de, fr, nl; "" is us
	Inks       []color.NRGBA // the yarns' colours, by index in the fabric; darkened where paper would lose them
	YarnNames  []string      // by the same index, for the key: "Harbour Worsted, Slate"
	Dark       bool          // for a dark screen
	Monochrome bool          // all in one ink; rows tell their yarn by its letter
	LeftHanded bool          // mirrored
	PlusCross  bool          // single crochet as + instead of x
	HooksLeft  bool          // hooks round the front post open to the left, those round the back to the right
	Unit       float64       // mm of one stitch width; 0 is 5
	Title      string        // printed above; "" for none
	Key        bool          // with a key of what is drawn

	Counts    bool      // the stitches of each row at its end
	Sides     bool      // RS or WS with every number
	Shade     bool      // every second row lies on a tint
	Highlight []int     // rows by their numbers that lie on a stronger one
	Waiting   bool      // marks where a yarn is left to wait and where it is taken up again
	Callouts  []Callout // notes with a line to a stitch

	Own  []Own // stitches of the designer's own that have a symbol
	Grid Grid  // of charts by cells
}

// Callout is a note beside the chart, with a line to what it speaks of.
type Callout struct {
	Row, Stitch int        // by the row's number, and counted from 1 in the order of working
	Text        string     // one line
	Away        geom.Point // from the stitch's head to the middle of the note, u, y upward; zero finds room
}

// Engraving, in u.
const (
	stroke      = .085
	thinStroke  = .068 // arrows and brackets
	casing      = .13  // of white, half on each side, round a stitch that passes over others
	narrowBar   = .75  // of their length, that bars keep in a fan
	shortMark   = .65
	shortGap    = .8 // of their distance, that short marks keep
	crowdedFan  = 5  // stitches or more
	ovalLength  = .74
	ovalLeast   = .34
	ovalSlim    = .58 // an oval shorter than this is drawn slim
	ovalGap     = .05 // of white between the ovals of a run
	sidePitch   = .64 // of chains beside a stitch
	leastPitch  = .58 // of the ovals of a turning chain
	besideFan   = .2  // of a turning chain from the common foot of its fan
	picotAbove  = .16 // the head that a picot sits on
	picotWithin = .12 // the same, of one between two heads
	picotReach  = 1.4 // to the next head, up to which it stands between the two
	numberSize  = .78 // the em of row numbers
	roundSize   = .62 // the em of round numbers
	labelSize   = .68
	margin      = .9
)

// Draw draws the symbol chart of a plan.
func Draw(p *layout.Plan, o Options) *display.List {
	e := newEngraver(p, o)
	e.settle()
	e.bands()
	e.stitches()
	if p.RingR > 0 {
		e.ring()
	}
	e.numbers()
	e.repeats()
	e.yarnMarks()
	e.callouts()
	if o.Key {
		e.key()
	}
	return e.finish()
}

// round reports whether rounds are drawn about a centre.
func round(m layout.Manner) bool { return m == layout.Circle || m == layout.Polygon }

// finish sets title and margins and moves the drawing onto its page.
func (e *engraver) finish() *display.List {
	l := e.list
	ink := e.measured().Ink
	if ink.IsEmpty() {
		ink = geom.Box{}
	}
	u := e.unit
	if e.o.Title != "" {
		l.Title = e.o.Title
		y := ink.Min.Y - 1.1*u
		e.text(display.Text{X: ink.Min.X, Y: y, Size: u, Face: display.SansBold, Fill: e.look.text, Text: e.o.Title})
		ink = e.measured().Ink
	}
	ink = ink.Grow(margin * u)
	l.Width, l.Height = ink.Width(), ink.Height()
	l.Background = e.look.paper
	l.Desc = e.say("Crochet chart, %d stitches in %d rows", len(e.f.Stitches), max(len(e.f.Rows)-1, 0))
	l.Origin = geom.Point{X: -ink.Min.X, Y: -ink.Min.Y}
	l.Move(l.Origin.X, l.Origin.Y)
	return l
}
